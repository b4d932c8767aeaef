//! The bodies that a truck and its load are made of, each placed for one pose.

use crate::scalar::{Region, Span};
use crate::scenario;
use crate::scenario::Load;
use glam::{DMat3, DVec2, DVec3};
use serde::Serialize;

/// A body's name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BodyId {
    /// Chassis with counterweight, less all that follows.
    Chassis,
    /// The battery fitted.
    Battery,
    /// Operator.
    Operator,
    /// A pivoting steer axle with its wheels.
    SteerAxle,
    /// Fixed mast section.
    MastOuter,
    /// Moving mast section, from 0.
    MastStage(usize),
    /// Fork carriage.
    Carriage,
    /// Pair of forks.
    Forks,
    /// Pair of fork extensions.
    Extensions,
    /// Attachment.
    Attachment,
    /// The load.
    Load,
}

/// One body in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Which.
    pub id: BodyId,
    /// Its mass as stated and the range it may have, kg.
    pub mass: Span,
    /// Its centre of gravity as stated, m, in the truck's frame.
    pub at: DVec3,
}

/// The most bodies there can be.
pub const MOST_BODIES: usize = 14;

/// Masses added up: kg, and kg m about the origin.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sum {
    /// All masses.
    pub mass: f64,
    /// Each mass times its place.
    pub moment: DVec3,
}

impl Sum {
    /// With one more mass.
    pub fn with(self, mass: f64, at: DVec3) -> Self {
        Self { mass: self.mass + mass, moment: self.moment + at * mass }
    }
}

/// All bodies of one pose as stated, added up.
#[derive(Clone, Debug)]
pub struct Bodies {
    list: Vec<Body>,
    /// All but a pivoting steer axle.
    stated: Sum,
    /// A pivoting steer axle.
    axle: Sum,
}

impl Bodies {
    fn new() -> Self {
        let zero = Sum::default();
        Self { list: Vec::with_capacity(MOST_BODIES), stated: zero, axle: zero }
    }

    /// Point masses alone, kg and m, for worked examples: at most [`MOST_BODIES`] of them.
    pub fn points(list: &[(f64, DVec3)]) -> Self {
        let mut bodies = Self::new();
        for &(mass, at) in list {
            bodies.push(BodyId::Chassis, Span::exact(mass), at);
        }
        bodies
    }

    fn push(&mut self, id: BodyId, mass: Span, at: DVec3) {
        if self.list.len() == MOST_BODIES {
            return;
        }
        self.list.push(Body { id, mass, at });
        let sum = if id == BodyId::SteerAxle { &mut self.axle } else { &mut self.stated };
        *sum = sum.with(mass.nominal, at);
    }

    /// The bodies.
    pub fn as_slice(&self) -> &[Body] {
        &self.list
    }

    /// Added up as stated, with or without a pivoting axle.
    pub fn stated(&self, leaves_axle: bool) -> Sum {
        let (sum, axle) = (self.stated, self.axle);
        if leaves_axle { sum } else { Sum { mass: sum.mass + axle.mass, moment: sum.moment + axle.moment } }
    }

    /// Their mass and common centre of gravity as stated; the origin where there is no mass.
    pub fn centre(&self, leaves_axle: bool) -> (f64, DVec3) {
        let Sum { mass, moment } = self.stated(leaves_axle);
        (mass, if mass > 0.0 { moment / mass } else { DVec3::ZERO })
    }
}

/// How the mast, and the truck with it, is set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Height of the fork blades above the ground, m.
    pub lift: f64,
    /// Tilt as a truck's display shows it, rad: back negative, forward positive.
    pub tilt: f64,
    /// Forward lean of the loaded mast on top of that, rad.
    pub lean: f64,
    /// Sideways lean, rad, positive to the truck's right (a rotation about +x lifts the left).
    pub sway: f64,
    /// Sideshift to the left, m.
    pub sideshift: f64,
}

impl Pose {
    /// Where a point of the tilting part goes, given where it is with the mast upright.
    pub fn place(&self, pivot: DVec3, upright: DVec3) -> DVec3 {
        pivot + self.rotation() * (upright - pivot)
    }

    /// Tilt and lean about +y, after the sway about +x.
    pub fn rotation(&self) -> DMat3 {
        turned(libm::sincos(self.tilt + self.lean), libm::sincos(self.sway))
    }
}

/// Turned about +y by one angle, after a turn about +x by another: each as its sine and cosine.
pub fn turned(about_y: (f64, f64), about_x: (f64, f64)) -> DMat3 {
    let (s, c) = about_y;
    let about_y = DMat3::from_cols(DVec3::new(c, 0.0, -s), DVec3::Y, DVec3::new(s, 0.0, c));
    let (s, c) = about_x;
    about_y * DMat3::from_cols(DVec3::X, DVec3::new(0.0, c, s), DVec3::new(0.0, -s, c))
}

/// A load on the forks: its mass, where its centre stands from the face at the heel, and how sure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// Its mass.
    pub mass: Span,
    /// Centre ahead of the fork (or attachment) face, left of the middle of the forks, above the blades.
    pub centre: Region,
}

impl Placed {
    /// The load of a lift, heel gap and offset counted in. The stated load centre is the heel gap as
    /// stated and the load's centre as stated together.
    pub fn of(load: &Load, lift: &scenario::Lift) -> Self {
        let (x, y, z) = (load.centre.x(), load.centre.y(), load.centre.z());
        Self { mass: load.mass, centre: Region::of(x.plus(lift.heel_gap), y.plus(lift.offset), z) }
    }

    /// A platform test's load: a cube, its centre as far ahead of the fork face as above the blades.
    ///
    /// Source: GOST R 50609 (the same test load as ISO 22915-2).
    pub fn cube(capacity: f64, load_centre: f64) -> Self {
        let at = DVec3::new(load_centre, 0.0, load_centre);
        Self { mass: Span::exact(capacity), centre: Region::about(at, DVec3::ZERO) }
    }
}

/// A truck with its balance settled: where its centre, and that of the chassis, may be.
#[derive(Clone, Debug, PartialEq)]
pub struct Rig {
    /// Chassis alone: its mass.
    pub chassis: f64,
    /// Its centre as stated or in the middle of what was inferred.
    pub chassis_at: DVec3,
    /// Corners (x, z) of where the unladen truck's centre may be; one where it is known.
    pub whole: Vec<DVec2>,
}

/// Whether the battery is the one stated or the one fitted, who sits on the truck, and which front end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Outfit {
    /// As it stands today, nobody to the full operator's weight.
    Today,
    /// As the plate was tested: stated battery, the plate's front end, `operator` kg.
    Tested {
        /// Weight of the operator.
        operator: f64,
    },
}

/// A pose as stated, and how far lift, tilt and sideshift may be from it: ranges about nothing, m and rad.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Setting {
    /// As stated.
    pub pose: Pose,
    /// Lift.
    pub lift: Span,
    /// Tilt.
    pub tilt: Span,
    /// Sideshift.
    pub sideshift: Span,
}

impl Setting {
    /// Nothing uncertain about it.
    pub fn exact(pose: Pose) -> Self {
        let sure = Span::exact(0.0);
        Self { pose, lift: sure, tilt: sure, sideshift: sure }
    }
}

mod truck;

#[cfg(test)]
mod tests;
