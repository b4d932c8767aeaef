use super::paths::from_path;
use super::*;
use standfast_core::checklist::{Answer, Item};
use standfast_core::example;

fn three() -> Entries {
    Entries::from_document(&example::document(example::THREE_WHEEL))
}

#[test]
fn a_document_comes_back_as_it_was() {
    for text in [example::THREE_WHEEL, example::FOUR_WHEEL] {
        let document = example::document(text);
        let (back, problems) = Entries::from_document(&document).document();
        assert_eq!(problems, []);
        assert_eq!(back, document);
    }
}

/// What a plate names, a type sheet and a checklist go there and back, and into the file.
#[test]
fn plates_sheets_and_checklists_come_back_as_they_were() {
    let mut document = example::document(example::FOUR_WHEEL);
    document.truck.attachment = Some(document::Attachment { name: "Drum clamp".to_owned(), ..Default::default() });
    let plate = document.truck.plate.as_mut().expect("a plate");
    plate.issued_for = Some(PlateFor::Attachment);
    (plate.attachment, plate.attachment_kg) = ("Drum clamp".to_owned(), Some(120.0));
    document.checklist =
        Item::ALL.iter().zip([Answer::Yes, Answer::No, Answer::NotThere]).map(|(i, a)| (*i, a)).collect();
    let entries = Entries::from_document(&document);
    assert_eq!(entries.document(), (document.clone(), Vec::new()));
    assert_eq!(entries.file(), document);
    let stored = serde_json::to_string(&entries).expect("stored");
    assert_eq!(serde_json::from_str::<Entries>(&stored).expect("read"), entries);
    // For the bare forks the attachment's weight does not count, but is not lost from the file.
    let mut forks = entries;
    forks.plate_for = Some(PlateFor::Forks);
    let weight = |d: Document| d.truck.plate.and_then(|p| p.attachment_kg);
    assert_eq!((weight(forks.document().0), weight(forks.file())), (None, Some(120.0)));
}

/// What was kept before there were such entries is read.
#[test]
fn entries_kept_by_an_older_page_are_read() {
    let mut kept = serde_json::to_value(three()).expect("stored");
    let map = kept.as_object_mut().expect("an object");
    for new in ["serial", "type_name", "tyres", "plate_issued", "plate_attachment", "plate_tyres", "checklist"] {
        assert!(map.remove(new).is_some(), "{new}");
    }
    let read: Entries = serde_json::from_value(kept).expect("read");
    assert_eq!((read.serial.as_str(), read.tyres, read.numbers.len()), ("", None, three().numbers.len()));
}

#[test]
fn awkward_figures_come_back_to_the_last_bit() {
    for value in [0.001_123, 1.234_5, 0.1 + 0.2, 1.0 / 3.0, 0.000_001, 3.999_999_999, 12.0] {
        let typed = Typed::of_value(value, Unit::Millimetre);
        assert_eq!(typed.read().map(f64::to_bits), Ok(value.to_bits()), "{}", typed.text);
    }
    assert_eq!(Typed::of_value(1.35, Unit::Millimetre).text, "1350");
    // Not 1.123, which may be a thousand and more.
    assert_eq!(Typed::of_value(0.001_123, Unit::Millimetre).text, "1.1230");
}

#[test]
fn another_system_changes_nothing_that_is_stored() {
    let mut entries = three();
    entries.enter(Field::LoadMass.into(), "1 234,5", System::Metric);
    let before = entries.clone();
    assert_eq!(entries.shown(Field::LoadMass.into(), System::Us), "2721.61");
    assert_eq!(entries.shown(Field::LoadMass.into(), System::Metric), "1 234,5");
    assert_eq!(entries, before);
}

#[test]
fn what_is_typed_keeps_its_unit_and_its_letters() {
    let mut entries = Entries::blank();
    let place = Place::from(Field::LiftHeight);
    entries.enter(place, "99.", System::Us);
    assert_eq!(entries.shown(place, System::Us), "99.");
    assert_eq!(entries.document().0.lift.height_m, Some(Unit::Inch.to_document(99.0)));
    assert_eq!(entries.shown(place, System::Metric), "2514.6");
    entries.enter(place, "", System::Us);
    assert!(entries.numbers.is_empty());
}

#[test]
fn a_text_that_is_no_number_is_a_problem_and_stays() {
    let mut entries = three();
    for (text, rule) in [("12 tons", Rule::NotANumber), ("1,050", Rule::Ambiguous)] {
        entries.enter(Field::LoadMass.into(), text, System::Metric);
        let (document, problems) = entries.document();
        assert_eq!(document.load.mass_kg, None);
        assert_eq!(problems, [Problem::new(Field::LoadMass, None, rule)]);
        assert_eq!(entries.shown(Field::LoadMass.into(), System::Us), text);
    }
}

#[test]
fn a_hidden_figure_neither_counts_nor_is_lost() {
    let mut entries = three();
    entries.enter(Field::LoadCgAbove.into(), "wrong", System::Metric);
    entries.centre_known = Some(CentreKnown::Middle);
    let (document, problems) = entries.document();
    assert_eq!((problems, document.load.cg_above_m), (vec![], None));
    entries.centre_known = Some(CentreKnown::Mark);
    assert_eq!(entries.document().1.len(), 1);
    entries.plate = false;
    assert_eq!(entries.document().0.truck.plate, None);
    entries.plate = true;
    assert_eq!(entries.document().0.truck.plate.map(|p| p.rows.len()), Some(6));
}

#[test]
fn removing_a_row_moves_the_others_up() {
    let mut entries = three();
    let capacity = |e: &Entries, row| e.shown(Place::in_row(Field::PlateCapacity, row), System::Metric);
    assert_eq!(capacity(&entries, 1), "1580");
    entries.remove_plate_row(0);
    assert_eq!((entries.plate_rows, capacity(&entries, 0).as_str(), capacity(&entries, 5).as_str()), (5, "1580", ""));
    entries.remove_plate_row(17);
    assert_eq!(entries.plate_rows, 5);
    entries.remove_stage(0);
    assert_eq!((entries.stages, entries.shown(Field::StageMass.into(), System::Metric).as_str()), (1, "130"));
    entries.plate = false;
    entries.add_plate_row();
    assert_eq!((entries.plate, entries.plate_rows), (true, 5));
}

#[test]
fn paths_there_and_back() {
    for &field in Field::NUMBERS.iter().chain(Field::CHOICES) {
        let row = if field.row().path.contains("[]") { 7 } else { 0 };
        let place = Place::in_row(field, row);
        assert_eq!(from_path(&place.to_string()), Some(place));
    }
    for wrong in ["", "truck", "truck.plate.rows[x].height_m", "truck.plate.rows[-1].height_m", "load.mas_kg"] {
        assert_eq!(from_path(wrong), None);
    }
}

#[test]
fn entries_are_stored_and_read_letter_by_letter() {
    let mut entries = three();
    entries.enter(Field::LiftHeight.into(), "2,", System::Metric);
    entries.enter(Field::LoadMass.into(), "nonsense \u{1f4a5}\"", System::Us);
    let text = serde_json::to_string(&entries).expect("stored");
    assert_eq!(serde_json::from_str::<Entries>(&text).expect("read"), entries);
    let wrong = text.replace("load.mass_kg", "load.colour");
    assert!(serde_json::from_str::<Entries>(&wrong).is_err_and(|e| e.to_string().contains("load.colour")));
}
