//! The simple solids that a load is built from: volume, centroid, extents, outlines.
//!
//! In the load's own frame, m: x ahead, y left, z up. A solid stands where the low corner of its box
//! is in x and z and the middle of its box in y.

use crate::document::Facing;
use crate::polygon;
use glam::{DVec2, DVec3};
use std::f64::consts::{PI, TAU};

mod feet;
mod inside;

pub use feet::{on, without};

/// A solid about its own axis: u and v square to it, w along it from 0.
#[derive(Clone, Debug, PartialEq)]
pub enum Form {
    /// Any outline in (u, v), from w = 0 to `length`.
    Prism {
        /// The outline.
        outline: Vec<DVec2>,
        /// Along the axis.
        length: f64,
    },
    /// Round all through.
    Cylinder {
        /// Outer diameter.
        diameter: f64,
        /// Of a hole all through; 0 for none.
        bore: f64,
        /// Along the axis.
        length: f64,
    },
    /// With its foot at w = 0 and its point at `length`.
    Cone {
        /// Of the foot.
        diameter: f64,
        /// Along the axis.
        length: f64,
    },
    /// A sphere.
    Sphere {
        /// Its diameter.
        diameter: f64,
    },
    /// Flat at w = 0, domed towards +w.
    HalfSphere {
        /// Its diameter.
        diameter: f64,
    },
}

/// A solid in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Solid {
    form: Form,
    facing: Facing,
    /// Where the solid's own origin is.
    origin: DVec3,
}

/// The three outlines of a solid.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Silhouette {
    /// From above: ahead, left.
    pub plan: Vec<DVec2>,
    /// From the truck's right side: ahead, up.
    pub side: Vec<DVec2>,
    /// As the driver sees it: left, up.
    pub front: Vec<DVec2>,
}

/// A circle is drawn with so many corners; a multiple of four, so that it reaches its extremes.
const CORNERS: u32 = 32;
/// An edge of a prism is looked at in so many places.
const ON_EDGE: u32 = 8;

impl Form {
    /// A box with its axis upright.
    pub fn block(size: DVec3) -> Self {
        let DVec3 { x, y, z } = size;
        Self::Prism { outline: rectangle(x, y), length: z }
    }

    /// A wedge: a box cut in half along a slope, with its high side as it says; none up or down.
    /// Returns the prism it is and the way that prism's axis points.
    pub fn wedge(size: DVec3, high: Facing) -> Option<(Self, Facing)> {
        let DVec3 { x: l, y: w, z: h } = size;
        let triangle = |across: f64, high: f64| vec![DVec2::ZERO, DVec2::new(across, 0.0), DVec2::new(high, h)];
        match high {
            Facing::Heel => Some((Self::Prism { outline: triangle(l, 0.0), length: w }, Facing::Left)),
            Facing::Ahead => Some((Self::Prism { outline: triangle(l, l), length: w }, Facing::Left)),
            Facing::Left => Some((Self::Prism { outline: triangle(w, w), length: l }, Facing::Ahead)),
            Facing::Right => Some((Self::Prism { outline: triangle(w, 0.0), length: l }, Facing::Ahead)),
            Facing::Up | Facing::Down => None,
        }
    }

    /// Volume.
    pub fn volume(&self) -> f64 {
        match self {
            Self::Prism { outline, length } => polygon::area_and_centroid(outline).0 * length,
            Self::Cylinder { diameter, bore, length } => PI / 4.0 * (diameter * diameter - bore * bore) * length,
            Self::Cone { diameter, length } => PI / 12.0 * diameter * diameter * length,
            Self::Sphere { diameter } => PI / 6.0 * diameter * diameter * diameter,
            Self::HalfSphere { diameter } => PI / 12.0 * diameter * diameter * diameter,
        }
    }

    /// The least and the greatest volume when every size may be out by `off`, and a bore by as much
    /// the other way.
    pub fn volumes(&self, off: f64) -> (f64, f64) {
        let grown = |by: f64| {
            let more = |size: f64| (size + by).max(0.0);
            match self {
                Self::Prism { outline, length } => {
                    let round = perimeter(outline);
                    (polygon::area_and_centroid(outline).0 + 0.5 * round * by + by * by.abs()).max(0.0) * more(*length)
                }
                Self::Cylinder { diameter, bore, length } => {
                    let bore = if *bore > 0.0 { (bore - by).max(0.0) } else { 0.0 };
                    Self::Cylinder { diameter: more(*diameter), bore, length: more(*length) }.volume().max(0.0)
                }
                Self::Cone { diameter, length } => {
                    Self::Cone { diameter: more(*diameter), length: more(*length) }.volume()
                }
                Self::Sphere { diameter } => Self::Sphere { diameter: more(*diameter) }.volume(),
                Self::HalfSphere { diameter } => Self::HalfSphere { diameter: more(*diameter) }.volume(),
            }
        };
        (grown(-off).min(self.volume()), grown(off).max(self.volume()))
    }

