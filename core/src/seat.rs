//! The load as a body of its own on the blades: whether it topples on them or slides off, in a step's
//! pose, standing and braking.
//!
//! In the blades' frame: x ahead from the fork (or attachment) face, y left from the middle between
//! the forks, z up from the blades. Nothing holds the load but its weight and friction; against the
//! heel it leans on the face, so it neither topples nor slides that way.

use crate::body::{Outfit, Placed, Pose};
use crate::field::Field;
use crate::forks::{self, Fork};
use crate::polygon;
use crate::rules;
use crate::scalar::Span;
use crate::scenario::Scenario;
use crate::stance::Yield;
use crate::statics::Pair;
use crate::step::StepId;
use glam::{DVec2, DVec3};
use serde::Serialize;

/// What happens to the load in a step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Event {
    /// The truck stands or goes on evenly.
    Standing,
    /// It brakes, going forward.
    Braking,
}

/// Over which edge a load may topple.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Over {
    /// Away from the truck.
    Ahead,
    /// To the left.
    Left,
    /// To the right.
    Right,
}

/// One edge, or the tightest of those that point that way: how far inside it the load's line of action meets the blades, m; negative beyond it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Topple {
    /// Which.
    pub over: Over,
    /// In hand.
    pub margin: Pair,
}

/// One event.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// Which.
    pub event: Event,
    /// About each edge; towards the heel it leans on the face.
    pub topple: Vec<Topple>,
    /// The friction asked for: what pulls along the blades over what presses on them.
    pub asked: Pair,
    /// The friction there is.
    pub friction: Span,
}

impl Case {
    /// Whether it neither topples nor slides, as stated.
    pub fn holds(&self) -> bool {
        self.topple.iter().all(|t| t.margin.nominal >= 0.0) && self.asked.nominal <= self.friction.nominal
    }

    /// Whether it does so at the worst of all ranges.
    pub fn holds_worst(&self) -> bool {
        self.topple.iter().all(|t| t.margin.worst >= 0.0) && self.asked.worst <= self.friction.lo
    }
}

/// The load on the blades in one step.
#[derive(Clone, Debug, PartialEq)]
pub struct Seat {
    /// Corners of the region it is carried on, in the truck's frame, in the pose as stated.
    pub region: Vec<DVec3>,
    /// Where its own line of action meets the plane of the blades, in the truck's frame.
    pub bob: DVec3,
    /// Standing, and braking where it is carried; none where it lies on no blade.
    pub cases: Vec<Case>,
}

/// What carries the load, in the blades' frame: the hull of where its underside lies on the two blades.
fn region(scenario: &Scenario, gap: f64, offset: f64) -> Vec<DVec2> {
    let both = [Fork::Left, Fork::Right].map(|fork| forks::on_blade(scenario, fork, DVec2::new(gap, offset)));
    plain(polygon::hull(&both.concat()))
}

/// Corners nearer to one another than this are one, and what is no wider is a line, m.
const THIN: f64 = 1e-6;

/// A hull without what only rounding made: an edge between two corners that are one faces anywhere.
fn plain(mut hull: Vec<DVec2>) -> Vec<DVec2> {
    hull.dedup_by(|b, a| a.distance(*b) < THIN);
    if hull.len() > 1 && hull[0].distance(hull[hull.len() - 1]) < THIN {
        hull.pop();
    }
    let pairs = hull.iter().enumerate().flat_map(|(k, a)| hull[k + 1..].iter().map(move |b| (*a, *b)));
    let Some((a, b)) = pairs.max_by(|(a, b), (c, d)| a.distance(*b).total_cmp(&c.distance(*d))) else { return hull };
    let along = (b - a).normalize_or(DVec2::Y);
    if hull.iter().all(|p| along.perp_dot(*p - a).abs() < THIN) { vec![a, b] } else { hull }
}

/// The edges of a region: the outward normal of each and how far out along it the edge lies.
fn edges(region: &[DVec2]) -> Vec<(DVec2, f64)> {
    let edge = |n: DVec2, p: DVec2| (n, n.dot(p));
    match region {
        [] => Vec::new(),
        [p] => [DVec2::X, DVec2::Y, -DVec2::Y].map(|n| edge(n, *p)).to_vec(),
        // A line: to either side, and past its ends.
        [a, b] => {
            let along = (*b - *a).normalize_or(DVec2::Y);
            vec![edge(along.perp(), *a), edge(-along.perp(), *a), edge(along, *b), edge(-along, *a)]
        }
        _ => {
            let next = region.iter().cycle().skip(1);
            region.iter().zip(next).map(|(a, b)| edge(-(*b - *a).normalize_or(DVec2::Y).perp(), *a)).collect()
        }
    }
}

/// The edge that a normal points over; none towards the heel.
fn over(n: DVec2) -> Option<Over> {
    if n.x >= n.y.abs() {
        Some(Over::Ahead)
    } else if n.x < -n.y.abs() - 1e-9 {
        // What faces the heel no more than a side counts for the side.
        None
    } else if n.y > 0.0 {
        Some(Over::Left)
    } else {
        Some(Over::Right)
    }
}

