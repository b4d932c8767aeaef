//! The bench on which a load is built from parts: three views to drag in, the list, the figures of
//! the part that is selected.
//!
//! What a finger does is worked out apart from the page, as changed entries ([`moving`], [`outline`],
//! [`adding`]); what is drawn comes from the core's own outlines.

mod add;
mod adding;
mod editor;
mod grab;
mod handles;
mod layout;
mod list;
mod moving;
mod names;
mod outline;
mod part;
mod picture;
mod point;
#[cfg(test)]
mod samples;
mod sizes;
mod snap;
#[cfg(test)]
mod tests;
mod view;
mod views;

use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::words;
use add::Add;
use editor::OutlineEditor;
use layout::Shown;
use list::{PartList, Totals};
use part::PartFigures;
use standfast_core::document::Shape;
use view::{Body, View};
use views::Views;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use yew::prelude::*;

/// Below this width of the window only one view shows at a time, in pixels.
const NARROW: f64 = 700.0;

#[derive(Properties, PartialEq)]
pub struct PartsProps {
    pub form: Form,
}

/// Whether the window is a phone's, followed as it turns.
#[hook]
fn use_narrow() -> bool {
    let narrow = use_state(|| false);
    {
        let narrow = narrow.clone();
        use_effect_with((), move |()| {
            let look = move || {
                let width = web_sys::window().and_then(|w| w.inner_width().ok()).and_then(|w| w.as_f64());
                narrow.set(width.is_some_and(|w| w < NARROW));
            };
            look();
            let closure = Closure::<dyn Fn()>::new(look);
            let window = web_sys::window();
            if let Some(window) = &window {
                let _ = window.add_event_listener_with_callback("resize", closure.as_ref().unchecked_ref());
            }
            move || {
                if let Some(window) = &window {
                    let _ = window.remove_event_listener_with_callback("resize", closure.as_ref().unchecked_ref());
                }
            }
        });
    }
    *narrow
}

/// The part to begin with: the first with something to put right, else the first.
fn first(form: &Form) -> usize {
    let counts = list::counts(&form.answer.problems, form.entries.parts.len());
    counts.iter().position(|n| *n > 0).unwrap_or(0)
}

/// The bench.
#[component]
pub fn PartsBench(props: &PartsProps) -> Html {
    let act = use_act();
    let form = &props.form;
    let selected = use_state(|| first(form));
    let shown = use_state(|| Shown::All);
    let drawing = use_state(|| None::<usize>);
    let narrow = use_narrow();
    let bodies =
        use_memo(form.answer.clone(), |answer| answer.load.shapes.iter().filter_map(Body::of).collect::<Vec<Body>>());
    let w = &words().parts;
    let back = act.reform(|_: MouseEvent| Action::Bench(None));
    let on_select = {
        let (selected, drawing) = (selected.setter(), drawing.setter());
        use_callback((), move |part: usize, ()| {
            selected.set(part);
            drawing.set(None);
        })
    };
    let count = form.entries.parts.len();
    let selected = Some((*selected).min(count.saturating_sub(1))).filter(|s| *s < count);
    let outline = selected
        .filter(|s| *drawing == Some(*s) && form.entries.parts.get(*s).is_some_and(|p| p.shape == Some(Shape::Prism)));
    let on_outline = {
        let drawing = drawing.setter();
        Callback::from(move |()| drawing.set(selected))
    };
    let on_done = {
        let drawing = drawing.setter();
        Callback::from(move |()| drawing.set(None))
    };
    let now = match *shown {
        Shown::All if narrow => Shown::One(View::Side),
        other => other,
    };
    let tab = |which: Shown, name: &'static str, test: &'static str| {
        let shown = shown.setter();
        let onclick = Callback::from(move |_: MouseEvent| shown.set(which));
        html! {
            <button key={test} type="button" class="segment" aria-pressed={if now == which { "true" } else { "false" }} data-testid={test} {onclick}>
                { name }
            </button>
        }
    };
    html! {
        <section class="stage bench pb" data-testid="bench-parts" aria-label={w.heading}>
            <div class="pb-head">
                <h2>{ w.heading }</h2>
                <button type="button" data-testid="bench-back" onclick={back}>{ w.back }</button>
            </div>
            <div class="pb-left">
                if let Some(part) = outline {
                    <OutlineEditor form={form.clone()} bodies={bodies.clone()} {part} {narrow} {on_done} />
                } else {
                    <div class="segments pb-which" role="group" aria-label={w.which_view}>
                        if !narrow {
                            { tab(Shown::All, w.all, "parts-show-all") }
                        }
                        { tab(Shown::One(View::Side), w.side, "parts-show-side") }
                        { tab(Shown::One(View::Front), w.front, "parts-show-front") }
                        { tab(Shown::One(View::Plan), w.plan, "parts-show-plan") }
                    </div>
                    <Views form={form.clone()} bodies={bodies.clone()} shown={now} {narrow} {selected} on_select={on_select.clone()} />
                }
                <Totals form={form.clone()} />
            </div>
            <div class="pb-right">
                <Add form={form.clone()} bodies={bodies.clone()} {selected} on_select={on_select.clone()} />
                <PartList form={form.clone()} {selected} on_select={on_select.clone()} />
                if let Some(part) = selected {
                    <PartFigures form={form.clone()} {bodies} {part} {on_select} {on_outline} />
                }
            </div>
        </section>
    }
}
