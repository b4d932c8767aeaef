use super::*;
use crate::book::{AttachmentRecord, Outcome};
use crate::document::Document;

fn text(text: &str) -> String {
    text.to_owned()
}

fn set_up(id: &str, lift: f64) -> SetUp {
    let mut set_up = SetUp { id: text(id), name: text(id), ..SetUp::default() };
    set_up.truck.mast.lift_m = Some(lift);
    set_up
}

fn truck(id: &str, name: &str, set_ups: &[SetUp]) -> TruckRecord {
    TruckRecord { id: text(id), name: text(name), set_ups: set_ups.to_vec(), ..TruckRecord::default() }
}

fn book(trucks: Vec<TruckRecord>) -> Book {
    Book { trucks, ..Book::default() }
}

fn check(id: &str, who: &str) -> CheckRecord {
    let outcome = Outcome { verdict: None, reason: String::new(), used: None };
    let (at, program) = (text("2026-05-14T09:30:00+02:00"), text("0.1.0"));
    CheckRecord { id: text(id), at, who: text(who), program, of: None, check: Document::default(), outcome }
}

fn whats(ours: &Book, theirs: &Book, how: How) -> Vec<(String, What)> {
    preview(ours, theirs, how).into_iter().map(|c| (c.id, c.what)).collect()
}

fn changed(fields: &[&str]) -> What {
    What::Changed { fields: fields.iter().map(|f| text(f)).collect() }
}

#[test]
fn set_ups_are_taken_one_by_one_and_none_is_lost() {
    let ours = book(vec![truck("t", "Blue", &[set_up("a", 3.0), set_up("b", 4.0)]), truck("u", "Red", &[])]);
    let theirs = book(vec![truck("v", "New", &[]), truck("t", "Blue 1", &[set_up("c", 5.0), set_up("a", 3.5)])]);

    let theirs_wins = apply(&ours, &theirs, How::Theirs);
    let both = [set_up("a", 3.5), set_up("b", 4.0), set_up("c", 5.0)];
    let merged = [truck("t", "Blue 1", &both), truck("u", "Red", &[]), truck("v", "New", &[])];
    assert_eq!(theirs_wins.trucks, merged);
    let told =
        [("t", changed(&["name"])), ("a", changed(&["truck.mast.lift_m"])), ("c", What::Added), ("v", What::Added)];
    assert_eq!(whats(&ours, &theirs, How::Theirs), told.map(|(id, what)| (text(id), what)));

    let ours_kept = apply(&ours, &theirs, How::Ours);
    let both = [set_up("a", 3.0), set_up("b", 4.0), set_up("c", 5.0)];
    assert_eq!(ours_kept.trucks, [truck("t", "Blue", &both), truck("u", "Red", &[]), truck("v", "New", &[])]);

    let replaced = apply(&ours, &theirs, How::Replace);
    let told = preview(&ours, &theirs, How::Replace);
    let removed: Vec<_> = told.iter().filter(|c| c.what == What::Removed).map(|c| (c.kind, c.id.as_str())).collect();
    assert_eq!(removed, [(Kind::SetUp, "b"), (Kind::Truck, "u")]);
    assert_eq!(replaced.trucks, [truck("t", "Blue 1", &[set_up("a", 3.5), set_up("c", 5.0)]), truck("v", "New", &[])]);
}

/// What was checked stays as it was, whatever comes in and how.
#[test]
fn a_check_is_never_overwritten_nor_taken_away() {
    let log = |list: &[CheckRecord]| Book { log: list.to_vec(), ..Book::default() };
    let ours = log(&[check("x", "M. Brandt"), check("y", "M. Brandt")]);
    let theirs = log(&[check("x", "Somebody"), check("z", "Somebody"), check("y", "M. Brandt")]);
    for how in How::ALL {
        let merged = apply(&ours, &theirs, how);
        let told = preview(&ours, &theirs, how);
        let What::Beside { id } = told[0].what.clone() else { panic!("{told:?}") };
        assert_eq!([&told[1].what, &told[2].what], [&What::Added, &What::Same]);
        let other = CheckRecord { id, ..theirs.log[0].clone() };
        assert_eq!(merged.log, [ours.log[0].clone(), ours.log[1].clone(), other, theirs.log[1].clone()]);
        // Once more changes nothing, and says so.
        assert_eq!(apply(&merged, &theirs, how), merged);
        assert!(preview(&merged, &theirs, how).iter().all(|c| c.what == What::Same));
    }
}

#[test]
fn what_differs_is_named_to_the_row() {
    let mut ours = set_up("a", 3.0);
    let plate = ours.truck.plate.get_or_insert_default();
    plate.rows = vec![Default::default(), Default::default()];
    let mut theirs = ours.clone();
    if let Some(plate) = &mut theirs.truck.plate {
        plate.rows[1].capacity_kg = Some(900.0);
    }
    theirs.known.insert(text("truck.tread_m"), Default::default());
    theirs.note = text("new");
    assert_eq!(differing(&ours, &theirs), ["known", "note", "truck.plate.rows[1].capacity_kg"]);
    theirs.truck.plate = None;
    assert_eq!(differing(&ours, &theirs), ["known", "note", "truck.plate"]);
    let attachment = AttachmentRecord::default();
    assert_eq!(differing(&attachment, &attachment), Vec::<String>::new());
}
