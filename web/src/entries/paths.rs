//! Places written as the paths of the document, `truck.plate.rows[2].height_m`.

use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use standfast_core::place::{Field, Place};
use std::collections::BTreeMap;

/// The place that a path names.
pub fn from_path(path: &str) -> Option<Place> {
    Field::NUMBERS.iter().chain(Field::CHOICES).find_map(|&field| match field.row().path.split_once("[]") {
        None => (field.row().path == path).then(|| field.into()),
        Some((before, behind)) => {
            let row = path.strip_prefix(before)?.strip_suffix(behind)?.strip_prefix('[')?.strip_suffix(']')?;
            row.parse().ok().map(|row| Place::in_row(field, row))
        }
    })
}

pub(super) fn serialize<T: Serialize, S: Serializer>(
    map: &BTreeMap<Place, T>,
    serializer: S,
) -> Result<S::Ok, S::Error> {
    serializer.collect_map(map.iter().map(|(place, entry)| (place.to_string(), entry)))
}

pub(super) fn deserialize<'de, T: Deserialize<'de>, D: Deserializer<'de>>(
    deserializer: D,
) -> Result<BTreeMap<Place, T>, D::Error> {
    let entries = BTreeMap::<String, T>::deserialize(deserializer)?;
    let place = |path: &str| from_path(path).ok_or_else(|| D::Error::custom(format!("no figure `{path}`")));
    entries.into_iter().map(|(path, entry)| Ok((place(&path)?, entry))).collect()
}
