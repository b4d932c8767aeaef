//! The verdict's reasons in plain sentences: figure, limit, margin, each rounded to its cautious side.

mod blades;
mod checklist;
mod drive;
mod plate;
mod remedies;
mod sheet;

pub use blades::{counted_from, figure_range, friction};
pub use checklist::not_in_order;
pub use drive::{step_of, when};
pub use remedies::{leads_to, needed, remedy, settles};
pub use sheet::{suspects, tested};

use crate::answer::{Answer, is_missing};
use crate::entries::Entries;
use crate::figures::{self, Printer};
use crate::problems;
use crate::words::{Twice, Words, fill, words};
use standfast_core::document::{CentreKnown, Document, GivenAs};
use standfast_core::place::{Field, Place};
use standfast_core::plate::{Finding, Gap};
use standfast_core::scalar::Scalar;
use standfast_core::step::StepId;
use standfast_core::units::{Rounding, System};
use standfast_core::verdict::{Ground, Reason, State};

/// One reason: the sentence, and what goes with it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sentence {
    /// The reason with its numbers.
    pub main: String,
    /// What to measure better, which figures to suspect, which step is the tightest.
    pub more: Option<String>,
    /// The field to look at, if there is one.
    pub at: Option<Place>,
}

/// The four states that the bar can show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    NoGo,
    Hold,
    Go,
    /// No answer yet.
    None,
}

impl Shown {
    /// Of an answer.
    pub fn of(answer: &Answer) -> Self {
        Self::of_state(answer.assessment.as_ref().map(|a| a.verdict.state))
    }

    /// Of a state.
    pub fn of_state(state: Option<State>) -> Self {
        match state {
            Some(State::NoGo) => Self::NoGo,
            Some(State::Hold) => Self::Hold,
            Some(State::Go) => Self::Go,
            None => Self::None,
        }
    }

    /// Its name in tests.
    pub fn code(self) -> &'static str {
        match self {
            Self::NoGo => "no_go",
            Self::Hold => "hold",
            Self::Go => "go",
            Self::None => "none",
        }
    }

    /// Its word.
    pub fn word(self) -> &'static str {
        let w = &words().verdict;
        match self {
            Self::NoGo => w.no_go,
            Self::Hold => w.hold,
            Self::Go => w.go,
            Self::None => w.none,
        }
    }
}

/// All reasons, the governing one first. Without an assessment: what is missing or wrong.
pub fn reasons(answer: &Answer, entries: &Entries, system: System) -> Vec<Sentence> {
    let teller = Teller { answer, print: Printer(system), w: words() };
    match &answer.assessment {
        Some(a) => std::iter::once(&a.verdict.governing).chain(&a.verdict.others).map(|g| teller.ground(g)).collect(),
        None => teller.not_yet(entries, system),
    }
}

/// The governing reason of a load in a list; what is missing or wrong where there is no answer.
pub fn reason_in_list(answer: &Answer, system: System) -> String {
    let teller = Teller { answer, print: Printer(system), w: words() };
    match &answer.short {
        Some(short) => teller.reason(&short.reason, short.state),
        None => {
            let entries = Entries::from_document(&answer.document);
            teller.not_yet(&entries, system).into_iter().next().map_or_else(String::new, |s| s.main)
        }
    }
}

/// What a plate does not cover.
pub fn gap_said(finding: &Finding, answer: &Answer, print: Printer) -> String {
    let state = if finding.as_stated { State::NoGo } else { State::Hold };
    Teller { answer, print, w: words() }.gap(&finding.gap, state)
}

/// A step's pose: "Raised to 3.20 m, mast upright".
pub fn pose(step: StepId, lift: f64, tilt_deg: f64, print: Printer) -> String {
    let w = words();
    // What prints as no tilt is no tilt.
    let mast = if tilt_deg.abs() < 0.05 {
        w.mast_upright.to_owned()
    } else {
        let text = if tilt_deg < 0.0 { w.mast_back } else { w.mast_forward };
        fill(text, &[("angle", &figures::angle(tilt_deg.abs(), Rounding::Nearest))])
    };
    fill((w.step)(step).pose, &[("height", &print.height(lift)), ("mast", &mast)])
}

