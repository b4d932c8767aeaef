//! The same check seen in a mirror, and the same load described from another side.

use standfast_core::document::{CentreKnown, Document, Facing, GivenAs, Load, Part, Side, TraceView, Turned};
use standfast_core::report::find_load;

fn negate(figure: &mut Option<f64>) {
    *figure = figure.map(|m| -m);
}

/// Left for right: lift, load, supports, picture.
pub fn mirrored(document: &Document) -> Document {
    let mut mirror = document.clone();
    let Document { load, lift, .. } = &mut mirror;
    negate(&mut lift.offset_m);
    negate(&mut lift.sideshift_m);
    negate(&mut load.cg_left_m);
    load.turned = match load.turned {
        Turned::Left => Turned::Right,
        Turned::Right => Turned::Left,
        same => same,
    };
    for part in &mut load.parts {
        negate(&mut part.left_m);
        match part.facing {
            Facing::Left => part.facing = Facing::Right,
            Facing::Right => part.facing = Facing::Left,
            Facing::Up | Facing::Down => part.outline.iter_mut().for_each(|p| p[1] = -p[1]),
            Facing::Ahead | Facing::Heel => part.outline.iter_mut().for_each(|p| p[0] = -p[0]),
        }
    }
    if let Some(trace) = load.trace.as_mut().filter(|t| t.view != TraceView::Side) {
        let width = trace.picture.map_or(0.0, |p| p[0]);
        let all = [&mut trace.outline, &mut trace.scale, &mut trace.rectangle];
        all.into_iter().chain(&mut trace.holes).flatten().for_each(|p| p[0] = width - p[0]);
        if let [a, b, c, d] = trace.rectangle.as_mut_slice() {
            std::mem::swap(a, b);
            std::mem::swap(c, d);
        }
    }
    if let Some(weighing) = &mut load.weighing {
        weighing.points.iter_mut().for_each(|p| negate(&mut p.left_m));
        weighing.raised_end = weighing.raised_end.map(|end| match end {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
            same => same,
        });
    }
    mirror
}

/// The load described again after it was turned a quarter to the left: what was ahead is left. A traced one
/// is left as it is, with `None`.
pub fn turned_left(load: &Load) -> Option<Load> {
    let mut next = load.clone();
    match load.given_as {
        GivenAs::Trace => return None,
        GivenAs::Block => {
            std::mem::swap(&mut next.length_m, &mut next.width_m);
            if load.centre_known == Some(CentreKnown::Mark) {
                // From the middle of the block: ahead becomes left, left becomes heel.
                let middle = 0.5 * load.length_m?;
                next.cg_left_m = load.cg_from_heel_m.map(|x| x - middle);
                next.cg_from_heel_m = load.cg_left_m.map(|y| 0.5 * next.length_m.unwrap_or_default() - y);
            }
        }
        GivenAs::Parts => next.parts = parts_turned_left(load)?,
    }
    // A block's points are measured from the middle of its face at the heel, which is another face now.
    let (from, to) = match load.given_as {
        GivenAs::Block => (0.5 * load.length_m?, 0.5 * next.length_m?),
        _ => (0.0, 0.0),
    };
    if let Some(weighing) = &mut next.weighing {
        for point in &mut weighing.points {
            let (ahead, left) = (point.ahead_m? - from, point.left_m?);
            (point.ahead_m, point.left_m) = (Some(to - left), Some(ahead));
        }
        weighing.raised_end = weighing.raised_end.map(|end| match end {
            Side::Ahead => Side::Left,
            Side::Left => Side::Heel,
            Side::Heel => Side::Right,
            Side::Right => Side::Ahead,
        });
    }
    Some(next)
}

fn parts_turned_left(load: &Load) -> Option<Vec<Part>> {
    // Where each part's box is, from what is drawn of it.
    let shapes = find_load(&Document { load: load.clone(), ..Document::default() }).shapes;
    let turn = |(k, part): (usize, &Part)| {
        let plan = &shapes.iter().find(|s| s.part == Some(k))?.plan;
        let range = |get: fn(&(standfast_core::scalar::Scalar, standfast_core::scalar::Scalar)) -> f64| {
            plan.iter().map(get).fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)))
        };
        let (ahead, left) = (range(|p| p.0.get()), range(|p| p.1.get()));
        let mut next = part.clone();
        (next.ahead_m, next.left_m) = (Some(-left.1), Some(0.5 * (ahead.0 + ahead.1)));
        next.facing = match part.facing {
            Facing::Ahead => Facing::Left,
            Facing::Left => Facing::Heel,
            Facing::Heel => Facing::Right,
            Facing::Right => Facing::Ahead,
            upright => upright,
        };
        match part.facing {
            Facing::Up | Facing::Down => next.outline.iter_mut().for_each(|p| *p = [-p[1], p[0]]),
            // Drawn across now; left is heel there.
            Facing::Ahead | Facing::Heel => next.outline.iter_mut().for_each(|p| p[0] = -p[0]),
            // Drawn along now; what was ahead is left.
            Facing::Left | Facing::Right => {}
        }
        use standfast_core::document::Shape::{Box, Wedge};
        if matches!(part.shape, Some(Box | Wedge)) {
            std::mem::swap(&mut next.length_m, &mut next.width_m);
        }
        Some(next)
    };
    load.parts.iter().enumerate().map(turn).collect()
}

/// Turned on the forks so that it stands as the load before [`turned_left`] did.
pub fn back(turned: Turned) -> Turned {
    match turned {
        Turned::No => Turned::Right,
        Turned::Right => Turned::Half,
        Turned::Half => Turned::Left,
        Turned::Left => Turned::No,
    }
}

/// All the load's places moved by so much, m; of a block only its supports could be, so it is `None`.
pub fn moved(load: &Load, by: [f64; 3]) -> Option<Load> {
    if load.given_as != GivenAs::Parts {
        return None;
    }
    let mut next = load.clone();
    for part in &mut next.parts {
        for (figure, by) in [&mut part.ahead_m, &mut part.left_m, &mut part.above_m].into_iter().zip(by) {
            *figure = figure.map(|m| m + by);
        }
    }
    for point in next.weighing.iter_mut().flat_map(|w| &mut w.points) {
        for (figure, by) in [&mut point.ahead_m, &mut point.left_m].into_iter().zip(by) {
            *figure = figure.map(|m| m + by);
        }
    }
    Some(next)
}
