//! What taking a file into the book changes, said before it is done, and doing it.
//!
//! Records are the same where their ids are. A truck's set-ups are taken one by one, so that merging loses none
//! of either side. A check that was made is never changed nor taken away: where two have one id and are not the
//! same, both are kept, and the one that comes in gets an id made from its content: the same one every time.

use super::{Book, CheckRecord, SetUp, TruckRecord};
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeSet;

/// What becomes of what both sides have, and of what only the book has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum How {
    /// Merged: where both have a record, it becomes the file's.
    Theirs,
    /// Merged: where both have a record, it stays as it is here.
    Ours,
    /// Trucks, attachments and loads become the file's alone; the log gains what it has not.
    Replace,
}

impl How {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Theirs, Self::Ours, Self::Replace];
}

/// What a record is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Kind {
    /// A truck: its name, its note, whether it is put away. Its set-ups are for themselves.
    Truck,
    /// A set-up of a truck that both sides have.
    SetUp,
    /// An attachment.
    Attachment,
    /// A load.
    Load,
    /// A check that was made.
    Check,
}

/// What becomes of one record.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum What {
    /// New here.
    Added,
    /// It becomes the file's.
    Changed {
        /// What differs, by its path within the record: `truck.mast.lift_m`, `known.truck.tread_m`.
        fields: Vec<String>,
    },
    /// It stays as it is here, though the file's differs.
    Kept {
        /// What differs, likewise.
        fields: Vec<String>,
    },
    /// Both are the same.
    Same,
    /// It is not in the file, and goes.
    Removed,
    /// Another check has its id: both are kept.
    Beside {
        /// The id that it gets.
        id: String,
    },
}

/// One record, and what becomes of it.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Change {
    /// What it is.
    pub kind: Kind,
    /// Its id in the file, or here where only the book has it.
    pub id: String,
    /// The id of its truck, for a set-up.
    pub truck: Option<String>,
    /// What it is called: of a check, when it was made.
    pub name: String,
    /// What becomes of it.
    pub what: What,
}

impl Change {
    /// Whether anything is otherwise afterwards.
    pub fn is_one(&self) -> bool {
        match self.what {
            What::Added | What::Changed { .. } | What::Removed | What::Beside { .. } => true,
            What::Kept { .. } | What::Same => false,
        }
    }
}

/// What taking a file in would change: each record of the file, and each that would go.
pub fn preview(ours: &Book, theirs: &Book, how: How) -> Vec<Change> {
    plan(ours, theirs, how).1
}

/// Takes a file in. What the book has stays in its order; what is new comes after it, in the file's.
///
/// ```
/// use standfast_core::book::merge::{How, apply, preview};
/// use standfast_core::book::Book;
/// use standfast_core::example;
/// let file = Book::from_json(example::ATTACHMENTS)?;
/// let book = apply(&Book::default(), &file, How::Theirs);
/// assert_eq!(book.attachments, file.attachments);
/// assert!(preview(&book, &file, How::Theirs).iter().all(|change| !change.is_one()));
/// # Ok::<(), standfast_core::document::FileError>(())
/// ```
pub fn apply(ours: &Book, theirs: &Book, how: How) -> Book {
    plan(ours, theirs, how).0
}

/// The book that comes of it, and what was done: one walk for both, so that neither can say otherwise.
fn plan(ours: &Book, theirs: &Book, how: How) -> (Book, Vec<Change>) {
    let mut changes = Vec::new();
    let mut say = |change: Change| changes.push(change);
    let trucks = taken(&ours.trucks, &theirs.trucks, how, &mut say);
    let attachments = taken(&ours.attachments, &theirs.attachments, how, &mut say);
    let loads = taken(&ours.loads, &theirs.loads, how, &mut say);
    let log = logged(&ours.log, &theirs.log, &mut say);
    (Book { trucks, attachments, loads, log, ..Book::default() }, changes)
}

/// What records have in common.
trait Record: Clone + PartialEq + Serialize {
    const KIND: Kind;
    fn id(&self) -> &str;
    fn name(&self) -> &str;

    /// What becomes of one that both sides have.
    fn both(ours: &Self, theirs: &Self, how: How, say: &mut dyn FnMut(Change)) -> Self {
        say(Self::told(theirs, said_of_both(ours, theirs, how)));
        if how == How::Ours { ours.clone() } else { theirs.clone() }
    }

    fn told(&self, what: What) -> Change {
        Change { kind: Self::KIND, id: self.id().to_owned(), truck: None, name: self.name().to_owned(), what }
    }
}

