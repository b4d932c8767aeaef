//! In which fields two trucks differ, in words.

use super::edit::Standing;
use crate::entries::from_path;
use crate::figures::{Printer, fine, quantity_of};
use crate::sentences::name_of;
use crate::words::{fill, words};
use serde_json::Value;
use standfast_core::place::Place;
use std::collections::BTreeMap;

/// One field that differs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Differing {
    /// Its path in a check.
    pub path: String,
    pub text: String,
}

/// What differs between two trucks, and what it was and is.
pub fn differing(was: &Standing, is: &Standing, print: Printer) -> Vec<Differing> {
    let (before, after) = (leaves(was), leaves(is));
    let paths: std::collections::BTreeSet<_> = before.keys().chain(after.keys()).collect();
    let changed = paths.into_iter().filter(|path| before.get(*path) != after.get(*path));
    let mut list = Vec::new();
    for path in changed {
        let part = |side: &BTreeMap<String, Value>| shown(path, side.get(path), print);
        let w = &words().book;
        let text = fill(w.differs, &[("field", &name(path)), ("was", &part(&before)), ("is", &part(&after))]);
        list.push(Differing { path: path.clone(), text });
    }
    list
}

/// Every single thing that a truck says, by its path.
fn leaves(standing: &Standing) -> BTreeMap<String, Value> {
    let mut list = BTreeMap::new();
    walk("truck", &serde_json::to_value(&standing.0).unwrap_or_default(), &mut list);
    for (path, known) in &standing.1 {
        list.insert(format!("{KNOWN}{path}"), serde_json::to_value(known).unwrap_or_default());
    }
    list
}

/// What the path of how a figure is known begins with here.
const KNOWN: &str = "known ";

fn walk(path: &str, value: &Value, list: &mut BTreeMap<String, Value>) {
    match value {
        Value::Object(fields) => {
            // That there is one at all, whatever it says.
            if matches!(path, "truck.plate" | "truck.attachment") {
                list.insert(path.to_owned(), Value::Bool(true));
            }
            fields.iter().for_each(|(name, value)| walk(&format!("{path}.{name}"), value, list));
        }
        Value::Array(rows) => rows.iter().enumerate().for_each(|(n, row)| walk(&format!("{path}[{n}]"), row, list)),
        leaf => drop(list.insert(path.to_owned(), leaf.clone())),
    }
}

fn name(path: &str) -> String {
    let w = words();
    if let Some(figure) = path.strip_prefix(KNOWN) {
        return fill(w.book.how_known, &[("field", &name(figure))]);
    }
    match (path, from_path(path)) {
        (_, Some(place)) => name_of(place),
        ("truck.name", _) => w.card.truck_name.name.to_owned(),
        ("truck.attachment.name", _) => w.card.attachment_name.name.to_owned(),
        ("truck.attachment", _) => w.card.group_attachment.to_owned(),
        ("truck.plate", _) => w.card.group_plate.to_owned(),
        _ => path.to_owned(),
    }
}

fn shown(path: &str, value: Option<&Value>, print: Printer) -> String {
    let w = &words().book;
    let place = from_path(path);
    match value {
        None => w.not_entered.to_owned(),
        Some(Value::Number(number)) => match (place, number.as_f64()) {
            (Some(place), Some(value)) => figure(place, value, print),
            _ => number.to_string(),
        },
        Some(Value::String(text)) => said(path, text),
        Some(Value::Bool(_)) => w.there.to_owned(),
        Some(known) => known_as(path, known, print),
    }
}

fn figure(place: Place, value: f64, print: Printer) -> String {
    fine(quantity_of(place).unit(print.0), value)
}

/// A choice in its words, a text in quotes.
fn said(path: &str, text: &str) -> String {
    let w = words();
    match (path, text) {
        ("truck.wheels", "three") => w.card.three.to_owned(),
        ("truck.wheels", "four") => w.card.four.to_owned(),
        ("truck.plate.issued_for", "forks") => w.card.for_forks.to_owned(),
        ("truck.plate.issued_for", "attachment") => w.card.for_attachment.to_owned(),
        ("truck.tyres" | "truck.plate.tyres", code) => {
            let tyres = serde_json::from_value(Value::String(code.to_owned())).ok();
            tyres.map_or(code, w.plate.tyres).to_owned()
        }
        _ => format!("\u{201c}{text}\u{201d}"),
    }
}

fn known_as(path: &str, known: &Value, print: Printer) -> String {
    let w = words();
    let by = known.get("by").and_then(|by| serde_json::from_value(by.clone()).ok());
    let place = path.strip_prefix(KNOWN).and_then(from_path);
    let by = by.zip(place).map(|(by, place)| (w.known.by)(by, quantity_of(place)).0.to_owned());
    let tolerance = known.get("tolerance").and_then(Value::as_f64).zip(place);
    let tolerance = tolerance.map(|(value, place)| format!("\u{b1}\u{a0}{}", figure(place, value, print)));
    let parts: Vec<_> = by.into_iter().chain(tolerance).collect();
    if parts.is_empty() { w.book.as_usual.to_owned() } else { parts.join(", ") }
}
