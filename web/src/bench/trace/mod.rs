//! The bench on which a load is traced from a picture: steps, the sheet, the figures of a step, what
//! comes out.
//!
//! Points are pixels of the picture as it is kept. What fingers do with them is worked out apart from
//! the page ([`hand`], [`points`], [`glass`]); sizes and the centre come from the core alone.

mod drawn;
mod glass;
mod ground;
mod hand;
mod kept;
mod list;
mod load;
mod loupe;
mod panel;
mod paper;
mod photo;
pub mod points;
mod prepare;
mod result;
mod sheet;
pub mod steps;
#[cfg(test)]
mod tests;
mod watch;

use crate::entries::{Entries, Ground};
use crate::fold::Fold;
use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::words;
use ground::GroundStep;
use list::PointList;
use panel::Panel;
use photo::use_photo;
use points::At;
use sheet::Sheet;
use steps::{Progress, Step};
use yew::prelude::*;

/// At the start of a visit: a photo that these entries do not trace on is removed from the browser.
pub fn tidy(entries: &Entries) {
    kept::tidy(entries.trace.as_ref().and_then(|t| match t.ground {
        Ground::Photo(number) => Some(number),
        Ground::Paper | Ground::Gone => None,
    }));
}

#[derive(Properties, PartialEq)]
pub struct TraceProps {
    pub form: Form,
}

/// The bench.
#[component]
pub fn TraceBench(props: &TraceProps) -> Html {
    let act = use_act();
    let form = &props.form;
    let w = &words().trace;
    let step = use_state(|| Step::first(form));
    let (hole, snap) = (use_state(|| false), use_state(|| true));
    let chosen = use_state(|| None::<At>);
    let trace = form.entries.trace.clone().unwrap_or_default();
    {
        // A hole that was begun is no longer asked for.
        let (hole, begun) = (hole.setter(), !trace.open.is_empty());
        use_effect_with(begun, move |begun| {
            if *begun {
                hole.set(false);
            }
        });
    }
    let side = use_node_ref();
    {
        // What is to be typed in a step stands on top.
        let side = side.clone();
        use_effect_with(*step, move |_| {
            if let Some(side) = side.cast::<web_sys::Element>() {
                side.set_scroll_top(0);
            }
        });
    }
    let ready = {
        let step = step.setter();
        use_callback((), move |(), ()| step.set(Step::Scale))
    };
    let paper_ready = {
        let step = step.setter();
        use_callback((), move |(), ()| step.set(Step::Outline))
    };
    let photo = use_photo(form, ready);
    let choose = {
        let chosen = chosen.setter();
        use_callback((), move |at: Option<At>, ()| chosen.set(at))
    };
    let on_paper = trace.ground == Ground::Paper;
    let back = act.reform(|_: MouseEvent| Action::Bench(None));
    let panel = Panel { form, trace: &trace, act: &act };
    let task = step.task(*hole);
    let inside = match *step {
        Step::Picture => html! { <GroundStep form={form.clone()} photo={photo.clone()} ready={paper_ready} /> },
        Step::Scale => panel.scale(),
        Step::Straighten => panel.straighten(),
        Step::Outline => panel.outline(&hole, on_paper.then_some(&snap)),
        Step::Load => panel.load(),
    };
    let points = {
        let form = form.clone();
        Callback::from(move |()| html! { <PointList form={form.clone()} {task} /> })
    };
    let good = Callback::from(|()| {
        html! { <ul class="tr-good">{ for words().trace.good_list.iter().map(|line| html! { <li>{ line }</li> }) }</ul> }
    });
    html! {
        <section class="stage bench tr" data-testid="bench-trace" aria-label={w.heading}>
            <div class="tr-head">
                <h2>{ w.heading }</h2>
                <button type="button" data-testid="bench-back" onclick={back}>{ w.back }</button>
                <ol class="tr-steps" aria-label={w.steps}>
                    { for Step::ALL.into_iter().enumerate().map(|(n, s)| step_button(n, s, *step == s, s.progress(form), &step)) }
                </ol>
            </div>
            <div class="tr-left">
                <p class="tr-do" role="status" data-testid="trace-do">{ step.to_do(&trace, *hole) }</p>
                if trace.picture.is_some() {
                    <Sheet form={form.clone()} {task} snap={on_paper && *snap} chosen={*chosen} {choose} data={photo.data.clone()} />
                } else {
                    <p class="tr-blank">{ w.no_picture_yet }</p>
                }
            </div>
            <div class="tr-right" ref={side}>
                <fieldset class="group tr-step" data-testid={format!("trace-panel-{}", step.key())}>
                    <legend>{ (w.step)(*step) }</legend>
                    { inside }
                </fieldset>
                { result::result(form) }
                <Fold name={w.list} test="trace-list" inside={points} />
                <Fold name={w.good} test="trace-good" inside={good} />
            </div>
        </section>
    }
}

fn step_button(n: usize, step: Step, on: bool, progress: Progress, now: &UseStateHandle<Step>) -> Html {
    let w = &words().trace;
    let now = now.setter();
    let onclick = Callback::from(move |_: MouseEvent| now.set(step));
    let (sign, said) = match progress {
        Progress::Done => ("\u{2713}", w.done),
        Progress::Wrong => ("!", w.wrong),
        Progress::Wanted => ("\u{2026}", w.wanted),
        Progress::Optional => ("", w.optional),
        Progress::Spared => ("\u{2013}", w.spared),
    };
    let holds = step.fields().iter().map(|f| f.row().path).collect::<Vec<_>>().join(" ");
    html! {
        <li key={step.key()}>
            <button
                type="button"
                class={classes!("segment", "tr-to", (progress == Progress::Wrong).then_some("tr-wrong"))}
                aria-pressed={if on { "true" } else { "false" }}
                data-testid={format!("trace-step-{}", step.key())}
                data-holds={holds}
                {onclick}
            >
                <span class="tr-number">{ n + 1 }</span>
                <span>{ (w.step)(step) }</span>
                <span class="tr-progress" aria-hidden="true">{ sign }</span>
                <span class="unseen">{ format!(", {said}") }</span>
            </button>
        </li>
    }
}
