//! The worst corner is the worst: neither any other corner nor anything between them is worse.

use crate::{counts, fields, steps, worked};
use glam::DVec3;
use proptest::prelude::*;
use standfast_core::body::{Bodies, Body, Outfit, Pose};
use standfast_core::platform::TIE;
use standfast_core::stance::Yield;
use standfast_core::statics::{Corner, moment};
use standfast_core::step::Step;
use standfast_core::support::{Line, LineId};
use standfast_tests::draw::Draws;
use standfast_tests::sensible;

/// By the definition of a moment, apart from the core's lever vector: -((r - p0) x m w) . u.
fn lever(line: &Line, w: DVec3, at: DVec3) -> f64 {
    -(at - line.from).cross(w).dot((line.to - line.from).normalize())
}

/// Every corner of one body: masses by places by the corners of the box.
fn corners(body: &Body) -> Vec<(f64, DVec3)> {
    let mut places = vec![body.at];
    places.extend(body.others);
    places.iter_mut().for_each(|p| *p += body.skew);
    for edge in body.half_edges.into_iter().flatten().filter(|e| *e != DVec3::ZERO) {
        places = places.iter().flat_map(|&p| [p - edge, p + edge]).collect();
    }
    let mut masses = vec![body.mass.lo, body.mass.hi];
    masses.dedup();
    masses.iter().flat_map(|&m| places.iter().map(move |&p| (m, p))).collect()
}

/// The least moment over every combination of every body's corners.
fn brute_force(bodies: &Bodies, line: &Line, w: DVec3) -> (f64, usize) {
    let lists: Vec<Vec<f64>> = bodies
        .as_slice()
        .iter()
        .filter(|b| counts(b, line))
        .map(|b| corners(b).iter().map(|&(m, at)| m * lever(line, w, at)).collect())
        .collect();
    let mut sums = vec![0.0];
    for list in &lists {
        sums = sums.iter().flat_map(|s| list.iter().map(move |m| s + m)).collect();
    }
    (sums.iter().copied().fold(f64::INFINITY, f64::min), sums.len())
}

/// Something inside a body's ranges, and now and then on their edge.
fn somewhere(body: &Body, draws: &mut Draws) -> (f64, DVec3) {
    let part = |draws: &mut Draws| {
        let t = draws.within(-0.2..1.2);
        t.clamp(0.0, 1.0)
    };
    let mass = body.mass.lo + (body.mass.hi - body.mass.lo) * part(draws);
    let mut at = body.at;
    for &other in body.others {
        at += (other - at) * part(draws);
    }
    at += body.skew;
    for edge in body.half_edges.into_iter().flatten() {
        at += edge * (2.0 * part(draws) - 1.0);
    }
    (mass, at)
}

proptest! {
    /// All corners of all bodies, enumerated: masses, places and boxes.
    #[test]
    fn the_worst_corner_is_the_least_of_all_corners(
        document in sensible::documents(), id in steps(), field in fields(),
    ) {
        let (scenario, balance, placed) = worked(&document);
        let step = Step::new(&scenario, &balance, &placed, id);
        let w = field.total();
        for line in step.stance.support.lines() {
            for bodies in step.stance.sets(line.id) {
                let (least, tried) = brute_force(bodies, &line, w);
                let found = moment(bodies, &line, w, Corner::Worst);
                prop_assert!((found - least).abs() < TIE, "{:?}: {found} is not {least} of {tried}", line.id);
            }
        }
    }

    /// Anything inside the ranges, the mast's lean and sway among them.
    #[test]
    fn nothing_between_the_corners_is_worse(
        document in sensible::documents(), id in steps(), field in fields(), mut draws in Draws::any(),
    ) {
        let (scenario, balance, placed) = worked(&document);
        let step = Step::new(&scenario, &balance, &placed, id);
        let (truck, w) = (&scenario.truck, field.total());
        let pose = id.pose(&scenario);
        let load = id.laden().then_some(&placed);
        let give = Yield::of(truck, load, pose.lift);
        for line in step.stance.support.lines() {
            let worst = step.stance.moment(&line, w).worst;
            for _ in 0..20 {
                let lean = give.lean.lo + (give.lean.hi - give.lean.lo) * draws.unit();
                let sway = give.sway * draws.within(-1.0..1.0);
                let leaning = Pose { lean, sway, ..pose };
                let bodies = truck.bodies(&balance.rig, &leaning, Outfit::Today, load);
                let found: f64 = bodies
                    .as_slice()
                    .iter()
                    .filter(|b| counts(b, &line))
                    .map(|b| {
                        let (mass, at) = somewhere(b, &mut draws);
                        mass * lever(&line, w, at)
                    })
                    .sum();
                // Sideways play is counted for the side lines. About the front line it only lifts what stands off
                // the middle a little: less than a twenty-thousandth of what all bodies turn about it.
                let turns: f64 = bodies.as_slice().iter().map(|b| (b.mass.nominal * lever(&line, w, b.at)).abs()).sum();
                let slack = if line.id == LineId::Front { TIE + 5e-5 * turns } else { TIE };
                prop_assert!(found >= worst - slack, "{:?}: {found} under {worst} at {leaning:?}", line.id);
            }
        }
    }
}
