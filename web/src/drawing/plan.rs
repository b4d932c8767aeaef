//! The plan view: the plumb bob inside the three tipping lines.

use super::figures::{length, mass};
use super::labels::Labels;
use super::layout::{Want, spread};
use super::margin::{Fares, Margin, line_key, line_name};
use super::marks::{self, along, apart, middle, towards};
use super::projection::{Area, Projection, Rest, Spot, Window};
use super::sheet::{Anchor, Grip, Sheet};
use super::tag::{Label, Tag, centre_mark, grid};
use super::{Handle, driven, scene};
use standfast_core::body::BodyId;
use standfast_core::report::{Point, StepReport};
use standfast_core::scene::Part;
use standfast_core::support::LineId;
use standfast_core::units::{Rounding, System};

/// Width and height of the sheet.
const SIZE: (f64, f64) = (640.0, 420.0);
/// Where the truck is drawn: margins and labels stand above and below it.
const AREA: Area = Area { left: 14.0, top: 106.0, right: 578.0, bottom: 312.0 };
/// Top of the row above, and of the row below.
const ROWS: (f64, f64) = (6.0, 328.0);
/// Depth of the hatching outside a line, and of one that is crossed.
const DEPTH: (f64, f64) = (11.0, 20.0);
/// Radius of the bob as seen from above.
const RING: f64 = 14.0;

fn fitted(step: &StepReport) -> Projection {
    let points = scene::points(&step.scene.plan);
    let marks = [step.centre, step.truck_centre, step.bob].into_iter().chain(step.load_centre);
    let marks = marks.map(|p| (p.x.get(), p.y.get()));
    Projection::fit(&Window::of(points.chain(marks).chain([(0.0, 0.0)])), &AREA, Rest::Middle)
}

/// Works out the plan view; `held` keeps the projection of a drag that is going on.
pub fn sheet(step: &StepReport, system: System, labels: &Labels, held: Option<Projection>) -> Sheet {
    let projection = held.unwrap_or_else(|| fitted(step));
    let mut sheet = Sheet::new(SIZE, projection);
    let tightest = Margin::tightest(step).map(|m| m.line.id);
    let view = View { step, system, labels, projection, tightest };
    grid(&mut sheet, system, SIZE.1);
    view.truck(&mut sheet);
    view.lines(&mut sheet);
    view.dimensions(&mut sheet);
    view.centres(&mut sheet);
    view.rows(&mut sheet);
    view.grips(&mut sheet);
    sheet
}

struct View<'a> {
    step: &'a StepReport,
    system: System,
    labels: &'a Labels,
    projection: Projection,
    tightest: Option<LineId>,
}

impl<'a> View<'a> {
    fn at(&self, point: Point) -> Spot {
        self.projection.spot((point.x.get(), point.y.get()))
    }

