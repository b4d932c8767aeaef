//! The three views, what stands in them, and what a finger on one of them means.
//!
//! Directions of the load, m: 0 ahead, 1 left, 2 up.

use standfast_core::report::ShapeReport;

/// A point of a view, m, along its two directions.
pub type At = (f64, f64);

/// A view of the load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum View {
    /// From above: ahead to the right, left up.
    Plan,
    /// From the truck's right side: ahead to the right.
    Side,
    /// As the driver sees it: left is left.
    Front,
}

impl View {
    /// Its name in tests and ids.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Plan => "plan",
            Self::Side => "side",
            Self::Front => "front",
        }
    }

    /// The directions it shows: the one along the sheet, the one up it.
    pub const fn axes(self) -> (usize, usize) {
        match self {
            Self::Plan => (0, 1),
            Self::Side => (0, 2),
            Self::Front => (1, 2),
        }
    }

    /// Which way its first direction runs on the sheet: 1 to the right, -1 to the left.
    pub const fn hand(self) -> f64 {
        match self {
            Self::Front => -1.0,
            Self::Plan | Self::Side => 1.0,
        }
    }

    /// How a shape looks in it.
    pub fn outline(self, shape: &ShapeReport) -> Vec<At> {
        let points = match self {
            Self::Plan => &shape.plan,
            Self::Side => &shape.side,
            Self::Front => &shape.front,
        };
        points.iter().map(|(a, b)| (a.get(), b.get())).collect()
    }
}

/// The box of one part, and its outlines.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// The part, from 0.
    pub part: usize,
    /// A cut-out.
    pub cut: bool,
    /// Low corner.
    pub lo: [f64; 3],
    /// High corner.
    pub hi: [f64; 3],
}

impl Body {
    /// The box of a drawn shape; `None` for what is no part or has no outline.
    pub fn of(shape: &ShapeReport) -> Option<Self> {
        let part = shape.part?;
        let (a, b) = extents(shape.plan.iter().map(|(a, b)| (a.get(), b.get())))?;
        let (c, d) = extents(shape.side.iter().map(|(a, b)| (a.get(), b.get())))?;
        Some(Self { part, cut: shape.cut, lo: [a.0, a.1, c.1], hi: [b.0, b.1, d.1] })
    }

    /// Its middle along one direction.
    pub fn middle(&self, axis: usize) -> f64 {
        0.5 * (self.lo[axis] + self.hi[axis])
    }

    /// Its length along one direction.
    pub fn size(&self, axis: usize) -> f64 {
        self.hi[axis] - self.lo[axis]
    }

    /// The figure that says where it is along one direction: its nearest side ahead, its middle to
    /// the left, its underside upward.
    pub fn place(&self, axis: usize) -> f64 {
        if axis == 1 { self.middle(1) } else { self.lo[axis] }
    }

    /// The same moved along one direction.
    pub fn shift(&mut self, axis: usize, by: f64) {
        self.lo[axis] += by;
        self.hi[axis] += by;
    }
}

/// The least rectangle with all points.
pub fn extents(points: impl IntoIterator<Item = At>) -> Option<(At, At)> {
    points.into_iter().fold(None, |found: Option<(At, At)>, p| {
        let (lo, hi) = found.unwrap_or((p, p));
        Some(((lo.0.min(p.0), lo.1.min(p.1)), (hi.0.max(p.0), hi.1.max(p.1))))
    })
}

/// Whether a point lies inside an outline.
fn inside(outline: &[At], p: At) -> bool {
    let next = outline.iter().cycle().skip(1);
    outline.iter().zip(next).filter(|(a, b)| (a.1 > p.1) != (b.1 > p.1)).fold(false, |inside, (a, b)| {
        let at = a.0 + (p.1 - a.1) / (b.1 - a.1) * (b.0 - a.0);
        if p.0 < at { !inside } else { inside }
    })
}

/// The parts under a point of a view, the one meant most likely first: cut-outs before what they
/// are cut out of, then the nearer to the eye, then the smaller. Where none is hit, those within
/// `reach` of it.
pub fn under(view: View, shapes: &[ShapeReport], bodies: &[Body], p: At, reach: f64) -> Vec<usize> {
    let (i, j) = view.axes();
    let near = |b: &&Body, reach: f64| {
        p.0 >= b.lo[i] - reach && p.0 <= b.hi[i] + reach && p.1 >= b.lo[j] - reach && p.1 <= b.hi[j] + reach
    };
    let drawn = |b: &&Body| shapes.iter().find(|s| s.part == Some(b.part)).is_some_and(|s| inside(&view.outline(s), p));
    let mut hit: Vec<&Body> = bodies.iter().filter(|b| near(b, 0.0)).filter(drawn).collect();
    if hit.is_empty() {
        hit = bodies.iter().filter(|b| near(b, reach)).collect();
    }
    let area = |b: &Body| b.size(i) * b.size(j);
    let eye = |b: &Body| match view {
        View::Plan => -b.hi[2],
        View::Side => b.lo[1],
        View::Front => b.lo[0],
    };
    hit.sort_by(|a, b| {
        b.cut.cmp(&a.cut).then(eye(a).total_cmp(&eye(b))).then(area(a).total_cmp(&area(b))).then(a.part.cmp(&b.part))
    });
    hit.iter().map(|b| b.part).collect()
}

