//! Moments about a tipping line, and what follows from them.
//!
//! For a line through p0 with unit direction u and a field w, a body's restoring moment is
//! -m ((r - p0) x w) . u = m (r - p0) . n with the **lever vector** n = u x w: positive while the
//! body holds the truck down.

use crate::body::{Bodies, Body, BodyId};
use crate::field::Field;
use crate::support::Line;
use glam::DVec3;

/// A figure as stated and at the worst corner of everything uncertain.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Pair {
    /// As stated.
    pub nominal: f64,
    /// At the worst corner.
    pub worst: f64,
}

/// The lever vector n = u x w of a line in a field, m/s^2: a body's moment is m (r - p0) . n.
pub fn lever_vector(line: &Line, w: DVec3) -> DVec3 {
    line.direction().cross(w)
}

/// Whether a body counts for a line: a pivoting axle stays on the ground when the truck goes over sideways.
pub fn counts(line: &Line, body: &Body) -> bool {
    !(line.leaves_axle && body.id == BodyId::SteerAxle)
}

/// The restoring moment of all bodies about a line in a field w, N m.
///
/// ```
/// use standfast_core::{body::Bodies, field::Field, statics::moment, support::{Line, LineId}};
/// use glam::DVec3;
/// let (from, to) = (DVec3::new(0.0, -0.5, 0.0), DVec3::new(0.0, 0.5, 0.0));
/// let front = Line::new(LineId::Front, from, to, false);
/// let truck = Bodies::points(&[(1000.0, DVec3::new(-0.8, 0.0, 0.6))]);
/// let m = moment(&truck, &front, Field::LEVEL.total());
/// assert!((m - 1000.0 * 9.80665 * 0.8).abs() < 1e-6);
/// ```
pub fn moment(bodies: &Bodies, line: &Line, w: DVec3) -> f64 {
    let sum = bodies.stated(line.leaves_axle);
    (sum.moment - line.from * sum.mass).dot(lever_vector(line, w))
}

/// The parts that make up a moment about a line, N m.
#[derive(Clone, Debug, PartialEq)]
pub struct Entries {
    /// Each body as it would stand on level ground.
    pub bodies: Vec<(BodyId, f64)>,
    /// What the slope adds, all bodies together.
    pub slope: f64,
    /// What the acceleration adds.
    pub acceleration: f64,
}

impl Entries {
    /// The entries of a line as stated.
    ///
    /// The split into entries is a convention (each body on level ground, then slope, then
    /// acceleration); their sum is not.
    pub fn of(bodies: &Bodies, line: &Line, field: &Field) -> Self {
        let mut list = Vec::with_capacity(bodies.as_slice().len());
        let (slope, acceleration) = each_entry(bodies, line, field, |id, moment| list.push((id, moment)));
        Self { bodies: list, slope, acceleration }
    }
}

/// Hands each body's level entry to `take`; gives the slope's and the acceleration's.
fn each_entry(bodies: &Bodies, line: &Line, field: &Field, mut take: impl FnMut(BodyId, f64)) -> (f64, f64) {
    let [level, slope, acceleration] = [field.level, field.slope, field.acceleration].map(|w| lever_vector(line, w));
    for body in bodies.as_slice().iter().filter(|b| counts(line, b)) {
        take(body.id, body.mass.nominal * (body.at - line.from).dot(level));
    }
    let sum = bodies.stated(line.leaves_axle);
    let arm = sum.moment - line.from * sum.mass;
    (arm.dot(slope), arm.dot(acceleration))
}

/// What holds a line and what overturns it as stated, N m, both as magnitudes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Balanced {
    /// The entries that hold the truck down.
    pub holding: f64,
    /// Those that overturn it.
    pub overturning: f64,
}

impl Balanced {
    /// Of bodies about a line in a field.
    pub fn of(bodies: &Bodies, line: &Line, field: &Field) -> Self {
        let mut all = Self::default();
        let mut add = |moment: f64| if moment < 0.0 { all.overturning -= moment } else { all.holding += moment };
        let (slope, acceleration) = each_entry(bodies, line, field, |_, moment| add(moment));
        add(slope);
        add(acceleration);
        all
    }

    /// The share of what holds a line that is used up: overturning entries over holding ones. 1 is the
    /// point of tipping, whatever the entries. Never more than [`MOST_SHARE`]; without anything holding
    /// it is that.
    pub fn share(&self) -> f64 {
        self.share_with(0.0)
    }

    /// The share as stated and at the worst, which is that of the stated entries with one more: all that
    /// the worst corner takes off the moment overturns.
    pub fn shares(&self, moment: Pair) -> Pair {
        Pair { nominal: self.share(), worst: self.share_with(moment.nominal - moment.worst) }
    }

    /// The same with one entry more: what the worst corner takes off, N m, overturns.
    pub fn share_with(&self, taken_off: f64) -> f64 {
        let over = self.overturning + taken_off.max(0.0);
        if over <= 0.0 {
            0.0
        } else if over >= MOST_SHARE * self.holding {
            MOST_SHARE
        } else {
            over / self.holding
        }
    }
}

