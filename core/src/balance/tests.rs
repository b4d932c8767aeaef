//! Inference and contradiction.

use super::*;
use crate::example;
use crate::scenario::Scenario;
use approx::assert_relative_eq;

/// The three-wheel example with its mast hardly moving: then the closed form holds.
fn stiff_and_light() -> Scenario {
    let mut scenario = example::three_wheel();
    let truck = &mut scenario.truck;
    (truck.forks.carriage, truck.forks.pair, truck.mast.tilt_back, truck.operator) = (5.0, 5.0, 0.0, 0.0);
    scenario
}

/// Source: closed form of the tilting platform about M-N for a truck without a pivot, by plane
/// trigonometry: slope = (T/2)(1 - a/L) cos(angle of M-N) / h.
#[test]
fn inferred_height_is_the_closed_form() {
    let truck = stiff_and_light().truck;
    let balance = Balance::of(&truck, &Doubts::NONE);
    let highest = balance.whole.iter().map(|p| p.y).fold(0.0, f64::max);
    let (half, behind) = (0.5 * truck.tread, -truck.cg_x.unwrap_or_default());
    let cos = truck.wheelbase / libm::hypot(truck.wheelbase, half);
    let slope = 0.15 + 0.011 * truck.top_speed_kmh;
    let closed = half * (1.0 - behind / truck.wheelbase) * cos / slope;
    assert_relative_eq!(highest, closed, max_relative = 0.005);
}

/// The upper end is the highest that passes: it does, and a millimetre more does not.
#[test]
fn the_inferred_height_just_passes_every_test() {
    let mut truck = example::three_wheel().truck;
    assert_eq!(truck.cg_z, None);
    let highest = Balance::of(&truck, &Doubts::NONE).whole.iter().map(|p| p.y).fold(0.0, f64::max);
    truck.cg_z = Some(highest - 1e-6);
    assert_eq!(Balance::of(&truck, &Doubts::NONE).contradictions, []);
    truck.cg_z = Some(highest + 0.001);
    let contradictions = Balance::of(&truck, &Doubts::NONE).contradictions;
    assert_eq!(contradictions.len(), 1);
    assert!(contradictions[0].stood < contradictions[0].asked);
}

/// The less demanding reading of the speed rule proves less, and so leaves a higher centre.
#[test]
fn evidence_takes_the_laxer_reading() {
    let slope = |reading| Test::LateralTravelling.slope(1800.0, 16.0, reading);
    assert!(slope(Reading::Proven) < slope(Reading::Asked));
    assert_relative_eq!(slope(Reading::Proven), 0.326, epsilon = 1e-12);
    assert_relative_eq!(slope(Reading::Asked), 0.374, epsilon = 1e-12);
}

#[test]
fn contradictions_name_the_test_and_the_suspects() {
    let mut truck = example::three_wheel().truck;
    truck.cg_z = Some(0.95);
    let found = Balance::of(&truck, &Doubts::NONE).contradictions;
    assert_eq!(found[0].test, Test::LateralTravelling);
    assert!(found[0].suspects.contains(&Entry::CgHeight.into()));

    let mut truck = example::three_wheel().truck;
    if let Some(plate) = &mut truck.plate {
        plate.rows[0].capacity = 3200.0;
    }
    let found = Balance::of(&truck, &Doubts::NONE).contradictions;
    assert!(found.iter().any(|c| c.test == Test::LongitudinalStacking && c.row == Some(0)));
    assert!(found.iter().any(|c| c.suspects.contains(&Place::in_row(Entry::PlateCapacity, 0))));
}

/// Where the axle loads are not known either, the trucks that fit form a region that holds the real one.
#[test]
fn unknown_axle_loads_leave_a_region() {
    let known = example::three_wheel().truck;
    let mut unknown = known.clone();
    unknown.cg_x = None;
    let region = Balance::of(&unknown, &Doubts::NONE);
    assert!(region.whole.len() >= 3);
    let names: Vec<_> = region.inferred.iter().map(|a| a.place.field).collect();
    assert_eq!(names, [Entry::FrontAxle, Entry::SteerAxleLoad, Entry::CgHeight]);
    // Every point of the known truck's segment lies inside the convex region.
    for p in Balance::of(&known, &Doubts::NONE).whole {
        let n = region.whole.len();
        let inside =
            (0..n).all(|k| (region.whole[(k + 1) % n] - region.whole[k]).perp_dot(p - region.whole[k]) >= -1e-9);
        assert!(inside, "{p} outside {:?}", region.whole);
    }
}

#[test]
fn clipping_takes_points_segments_and_polygons() {
    let point = [DVec2::new(1.0, 1.0)];
    assert_eq!(clip(&point, |p| p.x), point);
    assert_eq!(clip(&point, |p| -p.x), []);
    let segment = [DVec2::new(1.0, 0.0), DVec2::new(1.0, 2.0)];
    assert_eq!(clip(&segment, |p| 0.5 - p.y), [DVec2::new(1.0, 0.0), DVec2::new(1.0, 0.5)]);
    let square = corners(Span::between(0.0, 1.0), Span::between(0.0, 1.0));
    let cut = clip(&square, |p| 1.5 - p.x - p.y);
    assert_eq!(cut.len(), 5);
    assert_eq!(corners(Span::exact(1.0), Span::exact(2.0)).len(), 1);
    assert_eq!(corners(Span::exact(1.0), Span::between(0.0, 2.0)).len(), 2);
}
