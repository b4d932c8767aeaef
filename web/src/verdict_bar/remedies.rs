//! What would have to change, one button each: a tap enters it, undo takes it back.

use crate::answer::Answer;
use crate::entries::Entries;
use crate::figures::Printer;
use crate::jump;
use crate::sentences::{leads_to, needed, remedy, settles};
use crate::state::Action;
use crate::words::words;
use standfast_core::place::Place;
use standfast_core::remedy::Leads;
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

/// The entries with a remedy in them.
pub(super) fn applied(leads: &Leads, answer: &Answer, entries: &Entries) -> Entries {
    let mut after = answer.document.clone();
    leads.changes.iter().for_each(|change| change.apply(&mut after));
    let mut entries = entries.clone();
    entries.take_changes(&answer.document, &after);
    entries
}

/// The buttons; nothing where it goes as it is.
pub(super) fn buttons(answer: &Answer, entries: &Rc<Entries>, system: System, act: &Callback<Action>) -> Html {
    let w = &words().remedies;
    let Some(assessment) = answer.assessment.as_ref() else { return Html::default() };
    let found = &assessment.remedies;
    let print = Printer(system);
    let change = |(k, leads): (usize, &Leads)| {
        let onclick = {
            let (act, entries) = (act.clone(), Rc::new(applied(leads, answer, entries)));
            Callback::from(move |_: MouseEvent| act.emit(Action::Set(Rc::clone(&entries))))
        };
        html! {
            <button type="button" class="remedy" key={k} data-testid={format!("remedy-{k}")} {onclick}>
                <span>{ remedy(leads, &answer.document, print) }</span>
                <span class="leads">{ leads_to(leads.state) }</span>
            </button>
        }
    };
    let settle = |place: &Place| {
        let place = *place;
        let act = act.clone();
        let onclick = Callback::from(move |_: MouseEvent| jump::to(place, &act));
        html! {
            <button type="button" class="remedy measure" data-testid={format!("settle-{place}")} {onclick}>
                <span>{ settles(place) }</span>
                <span class="leads">{ w.settles_then }</span>
            </button>
        }
    };
    if found.leads.is_empty() && found.settle.is_empty() {
        return found.needed.as_ref().map_or_else(Html::default, |n| {
            html! { <p class="needed" data-testid="needed">{ needed(n, print) }</p> }
        });
    }
    html! {
        <div class="remedies" role="group" aria-label={w.heading} data-testid="remedies">
            { for found.leads.iter().enumerate().map(change) }
            { for found.settle.iter().map(settle) }
        </div>
    }
}
