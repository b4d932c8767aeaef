//! Loads in a table of verdicts: each on the truck of the present check.

use super::ui::{TextBox, button, main_button};
use super::{BookAct, Key, Record, fresh_id, use_book_act};
use crate::answer::{Answer, Card};
use crate::entries::Entries;
use crate::figures::{self, Printer};
use crate::fold::Fold;
use crate::form::Form;
use crate::places::Screen;
use crate::sentences::{Shown, reason_in_list};
use crate::state::{Action, use_act};
use crate::store::shelf::Line;
use crate::verdict_mark::verdict_mark;
use crate::words::{fill, words};
use standfast_core::book::LoadRecord;
use standfast_core::day;
use standfast_core::document::{Document, GivenAs, Load};
use standfast_core::units::Rounding::{Down, Up};
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

/// One load with what is said of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    pub record: Rc<LoadRecord>,
    pub line: day::Line,
    pub shown: Shown,
    /// The reason that governs, or what is missing or wrong.
    pub reason: String,
}

/// What is said of each, as the load of a check.
pub fn said(document: &Document, loads: &[Rc<LoadRecord>], system: System) -> Vec<Said> {
    let one = |record: &Rc<LoadRecord>| {
        let line = day::line(document, record);
        let shown = Shown::of_state(line.answer.as_ref().ok().map(|a| a.state));
        let reason = reason_in_list(&Answer::of_line(day::with_load(document, record), &line), system);
        Said { record: Rc::clone(record), line, shown, reason }
    };
    loads.iter().map(one).collect()
}

/// A load's facts in a line: what it is made of, its size, its remark.
pub fn facts(load: &Load, print: Printer) -> String {
    let w = &words().loads;
    match (load.given_as, load.length_m, load.width_m, load.height_m) {
        (GivenAs::Parts, ..) => w.parts.of(load.parts.len()),
        (GivenAs::Trace, ..) => w.traced.to_owned(),
        (GivenAs::Block, Some(x), Some(y), Some(z)) => print.sizes([x, y, z]),
        _ => String::new(),
    }
}

#[derive(Properties, PartialEq)]
pub struct DayProps {
    pub rows: Rc<Vec<Said>>,
    pub form: Form,
    /// Whether they are the book's own, to be renamed, put away and removed.
    pub kept: bool,
}

/// The table.
#[component]
pub fn DayTable(props: &DayProps) -> Html {
    let w = &words().loads;
    let present = props.form.entries.kept_load();
    let head = |name: &'static str| html! { <th role="columnheader" scope="col">{ name }</th> };
    html! {
        <table class="day" role="table" data-testid="day">
            <thead role="rowgroup">
                <tr role="row">
                    { head(w.verdict) }
                    { head(w.load) }
                    { head(w.weight) }
                    { head(w.allowed) }
                    { head(w.used) }
                    <td role="cell"></td>
                </tr>
            </thead>
            <tbody role="rowgroup">
                { for props.rows.iter().map(|said| {
                    let in_check = (&said.record.load, &said.record.known) == (&present.0, &present.1);
                    html! {
                        <DayRow
                            key={said.record.id.clone()}
                            said={said.clone()}
                            entries={Rc::clone(&props.form.entries)}
                            system={props.form.system}
                            kept={props.kept}
                            {in_check}
                        />
                    }
                }) }
            </tbody>
        </table>
    }
}

#[derive(Properties, PartialEq)]
struct RowProps {
    said: Said,
    entries: Rc<Entries>,
    system: System,
    kept: bool,
    in_check: bool,
}

#[component]
fn DayRow(props: &RowProps) -> Html {
    let act = use_act();
    let w = &words().loads;
    let (said, print) = (&props.said, Printer(props.system));
    let (record, answer) = (&said.record, said.line.answer.as_ref().ok());
    let id = &record.id;
    let take = {
        let (entries, record) = (Rc::clone(&props.entries), Rc::clone(record));
        Callback::from(move |_: MouseEvent| {
            act.emit(Action::Set(Rc::new(entries.with_load(&record.load, &record.known))));
            act.emit(Action::Open(Some(Card::Load)));
            act.emit(Action::Go(Screen::Check));
        })
    };
    let name = if record.load.name.trim().is_empty() { w.unnamed } else { &record.load.name };
    let mass = said.line.mass.map_or(w.no_weight.to_owned(), |m| print.mass(m.get(), Up));
    let allowed = match answer {
        None => "\u{2013}".to_owned(),
        Some(answer) => answer.allowed.map_or(w.no_row.to_owned(), |kg| print.mass(kg.get(), Down)),
    };
    let used = answer.map_or("\u{2013}".to_owned(), |a| figures::share(a.used.get()));
    let others = answer.map_or(0, |a| a.others);
    let size = facts(&record.load, print);
    let figure = |name: &'static str, value: String| {
        html! { <td role="cell" class="figure"><span class="of" aria-hidden="true">{ name }</span>{ value }</td> }
    };
    html! {
        <tr role="row" class={said.shown.code()} data-testid={format!("day-{id}")} data-state={said.shown.code()}>
            <td role="cell" class="state">{ verdict_mark(said.shown) }<b>{ said.shown.word() }</b></td>
            <th role="rowheader" scope="row">
                <span class="name">{ name }</span>
                if !size.is_empty() {
                    <span class="size">{ size }</span>
                }
                <span class="why">
                    { &said.reason }
                    if others > 0 {
                        { format!(" ({})", w.others.of(others)) }
                    }
                </span>
                if !record.note.is_empty() {
                    <span class="size">{ &record.note }</span>
                }
            </th>
            { figure(w.weight, mass) }
            { figure(w.allowed, allowed) }
            { figure(w.used, used) }
            <td role="cell" class="act">
                { if props.in_check {
                    button(w.used_now, format!("load-use-{id}"), take)
                } else {
                    main_button(w.use_it, format!("load-use-{id}"), take)
                } }
                if props.kept {
                    <Kept record={Rc::clone(record)} />
                }
            </td>
        </tr>
    }
}

