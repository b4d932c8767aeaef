//! The steps of the move as buttons: each with its picture, its mark and the share used as a bar.

use crate::answer::Answer;
use crate::entries::Entries;
use crate::figures::share;
use crate::play::{Play, PlayButton};
use crate::sentences::{Shown, step_of};
use crate::shared::Shared;
use crate::state::{Action, use_act};
use crate::step_icon::step_icon;
use crate::storage::name;
use crate::verdict_mark::verdict_mark;
use crate::words::{fill, words};
use standfast_core::document::RampDown;
use standfast_core::report::StepReport;
use standfast_core::step::StepId;
use standfast_core::verdict::{Reason, State};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, ScrollIntoViewOptions, ScrollLogicalPosition};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct StripProps {
    pub entries: Rc<Entries>,
    pub answer: Shared<Answer>,
    /// The step that is shown.
    pub shown: Option<StepId>,
}

/// How far the bar reaches, in percent: a little beyond the limit.
const FULL: f64 = 125.0;

/// How one step fares.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fares {
    /// The mark: as the verdict's, of this step alone.
    pub mark: Shown,
    /// The state that the load leads to which topples or slides on the forks.
    pub load_moves: Option<State>,
}

/// How a step fares: by the verdict's own reasons that are about it.
pub fn fares(answer: &Answer, id: StepId) -> Fares {
    let Some(assessment) = answer.assessment.as_ref() else { return Fares { mark: Shown::None, load_moves: None } };
    let verdict = &assessment.verdict;
    let all = std::iter::once(&verdict.governing).chain(&verdict.others);
    let mut fares = Fares { mark: Shown::Go, load_moves: None };
    for ground in all.filter(|g| step_of(&g.reason) == Some(id)) {
        if matches!(ground.reason, Reason::Topples { .. } | Reason::Slides { .. }) {
            fares.load_moves = Some(fares.load_moves.map_or(ground.state, |s| s.min(ground.state)));
        }
        fares.mark = match (ground.state, fares.mark) {
            (State::NoGo, _) | (_, Shown::NoGo) => Shown::NoGo,
            (State::Hold, _) => Shown::Hold,
            (State::Go, mark) => mark,
        };
    }
    fares
}

/// The steps of the move, in order; without an answer those that the entries lead to expect.
pub fn steps(answer: &Answer, entries: &Entries) -> Vec<StepId> {
    if answer.steps.is_empty() {
        StepId::ALL.into_iter().filter(|&id| entries.has_step(id)).collect()
    } else {
        answer.steps.iter().map(|s| s.id).collect()
    }
}

/// The step that a key leads to.
pub fn led_to(key: &str, steps: &[StepId], shown: Option<StepId>) -> Option<StepId> {
    let at = steps.iter().position(|s| Some(*s) == shown);
    let last = steps.len().checked_sub(1)?;
    let to = match (key, at) {
        ("ArrowRight", Some(at)) => (at + 1).min(last),
        ("ArrowLeft", Some(at)) => at.saturating_sub(1),
        ("Home", _) | ("ArrowRight", None) => 0,
        ("End", _) | ("ArrowLeft", None) => last,
        _ => return None,
    };
    steps.get(to).copied()
}

