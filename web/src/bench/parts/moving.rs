//! A part, or one of its sides, taken hold of: what moving it writes into the entries.

use super::sizes::{Measure, measure};
use super::snap::{Sides, flush, round_step, rounded};
use super::view::{At, Body, View};
use crate::entries::{Entries, unit_of};
use standfast_core::document::{Facing, Shape};
use standfast_core::number;
use standfast_core::place::{Field, Place};
use standfast_core::scalar::Scalar;
use standfast_core::units::System;
use std::rc::Rc;

/// The figures that say where a part is, by direction.
pub const PLACES: [Field; 3] = [Field::PartAhead, Field::PartLeft, Field::PartAbove];
/// A side is not pushed nearer than this to the one opposite, m.
const THINNEST: f64 = 0.01;
/// A movement in a direction counts from this part of the reach on: an unsteady hand stays in line.
const STRAY: f64 = 0.5;

/// What of a part is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hold {
    /// All of it.
    Whole,
    /// One side: the direction, and whether it is the far one in it.
    Side(usize, bool),
}

/// A part taken hold of, and how everything stood then.
#[derive(Clone, Debug)]
pub struct Held {
    start: Rc<Entries>,
    bodies: Rc<Vec<Body>>,
    body: Body,
    shape: Shape,
    facing: Facing,
    view: View,
    hold: Hold,
    system: System,
}

/// How a movement is taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Manner {
    /// By hand: drawn to what is within this reach, m, else rounded.
    Hand(f64),
    /// By key: exactly so far.
    Exact,
}

impl Held {
    /// Takes hold; `None` where the part is not drawn.
    pub fn of(
        start: &Rc<Entries>,
        bodies: &Rc<Vec<Body>>,
        (part, view, hold): (usize, View, Hold),
        system: System,
    ) -> Option<Self> {
        let body = bodies.iter().find(|b| b.part == part)?.clone();
        let entry = start.parts.get(part)?;
        let (start, bodies) = (Rc::clone(start), Rc::clone(bodies));
        Some(Self { start, bodies, body, shape: entry.shape?, facing: entry.facing, view, hold, system })
    }

    /// What was entered when it was taken hold of.
    pub fn start(&self) -> &Rc<Entries> {
        &self.start
    }

    /// The entries with it moved so far along the view's two directions, m.
    pub fn moved(&self, by: At, manner: Manner) -> Entries {
        match self.hold {
            Hold::Whole => self.shifted(by, manner),
            Hold::Side(axis, far) => {
                let by = if self.view.axes().0 == axis { by.0 } else { by.1 };
                self.sized(axis, far, by, manner)
            }
        }
    }

    /// Parts that do not go along, solid ones; for a cut-out its host too.
    fn others(&self) -> impl Iterator<Item = &Body> {
        let me = self.body.part;
        self.bodies.iter().filter(move |b| b.part != me && !(b.cut && self.cut_from(b.part) == Some(me)))
    }

    fn cut_from(&self, part: usize) -> Option<usize> {
        self.start.parts.get(part).and_then(|p| p.cut_from)
    }

    fn shifted(&self, by: At, manner: Manner) -> Entries {
        let mut entries = Entries::clone(&self.start);
        let (i, j) = self.view.axes();
        let counts = |by: f64| match manner {
            Manner::Hand(reach) => by.abs() >= STRAY * reach,
            Manner::Exact => by != 0.0,
        };
        let moved: Vec<(usize, f64)> = [(i, by.0), (j, by.1)].into_iter().filter(|(_, by)| counts(*by)).collect();
        let mut body = self.body.clone();
        for (axis, by) in &moved {
            body.shift(*axis, *by);
        }
        for (axis, _) in &moved {
            if let Manner::Hand(reach) = manner {
                let on = flush(&body, Sides::Both, *axis, self.others(), reach)
                    .unwrap_or_else(|| rounded(body.place(*axis), round_step(self.system)) - body.place(*axis));
                body.shift(*axis, on);
            }
            self.put(&mut entries, &body, *axis);
        }
        entries
    }

