//! The bar that always shows the verdict: mark, word, the governing reason with its numbers.

mod remedies;

use crate::answer::{Answer, Card};
use crate::book::to_log;
use crate::entries::Entries;
use crate::jump;
use crate::request;
use crate::sentences::{Sentence, Shown, reasons};
use crate::shared::Shared;
use crate::state::{Action, use_act};
use crate::verdict_mark::verdict_mark;
use crate::words::words;
use standfast_core::place::Place;
use standfast_core::plate::Gap;
use standfast_core::units::System;
use standfast_core::verdict::Reason;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct VerdictProps {
    pub answer: Shared<Answer>,
    pub entries: Rc<Entries>,
    pub system: System,
}

/// The bar.
#[component]
pub fn VerdictBar(props: &VerdictProps) -> Html {
    let act = use_act();
    let all = use_state(|| false);
    let w = &words().verdict;
    let shown = Shown::of(&props.answer);
    let list = reasons(&props.answer, &props.entries, props.system);
    let Some((first, others)) = list.split_first() else { return Html::default() };
    let go = |place: Place| {
        let act = act.clone();
        let onclick = Callback::from(move |_: MouseEvent| jump::to(place, &act));
        html! { <button type="button" class="go" data-testid="verdict-go" {onclick}>{ w.go_there }</button> }
    };
    let to_list = act.reform(|_: MouseEvent| {
        jump::show("card-checklist-head".to_owned());
        Action::Open(Some(Card::Checklist))
    });
    let toggle = {
        let all = all.clone();
        Callback::from(move |_: MouseEvent| all.set(!*all))
    };
    let count = if shown == Shown::None { w.more_problems } else { w.more_reasons };
    let other = |s: &Sentence| {
        html! {
            <li>
                <span>{ &s.main }</span>
                if let Some(place) = s.at { { go(place) } }
            </li>
        }
    };
    html! {
        <section class={classes!("verdict", shown.code())} data-testid="verdict" data-state={shown.code()} aria-label={w.heading}>
            <h2 class="unseen">{ w.heading }</h2>
            { verdict_mark(shown) }
            <div class="said">
                <div aria-live="polite" aria-atomic="true">
                    <p class="word" data-testid="verdict-word">{ shown.word() }</p>
                    <p class="reason" data-testid="verdict-reason">{ &first.main }</p>
                    if let Some(more) = &first.more {
                        <p class="more" data-testid="verdict-more">{ more }</p>
                    }
                </div>
                { remedies::buttons(&props.answer, &props.entries, props.system, &act) }
                <p class="standing" data-testid="verdict-standing">{ w.standing }</p>
            </div>
            <div class="asides">
                if let Some(place) = first.at { { go(place) } }
                if is_not_in_order(&props.answer) {
                    <button type="button" class="go" data-testid="verdict-list" onclick={to_list}>
                        { words().checklist.to_list }
                    </button>
                }
                if asks_for_a_plate(&props.answer) {
                    { request::opener(&act, "request-open") }
                }
                if shown != Shown::None {
                    { to_log(&act) }
                }
                if !others.is_empty() {
                    <button
                        type="button"
                        class="others"
                        data-testid="verdict-others"
                        aria-expanded={if *all { "true" } else { "false" }}
                        onclick={toggle}
                    >
                        { if *all { w.fewer.to_owned() } else { count.of(others.len()) } }
                    </button>
                }
            </div>
            if *all && !others.is_empty() {
                <ol class="reasons" data-testid="verdict-reasons">{ for others.iter().map(other) }</ol>
            }
        </section>
    }
}

/// Whether the governing reason stands on the list of what is looked at.
fn is_not_in_order(answer: &Answer) -> bool {
    let governing = answer.assessment.as_ref().map(|a| &a.verdict.governing.reason);
    matches!(governing, Some(Reason::NotInOrder { .. }))
}

/// Whether no plate covers it that could: then there is one to ask for.
fn asks_for_a_plate(answer: &Answer) -> bool {
    let found = answer.assessment.as_ref().map(|a| a.plate.findings.as_slice()).unwrap_or_default();
    found.iter().any(|f| {
        f.gap.is_of_another_truck()
            || matches!(
                f.gap,
                Gap::TooHigh { .. } | Gap::TooFarOut { .. } | Gap::OffCentre { .. } | Gap::TooHeavy { .. }
            )
    })
}

#[cfg(test)]
mod tests;
