//! Fingers on the sheet: what they hold, and what is told of it. Pure, so that it can be tried
//! without a page.

use super::glass::{Glass, Look, Pixel, Spot};
use super::paper;
use super::points::{At, Meant, Task, added, closed, closes, pixel, placed, put_in};
use crate::drawing::Phase;
use crate::drawing::marks::apart;
use crate::entries::{Entries, TraceEntry};
use std::rc::Rc;

/// A finger that has not come so far is tapping, sheet units.
const TAP: f64 = 6.0;
/// How far from a point a finger takes hold of it, sheet units.
const REACH: f64 = 24.0;
/// The same while points are put in: they may stand close.
const CLOSE_BY: f64 = 16.0;
/// How far from an edge it puts a point in.
const EDGE: f64 = 16.0;

/// What stands when a finger moves.
#[derive(Clone, Debug)]
pub struct Stand {
    pub entries: Rc<Entries>,
    pub glass: Glass,
    pub task: Task,
    /// Points settle on half squares.
    pub snap: bool,
    /// One finger moves the picture.
    pub slide: bool,
}

/// What is told.
#[derive(Clone, Debug, PartialEq)]
pub enum Told {
    /// Changed entries: one step.
    Set(Rc<Entries>),
    /// Changed entries on the way of a drag.
    Draw(Rc<Entries>, Phase),
    /// A point is selected, or none.
    Choose(Option<At>),
    /// Another part of the picture is looked at.
    Look(Look),
    /// The spot under the finger is shown larger, or no longer.
    Magnify(Option<(Pixel, Spot)>),
}

/// What the fingers do.
#[derive(Debug, Default)]
enum Doing {
    #[default]
    Nothing,
    /// About to put a point where the finger lifts.
    Placing,
    /// A point is held: the spot it was taken at, its place then, what stood before, what was told last.
    Holding { which: At, from: Spot, was: Pixel, start: Rc<Entries>, last: Option<Rc<Entries>> },
    /// The picture slides under the finger.
    Sliding { from: Spot, glass: Glass, far: bool },
    /// Two fingers.
    Pinching { from: [Spot; 2], glass: Glass },
}

/// The fingers.
#[derive(Debug, Default)]
pub struct Hand {
    fingers: Vec<(i32, Spot)>,
    doing: Doing,
}

/// The entries with another tracing.
pub fn with(entries: &Entries, trace: TraceEntry) -> Rc<Entries> {
    Rc::new(Entries { trace: Some(trace), ..entries.clone() })
}

impl Stand {
    fn trace(&self) -> TraceEntry {
        self.entries.trace.clone().unwrap_or_default()
    }

    /// Where a point is put: in the picture, on half squares where it snaps.
    fn settled(&self, at: Pixel) -> Pixel {
        let at = self.glass.within(at);
        if self.snap { paper::snapped(at) } else { at }
    }

    fn meant(&self, spot: Spot) -> Meant {
        let (trace, scale) = (self.trace(), self.glass.scale);
        let reach = if self.task.adds_to(&trace).is_some() { CLOSE_BY } else { REACH };
        self.task.meant(&trace, self.glass.pixel(spot), reach / scale, EDGE / scale)
    }

    fn magnified(&self, spot: Spot) -> Told {
        Told::Magnify(Some((self.settled(self.glass.pixel(spot)), spot)))
    }
}

impl Hand {
    /// A finger comes down.
    pub fn press(&mut self, stand: &Stand, finger: i32, spot: Spot) -> Vec<Told> {
        self.fingers.retain(|f| f.0 != finger);
        self.fingers.push((finger, spot));
        if let [(_, a), (_, b)] = self.fingers[..] {
            // Two fingers look closer; what one of them began is taken back.
            let told = self.taken_back();
            self.doing = Doing::Pinching { from: [a, b], glass: stand.glass };
            return told;
        }
        if self.fingers.len() > 2 {
            return Vec::new();
        }
        let slide = Doing::Sliding { from: spot, glass: stand.glass, far: false };
        if stand.slide {
            self.doing = slide;
            return Vec::new();
        }
        match stand.meant(spot) {
            Meant::Point(which) => {
                let Some(was) = which.ring.of(&stand.trace()).get(which.point).map(pixel) else { return Vec::new() };
                let start = Rc::clone(&stand.entries);
                self.doing = Doing::Holding { which, from: spot, was, start, last: None };
                vec![Told::Choose(Some(which)), Told::Magnify(Some((was, spot)))]
            }
            Meant::Edge(behind, foot) => {
                let was = stand.settled(foot);
                let entries = with(&stand.entries, put_in(&stand.trace(), behind, was));
                let which = At { point: behind.point + 1, ..behind };
                let (start, last) = (Rc::clone(&stand.entries), Some(Rc::clone(&entries)));
                self.doing = Doing::Holding { which, from: spot, was, start: Rc::clone(&start), last };
                vec![
                    Told::Draw(start, Phase::Begin),
                    Told::Draw(entries, Phase::Move),
                    Told::Choose(Some(which)),
                    Told::Magnify(Some((was, spot))),
                ]
            }
            Meant::New => {
                self.doing = Doing::Placing;
                vec![stand.magnified(spot)]
            }
            Meant::Nothing => {
                self.doing = slide;
                Vec::new()
            }
        }
    }

