//! Bends and braking: what an acceleration does to the line of action, and the work of going over.

use crate::{near, points, support};
use glam::DVec3;
use standfast_core::body::Bodies;
use standfast_core::field::Field;
use standfast_core::statics::{critical, energy_to_tip, moment};
use standfast_core::support::{Line, LineId};
use standfast_core::units::GRAVITY;
use standfast_core::wheels::loads;

/// C21. Source: NHTSA, static stability factor T / 2h (read): tread 1.0, height 0.6: 0.833.
#[test]
fn c21_static_stability_factor() {
    let bodies = points(&[(1500.0, -1.2, 0.6)]);
    let beside = Line::new(LineId::Left, DVec3::new(0.0, 0.5, 0.0), DVec3::new(-2.4, 0.5, 0.0), false);
    let level = Field::LEVEL.total();
    near(critical(&bodies, &beside, level, DVec3::Y * GRAVITY).expect("tips"), 0.833);
}

fn c22_threshold(pivot: f64, id: LineId) -> f64 {
    let line = support(1.6, 1.0, pivot).line(id);
    let sideways = if id == LineId::Left { DVec3::Y } else { DVec3::NEG_Y };
    let bodies = points(&[(4000.0, -0.9, 0.6)]);
    critical(&bodies, &line, Field::LEVEL.total(), sideways * GRAVITY).expect("tips")
}

/// C22. Source: closed form k = (T/2)(1 - a/L) / (h - hp a/L) (arithmetic): wheelbase 1.6, tread 1.0,
/// centre 0.9 behind the front axle and 0.6 high: 0.365 with the pivot on the ground, 0.507 at 0.30 m.
#[test]
fn c22_sideways_threshold() {
    for id in [LineId::Left, LineId::Right] {
        near(c22_threshold(0.0, id), 0.365);
        near(c22_threshold(0.30, id), 0.507);
    }
}

/// C23. Source: sqrt(g R k) (arithmetic): on a radius of 2.0 m the trucks of C22 tip at 9.63 and
/// 11.36 km/h, outward: in a left-hand bend over the right side.
#[test]
fn c23_speed_that_tips_in_a_bend() {
    let (radius, bodies) = (2.0, points(&[(4000.0, -0.9, 0.6)]));
    for (pivot, kmh) in [(0.0, 9.63), (0.30, 11.36)] {
        let support = support(1.6, 1.0, pivot);
        near(libm::sqrt(GRAVITY * radius * c22_threshold(pivot, LineId::Right)) * 3.6, kmh);
        for (part, tips) in [(0.995, false), (1.005, true)] {
            let speed = part * kmh / 3.6;
            let left_hand = Field::new(0.0, 0.0, 0.0, speed * speed / radius).total();
            let over = |id| moment(&bodies, &support.line(id), left_hand) < 0.0;
            assert_eq!(over(LineId::Right), tips, "{kmh} km/h x {part}");
            assert!(!over(LineId::Left) && !over(LineId::Front));
            assert_eq!(loads(&support, &bodies, left_hand).left < 0.0, tips);
        }
    }
}

/// C24. Source: Messuri and Klein 1985, energy stability margin (arithmetic, g 9.81): 4,000 kg with its
/// centre 0.9 m inside and 0.6 m high takes 18,900 J to tip.
#[test]
fn c24_energy_to_tip() {
    near(energy_to_tip(4000.0, 0.9, 0.6, 9.81), 18_900.0);
}

/// C25. Source: d'Alembert's principle (arithmetic): a centre 0.6 m high braking at 2.5 m/s2 stands as if
/// it were 0.1529 m further forward: about a line just there its moment vanishes.
#[test]
fn c25_braking_moves_the_line_of_action_forward() {
    let braking = Field::new(0.0, 0.0, -2.5, 0.0).total();
    let bodies = Bodies::points(&[(1000.0, DVec3::new(-0.9, 0.0, 0.6))]);
    let about = |shift: f64| {
        let x = -0.9 + shift;
        let line = Line::new(LineId::Front, DVec3::new(x, -0.5, 0.0), DVec3::new(x, 0.5, 0.0), false);
        moment(&bodies, &line, braking)
    };
    assert!(about(0.1529 * 0.995) < 0.0 && about(0.1529 * 1.005) > 0.0);
}
