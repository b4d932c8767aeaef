//! Each state made by a plausible change to an example, and the reason that governs.

use super::*;
use crate::document::{CentreKnown, Document, WeightKnown};
use crate::example;
use crate::report::assess;
use crate::support::LineId;

fn verdict(change: impl FnOnce(&mut Document)) -> Verdict {
    let mut document = example::document(example::THREE_WHEEL);
    change(&mut document);
    let report = assess(&document);
    assert_eq!(report.problems, []);
    report.assessment.expect("complete").verdict
}

#[test]
fn the_example_goes_within_its_plate() {
    let found = verdict(|_| {});
    assert_eq!(found.state, State::Go);
    assert!(matches!(found.governing.reason, Reason::Within { .. }));
    assert_eq!(found.others, []);
}

/// Physics never overrules a plate: the model likes 1,000 kg, a plate of 900 kg does not.
#[test]
fn the_plate_governs() {
    let found = verdict(|d| {
        for row in d.truck.plate.iter_mut().flat_map(|p| &mut p.rows) {
            row.capacity_kg = Some(900.0);
        }
    });
    assert_eq!(found.state, State::NoGo);
    assert!(matches!(found.governing.reason, Reason::Plate { gap: Gap::TooHeavy { .. } }));
    let found = verdict(|d| (d.truck.plate, d.truck.cg_height_m) = (None, Some(0.55)));
    assert_eq!(found.state, State::NoGo);
    assert_eq!(found.governing.reason, Reason::Plate { gap: Gap::NoPlate });
}

/// A load that the model cannot hold is a no-go whatever the plate says, and so is one that leaves the blades.
#[test]
fn the_model_refuses_too() {
    let found = verdict(|d| {
        for row in d.truck.plate.iter_mut().flat_map(|p| &mut p.rows) {
            row.capacity_kg = Some(9000.0);
        }
        d.load.mass_kg = Some(4000.0);
        d.truck.cg_height_m = Some(0.5);
    });
    assert_eq!(found.state, State::NoGo);
    assert!(matches!(found.governing.reason, Reason::Tips { line: LineId::Front, .. }), "{found:?}");
    let found = verdict(|d| {
        d.truck.forks.length_m = Some(0.5);
    });
    assert_eq!(found.state, State::NoGo);
    assert!(matches!(found.governing.reason, Reason::BeyondTips { .. }));
}

/// Passing as stated but not at the greatest weight is a hold that says what to measure.
#[test]
fn an_uncertain_weight_holds() {
    let found = verdict(|d| {
        d.load.mass_kg = Some(1350.0);
        d.load.weight_known = Some(WeightKnown::Estimate);
    });
    assert_eq!(found.state, State::Hold);
    assert_eq!(found.governing.measure, Some(Entry::LoadMass.into()));
    let found = verdict(|d| {
        d.load.mass_kg = Some(1350.0);
        d.load.weight_known = Some(WeightKnown::Scale);
    });
    assert_eq!(found.state, State::Go, "{:?}", found.governing);
}

#[test]
fn an_unknown_battery_holds_where_the_plate_has_a_window() {
    let found = verdict(|d| d.truck.battery.fitted_kg = None);
    assert_eq!(found.state, State::Hold);
    assert_eq!(found.governing.measure, Some(Entry::BatteryFitted.into()));
}

#[test]
fn figures_that_contradict_the_plate_hold_and_name_suspects() {
    let found = verdict(|d| d.truck.cg_height_m = Some(0.75));
    assert_eq!(found.state, State::Hold);
    assert!(matches!(found.governing.reason, Reason::Contradicts { .. }));
    assert!(found.governing.measure.is_some());
}

/// A tall narrow load far off its middle, with a light plate to let it through: lateral slopes decide.
#[test]
fn a_slope_not_stood_is_a_no_go_with_both_figures() {
    let found = verdict(|d| {
        (d.load.height_m, d.load.cg_above_m) = (Some(6.0), Some(5.5));
        d.load.centre_known = Some(CentreKnown::Mark);
        d.lift.height_m = Some(4.7);
        d.load.mass_kg = Some(1300.0);
    });
    let all = std::iter::once(&found.governing).chain(&found.others);
    let slopes: Vec<_> = all
        .filter_map(|g| match g.reason {
            Reason::Slope { stood, asked, .. } => Some((stood, asked)),
            _ => None,
        })
        .collect();
    assert!(!slopes.is_empty(), "{found:?}");
    assert!(slopes.iter().all(|(stood, asked)| stood < asked));
    assert_ne!(found.state, State::Go);
}

