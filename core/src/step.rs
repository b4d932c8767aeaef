//! The steps of a lift: each a pose, what it must stand, and how it fares.

use crate::balance::Balance;
use crate::body::{Outfit, Placed, Pose, Setting};
use crate::field::Field;
use crate::platform::{self, Outcome, Reading, Test};
use crate::scalar::Span;
use crate::scenario::Scenario;
use crate::stance::{Stance, Yield};
use crate::statics::{Balanced, Pair, Reach};
use crate::support::{Line, LineId};
use crate::units::slope_angle;
use crate::wheels::{self, WheelLoads};
use glam::DVec3;
use serde::Serialize;
use std::sync::Arc;

/// A step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StepId {
    /// Load lifted clear where it stands, mast upright.
    TakeUp,
    /// Still there, mast tilted fully back.
    TiltBack,
    /// Carried low, mast fully back.
    Travel,
    /// Braking with it, going forward.
    Brake,
    /// In a left-hand bend with it.
    CornerLeft,
    /// In a right-hand bend.
    CornerRight,
    /// Up the ramp, load uphill.
    RampUp,
    /// Down the ramp, braking.
    RampDown,
    /// Along a cross-fall, left side the higher.
    CrossFallLeft,
    /// Right side the higher.
    CrossFallRight,
    /// Raised, mast back.
    RaisedBack,
    /// Raised, mast upright.
    RaisedUpright,
    /// Raised, mast forward to place.
    RaisedForward,
    /// Load placed: backing out empty, forks still up.
    BackOut,
    /// In a left-hand bend without a load, forks low, mast fully back.
    EmptyCornerLeft,
    /// In a right-hand bend.
    EmptyCornerRight,
}

/// What a step must stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Demand {
    /// The platform slopes of its kind, set up as they are tried.
    Platform([Test; 2]),
    /// No platform test asks anything of it: this part of what holds the truck must be left.
    Reserve(f64),
}

impl StepId {
    /// In the order of the move.
    pub const ALL: [Self; 16] = [
        Self::TakeUp,
        Self::TiltBack,
        Self::Travel,
        Self::Brake,
        Self::CornerLeft,
        Self::CornerRight,
        Self::RampUp,
        Self::RampDown,
        Self::CrossFallLeft,
        Self::CrossFallRight,
        Self::RaisedBack,
        Self::RaisedUpright,
        Self::RaisedForward,
        Self::BackOut,
        Self::EmptyCornerLeft,
        Self::EmptyCornerRight,
    ];

    /// Whether a move has this step.
    pub fn applies(self, scenario: &Scenario) -> bool {
        let drive = &scenario.drive;
        match self {
            Self::Brake => drive.braking.is_some(),
            Self::CornerLeft | Self::CornerRight => drive.corner.is_some(),
            Self::RampUp | Self::RampDown => drive.ramp.is_some(),
            Self::CrossFallLeft | Self::CrossFallRight => drive.cross_fall.is_some(),
            Self::EmptyCornerLeft | Self::EmptyCornerRight => drive.corner_empty.is_some(),
            _ => true,
        }
    }

    /// Whether the load is on the truck.
    pub const fn laden(self) -> bool {
        !matches!(self, Self::BackOut | Self::EmptyCornerLeft | Self::EmptyCornerRight)
    }

    /// What it must stand: a stacking step the stacking slopes, travelling the travelling slopes. What is
    /// driven beyond that, and the empty truck, must keep a reserve.
    pub fn demand(self, scenario: &Scenario) -> Demand {
        match self {
            Self::TakeUp | Self::TiltBack | Self::RaisedBack | Self::RaisedUpright | Self::RaisedForward => {
                Demand::Platform([Test::LongitudinalStacking, Test::LateralStacking])
            }
            Self::Travel => Demand::Platform([Test::LongitudinalTravelling, Test::LateralTravelling]),
            _ => Demand::Reserve(scenario.drive.reserve),
        }
    }

    /// Its pose, lean left out, and how far lift, tilt and sideshift may be from it.
    pub fn setting(self, scenario: &Scenario) -> Setting {
        let (doubts, pose) = (&scenario.doubts, self.pose(scenario));
        let upright = Span::exact(0.0);
        let (lift, tilt) = match self {
            Self::TakeUp => (doubts.take_up, upright),
            Self::TiltBack => (doubts.take_up, doubts.tilt_back_most.mirrored()),
            Self::RaisedBack => (doubts.height, doubts.tilt_back.mirrored()),
            Self::RaisedUpright | Self::BackOut => (doubts.height, upright),
            Self::RaisedForward => (doubts.height, doubts.tilt_forward),
            _ => (doubts.travel, doubts.tilt_back_most.mirrored()),
        };
        // No mast goes below the ground nor beyond its end.
        let room = (scenario.truck.mast.lift - pose.lift).max(0.0);
        let lift = Span { lo: lift.lo.max(-pose.lift), nominal: 0.0, hi: lift.hi.min(room) };
        Setting { pose, lift, tilt, sideshift: doubts.sideshift }
    }

