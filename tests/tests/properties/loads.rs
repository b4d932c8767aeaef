//! Odd-shaped loads on the forks: the same load however it is described, and what never makes it better.

use crate::{assessment, close, on_edge};
use proptest::prelude::*;
use standfast_core::document::{Document, GivenAs, Turned};
use standfast_core::friction::Underside;
use standfast_core::report::{Assessment, assess, find_load};
use standfast_core::verdict::State;
use standfast_tests::sensible;
use standfast_tests::turns::{back, moved, turned_left};

/// The same to 1e-9: verdict, plate, blades, every step.
fn same(a: &Assessment, b: &Assessment) -> Result<(), TestCaseError> {
    if on_edge(a) {
        return Ok(());
    }
    prop_assert_eq!(a.verdict.state, b.verdict.state);
    prop_assert_eq!(a.verdict.others.len(), b.verdict.others.len());
    let near = |x: f64, y: f64| close(x, y, 1e4);
    prop_assert!(near(a.load.mass.lo.get(), b.load.mass.lo.get()) && near(a.load.mass.hi.get(), b.load.mass.hi.get()));
    prop_assert!(near(a.plate.need.load_centre_worst.get(), b.plate.need.load_centre_worst.get()));
    for (u, v) in a.forks.arms.iter().zip(&b.forks.arms) {
        prop_assert!(near(u.moment_worst.get(), v.moment_worst.get()), "{u:?} {v:?}");
        prop_assert!(near(u.part.get(), v.part.get()), "{u:?} {v:?}");
    }
    prop_assert!(near(a.forks.reach_worst.get(), b.forks.reach_worst.get()));
    for (u, v) in a.steps.iter().zip(&b.steps) {
        for (p, q) in u.lines.iter().zip(&v.lines) {
            prop_assert!(close(p.moment.nominal.get(), q.moment.nominal.get(), 1e5), "{p:?} {q:?}");
            prop_assert!(close(p.moment.worst.get(), q.moment.worst.get(), 1e5), "{p:?} {q:?}");
        }
        let (Some(p), Some(q)) = (&u.seat, &v.seat) else {
            prop_assert_eq!(u.seat.is_some(), v.seat.is_some());
            continue;
        };
        prop_assert!(close(p.bob.x.get(), q.bob.x.get(), 1.0) && close(p.bob.y.get(), q.bob.y.get(), 1.0));
        for (c, d) in p.cases.iter().zip(&q.cases) {
            prop_assert_eq!((c.passes, c.passes_worst), (d.passes, d.passes_worst));
            let least = |c: &standfast_core::report::CaseReport| c.topple.iter().map(|t| t.margin.worst).min();
            let both = least(c).zip(least(d));
            prop_assert!(both.is_none_or(|(x, y)| close(x.get(), y.get(), 1.0)), "{c:?} {d:?}");
        }
    }
    Ok(())
}

fn state(document: &Document) -> State {
    assessment(document).verdict.state
}

proptest! {
    /// Described from its left side and turned back on the forks, it stands as it stood: all four ways round.
    #[test]
    fn described_from_another_side_it_is_the_same_load(document in sensible::documents()) {
        let before = assessment(&document);
        let mut next: Document = document.clone();
        for _ in 0..4 {
            let Some(load) = turned_left(&next.load) else { return Ok(()) };
            next.load = load;
            next.load.turned = back(next.load.turned);
            same(&before, &assessment(&next))?;
        }
    }

    /// Turned round four times by a quarter it faces the forks as before; twice is half a turn.
    #[test]
    fn four_quarter_turns_are_none(document in sensible::documents()) {
        let Some(first) = turned_left(&document.load) else { return Ok(()) };
        let twice = turned_left(&first).expect("as before");
        let half: Document = { let mut d: Document = document.clone(); d.load.turned = Turned::Half; d };
        let described: Document = { let mut d: Document = document.clone(); d.load = twice.clone(); d.load.turned = Turned::No; d };
        same(&assessment(&half), &assessment(&described))?;
        let four = turned_left(&turned_left(&twice).expect("as before")).expect("as before");
        for (a, b) in document.load.parts.iter().zip(&four.parts) {
            prop_assert_eq!(a.facing, b.facing);
            for (x, y) in [(a.ahead_m, b.ahead_m), (a.left_m, b.left_m), (a.length_m, b.length_m), (a.width_m, b.width_m)] {
                prop_assert!(close(x.unwrap_or_default(), y.unwrap_or_default(), 1.0));
            }
        }
    }

    /// Measured from another point it is the same load.
    #[test]
    fn another_datum_changes_nothing(document in sensible::documents(), x in -3.0..3.0, y in -3.0..3.0, z in -3.0..3.0) {
        let Some(load) = moved(&document.load, [x, y, z]) else { return Ok(()) };
        let mut next: Document = document.clone();
        next.load = load;
        same(&assessment(&document), &assessment(&next))?;
        let (a, b) = (find_load(&document).load.expect("found"), find_load(&next).load.expect("found"));
        prop_assert!(close(a.centre.ahead.nominal.get() + x, b.centre.ahead.nominal.get(), 1.0));
        prop_assert!(close(a.centre.left.hi.get() + y, b.centre.left.hi.get(), 1.0));
        prop_assert!(close(a.centre.above.lo.get() + z, b.centre.above.lo.get(), 1.0));
    }

    /// A more slippery underside never makes the verdict better; nor does not saying what it is.
    #[test]
    fn worse_friction_is_never_better(document in sensible::documents()) {
        let mut ordered: Vec<Underside> = Underside::ALL.to_vec();
        ordered.sort_by(|a, b| b.figure().value.total_cmp(&a.figure().value));
        let mut last = State::Go;
        for underside in ordered.into_iter().map(Some).chain([None]) {
            let mut next: Document = document.clone();
            next.load.underside = underside;
            let state = state(&next);
            prop_assert!(state <= last, "{underside:?}");
            last = state;
        }
    }

}

