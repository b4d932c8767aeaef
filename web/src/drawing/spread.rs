//! What is uncertain, drawn: where the common centre may lie, and where the line of action may meet the
//! ground. The quartered circle stays where it is stated; a thin frame stands round it.

use super::frame::Frame;
use super::marks::{self, apart, closed, line};
use super::projection::Spot;
use super::sheet::Sheet;
use standfast_core::report::Point;

/// A frame that is smaller than this on the sheet is the mark itself.
const LEAST: f64 = 1.2;
/// Length of the strokes that carry an edge past a mark which covers it.
const STROKE: f64 = 9.0;
/// Between the mark and those strokes.
const CLEAR: f64 = 3.0;

/// Least and greatest of some spots, each way.
fn ends(spots: &[Spot]) -> Option<(Spot, Spot)> {
    spots.iter().fold(None, |box_, p| {
        let (lo, hi) = box_.unwrap_or((*p, *p));
        Some(((lo.0.min(p.0), lo.1.min(p.1)), (hi.0.max(p.0), hi.1.max(p.1))))
    })
}

/// In the plan: the outline on the ground, to be drawn before the bob.
pub fn plan(f: &Frame, sheet: &mut Sheet) {
    let met: Vec<Spot> = f.step.bob_spread.iter().map(|p| f.at(*p)).collect();
    if met.len() > 2 {
        sheet.named("d-spread", closed(&met), "spread-plan");
    }
}

/// In the plan, over the bob, a ring of this radius: the outline's edges where the ring covers them.
pub fn plan_edges(f: &Frame, sheet: &mut Sheet, ring: f64) {
    let met: Vec<Spot> = f.step.bob_spread.iter().map(|p| f.at(*p)).collect();
    let Some((lo, hi)) = ends(&met) else { return };
    let bob = f.at(f.step.bob);
    let mut path = String::new();
    if hi.0 - lo.0 > LEAST {
        path += &[lo.0, hi.0].map(|x| stroke(x - bob.0, ring, |a, b| (bob.0 + a, bob.1 + b))).concat();
    }
    // Closer together than that the two would be one thick line along the truck's middle.
    if hi.1 - lo.1 > 4.0 * LEAST {
        path += &[lo.1, hi.1].map(|y| stroke(y - bob.1, ring, |a, b| (bob.0 + b, bob.1 + a))).concat();
    }
    if !path.is_empty() {
        sheet.shape("d-spread-halo", path.clone());
        sheet.named("d-spread-edge", path, "spread-edges-plan");
    }
}

/// An edge `off` from the middle of a ring: past the ring on both sides, or one stroke beyond it.
fn stroke(off: f64, ring: f64, at: impl Fn(f64, f64) -> Spot) -> String {
    let covered = ring + CLEAR;
    if off.abs() > covered {
        return line(at(off, -STROKE), at(off, STROKE));
    }
    let near = (covered * covered - off * off).max(0.0).sqrt();
    line(at(off, near), at(off, near + STROKE)) + &line(at(off, -near), at(off, -near - STROKE))
}

/// In the side view: the box round the common centre and the band that its plumb lines fill, to be drawn
/// before the cord.
pub fn side(f: &Frame, sheet: &mut Sheet) {
    let (Some(frame), Some(ground)) = (centre_box(f), ground(f)) else { return };
    let band = hull([frame.as_slice(), &[ground.0, ground.1]].concat());
    sheet.named("d-band", closed(&band), "band-side");
    sheet.named("d-spread", closed(&frame), "spread-side");
}

/// In the side view, over the ground: where the line of action may meet it.
pub fn foot(f: &Frame, sheet: &mut Sheet) {
    let Some((a, b)) = ground(f) else { return };
    if apart(a, b) > LEAST {
        sheet.named("d-spread-foot", line((a.0, a.1 + 3.5), (b.0, b.1 + 3.5)), "spread-foot-side");
    }
}

/// The box's corners in the side view.
fn centre_box(f: &Frame) -> Option<[Spot; 4]> {
    let (lo, hi) = f.step.spread;
    let corners = [(lo.x, lo.z), (hi.x, lo.z), (hi.x, hi.z), (lo.x, hi.z)];
    let spots = corners.map(|(x, z)| f.at(Point { x, y: lo.y, z }));
    (apart(spots[0], spots[2]) > LEAST).then_some(spots)
}

/// Where the line of action may meet the ground in the side view, the hindmost and the foremost.
fn ground(f: &Frame) -> Option<(Spot, Spot)> {
    let met: Vec<Spot> = f.step.bob_spread.iter().map(|p| f.at(*p)).collect();
    let y = f.projection.spot((0.0, 0.0)).1;
    ends(&met).map(|(lo, hi)| ((lo.0, y), (hi.0, y)))
}

