//! Loads built from random parts, with cut-outs that lie inside their hosts.

use crate::draw::Draws;
use crate::outline;
use standfast_core::document::{Facing, Part, Shape, WeightKnown};
use standfast_core::material::Material;

/// A shape with all its sizes, each edge up to `most`, not placed yet.
fn shape(draws: &mut Draws, most: f64) -> Part {
    let shape = draws.one_of(&Shape::ALL);
    let facing = match shape {
        Some(Shape::Wedge) => draws.one_of(&Facing::ALL[2..]),
        _ => draws.one_of(&Facing::ALL),
    };
    let mut edge = || Some(draws.within(0.3..1.0) * most);
    let mut part = Part { shape, facing: facing.unwrap_or_default(), ..Part::default() };
    match shape {
        Some(Shape::Box | Shape::Wedge) => {
            (part.length_m, part.width_m, part.height_m) = (edge(), edge(), edge());
        }
        Some(Shape::Sphere | Shape::HalfSphere) => part.diameter_m = edge(),
        Some(Shape::Prism) => {
            part.length_m = edge();
            part.outline = outline::simple(draws).iter().map(|p| [0.45 * most * p.x, 0.45 * most * p.y]).collect();
        }
        _ => {
            (part.diameter_m, part.length_m) = (edge(), edge());
            part.bore_m = part.diameter_m.map(|d| d * draws.within(0.2..0.9));
        }
    }
    part
}

fn known(draws: &mut Draws, part: &mut Part, kg: f64) {
    if draws.chance(0.5) {
        part.mass_kg = Some(kg * draws.within(0.3..1.0));
        let known = [Some(WeightKnown::Scale), Some(WeightKnown::Note), Some(WeightKnown::Estimate), None];
        part.weight_known = draws.one_of(&known).flatten();
    } else {
        let light = [Material::Softwood, Material::Plastic, Material::WoodBoard, Material::Paper];
        part.material = draws.one_of(&light);
    }
}

fn placed(part: &mut Part, ahead: f64, left: f64, above: f64) {
    (part.ahead_m, part.left_m, part.above_m) = (Some(ahead), Some(left), Some(above));
}

/// A box with up to two things cut out of it, one in each half of its length.
fn hollowed(draws: &mut Draws, host: usize, most: f64) -> Vec<Part> {
    let mut edge = || draws.within(0.5..1.0) * most;
    let (l, w, h) = (edge(), edge(), edge());
    let mut whole = Part { shape: Some(Shape::Box), ..Part::default() };
    (whole.length_m, whole.width_m, whole.height_m) = (Some(l), Some(w), Some(h));
    let mut parts = vec![whole];
    for half in 0..draws.count(0..3) {
        // Whatever way it lies, it is no longer than this.
        let room = 0.5 * l.min(w).min(h);
        let mut cut = Part { cut_from: Some(host), ..shape(draws, 0.9 * room) };
        placed(&mut cut, half as f64 * 0.5 * l + 0.02 * room, 0.0, draws.within(0.02..0.4) * h);
        parts.push(cut);
    }
    parts
}

/// Parts about a datum that is somewhere near them; `host` is the index of the first. Weights of up
/// to `kg` each.
pub fn parts(draws: &mut Draws, count: usize, kg: f64) -> Vec<Part> {
    let datum = [draws.within(-2.0..2.0), draws.within(-2.0..2.0), draws.within(-1.0..1.0)];
    let mut all: Vec<Part> = Vec::new();
    for _ in 0..count {
        let mut next = if draws.chance(0.4) {
            hollowed(draws, all.len(), 0.8)
        } else {
            let mut one = shape(draws, 0.8);
            placed(&mut one, 0.0, 0.0, 0.0);
            vec![one]
        };
        known(draws, &mut next[0], kg);
        let by = [draws.within(0.0..0.5), draws.within(-0.3..0.3), draws.within(0.0..0.5)];
        for part in &mut next {
            for (k, field) in [&mut part.ahead_m, &mut part.left_m, &mut part.above_m].into_iter().enumerate() {
                *field = Some(field.unwrap_or_default() + by[k] + datum[k]);
            }
        }
        all.extend(next);
    }
    all
}
