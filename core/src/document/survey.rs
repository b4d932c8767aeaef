//! A file looked over before it is read: all of it is JSON, no key stands twice, nothing in it is longer
//! than any person's entries, and what it says it is. Nothing is built from it, however large it is.

use super::file::{FileError, Wrong, place};
use serde::Deserializer;
use serde::de::{DeserializeSeed, Error, MapAccess, SeqAccess, Visitor};
use std::borrow::Cow;
use std::cell::RefCell;
use std::collections::BTreeSet;
use std::fmt;

/// No file is larger, in bytes: twenty thousand checks and more.
pub const LARGEST: usize = 64_000_000;
/// No list in a file is longer, but for the log: no person entered so many of anything.
pub const MOST_ROWS: usize = 2_000;
/// Nor is the log.
pub const MOST_CHECKS: usize = 100_000;
/// No text is longer, in bytes.
pub const LONGEST_TEXT: usize = 200_000;

/// What a file says it is.
#[derive(Debug, Default)]
pub(crate) struct Survey {
    /// Its `format`, where that is a text.
    pub format: Option<String>,
    /// Its `version`, where that is a whole number.
    pub version: Option<u64>,
    /// The newest version of a check in its log.
    pub newest_check: u64,
    wrong: Option<Wrong>,
}

/// Looks over a whole file.
///
/// # Errors
/// [`FileError`] for what is no JSON, has a key twice, or is too long in some part.
pub(crate) fn survey(text: &str) -> Result<Survey, FileError> {
    if text.len() > LARGEST {
        return Err(FileError::TooLarge { bytes: text.len(), most: LARGEST });
    }
    let found = RefCell::new(Survey::default());
    let mut reader = serde_json::Deserializer::from_str(text);
    let look = Look { spot: Spot::Root, found: &found };
    let ended = look.deserialize(&mut reader).and_then(|_| reader.end());
    let mut found = found.into_inner();
    match (ended, found.wrong.take()) {
        (Ok(()), _) => Ok(found),
        (Err(e), Some(wrong)) => Err(FileError::Wrong { at: place(text, e.line(), e.column()), wrong }),
        (Err(e), None) => Err(FileError::unreadable(text, &e)),
    }
}

/// Where in the file something stands, as far as that matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Spot {
    Root,
    Format,
    Version,
    Log,
    Entry,
    Check,
    CheckVersion,
    Elsewhere,
}

impl Spot {
    fn within(self, key: &str) -> Self {
        match (self, key) {
            (Self::Root, "format") => Self::Format,
            (Self::Root, "version") => Self::Version,
            (Self::Root, "log") => Self::Log,
            (Self::Entry, "check") => Self::Check,
            (Self::Check, "version") => Self::CheckVersion,
            _ => Self::Elsewhere,
        }
    }
}

/// Looks at one value.
#[derive(Clone, Copy)]
struct Look<'a> {
    spot: Spot,
    found: &'a RefCell<Survey>,
}

impl Look<'_> {
    fn refuse<E: Error>(self, wrong: Wrong) -> E {
        let text = wrong.to_string();
        self.found.borrow_mut().wrong = Some(wrong);
        E::custom(text)
    }

    fn text<E: Error>(self, text: &str) -> Result<(), E> {
        if text.len() > LONGEST_TEXT {
            return Err(self.refuse(Wrong::TooLong { most: LONGEST_TEXT }));
        }
        if self.spot == Spot::Format {
            self.found.borrow_mut().format = Some(text.to_owned());
        }
        Ok(())
    }
}

impl<'de> DeserializeSeed<'de> for Look<'_> {
    type Value = ();
    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<(), D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Look<'_> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_bool<E: Error>(self, _: bool) -> Result<(), E> {
        Ok(())
    }

    fn visit_i64<E: Error>(self, _: i64) -> Result<(), E> {
        Ok(())
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<(), E> {
        let mut found = self.found.borrow_mut();
        match self.spot {
            Spot::Version => found.version = Some(number),
            Spot::CheckVersion => found.newest_check = found.newest_check.max(number),
            _ => {}
        }
        Ok(())
    }

    fn visit_f64<E: Error>(self, _: f64) -> Result<(), E> {
        Ok(())
    }

    fn visit_unit<E: Error>(self) -> Result<(), E> {
        Ok(())
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<(), E> {
        self.text(text)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<(), A::Error> {
        let (inside, most) = match self.spot {
            Spot::Log => (Spot::Entry, MOST_CHECKS),
            _ => (Spot::Elsewhere, MOST_ROWS),
        };
        let mut count = 0;
        while list.next_element_seed(Look { spot: inside, ..self })?.is_some() {
            count += 1;
            if count > most {
                return Err(self.refuse(Wrong::TooMany { most }));
            }
        }
        Ok(())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<(), A::Error> {
        let mut keys = BTreeSet::new();
        while let Some(key) = map.next_key_seed(Key)? {
            let spot = self.spot.within(&key);
            if keys.contains(&key) {
                return Err(self.refuse(Wrong::Twice { key: key.into_owned() }));
            }
            if keys.len() >= MOST_ROWS || key.len() > LONGEST_TEXT {
                return Err(self.refuse(Wrong::TooMany { most: MOST_ROWS }));
            }
            keys.insert(key);
            map.next_value_seed(Look { spot, ..self })?;
        }
        Ok(())
    }
}

/// A key, borrowed from the text where it stands there as it is.
struct Key;

impl<'de> DeserializeSeed<'de> for Key {
    type Value = Cow<'de, str>;
    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Cow<'de, str>, D::Error> {
        deserializer.deserialize_str(self)
    }
}

impl<'de> Visitor<'de> for Key {
    type Value = Cow<'de, str>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a key")
    }

    fn visit_borrowed_str<E>(self, text: &'de str) -> Result<Cow<'de, str>, E> {
        Ok(Cow::Borrowed(text))
    }

    fn visit_str<E>(self, text: &str) -> Result<Cow<'de, str>, E> {
        Ok(Cow::Owned(text.to_owned()))
    }
}