    fn margins(&self) -> impl Iterator<Item = Margin<'a>> {
        self.step.lines.iter().filter_map(|l| Margin::of(self.step, l.id))
    }

    fn truck(&self, sheet: &mut Sheet) {
        let plan = &self.step.scene.plan;
        let mut draw = |part: Part, class: &'static str| {
            for outline in plan.iter().filter(|o| o.part == part) {
                sheet.shape(class, marks::closed(&scene::spots(outline, &self.projection)));
            }
        };
        for outline in plan.iter().map(|o| o.part).filter(|p| !matches!(p, Part::Load)) {
            draw(outline, scene::class(outline));
        }
        draw(Part::Load, scene::class(Part::Load));
        draw(Part::Fork, "d-hidden");
        let steer: Vec<Spot> = scene::middles(plan, Part::SteerWheel).map(|m| self.projection.spot(m)).collect();
        if let [a, b] = steer.as_slice() {
            sheet.shape("d-axle", marks::line(*a, *b));
        }
        let middle_line = self.projection.spot((0.0, 0.0)).1;
        let ends = scene::points(plan).map(|(a, _)| a).fold((0.0_f64, 0.0_f64), |m, a| (m.0.min(a), m.1.max(a)));
        let (left, right) = (self.projection.spot((ends.0, 0.0)).0, self.projection.spot((ends.1, 0.0)).0);
        sheet.shape("d-centre-line", marks::line((left - 10.0, middle_line), (right + 10.0, middle_line)));
    }

    fn lines(&self, sheet: &mut Sheet) {
        for margin in self.margins() {
            let (a, b) = (self.at(margin.line.from), self.at(margin.line.to));
            let crossed = margin.fares == Fares::Past;
            let outward = outward(a, b);
            let depth = if crossed { DEPTH.1 } else { DEPTH.0 };
            let class = if crossed { "d-hatch d-crossed" } else { "d-hatch" };
            sheet.shape(class, marks::hatching(a, b, outward, depth));
        }
        for margin in self.margins() {
            let (a, b) = (self.at(margin.line.from), self.at(margin.line.to));
            let class = if margin.fares == Fares::Past { "d-line d-crossed" } else { "d-line" };
            sheet.named(class, marks::line(a, b), &format!("line-{}", line_key(margin.line.id)));
        }
        let pivot = self.step.lines.iter().find(|l| l.id == LineId::Left).map(|l| l.to);
        if let Some(pivot) = pivot.filter(|p| p.z.get() > 0.0) {
            sheet.shape("d-pivot", marks::circle(self.at(pivot), 5.5));
        }
    }

    /// The point of a line that is nearest to the bob.
    fn foot(&self, margin: &Margin) -> Spot {
        let (a, b, bob) = (self.at(margin.line.from), self.at(margin.line.to), self.at(self.step.bob));
        let d = towards(a, b);
        along(a, d, (bob.0 - a.0) * d.0 + (bob.1 - a.1) * d.1)
    }

    /// Where a margin's leader ends: on what shows of its dimension beyond the bob's ring.
    fn pointed_at(&self, margin: &Margin) -> Spot {
        let (bob, foot) = (self.at(self.step.bob), self.foot(margin));
        if apart(bob, foot) > RING + 12.0 { middle(along(bob, towards(bob, foot), RING), foot) } else { foot }
    }

    /// The distance of the bob from each line, square to it.
    fn dimensions(&self, sheet: &mut Sheet) {
        let bob = self.at(self.step.bob);
        for margin in self.margins() {
            let (a, b, foot) = (self.at(margin.line.from), self.at(margin.line.to), self.foot(&margin));
            // Beyond its ends, a line is carried on thinly to where the dimension meets it.
            let d = towards(a, b);
            let t = (foot.0 - a.0) * d.0 + (foot.1 - a.1) * d.1;
            if t < 0.0 || t > apart(a, b) {
                let end = if t < 0.0 { a } else { b };
                sheet.shape("d-dim", marks::line(end, along(foot, towards(end, foot), 6.0)));
            }
            let (thin, heads) = marks::dimension(bob, foot);
            let (class, arrows) = match (margin.fares, self.tightest == Some(margin.line.id)) {
                (Fares::Past, _) => ("d-dim d-crossed", "d-heads d-crossed"),
                (_, true) => ("d-dim d-strong", "d-heads"),
                _ => ("d-dim", "d-heads"),
            };
            sheet.shape(class, thin);
            sheet.shape(arrows, heads);
        }
    }

    fn centres(&self, sheet: &mut Sheet) {
        let (bob, centre) = (self.at(self.step.bob), self.at(self.step.centre));
        centre_mark(sheet, self.at(self.step.truck_centre), 9.0);
        // On a slope the plumb line hangs askew: seen from above it has a length.
        sheet.shape("d-cord", marks::line(centre, bob));
        sheet.named("d-bob-ring", marks::circle(bob, RING), "bob-plan");
        centre_mark(sheet, centre, 10.0);
        if let Some(pull) = driven::pull(self.step, self.system, self.labels) {
            let d = towards((0.0, 0.0), (pull.ahead, -pull.left));
            let (from, tip) = (along(bob, d, RING + 4.0), along(bob, d, RING + 44.0));
            sheet.named("d-press", marks::line(from, along(tip, d, -8.0)) + &marks::head(tip, d, 1.3), "pull-plan");
        }
        if apart(bob, centre) > 3.0 {
            sheet.shape("d-bob-point", marks::circle(bob, 3.0));
        }
    }

    fn tag(&self, margin: &Margin) -> Tag {
        let mut under = vec![margin.worst_words(self.system, self.labels)];
        under.extend(margin.slope_words(self.labels));
        Tag {
            caption: line_name(margin.line.id, self.labels).to_owned(),
            main: margin.words(self.system, self.labels),
            under,
            fares: margin.fares,
            first: self.tightest == Some(margin.line.id),
            test: format!("distance-{}", line_key(margin.line.id)),
        }
    }

    /// The rows above and below: margins with their leaders, and the centres' labels.
    fn rows(&self, sheet: &mut Sheet) {
        let mut above: Vec<(Want, Piece)> = Vec::new();
        let mut below: Vec<(Want, Piece)> = Vec::new();
        for margin in self.margins() {
            let tag = self.tag(&margin);
            let target = self.pointed_at(&margin);
            let row = if margin.line.id == LineId::Right { &mut below } else { &mut above };
            // The front line's stands to the right of the left line's, whatever their dimensions do.
            let at = target.0 + if margin.line.id == LineId::Front { 120.0 } else { -20.0 };
            row.push((Want { at, extent: tag.width() + 12.0 }, Piece::Tag(tag, target)));
        }
        let total = self.step.total_mass.get();
        let load: f64 = self.step.bodies.iter().filter(|b| b.id == BodyId::Load).map(|b| b.mass.get()).sum();
        let marks = [
            (self.labels.truck, total - load, self.at(self.step.truck_centre), 9.0, -30.0),
            (self.labels.together, total, self.at(self.step.centre), 14.0, 110.0),
        ];
        let load = self.step.load_centre.map(|at| (self.labels.load, load, self.at(at), 16.0, 40.0));
        // Without a load both together are the truck.
        let marks = marks.into_iter().take(if load.is_some() { 2 } else { 1 });
        for (name, kg, target, clear, shift) in marks.chain(load) {
            let figures = vec![mass(kg, self.system, Rounding::Nearest)];
            let label = Label { caption: name.to_owned(), figures, target, clear };
            let want = Want { at: target.0 + shift, extent: label.width() + 12.0 };
            // Below, where the labels cross no margin's leader; above, once there is no more room.
            let room = |row: &[(Want, Piece)]| SIZE.0 - 8.0 - row.iter().map(|(w, _)| w.extent).sum::<f64>();
            let row = if room(&below) >= want.extent || room(&above) < want.extent { &mut below } else { &mut above };
            row.push((want, Piece::Label(label)));
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

    fn grips(&self, sheet: &mut Sheet) {
        let Some(load) = self.step.scene.plan.iter().find(|o| o.part == Part::Load) else { return };
        let outline = scene::spots(load, &self.projection);
        let ahead = outline.iter().map(|p| p.0).fold(f64::MIN, f64::max);
        let mid = outline.iter().map(|p| p.1).sum::<f64>() / outline.len().max(1) as f64;
        let say = |metres: f64| length(metres, self.system, Rounding::Nearest);
        let axes = ((1.0, 0.0), (0.0, 1.0));
        let (left, right) = (self.projection.metres((0.0, 0.0)).0, self.projection.metres((SIZE.0, 0.0)).0);
        let block = scene::middle(&self.step.scene.plan, Part::Load).unwrap_or_default();
        let Some(load_centre) = self.step.load_centre else { return };
        let centre = (load_centre.x.get(), load_centre.y.get());
        let stem = Some(marks::line((ahead, mid), (ahead + 30.0, mid)));
        let mut grip = |handle, spot, (body, stem), name, (a, b): (f64, f64)| {
            let says = format!("{} {}, {} {}", say(a), self.labels.ahead, say(b), self.labels.left);
            let now = (a * 1000.0, left * 1000.0, right * 1000.0);
            sheet.grips.push(Grip { handle, spot, body, stem, axes, name, says, now });
        };
        let body = Some(marks::closed(&outline));
        grip(Handle::Load, (ahead + 30.0, mid), (body, stem), self.labels.move_load, block);
        grip(Handle::Centre, self.at(load_centre), (None, None), self.labels.move_centre, centre);
    }
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
