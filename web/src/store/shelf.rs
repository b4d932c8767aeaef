//! The book as this tab has it: every entry with its place in the order and the revision it was read at.

use super::record::{Key, Record, records};
use standfast_core::book::Book;
use std::collections::BTreeMap;
use std::rc::Rc;

/// What can happen to the book.
#[derive(Clone, Debug, PartialEq)]
pub enum BookAct {
    /// Adds an entry, or puts it in the place of the one with its id. What is put in place of another
    /// is made from the present one, in the same event: not from one that was read earlier.
    Put(Box<Record>),
    /// Puts an entry away, or takes it out again.
    Archive(Key, bool),
    Remove(Key),
    /// A file was taken in: what differs between the two is changed.
    Import {
        was: Rc<Book>,
        is: Rc<Book>,
    },
    /// Takes the last change back.
    Undo,
    /// What was said has been read.
    Hush,
}

impl BookAct {
    /// Adds or replaces an entry.
    pub fn put(record: impl Into<Record>) -> Self {
        Self::Put(Box::new(record.into()))
    }
}

/// What one entry becomes: another content, or nothing.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    pub key: Key,
    pub to: Option<Rc<Record>>,
    /// Its place in the order.
    pub order: u64,
}

/// An entry on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct Slot {
    pub record: Rc<Record>,
    pub order: u64,
    /// The revision it was read or written at; 0 was not written yet.
    pub revision: u64,
}

/// The entries.
#[derive(Debug, Default)]
pub struct Shelf {
    slots: BTreeMap<Key, Slot>,
    /// How many changes of an entry are on their way to the store.
    waiting: BTreeMap<Key, usize>,
    /// The revision at which an entry that was removed here was read.
    removed: BTreeMap<Key, u64>,
    /// What takes the last change back.
    undo: Vec<Undo>,
}

/// One entry as it was before a change, and as that left it.
#[derive(Clone, Debug, PartialEq)]
struct Undo {
    key: Key,
    before: Option<(Rc<Record>, u64)>,
    after: Option<Rc<Record>>,
}

impl Shelf {
    /// The book in its order.
    pub fn book(&self) -> Book {
        let mut slots: Vec<_> = self.slots.values().collect();
        slots.sort_by_key(|s| s.order);
        let mut book = Book::default();
        slots.into_iter().for_each(|s| Record::clone(&s.record).into_book(&mut book));
        book
    }

    /// An entry as it is now.
    pub fn get(&self, key: &Key) -> Option<&Slot> {
        self.slots.get(key)
    }

    /// The revision that a change of this entry is based on; 0 where there was none.
    pub fn base(&self, key: &Key) -> u64 {
        self.slots.get(key).map(|s| s.revision).or_else(|| self.removed.get(key).copied()).unwrap_or_default()
    }

    /// What an act changes.
    pub fn changes(&self, act: &BookAct) -> Vec<Change> {
        let next = self.slots.values().map(|s| s.order).max().map_or(1, |n| n + 1);
        let change = |record: Record, fresh: u64| {
            let key = record.key();
            let order = self.slots.get(&key).map_or(fresh, |s| s.order);
            Change { key, to: Some(Rc::new(record)), order }
        };
        let gone = |key: Key, order: u64| Change { key, to: None, order };
        let changes: Vec<Change> = match act {
            BookAct::Put(record) => vec![change(Record::clone(record), next)],
            BookAct::Archive(key, away) => {
                let present = self.slots.get(key).map(|s| Record::clone(&s.record));
                let archived = present.map(|mut record| {
                    record.archive(*away);
                    change(record, next)
                });
                archived.into_iter().collect()
            }
            BookAct::Remove(key) => self.slots.get(key).map(|s| gone(key.clone(), s.order)).into_iter().collect(),
            BookAct::Import { was, is } => {
                let (was, is) = (records(was), records(is));
                let before: BTreeMap<_, _> = was.iter().map(|r| (r.key(), r)).collect();
                let after: BTreeMap<_, _> = is.iter().map(|r| (r.key(), r)).collect();
                let lost = before.keys().filter(|key| !after.contains_key(key));
                let lost = lost.filter_map(|key| Some(gone(key.clone(), self.slots.get(key)?.order)));
                let new = is.iter().filter(|r| before.get(&r.key()) != Some(r));
                lost.chain(new.zip(next..).map(|(r, order)| change(r.clone(), order))).collect()
            }
            BookAct::Undo => {
                let present = |key: &Key| self.slots.get(key).map(|s| &s.record);
                // What was changed once more since, here or in another tab, stays as it is.
                let still = self.undo.iter().filter(|u| present(&u.key) == u.after.as_ref());
                let back = |u: &Undo| match &u.before {
                    Some((record, order)) => Change { key: u.key.clone(), to: Some(Rc::clone(record)), order: *order },
                    None => gone(u.key.clone(), 0),
                };
                still.map(back).collect()
            }
            BookAct::Hush => Vec::new(),
        };
        let same = |c: &Change| self.slots.get(&c.key).map(|s| &s.record) == c.to.as_ref();
        changes.into_iter().filter(|c| !same(c)).collect()
    }

    /// Makes the changes here; they can be taken back until the next ones.
    pub fn apply(&mut self, changes: &[Change]) {
        let slots = &self.slots;
        let undo = changes.iter().map(|c| Undo {
            key: c.key.clone(),
            before: slots.get(&c.key).map(|s| (Rc::clone(&s.record), s.order)),
            after: c.to.clone(),
        });
        self.undo = undo.collect();
        for change in changes {
            let revision = self.base(&change.key);
            *self.waiting.entry(change.key.clone()).or_default() += 1;
            match &change.to {
                Some(record) => {
                    self.removed.remove(&change.key);
                    let slot = Slot { record: Rc::clone(record), order: change.order, revision };
                    self.slots.insert(change.key.clone(), slot);
                }
                None => {
                    self.slots.remove(&change.key);
                    self.removed.insert(change.key.clone(), revision);
                }
            }
        }
    }

    /// Nothing can be taken back any more.
    pub fn forget_undo(&mut self) {
        self.undo.clear();
    }
}

#[cfg(test)]
mod tests;
