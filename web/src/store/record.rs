//! One entry of the book: what is kept, told apart, and changed one by one.

use super::shelf::Line;
use standfast_core::book::{AttachmentRecord, Book, CheckRecord, LoadRecord, TruckRecord};
use std::fmt;

/// What an entry is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    Truck,
    Attachment,
    Load,
    /// An entry of the log.
    Check,
}

impl Kind {
    pub const ALL: [Self; 4] = [Self::Truck, Self::Attachment, Self::Load, Self::Check];

    /// Its name where it is kept.
    pub fn code(self) -> &'static str {
        match self {
            Self::Truck => "truck",
            Self::Attachment => "attachment",
            Self::Load => "load",
            Self::Check => "check",
        }
    }
}

/// Which entry.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Key {
    pub kind: Kind,
    pub id: String,
}

impl Key {
    pub fn truck(id: &str) -> Self {
        Self { kind: Kind::Truck, id: id.to_owned() }
    }

    pub fn attachment(id: &str) -> Self {
        Self { kind: Kind::Attachment, id: id.to_owned() }
    }

    pub fn load(id: &str) -> Self {
        Self { kind: Kind::Load, id: id.to_owned() }
    }

    /// The key that a name stands for.
    pub fn read(name: &str) -> Option<Self> {
        let (code, id) = name.split_once('/')?;
        let kind = Kind::ALL.into_iter().find(|kind| kind.code() == code)?;
        (!id.is_empty()).then(|| Self { kind, id: id.to_owned() })
    }
}

/// Its name where it is kept.
impl fmt::Display for Key {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.kind.code(), self.id)
    }
}

/// An entry.
#[derive(Clone, Debug, PartialEq)]
#[expect(clippy::large_enum_variant, reason = "entries lie behind a pointer, on the shelf and on the way there")]
pub enum Record {
    Truck(TruckRecord),
    Attachment(AttachmentRecord),
    Load(LoadRecord),
    Check(Box<CheckRecord>),
}

impl From<TruckRecord> for Record {
    fn from(record: TruckRecord) -> Self {
        Self::Truck(record)
    }
}

impl From<AttachmentRecord> for Record {
    fn from(record: AttachmentRecord) -> Self {
        Self::Attachment(record)
    }
}

impl From<LoadRecord> for Record {
    fn from(record: LoadRecord) -> Self {
        Self::Load(record)
    }
}

impl From<CheckRecord> for Record {
    fn from(record: CheckRecord) -> Self {
        Self::Check(Box::new(record))
    }
}

impl Record {
    pub fn key(&self) -> Key {
        let (kind, id) = match self {
            Self::Truck(r) => (Kind::Truck, &r.id),
            Self::Attachment(r) => (Kind::Attachment, &r.id),
            Self::Load(r) => (Kind::Load, &r.id),
            Self::Check(r) => (Kind::Check, &r.id),
        };
        Key { kind, id: id.clone() }
    }

    /// What people call it; an entry of the log by its day and its load.
    pub fn name(&self) -> String {
        match self {
            Self::Truck(r) => r.name.clone(),
            Self::Attachment(r) => r.attachment.name.clone(),
            Self::Load(r) => r.load.name.clone(),
            Self::Check(r) => format!("{} {}", r.at, r.check.load.name).trim().to_owned(),
        }
    }

    /// The same, called otherwise; an entry of the log has no name of its own.
    pub fn call(&mut self, name: String) {
        match self {
            Self::Truck(r) => r.name = name,
            Self::Attachment(r) => r.attachment.name = name,
            Self::Load(r) => r.load.name = name,
            Self::Check(_) => {}
        }
    }

