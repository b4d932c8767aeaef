//! The outline of a prism being drawn: points put in, moved, taken out, and the part kept where it
//! is among the others.

use super::moving::{PLACES, enter, within};
use super::sizes::view_along;
use super::snap::{round_step, rounded};
use super::view::{At, View, extents};
use crate::entries::Entries;
use standfast_core::document::Document;
use standfast_core::place::Place;
use standfast_core::scalar::Scalar;
use standfast_core::units::System;
use standfast_core::validate::MOST_POINTS;
use std::rc::Rc;

/// An outline in its place among the other parts, m, in its view's two directions.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// What is entered.
    pub start: Rc<Entries>,
    /// The part.
    pub part: usize,
    /// The view it is drawn in.
    pub view: View,
    /// Its points where they stand.
    pub points: Vec<At>,
    /// The units to write.
    pub system: System,
    /// Where its own zero stands.
    offset: At,
}

/// The figure that places a stretch along a direction.
fn figure(axis: usize, lo: f64, hi: f64) -> f64 {
    if axis == 1 { 0.5 * (lo + hi) } else { lo }
}

impl Drawn {
    /// The outline of a part as entered; a place that is not entered counts as zero.
    pub fn of(start: &Rc<Entries>, document: &Document, part: usize, system: System) -> Option<Self> {
        let entry = start.parts.get(part)?;
        let view = view_along(entry.facing);
        let own: Vec<At> = entry.outline.iter().map(|p| (p[0].get(), p[1].get())).collect();
        let (lo, hi) = extents(own.iter().copied()).unwrap_or_default();
        let placed = document.load.parts.get(part).map(|p| [p.ahead_m, p.left_m, p.above_m]).unwrap_or_default();
        let at = |axis: usize, lo, hi| placed[axis].unwrap_or(0.0) - figure(axis, lo, hi);
        let (i, j) = view.axes();
        let offset = (at(i, lo.0, hi.0), at(j, lo.1, hi.1));
        let points = own.iter().map(|p| (p.0 + offset.0, p.1 + offset.1)).collect();
        Some(Self { start: Rc::clone(start), part, view, points, system, offset })
    }

    /// The edge nearest to a point and within `reach` of it: the number of its first point, and the
    /// place on it.
    pub fn edge(&self, p: At, reach: f64) -> Option<(usize, At)> {
        let next = self.points.iter().cycle().skip(1);
        let feet = self.points.iter().zip(next).enumerate().map(|(k, (a, b))| {
            let (dx, dy) = (b.0 - a.0, b.1 - a.1);
            let length = dx * dx + dy * dy;
            let t = if length > 0.0 { ((p.0 - a.0) * dx + (p.1 - a.1) * dy) / length } else { 0.0 };
            let foot = (a.0 + t.clamp(0.0, 1.0) * dx, a.1 + t.clamp(0.0, 1.0) * dy);
            ((foot.0 - p.0) * (foot.0 - p.0) + (foot.1 - p.1) * (foot.1 - p.1), k, foot)
        });
        let nearest = feet.min_by(|a, b| a.0.total_cmp(&b.0))?;
        (nearest.0 <= reach * reach).then_some((nearest.1, nearest.2))
    }

    /// A point put in on an edge; `None` where there are as many as there may be.
    pub fn put_in(&self, edge: usize, at: At) -> Option<Entries> {
        if self.points.len() >= MOST_POINTS {
            return None;
        }
        let mut points = self.points.clone();
        points.insert((edge + 1).min(points.len()), at);
        Some(self.written(&points))
    }

    /// A point taken out; three must stay.
    pub fn taken_out(&self, k: usize) -> Option<Entries> {
        if self.points.len() <= 3 || k >= self.points.len() {
            return None;
        }
        let mut points = self.points.clone();
        points.remove(k);
        Some(self.written(&points))
    }

    /// A point moved by hand so far: in line with another point where one is within `reach`, else to
    /// a round figure.
    pub fn dragged(&self, k: usize, by: At, reach: f64) -> Entries {
        let Some(&(a, b)) = self.points.get(k) else { return Entries::clone(&self.start) };
        let step = round_step(self.system);
        let settle = |from: f64, by: f64, of: fn(&At) -> f64| {
            if by.abs() < 0.5 * reach {
                return from;
            }
            let to = from + by;
            let others = self.points.iter().enumerate().filter(|(n, _)| *n != k).map(|(_, p)| of(p));
            let nearest = others.min_by(|x, y| (x - to).abs().total_cmp(&(y - to).abs()));
            nearest.filter(|x| (x - to).abs() <= 0.5 * reach).unwrap_or_else(|| rounded(to, step))
        };
        self.placed(k, (settle(a, by.0, |p| p.0), settle(b, by.1, |p| p.1)))
    }

    /// A point put to a place.
    pub fn placed(&self, k: usize, at: At) -> Entries {
        let mut points = self.points.clone();
        if let Some(point) = points.get_mut(k) {
            *point = at;
        }
        self.written(&points)
    }

