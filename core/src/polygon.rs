//! Closed outlines in a plane: area, centroid, crossings, what lies inside, the hull.
//!
//! Points in order, the last joined to the first; either sense. Lengths in any one unit.

use glam::DVec2;

/// What is wrong with an outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Fewer than three different points.
    TooShort {
        /// So many.
        points: usize,
    },
    /// Two of its edges cross or touch; an edge is named by the point it starts from, from 0.
    Crosses {
        /// One edge.
        first: usize,
        /// The other.
        second: usize,
    },
    /// It encloses next to nothing.
    Flat,
}

/// An outline that encloses less than this part of the square of its size is flat.
const FLAT: f64 = 1e-6;

/// Twice the area enclosed by a, b, c, positive counter-clockwise.
fn turn(a: DVec2, b: DVec2, c: DVec2) -> f64 {
    (b - a).perp_dot(c - a)
}

/// The edges of an outline: each point with the next, the last with the first.
pub fn edges(points: &[DVec2]) -> impl Iterator<Item = (DVec2, DVec2)> + '_ {
    points.iter().zip(points.iter().cycle().skip(1)).map(|(&a, &b)| (a, b))
}

/// The area enclosed, positive where the points run counter-clockwise.
///
/// ```
/// use glam::DVec2;
/// use standfast_core::polygon::signed_area;
/// let triangle = [DVec2::ZERO, DVec2::new(3.0, 0.0), DVec2::new(0.0, 2.0)];
/// assert_eq!(signed_area(&triangle), 3.0);
/// ```
pub fn signed_area(points: &[DVec2]) -> f64 {
    let origin = points.first().copied().unwrap_or_default();
    0.5 * edges(points).map(|(a, b)| (a - origin).perp_dot(b - origin)).sum::<f64>()
}

/// The area and the centroid of what is enclosed; the middle of the points where that is nothing.
pub fn area_and_centroid(points: &[DVec2]) -> (f64, DVec2) {
    // From a point of the outline, so that a far-off outline loses nothing.
    let origin = points.first().copied().unwrap_or_default();
    let (mut twice, mut moment) = (0.0, DVec2::ZERO);
    for (a, b) in edges(points) {
        let (a, b) = (a - origin, b - origin);
        let cross = a.perp_dot(b);
        twice += cross;
        moment += (a + b) * cross;
    }
    let (lo, hi) = extents(points);
    let size = hi - lo;
    if twice.abs() <= 2.0 * FLAT * FLAT * size.length_squared() {
        return (0.0, 0.5 * (lo + hi));
    }
    (0.5 * twice.abs(), origin + moment / (3.0 * twice))
}

/// The least rectangle with all points; the origin where there are none.
pub fn extents(points: &[DVec2]) -> (DVec2, DVec2) {
    let first = points.first().copied().unwrap_or_default();
    points.iter().fold((first, first), |(lo, hi), p| (lo.min(*p), hi.max(*p)))
}

/// The outline without points that repeat the one before.
pub fn tidied(points: &[DVec2]) -> Vec<DVec2> {
    let mut kept: Vec<DVec2> = Vec::with_capacity(points.len());
    for &p in points {
        if kept.last() != Some(&p) {
            kept.push(p);
        }
    }
    while kept.len() > 1 && kept.first() == kept.last() {
        kept.pop();
    }
    kept
}

/// Whether two stretches have a point in common.
fn meet(a: DVec2, b: DVec2, c: DVec2, d: DVec2) -> bool {
    let within = |p: DVec2, q: DVec2, r: DVec2| {
        let (lo, hi) = (p.min(q), p.max(q));
        r.x >= lo.x && r.x <= hi.x && r.y >= lo.y && r.y <= hi.y
    };
    let sides = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
    let apart = |p: f64, q: f64| (p > 0.0 && q < 0.0) || (p < 0.0 && q > 0.0);
    (apart(sides[0], sides[1]) && apart(sides[2], sides[3]))
        || (sides[0] == 0.0 && within(a, b, c))
        || (sides[1] == 0.0 && within(a, b, d))
        || (sides[2] == 0.0 && within(c, d, a))
        || (sides[3] == 0.0 && within(c, d, b))
}

/// Whether the outlines touch or cross one another.
pub fn outlines_meet(one: &[DVec2], other: &[DVec2]) -> bool {
    edges(one).any(|(a, b)| edges(other).any(|(c, d)| meet(a, b, c, d)))
}