    /// A finger moves.
    pub fn go(&mut self, stand: &Stand, finger: i32, spot: Spot) -> Vec<Told> {
        let Some(held) = self.fingers.iter_mut().find(|f| f.0 == finger) else { return Vec::new() };
        held.1 = spot;
        match &mut self.doing {
            Doing::Nothing => Vec::new(),
            Doing::Placing => vec![stand.magnified(spot)],
            Doing::Holding { which, from, was, start, last } => {
                if last.is_none() && apart(*from, spot) < TAP {
                    return Vec::new();
                }
                let mut told = Vec::new();
                if last.is_none() {
                    told.push(Told::Draw(Rc::clone(start), Phase::Begin));
                    *last = Some(Rc::clone(start));
                }
                let scale = stand.glass.scale;
                let to = (was.0 + (spot.0 - from.0) / scale, was.1 + (spot.1 - from.1) / scale);
                let to = stand.settled(to);
                told.push(Told::Magnify(Some((to, spot))));
                let on = last.as_ref().and_then(|l| l.trace.as_ref());
                let entries = on.map(|trace| with(start, placed(trace, *which, to)));
                if let Some(entries) = entries.filter(|e| last.as_ref() != Some(e)) {
                    *last = Some(Rc::clone(&entries));
                    told.push(Told::Draw(entries, Phase::Move));
                }
                told
            }
            Doing::Sliding { from, glass, far } => {
                *far |= apart(*from, spot) >= TAP;
                let look = glass.moved((spot.0 - from.0, spot.1 - from.1));
                if *far { vec![Told::Look(look)] } else { Vec::new() }
            }
            Doing::Pinching { from: [a, b], glass } => {
                let [(_, c), (_, d), ..] = self.fingers[..] else { return Vec::new() };
                let middle = |p: Spot, q: Spot| (0.5 * (p.0 + q.0), 0.5 * (p.1 + q.1));
                let by = apart(c, d) / apart(*a, *b).max(1.0);
                vec![Told::Look(glass.pinched((middle(*a, *b), middle(c, d)), by))]
            }
        }
    }

    /// A finger lifts.
    pub fn lift(&mut self, stand: &Stand, finger: i32, spot: Spot) -> Vec<Told> {
        if !self.fingers.iter().any(|f| f.0 == finger) {
            return Vec::new();
        }
        self.fingers.retain(|f| f.0 != finger);
        let mut told = vec![Told::Magnify(None)];
        let trace = stand.trace();
        let close = |which: At| closes(&trace, which).then(|| closed(&trace)).flatten();
        match std::mem::take(&mut self.doing) {
            Doing::Placing => {
                // Slid onto the first point, it closes.
                let onto = match stand.meant(spot) {
                    Meant::Point(which) => close(which),
                    _ => None,
                };
                if let Some(next) = onto {
                    told.extend([Told::Set(with(&stand.entries, next)), Told::Choose(None)]);
                } else if let Some(ring) = stand.task.adds_to(&trace) {
                    let next = added(&trace, ring, stand.settled(stand.glass.pixel(spot)));
                    let point = ring.of(&next).len() - 1;
                    told.extend([Told::Set(with(&stand.entries, next)), Told::Choose(Some(At { ring, point }))]);
                }
            }
            Doing::Holding { last: Some(last), .. } => told.push(Told::Draw(last, Phase::End)),
            Doing::Holding { which, last: None, .. } => {
                if let Some(next) = close(which) {
                    told.extend([Told::Set(with(&stand.entries, next)), Told::Choose(None)]);
                }
            }
            Doing::Sliding { far: false, .. } => told.push(Told::Choose(None)),
            Doing::Sliding { .. } | Doing::Nothing | Doing::Pinching { .. } => {}
        }
        told
    }

    /// A finger is lost to the browser: nothing it had begun is kept.
    pub fn lost(&mut self, finger: i32) -> Vec<Told> {
        self.fingers.retain(|f| f.0 != finger);
        let told = self.taken_back();
        self.doing = Doing::Nothing;
        told
    }

    fn taken_back(&mut self) -> Vec<Told> {
        let mut told = vec![Told::Magnify(None)];
        if let Doing::Holding { start, last: Some(_), .. } = std::mem::take(&mut self.doing) {
            told.push(Told::Draw(Rc::clone(&start), Phase::Move));
            told.push(Told::Draw(start, Phase::End));
        }
        told
    }
}

#[cfg(test)]
mod tests;
