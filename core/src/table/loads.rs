//! Loads: a row for each, one block.

use super::cells::Row;
use super::head::{Column, Sheet};
use super::write::Writer;
use super::wrong::{Fault, Wrong};
use crate::document::{CentreKnown, Load, WeightKnown};
use crate::place::Field;
use crate::units::Quantity::{Length, Mass};
use crate::units::System;

const NAME: &str = "name";
const WEIGHT: &str = "weight";
const KNOWN: &str = "weight known by";
const LENGTH: &str = "length";
const WIDTH: &str = "width";
const HEIGHT: &str = "height";
const AHEAD: &str = "centre from heel";
const LEFT: &str = "centre left";
const ABOVE: &str = "centre above";

static COLUMNS: [Column; 9] = [
    Column::text(&[NAME, "load"], true),
    Column::figure(&[WEIGHT, "mass"], Mass, true),
    Column::text(&[KNOWN], false),
    Column::figure(&[LENGTH], Length, true),
    Column::figure(&[WIDTH], Length, true),
    Column::figure(&[HEIGHT], Length, true),
    Column::figure(&[AHEAD, "center from heel"], Length, false),
    Column::figure(&[LEFT, "center left"], Length, false),
    Column::figure(&[ABOVE, "center above"], Length, false),
];

const WAYS: &[&str] = &["scale", "note", "estimate"];
const KINDS: [WeightKnown; 3] = [WeightKnown::Scale, WeightKnown::Note, WeightKnown::Estimate];

/// The loads of a table, in its order. Length lies along the forks, width across them. Needed are `name`,
/// `weight`, `length`, `width` and `height`, the figures with their units; the centre's three distances
/// (from the face at the heel, to the left of the middle, above the underside) are given together or not at
/// all. Without `weight known by` (`scale`, `note` or `estimate`) a weight is no better than an estimate.
///
/// # Errors
/// All that is wrong, by row; then nothing is taken.
///
/// ```
/// use standfast_core::table::loads_from_csv;
/// let loads = loads_from_csv("name,weight_kg,length_cm,width_cm,height_cm\nGlaze drums,640,120,80,95\n");
/// assert_eq!(loads.map(|l| (l[0].mass_kg, l[0].width_m)), Ok((Some(640.0), Some(0.8))));
/// ```
pub fn loads_from_csv(text: &str) -> Result<Vec<Load>, Vec<Wrong>> {
    let mut sheet = Sheet::read(text, &COLUMNS)?;
    let loads = sheet.rows().iter().map(|row| load(&mut sheet, row)).collect();
    sheet.done(loads)
}

fn load(sheet: &mut Sheet, row: &Row) -> Load {
    let fields = [(AHEAD, Field::LoadCgFromHeel), (LEFT, Field::LoadCgLeft), (ABOVE, Field::LoadCgAbove)];
    let filled = fields.map(|(name, _)| !sheet.text(row, name).trim().is_empty());
    let centre = fields.map(|(name, field)| sheet.figure(row, name, field));
    let any = filled.contains(&true);
    for ((name, _), filled) in fields.into_iter().zip(filled) {
        if any && !filled {
            sheet.wrong(row, name, Fault::Together { columns: &[AHEAD, LEFT, ABOVE] });
        }
    }
    Load {
        name: sheet.needed_text(row, NAME),
        mass_kg: sheet.needed(row, WEIGHT, Field::LoadMass),
        weight_known: sheet.word(row, KNOWN, WAYS).map(|k| KINDS[k]),
        length_m: sheet.needed(row, LENGTH, Field::LoadLength),
        width_m: sheet.needed(row, WIDTH, Field::LoadWidth),
        height_m: sheet.needed(row, HEIGHT, Field::LoadHeight),
        centre_known: Some(if any { CentreKnown::Mark } else { CentreKnown::Middle }),
        cg_from_heel_m: centre[0],
        cg_left_m: centre[1],
        cg_above_m: centre[2],
        ..Load::default()
    }
}

/// Whether a row of a table can say all that is known of a load: one block, not turned, not hanging.
pub fn is_one_block(load: &Load) -> bool {
    let said = Load {
        name: load.name.clone(),
        mass_kg: load.mass_kg,
        weight_known: load.weight_known,
        length_m: load.length_m,
        width_m: load.width_m,
        height_m: load.height_m,
        centre_known: load.centre_known,
        cg_from_heel_m: load.cg_from_heel_m,
        cg_left_m: load.cg_left_m,
        cg_above_m: load.cg_above_m,
        ..Load::default()
    };
    said == *load
}

/// Loads as [`loads_from_csv`] reads them; of others than blocks ([`is_one_block`]) only what a row can say.
pub fn csv_of_loads<'l>(loads: impl IntoIterator<Item = &'l Load>, system: System) -> String {
    let mut table = Writer::new(COLUMNS.iter().map(|c| (c.names[0], c.quantity)), system);
    for load in loads {
        let marked = |value: Option<f64>| value.filter(|_| load.centre_known == Some(CentreKnown::Mark));
        table.text(&load.name);
        table.figure(load.mass_kg);
        let known = load.weight_known.and_then(|w| KINDS.iter().position(|k| *k == w));
        table.word(known.map_or("", |k| WAYS[k]));
        table.figure(load.length_m);
        table.figure(load.width_m);
        table.figure(load.height_m);
        table.figure(marked(load.cg_from_heel_m));
        table.figure(marked(load.cg_left_m));
        table.figure(marked(load.cg_above_m));
    }
    table.done()
}

#[cfg(test)]
mod tests;
