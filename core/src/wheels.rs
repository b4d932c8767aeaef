//! Wheel and axle loads by statics.

use crate::body::Bodies;
use crate::support::Support;
use glam::DVec3;

/// What presses on the floor, N, as stated; negative where a wheel would have to be held down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelLoads {
    /// Left front wheel.
    pub left: f64,
    /// Right front wheel.
    pub right: f64,
    /// Steer wheel, or the whole steer axle.
    pub steer: f64,
}

/// Wheel loads in a field w.
///
/// The steer axle's by moments about the front line, all bodies counted. Between the front wheels by
/// moments about the truck's x axis on the ground: whatever pushes sideways at the rear goes through
/// the pivot at its height (level with the ground on three wheels), and the pivoting axle carries no
/// rolling moment of its own. Braking is taken as alike left and right.
pub fn loads(support: &Support, bodies: &Bodies, w: DVec3) -> WheelLoads {
    let (wheelbase, pivot) = (-support.steer.x, support.steer.z);
    let track = support.left.y - support.right.y;
    let axle_stays = |b: &&crate::body::Body| !(support.pivoting && b.id == crate::body::BodyId::SteerAxle);
    let all = || bodies.as_slice().iter();
    let down: f64 = all().map(|b| -b.mass.nominal * w.z).sum();
    // Moments about the front line: r x F along y, counted positive where it presses the steer wheel down.
    let steer = all().map(|b| b.mass.nominal * (b.at.z * -w.x + b.at.x * w.z)).sum::<f64>() / wheelbase;
    // Of what is hung on three points: yaw about the front axle gives the rear's part of the sideways push.
    let hung = || all().filter(axle_stays);
    let side_at_rear = hung().map(|b| b.mass.nominal * (b.at.x * w.y - b.at.y * w.x)).sum::<f64>() / -wheelbase;
    let roll = hung().map(|b| b.mass.nominal * (b.at.y * w.z - b.at.z * w.y)).sum::<f64>() + pivot * side_at_rear;
    let front = down - steer;
    let difference = -roll / (0.5 * track);
    WheelLoads { left: 0.5 * (front + difference), right: 0.5 * (front - difference), steer }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::GRAVITY;
    use approx::assert_relative_eq;

    fn truck(pivot: f64) -> Support {
        Support {
            left: DVec3::new(0.0, 0.5, 0.0),
            right: DVec3::new(0.0, -0.5, 0.0),
            steer: DVec3::new(-1.6, 0.0, pivot),
            pivoting: pivot > 0.0,
        }
    }

    /// Equilibrium of all forces and moments, solved by hand for one mass: left and right by where
    /// it stands, with and without a pivot.
    #[test]
    fn loads_add_up_and_balance() {
        let body = Bodies::points(&[(1000.0, DVec3::new(-0.9, 0.1, 0.6))]);
        let w = DVec3::new(0.0, 0.0, -GRAVITY);
        let found = loads(&truck(0.0), &body, w);
        assert_relative_eq!(found.steer, 1000.0 * GRAVITY * 0.9 / 1.6, max_relative = 1e-12);
        assert_relative_eq!(found.left + found.right + found.steer, 1000.0 * GRAVITY, max_relative = 1e-12);
        assert_relative_eq!(found.left - found.right, 1000.0 * GRAVITY * 0.1 / 0.5, max_relative = 1e-12);
    }

    /// Source: physics of the three supports; case C22: at the threshold k the inner front wheel is
    /// just light, for a pivot on the ground and at 0.30 m.
    #[test]
    fn a_front_wheel_goes_light_at_the_threshold() {
        for (pivot, k) in [(0.0, 0.365), (0.30, 0.507)] {
            let body = Bodies::points(&[(1000.0, DVec3::new(-0.9, 0.0, 0.6))]);
            let w = DVec3::new(0.0, k * GRAVITY, -GRAVITY);
            let found = loads(&truck(pivot), &body, w);
            assert!(found.right.abs() < 0.01 * 1000.0 * GRAVITY, "{found:?}");
            assert!(found.left > 0.2 * 1000.0 * GRAVITY);
        }
    }
}
