//! What cannot be: each has its own name, at its own place, and alone.

use crate::{answer, block, built, found, is, prism, problem, traced, weighed};
use standfast_core::document::{Document, Facing, Part, Shape, Side};
use standfast_core::problem::Rule;

const L: [[f64; 2]; 6] = [[0.0, 0.0], [0.8, 0.0], [0.8, 0.4], [0.4, 0.4], [0.4, 0.8], [0.0, 0.8]];

#[test]
fn outlines_of_parts() {
    let place = "load.parts[0].outline";
    let bow = [[0.0, 0.0], [0.8, 0.8], [0.8, 0.0], [0.0, 0.8]];
    is(&prism(&bow), place, Rule::OutlineCrosses { first: 0, second: 2 });
    is(&prism(&[[0.0, 0.0], [0.4, 0.4], [0.8, 0.8]]), place, Rule::OutlineFlat);
    is(&prism(&[[0.0, 0.0], [0.8, 0.0], [0.8, 1e-9]]), place, Rule::OutlineFlat);
    is(&prism(&[]), place, Rule::OutlineTooShort { points: 0 });
    is(&prism(&[[0.0, 0.0], [0.8, 0.0]]), place, Rule::OutlineTooShort { points: 2 });
    is(&prism(&[[0.0, 0.0], [0.8, 0.0], [0.8, 0.0], [0.0, 0.0]]), place, Rule::OutlineTooShort { points: 2 });
    is(&prism(&[[0.2, 0.2]; 7]), place, Rule::OutlineTooShort { points: 1 });
    let spike = [[0.0, 0.0], [0.8, 0.0], [0.4, 0.0], [0.4, 0.4]];
    assert!(matches!(problem(&prism(&spike)).1, Rule::OutlineCrosses { .. }));
    let long: Vec<[f64; 2]> = (0..300).map(|k| [f64::from(k) * 0.01, f64::from(k * k) * 1e-5]).collect();
    is(&prism(&long), place, Rule::TooLong { most: 200 });
}

/// What is drawn small or large is not crooked: only the whole load is held to what the program takes.
#[test]
fn outlines_tiny_and_huge() {
    let times = |by: f64| L.map(|p| p.map(|x| by * x));
    assert_eq!(found(&prism(&L)).parts.len(), 1);
    for (by, code) in [(1e-3, "whole_within"), (1e-9, "whole_within"), (10.0, "whole_within")] {
        let answer = answer(&prism(&times(by)));
        let codes: Vec<String> = answer
            .problems
            .iter()
            .map(|p| serde_json::to_value(&p.rule).expect("JSON")["code"].as_str().unwrap_or_default().to_owned())
            .collect();
        assert_eq!(codes, [code], "{by}");
        // It is drawn all the same.
        assert_eq!(answer.shapes.len(), 1, "{by}");
    }
    for by in [1e3, 1e6, 1e300] {
        assert!(matches!(problem(&prism(&times(by))).1, Rule::WholeWithin { .. }), "{by}");
    }
    // A file holds no other numbers; a page might.
    let mut wild = prism(&L);
    wild.load.parts[0].outline[3] = [f64::NAN, 0.0];
    let problems = standfast_core::report::find_load(&wild).problems;
    assert!(problems.iter().any(|p| p.rule == Rule::NotFinite), "{problems:?}");
}

fn cut(host: Option<usize>, size: [f64; 3], at: [f64; 3]) -> Part {
    Part { cut_from: host, mass_kg: None, ..block(0.0, size, at) }
}