    /// These points entered, and the place changed with them, so that what was not moved stays.
    fn written(&self, points: &[At]) -> Entries {
        let mut entries = Entries::clone(&self.start);
        let scalars =
            |p: &At| Some([Scalar::new(micron(p.0 - self.offset.0))?, Scalar::new(micron(p.1 - self.offset.1))?]);
        let Some(outline) = points.iter().map(scalars).collect::<Option<Vec<_>>>() else { return entries };
        if let (Some(entry), Some((lo, hi))) = (entries.parts.get_mut(self.part), extents(points.iter().copied())) {
            entry.outline = outline;
            let (i, j) = self.view.axes();
            let before = extents(self.points.iter().copied()).unwrap_or_default();
            let stays = |axis, was: (f64, f64), now: (f64, f64)| {
                (figure(axis, was.0, was.1) - figure(axis, now.0, now.1)).abs() < 1e-9
            };
            let pairs = [(i, (before.0.0, before.1.0), (lo.0, hi.0)), (j, (before.0.1, before.1.1), (lo.1, hi.1))];
            for (axis, was, now) in pairs {
                if !stays(axis, was, now) {
                    let value = within(PLACES[axis], figure(axis, now.0, now.1));
                    enter(&mut entries, Place::in_row(PLACES[axis], self.part), value, self.system);
                }
            }
        }
        entries
    }
}

/// To the nearest thousandth of a millimetre: sums leave no crumbs in a file.
fn micron(metres: f64) -> f64 {
    (metres * 1e6).round() / 1e6
}

#[cfg(test)]
mod tests {
    use super::super::samples;
    use super::*;
    use standfast_core::document::{Facing, Shape};

    fn drawn(entries: &Entries) -> Drawn {
        let start = Rc::new(entries.clone());
        Drawn::of(&start, &start.document().0, 0, System::Metric).expect("an outline")
    }

    fn prisms() -> Vec<(Facing, Entries)> {
        let all = samples::every_way().into_iter().filter(|(s, _, _)| *s == Shape::Prism);
        all.map(|(_, facing, e)| (facing, e)).collect()
    }

    fn close(a: &[At], b: &[At]) -> bool {
        a.len() == b.len() && a.iter().zip(b).all(|(a, b)| (a.0 - b.0).abs() < 2e-6 && (a.1 - b.1).abs() < 2e-6)
    }

    #[test]
    fn no_other_point_moves_whichever_is_moved_and_whichever_way_it_faces() {
        for (facing, entries) in prisms() {
            let before = drawn(&entries);
            for k in 0..before.points.len() {
                for to in [(-1.0, -1.0), (2.0, 0.1), (0.3, 3.0)] {
                    let after = drawn(&before.placed(k, to));
                    let mut expected = before.points.clone();
                    expected[k] = to;
                    assert!(close(&after.points, &expected), "{facing:?} {k}: {:?} {expected:?}", after.points);
                }
            }
        }
    }

    #[test]
    fn points_are_put_in_on_an_edge_and_taken_out_down_to_three() {
        let (_, entries) = prisms().remove(0);
        let before = drawn(&entries);
        let (a, b) = (before.points[0], before.points[1]);
        let tap = (0.5 * (a.0 + b.0), a.1 + 0.01);
        let (edge, foot) = before.edge(tap, 0.02).expect("near the first edge");
        assert_eq!(edge, 0);
        assert!((foot.1 - a.1).abs() < 1e-12, "on the edge: the form has not changed");
        assert_eq!(before.edge(tap, 0.005), None);
        let after = drawn(&before.put_in(edge, foot).expect("room"));
        assert_eq!(after.points.len(), 7);
        assert!(close(&[after.points[1]], &[foot]));
        let mut less = after;
        for n in (3..7).rev() {
            less = drawn(&less.taken_out(0).expect("more than three"));
            assert_eq!(less.points.len(), n);
        }
        assert_eq!(less.taken_out(0), None);
        let full = (0..MOST_POINTS - 6).fold(before, |d, _| drawn(&d.put_in(0, d.points[0]).expect("room")));
        assert_eq!(full.put_in(0, full.points[0]), None);
    }

    #[test]
    fn a_dragged_point_lines_up_with_others_or_rounds() {
        let (_, entries) = prisms().remove(0);
        let before = drawn(&entries);
        let (from, other) = (before.points[3], before.points[1]);
        let after = drawn(&before.dragged(3, (other.0 - from.0 + 0.004, 0.0), 0.03));
        assert!(close(&[after.points[3]], &[(other.0, from.1)]), "in line, and an unsteady hand stays level");
        let after = drawn(&before.dragged(3, (0.1034, 0.0), 0.03));
        assert!((rounded(after.points[3].0, 0.01) - after.points[3].0).abs() < 1e-6);
        assert_eq!(before.dragged(99, (1.0, 1.0), 0.03), entries, "no such point");
    }
}
