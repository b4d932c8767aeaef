//! The load on the fork blades: whether its centre of gravity stands over them, and how far they reach.

use crate::body::Placed;
use crate::rules;
use crate::scalar::Scalar;
use crate::scenario::Scenario;
use serde::Serialize;

/// How the load stands on the blades, m. What is "in hand" is negative once it has left them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Outcome {
    /// From the load's centre to the fork tips, as stated.
    pub to_tips: Scalar,
    /// At the worst of its range.
    pub to_tips_worst: Scalar,
    /// From the load's centre to the outer edge of the nearer blade, as stated.
    pub to_edge: Scalar,
    /// At the worst of its range.
    pub to_edge_worst: Scalar,
    /// The part of the load's depth that the blades reach under, at most 1.
    pub reach: Scalar,
    /// The part they should reach under.
    pub reach_asked: Scalar,
}

impl Outcome {
    /// Whether the centre stands over the blades as stated.
    pub fn carries(&self) -> bool {
        self.to_tips >= Scalar::ZERO && self.to_edge >= Scalar::ZERO
    }

    /// Whether it does so at the worst of its range.
    pub fn carries_worst(&self) -> bool {
        self.to_tips_worst >= Scalar::ZERO && self.to_edge_worst >= Scalar::ZERO
    }

    /// Whether the blades reach far enough under.
    pub fn reaches(&self) -> bool {
        self.reach.get() >= self.reach_asked.get() - 1e-9
    }
}

/// How far under a load of `depth` blades of `length` reach, `gap` away from the face, as a part of
/// the depth.
///
/// ```
/// use standfast_core::{forks::reach, rules};
/// // Case C32: 900 mm blades under 1,350 mm reach two thirds exactly, under 1,400 mm they do not.
/// assert!(reach(0.9, 0.0, 1.35) >= rules::FORK_REACH.value - 1e-12);
/// assert!(reach(0.9, 0.0, 1.40) < rules::FORK_REACH.value);
/// ```
pub fn reach(length: f64, gap: f64, depth: f64) -> f64 {
    if depth > 0.0 { ((length - gap) / depth).clamp(0.0, 1.0) } else { 0.0 }
}

/// Looks at the load on the blades. The blades are taken as straight and level; sideshift moves
/// blades and load together.
pub fn check(scenario: &Scenario, placed: &Placed) -> Outcome {
    let forks = &scenario.truck.forks;
    let nominal_ahead = scenario.lift.heel_gap.nominal + scenario.load.centre.x;
    let half = 0.5 * forks.spread;
    let c = Scalar::computed;
    Outcome {
        to_tips: c(forks.length - nominal_ahead),
        to_tips_worst: c(forks.length - placed.centre.x - placed.spread.x),
        to_edge: c(half - placed.centre.y.abs()),
        to_edge_worst: c(half - placed.centre.y.abs() - placed.spread.y),
        reach: c(reach(forks.length, scenario.lift.heel_gap.hi, scenario.load.size.x)),
        reach_asked: c(rules::FORK_REACH.value),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn a_centre_beyond_the_tips_or_the_edge_has_left_the_blades() {
        let mut scenario = example::three_wheel();
        let at = |s: &Scenario| check(s, &Placed::of(&s.load, &s.lift));
        assert!(at(&scenario).carries_worst());
        scenario.load.centre.x = scenario.truck.forks.length + 0.001;
        assert!(!at(&scenario).carries());
        let mut scenario = example::three_wheel();
        scenario.load.centre.y = -0.5 * scenario.truck.forks.spread + 0.001;
        assert!(at(&scenario).carries() && !at(&scenario).carries_worst());
    }
}
