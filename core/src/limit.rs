//! Solved limits: how far a figure may go before a step, or the whole move, no longer passes at the worst corner.
//!
//! A limit is what may be **entered**: its own range goes with it as the document's rules have it. A weight
//! keeps its range as a part of itself unless a tolerance in kg was given, a speed and a deceleration as they are
//! known, a length, an angle and a slope by the same amount. Everything else stays as it is.
//!
//! For a step it counts what makes that step pass: the tipping lines, the platform slopes, the reserve, and
//! the load on the blades (toppling, sliding). For the whole move the plate, the blades with their stamps, the
//! rule for ramps, and every step: just inside the verdict is go, just outside it is not. Three things that no
//! figure here can mend are left out of account: that nobody knows the battery, that ways of finding the load
//! disagree, and that the truck contradicts its plate.
//!
//! Of a ramp each direction is a limit of its own, and so is either side of a cross-fall: the other step that
//! the same entry makes is left out of account. What may be entered is the lesser of the two.

use crate::balance::Balance;
use crate::document::Document;
use crate::platform::Test;
use crate::scalar::Scalar;
use crate::scenario::Scenario;
use crate::step::{Step, StepId};
use crate::support::LineId;
use crate::whole::Whole;
use serde::Serialize;

mod axis;
mod furthest;
mod in_step;
mod margin;
mod probe;

pub use axis::Axis;

pub(crate) use furthest::last_held;
use furthest::{MOST, Passes};
use probe::{Base, Part, Probe};

/// What a step has in hand of each thing that it must pass, at the worst corner, N m: lines, then platform
/// slopes. Not negative where it passes; concave in where the load stands.
pub fn in_hand(scenario: &Scenario, step: &Step) -> [f64; MOST] {
    margin::of_step(scenario, step, None)
}

/// What can be solved for, in the document's unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Limit {
    /// The greatest load weight, kg.
    LoadMass,
    /// The furthest load centre from the face that carries the load, m: heel gap and centre as stated together.
    /// The load stays where it is, its centre moves in it.
    LoadCentre,
    /// How far the load's centre may stand to the left of the middle of the forks, m: the load is moved, and
    /// lies on both blades. Less than nothing where it has to stay on the other side.
    OffsetLeft,
    /// To the right, likewise.
    OffsetRight,
    /// The greatest fork height for putting down, m.
    LiftHeight,
    /// Tilt back while raised, degrees, a magnitude.
    TiltBack,
    /// Tilt forward for placing, degrees.
    TiltForward,
    /// The steepest ramp up, load uphill, percent.
    RampUp,
    /// The steepest ramp down, driven as it is now, percent.
    RampDown,
    /// The steepest cross-fall with the left side the higher, percent.
    CrossFallLeft,
    /// With the right side the higher.
    CrossFallRight,
    /// The fastest in a bend of the radius stated, km/h.
    CornerSpeed,
    /// The same without a load.
    CornerSpeedEmpty,
    /// The hardest braking with the load, m/s^2.
    Braking,
    /// The lightest battery, kg.
    BatteryLeast,
    /// The heaviest battery, kg.
    BatteryMost,
}

impl Limit {
    /// All of them.
    pub const ALL: [Self; 16] = [
        Self::LoadMass,
        Self::LoadCentre,
        Self::OffsetLeft,
        Self::OffsetRight,
        Self::LiftHeight,
        Self::TiltBack,
        Self::TiltForward,
        Self::RampUp,
        Self::RampDown,
        Self::CrossFallLeft,
        Self::CrossFallRight,
        Self::CornerSpeed,
        Self::CornerSpeedEmpty,
        Self::Braking,
        Self::BatteryLeast,
        Self::BatteryMost,
    ];

    /// Whether the figure changes anything in a step, supposed that the move has it.
    pub fn touches(self, id: StepId, scenario: &Scenario) -> bool {
        use StepId::{
            BackOut, Brake, CornerLeft, CornerRight, CrossFallLeft, CrossFallRight, EmptyCornerLeft, EmptyCornerRight,
            RaisedBack, RaisedForward, RaisedUpright, RampDown, RampUp,
        };
        match self {
            Self::LoadMass | Self::LoadCentre | Self::OffsetLeft | Self::OffsetRight => {
                id.laden() && id.applies(scenario)
            }
            Self::LiftHeight => matches!(id, RaisedBack | RaisedUpright | RaisedForward | BackOut),
            Self::TiltBack => id == RaisedBack,
            Self::TiltForward => id == RaisedForward,
            Self::RampUp => id == RampUp,
            Self::RampDown => id == RampDown,
            Self::CrossFallLeft => id == CrossFallLeft,
            Self::CrossFallRight => id == CrossFallRight,
            Self::CornerSpeed => matches!(id, CornerLeft | CornerRight),
            Self::CornerSpeedEmpty => matches!(id, EmptyCornerLeft | EmptyCornerRight),
            Self::Braking => id == Brake || (id == RampDown && id.applies(scenario)),
            Self::BatteryLeast | Self::BatteryMost => id.applies(scenario),
        }
    }

