//! The load's card.

use super::group;
use crate::field::TextInput;
use crate::figures::share;
use crate::form::{Choosable, Form};
use crate::state::{Action, Choice, Text};
use crate::words::{fill, words};
use standfast_core::document::{CentreKnown, WeightKnown};
use standfast_core::place::Field;
use standfast_core::rules;
use yew::prelude::*;

pub(super) fn card(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let e = &form.entries;
    let known = |code, name, how| Choosable {
        code,
        name,
        chosen: e.weight_known == Some(how),
        choice: Choice::WeightKnown(how),
    };
    let known = [
        known("scale", w.scale, WeightKnown::Scale),
        known("note", w.note_on_load, WeightKnown::Note),
        known("estimate", w.estimate, WeightKnown::Estimate),
    ];
    let (text, tolerance) = match e.weight_known {
        Some(WeightKnown::Scale) => (w.give_or_take, rules::TOLERANCE_SCALE),
        Some(WeightKnown::Note) => (w.give_or_take, rules::TOLERANCE_NOTE),
        Some(WeightKnown::Estimate) => (w.give_or_take, rules::TOLERANCE_ESTIMATE),
        None => (w.not_chosen, rules::TOLERANCE_ESTIMATE),
    };
    let centre = |code, name, how| Choosable {
        code,
        name,
        chosen: e.centre_known == Some(how),
        choice: Choice::CentreKnown(how),
    };
    let centre = [centre("middle", w.middle, CentreKnown::Middle), centre("mark", w.mark, CentreKnown::Mark)];
    let numbers = |fields: &[Field]| html! { <>{ for fields.iter().map(|&f| form.number(f)) }</> };
    html! {
        <>
            <TextInput which={Text::LoadName} path="load.name" label={w.load_name} value={e.load_name.clone()} />
            { numbers(&[Field::LoadMass]) }
            { form.choice(Field::WeightKnown, &known, act) }
            <p class="hint under">{ fill(text, &[("percent", &share(tolerance.value))]) }</p>
            { group(w.group_size, numbers(&[Field::LoadLength, Field::LoadWidth, Field::LoadHeight])) }
            { group(w.group_centre, html! {
                <>
                    { form.choice(Field::CentreKnown, &centre, act) }
                    if e.centre_known == Some(CentreKnown::Mark) {
                        { numbers(&[Field::LoadCgFromHeel, Field::LoadCgLeft, Field::LoadCgAbove]) }
                    }
                </>
            }) }
        </>
    }
}
