//! Slopes of the stability tests, and the closed form of the tilting platform.

use crate::{exact, near, points, support};
use standfast_core::field::Field;
use standfast_core::platform::{Reading, Test};
use standfast_core::statics::{critical, moment};
use standfast_core::support::LineId;
use standfast_core::units::{GRAVITY, slope_angle};

/// C17. Source: Japan, Ministry of Labour Notification 89 of 1972, art. 1 (read): 4, 18 and 6 % for a
/// truck of 2.5 t, 3.5, 18 and 6 % for one of 5 t; unladen sideways 15 + 1.1 x 20 = 37 % at 20 km/h.
#[test]
fn c17_platform_slopes() {
    for (rated, stacking) in [(2500.0, 0.04), (5000.0, 0.035)] {
        for reading in [Reading::Asked, Reading::Proven] {
            exact(Test::LongitudinalStacking.slope(rated, 20.0, reading), stacking);
            exact(Test::LongitudinalTravelling.slope(rated, 20.0, reading), 0.18);
            exact(Test::LateralStacking.slope(rated, 20.0, reading), 0.06);
        }
        exact(Test::LateralTravelling.slope(rated, 20.0, Reading::Proven), 0.37);
    }
    exact(Test::travelling_lift(2500.0), 0.3);
}

/// Source: Monash University, Forklift stability and other technical safety issues (read): the lateral
/// travelling slope is at most 40 % under 5 t, 50 % from there.
#[test]
fn c17_the_lateral_slope_is_capped() {
    for reading in [Reading::Asked, Reading::Proven] {
        exact(Test::LateralTravelling.slope(4999.0, 40.0, reading), 0.40);
        exact(Test::LateralTravelling.slope(5000.0, 40.0, reading), 0.50);
    }
    assert!(
        Test::LateralTravelling.slope(1800.0, 16.0, Reading::Asked)
            >= Test::LateralTravelling.slope(1800.0, 16.0, Reading::Proven)
    );
}

/// Source: percent of slope is the tangent (arithmetic): 4, 6, 18 and 40 % are 2.29, 3.43, 10.20 and
/// 21.80 degrees.
#[test]
fn c17_percent_is_the_tangent() {
    for (percent, degrees) in [(4.0, 2.29), (6.0, 3.43), (10.0, 5.71), (18.0, 10.20), (40.0, 21.80), (50.0, 26.57)] {
        near(slope_angle(percent / 100.0).to_degrees(), degrees);
    }
}

/// C22, on the platform. Source: closed form of three supports, plane trigonometry (arithmetic):
/// wheelbase 1.6, tread 1.0, centre 0.9 behind the front axle and 0.6 high; falling square to the line
/// from front wheel to steer axle in plan, it tips at 34.8 % with the pivot on the ground and at
/// 49.8 % with the pivot 0.30 m high.
#[test]
fn c22_platform_slope_of_a_pivoting_axle() {
    let bodies = points(&[(4000.0, -0.9, 0.6)]);
    for (pivot, percent) in [(0.0, 34.8), (0.30, 49.8)] {
        for id in [LineId::Left, LineId::Right] {
            let line = support(1.6, 1.0, pivot).line(id);
            let downhill = line.outward() * GRAVITY;
            let level = Field::LEVEL.total();
            let found = critical(&bodies, &line, level, downhill).expect("tips");
            near(100.0 * found, percent);
            let left = |slope: f64| moment(&bodies, &line, Field::platform(line.outward(), slope).total());
            assert!(left(0.995 * percent / 100.0) > 0.0 && left(1.005 * percent / 100.0) < 0.0);
        }
    }
}
