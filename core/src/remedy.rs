//! What would have to change: how the load stands on the forks, how high, how fast, over which ramp it
//! is carried, what is on the carriage.
//!
//! Each change is solved at the worst corner, entered, assessed again with the plate, and kept only where
//! that leads to a better state. Where no single change does, pairs are tried; where nothing does, what a
//! truck would have to lift is said.

use crate::balance::Balance;
use crate::document::{Document, RampDown, Turned};
use crate::gain;
use crate::place::{Field, Place};
use crate::scalar::Scalar;
use crate::scenario::{Load, Scenario};
use crate::validate;
use crate::verdict::{Ground, State};
use crate::whole::Whole;
use serde::Serialize;
use std::sync::Arc;

mod solve;
mod touches;

use solve::Kind;

/// One thing to change.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Remedy {
    /// Push the load home against the heel.
    PushHome {
        /// By so much, m; where the gap was not given, as much as was assumed.
        by: Scalar,
    },
    /// Shift the carriage sideways, so that the load's centre is in the truck's middle.
    Sideshift {
        /// To so far left (positive) of the middle, m.
        to: Scalar,
    },
    /// Pick it up further to the left (positive) or right, so that its centre is in the middle.
    Shift {
        /// By so much, m.
        by: Scalar,
        /// Then it stands so far left of the middle of the forks.
        offset: Scalar,
    },
    /// Tilt forward no further to place it.
    TiltForward {
        /// Degrees.
        to: Scalar,
    },
    /// Tilt back no further while it is raised.
    TiltBack {
        /// Degrees.
        to: Scalar,
    },
    /// Go slower in bends with the load.
    Corner {
        /// km/h.
        to: Scalar,
    },
    /// Go slower in bends without it.
    CornerEmpty {
        /// km/h.
        to: Scalar,
    },
    /// Brake no harder with the load.
    Brake {
        /// m/s^2.
        to: Scalar,
    },
    /// Drive down the ramp backwards, load uphill.
    RampBackwards,
    /// Turn the load on the forks.
    Turn {
        /// From how it was given.
        turned: Turned,
    },
    /// Set the forks so far apart, over their outer edges.
    Spread {
        /// m.
        to: Scalar,
    },
    /// Raise it no higher.
    Lower {
        /// Fork height, m.
        to: Scalar,
    },
    /// Go where no ramp is steeper.
    Ramp {
        /// Percent.
        to: Scalar,
    },
    /// Go where the ground falls no more to a side.
    CrossFall {
        /// Percent.
        to: Scalar,
    },
    /// Take the fork extensions off.
    ExtensionsOff,
    /// Fit forks that are not worn.
    NewForks,
    /// Take some of the load off.
    Lighter {
        /// To so much, kg.
        to: Scalar,
    },
    /// Take the attachment off.
    AttachmentOff,
    /// Fit a battery inside the plate's window.
    Battery {
        /// Of so much, kg.
        to: Scalar,
    },
}

/// One or two changes, and where they lead.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Leads {
    /// What to change.
    pub changes: Vec<Remedy>,
    /// The state it leads to.
    pub state: State,
}

/// What a truck would have to be good for where no change of this one helps.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Needed {
    /// Its plate would have to allow so much, kg.
    pub mass: Scalar,
    /// At a load centre of so much, m.
    pub load_centre: Scalar,
    /// Raised to so much, m.
    pub height: Scalar,
}

/// All that was found.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Remedies {
    /// What leads to a better state: what leads further first, of equals what asks less.
    pub leads: Vec<Leads>,
    /// For a hold: the figures that would settle it, each alone, if they turned out to be as stated.
    pub settle: Vec<Place>,
    /// For a no-go that nothing here mends: the truck that it would take.
    pub needed: Option<Needed>,
}

