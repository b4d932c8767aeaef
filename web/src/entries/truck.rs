//! The check's truck by itself: taken out of it, put into it, an attachment fitted to it.

use super::{Entries, Typed, unit_of};
use standfast_core::book::Of;
use standfast_core::checklist::Answers;
use standfast_core::document::{Attachment, Document, Known, Truck};
use standfast_core::place::{Field, Place};
use standfast_core::problem::Problem;
use standfast_core::units::System;
use std::collections::BTreeMap;

/// What the paths of a truck's figures begin with.
const TRUCK: &str = "truck.";

fn is_of_truck(place: Place) -> bool {
    place.field.row().path.starts_with(TRUCK)
}

impl Entries {
    /// The truck as it would be kept, and how its figures are known.
    pub fn truck(&self) -> (Truck, BTreeMap<String, Known>) {
        let Document { truck, mut known, .. } = self.file();
        known.retain(|path, _| path.starts_with(TRUCK));
        (truck, known)
    }

    /// What of the truck cannot be read, and so cannot be kept.
    pub fn unread_truck(&self) -> Vec<Problem> {
        let (_, mut unread) = self.document();
        unread.retain(|problem| is_of_truck(problem.place));
        unread
    }

    /// The same check with another truck; load and move stay. What was looked at before the lift was
    /// looked at on the other one, and does not.
    pub fn with_truck(&self, truck: &Truck, known: &BTreeMap<String, Known>, of: Option<Of>) -> Self {
        let document = Document { truck: truck.clone(), known: known.clone(), ..Document::default() };
        let new = Self::from_document(&document);
        let mut entries = self.clone();
        entries.truck_name = new.truck_name;
        entries.attachment_name = new.attachment_name;
        (entries.serial, entries.type_name) = (new.serial, new.type_name);
        (entries.tyres, entries.wheels, entries.stages) = (new.tyres, new.wheels, new.stages);
        (entries.plate, entries.plate_rows, entries.plate_for) = (new.plate, new.plate_rows, new.plate_for);
        (entries.plate_extensions, entries.plate_issued) = (new.plate_extensions, new.plate_issued);
        (entries.plate_attachment, entries.plate_tyres) = (new.plate_attachment, new.plate_tyres);
        entries.attachment = new.attachment;
        entries.numbers.retain(|place, _| !is_of_truck(*place));
        entries.numbers.extend(new.numbers.into_iter().filter(|(place, _)| is_of_truck(*place)));
        entries.known.retain(|place, _| !is_of_truck(*place));
        entries.known.extend(new.known.into_iter().filter(|(place, _)| is_of_truck(*place)));
        entries.checklist = Answers::new();
        entries.of = of;
        entries
    }

    /// The same check with an attachment fitted to its truck.
    pub fn with_attachment(&self, attachment: &Attachment) -> Self {
        let mut entries = self.clone();
        entries.attachment = true;
        entries.attachment_name.clone_from(&attachment.name);
        for (field, value) in [
            (Field::AttachmentMass, attachment.mass_kg),
            (Field::AttachmentAhead, attachment.cg_ahead_m),
            (Field::AttachmentAbove, attachment.cg_above_m),
            (Field::LostLoad, attachment.lost_load_m),
        ] {
            let place = Place::from(field);
            entries.known.remove(&place);
            match value.zip(unit_of(place, System::Metric)) {
                Some((value, unit)) => drop(entries.numbers.insert(place, Typed::of_value(value, unit))),
                None => drop(entries.numbers.remove(&place)),
            }
        }
        entries
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::example;

    fn check(text: &str) -> (Document, Entries) {
        let document = example::document(text);
        let entries = Entries::from_document(&document);
        (document, entries)
    }

    /// A truck with every text, choice and figure that a truck can have.
    fn full() -> Truck {
        let text = r#"{"name":"Blue","serial":"S1","type_name":"T","wheels":"four","tyres":"cushion",
            "attachment":{"name":"Clamp"},"mast":{"stages":[{},{}]},
            "plate":{"issued_for":"attachment","rows":[{},{},{}],"extensions":true,"issued":"2026-05-14",
                     "attachment":"Clamp","tyres":"pneumatic"}}"#;
        let truck: Truck = serde_json::from_str(text).expect("a truck");
        let mut document = Document { truck, ..Document::default() };
        for place in Place::all_numbers(&document) {
            if is_of_truck(place) {
                let row = place.field.row();
                *place.number(&mut document).expect("there") = Some(row.min + 0.25 * (row.max - row.min));
            }
        }
        document.truck
    }

    #[test]
    fn a_truck_goes_in_and_comes_out_the_same_and_the_rest_stays() {
        let (document, entries) = check(example::ODD_LOAD);
        let known = [("truck.tread_m".to_owned(), Known { tolerance: Some(0.01), ..Known::default() })];
        let known = BTreeMap::from(known);
        let other = entries.with_truck(&full(), &known, None);
        assert_eq!(other.truck(), (full(), known));
        let (after, problems) = other.document();
        assert_eq!(problems.len(), 0);
        assert_eq!((after.load, after.lift, after.drive), (document.load, document.lift, document.drive));
        let load: Vec<_> = document.known.iter().filter(|(path, _)| !path.starts_with(TRUCK)).collect();
        assert_eq!(after.known.iter().filter(|(path, _)| !path.starts_with(TRUCK)).collect::<Vec<_>>(), load);
        // And back.
        let (truck, known) = entries.truck();
        let back = other.with_truck(&truck, &known, None);
        assert_eq!(back.document().0, Document { checklist: Answers::new(), ..entries.document().0 });
    }

    #[test]
    fn an_attachment_is_fitted_with_all_its_figures_and_no_others() {
        let (_, mut entries) = check(example::THREE_WHEEL);
        let whole = Attachment {
            name: "Clamp".to_owned(),
            mass_kg: Some(120.0),
            cg_ahead_m: Some(0.2),
            ..Attachment::default()
        };
        entries.enter(Field::LostLoad.into(), "90", System::Metric);
        let fitted = entries.with_attachment(&whole);
        assert_eq!(fitted.document().0.truck.attachment, Some(whole));
    }

    #[test]
    fn what_cannot_be_read_is_told() {
        let (_, mut entries) = check(example::THREE_WHEEL);
        entries.enter(Field::LoadMass.into(), "a lot", System::Metric);
        assert_eq!(entries.unread_truck().len(), 0);
        entries.enter(Field::Tread.into(), "wide", System::Metric);
        assert_eq!(entries.unread_truck().len(), 1);
    }
}
