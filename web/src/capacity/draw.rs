//! The diagram on its sheet: a thin grid, the plate's steps as thick edges with hatching on the far side,
//! the model's curves dashed, each named at its end; the load as it is with its range as a cross.

use super::chart::{Chart, Curve, Field, Stair, column, round_step};
use crate::drawing::marks;
use crate::drawing::projection::Spot;
use crate::drawing::sheet::{Anchor, Item, Words};
use crate::figures::{Printer, figure, number};
use crate::words::{fill, words};
use standfast_core::units::{Quantity, Rounding, Unit};

/// Width and height of the sheet.
pub const SIZE: (f64, f64) = (790.0, 460.0);
/// Where the curves are; their names stand to the right of it.
const AREA: (Spot, Spot) = ((66.0, 402.0), (556.0, 40.0));
const SMALL: f64 = 15.0;
const LINE: f64 = 19.0;

/// The sheet's pieces.
#[derive(Default)]
struct Ink(Vec<Item>);

impl Ink {
    fn shape(&mut self, class: &'static str, path: String, test: Option<&str>) {
        self.0.push(Item::Shape { class, path, test: test.map(str::to_owned) });
    }

    fn words(&mut self, class: &'static str, spot: Spot, anchor: Anchor, text: &str) {
        self.0.push(Item::Words(Words { class, spot, anchor, size: SMALL, text: text.to_owned(), test: None }));
    }
}

/// Draws it.
pub fn items(chart: &Chart, print: Printer) -> Vec<Item> {
    let units = [Quantity::Length, Quantity::Mass].map(|q| q.unit(print.0));
    let most = chart.extent();
    let shown = [units[0].from_document(most.0), units[1].from_document(most.1)];
    let steps = [round_step(shown[0], 8.0), round_step(shown[1], 8.0)];
    // Up to the next line of the grid.
    let ends: Vec<f64> = shown.iter().zip(steps).map(|(most, step)| (most / step).ceil().max(1.0) * step).collect();
    let most = (units[0].to_document(ends[0]), units[1].to_document(ends[1]));
    // From the line of the grid before the nearest.
    let first = (units[0].from_document(chart.nearest()) / steps[0] + 1e-6).floor() * steps[0];
    let field = Field { origin: AREA.0, far: AREA.1, least: units[0].to_document(first), most };
    let mut ink = Ink::default();
    grid(&mut ink, &field, units, steps, [(first, ends[0]), (0.0, ends[1])]);
    both(&mut ink, &field, chart);
    let upright = marks::line(field.origin, (field.origin.0, field.far.1));
    ink.shape("c-axis", marks::line(field.origin, (field.far.0, field.origin.1)) + &upright, None);
    let mut names = Vec::new();
    for stair in &chart.stairs {
        names.push(stairs(&mut ink, &field, chart, stair, print));
    }
    for curve in &chart.curves {
        names.extend(self::curve(&mut ink, &field, chart, curve, print));
    }
    names.push(now(&mut ink, &field, chart, print));
    label(&mut ink, names);
    ink.0
}

fn grid(ink: &mut Ink, field: &Field, units: [Unit; 2], steps: [f64; 2], ends: [(f64, f64); 2]) {
    let counts = [0, 1].map(|k: usize| ((ends[k].1 - ends[k].0) / steps[k]).round().clamp(1.0, 20.0) as u32);
    let mut path = String::new();
    let (mut along, mut up) = (Vec::new(), Vec::new());
    for k in 0..=counts[0] {
        let value = ends[0].0 + f64::from(k) * steps[0];
        let x = field.spot((units[0].to_document(value), 0.0)).0;
        path += &marks::line((x, field.origin.1), (x, field.far.1));
        along.push((x, value));
    }
    for k in 0..=counts[1] {
        let value = f64::from(k) * steps[1];
        let y = field.spot((0.0, units[1].to_document(value))).1;
        path += &marks::line((field.origin.0, y), (field.far.0, y));
        up.push((y, value));
    }
    ink.shape("d-grid", path, None);
    let places = |step: f64| if step < 1.0 { 1 } else { 0 };
    for (x, value) in along {
        let text = number(value, places(steps[0]), Rounding::Nearest);
        ink.words("d-caption", (x, field.origin.1 + 23.0), Anchor::Middle, &text);
    }
    for (y, value) in up {
        let text = number(value, places(steps[1]), Rounding::Nearest);
        ink.words("d-caption", (field.origin.0 - 8.0, y + 5.0), Anchor::End, &text);
    }
    let w = &words().limits;
    let axis = |name: &str, unit: Unit| format!("{name}, {}", unit.symbol());
    ink.words("d-caption", (field.far.0, field.origin.1 + 44.0), Anchor::End, &axis(w.axis_centre, units[0]));
    ink.words("d-caption", (8.0, field.far.1 - 18.0), Anchor::Start, &axis(w.axis_mass, units[1]));
}

