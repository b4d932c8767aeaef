use super::*;
use crate::example;
use crate::report::assess;
use crate::verdict::Reason;

fn changed(change: impl FnOnce(&mut Document)) -> Document {
    let mut document = example::document(example::THREE_WHEEL);
    change(&mut document);
    document
}

/// What is promised is what assessing again finds.
fn led(document: &Document) -> Vec<Leads> {
    let assessment = assess(document).assessment.expect("complete");
    for leads in &assessment.remedies {
        let mut again = document.clone();
        leads.remedy.apply(&mut again);
        let after = assess(&again).assessment.expect("complete").verdict.state;
        assert_eq!(after, leads.state, "{leads:?}");
        assert!(after > assessment.verdict.state);
    }
    assessment.remedies
}

#[test]
fn what_goes_needs_nothing() {
    assert_eq!(led(&changed(|_| {})), []);
}

/// 1,310 kg 90 mm off the heel is beyond the 600 mm row; home it is within it.
#[test]
fn a_load_too_far_out_is_pushed_home() {
    let document = changed(|d| {
        d.lift.heel_gap_m = Some(0.15);
        d.load.mass_kg = Some(1450.0);
        d.load.weight_known = Some(crate::document::WeightKnown::Scale);
    });
    let remedies = led(&document);
    assert!(matches!(remedies.first(), Some(Leads { remedy: Remedy::PushHome { .. }, .. })), "{remedies:?}");
}

#[test]
fn a_load_off_centre_is_picked_up_in_its_middle() {
    let document = changed(|d| d.lift.offset_m = Some(0.2));
    let remedies = led(&document);
    let shift = remedies.iter().find_map(|l| match l.remedy {
        Remedy::Shift { by, offset } => Some((by.get(), offset.get(), l.state)),
        _ => None,
    });
    let (by, offset, state) = shift.expect("it can be shifted");
    assert!((by + 0.23).abs() < 1e-12 && (offset + 0.03).abs() < 1e-12 && state == State::Go);
}

#[test]
fn forks_too_close_are_set_wider_by_just_enough() {
    let document = changed(|d| {
        d.truck.forks.spread_m = Some(0.3);
        d.load.cg_left_m = Some(0.145);
        d.lift.sideshift_m = Some(-0.12);
        d.load.mass_kg = Some(500.0);
    });
    let verdict = assess(&document).assessment.expect("complete").verdict;
    assert!(matches!(verdict.governing.reason, Reason::Topples { .. } | Reason::BesideForks { .. }), "{verdict:?}");
    let remedies = led(&document);
    let to = remedies.iter().find_map(|l| match l.remedy {
        Remedy::Spread { to } => Some((to.get(), l.state)),
        _ => None,
    });
    let (to, state) = to.expect("they can be set wider");
    let mut less = document.clone();
    Remedy::Spread { to: Scalar::computed(to - 0.02) }.apply(&mut less);
    let after = assess(&less).assessment.expect("complete").verdict.state;
    assert!(after < state, "{to} is no more than it takes");
}

/// Its long way along the forks this crate's centre is too far out; turned a quarter it is not.
#[test]
fn a_long_load_is_turned() {
    let document = changed(|d| {
        d.load.length_m = Some(2.2);
        d.load.width_m = Some(0.9);
        d.load.cg_from_heel_m = Some(1.1);
        d.load.mass_kg = Some(900.0);
    });
    let remedies = led(&document);
    let turn = remedies.iter().find(|l| matches!(l.remedy, Remedy::Turn { .. })).expect("it can be turned");
    assert!(matches!(turn.remedy, Remedy::Turn { turned: Turned::Left | Turned::Right }) && turn.state == State::Go);
}

/// Stamped 775 kg at 500 mm a fork: the left one may carry 0.585 of the load at its worst. On the inner
/// edges of the blades the centre, 60 mm off at most, then asks for 60 / 0.085 between them.
#[test]
fn a_fork_over_its_stamp_is_relieved_by_a_wider_setting() {
    let document = changed(|d| {
        (d.truck.forks.stamped_kg, d.truck.forks.stamped_centre_m) = (Some(775.0), Some(0.5));
        d.truck.forks.blade_width_m = Some(0.12);
    });
    let verdict = assess(&document).assessment.expect("complete").verdict;
    assert!(matches!(verdict.governing.reason, Reason::ForkOver { .. }), "{verdict:?}");
    let remedies = led(&document);
    let to = remedies.iter().find_map(|l| match l.remedy {
        Remedy::Spread { to } => Some((to.get(), l.state)),
        _ => None,
    });
    let (to, state) = to.expect("they can be set wider");
    assert!(state == State::Go && (0.88..=1.0).contains(&to), "{to} {state:?}");
}