#[test]
fn cut_outs() {
    let whole = || block(200.0, [1.0, 0.8, 0.6], [0.0, 0.0, 0.0]);
    let place = "load.parts[1].cut_from";
    let good = built(vec![whole(), cut(Some(0), [0.2; 3], [0.1, 0.0, 0.1])]);
    assert!((found(&good).mass.nominal.get() - 200.0).abs() < 1e-9);
    // Flush with its host is inside.
    found(&built(vec![whole(), cut(Some(0), [0.2, 0.8, 0.6], [0.0, 0.0, 0.0])]));
    for at in [[0.9, 0.0, 0.1], [0.1, 0.35, 0.1], [0.1, 0.0, 0.5], [-0.01, 0.0, 0.1], [5.0, 0.0, 0.0]] {
        is(&built(vec![whole(), cut(Some(0), [0.2; 3], at)]), place, Rule::CutOutside { part: 0 });
    }
    is(&built(vec![whole(), cut(Some(0), [1.0, 0.8, 0.6], [0.0; 3])]), "load.parts[0].shape", Rule::CutTakesAll);
    let halves = [[0.0, 0.0, 0.0], [0.5, 0.0, 0.0]].map(|at| cut(Some(0), [0.5, 0.8, 0.6], at));
    let parts = [vec![whole()], halves.to_vec()].concat();
    is(&built(parts), "load.parts[0].shape", Rule::CutTakesAll);
    // Of itself, of a part that is not there, of a cut-out.
    is(&built(vec![whole(), cut(Some(1), [0.2; 3], [0.1, 0.0, 0.1])]), place, Rule::CutHost);
    is(&built(vec![whole(), cut(Some(7), [0.2; 3], [0.1, 0.0, 0.1])]), place, Rule::CutHost);
    is(&built(vec![whole(), cut(Some(usize::MAX), [0.2; 3], [0.1, 0.0, 0.1])]), place, Rule::CutHost);
    let deep = vec![whole(), cut(Some(0), [0.4; 3], [0.1, 0.0, 0.1]), cut(Some(1), [0.1; 3], [0.2, 0.0, 0.2])];
    is(&built(deep), "load.parts[2].cut_from", Rule::CutHost);
    // Two cut out of each other: neither has a host.
    let ring = vec![whole(), cut(Some(2), [0.2; 3], [0.1, 0.0, 0.1]), cut(Some(1), [0.1; 3], [0.1, 0.0, 0.1])];
    let places: Vec<String> = answer(&built(ring)).problems.iter().map(|p| p.place.to_string()).collect();
    assert_eq!(places, ["load.parts[1].cut_from", "load.parts[2].cut_from"]);
    // Nothing but a cut-out.
    let alone = answer(&built(vec![cut(Some(0), [0.2; 3], [0.0; 3])]));
    assert!(alone.problems.iter().any(|p| p.place.to_string() == "load.parts" && p.rule == Rule::Required));
    // A round thing through a slanted side, and a hollow host that the box is not in.
    let mut cone = whole();
    (cone.shape, cone.diameter_m, cone.length_m) = (Some(Shape::Cone), Some(1.0), Some(1.0));
    is(&built(vec![cone, cut(Some(0), [0.3, 0.3, 0.6], [0.35, 0.0, 0.1])]), place, Rule::CutOutside { part: 0 });
    let mut l = prism(&L);
    l.load.parts.push(cut(Some(0), [0.2, 0.2, 0.2], [0.5, 0.2, 0.1]));
    is(&l, place, Rule::CutOutside { part: 0 });
    // One that reaches from arm to arm across the hollow: its corners lie inside, its middle does not.
    let mut u =
        prism(&[[0.0, 0.0], [0.9, 0.0], [0.9, 0.8], [0.6, 0.8], [0.6, 0.3], [0.3, 0.3], [0.3, 0.8], [0.0, 0.8]]);
    u.load.parts.push(cut(Some(0), [0.7, 0.2, 0.2], [0.1, 0.2, 0.1]));
    is(&u, place, Rule::CutOutside { part: 0 });
}

/// Found here: a cut-out round a tube's bore, or across a slot narrower than the places it was looked at,
/// passed for inside, though it takes away what is not there.
#[test]
fn cut_outs_over_what_is_not_there() {
    let place = "load.parts[1].cut_from";
    let mut tube = block(200.0, [1.0, 0.8, 0.6], [0.0, 0.0, 0.0]);
    (tube.shape, tube.diameter_m, tube.bore_m) = (Some(Shape::Tube), Some(1.0), Some(0.3));
    let drilled = |cut: Part| built(vec![tube.clone(), cut]);
    let outside = Rule::CutOutside { part: 0 };
    // Round the bore: a box, a cylinder, a tube that is narrower inside; a thinner tube is inside.
    is(&drilled(cut(Some(0), [0.6, 0.6, 0.4], [0.2, 0.0, 0.1])), place, outside.clone());
    let round = |bore: Option<f64>, ahead: f64| {
        let shape = if bore.is_some() { Shape::Tube } else { Shape::Cylinder };
        let (diameter_m, length_m) = (Some(0.6), Some(0.4));
        Part { shape: Some(shape), diameter_m, length_m, bore_m: bore, ..cut(Some(0), [0.4; 3], [ahead, 0.0, 0.1]) }
    };
    is(&drilled(round(None, 0.2)), place, outside.clone());
    is(&drilled(round(Some(0.25), 0.2)), place, outside.clone());
    is(&drilled(round(Some(0.35), 0.24)), place, outside.clone());
    found(&drilled(round(Some(0.3), 0.2)));
    // Beside the bore, with one face just in it or just not.
    found(&drilled(cut(Some(0), [0.2, 0.5, 0.4], [0.14, 0.0, 0.1])));
    is(&drilled(cut(Some(0), [0.2, 0.5, 0.4], [0.16, 0.0, 0.1])), place, outside.clone());
    // A slot 10 mm wide, crossed.
    let slotted = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.53, 1.0], [0.53, 0.3], [0.52, 0.3], [0.52, 1.0], [0.0, 1.0]];
    let crossed = |size: [f64; 3], at: [f64; 3]| {
        let mut document = prism(&slotted);
        document.load.parts.push(cut(Some(0), size, at));
        document
    };
    is(&crossed([0.8, 0.3, 0.2], [0.1, 0.2, 0.1]), place, outside.clone());
    is(&crossed([0.8, 0.6, 0.2], [0.1, 0.0, 0.1]), place, outside);
    found(&crossed([0.8, 0.3, 0.2], [0.1, -0.35, 0.1]));
    found(&crossed([0.4, 0.6, 0.2], [0.1, 0.0, 0.1]));
    // Flush with the slot's bottom.
    found(&crossed([1.0, 0.3, 0.5], [0.0, -0.35, 0.0]));
}

