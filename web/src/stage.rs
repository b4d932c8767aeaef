//! The drawings of one step, the steps, the numbers and the working.

use crate::answer::Answer;
use crate::capacity::Capacity;
use crate::drawing::{self, Drawing, Moved, Phase, View};
use crate::entries::Entries;
use crate::fold::Fold;
use crate::gains::Gains;
use crate::grip::Grip;
use crate::limits::limits;
use crate::may_stand::{self, use_may_stand};
use crate::shared::Shared;
use crate::state::{Action, use_act};
use crate::step_strip::StepStrip;
use crate::words::words;
use crate::working::working;
use standfast_core::report::StepReport;
use standfast_core::step::StepId;
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct StageProps {
    pub entries: Rc<Entries>,
    pub answer: Shared<Answer>,
    pub system: System,
    /// The step the person picked.
    pub picked: Option<StepId>,
}

/// Drawings, steps, numbers, working.
#[component]
pub fn Stage(props: &StageProps) -> Html {
    let w = &words().stage;
    let governing = props.answer.assessment.as_ref().map(|a| a.governing_step);
    // A step that was picked may have left the move.
    let shown = props.picked.filter(|id| props.answer.step(*id).is_some()).or(governing);
    let step = shown.and_then(|id| props.answer.step(id)).cloned();
    html! {
        <section class="stage">
            <h2 class="unseen">{ w.heading }</h2>
            <Drawings
                entries={Rc::clone(&props.entries)}
                answer={props.answer.clone()}
                system={props.system}
                step={step.clone()}
            />
            <StepStrip entries={Rc::clone(&props.entries)} answer={props.answer.clone()} {shown} />
            if let Some(step) = step {
                { folds(step, props) }
            }
        </section>
    }
}

fn folds(step: Rc<StepReport>, props: &StageProps) -> Html {
    let w = &words().stage;
    let system = props.system;
    let numbers = {
        let step = Rc::clone(&step);
        Callback::from(move |()| drawing::numbers_table(&step, system, &drawing::ENGLISH))
    };
    let (answer, entries) = (props.answer.clone(), Rc::clone(&props.entries));
    let gains = {
        let (answer, entries) = (answer.clone(), Rc::clone(&entries));
        Callback::from(move |()| {
            html! { <Gains entries={Rc::clone(&entries)} answer={answer.clone()} {system} /> }
        })
    };
    let limits = {
        let (answer, step) = (answer.clone(), Rc::clone(&step));
        Callback::from(move |()| limits(&answer, &step, system))
    };
    let capacity = {
        let answer = answer.clone();
        Callback::from(move |()| html! { <Capacity answer={answer.clone()} {system} /> })
    };
    let working = Callback::from(move |()| working(&step, &answer, &entries, system));
    html! {
        <>
            <Fold name={words().limits.gains} test="gains-fold" inside={gains} />
            <Fold name={words().limits.limits} test="limits-fold" inside={limits} />
            <Fold name={words().limits.capacity} test="capacity-fold" inside={capacity} />
            <Fold name={w.table} test="numbers" inside={numbers} />
            <Fold name={w.working} test="working" inside={working} />
        </>
    }
}

#[derive(Properties, PartialEq)]
struct DrawingsProps {
    entries: Rc<Entries>,
    answer: Shared<Answer>,
    system: System,
    step: Option<Rc<StepReport>>,
}

#[component]
fn Drawings(props: &DrawingsProps) -> Html {
    let act = use_act();
    let w = &words().stage;
    let small = use_state(|| View::Side);
    let wanted = use_state(|| false);
    let laden = props.step.as_ref().filter(|s| s.laden).map(|s| s.id);
    let shown = use_may_stand(*wanted, &props.answer, laden);
    let want = {
        let wanted = wanted.clone();
        Callback::from(move |_: MouseEvent| wanted.set(!*wanted))
    };
    let on_moved = {
        let deps = (act, Rc::clone(&props.entries), props.answer.clone(), props.step.as_ref().map(|s| s.id));
        use_callback(deps, |moved: Moved, (act, entries, answer, step)| match (moved.phase, step) {
            (Phase::Begin, Some(step)) => {
                if let Some(grip) = Grip::of(moved.handle, *step, answer, entries) {
                    act.emit(Action::Hold(Rc::new(grip)));
                }
            }
            (Phase::Begin, None) => {}
            (Phase::Move, _) => act.emit(Action::Drag(moved.by)),
            (Phase::End, _) => act.emit(Action::Release(moved.by)),
        })
    };
    let toggle = |view: View, name: &'static str, test: &'static str| {
        let small_now = *small == view;
        let small = small.clone();
        let onclick = Callback::from(move |_: MouseEvent| small.set(view));
        html! {
            <button
                type="button"
                class="segment"
                aria-pressed={if small_now { "true" } else { "false" }}
                data-testid={test}
                {onclick}
            >
                { name }
            </button>
        }
    };
    let drawing = |view: View, class: &'static str, name: &'static str| {
        let step = props.step.clone();
        let (system, on_moved) = (props.system, on_moved.clone());
        let may_stand = shown.clone().filter(|_| view == View::Plan);
        html! {
            <figure class={classes!("drawing", class, (*small == view).then_some("on"))}>
                <figcaption><span class="name">{ name }</span><span class="frame-note">{ drawing::ENGLISH.frame }</span></figcaption>
                if let Some(step) = step {
                    <Drawing {view} {step} {system} labels={&drawing::ENGLISH} {may_stand} {on_moved} />
                } else {
                    <p class="blank">{ w.nothing_drawn }</p>
                }
                if view == View::Plan && laden.is_some() {
                    { may_stand::button(*wanted, shown.as_ref(), system, want.clone()) }
                }
            </figure>
        }
    };
    html! {
        <>
            <div class="which segments" role="group" aria-label={w.which_drawing}>
                { toggle(View::Side, w.side, "show-side") }
                { toggle(View::Plan, w.plan, "show-plan") }
            </div>
            <div class="drawings">
                { drawing(View::Side, "side", w.side) }
                { drawing(View::Plan, "plan", w.plan) }
            </div>
        </>
    }
}
