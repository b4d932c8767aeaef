//! How figures are known, as chosen and as typed: the way, and a tolerance of one's own.

use super::{Entries, Typed, unit_of};
use serde::{Deserialize, Serialize};
use standfast_core::document::{By, Document, Known};
use standfast_core::known::place_of;
use standfast_core::number::NotRead;
use standfast_core::place::Place;
use standfast_core::problem::{Problem, Rule};
use standfast_core::report;
use standfast_core::scalar::Scalar;
use standfast_core::units::{System, Unit};
use std::collections::BTreeSet;

/// What was said of how one figure is known.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct KnownEntry {
    /// By what; not chosen is the usual way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub by: Option<By>,
    /// A tolerance each way; not typed is what the way gives.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<Typed>,
}

impl KnownEntry {
    fn of(place: Place, known: Known) -> Self {
        let typed = |(value, unit)| Typed::of_value(value, unit);
        let unit = tolerance_unit(place, System::Metric);
        Self { by: known.by, tolerance: known.tolerance.zip(unit).map(typed) }
    }

    /// As a document says it; a tolerance that cannot be read is left out.
    fn known(&self) -> Known {
        Known { by: self.by, tolerance: self.tolerance.as_ref().and_then(|t| t.read().ok()) }
    }

    fn says_something(&self) -> bool {
        self.by.is_some() || self.tolerance.is_some()
    }
}

/// The unit that a tolerance is typed in: of a slope always points of percent, whatever unit the slope
/// itself is typed in, for so many degrees are not the same difference on every slope.
pub fn tolerance_unit(place: Place, system: System) -> Option<Unit> {
    unit_of(place, system)
}

/// The first path of a document that says how something is known that there is not, or that cannot be known so.
pub fn not_known_so(document: &Document) -> Option<String> {
    if document.known.is_empty() {
        return None;
    }
    let path = |problem: Problem| match problem.rule {
        Rule::NotKnownSo { path } => Some(path),
        _ => None,
    };
    report::assess(document).problems.into_iter().find_map(path)
}

impl Entries {
    /// The way that a figure is known: as chosen, or else the usual one.
    pub fn way(&self, place: Place) -> Option<By> {
        self.known.get(&place).and_then(|k| k.by).or(place.field.usually())
    }

    /// The text and unit of a tolerance of one's own.
    pub fn own_tolerance(&self, place: Place) -> Option<&Typed> {
        self.known.get(&place).and_then(|k| k.tolerance.as_ref())
    }

    /// Whether it is known otherwise than usually, or has a tolerance of its own.
    pub fn is_known_otherwise(&self, place: Place) -> bool {
        let own = self.own_tolerance(place).is_some_and(|typed| typed.read() != Err(NotRead::Empty));
        own || self.way(place) != place.field.usually()
    }

    /// Whether anything is typed for a figure.
    pub fn is_entered(&self, place: Place) -> bool {
        self.numbers.get(&place).is_some_and(|typed| typed.read() != Err(NotRead::Empty))
    }

    /// What the box of a tolerance shows: the text as typed, or the same in the unit of another system.
    pub fn tolerance_shown(&self, place: Place, system: System) -> String {
        match (self.own_tolerance(place), tolerance_unit(place, system)) {
            (Some(typed), Some(unit)) => typed.shown_in(unit),
            (Some(typed), None) => typed.text.clone(),
            (None, _) => String::new(),
        }
    }

    /// Chooses a way. A tolerance typed for another one goes with that.
    pub fn choose_way(&mut self, place: Place, by: By) {
        self.known.remove(&place);
        if place.field.usually() != Some(by) {
            self.known.insert(place, KnownEntry { by: Some(by), tolerance: None });
        }
    }

    /// Known as it usually is.
    pub fn as_usual(&mut self, place: Place) {
        self.known.remove(&place);
    }

    /// Enters a text for a tolerance in a system's unit; an empty one takes it away.
    pub fn enter_tolerance(&mut self, place: Place, text: &str, system: System) {
        let mut known = self.known.remove(&place).unwrap_or_default();
        let unit = tolerance_unit(place, system).filter(|_| !text.is_empty());
        known.tolerance = unit.map(|unit| Typed { text: text.to_owned(), unit });
        if known.says_something() {
            self.known.insert(place, known);
        }
    }

    /// Takes over what a document says of how its figures are known; of rows that it has not, it is not for another.
    pub(super) fn take_known(&mut self, document: &Document) {
        let mut rows = document.clone();
        let places = document.known.iter().filter_map(|(path, known)| Some((place_of(path)?, *known)));
        let there = places.filter(|(place, _)| place.number(&mut rows).is_some());
        let entries = there.map(|(place, known)| (place, KnownEntry::of(place, known)));
        self.known = entries.filter(|(_, k)| k.says_something()).collect();
    }

    /// Takes over where two documents differ in it.
    pub(super) fn take_known_changes(&mut self, before: &Document, after: &Document) {
        let paths: BTreeSet<_> = before.known.keys().chain(after.known.keys()).collect();
        let changed = paths.into_iter().filter(|path| before.known.get(*path) != after.known.get(*path));
        for (path, place) in changed.filter_map(|path| Some((path, place_of(path)?))) {
            match after.known.get(path) {
                Some(known) => self.known.insert(place, KnownEntry::of(place, *known)),
                None => self.known.remove(&place),
            };
        }
    }

    /// Writes it into the document whose figures are there, each beside a figure that counts and is read. A tolerance
    /// that cannot be read is a problem at its figure: the one rule that is about tolerances tells it apart.
    pub(super) fn write_known(&self, document: &mut Document, problems: &mut Vec<Problem>) {
        for (&place, entry) in self.known.iter().filter(|(place, _)| self.counts(**place)) {
            let Some(number) = place.number(document).map(|n| *n) else { continue };
            let unread = entry.tolerance.as_ref().is_some_and(|t| matches!(t.read(), Err(e) if e != NotRead::Empty));
            if unread && self.is_entered(place) {
                let row = place.field.row();
                let max = Scalar::computed(row.max - row.min);
                problems.push(Problem::new(place, None, Rule::ToleranceWithin { max }));
            }
            note(document, place, number, entry.known());
        }
    }

    /// The same of what a choice hides, for a file, where the tolerance is one that a file may hold.
    pub(super) fn write_hidden_known(&self, document: &mut Document) {
        for (&place, entry) in self.known.iter().filter(|(place, _)| !self.counts(**place)) {
            let Some(number) = place.number(document).map(|n| *n) else { continue };
            let row = place.field.row();
            let mut known = entry.known();
            known.tolerance = known.tolerance.filter(|t| (0.0..=row.max - row.min).contains(t));
            note(document, place, number, known);
        }
    }
}

/// Notes how a figure is known where there is one: of a figure that is not there nothing can be known.
fn note(document: &mut Document, place: Place, number: Option<f64>, known: Known) {
    if number.is_some() && known != Known::default() {
        document.known.insert(place.to_string(), known);
    }
}

#[cfg(test)]
mod tests;