proptest! {
    // A dozen verdicts a case.
    #![proptest_config(ProptestConfig::with_cases(100))]

    /// Nor does more wear, a lower stamp, or a longer extension that is too long.
    #[test]
    fn more_wear_is_never_better(document in sensible::documents(), stamped in 300.0..2500.0) {
        let mut worn: Document = document.clone();
        let forks = &mut worn.truck.forks;
        (forks.thickness_m, forks.thickness_now_m) = (Some(0.05), Some(0.05));
        let mut last = state(&worn);
        for now in [0.048, 0.0455, 0.045, 0.04, 0.03, 0.005] {
            worn.truck.forks.thickness_now_m = Some(now);
            let state = state(&worn);
            prop_assert!(state <= last, "{now}");
            last = state;
        }
        prop_assert_eq!(last, State::NoGo);
        let mut weak: Document = document.clone();
        weak.truck.forks.stamped_kg = None;
        let mut last = state(&weak);
        for kg in [20_000.0, stamped, 0.5 * stamped, 100.0] {
            weak.truck.forks.stamped_kg = Some(kg);
            let state = state(&weak);
            prop_assert!(state <= last, "{kg}");
            last = state;
        }
    }

}

proptest! {
    /// Hanging, it may weigh less: what the plate refuses lying, it refuses hanging.
    #[test]
    fn hanging_never_allows_more(document in sensible::documents()) {
        let (mut lying, mut hanging): (Document, Document) = (document.clone(), document.clone());
        (lying.load.hanging, lying.load.hook_above_m) = (false, None);
        (hanging.load.hanging, hanging.load.hook_above_m) = (true, Some(0.5));
        let (a, b) = (assessment(&lying).plate, assessment(&hanging).plate);
        let seven = a.allowed.zip(b.allowed).is_none_or(|(a, b)| close(b.get(), 0.7 * a.get(), 1.0));
        prop_assert!(seven, "{:?} {:?}", a, b);
        prop_assert!(a.findings.iter().filter(|f| f.as_stated).count() <= b.findings.iter().filter(|f| f.as_stated).count());
    }

    /// What a remedy leads to is what comes out when it is entered.
    #[test]
    fn a_remedy_leads_where_it_says(document in sensible::documents()) {
        let now = assessment(&document);
        for lead in &now.remedies.leads {
            prop_assert!(lead.state > now.verdict.state);
            let mut next: Document = document.clone();
            lead.changes.iter().for_each(|change| change.apply(&mut next));
            prop_assert_eq!(state(&next), lead.state, "{:?}", lead);
        }
    }

    /// What is found without a truck is what is assessed with one.
    #[test]
    fn the_load_alone_is_the_load_assessed(document in sensible::documents()) {
        let alone = find_load(&document);
        let assessed = assess(&document).assessment.expect("complete").load;
        prop_assert_eq!(alone.load, Some(assessed));
    }
}

/// The documents above are of every kind, or they show little.
#[test]
fn sensible_loads_are_of_every_kind() {
    let mut seen = [0_usize; 8];
    let mut states = [0_usize; 3];
    for seed in 0..600 {
        let document = sensible::document(&mut standfast_tests::draw::Draws::seeded(seed));
        let load = &document.load;
        let kinds = [
            load.given_as == GivenAs::Parts,
            load.given_as == GivenAs::Trace,
            load.parts.iter().any(|p| p.cut_from.is_some()),
            load.weighing.is_some(),
            load.weighing.as_ref().is_some_and(|w| w.raised_end.is_some()),
            load.turned != Turned::No,
            load.hanging,
            document.truck.forks.stamped_kg.is_some(),
        ];
        kinds.iter().zip(&mut seen).for_each(|(is, n)| *n += usize::from(*is));
        states[state(&document) as usize] += 1;
    }
    eprintln!(
        "of 600: parts, traces, cut-outs, weighed, raised, turned, hanging, stamped {seen:?}; no-go, hold, go {states:?}"
    );
    assert!(seen.iter().all(|n| *n > 30) && states.iter().all(|n| *n > 5), "{seen:?} {states:?}");
}