fn said_of_both<T: PartialEq + Serialize>(ours: &T, theirs: &T, how: How) -> What {
    match how {
        _ if ours == theirs => What::Same,
        How::Ours => What::Kept { fields: differing(ours, theirs) },
        How::Theirs | How::Replace => What::Changed { fields: differing(ours, theirs) },
    }
}

macro_rules! records {
    ($($kind:ident $record:ty, $($name:ident).+;)*) => {
        $(impl Record for $record {
            const KIND: Kind = Kind::$kind;
            fn id(&self) -> &str {
                &self.id
            }
            fn name(&self) -> &str {
                &self.$($name).+
            }
        })*
    };
}

records! {
    SetUp SetUp, name;
    Attachment super::AttachmentRecord, attachment.name;
    Load super::LoadRecord, load.name;
    Check CheckRecord, at;
}

impl Record for TruckRecord {
    const KIND: Kind = Kind::Truck;

    fn id(&self) -> &str {
        &self.id
    }

    fn name(&self) -> &str {
        &self.name
    }

    fn both(ours: &Self, theirs: &Self, how: How, say: &mut dyn FnMut(Change)) -> Self {
        let bare = |truck: &Self| Self { set_ups: Vec::new(), ..truck.clone() };
        let (our_own, their_own) = (bare(ours), bare(theirs));
        say(theirs.told(said_of_both(&our_own, &their_own, how)));
        let mut of_truck = |change: Change| say(Change { truck: Some(theirs.id.clone()), ..change });
        let set_ups = taken(&ours.set_ups, &theirs.set_ups, how, &mut of_truck);
        Self { set_ups, ..if how == How::Ours { our_own } else { their_own } }
    }
}

/// One list taken into another.
fn taken<T: Record>(ours: &[T], theirs: &[T], how: How, say: &mut dyn FnMut(Change)) -> Vec<T> {
    let mut list = Vec::new();
    let find = |id: &str| theirs.iter().find(|r| r.id() == id);
    for one in ours {
        match (find(one.id()), how) {
            (Some(other), _) => list.push(T::both(one, other, how, say)),
            (None, How::Replace) => say(one.told(What::Removed)),
            (None, How::Theirs | How::Ours) => list.push(one.clone()),
        }
    }
    let here: BTreeSet<&str> = ours.iter().map(T::id).collect();
    for new in theirs.iter().filter(|r| !here.contains(r.id())) {
        say(new.told(What::Added));
        list.push(new.clone());
    }
    list
}

/// The log with what it has not yet.
fn logged(ours: &[CheckRecord], theirs: &[CheckRecord], say: &mut dyn FnMut(Change)) -> Vec<CheckRecord> {
    let mut list = ours.to_vec();
    for new in theirs {
        let mut id = new.id.clone();
        let what = loop {
            let record = CheckRecord { id: id.clone(), ..new.clone() };
            match list.iter().find(|r| r.id == id) {
                Some(there) if *there == record => break What::Same,
                Some(_) => id = format!("{id}-{:016x}", mark(new)),
                None => {
                    list.push(record);
                    break if id == new.id { What::Added } else { What::Beside { id } };
                }
            }
        };
        say(new.told(what));
    }
    list
}

/// A number that stands for a record's content: FNV-1a of its text.
///
/// Source: Fowler, Noll, Vo; 64 bits, offset basis and prime as published.
fn mark(record: &CheckRecord) -> u64 {
    let text = serde_json::to_string(record).unwrap_or_default();
    let step = |hash: u64, byte: u8| (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3);
    text.bytes().fold(0xcbf2_9ce4_8422_2325, step)
}

/// The paths of all that two records say otherwise.
fn differing<T: Serialize>(ours: &T, theirs: &T) -> Vec<String> {
    let value = |record: &T| serde_json::to_value(record).unwrap_or_default();
    let mut list = Vec::new();
    differ("", &value(ours), &value(theirs), &mut list);
    list
}

fn differ(path: &str, ours: &Value, theirs: &Value, list: &mut Vec<String>) {
    match (ours, theirs) {
        _ if ours == theirs => {}
        (Value::Object(one), Value::Object(other)) => {
            let keys: BTreeSet<&String> = one.keys().chain(other.keys()).collect();
            for key in keys {
                let path = if path.is_empty() { key.clone() } else { format!("{path}.{key}") };
                differ(&path, one.get(key).unwrap_or(&Value::Null), other.get(key).unwrap_or(&Value::Null), list);
            }
        }
        (Value::Array(one), Value::Array(other)) if one.len() == other.len() => {
            for (row, (one, other)) in one.iter().zip(other).enumerate() {
                differ(&format!("{path}[{row}]"), one, other, list);
            }
        }
        _ => list.push(path.to_owned()),
    }
}

#[cfg(test)]
mod tests;
