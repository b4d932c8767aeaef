//! Any document whatever gets an answer, and every number in it is a number.

use proptest::prelude::*;
use standfast_core::document::{
    Attachment, CentreKnown, Document, Plate, PlateFor, PlateRow, Stage, WeightKnown, Wheels,
};
use standfast_core::place::Place;
use standfast_core::report::assess;
use standfast_tests::draw::Draws;
use standfast_tests::{sensible, walk};

const ODD: [f64; 16] = [
    0.0,
    -0.0,
    1.0,
    -1.0,
    1e-300,
    -1e-300,
    1e300,
    -1e300,
    1e18,
    -1e18,
    f64::EPSILON,
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    1e-9,
    0.5,
];

/// A figure: missing, odd, at an end of its range or inside it.
fn figure(place: Place, draws: &mut Draws, odd: f64) -> Option<f64> {
    let row = place.field.row();
    if draws.chance(odd) {
        return if draws.chance(0.3) { None } else { draws.one_of(&ODD) };
    }
    match draws.one_of(&[0, 0, 1, 2, 3]) {
        Some(1) => Some(row.min),
        Some(2) => Some(row.max),
        _ => Some(draws.within(row.min..row.max)),
    }
}

/// Parts, lists of any length and choices at random, then every figure.
fn anything(draws: &mut Draws, rows: usize, odd: f64) -> Document {
    let mut document = Document::default();
    document.truck.wheels = draws.one_of(&[Some(Wheels::Three), Some(Wheels::Four), None]).flatten();
    document.truck.attachment = draws.chance(0.5).then(Attachment::default);
    document.truck.mast.stages = vec![Stage::default(); (draws.unit() * 6.0) as usize];
    let issued_for = draws.one_of(&[Some(PlateFor::Forks), Some(PlateFor::Attachment), None]).flatten();
    let plate = Plate { issued_for, rows: vec![PlateRow::default(); rows], ..Plate::default() };
    document.truck.plate = draws.chance(0.8).then_some(plate);
    let known = [Some(WeightKnown::Scale), Some(WeightKnown::Note), Some(WeightKnown::Estimate), None];
    document.load.weight_known = draws.one_of(&known).flatten();
    document.load.centre_known = draws.one_of(&[Some(CentreKnown::Middle), Some(CentreKnown::Mark), None]).flatten();
    for place in Place::all_numbers(&document) {
        *place.number(&mut document).expect("listed") = figure(place, draws, odd);
    }
    document
}

/// Assesses, and looks at every number of the answer. In the test profile the core asserts, too,
/// that nothing it computes is infinite or not a number.
fn answered(document: &Document) -> Result<bool, TestCaseError> {
    let report = assess(document);
    let json = serde_json::to_value(&report).expect("a report is JSON");
    prop_assert_eq!(walk::broken_numbers(&json), Vec::<String>::new());
    prop_assert_eq!(report.assessment.is_some(), report.problems.is_empty());
    Ok(report.assessment.is_some())
}

/// Long enough rows that sixty plate rows do not repeat each other's figures.
fn long_draws() -> impl Strategy<Value = Draws> {
    prop::collection::vec(0.0..1.0, 1000).prop_map(Draws::new)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    #[test]
    fn any_document_is_answered(mut draws in long_draws(), rows in 0_usize..60, odd in 0.0..0.5) {
        answered(&anything(&mut draws, rows, odd))?;
    }

    /// A sensible document with a few figures at the very ends of what is permitted, or left out: most of
    /// these are assessed, far from any real truck.
    #[test]
    fn the_ends_of_the_ranges_are_answered(mut document in sensible::documents(), mut draws in Draws::any(), k in 0..25) {
        let places = Place::all_numbers(&document);
        for _ in 0..k {
            let place = draws.one_of(&places).expect("there are places");
            let row = place.field.row();
            let end = draws.one_of(&[Some(row.min), Some(row.max), None]).flatten();
            *place.number(&mut document).expect("listed") = end;
        }
        answered(&document)?;
    }
}

/// The generator above must really reach the assessment, or it shows nothing.
#[test]
fn documents_at_the_ends_of_their_ranges_are_often_assessed() {
    let mut assessed = 0;
    for seed in 0..400 {
        let mut draws = Draws::seeded(seed);
        let mut document = sensible::document(&mut draws);
        let places = Place::all_numbers(&document);
        for _ in 0..3 {
            let place = draws.one_of(&places).expect("there are places");
            let row = place.field.row();
            *place.number(&mut document).expect("listed") = draws.one_of(&[Some(row.min), Some(row.max)]).flatten();
        }
        if answered(&document).expect("answered") {
            assessed += 1;
        }
    }
    assert!(assessed > 60, "only {assessed} of 400 were assessed");
}

/// Text that is no document, and text that nearly is.
#[test]
fn any_text_is_answered() {
    let example = standfast_core::example::THREE_WHEEL;
    let texts = ["", "null", "0", "\"\"", "[]", "{}", "\u{0}", "{\"format\":\"standfast-check\",\"version\":1}"];
    for text in texts {
        if let Ok(document) = Document::from_json(text) {
            assert!(assess(&document).assessment.is_none());
        }
    }
    for (from, to) in [("3200", "1e308"), ("3200", "-0"), ("3200", "1e-320"), ("1.4", "1e400"), ("860", "null")] {
        if let Ok(document) = Document::from_json(&example.replacen(from, to, 1)) {
            assert!(answered(&document).is_ok(), "{from} -> {to}");
        }
    }
}
