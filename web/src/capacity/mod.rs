//! The diagram of weight against load centre: what the plate allows, and beside it what the model would leave.

mod chart;
mod draw;
mod table;

use crate::answer::Answer;
use crate::drawing::write;
use crate::figures::Printer;
use crate::shared::Shared;
use crate::words::words;
pub use chart::{Chart, Curve, Stair};
use gloo::timers::callback::Timeout;
use standfast_core::capacity::diagram;
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

/// How long the entries must rest before the diagram is worked out anew, ms: never on the way of a drag.
const REST: u32 = 180;

#[derive(Properties, PartialEq)]
pub struct CapacityProps {
    pub answer: Shared<Answer>,
    pub system: System,
}

/// What was worked out, and from which answer.
#[derive(Clone, PartialEq)]
struct Worked {
    of: Shared<Answer>,
    chart: Option<Rc<Chart>>,
}

impl Worked {
    fn out(answer: &Shared<Answer>) -> Self {
        let found = answer.assessment.as_ref().and_then(|a| Some(Chart::of(&diagram(&answer.document)?, &a.plate)));
        Self { of: answer.clone(), chart: found.map(Rc::new) }
    }
}

/// The diagram with its legend and its numbers.
#[component]
pub fn Capacity(props: &CapacityProps) -> Html {
    let worked = {
        let answer = props.answer.clone();
        use_state(|| Worked::out(&answer))
    };
    let stale = worked.of != props.answer;
    {
        let worked = worked.clone();
        use_effect_with(props.answer.clone(), move |answer| {
            let answer = answer.clone();
            let later = (worked.of != answer).then(|| Timeout::new(REST, move || worked.set(Worked::out(&answer))));
            // Another change before it is due takes its place.
            move || drop(later)
        });
    }
    match &worked.chart {
        Some(chart) => html! { <View chart={Rc::clone(chart)} system={props.system} {stale} /> },
        None => Html::default(),
    }
}

#[derive(Properties, PartialEq)]
struct ViewProps {
    chart: Rc<Chart>,
    system: System,
    /// The entries have changed since.
    stale: bool,
}

#[component]
fn View(props: &ViewProps) -> Html {
    let w = &words().limits;
    let print = Printer(props.system);
    let items =
        use_memo((Rc::clone(&props.chart), props.system), |(chart, system)| draw::items(chart, Printer(*system)));
    let missing = if props.chart.stairs.is_empty() {
        Some(w.capacity_no_plate)
    } else if !props.chart.issued_so {
        Some(w.capacity_not_issued)
    } else {
        props.chart.governing().is_none().then_some(w.capacity_too_high)
    };
    html! {
        <div class={classes!("capacity", props.stale.then_some("stale"))} data-testid="capacity" aria-busy={props.stale.to_string()}>
            if let Some(missing) = missing {
                <p class="none" data-testid="capacity-missing">{ missing }</p>
            }
            <div class="scroll" role="region" tabindex="0" aria-label={w.capacity}>
                <svg
                    class="d c"
                    viewBox={format!("0 0 {} {}", draw::SIZE.0, draw::SIZE.1)}
                    role="img"
                    aria-label={w.capacity_about}
                    data-testid="capacity-diagram"
                >
                    { for items.iter().map(write::item) }
                </svg>
            </div>
            <p class="help">{ w.capacity_note }</p>
            if props.stale {
                <p class="unseen" role="status">{ w.capacity_stale }</p>
            }
            <details class="in-numbers">
                <summary data-testid="capacity-numbers">{ w.capacity_numbers }</summary>
                { table::numbers(&props.chart, print) }
            </details>
        </div>
    }
}

#[cfg(test)]
mod tests;
