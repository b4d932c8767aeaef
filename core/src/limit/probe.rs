//! What a scenario has in hand with one figure set to a value: in each step, on the plate, on the blades.

use super::furthest::{self, Course, MOST, Margins, Passes};
use super::in_step::OfStep;
use super::margin::{on_both, seated, signed};
use super::{Axis, Bound, Limit};
use crate::balance::Balance;
use crate::bearing::Bearing;
use crate::body::Placed;
use crate::forks;
use crate::plate::{self, Gap};
use crate::rules;
use crate::scenario::Scenario;
use crate::seat::Seat;
use crate::step::StepId;
use std::cell::OnceCell;

/// What is probed, as it is now.
pub struct Base<'a> {
    pub(super) scenario: &'a Scenario,
    pub(super) balance: &'a Balance,
    /// What lies on the blades, once anybody asks.
    bearing: OnceCell<Bearing>,
}

impl<'a> Base<'a> {
    /// Of a scenario.
    pub fn of(scenario: &'a Scenario, balance: &'a Balance) -> Self {
        Self { scenario, balance, bearing: OnceCell::new() }
    }

    fn bearing(&self) -> &Bearing {
        self.bearing.get_or_init(|| Bearing::of(self.scenario))
    }
}

/// A scenario with one figure that is moved.
pub struct Probe<'a> {
    pub(super) axis: &'a Axis,
    pub(super) base: &'a Base<'a>,
    pub(super) scenario: Scenario,
    pub(super) placed: Placed,
    /// What lies on the blades where the load was moved to these values: the one looked at last, and the furthest.
    moved: [Option<(f64, Bearing)>; 2],
    /// In which stretch it lies on both blades, once that was sought.
    lies: Option<Option<Passes>>,
    /// The value that is set.
    pub(super) value: f64,
}

impl<'a> Probe<'a> {
    /// Of a scenario.
    pub fn new(axis: &'a Axis, base: &'a Base<'a>) -> Self {
        let scenario = base.scenario.clone();
        let placed = Placed::of(&scenario.load, &scenario.lift);
        let mut probe = Self { axis, base, scenario, placed, moved: [None, None], lies: None, value: f64::NAN };
        probe.set(axis.stated.unwrap_or(axis.way.from));
        probe
    }

    pub(super) fn set(&mut self, value: f64) {
        if value.to_bits() != self.value.to_bits() {
            self.value = value;
            self.axis.set(value, &mut self.scenario);
            self.placed = Placed::of(&self.scenario.load, &self.scenario.lift);
        }
    }

    /// Whether the figure moves the load on the blades.
    fn slides(&self) -> bool {
        matches!(self.axis.what, Limit::OffsetLeft | Limit::OffsetRight)
    }

    fn laid_at(&self, slot: usize) -> Option<&Bearing> {
        self.moved[slot].as_ref().filter(|(at, _)| at.to_bits() == self.value.to_bits()).map(|(_, laid)| laid)
    }

    /// Works out anew what lies on the blades, where the figure moves the load on them.
    fn lay(&mut self) {
        if self.slides() && self.laid_at(0).is_none() && self.laid_at(1).is_none() {
            self.moved[0] = Some((self.value, Bearing::of(&self.scenario)));
        }
    }

    fn laid(&self) -> &Bearing {
        self.laid_at(0).or_else(|| self.laid_at(1)).unwrap_or_else(|| self.base.bearing())
    }

    /// In which stretch the load that is moved lies on both blades.
    fn lies(&mut self) -> Option<Passes> {
        if let Some(lies) = self.lies {
            return lies;
        }
        let axis = self.axis;
        let mut margins = OfLying { probe: self };
        let lies = furthest::passes(&mut margins, &axis.way, axis.stated, None, &axis.hints);
        if let Some(Passes { most, .. }) = lies {
            self.set(most);
            self.moved[1] = Some((most, Bearing::of(&self.scenario)));
        }
        self.lies = Some(lies);
        lies
    }