    /// Writes a name or a remark. A truck that was called in its set-ups as its record is, is called so still.
    pub fn write(&mut self, set_up: Option<&str>, line: Line, text: &str) {
        match (self, set_up, line) {
            (Self::Truck(r), None, Line::Name) => {
                let was = std::mem::replace(&mut r.name, text.to_owned());
                let called = r.set_ups.iter_mut().filter(|s| s.truck.name == was);
                called.for_each(|s| text.clone_into(&mut s.truck.name));
            }
            (Self::Truck(r), None, Line::Note) => text.clone_into(&mut r.note),
            (Self::Truck(r), Some(id), line) => {
                for set_up in r.set_ups.iter_mut().filter(|s| s.id == id) {
                    match line {
                        Line::Name => text.clone_into(&mut set_up.name),
                        Line::Note => text.clone_into(&mut set_up.note),
                    }
                }
            }
            (Self::Attachment(r), _, Line::Note) => text.clone_into(&mut r.note),
            (Self::Load(r), _, Line::Note) => text.clone_into(&mut r.note),
            (record, _, Line::Name) => record.call(text.to_owned()),
            (Self::Check(_), _, Line::Note) => {}
        }
    }

    /// Puts it away, or takes it out again. The log is never put away.
    pub fn archive(&mut self, away: bool) {
        match self {
            Self::Truck(r) => r.archived = away,
            Self::Attachment(r) => r.archived = away,
            Self::Load(r) => r.archived = away,
            Self::Check(_) => {}
        }
    }

    /// Another entry with the same content: nothing in it shares an id with this one.
    pub fn with_fresh_ids(&self, fresh: &mut dyn FnMut() -> String) -> Self {
        let mut copy = self.clone();
        match &mut copy {
            Self::Truck(r) => {
                r.id = fresh();
                r.set_ups.iter_mut().for_each(|s| s.id = fresh());
            }
            Self::Attachment(r) => r.id = fresh(),
            Self::Load(r) => r.id = fresh(),
            Self::Check(r) => r.id = fresh(),
        }
        copy
    }

    /// Puts it into a book, at the end of its own.
    pub fn into_book(self, book: &mut Book) {
        match self {
            Self::Truck(r) => book.trucks.push(r),
            Self::Attachment(r) => book.attachments.push(r),
            Self::Load(r) => book.loads.push(r),
            Self::Check(r) => book.log.push(*r),
        }
    }
}

/// All entries of a book, in its order.
pub fn records(book: &Book) -> Vec<Record> {
    let trucks = book.trucks.iter().cloned().map(Record::from);
    let attachments = book.attachments.iter().cloned().map(Record::from);
    let loads = book.loads.iter().cloned().map(Record::from);
    trucks.chain(attachments).chain(loads).chain(book.log.iter().cloned().map(Record::from)).collect()
}

/// An id that nobody else has.
pub fn fresh_id() -> String {
    use web_sys::js_sys::Math::random;
    let part = || (random() * f64::from(u32::MAX)) as u32;
    format!("{:08x}{:08x}{:08x}", part(), part(), part())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_is_read_from_its_name_alone() {
        let key = Key::truck("a/b");
        assert_eq!(Key::read(&key.to_string()), Some(key));
        for name in ["truck", "truck/", "lorry/a", "", "/a"] {
            assert_eq!(Key::read(name), None, "{name}");
        }
    }

    #[test]
    fn a_copy_shares_no_id() {
        let truck = TruckRecord {
            id: "t".to_owned(),
            name: "Blue one".to_owned(),
            set_ups: ["a", "b"]
                .map(|id| standfast_core::book::SetUp { id: id.to_owned(), ..Default::default() })
                .into(),
            ..TruckRecord::default()
        };
        let mut count = 0;
        let copy = Record::from(truck).with_fresh_ids(&mut || {
            count += 1;
            format!("n{count}")
        });
        let Record::Truck(copy) = copy else { panic!("a truck") };
        let ids: Vec<_> = copy.set_ups.iter().map(|s| s.id.as_str()).collect();
        assert_eq!((copy.id.as_str(), ids, copy.name.as_str()), ("n1", vec!["n2", "n3"], "Blue one"));
    }
}
