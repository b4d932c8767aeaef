//! What was assumed or inferred, with its range and where it comes from.

use crate::figures::{Printer, number};
use crate::form::{Form, basis, source};
use crate::jump;
use crate::sentences::name_of;
use crate::state::Action;
use crate::words::words;
use standfast_core::report::BuiltInReport;
use standfast_core::rules::BuiltIn;
use standfast_core::scenario::Assumed;
use standfast_core::units::Rounding;
use yew::prelude::*;

pub(super) fn card(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let Some(assessment) = &form.answer.assessment else {
        return html! { <p>{ w.assumed_later }</p> };
    };
    html! {
        <>
            if assessment.assumed.is_empty() {
                <p>{ w.assumed_none }</p>
            } else {
                <p>{ w.assumed_intro }</p>
                <ul class="assumed">
                    { for assessment.assumed.iter().map(|a| item(form, a, act)) }
                </ul>
            }
            <p>{ w.built_in }</p>
            <ul class="assumed" data-testid="built-in">
                { for assessment.built_in.iter().map(|b| built_in(form, b)) }
            </ul>
        </>
    }
}

/// A figure of the model's own: nobody can enter it, everybody may know it.
fn built_in(form: &Form, figure: &BuiltInReport) -> Html {
    let w = words();
    let value = figure.value.get();
    let part = |of: &str| of.replace("{n}", &number(100.0 * value, 0, Rounding::Nearest));
    let shown = match figure.what {
        BuiltIn::OperatorBehind => part(w.card.of_wheelbase),
        BuiltIn::ForksAhead => part(w.card.of_blade),
        _ => Printer(form.system).length(value, Rounding::Nearest),
    };
    html! {
        <li>
            <span class="name">{ (w.built_in)(figure.what) }</span>
            <span class="figure">{ shown }</span>
            <span class="help">{ source(&figure.what.figure()) }</span>
        </li>
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
