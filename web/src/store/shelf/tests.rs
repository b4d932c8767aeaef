use super::*;
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
    let change = Change { key: Key::truck("a"), to: Some(Rc::new(truck("a", "Theirs"))), order: 3 };
    shelf.slots.get_mut(&change.key).expect("there").record = change.to.expect("a truck");
    assert_eq!(act(&mut shelf, BookAct::Undo), []);
    assert_eq!(names(&shelf), ["One", "Two", "Theirs"]);
}
