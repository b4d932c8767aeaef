//! The worst corner of everything uncertain about a truck in a pose: exact, not sampled.
//!
//! For a line through p0 with lever vector n, everything with weight is one term with a mass in a
//! range and a lever in a box, and no two share what they may be: so the least moment is the sum of
//! each one's least, found by signs. What several share is tried at all its ends: the mast's angle and
//! sway, the wheelbase, the field. A raised lift, a shifted pivot or fork face moves all it moves the
//! same way, so that signs settle it too.
//!
//! The truck is reckoned as it was weighed, **stowed as a whole**: its service weight at its own centre.
//! What its parts add is only their way from there to the pose, m (r - r stowed), without weight; so
//! an error in a part's weight does not change the truck's.

use crate::doubt::MOST_STAGES;
use crate::support::Line;
use glam::{DMat3, DVec2, DVec3};

/// Something that keeps to the truck: battery swapped, operator, a pivoting axle taken away.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Kept {
    /// The least and the greatest mass, kg; less than nothing for what is taken away.
    pub mass: (f64, f64),
    /// Its centre, m.
    pub at: DVec3,
    /// Half the box that it may lie in.
    pub half: DVec3,
    /// How far it moves along x for each metre that the wheelbase is longer.
    pub with_wheelbase: f64,
}

/// A part of mast and carriage on its way from where it was stowed to the pose: it has no weight of its
/// own here, the truck's has it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Way {
    /// The least and the greatest mass of the part, kg.
    pub mass: (f64, f64),
    /// From where it was stowed to the mast's pivot, m.
    pub from: DVec3,
    /// From the pivot to where it hangs, mast upright, m.
    pub hung: DVec3,
    /// Half the box that `hung` may lie in.
    pub half_hung: DVec3,
    /// Half the box of what adds to `hung` and is taken from `from`: where the part is, stowed and posed
    /// alike, and where the pivot is.
    pub half_both: DVec3,
}

/// What is put on the mast: attachment, extensions, load.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hung {
    /// The least and the greatest mass, kg.
    pub mass: (f64, f64),
    /// Its centre from the pivot, mast upright, m.
    pub at: DVec3,
    /// Half the box that it may lie in.
    pub half: DVec3,
}

/// A short list that lies where its owner does.
#[derive(Clone, Copy, Debug)]
pub struct Few<T, const N: usize> {
    list: [T; N],
    length: usize,
}

impl<T: Copy + Default, const N: usize> Default for Few<T, N> {
    fn default() -> Self {
        Self { list: [T::default(); N], length: 0 }
    }
}

impl<T, const N: usize> Few<T, N> {
    /// Adds one; beyond `N` none is taken, which no truck has.
    pub fn push(&mut self, one: T) {
        if let Some(slot) = self.list.get_mut(self.length) {
            *slot = one;
            self.length += 1;
        }
    }

    /// Those there are.
    pub fn as_slice(&self) -> &[T] {
        &self.list[..self.length]
    }
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
    pub axle: Option<Kept>,
    /// What else keeps to the truck.
    pub kept: Few<Kept, 2>,
    /// The parts of mast and carriage.
    pub ways: Few<Way, { MOST_STAGES + 3 }>,
    /// What is put on the mast.
    pub hung: Few<Hung, 3>,
    /// The mast's pivot, m.
    pub pivot: DVec3,
    /// Half the box that the pivot may lie in.
    pub half_pivot: DVec3,
    /// The wheelbase may be longer or shorter by so much, m.
    pub wheelbase: f64,
}

/// One way that all which is shared may be.
#[derive(Clone, Copy, Debug, Default)]
pub struct View {
    /// From the truck's frame to the mast's.
    pub to_mast: DMat3,
    /// The axis that the mast tilts about, in the mast's frame.
    pub axis: DVec3,
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