/// What is wrong with an outline, if anything: each is named once, the plainest first.
pub fn fault(points: &[DVec2]) -> Option<Fault> {
    let points = tidied(points);
    let n = points.len();
    if n < 3 {
        return Some(Fault::TooShort { points: n });
    }
    let (lo, hi) = extents(&points);
    for i in 0..n {
        let (a, b) = (points[i], points[(i + 1) % n]);
        for j in i + 1..n {
            let (c, d) = (points[j], points[(j + 1) % n]);
            let crosses = if j == i + 1 {
                // Neighbours share a point; they may only not run back over each other.
                turn(a, b, d) == 0.0 && (b - a).dot(d - c) < 0.0 && n > 3
            } else if (j + 1) % n == i {
                turn(c, a, b) == 0.0 && (a - c).dot(b - a) < 0.0 && n > 3
            } else {
                meet(a, b, c, d)
            };
            if crosses {
                return Some(Fault::Crosses { first: i, second: j });
            }
        }
    }
    let size = (hi - lo).max_element();
    (signed_area(&points).abs() <= FLAT * size * size).then_some(Fault::Flat)
}

/// Whether a point lies inside or within `eps` of the outline.
pub fn contains(points: &[DVec2], p: DVec2, eps: f64) -> bool {
    let mut inside = false;
    for (a, b) in edges(points) {
        let along = b - a;
        let t = if along == DVec2::ZERO { 0.0 } else { ((p - a).dot(along) / along.length_squared()).clamp(0.0, 1.0) };
        if (a + along * t - p).length_squared() <= eps * eps {
            return true;
        }
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * along.x {
            inside = !inside;
        }
    }
    inside
}

/// The box round points whose own corners it has: they are a rectangle, square to the axes, and what lies in it.
pub fn boxed(points: &[DVec2]) -> Option<(DVec2, DVec2)> {
    let (lo, hi) = extents(points);
    let has = |x: f64, y: f64| points.contains(&DVec2::new(x, y));
    let corners = || has(lo.x, lo.y) && has(hi.x, lo.y) && has(hi.x, hi.y) && has(lo.x, hi.y);
    (lo.x < hi.x && lo.y < hi.y && corners()).then_some((lo, hi))
}

/// The corners of a box, counter-clockwise.
pub fn corners(lo: DVec2, hi: DVec2) -> Vec<DVec2> {
    vec![lo, DVec2::new(hi.x, lo.y), hi, DVec2::new(lo.x, hi.y)]
}

/// The convex hull, counter-clockwise (the monotone chain of Andrew 1979).
pub fn hull(points: &[DVec2]) -> Vec<DVec2> {
    // What stands on blades is mostly this, and is looked for while a finger moves.
    if let Some((lo, hi)) = boxed(points) {
        return corners(lo, hi);
    }
    let mut sorted = points.to_vec();
    sorted.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    sorted.dedup();
    if sorted.len() < 3 {
        return sorted;
    }
    let half = |list: &mut dyn Iterator<Item = &DVec2>| {
        let mut chain: Vec<DVec2> = Vec::new();
        for &p in list {
            while chain.len() > 1 && turn(chain[chain.len() - 2], chain[chain.len() - 1], p) <= 0.0 {
                chain.pop();
            }
            chain.push(p);
        }
        chain.pop();
        chain
    };
    let mut chain = half(&mut sorted.iter());
    chain.extend(half(&mut sorted.iter().rev()));
    chain
}

/// Whether an outline has no hollow and runs counter-clockwise.
pub fn is_convex(points: &[DVec2]) -> bool {
    let next = |k: usize| points[k % points.len()];
    points.len() > 2 && (0..points.len()).all(|k| turn(next(k), next(k + 1), next(k + 2)) >= 0.0)
}

/// What a convex outline, counter-clockwise, covers on its way `by`: itself, itself moved, and all
/// between.
pub fn swept(points: &[DVec2], by: DVec2) -> Vec<DVec2> {
    let n = points.len();
    if by == DVec2::ZERO {
        return points.to_vec();
    }
    // An edge whose outward side faces the way ahead goes along.
    let ahead: Vec<bool> = (0..n).map(|k| (points[(k + 1) % n] - points[k]).perp_dot(by) < 0.0).collect();
    let mut swept = Vec::with_capacity(n + 2);
    for k in 0..n {
        let (before, after) = (ahead[(k + n - 1) % n], ahead[k]);
        match (before, after) {
            (true, true) => swept.push(points[k] + by),
            (false, false) => swept.push(points[k]),
            (false, true) => swept.extend([points[k], points[k] + by]),
            (true, false) => swept.extend([points[k] + by, points[k]]),
        }
    }
    swept
}

