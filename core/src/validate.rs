//! From what was entered to what is assessed: every problem found at once, every gap filled and named.

use crate::checklist;
use crate::closure;
use crate::document::{self, Document};
use crate::found::{Drawn, Found, TraceFound};
use crate::known;
use crate::place::{Field, Place};
use crate::problem::{Problem, Rule};
use crate::rules::Figure;
use crate::scalar::{Scalar, Span};
use crate::scenario::{Assumed, Basis, Load, Scenario};
use std::sync::Arc;

mod doubts;
mod drive;
mod lift;
mod load;
mod parts;
mod plate;
mod traced;
mod truck;
mod weighed;

pub use plate::is_day;

/// The most rows a plate may have.
pub const MOST_PLATE_ROWS: usize = 40;
/// The most moving mast sections.
pub const MOST_STAGES: usize = crate::doubt::MOST_STAGES;
/// The most letters of a text that a plate bears.
pub const MOST_LETTERS: usize = 200;
/// The most parts a load may have.
pub const MOST_PARTS: usize = 200;
/// The most points an outline may have.
pub const MOST_POINTS: usize = 200;
/// The most holes a traced outline may have.
pub const MOST_HOLES: usize = 20;
/// The most points of support under a weighed load.
pub const MOST_SUPPORTS: usize = 4;

/// What can be said of the load alone, whatever is known of a truck.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct LoadAlone {
    /// What is missing or wrong in it.
    pub problems: Vec<Problem>,
    /// The load, where nothing is.
    pub found: Option<Arc<Found>>,
    /// What can be drawn of it all the same.
    pub drawn: Vec<Drawn>,
    /// Its traced outline, whatever else is missing.
    pub outline: Option<TraceFound>,
}

/// Whether a field is entered of the load.
fn is_of_load(field: Field) -> bool {
    field.row().path.starts_with("load.")
}

/// Looks at a document's load alone. Never panics.
pub fn load_alone(document: &Document) -> LoadAlone {
    let mut entries = Entries::of(&Document { load: document.load.clone(), ..Document::default() });
    entries.lengths();
    let fields: Vec<Field> = Field::NUMBERS.iter().copied().filter(|f| is_of_load(*f)).collect();
    entries.ranges(&fields);
    entries.found = entries.found().map(Arc::new);
    entries.load_alone()
}

/// Checks a whole document, and says what can be said of its load alone: both at once, for a load
/// of many parts is worth looking at only once. Never panics.
pub fn check(document: &Document) -> (Result<Scenario, Vec<Problem>>, LoadAlone) {
    let mut entries = Entries::of(document);
    entries.lengths();
    entries.ranges(Field::NUMBERS);
    entries.known();
    let load = entries.load();
    let alone = entries.load_alone();
    (entries.rest(load), alone)
}

/// Checks a document whose load, as it stands on the forks, is known already.
///
/// # Errors
/// Every problem with the rest of it, in the order of the fields. Never panics.
pub fn with_load(document: &Document, load: Load) -> Result<Scenario, Vec<Problem>> {
    // What it was made of is not looked through again.
    let known = document.known.iter().filter(|(path, _)| !path.starts_with("load.")).map(|(p, k)| (p.clone(), *k));
    let bare = Document {
        note: String::new(),
        load: document::Load::default(),
        known: known.collect(),
        format: String::new(),
        truck: document.truck.clone(),
        lift: document.lift.clone(),
        drive: document.drive.clone(),
        version: document.version,
        checklist: document.checklist.clone(),
    };
    let mut entries = Entries::of(&bare);
    entries.lengths();
    let fields: Vec<Field> = Field::NUMBERS.iter().copied().filter(|f| !is_of_load(*f)).collect();
    entries.ranges(&fields);
    entries.known();
    entries.rest(Some(load))
}

impl Scenario {
    /// Checks a document and fills what was left out.
    ///
    /// # Errors
    /// Every problem, in the order of the fields. Never panics.
    ///
    /// ```
    /// use standfast_core::{document::Document, scenario::Scenario};
    /// let problems = Scenario::from_document(&Document::default()).expect_err("nothing entered");
    /// assert!(problems.iter().any(|p| p.place.to_string() == "load.mass_kg"));
    /// ```
    pub fn from_document(document: &Document) -> Result<Self, Vec<Problem>> {
        check(document).0
    }
}

/// The entries under way. Figures that are missing or wrong read as zero: by then a problem is
/// noted and nothing made of them leaves this file.
struct Entries {
    document: Document,
    problems: Vec<Problem>,
    assumed: Vec<Assumed>,
    /// What can be drawn of the load.
    drawn: Vec<Drawn>,
    /// Its traced outline.
    outline: Option<TraceFound>,
    /// The load as found.
    found: Option<Arc<Found>>,
}

