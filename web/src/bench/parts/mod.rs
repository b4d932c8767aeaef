//! The bench on which a load is built from parts.

use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::words;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct PartsProps {
    pub form: Form,
}

/// The bench.
#[component]
pub fn PartsBench(_: &PartsProps) -> Html {
    let act = use_act();
    let w = &words().parts;
    let back = Callback::from(move |_: MouseEvent| act.emit(Action::Bench(None)));
    html! {
        <section class="bench parts" data-testid="bench-parts" aria-label={w.heading}>
            <h2>{ w.heading }</h2>
            <button type="button" data-testid="bench-back" onclick={back}>{ w.back }</button>
        </section>
    }
}
