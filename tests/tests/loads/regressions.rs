//! Loads on the forks that once came out wrong, as whole documents: what a supervisor would have been told.

mod seated;

use crate::{block, problem};
use standfast_core::document::{
    CentreKnown, Document, Facing, GivenAs, Load, Part, Shape, Trace, TraceView, WeighPoint, Weighing, WeightKnown,
};
use standfast_core::friction::Underside;
use standfast_core::material::Material;
use standfast_core::problem::{Problem, Rule};
use standfast_core::report::{Assessment, Figures, LoadReport, assess};
use standfast_core::seat::{Event, Over};
use standfast_core::step::StepId;
use standfast_core::verdict::{Ground, Reason, State};
use standfast_core::{example, rules};
use standfast_tests::walk;
use std::f64::consts::{PI, TAU};
use std::time::{Duration, Instant};

fn lift() -> Document {
    Document::from_json(example::THREE_WHEEL).expect("an example")
}

/// Home against the face, in the middle, on rubber, on blades 0.1 m wide.
fn with(load: Load) -> Document {
    let mut document = lift();
    document.load = Load { underside: Some(Underside::AntiSlipMat), ..load };
    (document.lift.heel_gap_m, document.lift.offset_m) = (Some(0.0), Some(0.0));
    document.truck.forks.blade_width_m = Some(0.1);
    document
}

fn parts(parts: Vec<Part>) -> Document {
    with(Load { given_as: GivenAs::Parts, parts, ..Load::default() })
}

fn on_scales(kg: f64, size: [f64; 3], at: [f64; 3]) -> Part {
    Part { weight_known: Some(WeightKnown::Scale), ..block(kg, size, at) }
}

fn of(material: Material, part: Part) -> Part {
    Part { material: Some(material), mass_kg: None, weight_known: None, ..part }
}

fn round(shape: Shape, facing: Facing, diameter: f64, length: f64) -> Part {
    let (diameter_m, length_m) = (Some(diameter), Some(length));
    Part { shape: Some(shape), facing, diameter_m, length_m, ..on_scales(600.0, [1.0; 3], [0.0; 3]) }
}

/// A block of so many kg by the scales, its centre marked.
fn marked(kg: f64, size: [f64; 3], centre: [f64; 3]) -> Document {
    let [length_m, width_m, height_m] = size.map(Some);
    let [cg_from_heel_m, cg_left_m, cg_above_m] = centre.map(Some);
    with(Load {
        mass_kg: Some(kg),
        weight_known: Some(WeightKnown::Scale),
        centre_known: Some(CentreKnown::Mark),
        length_m,
        width_m,
        height_m,
        cg_from_heel_m,
        cg_left_m,
        cg_above_m,
        ..Load::default()
    })
}

/// A rectangle traced from a picture rolled by so many degrees, 500 pixels a metre.
fn traced(view: TraceView, size: [f64; 2], kg: f64, roll: f64) -> Document {
    let (sin, cos) = libm::sincos(roll.to_radians());
    let shown = |x: f64, y: f64| [500.0 + 500.0 * (x * cos - y * sin), 800.0 - 500.0 * (x * sin + y * cos)];
    let [a, b] = size;
    with(Load {
        given_as: GivenAs::Trace,
        mass_kg: Some(kg),
        weight_known: Some(WeightKnown::Scale),
        trace: Some(Trace {
            view,
            picture: Some([2000.0, 1500.0]),
            outline: vec![shown(0.0, 0.0), shown(a, 0.0), shown(a, b), shown(0.0, b)],
            scale: vec![shown(0.0, -0.1), shown(1.0, -0.1)],
            scale_m: Some(1.0),
            through_m: Some(1.0),
            ..Trace::default()
        }),
        ..Load::default()
    })
}

/// The assessment of a document as it would be opened again.
#[track_caller]
fn judged(document: &Document) -> Assessment {
    let read = Document::from_json(&document.to_json()).expect("our own file");
    assert_eq!(&read, document);
    let report = assess(&read);
    assert_eq!(report.problems, []);
    assert_eq!(walk::broken_numbers(&serde_json::to_value(&report).expect("JSON")), Vec::<String>::new());
    report.assessment.expect("no problem, so an assessment")
}

