//! The published schema is the types', and a validator of somebody else's agrees with our reader.

use crate::good;
use jsonschema::Validator;
use proptest::prelude::*;
use serde_json::{Value, json};
use standfast_core::document::{LISTS, OBJECTS, POINTS};
use standfast_core::{book, example, schema};
use standfast_tests::draw::Draws;
use standfast_tests::{books, walk};
use std::sync::LazyLock;

static VALIDATOR: LazyLock<Validator> = LazyLock::new(|| {
    let schema: Value = serde_json::from_str(PUBLISHED).expect("JSON");
    jsonschema::validator_for(&schema).expect("a schema")
});

const PUBLISHED: &str = include_str!("../../../core/schema/standfast.schema.json");

/// Both take it, or both refuse it.
#[track_caller]
fn agreed(value: &Value) -> bool {
    let ours = book::open(&value.to_string());
    let theirs = VALIDATOR.is_valid(value);
    assert_eq!(ours.is_ok(), theirs, "{:?}: {:.2000}", ours.err(), value.to_string());
    theirs
}

/// To publish it anew: `cargo run -p standfast-core --features schema --example schema > core/schema/standfast.schema.json`.
#[test]
fn the_published_schema_is_the_types_own() {
    assert_eq!(schema::text(), PUBLISHED);
    let schema: Value = serde_json::from_str(PUBLISHED).expect("JSON");
    assert!(jsonschema::meta::is_valid(&schema));
    assert_eq!(schema["$schema"], "https://json-schema.org/draft/2020-12/schema");
    assert_eq!(PUBLISHED.matches("://").count(), 1, "no address but that of the draft");
}

#[test]
fn good_files_are_taken_by_both() {
    for text in [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD, example::ATTACHMENTS] {
        assert!(agreed(&serde_json::from_str(text).expect("JSON")));
    }
    for file in good() {
        assert!(agreed(&file));
    }
}

proptest! {
    #[test]
    fn random_files_are_taken_by_both(mut draws in Draws::any(), family in 0..7_u64) {
        let book = books::book(&mut draws, family);
        prop_assert!(agreed(&serde_json::to_value(&book).expect("JSON")));
        prop_assert!(agreed(&serde_json::to_value(books::check(&mut draws)).expect("JSON")));
    }
}

/// Every value in turn is another kind of thing, or gone; every object in turn has a field more.
#[test]
fn bad_files_are_refused_by_both() {
    let instead = [
        json!(null),
        json!(true),
        json!(7),
        json!(-1),
        json!(1.5),
        json!(1e300),
        json!("x"),
        json!(""),
        json!([]),
        json!({}),
        json!([[]]),
        json!([1, 2]),
        json!({"id": "x"}),
    ];
    let (mut taken, mut refused) = (0, 0);
    for file in good() {
        let mut paths = Vec::new();
        walk::values(&file, "", &mut |path, _| paths.push(path.to_owned()));
        let mut count = |value: &Value| *(if agreed(value) { &mut taken } else { &mut refused }) += 1;
        for path in &paths {
            for other in &instead {
                let mut with = file.clone();
                *with.pointer_mut(path).expect("a value") = other.clone();
                count(&with);
            }
            let (parent, key) = path.rsplit_once('/').unwrap_or_default();
            let mut without = file.clone();
            if let Some(Value::Object(map)) = without.pointer_mut(parent)
                && map.remove(&key.replace("~1", "/").replace("~0", "~")).is_some()
            {
                count(&without);
            }
        }
        for object in walk::objects(&file) {
            let mut with = file.clone();
            with.pointer_mut(&object)
                .and_then(Value::as_object_mut)
                .expect("an object")
                .insert("colour".into(), json!(1));
            count(&with);
        }
    }
    eprintln!("{refused} refused by both, {taken} taken by both");
    assert!(refused > 5_000 && taken > 500);
}

/// The reader's own lists of what is a list, points or an object are those of the types.
#[test]
fn the_reader_knows_every_list_and_object() {
    let schema: Value = serde_json::from_str(PUBLISHED).expect("JSON");
    let (mut lists, mut points, mut objects, mut leaves) = (vec![], vec![], vec![], vec![]);
    let is = |value: &Value, kind: &str| {
        value["type"] == kind || value["type"].as_array().is_some_and(|several| several.contains(&json!(kind)))
    };
    // Through a reference, and through what may be null.
    let meant = |value: &Value| {
        let value = value["anyOf"].as_array().and_then(|list| list.first()).unwrap_or(value);
        let name = value["$ref"].as_str().and_then(|r| r.rsplit('/').next());
        name.map_or(value.clone(), |name| schema["$defs"][name].clone())
    };
    for def in schema["$defs"].as_object().expect("types").values() {
        for (name, field) in def["properties"].as_object().into_iter().flatten() {
            let field = meant(field);
            let name = name.clone();
            if matches!(name.as_str(), "known" | "checklist") {
                assert!(is(&field, "object") && field["additionalProperties"].is_object());
            } else if is(&field, "array") {
                if is(&meant(&field["items"]), "object") { lists.push(name) } else { points.push(name) }
            } else if is(&field, "object") {
                objects.push(name);
            } else {
                leaves.push((name, field["oneOf"].is_array()));
            }
        }
    }
    for (found, own) in [(&mut lists, &LISTS[..]), (&mut points, &POINTS), (&mut objects, &OBJECTS)] {
        found.sort();
        found.dedup();
        let mut own = own.to_vec();
        own.sort_unstable();
        assert_eq!(*found, own);
        // A text may be called like an object elsewhere: the types refuse an object there. A choice may not, but for `trace.truck`.
        let one = |leaf: &&(String, bool)| leaf.1 && own.contains(&leaf.0.as_str());
        let choices: Vec<_> = leaves.iter().filter(one).collect();
        assert!(choices.iter().all(|(leaf, _)| leaf == "truck") && choices.len() <= 1, "{choices:?}");
    }
    assert!(leaves.len() > 100 && leaves.iter().filter(|(_, choice)| *choice).count() > 10);
}

