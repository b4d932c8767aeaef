//! What scales read under a load whose weight and centre are known: forces and moments in space.

use glam::{DMat3, DVec2, DVec3};
use standfast_core::document::Side;

/// What three supports bear, level and with the far end raised by so much: the load turned about its low
/// end as a rigid body. Places are on its underside, the centre above that.
pub fn three(
    places: [DVec2; 3],
    mass: f64,
    centre: DVec3,
    raised: Option<(Side, f64)>,
) -> ([f64; 3], Option<[f64; 3]>) {
    let on_load = places.map(|p| p.extend(0.0));
    let level = borne(on_load, mass, centre);
    let raised = raised.map(|(end, by)| {
        let (way, axis) = match end {
            Side::Ahead => (DVec3::X, DVec3::NEG_Y),
            Side::Heel => (DVec3::NEG_X, DVec3::Y),
            Side::Left => (DVec3::Y, DVec3::X),
            Side::Right => (DVec3::NEG_Y, DVec3::NEG_X),
        };
        let along = on_load.map(|p| p.dot(way));
        let reach =
            along.into_iter().fold(f64::NEG_INFINITY, f64::max) - along.into_iter().fold(f64::INFINITY, f64::min);
        let turn = DMat3::from_axis_angle(axis, libm::asin(by / reach));
        borne(on_load.map(|p| turn * p), mass, turn * centre)
    });
    (level, raised)
}

/// Upward forces at three points that hold a weight: they add up, and so do their moments.
fn borne(points: [DVec3; 3], mass: f64, centre: DVec3) -> [f64; 3] {
    let rows = DMat3::from_cols_array_2d(&points.map(|p| [1.0, p.x, p.y]));
    (rows.inverse() * DVec3::new(mass, mass * centre.x, mass * centre.y)).to_array()
}

/// Three supports well apart under a box of this low corner and size: two at the heel, one ahead.
pub fn under(low: DVec3, size: DVec3) -> [DVec2; 3] {
    let at = |x: f64, y: f64| DVec2::new(low.x + x * size.x, low.y + y * size.y);
    [at(0.05, 0.95), at(0.05, 0.05), at(0.95, 0.5)]
}