impl Entries {
    fn of(document: &Document) -> Self {
        let document = document.clone();
        Self { document, problems: Vec::new(), assumed: Vec::new(), drawn: Vec::new(), outline: None, found: None }
    }

    /// Truck, lift and drive, and with the load all of it.
    fn rest(mut self, load: Option<Load>) -> Result<Scenario, Vec<Problem>> {
        let truck = self.truck();
        let lift = self.lift(&truck);
        let drive = self.drive();
        match load {
            Some(load) if self.problems.is_empty() => {
                let doubts = self.doubts();
                let closure = closure::check(&self.document);
                let not_in_order = checklist::not_in_order(&self.document.checklist);
                Ok(Scenario { truck, load, lift, drive, doubts, assumed: self.assumed, closure, not_in_order })
            }
            _ => {
                self.problems.sort_by_key(|p| p.place);
                Err(self.problems)
            }
        }
    }

    /// What can be said of the load alone.
    fn load_alone(&self) -> LoadAlone {
        // How a hook holds it is not its own.
        let of_load = |p: &&Problem| is_of_load(p.place.field) && p.place.field != Field::HookAbove;
        let mut problems: Vec<Problem> = self.problems.iter().filter(of_load).cloned().collect();
        problems.sort_by_key(|p| p.place);
        let found = self.found.clone().filter(|_| problems.is_empty());
        LoadAlone { problems, found, drawn: self.drawn.clone(), outline: self.outline.clone() }
    }

    fn problem(&mut self, place: impl Into<Place>, value: Option<f64>, rule: Rule) {
        let problem = Problem::new(place, value, rule);
        // One message a field: the first is the plainest.
        if !self.problems.iter().any(|p| p.place == problem.place) {
            self.problems.push(problem);
        }
    }

    fn lengths(&mut self) {
        let rows = self.document.truck.plate.as_ref().map_or(0, |p| p.rows.len());
        if rows > MOST_PLATE_ROWS {
            self.problem(Field::PlateRows, Some(rows as f64), Rule::TooLong { most: MOST_PLATE_ROWS });
            // What no truck has is not looked through: it would only keep the reader waiting.
            self.document.truck.plate.iter_mut().for_each(|p| p.rows.truncate(MOST_PLATE_ROWS));
        }
        let stages = self.document.truck.mast.stages.len();
        if stages > MOST_STAGES {
            self.problem(Field::Stages, Some(stages as f64), Rule::TooLong { most: MOST_STAGES });
            self.document.truck.mast.stages.truncate(MOST_STAGES);
        }
        self.lengths_of_texts();
        self.lengths_of_load();
    }

    /// What stands on plates is short.
    fn lengths_of_texts(&mut self) {
        let truck = &self.document.truck;
        let plate = truck.plate.as_ref();
        let texts = [
            (Field::Serial, Some(&truck.serial)),
            (Field::TypeName, Some(&truck.type_name)),
            (Field::PlateAttachment, plate.map(|p| &p.attachment)),
        ];
        let length = |text: Option<&String>| text.map_or(0, |t| t.chars().count());
        let long: Vec<_> = texts.map(|(field, text)| (field, length(text))).into_iter().collect();
        for (field, letters) in long.into_iter().filter(|(_, letters)| *letters > MOST_LETTERS) {
            self.problem(field, Some(letters as f64), Rule::TooLong { most: MOST_LETTERS });
        }
    }

    /// How single figures are known: of figures that there are, in ways that they can be known, by
    /// tolerances that make sense.
    fn known(&mut self) {
        for (path, said) in self.document.known.clone() {
            let place = known::place_of(&path);
            let known_so = |p: &Place| {
                said.by.is_none_or(|by| p.field.ways().contains(&by))
                    && (said.tolerance.is_none() || p.field.takes_tolerance())
            };
            let Some(place) = place.filter(known_so) else {
                self.problem(Field::Known, None, Rule::NotKnownSo { path });
                continue;
            };
            let row = place.field.row();
            let max = row.max - row.min;
            if let Some(tolerance) = said.tolerance
                && !(0.0..=max).contains(&tolerance)
            {
                let shown = tolerance.is_finite().then_some(tolerance);
                self.problem(place, shown, Rule::ToleranceWithin { max: Scalar::computed(max) });
            }
        }
    }