/// Found here: two cut-outs in one place took the same away twice, and the load was too light.
#[test]
fn cut_outs_over_each_other() {
    let whole = || block(200.0, [1.0, 0.8, 0.6], [0.0, 0.0, 0.0]);
    let place = "load.parts[2].cut_from";
    let two = |first: Part, second: Part| built(vec![whole(), first, second]);
    let hole = |at: [f64; 3]| cut(Some(0), [0.3, 0.3, 0.3], at);
    let first = || hole([0.1, 0.0, 0.1]);
    for at in [[0.1, 0.0, 0.1], [0.39, 0.0, 0.1], [0.1, 0.2, 0.25], [0.35, -0.2, 0.3]] {
        is(&two(first(), hole(at)), place, Rule::CutsOverlap { part: 1 });
    }
    // Side by side they touch.
    found(&two(first(), hole([0.4, 0.0, 0.1])));
    // Crossing bars: no corner of either lies in the other.
    let along = cut(Some(0), [0.9, 0.1, 0.1], [0.05, 0.0, 0.2]);
    let across = |z: f64| cut(Some(0), [0.1, 0.7, 0.1], [0.45, 0.0, z]);
    is(&two(along.clone(), across(0.2)), place, Rule::CutsOverlap { part: 1 });
    found(&two(along, across(0.3)));
    // Two ramps that make a box share their slant and nothing else.
    let ramp = |facing| Part { shape: Some(Shape::Wedge), facing, ..first() };
    is(&two(ramp(Facing::Ahead), ramp(Facing::Left)), place, Rule::CutsOverlap { part: 1 });
    let mut upper = ramp(Facing::Ahead);
    (upper.shape, upper.outline) = (Some(Shape::Prism), vec![[0.0, 0.0], [0.3, 0.3], [0.0, 0.3]]);
    upper.facing = Facing::Left;
    found(&two(ramp(Facing::Ahead), upper));
    // Round ones in the corners of one box.
    let ball =
        |ahead: f64, left: f64| Part { shape: Some(Shape::Sphere), diameter_m: Some(0.3), ..hole([ahead, left, 0.1]) };
    found(&two(ball(0.1, 0.0), ball(0.32, 0.22)));
    is(&two(ball(0.1, 0.0), ball(0.3, 0.2)), place, Rule::CutsOverlap { part: 1 });
    // What is cut out of different parts is nobody's affair.
    let mut other = hole([0.1, 0.0, 0.1]);
    other.cut_from = Some(1);
    found(&built(vec![whole(), whole(), hole([0.1, 0.0, 0.1]), other]));
}

#[test]
fn parts_that_say_too_little() {
    let mut light = block(100.0, [0.5; 3], [0.0; 3]);
    light.mass_kg = None;
    is(&built(vec![light]), "load.parts[0].mass_kg", Rule::WeightOrMaterial);
    let mut wedge = block(100.0, [0.5; 3], [0.0; 3]);
    wedge.shape = Some(Shape::Wedge);
    for facing in [Facing::Up, Facing::Down] {
        wedge.facing = facing;
        is(&built(vec![wedge.clone()]), "load.parts[0].facing", Rule::NotThisWay);
    }
    let mut tube = block(100.0, [0.5; 3], [0.0; 3]);
    (tube.shape, tube.diameter_m, tube.bore_m) = (Some(Shape::Tube), Some(0.3), Some(0.3));
    assert!(
        matches!(problem(&built(vec![tube])), (place, Rule::NotMoreThan { .. }) if place == "load.parts[0].bore_m")
    );
    is(&built(Vec::new()), "load.parts", Rule::Required);
    assert!(matches!(problem(&built(vec![block(1e4, [0.5; 3], [0.0; 3]); 3])).1, Rule::WeightWithin { .. }));
    is(&built(vec![block(10.0, [0.5; 3], [0.0; 3]); 201]), "load.parts", Rule::TooLong { most: 200 });
    // What can be drawn is, whatever is missing elsewhere.
    let half = built(vec![block(100.0, [0.5; 3], [0.0; 3]), Part::default()]);
    let answer = answer(&half);
    assert!(answer.load.is_none() && answer.shapes.len() == 1 && answer.problems.len() >= 4, "{:?}", answer.problems);
}

