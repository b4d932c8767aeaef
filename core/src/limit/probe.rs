//! What a scenario has in hand with one figure set to a value: in each step, on the plate, on the blades.

use super::furthest::{Furthest, furthest};
use super::{Axis, Bound, Limit};
use crate::balance::Balance;
use crate::bearing::Bearing;
use crate::body::Placed;
use crate::forks;
use crate::plate::{self, Gap};
use crate::platform;
use crate::rules;
use crate::scenario::Scenario;
use crate::seat::Seat;
use crate::statics::Balanced;
use crate::step::{Step, StepId};
use crate::support::LineId;

/// A scenario with one figure that is moved.
pub struct Probe<'a> {
    axis: &'a Axis,
    balance: &'a Balance,
    scenario: Scenario,
    placed: Placed,
    bearing: Bearing,
    /// The value that is set.
    value: f64,
}

/// A margin whose sign says what was decided, whatever rounding makes of it.
fn signed(margin: f64, held: bool) -> f64 {
    if held { margin.max(0.0) } else { margin.min(-f64::MIN_POSITIVE) }
}

impl<'a> Probe<'a> {
    /// Of a scenario.
    pub fn new(axis: &'a Axis, scenario: &Scenario, balance: &'a Balance) -> Self {
        let mut probe = Self {
            axis,
            balance,
            scenario: scenario.clone(),
            placed: Placed::of(&scenario.load, &scenario.lift),
            bearing: Bearing::of(scenario),
            value: f64::NAN,
        };
        probe.set(axis.stated.unwrap_or(axis.from));
        probe
    }

    fn set(&mut self, value: f64) {
        if value == self.value {
            return;
        }
        self.value = value;
        self.axis.set(value, &mut self.scenario);
        self.placed = Placed::of(&self.scenario.load, &self.scenario.lift);
        if matches!(self.axis.what, Limit::OffsetLeft | Limit::OffsetRight) {
            self.bearing = Bearing::of(&self.scenario);
        }
    }

    fn starts(&self) -> Vec<f64> {
        let axis = self.axis;
        let stated = axis.stated.filter(|s| axis.holds(*s));
        stated.into_iter().chain(axis.hints).chain([axis.from]).filter(|x| axis.holds(*x)).collect()
    }

    /// How far `count` margins are held.
    fn all(&mut self, count: usize, bound: impl Fn(usize) -> Bound, margin: impl Fn(&Self, usize) -> f64) -> Furthest {
        let (ends, starts) = ((self.axis.from, self.axis.to), self.starts());
        let found = furthest(ends, &starts, count, |k, value| {
            self.set(value);
            margin(self, k)
        });
        match found {
            None => Furthest::Never,
            Some((_, None)) => Furthest::Beyond,
            Some((value, Some(k))) => Furthest::At(value, bound(k)),
        }
    }

