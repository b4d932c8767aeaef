//! What is printed: the check to sign, and the card of what the truck carries. In ink alone: marks by shape
//! and word, hatching in place of colour.

mod card;
mod check;
mod maker;
mod rows;
mod working;

pub use card::CapacityCard;
pub use check::CheckSheet;
pub use maker::{Maker, kept_maker};

use crate::files::is_invented;
use crate::form::Form;
use crate::words::{fill, words};
use yew::prelude::*;

/// The head of a sheet: what it is, of what, when, by whom.
fn head(title: &str, form: &Form, maker: &str, with_load: bool) -> Html {
    let w = &words().paper;
    let e = &form.entries;
    let named = |name: &str| if name.trim().is_empty() { w.unnamed.to_owned() } else { name.trim().to_owned() };
    let fact = |name: &'static str, value: String| html! { <div><dt>{ name }</dt><dd>{ value }</dd></div> };
    let remark = e.note.trim();
    html! {
        <header class="paper-head">
            <div class="title">
                <h1>{ title }</h1>
                <p class="program">{ fill(w.program, &[("version", env!("CARGO_PKG_VERSION"))]) }</p>
            </div>
            if is_invented(e) {
                <p class="invented" data-testid="paper-invented">{ w.invented }</p>
            }
            <dl>
                { fact(w.truck, named(&e.truck_name)) }
                if with_load {
                    { fact(w.load, named(&e.load_name)) }
                }
                { fact(w.date, maker::now()) }
                <div class={classes!(maker.trim().is_empty().then_some("to-write"))}>
                    <dt>{ w.who }</dt><dd>{ maker.trim() }</dd>
                </div>
                if with_load && !remark.is_empty() {
                    <div class="wide"><dt>{ w.remark }</dt><dd>{ remark }</dd></div>
                }
            </dl>
        </header>
    }
}

#[cfg(test)]
mod tests;
