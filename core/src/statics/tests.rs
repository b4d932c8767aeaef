//! Moments against hand arithmetic and against their own definitions.

use super::*;
use crate::support::{LineId, Support};
use crate::units::GRAVITY;
use approx::assert_relative_eq;

fn support(pivot: f64) -> Support {
    Support {
        left: DVec3::new(0.0, 0.5, 0.0),
        right: DVec3::new(0.0, -0.5, 0.0),
        steer: DVec3::new(-1.6, 0.0, pivot),
        pivoting: pivot > 0.0,
    }
}

fn truck_and_load() -> Bodies {
    Bodies::points(&[(3000.0, DVec3::new(-0.8, 0.0, 0.55)), (1200.0, DVec3::new(1.0, 0.05, 3.0))])
}

/// Moments about the front axle on level ground are weight x distance.
#[test]
fn a_moment_is_weight_times_distance() {
    let line = support(0.0).line(LineId::Front);
    let found = moment(&truck_and_load(), &line, Field::LEVEL.total());
    assert_relative_eq!(found, (3000.0 * 0.8 - 1200.0 * 1.0) * GRAVITY, max_relative = 1e-12);
}

/// The entries are a way of writing the sum: they add up to the moment, and the share is 1 where it vanishes.
#[test]
fn entries_add_up_and_the_share_is_one_at_the_point_of_tipping() {
    let bodies = truck_and_load();
    for id in [LineId::Front, LineId::Left, LineId::Right] {
        let line = support(0.3).line(id);
        let downhill = line.outward();
        let slope = critical(&bodies, &line, Field::LEVEL.level, downhill * GRAVITY).expect("tips");
        let field = Field::platform(downhill, slope);
        let entries = Entries::of(&bodies, &line, &field);
        let sum: f64 = entries.bodies.iter().map(|(_, m)| m).sum::<f64>() + entries.slope + entries.acceleration;
        assert_relative_eq!(sum, moment(&bodies, &line, field.total()), epsilon = 1e-6);
        assert_relative_eq!(sum, 0.0, epsilon = 1e-6);
        assert_relative_eq!(Balanced::of(&bodies, &line, &field).share(), 1.0, epsilon = 1e-9);
        assert!(Balanced::of(&bodies, &line, &Field::platform(downhill, 0.9 * slope)).share() < 1.0);
    }
}

/// The tip angle, by plane trigonometry: atan(inside / above the line).
#[test]
fn the_tip_angle_is_the_angle_of_the_centre_over_the_line() {
    let bodies = Bodies::points(&[(1000.0, DVec3::new(-0.9, 0.0, 0.6))]);
    let line = support(0.0).line(LineId::Front);
    let w = Field::LEVEL.total();
    assert_relative_eq!(tip_angle(&bodies, &line, w).expect("tips"), libm::atan(1.5), epsilon = 1e-9);
    assert_relative_eq!(distance(&bodies, &line, w), 0.9, epsilon = 1e-12);
    // The line to a pivot is inclined: the angle is between the centre and the pull, seen along it.
    let line = support(0.3).line(LineId::Left);
    let u = line.direction();
    let across = |v: DVec3| v - u * v.dot(u);
    let expected = across(DVec3::new(-0.9, 0.0, 0.6) - line.from).angle_between(across(DVec3::Z));
    assert_relative_eq!(tip_angle(&bodies, &line, w).expect("tips"), expected, epsilon = 1e-9);
}

#[test]
fn gone_over_is_not_above_zero_and_never_is_none() {
    let line = support(0.0).line(LineId::Front);
    let w = Field::LEVEL.total();
    let ahead = Bodies::points(&[(1000.0, DVec3::new(0.2, 0.0, 0.6))]);
    assert!(tip_angle(&ahead, &line, w).is_some_and(|a| a < 0.0));
    assert!(distance(&ahead, &line, w) < 0.0);
    let on_the_ground = Bodies::points(&[(1000.0, DVec3::new(-0.5, 0.0, 0.0))]);
    assert_eq!(critical(&on_the_ground, &line, w, DVec3::X * GRAVITY), None);
    let sunk_and_ahead = Bodies::points(&[(1000.0, DVec3::new(0.5, 0.0, -0.5))]);
    assert_eq!(critical(&sunk_and_ahead, &line, w, DVec3::X * GRAVITY), Some(0.0));
}

#[test]
fn nothing_at_all_has_no_moment_and_no_share() {
    let none = Bodies::points(&[]);
    let line = support(0.0).line(LineId::Left);
    let field = Field::LEVEL;
    assert!(moment(&none, &line, field.total()).abs() < 1e-15);
    assert!(distance(&none, &line, field.total()).abs() < 1e-15);
    assert!(Balanced::of(&none, &line, &field).share().abs() < 1e-15);
    let only_over = Bodies::points(&[(100.0, DVec3::new(1.0, 0.0, 0.5))]);
    let front = support(0.0).line(LineId::Front);
    assert_relative_eq!(Balanced::of(&only_over, &front, &field).share(), MOST_SHARE);
}

/// Source: Messuri and Klein 1985; case C24, arithmetic with g 9.81.
#[test]
fn energy_to_tip_over() {
    assert_relative_eq!(energy_to_tip(4000.0, 0.9, 0.6, 9.81), 18_900.0, max_relative = 0.005);
    assert!(energy_to_tip(4000.0, -0.1, 0.6, 9.81).abs() < 1e-15);
}

/// Found on a 40 kg load: the corner of least moment is not the corner of least distance.
#[test]
fn the_worst_distance_is_never_more_than_as_stated() {
    let mut document = crate::example::document(crate::example::FOUR_WHEEL);
    document.load.mass_kg = Some(40.0);
    let report = crate::report::assess(&document);
    let lines = report.assessment.iter().flat_map(|a| &a.steps).flat_map(|s| &s.lines);
    let mut seen = 0;
    for line in lines {
        assert!(line.distance.worst <= line.distance.nominal, "{:?}", line.id);
        assert!(line.share.worst >= line.share.nominal, "{:?}", line.id);
        seen += 1;
    }
    assert_eq!(seen, 36);
}
