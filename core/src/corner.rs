//! The worst corner of everything uncertain about a truck in a pose: exact, not sampled.
//!
//! For a line through p0 with lever vector n, everything with weight is one [`Term`] with a mass in a
//! range and a lever in a box, and no two share what they may be: so the least moment is the sum of
//! each one's least, found by signs. What several share is tried at all its ends: the mast's angle and
//! sway, the wheelbase, the field. A raised lift, a shifted pivot or fork face moves all it moves the
//! same way, so that signs settle it too.
//!
//! The truck is reckoned as it was weighed, **stowed as a whole**: its service weight at its own centre.
//! What its parts add is only their way from there to the pose, m (r - r stowed), without weight; so
//! an error in a part's weight does not change the truck's.

use crate::support::Line;
use glam::{DMat3, DVec2, DVec3};

/// One thing with weight, or one part on its way from where it was stowed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Term {
    /// The least and the greatest mass, kg; less than nothing for what is taken away.
    pub mass: (f64, f64),
    /// 1 for what has weight of its own, 0 for a part's way from where it was stowed.
    pub weighs: f64,
    /// The part of its place that keeps to the truck, m: with the mast's pivot for what hangs on the mast.
    pub fixed: DVec3,
    /// The part that turns with the mast, from the pivot, mast upright, m.
    pub hung: DVec3,
    /// Half the box that `fixed` may lie in.
    pub half_fixed: DVec3,
    /// Half the box that `hung` may lie in.
    pub half_hung: DVec3,
    /// Half the box of what adds to `hung` and is taken from `fixed`: where the pivot is, and where a
    /// part is stowed and posed alike.
    pub half_both: DVec3,
    /// How far it moves along x for each metre that the wheelbase is longer.
    pub with_wheelbase: f64,
}

/// The truck as it was weighed.
#[derive(Clone, Debug, PartialEq)]
pub struct Service<'r> {
    /// Service weight, least and greatest, kg.
    pub mass: (f64, f64),
    /// Corners (x, z) of where its centre may be.
    pub places: &'r [DVec2],
    /// One over the wheelbase where the centre was found as a part of it (by axle loads), else 0.
    pub with_wheelbase: f64,
}

/// Everything with weight in a pose.
#[derive(Clone, Debug)]
pub struct Terms<'r> {
    /// The truck.
    pub service: Service<'r>,
    /// A pivoting steer axle, taken away: it stays on the ground when the truck goes over sideways.
    pub axle: Option<Term>,
    /// All else.
    pub list: Vec<Term>,
    /// The wheelbase may be longer or shorter by so much, m.
    pub wheelbase: f64,
}

/// One way that all which is shared may be.
#[derive(Clone, Copy, Debug)]
pub struct View {
    /// From the truck's frame to the mast's.
    pub to_mast: DMat3,
    /// The wheelbase longer by so much, m; `None` where each term may take its own worst of it.
    pub longer: Option<f64>,
}

/// What adds up at one corner: the moment about a line is linear in its lever vector.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sums {
    /// All that weighs, kg.
    pub mass: f64,
    /// Mass times the part of the place that keeps to the truck, kg m.
    pub fixed: DVec3,
    /// Mass times the part that turns with the mast, kg m.
    pub hung: DVec3,
}

impl Sums {
    /// The moment about a line from `from`, for a lever vector `n`, N m.
    pub fn moment(&self, from: DVec3, n: DVec3, view: &View) -> f64 {
        (self.fixed - from * self.mass).dot(n) + self.hung.dot(view.to_mast * n)
    }

    fn with(self, mass: f64, weighs: f64, fixed: DVec3, hung: DVec3) -> Self {
        Self { mass: self.mass + mass * weighs, fixed: self.fixed + fixed * mass, hung: self.hung + hung * mass }
    }
}

/// The lever vectors of one evaluation, with what all terms need of them.
struct Levers {
    n: DVec3,
    hung: DVec3,
    both: DVec3,
    abs: [DVec3; 3],
    /// What each kilogram that weighs takes off.
    off: f64,
}

