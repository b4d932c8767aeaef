//! Three invented checks from an invented pottery store, for the first screen, documentation and tests.

use crate::book::{AttachmentRecord, Book};
use crate::document::Document;
use crate::scenario::Scenario;

/// A three-wheel truck of 1.8 t, as a file.
pub const THREE_WHEEL: &str = include_str!("../examples/three-wheel.json");
/// A four-wheel truck of 2.5 t, as a file.
pub const FOUR_WHEEL: &str = include_str!("../examples/four-wheel.json");
/// An odd-shaped load, built from parts and weighed, on the three-wheel truck, as a file.
pub const ODD_LOAD: &str = include_str!("../examples/odd-load.json");

/// Attachments, as a file of the truck book.
pub const ATTACHMENTS: &str = include_str!("../examples/attachments.json");

/// The attachments, marked as invented; none should the file not be one.
pub fn attachments() -> Vec<AttachmentRecord> {
    serde_json::from_str(ATTACHMENTS).map_or_else(|_| Vec::new(), |book: Book| book.attachments)
}

/// Reads one of the examples; an empty document should it not be one.
pub fn document(text: &str) -> Document {
    Document::from_json(text).unwrap_or_default()
}

/// The three-wheel example, ready to assess.
///
/// # Panics
/// Never: a test holds the examples complete.
pub fn three_wheel() -> Scenario {
    scenario(THREE_WHEEL)
}

/// The four-wheel example, ready to assess.
///
/// # Panics
/// Never: a test holds the examples complete.
pub fn four_wheel() -> Scenario {
    scenario(FOUR_WHEEL)
}

#[expect(clippy::panic, reason = "the files are compiled in and a test reads them")]
fn scenario(text: &str) -> Scenario {
    Scenario::from_document(&document(text)).unwrap_or_else(|p| panic!("example: {p:?}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::assess;

    #[test]
    fn the_examples_are_complete_and_marked_as_invented() {
        for text in [THREE_WHEEL, FOUR_WHEEL, ODD_LOAD] {
            let document = Document::from_json(text).expect("an example");
            assert!(document.note.starts_with("Invented example"));
            let report = assess(&document);
            assert_eq!(report.problems, []);
            let assessment = report.assessment.expect("complete");
            assert_eq!(assessment.contradictions, []);
        }
    }
}
