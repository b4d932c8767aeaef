//! What the core says of the entries, with what the page itself cannot read.

use crate::entries::Entries;
use standfast_core::day;
use standfast_core::document::Document;
use standfast_core::place::{Field, Place};
use standfast_core::problem::{Problem, Rule};
use standfast_core::report::{self, Assessment, LoadAnswer, StepReport};
use standfast_core::scalar::Scalar;
use standfast_core::scenario::Assumed;
use standfast_core::step::StepId;
use standfast_core::verdict::Reason;
use std::rc::Rc;

/// The answer to the entries.
#[derive(Debug)]
pub struct Answer {
    /// What could be read of them.
    pub document: Document,
    /// Everything missing or wrong, in the order of the fields.
    pub problems: Vec<Problem>,
    /// The assessment, where nothing is. Its steps are in `steps`.
    pub assessment: Option<Assessment>,
    /// Its steps.
    pub steps: Vec<Rc<StepReport>>,
    /// The load alone, there even where the truck is not entered.
    pub load: LoadAnswer,
    /// Of a load in a list: its answer in short, in place of an assessment.
    pub short: Option<day::Answer>,
}

/// A part of the entries, each on a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Card {
    Truck,
    Load,
    Move,
    Checklist,
    Assumed,
    Cautions,
}

impl Card {
    /// The card that a figure is entered on.
    pub fn of(place: Place) -> Self {
        match place.field.row().path.split('.').next() {
            Some("load") => Self::Load,
            Some("lift" | "drive") => Self::Move,
            _ => Self::Truck,
        }
    }
}

/// Whether a problem is only that something has not been entered yet.
pub fn is_missing(problem: &Problem) -> bool {
    matches!(problem.rule, Rule::Required | Rule::WeightOrMaterial)
}

/// Whether a problem is with a figure's tolerance, not with the figure.
pub fn is_of_tolerance(problem: &Problem) -> bool {
    matches!(problem.rule, Rule::ToleranceWithin { .. })
}

impl Answer {
    /// Assesses the entries.
    pub fn of(entries: &Entries) -> Self {
        let (document, unread) = entries.document();
        let (report, mut load) = report::assess_with_load(&document);
        // A text of the load's that cannot be read is not a figure left empty.
        load.load = load.load.filter(|_| !unread.iter().any(|p| Card::of(p.place) == Card::Load));
        let mut problems = unread;
        // Where the text cannot be read, that is the message, not that the figure is missing.
        let same = |u: &Problem, p: &Problem| u.place == p.place && is_of_tolerance(u) == is_of_tolerance(p);
        let found = report.problems.into_iter().filter(|p| !problems.iter().any(|u| same(u, p)));
        let found: Vec<_> = found.collect();
        problems.extend(found);
        problems.sort_by_key(|p| p.place);
        let mut assessment = report.assessment.filter(|_| problems.is_empty());
        let steps = assessment.as_mut().map(|a| std::mem::take(&mut a.steps)).unwrap_or_default();
        Self { document, problems, assessment, steps: steps.into_iter().map(Rc::new).collect(), load, short: None }
    }

    /// What is said of a load in a list.
    pub fn of_line(document: Document, line: &day::Line) -> Self {
        let problems = line.answer.as_ref().err().cloned().unwrap_or_default();
        let short = line.answer.as_ref().ok().cloned();
        // Only two ways that disagree are said by where they count from.
        let apart = matches!(short.as_ref().map(|s| &s.reason), Some(Reason::WaysDisagree { .. }));
        let load = if apart { report::find_load(&document) } else { LoadAnswer::default() };
        Self { document, problems, assessment: None, steps: Vec::new(), load, short }
    }

    /// The part of what the plate allows that may hang, where the load does.
    pub fn hanging(&self) -> Option<Scalar> {
        self.assessment.as_ref().map_or_else(|| self.short.as_ref()?.hanging, |a| a.plate.hanging)
    }

