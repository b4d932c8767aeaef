use super::super::survey::{LARGEST, LONGEST_TEXT, MOST_ROWS};
use super::*;
use crate::document::{Plate, PlateFor, Stage, WeightKnown};

const HEAD: &str = "\"format\": \"standfast-check\", \"version\": 1";

fn refused(text: &str) -> String {
    Document::from_json(text).expect_err(text).to_string()
}

#[test]
fn a_document_survives_writing_and_reading() {
    let mut doc = Document { note: "x".to_owned(), ..Document::default() };
    doc.truck.wheelbase_m = Some(1.35);
    doc.truck.mast.stages.push(Stage { mass_kg: Some(150.0), ratio: None });
    doc.truck.plate = Some(Plate { issued_for: Some(PlateFor::Forks), ..Plate::default() });
    doc.load.weight_known = Some(WeightKnown::Note);
    assert_eq!(Document::from_json(&doc.to_json()), Ok(doc.clone()));
    assert_eq!(Document::from_json(&format!("\u{feff}{}", doc.to_json())), Ok(doc), "marked by an editor");
}

#[test]
fn what_is_not_ours_is_refused_with_its_name() {
    assert!(refused("").contains("line 1"));
    assert!(refused(&format!("{{{HEAD}, \"load\": {{\"mass_kg\": 1e999}}}}")).contains("number out of range"));
    assert!(refused("{\"format\": \"standfast-check\", \"version\": 4}").contains("newer"));
    assert!(refused("{\"format\": \"standfast-check\"}").contains("version"));
    assert!(refused("{\"format\": \"standfast-check\", \"version\": 0}").contains("version 0"));
    assert!(refused("{\"format\": \"standfast-check\", \"version\": -1}").contains("version"));
    assert!(refused("{\"format\": \"standfast-check\", \"version\": 1.5}").contains("version"));
    assert!(refused("{\"format\": \"other\", \"version\": 1}").contains("other"));
    assert!(refused("[1, 2]").contains("format"));
    assert!(refused(&format!("{{{HEAD}, \"colour\": 3}}")).contains("colour"));
    assert!(refused(&format!("{{{HEAD}, \"truck\": {{\"wheels\": \"five\"}}}}")).contains("truck.wheels: unknown"));
    let twice = format!("{{{HEAD}, \"load\": {{\"mass_kg\": 1, \"mass_kg\": 2}}}}");
    assert!(refused(&twice).contains("load.mass_kg: `mass_kg` is there twice"));
    assert!(refused(&format!("{{{HEAD}}} trailing")).contains("trailing"));
    assert!(refused(&"[".repeat(5000)).contains("recursion"));
}

/// A map would keep the last of two: which one was meant, nobody knows.
#[test]
fn a_key_of_a_map_may_not_stand_twice_either() {
    let known = "\"known\": {\"truck.tread_m\": {\"tolerance\": 0.1}, \"truck.tread\\u005fm\": {\"tolerance\": 0.2}}";
    assert!(refused(&format!("{{{HEAD}, {known}}}")).contains("is there twice"));
    let seen = "\"checklist\": {\"tyres\": \"no\", \"tyres\": \"yes\"}";
    assert!(refused(&format!("{{{HEAD}, {seen}}}")).contains("checklist.tyres: `tyres` is there twice"));
}

/// The types would read a list as an object, field by field, and an object as the choice it names.
#[test]
fn lists_and_objects_stand_where_they_belong() {
    let at = |field: &str| refused(&format!("{{{HEAD}, {field}}}"));
    assert_eq!(at("\"truck\": []"), "truck: there is a list where none belongs");
    assert_eq!(at("\"truck\": [\"Blue\"]"), "truck: there is a list where none belongs");
    assert_eq!(at("\"truck\": {\"attachment\": []}"), "truck.attachment: there is a list where none belongs");
    assert_eq!(
        at("\"truck\": {\"mast\": {\"stages\": [[]]}}"),
        "truck.mast.stages[0]: there is a list where none belongs"
    );
    assert_eq!(at("\"known\": {\"rows\": []}"), "known.rows: there is a list where none belongs");
    assert_eq!(at("\"truck\": {\"wheels\": {\"three\": null}}"), "truck.wheels: there is an object where none belongs");
    assert_eq!(
        at("\"checklist\": {\"tyres\": {\"yes\": null}}"),
        "checklist.tyres: there is an object where none belongs"
    );
    assert_eq!(
        at("\"load\": {\"trace\": {\"outline\": [{}]}}"),
        "load.trace.outline[0]: there is an object where none belongs"
    );
    // Of somebody else's file it is said that it is one, whatever stands in it.
    assert!(refused("{\"format\": \"other\", \"a\": [{\"b\": {}}]}").contains("other"));
    assert!(refused("{\"a\": [{\"b\": {}}]}").contains("no `format`"));
    assert!(refused("[[{}]]").contains("no `format`"));
}

#[test]
fn what_no_person_entered_is_refused() {
    let rows = vec!["{}"; MOST_ROWS + 1].join(",");
    let text = format!("{{{HEAD}, \"truck\": {{\"plate\": {{\"rows\": [{rows}]}}}}}}");
    assert!(refused(&text).contains("truck.plate.rows"), "{}", refused(&text));
    let text = format!("{{{HEAD}, \"truck\": {{\"plate\": {{\"rows\": [{}]}}}}}}", &rows[3..]);
    let read = Document::from_json(&text).expect("just short enough");
    assert_eq!(read.truck.plate.map(|p| p.rows.len()), Some(MOST_ROWS));
    let text = format!("{{{HEAD}, \"note\": \"{}\"}}", "n".repeat(LONGEST_TEXT + 1));
    assert_eq!(refused(&text), format!("note: a text of more than {LONGEST_TEXT} bytes"));
    let keys: Vec<_> = (0..=MOST_ROWS).map(|k| format!("\"k{k}\": {{}}")).collect();
    assert!(refused(&format!("{{{HEAD}, \"known\": {{{}}}}}", keys.join(","))).starts_with("known.k2000: "));
    let large = " ".repeat(LARGEST + 1);
    assert_eq!(Document::from_json(&large), Err(FileError::TooLarge { bytes: LARGEST + 1, most: LARGEST }));
}

#[test]
fn a_place_is_named_by_its_path() {
    let text = "{\"a\": {\"b\": [1, {\"c\\\"}\": \"x,]\"},\n 7], \"d\": 2}, \"e\": [[], [3]]}";
    let at = |what: &str| {
        let k = text.find(what).expect("there") + what.len();
        let line = text[..k].matches('\n').count() + 1;
        place(text, line, k - text[..k].rfind('\n').map_or(0, |n| n + 1))
    };
    assert_eq!(at("1"), "a.b[0]");
    assert_eq!(at("x"), "a.b[1].c\\\"}");
    assert_eq!(at("7"), "a.b[2]");
    assert_eq!(at("2"), "a.d");
    assert_eq!(at("3"), "e[1][0]");
    assert_eq!(at("\"d\": 2}"), "a");
    assert_eq!(at("]]}"), "");
    // Nowhere, and in the middle of a letter: still an answer.
    assert_eq!((place("", 9, 9), place("{\"\u{e9}", 1, 3)), (String::new(), String::new()));
}