/// An object with the name of a choice is not that choice.
#[test]
fn a_choice_is_a_text() {
    for file in good() {
        let mut texts = Vec::new();
        walk::values(&file, "", &mut |path, v| texts.extend(v.as_str().map(|text| (path.to_owned(), text.to_owned()))));
        for (path, text) in texts {
            let mut with = file.clone();
            *with.pointer_mut(&path).expect("a text") = json!({ text: null });
            assert!(!agreed(&with), "{path}");
        }
    }
}

#[test]
fn choices_versions_and_lengths() {
    let check = |rest: Value| {
        let mut file = json!({"format": "standfast-check", "version": 3});
        file.as_object_mut().expect("an object").extend(rest.as_object().expect("an object").clone());
        agreed(&file)
    };
    assert!(check(json!({})));
    assert!(!check(json!({"format": "standfast-book"})), "a book has no version 3");
    assert!(!check(json!({"format": "standfast"})));
    assert!(!check(json!({"version": 0})) && !check(json!({"version": 4})) && !check(json!({"version": "3"})));
    assert!(check(json!({"version": 1})));
    assert!(!check(json!({"truck": {"wheels": "five"}})) && !check(json!({"truck": {"wheels": "Three"}})));
    assert!(check(json!({"checklist": {"tyres": "not_there"}})));
    assert!(!check(json!({"checklist": {"tyres": "maybe"}})) && !check(json!({"checklist": {"horn": "yes"}})));
    assert!(check(json!({"known": {"anything": {"by": "tape"}}})), "whose figure it is, the page asks");
    assert!(!check(json!({"known": {"anything": {"by": "hearsay"}}})));
    let rows = |n: usize| json!({"truck": {"plate": {"rows": vec![json!({}); n]}}});
    assert!(check(rows(2000)) && !check(rows(2001)));
    assert!(check(json!({"note": "n".repeat(200_000)})) && !check(json!({"note": "n".repeat(200_001)})));
    let known =
        |n: usize| json!({"known": (0..n).map(|k| (k.to_string(), json!({}))).collect::<serde_json::Map<_, _>>()});
    assert!(check(known(2000)) && !check(known(2001)));
    for id in ["", " \t", "\u{a0}"] {
        let record = json!({"id": id, "name": "x"});
        assert!(!agreed(&json!({"format": "standfast-book", "version": 1, "trucks": [record]})));
    }
    for other in [json!(null), json!([]), json!(1), json!("standfast-check"), json!({})] {
        assert!(!agreed(&other));
    }
}

/// What no JSON Schema can say, and our reader holds all the same: and the only places where they differ.
#[test]
fn where_they_differ() {
    let only_theirs = |text: &str| {
        assert!(book::open(text).is_err(), "{text}");
        assert!(VALIDATOR.is_valid(&serde_json::from_str(text).expect("JSON")), "{text}");
    };
    // A key twice: most readers keep the last and never tell.
    only_theirs("{\"format\": \"standfast-check\", \"version\": 3, \"version\": 3}");
    // Two records with one id.
    let two = "[{\"id\": \"a\", \"name\": \"x\"}, {\"id\": \"a\", \"name\": \"y\"}]";
    only_theirs(&format!("{{\"format\": \"standfast-book\", \"version\": 1, \"trucks\": {two}}}"));
    // To a schema, 3.0 is a whole number.
    only_theirs("{\"format\": \"standfast-check\", \"version\": 3.0}");
    only_theirs("{\"format\": \"standfast-check\", \"version\": 3, \"load\": {\"parts\": [{\"cut_from\": 0.0}]}}");
    // A text is measured in bytes here, in letters there.
    let long = "\u{fc}".repeat(150_000);
    only_theirs(&format!("{{\"format\": \"standfast-check\", \"version\": 3, \"note\": \"{long}\"}}"));
    // A number that no float holds cannot even be shown to the validator.
    let huge = "{\"format\": \"standfast-check\", \"version\": 3, \"load\": {\"mass_kg\": 1e999}}";
    assert!(book::open(huge).is_err() && serde_json::from_str::<Value>(huge).is_err());
}