/// The least outline round some spots that has no dent.
fn hull(mut spots: Vec<Spot>) -> Vec<Spot> {
    spots.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    let half = |spots: &mut dyn Iterator<Item = &Spot>| {
        let mut kept: Vec<Spot> = Vec::new();
        for &p in spots {
            while let [.., a, b] = kept.as_slice() {
                if (b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0) > 0.0 {
                    break;
                }
                kept.pop();
            }
            kept.push(p);
        }
        kept.pop();
        kept
    };
    let mut outline = half(&mut spots.iter());
    outline.extend(half(&mut spots.iter().rev()));
    marks::one_way_round(outline)
}

#[cfg(test)]
mod tests {
    use super::super::labels::ENGLISH;
    use super::super::projection::Rest;
    use super::super::sheet::Item;
    use super::super::{View, samples};
    use super::*;
    use standfast_core::document::Known;
    use standfast_core::example;
    use standfast_core::report::StepReport;
    use standfast_core::step::StepId;
    use standfast_core::units::System;

    fn raised(tolerance: Option<f64>) -> StepReport {
        let mut document = example::document(example::THREE_WHEEL);
        document.truck.cg_height_m = Some(0.62);
        let known = Known { by: None, tolerance };
        document.known.insert("truck.load_distance_m".to_owned(), known);
        document.known.insert("load.mass_kg".to_owned(), Known { by: None, tolerance: tolerance.map(|t| t * 3000.0) });
        let steps = samples::steps(&document);
        steps.into_iter().find(|s| s.id == StepId::RaisedForward).expect("a step of every move")
    }

    fn area(step: &StepReport, view: View, test: &str) -> f64 {
        let sheet = view.sheet(step, System::Metric, &ENGLISH, None);
        let path = sheet.items.iter().find_map(|i| match i {
            Item::Shape { path, test: Some(t), .. } if t == test => Some(path.clone()),
            _ => None,
        });
        let path = path.unwrap_or_else(|| panic!("{test} is drawn"));
        let numbers: Vec<f64> = path.split(['M', 'L', 'Z', ' ']).filter_map(|n| n.parse().ok()).collect();
        let spots: Vec<Spot> = numbers.chunks(2).map(|c| (c[0], c[1])).collect();
        let twice: f64 = spots.iter().zip(spots.iter().cycle().skip(1)).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
        0.5 * twice.abs() / (sheet.projection.scale * sheet.projection.scale)
    }

    #[test]
    fn the_frame_grows_with_a_tolerance() {
        let (narrow, wide) = (raised(None), raised(Some(0.1)));
        for (view, test) in [(View::Plan, "spread-plan"), (View::Side, "spread-side"), (View::Side, "band-side")] {
            let (a, b) = (area(&narrow, view, test), area(&wide, view, test));
            assert!(a > 0.0 && b > 1.3 * a, "{test}: {a} m2, {b} m2");
        }
    }

    /// What is drawn is the report's own outline, to a tenth of a unit of the sheet.
    #[test]
    fn the_frame_in_the_plan_is_the_reports() {
        let step = raised(Some(0.1));
        let met: Vec<(f64, f64)> = step.bob_spread.iter().map(|p| (p.x.get(), p.y.get())).collect();
        let twice: f64 = met.iter().zip(met.iter().cycle().skip(1)).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
        let drawn = area(&step, View::Plan, "spread-plan");
        assert!((drawn - 0.5 * twice.abs()).abs() < 2e-3 * (1.0 + drawn), "{drawn} {twice}");
    }

    #[test]
    fn all_of_a_band_is_round_its_box_and_its_foot() {
        for step in samples::all() {
            let f = Frame::new(
                (View::Side, &step),
                System::Metric,
                &ENGLISH,
                None,
                (&super::super::side::AREA, Rest::Bottom),
            );
            let (Some(frame), Some(ground)) = (centre_box(&f), ground(&f)) else { panic!("{:?}", step.id) };
            let all = [frame.as_slice(), &[ground.0, ground.1]].concat();
            let band = hull(all.clone());
            for p in all {
                for (a, b) in band.iter().zip(band.iter().cycle().skip(1)) {
                    let inside = (b.0 - a.0) * (p.1 - a.1) - (b.1 - a.1) * (p.0 - a.0);
                    assert!(inside >= -1e-6, "{:?}: {p:?} beyond {a:?} {b:?}", step.id);
                }
            }
        }
    }

    #[test]
    fn an_edge_that_the_ring_covers_is_carried_past_it() {
        let at = |a: f64, b: f64| (a, b);
        assert_eq!(stroke(0.0, 10.0, at), "M0.0 13.0L0.0 22.0M0.0 -13.0L0.0 -22.0");
        assert_eq!(stroke(20.0, 10.0, at), "M20.0 -9.0L20.0 9.0");
    }
}