#[track_caller]
fn found(document: &Document) -> LoadReport {
    crate::found(document)
}

fn grounds(a: &Assessment) -> impl Iterator<Item = &Ground> {
    std::iter::once(&a.verdict.governing).chain(&a.verdict.others)
}

/// Whether a reason alone leads to a state.
fn leads(a: &Assessment, state: State, reason: impl Fn(&Reason) -> bool) -> bool {
    grounds(a).any(|g| g.state == state && reason(&g.reason))
}

fn off_blade(r: &Reason) -> bool {
    matches!(r, Reason::OffBlade { .. })
}

/// Every margin: step, event, edge.
fn margins(a: &Assessment) -> Vec<(StepId, Event, Over, Figures)> {
    let seats = a.steps.iter().filter_map(|s| s.seat.as_ref().map(|seat| (s.id, seat)));
    let cases = seats.flat_map(|(id, seat)| seat.cases.iter().map(move |c| (id, c)));
    cases.flat_map(|(id, c)| c.topple.iter().map(move |t| (id, c.event, t.over, t.margin))).collect()
}

/// Found here: what is left between two surfaces is as uncertain as both, and was taken as certain.
#[test]
fn thin_walls_are_in_doubt_by_the_tape() {
    let host = of(Material::Steel, block(0.0, [1.0; 3], [0.0; 3]));
    let cut = |at: f64| Part { cut_from: Some(0), mass_kg: None, ..block(0.0, [0.96; 3], [at, 0.0, 0.02]) };
    let ahead = found(&parts(vec![host.clone(), cut(0.02)])).centre.ahead;
    // Both centres and both volumes by hand, the cut-out 10 mm further ahead.
    let out: f64 = 0.96 * 0.96 * 0.96;
    let truth = (0.5 - 0.51 * out) / (1.0 - out);
    assert!((truth - 0.4232).abs() < 1e-4 && (ahead.nominal.get() - 0.5).abs() < 1e-9);
    assert!(ahead.lo.get() <= truth && truth <= ahead.hi.get(), "{truth}: {ahead:?}");
    assert!(ahead.hi.get() >= 1.0 - truth, "to the other side as well: {ahead:?}");
    // Each measure 3 mm out, the heavier way.
    let ring = |outer: f64, inner: f64| 0.25 * PI * (outer * outer - inner * inner);
    let heaviest = Material::Steel.density().span.hi;
    let mut tube = of(Material::Steel, round(Shape::Tube, Facing::Ahead, 0.70, 0.8));
    tube.bore_m = Some(0.66);
    let mass = found(&parts(vec![tube])).mass;
    let is = ring(0.703, 0.657) * 0.8 * heaviest;
    assert!(mass.nominal.get() < is && is <= mass.hi.get(), "{is}: {mass:?}");
    let light = ring(0.697, 0.663) * 0.8 * Material::Steel.density().span.lo;
    assert!(mass.lo.get() <= light, "{light}: {mass:?}");
    let mass = found(&parts(vec![of(Material::Steel, block(0.0, [1.0, 1.0, 0.020], [0.0; 3]))])).mass;
    assert!(0.023 * heaviest <= mass.hi.get(), "{mass:?}");
}

/// Found here: a size read off a picture is in doubt, and was held against the blades as if it were not.
#[test]
fn a_traced_size_is_in_doubt_on_the_blades() {
    // 10 mm on either blade, where 20 are asked; 30 mm that may be none.
    let narrow = judged(&traced(TraceView::Front, [0.52, 0.5], 600.0, 0.0));
    assert_ne!(narrow.verdict.state, State::Go);
    assert!(leads(&narrow, State::NoGo, off_blade), "{:?}", narrow.verdict);
    let front = judged(&traced(TraceView::Front, [0.56, 0.5], 600.0, 0.0));
    assert!(front.forks.bears() && front.forks.arms[0].bearing_worst.get() < 0.0, "{:?}", front.forks.arms);
    assert_ne!(front.verdict.state, State::Go);
    assert!(leads(&front, State::Hold, off_blade), "{:?}", front.verdict);
    let side = judged(&traced(TraceView::Side, [1.70, 0.4], 500.0, 0.0));
    assert!((side.forks.reach.get() - 1.15 / 1.70).abs() < 1e-9 && side.forks.reaches());
    let most = 1.15 / (1.70 * (1.0 + rules::TRACE_NOT_SQUARE.value));
    assert!(side.forks.reach_worst.get() <= most, "{:?}", side.forks);
    assert!(leads(&side, State::Hold, |r| matches!(r, Reason::ShortReach { .. })), "{:?}", side.verdict);
}

