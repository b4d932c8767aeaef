//! Where in plan the load's centre may stand for a step to pass at the worst corner: the support polygon
//! mapped back through the common centre of gravity, everything uncertain counted in.

use crate::balance::Balance;
use crate::body::{Outfit, Placed};
use crate::document::Document;
use crate::limit;
use crate::limit::last_held;
use crate::scalar::Scalar;
use crate::scenario::Scenario;
use crate::step::{Step, StepId};
use glam::{DVec2, DVec3};
use serde::Serialize;

/// A convex region, corner by corner.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Region {
    /// Corners (ahead of the face that carries the load, left of the middle of the forks), m.
    pub on_forks: Vec<(Scalar, Scalar)>,
    /// The same corners (x, y) in the truck's frame, in the step's pose, at the height of the load's centre, m.
    pub in_plan: Vec<(Scalar, Scalar)>,
    /// Where the load's centre stands as stated, (x, y) in the truck's frame.
    pub load: (Scalar, Scalar),
}

/// Nobody looks for a load's centre further off than this: ahead of the face, and to either side, m.
const LOOKED_AT: (f64, f64) = (3.0, 1.5);
/// A moment within this of nothing is nothing here, N m.
const CLOSE: f64 = 0.01;
/// A corner so near to what holds is moved there, m.
const ROUND: f64 = 2e-4;
/// How far apart two places are tried to see which way a moment falls, m.
const NEAR: f64 = 1e-6;

/// The region for one step of a document; `None` where nothing can be assessed, where the step does not
/// apply, or has no load. Never panics.
///
/// Whether the load lies well on the blades is left out: this is about the truck.
pub fn of_step(document: &Document, id: StepId) -> Option<Region> {
    let scenario = Scenario::from_document(document).ok()?;
    if !id.laden() || !id.applies(&scenario) {
        return None;
    }
    let balance = Balance::of(&scenario.truck, &scenario.doubts);
    let placed = Placed::of(&scenario.load, &scenario.lift);
    let outline = outline(&scenario, &balance, &placed, id);
    let step = Step::new(&scenario, &balance, &placed, id);
    let (pose, pivot) = (step.stance.pose, scenario.truck.mast.pivot);
    let face = DVec3::new(scenario.truck.face(Outfit::Today), pose.sideshift, pose.lift);
    let place = |p: DVec2| pose.place(pivot, face + p.extend(placed.centre.at.z)).truncate();
    let c = |p: DVec2| (Scalar::computed(p.x), Scalar::computed(p.y));
    Some(Region {
        on_forks: outline.iter().map(|p| c(*p)).collect(),
        in_plan: outline.iter().map(|p| c(place(*p))).collect(),
        load: c(place(placed.centre.at.truncate())),
    })
}

/// What the step has in hand with the load's centre moved to a place, least first as it comes.
fn in_hand(scenario: &Scenario, balance: &Balance, placed: &Placed, id: StepId, at: DVec2) -> Vec<f64> {
    let by = (at - placed.centre.at.truncate()).extend(0.0);
    let mut moved = *placed;
    let centre = &mut moved.centre;
    (centre.at, centre.lo, centre.hi) = (centre.at + by, centre.lo + by, centre.hi + by);
    limit::in_hand(scenario, &Step::new(scenario, balance, &moved, id)).to_vec()
}

/// The region's corners, m.
///
/// What a moment asks of the place is all but affine; how far the mast leans under the load bends it a little. So
/// a tangent is taken where it counts: on the way from a place that holds to a corner that does not, where that
/// way leaves the region. It cuts off the corner, until all corners hold (Kelley's cutting planes).
fn outline(scenario: &Scenario, balance: &Balance, placed: &Placed, id: StepId) -> Vec<DVec2> {
    let margins = |at: DVec2| in_hand(scenario, balance, placed, id, at);
    let Some(middle) = inside(&margins, placed.centre.at.truncate()) else { return Vec::new() };
    let least = |at: DVec2| margins(at).into_iter().fold(f64::INFINITY, f64::min);
    let held = least(middle);
    let mut corners = looked_at();
    for _ in 0..60 {
        let Some(k) = corners.iter().position(|(_, held)| !held) else { break };
        let at = corners[k].0;
        let lacks = least(at);
        if lacks >= -CLOSE {
            corners[k].1 = true;
            continue;
        }
        let on_way = |t: f64| middle + (at - middle) * t;
        let t = last_held((0.0, held), (1.0, lacks), 1e-8, false, |t| least(on_way(t)));
        let edge = on_way(t);
        if edge.distance(at) < ROUND {
            corners[k] = (edge, true);
            continue;
        }
        // What is not held a little further on is what ends it here.
        let beyond = margins(on_way(t + 1e-7));
        let Some(m) = (0..beyond.len()).min_by(|a, b| beyond[*a].total_cmp(&beyond[*b])) else { break };
        let here = margins(edge)[m];
        let slope = DVec2::from_array([DVec2::X, DVec2::Y].map(|d| (margins(edge + d * NEAR)[m] - here) / NEAR));
        corners = cut(&corners, |p| here + slope.dot(p - edge));
    }
    // Whatever is left lies at a corner that was cut too often to matter.
    corners.into_iter().map(|(p, _)| p).collect()
}

