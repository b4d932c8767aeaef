//! Two changes of one truck, made in two tabs, put together where they do not touch.

use super::record::Record;
use standfast_core::book::{SetUp, TruckRecord};

/// Both changes in one entry; nothing where they change the same thing otherwise.
pub fn both(was: &Record, ours: &Record, theirs: &Record) -> Option<Record> {
    match (was, ours, theirs) {
        (Record::Truck(was), Record::Truck(ours), Record::Truck(theirs)) => trucks(was, ours, theirs).map(Record::from),
        _ => None,
    }
}

/// What changed it; either where both made the same of it.
fn one<'a, T: PartialEq>(was: &T, ours: &'a T, theirs: &'a T) -> Option<&'a T> {
    if ours == theirs || ours == was {
        Some(theirs)
    } else if theirs == was {
        Some(ours)
    } else {
        None
    }
}

fn trucks(was: &TruckRecord, ours: &TruckRecord, theirs: &TruckRecord) -> Option<TruckRecord> {
    fn find<'a>(truck: &'a TruckRecord, id: &str) -> Option<&'a SetUp> {
        truck.set_ups.iter().find(|s| s.id == id)
    }
    let only_ours = ours.set_ups.iter().filter(|s| find(theirs, &s.id).is_none());
    let mut set_ups = Vec::new();
    for set_up in theirs.set_ups.iter().chain(only_ours) {
        let id = &set_up.id;
        let (was, ours, theirs) = (find(was, id), find(ours, id), find(theirs, id));
        set_ups.extend(one(&was, &ours, &theirs)?.cloned());
    }
    Some(TruckRecord {
        id: theirs.id.clone(),
        name: one(&was.name, &ours.name, &theirs.name)?.clone(),
        note: one(&was.note, &ours.note, &theirs.note)?.clone(),
        archived: *one(&was.archived, &ours.archived, &theirs.archived)?,
        set_ups,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set_up(id: &str, name: &str) -> SetUp {
        SetUp { id: id.to_owned(), name: name.to_owned(), ..SetUp::default() }
    }

    fn truck(name: &str, set_ups: &[(&str, &str)]) -> TruckRecord {
        let set_ups = set_ups.iter().map(|(id, name)| set_up(id, name)).collect();
        TruckRecord { id: "t".to_owned(), name: name.to_owned(), set_ups, ..TruckRecord::default() }
    }

    #[test]
    fn what_does_not_touch_goes_together() {
        let was = truck("Blue", &[("a", "forks"), ("b", "clamp"), ("c", "boom")]);
        let ours = truck("Blue one", &[("a", "forks"), ("b", "clamp 2"), ("d", "ours")]);
        let theirs = truck("Blue", &[("a", "long forks"), ("b", "clamp"), ("c", "boom"), ("e", "theirs")]);
        let both = truck("Blue one", &[("a", "long forks"), ("b", "clamp 2"), ("e", "theirs"), ("d", "ours")]);
        assert_eq!(trucks(&was, &ours, &theirs), Some(both));
    }

    #[test]
    fn the_same_thing_changed_otherwise_does_not() {
        let was = truck("Blue", &[("a", "forks")]);
        let named = |name| truck("Blue", &[("a", name)]);
        assert_eq!(trucks(&was, &named("x"), &named("y")), None);
        assert_eq!(trucks(&was, &named("x"), &truck("Blue", &[])), None, "changed here, removed there");
        assert_eq!(trucks(&was, &truck("X", &[]), &truck("Y", &[])), None);
        assert_eq!(trucks(&was, &named("x"), &named("x")), Some(named("x")));
    }
}
