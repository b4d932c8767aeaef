//! The check as a link and as a QR code, to be opened on another device.

mod copy;
pub mod opened;

use crate::files::save;
use crate::form::Form;
use crate::link;
use crate::problems;
use crate::qr;
use crate::storage;
use crate::words::{fill, words};
use std::rc::Rc;
use web_sys::{HtmlInputElement, HtmlTextAreaElement};
use yew::prelude::*;

/// Where the page's address on other devices is kept.
const KEY: &str = "standfast.v1.address";

/// Where the page is, without fragment and query.
fn here() -> Option<String> {
    let href = web_sys::window()?.location().href().ok()?;
    href.split(['#', '?']).next().map(str::to_owned)
}

/// The address to begin with: the one that was entered last, or where the page is.
fn address() -> String {
    let kept = storage::browser().and_then(|s| s.get_item(KEY).ok()?).filter(|a| !a.trim().is_empty());
    kept.or_else(here).unwrap_or_default()
}

/// The link of a check to a page at an address.
fn link_to(address: &str, fragment: &str) -> String {
    let address = address.trim().split('#').next().unwrap_or_default();
    format!("{address}#{fragment}")
}

#[derive(Properties, PartialEq)]
pub struct ShareProps {
    pub form: Form,
}

/// The link, the code, and what stands in their way.
#[component]
pub fn Share(props: &ShareProps) -> Html {
    let (w, p) = (&words().share, &words().paper);
    let entries = &props.form.entries;
    let address = use_state(String::new);
    {
        let address = address.clone();
        use_effect_with((), move |()| address.set(self::address()));
    }
    let fragment = use_memo(Rc::clone(entries), |entries| link::write(&entries.file()));
    let link = link_to(&address, &fragment);
    let on_address = {
        let address = address.clone();
        Callback::from(move |event: InputEvent| {
            let input: HtmlInputElement = event.target_unchecked_into();
            let text = input.value();
            // Where the page is needs not be kept: it may be another one tomorrow.
            storage::keep(KEY, if Some(&text) == here().as_ref() { "" } else { &text });
            address.set(text);
        })
    };
    let named = |name: &str| if name.trim().is_empty() { p.unnamed.to_owned() } else { name.trim().to_owned() };
    let holds = fill(w.holds, &[("load", &named(&entries.load_name)), ("truck", &named(&entries.truck_name))]);
    let (_, unread) = entries.document();
    let left_out: Vec<_> = unread.iter().map(problems::subject).collect();
    let save = {
        let entries = Rc::clone(entries);
        Callback::from(move |_: MouseEvent| save(&entries))
    };
    let as_file = html! {
        <button type="button" class="main" data-testid="share-save" onclick={save}>{ w.save }</button>
    };
    let length = link.chars().count();
    html! {
        <article class="share" data-testid="share">
            <h1>{ w.heading }</h1>
            <p>{ w.intro }</p>
            <p>{ holds }{ " " }if entries.trace.is_some() { { w.no_photo } }</p>
            if !left_out.is_empty() {
                <p class="message" data-testid="share-left-out">{ fill(w.left_out, &[("list", &left_out.join(", "))]) }</p>
            }
            <label class="address">
                <span class="name">{ w.address }</span>
                <input type="url" data-testid="share-address" value={(*address).clone()} oninput={on_address} />
                <span class="help">
                    { if address.starts_with("file:") { w.address_file } else { w.address_help } }
                </span>
            </label>
            if length > link::LONGEST {
                <div class="message" data-testid="share-too-long">
                    <p>{ fill(w.too_long, &[("n", &length.to_string()), ("most", &link::LONGEST.to_string())]) }</p>
                    { as_file }
                </div>
            } else {
                <div class="ways">
                    <LinkText {link} />
                    <section>
                        <h2>{ w.code }</h2>
                        if let Some(code) = qr::code(&link_to(&address, &fragment)) {
                            { qr::view(&code, w.code) }
                            <p class="help">{ w.code_help }</p>
                        } else {
                            <p class="message" data-testid="share-no-code">{ w.no_code }</p>
                            { as_file }
                        }
                    </section>
                </div>
            }
        </article>
    }
}

#[derive(Properties, PartialEq)]
struct LinkProps {
    link: String,
}

/// The link itself, to copy.
#[component]
fn LinkText(props: &LinkProps) -> Html {
    let w = &words().share;
    let text = use_node_ref();
    let said = use_state(|| "");
    {
        let said = said.clone();
        use_effect_with(props.link.clone(), move |_| said.set(""));
    }
    let copy = {
        let (text, said) = (text.clone(), said.clone());
        Callback::from(move |_: MouseEvent| {
            let Some(area) = text.cast::<HtmlTextAreaElement>() else { return };
            let said = said.clone();
            copy::copy(&area, move |done| said.set(if done { w.copied } else { w.selected }));
        })
    };
    let select = {
        let text = text.clone();
        Callback::from(move |_: FocusEvent| {
            if let Some(area) = text.cast::<HtmlTextAreaElement>() {
                area.select();
            }
        })
    };
    html! {
        <section>
            <h2 id="share-link-name">{ w.the_link }</h2>
            <textarea
                ref={text}
                readonly=true
                rows="6"
                spellcheck="false"
                aria-labelledby="share-link-name"
                data-testid="share-link"
                value={props.link.clone()}
                onfocus={select}
            />
            <button type="button" class="main" data-testid="share-copy" onclick={copy}>{ w.copy }</button>
            <p role="status" data-testid="share-said">{ *said }</p>
        </section>
    }
}

#[cfg(test)]
mod tests;