/// Found here: a marked centre was passed over where nobody had said that it was one.
#[test]
fn a_centre_that_was_entered_is_not_passed_over() {
    let mut document = lift();
    document.load.centre_known = None;
    document.load.cg_from_heel_m = Some(1.0);
    assert_eq!(problem(&document), ("load.centre_known".to_owned(), Rule::Required));
    let report = assess(&document);
    assert!(report.assessment.is_none());
    assert!(report.problems.iter().any(|p| p.place.to_string() == "load.centre_known"));
}

/// Found here: a camera not held level stood a box on its corner.
#[test]
fn a_rolled_picture_is_judged_as_a_level_one() {
    let level = judged(&traced(TraceView::Side, [1.2, 0.8], 600.0, 0.0));
    for roll in [-3.0, -1.0, 0.5, 1.0, 3.0] {
        let rolled = judged(&traced(TraceView::Side, [1.2, 0.8], 600.0, roll));
        assert_eq!(rolled.verdict.state, level.verdict.state, "{roll}: {:?}", rolled.verdict);
        let (a, b) = (margins(&level), margins(&rolled));
        assert_eq!(a.len(), b.len());
        for (a, b) in a.iter().zip(&b) {
            assert_eq!((a.0, a.1, a.2), (b.0, b.1, b.2));
            assert!((a.3.nominal.get() - b.3.nominal.get()).abs() < 1e-4, "{roll}: {a:?} {b:?}");
            assert!((a.3.worst.get() - b.3.worst.get()).abs() < 0.005, "{roll}: {a:?} {b:?}");
        }
    }
}

/// Found here: cut-outs, feet and boxes of long outlines took a minute.
#[test]
fn long_outlines_are_judged_within_seconds() {
    let sector = |k: usize, inner: f64, points: usize| {
        let at = |r: f64, j: usize, of: usize| {
            let angle = TAU / 20.0 * (k as f64 + j as f64 / (of - 1) as f64);
            [r * libm::cos(angle), r * libm::sin(angle)]
        };
        let outer = (0..200 - points).map(|j| at(1.0, j, 200 - points));
        let back = (0..points).rev().map(|j| if points == 1 { at(inner, 1, 3) } else { at(inner, j, points) });
        let outline: Vec<[f64; 2]> = outer.chain(back).collect();
        let low = |axis: usize| outline.iter().map(|p| p[axis]).fold(f64::INFINITY, f64::min);
        let high = |axis: usize| outline.iter().map(|p| p[axis]).fold(f64::NEG_INFINITY, f64::max);
        let place = [low(0), 0.5 * (low(1) + high(1)), 0.0];
        Part { shape: Some(Shape::Prism), length_m: Some(0.1), outline, ..on_scales(10.0, [0.1; 3], place) }
    };
    for (inner, points) in [(0.99, 1), (0.8, 100)] {
        let mut document = parts((0..20).map(|k| sector(k, inner, points)).collect());
        let forks = &mut document.truck.forks;
        (forks.spread_m, forks.length_m, forks.blade_width_m) = (Some(1.9), Some(2.0), Some(0.4));
        let start = Instant::now();
        let report = assess(&document);
        let took = start.elapsed();
        assert_eq!(report.problems, []);
        let load = report.assessment.expect("an assessment").load;
        assert!((load.mass.nominal.get() - 200.0).abs() < 1e-9 && load.centre.left.nominal.get().abs() < 1e-3);
        assert!(took < Duration::from_secs(3), "{took:?}");
    }
}

