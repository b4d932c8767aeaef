//! The side view: the plumb line against the front tipping line.

mod driven;
mod words;

use super::figures::length;
use super::frame::Frame;
use super::labels::Labels;
use super::layout::width;
use super::margin::{Fares, Margin};
use super::marks::{self, along, apart, middle, towards};
use super::projection::{Area, Projection, Rest, Spot};
use super::sheet::{Anchor, Grip, Sheet};
use super::tag::{SMALL, Tag, centre_mark, grid};
use super::{Handle, View, blades, scene, spread as uncertain};
use standfast_core::report::StepReport;
use standfast_core::scene::Part;
use standfast_core::support::LineId;
use standfast_core::units::{Rounding, System};

/// Width and height of the sheet.
const SIZE: (f64, f64) = (640.0, 480.0);
/// Where the truck is drawn: labels stand left and right of it, the margin below.
pub(super) const AREA: Area = Area { left: 108.0, top: 74.0, right: 508.0, bottom: 370.0 };
/// Left edge of the right-hand labels.
const RIGHT_COLUMN: f64 = 532.0;

/// Works out the side view; `held` keeps the projection of a drag that is going on.
pub fn sheet(step: &StepReport, system: System, labels: &Labels, held: Option<Projection>) -> Sheet {
    let f = &Frame::new((View::Side, step), system, labels, held, (&AREA, Rest::Bottom));
    let mut sheet = Sheet::new(SIZE, f.projection);
    ground(f, &mut sheet);
    truck(f, &mut sheet);
    blades::side(f, &mut sheet);
    tilt(f, &mut sheet);
    uncertain::side(f, &mut sheet);
    line(f, &mut sheet);
    uncertain::foot(f, &mut sheet);
    plumb_line(f, &mut sheet);
    driven::signs(f, &mut sheet);
    margin(f, &mut sheet);
    words::floor_loads(f, &mut sheet);
    words::right_labels(f, &mut sheet);
    words::left_labels(f, &mut sheet);
    grips(f, &mut sheet);
    sheet
}

fn front<'a>(f: &Frame<'a>) -> Option<Margin<'a>> {
    Margin::of(f.step, LineId::Front)
}

fn ground_level(f: &Frame) -> f64 {
    f.projection.spot((0.0, 0.0)).1
}

/// The front tipping line, seen from its end.
fn front_spot(f: &Frame) -> Spot {
    front(f).map_or(f.projection.spot((0.0, 0.0)), |m| f.at(m.line.from))
}

fn past(f: &Frame) -> bool {
    front(f).is_some_and(|m| m.fares == Fares::Past)
}

fn ground(f: &Frame, sheet: &mut Sheet) {
    let y = ground_level(f);
    let spacing = grid(sheet, f.system, y);
    let text = format!("{} {}", f.labels.grid, length(spacing, f.system, Rounding::Nearest));
    sheet.words("d-note", (SIZE.0 - 8.0, SIZE.1 - 8.0), Anchor::End, 12.0, &text);
    let start = front_spot(f).0;
    let class = if past(f) { "d-hatch d-crossed" } else { "d-hatch" };
    sheet.shape(class, marks::hatching((start + 8.0, y), (SIZE.0 + 8.0, y), (0.0, 1.0), 9.0));
    sheet.shape("d-ground", marks::line((0.0, y), (SIZE.0, y)));
}

fn truck(f: &Frame, sheet: &mut Sheet) {
    for outline in &f.step.scene.side {
        sheet.shape(scene::class(outline.part), marks::closed(&scene::spots(outline, &f.projection)));
    }
    // The hub, and the pivot where the steer axle has one.
    for part in [Part::FrontWheel, Part::SteerWheel] {
        if let Some(hub) = scene::middle(&f.step.scene.side, part) {
            sheet.shape("d-hub", marks::circle(f.projection.spot(hub), 4.0));
        }
    }
    let pivot = f.step.lines.iter().find(|l| l.id == LineId::Left).map(|l| l.to);
    if let Some(pivot) = pivot.filter(|p| p.z.get() > 0.0) {
        let at = f.at(pivot);
        sheet.shape("d-pivot", marks::circle(at, 5.0) + &marks::line((at.0 - 9.0, at.1), (at.0 + 9.0, at.1)));
    }
}

