//! Who made the check, and when the paper is printed.

use crate::storage;
use crate::words::words;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// Where the last name is kept.
const KEY: &str = "standfast.v1.maker";

/// The name that was given last.
pub fn kept_maker() -> String {
    storage::browser().and_then(|s| s.get_item(KEY).ok()?).unwrap_or_default()
}

#[derive(Properties, PartialEq)]
pub struct MakerProps {
    pub value: String,
    pub on_change: Callback<String>,
}

/// The name's input.
#[component]
pub fn Maker(props: &MakerProps) -> Html {
    let w = &words().paper;
    let oninput = props.on_change.reform(|event: InputEvent| {
        let input: HtmlInputElement = event.target_unchecked_into();
        // Where the browser keeps nothing it is asked for again.
        storage::keep(KEY, &input.value());
        input.value()
    });
    html! {
        <label class="maker">
            <span>{ w.who }</span>
            <input
                type="text"
                autocomplete="name"
                maxlength="80"
                placeholder={w.who_help}
                data-testid="paper-maker"
                value={props.value.clone()}
                {oninput}
            />
        </label>
    }
}

/// The date and time, as the year, month and day are sorted.
#[cfg(target_arch = "wasm32")]
pub fn now() -> String {
    let d = web_sys::js_sys::Date::new_0();
    let (year, month, day) = (d.get_full_year(), d.get_month() + 1, d.get_date());
    format!("{year}-{month:02}-{day:02} {:02}:{:02}", d.get_hours(), d.get_minutes())
}

/// Outside a browser there is none.
#[cfg(not(target_arch = "wasm32"))]
pub fn now() -> String {
    String::new()
}
