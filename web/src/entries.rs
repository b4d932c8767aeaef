//! What was entered, as it was typed: texts with the unit they were typed in, and choices.

use serde::{Deserialize, Serialize};
use standfast_core::book::Of;
use standfast_core::checklist::Answers;
use standfast_core::document::{self, CentreKnown, Document, GivenAs, PlateFor, Turned, Tyres, WeightKnown, Wheels};
use standfast_core::friction::Underside;
use standfast_core::material::Material;
use standfast_core::number::NotRead;
use standfast_core::place::{Field, Place};
use standfast_core::problem::{Problem, Rule};
use standfast_core::units::{System, Unit};
use std::collections::BTreeMap;

mod counts;
mod drive;
mod known;
mod load;
mod loaded;
mod paths;
mod truck;
mod typed;

pub use counts::dimensions;
pub use drive::DriveEntry;
pub use known::{KnownEntry, not_known_so, tolerance_unit};
pub use load::{Dot, Ground, OF_PART, PartEntry, TraceEntry, WeighEntry};
pub use paths::from_path;
pub use typed::Typed;

/// One check as entered. Figures that are hidden by a choice keep their text.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entries {
    /// What this check is.
    pub note: String,
    pub truck_name: String,
    pub load_name: String,
    pub attachment_name: String,
    #[serde(default)]
    pub serial: String,
    #[serde(default)]
    pub type_name: String,
    #[serde(default)]
    pub tyres: Option<Tyres>,
    /// The day the plate was issued.
    #[serde(default)]
    pub plate_issued: String,
    /// The attachment it names.
    #[serde(default)]
    pub plate_attachment: String,
    #[serde(default)]
    pub plate_tyres: Option<Tyres>,
    /// The set-up of the book that the truck was taken from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<Of>,
    /// What was looked at before the lift.
    #[serde(default)]
    pub checklist: Answers,
    pub wheels: Option<Wheels>,
    pub weight_known: Option<WeightKnown>,
    pub centre_known: Option<CentreKnown>,
    pub plate_for: Option<PlateFor>,
    /// Whether an attachment is fitted.
    pub attachment: bool,
    /// Whether there is a plate.
    pub plate: bool,
    /// Whether it names the fork extensions.
    #[serde(default)]
    pub plate_extensions: bool,
    /// How many rows it has.
    pub plate_rows: usize,
    /// How many moving mast sections are entered.
    pub stages: usize,
    /// How the load's shape is given.
    #[serde(default)]
    pub given_as: GivenAs,
    /// What it is made of all through, if traced.
    #[serde(default)]
    pub material: Option<Material>,
    #[serde(default)]
    pub parts: Vec<PartEntry>,
    #[serde(default)]
    pub trace: Option<TraceEntry>,
    #[serde(default)]
    pub weighing: Option<WeighEntry>,
    /// Which way it is turned on the forks.
    #[serde(default)]
    pub turned: Turned,
    #[serde(default)]
    pub underside: Option<Underside>,
    #[serde(default)]
    pub hanging: bool,
    /// What of the drive is looked at, and how.
    #[serde(default)]
    pub drive: DriveEntry,
    /// Figures by their place; nothing typed, nothing here.
    #[serde(with = "paths")]
    pub numbers: BTreeMap<Place, Typed>,
    /// How they are known, where that was chosen or a tolerance was typed; it stays while a figure is
    /// empty, as it may be on the way to another.
    #[serde(with = "paths", default, skip_serializing_if = "BTreeMap::is_empty")]
    pub known: BTreeMap<Place, KnownEntry>,
}

impl Entries {
    /// Nothing entered. A plate with one row stands ready: hardly a truck is without.
    pub fn blank() -> Self {
        Self {
            note: String::new(),
            truck_name: String::new(),
            load_name: String::new(),
            attachment_name: String::new(),
            serial: String::new(),
            type_name: String::new(),
            tyres: None,
            plate_issued: String::new(),
            plate_attachment: String::new(),
            plate_tyres: None,
            of: None,
            checklist: Answers::new(),
            wheels: None,
            weight_known: None,
            centre_known: Some(CentreKnown::Middle),
            plate_for: None,
            plate_extensions: false,
            attachment: false,
            plate: true,
            plate_rows: 1,
            stages: 0,
            given_as: GivenAs::Block,
            material: None,
            parts: Vec::new(),
            trace: None,
            weighing: None,
            turned: Turned::No,
            underside: None,
            hanging: false,
            drive: DriveEntry::default(),
            numbers: BTreeMap::new(),
            known: BTreeMap::new(),
        }
    }

    /// The entries that make this document, typed in metric units so that reading them gives the
    /// very same figures.
    pub fn from_document(document: &Document) -> Self {
        let truck = &document.truck;
        let mut entries = Self {
            note: document.note.clone(),
            truck_name: truck.name.clone(),
            attachment_name: truck.attachment.as_ref().map(|a| a.name.clone()).unwrap_or_default(),
            serial: truck.serial.clone(),
            type_name: truck.type_name.clone(),
            tyres: truck.tyres,
            plate_issued: truck.plate.as_ref().map(|p| p.issued.clone()).unwrap_or_default(),
            plate_attachment: truck.plate.as_ref().map(|p| p.attachment.clone()).unwrap_or_default(),
            plate_tyres: truck.plate.as_ref().and_then(|p| p.tyres),
            checklist: document.checklist.clone(),
            wheels: truck.wheels,
            plate_for: truck.plate.as_ref().and_then(|p| p.issued_for),
            plate_extensions: truck.plate.as_ref().is_some_and(|p| p.extensions),
            attachment: truck.attachment.is_some(),
            plate: truck.plate.is_some(),
            plate_rows: truck.plate.as_ref().map_or(1, |p| p.rows.len()),
            stages: truck.mast.stages.len(),
            drive: DriveEntry::of(&document.drive),
            ..Self::blank()
        };
        entries.take_load(&document.load);
        entries.take_known(document);
        let mut document = document.clone();
        for place in Place::all_numbers(&document.clone()) {
            if let (Some(value), Some(unit)) =
                (place.number(&mut document).and_then(|n| *n), unit_of(place, System::Metric))
            {
                entries.numbers.insert(place, Typed::of_value(value, unit));
            }
        }
        entries
    }

