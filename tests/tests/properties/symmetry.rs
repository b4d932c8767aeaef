//! A mirror swaps left and right, and nothing else.

use crate::{assessment, close, on_edge, scenario};
use proptest::prelude::*;
use standfast_core::bearing::Bearing;
use standfast_core::document::{Document, GivenAs};
use standfast_core::forks::Outcome;
use standfast_core::polygon::extents;
use standfast_core::report::{Assessment, CaseReport, LineReport, StepReport};
use standfast_core::scalar::Scalar;
use standfast_core::seat::Over;
use standfast_core::step::StepId;
use standfast_core::support::LineId;
use standfast_tests::sensible;
use standfast_tests::turns::mirrored;

fn other_side(id: LineId) -> LineId {
    match id {
        LineId::Front => LineId::Front,
        LineId::Left => LineId::Right,
        LineId::Right => LineId::Left,
    }
}

/// The same step in the mirror.
pub fn mirrored_step(id: StepId) -> StepId {
    match id {
        StepId::CornerLeft => StepId::CornerRight,
        StepId::CornerRight => StepId::CornerLeft,
        StepId::CrossFallLeft => StepId::CrossFallRight,
        StepId::CrossFallRight => StepId::CrossFallLeft,
        StepId::EmptyCornerLeft => StepId::EmptyCornerRight,
        StepId::EmptyCornerRight => StepId::EmptyCornerLeft,
        id => id,
    }
}

fn line(step: &StepReport, id: LineId) -> &LineReport {
    step.lines.iter().find(|l| l.id == id).expect("all three lines")
}

fn same(a: &Assessment, b: &Assessment) -> Result<(), TestCaseError> {
    if on_edge(a) {
        return Ok(());
    }
    prop_assert_eq!(a.verdict.state, b.verdict.state);
    prop_assert_eq!(a.verdict.others.len(), b.verdict.others.len());
    same_forks(&a.forks, &b.forks)?;
    let remedies = |a: &Assessment| a.remedies.leads.iter().map(|r| r.state).max();
    prop_assert_eq!(remedies(a), remedies(b));
    let block = a.load.given_as == GivenAs::Block;
    for a in &a.steps {
        let b = b.steps.iter().find(|b| b.id == mirrored_step(a.id)).expect("the mirrored step");
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
        same_seats(a, b, block)?;
    }
    Ok(())
}

/// The load on the blades in one step.
fn same_seats(a: &StepReport, b: &StepReport, block: bool) -> Result<(), TestCaseError> {
    prop_assert_eq!(a.seat.is_some(), b.seat.is_some());
    let (Some(a), Some(b)) = (&a.seat, &b.seat) else { return Ok(()) };
    prop_assert!(close(a.bob.x.get(), b.bob.x.get(), 1.0) && close(a.bob.y.get(), -b.bob.y.get(), 1.0));
    for (u, v) in a.cases.iter().zip(&b.cases) {
        prop_assert_eq!((u.event, u.passes, u.passes_worst), (v.event, v.passes, v.passes_worst));
        let (p, q) = (u.asked, v.asked);
        prop_assert!(close(p.nominal.get(), q.nominal.get(), 1.0) && close(p.worst.get(), q.worst.get(), 1.0));
        // A slanted edge of an odd foot faces two ways at once: the least of all edges is the same.
        let least = |case: &CaseReport| {
            let margins = || case.topple.iter().map(|t| t.margin);
            (margins().map(|m| m.nominal).min(), margins().map(|m| m.worst).min())
        };
        let ((p, p_worst), (q, q_worst)) = (least(u), least(v));
        let near = |a: Option<Scalar>, b: Option<Scalar>| a.zip(b).is_some_and(|(a, b)| close(a.get(), b.get(), 1.0));
        prop_assert!(near(p, q) && near(p_worst, q_worst), "{u:?} {v:?}");
        for t in u.topple.iter().filter(|_| block) {
            let other = match t.over {
                Over::Ahead => Over::Ahead,
                Over::Left => Over::Right,
                Over::Right => Over::Left,
                Over::Heel => Over::Heel,
            };
            let m = v.topple.iter().find(|m| m.over == other).expect("the same edges").margin;
            prop_assert!(close(t.margin.nominal.get(), m.nominal.get(), 1.0), "{t:?} {m:?}");
            prop_assert!(close(t.margin.worst.get(), m.worst.get(), 1.0), "{t:?} {m:?}");
        }
    }
    Ok(())
}

fn same_forks(a: &Outcome, b: &Outcome) -> Result<(), TestCaseError> {
    for (p, q) in [
        (a.to_tips, b.to_tips),
        (a.to_tips_worst, b.to_tips_worst),
        (a.to_edge, b.to_edge),
        (a.to_edge_worst, b.to_edge_worst),
        (a.reach, b.reach),
        (a.reach_worst, b.reach_worst),
    ] {
        prop_assert!(close(p.get(), q.get(), 1.0), "{a:?} {b:?}");
    }
    for (arm, other) in a.arms.iter().zip(b.arms.iter().rev()) {
        prop_assert!(arm.fork != other.fork);
        for (p, q) in [
            (arm.part, other.part),
            (arm.part_worst, other.part_worst),
            (arm.moment, other.moment),
            (arm.moment_worst, other.moment_worst),
            (arm.carries, other.carries),
            (arm.carries_worst, other.carries_worst),
        ] {
            prop_assert!(close(p.get(), q.get(), 1e4), "{arm:?} {other:?}");
        }
    }
    Ok(())
}

/// Whether the load lies on a blade by less than a millimetre: pieces of an outline without any area to speak of
/// are left out there, and a mirrored outline falls into other pieces.
fn on_a_sliver(document: &Document) -> bool {
    let bearing = Bearing::of(&scenario(document));
    let strips = bearing.ends.iter().chain([&bearing.stated]).flat_map(|l| &l.strips);
    let mut widths = strips.map(|strip| extents(strip)).map(|(lo, hi)| (hi - lo).min_element());
    widths.any(|w| w > 0.0 && w < 1e-3)
}

proptest! {
    #[test]
    fn a_mirror_swaps_left_and_right(document in sensible::documents()) {
        if on_a_sliver(&document) {
            return Ok(());
        }
        same(&assessment(&document), &assessment(&mirrored(&document)))?;
    }
}
