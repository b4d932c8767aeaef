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
    scenario.truck.plate.as_mut().expect("a plate").mast_lift = None;
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

/// The example's plate after a change, and its truck after another.
fn changed(plate: impl FnOnce(&mut Plate), truck: impl FnOnce(&mut crate::scenario::Truck)) -> Vec<(Gap, bool)> {
    let mut scenario = example::three_wheel();
    plate(scenario.truck.plate.as_mut().expect("a plate"));
    truck(&mut scenario.truck);
    gaps(&scenario)
}

#[test]
fn another_mast_is_not_covered_whichever_way_it_differs() {
    for lift in [4.7 - 0.026, 4.7 + 0.026, 3.3, 6.0] {
        let found = changed(|_| {}, |t| t.mast.lift = lift);
        let gap = Gap::OtherMast { named: Scalar::computed(4.7), fitted: Scalar::computed(lift) };
        assert!(found.contains(&(gap, true)), "{lift}: {found:?}");
    }
    // Rounded to an inch it is the same one, and a plate that does not say is for any.
    assert_eq!(changed(|_| {}, |t| t.mast.lift = 4.7 + 0.025), []);
    assert_eq!(changed(|p| p.mast_lift = None, |t| t.mast.lift = 6.0), []);
}

#[test]
fn other_tyres_are_not_covered_and_unsaid_ones_are_asked_for() {
    use crate::document::Tyres::{Cushion, Pneumatic};
    let gap = |fitted| Gap::OtherTyres { named: Cushion, fitted };
    assert_eq!(changed(|_| {}, |t| t.tyres = Some(Pneumatic)), [(gap(Some(Pneumatic)), true)]);
    assert_eq!(changed(|_| {}, |t| t.tyres = None), [(gap(None), false)]);
    assert_eq!(changed(|p| p.tyres = None, |t| t.tyres = Some(Pneumatic)), []);
}

#[test]
fn a_mast_that_tilts_further_is_not_covered_one_that_tilts_less_is() {
    let tilted = |back: f64, forward: f64| {
        changed(|_| {}, |t| (t.mast.tilt_back, t.mast.tilt_forward) = (back.to_radians(), forward.to_radians()))
    };
    assert_eq!(tilted(6.5, 5.5), []);
    assert_eq!(tilted(3.0, 2.0), []);
    let ways = |found: Vec<(Gap, bool)>| {
        found
            .iter()
            .map(|(g, stated)| (matches!(g, Gap::OtherTilt { way: Tilted::Back, .. }), *stated))
            .collect::<Vec<_>>()
    };
    assert_eq!(ways(tilted(7.0, 5.0)), [(true, true)]);
    assert_eq!(ways(tilted(6.0, 6.0)), [(false, true)]);
}

/// By its weight it is another one; by its name alone somebody has to look.
#[test]
fn another_attachment_is_not_covered() {
    let clamp =
        |name: &str, mass: f64| Attachment { name: name.to_owned(), mass, ahead: 0.08, above: 0.3, lost_load: 0.11 };
    let found = |named: &str, named_mass: Option<f64>, fitted: &str, mass: f64| {
        let plate = |p: &mut Plate| {
            (p.issued_for, p.attachment, p.attachment_mass) = (PlateFor::Attachment, named.to_owned(), named_mass);
        };
        let list = changed(plate, |t| t.attachment = Some(clamp(fitted, mass)));
        let other = |g: &Gap| matches!(g, Gap::OtherAttachment { .. });
        list.iter().find(|(g, _)| other(g)).map(|(_, stated)| *stated)
    };
    assert_eq!(found("Drum clamp", Some(120.0), "drum  clamp", 120.0), None);
    assert_eq!(found("Drum clamp", Some(120.0), "drum clamp", 126.0), None);
    assert_eq!(found("Drum clamp", Some(120.0), "drum clamp", 126.1), Some(true));
    assert_eq!(found("Drum clamp", Some(120.0), "drum clamp", 113.0), Some(true));
    assert_eq!(found("Drum clamp", Some(120.0), "Bale clamp", 120.0), Some(false));
    assert_eq!(found("Drum clamp", None, "Bale clamp", 120.0), Some(false));
    assert_eq!(found("Drum clamp", None, "", 120.0), Some(false));
    assert_eq!(found("Drum clamp", Some(120.0), "", 120.0), None);
    assert_eq!(found("", Some(120.0), "Drum clamp", 160.0), Some(true));
    assert_eq!(found("", None, "Drum clamp", 160.0), None);
}

/// What a bare-forks plate says of an attachment is not said of today's truck.
#[test]
fn a_plate_for_the_bare_forks_names_no_attachment() {
    let found = changed(|p| (p.attachment, p.attachment_mass) = ("Drum clamp".to_owned(), Some(120.0)), |_| {});
    assert_eq!(found, []);
}

/// From a plate for another mast nothing is estimated: how it falls with height is not known.
#[test]
fn nothing_is_estimated_from_a_plate_for_another_mast() {
    let mut scenario = example::three_wheel();
    stand(&mut scenario, DVec3::X, 0.9);
    assert!(outcome(&scenario).estimate.is_some());
    scenario.truck.mast.lift = 5.5;
    assert_eq!(outcome(&scenario).estimate, None);
}
