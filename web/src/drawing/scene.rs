//! Outlines of the report on the sheet.

use super::projection::{Metres, Projection, Spot};
use standfast_core::scene::{Outline, Part};

/// All corners of some outlines, m.
pub fn points(outlines: &[Outline]) -> impl Iterator<Item = Metres> {
    outlines.iter().flat_map(|o| o.points.iter().map(|(a, b)| (a.get(), b.get())))
}

/// An outline's corners on the sheet.
pub fn spots(outline: &Outline, projection: &Projection) -> Vec<Spot> {
    outline.points.iter().map(|(a, b)| projection.spot((a.get(), b.get()))).collect()
}

/// The mean of the corners of the first outline of a part, m.
pub fn middle(outlines: &[Outline], part: Part) -> Option<Metres> {
    middles(outlines, part).next()
}

/// The mean of the corners of each outline of a part, m.
pub fn middles(outlines: &[Outline], part: Part) -> impl Iterator<Item = Metres> {
    outlines.iter().filter(move |o| o.part == part && !o.points.is_empty()).map(|o| {
        let count = o.points.len() as f64;
        let sum = o.points.iter().fold((0.0, 0.0), |s, (a, b)| (s.0 + a.get(), s.1 + b.get()));
        (sum.0 / count, sum.1 / count)
    })
}

/// The farthest ahead and farthest up (or left) of a part, m.
pub fn hull(outlines: &[Outline], part: Part) -> Option<Metres> {
    let of = outlines.iter().filter(|o| o.part == part).flat_map(|o| &o.points);
    of.map(|(a, b)| (a.get(), b.get())).reduce(|m, p| (m.0.max(p.0), m.1.max(p.1)))
}

/// The directions along the blades and square to them, from a blade's outline in the side view: its
/// first edge runs from heel to tip. Level where there is none.
pub fn blades(outlines: &[Outline]) -> (Metres, Metres) {
    let along = match outlines.iter().find(|o| o.part == Part::Fork).map(|o| o.points.as_slice()) {
        Some([a, b, ..]) => (b.0.get() - a.0.get(), b.1.get() - a.1.get()),
        _ => (1.0, 0.0),
    };
    let length = (along.0 * along.0 + along.1 * along.1).sqrt();
    let u = if length > 1e-9 { (along.0 / length, along.1 / length) } else { (1.0, 0.0) };
    (u, (-u.1, u.0))
}

/// The style class of a part.
pub const fn class(part: Part) -> &'static str {
    match part {
        Part::Chassis => "d-part d-chassis",
        Part::Guard => "d-part d-guard",
        Part::FrontWheel | Part::SteerWheel => "d-part d-wheel",
        Part::MastOuter => "d-part d-mast",
        Part::MastStage => "d-part d-stage",
        Part::Carriage => "d-part d-carriage",
        Part::Attachment => "d-part d-attachment",
        Part::Fork => "d-part d-fork",
        Part::Extension => "d-part d-extension",
        Part::Load => "d-part d-load",
        Part::LoadCut => "d-part d-cut",
        Part::Sling => "d-part d-sling",
    }
}

#[cfg(test)]
mod tests {
    use super::super::samples;
    use super::*;
    use standfast_core::scalar::Scalar;
    use standfast_core::units::slope_angle;

    /// The report's own tilt and lean, read back from the outline.
    #[test]
    fn the_blades_lie_as_the_mast_is_tilted() {
        for step in samples::all() {
            let (u, v) = blades(&step.scene.side);
            let down = (step.tilt_deg.get() + step.lean_deg.get()).to_radians();
            assert!((slope_angle(-u.1 / u.0) - down).abs() < 1e-6 && u.0 > 0.9, "{u:?}");
            assert!((u.0 * v.0 + u.1 * v.1).abs() < 1e-12 && v.1 > 0.0);
        }
    }

    #[test]
    fn outlines_without_length_are_level() {
        let none = Outline { part: Part::Fork, points: vec![] };
        let point = Outline { part: Part::Fork, points: vec![(Scalar::ZERO, Scalar::ZERO); 4] };
        for outline in [none, point] {
            assert_eq!(blades(&[outline]), ((1.0, 0.0), (-0.0, 1.0)));
        }
        assert_eq!(hull(&[], Part::Fork), None);
        assert_eq!(middle(&[], Part::Fork), None);
    }
}
