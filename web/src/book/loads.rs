//! The place of the loads: the load of the check, the loads that are kept, a list from a file.

use super::csv::{self, OpenTable, refused};
use super::day::{DayTable, Said, facts, said};
use super::edit::contains_all;
use super::said::Keeping;
use super::ui::{button, main_button};
use super::{BookAct, PlaceProps, fresh_id, use_book, use_book_act};
use crate::figures::Printer;
use crate::form::Form;
use crate::problems;
use crate::shared::Shared;
use crate::words::{fill, words};
use standfast_core::book::{Book, LoadRecord};
use standfast_core::document::{CentreKnown, Document, Load, WeightKnown};
use standfast_core::table::{Wrong, csv_of_day, csv_of_loads, loads_from_csv};
use standfast_core::units::Rounding::Up;
use std::cell::RefCell;
use std::rc::Rc;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// A list from a file, or why there is none.
#[derive(Clone, PartialEq)]
enum Opened {
    List(String, Rc<Vec<Rc<LoadRecord>>>),
    Refused(String, Vec<Wrong>),
    /// So many were taken into the book.
    Kept(usize),
}

thread_local! {
    /// What was opened stays open while the person looks elsewhere.
    static OPENED: RefCell<Option<Opened>> = const { RefCell::new(None) };
}

fn open_now(to: Option<Opened>, state: &UseStateSetter<Option<Opened>>) {
    OPENED.with_borrow_mut(|opened| opened.clone_from(&to));
    state.set(to);
}

/// The place.
#[component]
pub fn LoadsPlace(props: &PlaceProps) -> Html {
    let (book, act) = (use_book(), use_book_act());
    let opened = use_state(|| OPENED.with_borrow(Clone::clone));
    let form = &props.form;
    let w = &words().loads;
    let chosen = {
        let setter = opened.setter();
        Callback::from(move |(name, text): csv::Chosen| {
            let read = text.and_then(|text| loads_from_csv(&text));
            let to = match read {
                Ok(loads) => Opened::List(name, Rc::new(loads.into_iter().map(record_of).map(Rc::new).collect())),
                Err(wrongs) => Opened::Refused(name, wrongs),
            };
            open_now(Some(to), &setter);
        })
    };
    let close = {
        let setter = opened.setter();
        Callback::from(move |_: MouseEvent| open_now(None, &setter))
    };
    let system = form.system;
    let pattern = Callback::from(move |_: MouseEvent| {
        csv::save(&csv_of_loads([&example()], system), "standfast-loads.csv");
    });
    let list = match &*opened {
        Some(Opened::List(name, loads)) => {
            let keep = {
                let (act, book, loads, setter) = (act.clone(), Rc::clone(&book), Rc::clone(loads), opened.setter());
                Callback::from(move |_: MouseEvent| {
                    let new = not_there_yet(&book, &loads);
                    let count = new.len();
                    let mut is = Book::clone(&book);
                    is.loads.extend(new);
                    act.emit(BookAct::Import { was: Rc::clone(&book), is: Rc::new(is) });
                    open_now(Some(Opened::Kept(count)), &setter);
                })
            };
            html! {
                <>
                    <h3>{ fill(w.list_of_file, &[("name", name)]) }</h3>
                    <p data-testid="loads-opened">{ w.opened.of(loads.len()) }</p>
                    <div class="buttons">
                        { main_button(w.keep_all, "loads-keep-all", keep) }
                        { button(w.close_list, "loads-close", close.clone()) }
                    </div>
                    <List loads={Rc::clone(loads)} form={form.clone()} kept={false} />
                </>
            }
        }
        _ => html! { <KeptLoads form={form.clone()} /> },
    };
    html! {
        <>
            <Keeping />
            <PresentLoad form={form.clone()} />
            <div class="buttons">
                <OpenTable label={w.open} test="loads-open" {chosen} />
                { button(words().tables.pattern, "loads-pattern", pattern) }
            </div>
            <p class="help no-print">{ w.open_help }</p>
            { match &*opened {
                Some(Opened::Refused(name, wrongs)) => refused(name, wrongs, close),
                Some(Opened::Kept(count)) => html! { <p role="status" data-testid="loads-kept-all"><b>{ w.kept_all.of(*count) }</b></p> },
                _ => Html::default(),
            } }
            { list }
        </>
    }
}

