//! The plan view: the plumb bob inside the three tipping lines.

use super::figures::mass;
use super::frame::Frame;
use super::labels::Labels;
use super::layout::{Want, spread};
use super::margin::{Fares, Margin, line_key, line_name};
use super::marks::{self, along, apart, middle, towards};
use super::projection::{Area, Projection, Rest, Spot};
use super::sheet::{Anchor, Grip, Sheet};
use super::tag::{Label, Tag, centre_mark, grid};
use super::{Handle, View, blades, driven, scene, spread as uncertain};
use standfast_core::report::StepReport;
use standfast_core::scene::Part;
use standfast_core::support::LineId;
use standfast_core::units::{Rounding, System};

/// Width and height of the sheet.
const SIZE: (f64, f64) = (640.0, 430.0);
/// Where the truck is drawn: margins and labels stand above and below it.
const AREA: Area = Area { left: 14.0, top: 106.0, right: 578.0, bottom: 312.0 };
/// Top of the row above, and of the row below.
const ROWS: (f64, f64) = (6.0, 328.0);
/// Depth of the hatching outside a line, and of one that is crossed.
const DEPTH: (f64, f64) = (11.0, 20.0);
/// Radius of the bob as seen from above.
const RING: f64 = 14.0;

/// Works out the plan view; `held` keeps the projection of a drag that is going on.
pub fn sheet(step: &StepReport, system: System, labels: &Labels, held: Option<Projection>) -> Sheet {
    let f = &Frame::new((View::Plan, step), system, labels, held, (&AREA, Rest::Middle));
    let mut sheet = Sheet::new(SIZE, f.projection);
    grid(&mut sheet, system, SIZE.1);
    truck(f, &mut sheet);
    blades::plan(f, &mut sheet);
    lines(f, &mut sheet);
    dimensions(f, &mut sheet);
    centres(f, &mut sheet);
    sheet.words_from = sheet.items.len();
    rows(f, &mut sheet);
    grips(f, &mut sheet);
    sheet
}

fn margins<'a>(f: &Frame<'a>) -> impl Iterator<Item = Margin<'a>> {
    let step = f.step;
    step.lines.iter().filter_map(move |l| Margin::of(step, l.id))
}

fn is_tightest(f: &Frame, margin: &Margin) -> bool {
    Margin::tightest(f.step).is_some_and(|m| m.line.id == margin.line.id)
}

fn truck(f: &Frame, sheet: &mut Sheet) {
    let plan = f.outlines();
    for outline in plan {
        sheet.shape(scene::class(outline.part), marks::closed(&scene::spots(outline, &f.projection)));
    }
    // Blades under the load show through it; of one that hangs they are above.
    for outline in plan.iter().filter(|o| matches!(o.part, Part::Fork | Part::Extension)) {
        let class = if f.step.seat.is_some() { "d-hidden" } else { scene::class(outline.part) };
        sheet.shape(class, marks::closed(&scene::spots(outline, &f.projection)));
    }
    let steer: Vec<Spot> = scene::middles(plan, Part::SteerWheel).map(|m| f.projection.spot(m)).collect();
    if let [a, b] = steer.as_slice() {
        sheet.shape("d-axle", marks::line(*a, *b));
    }
    let middle_line = f.projection.spot((0.0, 0.0)).1;
    let ends = scene::points(plan).map(|(a, _)| a).fold((0.0_f64, 0.0_f64), |m, a| (m.0.min(a), m.1.max(a)));
    let (left, right) = (f.projection.spot((ends.0, 0.0)).0, f.projection.spot((ends.1, 0.0)).0);
    sheet.shape("d-centre-line", marks::line((left - 10.0, middle_line), (right + 10.0, middle_line)));
}

fn lines(f: &Frame, sheet: &mut Sheet) {
    for margin in margins(f) {
        let (a, b) = (f.at(margin.line.from), f.at(margin.line.to));
        let crossed = margin.fares == Fares::Past;
        let outward = outward(a, b);
        let depth = if crossed { DEPTH.1 } else { DEPTH.0 };
        let class = if crossed { "d-hatch d-crossed" } else { "d-hatch" };
        sheet.shape(class, marks::hatching(a, b, outward, depth));
    }
    for margin in margins(f) {
        let (a, b) = (f.at(margin.line.from), f.at(margin.line.to));
        let class = if margin.fares == Fares::Past { "d-line d-crossed" } else { "d-line" };
        sheet.named(class, marks::line(a, b), &format!("line-{}", line_key(margin.line.id)));
    }
    let pivot = f.step.lines.iter().find(|l| l.id == LineId::Left).map(|l| l.to);
    if let Some(pivot) = pivot.filter(|p| p.z.get() > 0.0) {
        sheet.shape("d-pivot", marks::circle(f.at(pivot), 5.5));
    }
}