    /// The other step that the same entry makes: left out of account.
    fn leaves_out(self) -> Option<StepId> {
        match self {
            Self::RampUp => Some(StepId::RampDown),
            Self::RampDown => Some(StepId::RampUp),
            Self::CrossFallLeft => Some(StepId::CrossFallRight),
            Self::CrossFallRight => Some(StepId::CrossFallLeft),
            _ => None,
        }
    }
}

/// What binds at a limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Bound {
    /// The plate.
    Plate,
    /// The blades: their tips, edges, stamps.
    Blades,
    /// The load topples or slides in this step.
    Seat {
        /// Which.
        step: StepId,
    },
    /// This step: it tips, or keeps too little.
    Step {
        /// Which.
        step: StepId,
        /// About this line.
        line: LineId,
        /// On this platform slope; none as it stands.
        test: Option<Test>,
    },
    /// The rule that on so steep a ramp the load stays uphill.
    Rule,
}

/// Where a limit lies. A value is always on the passing side, and not rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "reach", rename_all = "snake_case")]
pub enum Reach {
    /// It passes up to here and fails just beyond.
    At {
        /// Up to here.
        value: Scalar,
        /// What fails.
        by: Bound,
    },
    /// It still passes at the end of what may be asked: of what can be entered, of the mast.
    Beyond {
        /// That end.
        value: Scalar,
    },
    /// It passes nowhere.
    Never,
}

impl Reach {
    /// Up to where it passes; none where it does nowhere.
    pub fn value(&self) -> Option<f64> {
        match self {
            Self::At { value, .. } | Self::Beyond { value } => Some(value.get()),
            Self::Never => None,
        }
    }
}

/// A solved limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Solved {
    /// Of what.
    pub what: Limit,
    /// As it is now, in the same unit and sense (to a side: less than nothing where it is on the other); none
    /// where the move has no such step.
    pub stated: Option<Scalar>,
    /// Where it passes neither as it is now nor at the least that may be asked: it passes from here.
    pub least: Option<Scalar>,
    /// Where it lies.
    #[serde(flatten)]
    pub reach: Reach,
}

/// All limits of a move.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Limits {
    /// Of each step, in the order of [`Whole::steps`].
    pub steps: Vec<Vec<Solved>>,
    /// Of the whole move.
    pub whole: Vec<Solved>,
}

/// Solves every limit of every step and of the whole move.
pub fn find(scenario: &Scenario, balance: &Balance, whole: &Whole, document: &Document) -> Limits {
    let base = Base::of(scenario, balance);
    let known = known(scenario, whole);
    let mut limits = Limits { steps: vec![Vec::new(); whole.steps.len()], whole: Vec::new() };
    for what in Limit::ALL {
        let axis = Axis::of(what, scenario, document);
        let mut probe = Probe::new(&axis, &base);
        let stretches = in_all_steps(&mut probe, scenario, whole, &known);
        for (step, list) in whole.steps.iter().zip(&mut limits.steps) {
            let found = stretches.iter().find(|(id, _)| *id == step.id);
            list.extend(found.map(|(_, passes)| axis.solved(*passes)));
        }
        limits.whole.push(axis.solved(in_whole(&mut probe, whole, &known, &stretches)));
    }
    limits
}

/// The limits of one step.
pub fn of_step(scenario: &Scenario, balance: &Balance, document: &Document, id: StepId) -> Vec<Solved> {
    let base = Base::of(scenario, balance);
    let touching = Limit::ALL.into_iter().filter(|what| what.touches(id, scenario));
    let solve = |what: Limit| {
        let axis = Axis::of(what, scenario, document);
        axis.solved(Probe::new(&axis, &base).step(id, None))
    };
    touching.map(solve).collect()
}

/// One limit of the whole move.
pub fn of_move(what: Limit, scenario: &Scenario, balance: &Balance, whole: &Whole, document: &Document) -> Solved {
    let base = Base::of(scenario, balance);
    let known = known(scenario, whole);
    let axis = Axis::of(what, scenario, document);
    let mut probe = Probe::new(&axis, &base);
    if !others_pass(&axis, whole, &known, scenario) {
        return axis.solved(None);
    }
    let stretches = in_all_steps(&mut probe, scenario, whole, &known);
    axis.solved(in_whole(&mut probe, whole, &known, &stretches))
}

