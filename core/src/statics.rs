//! Moments about a tipping line, and what follows from them.
//!
//! For a line through p0 with unit direction u and a field w, a body's restoring moment is
//! -m ((r - p0) x w) . u = m (r - p0) . n with the **lever vector** n = u x w: positive while the
//! body holds the truck down.

use crate::body::{Bodies, Body, BodyId, Sum};
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

/// Which corner of a body's ranges is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Corner {
    /// As stated.
    Nominal,
    /// The worst for the line and field in hand.
    Worst,
}

/// The lever vector n = u x w of a line in a field, m/s^2: a body's moment is m (r - p0) . n.
pub fn lever_vector(line: &Line, w: DVec3) -> DVec3 {
    line.direction().cross(w)
}

/// Whether a body counts for a line: a pivoting axle stays on the ground when the truck goes over sideways.
pub fn counts(line: &Line, body: &Body) -> bool {
    !(line.leaves_axle && body.id == BodyId::SteerAxle)
}

/// A body's mass and place at a corner, for a line with lever vector `n`.
///
/// The worst corner is exact: the worst of the places, each coordinate about it by the sign of n,
/// then the mass by the sign of the lever that leaves.
pub fn at_corner(body: &Body, line: &Line, n: DVec3, corner: Corner) -> (f64, DVec3) {
    if corner == Corner::Nominal {
        return (body.mass.nominal, body.at);
    }
    corner_below(body, line, n, 0.0)
}

/// The worst corner where every lever is taken `shift` shorter.
fn corner_below(body: &Body, line: &Line, n: DVec3, shift: f64) -> (f64, DVec3) {
    let lever = |r: DVec3| (r - line.from).dot(n);
    // An inferred place is a set of corners; what stands for it lies among them.
    let place = body.others.iter().copied().fold(body.at, |best, r| if lever(r) < lever(best) { r } else { best });
    let place = place + body.skew;
    let edges = body.half_edges.iter().flatten();
    let place = edges.fold(place, |r, &e| if e.dot(n) > 0.0 { r - e } else { r + e });
    (if lever(place) < shift { body.mass.hi } else { body.mass.lo }, place)
}

/// All bodies that count for a line with lever vector `n`, added up at a corner.
fn added_up(bodies: &Bodies, line: &Line, n: DVec3, corner: Corner) -> Sum {
    if corner == Corner::Nominal {
        return bodies.stated(line.leaves_axle);
    }
    let (exact, uncertain) = bodies.exact_and_uncertain(line.leaves_axle);
    uncertain.fold(exact, |sum, body| {
        let (mass, at) = at_corner(body, line, n, corner);
        sum.with(mass, at)
    })
}

/// The restoring moment of all bodies about a line in a field w, N m.
///
/// ```
/// use standfast_core::{body::Bodies, field::Field, statics::{Corner, moment}, support::{Line, LineId}};
/// use glam::DVec3;
/// let (from, to) = (DVec3::new(0.0, -0.5, 0.0), DVec3::new(0.0, 0.5, 0.0));
/// let front = Line::new(LineId::Front, from, to, false);
/// let truck = Bodies::points(&[(1000.0, DVec3::new(-0.8, 0.0, 0.6))]);
/// let m = moment(&truck, &front, Field::LEVEL.total(), Corner::Nominal);
/// assert!((m - 1000.0 * 9.80665 * 0.8).abs() < 1e-6);
/// ```
pub fn moment(bodies: &Bodies, line: &Line, w: DVec3, corner: Corner) -> f64 {
    let n = lever_vector(line, w);
    let sum = added_up(bodies, line, n, corner);
    (sum.moment - line.from * sum.mass).dot(n)
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
    /// The entries of a line, every body at the corner that is worst for the whole field.
    ///
    /// The split into entries is a convention (each body on level ground, then slope, then
    /// acceleration); their sum is not.
    pub fn of(bodies: &Bodies, line: &Line, field: &Field, corner: Corner) -> Self {
        let mut list = Vec::with_capacity(bodies.as_slice().len());
        let (slope, acceleration) = each_entry(bodies, line, field, corner, |id, moment| list.push((id, moment)));
        Self { bodies: list, slope, acceleration }
    }
}

/// Hands each body's level entry to `take`; gives the slope's and the acceleration's.
fn each_entry(
    bodies: &Bodies,
    line: &Line,
    field: &Field,
    corner: Corner,
    mut take: impl FnMut(BodyId, f64),
) -> (f64, f64) {
    let n = lever_vector(line, field.total());
    let [level, slope, acceleration] = [field.level, field.slope, field.acceleration].map(|w| lever_vector(line, w));
    let mut sum = Sum::default();
    for (body, doubt) in bodies.with_doubt().filter(|(b, _)| counts(line, b)) {
        let (mass, at) = at_corner(body, line, n, if doubt { corner } else { Corner::Nominal });
        take(body.id, mass * (at - line.from).dot(level));
        sum = sum.with(mass, at);
    }
    let arm = sum.moment - line.from * sum.mass;
    (arm.dot(slope), arm.dot(acceleration))
}