    fn lengths_of_load(&mut self) {
        let mut too_long: Vec<(Place, usize, usize)> = Vec::new();
        let load = &mut self.document.load;
        let mut hold = |place: Place, length: usize, most: usize| {
            if length > most {
                too_long.push((place, length, most));
            }
        };
        hold(Field::Parts.into(), load.parts.len(), MOST_PARTS);
        load.parts.truncate(MOST_PARTS);
        for (k, part) in load.parts.iter_mut().enumerate() {
            hold(Place::in_row(Field::PartOutline, k), part.outline.len(), MOST_POINTS);
            part.outline.truncate(MOST_POINTS);
        }
        if let Some(trace) = &mut load.trace {
            hold(Field::TraceOutline.into(), trace.outline.len(), MOST_POINTS);
            trace.outline.truncate(MOST_POINTS);
            hold(Field::TraceOutline.into(), trace.holes.len(), MOST_HOLES);
            trace.holes.truncate(MOST_HOLES);
            for (k, hole) in trace.holes.iter_mut().enumerate() {
                hold(Place::in_row(Field::TraceHole, k), hole.len(), MOST_POINTS);
                hole.truncate(MOST_POINTS);
            }
            hold(Field::TraceScaleEnds.into(), trace.scale.len(), 2);
            hold(Field::TraceRectangle.into(), trace.rectangle.len(), 4);
        }
        if let Some(weighing) = &mut load.weighing {
            hold(Field::WeighPoints.into(), weighing.points.len(), MOST_SUPPORTS);
            weighing.points.truncate(MOST_SUPPORTS);
        }
        for (place, length, most) in too_long {
            self.problem(place, Some(length as f64), Rule::TooLong { most });
        }
    }

    fn ranges(&mut self, fields: &[Field]) {
        for place in Place::numbers_of(&self.document, fields) {
            let row = place.field.row();
            match place.number(&mut self.document).and_then(|n| *n) {
                Some(value) if !value.is_finite() => self.problem(place, None, Rule::NotFinite),
                Some(value) if value < row.min || value > row.max => {
                    let (min, max) = (Scalar::computed(row.min), Scalar::computed(row.max));
                    self.problem(place, Some(value), Rule::Within { min, max });
                }
                None if row.required => self.problem(place, None, Rule::Required),
                _ => {}
            }
        }
    }

    /// The figure where it is entered and in range.
    fn entered(&mut self, place: impl Into<Place>) -> Option<f64> {
        let place = place.into();
        let row = place.field.row();
        place.number(&mut self.document).and_then(|n| *n).filter(|v| (row.min..=row.max).contains(v))
    }

    /// How far an entered figure may be out each way, in the document's unit; `usual` where nothing is
    /// said of it and it has no usual way of being known.
    fn tolerance(&self, place: impl Into<Place>, value: f64, usual: f64) -> f64 {
        known::tolerance_of(&self.document, place.into(), value).unwrap_or(usual)
    }

    /// A required figure.
    fn needed(&mut self, place: impl Into<Place>) -> f64 {
        self.entered(place).unwrap_or_default()
    }

    /// A figure that is needed as things stand, though not always.
    fn needed_here(&mut self, place: impl Into<Place>) -> Option<f64> {
        let place = place.into();
        let value = self.entered(place);
        // Out of range is a problem already.
        if value.is_none() {
            self.problem(place, None, Rule::Required);
        }
        value
    }

    /// Notes a range taken for something not entered, in the document's unit.
    fn assume(&mut self, place: impl Into<Place>, range: Span, basis: Basis) {
        let (lo, hi) = (Scalar::computed(range.lo), Scalar::computed(range.hi));
        self.assumed.push(Assumed { place: place.into(), lo, hi, basis });
    }

    /// The figure, or what stands for it.
    fn or_worked(&mut self, place: impl Into<Place>, value: f64, basis: Basis) -> f64 {
        let place = place.into();
        self.entered(place).unwrap_or_else(|| {
            self.assume(place, Span::exact(value), basis);
            value
        })
    }

    fn or_figure(&mut self, place: impl Into<Place>, figure: Figure) -> f64 {
        self.or_worked(place, figure.value, Basis::Figure { id: figure.id })
    }

    /// A figure may not exceed another one; both must have been entered.
    fn at_most(&mut self, place: impl Into<Place>, of: Field) {
        let place = place.into();
        if let (Some(value), Some(limit)) = (self.entered(place), self.entered(of))
            && value > limit
        {
            self.problem(place, Some(value), Rule::NotMoreThan { limit: Scalar::computed(limit), of: of.into() });
        }
    }
}

#[cfg(test)]
mod tests;
