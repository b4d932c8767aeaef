//! Reading a document from a file and writing it, whole or not at all.

use super::{Document, FORMAT, VERSION};
use serde::Serialize;

/// Why a file was refused.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum FileError {
    /// Not JSON, or cut off, or a field that does not belong: the reader's own words, with the name.
    Unreadable {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What was met there.
        detail: String,
    },
    /// JSON, but not one of ours.
    OtherFormat {
        /// What its `format` says, if anything.
        found: Option<String>,
    },
    /// Written by a newer program.
    Newer {
        /// Its version.
        found: u64,
        /// The newest that can be read.
        known: u32,
    },
}

impl std::fmt::Display for FileError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Unreadable { line, column, detail } => write!(f, "line {line}, column {column}: {detail}"),
            Self::OtherFormat { found: Some(found) } => write!(f, "format is `{found}`, not `{FORMAT}`"),
            Self::OtherFormat { found: None } => write!(f, "there is no `format`; `{FORMAT}` was expected"),
            Self::Newer { found, known } => write!(f, "version {found} is newer than {known}, the newest known here"),
        }
    }
}
impl std::error::Error for FileError {}

impl Document {
    /// Reads a document.
    ///
    /// # Errors
    /// [`FileError`] for anything that is not wholly a document of a known version. Nothing is
    /// taken from a file that is refused.
    ///
    /// ```
    /// use standfast_core::document::Document;
    /// let text = r#"{"format": "standfast-check", "version": 1, "load": {"mass_kg": 900}}"#;
    /// assert_eq!(Document::from_json(text).map(|d| d.load.mass_kg), Ok(Some(900.0)));
    /// let wrong = r#"{"format": "standfast-check", "version": 1, "load": {"mas_kg": 900}}"#;
    /// assert!(Document::from_json(wrong).is_err_and(|e| e.to_string().contains("mas_kg")));
    /// ```
    pub fn from_json(text: &str) -> Result<Self, FileError> {
        let unreadable = |e: serde_json::Error| {
            let detail = e.to_string();
            let detail = detail.split(" at line ").next().unwrap_or_default().to_owned();
            FileError::Unreadable { line: e.line(), column: e.column(), detail }
        };
        let header: serde_json::Value = serde_json::from_str(text).map_err(unreadable)?;
        let found = header.get("format").and_then(|v| v.as_str());
        if found != Some(FORMAT) {
            return Err(FileError::OtherFormat { found: found.map(str::to_owned) });
        }
        match header.get("version").and_then(serde_json::Value::as_u64) {
            Some(version) if version > u64::from(VERSION) => Err(FileError::Newer { found: version, known: VERSION }),
            Some(0) => Err(FileError::Unreadable { line: 1, column: 1, detail: "version 0 was never used".to_owned() }),
            // Version 1 knew only a load of one block; all it can say means the same today.
            _ => serde_json::from_str(text).map(|d| Self { version: VERSION, ..d }).map_err(unreadable),
        }
    }

    /// The document as a file, indented for people.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Plate, PlateFor, Stage, WeightKnown};

    #[test]
    fn a_document_survives_writing_and_reading() {
        let mut doc = Document { note: "x".to_owned(), ..Document::default() };
        doc.truck.wheelbase_m = Some(1.35);
        doc.truck.mast.stages.push(Stage { mass_kg: Some(150.0), ratio: None });
        doc.truck.plate = Some(Plate { issued_for: Some(PlateFor::Forks), ..Plate::default() });
        doc.load.weight_known = Some(WeightKnown::Note);
        assert_eq!(Document::from_json(&doc.to_json()), Ok(doc));
    }

    #[test]
    fn what_is_not_ours_is_refused_with_its_name() {
        let refused = |text: &str| Document::from_json(text).expect_err(text).to_string();
        assert!(refused("").contains("line 1"));
        assert!(
            refused("{\"format\": \"standfast-check\", \"version\": 1, \"load\": {\"mass_kg\": 1e999}}")
                .contains("number out of range")
        );
        assert!(refused("{\"format\": \"standfast-check\", \"version\": 4}").contains("newer"));
        assert!(refused("{\"format\": \"standfast-check\"}").contains("version"));
        assert!(refused("{\"format\": \"other\", \"version\": 1}").contains("other"));
        assert!(refused("[1, 2]").contains("format"));
        assert!(refused("{\"format\": \"standfast-check\", \"version\": 1, \"colour\": 3}").contains("colour"));
        assert!(
            refused("{\"format\": \"standfast-check\", \"version\": 1, \"truck\": {\"wheels\": \"five\"}}")
                .contains("five")
        );
        let twice = "{\"format\": \"standfast-check\", \"version\": 1, \"load\": {\"mass_kg\": 1, \"mass_kg\": 2}}";
        assert!(refused(twice).contains("mass_kg"));
        assert!(refused("{\"format\": \"standfast-check\", \"version\": 1} trailing").contains("trailing"));
        assert!(refused(&"[".repeat(5000)).contains("recursion"));
    }
}
