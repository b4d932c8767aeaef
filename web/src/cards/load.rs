//! The load's card: its shape, its weight, what was weighed, what that comes to, how it stands.

mod found;
mod picture;
mod shape;
mod stands;
mod weighed;

use super::group;
use crate::field::TextInput;
use crate::form::{Choosable, Form};
use crate::state::{Action, Choice, Text};
use crate::words::words;
use standfast_core::document::{GivenAs, WeightKnown};
use standfast_core::place::Field;
use yew::prelude::*;

pub(super) fn card(form: &Form, act: &Callback<Action>) -> Html {
    let w = words();
    let e = &form.entries;
    html! {
        <>
            <TextInput which={Text::LoadName} path="load.name" label={w.card.load_name} value={e.load_name.clone()} />
            { group(w.load.group_weight, weight(form, act)) }
            { group(w.load.group_shape, shape::shape(form, act)) }
            { group(w.load.weighed.name, weighed::weighed(form, act)) }
            { group(w.load.group_found, found::found(form)) }
            { group(w.load.group_stands, stands::stands(form, act)) }
        </>
    }
}

/// The weight as a whole, and how it is known.
fn weight(form: &Form, act: &Callback<Action>) -> Html {
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
    // A second way to know it, where shape or scales say it too.
    let second = e.given_as != GivenAs::Block || e.weighing.is_some();
    let empty = !e.numbers.contains_key(&Field::LoadMass.into());
    html! {
        <>
            { form.number(Field::LoadMass) }
            if second {
                <p class="hint under">{ words().load.weight_optional }</p>
            }
            if !(second && empty) {
                { form.choice(Field::WeightKnown, &known, act) }
            }
        </>
    }
}
