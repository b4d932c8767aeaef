//! Steps to draw in tests: the two examples as they are, and made worse.

use standfast_core::document::Document;
use standfast_core::example;
use standfast_core::report::{StepReport, assess};

/// The steps of a document; none where it is incomplete.
pub fn steps(document: &Document) -> Vec<StepReport> {
    assess(document).assessment.map(|a| a.steps).unwrap_or_default()
}

/// An example with some of its figures changed.
pub fn changed(text: &str, changes: &[(&str, f64)]) -> Document {
    let mut value: serde_json::Value = serde_json::from_str(text).expect("an example");
    for (pointer, figure) in changes {
        let (parent, key) = pointer.rsplit_once('/').expect("a pointer");
        value.pointer_mut(parent).expect(pointer)[key] = (*figure).into();
    }
    if changes.iter().any(|(p, _)| p.contains("cg_")) {
        value["load"]["centre_known"] = "mark".into();
    }
    Document::from_json(&value.to_string()).expect("still a document")
}

/// Named documents.
pub fn documents() -> Vec<(&'static str, Document)> {
    let three = example::THREE_WHEEL;
    let four = example::FOUR_WHEEL;
    vec![
        ("three", changed(three, &[])),
        ("four", changed(four, &[])),
        ("past-front", changed(four, &[("/load/mass_kg", 3600.0), ("/load/length_m", 2.4)])),
        ("off-centre", changed(three, &[("/load/mass_kg", 1500.0), ("/lift/offset_m", 0.35)])),
        ("wide", changed(four, &[("/load/width_m", 3.0), ("/load/length_m", 3.0), ("/load/mass_kg", 900.0)])),
        ("short", changed(three, &[("/load/mass_kg", 1750.0), ("/lift/height_m", 4.6)])),
        ("doubtful", changed(four, &[("/load/mass_kg", 2700.0), ("/lift/height_m", 3.9)])),
        ("light", changed(three, &[("/load/mass_kg", 40.0), ("/load/height_m", 0.2), ("/load/length_m", 0.4)])),
    ]
}

/// Every step of all of them.
pub fn all() -> Vec<StepReport> {
    documents().iter().flat_map(|(_, d)| steps(d)).collect()
}
