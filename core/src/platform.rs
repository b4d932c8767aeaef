//! The stability standards' platform tests, run on the computed truck.
//!
//! Sources and slopes: see [`rules`]. In lateral tests the platform falls square to the line M-N
//! (front wheel contact to the plan projection of the steer axle's centre), not square to the truck.

use crate::field::Field;
use crate::rules;
use crate::stance::Stance;
use crate::statics::{Balanced, Pair};
use crate::support::LineId;
use serde::Serialize;

/// One of the four tests.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Test {
    /// Load raised, mast upright, falling ahead.
    LongitudinalStacking,
    /// Load low, mast back, falling ahead.
    LongitudinalTravelling,
    /// Load raised, mast back, falling sideways.
    LateralStacking,
    /// Mast back, forks low, falling sideways.
    LateralTravelling,
}

/// Which reading of a published slope: each use has its own cautious side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    /// What a step is asked to stand: the more demanding.
    Asked,
    /// What a plated truck has proven to stand: the less demanding.
    Proven,
}

/// A restoring moment within this of zero, N m, counts as zero: the noise of adding up.
pub const TIE: f64 = 1e-6;

impl Test {
    /// All four.
    pub const ALL: [Self; 4] =
        [Self::LongitudinalStacking, Self::LongitudinalTravelling, Self::LateralStacking, Self::LateralTravelling];

    /// The lines it tries.
    pub const fn lines(self) -> &'static [LineId] {
        match self {
            Self::LongitudinalStacking | Self::LongitudinalTravelling => &[LineId::Front],
            Self::LateralStacking | Self::LateralTravelling => &[LineId::Left, LineId::Right],
        }
    }

    /// The platform's slope (a tangent) for a truck of this rated capacity (kg) and top speed (km/h).
    ///
    /// ```
    /// use standfast_core::platform::{Reading, Test};
    /// // Case C17: 15 + 1.1 x 20 = 37 %.
    /// let slope = Test::LateralTravelling.slope(2500.0, 20.0, Reading::Proven);
    /// assert!((slope - 0.37).abs() < 1e-12);
    /// ```
    pub fn slope(self, rated: f64, top_speed_kmh: f64, reading: Reading) -> f64 {
        let heavy = rated >= rules::HEAVY_FROM.value;
        let pick = |light: rules::Figure, heavier: rules::Figure| if heavy { heavier.value } else { light.value };
        match self {
            Self::LongitudinalStacking => pick(rules::STACKING_LONGITUDINAL, rules::STACKING_LONGITUDINAL_HEAVY),
            Self::LongitudinalTravelling => rules::TRAVELLING_LONGITUDINAL.value,
            Self::LateralStacking => rules::STACKING_LATERAL.value,
            Self::LateralTravelling => {
                let per_kmh = match reading {
                    Reading::Asked => rules::TRAVELLING_LATERAL_PER_KMH_ASKED,
                    Reading::Proven => rules::TRAVELLING_LATERAL_PER_KMH_PROVEN,
                };
                let cap = pick(rules::TRAVELLING_LATERAL_CAP, rules::TRAVELLING_LATERAL_CAP_HEAVY);
                (rules::TRAVELLING_LATERAL_BASE.value + per_kmh.value * top_speed_kmh).min(cap)
            }
        }
    }

    /// Fork height of the travelling tests for a rated capacity, m.
    pub fn travelling_lift(rated: f64) -> f64 {
        if rated > 10_000.0 { rules::TRAVELLING_LIFT_OVER_10_T.value } else { rules::TRAVELLING_LIFT.value }
    }
}

/// How a stance fares on a platform about one line.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// Which test.
    pub test: Test,
    /// About which line.
    pub line: LineId,
    /// Slope asked, a tangent.
    pub asked: f64,
    /// Restoring moment left on the slope asked, N m.
    pub moment: Pair,
    /// Share of the restoring moment used on the slope asked.
    pub share: Pair,
}

impl Outcome {
    /// Whether it stands the slope as stated.
    pub fn passes(&self) -> bool {
        self.moment.nominal >= -TIE
    }

    /// Whether it stands the slope at the worst corner.
    pub fn passes_worst(&self) -> bool {
        self.moment.worst >= -TIE
    }
}

/// Tries a stance about one line on a slope.
pub fn run(stance: &Stance, test: Test, line: LineId, asked: f64) -> Outcome {
    let axis = stance.support.line(line);
    let field = Field::platform(axis.outward(), asked);
    let moment = stance.on_platform(line, asked);
    let share = Balanced::of(&stance.nominal, &axis, &field).shares(moment);
    Outcome { test, line, asked, moment, share }
}
