//! Looking into JSON without knowing its shape.

use serde_json::Value;

/// Calls `see` for every value of a tree with its path, from the root down.
pub fn values<'v>(value: &'v Value, path: &str, see: &mut impl FnMut(&str, &'v Value)) {
    see(path, value);
    match value {
        Value::Array(list) => list.iter().enumerate().for_each(|(k, v)| values(v, &format!("{path}/{k}"), see)),
        Value::Object(map) => map.iter().for_each(|(k, v)| values(v, &format!("{path}/{k}"), see)),
        _ => {}
    }
}

/// The paths of numbers that are not finite, or that only stand for what could not be computed: the
/// greatest magnitude a float has.
pub fn broken_numbers(value: &Value) -> Vec<String> {
    let mut found = Vec::new();
    values(value, "", &mut |path, v| {
        if v.as_f64().is_some_and(|n| !n.is_finite() || n.abs() >= f64::MAX) {
            found.push(path.to_owned());
        }
    });
    found
}

/// The paths of all objects, "" for the root: where an unknown field could hide.
pub fn objects(value: &Value) -> Vec<String> {
    let mut found = Vec::new();
    values(value, "", &mut |path, v| {
        if v.is_object() {
            found.push(path.to_owned());
        }
    });
    found
}