/// A reserve not kept as stated is a no-go, also where at the worst corner the truck goes over altogether: that
/// alone would only hold.
#[test]
fn a_reserve_not_kept_is_not_hidden_by_what_may_happen_at_the_worst() {
    let found = verdict(|d| {
        d.load.underside = Some(crate::friction::Underside::AntiSlipMat);
        d.drive.corner_kmh = Some(12.0);
    });
    let document = {
        let mut d = example::document(example::THREE_WHEEL);
        d.drive.corner_kmh = Some(12.0);
        d
    };
    let steps = assess(&document).assessment.expect("complete").steps;
    let bend = steps.iter().find(|s| s.id == StepId::CornerRight).expect("a bend");
    let left = bend.lines.iter().find(|l| l.id == LineId::Left).expect("a line");
    assert!(left.moment.nominal > Scalar::ZERO && left.moment.worst < Scalar::ZERO, "{left:?}");
    assert!(left.share.nominal > bend.share_allowed);
    let grounds: Vec<_> = std::iter::once(&found.governing).chain(&found.others).collect();
    let refused = |g: &&&Ground| {
        g.state == State::NoGo
            && matches!(g.reason, Reason::Reserve { step: StepId::CornerRight, line: LineId::Left, .. })
    };
    assert_eq!((found.state, grounds.iter().filter(refused).count()), (State::NoGo, 1), "{grounds:#?}");
}

/// 29 CFR 1910.178 (n)(7): in excess of 10 percent the load stays uphill. A ramp of 9.8 % by a tape may be
/// steeper than that.
#[test]
fn a_ramp_that_may_be_over_ten_percent_holds_with_the_load_downhill() {
    let at = |pct: f64| {
        verdict(|d| {
            d.load.mass_kg = Some(400.0);
            (d.drive.ramp_pct, d.drive.ramp_down) = (Some(pct), Some(crate::document::RampDown::Forwards));
        })
    };
    let is_rule = |v: &Verdict| {
        let all = std::iter::once(&v.governing).chain(&v.others);
        all.filter(|g| matches!(g.reason, Reason::LoadDownhill { .. })).map(|g| (g.state, g.measure)).next()
    };
    assert_eq!(is_rule(&at(10.1)), Some((State::NoGo, None)));
    assert_eq!(is_rule(&at(9.8)), Some((State::Hold, Some(Entry::RampGrade.into()))));
    assert_eq!(is_rule(&at(9.4)), None);
}

/// A type sheet that contradicts itself holds, and names what may be wrong; nothing that is done to the load mends it.
#[test]
fn a_sheet_that_contradicts_itself_holds() {
    let mut document = example::document(example::THREE_WHEEL);
    document.truck.steer_axle_laden_kg = Some(835.0);
    let assessment = assess(&document).assessment.expect("complete");
    let found = &assessment.verdict;
    assert_eq!(found.state, State::Hold);
    assert!(matches!(found.governing.reason, Reason::SheetContradicts { .. }), "{found:?}");
    assert_eq!(found.governing.measure, Some(Entry::SteerAxleLaden.into()));
    assert_eq!(found.others.len(), 1);
    assert_eq!(assessment.remedies.leads, []);
}

/// What somebody looked at and found wrong is no go, however well the truck stands; nor does it hide a plain no-go.
#[test]
fn what_is_not_in_order_holds_until_it_is_put_right() {
    use crate::checklist::{Answer, Item};
    let seen = |item, answer| {
        verdict(|d| {
            d.checklist.insert(Item::PlateLegible, Answer::Yes);
            d.checklist.insert(item, answer);
        })
    };
    let found = seen(Item::Brakes, Answer::No);
    assert_eq!(found.state, State::Hold);
    assert_eq!(found.governing.reason, Reason::NotInOrder { items: vec![Item::Brakes] });
    assert_eq!(found.governing.measure, None);
    assert_eq!(seen(Item::Brakes, Answer::NotThere).state, State::Hold, "no truck is without brakes");
    assert_eq!(seen(Item::Backrest, Answer::NotThere).state, State::Go);
    assert_eq!(seen(Item::Brakes, Answer::Yes).state, State::Go);
    let found = verdict(|d| {
        d.checklist.insert(Item::Mast, Answer::No);
        d.load.mass_kg = Some(1581.0);
        d.load.weight_known = Some(WeightKnown::Scale);
    });
    assert_eq!(found.state, State::NoGo);
    assert!(found.others.iter().any(|g| matches!(g.reason, Reason::NotInOrder { .. })), "{found:?}");
}
