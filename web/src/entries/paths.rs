//! Places written as the paths of the document, `truck.plate.rows[2].height_m`.

use super::Typed;
use serde::de::Error;
use serde::{Deserialize, Deserializer, Serializer};
use standfast_core::place::{Field, Place};
use std::collections::BTreeMap;

/// The place that a path names.
pub(super) fn from_path(path: &str) -> Option<Place> {
    Field::NUMBERS.iter().chain(Field::CHOICES).find_map(|&field| match field.row().path.split_once("[]") {
        None => (field.row().path == path).then(|| field.into()),
        Some((before, behind)) => {
            let row = path.strip_prefix(before)?.strip_suffix(behind)?.strip_prefix('[')?.strip_suffix(']')?;
            row.parse().ok().map(|row| Place::in_row(field, row))
        }
    })
}

pub(super) fn serialize<S: Serializer>(numbers: &BTreeMap<Place, Typed>, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_map(numbers.iter().map(|(place, typed)| (place.to_string(), typed)))
}

pub(super) fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<BTreeMap<Place, Typed>, D::Error> {
    let texts = BTreeMap::<String, Typed>::deserialize(deserializer)?;
    let place = |path: &str| from_path(path).ok_or_else(|| D::Error::custom(format!("no figure `{path}`")));
    texts.into_iter().map(|(path, typed)| Ok((place(&path)?, typed))).collect()
}
