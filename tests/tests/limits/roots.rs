//! The same limits by a general-purpose root finder: Brent's method on what a step has in hand.

use crate::entered;
use ::roots::{SimpleConvergency, find_root_brent};
use standfast_core::limit::{self, Bound, Limit, Reach};
use standfast_core::step::StepId;
use standfast_core::whole::Whole;
use standfast_tests::draw::Draws;
use standfast_tests::sensible;

/// What a step has in hand with a figure entered: one less the greatest part used of what may be, of all
/// that it must pass. (The load on the blades has a limit of its own kind; only limits that a tipping line
/// binds are looked at here.)
fn in_hand(document: &standfast_core::document::Document, id: StepId) -> Option<f64> {
    let (scenario, balance) = entered::scenario(document)?;
    let whole = Whole::of(&scenario, &balance);
    let step = whole.steps.iter().find(|s| s.id == id)?;
    Some(1.0 - step.used().worst)
}

#[test]
fn a_root_finder_comes_to_the_same_limits() {
    let (mut compared, mut worst) = (0, 0.0_f64);
    for seed in 0..600 {
        let document = sensible::document(&mut Draws::seeded(150_000 + seed));
        let Some((scenario, balance)) = entered::scenario(&document) else { continue };
        let whole = Whole::of(&scenario, &balance);
        let limits = limit::find(&scenario, &balance, &whole, &document);
        for (step, list) in whole.steps.iter().zip(&limits.steps) {
            for solved in list.iter().filter(|s| entered::can(&document, s.what)) {
                let Reach::At { value, by: Bound::Step { .. } } = solved.reach else { continue };
                let (value, stated) = (value.get(), solved.stated.map(|s| s.get()));
                let f = |x: f64| in_hand(&entered::at(&document, solved.what, stated, x), step.id);
                // A bracket of one hundredth either way: the root lies in it, or the limit is wrong.
                let by = 0.01 * value.abs().max(0.1);
                let (a, b) = (value - by, value + by);
                let (Some(fa), Some(fb)) = (f(a), f(b)) else { continue };
                // A cap on shares, or a stretch that begins here, has no simple root.
                if fa * fb >= 0.0 || solved.what == Limit::BatteryLeast && fa > 0.0 {
                    continue;
                }
                let mut convergency = SimpleConvergency { eps: 1e-11, max_iter: 80 };
                let Ok(root) = find_root_brent(a, b, |x| f(x).unwrap_or(f64::NAN), &mut convergency) else { continue };
                let off = (root - value).abs() / value.abs().max(0.1);
                assert!(off < 1e-5, "seed {seed}: {:?} {solved:?}: {root}", step.id);
                worst = worst.max(off);
                compared += 1;
            }
        }
    }
    println!("{compared} limits by Brent's method, the furthest off by {worst:.1e} of the figure");
    assert!(compared > 1_000, "{compared}");
}