/// The share of what holds a line that is used up: overturning entries over restoring ones, as
/// magnitudes. 1 is the point of tipping, whatever the entries. Never more than [`MOST_SHARE`];
/// without anything restoring it is that.
pub fn share(bodies: &Bodies, line: &Line, field: &Field, corner: Corner) -> f64 {
    let (mut over, mut restoring) = (0.0, 0.0);
    let mut add = |moment: f64| if moment < 0.0 { over -= moment } else { restoring += moment };
    let (slope, acceleration) = each_entry(bodies, line, field, corner, |_, moment| add(moment));
    add(slope);
    add(acceleration);
    if over <= 0.0 {
        0.0
    } else if over >= MOST_SHARE * restoring {
        MOST_SHARE
    } else {
        over / restoring
    }
}

/// The share as stated, and at the corner of least moment of the worst set; that corner may have more
/// to hold it as well, so the worst is never given as less than as stated.
pub fn shares(stated: &Bodies, worst_set: &Bodies, line: &Line, field: &Field) -> Pair {
    let nominal = share(stated, line, field, Corner::Nominal);
    Pair { nominal, worst: share(worst_set, line, field, Corner::Worst).max(nominal) }
}

/// Shares are not told apart beyond this: ten times over is over.
pub const MOST_SHARE: f64 = 10.0;

/// How far inside a line the line of action passes, m, square to the line: M / sum of m |w square to
/// the line|. Negative once it has crossed; zero where nothing pulls square to the line.
///
/// At the worst corner it is the least over every corner of several sets of bodies: a fraction of two
/// sums, so the corner is found by taking every lever shorter by the least distance so far, until
/// that no longer finds a lesser one (Dinkelbach's iteration).
pub fn distance(sets: &[&Bodies], line: &Line, w: DVec3, corner: Corner) -> f64 {
    let (u, n) = (line.direction(), lever_vector(line, w));
    let pull = (w - u * w.dot(u)).length();
    let inside = |sum: Sum| {
        let down = sum.mass * pull;
        if down > 0.0 { (sum.moment - line.from * sum.mass).dot(n) / down } else { 0.0 }
    };
    let least = |a: f64, b: f64| if b < a { b } else { a };
    let stated = sets.iter().map(|bodies| inside(bodies.stated(line.leaves_axle))).reduce(least).unwrap_or_default();
    if corner == Corner::Nominal {
        return stated;
    }
    let mut found = stated;
    for _ in 0..60 {
        let at_corner = |bodies: &&Bodies| {
            let (exact, uncertain) = bodies.exact_and_uncertain(line.leaves_axle);
            inside(uncertain.fold(exact, |sum, body| {
                let (mass, at) = corner_below(body, line, n, found * pull);
                sum.with(mass, at)
            }))
        };
        let next = sets.iter().map(at_corner).reduce(least).unwrap_or_default();
        if next >= found - 1e-13 {
            break;
        }
        found = next;
    }
    found
}

/// The greatest t for which the field `w + t d` still leaves no negative moment about the line, the
/// worst of several sets of bodies, or `None` where no t up to [`STEEPEST`] upsets it. Not above zero
/// where the moment is negative before any t.
///
/// With w straight down and d = g times the downhill direction, t is the slope (a tangent) that the
/// truck stands; with d square to w about the line, it is the tangent of the tip angle. For every
/// fixed corner the moment is A + t B; the least root over all corners is found by walking from
/// one corner's root to the worst corner there (Dinkelbach's iteration, finitely many corners).
pub fn critical(sets: &[&Bodies], line: &Line, w: DVec3, d: DVec3, corner: Corner) -> Option<f64> {
    let (n0, nd) = (lever_vector(line, w), lever_vector(line, d));
    let at = |t: f64| {
        let n = n0 + nd * t;
        let parts = sets.iter().map(|bodies| {
            let sum = added_up(bodies, line, n, corner);
            let arm = sum.moment - line.from * sum.mass;
            (arm.dot(n0), arm.dot(nd))
        });
        parts.min_by(|x, y| (x.0 + t * x.1).total_cmp(&(y.0 + t * y.1)))
    };
    let (a, b) = at(0.0)?;
    if a < 0.0 {
        // Gone before any t: say how far back it would have to come, if that helps at all.
        return Some(if b < 0.0 { -a / b } else { 0.0 }.min(0.0));
    }
    // The root of any one corner lies above the least root, or there is none up to here.
    let mut t = if b < 0.0 { (-a / b).min(STEEPEST) } else { STEEPEST };
    for _ in 0..60 {
        let (a, b) = at(t)?;
        if t >= STEEPEST && a + t * b >= 0.0 {
            return None;
        }
        let next = if b < 0.0 { -a / b } else { 0.0 };
        if next >= t - 1e-13 * (1.0 + t) {
            break;
        }
        t = next.max(0.0);
    }
    Some(t)
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

/// The further tilt about a line itself that brings its moment to zero, rad, or `None` where it
/// does not tip before it lies down. Negative once it has gone over.
pub fn tip_angle(sets: &[&Bodies], line: &Line, w: DVec3, corner: Corner) -> Option<f64> {
    let u = line.direction();
    let square = w - u * w.dot(u);
    critical(sets, line, square, square.cross(u), corner).map(libm::atan)
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
