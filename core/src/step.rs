//! The steps of a lift: each a pose, what it must stand, and how it fares.

use crate::balance::Balance;
use crate::body::{Outfit, Placed, Pose};
use crate::field::Field;
use crate::platform::{self, Outcome, Reading, Test};
use crate::scenario::Scenario;
use crate::stance::{Stance, Yield};
use crate::statics::{self, Corner, Pair, Reach};
use crate::support::{Line, LineId};
use crate::wheels::{self, WheelLoads};
use serde::Serialize;

/// A step.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StepId {
    /// Load lifted clear where it stands, mast upright.
    TakeUp,
    /// Carried low, mast fully back.
    Travel,
    /// Raised, mast back.
    RaisedBack,
    /// Raised, mast upright.
    RaisedUpright,
    /// Raised, mast forward to place.
    RaisedForward,
}

impl StepId {
    /// In the order of the lift.
    pub const ALL: [Self; 5] = [Self::TakeUp, Self::Travel, Self::RaisedBack, Self::RaisedUpright, Self::RaisedForward];

    /// The platform tests whose slopes it must stand: a stacking step the stacking slopes, a
    /// travelling step the travelling slopes.
    pub const fn tests(self) -> [Test; 2] {
        match self {
            Self::Travel => [Test::LongitudinalTravelling, Test::LateralTravelling],
            _ => [Test::LongitudinalStacking, Test::LateralStacking],
        }
    }

    /// Its pose, lean left out.
    pub fn pose(self, scenario: &Scenario) -> Pose {
        let (truck, lift) = (&scenario.truck, &scenario.lift);
        let (height, tilt) = match self {
            Self::TakeUp => (lift.take_up, 0.0),
            Self::Travel => (lift.travel, -truck.mast.tilt_back),
            Self::RaisedBack => (lift.height, -lift.tilt_back),
            Self::RaisedUpright => (lift.height, 0.0),
            Self::RaisedForward => (lift.height, lift.tilt_forward),
        };
        Pose { lift: height, tilt, lean: 0.0, sway: 0.0, sideshift: lift.sideshift }
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
    /// Each platform slope it must stand, about each line that test tries.
    pub tests: [Outcome; 3],
    /// Wheel loads as it stands.
    pub wheels: WheelLoads,
    /// As the platform slopes are set up, where that differs from how it stands.
    set_up: Option<Stance<'r>>,
}

impl<'r> Step<'r> {
    /// Works a step through.
    pub fn new(scenario: &Scenario, balance: &'r Balance, placed: &Placed, id: StepId) -> Self {
        let (truck, field) = (&scenario.truck, Field::LEVEL);
        let pose = id.pose(scenario);
        let stand = |pose: Pose, give: Yield| Stance::new(truck, &balance.rig, pose, Outfit::Today, Some(placed), give);
        let give = Yield::of(truck, Some(placed), pose.lift);
        let stance = stand(pose, give);
        let [longitudinal, lateral] = id.tests();
        let rated = truck.rated();
        let slope = |test: Test| test.slope(rated, truck.top_speed_kmh, Reading::Asked);
        // The stacking test ahead is set up with the load plumb, deflection tilted out (ISO 22915-3
        // and -4): so is the upright step. Tilted forward to place, the lean comes on top. The
        // travelling tests have a height of their own; the step may be higher, never lower.
        let stiff = Yield { lean: crate::scalar::Span::exact(0.0), sway: give.sway };
        let set_up = match id {
            StepId::TakeUp | StepId::RaisedUpright => Some(stand(pose, stiff)),
            StepId::RaisedBack | StepId::RaisedForward => None,
            StepId::Travel => {
                let lift = pose.lift.max(Test::travelling_lift(rated));
                Some(stand(Pose { lift, ..pose }, Yield::of(truck, Some(placed), lift)))
            }
        };
        let tested = set_up.as_ref().unwrap_or(&stance);
        let tests = [
            platform::run(tested, longitudinal, LineId::Front, slope(longitudinal)),
            platform::run(tested, lateral, LineId::Left, slope(lateral)),
            platform::run(tested, lateral, LineId::Right, slope(lateral)),
        ];
        Self {
            id,
            standing: [LineId::Front, LineId::Left, LineId::Right].map(|line| Standing::of(&stance, line, &field)),
            tests,
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

    /// Whether it stands and passes as stated.
    pub fn passes(&self) -> bool {
        self.standing.iter().all(Standing::stands) && self.tests.iter().all(Outcome::passes)
    }

    /// Whether it does so at the worst corner.
    pub fn passes_worst(&self) -> bool {
        self.standing.iter().all(Standing::stands_worst) && self.tests.iter().all(Outcome::passes_worst)
    }
}
