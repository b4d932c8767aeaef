//! One entry as a text in the store.

use super::record::{Key, Kind, Record};
use super::shelf::Slot;
use serde::{Deserialize, Serialize};
use standfast_core::book::{AttachmentRecord, CheckRecord, LoadRecord, TruckRecord};
use std::rc::Rc;

/// What stands in the text.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Kept<R> {
    /// The count of all writes at which it was written.
    revision: u64,
    /// Its place in the order.
    order: u64,
    record: R,
}

/// An entry that cannot be read. It stays where it is: a newer page may have written it, and can read it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damaged {
    /// Its name in the store.
    pub name: String,
    pub text: String,
    pub why: String,
}

/// The text of an entry.
pub fn to_text(slot: &Slot) -> String {
    fn text<R: Serialize>(slot: &Slot, record: R) -> String {
        serde_json::to_string(&Kept { revision: slot.revision, order: slot.order, record }).unwrap_or_default()
    }
    match &*slot.record {
        Record::Truck(r) => text(slot, r),
        Record::Attachment(r) => text(slot, r),
        Record::Load(r) => text(slot, r),
        Record::Check(r) => text(slot, r),
    }
}

/// The entry in a text.
///
/// # Errors
/// Why it cannot be read, in the reader's words.
pub fn read(name: &str, text: &str) -> Result<(Key, Slot), Damaged> {
    let damaged = |why: String| Damaged { name: name.to_owned(), text: text.to_owned(), why };
    let key = Key::read(name).ok_or_else(|| damaged("no such kind of entry".to_owned()))?;
    let slot = match key.kind {
        Kind::Truck => slot::<TruckRecord>(text),
        Kind::Attachment => slot::<AttachmentRecord>(text),
        Kind::Load => slot::<LoadRecord>(text),
        Kind::Check => slot::<CheckRecord>(text),
    };
    let slot = slot.map_err(|e| damaged(e.to_string()))?;
    if slot.record.key() != key {
        return Err(damaged("it is not the entry that its name says".to_owned()));
    }
    Ok((key, slot))
}

fn slot<R: for<'a> Deserialize<'a> + Into<Record>>(text: &str) -> Result<Slot, serde_json::Error> {
    let kept: Kept<R> = serde_json::from_str(text)?;
    Ok(Slot { record: Rc::new(kept.record.into()), order: kept.order, revision: kept.revision })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::shelf::tests::truck;

    #[test]
    fn an_entry_reads_back_as_it_was_and_no_cut_of_it_does() {
        let slot = Slot { record: Rc::new(truck("a", "Blue \u{201c}one\u{201d}")), order: 3, revision: 12 };
        let text = to_text(&slot);
        assert_eq!(read("truck/a", &text), Ok((Key::truck("a"), slot)));
        for end in (0..text.len()).filter_map(|end| text.get(..end)) {
            assert_eq!(read("truck/a", end).map_err(|d| d.text), Err(end.to_owned()));
        }
        for name in ["truck/b", "load/a", "lorry/a"] {
            assert!(read(name, &text).is_err(), "{name}");
        }
        assert!(read("truck/a", &text.replace("\"name\"", "\"colour\"")).is_err());
    }
}