#[test]
fn traces() {
    found(&traced());
    let with = |change: fn(&mut standfast_core::document::Trace)| {
        let mut document = traced();
        document.load.trace.iter_mut().for_each(change);
        document
    };
    is(&with(|t| t.scale = vec![[100.0, 750.0], [103.0, 750.0]]), "load.trace.scale", Rule::ScaleTooShort);
    is(&with(|t| t.scale = vec![[100.0, 750.0]; 2]), "load.trace.scale", Rule::ScaleTooShort);
    is(&with(|t| t.scale.truncate(1)), "load.trace.scale", Rule::Required);
    is(&with(|t| t.scale_m = None), "load.trace.scale_m", Rule::Required);
    is(&with(|t| t.picture = None), "load.trace.picture", Rule::Required);
    is(&with(|t| t.through_m = None), "load.trace.through_m", Rule::Required);
    is(&with(|t| t.outline.swap(0, 2)), "load.trace.outline", problem(&with(|t| t.outline.swap(0, 2))).1);
    assert!(matches!(problem(&with(|t| t.outline.swap(0, 2))).1, Rule::OutlineCrosses { .. }));
    is(&with(|t| t.outline.truncate(2)), "load.trace.outline", Rule::OutlineTooShort { points: 2 });
    is(
        &with(|t| t.outline = vec![[1.0, 1.0], [500.0, 500.0], [900.0, 900.0]]),
        "load.trace.outline",
        Rule::OutlineFlat,
    );
    is(&with(|t| t.outline.clear()), "load.trace.outline", Rule::Required);
    let hole = |list: &[[f64; 2]]| {
        let mut document = traced();
        document.load.trace.iter_mut().for_each(|t| t.holes.push(list.to_vec()));
        document
    };
    found(&hole(&[[150.0, 600.0], [250.0, 600.0], [250.0, 650.0]]));
    is(&hole(&[[400.0, 300.0], [500.0, 300.0], [500.0, 400.0]]), "load.trace.holes[0]", Rule::HoleOutside);
    is(&hole(&[[150.0, 600.0], [650.0, 600.0], [250.0, 300.0]]), "load.trace.holes[0]", Rule::HoleOutside);
    is(&hole(&[[150.0, 600.0], [250.0, 600.0]]), "load.trace.holes[0]", Rule::OutlineTooShort { points: 2 });
    let rectangle = |corners: [[f64; 2]; 4]| {
        let mut document = traced();
        document.load.trace.iter_mut().for_each(|t| {
            t.rectangle = corners.to_vec();
            (t.rectangle_width_m, t.rectangle_height_m) = (Some(1.4), Some(1.0));
        });
        document
    };
    found(&rectangle([[100.0, 200.0], [800.0, 200.0], [800.0, 700.0], [100.0, 700.0]]));
    for bent in [
        [[100.0, 200.0], [800.0, 200.0], [100.0, 700.0], [800.0, 700.0]],
        [[100.0, 200.0], [800.0, 200.0], [400.0, 300.0], [100.0, 700.0]],
        [[100.0, 200.0], [100.0, 700.0], [800.0, 700.0], [800.0, 200.0]],
        [[100.0, 200.0]; 4],
    ] {
        is(&rectangle(bent), "load.trace.rectangle", Rule::RectangleBent);
    }
    let mut bare = traced();
    bare.load.mass_kg = None;
    is(&bare, "load.mass_kg", Rule::WeightOrMaterial);
}