/// How far inside its edges the line of action passes with the load in a place on the blades: as
/// stated, or at the worst of where its own centre may be. `None` where nothing carries it.
fn margins(scenario: &Scenario, place: (f64, f64), w: DVec3, worst: bool) -> Option<[f64; 3]> {
    let centre = &scenario.load.centre;
    // How far the line of action has gone by the time it reaches the blades, for each metre of height.
    let lean = DVec2::new(w.x, w.y) / -w.z;
    let pick = |s: Span, by: f64| match (worst, by > 0.0) {
        (false, _) => by * s.nominal,
        (true, true) => by * s.hi,
        (true, false) => by * s.lo,
    };
    let (gap, offset) = place;
    let edges = edges(&region(scenario, gap, offset));
    if edges.is_empty() {
        return None;
    }
    let mut found = [f64::INFINITY; 3];
    for (n, out) in edges {
        let Some(over) = over(n) else { continue };
        let reaches = n.dot(DVec2::new(gap, offset))
            + pick(centre.x(), n.x)
            + pick(centre.y(), n.y)
            + pick(centre.z(), n.dot(lean));
        found[over as usize] = found[over as usize].min(out - reaches);
    }
    Some(found)
}

/// The friction asked for in a field of the blades' frame: nothing where it pulls to the heel alone.
fn asked(w: DVec3) -> f64 {
    DVec2::new(w.x.max(0.0), w.y).length() / -w.z
}

impl Seat {
    /// Looks at the load on the blades in a step; nothing for one that hangs.
    pub fn of(scenario: &Scenario, placed: &Placed, id: StepId, pose: &Pose) -> Option<Self> {
        if scenario.load.hanging.is_some() {
            return None;
        }
        let (truck, lift) = (&scenario.truck, &scenario.lift);
        let give = Yield::of(truck, Some(placed), pose.lift);
        let braking = DVec3::new(-rules::BRAKING_LADEN.value, 0.0, 0.0);
        let events: &[(Event, DVec3)] = match id {
            StepId::Travel => &[(Event::Standing, DVec3::ZERO), (Event::Braking, braking)],
            _ => &[(Event::Standing, DVec3::ZERO)],
        };
        let case = |&(event, acceleration): &(Event, DVec3)| {
            let pull = Field::LEVEL.level - acceleration;
            let seen = |lean: f64, sway: f64| Pose { lean, sway, ..*pose }.rotation().transpose() * pull;
            let stated = seen(give.lean.nominal, 0.0);
            let (gap, offset) = (lift.heel_gap, lift.offset);
            let nominal = margins(scenario, (gap.nominal, offset.nominal), stated, false)?;
            let mut worst = (nominal, asked(stated));
            for w in [give.lean.lo, give.lean.hi].into_iter().flat_map(|l| [-give.sway, give.sway].map(|s| seen(l, s)))
            {
                worst.1 = worst.1.max(asked(w));
                // Both ends of where it may lie on the blades.
                for place in [gap.lo, gap.hi].into_iter().flat_map(|g| [offset.lo, offset.hi].map(|o| (g, o))) {
                    if let Some(at) = margins(scenario, place, w, true) {
                        worst.0 = std::array::from_fn(|k| worst.0[k].min(at[k]));
                    }
                }
            }
            // A region may have no edge that faces one of the three ways.
            let edge = |k: usize, over| {
                let (nominal, worst) = (nominal[k].min(f64::MAX), worst.0[k]);
                let nominal = if nominal < f64::MAX { nominal } else { worst };
                worst.is_finite().then_some(Topple { over, margin: Pair { nominal, worst } })
            };
            let topple = [(0, Over::Ahead), (1, Over::Left), (2, Over::Right)];
            Some(Case {
                event,
                topple: topple.into_iter().filter_map(|(k, over)| edge(k, over)).collect(),
                asked: Pair { nominal: asked(stated), worst: worst.1 },
                friction: scenario.load.friction,
            })
        };
        let cases = events.iter().filter_map(case).collect();
        let stated = Pose { lean: give.lean.nominal, sway: 0.0, ..*pose };
        let face = DVec3::new(truck.face(Outfit::Today), pose.sideshift, pose.lift);
        let place = |x: f64, y: f64, z: f64| stated.place(truck.mast.pivot, face + DVec3::new(x, y, z));
        let region = region(scenario, lift.heel_gap.nominal, lift.offset.nominal);
        let w = stated.rotation().transpose() * Field::LEVEL.level;
        let at = placed.centre.at;
        let bob = at - w * (at.z / w.z);
        Some(Self {
            region: region.iter().map(|p| place(p.x, p.y, 0.0)).collect(),
            bob: place(bob.x, bob.y, 0.0),
            cases,
        })
    }

    /// Whether the load neither topples nor slides, as stated.
    pub fn holds(&self) -> bool {
        self.cases.iter().all(Case::holds)
    }

    /// Whether it does so at the worst of all ranges.
    pub fn holds_worst(&self) -> bool {
        self.cases.iter().all(Case::holds_worst)
    }
}

#[cfg(test)]
mod tests;