fn places(problems: &[Problem]) -> Vec<String> {
    problems.iter().map(|p| p.place.to_string()).collect()
}

fn weighed(readings: [(f64, Option<f64>); 2]) -> Weighing {
    let point = |k: usize| WeighPoint {
        ahead_m: Some(1.2 * k as f64),
        left_m: Some(0.0),
        reading_kg: Some(readings[k].0),
        raised_kg: readings[k].1,
    };
    Weighing { points: vec![point(0), point(1)], accuracy_kg: Some(2.0), ..Weighing::default() }
}

/// Found here: readings with one end raised were passed over where nobody had said which.
#[test]
fn raised_readings_ask_for_the_end_and_the_height() {
    let mut document = marked(1050.0, [1.2, 1.0, 0.95], [0.0; 3]);
    let load = &mut document.load;
    (load.centre_known, load.cg_from_heel_m, load.cg_left_m, load.cg_above_m) = (None, None, None, None);
    load.weighing = Some(weighed([(500.0, Some(560.0)), (550.0, Some(490.0))]));
    let mut at = places(&assess(&document).problems);
    at.sort();
    assert_eq!(at, ["load.weighing.raised_end", "load.weighing.raised_m"]);
    // Weighed level on two bearers: what they do not say is still assumed.
    document.load.weighing = Some(weighed([(500.0, None), (550.0, None)]));
    let assumed: Vec<String> = judged(&document).assumed.iter().map(|a| a.place.to_string()).collect();
    let listed = |place: &str| assumed.iter().any(|a| a == place);
    assert!(listed("load.cg_left_m") && listed("load.cg_above_m"), "{assumed:?}");
    assert!(!listed("load.cg_from_heel_m"), "{assumed:?}");
}

/// Found here: of a known length and a rectangle that contradict each other one was passed over.
#[test]
fn a_known_length_that_contradicts_the_rectangle_is_named() {
    let mut document = traced(TraceView::Side, [1.2, 0.8], 600.0, 0.0);
    let trace = document.load.trace.as_mut().expect("a trace");
    // As tapped this is 1.2 by 0.8 m.
    trace.rectangle = vec![[500.0, 400.0], [1100.0, 400.0], [1100.0, 800.0], [500.0, 800.0]];
    (trace.rectangle_width_m, trace.rectangle_height_m) = (Some(0.6), Some(0.4));
    let (place, rule) = problem(&document);
    assert_eq!(place, "load.trace.scale_m");
    assert!(matches!(rule, Rule::ScaleDisagrees { found } if (found.get() - 0.5).abs() < 1e-9), "{rule:?}");
    let trace = document.load.trace.as_mut().expect("a trace");
    (trace.rectangle_width_m, trace.rectangle_height_m) = (Some(1.2), Some(0.8));
    found(&document);
}

/// Found here: each was named at a place where it could not be put right.
#[test]
fn problems_are_named_where_they_can_be_put_right() {
    let mut plan = traced(TraceView::Plan, [1.2, 0.8], 300.0, 0.0);
    plan.load.trace.as_mut().expect("a trace").through_m = Some(7.0);
    let (place, rule) = problem(&plan);
    assert!(matches!(rule, Rule::WholeWithin { .. }) && place == "load.trace.through_m", "{place}: {rule:?}");
    let mut heavy = parts(vec![on_scales(500.0, [1.2, 1.0, 1.0], [0.0; 3])]);
    heavy.load.weighing = Some(weighed([(15_000.0, None), (15_000.0, None)]));
    let (place, rule) = problem(&heavy);
    assert!(matches!(rule, Rule::WeightWithin { .. }) && place == "load.weighing.points", "{place}: {rule:?}");
    let mut holes = traced(TraceView::Side, [1.2, 0.8], 600.0, 0.0);
    holes.load.trace.as_mut().expect("a trace").holes = vec![Vec::new(); 25];
    let problems = assess(&holes).problems;
    let many = |p: &Problem| p.place.to_string() == "load.trace.outline" && matches!(p.rule, Rule::TooLong { .. });
    assert!(problems.iter().any(many), "{problems:?}");
}
