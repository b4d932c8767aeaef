//! What is said of the book: what was done last, with the way back; what met another tab's change; what is not kept.

use super::save::{save_book, save_damaged};
use super::ui::button;
use super::{BookAct, use_book_act, use_present};
use crate::places::Screen;
use crate::store::keeper::{At, Done, Present};
use crate::store::place::Failure;
use crate::store::settle::Met;
use crate::words::{fill, words};
use standfast_core::book::Book;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct SaidProps {
    /// What was done last is said where it was done.
    #[prop_or_default]
    pub place: Screen,
}

/// The panels; none where there is nothing to say.
#[component]
pub fn BookSaid(props: &SaidProps) -> Html {
    let present = use_present();
    let act = use_book_act();
    let w = &words().store;
    let send = |to: BookAct| act.reform(move |_: MouseEvent| to.clone());
    html! {
        <>
            if let Some(problem) = unkept(&present) {
                <div class="notice" role="alert" data-testid="book-unkept">
                    <p>{ problem }</p>
                    <div class="buttons">
                        { save_button(&present) }
                        if present.keeping.failure.is_some() {
                            { button(w.again, "book-again", send(BookAct::Again)) }
                        }
                    </div>
                </div>
            }
            if !present.met.is_empty() {
                <div class="notice" role="alert" data-testid="book-met">
                    <ul>{ for present.met.iter().map(|met| html! { <li>{ met_text(met) }</li> }) }</ul>
                    <div class="buttons">{ button(w.close, "book-met-close", send(BookAct::Hush)) }</div>
                </div>
            }
            if let Some(done) = present.done.as_ref().filter(|_| !props.place.is_check()) {
                <div class="notice" role="status" data-testid="book-done">
                    <p>{ done_text(done) }</p>
                    <div class="buttons">
                        { button(w.undo, "book-undo", send(BookAct::Undo)) }
                        { button(w.close, "book-done-close", send(BookAct::Hush)) }
                    </div>
                </div>
            }
        </>
    }
}

fn save_button(present: &Present) -> Html {
    let book = present.book.clone();
    button(words().store.save_book, "book-save-now", Callback::from(move |_: MouseEvent| save_book(&book)))
}

/// What is only in this tab, and why.
fn unkept(present: &Present) -> Option<String> {
    let w = &words().store;
    let keeping = &present.keeping;
    let why = match (&keeping.failure, keeping.at) {
        (Some(Failure::Full), _) => w.full.to_owned(),
        (Some(Failure::Other(why)), _) => fill(w.failed, &[("why", why)]),
        (None, At::Nowhere) if *present.book != Book::default() => return Some(w.nowhere.to_owned()),
        (None, _) => return None,
    };
    Some(if keeping.unkept > 0 { format!("{why} {}", w.unkept.of(keeping.unkept)) } else { why })
}

fn met_text(met: &Met) -> String {
    let w = &words().store;
    match met {
        Met::BothKept { name, ours } => fill(w.both_kept, &[("name", name), ("ours", ours)]),
        Met::Joined { name } => fill(w.joined, &[("name", name)]),
        Met::NotRemoved { name } => fill(w.not_removed, &[("name", name)]),
        Met::PutBack { name } => fill(w.put_back, &[("name", name)]),
    }
}

fn done_text(done: &Done) -> String {
    let w = &words().store;
    let named = |text: &str, name: &String| fill(text, &[("name", name)]);
    match done {
        Done::Changed(name) => named(w.changed, name),
        Done::Archived(name) => named(w.archived, name),
        Done::TakenOut(name) => named(w.taken_out, name),
        Done::Removed(name) => named(w.removed, name),
        Done::Imported(n) => w.imported.of(*n),
    }
}

/// Where the book is kept and for how long, and what of it could not be read.
#[component]
pub fn Keeping() -> Html {
    let present = use_present();
    let w = &words().store;
    let line = match (present.keeping.at, present.keeping.promised) {
        (At::Starting, _) => w.starting.to_owned(),
        (At::Nowhere, _) => w.nowhere.to_owned(),
        (At::Local, _) => w.kept_plain.to_owned(),
        (At::Indexed, promised) => {
            let promise = match promised {
                Some(true) => w.promised,
                Some(false) => w.not_promised,
                None => w.promise_unknown,
            };
            format!("{} {promise}", w.kept_here)
        }
    };
    let damaged = present.damaged.clone();
    let save = Callback::from(move |_: MouseEvent| save_damaged(&damaged));
    html! {
        <>
            <p class="help" data-testid="book-kept">{ line }</p>
            if !present.damaged.is_empty() {
                <div class="notice" role="alert" data-testid="book-damaged">
                    <p>{ w.damaged.of(present.damaged.len()) }</p>
                    <ul>
                        for one in present.damaged.iter() {
                            <li>{ fill(w.damaged_one, &[("name", &one.name), ("why", &one.why)]) }</li>
                        }
                    </ul>
                    <div class="buttons">{ button(w.save_damaged, "book-damaged-save", save) }</div>
                </div>
            }
        </>
    }
}
