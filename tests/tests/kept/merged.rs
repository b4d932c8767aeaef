//! What is said before a book is taken in is what then happens, and nothing else happens.

use proptest::prelude::*;
use standfast_core::book::merge::{Change, How, Kind, What, apply, preview};
use standfast_core::book::{AttachmentRecord, Book, CheckRecord, LoadRecord, SetUp, TruckRecord};
use standfast_tests::books;
use standfast_tests::draw::Draws;
use std::collections::BTreeMap;

/// A record by kind, truck and id.
type Key = (Kind, Option<String>, String);

/// Every record as text; a truck without its set-ups.
fn records(book: &Book) -> BTreeMap<Key, String> {
    fn text<T: serde::Serialize>(record: &T) -> String {
        serde_json::to_string(record).expect("JSON")
    }
    let mut all = BTreeMap::new();
    for truck in &book.trucks {
        let bare = TruckRecord { set_ups: Vec::new(), ..truck.clone() };
        all.insert((Kind::Truck, None, truck.id.clone()), text(&bare));
        for set_up in &truck.set_ups {
            let _: &SetUp = set_up;
            all.insert((Kind::SetUp, Some(truck.id.clone()), set_up.id.clone()), text(set_up));
        }
    }
    all.extend(book.attachments.iter().map(|r: &AttachmentRecord| ((Kind::Attachment, None, r.id.clone()), text(r))));
    all.extend(book.loads.iter().map(|r: &LoadRecord| ((Kind::Load, None, r.id.clone()), text(r))));
    all.extend(book.log.iter().map(|r: &CheckRecord| ((Kind::Check, None, r.id.clone()), text(r))));
    all
}

/// What happened to a record, seen from before and after alone.
fn happened(key: &Key, ours: Option<&String>, theirs: Option<&String>, after: Option<&String>) -> &'static str {
    match (ours, theirs, after) {
        (None, Some(theirs), Some(after)) if theirs == after => "added",
        (Some(ours), Some(theirs), Some(after)) if ours == theirs && theirs == after => "same",
        (Some(ours), Some(_), Some(after)) if ours == after && key.0 == Kind::Check => "beside",
        (Some(ours), Some(_), Some(after)) if ours == after => "kept",
        (Some(_), Some(theirs), Some(after)) if theirs == after => "changed",
        (Some(_), None, None) => "removed",
        (Some(ours), None, Some(after)) if ours == after => "left",
        (ours, theirs, after) => panic!("{key:?}: {ours:?}, {theirs:?}, {after:?}"),
    }
}

fn told(change: &Change) -> &'static str {
    match change.what {
        What::Added => "added",
        What::Changed { .. } => "changed",
        What::Kept { .. } => "kept",
        What::Same => "same",
        What::Removed => "removed",
        What::Beside { .. } => "beside",
    }
}

fn held(ours: &Book, theirs: &Book, how: How) -> BTreeMap<&'static str, usize> {
    let (after, changes) = (apply(ours, theirs, how), preview(ours, theirs, how));
    let (before, file, mut result) = (records(ours), records(theirs), records(&after));
    // Taken in beside another: there under the id that was said, and nothing else of it is otherwise.
    for change in &changes {
        if let What::Beside { id } = &change.what {
            let there = result.remove(&(Kind::Check, None, id.clone())).expect("under its new id");
            let old = file[&(Kind::Check, None, change.id.clone())].clone();
            assert_eq!(there.replace(&format!("\"id\":\"{id}\""), &format!("\"id\":\"{}\"", change.id)), old);
        }
    }
    let key = |c: &Change| (c.kind, c.truck.clone(), c.id.clone());
    let said: BTreeMap<Key, &Change> = changes.iter().map(|c| (key(c), c)).collect();
    assert_eq!(said.len(), changes.len(), "one word on each");
    let mut counts = BTreeMap::new();
    let keys: std::collections::BTreeSet<_> = before.keys().chain(file.keys()).chain(result.keys()).collect();
    for key in keys {
        let what = happened(key, before.get(key), file.get(key), result.get(key));
        *counts.entry(what).or_default() += 1;
        // The set-ups of a truck that comes or goes as a whole go with it.
        let truck = key.1.as_ref().and_then(|truck| said.get(&(Kind::Truck, None, truck.clone())));
        let with_truck = truck.is_some_and(|c| matches!(c.what, What::Added | What::Removed));
        match said.get(key) {
            Some(change) => assert_eq!(told(change), what, "{key:?}"),
            None if with_truck => assert!(matches!(what, "added" | "removed"), "{key:?}: {what}"),
            None => assert_eq!(what, "left", "{key:?}"),
        }
    }
    for change in &changes {
        if let What::Changed { fields } | What::Kept { fields } = &change.what {
            assert!(!fields.is_empty(), "{change:?}");
        }
    }
    // It can be saved and opened, and the same file once more changes nothing.
    assert_eq!(Book::from_json(&after.to_json()), Ok(after.clone()));
    assert!(preview(&after, theirs, how).iter().all(|c| !c.is_one()));
    assert_eq!(records(&apply(&after, theirs, how)), records(&after));
    // The log only grows, and stays in its order.
    assert_eq!(after.log[..ours.log.len()], ours.log[..]);
    counts
}

/// Two books that have ids in common, some of their records the same.
fn two(seed: u64) -> (Book, Book) {
    let mut draws = Draws::seeded_row(seed, 600);
    let (ours, mut theirs) = (books::book(&mut draws, seed % 3), books::book(&mut draws, 0));
    if draws.chance(0.7) {
        theirs.trucks.retain(|t| ours.trucks.iter().all(|o| o.id != t.id));
        theirs.trucks.extend(ours.trucks.iter().filter(|_| draws.chance(0.6)).cloned());
        theirs.log.retain(|t| ours.log.iter().all(|o| o.id != t.id));
        theirs.log.extend(ours.log.iter().filter(|_| draws.chance(0.6)).cloned());
        for truck in &mut theirs.trucks {
            truck.set_ups.retain(|_| draws.chance(0.8));
            truck.set_ups.iter_mut().filter(|_| draws.chance(0.3)).for_each(|s| s.note.push('!'));
        }
    }
    (ours, theirs)
}

#[test]
fn nothing_happens_that_was_not_said() {
    let mut counts: BTreeMap<&'static str, usize> = BTreeMap::new();
    for seed in 0..3000 {
        let (ours, theirs) = two(seed);
        for how in How::ALL {
            held(&ours, &theirs, how).into_iter().for_each(|(what, n)| *counts.entry(what).or_default() += n);
        }
    }
    eprintln!("{counts:?}");
    for what in ["added", "same", "beside", "kept", "changed", "removed", "left"] {
        assert!(counts.get(what).is_some_and(|n| *n > 300), "{what}: {counts:?}");
    }
}

proptest! {
    #[test]
    fn any_two_books(mut draws in Draws::any(), mut more in Draws::any(), how in prop::sample::select(How::ALL.to_vec())) {
        held(&books::book(&mut draws, 1), &books::book(&mut more, 0), how);
    }

    #[test]
    fn an_empty_book_becomes_the_file(mut draws in Draws::any(), how in prop::sample::select(How::ALL.to_vec())) {
        let file = books::book(&mut draws, 2);
        prop_assert_eq!(apply(&Book::default(), &file, how), file);
    }
}
