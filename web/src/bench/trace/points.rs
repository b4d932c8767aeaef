//! The points of a tracing: which one a finger means, and what becomes of them.
//!
//! Places are pixels of the picture. Nothing is worked out here but where points are.

use super::glass::Pixel;
use crate::drawing::marks::apart;
use crate::entries::{Dot, TraceEntry};
use standfast_core::scalar::Scalar;
use standfast_core::validate::{MOST_HOLES, MOST_POINTS};

/// A list of points.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Ring {
    /// The ends of the known length.
    Scale,
    /// The corners of the known rectangle.
    Rectangle,
    /// The outline.
    Outline,
    /// A hole, from 0.
    Hole(usize),
    /// What is not closed yet.
    Open,
}

/// One point.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct At {
    pub ring: Ring,
    /// From 0.
    pub point: usize,
}

/// What can be tapped now.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Task {
    /// Nothing.
    Look,
    /// The ends of a length.
    Scale,
    /// The corners of a rectangle.
    Rectangle,
    /// The outline; a hole too where one was asked for.
    Outline {
        /// Whether a tap begins a hole.
        hole: bool,
    },
}

/// What a tap means.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Meant {
    /// A point that is there.
    Point(At),
    /// An edge: after which point, and where on it.
    Edge(At, Pixel),
    /// A new point.
    New,
    /// Nothing.
    Nothing,
}

/// An outline needs so many points.
pub const LEAST: usize = 3;

/// A point of the entries; places are kept to a tenth of a pixel.
pub fn dot((x, y): Pixel) -> Dot {
    let tenth = |v: f64| Scalar::computed((v * 10.0).round() / 10.0);
    [tenth(x), tenth(y)]
}

/// Where a point is.
pub fn pixel(dot: &Dot) -> Pixel {
    (dot[0].get(), dot[1].get())
}

impl Ring {
    /// Whether its last point is joined to its first.
    pub fn is_closed(self) -> bool {
        matches!(self, Self::Outline | Self::Hole(_))
    }

    /// Its points.
    pub fn of(self, trace: &TraceEntry) -> &[Dot] {
        match self {
            Self::Scale => &trace.scale,
            Self::Rectangle => &trace.rectangle,
            Self::Outline => &trace.outline,
            Self::Hole(k) => trace.holes.get(k).map_or(&[], Vec::as_slice),
            Self::Open => &trace.open,
        }
    }

    fn of_mut(self, trace: &mut TraceEntry) -> Option<&mut Vec<Dot>> {
        match self {
            Self::Scale => Some(&mut trace.scale),
            Self::Rectangle => Some(&mut trace.rectangle),
            Self::Outline => Some(&mut trace.outline),
            Self::Hole(k) => trace.holes.get_mut(k),
            Self::Open => Some(&mut trace.open),
        }
    }

    /// Its points as they are.
    pub fn pixels(self, trace: &TraceEntry) -> Vec<Pixel> {
        self.of(trace).iter().map(pixel).collect()
    }

    /// Its name in tests.
    pub fn key(self) -> String {
        match self {
            Self::Scale => "scale".to_owned(),
            Self::Rectangle => "rectangle".to_owned(),
            Self::Outline => "outline".to_owned(),
            Self::Hole(k) => format!("hole-{k}"),
            Self::Open => "open".to_owned(),
        }
    }

    /// All there may be, in the order in which they are drawn.
    pub fn all(trace: &TraceEntry) -> Vec<Self> {
        let holes = (0..trace.holes.len()).map(Self::Hole);
        [Self::Outline].into_iter().chain(holes).chain([Self::Open, Self::Rectangle, Self::Scale]).collect()
    }
}

impl Task {
    /// The lists whose points can be taken hold of.
    pub fn rings(self, trace: &TraceEntry) -> Vec<Ring> {
        match self {
            Self::Look => Vec::new(),
            Self::Scale => vec![Ring::Scale],
            Self::Rectangle => vec![Ring::Rectangle],
            Self::Outline { .. } => {
                let holes = (0..trace.holes.len()).map(Ring::Hole);
                [Ring::Open, Ring::Outline].into_iter().chain(holes).collect()
            }
        }
    }

    /// The list that a tap on nothing adds a point to.
    pub fn adds_to(self, trace: &TraceEntry) -> Option<Ring> {
        match self {
            Self::Scale => (trace.scale.len() < 2).then_some(Ring::Scale),
            Self::Rectangle => (trace.rectangle.len() < 4).then_some(Ring::Rectangle),
            Self::Outline { hole } => {
                let begins = trace.outline.is_empty() || (hole && trace.holes.len() < MOST_HOLES);
                let goes_on = !trace.open.is_empty();
                ((begins || goes_on) && trace.open.len() < MOST_POINTS).then_some(Ring::Open)
            }
            Self::Look => None,
        }
    }

