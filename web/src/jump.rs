//! To a field with one touch.

use crate::answer::Card;
use crate::state::Action;
use gloo::timers::callback::Timeout;
use standfast_core::place::Place;
use wasm_bindgen::JsCast;
use yew::prelude::*;

/// The element that a place is entered in.
pub fn element_id(place: Place) -> String {
    format!("f-{place}")
}

/// Opens the card of a place, then puts the cursor there.
pub fn to(place: Place, act: &Callback<Action>) {
    act.emit(Action::Open(Some(Card::of(place))));
    // Once the card is there.
    Timeout::new(30, move || {
        let found = web_sys::window().and_then(|w| w.document()).and_then(|d| d.get_element_by_id(&element_id(place)));
        if let Some(element) = found.and_then(|e| e.dyn_into::<web_sys::HtmlElement>().ok()) {
            element.scroll_into_view();
            let _ = element.focus();
        }
    })
    .forget();
}
