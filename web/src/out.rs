//! What leaves the page: on paper, or as a link. Each takes the place of the whole page while it is open.

use crate::form::Form;
use crate::paper::{CapacityCard, CheckSheet, Maker, kept_maker};
use crate::share::Share;
use crate::state::{Action, use_act};
use crate::words::words;
use web_sys::HtmlElement;
use yew::prelude::*;

/// What is open.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Out {
    /// The check, to sign.
    Check,
    /// What the truck carries as it stands.
    Card,
    /// The check as a link.
    Link,
}

#[derive(Properties, PartialEq)]
pub struct OutProps {
    pub out: Out,
    pub form: Form,
}

/// The sheet with what there is to do about it.
#[component]
pub fn OutPage(props: &OutProps) -> Html {
    let act = use_act();
    let w = &words().paper;
    let top = use_node_ref();
    let maker = use_state(String::new);
    {
        let (top, maker) = (top.clone(), maker.clone());
        use_effect_with(props.out, move |_| {
            if let Some(top) = top.cast::<HtmlElement>() {
                let _ = top.focus();
                top.scroll_into_view();
            }
            if maker.is_empty() {
                maker.set(kept_maker());
            }
        });
    }
    let close = act.reform(|_: MouseEvent| Action::Out(None));
    let onkeydown = {
        let act = act.clone();
        Callback::from(move |event: KeyboardEvent| {
            if event.key() == "Escape" {
                act.emit(Action::Out(None));
            }
        })
    };
    let print = Callback::from(|_: MouseEvent| {
        if let Some(window) = web_sys::window() {
            let _ = window.print();
        }
    });
    let kind = |out: Out, name: &'static str, test: &'static str| {
        html! {
            <button
                type="button"
                class="segment"
                aria-pressed={if props.out == out { "true" } else { "false" }}
                data-testid={test}
                onclick={act.reform(move |_: MouseEvent| Action::Out(Some(out)))}
            >
                { name }
            </button>
        }
    };
    let on_maker = {
        let maker = maker.clone();
        Callback::from(move |text| maker.set(text))
    };
    let form = props.form.clone();
    html! {
        <main class="out" data-testid="out" {onkeydown}>
            <nav class="out-tools" aria-label={w.which} ref={top} tabindex="-1">
                <button type="button" data-testid="out-close" onclick={close}>{ w.back }</button>
                <div class="segments" role="group" aria-label={w.which}>
                    { kind(Out::Check, w.check, "out-check") }
                    { kind(Out::Card, w.card, "out-card") }
                    { kind(Out::Link, words().share.link, "out-link") }
                </div>
                if props.out != Out::Link {
                    <Maker value={(*maker).clone()} on_change={on_maker} />
                    <button type="button" class="main" data-testid="out-print" onclick={print}>{ w.print }</button>
                }
            </nav>
            { match props.out {
                Out::Check => html! { <CheckSheet {form} maker={(*maker).clone()} /> },
                Out::Link => html! { <Share {form} /> },
                Out::Card => html! { <CapacityCard {form} maker={(*maker).clone()} /> },
            } }
        </main>
    }
}