    /// Centroid (u, v, w). Sources: Gere, Mechanics of Materials, and any statics table: a cone a
    /// quarter of its height above its foot, half a sphere three eighths of its radius.
    pub fn centroid(&self) -> DVec3 {
        match self {
            Self::Prism { outline, length } => polygon::area_and_centroid(outline).1.extend(0.5 * length),
            Self::Cylinder { length, .. } => DVec3::Z * (0.5 * length),
            Self::Cone { length, .. } => DVec3::Z * (0.25 * length),
            Self::Sphere { diameter } => DVec3::Z * (0.5 * diameter),
            Self::HalfSphere { diameter } => DVec3::Z * (0.1875 * diameter),
        }
    }

    /// Its least box (u, v, w).
    fn extents(&self) -> (DVec3, DVec3) {
        let round = |d: f64, w: f64| (DVec3::new(-0.5 * d, -0.5 * d, 0.0), DVec3::new(0.5 * d, 0.5 * d, w));
        match self {
            Self::Prism { outline, length } => {
                let (lo, hi) = polygon::extents(outline);
                (lo.extend(0.0), hi.extend(*length))
            }
            Self::Cylinder { diameter, length, .. } | Self::Cone { diameter, length } => round(*diameter, *length),
            Self::Sphere { diameter } => round(*diameter, *diameter),
            Self::HalfSphere { diameter } => round(*diameter, 0.5 * diameter),
        }
    }

    /// Whether a point (u, v, w) lies in it or within `eps` of it.
    fn contains(&self, p: DVec3, eps: f64) -> bool {
        let across = DVec2::new(p.x, p.y);
        let along = |length: f64| p.z >= -eps && p.z <= length + eps;
        match self {
            Self::Prism { outline, length } => along(*length) && polygon::contains(outline, across, eps),
            Self::Cylinder { diameter, bore, length } => {
                let r = across.length();
                along(*length) && r <= 0.5 * diameter + eps && r >= 0.5 * bore - eps
            }
            Self::Cone { diameter, length } => {
                along(*length) && across.length() <= 0.5 * diameter * (1.0 - p.z / length).max(0.0) + eps
            }
            Self::Sphere { diameter } => (p - DVec3::Z * (0.5 * diameter)).length() <= 0.5 * diameter + eps,
            Self::HalfSphere { diameter } => p.z >= -eps && p.length() <= 0.5 * diameter + eps,
        }
    }

    /// Points on its edges and round it.
    fn rim(&self) -> Vec<DVec3> {
        let circle = |r: f64, w: f64| {
            (0..CORNERS).map(move |k| {
                let (s, c) = libm::sincos(TAU * f64::from(k) / f64::from(CORNERS));
                DVec3::new(r * c, r * s, w)
            })
        };
        // Half a circle from pole to pole in the u-w and v-w planes.
        let arcs = |r: f64, middle: f64, least: f64| {
            circle(r, 0.0)
                .filter(move |p| p.y >= least)
                .flat_map(move |p| [DVec3::new(p.x, 0.0, middle + p.y), DVec3::new(0.0, p.x, middle + p.y)])
        };
        match self {
            Self::Prism { outline, length } => {
                let places = polygon::edges(outline)
                    .flat_map(|(a, b)| (0..ON_EDGE).map(move |k| a.lerp(b, f64::from(k) / f64::from(ON_EDGE))));
                places.flat_map(|p| [p.extend(0.0), p.extend(*length)]).collect()
            }
            Self::Cylinder { diameter, length, .. } => {
                circle(0.5 * diameter, 0.0).chain(circle(0.5 * diameter, *length)).collect()
            }
            Self::Cone { diameter, length } => circle(0.5 * diameter, 0.0).chain([DVec3::Z * *length]).collect(),
            Self::Sphere { diameter } => {
                let r = 0.5 * diameter;
                circle(r, r).chain(arcs(r, r, -f64::INFINITY)).collect()
            }
            Self::HalfSphere { diameter } => {
                circle(0.5 * diameter, 0.0).chain(arcs(0.5 * diameter, 0.0, 0.0)).collect()
            }
        }
    }
}

/// The length of an outline.
fn perimeter(outline: &[DVec2]) -> f64 {
    polygon::edges(outline).map(|(a, b)| a.distance(b)).sum()
}

