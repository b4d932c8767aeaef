//! What knowing a figure exactly would gain: which one to measure better.

use crate::balance::Balance;
use crate::body::Placed;
use crate::doubt::Doubts;
use crate::place::{Field, Place};
use crate::scalar::{Region, Scalar, Span};
use crate::scenario::Scenario;
use crate::step::{Check, Step, StepId};
use crate::support::LineId;
use crate::verdict::Reason;
use crate::whole::Whole;
use glam::{DVec2, DVec3};
use serde::Serialize;

/// What one figure would gain.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Gain {
    /// The figure.
    pub place: Place,
    /// The restoring moment that the worst corner would have more about the line that governs, N m.
    pub moment: Scalar,
    /// The same as a part of all that the worst corner takes off what is stated.
    pub part: Scalar,
}

/// Figures that carry a range of their own.
const OWN: [Field; 10] = [
    Field::LoadMass,
    Field::LoadCgFromHeel,
    Field::LoadCgLeft,
    Field::LoadCgAbove,
    Field::HeelGap,
    Field::Offset,
    Field::BatteryFitted,
    Field::BatteryBehind,
    Field::BatteryHeight,
    Field::PivotHeight,
];

impl Scenario {
    /// The same with one figure known exactly as it is stated; `None` where there is nothing uncertain
    /// about it. Where the unladen centre was inferred that is settled in its [`Balance`].
    pub fn exactly(&self, place: Place) -> Option<Self> {
        let mut doubts = self.doubts;
        if let Some(range) = doubts.range(place) {
            if range.is_exact() {
                return None;
            }
            *range = Span::exact(0.0);
            return Some(Self { doubts, ..self.clone() });
        }
        let mut exact = self.clone();
        let sure = |s: &mut Span| *s = Span::exact(s.nominal);
        let settled = |region: &mut Region, axis: DVec3| {
            let keep = DVec3::ONE - axis;
            (region.lo, region.hi) = (region.lo * keep + region.at * axis, region.hi * keep + region.at * axis);
        };
        // Its centre is in the load's own directions; the region is as it stands on the forks.
        match self.load.own(place.field) {
            Field::LoadMass => sure(&mut exact.load.mass),
            Field::LoadCgFromHeel => settled(&mut exact.load.centre, DVec3::X),
            Field::LoadCgLeft => settled(&mut exact.load.centre, DVec3::Y),
            Field::LoadCgAbove => settled(&mut exact.load.centre, DVec3::Z),
            Field::HeelGap => sure(&mut exact.lift.heel_gap),
            Field::Offset => sure(&mut exact.lift.offset),
            Field::BatteryFitted => sure(&mut exact.truck.battery.fitted),
            Field::BatteryBehind => exact.truck.battery.spread.x = 0.0,
            Field::BatteryHeight => exact.truck.battery.spread.z = 0.0,
            // A mast gives from nothing to that: it leans as far as the load makes it.
            Field::MastGive => exact.truck.mast.give.hi = exact.truck.mast.give.nominal,
            Field::PivotHeight => exact.truck.axle.iter_mut().for_each(|a| a.pivot_low = a.pivot),
            _ => return None,
        }
        (exact != *self).then_some(exact)
    }
}

/// A scenario and its balance with one figure known exactly as it is stated; `None` where there is
/// nothing uncertain about it.
pub fn known(scenario: &Scenario, balance: &Balance, place: Place) -> Option<(Scenario, Balance)> {
    let inferred = match place.field {
        Field::CgHeight => scenario.truck.cg_z.is_none(),
        Field::FrontAxle | Field::SteerAxleLoad => scenario.truck.cg_x.is_none(),
        _ => false,
    };
    if inferred {
        return Some((scenario.clone(), balance.settled(place.field)?));
    }
    let known = scenario.exactly(place)?;
    let balance = match place.field {
        // Only the balance itself is found anew.
        Field::CgHeight | Field::FrontAxle | Field::SteerAxleLoad => Balance::of(&known.truck, &known.doubts),
        _ => balance.clone(),
    };
    Some((known, balance))
}

impl Balance {
    /// The same with the unladen centre's height, or its place along the truck, known as it is stated:
    /// what of the inferred region lies there.
    fn settled(&self, field: Field) -> Option<Self> {
        let whole = &self.rig.whole;
        let (x, z) = self.stated;
        let ends = |f: fn(&DVec2) -> f64| {
            whole.iter().map(f).fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), v| (lo.min(v), hi.max(v)))
        };
        let (xs, zs) = (ends(|p| p.x), ends(|p| p.y));
        let across = match field {
            Field::CgHeight if zs.1 > zs.0 => vec![DVec2::new(xs.0, z), DVec2::new(xs.1, z)],
            Field::FrontAxle | Field::SteerAxleLoad if xs.1 > xs.0 => vec![DVec2::new(x, zs.0), DVec2::new(x, zs.1)],
            _ => return None,
        };
        let mut settled = self.clone();
        settled.rig.whole = across;
        Some(settled)
    }
}