    /// Its pose, lean left out.
    pub fn pose(self, scenario: &Scenario) -> Pose {
        let (truck, lift) = (&scenario.truck, &scenario.lift);
        let (height, tilt) = match self {
            Self::TakeUp => (lift.take_up, 0.0),
            Self::TiltBack => (lift.take_up, -truck.mast.tilt_back),
            Self::RaisedBack => (lift.height, -lift.tilt_back),
            Self::RaisedUpright | Self::BackOut => (lift.height, 0.0),
            Self::RaisedForward => (lift.height, lift.tilt_forward),
            _ => (lift.travel, -truck.mast.tilt_back),
        };
        Pose { lift: height, tilt, lean: 0.0, sway: 0.0, sideshift: lift.sideshift }
    }

    /// What pulls on truck and load, as stated.
    pub fn field(self, scenario: &Scenario) -> Field {
        self.fields(scenario).0
    }

    /// What pulls on truck and load, as stated and at all ends of its figures' ranges, m/s^2.
    ///
    /// Down the ramp the truck brakes: backwards with the load uphill that pulls the load to the
    /// heel, forwards with the load downhill it pulls it away. Between its ends a field takes no truck
    /// further over: the moment is affine in the acceleration, and in a slope's angle it is lowest only
    /// where the slope pulls straight away from the ground.
    pub fn fields(self, scenario: &Scenario) -> (Field, Vec<DVec3>) {
        let (drive, doubts) = (&scenario.drive, &scenario.doubts);
        let range = |stated: f64, doubt: Span| Span { lo: (stated + doubt.lo).max(0.0), ..doubt.moved(stated) };
        let slope = |slope: Option<f64>, doubt: Span| range(slope.unwrap_or(0.0), doubt).each(slope_angle);
        let none = Span::exact(0.0);
        let braking = range(drive.braking.unwrap_or(0.0), doubts.braking);
        let bend = |bend: Option<(f64, f64)>, doubt: Span| {
            bend.map_or(none, |(speed, radius)| {
                let (speed, radius) = (range(speed, doubt), doubts.radius.moved(radius));
                let pull = |v: f64, r: f64| v * v / r.max(0.1);
                Span {
                    lo: pull(speed.lo, radius.hi),
                    nominal: pull(speed.nominal, radius.nominal),
                    hi: pull(speed.hi, radius.lo),
                }
            })
        };
        let (ramp, cross) = (slope(drive.ramp, doubts.ramp), slope(drive.cross_fall, doubts.cross_fall));
        let laden = || bend(drive.corner, doubts.corner_speed);
        let empty = || bend(drive.corner_empty, doubts.corner_speed_empty);
        let (grade, fall, ahead, left) = match self {
            Self::Brake => (none, none, braking.mirrored(), none),
            Self::CornerLeft => (none, none, none, laden()),
            Self::CornerRight => (none, none, none, laden().mirrored()),
            Self::EmptyCornerLeft => (none, none, none, empty()),
            Self::EmptyCornerRight => (none, none, none, empty().mirrored()),
            Self::RampUp => (ramp, none, none, none),
            Self::RampDown if drive.load_downhill => (ramp.mirrored(), none, braking.mirrored(), none),
            Self::RampDown => (ramp, none, braking, none),
            Self::CrossFallLeft => (none, cross, none, none),
            Self::CrossFallRight => (none, cross.mirrored(), none, none),
            _ => (none, none, none, none),
        };
        let both = |s: Span| [s.lo, s.hi].into_iter().take(if s.is_exact() { 1 } else { 2 });
        let mut ends = Vec::with_capacity(4);
        for a in both(grade) {
            for b in both(fall) {
                for x in both(ahead) {
                    ends.extend(both(left).map(|y| Field::new(a, b, x, y).total()));
                }
            }
        }
        (Field::new(grade.nominal, fall.nominal, ahead.nominal, left.nominal), ends)
    }
}

/// How a stance fares about one line, standing as it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// The line.
    pub line: Line,
    /// Restoring moment, N m.
    pub moment: Pair,
    /// Share used.
    pub share: Pair,
}

impl Standing {
    /// Of a stance in a field, and over all `ends` that it may have.
    pub fn of(stance: &Stance, id: LineId, field: &Field, ends: &[DVec3]) -> Self {
        let line = stance.support.line(id);
        let moment = stance.moment(id, field, ends);
        Self { line, moment, share: Balanced::of(&stance.nominal, &line, field).shares(moment) }
    }

