//! What the search found beyond the worst, each in its smallest form, by its name.

use super::{Case, tie};
use standfast_core::document::{Document, Known};
use standfast_core::example;
use standfast_core::step::{Step, StepId};
use standfast_core::support::LineId;
use standfast_tests::truth::{SetUp, Truth};

/// The moment with one figure at an end of its range and all else as stated, beside the worst.
fn beside(document: Document, id: StepId, line: LineId, figure: &str, high: bool) -> (f64, f64, Truth) {
    let case = Case::from(0, document);
    let step = Step::new(&case.scenario, &case.balance, &case.placed, id);
    let mut truth = case.stated(id, SetUp::Standing);
    truth.whole = case.balance.whole[0];
    let figures = case.figures(id, SetUp::Standing);
    let figure = figures.iter().find(|f| f.name == figure).expect("it is uncertain");
    figure.set(&mut truth, if high { figure.range.hi } else { figure.range.lo });
    let worst = step.standing.iter().find(|s| s.line.id == line).expect("a line").moment.worst;
    (truth.moment(line, truth.pull()), worst, truth)
}

/// All that is entered by a plate, so that it is exact, but for one figure.
fn exact_but(document: &mut Document, path: &str, tolerance: f64) {
    for place in standfast_core::place::Place::all_numbers(document) {
        if place.get(document).is_some() && place.field.takes_tolerance() {
            document.known.insert(place.to_string(), Known { by: None, tolerance: Some(0.0) });
        }
    }
    document.known.insert(path.to_owned(), Known { by: None, tolerance: Some(tolerance) });
}

/// The length of fork extensions may be out like any other: their own centre goes with it.
#[test]
fn extensions_may_be_longer_than_stated() {
    let mut document = example::document(example::THREE_WHEEL);
    let truck = &mut document.truck;
    (truck.forks.extension_m, truck.forks.extension_kg) = (Some(1.6), Some(200.0));
    (truck.cg_height_m, truck.operator_kg, truck.mast.give_deg) = (Some(0.6), Some(0.0), Some(0.0));
    (truck.mast.outer_kg, truck.forks.carriage_kg, truck.forks.pair_kg) = (Some(10.0), Some(5.0), Some(5.0));
    truck.mast.stages.iter_mut().for_each(|s| s.mass_kg = Some(10.0));
    exact_but(&mut document, "truck.forks.extension_m", 0.5);
    let (found, worst, truth) = beside(document, StepId::BackOut, LineId::Front, "extension's length", true);
    assert!(found >= worst - tie(&truth), "{found} under {worst}");
}

/// On level ground a higher pivot makes the line to it steeper, and so a little nearer to all that hangs over it.
#[test]
fn a_higher_pivot_is_nearer_on_level_ground() {
    let mut document = example::document(example::FOUR_WHEEL);
    let truck = &mut document.truck;
    (truck.axle.pivot_height_m, truck.operator_kg, truck.mast.give_deg) = (Some(0.4), Some(0.0), Some(0.0));
    exact_but(&mut document, "truck.axle.pivot_height_m", 0.3);
    document.truck.mast.play_deg = Some(0.0);
    let (found, worst, truth) = beside(document, StepId::TakeUp, LineId::Left, "axle pivot", true);
    assert!(found >= worst - tie(&truth), "{found} under {worst}");
}
