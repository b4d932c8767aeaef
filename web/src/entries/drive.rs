//! The drive as entered: what is looked at, how the ramp is driven down, and in which unit a slope is typed.

use super::Entries;
use serde::{Deserialize, Serialize};
use standfast_core::document::{Drive, RampDown};
use standfast_core::place::{Field, Place};
use standfast_core::step::StepId;
use standfast_core::units::{Quantity, System, Unit};

/// The choices of the drive.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct DriveEntry {
    /// Whether braking with the load is looked at; it is unless this says no.
    pub brake: Option<bool>,
    /// The same of bends with the load.
    pub corner: Option<bool>,
    /// The same of bends without one.
    pub corner_empty: Option<bool>,
    pub ramp_down: Option<RampDown>,
    /// Whether the ramp is typed in degrees: no part of a document.
    pub ramp_in_degrees: bool,
    /// Whether the cross-fall is.
    pub cross_fall_in_degrees: bool,
}

impl DriveEntry {
    pub(super) fn of(drive: &Drive) -> Self {
        let Drive { brake, corner, corner_empty, ramp_down, .. } = *drive;
        Self { brake, corner, corner_empty, ramp_down, ..Self::default() }
    }

    /// The drive without its figures.
    pub(super) fn drive(self) -> Drive {
        let Self { brake, corner, corner_empty, ramp_down, .. } = self;
        Drive { brake, corner, corner_empty, ramp_down, ..Drive::default() }
    }

    /// Whether something that is asked for unless it is left out is looked at.
    pub fn looks_at(choice: Option<bool>) -> bool {
        choice != Some(false)
    }

    /// Whether a slope is typed in degrees; `None` for what is no slope.
    pub fn in_degrees(&mut self, field: Field) -> Option<&mut bool> {
        match field {
            Field::RampGrade => Some(&mut self.ramp_in_degrees),
            Field::CrossFall => Some(&mut self.cross_fall_in_degrees),
            _ => None,
        }
    }
}

impl Entries {
    /// The unit that a figure is typed in; of a slope the one that was chosen for it.
    pub fn unit(&self, place: Place, system: System) -> Option<Unit> {
        let quantity = place.field.row().quantity?;
        let mut drive = self.drive;
        Some(match (quantity, drive.in_degrees(place.field)) {
            (Quantity::Slope, Some(true)) => Unit::SlopeDegree,
            _ => quantity.unit(system),
        })
    }

    /// Whether a figure of the drive counts as the choices stand; `None` for other figures.
    pub(super) fn counts_in_drive(&self, field: Field) -> Option<bool> {
        let (corner, empty) = (DriveEntry::looks_at(self.drive.corner), DriveEntry::looks_at(self.drive.corner_empty));
        match field {
            Field::Braking => Some(DriveEntry::looks_at(self.drive.brake)),
            Field::CornerSpeed => Some(corner),
            Field::CornerSpeedEmpty => Some(empty),
            Field::CornerRadius => Some(corner || empty),
            _ => None,
        }
    }

    /// Whether the move has a step, as far as entered: to show it before there is an answer.
    pub fn has_step(&self, id: StepId) -> bool {
        let typed = |field: Field| self.numbers.contains_key(&field.into());
        match id {
            StepId::Brake => DriveEntry::looks_at(self.drive.brake),
            StepId::CornerLeft | StepId::CornerRight => DriveEntry::looks_at(self.drive.corner),
            StepId::EmptyCornerLeft | StepId::EmptyCornerRight => DriveEntry::looks_at(self.drive.corner_empty),
            StepId::RampUp | StepId::RampDown => typed(Field::RampGrade),
            StepId::CrossFallLeft | StepId::CrossFallRight => typed(Field::CrossFall),
            _ => true,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::document::Document;
    use standfast_core::example;

    #[test]
    fn choices_and_figures_come_back_exactly() {
        let mut document = example::document(example::THREE_WHEEL);
        document.drive = Drive {
            brake: Some(true),
            corner: Some(false),
            corner_empty: None,
            braking_ms2: Some(2.1),
            corner_kmh: Some(7.3),
            corner_empty_kmh: Some(9.9),
            radius_m: Some(2.35),
            ramp_pct: Some(12.345_678_9),
            ramp_down: Some(RampDown::Forwards),
            cross_fall_pct: Some(100.0 / 3.0),
            reserve_pct: Some(20.0),
        };
        let entries = Entries::from_document(&document);
        // Bends with the load are left out: their speed waits, and still goes into the file.
        let mut read = document.clone();
        read.drive.corner_kmh = None;
        assert_eq!(entries.document(), (read, Vec::new()));
        assert_eq!(entries.file(), document);
        assert_eq!(Entries::from_document(&Document::default()).drive, DriveEntry::default());
    }

    /// 10 % is 5.71 degrees and 10 degrees is 17.63 %: choosing a unit never changes the slope.
    #[test]
    fn percent_and_degrees_are_never_confused() {
        let place = Place::from(Field::RampGrade);
        let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
        entries.enter(place, "10,0", System::Metric);
        let percent = |e: &Entries| e.document().0.drive.ramp_pct.expect("a ramp");
        entries.drive.ramp_in_degrees = true;
        assert_eq!(percent(&entries).to_bits(), 10.0_f64.to_bits());
        assert_eq!(entries.shown(place, System::Metric), "5.71");
        entries.drive.ramp_in_degrees = false;
        assert_eq!(entries.shown(place, System::Us), "10,0");
        entries.drive.ramp_in_degrees = true;
        entries.enter(place, "10", System::Us);
        assert!((percent(&entries) - 17.632_698).abs() < 1e-6);
        // The other slope keeps its own unit.
        entries.enter(Field::CrossFall.into(), "10", System::Metric);
        assert_eq!(entries.document().0.drive.cross_fall_pct, Some(10.0));
        entries.drive.ramp_in_degrees = false;
        assert!((percent(&entries) - 17.632_698).abs() < 1e-6);
        assert_eq!(entries.shown(place, System::Metric), "17.63");
    }

    /// A check saved from what was typed in degrees has the same slope to the last bit.
    #[test]
    fn a_slope_in_degrees_is_saved_exactly() {
        let place = Place::from(Field::CrossFall);
        let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
        entries.drive.cross_fall_in_degrees = true;
        entries.enter(place, "3", System::Metric);
        let saved = Document::from_json(&entries.file().to_json()).expect("our own file");
        let opened = Entries::from_document(&saved);
        assert_eq!(opened.document().0.drive.cross_fall_pct, entries.document().0.drive.cross_fall_pct);
        assert!((opened.document().0.drive.cross_fall_pct.expect("a slope") - 5.240_78).abs() < 1e-5);
    }
}