impl Remedy {
    /// Enters the change in a document.
    pub fn apply(&self, document: &mut Document) {
        let Document { truck, load, lift, drive, .. } = document;
        match *self {
            Self::PushHome { .. } => lift.heel_gap_m = Some(0.0),
            Self::Sideshift { to } => lift.sideshift_m = Some(to.get()),
            Self::Shift { offset, .. } => lift.offset_m = Some(offset.get()),
            Self::TiltForward { to } => lift.tilt_forward_deg = Some(to.get()),
            Self::TiltBack { to } => lift.tilt_back_deg = Some(to.get()),
            Self::Corner { to } => drive.corner_kmh = Some(to.get()),
            Self::CornerEmpty { to } => drive.corner_empty_kmh = Some(to.get()),
            Self::Brake { to } => drive.braking_ms2 = Some(to.get()),
            Self::RampBackwards => drive.ramp_down = Some(RampDown::Backwards),
            Self::Turn { turned } => load.turned = turned,
            Self::Spread { to } => truck.forks.spread_m = Some(to.get()),
            Self::Lower { to } => lift.height_m = Some(to.get()),
            Self::Ramp { to } => drive.ramp_pct = Some(to.get()),
            Self::CrossFall { to } => drive.cross_fall_pct = Some(to.get()),
            Self::ExtensionsOff => (truck.forks.extension_m, truck.forks.extension_kg) = (None, None),
            Self::NewForks => truck.forks.thickness_now_m = truck.forks.thickness_m,
            Self::Lighter { to } => load.mass_kg = Some(to.get()),
            Self::AttachmentOff => truck.attachment = None,
            Self::Battery { to } => truck.battery.fitted_kg = Some(to.get()),
        }
    }

    /// The load after it, not to be drawn; `None` where it has to be looked at anew.
    fn load_after(&self, load: &Load) -> Option<Load> {
        match *self {
            Self::Turn { turned } => {
                let turned = load.found.turned_unseen(turned);
                Some(Load::of(Arc::clone(&load.found), turned, load.friction, load.hanging))
            }
            Self::Lighter { .. } => None,
            _ => Some(load.clone()),
        }
    }
}

/// A document with all that was worked out of it.
struct Case<'a> {
    document: &'a Document,
    scenario: &'a Scenario,
    balance: &'a Balance,
    whole: &'a Whole<'a>,
}

/// A document after a change, assessed up to its verdict.
struct After {
    document: Document,
    scenario: Scenario,
    balance: Balance,
}

impl Case<'_> {
    /// The reasons that keep it in its state: all of them have to go.
    fn grounds(&self) -> Vec<&Ground> {
        let verdict = &self.whole.verdict;
        let all = std::iter::once(&verdict.governing).chain(&verdict.others);
        all.filter(|g| g.state == verdict.state).collect()
    }

    /// With a change entered; `None` where it cannot be.
    fn after(&self, change: &Remedy) -> Option<After> {
        let mut document = self.document.clone();
        change.apply(&mut document);
        let scenario = match change.load_after(&self.scenario.load) {
            Some(load) => validate::with_load(&document, load).ok()?,
            None => Scenario::from_document(&document).ok()?,
        };
        let same = scenario.truck == self.scenario.truck && scenario.doubts == self.scenario.doubts;
        let balance = if same { self.balance.clone() } else { Balance::of(&scenario.truck, &scenario.doubts) };
        Some(After { document, scenario, balance })
    }
}

/// The most pairs that are looked for, and tried.
const PAIRS: (usize, usize) = (3, 24);

