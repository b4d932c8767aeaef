//! One check of the log.

use super::day::facts;
use super::edit::find;
use super::log_record::{Again, PROGRAM, Sameness, again, day_and_minute};
use super::ui::{button, main_button};
use super::{BookAct, Key, use_book, use_book_act};
use crate::entries::Entries;
use crate::figures::{self, Printer};
use crate::files::hand_out;
use crate::sentences::{Shown, not_in_order};
use crate::state::{Action, use_act};
use crate::store::record::Kind;
use crate::verdict_mark::verdict_mark;
use crate::words::{fill, words};
use standfast_core::book::CheckRecord;
use standfast_core::units::Rounding::Nearest;
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct EntryProps {
    pub record: Rc<CheckRecord>,
    pub open: bool,
    pub system: System,
    pub toggle: Callback<()>,
}

fn or(text: &str, other: &'static str) -> String {
    if text.trim().is_empty() { other.to_owned() } else { text.to_owned() }
}

/// Closed its line, open what was entered and said.
#[component]
pub fn LogEntry(props: &EntryProps) -> Html {
    let w = &words().log;
    let record = &props.record;
    let shown = Shown::of_state(record.outcome.verdict);
    let inside = format!("log-{}-inside", record.id);
    let check = &record.check;
    let line = [or(&check.truck.name, w.unnamed), or(&record.who, w.nobody)].join(" \u{b7} ");
    let onclick = props.toggle.reform(|_: MouseEvent| ());
    html! {
        <article class={classes!("card", props.open.then_some("open"))}>
            <h3>
                <button
                    type="button"
                    class="head"
                    data-testid={format!("log-{}", record.id)}
                    data-state={shown.code()}
                    aria-expanded={if props.open { "true" } else { "false" }}
                    aria-controls={inside.clone()}
                    {onclick}
                >
                    <span class="state">{ verdict_mark(shown) }<b>{ shown.word() }</b></span>
                    <span class="name">{ or(&check.load.name, w.unnamed) }</span>
                    <span class="when">{ day_and_minute(&record.at) }</span>
                    <span class="sign" aria-hidden="true">{ if props.open { "\u{2212}" } else { "+" } }</span>
                    <span class="line">{ line }</span>
                </button>
            </h3>
            <div class="body" id={inside} hidden={!props.open}>
                if props.open {
                    <Inside record={Rc::clone(record)} system={props.system} />
                }
            </div>
        </article>
    }
}

#[derive(Properties, PartialEq)]
struct InsideProps {
    record: Rc<CheckRecord>,
    system: System,
}

#[component]
fn Inside(props: &InsideProps) -> Html {
    let (act, book_act, book) = (use_act(), use_book_act(), use_book());
    let today = use_state(|| None::<Again>);
    let (w, c) = (&words().log, &words().card);
    let (record, print) = (&props.record, Printer(props.system));
    let check = &record.check;
    let assess = {
        let (record, today, system) = (Rc::clone(record), today.setter(), props.system);
        Callback::from(move |_: MouseEvent| today.set(Some(again(&record, system))))
    };
    let open = {
        let record = Rc::clone(record);
        Callback::from(move |_: MouseEvent| {
            let entries = Entries { of: record.of.clone(), ..Entries::from_document(&record.check) };
            act.emit(Action::Replace(Rc::new(entries), None));
        })
    };
    let save = {
        let record = Rc::clone(record);
        Callback::from(move |_: MouseEvent| {
            let day = record.at.get(..10).unwrap_or("check").to_owned();
            hand_out(&record.check.to_json(), "application/json", &format!("standfast-check-{day}.json"));
        })
    };
    let key = Key { kind: Kind::Check, id: record.id.clone() };
    let remove = book_act.reform(move |_: MouseEvent| BookAct::Remove(key.clone()));
    let set_up = record.of.as_ref().and_then(|of| find(&book, of)).map(|(_, s)| s.name.clone());
    let load = &check.load;
    let mass = load.mass_kg.map(|kg| print.mass(kg, Nearest));
    let size = facts(load, print);
    let fact = |name: &'static str, value: String| {
        if value.is_empty() {
            Html::default()
        } else {
            html! { <div><dt>{ name }</dt><dd>{ value }</dd></div> }
        }
    };
    let weight =
        [mass.unwrap_or_default(), size].into_iter().filter(|f| !f.is_empty()).collect::<Vec<_>>().join(" \u{b7} ");
    html! {
        <>
            <div class="then" data-testid="log-then">
                <h4>{ w.then }</h4>
                { verdict(Shown::of_state(record.outcome.verdict), &record.outcome.reason, record.outcome.used) }
                <p class="help">{ fill(w.program, &[("version", &record.program)]) }</p>
            </div>
            { match &*today {
                None => html! { <div class="buttons">{ main_button(w.again, "log-again", assess) }</div> },
                Some(again) => html! {
                    <div class="then" role="status" data-testid="log-today" data-sameness={format!("{:?}", again.sameness)}>
                        <h4>{ w.now }</h4>
                        <p class="sameness"><b>{ sameness(again.sameness) }</b></p>
                        { verdict(again.shown, &again.reason, again.used) }
                        <p class="help">{ fill(w.now_program, &[("version", PROGRAM)]) }</p>
                    </div>
                },
            } }
            <h4>{ w.inputs }</h4>
            <dl class="facts" data-testid="log-facts">
                { fact(c.truck, check.truck.name.clone()) }
                { fact(w.set_up, set_up.unwrap_or_default()) }
                { fact(c.load, weight) }
                { fact(w.height, check.lift.height_m.map(|m| print.height(m)).unwrap_or_default()) }
                { fact(w.remark, check.note.clone()) }
            </dl>
            if let Some(said) = not_in_order(record.checklist()) {
                <p class="message">{ said }</p>
            }
            <p class="help">{ w.inputs_frozen }</p>
            <div class="buttons">
                { button(w.open_check, "log-open", open) }
                { button(w.save_check, "log-save-check", save) }
                { button(w.remove, "log-remove", remove) }
            </div>
        </>
    }
}

fn verdict(shown: Shown, reason: &str, used: Option<f64>) -> Html {
    html! {
        <div class="was">
            <span class="state">{ verdict_mark(shown) }<b>{ shown.word() }</b></span>
            <p>
                { reason }
                if let Some(used) = used {
                    { " " }{ fill(words().log.used, &[("used", &figures::share(used))]) }
                }
            </p>
        </div>
    }
}

fn sameness(sameness: Sameness) -> &'static str {
    let w = &words().log;
    match sameness {
        Sameness::Same => w.same,
        Sameness::WordsDiffer => w.same_words_differ,
        Sameness::Differs => w.differs,
        Sameness::NoVerdict => w.no_verdict,
    }
}
