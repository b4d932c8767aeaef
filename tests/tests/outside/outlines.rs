//! Outlines against the geo crate: areas, centroids, what lies inside, hulls, crossings.

use crate::{Worst, seeds};
use geo::coordinate_position::{CoordPos, CoordinatePosition};
use geo::{Area, Centroid, ConvexHull, Coord, Distance, Euclidean, Intersects, LineString, Point, Polygon, Validation};
use glam::DVec2;
use standfast_core::polygon::{self, Fault};
use standfast_tests::draw::Draws;
use standfast_tests::outline;

fn ring(points: &[DVec2]) -> LineString {
    let mut ring: LineString = points.iter().map(|p| Coord { x: p.x, y: p.y }).collect();
    ring.close();
    ring
}

fn of(points: &[DVec2]) -> Polygon {
    Polygon::new(ring(points), Vec::new())
}

/// A size and a place: 1e-3, 1, 1e6 and between, at the origin and up to ten thousand sizes away. Powers of
/// two, so that points on a grid stay on one.
fn scaled(draws: &mut Draws) -> (f64, DVec2) {
    let size = libm::exp2(draws.count(0..31) as f64 - 10.0);
    let away = if draws.chance(0.5) { 0.0 } else { libm::exp2(draws.count(0..13) as f64) };
    let part = |draws: &mut Draws| (draws.count(0..17) as f64 - 8.0) / 8.0;
    (size, DVec2::new(part(draws), part(draws)) * away * size)
}

fn size_of(points: &[DVec2]) -> f64 {
    let (lo, hi) = polygon::extents(points);
    (hi - lo).max_element()
}

/// Far from the origin geo's own centroid loses digits, so it is taken at the origin and moved.
#[test]
fn areas_and_centroids() {
    let (mut areas, mut centroids) = (Worst::default(), Worst::default());
    for mut draws in seeds(6000) {
        let near = outline::simple(&mut draws);
        let (size, away) = scaled(&mut draws);
        let points: Vec<DVec2> = near.iter().map(|p| *p * size + away).collect();
        let (area, centroid) = polygon::area_and_centroid(&points);
        let scale = size * size_of(&near);
        let reference = of(&near);
        let middle = reference.centroid().expect("a polygon has a centroid");
        let there = DVec2::new(middle.x(), middle.y()) * size + away;
        // Rounding of a far-off place weighs the more, the less is enclosed.
        let fullness = reference.unsigned_area() / (size_of(&near) * size_of(&near));
        let slack = (1.0 + away.length() / scale) * 1e-12 / fullness;
        let expected = reference.unsigned_area() * size * size;
        areas.within((area - expected).abs() / expected, 1e-12 + slack, &points);
        centroids.within((centroid - there).length() / scale, 1e-12 + slack, &points);
        let signed = polygon::signed_area(&points);
        assert!((signed - reference.signed_area() * size * size).abs() <= (1e-12 + slack) * expected, "{points:?}");
    }
    areas.say("areas");
    centroids.say("centroids");
}

/// On the grid every sum is exact in both, so they must agree on every touch, repeat and spike.
#[test]
fn faults_on_a_grid() {
    let (mut simple, mut crossing, mut flat) = (0, 0, 0);
    for mut draws in seeds(20_000) {
        let near = if draws.chance(0.3) { outline::stairs(&mut draws) } else { outline::on_grid(&mut draws) };
        let (size, away) = scaled(&mut draws);
        let points: Vec<DVec2> = near.iter().map(|p| *p * size + away).collect();
        // Taps on the same place twice running are one point in both. Three points in a line pass there.
        let reference = of(&points);
        let valid = reference.is_valid() && reference.unsigned_area() > 0.0;
        match polygon::fault(&points) {
            None => simple += 1,
            Some(Fault::Flat) => flat += 1,
            Some(_) => crossing += 1,
        }
        assert_eq!(polygon::fault(&points).is_none(), valid, "{points:?}: {:?}", polygon::fault(&points));
    }
    assert!(simple > 3000 && crossing > 3000, "{simple} simple, {crossing} crossing, {flat} flat");
    eprintln!("faults on a grid: {simple} simple, {crossing} crossing, {flat} flat");
}

/// In general position too, thin ones set apart: geo knows no thinness.
#[test]
fn faults_in_general() {
    let (mut simple, mut crossing) = (0, 0);
    for mut draws in seeds(10_000) {
        let near = if draws.chance(0.5) { outline::simple(&mut draws) } else { outline::anywhere(&mut draws, 3..9) };
        let (size, away) = scaled(&mut draws);
        let points: Vec<DVec2> = near.iter().map(|p| *p * size + away).collect();
        let reference = of(&points);
        match polygon::fault(&points) {
            None => {
                assert!(reference.is_valid(), "{points:?}");
                simple += 1;
            }
            Some(Fault::Flat) => {
                let size = size_of(&points);
                assert!(reference.unsigned_area() <= 2e-6 * size * size, "{points:?}");
            }
            Some(Fault::Crosses { first, second }) => {
                assert!(!reference.is_valid(), "{points:?}");
                // The two edges named do meet.
                let edge = |k: usize| {
                    let p = polygon::tidied(&points);
                    let (a, b) = (p[k], p[(k + 1) % p.len()]);
                    geo::Line::new((a.x, a.y), (b.x, b.y))
                };
                assert!(edge(first).intersects(&edge(second)), "{points:?}");
                crossing += 1;
            }
            Some(Fault::TooShort { points: n }) => assert!(n < 3),
        }
    }
    assert!(simple > 3000 && crossing > 1500, "{simple} simple, {crossing} crossing");
    eprintln!("faults in general: {simple} simple, {crossing} crossing");
}

