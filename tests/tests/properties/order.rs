//! The worst is never better than what is stated, and more is never better than less.

use crate::{assessment, worked};
use proptest::prelude::*;
use standfast_core::document::{CentreKnown, Document, GivenAs, RampDown, Turned};
use standfast_core::forks::Arm;
use standfast_core::report::Assessment;
use standfast_core::statics::moment;
use standfast_core::step::{Step, StepId};
use standfast_core::support::LineId;
use standfast_core::verdict::{Reason, State};
use standfast_tests::sensible;

/// Slope stood, or a figure beyond all of them where none upsets it.
fn stood(slope: Option<f64>) -> f64 {
    slope.unwrap_or(f64::INFINITY)
}

proptest! {
    // Where the worst is not the worst, it is so on few trucks.
    #![proptest_config(ProptestConfig::with_cases(1500))]

    #[test]
    fn the_worst_moment_is_not_more_than_the_stated_one(document in sensible::documents()) {
        let (scenario, balance, placed) = worked(&document);
        for id in StepId::ALL {
            let step = Step::new(&scenario, &balance, &placed, id);
            for standing in &step.standing {
                let m = standing.moment;
                prop_assert!(m.worst <= m.nominal + 1e-9, "{id:?} {:?}: {m:?}", standing.line.id);
            }
            for test in &step.tests {
                let m = test.moment;
                prop_assert!(m.worst <= m.nominal + 1e-9, "{id:?} {:?} {:?}: {m:?}", test.test, test.line);
            }
        }
    }

    #[test]
    fn the_worst_distance_is_not_more_than_the_stated_one(document in sensible::documents()) {
        let (scenario, balance, placed) = worked(&document);
        for id in StepId::ALL {
            let step = Step::new(&scenario, &balance, &placed, id);
            for standing in &step.standing {
                let d = step.distance(standing.line.id);
                prop_assert!(d.worst <= d.nominal + 1e-9, "{id:?} {:?}: {d:?}", standing.line.id);
            }
        }
    }

    #[test]
    fn the_worst_share_is_not_less_than_the_stated_one(document in sensible::documents()) {
        let (scenario, balance, placed) = worked(&document);
        for id in StepId::ALL {
            let step = Step::new(&scenario, &balance, &placed, id);
            for standing in &step.standing {
                let share = standing.share;
                prop_assert!(share.worst >= share.nominal - 1e-9, "{id:?} {:?}: {share:?}", standing.line.id);
            }
            for test in &step.tests {
                let share = test.share;
                prop_assert!(share.worst >= share.nominal - 1e-9, "{id:?} {:?} {:?}: {share:?}", test.test, test.line);
            }
        }
    }

    #[test]
    fn the_worst_slope_and_angle_are_not_more_than_the_stated_ones(document in sensible::documents()) {
        let (scenario, balance, placed) = worked(&document);
        for id in StepId::ALL {
            let step = Step::new(&scenario, &balance, &placed, id);
            for test in &step.tests {
                let reach = step.stood(test.line);
                prop_assert!(
                    stood(reach.worst) <= stood(reach.nominal) + 1e-9,
                    "{id:?} {:?} {:?}: stood {reach:?}", test.test, test.line
                );
            }
            for standing in &step.standing {
                let reach = step.tip_angle(standing.line.id);
                prop_assert!(
                    stood(reach.worst) <= stood(reach.nominal) + 1e-9,
                    "{id:?} {:?}: {reach:?}", standing.line.id
                );
            }
        }
    }

}

