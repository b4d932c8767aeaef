//! What is looked at before the lift: one answer each, its source beside it.

use crate::entries::Entries;
use crate::form::{Form, code, source_text};
use crate::sentences;
use crate::state::{Action, Choice};
use crate::words::{fill, words};
use standfast_core::checklist::{self, Answer, Answers, Item};
use std::rc::Rc;
use yew::prelude::*;

/// What the closed card says.
pub(super) fn summary(form: &Form) -> String {
    let w = &words().checklist;
    let answers = &form.entries.checklist;
    if answers.is_empty() {
        return w.nothing_yet.to_owned();
    }
    let of = |answer: Answer| answers.values().filter(|a| **a == answer).count();
    let wrong = checklist::not_in_order(answers).len();
    // What this truck has none of needs no looking at.
    let lacking = of(Answer::NotThere) + of(Answer::No) - wrong;
    let all = (Item::ALL.len() - lacking).to_string();
    let line = fill(w.summary, &[("yes", &of(Answer::Yes).to_string()), ("all", &all)]);
    if wrong > 0 { format!("{line}, {}", w.summary_no.of(wrong)) } else { line }
}

pub(super) fn card(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().checklist;
    let anew = act.reform({
        let entries = Rc::clone(&form.entries);
        move |_: MouseEvent| Action::Set(Rc::new(Entries { checklist: Answers::new(), ..Entries::clone(&entries) }))
    });
    html! {
        <div class="checklist" data-testid="checklist">
            <p class="help">{ w.intro }</p>
            if let Some(said) = sentences::not_in_order(&form.entries.checklist) {
                <p class="message" role="status" data-testid="not-in-order">{ said }</p>
            }
            { for Item::ALL.iter().map(|item| row(*item, form, act)) }
            <button
                type="button"
                class="anew"
                data-testid="checklist-anew"
                disabled={form.entries.checklist.is_empty()}
                onclick={anew}
            >
                { w.anew }
            </button>
        </div>
    }
}

fn row(item: Item, form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().checklist;
    let label = (w.item)(item);
    let name = code(&item);
    let now = form.entries.checklist.get(&item).copied();
    let (source, mark) = item.source();
    let options = [(Answer::Yes, w.yes), (Answer::No, w.no), (Answer::NotThere, w.not_there)];
    let offered = options.into_iter().filter(|(answer, _)| *answer != Answer::NotThere || item.may_lack());
    let button = |(answer, text): (Answer, &'static str)| {
        let pressed = now == Some(answer);
        let seen = Choice::Seen(item, (!pressed).then_some(answer));
        let answer = code(&answer);
        html! {
            <button
                key={answer.clone()}
                type="button"
                class={classes!("segment", format!("answer-{answer}"))}
                aria-pressed={if pressed { "true" } else { "false" }}
                data-testid={format!("check-{name}-{answer}")}
                onclick={act.reform(move |_: MouseEvent| Action::Choose(seen))}
            >
                { text }
            </button>
        }
    };
    let wrong = checklist::not_in_order(&form.entries.checklist).contains(&item);
    html! {
        <fieldset key={name.clone()} class={classes!("choice", "seen", wrong.then_some("wrong"))}>
            <legend>{ label.name }</legend>
            <p class="what">{ label.help }<span class="source">{ source_text(source, mark) }</span></p>
            <div class="segments">{ for offered.map(button) }</div>
        </fieldset>
    }
}
