//! Common centres and handbook centroids, through loads built from parts.

use crate::{exact, inches, lb};
use standfast_core::document::{Document, Facing, GivenAs, Part, Shape};
use standfast_core::report::{LoadReport, find_load};

/// A load built from these parts, found without any truck.
fn found(parts: Vec<Part>) -> LoadReport {
    let mut document = Document::default();
    (document.load.given_as, document.load.parts) = (GivenAs::Parts, parts);
    let answer = find_load(&document);
    assert_eq!(answer.problems, []);
    answer.load.expect("a load")
}

/// A small box of this weight with its own middle so far ahead.
fn weight(kg: f64, ahead: f64) -> Part {
    let edge = Some(0.1);
    let (length_m, width_m, height_m) = (edge, edge, edge);
    let place = (Some(ahead - 0.05), Some(0.0), Some(0.0));
    let (ahead_m, left_m, above_m) = place;
    Part {
        shape: Some(Shape::Box),
        mass_kg: Some(kg),
        length_m,
        width_m,
        height_m,
        ahead_m,
        left_m,
        above_m,
        ..Part::default()
    }
}

/// C28, C29, C30. Sources: a published weight-and-balance example (read), 3,500 at 40 in and 5,500 at 195 in
/// balance at 134.72 in; 5,800 at 52 and 9,500 at 222 at 157.56 in; an aviation course (read), 5 kg at 2 m and
/// 10 kg at 5 m at 4.000 m.
///
/// Difference: the second publication prints 157.52 in, a slip of its own. Pounds and metres are ten times
/// those printed or a tenth of them, so that they are loads for a fork-lift truck.
#[test]
fn c28_c29_c30_as_parts() {
    let centre =
        |list: &[(f64, f64)]| found(list.iter().map(|&(kg, x)| weight(kg, x)).collect()).centre.ahead.nominal.get();
    let tenth = |list: [(f64, f64); 2]| centre(&list.map(|(m, x)| (lb(m), inches(x) / 10.0))) * 10.0 / inches(1.0);
    assert!((tenth([(3500.0, 40.0), (5500.0, 195.0)]) - 134.72).abs() < 0.005);
    assert!((tenth([(5800.0, 52.0), (9500.0, 222.0)]) - 157.56).abs() < 0.005);
    exact(centre(&[(50.0, 2.0), (100.0, 5.0)]), 4.0);
}

/// One part of 100 kg, standing on the datum, its middle over it.
fn one(shape: Shape, facing: Facing, sizes: impl FnOnce(&mut Part)) -> LoadReport {
    let mut part = Part { shape: Some(shape), facing, mass_kg: Some(100.0), ..Part::default() };
    (part.ahead_m, part.left_m, part.above_m) = (Some(0.0), Some(0.0), Some(0.0));
    sizes(&mut part);
    found(vec![part])
}

/// C31. Sources: Gere, Mechanics of Materials, appendix, and statics tables (read or memory): a trapezoid with
/// sides 1 and 3 and height 2 has its centroid 0.8333 above the longer side; half a circle of radius 1 0.4244
/// above its diameter; a triangle 3 high 1 above its foot; a cone 4 high 1 above its foot; half a sphere of
/// radius 8 3 above its flat side.
///
/// Difference: half the size where a load could not be so large; half a circle as an outline of 180 corners.
#[test]
fn c31_handbook_centroids() {
    let above = |load: LoadReport| load.centre.above.nominal.get();
    let trapezoid = vec![[-1.5, 0.0], [1.5, 0.0], [0.5, 2.0], [-0.5, 2.0]];
    let found = one(Shape::Prism, Facing::Ahead, |p| (p.outline, p.length_m) = (trapezoid, Some(0.7)));
    exact(above(found), 5.0 / 6.0);
    let corner = |k: u32| {
        let (sin, cos) = libm::sincos(std::f64::consts::PI * f64::from(k) / 179.0);
        [cos, sin]
    };
    let circle: Vec<_> = (0..180).map(corner).collect();
    let found = one(Shape::Prism, Facing::Left, |p| (p.outline, p.length_m) = (circle, Some(0.7)));
    assert!((above(found) - 0.4244).abs() < 0.0001);
    let wedge =
        |high| one(Shape::Wedge, high, |p| (p.length_m, p.width_m, p.height_m) = (Some(1.2), Some(0.8), Some(3.0)));
    for high in [Facing::Ahead, Facing::Heel, Facing::Left, Facing::Right] {
        exact(above(wedge(high)), 1.0);
    }
    exact(wedge(Facing::Ahead).centre.ahead.nominal.get(), 0.8);
    exact(wedge(Facing::Heel).centre.ahead.nominal.get(), 0.4);
    let cone = |facing| one(Shape::Cone, facing, |p| (p.diameter_m, p.length_m) = (Some(1.0), Some(4.0 / 2.0)));
    exact(above(cone(Facing::Up)), 1.0 / 2.0);
    exact(above(cone(Facing::Down)), 3.0 / 2.0);
    exact(cone(Facing::Ahead).centre.ahead.nominal.get(), 1.0 / 2.0);
    exact(cone(Facing::Heel).centre.ahead.nominal.get(), 3.0 / 2.0);
    let dome = |facing| one(Shape::HalfSphere, facing, |p| p.diameter_m = Some(16.0 / 8.0));
    exact(above(dome(Facing::Up)), 3.0 / 8.0);
    exact(above(dome(Facing::Down)), 5.0 / 8.0);
}
