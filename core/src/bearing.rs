//! What of the load's underside lies on the fork blades, wherever in its ranges the load stands.
//!
//! In the blades' frame, m: x ahead from the fork (or attachment) face, y left from the middle
//! between the forks.

use crate::polygon;
use crate::scalar::Span;
use crate::scenario::Scenario;
use crate::solid;
use glam::DVec2;

/// The load in one place on the blades.
#[derive(Clone, Debug, PartialEq)]
pub struct Lies {
    /// How far the load stands from the face, and left of the middle.
    pub by: DVec2,
    /// The hull of what lies on the left and on the right blade; empty where nothing does.
    pub strips: [Vec<DVec2>; 2],
    /// What carries the load: the hull of both.
    pub region: Vec<DVec2>,
    /// The width on each blade; what it lacks to it, negative, where nothing lies on it.
    pub width: [f64; 2],
}

/// As stated, and at both ends of heel gap and offset.
#[derive(Clone, Debug, PartialEq)]
pub struct Bearing {
    /// As stated.
    pub stated: Lies,
    /// The ends of heel gap and offset, with blades as narrow and as wide as they may be.
    pub ends: Vec<Lies>,
    /// The least width on each blade over all ranges, the forks' own included.
    pub least: [f64; 2],
}

/// Corners nearer to one another than this are one, and what is no wider is a line, m.
const THIN: f64 = 1e-6;

impl Bearing {
    /// Of a scenario.
    pub fn of(scenario: &Scenario) -> Self {
        let (forks, lift) = (&scenario.truck.forks, &scenario.lift);
        let (gap, offset) = (lift.heel_gap, lift.offset);
        let stated = lies(scenario, DVec2::new(gap.nominal, offset.nominal), forks.spread, forks.blade.nominal, 0.0);
        // How far the blades reach counts at the least, where they stand at both ends.
        let doubts = &scenario.doubts;
        let shorter = forks.extension.map_or(doubts.fork_length.lo, |_| doubts.extension.lo);
        let at = |spread: f64| {
            let places = both(gap).into_iter().flat_map(|g| both(offset).into_iter().map(move |o| DVec2::new(g, o)));
            let widths = |by| both(forks.blade).into_iter().map(move |blade| (by, blade));
            places.flat_map(widths).map(|(by, blade)| lies(scenario, by, spread, blade, shorter)).collect::<Vec<_>>()
        };
        let ends = at(forks.spread + doubts.fork_spread.lo);
        // Forks may stand further apart, most of all where nobody entered how far, and a narrow load between them.
        let widest = forks.spread_hi.max(forks.spread + doubts.fork_spread.hi);
        let wider = if widest > forks.spread { at(widest) } else { Vec::new() };
        let doubt = scenario.load.doubt.y;
        let least = ends
            .iter()
            .chain(&wider)
            .fold(stated.width, |least, l| std::array::from_fn(|k| least[k].min(l.width[k] - doubt)));
        Self { stated, ends, least }
    }
}

fn both(span: Span) -> Vec<f64> {
    if span.is_exact() { vec![span.lo] } else { vec![span.lo, span.hi] }
}

fn lies(scenario: &Scenario, by: DVec2, spread: f64, blade: f64, longer: f64) -> Lies {
    let (reach, outer, inner) = (scenario.truck.forks.reach() + longer, 0.5 * spread, 0.5 * spread - blade);
    let blades = [(inner, outer), (-outer, -inner)].map(|(a, b)| (DVec2::new(0.0, a), DVec2::new(reach, b)));
    let feet = &scenario.load.feet;
    let strips = blades.map(|(lo, hi)| {
        let on = feet.iter().filter_map(|foot| solid::on(foot, lo - by, hi - by)).flatten();
        polygon::hull(&on.map(|p| p + by).collect::<Vec<_>>())
    });
    let width = std::array::from_fn(|k| {
        let (lo, hi) = polygon::extents(&strips[k]);
        if strips[k].is_empty() { -lacks(feet, by, blades[k]) } else { hi.y - lo.y }
    });
    let region = plain(polygon::hull(&strips.concat()));
    Lies { by, strips, region, width }
}

