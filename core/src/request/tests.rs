//! What a sheet holds, and what it says is missing.

use super::*;
use crate::document::Attachment;
use crate::example;
use crate::report::assess;
use approx::assert_relative_eq;

fn request(document: &Document) -> Request {
    let report = assess(document);
    Request::of(document, report.assessment.as_ref())
}

fn value(request: &Request, what: What) -> Option<Value> {
    let facts = request.parts.iter().flat_map(|(_, facts)| facts);
    let mut found = facts.filter(|f| f.what == what);
    let first = found.next().unwrap_or_else(|| panic!("{what:?} is not asked for"));
    assert_eq!(found.next(), None, "{what:?} is asked for twice");
    first.value.clone()
}

fn number(request: &Request, what: What) -> f64 {
    match value(request, what) {
        Some(Value::Number(n)) => n.get(),
        other => panic!("{what:?}: {other:?}"),
    }
}

/// A clamp on a truck whose plate is for bare forks: what a manufacturer asks for, and the estimate marked as one.
#[test]
fn a_clamp_without_a_plate() {
    let mut document = example::document(example::THREE_WHEEL);
    document.truck.attachment = Some(Attachment {
        name: "Drum clamp".to_owned(),
        mass_kg: Some(120.0),
        cg_ahead_m: Some(0.08),
        cg_above_m: None,
        lost_load_m: Some(0.11),
    });
    let sheet = request(&document);
    let at = |f: Field| What::At(f.into());
    assert_eq!(value(&sheet, What::AttachmentName), Some(Value::Text("Drum clamp".to_owned())));
    assert_relative_eq!(number(&sheet, at(Field::AttachmentMass)), 120.0);
    assert_relative_eq!(number(&sheet, at(Field::LostLoad)), 0.11);
    assert_eq!(value(&sheet, at(Field::AttachmentAbove)), None);
    assert_relative_eq!(number(&sheet, at(Field::Service)), 3200.0);
    assert_relative_eq!(number(&sheet, at(Field::SteerAxleLaden)), 535.0);
    assert_relative_eq!(number(&sheet, at(Field::BatteryFitted)), 860.0);
    assert_relative_eq!(number(&sheet, at(Field::PlateBatteryMin)), 820.0);
    assert_eq!(value(&sheet, at(Field::PlateIssued)), Some(Value::Text("2024-03-12".to_owned())));
    assert_eq!(value(&sheet, at(Field::Tyres)), Some(Value::Tyres(Tyres::Cushion)));
    // 1,050 kg by a note, 5 % more at the most; raised to 3.20 m, 10 mm more by a tape; the heel gap counts.
    assert!((number(&sheet, What::Mass) - 1102.5).abs() < 1e-9);
    assert!((number(&sheet, What::Height) - 3.21).abs() < 1e-9);
    assert!(number(&sheet, What::LoadCentre) >= 0.55 + 0.02);
    assert!((number(&sheet, What::CentreHeight) - 0.44).abs() < 1e-9);
    assert_eq!(sheet.rows.as_ref().map(Vec::len), Some(6));
    let gaps = sheet.gaps.as_deref().expect("assessed");
    assert!(gaps.iter().any(|f| f.as_stated && matches!(f.gap, Gap::OtherFrontEnd { .. })));
    assert!(sheet.estimate.is_some_and(|kg| kg.get() < 1580.0));
}

/// Turned a quarter, what lies along the load lies across the forks.
#[test]
fn a_turned_load_is_asked_for_as_it_stands() {
    let mut document = example::document(example::THREE_WHEEL);
    assert_eq!((number(&request(&document), What::Depth), number(&request(&document), What::Width)), (1.2, 1.0));
    document.load.turned = Turned::Left;
    assert_eq!((number(&request(&document), What::Depth), number(&request(&document), What::Width)), (1.0, 1.2));
    document.truck.wheelbase_m = None;
    assert_eq!((number(&request(&document), What::Depth), number(&request(&document), What::Width)), (1.0, 1.2));
}

/// What is missing is said, whatever is missing; and no plate at all is what is not covered.
#[test]
fn nothing_entered_asks_for_everything() {
    let sheet = request(&Document::default());
    assert!(sheet.parts.iter().all(|(_, facts)| !facts.is_empty()));
    // All but that bare forks are fitted.
    let facts: usize = sheet.parts.iter().map(|(_, facts)| facts.len()).sum();
    assert_eq!(sheet.missing(), facts - 1);
    let no_plate = Finding { gap: Gap::NoPlate, as_stated: true };
    assert_eq!((sheet.rows, sheet.gaps, sheet.estimate), (None, Some(vec![no_plate]), None));
    // A plate that could not be held against anything yet covers nothing and leaves nothing out.
    let mut document = example::document(example::THREE_WHEEL);
    document.load.mass_kg = None;
    assert_eq!(request(&document).gaps, None);
}

/// How a figure is known goes with it.
#[test]
fn a_figure_says_how_it_is_known() {
    let sheet = request(&example::document(example::THREE_WHEEL));
    let facts = || sheet.parts.iter().flat_map(|(_, facts)| facts);
    let by = |f: Field| facts().find(|fact| fact.what == What::At(f.into())).and_then(|fact| fact.by);
    assert_eq!((by(Field::Service), by(Field::BatteryFitted)), (Some(By::Sheet), Some(By::Plate)));
    assert_eq!((by(Field::Rated), by(Field::RatedCentre)), (None, None));
}
