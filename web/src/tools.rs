//! Units, undo and redo: always in the same corner.

use crate::book::{BookAct, use_book_act, use_present};
use crate::history::History;
use crate::places::Screen;
use crate::state::{Action, use_act};
use crate::words::words;
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct ToolsProps {
    pub system: System,
    pub history: Rc<History>,
    /// What is undone is what is shown: the check's last step, or the book's last change.
    #[prop_or_default]
    pub place: Screen,
}

/// Name, units, undo, redo.
#[component]
pub fn Tools(props: &ToolsProps) -> Html {
    let act = use_act();
    let (book_act, can_undo) = (use_book_act(), use_present().can_undo);
    let w = &words().tools;
    let step = |test: &'static str, name: &'static str, possible: bool, onclick: Callback<MouseEvent>| {
        html! { <button type="button" data-testid={test} disabled={!possible} {onclick}>{ name }</button> }
    };
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
            if props.place.is_check() {
                { step("undo", w.undo, props.history.can_undo(), send(Action::Undo)) }
                { step("redo", w.redo, props.history.can_redo(), send(Action::Redo)) }
            } else {
                { step("undo", w.undo, can_undo, book_act.reform(|_: MouseEvent| BookAct::Undo)) }
            }
        </div>
    }
}
