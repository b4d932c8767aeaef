//! The load on the fork blades: whether its centre of gravity stands over them, how far they reach,
//! and what each fork carries against its stamped capacity.

use crate::bearing::{Bearing, Lies};
use crate::body::Placed;
use crate::polygon;
use crate::rules;
use crate::scalar::{Scalar, Span};
use crate::scenario::Scenario;
use crate::units::GRAVITY;
use glam::DVec2;
use serde::Serialize;

/// Which fork.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Fork {
    /// The left one.
    Left,
    /// The right one.
    Right,
}

/// What one fork carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Arm {
    /// Which.
    pub fork: Fork,
    /// Its part of the load as stated.
    pub part: Scalar,
    /// At the worst of its range.
    pub part_worst: Scalar,
    /// The moment at its heel as stated, N m.
    pub moment: Scalar,
    /// At the worst.
    pub moment_worst: Scalar,
    /// The width of the load's underside on its blade, m, as stated; negative where it does not lie on it.
    pub bearing: Scalar,
    /// At the worst of its range.
    pub bearing_worst: Scalar,
    /// What it carries as stated, kg.
    pub carries: Scalar,
    /// At the worst.
    pub carries_worst: Scalar,
    /// The moment that its stamped capacity allows, what wear has taken counted off, N m.
    pub allowed: Option<Scalar>,
    /// The weight that it allows, kg: nearer to the heel it is not more.
    pub allowed_mass: Option<Scalar>,
}

impl Arm {
    /// Whether it is within its stamped capacity; true where that is not known.
    pub fn holds(&self) -> bool {
        self.within(self.moment, self.carries)
    }

    /// Whether it is at the worst of its range.
    pub fn holds_worst(&self) -> bool {
        self.within(self.moment_worst, self.carries_worst)
    }

