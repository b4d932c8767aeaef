//! A set-up's facts in a line.

use crate::figures::Printer;
use crate::words::{fill, words};
use standfast_core::book::SetUp;
use standfast_core::document::{Attachment, Plate, PlateFor, PlateRow};
use standfast_core::units::Rounding::{Down, Nearest, Up};

const DOT: &str = " \u{b7} ";

fn joined(parts: impl IntoIterator<Item = Option<String>>) -> String {
    let parts: Vec<_> = parts.into_iter().flatten().filter(|p| !p.is_empty()).collect();
    parts.join(DOT)
}

/// What stands on it: weight, battery, lift, attachment, tyres.
pub fn standing(set_up: &SetUp, print: Printer) -> String {
    let (w, truck) = (words(), &set_up.truck);
    let filled = |text: &str, name: &str, value: String| fill(text, &[(name, &value)]);
    joined([
        Some(truck.serial.clone()),
        truck.service_kg.map(|kg| print.mass(kg, Nearest)),
        truck.battery.fitted_kg.map(|kg| filled(w.card.battery_summary, "mass", print.mass(kg, Nearest))),
        truck.mast.lift_m.map(|m| filled(w.card.lifts_summary, "height", print.height(m))),
        truck.attachment.as_ref().map(|a| a.name.clone()),
        truck.tyres.map(|tyres| (w.plate.tyres)(tyres).to_owned()),
    ])
}

/// What a plate allows, row by row.
pub fn plate_rows(plate: &Plate, print: Printer) -> Vec<String> {
    let row = |row: &PlateRow| {
        let unknown = || words().book.not_entered.to_owned();
        let values = [
            ("capacity", row.capacity_kg.map_or_else(unknown, |kg| print.mass(kg, Down))),
            ("centre", row.load_centre_m.map_or_else(unknown, |m| print.length(m, Down))),
            ("height", row.height_m.map_or_else(unknown, |m| print.height_down(m))),
        ];
        let values = values.each_ref().map(|(name, value)| (*name, value.as_str()));
        fill(words().book.plate_row, &values)
    };
    plate.rows.iter().map(row).collect()
}

/// What else a plate says: what it is for, its battery window, when it was issued.
pub fn plate_facts(plate: &Plate, print: Printer) -> String {
    let w = &words().book;
    let front_end = plate.issued_for.map(|front_end| match front_end {
        PlateFor::Forks => w.for_forks.to_owned(),
        PlateFor::Attachment if plate.attachment.is_empty() => w.for_attachment.to_owned(),
        PlateFor::Attachment => fill(w.for_named, &[("name", &plate.attachment)]),
    });
    let (min, max) =
        (plate.battery_min_kg.map(|kg| print.mass(kg, Up)), plate.battery_max_kg.map(|kg| print.mass(kg, Down)));
    let window = match (min, max) {
        (Some(min), Some(max)) => Some(fill(w.window, &[("min", &min), ("max", &max)])),
        (Some(min), None) => Some(fill(w.window_from, &[("min", &min)])),
        (None, Some(max)) => Some(fill(w.window_to, &[("max", &max)])),
        (None, None) => None,
    };
    let issued = (!plate.issued.is_empty()).then(|| fill(w.issued, &[("day", &plate.issued)]));
    joined([front_end, window, issued])
}

/// An attachment's figures.
pub fn attachment(attachment: &Attachment, print: Printer) -> String {
    let unknown = || words().book.not_entered.to_owned();
    let values = [
        ("mass", attachment.mass_kg.map_or_else(unknown, |kg| print.mass(kg, Up))),
        ("ahead", attachment.cg_ahead_m.map_or_else(unknown, |m| print.length(m, Nearest))),
        ("lost", attachment.lost_load_m.map_or_else(unknown, |m| print.length(m, Up))),
    ];
    let values = values.each_ref().map(|(name, value)| (*name, value.as_str()));
    fill(words().book.attachment_facts, &values)
}
