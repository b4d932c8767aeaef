//! The side view: the plumb line against the front tipping line.

mod driven;
mod words;

use super::figures::length;
use super::labels::Labels;
use super::layout::width;
use super::margin::{Fares, Margin};
use super::marks::{self, along, apart, middle, towards};
use super::projection::{Area, Projection, Rest, Spot, Window};
use super::sheet::{Anchor, Grip, Sheet};
use super::tag::{SMALL, Tag, centre_mark, grid};
use super::{Handle, scene};
use standfast_core::report::StepReport;
use standfast_core::scene::Part;
use standfast_core::support::LineId;
use standfast_core::units::{Rounding, System};

/// Width and height of the sheet.
const SIZE: (f64, f64) = (640.0, 480.0);
/// Where the truck is drawn: labels stand left and right of it, the margin below.
const AREA: Area = Area { left: 108.0, top: 74.0, right: 508.0, bottom: 370.0 };
/// Left edge of the right-hand labels.
const RIGHT_COLUMN: f64 = 532.0;

/// The projection that fits a step's side view.
fn fitted(step: &StepReport) -> Projection {
    let points = scene::points(&step.scene.side);
    let marks = [step.centre, step.truck_centre, step.bob].into_iter().chain(step.load_centre);
    let marks = marks.map(|p| (p.x.get(), p.z.get()));
    Projection::fit(&Window::of(points.chain(marks).chain([(0.0, 0.0)])), &AREA, Rest::Bottom)
}

/// Works out the side view; `held` keeps the projection of a drag that is going on.
pub fn sheet(step: &StepReport, system: System, labels: &Labels, held: Option<Projection>) -> Sheet {
    let projection = held.unwrap_or_else(|| fitted(step));
    let mut sheet = Sheet::new(SIZE, projection);
    let view = View { step, system, labels, projection, front: Margin::of(step, LineId::Front) };
    view.ground(&mut sheet);
    view.truck(&mut sheet);
    view.tilt(&mut sheet);
    view.line(&mut sheet);
    view.plumb_line(&mut sheet);
    view.driven(&mut sheet);
    view.margin(&mut sheet);
    view.floor_loads(&mut sheet);
    view.fork_height(&mut sheet);
    view.left_labels(&mut sheet);
    view.grips(&mut sheet);
    sheet
}

struct View<'a> {
    step: &'a StepReport,
    system: System,
    labels: &'a Labels,
    projection: Projection,
    front: Option<Margin<'a>>,
}

