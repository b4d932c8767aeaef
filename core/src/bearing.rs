//! What of the load's underside lies on the fork blades, wherever in its ranges the load stands.
//!
//! In the blades' frame, m: x ahead from the fork (or attachment) face, y left from the middle
//! between the forks.

use crate::polygon;
use crate::rules;
use crate::scalar::Span;
use crate::scenario::Scenario;
use crate::solid;
use glam::DVec2;
use serde::Serialize;

/// Over which edge a load may topple.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Over {
    /// Away from the truck.
    Ahead,
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// Back, where it stands too far off to lean on the face.
    Heel,
}

/// The load in one place on the blades.
#[derive(Clone, Debug, PartialEq)]
pub struct Lies {
    /// How far the load stands from the face, and left of the middle.
    pub by: DVec2,
    /// The hull of what lies on the left and on the right blade; empty where nothing does.
    pub strips: [Vec<DVec2>; 2],
    /// What carries the load: the hull of both.
    pub region: Vec<DVec2>,
    /// Its edges: over which the load would topple, the outward normal, and how far out along it the edge lies.
    pub edges: Vec<(Over, DVec2, f64)>,
    /// The width on each blade; what it lacks to it, negative, where nothing lies on it.
    pub width: [f64; 2],
}

/// The tightest of all edges that face one way, over the ends of a bearing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// Over which the load would topple.
    pub over: Over,
    /// Whether the load leans on the face where it stands so.
    pub leans: bool,
    /// The outward normal.
    pub normal: DVec2,
    /// How far out along that it lies from where the load was measured from, m.
    pub out: f64,
}

/// As stated, and at both ends of heel gap and offset.
#[derive(Clone, Debug, PartialEq)]
pub struct Bearing {
    /// As stated.
    pub stated: Lies,
    /// The edges of all ends, of those that face one way the tightest.
    pub edges: Vec<Edge>,
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
        let places: Vec<DVec2> =
            both(gap).into_iter().flat_map(|g| both(offset).into_iter().map(move |o| DVec2::new(g, o))).collect();
        let places = places.iter().flat_map(|by| both(forks.blade).into_iter().map(move |blade| (*by, blade)));
        let narrowest = forks.spread + doubts.fork_spread.lo;
        // Set wider a blade may miss the load, or carry it where it is shorter.
        let wider = forks.spread + doubts.fork_spread.hi;
        let settings = [narrowest, wider].into_iter().take(if wider > narrowest { 2 } else { 1 });
        let on = |spread| places.clone().map(move |(by, blade)| lies(scenario, by, spread, blade, shorter));
        let ends: Vec<Lies> = settings.flat_map(on).collect();
        // Where nobody entered how far apart, a narrow load may fall between them.
        let widest = forks.spread_hi.max(wider);
        let doubt = scenario.load.doubt.y;
        let worse = |least: [f64; 2], width: [f64; 2]| std::array::from_fn(|k| least[k].min(width[k] - doubt));
        let mut least = ends.iter().fold(stated.width, |least, l| worse(least, l.width));
        if widest > wider {
            let on = |by, blade| width(scenario, by, &strip(scenario, by, blade), blade);
            let wider = places.map(|(by, blade)| blades(scenario, widest, blade, shorter).map(|b| on(by, b)));
            least = wider.fold(least, worse);
        }
        let edges = tightest(&ends);
        Self { stated, edges, ends, least }
    }
}

/// Whether a load so far from the face leans on it when it leans back.
pub fn leans_on_face(gap: f64) -> bool {
    gap <= rules::HEEL_LEANS.value
}

/// The edges of all ends together: every step asks for them again.
fn tightest(ends: &[Lies]) -> Vec<Edge> {
    let mut edges: Vec<Edge> = Vec::with_capacity(8);
    for lies in ends {
        let leans = leans_on_face(lies.by.x);
        for &(over, normal, out) in &lies.edges {
            let out = out - normal.dot(lies.by);
            match edges.iter_mut().find(|e| e.over == over && e.leans == leans && e.normal == normal) {
                Some(edge) => edge.out = edge.out.min(out),
                None => edges.push(Edge { over, leans, normal, out }),
            }
        }
    }
    edges
}

fn both(span: Span) -> Vec<f64> {
    if span.is_exact() { vec![span.lo] } else { vec![span.lo, span.hi] }
}