    /// What a tap means, within `reach` pixels of points and `edge` of edges.
    pub fn meant(self, trace: &TraceEntry, at: Pixel, reach: f64, edge: f64) -> Meant {
        let rings = self.rings(trace);
        let points = rings.iter().flat_map(|&ring| {
            let pixels = ring.pixels(trace).into_iter().enumerate();
            pixels.map(move |(point, p)| (apart(p, at), At { ring, point }))
        });
        let nearest = points.min_by(|a, b| a.0.total_cmp(&b.0)).filter(|(far, _)| *far <= reach);
        if let Some((_, found)) = nearest {
            return Meant::Point(found);
        }
        let adds = self.adds_to(trace);
        // Going round, nothing near an edge is in the way.
        if adds.is_none() {
            let edges = rings.iter().filter(|r| r.is_closed() && r.of(trace).len() < MOST_POINTS);
            let near = edges.flat_map(|&ring| on_edges(ring, trace, at)).min_by(|a, b| a.0.total_cmp(&b.0));
            if let Some((_, found, foot)) = near.filter(|(far, ..)| *far <= edge) {
                return Meant::Edge(found, foot);
            }
        }
        if adds.is_some() { Meant::New } else { Meant::Nothing }
    }
}

/// The nearest place on each edge of a closed list: how far, after which point, where.
fn on_edges(ring: Ring, trace: &TraceEntry, at: Pixel) -> Vec<(f64, At, Pixel)> {
    let points = ring.pixels(trace);
    let next = points.iter().cycle().skip(1);
    let foot = |(point, (a, b)): (usize, (&Pixel, &Pixel))| {
        let (dx, dy) = (b.0 - a.0, b.1 - a.1);
        let square = dx * dx + dy * dy;
        let t = if square > 0.0 { ((at.0 - a.0) * dx + (at.1 - a.1) * dy) / square } else { 0.0 };
        let t = t.clamp(0.0, 1.0);
        let foot = (a.0 + t * dx, a.1 + t * dy);
        (apart(foot, at), At { ring, point }, foot)
    };
    points.iter().zip(next).enumerate().map(foot).collect()
}

/// A point added at the end of a list.
pub fn added(trace: &TraceEntry, ring: Ring, at: Pixel) -> TraceEntry {
    let mut next = trace.clone();
    if let Some(list) = ring.of_mut(&mut next) {
        list.push(dot(at));
    }
    next
}

/// A point put in behind another.
pub fn put_in(trace: &TraceEntry, behind: At, at: Pixel) -> TraceEntry {
    let mut next = trace.clone();
    if let Some(list) = behind.ring.of_mut(&mut next) {
        list.insert((behind.point + 1).min(list.len()), dot(at));
    }
    next
}

/// A point put to another place.
pub fn placed(trace: &TraceEntry, which: At, at: Pixel) -> TraceEntry {
    let mut next = trace.clone();
    if let Some(point) = which.ring.of_mut(&mut next).and_then(|l| l.get_mut(which.point)) {
        *point = dot(at);
    }
    next
}

/// A point taken out; of what is closed, three must stay.
pub fn taken_out(trace: &TraceEntry, which: At) -> Option<TraceEntry> {
    let count = which.ring.of(trace).len();
    if which.point >= count || (which.ring.is_closed() && count <= LEAST) {
        return None;
    }
    let mut next = trace.clone();
    which.ring.of_mut(&mut next)?.remove(which.point);
    Some(next)
}

/// Whether what is open can be closed.
pub fn can_close(trace: &TraceEntry) -> bool {
    trace.open.len() >= LEAST && (trace.outline.is_empty() || trace.holes.len() < MOST_HOLES)
}

/// What is open, closed: the outline, or a hole where there is one already.
pub fn closed(trace: &TraceEntry) -> Option<TraceEntry> {
    if !can_close(trace) {
        return None;
    }
    let mut next = trace.clone();
    let points = std::mem::take(&mut next.open);
    if next.outline.is_empty() {
        next.outline = points;
    } else {
        next.holes.push(points);
    }
    Some(next)
}

/// Whether this is where an open list began and would be closed.
pub fn closes(trace: &TraceEntry, which: At) -> bool {
    which == At { ring: Ring::Open, point: 0 } && can_close(trace)
}

#[cfg(test)]
mod tests;