/// Shares are not told apart beyond this: ten times over is over.
pub const MOST_SHARE: f64 = 10.0;

/// The pull square to a line, m/s^2.
pub fn square_pull(line: &Line, w: DVec3) -> DVec3 {
    let u = line.direction();
    w - u * w.dot(u)
}

/// How far inside a line the line of action passes as stated, m, square to the line: M / sum of m |w
/// square to the line|. Negative once it has crossed; zero where nothing pulls square to the line.
pub fn distance(bodies: &Bodies, line: &Line, w: DVec3) -> f64 {
    let down = bodies.stated(line.leaves_axle).mass * square_pull(line, w).length();
    if down > 0.0 { moment(bodies, line, w) / down } else { 0.0 }
}

/// The least t from 0 to [`STEEPEST`] at which a moment A + t B, the least of many, is gone; `at`
/// gives A and B of the least one at t. `None` where none goes up to there. Not above zero where it is
/// gone before any t: then how far back it would have to come, if that helps at all.
///
/// Every one of the many is affine in t, so the least root is found by walking from one's root to the
/// worst one there (Dinkelbach's iteration), from `known`, the root of one of them where it is known.
pub fn walk_to_root(known: Option<f64>, at: impl Fn(f64) -> (f64, f64)) -> Option<f64> {
    let known = known.filter(|t| *t > 0.0);
    // The root of any one lies above the least root, or there is none up to here.
    let mut t = known.unwrap_or(STEEPEST).min(STEEPEST);
    if known.is_none() {
        let (a, b) = at(0.0);
        if a < 0.0 {
            return Some(if b < 0.0 { -a / b } else { 0.0 }.min(0.0));
        }
        t = if b < 0.0 { (-a / b).min(STEEPEST) } else { STEEPEST };
    }
    for _ in 0..60 {
        let (a, b) = at(t);
        if t >= STEEPEST && a + t * b >= 0.0 {
            return None;
        }
        let next = if b < 0.0 { -a / b } else { 0.0 };
        if next >= t - 1e-13 * (1.0 + t) {
            break;
        }
        if next < 0.0 && known.is_some() {
            // Gone before any t.
            return walk_to_root(None, at);
        }
        t = next.max(0.0);
    }
    Some(t)
}

/// The greatest t for which the field `w + t d` leaves no negative moment about the line as stated, or
/// `None` where no t up to [`STEEPEST`] upsets it. Not above zero where the moment is negative before any t.
///
/// With w straight down and d = g times the downhill direction, t is the slope (a tangent) that the
/// truck stands; with d square to w about the line, it is the tangent of the tip angle.
pub fn critical(bodies: &Bodies, line: &Line, w: DVec3, d: DVec3) -> Option<f64> {
    let parts = (moment(bodies, line, w), moment(bodies, line, d));
    walk_to_root(None, |_| parts)
}

/// How far something goes before a line is reached, where it may never be: `None`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reach {
    /// As stated.
    pub nominal: Option<f64>,
    /// At the worst corner; never further than as stated.
    pub worst: Option<f64>,
}

impl Reach {
    /// As stated is one of the corners: the worst reaches no further, also where nothing is left to stand on.
    pub fn new(nominal: Option<f64>, worst: Option<f64>) -> Self {
        let worst = match (nominal, worst) {
            (Some(a), Some(b)) => Some(a.min(b)),
            (one, other) => one.or(other),
        };
        Self { nominal, worst }
    }
}

/// Slopes beyond this (a tangent; 87 degrees) are not told apart: the truck does not tip that way.
pub const STEEPEST: f64 = 20.0;

/// The further tilt about a line itself that brings its moment to zero as stated, rad, or `None` where
/// it does not tip before it lies down. Negative once it has gone over.
pub fn tip_angle(bodies: &Bodies, line: &Line, w: DVec3) -> Option<f64> {
    let square = square_pull(line, w);
    critical(bodies, line, square, square.cross(line.direction())).map(libm::atan)
}

/// Energy to tip about a line on level ground, J: the weight times how far its centre must rise to
/// stand over the line, `inside` m from it and `height` m above it. Zero where it has crossed.
///
/// Source: Messuri and Klein 1985.
///
/// ```
/// // Case C24: 4,000 kg, 0.9 m inside, 0.6 m high; arithmetic with g 9.81.
/// let joules = standfast_core::statics::energy_to_tip(4000.0, 0.9, 0.6, 9.81);
/// assert!((joules - 18_900.0).abs() < 0.005 * 18_900.0);
/// ```
pub fn energy_to_tip(mass: f64, inside: f64, height: f64, gravity: f64) -> f64 {
    if inside <= 0.0 { 0.0 } else { mass * gravity * (libm::hypot(inside, height) - height) }
}

#[cfg(test)]
mod tests;