fn record_of(load: Load) -> LoadRecord {
    LoadRecord { id: fresh_id(), load, ..LoadRecord::default() }
}

/// What a table to fill in shows.
fn example() -> Load {
    Load {
        name: words().loads.example_name.to_owned(),
        mass_kg: Some(640.0),
        weight_known: Some(WeightKnown::Note),
        length_m: Some(1.2),
        width_m: Some(0.8),
        height_m: Some(0.95),
        centre_known: Some(CentreKnown::Middle),
        ..Load::default()
    }
}

/// Those that the book does not have just so.
fn not_there_yet(book: &Book, loads: &[Rc<LoadRecord>]) -> Vec<LoadRecord> {
    let is_there = |new: &LoadRecord| book.loads.iter().any(|l| l.load == new.load && l.known == new.known);
    loads.iter().filter(|l| !is_there(l)).map(|l| LoadRecord::clone(l)).collect()
}

/// The load of the present check: kept as a new one, or in place of the one of its name.
#[component]
fn PresentLoad(props: &PlaceProps) -> Html {
    let (book, act) = (use_book(), use_book_act());
    let w = &words().loads;
    let (form, print) = (&props.form, Printer(props.form.system));
    let (load, known) = form.entries.kept_load();
    let unread: Vec<_> = form.entries.unread_load(true).iter().map(problems::subject).collect();
    let there = book.loads.iter().find(|l| l.load == load && l.known == known);
    let named = book.loads.iter().find(|l| !l.archived && l.load.name == load.name && !load.name.trim().is_empty());
    let name = if load.name.trim().is_empty() { w.unnamed.to_owned() } else { load.name.clone() };
    let found = form.answer.load.load.as_ref().map(|l| l.mass.nominal.get());
    let mass = found.or(load.mass_kg).map_or(w.no_weight.to_owned(), |kg| print.mass(kg, Up));
    let facts = [mass, facts(&load, print)].into_iter().filter(|f| !f.is_empty()).collect::<Vec<_>>().join(" \u{b7} ");
    let put = |record: LoadRecord| act.reform(move |_: MouseEvent| BookAct::put(record.clone()));
    let update = named.map(|n| {
        let record = LoadRecord { load: load.clone(), known: known.clone(), ..n.clone() };
        main_button(fill(w.update, &[("name", &n.load.name)]), "load-update", put(record))
    });
    let keep = {
        let (act, load, known) = (act.clone(), load.clone(), known.clone());
        let keep = Callback::from(move |_: MouseEvent| {
            act.emit(BookAct::put(LoadRecord { known: known.clone(), ..record_of(load.clone()) }));
        });
        if update.is_some() { button(w.keep, "load-keep", keep) } else { main_button(w.keep, "load-keep", keep) }
    };
    let standing = match (there, named) {
        (Some(_), _) => w.present_kept,
        (None, Some(_)) => w.present_changed,
        (None, None) => w.present_own,
    };
    html! {
        <section class="keep" aria-labelledby="keep-load-heading" data-testid="keep-load">
            <h3 id="keep-load-heading">{ w.present }{ ": " }{ name }</h3>
            <p>{ facts }{ ". " }{ standing }</p>
            if !unread.is_empty() {
                <p class="message" data-testid="load-unread">{ fill(w.unread, &[("list", &unread.join(", "))]) }</p>
            } else if there.is_none() {
                <div class="buttons">{ update.unwrap_or_default() }{ keep }</div>
            }
        </section>
    }
}

