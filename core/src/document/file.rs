//! Reading a document from a file and writing it, whole or not at all.

use super::survey::{Survey, survey};
use super::{Document, FORMAT, VERSION};
use serde::Serialize;
use serde::de::DeserializeOwned;

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
        /// The field, `trucks[2].set_ups[0].truck.wheels`; empty for the file itself.
        at: String,
        /// What was met there.
        detail: String,
    },
    /// JSON, but not one of ours, or not the kind that was asked for.
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
    /// It can be read, but cannot be meant.
    Wrong {
        /// The field, as above.
        at: String,
        /// What is wrong with it.
        wrong: Wrong,
    },
    /// Larger than any file of ours, in bytes.
    TooLarge {
        /// Its size.
        bytes: usize,
        /// The largest.
        most: usize,
    },
}

/// What is wrong with a field of a file that can be read.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "wrong", rename_all = "snake_case")]
pub enum Wrong {
    /// A key stands twice in one object.
    Twice {
        /// The key.
        key: String,
    },
    /// A list or an object where neither belongs.
    OtherKind {
        /// Which of them is there.
        found: &'static str,
    },
    /// A list with too many rows.
    TooMany {
        /// The most.
        most: usize,
    },
    /// A text that is too long, in bytes.
    TooLong {
        /// The longest.
        most: usize,
    },
    /// A check inside a book whose `format` says something else.
    NoCheck {
        /// What it says.
        found: String,
    },
    /// A version that never was.
    NoVersion,
    /// A record without an id of its own.
    NoId,
    /// Two records with one id.
    SameId {
        /// The id.
        id: String,
    },
}

impl std::fmt::Display for Wrong {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Twice { key } => write!(f, "`{key}` is there twice"),
            Self::OtherKind { found } => write!(f, "there is {found} where none belongs"),
            Self::TooMany { most } => write!(f, "more than {most} of them"),
            Self::TooLong { most } => write!(f, "a text of more than {most} bytes"),
            Self::NoCheck { found } => write!(f, "`{found}` is not `{FORMAT}`"),
            Self::NoVersion => f.write_str("version 0 was never used"),
            Self::NoId => f.write_str("its id is empty"),
            Self::SameId { id } => write!(f, "the id `{id}` is another record's"),
        }
    }
}

impl std::fmt::Display for FileError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Unreadable { line, column, at, detail } if at.is_empty() => {
                write!(f, "line {line}, column {column}: {detail}")
            }
            Self::Unreadable { line, column, at, detail } => {
                write!(f, "line {line}, column {column}: {at}: {detail}")
            }
            Self::OtherFormat { found: Some(found) } => write!(f, "format is `{found}`, not the one expected"),
            Self::OtherFormat { found: None } => write!(f, "there is no `format`"),
            Self::Newer { found, known } => write!(f, "version {found} is newer than {known}, the newest known here"),
            Self::Wrong { at, wrong } if at.is_empty() => write!(f, "{wrong}"),
            Self::Wrong { at, wrong } => write!(f, "{at}: {wrong}"),
            Self::TooLarge { bytes, most } => write!(f, "{bytes} bytes, and {most} are the most"),
        }
    }
}
impl std::error::Error for FileError {}

impl FileError {
    /// The reader's own words about a text, with the place.
    pub(crate) fn unreadable(text: &str, error: &serde_json::Error) -> Self {
        let (line, column) = (error.line(), error.column());
        let detail = error.to_string();
        let detail = detail.split(" at line ").next().unwrap_or_default().to_owned();
        Self::Unreadable { line, column, at: place(text, line, column), detail }
    }
}

/// The field that stands at a line and a column, both from 1: `trucks[2].set_ups[0].name`; empty outside of all.
///
/// One walk along the text, for the one place where reading it stopped: a reader that keeps the path for
/// every value would be there a second time for every type.
pub(crate) fn place(text: &str, line: usize, column: usize) -> String {
    let start: usize = text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let end = (start + column).min(text.len());
    // A place within a letter of several bytes is behind it.
    let bytes = text.as_bytes().get(..end).unwrap_or_default();
    let mut path: Vec<Step> = Vec::new();
    let mut string: Option<usize> = None;
    let mut escaped = false;
    for (k, byte) in bytes.iter().enumerate() {
        if let Some(from) = string {
            match byte {
                _ if escaped => escaped = false,
                b'\\' => escaped = true,
                b'"' => {
                    string = None;
                    // A key is known as soon as it is read: a field that does not belong is refused there.
                    if let Some(Step::Key { name, awaited: awaited @ true }) = path.last_mut() {
                        *name = bytes.get(from..k).map(|b| String::from_utf8_lossy(b).into_owned());
                        *awaited = false;
                    }
                }
                _ => {}
            }
            continue;
        }
        match byte {
            b'"' => string = Some(k + 1),
            b'{' => path.push(Step::Key { name: None, awaited: true }),
            b'[' => path.push(Step::Row(0)),
            b'}' | b']' => drop(path.pop()),
            b',' => match path.last_mut() {
                Some(Step::Row(row)) => *row += 1,
                Some(Step::Key { awaited, .. }) => *awaited = true,
                None => {}
            },
            _ => {}
        }
    }
    let mut at = String::new();
    for step in path {
        match step {
            Step::Row(row) => at.push_str(&format!("[{row}]")),
            Step::Key { name: Some(name), .. } => {
                if !at.is_empty() {
                    at.push('.');
                }
                // A key of somebody else's file may be anything.
                at.extend(name.chars().take(80));
            }
            Step::Key { name: None, .. } => {}
        }
    }
    at
}

/// One step of the way to a place in a file.
enum Step {
    /// Into an object: the key that was read last, and whether another one must come.
    Key { name: Option<String>, awaited: bool },
    /// Into a list.
    Row(usize),
}

/// Without the mark that some editors put before a text.
pub(crate) fn unmarked(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// All of a text as one value.
pub(crate) fn whole<T: DeserializeOwned>(text: &str) -> Result<T, FileError> {
    serde_json::from_str(text).map_err(|e| FileError::unreadable(text, &e))
}

/// Refuses versions that never were or are not known yet.
pub(crate) fn known_version(found: Option<u64>, known: u32) -> Result<(), FileError> {
    match found {
        Some(found) if found > u64::from(known) => Err(FileError::Newer { found, known }),
        Some(0) => Err(FileError::Wrong { at: "version".to_owned(), wrong: Wrong::NoVersion }),
        // Missing, or no whole number: the reader says so, with the place.
        _ => Ok(()),
    }
}

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
    /// assert!(Document::from_json(wrong).is_err_and(|e| e.to_string().contains("load.mas_kg")));
    /// ```
    pub fn from_json(text: &str) -> Result<Self, FileError> {
        let text = unmarked(text);
        Self::surveyed(text, &survey(text)?)
    }

    /// The same of a text that was looked over.
    pub(crate) fn surveyed(text: &str, survey: &Survey) -> Result<Self, FileError> {
        if survey.format.as_deref() != Some(FORMAT) {
            return Err(FileError::OtherFormat { found: survey.format.clone() });
        }
        known_version(survey.version, VERSION)?;
        // Version 1 knew only a load of one block; all it can say means the same today.
        whole(text).map(|d: Self| Self { version: VERSION, ..d })
    }

    /// The document as a file, indented for people.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests;
