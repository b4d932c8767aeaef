//! Just inside a limit it passes, just outside it fails: entered, and assessed again.

use crate::entered;
use standfast_core::limit::{self, Limit, Reach};
use standfast_core::whole::Whole;
use standfast_tests::draw::Draws;
use standfast_tests::sensible;
use std::collections::BTreeMap;

/// So much of a figure is a hair's breadth.
fn hair(value: f64) -> f64 {
    1e-6 * value.abs().max(1.0)
}

/// A value a tenth of a hair inside a limit (what is entered of a length is moved from a figure without its
/// last digits), and one a hair outside.
fn beside(limit: Limit, value: f64) -> (f64, f64) {
    let out = if limit == Limit::BatteryLeast { -hair(value) } else { hair(value) };
    (value - 0.1 * out, value + out)
}

#[derive(Default)]
struct Seen {
    at: usize,
    beyond: usize,
    never: usize,
}

fn tell(name: &str, seen: &BTreeMap<Limit, Seen>) -> usize {
    for (limit, s) in seen {
        println!("{name} {limit:?}: {} limits, {} beyond what is asked, {} never", s.at, s.beyond, s.never);
    }
    seen.values().map(|s| s.at).sum()
}

/// Over 700 random moves: every limit of every step.
#[test]
fn of_each_step() {
    let mut seen: BTreeMap<Limit, Seen> = BTreeMap::new();
    for seed in 0..700 {
        let document = sensible::document(&mut Draws::seeded(40_000 + seed));
        let Some((scenario, balance)) = entered::scenario(&document) else { continue };
        let whole = Whole::of(&scenario, &balance);
        let limits = limit::find(&scenario, &balance, &whole, &document);
        for (step, list) in whole.steps.iter().zip(&limits.steps) {
            for solved in list.iter().filter(|s| entered::can(&document, s.what)) {
                let stated = solved.stated.map(|s| s.get());
                let passes = |value: f64| {
                    let (scenario, balance) = entered::scenario(&entered::at(&document, solved.what, stated, value))?;
                    Some(entered::step_passes(&scenario, &Whole::of(&scenario, &balance), step.id, solved.what))
                };
                let told = || format!("seed {seed}: {:?} {solved:?}", step.id);
                let count = seen.entry(solved.what).or_default();
                match solved.reach {
                    Reach::At { value, .. } => {
                        let (inside, outside) = beside(solved.what, value.get());
                        assert_ne!(passes(inside), Some(false), "{}", told());
                        assert_ne!(passes(outside), Some(true), "just outside, {}", told());
                        count.at += 1;
                    }
                    Reach::Beyond { value } => {
                        assert_ne!(passes(beside(solved.what, value.get()).0), Some(false), "{}", told());
                        count.beyond += 1;
                    }
                    Reach::Never => count.never += 1,
                }
            }
        }
    }
    assert!(tell("step", &seen) > 5_000, "too few to say anything");
    assert_eq!(seen.len(), Limit::ALL.len());
}

/// Over 1,500 random moves that mostly go: every limit of the whole move.
#[test]
fn of_the_whole_move() {
    let mut seen: BTreeMap<Limit, Seen> = BTreeMap::new();
    for seed in 0..1_500 {
        let document = entered::mild(&mut Draws::seeded(90_000 + seed));
        let Some((scenario, balance)) = entered::scenario(&document) else { continue };
        let whole = Whole::of(&scenario, &balance);
        for what in Limit::ALL.into_iter().filter(|what| entered::can(&document, *what)) {
            let solved = limit::of_move(what, &scenario, &balance, &whole, &document);
            let stated = solved.stated.map(|s| s.get());
            let goes = |value: f64| {
                let (scenario, balance) = entered::scenario(&entered::at(&document, what, stated, value))?;
                Some(entered::goes(&Whole::of(&scenario, &balance), entered::left_out(what)))
            };
            let told = || format!("seed {seed}: {solved:?}");
            let count = seen.entry(what).or_default();
            match solved.reach {
                Reach::At { value, .. } => {
                    let (inside, outside) = beside(what, value.get());
                    assert_ne!(goes(inside), Some(false), "{}", told());
                    assert_ne!(goes(outside), Some(true), "just outside, {}", told());
                    count.at += 1;
                }
                Reach::Beyond { value } => {
                    assert_ne!(goes(beside(what, value.get()).0), Some(false), "{}", told());
                    count.beyond += 1;
                }
                Reach::Never => {
                    if let Some(stated) = stated {
                        assert_ne!(goes(stated), Some(true), "it goes as it is, {}", told());
                    }
                    count.never += 1;
                }
            }
        }
    }
    assert!(tell("move", &seen) > 1_000, "too few to say anything");
}