/// The loads of the book, looked through.
#[component]
fn KeptLoads(props: &PlaceProps) -> Html {
    let book = use_book();
    let wanted = use_state(String::new);
    let with_archived = use_state(|| false);
    let (w, b) = (&words().loads, &words().book);
    let search = {
        let wanted = wanted.setter();
        Callback::from(move |event: InputEvent| wanted.set(event.target_unchecked_into::<HtmlInputElement>().value()))
    };
    let lists = use_memo((Shared::from(Rc::clone(&book)), (*wanted).clone()), |(book, wanted)| {
        let found = book.loads.iter().filter(|l| contains_all(&[&l.load.name, &l.note], wanted)).cloned();
        let mut found: Vec<_> = found.map(Rc::new).collect();
        found.sort_by_key(|l| l.load.name.to_lowercase());
        let (away, shown): (Vec<_>, Vec<_>) = found.into_iter().partition(|l| l.archived);
        (Rc::new(away), Rc::new(shown))
    });
    let (away, shown) = &*lists;
    let toggle_away = {
        let with_archived = with_archived.clone();
        Callback::from(move |_: MouseEvent| with_archived.set(!*with_archived))
    };
    let toggle_text = if *with_archived { b.archived_hide.to_owned() } else { b.archived_show.of(away.len()) };
    html! {
        <>
            <h3>{ w.list }</h3>
            if book.loads.is_empty() {
                <p>{ w.empty }</p>
            } else {
                <div class="field text search">
                    <label for="l-search"><span class="name">{ w.search }</span></label>
                    <span class="box">
                        <input
                            id="l-search"
                            type="search"
                            autocomplete="off"
                            data-testid="load-search"
                            value={(*wanted).clone()}
                            oninput={search}
                        />
                    </span>
                </div>
                if shown.is_empty() && !wanted.is_empty() {
                    <p role="status">{ w.found_none }</p>
                }
                <List loads={Rc::clone(shown)} form={props.form.clone()} kept={true} />
                if !away.is_empty() {
                    <div class="buttons">{ button(toggle_text, "loads-archived", toggle_away) }</div>
                    if *with_archived {
                        <List loads={Rc::clone(away)} form={props.form.clone()} kept={true} />
                    }
                }
            }
        </>
    }
}

#[derive(Properties, PartialEq)]
struct ListProps {
    loads: Rc<Vec<Rc<LoadRecord>>>,
    form: Form,
    kept: bool,
}

/// Loads with their verdicts, and what can be done with the list.
#[component]
fn List(props: &ListProps) -> Html {
    let w = &words().loads;
    let (form, print) = (&props.form, Printer(props.form.system));
    let unread: Vec<_> = form.entries.unread_load(false).iter().map(problems::subject).collect();
    let rows = use_memo(
        (Rc::clone(&props.loads), form.answer.clone(), form.system, unread.is_empty()),
        |(loads, answer, system, readable)| {
            if *readable { said(&answer.document, loads, *system) } else { Vec::new() }
        },
    );
    if props.loads.is_empty() {
        return Html::default();
    }
    if !unread.is_empty() {
        return html! { <p class="message" data-testid="day-unread">{ fill(w.truck_unread, &[("list", &unread.join(", "))]) }</p> };
    }
    let document = &form.answer.document;
    let save = {
        let (rows, truck, system) = (Rc::clone(&rows), document.truck.name.clone(), form.system);
        Callback::from(move |_: MouseEvent| {
            let lines = rows.iter().map(|s: &Said| (&s.line, s.reason.as_str()));
            csv::save(&csv_of_day(lines, &truck, system), "standfast-day.csv");
        })
    };
    let print_it = Callback::from(|_: MouseEvent| {
        if let Some(window) = web_sys::window() {
            let _ = window.print();
        }
    });
    html! {
        <>
            <p>{ against(document, print) }</p>
            <p class="help">{ w.standing }</p>
            <DayTable rows={Rc::clone(&rows)} form={form.clone()} kept={props.kept} />
            <div class="buttons">
                <span data-testid="day-count">{ w.count.of(rows.len()) }</span>
                { button(w.save_list, "day-save", save) }
                { button(w.print, "day-print", print_it) }
            </div>
        </>
    }
}

/// The truck and the move that the loads are held against.
fn against(document: &Document, print: Printer) -> String {
    let w = &words().loads;
    let Some(height) = document.lift.height_m else { return w.against_own.to_owned() };
    let truck = if document.truck.name.trim().is_empty() { w.nobody } else { &document.truck.name };
    fill(w.against, &[("truck", truck), ("height", &print.height(height))])
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::units::System;

    #[test]
    fn what_is_there_already_is_not_kept_twice() {
        let record =
            |name: &str| LoadRecord { load: Load { name: name.to_owned(), ..example() }, ..LoadRecord::default() };
        let book = Book { loads: vec![record("A")], ..Book::default() };
        let new = not_there_yet(&book, &[Rc::new(record("A")), Rc::new(record("B"))]);
        assert_eq!(new, [record("B")]);
    }

    #[test]
    fn the_table_to_fill_in_is_one_that_is_read() {
        for system in [System::Metric, System::Us] {
            let loads = loads_from_csv(&csv_of_loads([&example()], system)).expect("read");
            assert!(loads.len() == 1 && loads[0].name.contains("invented"));
        }
    }
}