    /// In which stretch a step passes, its margins as it is now perhaps `known`.
    pub fn step(&mut self, id: StepId, known: Option<&[f64; MOST]>) -> Option<Passes> {
        self.step_to(self.axis.way.to, id, known)
    }

    /// The same no further than to a value.
    pub fn step_to(&mut self, to: f64, id: StepId, known: Option<&[f64; MOST]>) -> Option<Passes> {
        let axis = self.axis;
        let way = Course { to, ..axis.way };
        let mut known = known.filter(|_| axis.as_it_is);
        if !self.slides() || !id.laden() || self.scenario.load.hanging.is_some() {
            return furthest::passes(&mut OfStep::new(self, id, known), &way, axis.stated, known, &axis.hints);
        }
        // On one blade alone it may seem to stand again, further out: moved off a blade it has gone too far.
        let lies = self.lies()?;
        let up = axis.way.from < axis.way.to;
        let to = if up { to.min(lies.most) } else { to.max(lies.most) };
        let way = Course { from: lies.least.unwrap_or(axis.way.from), to, ..way };
        known = known.filter(|_| on_both(self.base.bearing()) >= 0.0);
        let found = furthest::passes(&mut OfStep::new(self, id, known), &way, axis.stated, known, &axis.hints)?;
        let by = found.by.or(lies.by.map(|_| Bound::Seat { step: id }));
        Some(Passes { least: found.least.or(lies.least), by, ..found })
    }

    /// Whether a step passes at a value.
    pub fn step_passes(&mut self, id: StepId, value: f64) -> bool {
        let mut margins = OfStep::new(self, id, None);
        (0..margins.count()).all(|k| margins.at(k, value) >= 0.0)
    }

    /// Where the stretch of a step that holds `value` begins.
    pub fn step_begins(&mut self, id: StepId, value: f64) -> Option<f64> {
        let way = self.axis.way;
        let mut margins = OfStep::new(self, id, None);
        let at = std::array::from_fn(|k| if k < margins.count() { margins.at(k, value) } else { 1.0 });
        furthest::begins(&mut margins, &way, value, &at)
    }

    /// In which stretch plate, blades or rule allow it.
    pub fn part(&mut self, part: Part) -> Option<Passes> {
        let axis = self.axis;
        if !part.touched_by(axis.what) {
            let all = Passes { least: None, most: axis.way.to, by: None };
            return (self.margin(part) >= 0.0).then_some(all);
        }
        let mut margins = OfPart { probe: self, part };
        let mut found = furthest::passes(&mut margins, &axis.way, axis.stated, None, &axis.hints)?;
        if found.by.is_some() {
            // A plate's own figure rather than one that is near it.
            let tidy = axis.tidy(found.most);
            if (tidy - found.most).abs() <= 2e-9 * (1.0 + tidy.abs()) && margins.at(0, tidy) >= 0.0 {
                found.most = tidy;
            }
        }
        Some(found)
    }

    /// Whether it allows a value.
    pub fn part_passes(&mut self, part: Part, value: f64) -> bool {
        self.set(value);
        self.margin(part) >= 0.0
    }

    /// Where what it allows begins, going back from a value.
    pub fn part_begins(&mut self, part: Part, value: f64) -> Option<f64> {
        let way = self.axis.way;
        let mut margins = OfPart { probe: self, part };
        let at = std::array::from_fn(|k| if k == 0 { margins.at(0, value) } else { 1.0 });
        furthest::begins(&mut margins, &way, value, &at)
    }

    fn margin(&mut self, part: Part) -> f64 {
        match part {
            Part::Plate => self.plate(),
            Part::Blades => self.blades(),
            Part::Rule => self.rule(),
        }
    }

