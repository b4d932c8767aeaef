//! Wheel loads, where the steer wheels go light, and common centres of gravity.

use crate::{exact, feet, inches, lb, lbf, near, points, support};
use glam::DVec3;
use standfast_core::field::Field;
use standfast_core::statics::{critical, moment};
use standfast_core::support::LineId;
use standfast_core::units::{GRAVITY, Unit};
use standfast_core::wheels::loads;

/// C11, C12. Source: Mechanical Engineering Fundamentals, p. 181 (read; its dimensions inferred): a
/// 3,500 lb truck, centre 42 in behind the front axle, wheelbase 72 in, 800 lb of load 24 in ahead:
/// 887.5 lb on each rear wheel, 1,262.5 on each front one. The rear wheels go light at 6,125 lb.
#[test]
fn c11_c12_wheel_loads_of_a_loaded_truck() {
    let support = support(inches(72.0), inches(40.0), 0.0);
    let laden = |load: f64| points(&[(lb(3500.0), -inches(42.0), 0.6), (lb(load), inches(24.0), 0.5)]);
    let found = loads(&support, &laden(800.0), Field::LEVEL.total());
    near(lbf(found.steer) / 2.0, 887.5);
    near(lbf(found.left), 1262.5);
    near(lbf(found.right), 1262.5);
    let front = support.line(LineId::Front);
    let left = |load: f64| moment(&laden(load), &front, Field::LEVEL.total());
    assert!(left(6124.0) > 0.0 && left(6126.0) < 0.0);
    assert!(lbf(loads(&support, &laden(6125.0), Field::LEVEL.total()).steer).abs() < 1e-9);
}

/// C13. Source: Beer and Johnston, Statics, chapter 4 (memory, arithmetic checked): a 3,200 lb truck,
/// centre 24 in behind the front axle, wheelbase 36 in, a crate of 1,700 lb 16 in ahead: 1,761 lb on
/// each front wheel, 689 on each rear one.
#[test]
fn c13_wheel_loads_with_a_crate() {
    let bodies = points(&[(lb(3200.0), -inches(24.0), 0.6), (lb(1700.0), inches(16.0), 0.5)]);
    let found = loads(&support(inches(36.0), inches(40.0), 0.0), &bodies, Field::LEVEL.total());
    near(lbf(found.left), 1761.0);
    near(lbf(found.right), 1761.0);
    near(lbf(found.steer) / 2.0, 689.0);
}

/// C14. Source: Hibbeler, Dynamics, chapter 17 (memory, arithmetic checked): a 2,000 lb truck, centre
/// 3.5 ft behind the front axle and 2 ft high, 900 lb of load 4.25 ft ahead and 3.25 ft high, braking
/// from 9 ft/s: the rear wheels lift at 14.76 ft/s2, and it stops in 2.74 ft.
#[test]
fn c14_rear_wheels_lift_under_braking() {
    let bodies = points(&[(lb(2000.0), -feet(3.5), feet(2.0)), (lb(900.0), feet(4.25), feet(3.25))]);
    let support = support(feet(6.0), feet(3.0), 0.0);
    let front = support.line(LineId::Front);
    let level = Field::LEVEL.total();
    let of_g = critical(&bodies, &front, level, DVec3::X * GRAVITY).expect("tips under braking");
    let deceleration = of_g * GRAVITY;
    near(deceleration / feet(1.0), 14.76);
    let speed = feet(9.0);
    near(speed * speed / (2.0 * deceleration) / feet(1.0), 2.74);
    for (part, lifts) in [(0.995, false), (1.005, true)] {
        let w = Field::new(0.0, 0.0, -feet(14.76) * part, 0.0).total();
        assert_eq!(loads(&support, &bodies, w).steer < 0.0, lifts);
        assert_eq!(moment(&bodies, &front, w) < 0.0, lifts);
    }
}

/// C15. Source: Hibbeler, Dynamics (memory, arithmetic checked): a 10,000 lb truck, centre 4 ft behind
/// the front axle, wheelbase 10 ft, 2,000 lb of load 5 ft ahead, accelerated upward: it tips at
/// 96.6 ft/s2; at 4 ft/s2 each rear wheel bears 1.44 kip and each front wheel 4.69 kip.
///
/// Difference: the model has no vertical acceleration; a load accelerated upward weighs m (1 + a/g).
#[test]
fn c15_a_load_jerked_upward() {
    let support = support(feet(10.0), feet(5.0), 0.0);
    let jerked = |a: f64| {
        let counts = lb(2000.0) * (1.0 + a * feet(1.0) / GRAVITY);
        points(&[(lb(10_000.0), -feet(4.0), 1.0), (counts, feet(5.0), 1.0)])
    };
    let level = Field::LEVEL.total();
    let found = loads(&support, &jerked(4.0), level);
    near(lbf(found.steer) / 2000.0, 1.44);
    near(lbf(found.left) / 1000.0, 4.69);
    let front = support.line(LineId::Front);
    let tips = |a: f64| moment(&jerked(a), &front, level) < 0.0;
    assert!(!tips(96.6 * 0.995) && tips(96.6 * 1.005));
}

/// C16. Source: a physics exercise (read): 9,155 kg, centre 0.63 m ahead of the rear axle, wheelbase
/// 2.93 m, g 9.8: 19.29 kN on the front axle, 70.43 kN on the rear.
#[test]
fn c16_axle_loads_of_a_vehicle() {
    let bodies = points(&[(9155.0, 0.63 - 2.93, 1.0)]);
    let found = loads(&support(2.93, 1.8, 0.0), &bodies, DVec3::new(0.0, 0.0, -9.8));
    near((found.left + found.right) / 1000.0, 19.29);
    near(found.steer / 1000.0, 70.43);
}

/// C28, C29, C30. Sources: a published weight-and-balance example (read), 3,500 at 40 in and 5,500 at
/// 195 in balance at 134.72 in; 5,800 at 52 and 9,500 at 222 at 157.56 in; an aviation course (read),
/// 5 kg at 2 m and 10 kg at 5 m at 4.000 m.
///
/// Difference: the second publication prints 157.52 in, a slip of its own; the sum of its figures is 157.56.
#[test]
fn c28_c29_c30_common_centres() {
    let centre = |list: &[(f64, f64)], unit: Unit| {
        let list: Vec<_> = list.iter().map(|&(m, x)| (m, unit.to_document(x), 0.0)).collect();
        unit.from_document(points(&list).centre(false).1.x)
    };
    assert!((centre(&[(3500.0, 40.0), (5500.0, 195.0)], Unit::Inch) - 134.72).abs() < 0.005);
    assert!((centre(&[(5800.0, 52.0), (9500.0, 222.0)], Unit::Inch) - 157.56).abs() < 0.005);
    exact(centre(&[(5.0, 2.0), (10.0, 5.0)], Unit::Metre), 4.0);
}
