use super::*;
use crate::entries::DriveEntry;
use standfast_core::document::WeightKnown;
use standfast_core::example;
use standfast_core::place::Field;

fn four() -> Entries {
    Entries::from_document(&example::document(example::FOUR_WHEEL))
}

fn tread() -> Place {
    Field::Tread.into()
}

fn known(document: &Document, path: &str) -> Option<Known> {
    document.known.get(path).copied()
}

#[test]
fn a_document_comes_back_with_how_it_is_known() {
    let mut document = example::document(example::THREE_WHEEL);
    for (path, by, tolerance) in [
        ("truck.tread_m", Some(By::Tape), Some(0.001_5)),
        ("truck.wheelbase_m", Some(By::Sheet), None),
        ("truck.mast.stages[1].mass_kg", None, Some(1.0 / 3.0)),
        ("load.mass_kg", None, Some(2.5)),
        ("lift.heel_gap_m", Some(By::Estimate), None),
    ] {
        document.known.insert(path.to_owned(), Known { by, tolerance });
    }
    let entries = Entries::from_document(&document);
    assert_eq!(entries.document(), (document.clone(), vec![]));
    assert_eq!(Document::from_json(&entries.file().to_json()).expect("our own file"), document);
    let text = serde_json::to_string(&entries).expect("stored");
    assert_eq!(serde_json::from_str::<Entries>(&text).expect("read"), entries);
}

#[test]
fn what_is_usual_leaves_nothing_behind() {
    let mut entries = four();
    let before = entries.clone();
    entries.choose_way(tread(), By::Tape);
    assert_eq!((entries.way(tread()), entries.is_known_otherwise(tread())), (Some(By::Tape), true));
    entries.choose_way(tread(), By::Sheet);
    assert_eq!(entries, before);
    entries.enter_tolerance(tread(), "2", System::Metric);
    assert!(entries.is_known_otherwise(tread()));
    entries.enter_tolerance(tread(), "", System::Metric);
    assert_eq!(entries, before);
    entries.enter_tolerance(tread(), " ", System::Metric);
    assert!(!entries.is_known_otherwise(tread()), "a blank is no tolerance");
    assert_eq!(entries.document(), before.document());
}

#[test]
fn another_way_takes_its_own_tolerance() {
    let mut entries = four();
    entries.choose_way(tread(), By::Tape);
    entries.enter_tolerance(tread(), "2", System::Metric);
    let (document, _) = entries.document();
    assert_eq!(known(&document, "truck.tread_m"), Some(Known { by: Some(By::Tape), tolerance: Some(0.002) }));
    entries.choose_way(tread(), By::Estimate);
    let (document, _) = entries.document();
    assert_eq!(known(&document, "truck.tread_m"), Some(Known { by: Some(By::Estimate), tolerance: None }));
    // The load's weight has ways of its own.
    let mass = Place::from(Field::LoadMass);
    entries.weight_is_known(None, WeightKnown::Scale);
    entries.enter_tolerance(mass, "3", System::Metric);
    entries.weight_is_known(None, WeightKnown::Scale);
    assert!(entries.is_known_otherwise(mass), "nothing has changed");
    entries.weight_is_known(None, WeightKnown::Estimate);
    assert!(!entries.is_known_otherwise(mass));
}

#[test]
fn a_tolerance_keeps_its_letters_and_its_unit() {
    let mut entries = four();
    entries.enter_tolerance(tread(), "0,5", System::Us);
    let before = entries.clone();
    assert_eq!(entries.tolerance_shown(tread(), System::Us), "0,5");
    assert_eq!(entries.tolerance_shown(tread(), System::Metric), "12.7");
    let (document, problems) = entries.document();
    assert_eq!(problems, []);
    assert_eq!(known(&document, "truck.tread_m").and_then(|k| k.tolerance), Some(Unit::Inch.to_document(0.5)));
    assert_eq!(entries, before);
    // Typed on in the other system, it is in that one's unit.
    entries.enter_tolerance(tread(), "12", System::Metric);
    assert_eq!(entries.tolerance_shown(tread(), System::Us), "0.472");
}

#[test]
fn a_tolerance_that_cannot_be_read_is_a_problem_of_its_own_and_stays() {
    let mut entries = four();
    entries.choose_way(tread(), By::Tape);
    for text in ["about 3", "1,050"] {
        entries.enter_tolerance(tread(), text, System::Metric);
        let (document, problems) = entries.document();
        assert_eq!(known(&document, "truck.tread_m"), Some(Known { by: Some(By::Tape), tolerance: None }));
        let rules: Vec<_> = problems.iter().map(|p| (p.place, &p.rule)).collect();
        assert!(matches!(rules[..], [(place, Rule::ToleranceWithin { .. })] if place == tread()), "{problems:?}");
        assert_eq!(entries.tolerance_shown(tread(), System::Us), text);
        assert_eq!(document.truck.tread_m, example::document(example::FOUR_WHEEL).truck.tread_m);
    }
    // Where the figure is gone it says nothing, nor is it lost.
    let value = entries.shown(tread(), System::Metric);
    entries.enter(tread(), "", System::Metric);
    let (document, problems) = entries.document();
    assert_eq!((known(&document, "truck.tread_m"), problems), (None, vec![]));
    entries.enter(tread(), &value, System::Metric);
    assert_eq!(entries.document().1.len(), 1);
}

