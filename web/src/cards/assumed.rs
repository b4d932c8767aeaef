//! What was assumed or inferred, with its range and where it comes from.

use crate::figures::Printer;
use crate::form::{Form, basis};
use crate::jump;
use crate::sentences::name_of;
use crate::state::Action;
use crate::words::words;
use standfast_core::scenario::Assumed;
use yew::prelude::*;

pub(super) fn card(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let Some(assessment) = &form.answer.assessment else {
        return html! { <p>{ w.assumed_later }</p> };
    };
    if assessment.assumed.is_empty() {
        return html! { <p>{ w.assumed_none }</p> };
    }
    html! {
        <>
            <p>{ w.assumed_intro }</p>
            <ul class="assumed">
                { for assessment.assumed.iter().map(|a| item(form, a, act)) }
            </ul>
        </>
    }
}

fn item(form: &Form, assumed: &Assumed, act: &Callback<Action>) -> Html {
    let place = assumed.place;
    let enter = {
        let act = act.clone();
        Callback::from(move |_: MouseEvent| jump::to(place, &act))
    };
    html! {
        <li key={place.to_string()} data-testid={format!("assumed-{place}")}>
            <span class="name">{ name_of(place) }</span>
            <span class="figure">{ Printer(form.system).taken(place, assumed.lo.get(), assumed.hi.get()) }</span>
            <span class="help">{ basis(assumed) }</span>
            <button type="button" onclick={enter}>{ words().card.enter_it }</button>
        </li>
    }
}
