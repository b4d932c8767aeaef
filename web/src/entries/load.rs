//! The load's lists as entered: parts, a traced outline, points of support. Their figures stand
//! with all others, by place; here is what is chosen, named or tapped.

use super::{Entries, Typed, unit_of};
use serde::{Deserialize, Serialize};
use standfast_core::document::{
    Document, Facing, Load, Part, PhotoTruck, RaisedEnd, Shape, Trace, TraceView, WeighPoint, Weighing, WeightKnown,
};
use standfast_core::material::Material;
use standfast_core::place::{Field, Place};
use standfast_core::scalar::Scalar;
use standfast_core::units::System;

/// A tapped or drawn point.
pub type Dot = [Scalar; 2];

/// Every figure of a part.
pub const OF_PART: [Field; 9] = [
    Field::PartMass,
    Field::PartLength,
    Field::PartWidth,
    Field::PartHeight,
    Field::PartDiameter,
    Field::PartBore,
    Field::PartAhead,
    Field::PartLeft,
    Field::PartAbove,
];

/// One part of the load.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct PartEntry {
    pub name: String,
    pub shape: Option<Shape>,
    pub facing: Facing,
    /// The part, from 0, that it is cut out of.
    pub cut_from: Option<usize>,
    pub weight_known: Option<WeightKnown>,
    pub material: Option<Material>,
    /// A prism's outline, m.
    pub outline: Vec<Dot>,
}

/// What an outline is traced on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Ground {
    /// Nothing that is here: its picture stayed on another device, or was removed.
    #[default]
    Gone,
    /// Squared paper.
    Paper,
    /// A photo kept in the browser, by its number there.
    Photo(u64),
}

/// A traced outline; points in pixels of the picture, right and down.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct TraceEntry {
    /// What it is traced on: no part of a document.
    pub ground: Ground,
    /// What is tapped so far of an outline, or of a hole once there is an outline, and not closed
    /// yet: no part of a document either.
    pub open: Vec<Dot>,
    pub view: TraceView,
    pub truck: PhotoTruck,
    /// Size of the picture.
    pub picture: Option<Dot>,
    pub outline: Vec<Dot>,
    pub holes: Vec<Vec<Dot>>,
    /// The two ends of a known length.
    pub scale: Vec<Dot>,
    /// The corners of a known rectangle.
    pub rectangle: Vec<Dot>,
}

/// What was weighed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct WeighEntry {
    /// How many points of support.
    pub points: usize,
    /// The end that was raised for a second set.
    pub raised_end: Option<RaisedEnd>,
}

/// What is not finite was not tapped.
fn dot(point: &[f64; 2]) -> Option<Dot> {
    Some([Scalar::new(point[0])?, Scalar::new(point[1])?])
}

fn dots(points: &[[f64; 2]]) -> Vec<Dot> {
    points.iter().filter_map(dot).collect()
}

fn plain(points: &[Dot]) -> Vec<[f64; 2]> {
    points.iter().map(|p| p.map(Scalar::get)).collect()
}

impl PartEntry {
    fn of(part: &Part) -> Self {
        Self {
            name: part.name.clone(),
            shape: part.shape,
            facing: part.facing,
            cut_from: part.cut_from,
            weight_known: part.weight_known,
            material: part.material,
            outline: dots(&part.outline),
        }
    }

    fn part(&self) -> Part {
        Part {
            name: self.name.clone(),
            shape: self.shape,
            facing: self.facing,
            cut_from: self.cut_from,
            weight_known: self.weight_known,
            material: self.material,
            outline: plain(&self.outline),
            ..Part::default()
        }
    }
}

impl TraceEntry {
    fn of(trace: &Trace) -> Self {
        Self {
            view: trace.view,
            truck: trace.truck,
            picture: trace.picture.as_ref().and_then(dot),
            outline: dots(&trace.outline),
            holes: trace.holes.iter().map(|h| dots(h)).collect(),
            scale: dots(&trace.scale),
            rectangle: dots(&trace.rectangle),
            ..Self::default()
        }
    }

    fn trace(&self) -> Trace {
        Trace {
            view: self.view,
            truck: self.truck,
            picture: self.picture.map(|p| p.map(Scalar::get)),
            outline: plain(&self.outline),
            holes: self.holes.iter().map(|h| plain(h)).collect(),
            scale: plain(&self.scale),
            rectangle: plain(&self.rectangle),
            ..Trace::default()
        }
    }
}

impl Entries {
    /// Takes over what a document's load chooses, names and lists.
    pub(super) fn take_load(&mut self, load: &Load) {
        self.load_name.clone_from(&load.name);
        self.weight_known = load.weight_known;
        self.centre_known = load.centre_known;
        self.given_as = load.given_as;
        self.material = load.material;
        self.turned = load.turned;
        self.underside = load.underside;
        self.hanging = load.hanging;
        self.parts = load.parts.iter().map(PartEntry::of).collect();
        self.trace = load.trace.as_ref().map(TraceEntry::of);
        let weigh = |w: &Weighing| WeighEntry { points: w.points.len(), raised_end: w.raised_end };
        self.weighing = load.weighing.as_ref().map(weigh);
    }

