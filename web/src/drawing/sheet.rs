//! A drawing before it becomes SVG: paths, texts and grips with their places, worked out in full so
//! that they can be checked without a browser.

use super::Handle;
#[cfg(test)]
use super::layout::{Room, bold_width, width};
use super::projection::{Metres, Projection, Spot};

/// Which end of a text stands at its spot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Its left end.
    Start,
    /// Its middle.
    Middle,
    /// Its right end.
    End,
}

impl Anchor {
    /// As SVG writes it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// A text.
#[derive(Clone, Debug, PartialEq)]
pub struct Words {
    /// Style class.
    pub class: &'static str,
    /// Where it stands, on its base line.
    pub spot: Spot,
    /// With which end.
    pub anchor: Anchor,
    /// Type size.
    pub size: f64,
    /// What it says.
    pub text: String,
    /// Test id.
    pub test: Option<String>,
}

impl Words {
    /// The room it takes.
    #[cfg(test)]
    pub fn room(&self) -> Room {
        let bold = self.class.contains("d-figure") || self.class.contains("d-tag-text");
        let w = if bold { bold_width(&self.text, self.size) } else { width(&self.text, self.size) };
        let left = match self.anchor {
            Anchor::Start => self.spot.0,
            Anchor::Middle => self.spot.0 - 0.5 * w,
            Anchor::End => self.spot.0 - w,
        };
        let (top, bottom) = (self.spot.1 - 0.76 * self.size, self.spot.1 + 0.22 * self.size);
        Room { left, top, right: left + w, bottom }
    }
}

/// A piece of the drawing.
#[derive(Clone, Debug, PartialEq)]
pub enum Item {
    /// A path.
    Shape {
        /// Style class.
        class: &'static str,
        /// Its SVG path data.
        path: String,
        /// Test id.
        test: Option<String>,
    },
    /// A text.
    Words(Words),
}

/// Two unit vectors of a view, square to each other: the first counts ahead, the second up or left.
pub type Axes = (Metres, Metres);

/// Something that can be dragged.
#[derive(Clone, Debug, PartialEq)]
pub struct Grip {
    /// What it moves.
    pub handle: Handle,
    /// Where it is.
    pub spot: Spot,
    /// What else of the drawing can be taken hold of, as a path.
    pub body: Option<String>,
    /// What ties it to the drawing where it stands apart.
    pub stem: Option<String>,
    /// The two directions that a move is counted in.
    pub axes: Axes,
    /// Its name, with how to use it.
    pub name: &'static str,
    /// Where it is, in words.
    pub says: String,
    /// Where it is, mm, and the range that the drawing shows.
    pub now: (f64, f64, f64),
}

/// A whole drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// How it was projected.
    pub projection: Projection,
    /// Its pieces, the hindmost first.
    pub items: Vec<Item>,
    /// Where in them the words begin: what lies under those stands before.
    pub words_from: usize,
    /// What can be dragged.
    pub grips: Vec<Grip>,
}

impl Sheet {
    /// An empty one.
    pub fn new((width, height): (f64, f64), projection: Projection) -> Self {
        Self { width, height, projection, items: Vec::new(), words_from: usize::MAX, grips: Vec::new() }
    }

    /// Adds a path.
    pub fn shape(&mut self, class: &'static str, path: String) {
        self.items.push(Item::Shape { class, path, test: None });
    }

    /// Adds a path that tests look for.
    pub fn named(&mut self, class: &'static str, path: String, test: &str) {
        self.items.push(Item::Shape { class, path, test: Some(test.to_owned()) });
    }

    /// Adds a text.
    pub fn words(&mut self, class: &'static str, spot: Spot, anchor: Anchor, size: f64, text: &str) {
        self.items.push(Item::Words(Words { class, spot, anchor, size, text: text.to_owned(), test: None }));
    }

    /// Adds a text in the middle of its spot that tests look for.
    pub fn named_words(&mut self, class: &'static str, spot: Spot, size: f64, text: &str, test: &str) {
        let (text, test) = (text.to_owned(), Some(test.to_owned()));
        self.items.push(Item::Words(Words { class, spot, anchor: Anchor::Middle, size, text, test }));
    }

    /// All texts.
    #[cfg(test)]
    pub fn texts(&self) -> impl Iterator<Item = &Words> {
        self.items.iter().filter_map(|i| match i {
            Item::Words(w) => Some(w),
            Item::Shape { .. } => None,
        })
    }
}
