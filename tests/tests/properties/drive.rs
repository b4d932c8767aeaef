//! Faster, steeper, harder, with more in reserve: none of it ever makes a verdict better.

use crate::assessment;
use proptest::prelude::*;
use standfast_core::document::{Document, RampDown};
use standfast_core::place::{Field, Place};
use standfast_core::step::StepId;
use standfast_core::verdict::{Reason, State};
use standfast_tests::sensible;

/// Adds a part of what a figure may still grow by; where it is not entered, that part of its range.
fn more(document: &Document, field: Field, part: f64) -> Document {
    let (mut more, row) = (document.clone(), field.row());
    let now = Place::from(field).get(document).unwrap_or(row.min);
    *Place::from(field).number(&mut more).expect("there") = Some(now + part * (row.max - now));
    more
}

fn never_better(document: &Document, field: Field, part: f64) -> Result<(), TestCaseError> {
    // What was taken for a figure is not what is added to: both have it entered.
    let before = more(document, field, 0.0);
    let (a, b) = (assessment(&before).verdict, assessment(&more(&before, field, part)).verdict);
    prop_assert!(b.state <= a.state, "{field:?}: {:?} became {:?}", a.governing, b.governing);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn faster_in_the_bend_is_never_better(document in sensible::documents(), part in 0.0..0.5, empty in prop::bool::ANY) {
        never_better(&document, if empty { Field::CornerSpeedEmpty } else { Field::CornerSpeed }, part)?;
    }

    #[test]
    fn a_tighter_bend_is_never_better(document in sensible::documents(), part in 0.2..1.0) {
        let mut wide = document.clone();
        let radius = document.drive.radius_m.unwrap_or(4.0);
        wide.drive.radius_m = Some(radius);
        let mut tight = wide.clone();
        tight.drive.radius_m = Some(f64::max(part * radius, 0.5));
        prop_assert!(assessment(&tight).verdict.state <= assessment(&wide).verdict.state);
    }

    #[test]
    fn a_steeper_ramp_is_never_better(document in sensible::documents(), part in 0.0..0.8) {
        never_better(&document, Field::RampGrade, part)?;
    }

    #[test]
    fn a_steeper_cross_fall_is_never_better(document in sensible::documents(), part in 0.0..0.8) {
        never_better(&document, Field::CrossFall, part)?;
    }

    #[test]
    fn harder_braking_is_never_better(document in sensible::documents(), part in 0.0..0.8) {
        never_better(&document, Field::Braking, part)?;
    }

    #[test]
    fn a_greater_reserve_is_never_better(document in sensible::documents(), part in 0.0..1.0) {
        never_better(&document, Field::Reserve, part)?;
    }

    /// Looking at more of the drive never makes a verdict better, and adds just its own steps.
    #[test]
    fn what_is_looked_at_is_never_better(document in sensible::documents()) {
        let mut out = document.clone();
        (out.drive.brake, out.drive.corner, out.drive.corner_empty) = (Some(false), Some(false), Some(false));
        let mut all = document.clone();
        (all.drive.brake, all.drive.corner, all.drive.corner_empty) = (None, Some(true), None);
        let (out, all) = (assessment(&out), assessment(&all));
        prop_assert!(all.verdict.state <= out.verdict.state);
        let of_the_drive = |id: StepId| matches!(
            id,
            StepId::Brake | StepId::CornerLeft | StepId::CornerRight | StepId::EmptyCornerLeft | StepId::EmptyCornerRight
        );
        prop_assert!(out.steps.iter().all(|s| !of_the_drive(s.id)));
        prop_assert_eq!(all.steps.len(), out.steps.len() + 5);
    }

    /// Each step's share of its own limit says whether it passes, and only the empty ones have no load.
    #[test]
    fn a_step_passes_up_to_its_own_limit(document in sensible::documents()) {
        for step in assessment(&document).steps {
            let used = step.used;
            // A hair about the limit belongs to either side.
            prop_assert!(!step.passes || used.nominal.get() <= 1.0 + 1e-6, "{:?} {used:?}", step.id);
            prop_assert!(!step.passes_worst || used.worst.get() <= 1.0 + 1e-6, "{:?} {used:?}", step.id);
            prop_assert!(step.passes || used.nominal.get() >= 1.0 - 1e-6, "{:?} {used:?}", step.id);
            prop_assert_eq!(step.laden, step.load_centre.is_some());
            prop_assert!(step.laden || step.seat.is_none());
            prop_assert!(step.share_allowed.get() <= 1.0 && step.tests.is_empty() == (step.share_allowed.get() < 1.0));
        }
    }

    /// Load downhill on more than 10 percent: refused, whatever holds. Source: 29 CFR 1910.178 (n)(7).
    #[test]
    fn a_load_never_leads_down_a_steep_ramp(mut document in sensible::documents(), percent in 0.1..50.0) {
        document.drive.ramp_pct = Some(percent);
        document.drive.ramp_down = Some(RampDown::Forwards);
        let verdict = assessment(&document).verdict;
        let refused = std::iter::once(&verdict.governing)
            .chain(&verdict.others)
            .any(|g| g.state == State::NoGo && matches!(g.reason, Reason::LoadDownhill { .. }));
        prop_assert_eq!(refused, percent > 10.0);
    }
}
