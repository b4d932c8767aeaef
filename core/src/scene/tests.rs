use super::*;
use crate::example;
use crate::report::assess;
use crate::step::StepId;

fn drawn(scenario: &Scenario, id: StepId) -> Scene {
    let placed = Placed::of(&scenario.load, &scenario.lift);
    draw(scenario, &id.pose(scenario), Some(&placed))
}

fn extents(outlines: &[Outline], part: Part) -> Option<(DVec2, DVec2)> {
    let points = outlines.iter().filter(|o| o.part == part).flat_map(|o| &o.points);
    points.map(|(a, b)| DVec2::new(a.get(), b.get())).fold(None, |e, p| {
        let (lo, hi) = e.unwrap_or((p, p));
        Some((lo.min(p), hi.max(p)))
    })
}

fn odd() -> Scenario {
    Scenario::from_document(&example::document(example::ODD_LOAD)).expect("an example")
}

#[test]
fn blades_have_their_width_and_spread_and_sleeves_reach_on() {
    let mut s = odd();
    s.truck.forks.extension = Some((1.6, 40.0));
    let id = StepId::RaisedUpright;
    let scene = drawn(&s, id);
    let forks: Vec<_> = scene.plan.iter().filter(|o| o.part == Part::Fork).collect();
    assert_eq!(forks.len(), 2);
    for fork in forks {
        let (lo, hi) = extents(std::slice::from_ref(fork), Part::Fork).expect("drawn");
        assert!((hi.y - lo.y - s.truck.forks.blade.nominal).abs() < 1e-9, "{lo} {hi}");
        assert!((lo.y.abs().max(hi.y.abs()) - 0.5 * s.truck.forks.spread).abs() < 1e-9);
    }
    for outlines in [&scene.plan, &scene.side] {
        let (fork, sleeve) = (extents(outlines, Part::Fork), extents(outlines, Part::Extension));
        let (fork, sleeve) = (fork.expect("drawn"), sleeve.expect("drawn"));
        assert!((sleeve.1.x - fork.1.x - (1.6 - s.truck.forks.length)).abs() < 1e-6, "{sleeve:?} {fork:?}");
        assert!(sleeve.0.y < fork.0.y - 1e-3, "it is over the blade, not in it");
        let first = |part| outlines.iter().position(|o| o.part == part);
        assert!(first(Part::Extension) < first(Part::Fork));
    }
}

/// Where an attachment takes from the length ahead of it, the blades start there as they are reckoned.
#[test]
fn the_region_that_carries_the_load_lies_on_the_blades_drawn() {
    for text in [example::ODD_LOAD, example::THREE_WHEEL, example::FOUR_WHEEL] {
        let report = assess(&example::document(text)).assessment.expect("an example");
        for step in report.steps.into_iter().filter(|s| s.laden) {
            let side = extents(&step.scene.side, Part::Fork).expect("drawn");
            let plan = extents(&step.scene.plan, Part::Fork).expect("drawn");
            let within = |v: f64, lo: f64, hi: f64| v > lo - 1e-9 && v < hi + 1e-9;
            let region = step.seat.expect("it lies on them").region;
            assert!(region.len() > 2);
            for p in region {
                let (x, y, z) = (p.x.get(), p.y.get(), p.z.get());
                assert!(within(x, side.0.x, side.1.x) && within(z, side.0.y, side.1.y), "{p:?} {:?}", step.id);
                assert!(within(y, plan.0.y, plan.1.y), "{p:?}");
            }
        }
    }
}

#[test]
fn a_load_is_drawn_with_all_its_parts_nearest_last_and_cut_outs_on_top() {
    let s = odd();
    let scene = drawn(&s, StepId::RaisedUpright);
    for outlines in [&scene.side, &scene.plan] {
        let parts: Vec<Part> =
            outlines.iter().map(|o| o.part).filter(|p| matches!(p, Part::Load | Part::LoadCut)).collect();
        assert_eq!(parts.iter().filter(|p| **p == Part::Load).count(), 4);
        assert_eq!(parts.last(), Some(&Part::LoadCut));
        assert!(parts.is_sorted_by_key(|p| *p == Part::LoadCut));
    }
    // Seen from above the drum, 0.964 m high, is the last; the pallet under it all the first.
    let plans: Vec<_> = scene.plan.iter().filter(|o| o.part == Part::Load).collect();
    let length = |o: &Outline| {
        let (lo, hi) = extents(std::slice::from_ref(o), Part::Load).expect("drawn");
        hi.x - lo.x
    };
    assert!((length(plans[0]) - 1.2).abs() < 1e-9 && (length(plans[3]) - 0.8).abs() < 1e-9);
}

#[test]
fn a_load_that_hangs_stays_upright_below_its_hook() {
    let mut s = odd();
    s.load.hanging = Some(0.3);
    let scene = drawn(&s, StepId::RaisedBack);
    let (lo, hi) = extents(&scene.side, Part::Load).expect("drawn");
    assert!((hi.x - lo.x - s.load.size.x).abs() < 1e-9 && (hi.y - lo.y - s.load.size.z).abs() < 1e-9, "not tilted");
    let sling = scene.side.iter().find(|o| o.part == Part::Sling).expect("a sling");
    let corners: Vec<(f64, f64)> = sling.points.iter().map(|(a, b)| (a.get(), b.get())).collect();
    let (hook, ends) = (corners[0], &corners[1..]);
    assert!((hook.1 - hi.y - SLING.1).abs() < 1e-9 && ends.iter().all(|e| (e.1 - hi.y).abs() < 1e-9));
    assert!(lo.x < hook.0 && hook.0 < hi.x);
    // Where there is no room below the hook the sling is short, never gone.
    let low = drawn(&s, StepId::TakeUp);
    let (_, hi) = extents(&low.side, Part::Load).expect("drawn");
    let hook = low.side.iter().find(|o| o.part == Part::Sling).expect("a sling").points[0].1.get();
    assert!((hook - hi.y - SLING.0).abs() < 1e-9);
    // One that lies on the blades has none.
    assert_eq!(drawn(&odd(), StepId::TakeUp).side.iter().filter(|o| o.part == Part::Sling).count(), 0);
}
