//! The plate's rows, its gaps and the estimates.

use super::*;
use crate::example;
use crate::scalar::{Region, Span};
use crate::scenario::Attachment;
use approx::assert_relative_eq;
use glam::DVec3;

fn outcome(scenario: &Scenario) -> Outcome {
    check(scenario, &Placed::of(&scenario.load, &scenario.lift))
}

fn gaps(scenario: &Scenario) -> Vec<(Gap, bool)> {
    outcome(scenario).findings.into_iter().map(|f| (f.gap, f.as_stated)).collect()
}

#[test]
fn the_next_height_up_and_the_next_load_centre_up() {
    let plate = example::three_wheel().truck.plate.expect("has a plate");
    let row = |h: f64, lc: f64| plate.row_for(h, lc).map(|(k, _)| k);
    assert_eq!(row(0.2, 0.3), Some(0));
    assert_eq!(row(3.3, 0.5), Some(0));
    assert_eq!(row(3.3, 0.501), Some(1));
    assert_eq!(row(3.301, 0.5), Some(3));
    assert_eq!(row(4.0, 0.65), Some(5));
    assert_eq!(row(4.8, 0.5), None);
    assert_eq!(row(3.0, 0.71), None);
}

/// Moves the load's centre, with all it may be, along one direction.
fn stand(scenario: &mut Scenario, along: DVec3, value: f64) {
    let centre = &mut scenario.load.centre;
    let by = along * (value - centre.at.dot(along));
    *centre = Region { at: centre.at + by, lo: centre.lo + by, hi: centre.hi + by };
}

/// Source: trade guidance, common practice (case C10): nearer than the rated load centre allows no more.
#[test]
fn a_nearer_load_is_never_allowed_more() {
    let mut scenario = example::three_wheel();
    scenario.load.mass = Span::exact(1801.0);
    stand(&mut scenario, DVec3::X, 0.2);
    assert!(matches!(gaps(&scenario).as_slice(), [(Gap::TooHeavy { .. }, true)]));
    for near in [1.0, 12.0, 23.9, 24.0] {
        assert_relative_eq!(by_load_centre_alone(3000.0, 24.0, near), 3000.0);
        assert_relative_eq!(by_moments(3000.0, 14.0, 24.0, near), 3000.0);
    }
}

/// A row between two load centres is not read between them.
#[test]
fn nothing_is_interpolated() {
    let mut scenario = example::three_wheel();
    let ahead = 0.55 - scenario.lift.heel_gap.nominal;
    stand(&mut scenario, DVec3::X, ahead);
    (scenario.load.centre.lo.x, scenario.load.centre.hi.x) = (ahead, ahead);
    scenario.load.mass = Span::exact(1581.0);
    assert!(matches!(gaps(&scenario).as_slice(), [(Gap::TooHeavy { row: 1, .. }, true)]));
    scenario.load.mass = Span::exact(1580.0);
    assert_eq!(gaps(&scenario), []);
}

#[test]
fn a_weight_within_as_stated_but_not_at_its_greatest_is_not_as_stated() {
    let mut scenario = example::three_wheel();
    scenario.load.mass = Span::about(1550.0, 60.0);
    assert!(matches!(gaps(&scenario).as_slice(), [(Gap::TooHeavy { .. }, false)]));
}

#[test]
fn beyond_its_last_figures_the_plate_covers_nothing() {
    let mut scenario = example::three_wheel();
    stand(&mut scenario, DVec3::X, 0.9);
    scenario.lift.heel_gap = Span::exact(0.02);
    let found = outcome(&scenario);
    assert!(matches!(found.findings.as_slice(), [Finding { gap: Gap::TooFarOut { .. }, as_stated: true }]));
    // Moments about the front axle by hand: 1,400 kg x (0.36 + 0.70) / (0.36 + 0.02 + 0.90 + 0.02).
    let estimate = found.estimate.map(Scalar::get).unwrap_or_default();
    assert_relative_eq!(estimate, 1400.0 * 1.06 / 1.30, max_relative = 1e-12);

    let mut scenario = example::three_wheel();
    scenario.truck.mast.lift = 6.0;
    scenario.lift.height = 4.9;
    assert!(matches!(gaps(&scenario).as_slice(), [(Gap::TooHigh { .. }, true)]));
    scenario.truck.plate = None;
    assert_eq!(gaps(&scenario), [(Gap::NoPlate, true)]);
}

