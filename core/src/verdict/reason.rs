//! Why a lift goes, holds or does not go.

use crate::balance::Contradiction;
use crate::checklist::Item;
use crate::closure::Tested;
use crate::forks::Fork;
use crate::found::{LoadFigure, Way};
use crate::plate::Gap;
use crate::platform::Test;
use crate::scalar::Scalar;
use crate::seat::{Event, Over};
use crate::step::StepId;
use crate::support::LineId;
use serde::Serialize;

/// Why, in codes and numbers.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Reason {
    /// The plate does not cover it.
    Plate {
        /// What it does not cover.
        gap: Gap,
    },
    /// The load's centre is beyond the fork tips.
    BeyondTips {
        /// By so much, m.
        beyond: Scalar,
    },
    /// The load's centre is outside the outer edge of a fork.
    BesideForks {
        /// By so much, m.
        beyond: Scalar,
    },
    /// The load does not lie on both blades.
    OffBlade {
        /// On this one it does not.
        fork: Fork,
        /// Its width there lacks so much to what is asked, m.
        lacks: Scalar,
    },
    /// The blades do not reach far enough under the load.
    ShortReach {
        /// They reach under this part of its depth.
        reach: Scalar,
        /// They should reach under this part.
        asked: Scalar,
    },
    /// A fork would carry more than it is stamped for.
    ForkOver {
        /// Which.
        fork: Fork,
        /// Moment at its heel, N m.
        moment: Scalar,
        /// Moment allowed, N m.
        allowed: Scalar,
        /// What it carries, kg.
        carries: Scalar,
        /// Weight allowed, kg.
        allowed_mass: Scalar,
    },
    /// A fork is worn so far that it is withdrawn.
    ForkWorn {
        /// The part of its thickness that it has lost.
        wear: Scalar,
        /// The part at which it is withdrawn.
        limit: Scalar,
    },
    /// Fork extensions are too long for the forks that carry them, m.
    ExtensionTooLong {
        /// So long.
        length: Scalar,
        /// At most.
        limit: Scalar,
    },
    /// Two ways of finding the load's weight or centre do not agree.
    WaysDisagree {
        /// On what.
        figure: LoadFigure,
        /// The way that decides.
        one: Way,
        /// What it says: from, to.
        one_says: (Scalar, Scalar),
        /// The other.
        other: Way,
        /// What that says.
        other_says: (Scalar, Scalar),
    },
    /// The load topples on the blades.
    Topples {
        /// In this step.
        step: StepId,
        /// When.
        event: Event,
        /// Over this edge.
        over: Over,
        /// Its line of action passes so far beyond it, m.
        beyond: Scalar,
        /// Fork height, m.
        lift: Scalar,
        /// Tilt as displayed, degrees.
        tilt_deg: Scalar,
    },
    /// The load slides on the blades.
    Slides {
        /// In this step.
        step: StepId,
        /// When.
        event: Event,
        /// Friction asked for.
        asked: Scalar,
        /// Friction there is.
        friction: Scalar,
        /// Fork height, m.
        lift: Scalar,
        /// Tilt as displayed, degrees.
        tilt_deg: Scalar,
    },
    /// Standing as it is, a tipping line is crossed.
    Tips {
        /// In this step.
        step: StepId,
        /// Over this line.
        line: LineId,
        /// By so much, m.
        beyond: Scalar,
        /// Fork height, m.
        lift: Scalar,
        /// Tilt as displayed, degrees.
        tilt_deg: Scalar,
    },
    /// It does not stand the slope that is asked of this kind of step.
    Slope {
        /// In this step.
        step: StepId,
        /// The test.
        test: Test,
        /// About this line.
        line: LineId,
        /// Slope stood, a tangent; negative where it does not even stand on level ground.
        stood: Scalar,
        /// Slope asked.
        asked: Scalar,
        /// Fork height, m.
        lift: Scalar,
        /// Tilt as displayed, degrees.
        tilt_deg: Scalar,
    },
    /// In a bend, braking, on a ramp or a cross-fall too little of what holds the truck is left.
    Reserve {
        /// In this step.
        step: StepId,
        /// About this line.
        line: LineId,
        /// Share used.
        share: Scalar,
        /// Share that may be used.
        allowed: Scalar,
        /// Fork height, m.
        lift: Scalar,
        /// Tilt as displayed, degrees.
        tilt_deg: Scalar,
    },
    /// On so steep a ramp a loaded truck is driven with the load uphill.
    LoadDownhill {
        /// The ramp, a tangent.
        grade: Scalar,
        /// Up to this it may lead downhill.
        limit: Scalar,
    },
    /// The entered truck would have failed a test that its plate says it passed.
    Contradicts {
        /// Which.
        contradiction: Contradiction,
    },
    /// Laden and unladen axle loads of the type sheet do not fit together.
    SheetContradicts {
        /// What does not.
        tested: Tested,
    },
    /// What was looked at before the lift is not in order.
    NotInOrder {
        /// What.
        items: Vec<Item>,
    },
    /// Within the plate and every line, over the whole range.
    Within {
        /// The step with the least in hand.
        step: StepId,
        /// Share used there at the worst corner, of what may be used.
        share: Scalar,
        /// Weight at its greatest, kg.
        mass: Scalar,
        /// What the plate allows, kg.
        allowed: Scalar,
    },
}
