//! Weighings of loads whose centre is known: what the supports bear is worked out by forces and moments
//! in space (nalgebra solves), the load turned about its low end, and the core must find the load again.

use crate::{Worst, seeds};
use glam::{DVec2, DVec3};
use nalgebra::{DMatrix, DVector};
use standfast_core::document::Side;
use standfast_core::rules;
use standfast_core::weighed::{Support, Weighed, find};
use standfast_tests::draw::Draws;

/// A load on supports, as it really is.
#[derive(Clone, Debug)]
struct Case {
    mass: f64,
    centre: DVec3,
    /// The supports on its underside.
    places: Vec<DVec2>,
    raised: Option<(Side, f64)>,
}

/// What the supports bear: upward forces at points of space that hold a weight at `centre`. Four supports
/// do not settle it: any way they may share is as good, so a bit of another way is mixed in.
fn borne(points: &[DVec3], mass: f64, centre: DVec3, bias: f64) -> Vec<f64> {
    let n = points.len();
    // Forces upward, moments about x and about y.
    let rows = DMatrix::from_fn(3, n, |r, c| [1.0, points[c].y, -points[c].x][r]);
    let load = DVector::from_vec(vec![mass, mass * centre.y, -mass * centre.x]);
    let svd = rows.clone().svd(true, true);
    let mut forces = svd.solve(&load, 1e-9).expect("equilibrium");
    assert!((&rows * &forces - &load).norm() < 1e-9 * mass, "in balance");
    if n == 4 {
        // What four forces may do without being felt: from what the rows leave of any set of forces.
        let any = DVector::from_vec(vec![1.0, -1.0, 1.0, -1.0]);
        let felt = svd.solve(&(&rows * &any), 1e-9).expect("a part of it");
        forces += (any - felt) * bias * mass;
    }
    forces.iter().copied().collect()
}

impl Case {
    /// Level, and turned about the low end so that the far supports rise by `by`: the load as a rigid body.
    fn read(&self, bias: f64) -> (Vec<f64>, Option<Vec<f64>>) {
        let on_load: Vec<DVec3> = self.places.iter().map(|p| p.extend(0.0)).collect();
        let level = self.bear(&on_load, self.centre, bias);
        let raised = self.raised.map(|(end, by)| {
            let (way, axis) = match end {
                Side::Ahead => (DVec3::X, DVec3::NEG_Y),
                Side::Heel => (DVec3::NEG_X, DVec3::Y),
                Side::Left => (DVec3::Y, DVec3::X),
                Side::Right => (DVec3::NEG_Y, DVec3::NEG_X),
            };
            let along = on_load.iter().map(|p| p.dot(way));
            let (lo, hi) = along.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)));
            let turn = glam::DMat3::from_axis_angle(axis, libm::asin(by / (hi - lo)));
            let moved: Vec<DVec3> = on_load.iter().map(|p| turn * *p).collect();
            let rise = moved.iter().map(|p| p.z).fold(f64::NEG_INFINITY, f64::max)
                - moved.iter().map(|p| p.z).fold(f64::INFINITY, f64::min);
            assert!((rise - by).abs() < 1e-9, "the far end rises");
            self.bear(&moved, turn * self.centre, bias)
        });
        (level, raised)
    }

    fn bear(&self, points: &[DVec3], centre: DVec3, bias: f64) -> Vec<f64> {
        if let [a, b] = points {
            // Bearers right across: each takes hold along its whole length, so only the one way counts.
            let along = (self.places[0] - self.places[1]).abs();
            let way = if along.x >= along.y { DVec3::X } else { DVec3::Y };
            let flat = |p: &DVec3| DVec3::X * p.dot(way);
            return borne(&[flat(a), flat(b)], self.mass, flat(&centre), 0.0);
        }
        borne(points, self.mass, centre, bias)
    }
}

/// Two bearers, three supports or four; the centre over them; one of the four ends raised.
fn case(draws: &mut Draws) -> Case {
    let mass = draws.within(100.0..3000.0);
    let (l, w) = (draws.within(0.6..2.5), draws.within(0.5..1.5));
    let datum = DVec2::new(draws.within(-1.0..1.0), draws.within(-1.0..1.0));
    let count = draws.count(2..5);
    let mut off = || draws.within(-0.1..0.1);
    let places = match count {
        2 => vec![DVec2::new(0.0, 0.0), DVec2::new(l, 0.1 * off())],
        3 => vec![DVec2::new(off(), 0.5 * w), DVec2::new(off(), -0.5 * w), DVec2::new(l + off(), off())],
        _ => vec![
            DVec2::new(off(), 0.5 * w + off()),
            DVec2::new(l + off(), 0.5 * w + off()),
            DVec2::new(l + off(), -0.5 * w + off()),
            DVec2::new(off(), -0.5 * w + off()),
        ],
    };
    let ahead = draws.within(0.25..0.65) * l;
    let left = draws.within(-0.1..0.1) * w;
    let above = draws.within(0.1..1.2);
    // Across is only told by supports that stand apart across.
    let across = draws.chance(0.5) && count != 2;
    let end = match (across, draws.chance(0.5)) {
        (false, true) => Side::Ahead,
        (false, false) => Side::Heel,
        (true, true) => Side::Left,
        (true, false) => Side::Right,
    };
    let reach = if across { w } else { l };
    let by = draws.within(0.06..0.25) * reach;
    let raised = draws.chance(0.8).then_some((end, by));
    // Two bearers lie along or across, with the same words.
    let turn = count == 2 && draws.chance(0.5);
    let flip = |p: DVec2| if turn { DVec2::new(p.y, p.x) } else { p } + datum;
    let turned = |side: Side| match (turn, side) {
        (true, Side::Ahead) => Side::Left,
        (true, Side::Heel) => Side::Right,
        (_, side) => side,
    };
    Case {
        mass,
        centre: flip(DVec2::new(ahead, left)).extend(above),
        places: places.into_iter().map(flip).collect(),
        raised: raised.map(|(side, by)| (turned(side), by)),
    }
}

