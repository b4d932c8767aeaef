//! Tables for spreadsheets from outside: another library reads ours and writes what we read, damage is
//! refused or does nothing, a day's list is quick.

mod damaged;
mod day;
mod outside;

use proptest::prelude::*;
use standfast_core::book::{Book, SetUp, TruckRecord};
use standfast_core::document::{Attachment, CentreKnown, Load, Plate, PlateFor, PlateRow, Truck, WeightKnown};

/// Texts of the letters that tables and spreadsheets make something of, and some others.
pub fn texts() -> impl Strategy<Value = String> {
    prop_oneof![
        "[=+@' \",;\t\r\n0-9a-z\u{fc}\u{ff1d}\u{feff}-]{0,12}",
        "(=|\\+|-|@|\"=|'=|\t=| -|\r|\n@)[ -~]{0,12}",
        // Letters of any script but the one that stands for lost ones.
        "[^\0\u{fffd}]{0,12}",
    ]
}

/// The same with something to be seen.
pub fn names() -> impl Strategy<Value = String> {
    (texts(), "[a-z]").prop_map(|(text, letter)| text + &letter)
}

/// A figure of a range, of few digits or of many.
fn figures(range: std::ops::Range<f64>) -> impl Strategy<Value = f64> {
    let (lo, hi) = (range.start, range.end);
    (range, 0..4_usize).prop_map(move |(value, digits)| {
        let scale = [1.0, 10.0, 100.0, 1000.0][digits];
        let rounded = (value * scale).round() / scale;
        if digits == 3 || rounded < lo || rounded > hi { value } else { rounded }
    })
}

/// Loads that a row can say.
pub fn loads() -> impl Strategy<Value = Vec<Load>> {
    let sides = (figures(0.05..6.0), figures(0.05..8.0), figures(0.02..6.0));
    let centre = prop::option::of((figures(0.0..6.0), figures(-4.0..4.0), figures(0.0..6.0)));
    let known =
        prop::option::of(prop::sample::select(vec![WeightKnown::Scale, WeightKnown::Note, WeightKnown::Estimate]));
    let load =
        (names(), figures(1.0..20000.0), known, sides, centre).prop_map(|(name, mass, known, sides, centre)| Load {
            name,
            mass_kg: Some(mass),
            weight_known: known,
            length_m: Some(sides.0),
            width_m: Some(sides.1),
            height_m: Some(sides.2),
            centre_known: Some(if centre.is_some() { CentreKnown::Mark } else { CentreKnown::Middle }),
            cg_from_heel_m: centre.map(|c| c.0),
            cg_left_m: centre.map(|c| c.1),
            cg_above_m: centre.map(|c| c.2),
            ..Load::default()
        });
    prop::collection::vec(load, 1..6)
}

/// Books of trucks with plates whose rows go together; no two set-ups are called the same.
pub fn books() -> impl Strategy<Value = Book> {
    let rows = prop::collection::vec((figures(0.1..1.9), figures(50.0..20000.0)), 1..5);
    let optional = || (prop::option::of(figures(0.0..4000.0)), prop::option::of(figures(0.0..15.0)));
    let set_up = (names(), names(), rows, optional(), any::<[bool; 3]>());
    let truck = (names(), prop::collection::vec(set_up, 0..3), any::<bool>());
    prop::collection::vec(truck, 0..4).prop_map(|trucks| {
        let trucks = trucks.into_iter().enumerate().map(|(k, (name, set_ups, archived))| TruckRecord {
            name: format!("{name}{k}"),
            archived,
            set_ups: set_ups.into_iter().enumerate().map(|(k, set_up)| a_set_up(k, set_up)).collect(),
            ..TruckRecord::default()
        });
        Book { trucks: trucks.collect(), ..Book::default() }
    })
}

type Drawn = (String, String, Vec<(f64, f64)>, (Option<f64>, Option<f64>), [bool; 3]);

fn a_set_up(k: usize, (name, other, rows, (battery, tilt), flags): Drawn) -> SetUp {
    // Each row is higher than the one before and allows no more.
    let rows = rows.iter().enumerate().map(|(n, (height, kg))| PlateRow {
        height_m: Some(height + 2.0 * n as f64),
        load_centre_m: Some(0.5),
        capacity_kg: Some(*kg),
    });
    let mut rows: Vec<PlateRow> = rows.collect();
    let mut least = f64::INFINITY;
    for row in &mut rows {
        least = row.capacity_kg.map_or(least, |kg| kg.min(least));
        row.capacity_kg = Some(least);
    }
    let plate = Plate {
        issued_for: Some(if flags[0] { PlateFor::Forks } else { PlateFor::Attachment }),
        rows,
        battery_min_kg: battery,
        tilt_back_deg: tilt,
        extensions: flags[1],
        issued: if flags[2] { "2024-02-29".to_owned() } else { String::new() },
        attachment: other.clone(),
        ..Plate::default()
    };
    let attachment = flags[0].then(|| Attachment { name: other.clone(), ..Attachment::default() });
    let truck = Truck { serial: other, attachment, plate: Some(plate), ..Truck::default() };
    SetUp { name: format!("{name}{k}"), archived: flags[1], truck, ..SetUp::default() }
}
