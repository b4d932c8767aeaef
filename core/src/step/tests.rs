use super::*;
use crate::document::{Document, RampDown};
use crate::example;
use crate::friction::Underside;
use crate::report::{Assessment, assess};
use crate::units::GRAVITY;
use crate::verdict::{Reason, State};

fn assessed(change: impl FnOnce(&mut Document)) -> Assessment {
    let mut document = example::document(example::THREE_WHEEL);
    change(&mut document);
    let report = assess(&document);
    assert_eq!(report.problems, []);
    report.assessment.expect("complete")
}

#[test]
fn a_move_has_the_steps_that_apply() {
    let plain = assessed(|_| {});
    let ids: Vec<_> = plain.steps.iter().map(|s| s.id).collect();
    assert!(ids.contains(&StepId::Brake) && ids.contains(&StepId::EmptyCornerLeft));
    assert!(!ids.contains(&StepId::RampUp) && !ids.contains(&StepId::CrossFallLeft));
    let all = assessed(|d| (d.drive.ramp_pct, d.drive.cross_fall_pct) = (Some(5.0), Some(2.0)));
    assert_eq!(all.steps.iter().map(|s| s.id).collect::<Vec<_>>(), StepId::ALL);
    let few = assessed(|d| {
        (d.drive.brake, d.drive.corner, d.drive.corner_empty) = (Some(false), Some(false), Some(false));
    });
    assert_eq!(few.steps.len(), 7);
}

/// A bend of radius r at speed v pulls outward with v^2 / r; left-hand, to the right.
#[test]
fn fields_pull_the_way_they_should() {
    let mut scenario = example::three_wheel();
    scenario.drive.corner = Some((3.0, 4.5));
    scenario.drive.ramp = Some(0.1);
    scenario.drive.cross_fall = Some(0.05);
    let at = |id: StepId, s: &Scenario| id.field(s).total();
    assert!((at(StepId::CornerLeft, &scenario).y + 2.0).abs() < 1e-12);
    assert!((at(StepId::CornerRight, &scenario).y - 2.0).abs() < 1e-12);
    let up = at(StepId::RampUp, &scenario);
    assert!((up.x / up.z - 0.1).abs() < 1e-12, "uphill it pulls to the rear");
    let braking = scenario.drive.braking.expect("braking");
    let down = at(StepId::RampDown, &scenario);
    assert!(down.x < up.x - 0.9 * braking, "load uphill, braking backwards pulls to the rear too");
    scenario.drive.load_downhill = true;
    let down = at(StepId::RampDown, &scenario);
    assert!((down.x - braking - 0.1 / 1.01_f64.sqrt() * GRAVITY).abs() < 1e-12, "load downhill both pull ahead");
    assert!(at(StepId::CrossFallLeft, &scenario).y < 0.0, "left side high it pulls to the right");
}

/// Source: 29 CFR 1910.178 (n)(7).
#[test]
fn over_ten_percent_a_load_does_not_lead_downhill() {
    let down = |percent: f64, how: RampDown| {
        assessed(|d| (d.drive.ramp_pct, d.drive.ramp_down) = (Some(percent), Some(how))).verdict
    };
    let refused = |v: &crate::verdict::Verdict| {
        std::iter::once(&v.governing).chain(&v.others).any(|g| matches!(g.reason, Reason::LoadDownhill { .. }))
    };
    assert!(refused(&down(10.5, RampDown::Forwards)) && down(10.5, RampDown::Forwards).state == State::NoGo);
    // By a tape it may be half a percent more.
    assert!(!refused(&down(9.5, RampDown::Forwards)) && !refused(&down(14.0, RampDown::Backwards)));
}

#[test]
fn a_bend_too_fast_is_refused_before_it_tips() {
    let at = |kmh: f64| {
        assessed(|d| {
            (d.drive.corner_kmh, d.drive.radius_m) = (Some(kmh), Some(3.0));
            d.load.underside = Some(Underside::AntiSlipMat);
        })
    };
    let slow = at(5.0);
    assert!(slow.verdict.state == State::Go, "{:?}", slow.verdict.governing);
    let (mut reserve, mut tips) = (false, false);
    for kmh in 6..20 {
        let found = at(f64::from(kmh)).verdict;
        let grounds = std::iter::once(&found.governing).chain(&found.others);
        let Some(ground) = grounds.into_iter().find(|g| {
            // As stated: at the worst corner it may tip before the reserve is gone as stated.
            g.state == State::NoGo && matches!(g.reason, Reason::Reserve { .. } | Reason::Tips { .. })
        }) else {
            continue;
        };
        match ground.reason {
            Reason::Reserve { step: StepId::CornerLeft | StepId::CornerRight, share, allowed, .. } => {
                reserve = true;
                assert!(!tips && share > allowed);
            }
            Reason::Tips { .. } => tips = true,
            _ => {}
        }
    }
    assert!(reserve && tips);
}

/// The empty truck can be the worst: it goes faster.
#[test]
fn the_empty_truck_is_looked_at_in_bends() {
    let found = assessed(|d| {
        (d.drive.corner_empty_kmh, d.drive.radius_m) = (Some(11.0), Some(2.0));
        d.drive.corner_kmh = Some(4.0);
    });
    assert!(
        matches!(found.governing_step, StepId::EmptyCornerLeft | StepId::EmptyCornerRight),
        "{:?}",
        found.governing_step
    );
    let empty = found.steps.iter().find(|s| s.id == StepId::EmptyCornerLeft).expect("a step");
    assert!(!empty.laden && empty.load_centre.is_none() && empty.seat.is_none() && empty.tests.is_empty());
}

/// More can be asked for, never less.
#[test]
fn a_greater_reserve_is_asked_a_lesser_refused() {
    let mut document = example::document(example::THREE_WHEEL);
    document.drive.reserve_pct = Some(14.0);
    assert_eq!(assess(&document).problems.len(), 1);
    let asked = |percent: f64| assessed(|d| d.drive.reserve_pct = Some(percent));
    let brake = |a: &Assessment| a.steps.iter().find(|s| s.id == StepId::Brake).expect("a step").used.worst;
    assert!(brake(&asked(40.0)) > brake(&asked(15.0)));
}
