//! What would have to change: how the load stands on the forks, and how the forks are set.
//!
//! Each is solved, tried by assessing again, and kept only where it leads to a better state.

use crate::balance::Balance;
use crate::document::{Document, Turned};
use crate::forks::Arm;
use crate::place::Field;
use crate::scalar::{Scalar, Span};
use crate::scenario::{Load, Scenario};
use crate::seat::Over;
use crate::verdict::State;
use crate::whole::Whole;
use serde::Serialize;
use std::sync::Arc;

/// One thing to change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Remedy {
    /// Push the load home against the heel.
    PushHome {
        /// By so much, m; where the gap was not given, as much as was assumed.
        by: Scalar,
    },
    /// Pick it up further to the left (positive) or right, so that its centre is in the middle.
    Shift {
        /// By so much, m.
        by: Scalar,
        /// Then it stands so far left of the middle of the forks.
        offset: Scalar,
    },
    /// Set the forks so far apart, over their outer edges.
    Spread {
        /// m.
        to: Scalar,
    },
    /// Turn the load on the forks.
    Turn {
        /// From how it was given.
        turned: Turned,
    },
}

/// A remedy and where it leads.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Leads {
    /// What to change.
    pub remedy: Remedy,
    /// The state it leads to.
    pub state: State,
}

impl Remedy {
    /// Enters the change in a document.
    pub fn apply(&self, document: &mut Document) {
        match *self {
            Self::PushHome { .. } => document.lift.heel_gap_m = Some(0.0),
            Self::Shift { offset, .. } => document.lift.offset_m = Some(offset.get()),
            Self::Spread { to } => document.truck.forks.spread_m = Some(to.get()),
            Self::Turn { turned } => document.load.turned = turned,
        }
    }

    /// The same change in what is assessed.
    fn applied(&self, scenario: &Scenario) -> Scenario {
        let mut scenario = scenario.clone();
        match *self {
            Self::PushHome { .. } => scenario.lift.heel_gap = Span::exact(0.0),
            Self::Shift { offset, .. } => scenario.lift.offset = Span::exact(offset.get()),
            Self::Spread { to } => {
                (scenario.truck.forks.spread, scenario.truck.forks.spread_hi) = (to.get(), to.get());
            }
            Self::Turn { turned } => scenario.load = turned_to(&scenario.load, turned),
        }
        scenario
    }
}

/// The load turned otherwise; not to be drawn.
fn turned_to(load: &Load, turned: Turned) -> Load {
    Load::of(Arc::clone(&load.found), load.found.turned_unseen(turned), load.friction, load.hanging)
}

/// Up to a whole centimetre.
fn up(metres: f64) -> f64 {
    (metres * 100.0 - 1e-6).ceil() / 100.0
}

/// The least width over the forks that would carry the load within all edges and stamps, where the
/// forks' width is what fails.
fn spread_needed(scenario: &Scenario, whole: &Whole) -> Option<f64> {
    let (forks, load) = (&scenario.truck.forks, &scenario.load);
    let seats = whole.seats.iter().flatten().flat_map(|s| &s.cases);
    let beside =
        seats.flat_map(|c| &c.topple).filter(|t| matches!(t.over, Over::Left | Over::Right)).map(|t| t.margin.worst);
    let short = beside.fold(whole.forks.to_edge_worst.get(), f64::min);
    let by_edge = forks.spread + 2.0 * (-short).max(0.0);
    let by_arm = |arm: &Arm| {
        let towards = whole.placed.centre.y().furthest();
        let (mass, ahead) = (whole.placed.mass.hi, whole.placed.centre.hi.x);
        let moment = mass * crate::units::GRAVITY * ahead;
        let (allowed, most) = arm.allowed.zip(arm.allowed_mass)?;
        let part = (allowed.get() / moment).min(most.get() / mass);
        // At the worst it lies on the blades' inner edges; half and half is the best that any width can do.
        (part > 0.5).then(|| 2.0 * forks.blade.hi + towards / (part - 0.5) - scenario.doubts.fork_spread.lo)
    };
    if !whole.forks.bears_worst() {
        // The load falls between them: their outer edges flush with its underside.
        let (lo, hi) = crate::polygon::extents(&load.feet.concat());
        let flush = (2.0 * (-lo.y).min(hi.y) * 100.0 + 1e-6).floor() / 100.0;
        let least = Field::ForkSpread.row().min.max(2.0 * forks.blade.hi);
        return (flush < forks.spread && flush >= least).then_some(flush);
    }
    let over: Vec<Option<f64>> = whole.forks.arms.iter().filter(|a| !a.holds_worst()).map(by_arm).collect();
    let by_arms = over.into_iter().try_fold(0.0, |most: f64, one| one.map(|o| most.max(o)))?;
    let to = up(by_edge.max(by_arms));
    // Blades beside the load carry nothing.
    (to > forks.spread && to <= load.size.y && to <= Field::ForkSpread.row().max).then_some(to)
}

/// Every remedy that leads to a better state, the one that asks least first.
pub fn find(scenario: &Scenario, balance: &Balance, whole: &Whole, turned: Turned) -> Vec<Leads> {
    let now = whole.verdict.state;
    if now == State::Go {
        return Vec::new();
    }
    let c = Scalar::computed;
    let lead = |remedy: Remedy| {
        let state = Whole::of(&remedy.applied(scenario), balance).verdict.state;
        (state > now).then_some(Leads { remedy, state })
    };
    let mut found = Vec::new();
    let gap = scenario.lift.heel_gap;
    if gap.hi > 0.0 {
        found.extend(lead(Remedy::PushHome { by: c(gap.hi) }));
    }
    let off = whole.placed.centre.at.y + scenario.lift.sideshift;
    // To the millimetre, so that what is said is what is entered.
    let offset = ((scenario.lift.offset.nominal - off) * 1000.0).round() / 1000.0;
    let by = offset - scenario.lift.offset.nominal;
    let row = Field::Offset.row();
    if by.abs() >= 0.001 && (row.min..=row.max).contains(&offset) {
        found.extend(lead(Remedy::Shift { by: c(by), offset: c(offset) }));
    }
    if let Some(to) = spread_needed(scenario, whole) {
        found.extend(lead(Remedy::Spread { to: c(to) }));
    }
    let turns = [Turned::No, Turned::Left, Turned::Right, Turned::Half];
    let turns: Vec<Leads> =
        turns.into_iter().filter(|t| *t != turned).filter_map(|turned| lead(Remedy::Turn { turned })).collect();
    // Of the turns the one that leads furthest; of equals the first.
    found.extend(turns.into_iter().reduce(|best, next| if next.state > best.state { next } else { best }));
    found
}

#[cfg(test)]
mod tests;