#[derive(Properties, PartialEq)]
struct KeptProps {
    record: Rc<LoadRecord>,
}

/// What can be done to a load that is kept.
#[component]
fn Kept(props: &KeptProps) -> Html {
    let act = use_book_act();
    let record = Rc::clone(&props.record);
    let inside = Callback::from(move |()| {
        let (b, id, key) = (&words().book, &record.id, Key::load(&record.id));
        let send = |to: BookAct| act.reform(move |_: MouseEvent| to.clone());
        let write = |line: Line, key: &Key| {
            let (act, key) = (act.clone(), key.clone());
            Callback::from(move |text: String| act.emit(BookAct::Write { key: key.clone(), set_up: None, line, text }))
        };
        let copy = {
            let (act, record) = (act.clone(), Rc::clone(&record));
            Callback::from(move |_: MouseEvent| {
                let mut copy = Record::from(LoadRecord::clone(&record)).with_fresh_ids(&mut fresh_id);
                copy.call(fill(words().book.copy_of, &[("name", &record.load.name)]));
                act.emit(BookAct::put(copy));
            })
        };
        let archive = if record.archived { b.take_out } else { b.archive };
        html! {
            <>
                <TextBox label={b.name} value={record.load.name.clone()} test={format!("load-name-{id}")} set={write(Line::Name, &key)} />
                <TextBox label={b.note} value={record.note.clone()} test={format!("load-note-{id}")} set={write(Line::Note, &key)} />
                <div class="buttons">
                    { button(b.duplicate, format!("load-copy-{id}"), copy) }
                    { button(archive, format!("load-archive-{id}"), send(BookAct::Archive(key.clone(), !record.archived))) }
                    { button(b.remove, format!("load-remove-{id}"), send(BookAct::Remove(key))) }
                </div>
            </>
        }
    });
    let id = &props.record.id;
    html! { <Fold name={words().loads.more} test={format!("load-more-{id}")} {inside} /> }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sentences::reasons;
    use standfast_core::example;

    /// Every example's load, lighter and heavier, on every example's truck: what the list says is what the check says.
    #[test]
    fn the_list_says_what_the_check_says() {
        let documents = [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD].map(example::document);
        let mut states = std::collections::BTreeSet::new();
        for into in &documents {
            let entries = Entries::from_document(into);
            for from in &documents {
                for factor in [0.4, 1.0, 1.7] {
                    let mut load = from.load.clone();
                    load.mass_kg = load.mass_kg.map(|m| factor * m);
                    load.hanging = factor < 0.5;
                    load.hook_above_m = load.hanging.then_some(0.5);
                    let record = Rc::new(LoadRecord { load, ..LoadRecord::default() });
                    let rows = said(into, std::slice::from_ref(&record), System::Metric);
                    let with = entries.with_load(&record.load, &record.known);
                    let answer = Answer::of(&with);
                    assert_eq!(rows[0].shown, Shown::of(&answer));
                    assert_eq!(rows[0].reason, reasons(&answer, &with, System::Metric)[0].main);
                    states.insert(rows[0].shown.code());
                }
            }
        }
        assert!(states.len() >= 3, "{states:?}");
    }

    #[test]
    fn a_load_with_something_missing_says_what() {
        let document = example::document(example::THREE_WHEEL);
        let mut load = document.load.clone();
        load.height_m = None;
        let rows = said(&document, &[Rc::new(LoadRecord { load, ..LoadRecord::default() })], System::Us);
        assert_eq!(rows[0].shown, Shown::None);
        assert!(rows[0].reason.contains("height"), "{}", rows[0].reason);
    }
}
