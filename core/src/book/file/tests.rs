use super::*;
use crate::book::{AttachmentRecord, LoadRecord, Of, Outcome, SetUp, TruckRecord};
use crate::example;
use crate::verdict::State;

fn id(text: &str) -> String {
    text.to_owned()
}

/// One of everything.
fn book() -> Book {
    let check = example::document(example::ODD_LOAD);
    let set_up = |own: &str| SetUp { id: id(own), name: id("Forks"), truck: check.truck.clone(), ..SetUp::default() };
    let of = Some(Of { truck: id("a"), set_up: id("b") });
    let outcome = Outcome { verdict: Some(State::Hold), reason: id("Something may be out."), used: Some(0.93) };
    let at = id("2026-05-14T09:30:00+02:00");
    Book {
        trucks: vec![TruckRecord {
            id: id("a"),
            name: id("Copperbeck 3"),
            set_ups: vec![set_up("b"), set_up("c")],
            ..TruckRecord::default()
        }],
        attachments: example::attachments(),
        loads: vec![LoadRecord { id: id("a"), load: check.load.clone(), ..LoadRecord::default() }],
        log: vec![CheckRecord { id: id("d"), at, who: id("M. Brandt"), program: id("0.1.0"), of, check, outcome }],
        ..Book::default()
    }
}

fn refused(text: &str) -> String {
    open(text).expect_err(text).to_string()
}

/// The book with one piece of its text in place of another.
fn with(from: &str, to: &str) -> String {
    let text = book().to_json();
    assert!(text.contains(from), "{from}");
    text.replacen(from, to, 1)
}

#[test]
fn a_book_survives_writing_and_reading() {
    let book = book();
    assert_eq!(Book::from_json(&book.to_json()), Ok(book.clone()));
    assert_eq!(open(&book.to_json()), Ok(Opened::Book(book)));
    let check = example::document(example::ODD_LOAD);
    assert_eq!(open(&check.to_json()), Ok(Opened::Check(Box::new(check.clone()))));
    let other = FileError::OtherFormat { found: Some(id("standfast-check")) };
    assert_eq!(Book::from_json(&check.to_json()), Err(other));
    let other = FileError::OtherFormat { found: Some(id("standfast-book")) };
    assert_eq!(Document::from_json(&Book::default().to_json()), Err(other));
}

#[test]
fn what_does_not_belong_is_named_with_its_record() {
    assert!(refused(&with("\"tread_m\"", "\"colour\"")).contains("trucks[0].set_ups[0].truck.colour: unknown field"));
    let wrong = refused(&with("\"name\": \"Copperbeck 3\"", "\"name\": 3"));
    assert!(wrong.contains("trucks[0].name: invalid type"), "{wrong}");
    let missing = refused(&with("\"program\": \"0.1.0\",", ""));
    assert!(missing.contains("log[0]: missing field `program`"), "{missing}");
}

#[test]
fn ids_are_there_and_single() {
    assert_eq!(refused(&with("\"id\": \"c\"", "\"id\": \" \"")), "trucks[0].set_ups[1].id: its id is empty");
    let same = "trucks[0].set_ups[1].id: the id `b` is another record's";
    assert_eq!(refused(&with("\"id\": \"c\"", "\"id\": \"b\"")), same);
    let mut two = book();
    two.attachments.push(AttachmentRecord { id: id("example-boom"), ..AttachmentRecord::default() });
    assert_eq!(refused(&two.to_json()), "attachments[3].id: the id `example-boom` is another record's");
    let mut two = book();
    two.log.push(two.log[0].clone());
    assert_eq!(refused(&two.to_json()), "log[1].id: the id `d` is another record's");
}

/// An older check is read like a file of it; a newer one is called so, whatever fields it brings.
#[test]
fn the_checks_inside_are_read_like_files() {
    let version = format!("\"format\": \"standfast-check\",\n        \"version\": {}", document::VERSION);
    let head = |version: &str| format!("\"format\": \"standfast-check\",\n        \"version\": {version}");
    assert_eq!(Book::from_json(&with(&version, &head("1"))), Ok(book()));
    let newer = refused(&with(&version, &head("99, \"colour\": 1")));
    assert_eq!(newer, format!("version 99 is newer than {}, the newest known here", document::VERSION));
    assert_eq!(refused(&with(&version, &head("0"))), "log[0].check.version: version 0 was never used");
    let other = with("\"format\": \"standfast-check\"", "\"format\": \"other\"");
    assert_eq!(refused(&other), "log[0].check.format: `other` is not `standfast-check`");
}

#[test]
fn versions_of_the_book() {
    assert!(refused("{\"format\": \"standfast-book\", \"version\": 2, \"colour\": 1}").contains("newer"));
    assert!(refused("{\"format\": \"standfast-book\"}").contains("version"));
    assert!(refused("{\"format\": \"standfast-book\", \"version\": 0}").contains("version 0"));
    assert_eq!(open("{\"format\": \"standfast-book\", \"version\": 1}"), Ok(Opened::Book(Book::default())));
    assert!(refused("{\"format\": \"other\", \"version\": 1}").contains("other"));
}

#[test]
fn a_book_has_no_more_than_anybody_enters() {
    let set_ups = |n: usize| (0..n).map(|k| SetUp { id: k.to_string(), ..SetUp::default() }).collect();
    let truck = |k: usize| TruckRecord { id: k.to_string(), set_ups: set_ups(2000), ..TruckRecord::default() };
    let mut many = Book { trucks: (0..5).map(truck).collect(), ..Book::default() };
    assert!(open(&many.to_json()).is_ok());
    many.trucks.push(TruckRecord { id: id("x"), set_ups: set_ups(1), ..TruckRecord::default() });
    assert_eq!(refused(&many.to_json()), "trucks[].set_ups: more than 10000 of them");
}
