//! The plate: its rows, and what it says of the truck it was issued for.

use super::Entries;
use crate::document::{self, PlateFor};
use crate::place::{Field, Place};
use crate::problem::Rule;
use crate::scenario::{Plate, PlateRow};

/// Whether a text is a day of the calendar, year, month and day as ISO 8601 has them: `2024-03-12`.
///
/// ```
/// use standfast_core::validate::is_day;
/// assert!(is_day("2024-02-29") && !is_day("2023-02-29") && !is_day("12.3.2024"));
/// ```
pub fn is_day(text: &str) -> bool {
    let mut parts = text.trim().split('-');
    let mut number = |digits: usize| {
        let part = parts.next().filter(|p| p.len() == digits && p.bytes().all(|b| b.is_ascii_digit()))?;
        part.parse::<u32>().ok()
    };
    let (Some(year), Some(month), Some(day)) = (number(4), number(2), number(2)) else { return false };
    let leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    let days = match month {
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        1..=12 => 31,
        _ => return false,
    };
    year > 0 && parts.next().is_none() && (1..=days).contains(&day)
}

impl Entries {
    pub(super) fn plate(&mut self) -> Option<Plate> {
        let plate = self.document.truck.plate.clone()?;
        let document::Plate { issued_for, rows, extensions, attachment, issued, tyres, .. } = plate;
        if !issued.trim().is_empty() && !is_day(&issued) {
            self.problem(Field::PlateIssued, None, Rule::NotADay);
        }
        if issued_for.is_none() {
            self.problem(Field::PlateFor, None, Rule::Required);
        }
        if rows.is_empty() {
            self.problem(Field::PlateRows, None, Rule::Required);
        }
        self.at_most(Field::PlateBatteryMin, Field::PlateBatteryMax);
        let rows: Vec<PlateRow> = (0..rows.len())
            .map(|row| PlateRow {
                height: self.needed(Place::in_row(Field::PlateHeight, row)),
                load_centre: self.needed(Place::in_row(Field::PlateLoadCentre, row)),
                capacity: self.needed(Place::in_row(Field::PlateCapacity, row)),
            })
            .collect();
        let complete = |r: &PlateRow| r.height > 0.0 && r.load_centre > 0.0 && r.capacity > 0.0;
        for (late, b) in rows.iter().enumerate().filter(|(_, r)| complete(r)) {
            for (early, a) in rows.iter().enumerate().filter(|(_, r)| complete(r)) {
                let twice = a.height.total_cmp(&b.height).is_eq() && a.load_centre.total_cmp(&b.load_centre).is_eq();
                let place = Place::in_row(Field::PlateCapacity, late);
                if twice && early < late {
                    self.problem(place, Some(b.capacity), Rule::PlateTwice { row: early });
                } else if b.height >= a.height && b.load_centre >= a.load_centre && b.capacity > a.capacity {
                    self.problem(place, Some(b.capacity), Rule::PlateFalls { row: early });
                }
            }
        }
        Some(Plate {
            issued_for: issued_for.unwrap_or(PlateFor::Forks),
            rows,
            battery_min: self.entered(Field::PlateBatteryMin),
            battery_max: self.entered(Field::PlateBatteryMax),
            extensions,
            attachment: attachment.trim().to_owned(),
            attachment_mass: self.entered(Field::PlateAttachmentMass),
            mast_lift: self.entered(Field::PlateMastLift),
            tyres,
            tilt_back: self.entered(Field::PlateTiltBack).map(f64::to_radians),
            tilt_forward: self.entered(Field::PlateTiltForward).map(f64::to_radians),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_of_the_calendar_and_no_others() {
        for day in ["2024-03-12", "2000-02-29", "2024-02-29", "1999-12-31", "2026-04-30", " 2024-03-12 "] {
            assert!(is_day(day), "{day}");
        }
        for not in [
            "",
            "2024",
            "2024-3-12",
            "24-03-12",
            "2024-13-01",
            "2024-00-10",
            "2024-04-31",
            "2023-02-29",
            "1900-02-29",
            "2024-01-00",
            "0000-01-01",
            "2024-03-12T08:00",
            "2024/03/12",
            "2024-03-12-1",
            "+024-03-12",
            "２０２４-03-12",
        ] {
            assert!(!is_day(not), "{not}");
        }
    }
}