#[test]
fn what_lies_inside() {
    let (mut inside, mut outside, mut edge) = (0, 0, 0);
    for mut draws in seeds(3000) {
        let points = if draws.chance(0.5) { outline::simple(&mut draws) } else { outline::stairs(&mut draws) };
        let (size, away) = scaled(&mut draws);
        let points: Vec<DVec2> = points.iter().map(|p| *p * size + away).collect();
        let (lo, hi) = polygon::extents(&points);
        let eps = 1e-9 * (size_of(&points) + away.length());
        let reference = of(&points);
        for k in 0..12 {
            let p = match k {
                // Corners, middles of edges, and on the level of a corner: where counting crossings goes wrong.
                0..3 => points[draws.count(0..points.len())],
                3..6 => {
                    let at = draws.count(0..points.len());
                    0.5 * (points[at] + points[(at + 1) % points.len()])
                }
                6..8 => DVec2::new(lo.x + (hi.x - lo.x) * draws.unit(), points[draws.count(0..points.len())].y),
                _ => lo + (hi - lo) * DVec2::new(draws.within(-0.1..1.1), draws.within(-0.1..1.1)),
            };
            let found = polygon::contains(&points, p, eps);
            match reference.coordinate_position(&Coord { x: p.x, y: p.y }) {
                CoordPos::Inside => {
                    assert!(found, "{p} is inside {points:?}");
                    inside += 1;
                }
                CoordPos::OnBoundary => {
                    assert!(found, "{p} is on the edge of {points:?}");
                    edge += 1;
                }
                CoordPos::Outside => {
                    let away = Euclidean.distance(&Point::new(p.x, p.y), &reference);
                    assert_eq!(found, away <= eps, "{p} is {away} outside {points:?}");
                    outside += 1;
                }
            }
        }
    }
    assert!(inside > 5000 && outside > 5000 && edge > 5000, "{inside} inside, {outside} outside, {edge} on the edge");
}

#[test]
fn hulls() {
    for mut draws in seeds(6000) {
        let near = match draws.count(0..3) {
            0 => outline::simple(&mut draws),
            1 => outline::on_grid(&mut draws),
            _ => outline::anywhere(&mut draws, 3..40),
        };
        let (size, away) = scaled(&mut draws);
        let points: Vec<DVec2> = near.iter().map(|p| *p * size + away).collect();
        let found = polygon::hull(&points);
        let hull = of(&points).convex_hull();
        let mut corners: Vec<DVec2> = hull.exterior().coords().map(|c| DVec2::new(c.x, c.y)).collect();
        corners.pop();
        // Geo leaves some points in that lie in a line with their neighbours; on the grid that is exact.
        let n = corners.len();
        let bends = |k: usize| {
            let (a, b, c) = (corners[(k + n - 1) % n], corners[k], corners[(k + 1) % n]);
            (b - a).perp_dot(c - b) > 0.0
        };
        let mut corners: Vec<DVec2> = (0..n).filter(|&k| bends(k)).map(|k| corners[k]).collect();
        if hull.unsigned_area() <= 1e-12 * size * size {
            assert!(found.len() <= 2, "{points:?}");
            continue;
        }
        // Both run counter-clockwise; each begins where it likes.
        let least = (0..corners.len())
            .min_by(|&a, &b| corners[a].x.total_cmp(&corners[b].x).then(corners[a].y.total_cmp(&corners[b].y)))
            .expect("corners");
        corners.rotate_left(least);
        assert_eq!(found, corners, "{points:?}");
    }
}

#[test]
fn outlines_that_meet() {
    let (mut meet, mut apart) = (0, 0);
    for mut draws in seeds(6000) {
        let grid = draws.chance(0.5);
        let one = |draws: &mut Draws| {
            let points = if grid { outline::stairs(draws) } else { outline::simple(draws) };
            let by = DVec2::new(draws.count(0..17) as f64 - 8.0, draws.count(0..17) as f64 - 8.0) / 8.0;
            points.iter().map(|p| *p * if grid { 1.0 } else { 0.5 } + by).collect::<Vec<_>>()
        };
        let (a, b) = (one(&mut draws), one(&mut draws));
        let found = polygon::outlines_meet(&a, &b);
        assert_eq!(found, ring(&a).intersects(&ring(&b)), "{a:?} {b:?}");
        if found { meet += 1 } else { apart += 1 }
    }
    assert!(meet > 500 && apart > 500, "{meet} meet, {apart} do not");
}