impl Term {
    /// Its mass and place at the least of its moment.
    #[inline]
    fn least(&self, l: &Levers, longer: Option<f64>, wheelbase: f64, sums: Sums) -> Sums {
        let (moves, slack) = match longer {
            Some(by) => (self.with_wheelbase * by, 0.0),
            None => (0.0, self.with_wheelbase.abs() * wheelbase),
        };
        let fixed = DVec3::new(self.fixed.x + moves, self.fixed.y, self.fixed.z);
        let half_fixed = DVec3::new(self.half_fixed.x + slack, self.half_fixed.y, self.half_fixed.z);
        let lever = fixed.dot(l.n) + self.hung.dot(l.hung) - self.weighs * l.off;
        let reach = half_fixed.dot(l.abs[0]) + self.half_hung.dot(l.abs[1]) + self.half_both.dot(l.abs[2]);
        let value = |m: f64| m * lever - m.abs() * reach;
        let m = if value(self.mass.0) < value(self.mass.1) { self.mass.0 } else { self.mass.1 };
        let s = if m < 0.0 { -1.0 } else { 1.0 };
        let towards = |v: DVec3, half: DVec3| {
            let side = |v: f64| if v > 0.0 { -s } else { s };
            DVec3::new(side(v.x) * half.x, side(v.y) * half.y, side(v.z) * half.z)
        };
        let both = towards(l.both, self.half_both);
        let fixed = fixed + towards(l.n, half_fixed) - both;
        sums.with(m, self.weighs, fixed, self.hung + towards(l.hung, self.half_hung) + both)
    }
}

impl Service<'_> {
    fn least(&self, l: &Levers, longer: Option<f64>, wheelbase: f64, sums: Sums) -> Sums {
        let moved = |x: f64| match longer {
            Some(by) => x * (1.0 + by * self.with_wheelbase),
            None => {
                let slack = (x * self.with_wheelbase * wheelbase).abs();
                if l.n.x > 0.0 { x - slack } else { x + slack }
            }
        };
        let lever = |p: DVec3| p.dot(l.n) - l.off;
        let places = self.places.iter().map(|p| DVec3::new(moved(p.x), 0.0, p.y));
        let place = places.reduce(|a, b| if lever(b) < lever(a) { b } else { a }).unwrap_or_default();
        let m = if lever(place) < 0.0 { self.mass.1 } else { self.mass.0 };
        sums.with(m, 1.0, place, DVec3::ZERO)
    }
}

impl Terms<'_> {
    /// The corner of least moment about a line from `from` with lever vector `n`, in one view. Every
    /// kilogram counts `taken` N m less: a distance in hand times what pulls.
    pub fn least(&self, line: &Line, n: DVec3, taken: f64, view: &View) -> Sums {
        self.least_about(line.from, line.leaves_axle, n, taken, view)
    }

    fn least_about(&self, from: DVec3, leaves_axle: bool, n: DVec3, taken: f64, view: &View) -> Sums {
        let hung = view.to_mast * n;
        let both = hung - n;
        let levers = Levers { n, hung, both, abs: [n.abs(), hung.abs(), both.abs()], off: from.dot(n) + taken };
        let sums = self.service.least(&levers, view.longer, self.wheelbase, Sums::default());
        let axle = self.axle.iter().filter(|_| leaves_axle);
        self.list.iter().chain(axle).fold(sums, |s, t| t.least(&levers, view.longer, self.wheelbase, s))
    }

    /// How far the common centre of all may lie in a direction (a unit vector) from the origin, m, over
    /// some views: a fraction of two sums, so the corner is found by walking (Dinkelbach's iteration).
    pub fn furthest(&self, direction: DVec3, views: &[View]) -> f64 {
        let n = -direction;
        let mut found = f64::INFINITY;
        for view in views {
            for _ in 0..40 {
                let taken = if found.is_finite() { found } else { 0.0 };
                let sums = self.least_about(DVec3::ZERO, false, n, taken, view);
                let next = sums.moment(DVec3::ZERO, n, view) / sums.mass;
                if next >= found - 1e-12 {
                    break;
                }
                found = next;
            }
        }
        -found
    }
}

#[cfg(test)]
mod tests;
