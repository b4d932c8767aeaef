//! Random closed outlines of about unit size: simple ones, and ones that may cross themselves.

use crate::draw::Draws;
use glam::DVec2;
use std::f64::consts::TAU;

/// Seen whole from its middle; hollow nearly everywhere.
pub fn star(draws: &mut Draws) -> Vec<DVec2> {
    let n = draws.count(3..24);
    (0..n)
        .map(|k| {
            // No two neighbours half a turn apart, so the middle stays inside.
            let angle = TAU * (k as f64 + draws.within(0.0..0.4)) / n as f64;
            let (sin, cos) = libm::sincos(angle);
            DVec2::new(cos, sin) * draws.within(0.15..1.0)
        })
        .collect()
}

/// Points anywhere, joined so that nothing crosses: each crossing undone makes it shorter, so this ends.
pub fn untangled(draws: &mut Draws) -> Vec<DVec2> {
    let mut points = anywhere(draws, 4..14);
    let n = points.len();
    let crossing = |p: &[DVec2]| {
        (0..n).flat_map(|i| (i + 2..n).map(move |j| (i, j))).filter(|&(i, j)| (j + 1) % n != i).find(|&(i, j)| {
            let (a, b, c, d) = (p[i], p[i + 1], p[j], p[(j + 1) % n]);
            let side = |a: DVec2, b: DVec2, c: DVec2| (b - a).perp_dot(c - a) > 0.0;
            side(a, b, c) != side(a, b, d) && side(c, d, a) != side(c, d, b)
        })
    };
    while let Some((i, j)) = crossing(&points) {
        points[i + 1..=j].reverse();
    }
    points
}

/// Stairs up and down on a base, some of them level, so that points lie in a line.
pub fn stairs(draws: &mut Draws) -> Vec<DVec2> {
    let n = draws.count(1..8);
    let mut points = vec![DVec2::ZERO];
    for k in 0..n {
        let height = draws.count(1..6) as f64 / 8.0;
        points.extend([k, k + 1].map(|x| DVec2::new(x as f64 / 8.0, height)));
    }
    points.push(DVec2::new(n as f64 / 8.0, 0.0));
    points
}

/// One of the three above, either way round.
pub fn simple(draws: &mut Draws) -> Vec<DVec2> {
    let mut points = match draws.count(0..3) {
        0 => star(draws),
        1 => untangled(draws),
        _ => stairs(draws),
    };
    if draws.chance(0.5) {
        points.reverse();
    }
    points
}

/// Points anywhere in a square, in any order: mostly self-crossing.
pub fn anywhere(draws: &mut Draws, points: std::ops::Range<usize>) -> Vec<DVec2> {
    (0..draws.count(points)).map(|_| DVec2::new(draws.within(-1.0..1.0), draws.within(-1.0..1.0))).collect()
}

/// Points on a coarse grid, so that they often repeat, touch, lie in a line or run back, and every
/// sum in them is exact.
pub fn on_grid(draws: &mut Draws) -> Vec<DVec2> {
    let wide = draws.count(3..8);
    let mut one = |_| DVec2::new(draws.count(0..wide) as f64, draws.count(0..wide) as f64) / 8.0;
    (0..3 + wide).map(&mut one).collect()
}
