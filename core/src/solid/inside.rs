//! Whether one solid lies inside another.

use super::{Form, Solid, unturned};
use crate::document::Facing;
use crate::polygon;
use glam::{DVec2, DVec3};

/// What stands out by no more than this touches, m.
const EPS: f64 = 1e-6;

impl Solid {
    /// Whether another solid lies inside this one. What touches lies inside; round things count with
    /// as many corners as they are drawn with.
    pub fn holds(&self, other: &Self) -> bool {
        let mut rim = other.rim().map(|p| unturned(self.facing, p - self.origin));
        rim.all(|p| self.form.contains(p, EPS))
            && match &self.form {
                // All others are hollow nowhere: between points inside there is no way out.
                Form::Prism { outline, .. } => lies_in(&self.shadow(other), outline),
                Form::Cylinder { bore, .. } if *bore > 0.0 => self.clear_of_bore(other, 0.5 * bore - EPS),
                _ => true,
            }
    }

    /// Whether two solids take up some of the same room: looked at in as many places of the box that they
    /// share. What touches does not overlap.
    pub fn overlaps(&self, other: &Self) -> bool {
        let ((a, b), (c, d)) = (self.extents(), other.extents());
        let (lo, size) = (a.max(c), b.min(d) - a.max(c));
        if size.min_element() <= EPS {
            return false;
        }
        // Uneven steps: no place of the grid lies on a slant that two wedges share.
        let step = |k: u32, n: u32, off: f64| (f64::from(k) + off) / f64::from(n);
        let places = (0..9).flat_map(|x| (0..8).flat_map(move |y| (0..7).map(move |z| (x, y, z))));
        let inside = |s: &Self, p: DVec3| s.form.contains(unturned(s.facing, p - s.origin), 0.0);
        places
            .map(|(x, y, z)| lo + size * DVec3::new(step(x, 9, 0.47), step(y, 8, 0.51), step(z, 7, 0.54)))
            .any(|p| inside(self, p) && inside(other, p))
    }

    /// Another solid's outline as seen along this one's axis, in (u, v).
    fn shadow(&self, other: &Self) -> Vec<DVec2> {
        let (seen, DVec3 { x, y, z }) = (other.silhouette(), self.origin);
        let (outline, at) = match self.facing {
            Facing::Up | Facing::Down => (seen.plan, DVec2::new(x, y)),
            Facing::Left | Facing::Right => (seen.side, DVec2::new(x, z)),
            Facing::Ahead | Facing::Heel => (seen.front, DVec2::new(y, z)),
        };
        outline.into_iter().map(|p| p - at).collect()
    }

    /// Whether another solid keeps out of this tube's bore.
    fn clear_of_bore(&self, other: &Self, radius: f64) -> bool {
        let shadow = self.shadow(other);
        let clear = polygon::edges(&shadow).all(|(a, b)| {
            let along = b - a;
            let length = along.length_squared();
            let t = if length > 0.0 { (-a.dot(along) / length).clamp(0.0, 1.0) } else { 0.0 };
            (a + along * t).length() >= radius
        });
        // Round the bore only another tube lies, as wide inside.
        let round = || match other.form {
            Form::Cylinder { bore, .. } => {
                let apart = unturned(self.facing, other.origin - self.origin);
                axis(self.facing) == axis(other.facing) && 0.5 * bore - DVec2::new(apart.x, apart.y).length() >= radius
            }
            _ => false,
        };
        clear && (!polygon::contains(&shadow, DVec2::ZERO, 0.0) || round())
    }
}

/// Which of the three ways an axis lies.
fn axis(facing: Facing) -> usize {
    match facing {
        Facing::Ahead | Facing::Heel => 0,
        Facing::Left | Facing::Right => 1,
        Facing::Up | Facing::Down => 2,
    }
}

/// Whether an outline whose corners lie in another lies in it all along its edges: looked at between
/// every two places where it meets the other.
fn lies_in(inner: &[DVec2], outer: &[DVec2]) -> bool {
    let edges =
        |p: &[DVec2]| -> Vec<(DVec2, DVec2)> { p.iter().copied().zip(p.iter().copied().cycle().skip(1)).collect() };
    let around = edges(outer);
    edges(inner).into_iter().all(|(a, b)| {
        let along = b - a;
        let mut cuts = vec![0.0, 1.0];
        for (c, d) in &around {
            let (from, side) = (*c - a, *d - *c);
            let across = along.perp_dot(side);
            let (t, s) = (from.perp_dot(side) / across, from.perp_dot(along) / across);
            if (0.0..=1.0).contains(&t) && (-1e-9..=1.0 + 1e-9).contains(&s) {
                cuts.push(t);
            }
        }
        cuts.sort_by(f64::total_cmp);
        cuts.windows(2).all(|w| polygon::contains(outer, a + along * (0.5 * (w[0] + w[1])), EPS))
    })
}