    fn kept(&mut self, mass: f64, at: DVec3) {
        self.mass += mass;
        self.fixed += at * mass;
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
    /// The wheelbase is longer by so much, or each takes its own worst of so much.
    longer: f64,
    slack: f64,
}

impl Levers {
    #[inline]
    fn new(from: DVec3, n: DVec3, taken: f64, view: &View, wheelbase: f64) -> Self {
        let hung = view.to_mast * n;
        let both = hung - n;
        let (longer, slack) = view.longer.map_or((0.0, wheelbase), |by| (by, 0.0));
        Self { n, hung, both, abs: [n.abs(), hung.abs(), both.abs()], off: from.dot(n) + taken, longer, slack }
    }
}

/// The corner of a box, half its edges given, where it is least along `v`.
fn towards(v: DVec3, half: DVec3) -> DVec3 {
    let side = |v: f64, half: f64| if v > 0.0 { -half } else { half };
    DVec3::new(side(v.x, half.x), side(v.y, half.y), side(v.z, half.z))
}

/// The mass, not less than nothing, at which a lever counts least.
#[inline]
fn least_mass(mass: (f64, f64), lever: f64) -> f64 {
    if lever < 0.0 { mass.1 } else { mass.0 }
}

impl Kept {
    /// The mass at the least of its moment, and that.
    #[inline]
    fn least(&self, l: &Levers) -> (f64, f64) {
        let moves = self.with_wheelbase * l.n.x;
        let lever = self.at.dot(l.n) - l.off + moves * l.longer;
        let reach = self.half.dot(l.abs[0]) + moves.abs() * l.slack;
        let value = |m: f64| m * lever - m.abs() * reach;
        let (lo, hi) = (value(self.mass.0), value(self.mass.1));
        if lo < hi { (self.mass.0, lo) } else { (self.mass.1, hi) }
    }

    fn place(&self, m: f64, l: &Levers) -> DVec3 {
        let half = self.half + DVec3::X * (self.with_wheelbase.abs() * l.slack);
        self.at + DVec3::X * (self.with_wheelbase * l.longer) + towards(if m < 0.0 { -l.n } else { l.n }, half)
    }
}

impl Way {
    /// Its least lever.
    #[inline]
    fn lever(&self, l: &Levers) -> f64 {
        let reach = self.half_hung.dot(l.abs[1]) + self.half_both.dot(l.abs[2]);
        self.from.dot(l.n) + self.hung.dot(l.hung) - reach
    }
}

impl Hung {
    /// Its least lever, that of the pivot's least given.
    #[inline]
    fn lever(&self, pivot: f64, l: &Levers) -> f64 {
        pivot + self.at.dot(l.hung) - self.half.dot(l.abs[1])
    }
}

impl Service<'_> {
    /// The mass and place at the least of its moment, and that.
    #[inline]
    fn least(&self, l: &Levers) -> (f64, DVec3, f64) {
        let by = l.longer * self.with_wheelbase;
        let slack = (l.slack * self.with_wheelbase).abs();
        let lever = |p: &DVec2| {
            let x = p.x * (1.0 + by);
            let x = if l.n.x * x > 0.0 { x * (1.0 - slack) } else { x * (1.0 + slack) };
            (x, x * l.n.x + p.y * l.n.z - l.off)
        };
        let mut best = (DVec3::ZERO, f64::INFINITY);
        for p in self.places {
            let (x, value) = lever(p);
            if value < best.1 {
                best = (DVec3::new(x, 0.0, p.y), value);
            }
        }
        let (place, value) = best;
        let value = if value.is_finite() { value } else { -l.off };
        let m = if value < 0.0 { self.mass.1 } else { self.mass.0 };
        (m, place, m * value)
    }
}

