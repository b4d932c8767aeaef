//! One truck with its set-ups.

use super::covers::difference;
use super::edit::{with_changed, with_set_up, without};
use super::facts;
use super::save::save_truck;
use super::ui::{TextBox, button, main_button};
use super::{BookAct, Key, Record, fresh_id, use_book_act};
use crate::answer::Card;
use crate::figures::Printer;
use crate::fold::Fold;
use crate::form::Form;
use crate::places::Screen;
use crate::state::{Action, use_act};
use crate::store::shelf::Line;
use crate::words::{fill, words};
use standfast_core::book::{Of, SetUp, TruckRecord};
use standfast_core::covering::differences;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct TruckProps {
    pub truck: Rc<TruckRecord>,
    pub form: Form,
    pub open: bool,
    pub toggle: Callback<()>,
}

/// A truck: closed its name and facts, open its set-ups.
#[component]
pub fn TruckView(props: &TruckProps) -> Html {
    let w = &words().book;
    let truck = &props.truck;
    let inside = format!("truck-{}-inside", truck.id);
    let shown: Vec<_> = truck.set_ups.iter().filter(|s| !s.archived).collect();
    let mut line = vec![w.set_ups.of(shown.len())];
    line.extend(shown.iter().map(|s| s.name.clone()).take(4));
    if !truck.note.is_empty() {
        line.push(truck.note.clone());
    }
    let onclick = props.toggle.reform(|_: MouseEvent| ());
    html! {
        <article class={classes!("card", props.open.then_some("open"))}>
            <h3>
                <button
                    type="button"
                    class="head"
                    data-testid={format!("truck-{}", truck.id)}
                    aria-expanded={if props.open { "true" } else { "false" }}
                    aria-controls={inside.clone()}
                    {onclick}
                >
                    <span class="name">{ name_or(&truck.name) }</span>
                    if truck.archived {
                        <span class="count">{ w.archived }</span>
                    }
                    <span class="sign" aria-hidden="true">{ if props.open { "\u{2212}" } else { "+" } }</span>
                    <span class="line">{ line.join(" \u{b7} ") }</span>
                </button>
            </h3>
            <div class="body" id={inside} hidden={!props.open}>
                if props.open {
                    <TruckInside truck={Rc::clone(truck)} form={props.form.clone()} />
                }
            </div>
        </article>
    }
}

fn name_or(name: &str) -> String {
    if name.is_empty() { words().book.unnamed.to_owned() } else { name.to_owned() }
}

#[derive(Properties, PartialEq)]
struct InsideProps {
    truck: Rc<TruckRecord>,
    form: Form,
}

#[component]
fn TruckInside(props: &InsideProps) -> Html {
    let act = use_book_act();
    let with_archived = use_state(|| false);
    let w = &words().book;
    let truck = &props.truck;
    let (away, shown): (Vec<&SetUp>, Vec<&SetUp>) = truck.set_ups.iter().partition(|s| s.archived);
    let view = |set_up: &SetUp| {
        html! {
            <SetUpView
                key={set_up.id.clone()}
                truck={Rc::clone(truck)}
                set_up={Rc::new(set_up.clone())}
                form={props.form.clone()}
            />
        }
    };
    let toggle_away = {
        let with_archived = with_archived.clone();
        Callback::from(move |_: MouseEvent| with_archived.set(!*with_archived))
    };
    let toggle_text = if *with_archived { w.archived_hide.to_owned() } else { w.archived_show.of(away.len()) };
    let copy = {
        let (act, truck) = (act.clone(), Rc::clone(truck));
        Callback::from(move |_: MouseEvent| {
            let mut copy = Record::from(TruckRecord::clone(&truck)).with_fresh_ids(&mut fresh_id);
            copy.call(fill(words().book.copy_of, &[("name", &truck.name)]));
            act.emit(BookAct::put(copy));
        })
    };
    let key = Key::truck(&truck.id);
    let send = |to: BookAct| act.reform(move |_: MouseEvent| to.clone());
    let archive = if truck.archived { w.take_out } else { w.archive };
    let save = {
        let truck = Rc::clone(truck);
        Callback::from(move |_: MouseEvent| save_truck(&truck))
    };
    html! {
        <>
            { for shown.into_iter().map(view) }
            if !away.is_empty() {
                <div class="buttons">{ button(toggle_text, "set-ups-archived", toggle_away) }</div>
                if *with_archived {
                    { for away.into_iter().map(view) }
                }
            }
            <div class="about">
                { text(&act, &key, None, Line::Name, w.name, &truck.name) }
                { text(&act, &key, None, Line::Note, w.note, &truck.note) }
            </div>
            <div class="buttons">
                { button(w.save_truck, "truck-save", save) }
                { button(w.duplicate, "truck-copy", copy) }
                { button(archive, "truck-archive", send(BookAct::Archive(key.clone(), !truck.archived))) }
                { button(w.remove, "truck-remove", send(BookAct::Remove(key))) }
            </div>
        </>
    }
}

