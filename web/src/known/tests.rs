use super::*;
use crate::answer::Answer;
use crate::entries::Entries;
use standfast_core::example;
use standfast_core::units::System;
use std::rc::Rc;

fn three() -> Entries {
    Entries::from_document(&example::document(example::THREE_WHEEL))
}

fn form(entries: Entries, known: Option<Place>) -> Form {
    let entries = Rc::new(entries);
    let answer = Rc::new(Answer::of(&entries)).into();
    Form { entries, answer, system: System::Metric, known }
}

fn says(entries: &Entries, place: impl Into<Place>) -> String {
    line(&form(entries.clone(), None), place.into()).replace('\u{a0}', " ")
}

#[test]
fn the_way_and_how_far_it_may_be_out() {
    let mut e = three();
    assert_eq!(says(&e, Field::Tread), "sheet, \u{b1} 5 mm");
    assert_eq!(says(&e, Field::BatteryFitted), "plate, as it stands");
    assert_eq!(says(&e, Field::TiltBack), "gauge, \u{b1} 0.5\u{b0}");
    e.choose_way(Field::Tread.into(), By::Tape);
    assert_eq!(says(&e, Field::Tread), "changed: tape, \u{b1} 10 mm");
    e.enter_tolerance(Field::Tread.into(), "2,5", System::Metric);
    assert_eq!(says(&e, Field::Tread), "changed: tape, \u{b1} 2.5 mm");
    // What cannot be read has no size.
    e.enter_tolerance(Field::Tread.into(), "little", System::Metric);
    assert_eq!(says(&e, Field::Tread), "changed: tape");
    e.enter(Field::Service.into(), "heavy", System::Metric);
    assert_eq!(says(&e, Field::Service), "sheet");
}

#[test]
fn a_slope_is_never_out_by_bare_percent() {
    let mut e = three();
    e.drive.ramp_in_degrees = true;
    e.enter(Field::RampGrade.into(), "5", System::Metric);
    assert_eq!(says(&e, Field::RampGrade), "level, \u{b1} 0.5 % slope");
    e.enter_tolerance(Field::RampGrade.into(), "0.25", System::Metric);
    assert_eq!(says(&e, Field::RampGrade), "changed: level, \u{b1} 0.25 % slope");
}

#[test]
fn weights_and_marks_say_it_in_their_own_ways() {
    let mut e = three();
    e.weight_known = None;
    assert_eq!(says(&e, Field::LoadMass), "not chosen: as an estimate, \u{b1} 20 %");
    e.weight_known = Some(WeightKnown::Scale);
    assert_eq!(says(&e, Field::LoadMass), "scale, \u{b1} 1 %");
    e.enter_tolerance(Field::LoadMass.into(), "3", System::Metric);
    assert_eq!(says(&e, Field::LoadMass), "changed: scale, \u{b1} 3 kg");
    assert_eq!(says(&e, Field::LoadCgFromHeel), "mark, \u{b1} 20 mm");
}

#[test]
fn it_shows_under_what_is_entered_and_counts_no_plate() {
    let mut e = three();
    let there = |e: &Entries, place: Place| shown(&form(e.clone(), None), place).is_some();
    assert!(there(&e, Field::Tread.into()));
    assert!(!there(&e, Place::in_row(Field::PlateCapacity, 0)));
    assert!(!there(&e, Field::LoadLength.into()), "sizes of a load are of their own");
    e.enter(Field::Tread.into(), " ", System::Metric);
    assert!(!there(&e, Field::Tread.into()));
}

/// One is open at a time, but what is wrong is never folded away.
#[test]
fn what_is_wrong_stays_open() {
    let mut e = three();
    e.enter_tolerance(Field::Tread.into(), "-3", System::Metric);
    let form = form(e, Some(Field::Wheelbase.into()));
    let editor = |field: Field| shown(&form, field.into()).and_then(|s| s.editor);
    assert!(editor(Field::Service).is_none());
    let open = editor(Field::Wheelbase).expect("open");
    assert_eq!((open.message, open.usual), (None, None));
    assert_eq!(open.ways.iter().filter(|w| w.chosen).map(|w| w.by).collect::<Vec<_>>(), [By::Sheet]);
    let wrong = editor(Field::Tread).expect("open");
    let message = wrong.message.expect("a message").text.replace('\u{a0}', " ");
    assert!(
        message.starts_with("Give or take: \u{201c}-3\u{201d}") && message.contains("0 to 2\u{202f}000 mm"),
        "{message}"
    );
    assert!(wrong.usual.expect("a way back").contains("sheet"));
    assert!(form.message(Field::Tread.into()).is_none(), "nothing is wrong with the figure itself");
}

#[test]
fn a_load_of_parts_keeps_each_weight_apart() {
    let mut e = Entries::from_document(&example::document(example::ODD_LOAD));
    let part = (0..e.parts.len()).find(|&k| e.is_entered(Place::in_row(Field::PartMass, k))).expect("a weighed part");
    e.weight_is_known(Some(part), WeightKnown::Note);
    assert_eq!(says(&e, Place::in_row(Field::PartMass, part)), "note, \u{b1} 5 %");
}
