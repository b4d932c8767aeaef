//! The bodies that a truck and its load are made of, each placed for one pose.

use crate::document::PlateFor;
use crate::rules;
use crate::scalar::{Region, Span};
use crate::scenario;
use crate::scenario::{Load, Truck};
use glam::{DMat3, DVec3};
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

/// One body in its place, with all it may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body<'a> {
    /// Which.
    pub id: BodyId,
    /// Its mass, kg.
    pub mass: Span,
    /// Its centre of gravity as stated, m, in the truck's frame.
    pub at: DVec3,
    /// Other places where the centre may be; empty for none.
    pub others: &'a [DVec3],
    /// The middle of the box it may lie in, from there; zero where the stated centre is the middle.
    pub skew: DVec3,
    /// Half-edges of that box, about each of those places; `None` for no box.
    pub half_edges: Option<[DVec3; 3]>,
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

/// All bodies of one pose, with those that are known exactly added up beforehand.
#[derive(Clone, Debug)]
pub struct Bodies<'a> {
    list: Vec<Body<'a>>,
    /// All as stated, but for a steer axle.
    stated: Sum,
    /// Those with nothing uncertain about them, but for a steer axle.
    exact: Sum,
    /// A bit for each that is not.
    uncertain: u16,
    /// A pivoting steer axle.
    axle: Sum,
}

impl<'a> Bodies<'a> {
    fn new() -> Self {
        let zero = Sum::default();
        Self { list: Vec::with_capacity(MOST_BODIES), stated: zero, exact: zero, uncertain: 0, axle: zero }
    }

    /// Point masses alone, kg and m, for worked examples: at most [`MOST_BODIES`] of them.
    pub fn points(list: &[(f64, DVec3)]) -> Self {
        let mut bodies = Self::new();
        for &(mass, at) in list {
            bodies.exact(BodyId::Chassis, mass, at);
        }
        bodies
    }

    // Inlined so that a body is written where it stays, not copied there.
    #[inline(always)]
    fn push(&mut self, body: Body<'a>) {
        if self.list.len() == MOST_BODIES {
            return;
        }
        self.list.push(body);
        if body.id == BodyId::SteerAxle {
            self.axle = self.axle.with(body.mass.nominal, body.at);
        } else {
            self.stated = self.stated.with(body.mass.nominal, body.at);
            if body.is_exact() {
                self.exact = self.exact.with(body.mass.nominal, body.at);
            } else {
                self.uncertain |= 1 << (self.list.len() - 1);
            }
        }
    }

    #[inline]
    fn exact(&mut self, id: BodyId, mass: f64, at: DVec3) {
        self.push(Body { id, mass: Span::exact(mass), at, others: &[], skew: DVec3::ZERO, half_edges: None });
    }

    /// The bodies.
    pub fn as_slice(&self) -> &[Body<'a>] {
        &self.list
    }

    /// Added up as stated, with or without a pivoting axle.
    pub fn stated(&self, leaves_axle: bool) -> Sum {
        self.and_axle(self.stated, leaves_axle)
    }

    /// Those known exactly, added up, with or without a pivoting axle, and the rest.
    pub fn exact_and_uncertain(&self, leaves_axle: bool) -> (Sum, impl Iterator<Item = &Body<'a>>) {
        let mut bits = self.uncertain;
        let uncertain = std::iter::from_fn(move || {
            let next = bits.trailing_zeros() as usize;
            bits &= bits.wrapping_sub(1);
            self.as_slice().get(next)
        });
        (self.and_axle(self.exact, leaves_axle), uncertain)
    }

    /// Every body, and whether anything about it is uncertain.
    pub fn with_doubt(&self) -> impl Iterator<Item = (&Body<'a>, bool)> {
        self.as_slice().iter().enumerate().map(|(k, b)| (b, self.uncertain & (1 << k) != 0))
    }

    fn and_axle(&self, sum: Sum, leaves_axle: bool) -> Sum {
        if leaves_axle { sum } else { Sum { mass: sum.mass + self.axle.mass, moment: sum.moment + self.axle.moment } }
    }