    fn step_at(&self, id: StepId) -> Step<'a> {
        Step::new(&self.scenario, self.balance, &self.placed, id)
    }

    /// How far a step goes.
    pub fn step(&mut self, id: StepId) -> Furthest {
        self.set(self.axis.stated.unwrap_or(self.axis.from));
        let lines = [LineId::Front, LineId::Left, LineId::Right];
        let tests: Vec<_> = self.step_at(id).tests.iter().map(|t| (t.line, t.test)).collect();
        let seat = 3 + tests.len();
        let bound = |k: usize| match k.checked_sub(3).map(|k| tests.get(k)) {
            None => Bound::Step { step: id, line: lines[k.min(2)], test: None },
            Some(Some((line, test))) => Bound::Step { step: id, line: *line, test: Some(*test) },
            Some(None) => Bound::Seat { step: id },
        };
        self.all(seat + 1, bound, |probe, k| if k == seat { probe.seat_margin(id) } else { probe.step_margin(id, k) })
    }

    fn step_margin(&self, id: StepId, k: usize) -> f64 {
        let step = self.step_at(id);
        if let Some(standing) = step.standing.get(k) {
            let moment = standing.moment.worst;
            let held = step.keeps_worst(standing);
            if step.allowed >= 1.0 {
                return signed(moment - platform::TIE, held);
            }
            let holding = Balanced::of(&step.stance.nominal, &standing.line, &step.field).holding;
            return signed((moment - platform::TIE).min(moment - (1.0 - step.allowed) * holding), held);
        }
        step.tests.get(k - 3).map_or(0.0, |t| signed(t.moment.worst + platform::TIE, t.passes_worst()))
    }

    fn seat_margin(&self, id: StepId) -> f64 {
        let Some(seat) = Seat::of(&self.scenario, &self.placed, &self.bearing, id) else { return 1.0 };
        let case = |c: &crate::seat::Case| {
            c.topple.iter().map(|t| t.margin.worst).fold(c.friction.lo - c.asked.worst, f64::min)
        };
        signed(seat.cases.iter().map(case).fold(10.0, f64::min), seat.holds_worst())
    }

    fn plate_margin(&self) -> f64 {
        let outcome = plate::check(&self.scenario, &self.placed);
        let mut short = outcome.findings.iter().map(|f| &f.gap).filter(|gap| !matches!(gap, Gap::BatteryUnknown));
        let light = outcome.allowed.map_or(1.0, |allowed| allowed.get() - self.placed.mass.hi);
        match (short.next(), short.next()) {
            (None, _) => signed(light, true),
            (Some(Gap::TooHeavy { .. }), None) => signed(light, false),
            _ => -1.0,
        }
    }

    fn blades_margin(&self) -> f64 {
        let forks = forks::check(&self.scenario, &self.placed, &self.bearing);
        if forks.worn_out() || forks.too_long() {
            return -1.0;
        }
        let mut margin = forks.to_tips_worst.get().min(forks.to_edge_worst.get());
        if !forks.hangs {
            margin = margin.min(forks.reach_worst.get() - forks.reach_asked.get());
            let lies = forks.arms.iter().map(|a| a.bearing_worst.get() - forks.bearing_asked.get());
            margin = lies.fold(margin, f64::min);
        }
        for arm in &forks.arms {
            let left = arm.allowed.map_or(1.0, |allowed| 1.0 - arm.moment_worst.get() / allowed.get());
            let light = arm.allowed_mass.map_or(1.0, |allowed| 1.0 - arm.carries_worst.get() / allowed.get());
            margin = margin.min(left).min(light);
        }
        let held = forks.carries_worst()
            && forks.bears_worst()
            && forks.reaches_worst()
            && forks.arms.iter().all(forks::Arm::holds_worst);
        signed(margin, held)
    }

    fn rule_margin(&self) -> f64 {
        let drive = &self.scenario.drive;
        let (true, Some(grade)) = (drive.load_downhill, drive.ramp) else { return 1.0 };
        let over = grade - rules::LOAD_UPHILL_OVER.value - 1e-12;
        signed(-over, over <= 0.0)
    }

    /// How far the plate goes.
    pub fn plate(&mut self) -> Furthest {
        self.all(1, |_| Bound::Plate, |probe, _| probe.plate_margin())
    }

    /// How far the blades go.
    pub fn blades(&mut self) -> Furthest {
        self.all(1, |_| Bound::Blades, |probe, _| probe.blades_margin())
    }

    /// How far the rule for ramps goes; that of the ramp down alone, where that is what is sought.
    pub fn rule(&mut self) -> Furthest {
        if self.axis.what == Limit::RampUp {
            return Furthest::Beyond;
        }
        self.all(1, |_| Bound::Rule, |probe, _| probe.rule_margin())
    }

    /// Whether all but the steps pass at a value.
    pub fn all_but_steps(&mut self, value: f64) -> bool {
        self.set(value);
        let rule = self.axis.what == Limit::RampUp || self.rule_margin() >= 0.0;
        rule && self.plate_margin() >= 0.0 && self.blades_margin() >= 0.0
    }

    /// Whether a step passes at a value.
    pub fn step_passes(&mut self, id: StepId, value: f64) -> bool {
        self.set(value);
        self.step_at(id).passes_worst() && self.seat_margin(id) >= 0.0
    }
}
