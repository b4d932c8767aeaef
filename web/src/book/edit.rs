//! What is done to trucks and their set-ups, without the page.

use standfast_core::book::{Book, Of, SetUp, TruckRecord};
use standfast_core::document::{Known, Truck};
use std::collections::BTreeMap;

/// A truck as it stands in a check: itself, and how its figures are known.
pub type Standing = (Truck, BTreeMap<String, Known>);

/// A set-up of the book, with its truck's record.
pub fn find<'a>(book: &'a Book, of: &Of) -> Option<(&'a TruckRecord, &'a SetUp)> {
    let truck = book.trucks.iter().find(|t| t.id == of.truck)?;
    Some((truck, truck.set_ups.iter().find(|s| s.id == of.set_up)?))
}

/// A set-up of a truck as it stands.
pub fn set_up(standing: &Standing, name: String, id: String) -> SetUp {
    let (truck, known) = standing.clone();
    SetUp { id, name, truck, known, ..SetUp::default() }
}

/// A new record with one set-up; the two ids are its own and the set-up's.
pub fn record(standing: &Standing, name: String, set_up_name: String, ids: [String; 2]) -> TruckRecord {
    let [id, set_up_id] = ids;
    TruckRecord { id, name, set_ups: vec![set_up(standing, set_up_name, set_up_id)], ..TruckRecord::default() }
}

/// The record with one more set-up.
pub fn with_set_up(record: &TruckRecord, set_up: SetUp) -> TruckRecord {
    let mut record = record.clone();
    record.set_ups.push(set_up);
    record
}

/// The record with one set-up changed.
pub fn with_changed(record: &TruckRecord, set_up: &str, change: impl FnOnce(&mut SetUp)) -> TruckRecord {
    let mut record = record.clone();
    if let Some(set_up) = record.set_ups.iter_mut().find(|s| s.id == set_up) {
        change(set_up);
    }
    record
}

/// The record without one set-up.
pub fn without(record: &TruckRecord, set_up: &str) -> TruckRecord {
    let mut record = record.clone();
    record.set_ups.retain(|s| s.id != set_up);
    record
}

/// Whether a record has to do with what is looked for: every word of it, in any of its names and notes.
pub fn is_found(record: &TruckRecord, wanted: &str) -> bool {
    let mut texts = vec![record.name.as_str(), record.note.as_str()];
    for set_up in &record.set_ups {
        texts.extend([&set_up.name, &set_up.note, &set_up.truck.serial, &set_up.truck.type_name].map(String::as_str));
        texts.extend(set_up.truck.attachment.as_ref().map(|a| a.name.as_str()));
    }
    contains_all(&texts, wanted)
}

/// Whether every word stands in one of the texts, capital or not.
pub fn contains_all(texts: &[&str], wanted: &str) -> bool {
    let texts: Vec<_> = texts.iter().map(|t| t.to_lowercase()).collect();
    wanted.to_lowercase().split_whitespace().all(|word| texts.iter().any(|t| t.contains(word)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::document::Attachment;

    fn standing(name: &str) -> Standing {
        let attachment = Some(Attachment { name: "Crate clamp".to_owned(), ..Attachment::default() });
        (Truck { name: name.to_owned(), serial: "CB-17".to_owned(), attachment, ..Truck::default() }, BTreeMap::new())
    }

    fn blue() -> TruckRecord {
        record(&standing("Blue"), "Blue one".to_owned(), "With clamp".to_owned(), ["t", "s"].map(str::to_owned))
    }

    #[test]
    fn a_set_up_is_found_changed_and_taken_away_and_the_others_stay() {
        let truck = with_set_up(&blue(), set_up(&standing("B"), "Forks".to_owned(), "u".to_owned()));
        let book = Book { trucks: vec![truck.clone()], ..Book::default() };
        let of = |set_up: &str| Of { truck: "t".to_owned(), set_up: set_up.to_owned() };
        assert_eq!(find(&book, &of("u")).map(|(_, s)| s.name.as_str()), Some("Forks"));
        assert_eq!(find(&book, &of("x")), None);
        let changed = with_changed(&truck, "u", |s| s.note = "New tyres".to_owned());
        assert_eq!((changed.set_ups[1].note.as_str(), &changed.set_ups[0]), ("New tyres", &truck.set_ups[0]));
        assert_eq!(without(&truck, "s").set_ups, truck.set_ups[1..]);
    }

    #[test]
    fn every_word_is_looked_for_everywhere() {
        for (wanted, found) in [("", true), ("blue CLAMP", true), ("cb-17", true), ("blue red", false), ("  ", true)] {
            assert_eq!(is_found(&blue(), wanted), found, "{wanted}");
        }
    }
}