/// The point of a line that is nearest to the bob.
fn foot(f: &Frame, margin: &Margin) -> Spot {
    let (a, b, bob) = (f.at(margin.line.from), f.at(margin.line.to), f.at(f.step.bob));
    let d = towards(a, b);
    along(a, d, (bob.0 - a.0) * d.0 + (bob.1 - a.1) * d.1)
}

/// Where a margin's leader ends: on what shows of its dimension beyond the bob's ring.
fn pointed_at(f: &Frame, margin: &Margin) -> Spot {
    let (bob, foot) = (f.at(f.step.bob), foot(f, margin));
    if apart(bob, foot) > RING + 12.0 { middle(along(bob, towards(bob, foot), RING), foot) } else { foot }
}

/// The distance of the bob from each line, square to it.
fn dimensions(f: &Frame, sheet: &mut Sheet) {
    let bob = f.at(f.step.bob);
    for margin in margins(f) {
        let (a, b, foot) = (f.at(margin.line.from), f.at(margin.line.to), foot(f, &margin));
        // Beyond its ends, a line is carried on thinly to where the dimension meets it.
        let d = towards(a, b);
        let t = (foot.0 - a.0) * d.0 + (foot.1 - a.1) * d.1;
        if t < 0.0 || t > apart(a, b) {
            let end = if t < 0.0 { a } else { b };
            sheet.shape("d-dim", marks::line(end, along(foot, towards(end, foot), 6.0)));
        }
        let (thin, heads) = marks::dimension(bob, foot);
        let (class, arrows) = match (margin.fares, is_tightest(f, &margin)) {
            (Fares::Past, _) => ("d-dim d-crossed", "d-heads d-crossed"),
            (_, true) => ("d-dim d-strong", "d-heads"),
            _ => ("d-dim", "d-heads"),
        };
        sheet.shape(class, thin);
        sheet.shape(arrows, heads);
    }
}

fn centres(f: &Frame, sheet: &mut Sheet) {
    let (bob, centre) = (f.at(f.step.bob), f.at(f.step.centre));
    centre_mark(sheet, f.at(f.step.truck_centre), 9.0);
    uncertain::plan(f, sheet);
    // On a slope the plumb line hangs askew: seen from above it has a length.
    sheet.shape("d-cord", marks::line(centre, bob));
    sheet.named("d-bob-ring", marks::circle(bob, RING), "bob-plan");
    uncertain::plan_edges(f, sheet, RING + 2.0);
    centre_mark(sheet, centre, 10.0);
    if let Some(pull) = driven::pull(f.step, f.system, f.labels) {
        let d = towards((0.0, 0.0), (pull.ahead, -pull.left));
        let (from, tip) = (along(bob, d, RING + 4.0), along(bob, d, RING + 44.0));
        sheet.named("d-press", marks::line(from, along(tip, d, -8.0)) + &marks::head(tip, d, 1.3), "pull-plan");
    }
    if apart(bob, centre) > 3.0 {
        sheet.shape("d-bob-point", marks::circle(bob, 3.0));
    }
}

fn tag(f: &Frame, margin: &Margin) -> Tag {
    let mut under = vec![margin.worst_words(f.system, f.labels)];
    under.extend(margin.slope_words(f.labels));
    Tag {
        caption: line_name(margin.line.id, f.labels).to_owned(),
        main: margin.words(f.system, f.labels),
        under,
        fares: margin.fares,
        first: is_tightest(f, margin),
        test: format!("distance-{}", line_key(margin.line.id)),
    }
}

