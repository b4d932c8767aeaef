//! The book as this tab has it: every entry with its place in the order and the revision it was read at.

use super::record::{Key, Record, records};
use super::settle::{Settled, Wished};
use standfast_core::book::Book;
use std::collections::BTreeMap;
use std::rc::Rc;

/// A text of an entry.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    Name,
    Note,
}

/// What can happen to the book.
#[derive(Clone, Debug, PartialEq)]
pub enum BookAct {
    /// Adds an entry, or puts it in the place of the one with its id. What is put in place of another
    /// is made from the present one, in the same event: not from one that was read earlier.
    Put(Box<Record>),
    /// Puts an entry away, or takes it out again.
    Archive(Key, bool),
    /// Another name or remark, of an entry or of one of its set-ups.
    Write {
        key: Key,
        set_up: Option<String>,
        line: Line,
        text: String,
    },
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
    /// Tries once more to keep what could not be kept.
    Again,
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
    /// What it was when the change was made.
    pub was: Option<Rc<Record>>,
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
    /// The count of writes that was last seen in the store.
    pub clock: u64,
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
            Change { was: None, key, to: Some(Rc::new(record)), order }
        };
        let gone = |key: Key, order: u64| Change { was: None, key, to: None, order };
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
            BookAct::Write { key, set_up, line, text } => {
                let present = self.slots.get(key).map(|s| Record::clone(&s.record));
                let written = present.map(|mut record| {
                    record.write(set_up.as_deref(), *line, text);
                    change(record, next)
                });
                written.into_iter().collect()
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
                    Some((record, order)) => {
                        Change { was: None, key: u.key.clone(), to: Some(Rc::clone(record)), order: *order }
                    }
                    None => gone(u.key.clone(), 0),
                };
                still.map(back).collect()
            }
            BookAct::Hush | BookAct::Again => Vec::new(),
        };
        let was = |key: &Key| self.slots.get(key).map(|s| Rc::clone(&s.record));
        let based = changes.into_iter().map(|c| Change { was: was(&c.key), ..c });
        based.filter(|c| c.was != c.to).collect()
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

    /// How many entries are on their way to the store.
    pub fn waiting(&self) -> usize {
        self.waiting.len()
    }
}

impl Shelf {
    /// The changes with the revisions that they are based on, as they stand when their turn to be written comes.
    pub fn wishes(&self, changes: &[Change]) -> Vec<Wished> {
        changes.iter().map(|change| Wished { change: change.clone(), base: self.base(&change.key) }).collect()
    }

    /// All that waits in one: of each entry the last change, from what was before the first.
    pub fn together(&mut self, changes: &[Change]) -> Vec<Change> {
        let mut last: BTreeMap<Key, Change> = BTreeMap::new();
        for change in changes {
            let was = last.get(&change.key).map_or(&change.was, |c| &c.was).clone();
            last.insert(change.key.clone(), Change { was, ..change.clone() });
        }
        self.waiting = last.keys().map(|key| (key.clone(), 1)).collect();
        last.into_values().collect()
    }

    /// These were written, and are not there any more: they are on their way again, based on nothing.
    pub fn again(&mut self, changes: &[Change]) {
        for change in changes {
            *self.waiting.entry(change.key.clone()).or_default() += 1;
            if let Some(slot) = self.slots.get_mut(&change.key) {
                slot.revision = 0;
            }
        }
    }

    /// Takes over what came of changes that were written.
    pub fn settled(&mut self, wishes: &[Wished], settled: &Settled) {
        for Wished { change, .. } in wishes {
            if let Some(waiting) = self.waiting.get_mut(&change.key) {
                *waiting = waiting.saturating_sub(1);
            }
        }
        self.waiting.retain(|_, waiting| *waiting > 0);
        for (key, now) in &settled.now {
            if !self.waiting.contains_key(key) {
                self.place(key, now.as_ref());
                continue;
            }
            // What follows is based on what was written only where that is what was wished for.
            let wished = wishes.iter().rev().find(|w| w.change.key == *key).and_then(|w| w.change.to.as_ref());
            if wished == now.as_ref().map(|n| &n.record) {
                let revision = now.as_ref().map_or(0, |n| n.revision);
                match self.slots.get_mut(key) {
                    Some(slot) => slot.revision = revision,
                    None => drop(self.removed.insert(key.clone(), revision)),
                }
            }
        }
        self.clock = self.clock.max(settled.clock);
    }

    /// Takes over what the store holds; what is on its way there stays as it is here.
    pub fn take(&mut self, read: Vec<(Key, Option<Slot>)>) {
        for (key, slot) in read {
            if !self.waiting.contains_key(&key) {
                self.place(&key, slot.as_ref());
            }
        }
    }

    /// Takes over all that the store holds: what is not there any more goes.
    pub fn take_all(&mut self, read: Vec<(Key, Slot)>) {
        let there: BTreeMap<Key, Slot> = read.into_iter().collect();
        let gone = self.slots.keys().filter(|key| !there.contains_key(key)).cloned();
        let gone: Vec<_> = gone.map(|key| (key, None)).collect();
        self.take(gone);
        self.take(there.into_iter().map(|(key, slot)| (key, Some(slot))).collect());
    }

    fn place(&mut self, key: &Key, slot: Option<&Slot>) {
        self.removed.remove(key);
        match slot {
            Some(slot) => self.slots.insert(key.clone(), slot.clone()),
            None => self.slots.remove(key),
        };
    }
}

#[cfg(test)]
pub(crate) mod tests;