    /// Their mass and common centre of gravity as stated; the origin where there is no mass.
    pub fn centre(&self, leaves_axle: bool) -> (f64, DVec3) {
        let Sum { mass, moment } = self.stated(leaves_axle);
        (mass, if mass > 0.0 { moment / mass } else { DVec3::ZERO })
    }
}

impl Body<'_> {
    /// Whether there is nothing uncertain about it.
    pub fn is_exact(&self) -> bool {
        self.mass.is_exact() && self.others.is_empty() && self.half_edges.is_none()
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
        let (s, c) = libm::sincos(self.tilt + self.lean);
        let about_y = DMat3::from_cols(DVec3::new(c, 0.0, -s), DVec3::Y, DVec3::new(s, 0.0, c));
        let (s, c) = libm::sincos(self.sway);
        let about_x = DMat3::from_cols(DVec3::X, DVec3::new(0.0, c, s), DVec3::new(0.0, -s, c));
        about_y * about_x
    }
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

/// A truck with its balance settled: where the chassis' centre may be.
#[derive(Clone, Debug, PartialEq)]
pub struct Rig {
    /// Chassis alone: its mass.
    pub chassis: f64,
    /// Its centre as stated or in the middle of what was inferred.
    pub chassis_at: DVec3,
    /// All corners of what was inferred; empty where it is known.
    pub corners: Vec<DVec3>,
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

impl Truck {
    /// Whether the front end that a plate was issued for has the attachment.
    fn plate_has_attachment(&self) -> bool {
        self.plate.as_ref().is_some_and(|p| p.issued_for == PlateFor::Attachment)
    }

    /// How far the face that carries the load stands ahead of the front axle with the mast upright, m.
    pub fn face(&self, outfit: Outfit) -> f64 {
        self.load_distance + self.fitted(outfit).map_or(0.0, |a| a.lost_load)
    }

    fn fitted(&self, outfit: Outfit) -> Option<&scenario::Attachment> {
        self.attachment.as_ref().filter(|_| outfit == Outfit::Today || self.plate_has_attachment())
    }

    /// Parts that the service weight includes, stowed: forks down, mast upright. (mass, place)
    fn stowed(&self) -> impl Iterator<Item = (f64, DVec3)> + '_ {
        self.parts(&Pose { lift: 0.0, tilt: 0.0, lean: 0.0, sway: 0.0, sideshift: 0.0 })
            .map(|(_, mass, at)| (mass, at))
            .chain(std::iter::once((self.battery.stated, self.battery.at)))
            .chain(self.axle_body().map(|(_, mass, at)| (mass, at)))
    }

    fn axle_body(&self) -> Option<(BodyId, f64, DVec3)> {
        let at = DVec3::new(-self.wheelbase, 0.0, rules::STEER_AXLE_HEIGHT.value);
        self.axle.as_ref().map(|a| (BodyId::SteerAxle, a.mass, at))
    }