/// What a place is called, with its row where it stands in a list.
pub fn name_of(place: Place) -> String {
    let w = words();
    let name = (w.field)(place.field).name;
    if place.field.row().path.contains("[]") {
        return fill(w.problem.row, &[("field", name), ("row", &(place.row + 1).to_string())]);
    }
    name.to_owned()
}

/// Where a figure can be measured better, as the load is given: a centre that no field holds, by scales.
pub fn entered_at(place: Place, document: &Document) -> Place {
    let load = &document.load;
    match place.field {
        Field::LoadCgFromHeel | Field::LoadCgLeft | Field::LoadCgAbove => match load.given_as {
            GivenAs::Block if load.centre_known == Some(CentreKnown::Mark) => place,
            GivenAs::Block => Field::CentreKnown.into(),
            GivenAs::Parts | GivenAs::Trace => Field::WeighPoints.into(),
        },
        _ => place,
    }
}

struct Teller<'a> {
    answer: &'a Answer,
    print: Printer,
    w: &'static Words,
}

impl Teller<'_> {
    fn ground(&self, ground: &Ground) -> Sentence {
        let main = self.reason(&ground.reason, ground.state);
        let w = &self.w.verdict;
        let more = match (&ground.reason, ground.state, ground.measure) {
            (Reason::Contradicts { contradiction }, ..) => {
                let list: Vec<_> = contradiction.suspects.iter().map(|&p| name_of(p)).collect();
                Some(fill(w.suspects, &[("list", &list.join(", "))]))
            }
            (Reason::SheetContradicts { tested }, ..) => Some(suspects(tested, self.print)),
            (Reason::Within { step, share, .. }, ..) => {
                let report = self.answer.step(*step);
                let pose = report.map(|s| self.pose(*step, s.lift.get(), s.tilt_deg.get()));
                let step = pose.unwrap_or_else(|| (self.w.step)(*step).name.to_owned());
                Some(fill(w.tightest, &[("step", &lower(&step)), ("share", &figures::share(share.get()))]))
            }
            // Not measured: looked at.
            (Reason::Plate { gap: Gap::OtherTyres { .. } | Gap::OtherAttachment { .. } }, ..)
            | (Reason::NotInOrder { .. }, ..) => None,
            (_, State::Hold, measure) => {
                let measure = measure.map(|place| fill(w.measure, &[("what", &lower(&name_of(place)))]));
                Some([Some(w.as_entered.to_owned()), measure].into_iter().flatten().collect::<Vec<_>>().join(" "))
            }
            (Reason::Plate { gap: Gap::TooFarOut { .. } | Gap::OtherFrontEnd { .. } }, ..) => {
                let estimate = self.answer.assessment.as_ref().and_then(|a| a.plate.estimate);
                estimate.map(|e| fill(w.estimate, &[("estimate", &self.print.mass(e.get(), Rounding::Down))]))
            }
            _ => None,
        };
        let measured = ground.measure.map(|place| entered_at(place, &self.answer.document));
        Sentence { main, more, at: measured.or_else(|| drive::driven_by(&ground.reason).map(Place::from)) }
    }

    /// How a step stands or is driven, to begin a sentence.
    fn pose(&self, step: StepId, lift: f64, tilt_deg: f64) -> String {
        when(step, self.answer, self.print).unwrap_or_else(|| pose(step, lift, tilt_deg, self.print))
    }

    fn reason(&self, reason: &Reason, state: State) -> String {
        let w = &self.w.verdict;
        let pick = |twice: Twice| if state == State::Hold { twice.may } else { twice.stated };
        let length = |s: &Scalar, way| self.print.length(s.get(), way);
        let beyond = |text: Twice, by: &Scalar| fill(pick(text), &[("beyond", &length(by, Rounding::Up))]);
        if let Some(said) = self.on_blades(reason, state).or_else(|| self.on_the_drive(reason, state)) {
            return said;
        }
        match reason {
            Reason::Plate { gap } => self.gap(gap, state),
            Reason::BeyondTips { beyond: by } => beyond(w.beyond_tips, by),
            Reason::BesideForks { beyond: by } => beyond(w.beside_forks, by),
            Reason::Tips { step, line, beyond, lift, tilt_deg } => fill(
                pick(w.tips),
                &[
                    ("pose", &self.pose(*step, lift.get(), tilt_deg.get())),
                    ("way", (self.w.way)(*line)),
                    ("beyond", &length(beyond, Rounding::Up)),
                    ("line", (self.w.line)(*line)),
                ],
            ),
            Reason::Slope { step, line, stood, asked, lift, tilt_deg, .. } => {
                let (stood, asked) = (stood.get(), asked.get());
                let text = if stood > 0.0 { w.slope } else { w.not_level };
                fill(
                    pick(text),
                    &[
                        ("pose", &self.pose(*step, lift.get(), tilt_deg.get())),
                        ("way", (self.w.way)(*line)),
                        ("stood", &figures::slope(stood, Rounding::Down)),
                        ("asked", &figures::slope(asked, Rounding::Up)),
                        ("margin", &figures::slope(asked - stood, Rounding::Up)),
                    ],
                )
            }
            Reason::Contradicts { contradiction: c } => fill(
                w.contradicts,
                &[
                    ("test", &lower((self.w.test)(c.test))),
                    ("stood", &figures::slope(c.stood.get(), Rounding::Down)),
                    ("asked", &figures::slope(c.asked.get(), Rounding::Up)),
                ],
            ),
            Reason::SheetContradicts { tested } => self::tested(tested, self.print),
            Reason::NotInOrder { items } => checklist::said(items),
            Reason::Within { mass, allowed, .. } => fill(
                w.within,
                &[
                    ("mass", &self.print.mass(mass.get(), Rounding::Up)),
                    ("allowed", &self.print.mass(allowed.get(), Rounding::Down)),
                    ("margin", &self.print.mass(allowed.get() - mass.get(), Rounding::Down)),
                ],
            ),
            // Said above.
            Reason::ShortReach { .. }
            | Reason::OffBlade { .. }
            | Reason::ForkOver { .. }
            | Reason::ForkWorn { .. }
            | Reason::ExtensionTooLong { .. }
            | Reason::WaysDisagree { .. }
            | Reason::Topples { .. }
            | Reason::Slides { .. }
            | Reason::Reserve { .. }
            | Reason::LoadDownhill { .. } => String::new(),
        }
    }

    /// What is wrong comes before what is only missing.
    fn not_yet(&self, entries: &Entries, system: System) -> Vec<Sentence> {
        let w = &self.w.verdict;
        let said = |p| problems::message(p, entries, system);
        let (missing, wrong): (Vec<_>, Vec<_>) = self.answer.problems.iter().partition(|p| is_missing(p));
        let sentence = |main, place| Sentence { main, more: None, at: Some(place) };
        let mut list: Vec<_> = wrong
            .iter()
            .map(|p| sentence(fill(w.wrong, &[("field", &name_of(p.place)), ("problem", &said(p))]), p.place))
            .collect();
        if let Some(first) = missing.first() {
            let count = w.needed.of(missing.len());
            list.push(sentence(fill(&count, &[("first", &lower(&name_of(first.place)))]), first.place));
        }
        list
    }
}

/// A name inside a sentence: its first letter small, unless the next one is a capital too.
pub fn lower(text: &str) -> String {
    let mut letters = text.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if !second.is_uppercase() => first.to_lowercase().chain(letters).collect(),
        _ => text.to_owned(),
    }
}

#[cfg(test)]
mod tests;
