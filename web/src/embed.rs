//! The check for other pages: the module exports [`assess`] to JavaScript.

use serde::Serialize;
use serde_json::Value;
use standfast_core::document::{Document, FileError};
use wasm_bindgen::prelude::*;

/// Assesses a document given as a plain object and answers with the report as a plain object. Both
/// are those of the saved file and of the `assess` example (see `core/FORMAT.md`); nothing on the page changes.
///
/// # Errors
/// A string that names the field, for what is not wholly a document of a known version: an unknown
/// field, a wrong kind of value, a number that is not finite. Figures that are missing or out of
/// range are no error: they are listed in `problems`.
///
/// ```js
/// import start, { assess } from "./standfast.js";
/// await start();
/// const report = assess({ format: "standfast-check", version: 1, load: { mass_kg: 900 } });
/// for (const p of report.problems) console.log(p.place, p.rule.code);
/// console.log(report.assessment?.verdict.state); // "go", "hold", "no_go"; none while something is missing
/// ```
#[wasm_bindgen]
pub fn assess(document: JsValue) -> Result<JsValue, JsValue> {
    let report = standfast_core::report::assess(&document_of(document)?);
    let plain = serde_wasm_bindgen::Serializer::json_compatible();
    report.serialize(&plain).map_err(|e| JsValue::from_str(&e.to_string()))
}

/// Assesses a document over and over without handing the reports over, to measure the arithmetic
/// alone; answers with how many of the rounds came to an assessment.
///
/// # Errors
/// As [`assess`].
#[wasm_bindgen]
pub fn assess_rounds(document: JsValue, rounds: u32) -> Result<u32, JsValue> {
    let document = document_of(document)?;
    let assessed = |_: &u32| standfast_core::report::assess(std::hint::black_box(&document)).assessment.is_some();
    Ok((0..rounds).filter(assessed).count().try_into().unwrap_or(rounds))
}

fn document_of(document: JsValue) -> Result<Document, JsValue> {
    let value: Plain = serde_wasm_bindgen::from_value(document).map_err(|e| JsValue::from_str(&e.to_string()))?;
    read(&value.0).map_err(|why| JsValue::from_str(&why))
}

/// Any plain value; a number that is not finite becomes its name, which no figure accepts.
struct Plain(Value);

impl<'de> serde::Deserialize<'de> for Plain {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(PlainVisitor).map(Self)
    }
}

struct PlainVisitor;

impl<'de> serde::de::Visitor<'de> for PlainVisitor {
    type Value = Value;

    fn expecting(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("a plain value")
    }

    fn visit_bool<E>(self, v: bool) -> Result<Value, E> {
        Ok(v.into())
    }

    fn visit_i64<E>(self, v: i64) -> Result<Value, E> {
        Ok(v.into())
    }

    fn visit_u64<E>(self, v: u64) -> Result<Value, E> {
        Ok(v.into())
    }

    fn visit_f64<E>(self, v: f64) -> Result<Value, E> {
        Ok(serde_json::Number::from_f64(v).map_or_else(|| Value::String(v.to_string()), Value::Number))
    }

    fn visit_str<E>(self, v: &str) -> Result<Value, E> {
        Ok(v.into())
    }

    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_none<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_seq<A: serde::de::SeqAccess<'de>>(self, mut seq: A) -> Result<Value, A::Error> {
        let mut list = Vec::new();
        while let Some(Plain(value)) = seq.next_element()? {
            list.push(value);
        }
        Ok(Value::Array(list))
    }

    fn visit_map<A: serde::de::MapAccess<'de>>(self, mut map: A) -> Result<Value, A::Error> {
        let mut object = serde_json::Map::new();
        while let Some((key, Plain(value))) = map.next_entry::<String, Plain>()? {
            object.insert(key, value);
        }
        Ok(Value::Object(object))
    }
}

/// Reads a document by the one reader of files, so that both refuse alike.
fn read(value: &Value) -> Result<Document, String> {
    let text = serde_json::to_string_pretty(value).map_err(|e| e.to_string())?;
    Document::from_json(&text).map_err(|error| match &error {
        // In an object there are no lines; the field on that line is what helps.
        FileError::Unreadable { line, detail, .. } => {
            let field = text.lines().nth(line - 1).unwrap_or_default().trim().trim_end_matches(',');
            format!("{detail}, at {field}")
        }
        _ => error.to_string(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde::de::IntoDeserializer;
    use serde::de::value::{Error, MapDeserializer};
    use standfast_core::example;

    #[test]
    fn a_document_is_read_like_a_file() {
        let value: Value = serde_json::from_str(example::FOUR_WHEEL).expect("an example");
        assert_eq!(read(&value), Ok(example::document(example::FOUR_WHEEL)));
    }

    #[test]
    fn refusals_name_the_field() {
        let refused = |text: &str| read(&serde_json::from_str(text).expect("JSON")).expect_err(text);
        let head = "\"format\": \"standfast-check\", \"version\": 1";
        assert!(refused(&format!("{{{head}, \"colour\": 1}}")).contains("colour"));
        assert!(refused(&format!("{{{head}, \"load\": {{\"mass_kg\": \"900\"}}}}")).contains("mass_kg"));
        assert!(refused("{}").contains("format"));
    }

    /// NaN is not "nothing entered".
    #[test]
    fn what_is_not_finite_is_refused_with_its_field() {
        for wrong in [f64::NAN, f64::INFINITY] {
            let fields = [("mass_kg", wrong)].into_iter().map(|(k, v)| (k, v.into_deserializer()));
            let load: Plain = serde::Deserialize::deserialize(MapDeserializer::<_, Error>::new(fields)).expect("plain");
            let document = serde_json::json!({"format": "standfast-check", "version": 1, "load": load.0});
            assert!(read(&document).is_err_and(|e| e.contains("mass_kg")));
        }
    }
}
