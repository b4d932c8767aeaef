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
/// [`FileError`] for what is no JSON, has a key twice, is too long in some part, or has a list or an object
/// where none belongs.
pub(crate) fn survey(text: &str) -> Result<Survey, FileError> {
    if text.len() > LARGEST {
        return Err(FileError::TooLarge { bytes: text.len(), most: LARGEST });
    }
    match look_over(text, Spot::Root) {
        Err(error @ FileError::Wrong { wrong: Wrong::OtherKind { .. }, .. }) => {
            // Somebody else's file has other things in other places: it is called what it is.
            let file = look_over(text, Spot::Foreign)?;
            if file.format.as_deref().is_some_and(|f| f.starts_with("standfast-")) { Err(error) } else { Ok(file) }
        }
        looked => looked,
    }
}

/// The text up to where the reader stopped.
fn last<'t>(text: &'t str, error: &serde_json::Error) -> &'t str {
    let start: usize = text.split_inclusive('\n').take(error.line().saturating_sub(1)).map(str::len).sum();
    text.get(..start + error.column()).unwrap_or(text)
}

fn look_over(text: &str, spot: Spot) -> Result<Survey, FileError> {
    let found = RefCell::new(Survey::default());
    let mut reader = serde_json::Deserializer::from_str(text);
    let look = Look { spot, found: &found };
    let ended = look.deserialize(&mut reader).and_then(|()| reader.end());
    let mut found = found.into_inner();
    match (ended, found.wrong.take()) {
        (Ok(()), _) => Ok(found),
        (Err(e), Some(wrong)) => {
            let at = place(text, e.line(), e.column());
            // Of a list that does not belong the reader has seen the first value already, unless it is empty.
            let within = matches!(wrong, Wrong::OtherKind { found: "a list" }) && !last(text, &e).ends_with(']');
            let at = at.strip_suffix("[0]").filter(|_| within).unwrap_or(&at).to_owned();
            Err(FileError::Wrong { at, wrong })
        }
        (Err(e), None) => Err(FileError::unreadable(text, &e)),
    }
}

/// The fields that are lists of objects. The types alone would read a list of values as an object, too.
pub const LISTS: [&str; 9] = ["trucks", "set_ups", "attachments", "loads", "log", "rows", "stages", "parts", "points"];
/// The fields that are points, or lists of them.
pub const POINTS: [&str; 5] = ["outline", "holes", "scale", "rectangle", "picture"];
/// The fields that are objects; `known` and `checklist` are for themselves. The types alone would read an
/// object with the name of a choice as that choice, too.
pub const OBJECTS: [&str; 15] = [
    "truck",
    "load",
    "lift",
    "drive",
    "battery",
    "axle",
    "mast",
    "forks",
    "attachment",
    "plate",
    "trace",
    "weighing",
    "check",
    "of",
    "outcome",
];

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
    /// A list of objects.
    List,
    /// Points, or lists of them.
    Points,
    Object,
    /// A traced outline, whose `truck` is a side of the picture.
    Trace,
    /// How figures are known, and how one of them is.
    Known,
    Figure,
    Checklist,
    /// One text, number or choice.
    Leaf,
    /// Of somebody else's file, the root and what is in it.
    Foreign,
    Elsewhere,
}

impl Spot {
    fn within(self, key: &str) -> Self {
        match (self, key) {
            (Self::Root | Self::Foreign, "format") => Self::Format,
            (Self::Foreign | Self::Elsewhere, _) => Self::Elsewhere,
            (Self::Known, _) => Self::Figure,
            (Self::Checklist | Self::Figure, _) => Self::Leaf,
            (Self::Root, "version") => Self::Version,
            (Self::Root, "log") => Self::Log,
            (Self::Entry, "check") => Self::Check,
            (Self::Check, "version") => Self::CheckVersion,
            (_, "known") => Self::Known,
            (_, "checklist") => Self::Checklist,
            (_, "trace") => Self::Trace,
            (Self::Trace, "truck") => Self::Leaf,
            _ if LISTS.contains(&key) => Self::List,
            _ if POINTS.contains(&key) => Self::Points,
            _ if OBJECTS.contains(&key) => Self::Object,
            _ => Self::Leaf,
        }
    }

    /// What a row of it is, where it may be a list.
    fn row(self) -> Option<Self> {
        match self {
            Self::Log => Some(Self::Entry),
            Self::List => Some(Self::Object),
            Self::Points => Some(Self::Points),
            Self::Foreign | Self::Elsewhere => Some(Self::Elsewhere),
            _ => None,
        }
    }

    fn may_be_object(self) -> bool {
        match self {
            Self::Root
            | Self::Entry
            | Self::Check
            | Self::Object
            | Self::Trace
            | Self::Known
            | Self::Figure
            | Self::Checklist => true,
            Self::Foreign | Self::Elsewhere => true,
            Self::Format | Self::Version | Self::CheckVersion => false,
            Self::Log | Self::List | Self::Points | Self::Leaf => false,
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
        let Some(inside) = self.spot.row() else {
            return Err(self.refuse(Wrong::OtherKind { found: "a list" }));
        };
        let most = if self.spot == Spot::Log { MOST_CHECKS } else { MOST_ROWS };
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
        if !self.spot.may_be_object() {
            return Err(self.refuse(Wrong::OtherKind { found: "an object" }));
        }
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