    /// Whether it stands as stated.
    pub fn stands(&self) -> bool {
        self.moment.nominal > platform::TIE
    }

    /// Whether it stands at the worst corner.
    pub fn stands_worst(&self) -> bool {
        self.moment.worst > platform::TIE
    }
}

/// One thing that a step must pass: to stand as it is about a line, or on a platform slope.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Check {
    /// The step.
    pub step: StepId,
    /// The line.
    pub line: LineId,
    /// The platform test; none for standing as it is.
    pub test: Option<Test>,
}

/// One step, decided: what it takes to say whether it stands. Figures for people are worked out when asked for.
#[derive(Clone, Debug)]
pub struct Step<'r> {
    /// Which.
    pub id: StepId,
    /// The truck and load in their pose.
    pub stance: Arc<Stance<'r>>,
    /// What pulls on them, as stated.
    pub field: Field,
    /// The same at all ends of what it may be.
    pub ends: Vec<DVec3>,
    /// About each line, as it stands.
    pub standing: [Standing; 3],
    /// Each platform slope it must stand, about each line that test tries; none where a reserve is asked.
    pub tests: Vec<Outcome>,
    /// The greatest share of what holds it that may be used; 1 is the point of tipping.
    pub allowed: f64,
    /// Wheel loads as it stands.
    pub wheels: WheelLoads,
    /// As the platform slopes are set up, where that differs from how it stands.
    set_up: Option<Arc<Stance<'r>>>,
}

/// The slope a test asks, a tangent.
pub(crate) fn asked(scenario: &Scenario, test: Test) -> f64 {
    test.slope(scenario.truck.rated(), scenario.truck.top_speed_kmh, Reading::Asked)
}

/// Truck and load in a setting of a step, the mast giving as it does there, or stiff but for its play.
fn stand<'r>(
    scenario: &Scenario,
    balance: &'r Balance,
    placed: &Placed,
    id: StepId,
    setting: &Setting,
    stiff: bool,
) -> Stance<'r> {
    let (truck, doubts) = (&scenario.truck, &scenario.doubts);
    let load = id.laden().then_some(placed);
    let give = Yield::of(truck, doubts, load, setting);
    let give = if stiff { Yield { lean: Span::exact(0.0), ..give } } else { give };
    Stance::new(truck, doubts, &balance.rig, setting, Outfit::Today, load, give)
}

/// Truck and load as they stand in a step.
pub(crate) fn as_it_stands<'r>(scenario: &Scenario, balance: &'r Balance, placed: &Placed, id: StepId) -> Stance<'r> {
    stand(scenario, balance, placed, id, &id.setting(scenario), false)
}

/// As the platform slopes are set up, where that differs from how it stands.
///
/// The stacking test ahead is set up with the load plumb, deflection tilted out (ISO 22915-3 and -4):
/// so is the upright step. Tilted forward to place, the lean comes on top. The travelling tests have a
/// height of their own; the step may be higher, never lower.
pub(crate) fn as_set_up<'r>(
    scenario: &Scenario,
    balance: &'r Balance,
    placed: &Placed,
    id: StepId,
) -> Option<Stance<'r>> {
    let setting = id.setting(scenario);
    match id {
        StepId::TakeUp | StepId::RaisedUpright => Some(stand(scenario, balance, placed, id, &setting, true)),
        StepId::Travel => {
            let lift = setting.pose.lift.max(Test::travelling_lift(scenario.truck.rated()));
            let at_height = Setting { pose: Pose { lift, ..setting.pose }, ..setting };
            Some(stand(scenario, balance, placed, id, &at_height, false))
        }
        _ => None,
    }
}

/// Whether the platform slopes of a step are set up otherwise than it stands.
pub(crate) const fn has_set_up(id: StepId) -> bool {
    matches!(id, StepId::TakeUp | StepId::RaisedUpright | StepId::Travel)
}

impl Check {
    /// The restoring moment that is left at the worst corner, N m, without working out the whole step.
    pub fn worst(&self, scenario: &Scenario, balance: &Balance, placed: &Placed) -> f64 {
        let stands = || as_it_stands(scenario, balance, placed, self.step);
        match self.test {
            Some(test) => {
                let set_up = as_set_up(scenario, balance, placed, self.step).unwrap_or_else(stands);
                set_up.on_platform(self.line, asked(scenario, test)).worst
            }
            None => {
                let (field, ends) = self.step.fields(scenario);
                stands().moment(self.line, &field, &ends).worst
            }
        }
    }
}

impl<'r> Step<'r> {
    /// Works a step through.
    pub fn new(scenario: &Scenario, balance: &'r Balance, placed: &Placed, id: StepId) -> Self {
        Self::after(None, scenario, balance, placed, id)
    }