/// How far a figure may go in some steps together, in the document's unit; none where they pass together
/// nowhere, infinite for no steps.
pub fn in_steps(
    what: Limit,
    steps: &[StepId],
    scenario: &Scenario,
    balance: &Balance,
    document: &Document,
) -> Option<f64> {
    let axis = Axis::of(what, scenario, document);
    if steps.is_empty() { Some(f64::INFINITY) } else { in_steps_to(axis.ends().1, &axis, steps, scenario, balance) }
}

/// The same no further than to a value.
pub(crate) fn in_steps_to(
    most: f64,
    axis: &Axis,
    steps: &[StepId],
    scenario: &Scenario,
    balance: &Balance,
) -> Option<f64> {
    let base = Base::of(scenario, balance);
    let mut probe = Probe::new(axis, &base);
    let (mut most, mut last) = (most, 0);
    for (k, id) in steps.iter().enumerate() {
        // Further than the steps before go none need be looked at.
        let found = probe.step_to(most, *id, None)?;
        if found.by.is_some() {
            (most, last) = (found.most, k);
        }
    }
    // What passes further out may not pass so far in.
    steps[..last].iter().all(|id| probe.step_passes(*id, most)).then_some(most)
}

/// In which stretch each step passes that the figure touches.
type Stretches = Vec<(StepId, Option<Passes>)>;

/// The margins of each step as it is now.
type Known = Vec<[f64; MOST]>;

fn known(scenario: &Scenario, whole: &Whole) -> Known {
    whole.steps.iter().zip(&whole.seats).map(|(step, seat)| margin::of_step(scenario, step, seat.as_ref())).collect()
}

/// Whether every step passes as it is now that the figure does not touch, and is not left out of account.
fn others_pass(axis: &Axis, whole: &Whole, known: &Known, scenario: &Scenario) -> bool {
    let others = whole
        .steps
        .iter()
        .zip(known)
        .filter(|(step, _)| axis.what.leaves_out() != Some(step.id) && !axis.what.touches(step.id, scenario));
    others.into_iter().all(|(_, margins)| passing(margins))
}

fn passing(margins: &[f64; MOST]) -> bool {
    margins.iter().all(|m| *m >= 0.0)
}

fn in_all_steps(probe: &mut Probe, scenario: &Scenario, whole: &Whole, known: &Known) -> Stretches {
    let what = probe.axis.what;
    let touched = StepId::ALL.into_iter().filter(|id| what.touches(*id, scenario));
    let known_of = |id: StepId| whole.steps.iter().zip(known).find(|(step, _)| step.id == id).map(|(_, known)| known);
    touched.map(|id| (id, probe.step(id, known_of(id)))).collect()
}

/// In which stretch the whole move goes: each part of it has one, so together they reach to the least of all
/// ends, if every part passes there.
fn in_whole(probe: &mut Probe, whole: &Whole, known: &Known, stretches: &Stretches) -> Option<Passes> {
    let axis = probe.axis;
    let touched = |id: StepId| stretches.iter().any(|(touched, _)| *touched == id);
    let left_out = |id: StepId| axis.what.leaves_out() == Some(id);
    let steps = || whole.steps.iter().zip(known).filter(|(step, _)| !left_out(step.id));
    if !steps().all(|(step, margins)| touched(step.id) || passing(margins)) {
        return None;
    }
    let mut found = Passes { least: None, most: axis.ends().1, by: None };
    for part in Part::ALL {
        found = axis.both(found, probe.part(part)?);
    }
    for (_, passes) in stretches {
        found = axis.both(found, (*passes)?);
    }
    // Where all pass as it is now they all pass up to there too.
    let now = axis.stated.filter(|_| axis.as_it_is).filter(|x| axis.way.has(*x));
    let as_stated = |x: f64, probe: &mut Probe| {
        steps().all(|(_, margins)| passing(margins)) && Part::ALL.into_iter().all(|part| probe.part_passes(part, x))
    };
    if now.is_some_and(|x| as_stated(x, probe)) {
        return Some(found);
    }
    let most = found.most;
    let all = |x: f64, probe: &mut Probe| {
        let parts = Part::ALL.into_iter().all(|part| probe.part_passes(part, x));
        parts && stretches.iter().all(|(id, _)| probe.step_passes(*id, x))
    };
    if !all(most, probe) {
        return None;
    }
    if !axis.stated.is_some_and(|x| axis.way.has(x) && all(x, probe)) {
        let parts = Part::ALL.map(|part| probe.part_begins(part, most));
        let begin = stretches.iter().map(|(id, _)| probe.step_begins(*id, most)).chain(parts).flatten();
        let up = axis.ends().0 < axis.ends().1;
        found.least = begin.reduce(|a, b| if (a < b) == up { b } else { a });
    }
    Some(found)
}

#[cfg(test)]
mod tests;
