//! The signs of the drawings as SVG path data: lines, dimensions, hatching, quartered circles, the
//! plumb bob. On the sheet, y runs down.

use super::projection::Spot;
use std::fmt::Write as _;

/// Length of an arrow head.
const HEAD: f64 = 9.0;
/// Half its width.
const HEAD_HALF: f64 = 3.2;

/// From `a` towards `b`: the unit vector, or to the right where they are one.
pub fn towards(a: Spot, b: Spot) -> Spot {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    let length = (dx * dx + dy * dy).sqrt();
    if length < 1e-9 { (1.0, 0.0) } else { (dx / length, dy / length) }
}

/// `p` moved by `t` times a vector.
pub fn along(p: Spot, direction: Spot, t: f64) -> Spot {
    (p.0 + t * direction.0, p.1 + t * direction.1)
}

/// Half way.
pub fn middle(a: Spot, b: Spot) -> Spot {
    (0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1))
}

/// How far apart.
pub fn apart(a: Spot, b: Spot) -> f64 {
    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
    (dx * dx + dy * dy).sqrt()
}

/// A line.
pub fn line(a: Spot, b: Spot) -> String {
    format!("M{:.1} {:.1}L{:.1} {:.1}", a.0, a.1, b.0, b.1)
}

/// A closed outline; nothing where there are no points.
pub fn closed(points: &[Spot]) -> String {
    let mut path = String::new();
    for (k, p) in points.iter().enumerate() {
        let _ = write!(path, "{}{:.1} {:.1}", if k == 0 { "M" } else { "L" }, p.0, p.1);
    }
    if !path.is_empty() {
        path.push('Z');
    }
    path
}

/// A circle.
pub fn circle(c: Spot, r: f64) -> String {
    let (left, y) = (c.0 - r, c.1);
    format!("M{left:.1} {y:.1}a{r:.1} {r:.1} 0 1 1 {0:.1} 0a{r:.1} {r:.1} 0 1 1 -{0:.1} 0Z", 2.0 * r)
}

/// The two filled quarters of a centre of gravity's mark.
pub fn quarters(c: Spot, r: f64) -> String {
    let (x, y) = c;
    format!(
        "M{x:.1} {y:.1}v-{r:.1}a{r:.1} {r:.1} 0 0 1 {r:.1} {r:.1}ZM{x:.1} {y:.1}v{r:.1}a{r:.1} {r:.1} 0 0 1 -{r:.1} -{r:.1}Z"
    )
}

/// A rectangle with round ends.
pub fn pill(left: f64, top: f64, right: f64, bottom: f64) -> String {
    let r = 5.0_f64.min(0.5 * (bottom - top));
    format!(
        "M{:.1} {top:.1}H{:.1}a{r:.1} {r:.1} 0 0 1 {r:.1} {r:.1}V{:.1}a{r:.1} {r:.1} 0 0 1 -{r:.1} {r:.1}H{:.1}a{r:.1} {r:.1} 0 0 1 -{r:.1} -{r:.1}V{:.1}a{r:.1} {r:.1} 0 0 1 {r:.1} -{r:.1}Z",
        left + r,
        right - r,
        bottom - r,
        left + r,
        top + r
    )
}

/// An arrow head with its point at `tip`, pointing along `direction`.
pub fn head(tip: Spot, direction: Spot, size: f64) -> String {
    let back = along(tip, direction, -HEAD * size);
    let side = (-direction.1, direction.0);
    closed(&[tip, along(back, side, HEAD_HALF * size), along(back, side, -HEAD_HALF * size)])
}

/// A dimension line from `a` to `b`: its thin lines and its arrow heads. Where there is no room
/// between them, the arrows point in from outside.
pub fn dimension(a: Spot, b: Spot) -> (String, String) {
    let d = towards(a, b);
    let back = (-d.0, -d.1);
    if apart(a, b) >= 2.6 * HEAD {
        (line(a, b), head(a, back, 1.0) + &head(b, d, 1.0))
    } else {
        (line(along(a, back, 2.0 * HEAD), along(b, d, 2.0 * HEAD)), head(a, d, 1.0) + &head(b, back, 1.0))
    }
}

