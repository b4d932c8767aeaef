//! Labels: a caption with its figure and leader, and the tag with a line's margin.

use super::layout::{bold_width, width};
use super::margin::Fares;
use super::marks;
use super::projection::Spot;
use super::sheet::{Anchor, Sheet};
use standfast_core::units::{System, Unit};

/// Size of captions.
pub const SMALL: f64 = 16.0;
/// Size of figures.
pub const PLAIN: f64 = 18.0;
/// Size of the figure that matters most.
pub const LARGE: f64 = 27.0;

/// What a label says and what it points at.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// Caption, in a quieter face.
    pub caption: String,
    /// Figures under it.
    pub figures: Vec<String>,
    /// What it points at.
    pub target: Spot,
    /// How far from the target its leader ends.
    pub clear: f64,
}

impl Label {
    /// Its height.
    pub fn height(&self) -> f64 {
        SMALL + PLAIN * 1.1 * self.figures.len() as f64 + 9.0
    }

    /// Its width.
    pub fn width(&self) -> f64 {
        self.figures.iter().map(|f| bold_width(f, PLAIN)).fold(width(&self.caption, SMALL), f64::max)
    }

    /// Writes it with its top at `top`, and its leader from `from`.
    pub fn draw(&self, sheet: &mut Sheet, x: f64, anchor: Anchor, top: f64, from: Spot) {
        let end = marks::along(self.target, marks::towards(self.target, from), self.clear);
        sheet.shape("d-leader", marks::line(from, end));
        self.words(sheet, x, anchor, top);
    }

    /// Writes it without a leader.
    pub fn words(&self, sheet: &mut Sheet, x: f64, anchor: Anchor, top: f64) {
        let mut base = top + SMALL;
        sheet.words("d-caption", (x, base), anchor, SMALL, &self.caption);
        for figure in &self.figures {
            base += PLAIN * 1.1;
            sheet.words("d-figure", (x, base), anchor, PLAIN, figure);
        }
    }
}

/// A margin in words: the distance, and under it the worst corner and the slope not stood.
#[derive(Clone, Debug, PartialEq)]
pub struct Tag {
    /// Over it, in a quieter face; nothing for none.
    pub caption: String,
    /// The distance.
    pub main: String,
    /// Under it.
    pub under: Vec<String>,
    /// How the line fares: its colour.
    pub fares: Fares,
    /// Whether it is the one that matters most.
    pub first: bool,
    /// Test id.
    pub test: String,
}

impl Tag {
    fn size(&self) -> f64 {
        if self.first { LARGE } else { PLAIN }
    }

    /// Its height.
    pub fn height(&self) -> f64 {
        let caption = if self.caption.is_empty() { 0.0 } else { SMALL + 5.0 };
        caption + 1.4 * self.size() + (SMALL + 3.0) * self.under.len() as f64
    }

    /// The width of the distance with its ground.
    pub fn pill_width(&self) -> f64 {
        bold_width(&self.main, self.size()) + 14.0
    }

    /// Its width.
    pub fn width(&self) -> f64 {
        let under = self.under.iter().map(|u| width(u, SMALL)).fold(0.0, f64::max);
        self.pill_width().max(under).max(width(&self.caption, SMALL))
    }

    /// Writes it about the middle `x` with its top at `top`.
    pub fn draw(&self, sheet: &mut Sheet, x: f64, top: f64) {
        let mut y = top;
        if !self.caption.is_empty() {
            sheet.words("d-caption", (x, y + SMALL), Anchor::Middle, SMALL, &self.caption);
            y += SMALL + 5.0;
        }
        let size = self.size();
        let half = 0.5 * self.pill_width();
        let pill = marks::pill(x - half, y, x + half, y + 1.4 * size);
        let (ground, ink) = classes(self.fares);
        sheet.shape(ground, pill);
        sheet.named_words(ink, (x, y + 1.03 * size), size, &self.main, &self.test);
        y += 1.4 * size + 2.0;
        for under in &self.under {
            y += SMALL + 1.0;
            let class = if self.fares == Fares::Clear { "d-under" } else { "d-under d-plain" };
            sheet.words(class, (x, y), Anchor::Middle, SMALL, under);
            y += 2.0;
        }
    }
}

/// The classes of a tag's ground and of its text.
const fn classes(fares: Fares) -> (&'static str, &'static str) {
    match fares {
        Fares::Past | Fares::Short => ("d-tag d-no", "d-tag-text d-on-no"),
        Fares::Doubtful => ("d-tag d-hold", "d-tag-text d-on-hold"),
        Fares::Clear => ("d-tag d-go", "d-tag-text d-on-go"),
    }
}

/// A centre of gravity: a quartered circle.
pub fn centre_mark(sheet: &mut Sheet, at: Spot, r: f64) {
    sheet.shape("d-cg", marks::circle(at, r));
    sheet.shape("d-cg-quarters", marks::quarters(at, r));
}

/// A thin grid over the upper part of the sheet down to `bottom`, in round steps of the units in use;
/// returns its spacing in m.
pub fn grid(sheet: &mut Sheet, system: System, bottom: f64) -> f64 {
    let projection = sheet.projection;
    let mut step = match system {
        System::Metric => 0.5,
        System::Us => Unit::Foot.to_document(2.0),
    };
    for _ in 0..24 {
        if step * projection.scale >= 36.0 {
            break;
        }
        step *= 2.0;
    }
    let (left, top) = projection.metres((0.0, 0.0));
    let (right, low) = projection.metres((sheet.width, bottom));
    let lines = |lo: f64, hi: f64| {
        let first = (lo / step).ceil();
        let count = ((hi / step).floor() - first).clamp(0.0, 60.0) as u32;
        (0..=count).map(move |k| (first + f64::from(k)) * step)
    };
    let mut path = String::new();
    for a in lines(left, right) {
        let x = projection.spot((a, 0.0)).0;
        path += &marks::line((x, 0.0), (x, bottom));
    }
    for b in lines(low, top) {
        let y = projection.spot((0.0, b)).1;
        path += &marks::line((0.0, y), (sheet.width, y));
    }
    sheet.shape("d-grid", path);
    step
}
