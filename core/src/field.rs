//! Slope and acceleration as one field: what pulls on every kilogram, in the truck's frame.

use crate::units::GRAVITY;
use glam::DVec3;

/// The pull on each kilogram, m/s^2, in the truck's frame: gravity on the slope less the truck's own
/// acceleration. Split in three so that a class can see each one's part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// As it would be on level ground: straight down.
    pub level: DVec3,
    /// What the slope adds to that.
    pub slope: DVec3,
    /// What the acceleration adds.
    pub acceleration: DVec3,
}

impl Field {
    /// Level ground, standing or at a steady speed.
    pub const LEVEL: Self =
        Self { level: DVec3::new(0.0, 0.0, -GRAVITY), slope: DVec3::ZERO, acceleration: DVec3::ZERO };

    /// On a grade `a` (rad, positive facing uphill) and a cross-fall `b` (rad, positive with the
    /// truck's left side the higher), accelerating by `ax`, `ay` (m/s^2; braking ahead is `ax < 0`, a
    /// left-hand bend `ay = v^2 / r`).
    ///
    /// The order of the two angles: the truck is pitched by the grade, and all of that is then rolled
    /// by the cross-fall about the level x axis (R = Rx(b) Ry(-a)), so that gravity stands in the
    /// truck at g (-sin a cos b, -sin b, -cos a cos b).
    ///
    /// ```
    /// use standfast_core::{field::Field, units::GRAVITY};
    /// let uphill = Field::new(0.1, 0.0, 0.0, 0.0).total();
    /// assert!(uphill.x < 0.0 && (uphill.length() - GRAVITY).abs() < 1e-12);
    /// assert!(Field::new(0.0, 0.1, 0.0, 0.0).total().y < 0.0); // left side high: it pulls right
    /// assert!(Field::new(0.0, 0.0, -2.0, 0.0).total().x > 0.0); // braking: it pulls forward
    /// ```
    pub fn new(grade: f64, cross_fall: f64, ax: f64, ay: f64) -> Self {
        let (sa, ca) = libm::sincos(grade);
        let (sb, cb) = libm::sincos(cross_fall);
        let gravity = DVec3::new(-sa * cb, -sb, -ca * cb) * GRAVITY;
        Self { level: Self::LEVEL.level, slope: gravity - Self::LEVEL.level, acceleration: DVec3::new(-ax, -ay, 0.0) }
    }

    /// On a tilted platform: the ground falls by `slope` (a tangent) towards `downhill`, a
    /// horizontal unit vector in the truck's frame.
    pub fn platform(downhill: DVec3, slope: f64) -> Self {
        let cos = 1.0 / libm::sqrt(1.0 + slope * slope);
        let gravity = (downhill * slope - DVec3::Z) * (GRAVITY * cos);
        Self { level: Self::LEVEL.level, slope: gravity - Self::LEVEL.level, acceleration: DVec3::ZERO }
    }

    /// All of it.
    pub fn total(&self) -> DVec3 {
        self.level + self.slope + self.acceleration
    }

    /// Grade (positive facing uphill) and cross-fall (positive with the left side the higher), tangents.
    pub fn tangents(&self) -> (f64, f64) {
        let gravity = self.level + self.slope;
        (gravity.x / gravity.z, -gravity.y / libm::sqrt(gravity.x * gravity.x + gravity.z * gravity.z))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::DMat3;

    /// The order stated in the docs, as rotations: uphill raises the nose (about -y), then the
    /// cross-fall raises the left side (about +x), against glam's own rotation matrices.
    #[test]
    fn gravity_is_the_rotation_stated() {
        let (a, b) = (0.17, -0.23);
        let truck_to_world = DMat3::from_rotation_x(b) * DMat3::from_rotation_y(-a);
        let expected = truck_to_world.transpose() * DVec3::new(0.0, 0.0, -GRAVITY);
        assert!((Field::new(a, b, 0.0, 0.0).total() - expected).length() < 1e-12);
    }

    #[test]
    fn the_slopes_are_read_back() {
        for (a, b) in [(0.0, 0.0), (0.12, 0.0), (-0.3, 0.0), (0.0, 0.05), (0.17, -0.23)] {
            let (grade, cross_fall) = Field::new(a, b, 1.5, -2.0).tangents();
            assert!((libm::atan(grade) - a).abs() < 1e-12 && (libm::atan(cross_fall) - b).abs() < 1e-12, "{a} {b}");
        }
    }

    #[test]
    fn a_platform_is_a_grade_or_a_cross_fall() {
        let downhill_ahead = Field::platform(DVec3::X, 0.18).total();
        assert!((downhill_ahead - Field::new(-libm::atan(0.18), 0.0, 0.0, 0.0).total()).length() < 1e-12);
        let downhill_left = Field::platform(DVec3::Y, 0.06).total();
        assert!((downhill_left - Field::new(0.0, -libm::atan(0.06), 0.0, 0.0).total()).length() < 1e-12);
    }

    /// Source: Techniques de l'Ingenieur A9202: a slope stands for an inertia force, tan slope = a / g.
    /// The direction of the pull is the same.
    #[test]
    fn a_slope_stands_for_an_acceleration() {
        let slope = Field::platform(DVec3::X, 0.18).total().normalize();
        let braking = Field::new(0.0, 0.0, -0.18 * GRAVITY, 0.0).total().normalize();
        assert!((slope - braking).length() < 1e-12);
    }

    /// Source: d'Alembert's principle; case C25: a centre 0.6 m high under 2.5 m/s^2 acts as if
    /// 0.1529 m further forward (g 9.81; 0.1530 with standard gravity).
    #[test]
    fn braking_moves_the_line_of_action() {
        let w = Field::new(0.0, 0.0, -2.5, 0.0).total();
        assert!((0.6 * w.x / -w.z - 0.1529).abs() < 0.005 * 0.1529);
    }
}