    /// What is missing or wrong at a place, its tolerance apart.
    pub fn problem(&self, place: Place) -> Option<&Problem> {
        self.problems.iter().find(|p| p.place == place && !is_of_tolerance(p))
    }

    /// What is wrong with the tolerance of a figure.
    pub fn tolerance_problem(&self, place: Place) -> Option<&Problem> {
        self.problems.iter().find(|p| p.place == place && is_of_tolerance(p))
    }

    /// What is assumed for a place.
    pub fn assumed(&self, place: Place) -> Option<&Assumed> {
        let all = self.assessment.as_ref().map(|a| &a.assumed).or(self.short.as_ref().map(|s| &s.assumed));
        all?.iter().find(|a| a.place == place)
    }

    /// One step.
    pub fn step(&self, id: StepId) -> Option<&Rc<StepReport>> {
        self.steps.iter().find(|s| s.id == id)
    }

    /// A figure as it counts: as entered, or the middle of what is taken for it.
    pub fn value(&self, place: Place) -> Option<f64> {
        let middle = |a: &Assumed| 0.5 * (a.lo.get() + a.hi.get());
        place.get(&self.document).or_else(|| self.assumed(place).map(middle))
    }

    /// How many figures on a card are missing, and how many are wrong.
    pub fn to_do(&self, card: Card) -> (usize, usize) {
        let on_card = || self.problems.iter().filter(|p| Card::of(p.place) == card);
        let missing = on_card().filter(|p| is_missing(p)).count();
        (missing, on_card().count() - missing)
    }

    /// Whether anything is wrong or missing in some of these fields.
    pub fn any_problem(&self, fields: &[Field]) -> bool {
        self.problems.iter().any(|p| fields.contains(&p.place.field))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::example;
    use standfast_core::units::System;

    #[test]
    fn an_example_is_answered() {
        let answer = Answer::of(&Entries::from_document(&example::document(example::THREE_WHEEL)));
        assert_eq!(answer.problems, []);
        // All but ramp and cross-fall, which nobody entered.
        assert_eq!(answer.steps.len(), StepId::ALL.len() - 4);
        assert!(answer.assumed(Field::CgHeight.into()).is_some());
    }

    /// An optional figure that cannot be read is not taken as left empty.
    #[test]
    fn nonsense_in_an_optional_field_gets_no_answer() {
        let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
        entries.enter(Field::HeelGap.into(), "about 20", System::Metric);
        let answer = Answer::of(&entries);
        assert!(answer.assessment.is_none() && answer.steps.is_empty());
        assert_eq!(answer.problem(Field::HeelGap.into()).map(|p| &p.rule), Some(&Rule::NotANumber));
    }

    /// What the load comes to shows whatever is missing of truck, lift and hook, but not past a text that cannot be read.
    #[test]
    fn the_load_is_found_without_a_truck() {
        let mut entries = Entries::from_document(&example::document(example::ODD_LOAD));
        entries.hanging = true;
        entries.enter(Field::Wheelbase.into(), "", System::Metric);
        let answer = Answer::of(&entries);
        assert!(answer.assessment.is_none() && answer.load.load.is_some());
        entries.enter(Field::LoadMass.into(), "heavy", System::Metric);
        assert!(Answer::of(&entries).load.load.is_none());
    }

    #[test]
    fn one_message_a_field_and_counts_by_card() {
        let mut entries = Entries::blank();
        entries.enter(Field::LoadMass.into(), "heavy", System::Metric);
        let answer = Answer::of(&entries);
        let at_mass = answer.problems.iter().filter(|p| p.place == Field::LoadMass.into()).count();
        assert_eq!(at_mass, 1);
        assert_eq!(answer.to_do(Card::Load), (3, 1));
        assert_eq!(answer.to_do(Card::Move), (1, 0));
        assert!(answer.to_do(Card::Truck).0 > 8);
    }
}