/// The strip.
#[component]
pub fn StepStrip(props: &StripProps) -> Html {
    let act = use_act();
    let w = &words().stage;
    let list = use_node_ref();
    let steps = Rc::new(steps(&props.answer, &props.entries));
    let governing = props.answer.assessment.as_ref().map(|a| a.governing_step);
    let shown = props.shown.filter(|id| steps.contains(id));
    {
        // On a phone the strip scrolls sideways: what is shown comes into sight.
        let list = list.clone();
        use_effect_with(shown, move |shown| {
            if let Some(button) = shown.and_then(|id| button_of(&list, id)) {
                let options = ScrollIntoViewOptions::new();
                options.set_inline(ScrollLogicalPosition::Nearest);
                options.set_block(ScrollLogicalPosition::Nearest);
                let strip = list.cast::<HtmlElement>();
                if strip.is_some_and(|s| s.scroll_width() > s.client_width()) {
                    button.scroll_into_view_with_scroll_into_view_options(&options);
                }
            }
        });
    }
    let onkeydown = {
        let (act, steps, list) = (act.clone(), Rc::clone(&steps), list.clone());
        Callback::from(move |event: KeyboardEvent| {
            if let Some(to) = led_to(&event.key(), &steps, shown) {
                event.prevent_default();
                act.emit(Action::Pick(to));
                if let Some(button) = button_of(&list, to) {
                    let _ = button.focus();
                }
            }
        })
    };
    let first = shown.or_else(|| steps.first().copied());
    let button = |id: StepId| {
        let act = act.clone();
        let onclick = Callback::from(move |_: MouseEvent| act.emit(Action::Pick(id)));
        let view =
            ButtonView { id, governing: governing == Some(id), shown: shown == Some(id), at_hand: first == Some(id) };
        html! { <li key={name(id)}>{ view.html(&props.answer, onclick) }</li> }
    };
    let play = Play { steps: Rc::clone(&steps), shown, picked_up: props.answer.assessment.is_some() };
    html! {
        <section class="strip" aria-label={w.steps}>
            <div class="strip-head">
                <div>
                    <h3>{ w.steps }</h3>
                    <p class="help">{ w.steps_help }</p>
                </div>
                <PlayButton {play} />
            </div>
            <ol ref={list} {onkeydown}>{ for steps.iter().map(|&id| button(id)) }</ol>
        </section>
    }
}

fn button_of(list: &NodeRef, id: StepId) -> Option<HtmlElement> {
    let found = list.cast::<web_sys::Element>()?.query_selector(&format!("[data-testid=\"step-{}\"]", name(id)));
    found.ok().flatten()?.dyn_into().ok()
}

/// One step's button.
struct ButtonView {
    id: StepId,
    governing: bool,
    shown: bool,
    /// Whether the tab key leads to it; the arrow keys lead on from there.
    at_hand: bool,
}

impl ButtonView {
    fn html(&self, answer: &Answer, onclick: Callback<MouseEvent>) -> Html {
        let (id, w) = (self.id, &words().stage);
        let step: Option<&StepReport> = answer.step(id).map(AsRef::as_ref);
        let fares = fares(answer, id);
        let d = &words().drive;
        let over = step.filter(|s| !s.passes_worst).map(|s| if s.passes { State::Hold } else { State::NoGo });
        let downhill = answer.document.drive.ramp_down == Some(RampDown::Forwards);
        html! {
            <button
                type="button"
                class={classes!("step", fares.mark.code(), (!id.laden()).then_some("empty"), self.governing.then_some("tightest"))}
                data-testid={format!("step-{}", name(id))}
                data-state={fares.mark.code()}
                aria-pressed={if self.shown { "true" } else { "false" }}
                tabindex={if self.at_hand { "0" } else { "-1" }}
                {onclick}
            >
                <span class="signs">{ step_icon(id, downhill) }{ verdict_mark(fares.mark) }</span>
                <span class="name">{ (words().step)(id).name }</span>
                { bar(step.map(|s| s.used.worst.get()), fares.mark) }
                <span class="used">
                    if let Some(step) = step {
                        { fill(w.used, &[("share", &share(step.used.worst.get()))]) }
                    } else {
                        { "\u{2013}" }
                    }
                    <span class="unseen">{ format!(" {}", said(fares.mark)) }</span>
                </span>
                if self.governing || over.is_some() || fares.load_moves.is_some() {
                    <span class="tags">
                        if self.governing {
                            <span class="tag">{ w.tightest }</span>
                        }
                        { for over.map(|state| tag(state, w.over, d.may_be_over)) }
                        { for fares.load_moves.map(|state| tag(state, d.load_moves, d.load_may_move)) }
                    </span>
                }
            </button>
        }
    }
}

/// A mark in words: as stated, or only at the worst.
fn tag(state: State, stated: &'static str, may: &'static str) -> Html {
    let (class, text) = if state == State::NoGo { ("tag over", stated) } else { ("tag may", may) };
    html! { <strong {class}>{ text }</strong> }
}

/// How a step fares, for those who cannot see its mark.
fn said(mark: Shown) -> &'static str {
    let w = &words().drive;
    match mark {
        Shown::Go => w.stands,
        Shown::Hold => w.stands_stated,
        Shown::NoGo => w.fails,
        Shown::None => w.no_answer,
    }
}