/// Strokes along one side of a line: what lies there is beyond it. `outward` is a unit vector.
pub fn hatching(a: Spot, b: Spot, outward: Spot, depth: f64) -> String {
    let pitch = 8.0;
    let d = towards(a, b);
    let count = (apart(a, b) / pitch).floor().clamp(0.0, 400.0) as u32;
    let mut path = String::new();
    for k in 0..=count {
        let foot = along(a, d, f64::from(k) * pitch);
        let end = along(along(foot, outward, depth), d, -0.7 * depth);
        path += &line(foot, end);
    }
    path
}

/// A plumb bob with its point at `tip`, hanging from a cord that runs along `up`, a unit vector. Size 1
/// is [`BOB_HEIGHT`] high.
pub fn bob(tip: Spot, up: Spot, size: f64) -> String {
    // Half widths and heights, from the point up the right side: a line, a curve to the neck, the neck.
    let half = [(11.0, 26.0), (11.5, 33.0), (7.0, 37.0), (4.5, 37.0), (4.5, BOB_HEIGHT)];
    let across = (-up.1, up.0);
    let at = |(x, y): Spot| along(along(tip, up, size * y), across, size * x);
    let right = half.map(at);
    let left = half.map(|(x, y)| at((-x, y)));
    let curve =
        |a: Spot, b: Spot, c: Spot| format!("C{:.1} {:.1} {:.1} {:.1} {:.1} {:.1}", a.0, a.1, b.0, b.1, c.0, c.1);
    let to = |p: Spot| format!("L{:.1} {:.1}", p.0, p.1);
    format!("M{:.1} {:.1}", tip.0, tip.1)
        + &to(right[0])
        + &curve(right[1], right[2], right[3])
        + &to(right[4])
        + &to(left[4])
        + &to(left[3])
        + &curve(left[2], left[1], left[0])
        + "Z"
}

/// How high a bob of size 1 is: the cord ends there.
pub const BOB_HEIGHT: f64 = 44.0;

/// An outline that runs clockwise on the sheet, so that several filled as one leave no gaps.
pub fn one_way_round(mut points: Vec<Spot>) -> Vec<Spot> {
    let next = points.iter().cycle().skip(1);
    let twice_area: f64 = points.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
    if twice_area < 0.0 {
        points.reverse();
    }
    points
}

/// The arrows of a grip: which ways it moves.
pub fn four_ways(c: Spot) -> String {
    [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)]
        .iter()
        .map(|&d| head(along(c, d, 11.0), d, 0.62) + &line(c, along(c, d, 6.0)))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_short_dimension_has_its_arrows_outside() {
        let (long, _) = dimension((0.0, 0.0), (100.0, 0.0));
        assert_eq!(long, "M0.0 0.0L100.0 0.0");
        let (short, heads) = dimension((0.0, 0.0), (6.0, 0.0));
        assert_eq!(short, "M-18.0 0.0L24.0 0.0");
        assert!(heads.starts_with("M0.0 0.0L-9.0"), "{heads}");
    }

    #[test]
    fn no_sign_needs_more_than_a_point() {
        let p = (3.0, 4.0);
        for path in [line(p, p), circle(p, 0.0), quarters(p, 1.0), hatching(p, p, (0.0, 1.0), 9.0), dimension(p, p).1] {
            assert!(!path.contains("NaN") && !path.contains("inf"), "{path}");
        }
        assert_eq!(closed(&[]), "");
    }

    #[test]
    fn hatching_stays_on_its_side_and_ends() {
        let path = hatching((0.0, 0.0), (1e9, 0.0), (0.0, 1.0), 10.0);
        assert!(path.matches('M').count() <= 401);
        for stroke in hatching((0.0, 0.0), (80.0, 0.0), (0.0, 1.0), 10.0).split('M').skip(1) {
            assert!(stroke.ends_with(" 10.0"), "{stroke}");
        }
    }
}