/// The rows above and below: margins with their leaders, and the centres' labels.
fn rows(f: &Frame, sheet: &mut Sheet) {
    let mut above: Vec<(Want, Piece)> = Vec::new();
    let mut below: Vec<(Want, Piece)> = Vec::new();
    for margin in margins(f) {
        let tag = tag(f, &margin);
        let target = pointed_at(f, &margin);
        let row = if margin.line.id == LineId::Right { &mut below } else { &mut above };
        // The front line's stands to the right of the left line's, whatever their dimensions do.
        let at = target.0 + if margin.line.id == LineId::Front { 120.0 } else { -20.0 };
        row.push((Want { at, extent: tag.width() + 12.0 }, Piece::Tag(tag, target)));
    }
    let (total, load) = (f.step.total_mass.get(), f.load_mass());
    let weigh = |kg: f64| mass(kg, f.system, Rounding::Nearest);
    let mut marks = vec![
        (f.labels.together, total, f.at(f.step.centre), 14.0, 110.0),
        (f.labels.truck, total - load, f.at(f.step.truck_centre), 9.0, -30.0),
    ];
    // The load is named with what it has in hand on the forks.
    let mut pieces = Vec::new();
    match blades::plan_tag(f, format!("{} {}", f.labels.load, weigh(load))) {
        Some((tag, target)) => {
            pieces.push((Want { at: target.0 + 40.0, extent: tag.width() + 12.0 }, Piece::Tag(tag, target)));
        }
        None if f.step.laden => marks.push((f.labels.load, load, f.at(f.load_centre()), 16.0, 40.0)),
        // Without a load both together are the truck.
        None => {
            marks.remove(0);
        }
    }
    for (name, kg, target, clear, shift) in marks {
        let label = Label { caption: name.to_owned(), figures: vec![weigh(kg)], target, clear };
        pieces.push((Want { at: target.0 + shift, extent: label.width() + 12.0 }, Piece::Label(label)));
    }
    for (want, piece) in pieces {
        // Below, where they cross no margin's leader; above, once there is no more room.
        let room = |row: &[(Want, Piece)]| SIZE.0 - 8.0 - row.iter().map(|(w, _)| w.extent).sum::<f64>();
        let (above_has, below_has) = (room(&above), room(&below));
        if below_has >= want.extent {
            below.push((want, piece));
        } else if above_has >= want.extent || matches!(piece, Piece::Tag(..)) {
            above.push((want, piece));
        }
        // What fits nowhere is a centre's name, and the side view has it too.
    }
    for (row, top, is_above) in [(above, ROWS.0, true), (below, ROWS.1, false)] {
        let wants: Vec<Want> = row.iter().map(|(w, _)| *w).collect();
        let places = spread(&wants, 4.0, SIZE.0 - 4.0);
        for ((_, piece), x) in row.iter().zip(places) {
            match piece {
                Piece::Tag(tag, target) => {
                    let y = if is_above { top + tag.height() + 4.0 } else { top };
                    sheet.shape("d-leader", marks::line((x, y), *target));
                    sheet.shape("d-leader-end", marks::circle(*target, 2.5));
                    tag.draw(sheet, x, top);
                }
                Piece::Label(label) => {
                    let y = if is_above { top + label.height() + 4.0 } else { top + 4.0 };
                    label.draw(sheet, x, Anchor::Middle, top + 4.0, (x, y));
                }
            }
        }
    }
}

fn grips(f: &Frame, sheet: &mut Sheet) {
    let load = f.load();
    let corners = load.iter().flatten();
    let ahead = corners.clone().map(|p| p.0).fold(f64::MIN, f64::max);
    let (far, near) = corners.fold((f64::MAX, f64::MIN), |(a, b), p| (a.min(p.1), b.max(p.1)));
    if load.is_empty() {
        return;
    }
    let mid = 0.5 * (far + near);
    let axes = ((1.0, 0.0), (0.0, 1.0));
    let (left, right) = (f.projection.metres((0.0, 0.0)).0, f.projection.metres((SIZE.0, 0.0)).0);
    let block = scene::middle(f.outlines(), Part::Load).unwrap_or_default();
    let centre = (f.load_centre().x.get(), f.load_centre().y.get());
    let stem = Some(marks::line((ahead, mid), (ahead + 30.0, mid)));
    let mut grip = |handle, spot, (body, stem), name, (a, b): (f64, f64)| {
        let says = format!("{} {}, {} {}", f.length(a), f.labels.ahead, f.length(b), f.labels.left);
        let now = (a * 1000.0, left * 1000.0, right * 1000.0);
        sheet.grips.push(Grip { handle, spot, body, stem, axes, name, says, now });
    };
    let body = Some(load.iter().map(|o| marks::closed(o)).collect());
    grip(Handle::Load, (ahead + 30.0, mid), (body, stem), f.labels.move_load, block);
    grip(Handle::Centre, f.at(f.load_centre()), (None, None), f.labels.move_centre, centre);
}

enum Piece {
    Tag(Tag, Spot),
    Label(Label),
}

/// The unit vector that points out of the truck from a line of its circuit. The lines run
/// counter-clockwise as seen from above; on the sheet, y runs down.
fn outward(a: Spot, b: Spot) -> Spot {
    let d = towards(a, b);
    (-d.1, d.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outside_is_away_from_the_other_wheel() {
        // Right front to left front wheel, seen from above with the truck facing right: outside is ahead.
        assert_eq!(outward((0.0, 50.0), (0.0, -50.0)), (1.0, 0.0));
    }
}