impl View<'_> {
    fn at(&self, point: standfast_core::report::Point) -> Spot {
        self.projection.spot((point.x.get(), point.z.get()))
    }

    fn ground_level(&self) -> f64 {
        self.projection.spot((0.0, 0.0)).1
    }

    /// The front tipping line, seen from its end.
    fn front_spot(&self) -> Spot {
        self.front.map_or(self.projection.spot((0.0, 0.0)), |m| self.at(m.line.from))
    }

    fn past(&self) -> bool {
        self.front.is_some_and(|m| m.fares == Fares::Past)
    }

    fn ground(&self, sheet: &mut Sheet) {
        let y = self.ground_level();
        let spacing = grid(sheet, self.system, y);
        let text = format!("{} {}", self.labels.grid, length(spacing, self.system, Rounding::Nearest));
        sheet.words("d-note", (SIZE.0 - 8.0, SIZE.1 - 8.0), Anchor::End, 12.0, &text);
        let start = self.front_spot().0;
        let class = if self.past() { "d-hatch d-crossed" } else { "d-hatch" };
        sheet.shape(class, marks::hatching((start + 8.0, y), (SIZE.0 + 8.0, y), (0.0, 1.0), 9.0));
        sheet.shape("d-ground", marks::line((0.0, y), (SIZE.0, y)));
    }

    fn truck(&self, sheet: &mut Sheet) {
        for outline in &self.step.scene.side {
            sheet.shape(scene::class(outline.part), marks::closed(&scene::spots(outline, &self.projection)));
        }
        // The hub, and the pivot where the steer axle has one.
        for part in [Part::FrontWheel, Part::SteerWheel] {
            if let Some(hub) = scene::middle(&self.step.scene.side, part) {
                sheet.shape("d-hub", marks::circle(self.projection.spot(hub), 4.0));
            }
        }
        let pivot = self.step.lines.iter().find(|l| l.id == LineId::Left).map(|l| l.to);
        if let Some(pivot) = pivot.filter(|p| p.z.get() > 0.0) {
            let at = self.at(pivot);
            sheet.shape("d-pivot", marks::circle(at, 5.0) + &marks::line((at.0 - 9.0, at.1), (at.0 + 9.0, at.1)));
        }
    }

    /// The mast's centre line, and its angle from upright.
    fn tilt(&self, sheet: &mut Sheet) {
        let Some((foot, top)) = self.mast() else { return };
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
    fn mast(&self) -> Option<(Spot, Spot)> {
        let side = &self.step.scene.side;
        let outer = side.iter().find(|o| o.part == Part::MastOuter)?;
        let highest = side.iter().rfind(|o| o.part == Part::MastStage).unwrap_or(outer);
        let (outer, highest) = (scene::spots(outer, &self.projection), scene::spots(highest, &self.projection));
        Some((middle(*outer.first()?, *outer.get(1)?), middle(*highest.get(2)?, *highest.get(3)?)))
    }

    /// The front line as a fulcrum under the wheel and a centre line above it.
    fn line(&self, sheet: &mut Sheet) {
        let foot = self.front_spot();
        let top = self.at(self.step.centre).1.min(foot.1 - 90.0) - 12.0;
        let crossed = self.past();
        sheet.shape(if crossed { "d-post d-crossed" } else { "d-post" }, marks::line(foot, (foot.0, top.max(8.0))));
        let fulcrum = [foot, (foot.0 + 10.0, foot.1 + 17.0), (foot.0 - 10.0, foot.1 + 17.0)];
        let class = if crossed { "d-fulcrum d-crossed" } else { "d-fulcrum" };
        sheet.named(class, marks::closed(&fulcrum), "line-front-side");
    }

    /// The motif: the line of action as a plumb line from the common centre down to its bob.
    fn plumb_line(&self, sheet: &mut Sheet) {
        let (centre, foot) = (self.at(self.step.centre), self.at(self.step.bob));
        let up = towards(foot, centre);
        let cord = along(foot, up, marks::BOB_HEIGHT.min(apart(foot, centre)) - 2.0);
        // The cord hangs from well above the centre, so that it is seen even where the centre is low.
        let hook = along(foot, up, (apart(foot, centre) + 48.0).max(190.0).min(foot.1 - 14.0));
        sheet.shape("d-cord-halo", marks::line(hook, cord));
        sheet.shape("d-cord-above", marks::line(hook, centre) + &marks::circle(along(hook, up, 4.0), 4.0));
        sheet.shape("d-cord", marks::line(centre, cord));
        sheet.named("d-bob", marks::bob(foot), "bob");
        centre_mark(sheet, self.at(self.step.truck_centre), 9.0);
        centre_mark(sheet, centre, 14.0);
    }

    fn margin(&self, sheet: &mut Sheet) {
        let Some(front) = self.front else { return };
        let (bob, post) = (self.at(self.step.bob), self.front_spot());
        let y = self.ground_level() + 27.0;
        for (x, below) in [(bob.0, 3.0), (post.0, 17.0)] {
            sheet.shape("d-dim", marks::line((x, self.ground_level() + below), (x, y + 6.0)));
        }
        let (thin, heads) = marks::dimension((bob.0, y), (post.0, y));
        let strong = if self.past() { "d-dim d-crossed" } else { "d-dim d-strong" };
        sheet.shape(strong, thin);
        sheet.shape(if self.past() { "d-heads d-crossed" } else { "d-heads" }, heads);
        let mut under = front.worst_words(self.system, self.labels);
        if let Some(slope) = front.slope_words(self.labels) {
            under += &format!(" \u{b7} {slope}");
        }
        let tag = Tag {
            caption: String::new(),
            main: front.words(self.system, self.labels),
            under: vec![under],
            fares: front.fares,
            first: true,
            test: "distance-front-side".to_owned(),
        };
        let half = 0.5 * tag.width();
        let mid = 0.5 * (bob.0 + post.0);
        let x = mid.clamp(half + 8.0, (SIZE.0 - 8.0 - half).max(half + 8.0));
        let top = self.ground_level() + 44.0;
        sheet.shape("d-leader", marks::line((mid, y), (mid, top)));
        tag.draw(sheet, x, top);
        // What lies at either end of the distance, to be read with it as one line.
        let (mut ends, pill) = ([self.labels.line_of_action, self.labels.front_line], 0.5 * tag.pill_width() + 9.0);
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

    fn grips(&self, sheet: &mut Sheet) {
        let Some(load) = self.step.scene.side.iter().find(|o| o.part == Part::Load) else { return };
        let outline = scene::spots(load, &self.projection);
        let top = outline.iter().map(|p| p.1).fold(f64::MAX, f64::min);
        let mid = outline.iter().map(|p| p.0).sum::<f64>() / outline.len().max(1) as f64;
        let say = |metres: f64| length(metres, self.system, Rounding::Nearest);
        let shown = |spot: Spot| self.projection.metres(spot);
        let (floor, ceiling) = (0.0, shown((0.0, 0.0)).1 * 1000.0);
        let lift = self.step.lift.get();
        sheet.grips.push(Grip {
            handle: Handle::Load,
            spot: (mid, top - 36.0),
            body: Some(marks::closed(&outline)),
            stem: Some(marks::line((mid, top - 36.0), (mid, outline_top(&outline, mid)))),
            axes: ((1.0, 0.0), (0.0, 1.0)),
            name: self.labels.move_load,
            says: format!("{} {}", self.labels.fork_height, say(lift)),
            now: (lift * 1000.0, floor, ceiling),
        });
        let Some(centre) = self.step.load_centre else { return };
        let (left, right) = (shown((0.0, 0.0)).0 * 1000.0, shown((SIZE.0, 0.0)).0 * 1000.0);
        sheet.grips.push(Grip {
            handle: Handle::Centre,
            spot: self.at(centre),
            body: None,
            stem: None,
            axes: scene::blades(load),
            name: self.labels.move_centre,
            says: format!("{} {}, {} {}", say(centre.x.get()), self.labels.ahead, say(centre.z.get()), self.labels.up),
            now: (centre.x.get() * 1000.0, left, right),
        });
    }
}

/// Where an upright line at `x` first meets an outline from above; its highest corner where it does not.
fn outline_top(outline: &[Spot], x: f64) -> f64 {
    let edges = outline.iter().zip(outline.iter().cycle().skip(1));
    let met =
        edges.filter(|(a, b)| (a.0 - x) * (b.0 - x) < 0.0).map(|(a, b)| a.1 + (b.1 - a.1) * (x - a.0) / (b.0 - a.0));
    let highest = outline.iter().map(|p| p.1).fold(f64::MAX, f64::min);
    met.reduce(f64::min).unwrap_or(highest)
}