/// The mast's centre line, and its angle from upright.
fn tilt(f: &Frame, sheet: &mut Sheet) {
    let Some((foot, top)) = mast(f) else { return };
    let d = towards(foot, top);
    sheet.shape("d-centre-line", marks::line(along(foot, d, -12.0), along(top, d, 26.0)));
    let reach = apart(foot, top) + 16.0;
    let upright = along(foot, (0.0, -1.0), reach);
    let leaning = along(foot, d, reach);
    if apart(upright, leaning) > 1.5 {
        sheet.shape("d-dim", marks::line(along(foot, (0.0, -1.0), 40.0), along(upright, (0.0, -1.0), 8.0)));
        let sweep = if leaning.0 > upright.0 { 1 } else { 0 };
        let arc = format!(
            "M{:.1} {:.1}A{reach:.1} {reach:.1} 0 0 {sweep} {:.1} {:.1}",
            upright.0, upright.1, leaning.0, leaning.1
        );
        sheet.shape("d-dim", arc);
    }
}

/// The middle of the mast's foot and of its highest section's top.
fn mast(f: &Frame) -> Option<(Spot, Spot)> {
    let side = &f.step.scene.side;
    let outer = side.iter().find(|o| o.part == Part::MastOuter)?;
    let highest = side.iter().rfind(|o| o.part == Part::MastStage).unwrap_or(outer);
    let (outer, highest) = (scene::spots(outer, &f.projection), scene::spots(highest, &f.projection));
    Some((middle(*outer.first()?, *outer.get(1)?), middle(*highest.get(2)?, *highest.get(3)?)))
}

/// The front line as a fulcrum under the wheel and a centre line above it.
fn line(f: &Frame, sheet: &mut Sheet) {
    let foot = front_spot(f);
    let top = f.at(f.step.centre).1.min(foot.1 - 90.0) - 12.0;
    let crossed = past(f);
    sheet.shape(if crossed { "d-post d-crossed" } else { "d-post" }, marks::line(foot, (foot.0, top.max(8.0))));
    let fulcrum = [foot, (foot.0 + 10.0, foot.1 + 17.0), (foot.0 - 10.0, foot.1 + 17.0)];
    let class = if crossed { "d-fulcrum d-crossed" } else { "d-fulcrum" };
    sheet.named(class, marks::closed(&fulcrum), "line-front-side");
}

/// The motif: the line of action as a plumb line from the common centre down to its bob, along the
/// field: upright where the ground is level.
fn plumb_line(f: &Frame, sheet: &mut Sheet) {
    let (centre, foot, up) = (f.at(f.step.centre), f.at(f.step.bob), f.plumb());
    let cord = along(foot, up, marks::BOB_HEIGHT.min(apart(foot, centre)) - 2.0);
    // The cord hangs from well above the centre, so that it is seen even where the centre is low.
    let hook = along(foot, up, (apart(foot, centre) + 48.0).max(190.0).min(foot.1 - 14.0));
    sheet.shape("d-cord-halo", marks::line(hook, cord));
    sheet.shape("d-cord-above", marks::line(hook, centre) + &marks::circle(along(hook, up, 4.0), 4.0));
    sheet.named("d-cord", marks::line(centre, cord), "cord");
    sheet.named("d-bob", marks::bob(foot, up, 1.0), "bob");
    centre_mark(sheet, f.at(f.step.truck_centre), 9.0);
    centre_mark(sheet, centre, 14.0);
}

