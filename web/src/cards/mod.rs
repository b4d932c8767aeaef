//! The cards: one open at a time, a closed one says its facts in a line.

pub use cautions::of_this_lift;

use crate::answer::Card;
use crate::form::Form;
use crate::jump;
use crate::state::{Action, use_act};
use crate::words::words;
use yew::prelude::*;

mod assumed;
mod cautions;
mod checklist;
mod drive;
mod lift;
mod load;
mod mast;
mod plate;
mod sheet;
mod summary;
mod truck;

#[derive(Properties, PartialEq)]
pub struct CardsProps {
    pub form: Form,
    pub open: Option<Card>,
}

/// All cards.
#[component]
pub fn Cards(props: &CardsProps) -> Html {
    let w = &words().card;
    let form = &props.form;
    let assumed = form.answer.assessment.as_ref().map_or(0, |a| a.assumed.len());
    let cards = [
        (Card::Truck, "card-truck", w.truck.to_owned(), summary::truck(form)),
        (Card::Load, "card-load", w.load.to_owned(), summary::load(form)),
        (Card::Move, "card-move", w.lift.to_owned(), summary::lift(form)),
        (Card::Checklist, "card-checklist", words().checklist.heading.to_owned(), checklist::summary(form)),
        (Card::Assumed, "card-assumed", w.assumed.of(assumed), summary::assumed(form)),
        (Card::Cautions, "card-cautions", w.cautions.to_owned(), summary::cautions(form)),
    ];
    html! {
        <section class="cards" aria-label={w.entries}>
            for (card, test, name, line) in cards {
                <CardView
                    key={test}
                    {card}
                    {test}
                    name={AttrValue::from(name)}
                    line={AttrValue::from(line)}
                    to_do={form.answer.to_do(card)}
                    form={(props.open == Some(card)).then(|| form.clone())}
                />
            }
        </section>
    }
}

#[derive(Properties, PartialEq)]
struct CardProps {
    card: Card,
    test: &'static str,
    name: AttrValue,
    /// Its facts.
    line: AttrValue,
    /// How many figures are missing, and how many wrong.
    to_do: (usize, usize),
    /// There where the card is open.
    form: Option<Form>,
}

#[component]
fn CardView(props: &CardProps) -> Html {
    let act = use_act();
    let w = &words().card;
    let open = props.form.is_some();
    let toggle = {
        let (act, card, test) = (act.clone(), props.card, props.test);
        Callback::from(move |_: MouseEvent| {
            act.emit(Action::Open((!open).then_some(card)));
            if !open {
                // The card that was open before may have been a long one above it.
                jump::show(format!("{test}-head"));
            }
        })
    };
    let (missing, wrong) = props.to_do;
    let counted = matches!(props.card, Card::Truck | Card::Load | Card::Move);
    let inside = format!("{}-inside", props.test);
    html! {
        <article class={classes!("card", open.then_some("open"))}>
            <h2>
                <button
                    type="button"
                    class="head"
                    id={format!("{}-head", props.test)}
                    data-testid={props.test}
                    aria-expanded={if open { "true" } else { "false" }}
                    aria-controls={inside.clone()}
                    onclick={toggle}
                >
                    <span class="name">{ &props.name }</span>
                    if counted && wrong > 0 {
                        <span class="count wrong">{ w.wrong.of(wrong) }</span>
                    }
                    if counted && missing > 0 {
                        <span class="count">{ w.needed.of(missing) }</span>
                    }
                    <span class="sign" aria-hidden="true">{ if open { "\u{2212}" } else { "+" } }</span>
                    <span class="line">{ &props.line }</span>
                </button>
            </h2>
            <div class="body" id={inside} hidden={!open}>
                if let Some(form) = &props.form {
                    { body(props.card, form, &act) }
                }
            </div>
        </article>
    }
}

fn body(card: Card, form: &Form, act: &Callback<Action>) -> Html {
    match card {
        Card::Truck => truck::card(form, act),
        Card::Load => load::card(form, act),
        Card::Move => lift::card(form, act),
        Card::Checklist => checklist::card(form, act),
        Card::Assumed => assumed::card(form, act),
        Card::Cautions => cautions::card(form),
    }
}

/// A group of fields under a heading.
fn group(name: &str, inside: Html) -> Html {
    html! {
        <fieldset class="group">
            <legend>{ name }</legend>
            { inside }
        </fieldset>
    }
}

#[cfg(test)]
mod tests;