    fn within(&self, moment: Scalar, carries: Scalar) -> bool {
        let under = |value: Scalar, limit: Option<Scalar>| limit.is_none_or(|l| value.get() <= l.get() * (1.0 + 1e-12));
        under(moment, self.allowed) && under(carries, self.allowed_mass)
    }
}

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
    /// The part of the load's depth that the blades reach under, at most 1, as stated.
    pub reach: Scalar,
    /// At the worst of its range.
    pub reach_worst: Scalar,
    /// The part they should reach under.
    pub reach_asked: Scalar,
    /// Whether the load hangs: then the blades reach under nothing.
    pub hangs: bool,
    /// Each fork, left and right.
    pub arms: [Arm; 2],
    /// The width on a blade with which a load lies on it, m.
    pub bearing_asked: Scalar,
    /// The part of its thickness that a fork has lost at the heel.
    pub wear: Option<Scalar>,
    /// From which it is withdrawn.
    pub wear_limit: Scalar,
    /// Length of extensions, and how long they may be, m.
    pub extension: Option<(Scalar, Scalar)>,
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

    /// Whether the blades reach far enough under, as stated.
    pub fn reaches(&self) -> bool {
        self.hangs || self.reach.get() >= self.reach_asked.get() - 1e-9
    }

    /// Whether they do at the worst of its range.
    pub fn reaches_worst(&self) -> bool {
        self.hangs || self.reach_worst.get() >= self.reach_asked.get() - 1e-9
    }

    /// Whether the load lies on both blades, as stated.
    pub fn bears(&self) -> bool {
        self.hangs || self.arms.iter().all(|a| a.bearing.get() >= self.bearing_asked.get() - 1e-9)
    }

    /// Whether it does at the worst of its range.
    pub fn bears_worst(&self) -> bool {
        self.hangs || self.arms.iter().all(|a| a.bearing_worst.get() >= self.bearing_asked.get() - 1e-9)
    }

    /// Whether a fork is worn so far that it is withdrawn.
    pub fn worn_out(&self) -> bool {
        self.wear.is_some_and(|w| w.get() >= self.wear_limit.get() - 1e-9)
    }

    /// Whether extensions are longer than the forks may carry.
    pub fn too_long(&self) -> bool {
        self.extension.is_some_and(|(length, most)| length.get() > most.get() + 1e-9)
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

/// The part of its capacity that a fork still has when it has lost `wear` of its thickness at the heel.
///
/// Source: ISO 5057 sheets; bending strength goes with the square of the thickness.
///
/// ```
/// // Case C19.
/// let left = standfast_core::forks::capacity_left;
/// assert!((left(0.1) - 0.81).abs() < 1e-12 && (left(0.2) - 0.64).abs() < 1e-12 && (left(0.3) - 0.49).abs() < 1e-12);
/// ```
pub fn capacity_left(wear: f64) -> f64 {
    let left = (1.0 - wear).clamp(0.0, 1.0);
    left * left
}

/// The part of the load that a fork carries when the load's centre stands `towards` it from the
/// middle and the blades' middles are `apart`: levers on a beam across both. From 0 to 1.
pub fn part_carried(towards: f64, apart: f64) -> f64 {
    if apart > 0.0 { (0.5 + towards / apart).clamp(0.0, 1.0) } else { 1.0 }
}

/// Looks at the load on the blades. The blades are taken as straight and level; sideshift moves
/// blades and load together.
pub fn check(scenario: &Scenario, placed: &Placed, bearing: &Bearing) -> Outcome {
    let (forks, load) = (&scenario.truck.forks, &scenario.load);
    let (half, length) = (0.5 * forks.spread, forks.reach());
    let (ahead, aside) = (placed.centre.x(), placed.centre.y());
    let gap = scenario.lift.heel_gap;
    let doubts = &scenario.doubts;
    let shortest = length + forks.extension.map_or(doubts.fork_length.lo, |_| doubts.extension.lo);
    let narrowest = half + 0.5 * doubts.fork_spread.lo;
    let c = Scalar::computed;
    Outcome {
        to_tips: c(length - ahead.nominal),
        to_tips_worst: c(shortest - ahead.hi),
        to_edge: c(half - aside.nominal.abs()),
        to_edge_worst: c(narrowest - aside.furthest()),
        reach: c(reach(length, gap.nominal, load.size.x)),
        reach_worst: c(reach(shortest, gap.hi, load.size.x + load.doubt.x)),
        reach_asked: c(rules::FORK_REACH.value),
        hangs: load.hanging.is_some(),
        arms: [Fork::Left, Fork::Right].map(|fork| arm(scenario, placed, bearing, fork)),
        bearing_asked: c(rules::BEARING_LEAST.value),
        wear: forks.wear.map(c),
        wear_limit: c(rules::FORK_WEAR_LIMIT.value),
        extension: forks.extension.map(|(length, _)| (c(length), c(rules::EXTENSION_MOST.value * forks.length))),
    }
}

/// The part of the load that a fork carries in one place, as stated or at the worst: levers on a beam
/// across the two strips that the load lies on, their middles as stated, their inner edges at the worst.
fn part(lies: &Lies, fork: Fork, centre: f64, worst: bool) -> f64 {
    let [left, right] = &lies.strips;
    if left.is_empty() || right.is_empty() {
        return 1.0;
    }
    let across = |strip: &[DVec2], inner: f64| {
        let (lo, hi) = polygon::extents(strip);
        if worst { if inner > 0.0 { hi.y } else { lo.y } } else { 0.5 * (lo.y + hi.y) }
    };
    let (l, r) = (across(left, -1.0), across(right, 1.0));
    let towards = centre + lies.by.y - 0.5 * (l + r);
    part_carried(if fork == Fork::Left { towards } else { -towards }, l - r)
}

fn arm(scenario: &Scenario, placed: &Placed, bearing: &Bearing, fork: Fork) -> Arm {
    let forks = &scenario.truck.forks;
    let own = scenario.load.centre.y();
    let furthest = if fork == Fork::Left { own.hi } else { own.lo };
    let stated = part(&bearing.stated, fork, own.nominal, false);
    let worst = bearing.ends.iter().map(|l| part(l, fork, furthest, true)).fold(stated, f64::max);
    let k = fork as usize;
    let Span { nominal: mass, hi: mass_hi, .. } = placed.mass;
    let ahead = placed.centre.x();
    let left = capacity_left(forks.wear.unwrap_or(0.0));
    // Each arm carries its own extension too.
    let (long, heavy) = forks.extension.map_or((0.0, 0.0), |(length, mass)| (length, 0.5 * mass));
    let moment = |part: f64, mass: f64, ahead: f64| GRAVITY * (part * mass * ahead + heavy * 0.5 * long);
    let c = Scalar::computed;
    Arm {
        fork,
        part: c(stated),
        part_worst: c(worst),
        moment: c(moment(stated, mass, ahead.nominal)),
        moment_worst: c(moment(worst, mass_hi, ahead.hi)),
        bearing: c(bearing.stated.width[k]),
        bearing_worst: c(bearing.least[k]),
        carries: c(stated * mass + heavy),
        carries_worst: c(worst * mass_hi + heavy),
        allowed: forks.stamped.map(|(capacity, centre)| c(capacity * left * GRAVITY * centre)),
        allowed_mass: forks.stamped.map(|(capacity, _)| c(capacity * left)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    fn at(s: &Scenario) -> Outcome {
        check(s, &Placed::of(&s.load, &s.lift), &Bearing::of(s))
    }

    #[test]
    fn a_centre_beyond_the_tips_or_the_edge_has_left_the_blades() {
        let mut scenario = example::three_wheel();
        assert!(at(&scenario).carries_worst());
        let by = scenario.truck.forks.length + 0.001 - scenario.load.centre.at.x;
        scenario.load.centre.at.x += by;
        scenario.load.centre.hi.x += by;
        assert!(!at(&scenario).carries());
        let mut scenario = example::three_wheel();
        let by = -0.5 * scenario.truck.forks.spread + 0.001 - scenario.load.centre.at.y;
        scenario.load.centre.at.y += by;
        scenario.load.centre.lo.y += by;
        assert!(at(&scenario).carries() && !at(&scenario).carries_worst());
    }

    /// Forks 700 mm over both with blades of 120 mm: a foot of 400 mm lies between them, one of 500 mm
    /// on 20 mm of each.
    #[test]
    fn a_narrow_load_falls_between_the_forks() {
        let mut scenario = example::three_wheel();
        scenario.doubts = crate::doubt::Doubts::NONE;
        scenario.truck.forks.blade = Span::exact(0.12);
        scenario.lift.offset = Span::exact(0.0);
        scenario.load.doubt = DVec2::ZERO;
        let feet = |half: f64| {
            vec![[(0.0, -half), (1.0, -half), (1.0, half), (0.0, half)].map(|(x, y)| DVec2::new(x, y)).to_vec()]
        };
        scenario.load.feet = feet(0.2);
        assert!(!at(&scenario).bears() && (at(&scenario).arms[0].bearing.get() + 0.03).abs() < 1e-12);
        scenario.load.feet = feet(0.25);
        assert!(at(&scenario).bears_worst() && (at(&scenario).arms[1].bearing.get() - 0.02).abs() < 1e-12);
        scenario.lift.offset = Span { lo: 0.0, nominal: 0.0, hi: 0.03 };
        assert!(at(&scenario).bears() && !at(&scenario).bears_worst());
        scenario.load.hanging = Some(0.0);
        assert!(at(&scenario).bears_worst(), "what hangs lies on nothing");
    }

    /// A foot 340 mm wide on forks 600 mm apart with blades of 150 mm lies on 20 mm of each: the levers
    /// are those strips', not the blades'. 26 mm off the middle the left one carries 0.5 + 26 / 320.
    #[test]
    fn a_narrow_load_is_shared_by_where_it_lies() {
        let mut scenario = example::three_wheel();
        (scenario.truck.forks.spread, scenario.truck.forks.spread_hi) = (0.6, 0.6);
        scenario.truck.forks.blade = Span::exact(0.15);
        scenario.lift.offset = Span::exact(0.0);
        scenario.load.centre.at.y = 0.026;
        let half = 0.17;
        scenario.load.feet =
            vec![[(0.0, -half), (1.0, -half), (1.0, half), (0.0, half)].map(|(x, y)| DVec2::new(x, y)).to_vec()];
        let left = at(&scenario).arms[0];
        assert!((left.part.get() - (0.5 + 0.026 / 0.32)).abs() < 1e-12 && left.part_worst > left.part);
    }

    /// A load over one blade's middle is carried by it alone.
    #[test]
    fn forks_share_by_levers() {
        assert_eq!((part_carried(0.0, 0.5), part_carried(0.25, 0.5), part_carried(-0.25, 0.5)), (0.5, 1.0, 0.0));
        assert!((part_carried(0.1, 0.5) - 0.7).abs() < 1e-15);
        assert!((part_carried(0.1, 0.0) - 1.0).abs() < 1e-15, "no lever, no sharing");
    }

    #[test]
    fn a_stamp_counts_by_moment_and_never_for_more_than_its_weight() {
        let mut scenario = example::three_wheel();
        assert!(at(&scenario).arms.iter().all(|a| a.allowed.is_none() && a.holds_worst()), "not stamped, not checked");
        scenario.truck.forks.stamped = Some((900.0, 0.5));
        let left = at(&scenario).arms[0];
        assert!(left.holds() && left.moment_worst > left.moment && left.part > at(&scenario).arms[1].part);
        scenario.truck.forks.stamped = Some((580.0, 0.5));
        assert!(!at(&scenario).arms[0].holds(), "heavy enough on the left fork");
        scenario.truck.forks.stamped = Some((700.0, 0.5));
        scenario.truck.forks.wear = Some(0.15);
        let worn = at(&scenario);
        assert!(!worn.arms[0].holds() && worn.worn_out());
    }

    #[test]
    fn extensions_reach_further_and_are_held_to_their_limit() {
        let mut scenario = example::three_wheel();
        let short = at(&scenario).to_tips;
        scenario.truck.forks.extension = Some((1.7, 50.0));
        assert!(at(&scenario).to_tips > short && !at(&scenario).too_long());
        scenario.truck.forks.extension = Some((1.73, 50.0));
        assert!(at(&scenario).too_long(), "150 % of 1,150 mm is 1,725");
    }
}
