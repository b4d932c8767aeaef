//! The load as a body of its own on the blades: whether it topples on them or slides off, in a step's
//! pose and field.
//!
//! In the blades' frame: x ahead from the fork (or attachment) face, y left from the middle between
//! the forks, z up from the blades. Nothing holds the load but its weight and friction; close to the
//! face it leans on it, so that it neither topples nor slides that way.

use crate::bearing::{Bearing, Lies, leans_on_face};
use crate::body::{Outfit, Placed, Pose};
use crate::field::Field;
use crate::scalar::Span;
use crate::scenario::{Load, Scenario};
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
    /// It goes round a bend.
    Cornering,
    /// It is on a ramp or a cross-fall.
    OnSlope,
}

pub use crate::bearing::Over;

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
    /// About each edge; close to the face there is none towards the heel.
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
    /// In the step's field; none where it lies on no blade.
    pub cases: Vec<Case>,
}

/// How far the line of action has gone by the time it reaches the blades, for each metre of height; not
/// back where the load leans on the face.
fn lean(w: DVec3, held: bool) -> DVec2 {
    let lean = DVec2::new(w.x, w.y) / -w.z;
    if held { DVec2::new(lean.x.max(0.0), lean.y) } else { lean }
}

/// How far inside its edges the line of action passes with the load where it is stated to stand. Infinite
/// where no edge faces that way, or where the load leans on the face.
fn margins(scenario: &Scenario, lies: &Lies, w: DVec3) -> [f64; 4] {
    let centre = scenario.load.centre.at;
    let held = leans_on_face(lies.by.x);
    let lean = lean(w, held);
    let mut found = [f64::INFINITY; 4];
    for &(over, n, out) in lies.edges.iter().filter(|e| !(held && e.0 == Over::Heel)) {
        let reaches = n.dot(lies.by + centre.truncate() + lean * centre.z);
        found[over as usize] = found[over as usize].min(out - reaches);
    }
    found
}

/// The same at the worst of where the load may stand on the blades and of where its own centre may be,
/// where that is less than what was `found` so far.
fn worst_margins(load: &Load, bearing: &Bearing, w: DVec3, found: &mut [f64; 4]) {
    let (centre, doubt) = (&load.centre, load.doubt);
    let lean = [false, true].map(|held| lean(w, held));
    let furthest = |s: Span, by: f64| by * if by > 0.0 { s.hi } else { s.lo };
    for edge in bearing.edges.iter().filter(|e| !(e.leans && e.over == Over::Heel)) {
        let n = edge.normal;
        let goes = n.dot(lean[usize::from(edge.leans)]);
        let reaches = furthest(centre.x(), n.x) + furthest(centre.y(), n.y) + furthest(centre.z(), goes);
        let least = &mut found[edge.over as usize];
        *least = least.min(edge.out - reaches - n.abs().dot(doubt));
    }
}

/// The friction asked for in a field of the blades' frame: nothing where it pulls to a heel at the face.
fn asked(w: DVec3, gap: f64) -> f64 {
    let ahead = if leans_on_face(gap) { w.x.max(0.0) } else { w.x };
    DVec2::new(ahead, w.y).length() / -w.z
}

impl Seat {
    /// Looks at the load on the blades in a step; nothing for one that hangs or is not there.
    pub fn of(scenario: &Scenario, placed: &Placed, bearing: &Bearing, id: StepId) -> Option<Self> {
        let (field, ends) = id.fields(scenario);
        Self::pulled(scenario, placed, bearing, id, (&field, &ends))
    }

    /// The same where what pulls in that step is known already, as stated and at all ends of it.
    pub fn pulled(
        scenario: &Scenario,
        placed: &Placed,
        bearing: &Bearing,
        id: StepId,
        (field, ends): (&Field, &[DVec3]),
    ) -> Option<Self> {
        if scenario.load.hanging.is_some() || !id.laden() {
            return None;
        }
        let (truck, lift) = (&scenario.truck, &scenario.lift);
        let setting = id.setting(scenario);
        let pose = &setting.pose;
        let give = Yield::of(truck, &scenario.doubts, Some(placed), &setting);
        let turned = give.lean.plus(setting.tilt);
        let event = match id {
            StepId::Brake => Event::Braking,
            StepId::CornerLeft | StepId::CornerRight => Event::Cornering,
            StepId::RampUp | StepId::RampDown | StepId::CrossFallLeft | StepId::CrossFallRight => Event::OnSlope,
            _ => Event::Standing,
        };
        // In the blades' frame, the mast leaning and swaying so far.
        let seen = |pull: DVec3, lean: f64, sway: f64| Pose { lean, sway, ..*pose }.rotation().transpose() * pull;
        let case = || {
            let (stated, gap) = (seen(field.total(), give.lean.nominal, 0.0), lift.heel_gap);
            let nominal = margins(scenario, &bearing.stated, stated);
            let mut worst = (nominal, asked(stated, gap.nominal));
            let mast = [turned.lo, turned.hi].into_iter().flat_map(|l| [-give.sway, give.sway].map(|s| (l, s)));
            for (lean, sway) in mast {
                let to_blades = Pose { lean, sway, ..*pose }.rotation().transpose();
                for w in ends.iter().map(|pull| to_blades * *pull) {
                    worst.1 = worst.1.max(asked(w, gap.hi));
                    worst_margins(&scenario.load, bearing, w, &mut worst.0);
                }
            }
            // As stated a region may have no edge that faces one of the ways: then the tightest of those it has
            // stands for it.
            let tightest = nominal.into_iter().fold(f64::INFINITY, f64::min);
            let edge = |k: usize, over| {
                let worst = worst.0[k];
                let nominal = if nominal[k].is_finite() { nominal[k] } else { tightest.max(worst) };
                worst.is_finite().then_some(Topple { over, margin: Pair { nominal, worst } })
            };
            let topple = [(0, Over::Ahead), (1, Over::Left), (2, Over::Right), (3, Over::Heel)];
            Case {
                event,
                topple: topple.into_iter().filter_map(|(k, over)| edge(k, over)).collect(),
                asked: Pair { nominal: asked(stated, gap.nominal), worst: worst.1 },
                friction: scenario.load.friction,
            }
        };
        let cases = (!bearing.stated.region.is_empty()).then(case).into_iter().collect();
        let stated = Pose { lean: give.lean.nominal, sway: 0.0, ..*pose };
        let face = DVec3::new(truck.face(Outfit::Today), pose.sideshift, pose.lift);
        let place = |x: f64, y: f64, z: f64| stated.place(truck.mast.pivot, face + DVec3::new(x, y, z));
        let w = seen(field.total(), give.lean.nominal, 0.0);
        let at = placed.centre.at;
        let bob = at - w * (at.z / w.z);
        Some(Self {
            region: bearing.stated.region.iter().map(|p| place(p.x, p.y, 0.0)).collect(),
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