fn found(case: &Case, level: &[f64], raised: Option<&[f64]>, accuracy: f64) -> Option<Weighed> {
    if level.iter().chain(raised.unwrap_or_default()).any(|r| *r < 0.0) {
        return None;
    }
    let supports: Vec<Support> = (0..case.places.len())
        .map(|k| Support { at: case.places[k], level: level[k], raised: raised.map(|r| r[k]) })
        .collect();
    Some(find(&supports, accuracy, case.raised).unwrap_or_else(|e| panic!("{e:?}: {case:?} {supports:?}")))
}

#[test]
fn what_was_weighed_is_found_again() {
    let (mut plan, mut height, mut mass) = (Worst::default(), Worst::default(), Worst::default());
    let mut heights = 0;
    for mut draws in seeds(4000) {
        let case = case(&mut draws);
        let (level, raised) = case.read(draws.within(-0.03..0.03));
        let Some(weighed) = found(&case, &level, raised.as_deref(), 0.5) else { continue };
        mass.within((weighed.mass.nominal - case.mass).abs() / case.mass, 1e-12, &case);
        for (told, is) in [(weighed.ahead, case.centre.x), (weighed.left, case.centre.y)] {
            if let Some(told) = told {
                plan.within((told.nominal - is).abs(), 1e-9, &case);
            }
        }
        assert_eq!(weighed.above.is_some(), case.raised.is_some());
        if let Some(above) = weighed.above {
            height.within((above.nominal - case.centre.z).abs(), 1e-9, &case);
            heights += 1;
        }
        assert_eq!([weighed.ahead, weighed.left].iter().flatten().count(), if case.places.len() == 2 { 1 } else { 2 });
    }
    assert!(heights > 2000, "only {heights} heights");
    mass.say("weighed, mass");
    plan.say("weighed, plan, m");
    height.say("weighed, height, m");
}

/// Scales out by up to their accuracy, supports and blocks by up to a tape's: as bad as may be, and anything
/// between. The truth lies in what is stated.
#[test]
fn the_truth_lies_in_the_ranges() {
    let (mut cases, mut heights, mut widest, mut nearest) = (0, 0, 0.0_f64, f64::INFINITY);
    for mut draws in seeds(14_000) {
        let truth = case(&mut draws);
        let accuracy = draws.one_of(&[0.1_f64, 0.5, 1.0, 2.0, 5.0]).unwrap_or(1.0).min(0.01 * truth.mass);
        let bias = draws.within(-0.03..0.03);
        let (level, raised) = truth.read(bias);
        let extreme = draws.chance(0.5);
        let mut out = |by: f64| {
            let part = draws.within(-1.0..1.0);
            by * if extreme { part.signum() } else { part }
        };
        let mut reads = |r: &f64| r + out(accuracy);
        let level: Vec<f64> = level.iter().map(&mut reads).collect();
        let raised: Option<Vec<f64>> = raised.map(|r| r.iter().map(&mut reads).collect());
        let place = rules::TOLERANCE_SUPPORT_PLACE.value;
        let places = truth.places.iter().map(|p| *p + DVec2::new(out(place), out(place))).collect();
        let rise = out(rules::TOLERANCE_RAISED.value);
        let entered = Case { places, raised: truth.raised.map(|(end, by)| (end, by + rise)), ..truth.clone() };
        let Some(weighed) = found(&entered, &level, raised.as_deref(), accuracy) else { continue };
        cases += 1;
        let mut holds = |span: standfast_core::scalar::Span, is: f64, what: &str| {
            assert!(
                span.lo - 1e-9 <= is && is <= span.hi + 1e-9,
                "{what} {is} is not in {span:?}: {truth:?} {entered:?} {level:?} {raised:?} {accuracy}"
            );
            nearest = nearest.min((is - span.lo).min(span.hi - is) / (span.hi - span.lo));
        };
        holds(weighed.mass, truth.mass, "mass");
        if let Some(ahead) = weighed.ahead {
            holds(ahead, truth.centre.x, "ahead");
        }
        if let Some(left) = weighed.left {
            holds(left, truth.centre.y, "left");
        }
        if let Some(above) = weighed.above {
            holds(above, truth.centre.z, "above");
            heights += 1;
            widest = widest.max(above.half_width());
        }
    }
    assert!(cases > 10_000 && heights > 8000, "{cases} cases, {heights} heights");
    eprintln!(
        "{cases} weighings, {heights} heights; widest height +-{widest:.3} m; nearest to an end {nearest:.1e} of a range"
    );
}