/// A rectangle about the origin.
fn rectangle(x: f64, y: f64) -> Vec<DVec2> {
    [(-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5)].map(|(a, b)| DVec2::new(a * x, b * y)).to_vec()
}

/// From (u, v, w) to the load's directions.
///
/// A mirrored axis is the same solid to look at: only the way w points matters.
fn turned(facing: Facing, DVec3 { x: u, y: v, z: w }: DVec3) -> DVec3 {
    match facing {
        Facing::Up => DVec3::new(u, v, w),
        Facing::Down => DVec3::new(u, v, -w),
        Facing::Left => DVec3::new(u, w, v),
        Facing::Right => DVec3::new(u, -w, v),
        Facing::Ahead => DVec3::new(w, u, v),
        Facing::Heel => DVec3::new(-w, u, v),
    }
}

/// And back.
fn unturned(facing: Facing, DVec3 { x, y, z }: DVec3) -> DVec3 {
    match facing {
        Facing::Up => DVec3::new(x, y, z),
        Facing::Down => DVec3::new(x, y, -z),
        Facing::Left => DVec3::new(x, z, y),
        Facing::Right => DVec3::new(x, z, -y),
        Facing::Ahead => DVec3::new(y, z, x),
        Facing::Heel => DVec3::new(y, z, -x),
    }
}

impl Solid {
    /// A form with its axis pointing a way, its box's nearest side at `place.x`, its middle at
    /// `place.y`, its underside at `place.z`.
    pub fn new(form: Form, facing: Facing, place: DVec3) -> Self {
        let solid = Self { form, facing, origin: DVec3::ZERO };
        let (lo, hi) = solid.extents();
        Self { origin: place - DVec3::new(lo.x, 0.5 * (lo.y + hi.y), lo.z), ..solid }
    }

    /// Another form about this one's own axis and origin: a hole that was drawn with its outline.
    pub fn within(outer: &Self, form: Form) -> Self {
        Self { form, ..outer.clone() }
    }

    /// Volume, m^3.
    pub fn volume(&self) -> f64 {
        self.form.volume()
    }

    /// The least and the greatest volume when every size may be out by `off`, m^3.
    pub fn volumes(&self, off: f64) -> (f64, f64) {
        self.form.volumes(off)
    }

    /// Centroid.
    pub fn centroid(&self) -> DVec3 {
        self.origin + turned(self.facing, self.form.centroid())
    }

    /// The corners of its least box.
    pub fn extents(&self) -> (DVec3, DVec3) {
        let (lo, hi) = self.form.extents();
        let (a, b) = (self.origin + turned(self.facing, lo), self.origin + turned(self.facing, hi));
        (a.min(b), a.max(b))
    }

    /// Points on its edges and round it.
    pub fn rim(&self) -> impl Iterator<Item = DVec3> + '_ {
        self.form.rim().into_iter().map(|p| self.origin + turned(self.facing, p))
    }

    /// How it looks from above, from the side and from the front.
    pub fn silhouette(&self) -> Silhouette {
        // A prism's corners are enough.
        let rim: Vec<DVec3> = match &self.form {
            Form::Prism { outline, length } => {
                let ends = outline.iter().flat_map(|p| [p.extend(0.0), p.extend(*length)]);
                ends.map(|p| self.origin + turned(self.facing, p)).collect()
            }
            _ => self.rim().collect(),
        };
        let seen = |a: fn(&DVec3) -> DVec2| polygon::hull(&rim.iter().map(a).collect::<Vec<_>>());
        let plan: fn(&DVec3) -> DVec2 = |p| DVec2::new(p.x, p.y);
        let side: fn(&DVec3) -> DVec2 = |p| DVec2::new(p.x, p.z);
        let front: fn(&DVec3) -> DVec2 = |p| DVec2::new(p.y, p.z);
        let mut seen = Silhouette { plan: seen(plan), side: seen(side), front: seen(front) };
        if let Form::Prism { outline, .. } = &self.form {
            // Along its axis a prism may be hollow on a side.
            let as_drawn = |view: fn(&DVec3) -> DVec2| {
                outline.iter().map(|p| view(&(self.origin + turned(self.facing, p.extend(0.0))))).collect()
            };
            match self.facing {
                Facing::Up | Facing::Down => seen.plan = as_drawn(plan),
                Facing::Left | Facing::Right => seen.side = as_drawn(side),
                Facing::Ahead | Facing::Heel => seen.front = as_drawn(front),
            }
        }
        seen
    }
}

#[cfg(test)]
mod tests;