/// An outline cut into pieces without a hollow: itself, or triangles (ear clipping, Meisters 1975).
/// The outline has no [fault].
pub fn convex_pieces(points: &[DVec2]) -> Vec<Vec<DVec2>> {
    let mut left = tidied(points);
    if signed_area(&left) < 0.0 {
        left.reverse();
    }
    if is_convex(&left) {
        return vec![left];
    }
    let mut pieces = Vec::new();
    while left.len() > 3 {
        let n = left.len();
        let corner = |k: usize| [left[(k + n - 1) % n], left[k], left[(k + 1) % n]];
        let within =
            |[a, b, c]: [DVec2; 3], p: DVec2| turn(a, b, p) >= 0.0 && turn(b, c, p) >= 0.0 && turn(c, a, p) >= 0.0;
        let is_ear = |k: usize| {
            let ear @ [a, b, c] = corner(k);
            turn(a, b, c) > 0.0 && !left.iter().any(|p| *p != a && *p != b && *p != c && within(ear, *p))
        };
        // A corner that does not turn is no corner; should rounding hide every ear, any corner has to do.
        let straight = |k: usize| turn(corner(k)[0], corner(k)[1], corner(k)[2]) == 0.0;
        let k = (0..n).find(|&k| is_ear(k)).or_else(|| (0..n).find(|&k| straight(k))).unwrap_or(0);
        if turn(corner(k)[0], corner(k)[1], corner(k)[2]) > 0.0 {
            pieces.push(corner(k).to_vec());
        }
        left.remove(k);
    }
    pieces.push(left);
    pieces
}

