//! A step's margins as one figure moves: no more is worked out anew than that figure changes.

use super::furthest::{MOST, Margins};
use super::margin::{self, Check};
use super::probe::Probe;
use super::{Bound, Limit};
use crate::field::Field;
use crate::stance::Stance;
use crate::step::{self, Demand, StepId};
use glam::DVec3;

/// Whether a limit's figure changes where anything stands, rather than what pulls on it.
fn moves(what: Limit) -> bool {
    !matches!(
        what,
        Limit::RampUp
            | Limit::RampDown
            | Limit::CrossFallLeft
            | Limit::CrossFallRight
            | Limit::CornerSpeed
            | Limit::CornerSpeedEmpty
            | Limit::Braking
    )
}

/// The margins of a step: its checks, then the load on the blades.
pub struct OfStep<'p, 'a> {
    probe: &'p mut Probe<'a>,
    id: StepId,
    checks: Vec<Check>,
    seat: bool,
    allowed: f64,
    /// As it stands, and as the platform slopes are set up, at the value that they were made for.
    stance: Option<(f64, Stance<'a>)>,
    set_up: Option<(f64, Stance<'a>)>,
    field: Option<(f64, Field, Vec<DVec3>)>,
}

impl<'p, 'a> OfStep<'p, 'a> {
    /// Of a step; its margins as it is now perhaps `known`.
    pub fn new(probe: &'p mut Probe<'a>, id: StepId, known: Option<&[f64; MOST]>) -> Self {
        let checks = margin::checks(id, &probe.scenario);
        // No battery moves the load on the blades.
        let battery = matches!(probe.axis.what, Limit::BatteryLeast | Limit::BatteryMost);
        let sits = battery && known.is_some_and(|k| k.get(checks.len()).is_some_and(|m| *m >= 0.0));
        let seat = id.laden() && !sits && probe.scenario.load.hanging.is_none();
        let allowed = match id.demand(&probe.scenario) {
            Demand::Reserve(reserve) => 1.0 - reserve,
            Demand::Platform(_) => 1.0,
        };
        Self { probe, id, checks, seat, allowed, stance: None, set_up: None, field: None }
    }

    fn check(&mut self, (line, test): Check) -> f64 {
        let Self { probe, id, stance, set_up, field, .. } = self;
        let (moves, value) = (moves(probe.axis.what), probe.value);
        let (scenario, placed) = (&probe.scenario, &probe.placed);
        let of_value = |at: f64, moving: bool| !moving || at.to_bits() == value.to_bits();
        if let Some(test) = test
            && step::has_set_up(*id)
        {
            if set_up.as_ref().is_none_or(|(at, _)| !of_value(*at, moves)) {
                *set_up = step::as_set_up(scenario, probe.base.balance, placed, *id).map(|s| (value, s));
            }
            let slope = step::asked(scenario, test);
            return set_up.as_ref().map_or(-1.0, |(_, stance)| margin::tested(stance.on_platform(line, slope)));
        }
        if stance.as_ref().is_none_or(|(at, _)| !of_value(*at, moves)) {
            *stance = Some((value, step::as_it_stands(scenario, probe.base.balance, placed, *id)));
        }
        let Some((_, stance)) = stance else { return -1.0 };
        if let Some(test) = test {
            return margin::tested(stance.on_platform(line, step::asked(scenario, test)));
        }
        if field.as_ref().is_none_or(|(at, ..)| !of_value(*at, !moves)) {
            let (pull, ends) = id.fields(scenario);
            *field = Some((value, pull, ends));
        }
        let Some((_, pull, ends)) = field else { return -1.0 };
        margin::standing(stance, line, stance.moment(line, pull, ends), pull, self.allowed)
    }
}

impl Margins for OfStep<'_, '_> {
    fn count(&self) -> usize {
        self.checks.len() + usize::from(self.seat)
    }

    fn late(&self) -> usize {
        usize::from(self.seat)
    }

    fn at(&mut self, k: usize, value: f64) -> f64 {
        self.probe.set(value);
        match self.checks.get(k) {
            Some(check) => self.check(*check),
            None => self.probe.seat(self.id),
        }
    }

    fn bound(&self, k: usize) -> Bound {
        let step = self.id;
        match self.checks.get(k) {
            Some(&(line, test)) => Bound::Step { step, line, test },
            None => Bound::Seat { step },
        }
    }
}
