//! The bench on which a load is traced from a picture.

mod glass;
mod hand;
mod kept;
mod paper;
pub mod points;
mod prepare;
pub mod steps;

use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::words;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct TraceProps {
    pub form: Form,
}

/// The bench.
#[component]
pub fn TraceBench(_: &TraceProps) -> Html {
    let act = use_act();
    let w = &words().trace;
    let back = Callback::from(move |_: MouseEvent| act.emit(Action::Bench(None)));
    html! {
        <section class="bench trace" data-testid="bench-trace" aria-label={w.heading}>
            <h2>{ w.heading }</h2>
            <button type="button" data-testid="bench-back" onclick={back}>{ w.back }</button>
        </section>
    }
}
