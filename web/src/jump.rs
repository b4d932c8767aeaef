//! To a field with one touch, and an opened card into sight.

use crate::answer::Card;
use crate::state::{Action, Bench};
use gloo::timers::callback::Timeout;
use standfast_core::place::Place;
use wasm_bindgen::JsCast;
use web_sys::{HtmlElement, ScrollIntoViewOptions, ScrollLogicalPosition};
use yew::prelude::*;

/// How long a change takes to be on the page, ms.
const SHOWN: u32 = 30;

/// The element that a place is entered in.
pub fn element_id(place: Place) -> String {
    format!("f-{place}")
}

/// The element that its tolerance is entered in.
pub fn tolerance_id(place: Place) -> String {
    format!("t-{place}")
}

fn element(id: &str) -> Option<HtmlElement> {
    web_sys::window()?.document()?.get_element_by_id(id)?.dyn_into().ok()
}

fn into_sight(element: &HtmlElement, how: ScrollLogicalPosition) {
    let options = ScrollIntoViewOptions::new();
    options.set_block(how);
    element.scroll_into_view_with_scroll_into_view_options(&options);
}

/// Opens the card or bench of a place, unfolds what hides it, then puts the cursor there.
pub fn to(place: Place, act: &Callback<Action>) {
    match Bench::holds(place) {
        Some(bench) => act.emit(Action::Bench(Some(bench))),
        None => act.emit(Action::Open(Some(Card::of(place)))),
    }
    Timeout::new(SHOWN, move || {
        if !put_cursor(place) && (pick_part(place) || pick_step(place) || unfold(place)) {
            Timeout::new(SHOWN, move || {
                put_cursor(place);
            })
            .forget();
        }
    })
    .forget();
}

fn put_cursor(place: Place) -> bool {
    let Some(figure) = element(&element_id(place)) else { return false };
    let wrong = |e: &HtmlElement| e.get_attribute("aria-invalid").as_deref() == Some("true");
    let tolerance = element(&tolerance_id(place)).filter(|t| wrong(t) && !wrong(&figure));
    let element = tolerance.unwrap_or(figure);
    into_sight(&element, ScrollLogicalPosition::Center);
    let _ = element.focus();
    true
}

fn click(selector: &str) -> bool {
    let document = web_sys::window().and_then(|w| w.document());
    let found = document.and_then(|d| d.query_selector(selector).ok().flatten());
    let element = found.and_then(|e| e.dyn_into::<HtmlElement>().ok());
    element.inspect(HtmlElement::click).is_some()
}

/// Picks the part that a figure belongs to: only its figures show.
fn pick_part(place: Place) -> bool {
    Bench::holds(place) == Some(Bench::Parts) && click(&format!("[data-testid=\"part-{}\"]", place.row))
}

/// Picks the step of a tracing that a figure belongs to.
fn pick_step(place: Place) -> bool {
    let path = place.field.row().path;
    Bench::holds(place) == Some(Bench::Trace) && click(&format!(".tr-steps [data-holds~=\"{path}\"]"))
}

/// Unfolds what holds a field of the open card; else its rare figures.
fn unfold(place: Place) -> bool {
    let path = place.field.row().path;
    click(&format!(".card.open details:not([open])[data-holds~=\"{path}\"] > summary"))
        || click(".card.open details:not([open]) > summary")
}

/// Brings an element into sight once it is there, if it is not already.
pub fn show(id: String) {
    Timeout::new(SHOWN, move || {
        if let Some(element) = element(&id) {
            into_sight(&element, ScrollLogicalPosition::Nearest);
        }
    })
    .forget();
}