    /// Mast, carriage and forks for a pose, in the truck's frame.
    fn parts<'s>(&'s self, pose: &Pose) -> impl Iterator<Item = (BodyId, f64, DVec3)> + use<'s> {
        let (mast, forks, pose) = (&self.mast, &self.forks, *pose);
        let mast_x = self.load_distance - rules::MAST_BEHIND_FACE.value;
        let middle = 0.5 * mast.lowered;
        let rise = (pose.lift - mast.free_lift).max(0.0);
        let rotation = pose.rotation();
        let outer = (BodyId::MastOuter, mast.outer, DVec3::new(mast_x, 0.0, middle));
        let stages = mast.stages.iter().enumerate().map(move |(k, &(mass, ratio))| {
            (BodyId::MastStage(k), mass, DVec3::new(mast_x, 0.0, middle + ratio * rise))
        });
        let carriage_x = self.load_distance - rules::CARRIAGE_BEHIND_FACE.value;
        let carriage = DVec3::new(carriage_x, pose.sideshift, pose.lift + rules::CARRIAGE_ABOVE_FORKS.value);
        let forks_x = self.load_distance + rules::FORKS_AHEAD.value * forks.length;
        let blades = DVec3::new(forks_x, pose.sideshift, pose.lift);
        std::iter::once(outer)
            .chain(stages)
            .chain([(BodyId::Carriage, forks.carriage, carriage), (BodyId::Forks, forks.pair, blades)])
            .map(move |(id, mass, at)| (id, mass, mast.pivot + rotation * (at - mast.pivot)))
    }

    /// The chassis that, with all the parts stowed, has its common centre at `whole` (x, 0, z).
    ///
    /// The axle loads and the centre's height are those of the service weight with the battery it
    /// was stated with; another battery is a change of bodies, not of scale.
    pub fn chassis(&self, whole: DVec3) -> (f64, DVec3) {
        let (parts, moment) = self.stowed().fold((0.0, DVec3::ZERO), |(m, s), (mass, at)| (m + mass, s + mass * at));
        let mass = self.service - parts;
        (mass, (self.service * whole - moment) / mass)
    }

    /// Every body of the truck in a pose, with its load.
    pub fn bodies<'r>(&self, rig: &'r Rig, pose: &Pose, outfit: Outfit, load: Option<&Placed>) -> Bodies<'r> {
        let mut bodies = Bodies::new();
        let (fitted, operator) = match outfit {
            Outfit::Today => (self.battery.fitted, Span { lo: 0.0, nominal: self.operator, hi: self.operator }),
            Outfit::Tested { operator } => (Span::exact(self.battery.stated), Span::exact(operator)),
        };
        // A battery whose place is only assumed shifts the chassis the other way: what is left over
        // is the difference of the two batteries, at the ends of its own range.
        let swapped = [fitted.lo, fitted.hi].map(|m| (m - self.battery.stated).abs());
        let edge = self.battery.spread * (swapped[0].max(swapped[1]) / rig.chassis);
        bodies.push(Body {
            id: BodyId::Chassis,
            mass: Span::exact(rig.chassis),
            at: rig.chassis_at,
            others: &rig.corners,
            skew: DVec3::ZERO,
            half_edges: (edge != DVec3::ZERO).then(|| [DVec3::X * edge.x, DVec3::Y * edge.y, DVec3::Z * edge.z]),
        });
        bodies.push(Body {
            id: BodyId::Battery,
            mass: fitted,
            at: self.battery.at,
            others: &[],
            skew: DVec3::ZERO,
            half_edges: None,
        });
        let seat = DVec3::new(-rules::OPERATOR_BEHIND.value * self.wheelbase, 0.0, rules::OPERATOR_HEIGHT.value);
        bodies.push(Body {
            id: BodyId::Operator,
            mass: operator,
            at: seat,
            others: &[],
            skew: DVec3::ZERO,
            half_edges: None,
        });
        if let Some((id, mass, at)) = self.axle_body() {
            bodies.exact(id, mass, at);
        }
        for (id, mass, at) in self.parts(pose) {
            bodies.exact(id, mass, at);
        }
        if let Some(a) = self.fitted(outfit) {
            let upright = DVec3::new(self.load_distance + a.ahead, pose.sideshift, pose.lift + a.above);
            bodies.exact(BodyId::Attachment, a.mass, pose.place(self.mast.pivot, upright));
        }
        if let (Some((length, mass)), Outfit::Today) = (self.forks.extension, outfit) {
            let upright = DVec3::new(self.face(outfit) + 0.5 * length, pose.sideshift, pose.lift);
            bodies.exact(BodyId::Extensions, mass, pose.place(self.mast.pivot, upright));
        }
        if let Some(load) = load {
            let rotation = pose.rotation();
            let upright = DVec3::new(self.face(outfit), pose.sideshift, pose.lift) + load.centre.at;
            let (half, skew) = (load.centre.half_edges(), load.centre.skew());
            bodies.push(Body {
                id: BodyId::Load,
                mass: load.mass,
                at: self.mast.pivot + rotation * (upright - self.mast.pivot),
                others: &[],
                skew: rotation * skew,
                half_edges: (half != DVec3::ZERO).then(|| {
                    let DVec3 { x, y, z } = half;
                    [rotation.x_axis * x, rotation.y_axis * y, rotation.z_axis * z]
                }),
            });
        }
        bodies
    }
}

#[cfg(test)]
mod tests;
