//! What a solid stands on, on flat ground.

use super::{Form, Solid};
use crate::document::Facing;
use crate::polygon;
use glam::DVec2;

/// What is no higher than this above a solid's own lowest point touches with it, m.
const FLAT: f64 = 1e-6;
/// And of a drawn outline, whose flat side is drawn by hand, m.
const DRAWN_FLAT: f64 = 1e-3;

impl Solid {
    /// The outlines (ahead, left) on which it touches flat ground, none of them hollow; a line has two
    /// points, a point one.
    pub fn feet(&self) -> Vec<Vec<DVec2>> {
        match (&self.form, self.facing) {
            (Form::Prism { .. }, Facing::Up | Facing::Down) => polygon::convex_pieces(&self.silhouette().plan),
            (Form::Prism { outline, length }, facing) => self.lying(outline, *length, facing),
            _ => {
                let (lo, _) = self.extents();
                let touching = self.rim().filter(|p| p.z <= lo.z + FLAT).map(|p| DVec2::new(p.x, p.y));
                vec![polygon::hull(&touching.collect::<Vec<_>>())]
            }
        }
    }

    /// A prism that lies on the sides of its outline: a strip for each that touches, a line for each
    /// corner that touches alone.
    fn lying(&self, outline: &[DVec2], length: f64, facing: Facing) -> Vec<Vec<DVec2>> {
        let (lo, _) = polygon::extents(outline);
        let down = |p: &DVec2| p.y <= lo.y + DRAWN_FLAT;
        let point = |u: f64, w: f64| {
            let p = self.origin + super::turned(facing, glam::DVec3::new(u, lo.y, w));
            DVec2::new(p.x, p.y)
        };
        let mut feet = Vec::new();
        let n = outline.len();
        for k in 0..n {
            let (before, here, next) = (outline[(k + n - 1) % n], outline[k], outline[(k + 1) % n]);
            if down(&here) && down(&next) {
                feet.push(vec![point(here.x, 0.0), point(next.x, 0.0), point(next.x, length), point(here.x, length)]);
            } else if down(&here) && !down(&before) {
                feet.push(vec![point(here.x, 0.0), point(here.x, length)]);
            }
        }
        feet
    }
}

/// Less than this is no area to stand on, m^2.
const NOTHING: f64 = 1e-7;

/// The part of a foot (without a hollow) that lies in a rectangle; nothing where it only touches it.
pub fn on(foot: &[DVec2], lo: DVec2, hi: DVec2) -> Option<Vec<DVec2>> {
    let (least, most) = polygon::extents(foot);
    if least.x > hi.x || most.x < lo.x || least.y > hi.y || most.y < lo.y {
        return None;
    }
    let part = polygon::clipped(foot, lo, hi);
    let area = |outline: &[DVec2]| polygon::signed_area(outline).abs();
    let only_touches = area(foot) > NOTHING && area(&part) <= NOTHING;
    (!part.is_empty() && !only_touches).then_some(part)
}

/// Outlines without what lies in a rectangle: each falls into up to four.
pub fn without(feet: Vec<Vec<DVec2>>, lo: DVec2, hi: DVec2) -> Vec<Vec<DVec2>> {
    let (far, near) = (DVec2::splat(f64::MAX), DVec2::splat(f64::MIN));
    let mut left = Vec::with_capacity(feet.len());
    for foot in feet {
        let (a, b) = polygon::extents(&foot);
        if a.x >= hi.x || b.x <= lo.x || a.y >= hi.y || b.y <= lo.y {
            left.push(foot);
            continue;
        }
        let pieces = [
            (near, DVec2::new(lo.x, far.y)),
            (DVec2::new(hi.x, near.y), far),
            (DVec2::new(lo.x, near.y), DVec2::new(hi.x, lo.y)),
            (DVec2::new(lo.x, hi.y), DVec2::new(hi.x, far.y)),
        ];
        left.extend(pieces.into_iter().filter_map(|(lo, hi)| on(&foot, lo, hi)));
    }
    left
}