impl Terms<'_> {
    fn kept(&self, leaves_axle: bool) -> impl Iterator<Item = &Kept> {
        self.kept.as_slice().iter().chain(self.axle.iter().filter(move |_| leaves_axle))
    }

    /// The least lever of the pivot, with what each kilogram takes off.
    #[inline]
    fn pivot_lever(&self, l: &Levers) -> f64 {
        self.pivot.dot(l.n) - self.half_pivot.dot(l.abs[2]) - l.off
    }

    /// The least moment about a line from its start with lever vector `n`, in one view, N m. Every
    /// kilogram counts `taken` N m less: a distance in hand times what pulls.
    #[inline]
    pub fn least(&self, line: &Line, n: DVec3, taken: f64, view: &View) -> f64 {
        self.least_about(line.from, line.leaves_axle, n, taken, view)
    }

    fn least_about(&self, from: DVec3, leaves_axle: bool, n: DVec3, taken: f64, view: &View) -> f64 {
        let l = Levers::new(from, n, taken, view, self.wheelbase);
        self.least_kept(leaves_axle, &l) + self.least_on_mast(&l)
    }

    /// That part of it which is the same however the mast stands: of the truck as it was weighed and of what
    /// keeps to it.
    pub fn least_of_truck(&self, line: &Line, n: DVec3, taken: f64, longer: Option<f64>) -> f64 {
        let view = View { longer, ..View::default() };
        self.least_kept(line.leaves_axle, &Levers::new(line.from, n, taken, &view, self.wheelbase))
    }

    /// The other part: of the mast and all it carries.
    #[inline]
    pub fn least_of_mast(&self, line: &Line, n: DVec3, taken: f64, view: &View) -> f64 {
        self.least_on_mast(&Levers::new(line.from, n, taken, view, self.wheelbase))
    }

    #[inline]
    fn least_kept(&self, leaves_axle: bool, l: &Levers) -> f64 {
        let mut sum = self.service.least(l).2;
        for kept in self.kept.as_slice() {
            sum += kept.least(l).1;
        }
        match &self.axle {
            Some(axle) if leaves_axle => sum + axle.least(l).1,
            _ => sum,
        }
    }

    #[inline]
    fn least_on_mast(&self, l: &Levers) -> f64 {
        let mut sum = 0.0;
        for way in self.ways.as_slice() {
            let lever = way.lever(l);
            sum += least_mass(way.mass, lever) * lever;
        }
        let pivot = self.pivot_lever(l);
        for hung in self.hung.as_slice() {
            let lever = hung.lever(pivot, l);
            sum += least_mass(hung.mass, lever) * lever;
        }
        sum
    }

    /// The corner of that moment.
    pub fn corner(&self, line: &Line, n: DVec3, taken: f64, view: &View) -> Sums {
        self.corner_about(line.from, line.leaves_axle, n, taken, view)
    }

    fn corner_about(&self, from: DVec3, leaves_axle: bool, n: DVec3, taken: f64, view: &View) -> Sums {
        let l = Levers::new(from, n, taken, view, self.wheelbase);
        let mut sums = Sums::default();
        let (m, place, _) = self.service.least(&l);
        sums.kept(m, place);
        for kept in self.kept(leaves_axle) {
            let (m, _) = kept.least(&l);
            sums.kept(m, kept.place(m, &l));
        }
        self.on_mast(&l, &mut sums);
        sums
    }

    /// Mass times the part that turns with the mast, kg m, at that corner.
    pub fn hung(&self, line: &Line, n: DVec3, taken: f64, view: &View) -> DVec3 {
        let mut sums = Sums::default();
        self.on_mast(&Levers::new(line.from, n, taken, view, self.wheelbase), &mut sums);
        sums.hung
    }

    #[inline]
    fn on_mast(&self, l: &Levers, sums: &mut Sums) {
        for way in self.ways.as_slice() {
            let m = least_mass(way.mass, way.lever(l));
            let both = towards(l.both, way.half_both);
            sums.fixed += (way.from - both) * m;
            sums.hung += (way.hung + towards(l.hung, way.half_hung) + both) * m;
        }
        let (pivot, shifted) = (self.pivot_lever(l), towards(l.both, self.half_pivot));
        for hung in self.hung.as_slice() {
            let m = least_mass(hung.mass, hung.lever(pivot, l));
            sums.kept(m, self.pivot - shifted);
            sums.hung += (hung.at + towards(l.hung, hung.half) + shifted) * m;
        }
    }

    /// How far the common centre of all may lie in a direction (a unit vector) from the origin, m, over
    /// some views: a fraction of two sums, so the corner is found by walking (Dinkelbach's iteration)
    /// from `known`, where it surely may lie.
    pub fn furthest(&self, direction: DVec3, known: f64, views: &[View]) -> f64 {
        let n = -direction;
        let mut found = -known;
        for view in views {
            for _ in 0..40 {
                if self.least_about(DVec3::ZERO, false, n, found, view) >= 0.0 {
                    break;
                }
                let sums = self.corner_about(DVec3::ZERO, false, n, found, view);
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
