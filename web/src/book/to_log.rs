//! Keeping the present check in the log.

use super::log_record::{day_and_minute, now, record};
use super::{BookAct, PlaceProps, fresh_id, use_book_act};
use crate::notice::Notice;
use crate::paper::kept_maker;
use crate::places::Screen;
use crate::state::{Action, use_act};
use crate::storage;
use crate::words::{fill, words};
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// Where the last name is kept, as for paper.
const KEY: &str = "standfast.v1.maker";

/// The button that asks for it.
pub fn opener(act: &Callback<Action>) -> Html {
    let onclick = act.reform(|_: MouseEvent| Action::Say(Notice::ToLog));
    html! { <button type="button" data-testid="to-log" {onclick}>{ words().log.to_log }</button> }
}

/// The panel: who made the check, and the way to keep it.
#[component]
pub fn ToLog(props: &PlaceProps) -> Html {
    let (act, book_act) = (use_act(), use_book_act());
    let who = use_state(String::new);
    let kept = use_state(|| None::<String>);
    let input = use_node_ref();
    {
        let (who, input) = (who.setter(), input.clone());
        use_effect_with((), move |()| {
            who.set(kept_maker());
            if let Some(input) = input.cast::<HtmlInputElement>() {
                let _ = input.focus();
            }
        });
    }
    {
        // Another answer was not kept yet.
        let kept = kept.setter();
        use_effect_with(props.form.answer.clone(), move |_| kept.set(None));
    }
    let w = &words().log;
    let close = act.reform(|_: MouseEvent| Action::Hush);
    let to_log = act.reform(|_: MouseEvent| Action::Go(Screen::Log));
    let button = |text: &'static str, test: &'static str, onclick: Callback<MouseEvent>| {
        html! { <button type="button" data-testid={test} {onclick}>{ text }</button> }
    };
    if props.form.answer.assessment.is_none() {
        return html! {
            <div class="notice" role="status" data-testid="to-log-none">
                <p>{ w.no_answer }</p>
                <div class="buttons">{ button(w.close, "to-log-close", close) }</div>
            </div>
        };
    }
    if let Some(time) = &*kept {
        return html! {
            <div class="notice" role="status" data-testid="to-log-kept">
                <p><b>{ fill(w.kept, &[("time", time)]) }</b></p>
                <div class="buttons">
                    { button(w.open_log, "to-log-open", to_log) }
                    { button(w.close, "to-log-close", close) }
                </div>
            </div>
        };
    }
    let oninput = {
        let who = who.setter();
        Callback::from(move |event: InputEvent| {
            let text = event.target_unchecked_into::<HtmlInputElement>().value();
            // Where the browser keeps nothing it is asked for again.
            storage::keep(KEY, &text);
            who.set(text);
        })
    };
    let onsubmit = {
        let (form, who, kept) = (props.form.clone(), who.clone(), kept.setter());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let at = now();
            let record = record(&form.entries, &form.answer, form.system, &who, at.clone(), fresh_id());
            if let Some(record) = record {
                book_act.emit(BookAct::put(record));
                kept.set(Some(day_and_minute(&at)));
            }
        })
    };
    html! {
        <form class="notice to-log" data-testid="to-log-panel" {onsubmit}>
            <label for="to-log-who">{ w.who }</label>
            <input
                id="to-log-who"
                ref={input}
                type="text"
                autocomplete="name"
                maxlength="80"
                placeholder={w.who_help}
                data-testid="to-log-who"
                value={(*who).clone()}
                {oninput}
            />
            <div class="buttons">
                <button type="submit" class="main" data-testid="to-log-keep">{ w.keep }</button>
                { button(w.cancel, "to-log-close", close) }
            </div>
        </form>
    }
}