/// A name or a remark.
fn text(
    act: &Callback<BookAct>,
    key: &Key,
    set_up: Option<&str>,
    line: Line,
    label: &'static str,
    value: &str,
) -> Html {
    let (act, key, set_up) = (act.clone(), key.clone(), set_up.map(str::to_owned));
    let test = match (line, &set_up) {
        (Line::Name, None) => "truck-name".to_owned(),
        (Line::Note, None) => "truck-note".to_owned(),
        (Line::Name, Some(id)) => format!("set-up-name-{id}"),
        (Line::Note, Some(id)) => format!("set-up-note-{id}"),
    };
    let set = Callback::from(move |text: String| {
        act.emit(BookAct::Write { key: key.clone(), set_up: set_up.clone(), line, text });
    });
    html! { <TextBox {label} value={value.to_owned()} {test} {set} /> }
}

#[derive(Properties, PartialEq)]
struct SetUpProps {
    truck: Rc<TruckRecord>,
    set_up: Rc<SetUp>,
    form: Form,
}

#[component]
fn SetUpView(props: &SetUpProps) -> Html {
    let (act, book_act) = (use_act(), use_book_act());
    let w = &words().book;
    let (truck, set_up, print) = (&props.truck, &props.set_up, Printer(props.form.system));
    let of = Of { truck: truck.id.clone(), set_up: set_up.id.clone() };
    let in_check = props.form.entries.of.as_ref() == Some(&of);
    let take = {
        let (set_up, entries) = (Rc::clone(set_up), Rc::clone(&props.form.entries));
        Callback::from(move |_: MouseEvent| {
            act.emit(Action::Set(Rc::new(entries.with_truck(&set_up.truck, &set_up.known, Some(of.clone())))));
            act.emit(Action::Open(Some(Card::Truck)));
            act.emit(Action::Go(Screen::Check));
        })
    };
    let change = |to: TruckRecord| book_act.reform(move |_: MouseEvent| BookAct::put(to.clone()));
    let archive = change(with_changed(truck, &set_up.id, |s| s.archived = !s.archived));
    let remove = change(without(truck, &set_up.id));
    let copy = {
        let (book_act, truck, set_up) = (book_act.clone(), Rc::clone(truck), Rc::clone(set_up));
        Callback::from(move |_: MouseEvent| {
            let name = fill(words().book.copy_of, &[("name", &set_up.name)]);
            let copy = SetUp { id: fresh_id(), name, ..SetUp::clone(&set_up) };
            book_act.emit(BookAct::put(with_set_up(&truck, copy)));
        })
    };
    let archive_text = if set_up.archived { w.take_out } else { w.archive };
    let (key, id) = (Key::truck(&truck.id), set_up.id.clone());
    let more = {
        let (set_up, id) = (Rc::clone(set_up), id.clone());
        Callback::from(move |()| {
            html! {
                <>
                    { text(&book_act, &key, Some(&id), Line::Name, w.name, &set_up.name) }
                    { text(&book_act, &key, Some(&id), Line::Note, w.note, &set_up.note) }
                    <div class="buttons">
                        { button(w.duplicate, format!("set-up-copy-{id}"), copy.clone()) }
                        { button(archive_text, format!("set-up-archive-{id}"), archive.clone()) }
                        { button(w.remove, format!("set-up-remove-{id}"), remove.clone()) }
                    </div>
                </>
            }
        })
    };
    html! {
        <section class="set-up" data-testid={format!("set-up-{id}")}>
            <div class="what">
                <h4>
                    { name_or(&set_up.name) }
                    if set_up.archived {
                        <span class="count">{ w.archived }</span>
                    }
                </h4>
                <p>{ facts::standing(set_up, print) }</p>
                { match &set_up.truck.plate {
                    Some(plate) => html! {
                        <p>
                            <b>{ w.plate }</b>{ " " }{ facts::plate_facts(plate, print) }<br />
                            { facts::plate_rows(plate, print).join("; ") }
                        </p>
                    },
                    None => html! { <p><b>{ w.no_plate }</b></p> },
                } }
                { not_for_it(set_up, print) }
                if !set_up.note.is_empty() {
                    <p class="help">{ &set_up.note }</p>
                }
            </div>
            { if in_check {
                button(w.used_today, format!("set-up-use-{id}"), take)
            } else {
                main_button(w.use_today, format!("set-up-use-{id}"), take)
            } }
            <Fold name={w.more} test={format!("set-up-more-{id}")} inside={more} />
        </section>
    }
}

/// Where a set-up's own plate is not for the truck as it is kept in it: kept, and said.
fn not_for_it(set_up: &SetUp, print: Printer) -> Html {
    let list = differences(&set_up.truck, &set_up.truck);
    if list.is_empty() {
        return Html::default();
    }
    html! {
        <div class="message" data-testid={format!("set-up-plate-{}", set_up.id)}>
            { words().covers.not_for_it }
            <ul class="differs">{ for list.iter().map(|d| html! { <li>{ difference(d, print) }</li> }) }</ul>
        </div>
    }
}
