//! The load as a body of its own on the blades: whether it topples on them or slides off, in a step's
//! pose, standing and braking.
//!
//! In the blades' frame: x ahead from the fork (or attachment) face, y left from the middle between
//! the forks, z up from the blades. Nothing holds the load but its weight and friction; against the
//! heel it leans on the face, so it neither topples nor slides that way.

use crate::body::{Outfit, Placed, Pose};
use crate::field::Field;
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

/// One edge: how far inside it the load's line of action meets the blades, m; negative beyond it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Topple {
    /// Which.
    pub over: Over,
    /// In hand.
    pub margin: Pair,
}

/// One event.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Case {
    /// Which.
    pub event: Event,
    /// About each edge.
    pub topple: [Topple; 3],
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
    /// Standing, and braking where it is carried.
    pub cases: Vec<Case>,
}

/// The rectangle that carries the load, in the blades' frame, as stated: where its underside lies
/// over the blades, from outer edge to outer edge.
fn region(scenario: &Scenario, gap: f64, offset: f64) -> (DVec2, DVec2) {
    let (forks, foot) = (&scenario.truck.forks, scenario.load.foot);
    let half = 0.5 * forks.spread;
    let lo = DVec2::new((gap + foot.0.x).max(0.0), (offset + foot.0.y).max(-half));
    let hi = DVec2::new((gap + foot.1.x).min(forks.reach()), (offset + foot.1.y).min(half));
    (lo, hi.max(lo))
}

/// How far inside its edges the line of action passes, at the worst over all ranges.
///
/// Each edge is the load's own or the blades', whichever comes first. From its own edge the load's
/// place on the blades does not matter, from the blades' it does.
fn margins(scenario: &Scenario, placed: &Placed, w: DVec3, worst: bool) -> [f64; 3] {
    let (forks, load) = (&scenario.truck.forks, &scenario.load);
    let half = 0.5 * forks.spread;
    // How far the line of action has gone by the time it reaches the blades, for each metre of height.
    let lean = DVec2::new(w.x, w.y) / -w.z;
    let pick = |s: Span, high: bool| match (worst, high) {
        (false, _) => s.nominal,
        (true, true) => s.hi,
        (true, false) => s.lo,
    };
    let inside = |own_edge: f64, blade_edge: f64, own: Span, there: Span, lean: f64| {
        let drift = lean * pick(placed.centre.z(), lean > 0.0);
        (own_edge - pick(own, true)).min(blade_edge - pick(there, true)) - drift
    };
    let (own, there) = (&load.centre, &placed.centre);
    [
        inside(load.foot.1.x, forks.reach(), own.x(), there.x(), lean.x),
        inside(load.foot.1.y, half, own.y(), there.y(), lean.y),
        inside(-load.foot.0.y, half, own.y().mirrored(), there.y().mirrored(), -lean.y),
    ]
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
        let truck = &scenario.truck;
        let give = Yield::of(truck, Some(placed), pose.lift);
        let braking = DVec3::new(-rules::BRAKING_LADEN.value, 0.0, 0.0);
        let events: &[(Event, DVec3)] = match id {
            StepId::Travel => &[(Event::Standing, DVec3::ZERO), (Event::Braking, braking)],
            _ => &[(Event::Standing, DVec3::ZERO)],
        };
        let case = |&(event, acceleration): &(Event, DVec3)| {
            let pull = Field::LEVEL.level - acceleration;
            let seen = |lean: f64, sway: f64| Pose { lean, sway, ..*pose }.rotation().transpose() * pull;
            let nominal = margins(scenario, placed, seen(give.lean.nominal, 0.0), false);
            let leans = [give.lean.lo, give.lean.hi];
            let sways = [-give.sway, give.sway];
            let poses = leans.into_iter().flat_map(|lean| sways.map(|sway| seen(lean, sway)));
            let mut worst = (nominal, asked(seen(give.lean.nominal, 0.0)));
            for w in poses {
                let at = margins(scenario, placed, w, true);
                worst.0 = std::array::from_fn(|k| worst.0[k].min(at[k]));
                worst.1 = worst.1.max(asked(w));
            }
            let edge = |k: usize, over| Topple { over, margin: Pair { nominal: nominal[k], worst: worst.0[k] } };
            Case {
                event,
                topple: [edge(0, Over::Ahead), edge(1, Over::Left), edge(2, Over::Right)],
                asked: Pair { nominal: asked(seen(give.lean.nominal, 0.0)), worst: worst.1 },
                friction: scenario.load.friction,
            }
        };
        let cases = events.iter().map(case).collect();
        let stated = Pose { lean: give.lean.nominal, sway: 0.0, ..*pose };
        let face = DVec3::new(truck.face(Outfit::Today), pose.sideshift, pose.lift);
        let place = |x: f64, y: f64, z: f64| stated.place(truck.mast.pivot, face + DVec3::new(x, y, z));
        let (lo, hi) = region(scenario, scenario.lift.heel_gap.nominal, scenario.lift.offset.nominal);
        let w = stated.rotation().transpose() * Field::LEVEL.level;
        let at = placed.centre.at;
        let bob = at - w * (at.z / w.z);
        Some(Self {
            region: [(lo.x, lo.y), (hi.x, lo.y), (hi.x, hi.y), (lo.x, hi.y)].map(|(x, y)| place(x, y, 0.0)).to_vec(),
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
