//! The worst corner from outside: trucks as they may really be ([`standfast_tests::truth`]), none of them
//! worse than the worst that the core gives, and somewhere one just as bad.
//!
//! Where the core is on the cautious side by construction, and so no truck just as bad:
//!
//! - a part of the mast may be [`TOLERANCE_BUILT_IN`](standfast_core::rules) out from where the *stated* load
//!   distance and blade length have it; the load distance itself moves what hangs on the face, not the mast;
//! - a range that is not as wide upward as downward counts as wide as the wider of both for the pivot of the
//!   mast, its lowered height, sideshift of carriage and forks, and the wheelbase about the front line;
//! - of three-wheel trucks and of four-wheel ones the tread counts at its least, whatever pulls;
//! - shares are the stated entries with what the worst corner takes off, not a quotient of its own.

mod compared;
mod corners;
mod found;
mod gains;
mod inferred;
mod samples;
mod search;

use crate::scenario;
use glam::DVec2;
use standfast_core::balance::Balance;
use standfast_core::body::Placed;
use standfast_core::document::{Document, Known};
use standfast_core::known;
use standfast_core::place::Place;
use standfast_core::scalar::Span;
use standfast_core::scenario::Scenario;
use standfast_core::step::StepId;
use standfast_core::units::GRAVITY;
use standfast_tests::draw::Draws;
use standfast_tests::sensible;
use standfast_tests::truth::{Figure, SetUp, Truth, figures};

/// What may be lost in adding up: this part of a moment of the whole weight a metre away, m and rad alike.
const EXACT: f64 = 1e-6;

/// One random truck, load and lift.
struct Case {
    seed: u64,
    document: Document,
    scenario: Scenario,
    balance: Balance,
    placed: Placed,
}

impl Case {
    fn of(seed: u64) -> Self {
        let document = uncertain(seed);
        Self::from(seed, document)
    }

    fn from(seed: u64, document: Document) -> Self {
        let scenario = scenario(&document);
        let (balance, placed) = worked(&scenario);
        Self { seed, document, scenario, balance, placed }
    }

    fn steps(&self) -> impl Iterator<Item = StepId> + '_ {
        StepId::ALL.into_iter().filter(|id| id.applies(&self.scenario))
    }

    fn stated(&self, step: StepId, set_up: SetUp) -> Truth {
        Truth::stated(&self.scenario, &self.balance, &self.placed, step, set_up)
    }

    fn figures(&self, step: StepId, set_up: SetUp) -> Vec<Figure> {
        figures(&self.scenario, &self.placed, step, set_up)
    }
}

fn worked(scenario: &Scenario) -> (Balance, Placed) {
    (Balance::of(&scenario.truck, &scenario.doubts), Placed::of(&scenario.load, &scenario.lift))
}

/// A document as from a yard, of which many figures are known otherwise than usual: estimated, by a plate, or
/// with a tolerance of their own.
fn uncertain(seed: u64) -> Document {
    let mut draws = Draws::seeded(seed);
    let mut document = sensible::document(&mut draws);
    let mut draws = Draws::seeded_row(seed + 1_000_000, 1000);
    let often = draws.one_of(&[0.0, 0.3, 0.6]).unwrap_or_default();
    for place in Place::all_numbers(&document) {
        let Some(value) = place.get(&document) else { continue };
        let ways = place.field.ways();
        if ways.is_empty() || !draws.chance(often) {
            continue;
        }
        let by = draws.one_of(ways);
        let usual = by.map_or(0.0, |by| known::tolerance(place.field, by, value));
        let tolerance = draws.chance(0.3).then(|| usual * draws.within(0.0..1.5));
        document.known.insert(place.to_string(), Known { by, tolerance });
    }
    document
}

/// Somewhere in a range: mostly at an end of it.
fn somewhere(draws: &mut Draws, figure: &Figure) -> f64 {
    let range = figure.range;
    match draws.count(0..10) {
        0..=2 => range.lo,
        3..=5 => range.hi,
        6 => range.nominal,
        _ => range.lo + (range.hi - range.lo) * draws.unit(),
    }
}

/// Somewhere in a convex region: mostly at a corner.
fn somewhere_of(draws: &mut Draws, region: &[DVec2]) -> DVec2 {
    let mut at = draws.one_of(region).expect("a region has a point");
    if draws.chance(0.4) {
        for _ in 0..3 {
            let other = draws.one_of(region).expect("a region has a point");
            at = at.lerp(other, draws.unit());
        }
    }
    at
}

/// The least of an objective that is found by moving one figure after the other to where it is least, until
/// none moves it: both ends of each, and places between where it is a curve. From what is stated, and from
/// several corners: a weight of nothing may stand anywhere, and from there no single move helps.
fn descend(truth: &Truth, figures: &[Figure], region: &[DVec2], objective: impl Fn(&Truth) -> f64) -> f64 {
    let mut least = f64::INFINITY;
    let mut draws = Draws::seeded(figures.len() as u64);
    for start in 0..6 {
        let mut truth = truth.clone();
        // What is stated may lie outside of what the plate leaves possible.
        truth.whole = region.first().copied().unwrap_or(truth.whole);
        for figure in figures {
            let Span { lo, nominal, hi } = figure.range;
            let value = match start {
                0 => nominal,
                1 => lo,
                2 => hi,
                _ => draws.one_of(&[lo, hi]).unwrap_or(nominal),
            };
            figure.set(&mut truth, value);
        }
        least = least.min(descend_from(&mut truth, figures, region, &objective));
    }
    least
}

fn descend_from(truth: &mut Truth, figures: &[Figure], region: &[DVec2], objective: &impl Fn(&Truth) -> f64) -> f64 {
    let mut least = objective(truth);
    for _ in 0..12 {
        let before = least;
        for figure in figures {
            let mut best = figure.get(truth);
            let range = figure.range;
            let steps = if figure.curved { 8 } else { 1 };
            for k in 0..=steps {
                figure.set(truth, range.lo + (range.hi - range.lo) * f64::from(k) / f64::from(steps));
                let found = objective(truth);
                if found < least {
                    (least, best) = (found, figure.get(truth));
                }
            }
            figure.set(truth, best);
        }
        let mut best = truth.whole;
        for &corner in region {
            truth.whole = corner;
            let found = objective(truth);
            if found < least {
                (least, best) = (found, corner);
            }
        }
        truth.whole = best;
        if least >= before {
            break;
        }
    }
    least
}

/// How much a moment may be off: by the weight, a metre away.
fn tie(truth: &Truth) -> f64 {
    EXACT * truth.weight().max(1000.0 * GRAVITY)
}

/// A reach that there may not be, as a number. How far back it would have to come once it has gone over is
/// not told apart.
fn reach(found: Option<f64>) -> f64 {
    found.unwrap_or(standfast_core::statics::STEEPEST).max(0.0)
}
