//! How long one step and one whole check take.
//!
//! `cargo bench -p standfast-core`. A page works through five steps for every figure that is dragged.

#![allow(missing_docs, reason = "the macros of the harness make functions without any")]

use criterion::{Criterion, criterion_group, criterion_main};
use standfast_core::balance::Balance;
use standfast_core::body::Placed;
use standfast_core::document::Document;
use standfast_core::example;
use standfast_core::report::assess;
use standfast_core::scenario::Scenario;
use standfast_core::step::{Step, StepId};
use std::hint::black_box;

/// A truck whose centre is known, and one where every line has a set of corners to take its worst from.
fn trucks() -> [(&'static str, Document); 3] {
    let mut unknown = example::document(example::THREE_WHEEL);
    (unknown.truck.front_axle_kg, unknown.truck.steer_axle_kg) = (None, None);
    [
        ("three wheels, height inferred", example::document(example::THREE_WHEEL)),
        ("four wheels, all known", example::document(example::FOUR_WHEEL)),
        ("three wheels, balance inferred", unknown),
    ]
}

fn steps(c: &mut Criterion) {
    let mut group = c.benchmark_group("step");
    for (name, document) in trucks() {
        let Ok(scenario) = Scenario::from_document(&document) else { continue };
        let balance = Balance::of(&scenario.truck);
        let placed = Placed::of(&scenario.load, &scenario.lift);
        for id in [StepId::Travel, StepId::RaisedForward] {
            group.bench_function(format!("{id:?}, {name}"), |b| {
                b.iter(|| Step::new(black_box(&scenario), black_box(&balance), black_box(&placed), id));
            });
        }
    }
    group.finish();
}

fn whole_checks(c: &mut Criterion) {
    let mut group = c.benchmark_group("assess");
    for (name, document) in trucks() {
        group.bench_function(name, |b| b.iter(|| assess(black_box(&document))));
    }
    group.finish();
}

criterion_group!(benches, steps, whole_checks);
criterion_main!(benches);