    /// The load without its figures.
    pub(super) fn load(&self) -> Load {
        Load {
            name: self.load_name.clone(),
            given_as: self.given_as,
            weight_known: self.weight_known,
            centre_known: self.centre_known,
            material: self.material,
            parts: self.parts.iter().map(PartEntry::part).collect(),
            trace: self.trace.as_ref().map(TraceEntry::trace),
            weighing: self.weighing.map(|w| Weighing {
                points: vec![WeighPoint::default(); w.points],
                raised_end: w.raised_end,
                ..Weighing::default()
            }),
            turned: self.turned,
            underside: self.underside,
            hanging: self.hanging,
            ..Load::default()
        }
    }

    /// Takes over what a change differs in between two documents: figures, which way the load is turned,
    /// how the ramp is driven down, whether there is an attachment.
    pub fn take_changes(&mut self, before: &Document, after: &Document) {
        for place in Place::all_numbers(after) {
            let (was, is) = (place.get(before), place.get(after));
            if was == is {
                continue;
            }
            match is.zip(unit_of(place, System::Metric)) {
                Some((value, unit)) => self.numbers.insert(place, Typed::of_value(value, unit)),
                None => self.numbers.remove(&place),
            };
        }
        self.turned = after.load.turned;
        if before.drive.ramp_down != after.drive.ramp_down {
            self.drive.ramp_down = after.drive.ramp_down;
        }
        if before.truck.attachment.is_some() != after.truck.attachment.is_some() {
            self.attachment = after.truck.attachment.is_some();
        }
        self.take_known_changes(before, after);
    }

    /// How the weight is known, of the whole or of one part; a tolerance typed for another way goes with that.
    pub fn weight_is_known(&mut self, part: Option<usize>, how: WeightKnown) {
        let known = match part {
            None => Some(&mut self.weight_known),
            Some(part) => self.parts.get_mut(part).map(|p| &mut p.weight_known),
        };
        if known.and_then(|known| known.replace(how)) != Some(how) {
            self.as_usual(part.map_or(Field::LoadMass.into(), |row| Place::in_row(Field::PartMass, row)));
        }
    }

    /// Two bearers usually lie right across the load: then neither is off to a side.
    pub fn bearers_across(&mut self) {
        for row in 0..2 {
            let (ahead, left) = (Place::in_row(Field::WeighAhead, row), Place::in_row(Field::WeighLeft, row));
            if !self.numbers.contains_key(&left) && !self.numbers.contains_key(&ahead) {
                self.enter(left, "0", System::Metric);
            }
        }
    }

    /// Adds a part at the end; its number, from 0.
    pub fn add_part(&mut self, part: PartEntry) -> usize {
        self.parts.push(part);
        self.parts.len() - 1
    }

    /// Removes a part with what is cut out of it, and moves those behind it up.
    pub fn remove_part(&mut self, part: usize) {
        if part >= self.parts.len() {
            return;
        }
        let gone = |k: usize, p: &PartEntry| k == part || p.cut_from == Some(part);
        let gone: Vec<usize> = self.parts.iter().enumerate().filter(|(k, p)| gone(*k, p)).map(|(k, _)| k).collect();
        for &row in gone.iter().rev() {
            self.parts.remove(row);
            self.close_up(&OF_PART, row);
            for host in self.parts.iter_mut().filter_map(|p| p.cut_from.as_mut()) {
                if *host > row {
                    *host -= 1;
                }
            }
        }
    }

    /// Copies a part with what is cut out of it, behind all others; the copy's number, from 0.
    pub fn copy_part(&mut self, part: usize) -> Option<usize> {
        let copy = self.parts.get(part)?.clone();
        let cuts: Vec<usize> = (0..self.parts.len()).filter(|&k| self.parts[k].cut_from == Some(part)).collect();
        let host = self.add_part(copy);
        self.copy_row(part, host);
        for cut in cuts {
            let copy = PartEntry { cut_from: Some(host), ..self.parts[cut].clone() };
            let row = self.add_part(copy);
            self.copy_row(cut, row);
        }
        Some(host)
    }

    fn copy_row(&mut self, from: usize, to: usize) {
        for field in OF_PART {
            match self.numbers.get(&Place::in_row(field, from)).cloned() {
                Some(typed) => self.numbers.insert(Place::in_row(field, to), typed),
                // Whatever waited there belonged to a part that is gone.
                None => self.numbers.remove(&Place::in_row(field, to)),
            };
            match self.known.get(&Place::in_row(field, from)).cloned() {
                Some(known) => self.known.insert(Place::in_row(field, to), known),
                None => self.known.remove(&Place::in_row(field, to)),
            };
        }
    }
}

#[cfg(test)]
mod tests;
