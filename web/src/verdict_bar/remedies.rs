//! What would have to change, one button each: a tap enters it, undo takes it back.

use crate::answer::Answer;
use crate::entries::Entries;
use crate::figures::Printer;
use crate::sentences::{leads_to, remedy};
use crate::state::Action;
use crate::words::words;
use standfast_core::remedy::Leads;
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

/// The entries with a remedy in them.
pub(super) fn applied(leads: &Leads, answer: &Answer, entries: &Entries) -> Entries {
    let mut after = answer.document.clone();
    leads.remedy.apply(&mut after);
    let mut entries = entries.clone();
    entries.take_changes(&answer.document, &after);
    entries
}

/// The buttons; nothing where nothing helps.
pub(super) fn buttons(answer: &Answer, entries: &Rc<Entries>, system: System, act: &Callback<Action>) -> Html {
    let w = &words().blades;
    let Some(assessment) = answer.assessment.as_ref().filter(|a| !a.remedies.is_empty()) else {
        return Html::default();
    };
    let button = |(k, leads): (usize, &Leads)| {
        let onclick = {
            let (act, entries) = (act.clone(), Rc::new(applied(leads, answer, entries)));
            Callback::from(move |_: MouseEvent| act.emit(Action::Set(Rc::clone(&entries))))
        };
        html! {
            <button type="button" class="remedy" key={k} data-testid={format!("remedy-{k}")} {onclick}>
                <span>{ remedy(leads, &answer.document, Printer(system)) }</span>
                <span class="leads">{ leads_to(leads.state) }</span>
            </button>
        }
    };
    html! {
        <div class="remedies" role="group" aria-label={w.remedies} data-testid="remedies">
            { for assessment.remedies.iter().enumerate().map(button) }
        </div>
    }
}
