//! The steps of the lift as buttons, each with the share used as a bar.

use crate::answer::Answer;
use crate::figures::share;
use crate::shared::Shared;
use crate::state::{Action, use_act};
use crate::storage::name;
use crate::words::{fill, words};
use standfast_core::step::StepId;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct StripProps {
    pub answer: Shared<Answer>,
    /// The step that is shown.
    pub shown: Option<StepId>,
}

/// How far the bar reaches, in percent: a little beyond the limit.
const FULL: f64 = 125.0;

/// The strip.
#[component]
pub fn StepStrip(props: &StripProps) -> Html {
    let act = use_act();
    let w = &words().stage;
    let governing = props.answer.assessment.as_ref().map(|a| a.governing_step);
    let step = |id: StepId| {
        let act = act.clone();
        let onclick = Callback::from(move |_: MouseEvent| act.emit(Action::Pick(id)));
        let used = props.answer.step(id).map(|s| s.share.worst.get());
        let over = props.answer.step(id).is_some_and(|s| !s.passes_worst);
        html! {
            <li key={name(id)}>
                <button
                    type="button"
                    class={classes!("step", over.then_some("over"), (governing == Some(id)).then_some("tightest"))}
                    data-testid={format!("step-{}", name(id))}
                    aria-pressed={if props.shown == Some(id) { "true" } else { "false" }}
                    {onclick}
                >
                    <span class="name">{ (words().step)(id).name }</span>
                    { bar(used, over) }
                    <span class="used">
                        if let Some(used) = used {
                            { fill(w.used, &[("share", &share(used))]) }
                        } else {
                            { "\u{2013}" }
                        }
                    </span>
                    if over || governing == Some(id) {
                        <span class="tags">
                            if over {
                                <strong class="tag over">{ w.over }</strong>
                            }
                            if governing == Some(id) {
                                <span class="tag">{ w.tightest }</span>
                            }
                        </span>
                    }
                </button>
            </li>
        }
    };
    html! {
        <section class="strip" aria-label={w.steps}>
            <h3>{ w.steps }</h3>
            <p class="help">{ w.steps_help }</p>
            <ol>{ for StepId::ALL.map(step) }</ol>
        </section>
    }
}

fn bar(used: Option<f64>, over: bool) -> Html {
    let width = (100.0 * used.unwrap_or_default()).clamp(0.0, FULL);
    html! {
        <svg
            class={classes!("bar", over.then_some("over"))}
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