/// A row that is removed takes along how it is known, and those behind it keep theirs.
#[test]
fn rows_and_how_they_are_known_stay_together() {
    let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
    let ratio = |row| Place::in_row(Field::StageRatio, row);
    assert_eq!(entries.stages, 2);
    entries.choose_way(ratio(0), By::Estimate);
    entries.choose_way(ratio(1), By::Tape);
    entries.remove_stage(0);
    assert_eq!(entries.way(ratio(0)), Some(By::Tape));
    assert_eq!(entries.known.len(), 1);
    entries.stages += 1;
    assert!(!entries.is_known_otherwise(ratio(1)));
    entries.remove_stage(0);
    assert!(entries.known.is_empty());
    // What a file says of a row that it has not is not for the next one.
    let mut document = example::document(example::FOUR_WHEEL);
    document.known.insert("truck.mast.stages[1].ratio".to_owned(), Known { by: Some(By::Tape), tolerance: None });
    assert!(Entries::from_document(&document).known.is_empty());
}

#[test]
fn a_copied_part_is_known_as_its_pattern() {
    let mut entries = Entries::from_document(&example::document(example::ODD_LOAD));
    let mass = |row| Place::in_row(Field::PartMass, row);
    entries.enter_tolerance(mass(0), "4", System::Metric);
    let copy = entries.copy_part(0).expect("a part");
    assert_eq!(entries.tolerance_shown(mass(copy), System::Metric), "4");
    entries.remove_part(0);
    assert_eq!(entries.known.len(), 1);
    assert!(entries.known.keys().all(|p| p.row < entries.parts.len()), "{:?}", entries.known);
}

/// What a choice hides is not assessed, but goes into the file.
#[test]
fn what_is_hidden_waits() {
    let mut entries = four();
    let axle = Place::from(Field::PivotHeight);
    entries.enter(axle, "250", System::Metric);
    entries.enter_tolerance(axle, "30", System::Metric);
    entries.wheels = Some(standfast_core::document::Wheels::Three);
    let (document, _) = entries.document();
    assert_eq!(known(&document, "truck.axle.pivot_height_m"), None);
    assert_eq!(known(&entries.file(), "truck.axle.pivot_height_m").and_then(|k| k.tolerance), Some(0.03));
    // Without a plate or an attachment there is no place for what is known of it.
    entries.attachment = false;
    entries.choose_way(Field::LostLoad.into(), By::Tape);
    assert_eq!(known(&entries.file(), "truck.attachment.lost_load_m"), None);
}

#[test]
fn of_a_slope_it_is_points_of_percent() {
    let mut entries = four();
    let ramp = Place::from(Field::RampGrade);
    entries.drive = DriveEntry { ramp_in_degrees: true, ..entries.drive };
    entries.enter(ramp, "5", System::Metric);
    entries.enter_tolerance(ramp, "1.5", System::Metric);
    let (document, _) = entries.document();
    assert_eq!(known(&document, "drive.ramp_pct").and_then(|k| k.tolerance), Some(1.5));
    assert_eq!(tolerance_unit(ramp, System::Us), Some(Unit::Percent));
}

#[test]
fn a_change_to_a_document_is_taken_over() {
    let before = example::document(example::FOUR_WHEEL);
    let mut entries = Entries::from_document(&before);
    entries.enter_tolerance(Field::Wheelbase.into(), "3.", System::Metric);
    let (before, _) = entries.document();
    let mut after = before.clone();
    after.known.insert("truck.tread_m".to_owned(), Known { by: Some(By::Tape), tolerance: None });
    entries.take_changes(&before, &after);
    assert_eq!(entries.way(tread()), Some(By::Tape));
    assert_eq!(entries.tolerance_shown(Field::Wheelbase.into(), System::Metric), "3.", "as typed");
    entries.take_changes(&after, &before);
    assert_eq!(entries.known.len(), 1);
}

#[test]
fn a_file_that_knows_what_there_is_not_is_found_out() {
    let mut document = example::document(example::FOUR_WHEEL);
    assert_eq!(not_known_so(&document), None);
    document.known.insert("truck.tread_m".to_owned(), Known { by: Some(By::Tape), tolerance: Some(-1.0) });
    assert_eq!(not_known_so(&document), None, "that one can be put right in its box");
    document.known.insert("truck.colour".to_owned(), Known { by: Some(By::Tape), tolerance: None });
    assert_eq!(not_known_so(&document), Some("truck.colour".to_owned()));
}
