//! The working of what comes nearest to its limit, and every step with how much it uses.

use crate::answer::Answer;
use crate::figures::{self, Printer};
use crate::sentences::{self, Shown, step_of};
use crate::step_strip::fares;
use crate::words::{fill, words};
use crate::working::moments;
use standfast_core::platform::Test;
use standfast_core::report::{Assessment, StepReport};
use standfast_core::scalar::Scalar;
use standfast_core::step::StepId;
use standfast_core::support::LineId;
use standfast_core::units::Rounding::{Down, Up};
use standfast_core::verdict::Reason;
use std::rc::Rc;
use yew::prelude::*;

/// The step, line and test that the working is of: those of the governing reason where it has them, else those
/// that use most.
pub fn nearest(a: &Assessment) -> (StepId, LineId, Option<Test>) {
    match a.verdict.governing.reason {
        Reason::Tips { step, line, .. } | Reason::Reserve { step, line, .. } => (step, line, None),
        Reason::Slope { step, line, test, .. } => (step, line, Some(test)),
        _ => (a.governing_step, a.governing_check.0, a.governing_check.1),
    }
}

/// The step that is drawn: that of the governing reason, else the tightest.
pub fn drawn(answer: &Answer) -> Option<&Rc<StepReport>> {
    let a = answer.assessment.as_ref()?;
    answer.step(step_of(&a.verdict.governing.reason).unwrap_or(a.governing_step))
}

/// How a step stands, to begin a sentence.
pub fn pose(step: &StepReport, answer: &Answer, print: Printer) -> String {
    let driven = sentences::when(step.id, answer, print);
    driven.unwrap_or_else(|| sentences::pose(step.id, step.lift.get(), step.tilt_deg.get(), print))
}

/// The moments about that line, and the slope asked where it is one.
pub fn working(answer: &Answer, print: Printer) -> Html {
    let w = &words().paper;
    let Some(a) = &answer.assessment else { return Html::default() };
    let (id, line, test) = nearest(a);
    let Some(step) = answer.step(id) else { return Html::default() };
    let about = step.lines.iter().find(|l| l.id == line);
    let of = fill(w.working_of, &[("step", &pose(step, answer, print)), ("line", (words().line)(line))]);
    let asked = test.and_then(|test| step.tests.iter().find(|t| t.test == test && t.line == line)).map(|t| {
        let never = || words().stage.does_not_tip.to_owned();
        let stood = |s: Option<Scalar>| s.map_or_else(never, |s| figures::slope(s.get(), Down));
        fill(
            w.asked,
            &[
                ("test", (words().test)(t.test)),
                ("asked", &figures::slope(t.asked.get(), Up)),
                ("stood", &stood(t.stood)),
                ("worst", &stood(t.stood_worst)),
            ],
        )
    });
    html! {
        <section class="working" data-testid="paper-working">
            <h2>{ w.working }</h2>
            <p>{ of }</p>
            { for about.map(|line| moments(step, line, print)) }
            if let Some(asked) = asked {
                <p>{ asked }</p>
            }
        </section>
    }
}

/// Every step with how much of its limit it uses at the worst, and its mark's word.
pub fn steps(answer: &Answer) -> Html {
    let w = &words().paper;
    if answer.steps.is_empty() {
        return Html::default();
    }
    let governing = answer.assessment.as_ref().map(|a| a.governing_step);
    let row = |step: &Rc<StepReport>| {
        let mark = fares(answer, step.id).mark;
        let said = match mark {
            Shown::Go | Shown::None if Some(step.id) == governing => words().stage.tightest,
            Shown::Go | Shown::None => "",
            mark => mark.word(),
        };
        html! {
            <li class={classes!((!matches!(mark, Shown::Go | Shown::None)).then_some("over"))}>
                <span>{ (words().step)(step.id).name }{ " " }<b>{ said }</b></span>
                <span>{ figures::share(step.used.worst.get()) }</span>
            </li>
        }
    };
    html! {
        <section class="steps" data-testid="paper-steps">
            <h2>{ w.steps }</h2>
            <p>{ w.used }</p>
            <ul>{ for answer.steps.iter().map(row) }</ul>
        </section>
    }
}
