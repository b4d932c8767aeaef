//! How long one step and one whole check take.
//!
//! `cargo bench -p standfast-tests --bench step`. A page works through the whole move for every
//! figure that is dragged.

#![allow(missing_docs, reason = "the macros of the harness make functions without any")]

use criterion::{Criterion, criterion_group, criterion_main};
use standfast_core::balance::Balance;
use standfast_core::body::Placed;
use standfast_core::document::{Document, GivenAs};
use standfast_core::example;
use standfast_core::report::{assess, find_load};
use standfast_core::scenario::Scenario;
use standfast_core::step::{Step, StepId};
use standfast_core::whole::Whole;
use standfast_tests::draw::Draws;
use standfast_tests::parts;
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
        let balance = Balance::of(&scenario.truck, &scenario.doubts);
        let placed = Placed::of(&scenario.load, &scenario.lift);
        for id in [StepId::Travel, StepId::RaisedForward] {
            group.bench_function(format!("{id:?}, {name}"), |b| {
                b.iter(|| Step::new(black_box(&scenario), black_box(&balance), black_box(&placed), id));
            });
        }
    }
    group.finish();
}

/// All steps with everything uncertain, the blades, the plate and the verdict; the entries checked and the
/// balance settled before.
fn whole_moves(c: &mut Criterion) {
    let mut group = c.benchmark_group("whole move, worst corner");
    for (name, mut document) in trucks() {
        // Ten steps: no ramp, no bend without a load. And every step there is.
        document.drive.corner_empty = Some(false);
        for all in [false, true] {
            if all {
                document.drive.corner_empty = Some(true);
                (document.drive.ramp_pct, document.drive.cross_fall_pct) = (Some(6.0), Some(2.0));
            }
            let Ok(scenario) = Scenario::from_document(&document) else { continue };
            let balance = Balance::of(&scenario.truck, &scenario.doubts);
            let steps = Whole::of(&scenario, &balance).steps.len();
            group.bench_function(format!("{steps} steps, {name}"), |b| {
                b.iter(|| Whole::of(black_box(&scenario), black_box(&balance)));
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

/// Editing a load of a hundred parts must keep up with a finger.
fn a_hundred_parts(c: &mut Criterion) {
    let mut document = example::document(example::FOUR_WHEEL);
    let mut draws = Draws::seeded_row(7, 4000);
    document.load.given_as = GivenAs::Parts;
    document.load.parts = parts::parts(&mut draws, 75, 12.0);
    let mut group = c.benchmark_group(format!("{} parts", document.load.parts.len()));
    group.bench_function("found alone", |b| b.iter(|| find_load(black_box(&document))));
    group.bench_function("assessed", |b| b.iter(|| assess(black_box(&document))));
    group.finish();
}

criterion_group!(benches, steps, whole_moves, whole_checks, a_hundred_parts);
criterion_main!(benches);
