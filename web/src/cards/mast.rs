//! The moving mast sections.

use crate::form::Form;
use crate::jump::element_id;
use crate::state::Action;
use crate::words::{fill, words};
use standfast_core::place::{Field, Place};
use standfast_core::validate::MOST_STAGES;
use yew::prelude::*;

/// What is entered of them.
pub(super) const FIELDS: [Field; 3] = [Field::Stages, Field::StageMass, Field::StageRatio];

pub(super) fn sections(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let count = form.entries.stages;
    let send = |action: Action| {
        let act = act.clone();
        Callback::from(move |_: MouseEvent| act.emit(action.clone()))
    };
    let number = |text: &str, row: usize| fill(text, &[("n", &(row + 1).to_string())]);
    let section = |row: usize| {
        html! {
            <fieldset class="section" key={row}>
                <legend>{ number(w.section, row) }</legend>
                { form.number(Place::in_row(Field::StageMass, row)) }
                { form.number(Place::in_row(Field::StageRatio, row)) }
                <button type="button" data-testid={format!("stage-remove-{row}")} onclick={send(Action::RemoveStage(row))}>
                    { number(w.remove_section, row) }
                </button>
            </fieldset>
        }
    };
    html! {
        <fieldset class="choice" id={element_id(Field::Stages.into())} tabindex="-1">
            <legend>{ w.sections }</legend>
            <p class="help">{ (words().field)(Field::Stages).help }</p>
            { for (0..count).map(section) }
            { form.message_below(Field::Stages) }
            if count < MOST_STAGES {
                <button type="button" data-testid="stage-add" onclick={send(Action::AddStage)}>{ w.add_section }</button>
            }
        </fieldset>
    }
}