    /// The margin of the load on the blades in a step.
    pub(super) fn seat(&mut self, id: StepId) -> f64 {
        self.lay();
        if self.slides() && on_both(self.laid()) < 0.0 {
            return -1.0;
        }
        Seat::of(&self.scenario, &self.placed, self.laid(), id).map_or(1.0, |seat| seated(&seat))
    }

    fn plate(&self) -> f64 {
        let outcome = plate::check(&self.scenario, &self.placed);
        let mut short = outcome.findings.iter().map(|f| &f.gap).filter(|gap| !matches!(gap, Gap::BatteryUnknown));
        // By weight it goes evenly, by all else in jumps.
        let light = match (outcome.allowed, self.axis.what) {
            (Some(allowed), Limit::LoadMass) => allowed.get() - self.placed.mass.hi,
            _ => 1.0,
        };
        match (short.next(), short.next()) {
            (None, _) => signed(light, true),
            (Some(Gap::TooHeavy { .. }), None) if self.axis.what == Limit::LoadMass => signed(light, false),
            _ => -1.0,
        }
    }

    fn blades(&mut self) -> f64 {
        self.lay();
        let forks = forks::check(&self.scenario, &self.placed, self.laid());
        if forks.worn_out() || forks.too_long() {
            return -1.0;
        }
        let mut margin = forks.to_tips_worst.get().min(forks.to_edge_worst.get());
        if !forks.hangs {
            margin = margin.min(forks.reach_worst.get() - forks.reach_asked.get() + 1e-9);
            let lies = forks.arms.iter().map(|a| a.bearing_worst.get() - forks.bearing_asked.get() + 1e-9);
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

    fn rule(&self) -> f64 {
        let drive = &self.scenario.drive;
        let (true, Some(grade)) = (drive.load_downhill, drive.ramp) else { return 1.0 };
        let over = grade + self.scenario.doubts.ramp.hi - rules::LOAD_UPHILL_OVER.value - 1e-12;
        // Up a ramp the load is uphill.
        if self.axis.what == Limit::RampUp { 1.0 } else { signed(-over, over <= 0.0) }
    }
}

/// What the whole move must pass besides its steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The plate.
    Plate,
    /// The blades.
    Blades,
    /// The rule for ramps.
    Rule,
}

impl Part {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Plate, Self::Blades, Self::Rule];

    /// Whether a limit's figure changes anything about it.
    fn touched_by(self, what: Limit) -> bool {
        use Limit::{BatteryLeast, BatteryMost, LiftHeight, LoadCentre, LoadMass, OffsetLeft, OffsetRight, RampDown};
        let load = matches!(what, LoadMass | LoadCentre | OffsetLeft | OffsetRight);
        match self {
            Self::Plate => load || matches!(what, LiftHeight | BatteryLeast | BatteryMost),
            Self::Blades => load,
            Self::Rule => what == RampDown,
        }
    }
}

/// How the load lies on both blades.
struct OfLying<'p, 'a> {
    probe: &'p mut Probe<'a>,
}

impl Margins for OfLying<'_, '_> {
    fn count(&self) -> usize {
        1
    }

    fn late(&self) -> usize {
        0
    }

    fn at(&mut self, _: usize, value: f64) -> f64 {
        self.probe.set(value);
        self.probe.lay();
        on_both(self.probe.laid())
    }

    fn bound(&self, _: usize) -> Bound {
        Bound::Blades
    }
}

/// One part's margin.
struct OfPart<'p, 'a> {
    probe: &'p mut Probe<'a>,
    part: Part,
}

impl Margins for OfPart<'_, '_> {
    fn count(&self) -> usize {
        1
    }

    fn late(&self) -> usize {
        0
    }

    fn at(&mut self, _: usize, value: f64) -> f64 {
        self.probe.set(value);
        self.probe.margin(self.part)
    }

    fn bound(&self, _: usize) -> Bound {
        match self.part {
            Part::Plate => Bound::Plate,
            Part::Blades => Bound::Blades,
            Part::Rule => Bound::Rule,
        }
    }
}
