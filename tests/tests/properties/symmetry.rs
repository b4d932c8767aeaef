//! A mirror swaps left and right, and nothing else.

use crate::{assessment, close};
use proptest::prelude::*;
use standfast_core::document::Document;
use standfast_core::report::{Assessment, LineReport, StepReport};
use standfast_core::support::LineId;
use standfast_tests::sensible;

fn mirrored(document: &Document) -> Document {
    let mut mirror = document.clone();
    for figure in [&mut mirror.lift.offset_m, &mut mirror.lift.sideshift_m, &mut mirror.load.cg_left_m] {
        *figure = figure.map(|m| -m);
    }
    mirror
}

fn other_side(id: LineId) -> LineId {
    match id {
        LineId::Front => LineId::Front,
        LineId::Left => LineId::Right,
        LineId::Right => LineId::Left,
    }
}

fn line(step: &StepReport, id: LineId) -> &LineReport {
    step.lines.iter().find(|l| l.id == id).expect("all three lines")
}

fn same(a: &Assessment, b: &Assessment) -> Result<(), TestCaseError> {
    prop_assert_eq!(a.verdict.state, b.verdict.state);
    prop_assert_eq!(a.verdict.others.len(), b.verdict.others.len());
    prop_assert_eq!(&a.forks, &b.forks);
    for (a, b) in a.steps.iter().zip(&b.steps) {
        let weight = 9.81 * a.total_mass.get();
        for (u, v) in a.bodies.iter().zip(&b.bodies) {
            prop_assert!(close(u.at.y.get(), -v.at.y.get(), 1.0) && close(u.at.x.get(), v.at.x.get(), 1.0));
        }
        prop_assert!(close(a.wheels.left.get(), b.wheels.right.get(), weight), "{:?} {:?}", a.wheels, b.wheels);
        prop_assert!(close(a.wheels.right.get(), b.wheels.left.get(), weight));
        prop_assert!(close(a.wheels.steer.get(), b.wheels.steer.get(), weight));
        for u in &a.lines {
            let v = line(b, other_side(u.id));
            for (p, q) in [(u.moment, v.moment), (u.share, v.share), (u.distance, v.distance)] {
                prop_assert!(close(p.nominal.get(), q.nominal.get(), weight), "{:?}: {p:?} {q:?}", u.id);
                prop_assert!(close(p.worst.get(), q.worst.get(), weight), "{:?}: {p:?} {q:?}", u.id);
            }
            let angle = |l: &LineReport| l.tip_angle_worst_deg.map_or(-90.0, |a| a.get());
            prop_assert!(close(angle(u), angle(v), 90.0));
        }
        for u in &a.tests {
            let v = b.tests.iter().find(|t| t.test == u.test && t.line == other_side(u.line)).expect("mirrored test");
            prop_assert!(close(u.moment.worst.get(), v.moment.worst.get(), weight));
            prop_assert!(close(u.stood_worst.map_or(20.0, |s| s.get()), v.stood_worst.map_or(20.0, |s| s.get()), 20.0));
        }
    }
    Ok(())
}

proptest! {
    #[test]
    fn a_mirror_swaps_left_and_right(document in sensible::documents()) {
        same(&assessment(&document), &assessment(&mirrored(&document)))?;
    }
}
