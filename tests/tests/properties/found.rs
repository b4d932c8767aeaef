//! What the properties found, each in its smallest form, by its name.

use crate::worked;
use standfast_core::document::{Document, WeightKnown};
use standfast_core::example;
use standfast_core::step::{Step, StepId};

fn four_wheel(change: impl FnOnce(&mut Document)) -> Document {
    let mut document = example::document(example::FOUR_WHEEL);
    change(&mut document);
    document
}

/// The corner that is worst for the moment has nobody on the seat; without the operator's weight, which
/// stood nearer to the front line than the rest, the line of action runs further inside. So the distance
/// at that corner is greater than the one stated: it is not the worst distance.
#[test]
fn a_worst_distance_is_not_that_of_the_worst_moment() {
    let document = four_wheel(|d| {
        (d.load.mass_kg, d.load.weight_known) = (Some(150.0), Some(WeightKnown::Scale));
        (d.load.length_m, d.load.width_m, d.load.height_m) = (Some(0.4), Some(0.4), Some(0.2));
        (d.truck.operator_kg, d.lift.heel_gap_m) = (Some(120.0), Some(0.0));
        d.truck.mast.give_deg = Some(0.0);
    });
    let (scenario, balance, placed) = worked(&document);
    let step = Step::new(&scenario, &balance, &placed, StepId::TakeUp);
    for standing in &step.standing {
        let (line, distance) = (standing.line.id, step.distance(&standing.line));
        assert!(distance.worst <= distance.nominal + 1e-9, "{line:?}: {distance:?}");
    }
}

/// The corner that leaves the least moment may do so with less on both sides of the balance: then the
/// share used at that corner is less than the one stated, and it is not the worst share.
#[test]
fn a_worst_share_is_not_that_of_the_worst_moment() {
    let mut document = example::document(example::THREE_WHEEL);
    let (truck, load, lift) = (&mut document.truck, &mut document.load, &mut document.lift);
    (truck.operator_kg, truck.cg_height_m, truck.mast.play_deg) = (Some(0.0), Some(0.5), Some(0.0));
    (load.mass_kg, load.weight_known) = (Some(150.0), None);
    (load.length_m, load.width_m, load.height_m) = (Some(0.4), Some(1.6), Some(1.75));
    (load.cg_from_heel_m, load.cg_left_m, load.cg_above_m) = (Some(0.1), Some(-0.32), Some(1.2));
    (lift.heel_gap_m, lift.offset_m, lift.take_up_m) = (Some(0.0), Some(-0.12), Some(0.0));
    let (scenario, balance, placed) = worked(&document);
    for id in StepId::ALL {
        for test in Step::new(&scenario, &balance, &placed, id).tests {
            let (line, share) = (test.line, test.share);
            assert!(share.worst >= share.nominal - 1e-9, "{id:?} {:?} {line:?}: {share:?}", test.test);
        }
    }
}