/// The part that a press takes hold of: what is selected where it lies under the finger, else the
/// first.
pub fn taken(found: &[usize], selected: Option<usize>) -> Option<usize> {
    selected.filter(|s| found.contains(s)).or_else(|| found.first().copied())
}

/// The part that a tap without movement selects: the one behind what is selected, round and round.
pub fn tapped(found: &[usize], selected: Option<usize>) -> Option<usize> {
    let at = selected.and_then(|s| found.iter().position(|f| *f == s));
    match at {
        Some(k) => found.get((k + 1) % found.len()).copied(),
        None => found.first().copied(),
    }
}

#[cfg(test)]
pub mod tests {
    use super::*;
    use standfast_core::scalar::Scalar;

    /// All views.
    pub const VIEWS: [View; 3] = [View::Side, View::Front, View::Plan];

    /// A box as the report draws it.
    pub fn boxed(part: usize, cut: bool, lo: [f64; 3], hi: [f64; 3]) -> ShapeReport {
        let s = |v: f64| Scalar::new(v).expect("finite");
        let rect = |i: usize, j: usize| {
            [(lo[i], lo[j]), (hi[i], lo[j]), (hi[i], hi[j]), (lo[i], hi[j])].map(|(a, b)| (s(a), s(b))).to_vec()
        };
        ShapeReport { part: Some(part), cut, plan: rect(0, 1), side: rect(0, 2), front: rect(1, 2) }
    }

    fn stack() -> (Vec<ShapeReport>, Vec<Body>) {
        let shapes = vec![
            boxed(0, false, [0.0, -0.4, 0.0], [1.2, 0.4, 0.144]),
            boxed(1, false, [0.2, -0.3, 0.144], [0.8, 0.3, 0.644]),
            boxed(2, true, [0.3, -0.1, 0.2], [0.5, 0.1, 0.5]),
        ];
        let bodies = shapes.iter().filter_map(Body::of).collect();
        (shapes, bodies)
    }

    #[test]
    fn a_box_is_read_back_from_its_outlines() {
        let (_, bodies) = stack();
        assert_eq!(bodies[1], Body { part: 1, cut: false, lo: [0.2, -0.3, 0.144], hi: [0.8, 0.3, 0.644] });
        assert_eq!((bodies[1].place(0), bodies[1].place(1), bodies[1].place(2)), (0.2, 0.0, 0.144));
        let nothing = ShapeReport { part: None, ..stack().0.remove(0) };
        assert_eq!(Body::of(&nothing), None);
    }

    #[test]
    fn the_nearest_to_the_eye_is_hit_first_and_taps_go_on_behind_it() {
        let (shapes, bodies) = stack();
        let found = under(View::Plan, &shapes, &bodies, (0.4, 0.0), 0.0);
        assert_eq!(found, [2, 1, 0], "the cut-out, the box, the pallet under both");
        assert_eq!(taken(&found, None), Some(2));
        assert_eq!(taken(&found, Some(0)), Some(0), "what is selected is dragged");
        assert_eq!(tapped(&found, Some(2)), Some(1));
        assert_eq!(tapped(&found, Some(0)), Some(2), "round and round");
        assert_eq!(tapped(&found, Some(9)), Some(2));
        assert_eq!(tapped(&[], Some(1)), None);
    }

    #[test]
    fn a_miss_within_reach_still_hits_and_a_hollow_does_not() {
        let (shapes, bodies) = stack();
        assert!(under(View::Side, &shapes, &bodies, (1.25, 0.1), 0.0).is_empty());
        assert_eq!(under(View::Side, &shapes, &bodies, (1.25, 0.1), 0.06), [0]);
        let s = |v: f64| Scalar::new(v).expect("finite");
        let mut angle = boxed(0, false, [0.0; 3], [1.0; 3]);
        angle.side = [(0.0, 0.0), (1.0, 0.0), (1.0, 0.2), (0.2, 0.2), (0.2, 1.0), (0.0, 1.0)]
            .map(|(a, b)| (s(a), s(b)))
            .to_vec();
        let bodies: Vec<Body> = Body::of(&angle).into_iter().collect();
        let shapes = vec![angle, boxed(1, false, [0.4, 0.5, 0.4], [0.9, 1.0, 0.9])];
        let bodies: Vec<Body> = bodies.into_iter().chain(Body::of(&shapes[1])).collect();
        assert_eq!(under(View::Side, &shapes, &bodies, (0.7, 0.7), 0.0), [1]);
    }

    #[test]
    fn the_driver_has_left_on_the_left() {
        assert_eq!((View::Front.hand(), View::Plan.hand()), (-1.0, 1.0));
    }
}