#[test]
fn weighings() {
    let plain = [(0.1, 0.0, 200.0, None), (1.1, 0.0, 200.0, None)];
    found(&weighed(&plain));
    let level = |a: f64, b: f64| weighed(&[(0.1, 0.0, a, None), (1.1, 0.0, b, None)]);
    is(&level(-3.0, 200.0), "load.weighing.points[0].reading_kg", Rule::NegativeReading);
    is(&level(200.0, -3.0), "load.weighing.points[1].reading_kg", Rule::NegativeReading);
    is(&weighed(&[plain[0], plain[0]]), "load.weighing.points", Rule::SupportsTogether);
    is(&weighed(&[plain[0], plain[0], plain[1]]), "load.weighing.points", Rule::SupportsTogether);
    let line = [(0.1, -0.3, 90.0, None), (0.5, 0.0, 90.0, None), (0.9, 0.3, 90.0, None)];
    is(&weighed(&line), "load.weighing.points", Rule::SupportsInLine);
    is(&weighed(&plain[..1]), "load.weighing.points", Rule::Required);
    is(&weighed(&[plain[0]; 5]), "load.weighing.points", Rule::TooLong { most: 4 });
    // Bearers beyond the load: the centre would be outside it.
    let outside = weighed(&[(0.1, 0.0, 20.0, None), (1.9, 0.0, 400.0, None)]);
    assert!(matches!(problem(&outside).1, Rule::WeighedOutside { .. }));
    let raised = |a: f64, b: f64, by: f64| {
        let mut document = weighed(&[(0.1, 0.0, 200.0, Some(a)), (1.1, 0.0, 200.0, Some(b))]);
        document.load.weighing.iter_mut().for_each(|w| (w.raised_end, w.raised_m) = (Some(Side::Ahead), Some(by)));
        document
    };
    // 0.5 m up, one end raised 0.25 m: the line of action moves back by 0.5 tan.
    let tan = 0.25 / libm::sqrt(1.0 - 0.0625);
    found(&raised(200.0 + 200.0 * tan, 200.0 - 200.0 * tan, 0.25));
    is(&raised(401.0, -1.0, 0.25), "load.weighing.points[1].raised_kg", Rule::NegativeReading);
    let totals = Rule::WeighedTotals { level: s(400.0), raised: s(360.0), allowed: s(4.0) };
    let (place, rule) = problem(&raised(200.0, 160.0, 0.25));
    assert_eq!(place, "load.weighing.points");
    match (rule, totals) {
        (Rule::WeighedTotals { level, raised, allowed }, Rule::WeighedTotals { level: l, raised: r, allowed: a }) => {
            let near =
                |x: standfast_core::scalar::Scalar, y: standfast_core::scalar::Scalar| (x.get() - y.get()).abs() < 1e-5;
            assert!(near(level, l) && near(raised, r) && near(allowed, a));
        }
        (rule, _) => panic!("{rule:?}"),
    }
    // The load would be taller than it is, or under the ground.
    for (a, b) in [(380.0, 20.0), (100.0, 300.0)] {
        let (place, rule) = problem(&raised(a, b, 0.25));
        assert_eq!(place, "load.weighing.raised_m");
        assert!(matches!(rule, Rule::HeightOutside { .. }), "{rule:?}");
    }
    is(&raised(220.0, 180.0, 0.95), "load.weighing.raised_m", Rule::RaisedTooFar);
    let mut endless = raised(220.0, 180.0, 0.25);
    endless.load.weighing.iter_mut().for_each(|w| w.raised_end = None);
    is(&endless, "load.weighing.raised_end", Rule::Required);
    let mut across = raised(220.0, 180.0, 0.25);
    across.load.weighing.iter_mut().for_each(|w| w.raised_end = Some(Side::Left));
    is(&across, "load.weighing.points", Rule::SupportsTogether);
    is(&level(0.0, 0.0), "load.weighing.points", problem(&level(0.0, 0.0)).1);
}

fn s(value: f64) -> standfast_core::scalar::Scalar {
    standfast_core::scalar::Scalar::new(value).expect("a number")
}

/// Everything wrong at once is named at once, and nothing of it is lost in the file.
#[test]
fn all_at_once() {
    let mut document: Document = prism(&[[0.0, 0.0], [0.8, 0.8], [0.8, 0.0], [0.0, 0.8]]);
    document.load.parts.push(cut(Some(9), [0.2; 3], [0.0; 3]));
    document.load.parts.push(block(-5.0, [0.5; 3], [0.0; 3]));
    document.load.weighing = weighed(&[(0.1, 0.0, -200.0, None), (1.1, 0.0, 200.0, None)]).load.weighing;
    let places: Vec<String> = answer(&document).problems.iter().map(|p| p.place.to_string()).collect();
    for place in [
        "load.parts[0].outline",
        "load.parts[1].cut_from",
        "load.parts[2].mass_kg",
        "load.weighing.points[0].reading_kg",
    ] {
        assert!(places.iter().any(|p| p == place), "{place} in {places:?}");
    }
}
