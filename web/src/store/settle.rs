//! What to write of a change when the store holds something else than it was based on: nothing is
//! lost, neither what another tab wrote nor what was done here.

use super::kept::Damaged;
use super::merge;
use super::record::{Key, Kind, Record};
use super::shelf::{Change, Slot};
use std::collections::BTreeMap;
use std::rc::Rc;

/// What the store holds under one key, read in the transaction that writes.
#[derive(Clone, Debug, PartialEq)]
pub enum Present {
    Nothing,
    Entry(Slot),
    Damaged,
}

impl Present {
    /// What a text in the store is.
    pub fn of(name: &str, text: Option<&str>) -> Self {
        match text.map(|text| super::kept::read(name, text)) {
            None => Self::Nothing,
            Some(Ok((_, slot))) => Self::Entry(slot),
            Some(Err(Damaged { .. })) => Self::Damaged,
        }
    }
}

/// A change and the revision that it is based on.
#[derive(Clone, Debug, PartialEq)]
pub struct Wished {
    pub change: Change,
    pub base: u64,
}

/// What came of changes that met others.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Met {
    /// Both are there, ours under another name.
    BothKept { name: String, ours: String },
    /// Both are in one entry.
    Joined { name: String },
    /// Not removed, for it was changed meanwhile.
    NotRemoved { name: String },
    /// Removed meanwhile, and put back as it is here.
    PutBack { name: String },
}

/// What is written, and what came of it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settled {
    /// What is written under each key; nothing removes it.
    pub write: Vec<(Key, Option<Slot>)>,
    /// What each key that was asked about now holds.
    pub now: BTreeMap<Key, Option<Slot>>,
    pub met: Vec<Met>,
    /// The count of writes after it.
    pub clock: u64,
}

/// What settling needs from outside.
pub struct Outside<'a> {
    /// What our version of an entry is called beside the other.
    pub called: &'a dyn Fn(&str) -> String,
    /// An id that nobody has.
    pub fresh: &'a mut dyn FnMut() -> String,
}

/// Settles changes against what the store holds.
pub fn settle(wishes: &[Wished], present: &BTreeMap<Key, Present>, clock: u64, outside: &mut Outside<'_>) -> Settled {
    let mut settled = Settled { clock: clock + 1, ..Settled::default() };
    for wished in wishes {
        let Change { key, to, .. } = &wished.change;
        let there = match settled.now.get(key) {
            Some(Some(slot)) => Present::Entry(slot.clone()),
            Some(None) => Present::Nothing,
            None => present.get(key).cloned().unwrap_or(Present::Nothing),
        };
        settled.one(wished, there, to.as_ref(), outside);
    }
    settled
}

impl Settled {
    fn one(&mut self, wished: &Wished, there: Present, ours: Option<&Rc<Record>>, outside: &mut Outside<'_>) {
        let Wished { change, base } = wished;
        let key = &change.key;
        match (there, ours) {
            (Present::Nothing, None) => {
                self.now.insert(key.clone(), None);
            }
            (Present::Nothing, Some(ours)) => {
                if *base > 0 {
                    self.met.push(Met::PutBack { name: ours.name() });
                }
                self.put(key.clone(), ours, change.order);
            }
            // Based on what is there, or on the same: nobody else has changed it.
            (Present::Entry(theirs), _) if theirs.revision == *base || change.was.as_ref() == Some(&theirs.record) => {
                match ours {
                    Some(ours) => self.put(key.clone(), ours, change.order),
                    None => {
                        self.write.push((key.clone(), None));
                        self.now.insert(key.clone(), None);
                    }
                }
            }
            (Present::Entry(theirs), Some(ours)) if theirs.record == *ours => {
                self.now.insert(key.clone(), Some(theirs));
            }
            (Present::Entry(theirs), None) => {
                self.met.push(Met::NotRemoved { name: theirs.record.name() });
                self.now.insert(key.clone(), Some(theirs));
            }
            (Present::Entry(theirs), Some(ours)) => {
                let joined = change.was.as_ref().and_then(|was| merge::both(was, ours, &theirs.record));
                match joined {
                    Some(joined) => {
                        self.met.push(Met::Joined { name: joined.name() });
                        self.put(key.clone(), &Rc::new(joined), theirs.order);
                    }
                    None => {
                        self.now.insert(key.clone(), Some(theirs));
                        self.beside(ours, change.order, outside);
                    }
                }
            }
            // It stays as it is, under its name.
            (Present::Damaged, None) => {
                self.now.insert(key.clone(), None);
            }
            (Present::Damaged, Some(ours)) => {
                self.now.insert(key.clone(), None);
                self.beside(ours, change.order, outside);
            }
        }
    }

    fn put(&mut self, key: Key, record: &Rc<Record>, order: u64) {
        let slot = Slot { record: Rc::clone(record), order, revision: self.clock };
        self.write.push((key.clone(), Some(slot.clone())));
        self.now.insert(key, Some(slot));
    }

    /// Keeps ours as an entry of its own.
    fn beside(&mut self, ours: &Record, order: u64, outside: &mut Outside<'_>) {
        let name = ours.name();
        let mut copy = ours.with_fresh_ids(outside.fresh);
        copy.call((outside.called)(&name));
        // An entry of the log has no name that could tell the two apart: both stand there.
        let called = if copy.key().kind == Kind::Check { name.clone() } else { copy.name() };
        self.met.push(Met::BothKept { name, ours: called });
        self.put(copy.key(), &Rc::new(copy), order);
    }
}

#[cfg(test)]
mod tests;
