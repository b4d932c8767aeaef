//! The place of the log: the checks that were made, newest first.

use super::log_entry::LogEntry;
use super::said::Keeping;
use super::ui::button;
use super::{PlaceProps, csv, use_book};
use crate::sentences::Shown;
use crate::shared::Shared;
use crate::words::words;
use standfast_core::book::{Book, CheckRecord};
use standfast_core::table::csv_of_log;
use standfast_core::verdict::State;
use std::rc::Rc;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// So many are shown at first, and so many more at a tap.
const AT_ONCE: usize = 30;

/// The checks of the log that are looked for, newest first.
fn found(book: &Book, wanted: &str, verdict: Option<State>) -> Vec<Rc<CheckRecord>> {
    let is_wanted = |r: &&CheckRecord| {
        let check = &r.check;
        let texts =
            [&r.at, &r.who, &check.truck.name, &check.truck.serial, &check.load.name, &r.outcome.reason, &check.note];
        let texts = texts.map(String::as_str);
        verdict.is_none_or(|v| r.outcome.verdict == Some(v)) && super::edit::contains_all(&texts, wanted)
    };
    book.log.iter().rev().filter(is_wanted).cloned().map(Rc::new).collect()
}

/// The place.
#[component]
pub fn LogPlace(props: &PlaceProps) -> Html {
    let book = use_book();
    let wanted = use_state(String::new);
    let verdict = use_state(|| None::<State>);
    let most = use_state(|| AT_ONCE);
    let open = use_state(|| None::<String>);
    let w = &words().log;
    let system = props.form.system;
    let search = {
        let wanted = wanted.setter();
        Callback::from(move |event: InputEvent| wanted.set(event.target_unchecked_into::<HtmlInputElement>().value()))
    };
    let list = use_memo((Shared::from(Rc::clone(&book)), (*wanted).clone(), *verdict), |(book, wanted, verdict)| {
        found(book, wanted, *verdict)
    });
    let choice = |state: Option<State>, test: &'static str| {
        let name = state.map_or(w.all, |s| Shown::of_state(Some(s)).word());
        let setter = verdict.setter();
        let onclick = Callback::from(move |_: MouseEvent| setter.set(state));
        let pressed = if *verdict == state { "true" } else { "false" };
        html! { <button type="button" class="segment" aria-pressed={pressed} data-testid={test} {onclick}>{ name }</button> }
    };
    let save = {
        let book = Rc::clone(&book);
        Callback::from(move |_: MouseEvent| csv::save(&csv_of_log(&book, system), "standfast-log.csv"))
    };
    let more = {
        let most = most.clone();
        Callback::from(move |_: MouseEvent| most.set(*most + AT_ONCE))
    };
    let left = list.len().saturating_sub(*most);
    html! {
        <>
            <Keeping />
            <p>{ w.about }</p>
            if book.log.is_empty() {
                <p data-testid="log-empty">{ w.empty }</p>
            } else {
                <div class="field text search">
                    <label for="log-search"><span class="name">{ w.search }</span></label>
                    <span class="box">
                        <input
                            id="log-search"
                            type="search"
                            autocomplete="off"
                            data-testid="log-search"
                            value={(*wanted).clone()}
                            oninput={search}
                        />
                    </span>
                </div>
                <div class="buttons">
                    <div class="segments" role="group" aria-label={w.which}>
                        { choice(None, "log-all") }
                        { choice(Some(State::NoGo), "log-no_go") }
                        { choice(Some(State::Hold), "log-hold") }
                        { choice(Some(State::Go), "log-go") }
                    </div>
                    <span role="status" data-testid="log-count">{ w.count.of(list.len()) }</span>
                    { button(w.save, "log-save", save) }
                </div>
                if list.is_empty() {
                    <p role="status">{ w.found_none }</p>
                }
                <div class="log" data-testid="log">
                    { for list.iter().take(*most).map(|record| {
                        let (id, setter) = (record.id.clone(), open.setter());
                        let is_open = open.as_deref() == Some(&record.id);
                        let toggle = Callback::from(move |()| setter.set((!is_open).then(|| id.clone())));
                        html! {
                            <LogEntry
                                key={record.id.clone()}
                                record={Rc::clone(record)}
                                open={is_open}
                                {system}
                                {toggle}
                            />
                        }
                    }) }
                </div>
                if left > 0 {
                    <div class="buttons">{ button(w.show_more.of(left.min(AT_ONCE)), "log-more", more) }</div>
                }
            }
        </>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::book::Outcome;
    use standfast_core::document::Document;

    #[test]
    fn the_newest_comes_first_and_every_word_is_looked_for() {
        let record = |id: &str, who: &str, verdict| CheckRecord {
            id: id.to_owned(),
            at: format!("2026-05-1{id}T09:30:00+02:00"),
            who: who.to_owned(),
            program: String::new(),
            of: None,
            check: Document::default(),
            outcome: Outcome { verdict, reason: "Too heavy".to_owned(), used: None },
        };
        let log =
            vec![record("1", "Ann", Some(State::Go)), record("2", "Bo", None), record("3", "Ann", Some(State::NoGo))];
        let book = Book { log, ..Book::default() };
        let ids =
            |wanted: &str, verdict| found(&book, wanted, verdict).iter().map(|r| r.id.clone()).collect::<Vec<_>>();
        assert_eq!(ids("", None), ["3", "2", "1"]);
        assert_eq!(ids("ann heavy", None), ["3", "1"]);
        assert_eq!(ids("2026-05-12", None), ["2"]);
        assert_eq!(ids("", Some(State::NoGo)), ["3"]);
    }
}
