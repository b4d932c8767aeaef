use super::*;
use crate::store::settle::{Met, Outside, Present, settle};
use standfast_core::book::TruckRecord;

pub(crate) fn truck(id: &str, name: &str) -> Record {
    TruckRecord { id: id.to_owned(), name: name.to_owned(), ..TruckRecord::default() }.into()
}

fn act(shelf: &mut Shelf, act: BookAct) -> Vec<Change> {
    let changes = shelf.changes(&act);
    shelf.apply(&changes);
    changes
}

fn names(shelf: &Shelf) -> Vec<String> {
    shelf.book().trucks.into_iter().map(|t| t.name).collect()
}

fn three() -> Shelf {
    let mut shelf = Shelf::default();
    for (id, name) in [("z", "One"), ("b", "Two"), ("a", "Three")] {
        act(&mut shelf, BookAct::put(truck(id, name)));
    }
    shelf
}

#[test]
fn entries_keep_the_order_they_came_in() {
    let mut shelf = three();
    assert_eq!(names(&shelf), ["One", "Two", "Three"]);
    act(&mut shelf, BookAct::put(truck("b", "Two, repainted")));
    assert_eq!(names(&shelf), ["One", "Two, repainted", "Three"]);
}

#[test]
fn what_was_removed_comes_back_in_its_place() {
    let mut shelf = three();
    act(&mut shelf, BookAct::Remove(Key::truck("b")));
    assert_eq!(names(&shelf), ["One", "Three"]);
    act(&mut shelf, BookAct::Undo);
    assert_eq!(names(&shelf), ["One", "Two", "Three"]);
}

#[test]
fn what_changes_nothing_writes_nothing() {
    let mut shelf = three();
    for idle in [
        BookAct::put(truck("a", "Three")),
        BookAct::Remove(Key::truck("none")),
        BookAct::Archive(Key::truck("a"), false),
        BookAct::Archive(Key::truck("none"), true),
        BookAct::Hush,
    ] {
        assert_eq!(act(&mut shelf, idle.clone()), [], "{idle:?}");
    }
}

#[test]
fn an_import_changes_what_differs_and_is_taken_back_whole() {
    let mut shelf = three();
    let was = Rc::new(shelf.book());
    let mut is = Book::clone(&was);
    is.trucks.remove(0);
    is.trucks[0].note = "New tyres".to_owned();
    truck("n", "Four").into_book(&mut is);
    // Another entry came meanwhile: it is none of the import's.
    act(&mut shelf, BookAct::put(truck("o", "Other")));
    let changes = act(&mut shelf, BookAct::Import { was, is: Rc::new(is) });
    assert_eq!(changes.len(), 3);
    assert_eq!(names(&shelf), ["Two", "Three", "Other", "Four"]);
    act(&mut shelf, BookAct::Undo);
    assert_eq!(names(&shelf), ["One", "Two", "Three", "Other"]);
    assert_eq!(shelf.book().trucks[1].note, "");
}

#[test]
fn what_was_changed_again_is_not_taken_back() {
    let mut shelf = three();
    act(&mut shelf, BookAct::put(truck("a", "Mine")));
    let slot = Slot { record: Rc::new(truck("a", "Theirs")), order: 3, revision: 9 };
    settle_all(&mut shelf, 1);
    shelf.take(vec![(Key::truck("a"), Some(slot))]);
    assert_eq!(act(&mut shelf, BookAct::Undo), []);
    assert_eq!(names(&shelf), ["One", "Two", "Theirs"]);
}

/// As if everything on its way had been written.
fn settle_all(shelf: &mut Shelf, clock: u64) {
    shelf.waiting.clear();
    shelf.removed.clear();
    shelf.slots.values_mut().for_each(|s| s.revision = clock);
}

/// A write's way: what is wished for, what the store makes of it, what the shelf learns.
fn write(shelf: &mut Shelf, store: &mut BTreeMap<Key, Slot>, changes: &[Change]) -> Settled {
    let wishes = shelf.wishes(changes);
    let there = |key: &Key| store.get(key).cloned().map_or(Present::Nothing, Present::Entry);
    let present = wishes.iter().map(|w| (w.change.key.clone(), there(&w.change.key))).collect();
    let clock = store.values().map(|s| s.revision).max().unwrap_or_default();
    let mut outside = Outside { called: &|name| format!("{name} (this tab)"), fresh: &mut || format!("new{clock}") };
    let settled = settle(&wishes, &present, clock, &mut outside);
    for (key, slot) in settled.write.clone() {
        match slot {
            Some(slot) => store.insert(key, slot),
            None => store.remove(&key),
        };
    }
    shelf.settled(&wishes, &settled);
    settled
}

#[test]
fn changes_one_after_another_are_written_one_after_another() {
    let (mut shelf, mut store) = (Shelf::default(), BTreeMap::new());
    let first = act(&mut shelf, BookAct::put(truck("a", "One")));
    let second = act(&mut shelf, BookAct::put(truck("a", "Two")));
    let third = act(&mut shelf, BookAct::Remove(Key::truck("a")));
    let fourth = act(&mut shelf, BookAct::Undo);
    for changes in [first, second, third, fourth] {
        assert_eq!(write(&mut shelf, &mut store, &changes).met, []);
    }
    assert_eq!((names(&shelf), store.len()), (vec!["Two".to_owned()], 1));
    assert_eq!(shelf.get(&Key::truck("a")), store.get(&Key::truck("a")));
}

#[test]
fn two_tabs_lose_nothing_of_each_other() {
    let mut store = BTreeMap::new();
    let (mut one, mut two) = (Shelf::default(), Shelf::default());
    let made = act(&mut one, BookAct::put(truck("a", "Blue")));
    write(&mut one, &mut store, &made);
    two.take_all(store.clone().into_iter().collect());
    // Both change it, and change it again, before either hears of the other.
    let ones = ["Ones", "Ones again"].map(|name| act(&mut one, BookAct::put(truck("a", name))));
    let twos = ["Twos", "Twos again"].map(|name| act(&mut two, BookAct::put(truck("a", name))));
    ones.iter().for_each(|changes| assert_eq!(write(&mut one, &mut store, changes).met, []));
    let met: Vec<_> = twos.iter().flat_map(|changes| write(&mut two, &mut store, changes).met).collect();
    assert!(matches!(&met[..], [Met::BothKept { .. }, Met::BothKept { .. }]), "{met:?}");
    one.take_all(store.clone().into_iter().collect());
    let mut all = names(&one);
    all.sort();
    assert_eq!(all, ["Ones again", "Twos (this tab)", "Twos again (this tab)"]);
    assert_eq!(names(&two), names(&one));
}

#[test]
fn what_is_on_its_way_is_not_undone_by_what_is_read() {
    let mut shelf = Shelf::default();
    let made = act(&mut shelf, BookAct::put(truck("a", "Here")));
    shelf.take_all(vec![(Key::truck("b"), Slot { record: Rc::new(truck("b", "There")), order: 1, revision: 2 })]);
    assert_eq!(shelf.book().trucks.len(), 2);
    let mut store = BTreeMap::new();
    write(&mut shelf, &mut store, &made);
    shelf.take_all(store.into_iter().collect());
    assert_eq!(names(&shelf), ["Here"]);
}
