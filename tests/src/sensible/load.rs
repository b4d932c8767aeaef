//! Loads as they may stand there: blocks, built from parts or traced; turned, weighed, hanging.

use crate::draw::Draws;
use crate::{outline, parts, scales};
use glam::{DVec2, DVec3};
use standfast_core::document::{
    Document, GivenAs, PhotoTruck, Side, Trace, TraceView, Turned, WeighPoint, Weighing, WeightKnown,
};
use standfast_core::friction::Underside;
use standfast_core::material::Material;
use standfast_core::report::{LoadReport, find_load};

/// Makes a document's load, a block up to here, an odd one as often as not. It stays without problems.
pub fn odd(document: &mut Document, draws: &mut Draws, rated: f64) {
    let load = &mut document.load;
    load.turned =
        draws.one_of(&[Turned::No, Turned::No, Turned::Left, Turned::Half, Turned::Right]).unwrap_or_default();
    load.underside = draws.one_of(&Underside::ALL.map(Some)).flatten().filter(|_| draws.chance(0.7));
    if draws.chance(0.1) {
        (load.hanging, load.hook_above_m) = (true, Some(draws.within(-0.2..1.0)));
    }
    let block = document.load.clone();
    match draws.count(0..4) {
        0 | 1 => {}
        2 => built(document, draws, rated),
        _ => traced(document, draws),
    }
    // What came out too small, too large or too heavy as a whole is left a block.
    if find_load(document).load.is_none() {
        document.load = block;
    }
    if draws.chance(0.3) {
        weighed(document, draws);
    }
}

fn built(document: &mut Document, draws: &mut Draws, rated: f64) {
    let count = draws.count(1..5);
    document.load.given_as = GivenAs::Parts;
    document.load.parts = parts::parts(draws, count, 0.5 * rated);
    // A total beside the parts' own weights may disagree with them.
    if draws.chance(0.7) {
        (document.load.mass_kg, document.load.weight_known) = (None, None);
    }
}

fn traced(document: &mut Document, draws: &mut Draws) {
    let load = &mut document.load;
    load.given_as = GivenAs::Trace;
    let outline = outline::simple(draws);
    let size = draws.within(250.0..700.0);
    let outline = outline.iter().map(|p| [700.0 + size * 0.5 * p.x, 600.0 - size * 0.5 * p.y]).collect();
    let mut trace = Trace {
        view: draws.one_of(&[TraceView::Side, TraceView::Front, TraceView::Plan]).unwrap_or_default(),
        truck: draws.one_of(&[PhotoTruck::Left, PhotoTruck::Right]).unwrap_or_default(),
        picture: Some([1400.0, 1200.0]),
        outline,
        scale: vec![[200.0, 1100.0], [1000.0, 1100.0]],
        scale_m: Some(draws.within(1.2..2.0)),
        through_m: Some(draws.within(0.4..1.4)),
        ..Trace::default()
    };
    if draws.chance(0.5) {
        let mut tap = |x: f64, y: f64| [x + draws.within(-60.0..60.0), y + draws.within(-60.0..60.0)];
        trace.rectangle = vec![tap(200.0, 150.0), tap(1200.0, 150.0), tap(1200.0, 1050.0), tap(200.0, 1050.0)];
        (trace.rectangle_width_m, trace.rectangle_height_m) = (Some(2.0), Some(1.8));
    }
    load.trace = Some(trace);
    if draws.chance(0.4) {
        let light = [Material::Softwood, Material::Plastic, Material::WoodBoard, Material::Paper];
        (load.mass_kg, load.material) = (None, draws.one_of(&light));
    }
}

/// Readings that fit the load as it was found, each out by up to the scales' accuracy; left away where they
/// cannot be.
fn weighed(document: &mut Document, draws: &mut Draws) {
    let Some(load) = find_load(document).load else { return };
    let before = document.load.clone();
    let (mass, centre) = stated(&load);
    let (low, size) = (point(&load.low), point(&load.size));
    let places = scales::under(low, size);
    let accuracy = (draws.within(0.001..0.004) * mass).clamp(0.1, 20.0);
    let raised = draws.chance(0.6).then(|| {
        let (end, reach) = draws
            .one_of(&[(Side::Ahead, size.x), (Side::Heel, size.x), (Side::Left, size.y), (Side::Right, size.y)])
            .unwrap_or((Side::Ahead, size.x));
        (end, (draws.within(0.05..0.25) * reach).clamp(0.03, 1.0))
    });
    if raised.is_some_and(|(_, by)| by > 0.4 * size.x.min(size.y)) {
        return;
    }
    let (level, up) = scales::three(places, mass, centre - DVec3::Z * low.z, raised);
    let mut read = |r: f64| Some(r + accuracy * draws.within(-1.0..1.0));
    let points = (0..3)
        .map(|k| WeighPoint {
            ahead_m: Some(places[k].x),
            left_m: Some(places[k].y),
            reading_kg: read(level[k]),
            raised_kg: up.and_then(|r| read(r[k])),
        })
        .collect();
    document.load.weighing = Some(Weighing {
        points,
        accuracy_kg: Some(accuracy),
        raised_end: raised.map(|r| r.0),
        raised_m: raised.map(|r| r.1),
    });
    if draws.chance(0.5) && before.given_as == GivenAs::Block {
        (document.load.mass_kg, document.load.weight_known) = (None, None::<WeightKnown>);
    }
    if find_load(document).load.is_none() {
        document.load = before;
    }
}

fn point(p: &standfast_core::report::Point) -> DVec3 {
    DVec3::new(p.x.get(), p.y.get(), p.z.get())
}

/// Weight and centre as stated.
pub fn stated(load: &LoadReport) -> (f64, DVec3) {
    let at = &load.centre;
    let centre = DVec3::new(at.ahead.nominal.get(), at.left.nominal.get(), at.above.nominal.get());
    (load.mass.nominal.get(), centre)
}

/// The corners of a load's box in the plan.
pub fn plan(load: &LoadReport) -> (DVec2, DVec2) {
    let (low, size) = (point(&load.low), point(&load.size));
    (low.truncate(), (low + size).truncate())
}