/// The part of an outline that lies in a rectangle (the clipping of Sutherland and Hodgman 1974);
/// empty where they do not meet.
pub fn clipped(points: &[DVec2], lo: DVec2, hi: DVec2) -> Vec<DVec2> {
    if let (4, Some((a, b))) = (points.len(), boxed(points)) {
        let (a, b) = (a.max(lo), b.min(hi));
        return if a.cmple(b).all() { corners(a, b) } else { Vec::new() };
    }
    // A point is kept where n . p <= d.
    let sides = [(DVec2::X, hi.x), (-DVec2::X, -lo.x), (DVec2::Y, hi.y), (-DVec2::Y, -lo.y)];
    sides.into_iter().fold(points.to_vec(), |points, (n, d)| {
        let over = |p: DVec2| n.dot(p) - d;
        let mut kept = Vec::with_capacity(points.len() + 1);
        for (a, b) in edges(&points) {
            let (from, to) = (over(a), over(b));
            if from <= 0.0 {
                kept.push(a);
            }
            if (from < 0.0 && to > 0.0) || (from > 0.0 && to < 0.0) {
                kept.push(a.lerp(b, from / (from - to)));
            }
        }
        kept
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outline(points: &[(f64, f64)]) -> Vec<DVec2> {
        points.iter().map(|&(x, y)| DVec2::new(x, y)).collect()
    }

    /// Source: Gere, Mechanics of Materials, appendix: trapezoid 1 and 3, height 2 (case C31).
    #[test]
    fn a_trapezoid() {
        let (area, centroid) = area_and_centroid(&outline(&[(-1.5, 0.0), (1.5, 0.0), (0.5, 2.0), (-0.5, 2.0)]));
        assert!((area - 4.0).abs() < 1e-12 && (centroid.y - 5.0 / 6.0).abs() < 1e-12 && centroid.x.abs() < 1e-12);
    }

    #[test]
    fn an_outline_far_off_loses_nothing() {
        let near = outline(&[(0.0, 0.0), (0.004, 0.0), (0.004, 0.001), (0.001, 0.003)]);
        let far: Vec<_> = near.iter().map(|p| *p + DVec2::new(1000.0, -2000.0)).collect();
        let ((a, c), (b, d)) = (area_and_centroid(&near), area_and_centroid(&far));
        assert!((a - b).abs() < 1e-12 && (d - c - DVec2::new(1000.0, -2000.0)).length() < 1e-9);
    }

    #[test]
    fn faults_are_named() {
        let bow = [(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)];
        assert_eq!(fault(&outline(&bow)), Some(Fault::Crosses { first: 0, second: 2 }));
        assert_eq!(fault(&outline(&[(0.0, 0.0), (1.0, 0.0), (1.0, 0.0)])), Some(Fault::TooShort { points: 2 }));
        assert_eq!(fault(&[]), Some(Fault::TooShort { points: 0 }));
        assert_eq!(fault(&outline(&[(0.0, 0.0), (1.0, 1.0), (2.0, 2.0)])), Some(Fault::Flat));
        let spike = [(0.0, 0.0), (2.0, 0.0), (1.0, 0.0), (1.0, 1.0)];
        assert_eq!(fault(&outline(&spike)), Some(Fault::Crosses { first: 0, second: 1 }));
        let touching = [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (1.0, 0.0), (0.0, 2.0)];
        assert!(matches!(fault(&outline(&touching)), Some(Fault::Crosses { .. })));
        assert_eq!(fault(&outline(&[(0.0, 0.0), (1e-3, 0.0), (1e-3, 1e-3)])), None, "tiny is not wrong");
        assert_eq!(fault(&outline(&[(0.0, 0.0), (1e6, 0.0), (1e6, 1e6)])), None, "nor is huge");
        let l = [(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (1.0, 1.0), (1.0, 2.0), (0.0, 2.0)];
        assert_eq!(fault(&outline(&l)), None);
        let again: Vec<_> = l.iter().flat_map(|p| [*p, *p]).collect();
        assert_eq!(fault(&outline(&again)), None, "a double tap is one point");
    }

    #[test]
    fn inside_on_the_edge_and_outside() {
        let l = outline(&[(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (1.0, 1.0), (1.0, 2.0), (0.0, 2.0)]);
        for (x, y, is) in [(0.5, 1.5, true), (1.5, 1.5, false), (1.5, 0.5, true), (2.0, 0.5, true), (2.01, 0.5, false)]
        {
            assert_eq!(contains(&l, DVec2::new(x, y), 1e-9), is, "{x} {y}");
        }
    }

    #[test]
    fn a_hollow_outline_falls_into_pieces_that_make_it_up() {
        let u =
            outline(&[(0.0, 0.0), (3.0, 0.0), (3.0, 2.0), (2.0, 2.0), (2.0, 1.0), (1.0, 1.0), (1.0, 2.0), (0.0, 2.0)]);
        for u in [u.clone(), u.iter().rev().copied().collect()] {
            let pieces = convex_pieces(&u);
            assert!(pieces.iter().all(|p| is_convex(p)));
            let area: f64 = pieces.iter().map(|p| signed_area(p)).sum();
            assert!((area - 5.0).abs() < 1e-12);
            let between = |p: &Vec<DVec2>| contains(p, DVec2::new(1.5, 1.5), 0.0);
            assert!(!pieces.iter().any(between), "the hollow is in no piece");
        }
        let square = outline(&[(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]);
        assert_eq!(convex_pieces(&square), vec![square]);
    }

    #[test]
    fn what_is_swept_is_the_hull_of_both_ends() {
        let square = outline(&[(0.0, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)]);
        assert!(is_convex(&square) && !is_convex(&square.iter().rev().copied().collect::<Vec<_>>()));
        for (x, y) in [(0.5, 0.0), (-0.5, 0.2), (0.0, -3.0), (0.3, 0.4), (0.0, 0.0)] {
            let by = DVec2::new(x, y);
            let both: Vec<DVec2> = square.iter().flat_map(|p| [*p, *p + by]).collect();
            let (swept, hull) = (swept(&square, by), hull(&both));
            assert!((signed_area(&swept) - signed_area(&hull)).abs() < 1e-12, "{by}: {swept:?}");
            assert!(fault(&swept).is_none());
        }
    }

    #[test]
    fn a_triangle_clipped_by_a_strip() {
        let triangle = outline(&[(0.0, 0.0), (4.0, 0.0), (0.0, 4.0)]);
        let clip = |lo, hi| hull(&clipped(&triangle, lo, hi));
        let strip = clip(DVec2::new(1.0, -1.0), DVec2::new(2.0, 9.0));
        assert!((signed_area(&strip) - 2.5).abs() < 1e-12, "{strip:?}");
        assert_eq!(clip(DVec2::new(5.0, 0.0), DVec2::new(6.0, 1.0)), []);
        assert_eq!(clip(DVec2::ZERO, DVec2::new(9.0, 9.0)), triangle);
        assert_eq!(clipped(&outline(&[(1.0, 1.0)]), DVec2::ZERO, DVec2::new(2.0, 2.0)).len(), 1);
    }

    #[test]
    fn a_hull_leaves_out_what_lies_within() {
        let points = outline(&[(0.0, 0.0), (2.0, 0.0), (1.0, 0.5), (2.0, 2.0), (0.0, 2.0), (1.0, 0.0)]);
        assert_eq!(hull(&points), outline(&[(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)]));
        assert_eq!(hull(&points[..1]).len(), 1);
    }
}
