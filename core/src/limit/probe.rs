//! What a scenario has in hand with one figure set to a value: in each step, on the plate, on the blades.

use super::furthest::{self, Course, MOST, Margins, Passes};
use super::{Axis, Bound, Limit};
use crate::balance::Balance;
use crate::bearing::Bearing;
use crate::body::Placed;
use crate::field::Field;
use crate::forks;
use crate::plate::{self, Gap};
use crate::platform::{self, Test};
use crate::rules;
use crate::scenario::Scenario;
use crate::seat::Seat;
use crate::stance::Stance;
use crate::statics::{Balanced, Pair};
use crate::step::{self, Demand, Step, StepId};
use crate::support::LineId;
use glam::DVec3;

/// A scenario with one figure that is moved.
pub struct Probe<'a> {
    pub(super) axis: &'a Axis,
    balance: &'a Balance,
    scenario: Scenario,
    placed: Placed,
    /// What lies on the blades as it is now.
    bearing: &'a Bearing,
    /// The same where the load was moved to these values: the one looked at last, and the furthest.
    moved: [Option<(f64, Bearing)>; 2],
    /// In which stretch it lies on both blades, once that was sought.
    lies: Option<Option<Passes>>,
    /// The value that is set.
    value: f64,
}

/// A margin whose sign says what was decided, whatever rounding makes of it.
fn signed(margin: f64, held: bool) -> f64 {
    if held { margin.max(0.0) } else { margin.min(-f64::MIN_POSITIVE) }
}

const LINES: [LineId; 3] = [LineId::Front, LineId::Left, LineId::Right];

/// A line, and the platform test about it; none for standing as it is.
type Check = (LineId, Option<Test>);

/// What decides a step. Where the platform slopes are tried as it stands, on level ground, they ask more than
/// standing does.
fn checks(id: StepId, scenario: &Scenario) -> Vec<Check> {
    let standing = LINES.map(|line| (line, None));
    match id.demand(scenario) {
        Demand::Reserve(_) => standing.to_vec(),
        Demand::Platform([ahead, aside]) => {
            let tests = [(LineId::Front, Some(ahead)), (LineId::Left, Some(aside)), (LineId::Right, Some(aside))];
            if step::has_set_up(id) { tests.into_iter().chain(standing).collect() } else { tests.to_vec() }
        }
    }
}

/// The margin of standing about a line, with the reserve that is asked.
fn standing(stance: &Stance, line: LineId, moment: Pair, field: &Field, allowed: f64) -> f64 {
    let stands = moment.worst > platform::TIE;
    let margin = moment.worst - platform::TIE;
    if allowed >= 1.0 {
        return signed(margin, stands);
    }
    let balanced = Balanced::of(&stance.nominal, &stance.support.line(line), field);
    let kept = moment.worst - (1.0 - allowed) * balanced.holding;
    signed(margin.min(kept), stands && balanced.shares(moment).worst <= allowed)
}

fn tested(moment: Pair) -> f64 {
    signed(moment.worst + platform::TIE, moment.worst >= -platform::TIE)
}

/// The margin of a load on the blades. One that lies on neither has left them.
fn seated(seat: &Seat) -> f64 {
    if seat.cases.is_empty() {
        return -1.0;
    }
    let case =
        |c: &crate::seat::Case| c.topple.iter().map(|t| t.margin.worst).fold(c.friction.lo - c.asked.worst, f64::min);
    signed(seat.cases.iter().map(case).fold(10.0, f64::min), seat.holds_worst())
}

/// A load that lies no wider than this on a blade is all but off it, m.
const OFF: f64 = 1e-5;

/// How much wider than that a load lies on both blades, wherever it may stand, m.
pub(super) fn on_both(bearing: &Bearing) -> f64 {
    let widths = bearing.ends.iter().chain([&bearing.stated]).flat_map(|l| l.width);
    widths.fold(f64::INFINITY, f64::min) - OFF
}

/// The margins of a step as it was worked out, in the order in which they are probed.
pub fn of_step(scenario: &Scenario, step: &Step, seat: Option<&Seat>) -> [f64; MOST] {
    let mut margins = [1.0; MOST];
    let checks = checks(step.id, scenario);
    for (slot, (line, test)) in margins.iter_mut().zip(&checks) {
        let k = *line as usize;
        *slot = match test {
            Some(_) => step.tests.get(k).map_or(-1.0, |t| tested(t.moment)),
            None => {
                let moment = step.standing[k].moment;
                standing(&step.stance, *line, moment, &step.field, step.allowed)
            }
        };
    }
    if let (Some(slot), Some(seat)) = (margins.get_mut(checks.len()), seat) {
        *slot = seated(seat);
    }
    margins
}

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

impl<'a> Probe<'a> {
    /// Of a scenario.
    pub fn new(axis: &'a Axis, scenario: &Scenario, balance: &'a Balance, bearing: &'a Bearing) -> Self {
        let placed = Placed::of(&scenario.load, &scenario.lift);
        let scenario = scenario.clone();
        let mut probe =
            Self { axis, balance, scenario, placed, bearing, moved: [None, None], lies: None, value: f64::NAN };
        probe.set(axis.stated.unwrap_or(axis.way.from));
        probe
    }

    fn set(&mut self, value: f64) {
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
        self.laid_at(0).or(self.laid_at(1)).unwrap_or(self.bearing)
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
        let axis = self.axis;
        let mut known = known.filter(|_| axis.as_it_is);
        if !self.slides() || !id.laden() || self.scenario.load.hanging.is_some() {
            return furthest::passes(&mut OfStep::new(self, id, known), &axis.way, axis.stated, known, &axis.hints);
        }
        // On one blade alone it may seem to stand again, further out: moved off a blade it has gone too far.
        let lies = self.lies()?;
        let way = Course { from: lies.least.unwrap_or(axis.way.from), to: lies.most, ..axis.way };
        known = known.filter(|_| on_both(self.bearing) >= 0.0);
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

    fn seat(&mut self, id: StepId) -> f64 {
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

/// The margins of a step: its checks, then the load on the blades.
struct OfStep<'p, 'a> {
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
    fn new(probe: &'p mut Probe<'a>, id: StepId, known: Option<&[f64; MOST]>) -> Self {
        let checks = checks(id, &probe.scenario);
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
                *set_up = step::as_set_up(scenario, probe.balance, placed, *id).map(|s| (value, s));
            }
            let slope = step::asked(scenario, test);
            return set_up.as_ref().map_or(-1.0, |(_, stance)| tested(stance.on_platform(line, slope)));
        }
        if stance.as_ref().is_none_or(|(at, _)| !of_value(*at, moves)) {
            *stance = Some((value, step::as_it_stands(scenario, probe.balance, placed, *id)));
        }
        let Some((_, stance)) = stance else { return -1.0 };
        if let Some(test) = test {
            return tested(stance.on_platform(line, step::asked(scenario, test)));
        }
        if field.as_ref().is_none_or(|(at, ..)| !of_value(*at, !moves)) {
            let (pull, ends) = id.fields(scenario);
            *field = Some((value, pull, ends));
        }
        let Some((_, pull, ends)) = field else { return -1.0 };
        standing(stance, line, stance.moment(line, pull, ends), pull, self.allowed)
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
