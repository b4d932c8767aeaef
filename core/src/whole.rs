//! Everything worked out for one scenario.

use crate::balance::Balance;
use crate::bearing::Bearing;
use crate::body::Placed;
use crate::forks;
use crate::plate;
use crate::scenario::Scenario;
use crate::seat::Seat;
use crate::step::{Step, StepId};
use crate::verdict::{self, Verdict};

/// A lift worked through.
#[derive(Debug)]
pub struct Whole<'r> {
    /// The load on the forks.
    pub placed: Placed,
    /// The plate.
    pub plate: plate::Outcome,
    /// The blades.
    pub forks: forks::Outcome,
    /// Every step.
    pub steps: Vec<Step<'r>>,
    /// The load on the blades in each; none for one that hangs.
    pub seats: Vec<Option<Seat>>,
    /// The verdict.
    pub verdict: Verdict,
}

impl<'r> Whole<'r> {
    /// Works a scenario through, its truck's balance settled beforehand.
    pub fn of(scenario: &Scenario, balance: &'r Balance) -> Self {
        let placed = Placed::of(&scenario.load, &scenario.lift);
        let mut steps: Vec<Step> = Vec::with_capacity(StepId::ALL.len());
        for id in StepId::ALL.into_iter().filter(|id| id.applies(scenario)) {
            steps.push(Step::after(steps.last(), scenario, balance, &placed, id));
        }
        let bearing = Bearing::of(scenario);
        let seat = |s: &Step| Seat::pulled(scenario, &placed, &bearing, s.id, (&s.field, &s.ends));
        let seats: Vec<_> = steps.iter().map(seat).collect();
        let plate = plate::check(scenario, &placed);
        let forks = forks::check(scenario, &placed, &bearing);
        let contradictions = &balance.contradictions;
        let verdict = verdict::decide(&plate, &forks, &seats, &steps, contradictions, scenario);
        Self { placed, plate, forks, steps, seats, verdict }
    }
}