/// The figures that cost moment at the worst corner of a check, the one that would gain most first.
pub fn ranked(scenario: &Scenario, balance: &Balance, placed: &Placed, check: &Check, stated: f64) -> Vec<Gain> {
    let worst = check.worst(scenario, balance, placed);
    let lost = stated - worst;
    let sections = (0..scenario.truck.mast.stages.len())
        .flat_map(|row| [Field::StageMass, Field::StageRatio].map(|field| Place::in_row(field, row)));
    let single = Doubts::FIELDS.iter().chain(&OWN).chain(&[Field::MastGive]).copied().map(Place::from);
    let mut gains: Vec<Gain> = single
        .chain(sections)
        .filter_map(|place| {
            let (known, balance) = known(scenario, balance, place)?;
            let then = check.worst(&known, &balance, &Placed::of(&known.load, &known.lift));
            let gain = then - worst;
            let c = Scalar::computed;
            // The two axle loads of an inferred balance are one thing to find out.
            let twice = scenario.truck.cg_x.is_none() && place.field == Field::FrontAxle;
            (gain > 1e-6 && !twice).then(|| Gain {
                place,
                moment: c(gain),
                part: c(if lost > 0.0 { gain / lost } else { 0.0 }),
            })
        })
        .collect();
    gains.sort_by_key(|g| std::cmp::Reverse(g.moment));
    gains
}

/// The check that uses most of what it may at the worst corner of all steps.
pub fn governing(steps: &[Step]) -> Check {
    let first = Check { step: StepId::TakeUp, line: LineId::Front, test: None };
    let all = steps.iter().flat_map(Step::checks);
    all.fold((first, -1.0), |most, (check, used)| if used.worst > most.1 { (check, used.worst) } else { most }).0
}

/// The figures that cost moment at a check of a move that was worked through.
pub fn in_whole(scenario: &Scenario, balance: &Balance, whole: &Whole, check: &Check) -> Vec<Gain> {
    let stated = whole.steps.iter().find(|s| s.id == check.step).and_then(|s| s.moment(check));
    ranked(scenario, balance, &whole.placed, check, stated.map_or(0.0, |m| m.nominal))
}

/// The same at the check that a hold is about; nothing for one that is not about the truck's stability.
pub fn of_verdict(scenario: &Scenario, balance: &Balance, whole: &Whole) -> Vec<Gain> {
    let check = match whole.verdict.governing.reason {
        Reason::Tips { step, line, .. } | Reason::Reserve { step, line, .. } => Check { step, line, test: None },
        Reason::Slope { step, line, test, .. } => Check { step, line, test: Some(test) },
        _ => return Vec::new(),
    };
    in_whole(scenario, balance, whole, &check)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn each_gain_is_what_the_moment_gains_and_together_nothing_is_left() {
        let scenario = example::three_wheel();
        let balance = Balance::of(&scenario.truck, &scenario.doubts);
        let placed = Placed::of(&scenario.load, &scenario.lift);
        let step = Step::new(&scenario, &balance, &placed, StepId::RaisedForward);
        let check = Check { step: StepId::RaisedForward, line: LineId::Front, test: None };
        let standing = &step.standing[0];
        let worst = check.worst(&scenario, &balance, &placed);
        assert!((worst - standing.moment.worst).abs() < 1e-12);
        let gains = ranked(&scenario, &balance, &placed, &check, standing.moment.nominal);
        assert!(gains.len() > 10 && gains.windows(2).all(|w| w[0].moment >= w[1].moment), "{gains:?}");
        // Settled one after the other, nothing is uncertain in the end but what has no tolerance to
        // enter: the operator may be off the truck, and the model's own places stay in doubt.
        let mut known = scenario.clone();
        let mut last = worst;
        for gain in &gains {
            if let Some(next) = known.exactly(gain.place) {
                known = next;
                let placed = Placed::of(&known.load, &known.lift);
                let now = check.worst(&known, &Balance::of(&known.truck, &known.doubts), &placed);
                assert!(now >= last - 1e-6, "{}: {last} {now}", gain.place);
                last = now;
            }
        }
        assert!(last > worst + 0.8 * (standing.moment.nominal - worst), "{worst} {last} {}", standing.moment.nominal);
    }

    #[test]
    fn the_load_is_what_to_weigh_where_only_it_is_in_doubt() {
        let mut scenario = example::three_wheel();
        scenario.load.mass.hi += 200.0;
        let balance = Balance::of(&scenario.truck, &scenario.doubts);
        let placed = Placed::of(&scenario.load, &scenario.lift);
        let check = Check { step: StepId::RaisedForward, line: LineId::Front, test: None };
        let gains = ranked(&scenario, &balance, &placed, &check, 1e6);
        assert_eq!(gains[0].place, Place::from(Field::LoadMass));
    }
}
