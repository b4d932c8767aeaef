//! Reading a book, or whichever of our files it is, and writing it: whole or not at all.

use super::{Book, CheckRecord, FORMAT, VERSION};
use crate::document;
use crate::document::file::{known_version, unmarked, whole};
use crate::document::survey::{Survey, survey};
use crate::document::{Document, FileError, Wrong};
use std::collections::BTreeSet;

/// The most set-ups of all trucks together.
pub const MOST_SET_UPS: usize = 10_000;

/// What a file of ours holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Opened {
    /// A book, or a part of one.
    Book(Book),
    /// One check.
    Check(Box<Document>),
}

/// Reads a file of ours, of either format.
///
/// # Errors
/// [`FileError`] for anything that is not wholly a book or a check of a known version, whose records
/// have no ids of their own, or that is longer in some part than what people enter. Nothing is taken
/// from a file that is refused.
///
/// ```
/// use standfast_core::book::{self, Opened};
/// use standfast_core::example;
/// assert!(matches!(book::open(example::THREE_WHEEL), Ok(Opened::Check(_))));
/// assert!(matches!(book::open(example::ATTACHMENTS), Ok(Opened::Book(b)) if b.attachments.len() == 3));
/// let error = book::open(r#"{"format": "standfast-book", "version": 1, "trucks": [{"id": "a", "nam": "x"}]}"#);
/// assert!(error.is_err_and(|e| e.to_string().contains("trucks[0].nam: unknown field")));
/// ```
pub fn open(text: &str) -> Result<Opened, FileError> {
    let text = unmarked(text);
    let survey = survey(text)?;
    if survey.format.as_deref() == Some(FORMAT) {
        surveyed(text, &survey).map(Opened::Book)
    } else {
        Document::surveyed(text, &survey).map(|d| Opened::Check(Box::new(d)))
    }
}

impl Book {
    /// Reads a book.
    ///
    /// # Errors
    /// As [`open`]; a check alone is refused as well.
    pub fn from_json(text: &str) -> Result<Self, FileError> {
        let text = unmarked(text);
        surveyed(text, &survey(text)?)
    }

    /// The book as a file, indented for people.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

fn surveyed(text: &str, survey: &Survey) -> Result<Book, FileError> {
    if survey.format.as_deref() != Some(FORMAT) {
        return Err(FileError::OtherFormat { found: survey.format.clone() });
    }
    known_version(survey.version, VERSION)?;
    // Before a field of theirs is met that nobody knows here.
    known_version(Some(survey.newest_check.max(1)), document::VERSION)?;
    let mut book: Book = whole(text)?;
    own_ids(&book)?;
    book.version = VERSION;
    for (row, entry) in book.log.iter_mut().enumerate() {
        check_inside(row, entry)?;
    }
    Ok(book)
}

/// A check in the log is one like any other, of today's version or an older one.
fn check_inside(row: usize, entry: &mut CheckRecord) -> Result<(), FileError> {
    let check = &mut entry.check;
    let wrong = |field: &str, wrong| Err(FileError::Wrong { at: format!("log[{row}].check.{field}"), wrong });
    if check.format != document::FORMAT {
        return wrong("format", Wrong::NoCheck { found: check.format.clone() });
    }
    if check.version == 0 {
        return wrong("version", Wrong::NoVersion);
    }
    check.version = document::VERSION;
    Ok(())
}

/// Every record has an id of its own among its kind, every set-up among those of its truck.
fn own_ids(book: &Book) -> Result<(), FileError> {
    ids("trucks", book.trucks.iter().map(|r| &r.id))?;
    for (row, truck) in book.trucks.iter().enumerate() {
        ids(&format!("trucks[{row}].set_ups"), truck.set_ups.iter().map(|s| &s.id))?;
    }
    ids("attachments", book.attachments.iter().map(|r| &r.id))?;
    ids("loads", book.loads.iter().map(|r| &r.id))?;
    ids("log", book.log.iter().map(|r| &r.id))?;
    if book.trucks.iter().map(|t| t.set_ups.len()).sum::<usize>() > MOST_SET_UPS {
        let wrong = Wrong::TooMany { most: MOST_SET_UPS };
        return Err(FileError::Wrong { at: "trucks[].set_ups".to_owned(), wrong });
    }
    Ok(())
}

fn ids<'a>(list: &str, ids: impl Iterator<Item = &'a String>) -> Result<(), FileError> {
    let mut seen = BTreeSet::new();
    for (row, id) in ids.enumerate() {
        let wrong = |wrong| Err(FileError::Wrong { at: format!("{list}[{row}].id"), wrong });
        if id.trim().is_empty() {
            return wrong(Wrong::NoId);
        }
        if !seen.insert(id) {
            return wrong(Wrong::SameId { id: id.clone() });
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests;
