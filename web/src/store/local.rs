//! The browser's plain storage, where it has no database for this page: the whole book is one text.

use super::kept;
use super::place::{Failure, Read};
use super::record::Key;
use super::settle::{Outside, Present, Settled, Wished, settle};
use super::shelf::Change;
use crate::storage;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use wasm_bindgen::JsCast;
use web_sys::{DomException, Storage};

/// Where it is kept.
pub const KEY: &str = "standfast.v1.book";

/// The text: entries are texts in it, so that a damaged one leaves the others.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Whole {
    clock: u64,
    entries: BTreeMap<String, String>,
}

impl Whole {
    /// What a text holds; nothing where there is none.
    ///
    /// # Errors
    /// The text, where it cannot be read.
    pub fn of(text: Option<String>) -> Result<Self, String> {
        let Some(text) = text else { return Ok(Self::default()) };
        serde_json::from_str(&text).map_err(|_| text)
    }

    /// The entries of these keys, or all.
    pub fn read(&self, keys: Option<&[Key]>) -> Read {
        let all = || self.entries.iter().map(|(name, text)| (name.clone(), Some(text.clone()))).collect();
        let one = |key: &Key| (key.to_string(), self.entries.get(&key.to_string()).cloned());
        Read { clock: self.clock, texts: keys.map_or_else(all, |keys| keys.iter().map(one).collect()) }
    }

    /// Which of the changes made at a count of writes are not in it though nothing was written since: another
    /// tab wrote at the same moment, without having seen them.
    pub fn lacks(&self, changes: &[Change], clock: u64) -> Vec<Change> {
        if self.clock > clock {
            return Vec::new();
        }
        let there =
            |key: &Key| self.entries.get(&key.to_string()).and_then(|text| kept::read(&key.to_string(), text).ok());
        let lost = changes.iter().filter(|c| there(&c.key).map(|(_, slot)| slot.record) != c.to);
        lost.cloned().collect()
    }

    /// Settles changes, and makes them.
    pub fn write(&mut self, wishes: &[Wished], outside: &mut Outside<'_>) -> Settled {
        let there = |key: &Key| {
            let name = key.to_string();
            Present::of(&name, self.entries.get(&name).map(String::as_str))
        };
        let present = wishes.iter().map(|w| (w.change.key.clone(), there(&w.change.key))).collect();
        let settled = settle(wishes, &present, self.clock, outside);
        for (key, slot) in &settled.write {
            match slot {
                Some(slot) => drop(self.entries.insert(key.to_string(), kept::to_text(slot))),
                None => drop(self.entries.remove(&key.to_string())),
            }
        }
        if !settled.write.is_empty() {
            self.clock = settled.clock;
        }
        settled
    }
}

/// The storage.
#[derive(Debug)]
pub struct Local {
    storage: Storage,
}

impl Local {
    /// The storage, if the page has one that takes something.
    pub fn open() -> Option<Self> {
        Some(Self { storage: storage::browser()? })
    }

    fn whole(&self) -> Whole {
        match Whole::of(self.storage.get_item(KEY).ok().flatten()) {
            Ok(whole) => whole,
            Err(text) => {
                // Only what lies elsewhere may be written over.
                if storage::set_aside(&text) {
                    let _ = self.storage.remove_item(KEY);
                }
                Whole::default()
            }
        }
    }

    /// The entries of these keys, or all.
    pub fn read(&self, keys: Option<&[Key]>) -> Read {
        self.whole().read(keys)
    }

    /// Writes changes: one text, all of it or nothing.
    ///
    /// # Errors
    /// Where the browser does not take it: then nothing is written.
    pub fn write(&self, wishes: &[Wished], outside: &mut Outside<'_>) -> Result<Settled, Failure> {
        let mut whole = self.whole();
        let settled = whole.write(wishes, outside);
        if !settled.write.is_empty() {
            let text = serde_json::to_string(&whole).map_err(|e| Failure::Other(e.to_string()))?;
            self.storage.set_item(KEY, &text).map_err(|value| match value.dyn_into::<DomException>() {
                Ok(exception) => Failure::of(&exception.name(), exception.message()),
                Err(value) => Failure::Other(format!("{value:?}")),
            })?;
        }
        Ok(settled)
    }

    /// Forgets what was taken over elsewhere.
    pub fn forget(&self) {
        let _ = self.storage.remove_item(KEY);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::shelf::tests::truck;
    use crate::store::shelf::{BookAct, Shelf};

    #[test]
    fn a_damaged_entry_leaves_the_others() {
        let (mut whole, mut shelf) = (Whole::default(), Shelf::default());
        for id in ["a", "b"] {
            let changes = shelf.changes(&BookAct::put(truck(id, id)));
            shelf.apply(&changes);
            let mut outside = Outside { called: &str::to_owned, fresh: &mut String::new };
            whole.write(&shelf.wishes(&changes), &mut outside);
        }
        whole.entries.insert("truck/a".to_owned(), "{".to_owned());
        let text = serde_json::to_string(&whole).expect("a text");
        assert_eq!(Whole::of(Some(text.clone())), Ok(whole));
        let read = Whole::of(Some(text.clone())).expect("whole").read(None);
        let read: Vec<_> = read.entries().into_iter().map(|e| e.map(|(key, _)| key)).collect();
        assert!(matches!(&read[..], [Err(damaged), Ok(key)] if damaged.text == "{" && *key == Key::truck("b")));
        // Written by another tab that had not seen the last one: both come to stand there.
        let mut unseen: Whole = serde_json::from_str(&text).expect("whole");
        unseen.entries.remove("truck/b");
        let b = shelf.changes(&BookAct::Remove(Key::truck("b"))).remove(0).was;
        let made = Change { key: Key::truck("b"), was: None, to: b, order: 2 };
        let one = std::slice::from_ref(&made);
        assert_eq!(unseen.lacks(one, 2), one);
        assert_eq!(unseen.lacks(one, 1), [], "one that came later has seen it, and removed it");
        let cut = text[..text.len() - 3].to_owned();
        assert_eq!(Whole::of(Some(cut.clone())), Err(cut));
    }
}
