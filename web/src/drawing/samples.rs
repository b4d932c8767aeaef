//! Steps to draw in tests: the two examples as they are, and made worse.

use standfast_core::document::{Document, Drive, RampDown};
use standfast_core::example;
use standfast_core::report::{StepReport, assess};

/// The steps of a document.
pub fn steps(document: &Document) -> Vec<StepReport> {
    let report = assess(document);
    report.assessment.unwrap_or_else(|| panic!("{:?}", report.problems)).steps
}

/// An example with some of its figures changed.
pub fn changed(text: &str, changes: &[(&str, f64)]) -> Document {
    let mut value: serde_json::Value = serde_json::from_str(text).expect("an example");
    for (pointer, figure) in changes {
        let (parent, key) = pointer.rsplit_once('/').expect("a pointer");
        value.pointer_mut(parent).expect(pointer)[key] = (*figure).into();
    }
    Document::from_json(&value.to_string()).expect("still a document")
}

/// A move over ramp and cross-fall, with fast bends and hard braking.
fn driven(text: &str, ramp_down: RampDown) -> Document {
    let mut document = changed(text, &[]);
    document.drive = Drive {
        braking_ms2: Some(2.5),
        corner_kmh: Some(9.0),
        corner_empty_kmh: Some(12.0),
        ramp_pct: Some(14.0),
        ramp_down: Some(ramp_down),
        cross_fall_pct: Some(5.5),
        ..Drive::default()
    };
    document
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
        ("doubtful-2", changed(four, &[("/load/mass_kg", 2500.0), ("/lift/height_m", 3.6)])),
        ("doubtful-3", changed(three, &[("/load/mass_kg", 1600.0), ("/lift/height_m", 4.6)])),
        ("tall", changed(four, &[("/truck/mast/lift_m", 7.2), ("/lift/height_m", 6.9), ("/load/height_m", 2.4)])),
        ("low and long", changed(four, &[("/load/length_m", 4.0), ("/load/height_m", 0.15), ("/load/mass_kg", 500.0)])),
        ("driven", driven(three, RampDown::Forwards)),
        ("driven-2", driven(four, RampDown::Backwards)),
        ("light", changed(four, &[("/load/mass_kg", 40.0), ("/load/height_m", 0.2), ("/load/length_m", 0.4)])),
    ]
}

/// Every step of all of them.
pub fn all() -> Vec<StepReport> {
    documents().iter().flat_map(|(_, d)| steps(d)).collect()
}