#[test]
fn another_front_end_is_not_covered() {
    let mut scenario = example::three_wheel();
    scenario.truck.attachment =
        Some(Attachment { name: String::new(), mass: 120.0, ahead: 0.08, above: 0.3, lost_load: 0.11 });
    let found = outcome(&scenario);
    assert!(matches!(found.findings[0], Finding { gap: Gap::OtherFrontEnd { .. }, as_stated: true }));
    assert!(found.estimate.is_some_and(|kg| kg < Scalar::computed(1580.0)));
    if let Some(plate) = &mut scenario.truck.plate {
        plate.issued_for = PlateFor::Attachment;
    }
    assert_eq!(gaps(&scenario), []);
    scenario.truck.attachment = None;
    assert!(matches!(gaps(&scenario)[0], (Gap::OtherFrontEnd { .. }, true)));
}

#[test]
fn a_battery_outside_the_window_is_not_covered() {
    let mut scenario = example::three_wheel();
    scenario.truck.battery.fitted = Span::exact(819.0);
    assert!(matches!(gaps(&scenario).as_slice(), [(Gap::Battery { .. }, true)]));
    scenario.truck.battery.fitted = Span::exact(820.0);
    assert_eq!(gaps(&scenario), []);
}

/// Source: ISO 22915-10: beyond 100 mm (under 5 t) the offset is substantial.
#[test]
fn a_load_far_off_centre_is_outside_the_ordinary_rating() {
    let mut scenario = example::three_wheel();
    stand(&mut scenario, DVec3::Y, -0.101);
    assert!(matches!(gaps(&scenario).as_slice(), [(Gap::OffCentre { .. }, true)]));
    stand(&mut scenario, DVec3::Y, -0.085);
    assert!(matches!(gaps(&scenario).as_slice(), [(Gap::OffCentre { .. }, false)]));
    // Sideshifted back to the middle it is not off centre.
    stand(&mut scenario, DVec3::Y, -0.101);
    scenario.lift.sideshift = 0.1;
    assert_eq!(gaps(&scenario), []);
}

#[test]
fn a_centre_higher_than_the_test_loads_is_said() {
    let mut scenario = example::three_wheel();
    assert_eq!(outcome(&scenario).centre_higher, None);
    stand(&mut scenario, DVec3::Z, 0.6);
    assert!(outcome(&scenario).centre_higher.is_some());
}

/// Source: German training guidance, common practice (case C33): of what the plate allows 0.70 may hang.
#[test]
fn a_hanging_load_is_allowed_seven_tenths() {
    let mut scenario = example::three_wheel();
    let allowed = |s: &Scenario| outcome(s).allowed.map(Scalar::get).unwrap_or_default();
    let lying = allowed(&scenario);
    scenario.load.hanging = Some(0.0);
    assert_relative_eq!(allowed(&scenario), 0.70 * lying);
    scenario.load.mass = Span::exact(0.70 * lying);
    assert_eq!(gaps(&scenario), []);
    scenario.load.mass = Span::exact(0.70 * lying + 1.0);
    assert!(matches!(gaps(&scenario).as_slice(), [(Gap::TooHeavy { .. }, true)]));
}

/// A heel gap that was not given: as stated the load is home, at the worst it is not. Plate, blades
/// and moments go by the same stated load centre.
#[test]
fn an_unknown_heel_gap_counts_at_its_worst_and_not_as_stated() {
    let mut document = example::document(example::THREE_WHEEL);
    document.lift.heel_gap_m = None;
    let scenario = Scenario::from_document(&document).expect("complete");
    let placed = Placed::of(&scenario.load, &scenario.lift);
    let need = outcome(&scenario).need;
    assert_relative_eq!(need.load_centre.get(), 0.55);
    assert_relative_eq!(placed.centre.at.x, 0.55);
    assert_relative_eq!(need.load_centre_worst.get(), 0.55 + 0.02 + 0.05);
    let forks = crate::forks::check(&scenario, &placed, &crate::bearing::Bearing::of(&scenario));
    assert_relative_eq!(forks.to_tips.get(), 1.15 - 0.55, max_relative = 1e-12);
}