    /// The same after another one of the same lift: what is driven mostly stands as it stood just before.
    pub fn after(
        before: Option<&Self>,
        scenario: &Scenario,
        balance: &'r Balance,
        placed: &Placed,
        id: StepId,
    ) -> Self {
        let (field, ends) = id.fields(scenario);
        let setting = id.setting(scenario);
        let alike = |b: &&Self| b.id.laden() == id.laden() && b.id.setting(scenario) == setting;
        let stance = before.filter(alike).map(|before| Arc::clone(&before.stance));
        let stance = stance.unwrap_or_else(|| Arc::new(stand(scenario, balance, placed, id, &setting, false)));
        let set_up = as_set_up(scenario, balance, placed, id).map(Arc::new);
        let tested = set_up.as_ref().unwrap_or(&stance);
        let (tests, allowed) = match id.demand(scenario) {
            Demand::Platform([longitudinal, lateral]) => {
                let run = |test, line| platform::run(tested, test, line, asked(scenario, test));
                let tests =
                    vec![run(longitudinal, LineId::Front), run(lateral, LineId::Left), run(lateral, LineId::Right)];
                (tests, 1.0)
            }
            Demand::Reserve(reserve) => (Vec::new(), 1.0 - reserve),
        };
        Self {
            id,
            standing: [LineId::Front, LineId::Left, LineId::Right]
                .map(|line| Standing::of(&stance, line, &field, &ends)),
            tests,
            allowed,
            wheels: wheels::loads(&stance.support, &stance.nominal, field.total()),
            stance,
            field,
            ends,
            set_up,
        }
    }

    /// How far inside a line the line of action passes, m.
    pub fn distance(&self, line: LineId) -> Pair {
        self.stance.distance(line, &self.field, &self.ends)
    }

    /// The further tilt about a line to the point of tipping, rad.
    pub fn tip_angle(&self, line: LineId) -> Reach {
        self.stance.tip_angle(line, &self.field, &self.ends)
    }

    /// The slope (a tangent) that it stands about a line, set up as for the platform.
    pub fn stood(&self, line: LineId) -> Reach {
        self.set_up.as_ref().unwrap_or(&self.stance).stood(line)
    }

    /// The greatest share used, over all lines as it stands and all slopes it must stand.
    pub fn share(&self) -> Pair {
        let shares = self.standing.iter().map(|s| s.share).chain(self.tests.iter().map(|t| t.share));
        shares.fold(Pair::default(), |a, b| Pair { nominal: a.nominal.max(b.nominal), worst: a.worst.max(b.worst) })
    }

    /// Whether it stands about a line, with the reserve that is asked, as stated.
    pub fn keeps(&self, standing: &Standing) -> bool {
        standing.stands() && (self.allowed >= 1.0 || standing.share.nominal <= self.allowed)
    }

    /// Whether it does so at the worst corner.
    pub fn keeps_worst(&self, standing: &Standing) -> bool {
        standing.stands_worst() && (self.allowed >= 1.0 || standing.share.worst <= self.allowed)
    }

    /// Whether it stands and passes as stated.
    pub fn passes(&self) -> bool {
        self.standing.iter().all(|s| self.keeps(s)) && self.tests.iter().all(Outcome::passes)
    }

    /// Whether it does so at the worst corner.
    pub fn passes_worst(&self) -> bool {
        self.standing.iter().all(|s| self.keeps_worst(s)) && self.tests.iter().all(Outcome::passes_worst)
    }

    /// What it must pass, and how much of what may be used each uses: 1 is the limit.
    pub fn checks(&self) -> impl Iterator<Item = (Check, Pair)> + '_ {
        let of = |p: Pair, limit: f64| Pair { nominal: p.nominal / limit, worst: p.worst / limit };
        let check = |line, test| Check { step: self.id, line, test };
        let standing = self.standing.iter().map(move |s| (check(s.line.id, None), of(s.share, self.allowed)));
        standing.chain(self.tests.iter().map(move |t| (check(t.line, Some(t.test)), t.share)))
    }

    /// The moment that a check is about; none where the step has no such check.
    pub fn moment(&self, check: &Check) -> Option<Pair> {
        match check.test {
            None => self.standing.iter().find(|s| s.line.id == check.line).map(|s| s.moment),
            Some(test) => self.tests.iter().find(|t| t.test == test && t.line == check.line).map(|t| t.moment),
        }
    }

    /// The share used as a part of what may be used: 1 is the limit of this step, whatever it is.
    pub fn used(&self) -> Pair {
        let all = self.checks().map(|(_, used)| used);
        all.fold(Pair::default(), |a, b| Pair { nominal: a.nominal.max(b.nominal), worst: a.worst.max(b.worst) })
    }
}

#[cfg(test)]
mod tests;
