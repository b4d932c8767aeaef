//! The whole report: what a page shows and what a program reads. It serialises to JSON.
//!
//! Units: m, kg, N, N m; slopes are tangents; angles are degrees and say so in their name.

use crate::balance::{Balance, Contradiction};
use crate::closure::Tested;
use crate::document::Document;
use crate::forks;
use crate::gain;
use crate::gain::Gain;
use crate::limit;
use crate::limit::Solved;
use crate::plate;
use crate::platform::Test;
use crate::problem::Problem;
use crate::remedy;
use crate::rules::{BuiltIn, Figure, Mark};
use crate::scalar::Scalar;
use crate::scenario::{Assumed, Scenario};
use crate::statics::Pair;
use crate::step::StepId;
use crate::support::LineId;
use crate::validate;
use crate::verdict::{State, Verdict};
use crate::whole::Whole;
use glam::DVec3;
use serde::Serialize;

mod load;
mod seat;
mod step;

pub use load::{
    CentreReport, DecidedBy, DisagreementReport, LoadAnswer, LoadReport, PartReport, Range, ShapeReport, TraceReport,
    WayReport, find_load,
};
pub use seat::{CaseReport, SeatReport, ToppleReport};
pub use step::{BodyReport, Entry, LineReport, StepReport, TestReport, Wheels};

use step::step_report;

/// A figure as stated and at the worst corner.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Figures {
    /// As stated.
    pub nominal: Scalar,
    /// At the worst corner.
    pub worst: Scalar,
}

impl From<Pair> for Figures {
    fn from(pair: Pair) -> Self {
        Self { nominal: Scalar::computed(pair.nominal), worst: Scalar::computed(pair.worst) }
    }
}

/// A point or vector in the truck's frame.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Point {
    /// Ahead.
    pub x: Scalar,
    /// Left.
    pub y: Scalar,
    /// Up.
    pub z: Scalar,
}

impl From<DVec3> for Point {
    fn from(v: DVec3) -> Self {
        Self { x: Scalar::computed(v.x), y: Scalar::computed(v.y), z: Scalar::computed(v.z) }
    }
}

/// The answer to one document.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Report {
    /// The program's version.
    pub program: &'static str,
    /// What is missing or wrong; empty where there is an assessment.
    pub problems: Vec<Problem>,
    /// The assessment, where nothing is missing or wrong.
    pub assessment: Option<Assessment>,
}

/// What was found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Assessment {
    /// The verdict.
    pub verdict: Verdict,
    /// Every figure that was assumed or inferred.
    pub assumed: Vec<Assumed>,
    /// Figures of the model's own that nobody can enter: where its parts are taken to be.
    pub built_in: Vec<BuiltInReport>,
    /// Where the entered truck and its plate contradict each other.
    pub contradictions: Vec<Contradiction>,
    /// The type sheet held against itself, as far as it was entered.
    pub closure: Vec<Tested>,
    /// Corners (x, z) of where the unladen truck's centre may be; one where it is known.
    pub unladen_centre: Vec<(Scalar, Scalar)>,
    /// The plate.
    pub plate: plate::Outcome,
    /// The load on the blades.
    pub forks: forks::Outcome,
    /// The load as found.
    pub load: LoadReport,
    /// What would have to change.
    pub remedies: remedy::Remedies,
    /// Every step.
    pub steps: Vec<StepReport>,
    /// The step with the greatest share used at the worst corner.
    pub governing_step: StepId,
    /// Of what that step must pass, the one that uses most: the line, and the platform test where it is one.
    pub governing_check: (LineId, Option<Test>),
    /// The figures that cost moment at its worst corner, the one first that would gain most if it were
    /// known exactly.
    pub gains: Vec<Gain>,
    /// How far each figure may go before the whole move no longer goes.
    pub limits: Vec<Solved>,
}

/// A figure of the model's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct BuiltInReport {
    /// Which.
    pub what: BuiltIn,
    /// Its value: m, or a part where `unit` is empty.
    pub value: Scalar,
    /// `m`, or empty.
    pub unit: &'static str,
    /// Why that much.
    pub source: &'static str,
    /// How sure it is.
    pub mark: Mark,
}

impl BuiltInReport {
    fn of(what: BuiltIn) -> Self {
        let Figure { value, unit, source, mark, .. } = what.figure();
        Self { what, value: Scalar::computed(value), unit, source, mark }
    }
}

/// Checks, fills and assesses a document. Never panics.
///
/// ```
/// use standfast_core::{document::Document, report::assess};
/// let report = assess(&Document::default());
/// assert!(report.assessment.is_none() && !report.problems.is_empty());
/// ```
pub fn assess(document: &Document) -> Report {
    report(document, validate::check(document).0)
}

/// The same with what can be said of the load alone, as [`find_load`] says it: the load is looked at once.
pub fn assess_with_load(document: &Document) -> (Report, LoadAnswer) {
    let (scenario, alone) = validate::check(document);
    (report(document, scenario), LoadAnswer::of(alone))
}

fn report(document: &Document, scenario: Result<Scenario, Vec<Problem>>) -> Report {
    let program = env!("CARGO_PKG_VERSION");
    match scenario {
        Err(problems) => Report { program, problems, assessment: None },
        Ok(scenario) => {
            Report { program, problems: Vec::new(), assessment: Some(assess_scenario(&scenario, document)) }
        }
    }
}

fn assess_scenario(scenario: &Scenario, document: &Document) -> Assessment {
    let balance = Balance::of(&scenario.truck, &scenario.doubts);
    let whole = Whole::of(scenario, &balance);
    let remedies = remedy::find(document, scenario, &balance, &whole);
    let limits = limit::find(scenario, &balance, &whole, document);
    let governing = gain::governing(&whole.steps);
    let gains = gain::in_whole(scenario, &balance, &whole, &governing);
    // Only a hold that does not say itself what to measure is looked into.
    let asks = whole.verdict.state == State::Hold && whole.verdict.governing.measure.is_none();
    let measure = asks.then(|| gain::of_verdict(scenario, &balance, &whole)).and_then(|g| Some(g.first()?.place));
    let Whole { placed, plate, forks, steps, seats, mut verdict } = whole;
    if asks {
        verdict.governing.measure = measure;
    }
    let mut assumed = scenario.assumed.clone();
    assumed.extend(balance.inferred.iter().cloned());
    assumed.sort_by_key(|a| a.place);
    let pivoting = scenario.truck.axle.is_some();
    let built_in = BuiltIn::ALL.into_iter().filter(|b| pivoting || *b != BuiltIn::SteerAxleHeight);
    Assessment {
        verdict,
        assumed,
        built_in: built_in.map(BuiltInReport::of).collect(),
        contradictions: balance.contradictions.clone(),
        closure: scenario.closure.clone(),
        unladen_centre: balance.whole.iter().map(|p| (Scalar::computed(p.x), Scalar::computed(p.y))).collect(),
        plate,
        forks,
        load: LoadReport::of(&scenario.load.found),
        remedies,
        steps: (steps.iter().zip(&seats).zip(limits.steps))
            .map(|((s, seat), limits)| step_report(scenario, &placed, s, seat.as_ref(), limits))
            .collect(),
        governing_step: governing.step,
        governing_check: (governing.line, governing.test),
        gains,
        limits: limits.whole,
    }
}