/// The left and the right blade as rectangles, their reach longer by `longer`.
fn blades(scenario: &Scenario, spread: f64, blade: f64, longer: f64) -> [(DVec2, DVec2); 2] {
    let (reach, outer, inner) = (scenario.truck.forks.reach() + longer, 0.5 * spread, 0.5 * spread - blade);
    [(inner, outer), (-outer, -inner)].map(|(a, b)| (DVec2::new(0.0, a), DVec2::new(reach, b)))
}

/// How wide a strip lies on its blade; what it lacks to it, negative, where nothing does.
fn width(scenario: &Scenario, by: DVec2, strip: &[DVec2], blade: (DVec2, DVec2)) -> f64 {
    let (lo, hi) = polygon::extents(strip);
    if strip.is_empty() { -lacks(&scenario.load.feet, by, blade) } else { hi.y - lo.y }
}

fn lies(scenario: &Scenario, by: DVec2, spread: f64, blade: f64, longer: f64) -> Lies {
    let blades = blades(scenario, spread, blade, longer);
    let strips = blades.map(|blade| strip(scenario, by, blade));
    let width = std::array::from_fn(|k| width(scenario, by, &strips[k], blades[k]));
    // Mostly a load stands on one rectangle: what lies on both blades is one too, and so is the hull.
    let both = strips.each_ref().map(|strip| polygon::boxed(strip).filter(|_| strip.len() == 4));
    if let [Some((a, b)), Some((c, d))] = both
        && a.x.to_bits() == c.x.to_bits()
        && b.x.to_bits() == d.x.to_bits()
        && (b.max(d) - a.min(c)).min_element() > 2.0 * THIN
    {
        let (lo, hi) = (a.min(c), b.max(d));
        let sides = [(-DVec2::Y, lo), (DVec2::X, hi), (DVec2::Y, hi), (-DVec2::X, lo)];
        let edges = sides.map(|(n, p)| edge(n, p)).to_vec();
        return Lies { by, strips, region: polygon::corners(lo, hi), edges, width };
    }
    let region = plain(polygon::hull(&strips.concat()));
    let edges = edges(&region);
    Lies { by, strips, region, edges, width }
}

/// An edge through a point, and over which the load would topple there.
fn edge(n: DVec2, p: DVec2) -> (Over, DVec2, f64) {
    (over(n), n, n.dot(p))
}

/// The hull of what lies on a blade.
fn strip(scenario: &Scenario, by: DVec2, blade: (DVec2, DVec2)) -> Vec<DVec2> {
    let mut on: Vec<DVec2> = Vec::new();
    for foot in &scenario.load.feet {
        let Some(mut part) = solid::on(foot, blade.0 - by, blade.1 - by) else { continue };
        part.iter_mut().for_each(|p| *p += by);
        if on.is_empty() { on = part } else { on.append(&mut part) }
    }
    // The corners of one rectangle are what they are.
    if on.len() == 4 && polygon::boxed(&on).is_some() { on } else { polygon::hull(&on) }
}

/// The edges of a region: the outward normal of each and how far out along it the edge lies.
fn edges(region: &[DVec2]) -> Vec<(Over, DVec2, f64)> {
    match region {
        [] => Vec::new(),
        [p] => [DVec2::X, DVec2::Y, -DVec2::Y].map(|n| edge(n, *p)).to_vec(),
        // A line: to either side, and past its ends.
        [a, b] => {
            let along = (*b - *a).normalize_or(DVec2::Y);
            vec![edge(along.perp(), *a), edge(-along.perp(), *a), edge(along, *b), edge(-along, *a)]
        }
        _ => polygon::edges(region).map(|(a, b)| edge(-along(a, b).perp(), a)).collect(),
    }
}

/// From one corner to the next, a unit vector: exactly along or across where they lie so, so that edges
/// which face the same way are seen to.
fn along(a: DVec2, b: DVec2) -> DVec2 {
    let length = (b - a).length();
    if length > 0.0 { (b - a) / length } else { DVec2::Y }
}

/// The edge that a normal points over.
fn over(n: DVec2) -> Over {
    if n.x >= n.y.abs() {
        Over::Ahead
    } else if n.x < -n.y.abs() - 1e-9 {
        // What faces the heel no more than a side counts for the side.
        Over::Heel
    } else if n.y > 0.0 {
        Over::Left
    } else {
        Over::Right
    }
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