proptest! {
    /// The verdict is that of what was found: no step that fails as stated, no plate that does not
    /// cover it, goes by.
    #[test]
    fn the_verdict_is_no_better_than_its_parts(document in sensible::documents()) {
        let found = assessment(&document);
        let cases = || found.steps.iter().flat_map(|s| &s.seat).flat_map(|s| &s.cases);
        let forks = &found.forks;
        let fails = found.steps.iter().any(|s| !s.passes) || cases().any(|c| !c.passes);
        let fails_worst = found.steps.iter().any(|s| !s.passes_worst) || cases().any(|c| !c.passes_worst);
        let blades = forks.carries() && forks.bears() && forks.reaches() && forks.arms.iter().all(Arm::holds);
        let blades_worst = forks.carries_worst() && forks.bears_worst() && forks.reaches_worst() && forks.arms.iter().all(Arm::holds_worst);
        let drive = &document.drive;
        // 29 CFR 1910.178 (n)(7): over 10 percent the load stays uphill.
        let downhill = drive.ramp_down == Some(RampDown::Forwards) && drive.ramp_pct.is_some_and(|p| p > 10.0);
        let state = found.verdict.state;
        if fails || downhill || plate_state(&found) == State::NoGo || !blades || forks.worn_out() || forks.too_long() {
            prop_assert_eq!(state, State::NoGo);
        } else if fails_worst || plate_state(&found) == State::Hold || !found.contradictions.is_empty()
            || !blades_worst || !found.load.disagreements.is_empty()
        {
            prop_assert_eq!(state, State::Hold);
        } else {
            prop_assert_eq!(state, State::Go);
        }
        prop_assert!(found.plate.allowed.is_some() || state != State::Go);
        prop_assert!(found.verdict.others.iter().all(|g| g.state >= state));
    }

    /// More weight, a centre further out or a greater height never turn what the plate refuses into
    /// what it allows; the plates here have every load centre at every height.
    #[test]
    fn more_never_improves_what_the_plate_says(
        document in sensible::documents(), heavier in 0.0..1500.0, further in 0.0..1.0, higher in 0.0..1.0,
    ) {
        let before = assessment(&document);
        let mut changed = Vec::new();
        let mut more = document.clone();
        more.load.mass_kg = more.load.mass_kg.map(|kg| kg + heavier);
        changed.push(more);
        let mut more = document.clone();
        // Where the mark decides, and what is further from the heel is further out.
        let load = &more.load;
        if load.given_as == GivenAs::Block
            && load.centre_known == Some(CentreKnown::Mark)
            && load.turned == Turned::No
            && load.weighing.is_none()
        {
            let length = more.load.length_m.unwrap_or_default();
            more.load.cg_from_heel_m = more.load.cg_from_heel_m.map(|m| m + further * (length - m));
            changed.push(more);
        }
        let mut more = document.clone();
        let lift = more.truck.mast.lift_m.unwrap_or_default();
        more.lift.height_m = more.lift.height_m.map(|m| m + higher * (lift - m));
        changed.push(more);
        for more in changed {
            let after = assessment(&more);
            prop_assert!(plate_state(&after) <= plate_state(&before), "{:?} {:?}", before.plate, after.plate);
            if refused_by_plate(&before) {
                prop_assert_eq!(after.verdict.state, State::NoGo);
            }
            if let (Some(a), Some(b)) = (before.plate.allowed, after.plate.allowed) {
                prop_assert!(b <= a);
            }
        }
    }

    /// A heavier load never adds to what holds the front line down, in any pose that has the load ahead
    /// of the front axle.
    #[test]
    fn a_heavier_load_never_helps_the_front_line(document in sensible::documents(), heavier in 0.0..1500.0) {
        // Where scales or parts decide, a stated weight only disagrees with them.
        let mut more: Document = document.clone();
        let alone = more.load.weighing.is_none() && more.load.given_as != GivenAs::Parts;
        more.load.mass_kg = more.load.mass_kg.filter(|_| alone).map(|kg| kg + heavier);
        if !alone {
            return Ok(());
        }
        let ((a, balance_a, placed_a), (b, balance_b, placed_b)) = (worked(&document), worked(&more));
        for id in StepId::ALL {
            let (light, heavy) =
                (Step::new(&a, &balance_a, &placed_a, id), Step::new(&b, &balance_b, &placed_b, id));
            let (line, w) = (light.stance.support.line(LineId::Front), light.field.total());
            let ahead = |step: &Step| step.stance.nominal.as_slice().last().is_some_and(|load| load.at.x > 0.0);
            if ahead(&light) && ahead(&heavy) {
                let m = |step: &Step| moment(&step.stance.nominal, &line, w);
                prop_assert!(m(&heavy) <= m(&light) + 1e-9, "{id:?}");
            }
        }
    }
}

/// What the plate alone leads to.
fn plate_state(found: &Assessment) -> State {
    let findings = &found.plate.findings;
    if findings.iter().any(|f| f.as_stated) {
        State::NoGo
    } else if findings.is_empty() {
        State::Go
    } else {
        State::Hold
    }
}

fn refused_by_plate(found: &Assessment) -> bool {
    let grounds = std::iter::once(&found.verdict.governing).chain(&found.verdict.others);
    grounds.into_iter().any(|g| g.state == State::NoGo && matches!(g.reason, Reason::Plate { .. }))
}

#[test]
fn states_are_ordered_from_refused_to_allowed() {
    assert!(State::NoGo < State::Hold && State::Hold < State::Go);
}