/// What plate and model both leave at today's height, as a quiet ground.
fn both(ink: &mut Ink, field: &Field, chart: &Chart) {
    let (Some(stair), Some(curve)) = (chart.governing(), chart.today()) else { return };
    let mut top = Vec::new();
    for &(from, to, allowed) in &stair.treads {
        let inside = curve.points.iter().filter(|p| p.0 > from && p.0 < to).map(|p| p.0);
        for x in std::iter::once(from).chain(inside).chain([to]) {
            if let Some(left) = at(curve, x) {
                top.push((x, allowed.min(left)));
            }
        }
    }
    let (Some(first), Some(last)) = (top.first(), top.last()) else { return };
    let corners = [(last.0, 0.0), (first.0, 0.0)];
    let outline: Vec<Spot> = top.iter().chain(&corners).map(|p| field.spot(*p)).collect();
    ink.shape("c-both", marks::closed(&outline), Some("capacity-both"));
}

/// What a curve has at a load centre: on the line between its points; nothing beyond its ends.
fn at(curve: &Curve, x: f64) -> Option<f64> {
    curve.points.windows(2).find(|w| (w[0].0..=w[1].0).contains(&x)).map(|w| {
        let part = if w[1].0 > w[0].0 { (x - w[0].0) / (w[1].0 - w[0].0) } else { 0.0 };
        w[0].1 + part * (w[1].1 - w[0].1)
    })
}

/// A name, where what it names ends, and whether it is today's.
struct Name {
    text: String,
    end: Spot,
    today: bool,
}

fn stairs(ink: &mut Ink, field: &Field, chart: &Chart, stair: &Stair, print: Printer) -> Name {
    let today = chart.governing() == Some(stair);
    let mut path = String::new();
    let mut hatch = String::new();
    let mut last: Option<Spot> = None;
    for &(from, to, allowed) in &stair.treads {
        let (a, b) = (field.spot((from, allowed)), field.spot((to, allowed)));
        if let Some(end) = last {
            path += &marks::line(end, a);
        }
        path += &marks::line(a, b);
        hatch += &marks::hatching(a, b, (0.0, -1.0), 9.0);
        last = Some(b);
    }
    // Beyond its last load centre the plate allows nothing.
    if let Some(end) = last {
        let foot = (end.0, field.origin.1);
        path += &marks::line(end, foot);
        hatch += &marks::hatching(foot, end, (1.0, 0.0), 9.0);
    }
    if today {
        ink.shape("d-hatch", hatch, None);
    }
    let class = if today { "c-plate c-today" } else { "c-plate" };
    ink.shape(class, path, Some(if today { "capacity-plate" } else { "capacity-plate-other" }));
    let text = fill(words().limits.plate_to, &[("height", &print.height(stair.height))]);
    Name { text, end: last.unwrap_or(field.origin), today }
}

fn curve(ink: &mut Ink, field: &Field, chart: &Chart, curve: &Curve, print: Printer) -> Option<Name> {
    let today = chart.today() == Some(curve);
    let spots: Vec<Spot> = curve.points.iter().map(|p| field.spot(*p)).collect();
    let end = *spots.last()?;
    let path: String = spots.windows(2).map(|w| marks::line(w[0], w[1])).collect();
    ink.shape(
        if today { "c-model c-today" } else { "c-model" },
        path,
        Some(if today { "capacity-model" } else { "capacity-model-other" }),
    );
    let text = fill(words().limits.model_at, &[("height", &print.height(curve.height))]);
    Some(Name { text, end, today })
}

/// The names in a column on the right, each led to the end of its line.
fn label(ink: &mut Ink, mut names: Vec<Name>) {
    names.sort_by(|a, b| a.end.1.total_cmp(&b.end.1));
    let wishes: Vec<f64> = names.iter().map(|n| n.end.1).collect();
    let left = AREA.1.0 + 26.0;
    for (name, y) in names.iter().zip(column(&wishes, LINE, (AREA.1.1 - 6.0, AREA.0.1 + 10.0))) {
        ink.shape("d-leader", marks::line(name.end, (left - 5.0, y)), None);
        ink.words(if name.today { "d-figure" } else { "d-caption" }, (left, y + 5.0), Anchor::Start, &name.text);
    }
}

/// The load as it is: its range as a cross, what is stated as its middle.
fn now(ink: &mut Ink, field: &Field, chart: &Chart, print: Printer) -> Name {
    let now = &chart.now;
    let (centre, mass) = (now.centre, now.mass);
    let spot = field.spot((centre.at, mass.at));
    let across = [centre.lo, centre.hi].map(|c| field.spot((c, mass.at)));
    let up = [mass.lo, mass.hi].map(|m| field.spot((centre.at, m)));
    let tick = 5.0;
    let cross = marks::line(across[0], across[1])
        + &marks::line(up[0], up[1])
        + &across.map(|p| marks::line((p.0, p.1 - tick), (p.0, p.1 + tick))).concat()
        + &up.map(|p| marks::line((p.0 - tick, p.1), (p.0 + tick, p.1))).concat();
    ink.shape("d-spread-halo", cross.clone(), None);
    ink.shape("c-cross", cross, Some("capacity-range"));
    ink.shape("d-cg", marks::circle(spot, 8.0), None);
    ink.shape("d-cg-quarters", marks::quarters(spot, 8.0), Some("capacity-now"));
    let weight = figure(Quantity::Mass.unit(print.0), mass.at, Rounding::Nearest);
    let end = (across[1].0.max(spot.0 + 8.0), spot.1);
    Name { text: fill(words().limits.this_load, &[("mass", &weight)]), end, today: true }
}
