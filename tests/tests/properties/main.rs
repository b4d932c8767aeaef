//! What must hold for every truck, load and lift, tried on random ones.

mod blades;
mod documents;
mod drive;
mod found;
mod frame;
mod fuzz;
mod loads;
mod order;
mod sheet;
mod slopes;
mod symmetry;
mod wheels;
mod worst;

use glam::DVec3;
use proptest::prelude::*;
use standfast_core::balance::Balance;
use standfast_core::body::{Body, BodyId, Placed};
use standfast_core::document::Document;
use standfast_core::field::Field;
use standfast_core::report::{Assessment, assess};
use standfast_core::scenario::Scenario;
use standfast_core::step::StepId;
use standfast_core::support::Line;

/// The scenario of a document that is known to be without problems.
#[track_caller]
fn scenario(document: &Document) -> Scenario {
    Scenario::from_document(document).unwrap_or_else(|p| panic!("{p:#?}"))
}

/// Everything that a step is made from.
fn worked(document: &Document) -> (Scenario, Balance, Placed) {
    let scenario = scenario(document);
    let balance = Balance::of(&scenario.truck, &scenario.doubts);
    let placed = Placed::of(&scenario.load, &scenario.lift);
    (scenario, balance, placed)
}

#[track_caller]
fn assessment(document: &Document) -> Assessment {
    let report = assess(document);
    assert_eq!(report.problems, []);
    report.assessment.expect("no problems, so an assessment")
}

/// Whether the load's line of action runs right through an edge of what carries it, as a round one's does that
/// lies on its lowest line: there rounding decides.
fn on_edge(a: &Assessment) -> bool {
    let cases = a.steps.iter().flat_map(|s| &s.seat).flat_map(|s| &s.cases);
    cases.flat_map(|c| &c.topple).any(|t| t.margin.nominal.get().abs() < 1e-9 || t.margin.worst.get().abs() < 1e-9)
}

fn steps() -> impl Strategy<Value = StepId> {
    prop::sample::select(StepId::ALL.to_vec())
}

/// Slopes, bends and braking as a truck may meet them.
fn fields() -> impl Strategy<Value = Field> {
    (-0.3..0.3, -0.3..0.3, -4.0..4.0, -4.0..4.0).prop_map(|(grade, fall, ax, ay)| Field::new(grade, fall, ax, ay))
}

/// A point about where a truck's masses are, m.
fn places() -> impl Strategy<Value = DVec3> {
    (-2.0..2.0, -1.0..1.0, 0.0..5.0).prop_map(|(x, y, z)| DVec3::new(x, y, z))
}

/// A pivoting axle stays on the ground when the truck goes over sideways.
fn counts(body: &Body, line: &Line) -> bool {
    !(line.leaves_axle && body.id == BodyId::SteerAxle)
}

fn close(a: f64, b: f64, scale: f64) -> bool {
    (a - b).abs() <= 1e-9 * scale.max(a.abs()).max(1.0)
}