fn margin(f: &Frame, sheet: &mut Sheet) {
    let Some(front) = front(f) else { return };
    let (bob, post) = (f.at(f.step.bob), front_spot(f));
    let y = ground_level(f) + 27.0;
    for (x, below) in [(bob.0, 3.0), (post.0, 17.0)] {
        sheet.shape("d-dim", marks::line((x, ground_level(f) + below), (x, y + 6.0)));
    }
    let (thin, heads) = marks::dimension((bob.0, y), (post.0, y));
    let strong = if past(f) { "d-dim d-crossed" } else { "d-dim d-strong" };
    sheet.shape(strong, thin);
    sheet.shape(if past(f) { "d-heads d-crossed" } else { "d-heads" }, heads);
    let mut under = front.worst_words(f.system, f.labels);
    if let Some(slope) = front.slope_words(f.labels) {
        under += &format!(" \u{b7} {slope}");
    }
    let tag = Tag {
        caption: String::new(),
        main: front.words(f.system, f.labels),
        under: vec![under],
        fares: front.fares,
        first: true,
        test: "distance-front-side".to_owned(),
    };
    let half = 0.5 * tag.width();
    let mid = 0.5 * (bob.0 + post.0);
    let x = mid.clamp(half + 8.0, (SIZE.0 - 8.0 - half).max(half + 8.0));
    let top = ground_level(f) + 44.0;
    sheet.shape("d-leader", marks::line((mid, y), (mid, top)));
    tag.draw(sheet, x, top);
    // What lies at either end of the distance, to be read with it as one line.
    let (mut ends, pill) = ([f.labels.line_of_action, f.labels.front_line], 0.5 * tag.pill_width() + 9.0);
    if bob.0 > post.0 {
        ends.reverse();
    }
    let base = top + 23.0;
    if x - pill - width(ends[0], SMALL) > 4.0 {
        sheet.words("d-caption", (x - pill, base), Anchor::End, SMALL, ends[0]);
    }
    if x + pill + width(ends[1], SMALL) < SIZE.0 - 4.0 {
        sheet.words("d-caption", (x + pill, base), Anchor::Start, SMALL, ends[1]);
    }
}

fn grips(f: &Frame, sheet: &mut Sheet) {
    let load = f.load();
    let corners = load.iter().flatten();
    let top = corners.clone().map(|p| p.1).fold(f64::MAX, f64::min);
    let foot = corners.clone().map(|p| p.1).fold(f64::MIN, f64::max);
    let (heel, tip) = corners.fold((f64::MAX, f64::MIN), |(a, b), p| (a.min(p.0), b.max(p.0)));
    if load.is_empty() {
        return;
    }
    let mid = 0.5 * (heel + tip);
    let shown = |spot: Spot| f.projection.metres(spot);
    let (floor, ceiling) = (0.0, shown((0.0, 0.0)).1 * 1000.0);
    let lift = f.step.lift.get();
    let level = ((1.0, 0.0), (0.0, 1.0));
    let met = load.iter().map(|o| outline_top(o, mid)).fold(f64::MAX, f64::min);
    // Above a load that hangs is its hook, with a handle of its own: there it is in the load.
    let (spot, stem) = if f.step.seat.is_some() {
        ((mid, top - 36.0), Some(marks::line((mid, top - 36.0), (mid, met))))
    } else {
        ((mid, (0.5 * (top + foot)).max(f.at(f.load_centre()).1 + 40.0)), None)
    };
    sheet.grips.push(Grip {
        handle: Handle::Load,
        spot,
        body: Some(load.iter().map(|o| marks::closed(o)).collect()),
        stem,
        axes: level,
        name: f.labels.move_load,
        says: format!("{} {}", f.labels.fork_height, f.length(lift)),
        now: (lift * 1000.0, floor, ceiling),
    });
    let centre = f.load_centre();
    let (left, right) = (shown((0.0, 0.0)).0 * 1000.0, shown((SIZE.0, 0.0)).0 * 1000.0);
    let (ahead, up) = (f.length(centre.x.get()), f.length(centre.z.get()));
    sheet.grips.push(Grip {
        handle: Handle::Centre,
        spot: f.at(centre),
        body: None,
        stem: None,
        // A load that hangs keeps upright, whatever the blades do.
        axes: if f.step.seat.is_some() { scene::blades(f.outlines()) } else { level },
        name: f.labels.move_centre,
        says: format!("{ahead} {}, {up} {}", f.labels.ahead, f.labels.up),
        now: (centre.x.get() * 1000.0, left, right),
    });
}

/// Where an upright line at `x` first meets an outline from above; nowhere, far down, where it does not.
fn outline_top(outline: &[Spot], x: f64) -> f64 {
    let edges = outline.iter().zip(outline.iter().cycle().skip(1));
    let met =
        edges.filter(|(a, b)| (a.0 - x) * (b.0 - x) < 0.0).map(|(a, b)| a.1 + (b.1 - a.1) * (x - a.0) / (b.0 - a.0));
    met.fold(f64::MAX, f64::min)
}
