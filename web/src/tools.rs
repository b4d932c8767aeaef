//! Units, undo and redo: always in the same corner.

use crate::history::History;
use crate::state::{Action, use_act};
use crate::words::words;
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct ToolsProps {
    pub system: System,
    pub history: Rc<History>,
}

/// Name, units, undo, redo.
#[component]
pub fn Tools(props: &ToolsProps) -> Html {
    let act = use_act();
    let w = &words().tools;
    let send = |action: Action| {
        let act = act.clone();
        Callback::from(move |_: MouseEvent| act.emit(action.clone()))
    };
    let unit = |system: System, name: &'static str, test: &'static str| {
        html! {
            <button
                type="button"
                class="segment"
                aria-pressed={if props.system == system { "true" } else { "false" }}
                data-testid={test}
                onclick={send(Action::Units(system))}
            >
                { name }
            </button>
        }
    };
    html! {
        <div class="tools">
            <h1>{ w.app }</h1>
            <div class="segments" role="group" aria-label={w.units}>
                { unit(System::Metric, w.metric, "units-metric") }
                { unit(System::Us, w.us, "units-us") }
            </div>
            <button
                type="button"
                data-testid="undo"
                disabled={!props.history.can_undo()}
                onclick={send(Action::Undo)}
            >
                { w.undo }
            </button>
            <button
                type="button"
                data-testid="redo"
                disabled={!props.history.can_redo()}
                onclick={send(Action::Redo)}
            >
                { w.redo }
            </button>
        </div>
    }
}
