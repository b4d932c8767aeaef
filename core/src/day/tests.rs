use super::*;
use crate::document::{Known, Load};
use crate::example;
use crate::report::assess;

fn record(load: Load) -> LoadRecord {
    LoadRecord { load, ..LoadRecord::default() }
}

/// Every example's load on every example's truck, and heavier.
#[test]
fn each_line_is_what_is_said_of_that_load_alone() {
    let examples = [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD].map(example::document);
    let mut loads = Vec::new();
    for document in &examples {
        for factor in [0.5, 1.0, 1.6] {
            let mut load = document.load.clone();
            load.mass_kg = load.mass_kg.map(|m| factor * m);
            let known = document.known.clone();
            loads.push(LoadRecord { load, known, ..LoadRecord::default() });
        }
    }
    let mut states = std::collections::BTreeSet::new();
    for document in &examples {
        for (line, record) in check(document, &loads).iter().zip(&loads) {
            let report = assess(&with_load(document, record));
            assert_eq!(line.name, record.load.name);
            match (&line.answer, report.assessment) {
                (Ok(answer), Some(alone)) => {
                    let governing = alone.steps.iter().find(|s| s.id == alone.governing_step).expect("a step");
                    assert_eq!((answer.state, &answer.reason), (alone.verdict.state, &alone.verdict.governing.reason));
                    assert_eq!(answer.others, alone.verdict.others.len());
                    assert_eq!((answer.allowed, answer.step), (alone.plate.allowed, alone.governing_step));
                    assert_eq!(answer.load_centre, alone.plate.need.load_centre_worst);
                    assert_eq!((answer.used, answer.hanging), (governing.used.worst, alone.plate.hanging));
                    assert!(answer.assumed.iter().all(|a| alone.assumed.contains(a)));
                    states.insert(answer.state);
                }
                (Err(problems), None) => assert_eq!(*problems, report.problems),
                _ => panic!("{line:?}"),
            }
        }
    }
    assert_eq!(states.len(), 3, "{states:?}");
}

#[test]
fn a_load_brings_its_own_tolerances_and_nothing_else_does() {
    let mut document = example::document(example::THREE_WHEEL);
    let known = |tolerance| Known { by: None, tolerance: Some(tolerance) };
    document.known.insert("truck.tread_m".to_owned(), known(0.01));
    document.known.insert("load.mass_kg".to_owned(), known(50.0));
    let mut load = record(document.load.clone());
    load.known.insert("load.length_m".to_owned(), known(0.1));
    load.known.insert("truck.wheelbase_m".to_owned(), known(0.5));
    let with = with_load(&document, &load);
    assert_eq!(with.known.keys().map(String::as_str).collect::<Vec<_>>(), ["load.length_m", "truck.tread_m"]);
    assert_eq!((with.truck, with.lift, with.drive), (document.truck, document.lift, document.drive));
}

#[test]
fn what_is_missing_is_said_of_the_load_it_is_missing_of() {
    let document = example::document(example::THREE_WHEEL);
    let whole = record(document.load.clone());
    let mut bad = whole.clone();
    bad.load.length_m = Some(f64::NAN);
    let lines = check(&document, &[whole.clone(), bad, record(Load::default()), whole]);
    assert!(lines[0].answer.is_ok() && lines[3] == lines[0]);
    assert!(lines[1].answer.as_ref().is_err_and(|p| p.iter().all(|p| p.place.to_string() == "load.length_m")));
    assert!(lines[2].answer.as_ref().is_err_and(|p| p.len() >= 4) && lines[2].mass.is_none());
    // Without a truck every load has the truck's problems.
    assert!(check(&Document::default(), &[record(document.load)])[0].answer.is_err());
    assert_eq!(check(&Document::default(), &[]), []);
}