fn bar(used: Option<f64>, mark: Shown) -> Html {
    let width = (100.0 * used.unwrap_or_default()).clamp(0.0, FULL);
    let over = used.is_some_and(|u| u > 1.0).then(|| mark.code());
    html! {
        <svg
            class={classes!("bar", over)}
            viewBox="0 0 125 10"
            preserveAspectRatio="none"
            aria-hidden="true"
            focusable="false"
        >
            <rect class="track" x="0" y="2" width="125" height="6" />
            <rect class="filled" x="0" y="2" width={format!("{width:.1}")} height="6" />
            <path class="limit" d="M100 0V10" />
        </svg>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::example;
    use standfast_core::place::Field;
    use standfast_core::units::System;
    use yew::LocalServerRenderer;

    fn entries(figures: &[(Field, &str)]) -> Entries {
        let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
        for (field, text) in figures {
            entries.enter((*field).into(), text, System::Metric);
        }
        entries
    }

    async fn strip(entries: Entries) -> String {
        let entries = Rc::new(entries);
        let answer: Shared<Answer> = Rc::new(Answer::of(&entries)).into();
        let props = StripProps { entries, answer, shown: None };
        LocalServerRenderer::<StepStrip>::with_props(props).hydratable(false).render().await
    }

    #[test]
    fn keys_lead_along_the_steps_and_stop_at_the_ends() {
        let all = StepId::ALL;
        assert_eq!(led_to("ArrowRight", &all, Some(StepId::Travel)), Some(StepId::Brake));
        assert_eq!(led_to("ArrowLeft", &all, Some(StepId::TakeUp)), Some(StepId::TakeUp));
        assert_eq!(led_to("End", &all, Some(StepId::TakeUp)), Some(StepId::EmptyCornerRight));
        assert_eq!(led_to("ArrowRight", &all, None), Some(StepId::TakeUp));
        assert_eq!(led_to("a", &all, Some(StepId::Travel)), None);
        assert_eq!(led_to("End", &[], None), None);
    }

    /// Ramp and cross-fall add their steps; what is left out takes its steps away.
    #[tokio::test]
    async fn only_the_steps_of_this_move_show() {
        let plain = entries(&[]);
        assert_eq!(steps(&Answer::of(&plain), &plain).len(), 12);
        let sloped = entries(&[(Field::RampGrade, "5"), (Field::CrossFall, "2")]);
        let html = strip(sloped.clone()).await;
        assert_eq!(html.matches("data-testid=\"step-").count(), 16);
        assert_eq!(html.matches("class=\"icon\"").count(), 16);
        let mut fewer = sloped;
        fewer.drive.corner = Some(false);
        assert!(!strip(fewer.clone()).await.contains("step-corner_left"));
        // Without an answer the same steps wait.
        let before = steps(&Answer::of(&fewer), &fewer);
        fewer.enter(Field::LoadMass.into(), "", System::Metric);
        assert_eq!(steps(&Answer::of(&fewer), &fewer), before);
    }

    /// A step's mark is the verdict's own: of the worst reason that is about it.
    #[test]
    fn a_step_is_marked_by_the_reasons_about_it() {
        let fast = Answer::of(&entries(&[(Field::CornerSpeed, "20")]));
        for id in [StepId::CornerLeft, StepId::CornerRight] {
            assert_eq!(fares(&fast, id).mark, Shown::NoGo);
        }
        assert_eq!(fares(&fast, StepId::TakeUp), Fares { mark: Shown::Go, load_moves: None });
        let mut downhill = entries(&[(Field::RampGrade, "10.5"), (Field::Braking, "0.2")]);
        downhill.drive.ramp_down = Some(RampDown::Forwards);
        let answer = Answer::of(&downhill);
        assert_eq!(fares(&answer, StepId::RampDown).mark, Shown::NoGo);
        assert_eq!(fares(&Answer::of(&Entries::blank()), StepId::TakeUp).mark, Shown::None);
    }

    #[tokio::test]
    async fn one_step_is_reached_by_the_tab_key_and_marks_have_words() {
        let html = strip(entries(&[(Field::CornerSpeed, "20")])).await;
        assert_eq!(html.matches("tabindex=\"0\"").count(), 1);
        assert!(html.contains(" fails") && html.contains(" passes") && html.contains("OVER"));
        // What only the worst leads to is said as such.
        let html = strip(entries(&[(Field::CornerSpeed, "6")])).await;
        assert!(html.contains("LOAD MAY MOVE") && html.contains(" hold") && !html.contains("LOAD MOVES"));
    }
}