    /// Writes where a part is along one direction; what is cut out of it goes along.
    fn put(&self, entries: &mut Entries, body: &Body, axis: usize) {
        let value = within(PLACES[axis], body.place(axis));
        let by = value - self.body.place(axis);
        enter(entries, Place::in_row(PLACES[axis], body.part), value, self.system);
        for cut in self.bodies.iter().filter(|b| b.cut && self.cut_from(b.part) == Some(body.part)) {
            let value = within(PLACES[axis], cut.place(axis) + by);
            enter(entries, Place::in_row(PLACES[axis], cut.part), value, self.system);
        }
    }

    fn sized(&self, axis: usize, far: bool, by: f64, manner: Manner) -> Entries {
        let mut entries = Entries::clone(&self.start);
        if let Manner::Hand(reach) = manner
            && by.abs() < STRAY * reach
        {
            return entries;
        }
        let mut body = self.body.clone();
        let side = |body: &mut Body, by: f64| if far { body.hi[axis] += by } else { body.lo[axis] += by };
        side(&mut body, by);
        if let Manner::Hand(reach) = manner {
            let sides = if far { Sides::High } else { Sides::Low };
            let out = if far { 1.0 } else { -1.0 };
            let on = flush(&body, sides, axis, self.others(), reach)
                .unwrap_or_else(|| out * (rounded(body.size(axis), round_step(self.system)) - body.size(axis)));
            side(&mut body, on);
        }
        let measure = measure(self.shape, self.facing, axis);
        let (least, most) = limits(measure);
        let size = body.size(axis).clamp(least.max(THINNEST).min(self.body.size(axis)), most);
        if far {
            body.hi[axis] = body.lo[axis] + size;
        } else {
            body.lo[axis] = body.hi[axis] - size;
        }
        let row = body.part;
        match measure {
            Measure::Figure(field) => enter(&mut entries, Place::in_row(field, row), size, self.system),
            Measure::Half(field) => enter(&mut entries, Place::in_row(field, row), 2.0 * size, self.system),
            Measure::Outline(k) => stretch(&mut entries.parts[row].outline, k, size / self.body.size(axis)),
        }
        let value = within(PLACES[axis], body.place(axis));
        if (value - self.body.place(axis)).abs() > 1e-9 {
            enter(&mut entries, Place::in_row(PLACES[axis], row), value, self.system);
        }
        entries
    }
}

/// A value within a figure's range.
pub fn within(field: Field, value: f64) -> f64 {
    let row = field.row();
    value.clamp(row.min, row.max)
}

/// What a size may be, m.
fn limits(measure: Measure) -> (f64, f64) {
    match measure {
        Measure::Figure(field) => (field.row().min, field.row().max),
        Measure::Half(field) => (0.5 * field.row().min, 0.5 * field.row().max),
        // Of an outline the core says what is too large; no drag reaches it.
        Measure::Outline(_) => (THINNEST, f64::INFINITY),
    }
}

/// Makes an outline longer or shorter in one direction.
fn stretch(outline: &mut [[Scalar; 2]], k: usize, by: f64) {
    if let Some(by) = Scalar::new(by) {
        for point in outline {
            point[k] = Scalar::computed(point[k].get() * by.get());
        }
    }
}

/// Enters a length as if it had been typed.
pub fn enter(entries: &mut Entries, place: Place, metres: f64, system: System) {
    if let Some(unit) = unit_of(place, system) {
        let text = number::show(unit.from_document(metres), 4);
        // A text that might be read two ways is written out.
        let text = if number::read(&text, unit).is_ok() { text } else { format!("{:.4}", unit.from_document(metres)) };
        entries.enter(place, &text, system);
    }
}

#[cfg(test)]
mod tests;
