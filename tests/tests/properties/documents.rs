//! The saved file, and problems found all at once.

use proptest::prelude::*;
use serde_json::{Value, json};
use standfast_core::document::{Document, Part, WeighPoint};
use standfast_core::place::Place;
use standfast_core::report::assess;
use standfast_core::scenario::Scenario;
use standfast_tests::draw::Draws;
use standfast_tests::{sensible, walk};
use std::collections::BTreeSet;

/// A document with something in every part, so that unknown fields can be put anywhere.
fn full(draws: &mut Draws) -> Document {
    let mut document = sensible::document(draws);
    document.truck.attachment.get_or_insert_default().name = "clamp".to_owned();
    document.truck.plate.get_or_insert_default().rows.push(Default::default());
    document.truck.mast.stages.push(Default::default());
    document.load.parts.push(Part { name: "block".to_owned(), ..Part::default() });
    document.load.trace.get_or_insert_default().outline.push([1.5, -2.5]);
    let weighing = document.load.weighing.get_or_insert_default();
    weighing.points.push(WeighPoint { reading_kg: Some(1.0), ..WeighPoint::default() });
    document
}

proptest! {
    #[test]
    fn a_document_without_problems_is_assessed(document in sensible::documents()) {
        let report = assess(&document);
        prop_assert_eq!(report.problems, []);
        prop_assert!(report.assessment.is_some());
    }

    /// With k figures out of their ranges, all k are named, wherever they stand.
    #[test]
    fn every_problem_is_named_at_once(mut document in sensible::documents(), mut draws in Draws::any(), k in 1..12) {
        let places = Place::all_numbers(&document);
        let mut wrong = BTreeSet::new();
        for _ in 0..k {
            let place = draws.one_of(&places).expect("there are places");
            let row = place.field.row();
            let bad = [row.min - 1e-6, row.max + 1e-6, row.min - 1e9, row.max * 1e12, f64::NAN, f64::INFINITY];
            *place.number(&mut document).expect("listed") = draws.one_of(&bad);
            wrong.insert(place.to_string());
        }
        let problems = Scenario::from_document(&document).expect_err("figures out of range");
        let named: Vec<String> = problems.iter().map(|p| p.place.to_string()).collect();
        for place in &wrong {
            prop_assert_eq!(named.iter().filter(|n| *n == place).count(), 1, "{} in {:?}", place, named);
        }
        prop_assert!(assess(&document).assessment.is_none());
    }

    /// Figures that are needed are asked for, all of them.
    #[test]
    fn every_missing_figure_is_named_at_once(mut document in sensible::documents(), mut draws in Draws::any()) {
        let needed: Vec<Place> =
            Place::all_numbers(&document).into_iter().filter(|p| p.field.row().required).collect();
        let mut missing = BTreeSet::new();
        for place in needed {
            if draws.chance(0.3) {
                *place.number(&mut document).expect("listed") = None;
                missing.insert(place.to_string());
            }
        }
        let named: BTreeSet<String> = match Scenario::from_document(&document) {
            Ok(_) => BTreeSet::new(),
            Err(problems) => problems.iter().map(|p| p.place.to_string()).collect(),
        };
        prop_assert!(named.is_superset(&missing), "{missing:?} in {named:?}");
        prop_assert_eq!(named.is_empty(), missing.is_empty());
    }

    /// What is written is read again, to the last bit.
    #[test]
    fn a_file_survives_writing_and_reading(mut draws in Draws::any(), any in prop::collection::vec(any::<f64>(), 60)) {
        let document = full(&mut draws);
        prop_assert_eq!(Document::from_json(&document.to_json()), Ok(document.clone()));
        let mut wild = document;
        for (place, value) in Place::all_numbers(&wild).into_iter().zip(any.iter().filter(|v| v.is_finite())) {
            *place.number(&mut wild).expect("listed") = Some(*value);
        }
        let read = Document::from_json(&wild.to_json()).expect("our own file");
        for place in Place::all_numbers(&wild) {
            let (wrote, read) = (place.get(&wild), place.get(&read));
            prop_assert_eq!(wrote.map(f64::to_bits), read.map(f64::to_bits), "{} {:?} {:?}", place, wrote, read);
        }
    }

    /// A field that does not belong is refused with its name, whatever level it stands on.
    #[test]
    fn an_unknown_field_is_refused_with_its_name(mut draws in Draws::any(), name in "[a-z]{3,12}_q") {
        let value: Value = serde_json::from_str(&full(&mut draws).to_json()).expect("our own file");
        let objects = walk::objects(&value);
        for part in ["", "/truck", "/truck/battery", "/truck/mast", "/truck/mast/stages/0", "/truck/forks",
            "/truck/attachment", "/truck/plate", "/truck/plate/rows/0", "/load", "/load/parts/0", "/load/trace",
            "/load/weighing", "/load/weighing/points/0", "/lift"]
        {
            prop_assert!(objects.iter().any(|o| o == part) || part == "/truck/forks", "{part} is not in {objects:?}");
        }
        for object in objects {
            let mut with = value.clone();
            let at = with.pointer_mut(&object).and_then(Value::as_object_mut).expect("an object");
            at.insert(name.clone(), json!(1));
            match Document::from_json(&with.to_string()) {
                Ok(_) => prop_assert!(false, "`{name}` in `{object}` was let through"),
                Err(e) => prop_assert!(e.to_string().contains(&name), "{e} does not name `{name}` in `{object}`"),
            }
        }
    }

    /// A file that was cut off is refused, never half read.
    #[test]
    fn a_file_cut_off_is_refused(mut draws in Draws::any(), part in 0.0..1.0) {
        let text = full(&mut draws).to_json();
        let end = (part * (text.len() - 1) as f64) as usize;
        prop_assert!(Document::from_json(text.get(..end).unwrap_or_default()).is_err());
    }

    /// A value of another kind is refused wherever it stands.
    #[test]
    fn a_value_of_another_kind_is_refused(mut draws in Draws::any()) {
        let value: Value = serde_json::from_str(&full(&mut draws).to_json()).expect("our own file");
        let mut leaves = Vec::new();
        walk::values(&value, "", &mut |path, v| {
            if v.is_number() || v.is_string() {
                leaves.push(path.to_owned());
            }
        });
        for leaf in leaves {
            let mut with = value.clone();
            *with.pointer_mut(&leaf).expect("a leaf") = json!([true]);
            prop_assert!(Document::from_json(&with.to_string()).is_err(), "{leaf}");
        }
    }
}
