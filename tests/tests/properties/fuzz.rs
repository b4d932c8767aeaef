//! Any document whatever gets an answer, and every number in it is a number.

use proptest::prelude::*;
use standfast_core::document::{
    Attachment, CentreKnown, Document, Facing, GivenAs, Load, Part, PhotoTruck, Plate, PlateFor, PlateRow, Shape, Side,
    Stage, Trace, TraceView, Turned, WeighPoint, Weighing, WeightKnown, Wheels,
};
use standfast_core::friction::Underside;
use standfast_core::material::Material;
use standfast_core::place::Place;
use standfast_core::report::{assess, find_load};
use standfast_tests::draw::Draws;
use standfast_tests::{outline, sensible, walk};

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
    any_load(&mut document.load, draws, odd);
    for place in Place::all_numbers(&document) {
        *place.number(&mut document).expect("listed") = figure(place, draws, odd);
    }
    document
}

/// A load of any kind, its lists of any length, its outlines of anything.
fn any_load(load: &mut Load, draws: &mut Draws, odd: f64) {
    load.given_as = draws.one_of(&[GivenAs::Block, GivenAs::Parts, GivenAs::Trace]).unwrap_or_default();
    load.turned = draws.one_of(&[Turned::No, Turned::Left, Turned::Half, Turned::Right]).unwrap_or_default();
    load.underside = draws.one_of(&Underside::ALL);
    load.material = draws.one_of(Material::ALL);
    load.hanging = draws.chance(0.3);
    let most = if draws.chance(0.1) { 210 } else { 6 };
    load.parts = (0..draws.count(0..most)).map(|_| any_part(draws, odd)).collect();
    load.trace = draws.chance(0.7).then(|| any_trace(draws, odd));
    load.weighing = draws.chance(0.5).then(|| {
        let end = [None, Some(Side::Ahead), Some(Side::Heel), Some(Side::Left), Some(Side::Right)];
        let raised_end = draws.one_of(&end).flatten();
        let points = vec![WeighPoint::default(); draws.count(0..7)];
        Weighing { points, raised_end, ..Weighing::default() }
    });
}

fn any_part(draws: &mut Draws, odd: f64) -> Part {
    use Facing::{Ahead, Down, Heel, Left, Right, Up};
    use Shape::{Box, Cone, Cylinder, HalfSphere, Prism, Sphere, Tube, Wedge};
    let shapes = [Box, Cylinder, Tube, Cone, Sphere, HalfSphere, Wedge, Prism].map(Some);
    Part {
        shape: if draws.chance(0.9) { draws.one_of(&shapes).flatten() } else { None },
        facing: draws.one_of(&[Up, Down, Ahead, Heel, Left, Right]).unwrap_or_default(),
        cut_from: draws.one_of(&[None, None, None, Some(0), Some(1), Some(2), Some(usize::MAX)]).flatten(),
        material: draws.one_of(&[Some(Material::Steel), Some(Material::Water), None]).flatten(),
        outline: points(draws, 1.0, odd),
        ..Part::default()
    }
}

fn any_trace(draws: &mut Draws, odd: f64) -> Trace {
    let count = draws.count(0..4);
    Trace {
        view: draws.one_of(&[TraceView::Side, TraceView::Front, TraceView::Plan]).unwrap_or_default(),
        truck: draws.one_of(&[PhotoTruck::Left, PhotoTruck::Right]).unwrap_or_default(),
        picture: draws.one_of(&[None, Some([1000.0, 800.0]), Some([0.0, 1e300]), Some([f64::NAN, 1.0])]).flatten(),
        outline: points(draws, 1000.0, odd),
        holes: (0..count).map(|_| points(draws, 500.0, odd)).collect(),
        scale: points(draws, 1000.0, odd).into_iter().take(draws.count(0..4)).collect(),
        rectangle: points(draws, 1000.0, odd).into_iter().take(draws.count(0..6)).collect(),
        ..Trace::default()
    }
}

/// Points anywhere, odd ones among them, seldom too many; half of the lists go round and cross nowhere.
fn points(draws: &mut Draws, size: f64, odd: f64) -> Vec<[f64; 2]> {
    if draws.chance(0.5) {
        return outline::simple(draws).iter().map(|p| [size * (0.5 + 0.4 * p.x), size * (0.5 + 0.4 * p.y)]).collect();
    }
    let most = if draws.chance(0.05) { 260 } else { 9 };
    let mut one = |_| {
        if draws.chance(0.2 * odd) { draws.one_of(&ODD).unwrap_or_default() } else { size * draws.unit() }
    };
    let count = (one(0) * most as f64 / size).clamp(0.0, 260.0) as usize;
    (0..count).map(|k| [one(k), one(k)]).collect()
}

/// Assesses, and looks at every number of the answer. In the test profile the core asserts, too,
/// that nothing it computes is infinite or not a number.
fn answered(document: &Document) -> Result<bool, TestCaseError> {
    let report = assess(document);
    let json = serde_json::to_value(&report).expect("a report is JSON");
    prop_assert_eq!(walk::broken_numbers(&json), Vec::<String>::new());
    prop_assert_eq!(report.assessment.is_some(), report.problems.is_empty());
    let alone = find_load(document);
    let json = serde_json::to_value(&alone).expect("an answer is JSON");
    prop_assert_eq!(walk::broken_numbers(&json), Vec::<String>::new());
    prop_assert_eq!(alone.load.is_some(), alone.problems.is_empty());
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

/// Loads alone, of any kind, with few odd figures: they are answered whether or not anything comes of them,
/// and something does often enough.
#[test]
fn any_load_is_answered() {
    let mut found = 0;
    for seed in 0..6000 {
        let mut draws = Draws::seeded_row(seed, 1500);
        let mut document = Document::default();
        any_load(&mut document.load, &mut draws, 0.02);
        for place in Place::all_numbers(&document) {
            let row = place.field.row();
            // Small figures of their range, so that a whole load may come of them.
            let value = Some(draws.within(row.min.max(-0.5)..row.max.min(1.5)));
            let figure = if draws.chance(0.05) { figure(place, &mut draws, 0.1) } else { value };
            *place.number(&mut document).expect("listed") = figure;
        }
        // A centre or a second set that nobody said what it is is a problem; mostly somebody did.
        if draws.chance(0.9) {
            document.load.centre_known = document.load.centre_known.or(Some(CentreKnown::Middle));
            if let Some(weighing) = document.load.weighing.as_mut().filter(|w| w.raised_end.is_none()) {
                weighing.raised_m = None;
                weighing.points.iter_mut().for_each(|p| p.raised_kg = None);
            }
        }
        let answer = find_load(&document);
        let json = serde_json::to_value(&answer).expect("an answer is JSON");
        assert_eq!(walk::broken_numbers(&json), Vec::<String>::new(), "{seed}");
        assert_eq!(answer.load.is_some(), answer.problems.is_empty(), "{seed}");
        found += usize::from(answer.load.is_some());
    }
    eprintln!("{found} of 6000 loads of anything were found");
    assert!(found > 150, "only {found} of 6000");
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
