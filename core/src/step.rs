//! The steps of a lift: each a pose, what it must stand, and how it fares.

use crate::balance::Balance;
use crate::body::{Outfit, Placed, Pose};
use crate::field::Field;
use crate::platform::{self, Outcome, Reading, Test};
use crate::scenario::Scenario;
use crate::stance::{Stance, Yield};
use crate::statics::{self, Corner, Pair, Reach};
use crate::support::{Line, LineId};
use crate::units::slope_angle;
use crate::wheels::{self, WheelLoads};
use serde::Serialize;

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

    /// What pulls on truck and load.
    ///
    /// Down the ramp the truck brakes: backwards with the load uphill that pulls the load to the
    /// heel, forwards with the load downhill it pulls it away.
    pub fn field(self, scenario: &Scenario) -> Field {
        let drive = &scenario.drive;
        let angle = |slope: Option<f64>| slope_angle(slope.unwrap_or(0.0));
        let (ramp, cross) = (angle(drive.ramp), angle(drive.cross_fall));
        let braking = drive.braking.unwrap_or(0.0);
        let bend = |bend: Option<(f64, f64)>| bend.map_or(0.0, |(speed, radius)| speed * speed / radius);
        match self {
            Self::Brake => Field::new(0.0, 0.0, -braking, 0.0),
            Self::CornerLeft => Field::new(0.0, 0.0, 0.0, bend(drive.corner)),
            Self::CornerRight => Field::new(0.0, 0.0, 0.0, -bend(drive.corner)),
            Self::EmptyCornerLeft => Field::new(0.0, 0.0, 0.0, bend(drive.corner_empty)),
            Self::EmptyCornerRight => Field::new(0.0, 0.0, 0.0, -bend(drive.corner_empty)),
            Self::RampUp => Field::new(ramp, 0.0, 0.0, 0.0),
            Self::RampDown if drive.load_downhill => Field::new(-ramp, 0.0, -braking, 0.0),
            Self::RampDown => Field::new(ramp, 0.0, braking, 0.0),
            Self::CrossFallLeft => Field::new(0.0, cross, 0.0, 0.0),
            Self::CrossFallRight => Field::new(0.0, -cross, 0.0, 0.0),
            _ => Field::LEVEL,
        }
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
    /// Of a stance in a field.
    pub fn of(stance: &Stance, id: LineId, field: &Field) -> Self {
        let line = stance.support.line(id);
        let w = field.total();
        let (worst_set, worst) = stance.worst(&line, w);
        let nominal = &stance.nominal;
        Self {
            line,
            moment: Pair { nominal: statics::moment(nominal, &line, w, Corner::Nominal), worst },
            share: statics::shares(nominal, worst_set, &line, field),
        }
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

/// One step, decided: what it takes to say whether it stands. Figures for people are worked out when asked for.
#[derive(Clone, Debug)]
pub struct Step<'r> {
    /// Which.
    pub id: StepId,
    /// The truck and load in their pose.
    pub stance: Stance<'r>,
    /// What pulls on them.
    pub field: Field,
    /// About each line, as it stands.
    pub standing: [Standing; 3],
    /// Each platform slope it must stand, about each line that test tries; none where a reserve is asked.
    pub tests: Vec<Outcome>,
    /// The greatest share of what holds it that may be used; 1 is the point of tipping.
    pub allowed: f64,
    /// Wheel loads as it stands.
    pub wheels: WheelLoads,
    /// As the platform slopes are set up, where that differs from how it stands.
    set_up: Option<Stance<'r>>,
}

impl<'r> Step<'r> {
    /// Works a step through.
    pub fn new(scenario: &Scenario, balance: &'r Balance, placed: &Placed, id: StepId) -> Self {
        let (truck, field) = (&scenario.truck, id.field(scenario));
        let pose = id.pose(scenario);
        let load = id.laden().then_some(placed);
        let stand = |pose: Pose, give: Yield| Stance::new(truck, &balance.rig, pose, Outfit::Today, load, give);
        let give = Yield::of(truck, load, pose.lift);
        let stance = stand(pose, give);
        let rated = truck.rated();
        let slope = |test: Test| test.slope(rated, truck.top_speed_kmh, Reading::Asked);
        // The stacking test ahead is set up with the load plumb, deflection tilted out (ISO 22915-3
        // and -4): so is the upright step. Tilted forward to place, the lean comes on top. The
        // travelling tests have a height of their own; the step may be higher, never lower.
        let stiff = Yield { lean: crate::scalar::Span::exact(0.0), sway: give.sway };
        let set_up = match id {
            StepId::TakeUp | StepId::RaisedUpright => Some(stand(pose, stiff)),
            StepId::Travel => {
                let lift = pose.lift.max(Test::travelling_lift(rated));
                Some(stand(Pose { lift, ..pose }, Yield::of(truck, load, lift)))
            }
            _ => None,
        };
        let tested = set_up.as_ref().unwrap_or(&stance);
        let (tests, allowed) = match id.demand(scenario) {
            Demand::Platform([longitudinal, lateral]) => {
                let run = |test, line| platform::run(tested, test, line, slope(test));
                let tests =
                    vec![run(longitudinal, LineId::Front), run(lateral, LineId::Left), run(lateral, LineId::Right)];
                (tests, 1.0)
            }
            Demand::Reserve(reserve) => (Vec::new(), 1.0 - reserve),
        };
        Self {
            id,
            standing: [LineId::Front, LineId::Left, LineId::Right].map(|line| Standing::of(&stance, line, &field)),
            tests,
            allowed,
            wheels: wheels::loads(&stance.support, &stance.nominal, field.total()),
            stance,
            field,
            set_up,
        }
    }

    /// How far inside a line the line of action passes, m.
    pub fn distance(&self, line: &Line) -> Pair {
        let (stance, w) = (&self.stance, self.field.total());
        Pair {
            nominal: statics::distance(&[&stance.nominal], line, w, Corner::Nominal),
            worst: statics::distance(&stance.sets(line.id), line, w, Corner::Worst),
        }
    }

    /// The further tilt about a line to the point of tipping, rad.
    pub fn tip_angle(&self, line: &Line) -> Reach {
        let (stance, w) = (&self.stance, self.field.total());
        Reach::new(
            statics::tip_angle(&[&stance.nominal], line, w, Corner::Nominal),
            statics::tip_angle(&stance.sets(line.id), line, w, Corner::Worst),
        )
    }

    /// The slope (a tangent) that it stands about a line, set up as for the platform.
    pub fn stood(&self, line: LineId) -> Reach {
        platform::stood(self.set_up.as_ref().unwrap_or(&self.stance), line)
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

    /// The share used as a part of what may be used: 1 is the limit of this step, whatever it is.
    pub fn used(&self) -> Pair {
        let standing = self.standing.iter().map(|s| Pair { nominal: s.share.nominal, worst: s.share.worst });
        let of = |p: Pair, limit: f64| Pair { nominal: p.nominal / limit, worst: p.worst / limit };
        let all = standing.map(|p| of(p, self.allowed)).chain(self.tests.iter().map(|t| t.share));
        all.fold(Pair::default(), |a, b| Pair { nominal: a.nominal.max(b.nominal), worst: a.worst.max(b.worst) })
    }
}

#[cfg(test)]
mod tests;
