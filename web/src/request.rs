//! The sheet to ask a manufacturer for a plate: one page, to print or to save as a text.

mod lines;

use crate::answer::Answer;
use crate::figures::Printer;
use crate::files::hand_out;
use crate::shared::Shared;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use lines::{Line, Sheet};
use standfast_core::units::System;
use std::rc::Rc;
use web_sys::HtmlElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct RequestProps {
    pub answer: Shared<Answer>,
    pub system: System,
}

/// The sheet, in the place of the whole page while it is open.
#[component]
pub fn RequestSheet(props: &RequestProps) -> Html {
    let act = use_act();
    let w = &words().request;
    let heading = use_node_ref();
    {
        let heading = heading.clone();
        use_effect_with((), move |()| {
            if let Some(heading) = heading.cast::<HtmlElement>() {
                let _ = heading.focus();
            }
        });
    }
    let sheet = Rc::new(Sheet::of(&props.answer, Printer(props.system)));
    let print = Callback::from(|_: MouseEvent| {
        if let Some(window) = web_sys::window() {
            let _ = window.print();
        }
    });
    let save = {
        let sheet = Rc::clone(&sheet);
        Callback::from(move |_: MouseEvent| {
            hand_out(&sheet.text(), "text/plain", &format!("{}.txt", words().request.file));
        })
    };
    let close = act.reform(|_: MouseEvent| Action::Request(false));
    let onkeydown = Callback::from(move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            act.emit(Action::Request(false));
        }
    });
    html! {
        <main class="request" data-testid="request" {onkeydown}>
            <nav class="request-tools" aria-label={w.open}>
                <button type="button" data-testid="request-close" onclick={close}>{ w.close }</button>
                <button type="button" class="main" data-testid="request-print" onclick={print}>{ w.print }</button>
                <button type="button" data-testid="request-save" onclick={save}>{ w.save }</button>
            </nav>
            <article class="request-sheet">
                <h1 ref={heading} tabindex="-1">{ w.heading }</h1>
                <p>{ w.intro }</p>
                if let Some(missing) = &sheet.missing {
                    <p class="missing" data-testid="request-missing">{ missing }</p>
                }
                <div class="parts">
                    for part in &sheet.parts {
                        <section key={part.name}>
                            <h2>{ part.name }</h2>
                            <dl>{ for part.lines.iter().map(line) }</dl>
                        </section>
                    }
                    { plate(&sheet) }
                    <section>
                        <h2>{ w.estimate }</h2>
                        <p data-testid="request-estimate">{ &sheet.estimate }</p>
                    </section>
                    <section class="asked">
                        <h2>{ w.asked }</h2>
                        <ol>{ for w.asked_list.iter().map(|a| html! { <li>{ a }</li> }) }</ol>
                    </section>
                    <section class="from">
                        <h2>{ w.from }</h2>
                        <dl>{ for w.from_list.iter().map(|name| line(&Line { name: (*name).into(), value: None, known: None })) }</dl>
                    </section>
                </div>
                <p class="standing">{ w.standing }{ " " }{ fill(w.program, &[("version", env!("CARGO_PKG_VERSION"))]) }</p>
            </article>
        </main>
    }
}

/// A fact: its name, its value or room to write it.
fn line(line: &Line) -> Html {
    html! {
        <div class={classes!("fact", line.value.is_none().then_some("open"))}>
            <dt>{ &line.name }</dt>
            <dd>
                if let Some(value) = &line.value {
                    { value }
                    if let Some(known) = line.known {
                        <span class="known">{ known }</span>
                    }
                } else {
                    <span class="unseen">{ words().request.not_entered }</span>
                }
            </dd>
        </div>
    }
}

/// The plate's rows, and what they do not cover.
fn plate(sheet: &Sheet) -> Html {
    let w = &words().request;
    html! {
        <section class="rows">
            if sheet.rows.is_empty() {
                <h2>{ w.no_plate }</h2>
            } else {
                <h2>{ w.rows }</h2>
                <ul class="plate-rows">{ for sheet.rows.iter().map(|r| html! { <li>{ r }</li> }) }</ul>
            }
            <h2>{ w.not_covered }</h2>
            <ul data-testid="request-gaps">{ for sheet.gaps_said().into_iter().map(|g| html! { <li>{ g }</li> }) }</ul>
        </section>
    }
}

/// Opens it.
pub fn opener(act: &Callback<Action>, test: &'static str) -> Html {
    let onclick = act.reform(|_: MouseEvent| Action::Request(true));
    html! { <button type="button" class="request-open" data-testid={test} {onclick}>{ words().request.open }</button> }
}

#[cfg(test)]
mod tests;
