//! The check's load by itself: taken out of it, put into it.

use super::Entries;
use standfast_core::document::{Document, Known, Load};
use standfast_core::place::Place;
use standfast_core::problem::Problem;
use std::collections::BTreeMap;

/// What the paths of a load's figures begin with.
const LOAD: &str = "load.";

fn is_of_load(place: Place) -> bool {
    place.field.row().path.starts_with(LOAD)
}

impl Entries {
    /// The load as it would be kept, and how its figures are known.
    pub fn kept_load(&self) -> (Load, BTreeMap<String, Known>) {
        let Document { load, mut known, .. } = self.file();
        known.retain(|path, _| path.starts_with(LOAD));
        (load, known)
    }

    /// What of the load cannot be read, and so cannot be kept; or of all but the load.
    pub fn unread_load(&self, of_load: bool) -> Vec<Problem> {
        let (_, mut unread) = self.document();
        unread.retain(|problem| is_of_load(problem.place) == of_load);
        unread
    }

    /// The same check with another load; truck, move and what was looked at stay.
    pub fn with_load(&self, load: &Load, known: &BTreeMap<String, Known>) -> Self {
        let document = Document { load: load.clone(), known: known.clone(), ..Document::default() };
        let new = Self::from_document(&document);
        let mut entries = self.clone();
        entries.take_load(load);
        entries.numbers.retain(|place, _| !is_of_load(*place));
        entries.numbers.extend(new.numbers.into_iter().filter(|(place, _)| is_of_load(*place)));
        entries.known.retain(|place, _| !is_of_load(*place));
        entries.known.extend(new.known.into_iter().filter(|(place, _)| is_of_load(*place)));
        entries
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::example;
    use standfast_core::place::Field;
    use standfast_core::units::System;

    #[test]
    fn a_load_goes_in_and_comes_out_and_all_else_stays() {
        let documents = [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD].map(example::document);
        for into in &documents {
            for from in &documents {
                let entries = Entries::from_document(into);
                let (load, known) = Entries::from_document(from).kept_load();
                assert_eq!(load, from.load);
                let with = entries.with_load(&load, &known);
                assert_eq!(with.kept_load(), (load, known));
                let (document, unread) = with.document();
                assert!(unread.is_empty());
                assert_eq!(
                    (document.truck, document.lift, document.drive),
                    (into.truck.clone(), into.lift.clone(), into.drive.clone())
                );
                // And back.
                let (own, known) = entries.kept_load();
                assert_eq!(with.with_load(&own, &known).document(), entries.document());
            }
        }
    }

    #[test]
    fn what_cannot_be_read_is_told_apart() {
        let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
        entries.enter(Field::LoadMass.into(), "heavy", System::Metric);
        entries.enter(Field::Tread.into(), "wide", System::Metric);
        let places = |of_load| entries.unread_load(of_load).iter().map(|p| p.place.field).collect::<Vec<_>>();
        assert_eq!((places(true), places(false)), (vec![Field::LoadMass], vec![Field::Tread]));
    }
}
