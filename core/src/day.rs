//! A day's loads, checked at once against one truck.

use crate::balance::Balance;
use crate::book::LoadRecord;
use crate::document::Document;
use crate::gain;
use crate::problem::Problem;
use crate::scalar::Scalar;
use crate::scenario::Assumed;
use crate::step::StepId;
use crate::validate;
use crate::verdict::Reason;
use crate::verdict::State;
use crate::whole::Whole;
use serde::Serialize;

/// What is said of one load.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Line {
    /// What the load is called.
    pub name: String,
    /// Its weight as stated or found, kg, where that is known.
    pub mass: Option<Scalar>,
    /// The answer, or all that is missing or wrong.
    pub answer: Result<Answer, Vec<Problem>>,
}

/// The answer to one load.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Answer {
    /// The verdict.
    pub state: State,
    /// The reason that governs.
    pub reason: Reason,
    /// How many others there are.
    pub others: usize,
    /// Load centre at its greatest, m.
    pub load_centre: Scalar,
    /// What the plate allows, kg; none where no row of it reaches so high or so far.
    pub allowed: Option<Scalar>,
    /// The greatest share of what may be used that some step uses, at the worst corner.
    pub used: Scalar,
    /// In this step.
    pub step: StepId,
    /// The part of what the plate allows that may hang, where the load does.
    pub hanging: Option<Scalar>,
    /// Every figure that was assumed.
    pub assumed: Vec<Assumed>,
}

/// A check with another load in place of its own: truck, lift and way stay.
pub fn with_load(document: &Document, record: &LoadRecord) -> Document {
    let is_of_load = |path: &str| path.starts_with("load.");
    let rest = document.known.iter().filter(|(path, _)| !is_of_load(path));
    let own = record.known.iter().filter(|(path, _)| is_of_load(path));
    Document {
        load: record.load.clone(),
        known: rest.chain(own).map(|(path, known)| (path.clone(), *known)).collect(),
        ..document.clone()
    }
}

/// Checks each of some loads as the load of a document: its truck, its lift, its way. What is said of one is
/// what is said of it when it stands there alone. Never panics.
///
/// ```
/// use standfast_core::{book::LoadRecord, day, document::Load, example, verdict::State};
/// let document = example::document(example::THREE_WHEEL);
/// let heavy = Load { name: "Kiln".to_owned(), mass_kg: Some(2500.0), ..document.load.clone() };
/// let lines = day::check(&document, &[LoadRecord { load: heavy, ..LoadRecord::default() }]);
/// assert_eq!(lines[0].answer.as_ref().map(|a| a.state), Ok(State::NoGo));
/// ```
pub fn check(document: &Document, loads: &[LoadRecord]) -> Vec<Line> {
    loads.iter().map(|record| line(document, record)).collect()
}

/// One of them.
pub fn line(document: &Document, record: &LoadRecord) -> Line {
    let (scenario, alone) = validate::check(&with_load(document, record));
    let found = alone.found.as_ref().map(|f| Scalar::computed(f.mass.nominal));
    let answer = scenario.map(|scenario| {
        let balance = Balance::of(&scenario.truck, &scenario.doubts);
        let whole = Whole::of(&scenario, &balance);
        let check = gain::governing(&whole.steps);
        let of_step = whole.steps.iter().filter(|s| s.id == check.step).flat_map(|s| s.checks());
        let used = of_step.map(|(_, used)| used.worst).fold(0.0, f64::max);
        Answer {
            state: whole.verdict.state,
            reason: whole.verdict.governing.reason.clone(),
            others: whole.verdict.others.len(),
            load_centre: whole.plate.need.load_centre_worst,
            allowed: whole.plate.allowed,
            used: Scalar::computed(used),
            step: check.step,
            hanging: whole.plate.hanging,
            assumed: scenario.assumed,
        }
    });
    let entered = record.load.mass_kg.and_then(Scalar::new);
    Line { name: record.load.name.clone(), mass: found.or(entered), answer }
}

#[cfg(test)]
mod tests;
