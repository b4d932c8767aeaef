//! The JSON Schema of both saved files, from their types; only with the feature `schema`.

use crate::book;
use crate::checklist::Item;
use crate::document;
use schemars::generate::SchemaSettings;
use serde_json::{Map, Value, json};

/// What the schema calls itself: a name, not an address.
pub const ID: &str = "standfast.schema.json";

/// The schema of a check and of a book, draft 2020-12, as the published file has it.
pub fn text() -> String {
    let mut generator = SchemaSettings::draft2020_12().into_generator();
    let kinds = [generator.subschema_for::<document::Document>(), generator.subschema_for::<book::Book>()];
    let mut defs: Map<String, Value> = generator.take_definitions(true).into_iter().collect();
    for (name, format, version) in
        [("Document", document::FORMAT, document::VERSION), ("Book", book::FORMAT, book::VERSION)]
    {
        if let Some(fields) = defs.get_mut(name).and_then(|def| def.get_mut("properties")) {
            fields["format"] = json!({ "description": "Which kind of file it is.", "const": format });
            let version = json!({ "type": "integer", "minimum": 1, "maximum": version });
            fields["version"] = version;
            fields["version"]["description"] = "The version of the format.".into();
        }
    }
    if let Some(checklist) = defs.get_mut("Document").and_then(|def| def.pointer_mut("/properties/checklist")) {
        checklist["propertyNames"] = json!({ "enum": Item::ALL });
    }
    if let Some(other) = defs.get_mut("Part").and_then(|def| def.pointer_mut("/properties/cut_from")) {
        // As far as the page counts.
        other["maximum"] = u32::MAX.into();
    }
    defs.values_mut().for_each(within_limits);
    for record in ["TruckRecord", "SetUp", "AttachmentRecord", "LoadRecord", "CheckRecord"] {
        if let Some(id) = defs.get_mut(record).and_then(|def| def.pointer_mut("/properties/id")) {
            // Not of spaces alone.
            id["pattern"] = "\\S".into();
        }
    }
    if let Some(log) = defs.get_mut("Book").and_then(|def| def.pointer_mut("/properties/log")) {
        log["maxItems"] = document::MOST_CHECKS.into();
    }
    let schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": ID,
        "title": "Standfast: a check, or a truck book",
        "description": "Lengths in m, weights in kg, angles in degrees, speeds in km/h: the unit is in each name. \
            Beyond this schema no key may stand twice, ids are single among their kind, and a version is written \
            without a decimal point.",
        "oneOf": kinds,
        "$defs": defs,
    });
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}

/// The lengths that the reader holds every file to.
fn within_limits(schema: &mut Value) {
    match schema {
        Value::Object(map) => {
            let is = |kind: &str| match map.get("type") {
                Some(Value::String(one)) => one == kind,
                Some(Value::Array(several)) => several.iter().any(|one| one == kind),
                _ => false,
            };
            let (array, string, object) = (is("array"), is("string"), is("object"));
            if array && !map.contains_key("maxItems") {
                map.insert("maxItems".to_owned(), document::MOST_ROWS.into());
            }
            if string && !map.contains_key("const") && !map.contains_key("enum") {
                map.insert("maxLength".to_owned(), document::LONGEST_TEXT.into());
            }
            if object && !map.contains_key("properties") {
                map.insert("maxProperties".to_owned(), document::MOST_ROWS.into());
            }
            map.values_mut().for_each(within_limits);
        }
        Value::Array(list) => list.iter_mut().for_each(within_limits),
        _ => {}
    }
}