/// All that is looked at, none of it known to hold.
fn looked_at() -> Vec<(DVec2, bool)> {
    let (ahead, aside) = LOOKED_AT;
    [(0.0, -aside), (ahead, -aside), (ahead, aside), (0.0, aside)].map(|(x, y)| (DVec2::new(x, y), false)).to_vec()
}

/// A place where every margin holds: that of the load, or else what tangents leave at the corners of all that is looked at.
fn inside(margins: &impl Fn(DVec2) -> Vec<f64>, load: DVec2) -> Option<DVec2> {
    if margins(load).iter().all(|m| *m >= 0.0) {
        return Some(load);
    }
    let mut corners = looked_at();
    for _ in 0..60 {
        let middle = corners.iter().map(|(p, _)| *p).sum::<DVec2>() / corners.len().max(1) as f64;
        let here = margins(middle);
        let lacking: Vec<usize> = (0..here.len()).filter(|m| here[*m] < 0.0).collect();
        if lacking.is_empty() || corners.is_empty() {
            return (!corners.is_empty()).then_some(middle);
        }
        let along = [DVec2::X, DVec2::Y].map(|d| margins(middle + d * NEAR));
        for m in lacking {
            let slope = DVec2::new(along[0][m] - here[m], along[1][m] - here[m]) / NEAR;
            corners = cut(&corners, |p| here[m] + slope.dot(p - middle));
        }
    }
    None
}

/// What of a convex outline holds: `f` affine and not negative.
fn cut(corners: &[(DVec2, bool)], f: impl Fn(DVec2) -> f64) -> Vec<(DVec2, bool)> {
    let mut kept = Vec::with_capacity(corners.len() + 1);
    for (k, &(a, held)) in corners.iter().enumerate() {
        let (b, _) = corners[(k + 1) % corners.len()];
        let (fa, fb) = (f(a), f(b));
        if fa >= 0.0 {
            kept.push((a, held));
        }
        if (fa < 0.0) != (fb < 0.0) {
            kept.push((a + (b - a) * (fa / (fa - fb)), false));
        }
    }
    // What a cut leaves of an edge may be nothing.
    kept.dedup_by(|b, a| a.0.distance(b.0) < NEAR);
    if kept.len() > 1 && kept[0].0.distance(kept[kept.len() - 1].0) < NEAR {
        kept.pop();
    }
    if kept.len() < 3 { Vec::new() } else { kept }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;
    use crate::polygon;

    /// Inside it passes, outside it does not: a grid of places, each assessed.
    #[test]
    fn inside_it_passes_and_outside_it_does_not() {
        // A mast that gives much leans the further, the further out the load stands.
        for (text, id, give) in [
            (example::THREE_WHEEL, StepId::RaisedForward, 1.2),
            (example::THREE_WHEEL, StepId::RaisedForward, 5.0),
            (example::THREE_WHEEL, StepId::Travel, 1.2),
            (example::FOUR_WHEEL, StepId::CornerLeft, 1.5),
            (example::FOUR_WHEEL, StepId::RaisedUpright, 5.0),
            (example::ODD_LOAD, StepId::Brake, 1.2),
        ] {
            let mut document = example::document(text);
            document.truck.mast.give_deg = Some(give);
            let scenario = Scenario::from_document(&document).expect("complete");
            let balance = Balance::of(&scenario.truck, &scenario.doubts);
            let placed = Placed::of(&scenario.load, &scenario.lift);
            let region = outline(&scenario, &balance, &placed, id);
            let (mut inside, mut outside) = (0, 0);
            for i in 0..=30 {
                for j in 0..=30 {
                    let at = DVec2::new(0.1 * f64::from(i), 0.1 * f64::from(j) - 1.5);
                    let edges = || polygon::edges(&region);
                    let depth =
                        edges().map(|(a, b)| (b - a).normalize().perp_dot(at - a)).fold(f64::INFINITY, f64::min);
                    let passes = in_hand(&scenario, &balance, &placed, id, at).iter().all(|m| *m >= 0.0);
                    if !region.is_empty() && depth > 1e-3 {
                        assert!(passes, "{id:?} {at}");
                        inside += 1;
                    } else if region.is_empty() || depth < -1e-3 {
                        assert!(!passes, "{id:?} {at}");
                        outside += 1;
                    }
                }
            }
            assert!(outside > 10 && inside > 10 && outside + inside > 800, "{id:?} {inside} {outside}");
        }
    }

    #[test]
    fn without_a_load_or_a_step_there_is_none() {
        let document = example::document(example::THREE_WHEEL);
        assert_eq!(of_step(&document, StepId::BackOut), None);
        assert_eq!(of_step(&document, StepId::RampUp), None);
        assert_eq!(of_step(&Document::default(), StepId::Travel), None);
        let region = of_step(&document, StepId::RaisedUpright).expect("a region");
        assert_eq!(region.on_forks.len(), region.in_plan.len());
        assert!(region.on_forks.len() >= 3);
    }
}