/// Every change that leads to a better state; pairs where none does.
pub fn find(document: &Document, scenario: &Scenario, balance: &Balance, whole: &Whole) -> Remedies {
    let case = Case { document, scenario, balance, whole };
    let now = whole.verdict.state;
    if now == State::Go {
        return Remedies::default();
    }
    let grounds = case.grounds();
    // Which of the reasons each kind of change has anything to do with, a bit for each.
    let kinds: Vec<(Kind, u64)> = Kind::ALL
        .into_iter()
        .filter(|kind| kind.at_hand(document, scenario))
        .map(|kind| (kind, touches::mask(kind, &grounds)))
        .filter(|(_, mask)| *mask != 0)
        .collect();
    let all = touches::all(&grounds);
    let mut leads: Vec<Leads> = Vec::new();
    for (kind, _) in kinds.iter().filter(|(_, mask)| *mask == all) {
        let tried = solve::changes(*kind, &case).into_iter().filter_map(|change| {
            let after = case.after(&change)?;
            let state = Whole::of(&after.scenario, &after.balance).verdict.state;
            (state > now).then_some(Leads { changes: vec![change], state })
        });
        // Of one kind the one that leads furthest; of equals the first.
        leads.extend(tried.reduce(|best, next| if next.state > best.state { next } else { best }));
    }
    if leads.is_empty() {
        leads = pairs(&case, &kinds, all);
    }
    leads.sort_by_key(|l| std::cmp::Reverse(l.state));
    let settle = if now == State::Hold { settle(&case) } else { Vec::new() };
    let needed = (now == State::NoGo && leads.is_empty()).then_some(Needed {
        mass: whole.plate.need.mass_worst,
        load_centre: whole.plate.need.load_centre_worst,
        height: whole.plate.need.height_worst,
    });
    Remedies { leads, settle, needed }
}

fn pairs(case: &Case, kinds: &[(Kind, u64)], all: u64) -> Vec<Leads> {
    let now = case.whole.verdict.state;
    let mut couples: Vec<(Kind, Kind)> = Vec::new();
    for (k, (one, mask)) in kinds.iter().enumerate() {
        couples.extend(kinds[k + 1..].iter().filter(|(_, other)| mask | other == all).map(|(other, _)| (*one, *other)));
    }
    // What asks less first: the sum of both places in the order.
    couples.sort_by_key(|(a, b)| a.asks() + b.asks());
    let mut leads: Vec<Leads> = Vec::new();
    for (first, second) in couples.into_iter().take(PAIRS.1) {
        if leads.len() == PAIRS.0 {
            break;
        }
        leads.extend(furthest(case, first, second, now));
    }
    leads
}

/// Of the changes of two kinds the couple that leads furthest; of equals the first.
fn furthest(case: &Case, first: Kind, second: Kind, now: State) -> Option<Leads> {
    let mut best: Option<Leads> = None;
    for one in solve::changes(first, case) {
        let Some(after) = case.after(&one) else { continue };
        let whole = Whole::of(&after.scenario, &after.balance);
        let half_way =
            Case { document: &after.document, scenario: &after.scenario, balance: &after.balance, whole: &whole };
        for other in solve::changes(second, &half_way) {
            let Some(after) = half_way.after(&other) else { continue };
            let state = Whole::of(&after.scenario, &after.balance).verdict.state;
            if state > best.as_ref().map_or(now, |b| b.state) {
                best = Some(Leads { changes: vec![one, other], state });
            }
            if state == State::Go {
                return best;
            }
        }
    }
    best
}

/// The most figures that are tried.
const FIGURES: usize = 8;

/// The figures that would settle a hold, each alone, if they turned out to be as stated.
fn settle(case: &Case) -> Vec<Place> {
    let verdict = &case.whole.verdict;
    let named = std::iter::once(&verdict.governing).chain(&verdict.others).filter_map(|g| g.measure);
    let ranked = gain::of_verdict(case.scenario, case.balance, case.whole).into_iter().map(|g| g.place);
    let mut tried: Vec<Place> = Vec::new();
    for place in named.chain(ranked) {
        if !tried.contains(&place) && tried.len() < FIGURES {
            tried.push(place);
        }
    }
    let settles = |place: &Place| {
        gain::known(case.scenario, case.balance, *place)
            .is_some_and(|(scenario, balance)| Whole::of(&scenario, &balance).verdict.state == State::Go)
    };
    tried.into_iter().filter(settles).collect()
}

/// Whether a value may be entered in a field.
fn in_range(field: Field, value: f64) -> bool {
    let row = field.row();
    (row.min..=row.max).contains(&value)
}

#[cfg(test)]
mod tests;
