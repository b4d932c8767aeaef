//! A day's list at once.

use standfast_core::book::LoadRecord;
use standfast_core::{day, example};
use standfast_tests::draw::Draws;
use standfast_tests::sensible;
use std::time::Instant;

#[test]
fn two_hundred_loads_are_quick() {
    let document = example::document(example::FOUR_WHEEL);
    let mut draws = Draws::seeded(1);
    let loads: Vec<_> = (0..200)
        .map(|k| {
            let mut load = document.load.clone();
            load.name = format!("Load {k}");
            load.mass_kg = Some(draws.within(50.0..3000.0));
            load.length_m = Some(draws.within(0.4..2.4));
            LoadRecord { load, ..LoadRecord::default() }
        })
        .collect();
    let begun = Instant::now();
    let lines = day::check(&document, &loads);
    let took = begun.elapsed();
    let count = |state| lines.iter().filter(|l| l.answer.as_ref().is_ok_and(|a| a.state == state)).count();
    use standfast_core::verdict::State::{Go, Hold, NoGo};
    println!("200 loads: {took:?}; {} go, {} hold, {} no-go", count(Go), count(Hold), count(NoGo));
    assert!(count(Go) > 10 && count(NoGo) > 10);
    assert!(took.as_secs_f64() < 2.0, "{took:?}");
}

/// Whatever a document says: no panic, and a line for every load.
#[test]
fn any_document_with_any_loads() {
    for seed in 0..300 {
        let document = sensible::document(&mut Draws::seeded(seed));
        let loads: Vec<_> = (0..3)
            .map(|k| {
                let other = sensible::document(&mut Draws::seeded(1000 + 3 * seed + k));
                LoadRecord { load: other.load, known: other.known, ..LoadRecord::default() }
            })
            .collect();
        let lines = day::check(&document, &loads);
        assert_eq!(lines.len(), loads.len());
        for (line, load) in lines.iter().zip(&loads) {
            let report = standfast_core::report::assess(&day::with_load(&document, load));
            let alone = report.assessment.map(|a| (a.verdict.state, a.verdict.governing.reason));
            assert_eq!(line.answer.as_ref().ok().map(|a| (a.state, a.reason.clone())), alone, "{seed}");
        }
    }
}