/// How far the nearest foot is from a blade.
fn lacks(feet: &[Vec<DVec2>], by: DVec2, (lo, hi): (DVec2, DVec2)) -> f64 {
    let away = |foot: &Vec<DVec2>| {
        let (a, b) = polygon::extents(foot);
        let (a, b) = (a + by, b + by);
        (a - hi).max(lo - b).max_element().max(0.0)
    };
    feet.iter().map(away).fold(f64::INFINITY, f64::min).min(100.0)
}

/// A hull without what only rounding made: an edge between two corners that are one faces anywhere.
fn plain(mut hull: Vec<DVec2>) -> Vec<DVec2> {
    hull.dedup_by(|b, a| a.distance(*b) < THIN);
    if hull.len() > 1 && hull[0].distance(hull[hull.len() - 1]) < THIN {
        hull.pop();
    }
    let furthest =
        |from: DVec2| hull.iter().copied().fold(from, |f, p| if from.distance(p) > from.distance(f) { p } else { f });
    let Some(&first) = hull.first() else { return hull };
    // From any corner the furthest is an end of a line, and from that the other.
    let a = furthest(first);
    let b = furthest(a);
    let along = (b - a).normalize_or(DVec2::Y);
    if hull.len() > 1 && hull.iter().all(|p| along.perp_dot(*p - a).abs() < THIN) { vec![a, b] } else { hull }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    fn rectangle(x0: f64, y0: f64, x1: f64, y1: f64) -> Vec<DVec2> {
        [(x0, y0), (x1, y0), (x1, y1), (x0, y1)].map(|(x, y)| DVec2::new(x, y)).to_vec()
    }

    /// Forks 700 mm over both, blades of 120 mm.
    fn scenario(feet: Vec<Vec<DVec2>>) -> Scenario {
        let mut s = example::three_wheel();
        s.doubts = crate::doubt::Doubts::NONE;
        s.truck.forks.blade = Span::exact(0.12);
        s.lift.offset = Span::exact(0.0);
        s.lift.heel_gap = Span::exact(0.0);
        s.load.doubt = DVec2::ZERO;
        s.load.feet = feet;
        s
    }

    /// A skid beside the left blade does not lie on it, however far the deck above them reaches.
    #[test]
    fn what_lies_beside_a_blade_does_not_lie_on_it() {
        let skids = vec![rectangle(0.0, -0.35, 1.2, -0.25), rectangle(0.0, 0.8, 1.2, 0.9)];
        let bearing = Bearing::of(&scenario(skids));
        assert!(bearing.stated.strips[0].is_empty() && (bearing.stated.width[0] + 0.45).abs() < 1e-12);
        assert!((bearing.stated.width[1] - 0.1).abs() < 1e-12);
    }

    #[test]
    fn a_narrow_load_falls_between_and_a_wider_setting_is_thought_of() {
        let mut s = scenario(vec![rectangle(0.0, -0.25, 1.0, 0.25)]);
        assert!((Bearing::of(&s).least[0] - 0.02).abs() < 1e-12);
        s.load.doubt = DVec2::splat(0.03);
        assert!((Bearing::of(&s).least[0] + 0.01).abs() < 1e-12, "its size is not that sure");
        s.load.doubt = DVec2::ZERO;
        (s.truck.forks.spread, s.truck.forks.spread_hi) = (0.5, 0.9);
        let bearing = Bearing::of(&s);
        assert!((bearing.stated.width[0] - 0.12).abs() < 1e-12 && (bearing.least[0] + 0.08).abs() < 1e-12);
    }

    #[test]
    fn a_line_is_a_line() {
        let bearing = Bearing::of(&scenario(vec![vec![DVec2::new(0.5, -0.6), DVec2::new(0.5, 0.6)]]));
        assert_eq!(bearing.stated.region.len(), 2);
        let many: Vec<DVec2> = (0..2000).map(|k| DVec2::new(0.5, -0.6 + 0.0006 * f64::from(k))).collect();
        assert_eq!(plain(polygon::hull(&many)).len(), 2);
    }
}