    /// The document, and what was typed that is not a number. Such a figure is left out of the document.
    pub fn document(&self) -> (Document, Vec<Problem>) {
        let mut document = self.without_figures();
        let mut problems = Vec::new();
        for (&place, typed) in self.numbers.iter().filter(|(place, _)| self.counts(**place)) {
            // A row or part that is not there has no place: its text waits until it is again.
            let Some(number) = place.number(&mut document) else { continue };
            match typed.read() {
                Ok(value) => *number = Some(value),
                Err(NotRead::Empty) => {}
                Err(NotRead::NotANumber) => problems.push(Problem::new(place, None, Rule::NotANumber)),
                Err(NotRead::Ambiguous) => problems.push(Problem::new(place, None, Rule::Ambiguous)),
            }
        }
        self.write_known(&mut document, &mut problems);
        (document, problems)
    }

    /// The document to keep in a file: what a choice hides goes with it, where it is a figure in range.
    pub fn file(&self) -> Document {
        let (mut document, _) = self.document();
        // A rise without the end that was raised would ask for that end.
        let hidden = |place: &Place| !self.counts(*place) && place.field != Field::WeighRaised;
        for (&place, typed) in self.numbers.iter().filter(|(place, _)| hidden(place)) {
            let row = place.field.row();
            if let (Ok(value), Some(number)) = (typed.read(), place.number(&mut document))
                && (row.min..=row.max).contains(&value)
            {
                *number = Some(value);
            }
        }
        self.write_hidden_known(&mut document);
        document
    }

    /// The document with all that is chosen, named and listed.
    fn without_figures(&self) -> Document {
        let checklist = self.checklist.clone();
        let mut document = Document { note: self.note.clone(), checklist, ..Document::default() };
        let truck = &mut document.truck;
        truck.name = self.truck_name.clone();
        (truck.serial, truck.type_name) = (self.serial.clone(), self.type_name.clone());
        (truck.wheels, truck.tyres) = (self.wheels, self.tyres);
        truck.mast.stages = vec![document::Stage::default(); self.stages];
        truck.attachment = self
            .attachment
            .then(|| document::Attachment { name: self.attachment_name.clone(), ..document::Attachment::default() });
        truck.plate = self.plate.then(|| document::Plate {
            issued_for: self.plate_for,
            extensions: self.plate_extensions,
            issued: self.plate_issued.clone(),
            attachment: self.plate_attachment.clone(),
            tyres: self.plate_tyres,
            rows: vec![document::PlateRow::default(); self.plate_rows],
            ..document::Plate::default()
        });
        document.load = self.load();
        document.drive = self.drive.drive();
        document
    }

    /// What a figure's input shows: the text as typed, or the same figure in the unit of another system.
    pub fn shown(&self, place: Place, system: System) -> String {
        self.numbers.get(&place).map_or_else(String::new, |typed| match self.unit(place, system) {
            Some(unit) => typed.shown_in(unit),
            None => typed.text.clone(),
        })
    }

    /// Enters a text for a figure in a system's unit; an empty one takes the figure away.
    pub fn enter(&mut self, place: Place, text: &str, system: System) {
        match self.unit(place, system) {
            Some(unit) if !text.is_empty() => {
                self.numbers.insert(place, Typed { text: text.to_owned(), unit });
            }
            _ => {
                self.numbers.remove(&place);
            }
        }
    }

    /// Adds a plate row, with a plate where there is none.
    pub fn add_plate_row(&mut self) {
        self.plate_rows = if self.plate { self.plate_rows + 1 } else { self.plate_rows.max(1) };
        self.plate = true;
    }

    /// Removes a row of the plate.
    pub fn remove_plate_row(&mut self, row: usize) {
        if row < self.plate_rows {
            self.close_up(&[Field::PlateHeight, Field::PlateLoadCentre, Field::PlateCapacity], row);
            self.plate_rows -= 1;
        }
    }

    /// Removes a moving mast section.
    pub fn remove_stage(&mut self, row: usize) {
        if row < self.stages {
            self.close_up(&[Field::StageMass, Field::StageRatio], row);
            self.stages -= 1;
        }
    }

    /// Takes one row's texts away, with how they are known, and moves those behind it up.
    fn close_up(&mut self, fields: &[Field], row: usize) {
        self.numbers = closed_up(std::mem::take(&mut self.numbers), fields, row);
        self.known = closed_up(std::mem::take(&mut self.known), fields, row);
    }
}

/// Entries of a list of rows without one of them.
fn closed_up<T>(old: BTreeMap<Place, T>, fields: &[Field], row: usize) -> BTreeMap<Place, T> {
    old.into_iter()
        .filter_map(|(place, entry)| match (fields.contains(&place.field), place.row.cmp(&row)) {
            (true, std::cmp::Ordering::Equal) => None,
            (true, std::cmp::Ordering::Greater) => Some((Place::in_row(place.field, place.row - 1), entry)),
            _ => Some((place, entry)),
        })
        .collect()
}

/// The unit that a figure of this kind is typed in; none for a choice.
pub fn unit_of(place: Place, system: System) -> Option<Unit> {
    place.field.row().quantity.map(|q| q.unit(system))
}

#[cfg(test)]
mod tests;
