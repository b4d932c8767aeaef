//! Steps 2 to 4 beside the sheet: figures, messages and what can be begun again.

use super::hand::with;
use crate::entries::{Ground, TraceEntry};
use crate::form::Form;
use crate::state::Action;
use crate::words::{fill, words};
use standfast_core::place::{Field, Place};
use standfast_core::validate::MOST_HOLES;
use std::rc::Rc;
use yew::prelude::*;

/// What a panel needs to change something.
#[derive(Clone, Copy)]
pub struct Panel<'a> {
    pub form: &'a Form,
    pub trace: &'a TraceEntry,
    pub act: &'a Callback<Action>,
}

impl Panel<'_> {
    /// A button that changes the tracing; not to be pressed where it would change nothing.
    fn change(&self, test: &str, text: &str, next: TraceEntry) -> Html {
        let nothing = next == *self.trace;
        let (act, entries) = (self.act.clone(), Rc::clone(&self.form.entries));
        let onclick = Callback::from(move |_: MouseEvent| act.emit(Action::Set(with(&entries, next.clone()))));
        html! {
            <button key={test.to_owned()} type="button" data-testid={test.to_owned()} disabled={nothing} {onclick}>{ text }</button>
        }
    }

    /// Step 2.
    pub fn scale(&self) -> Html {
        let w = &words().trace;
        let anew = TraceEntry { scale: Vec::new(), ..self.trace.clone() };
        html! {
            <>
                if self.trace.ground == Ground::Paper {
                    <p class="help">{ w.paper_scale }</p>
                }
                { self.form.message_below(Field::TraceScaleEnds) }
                { self.form.number(Field::TraceScale) }
                { self.change("trace-scale-anew", w.scale_anew, anew) }
            </>
        }
    }

    /// Step 3.
    pub fn straighten(&self) -> Html {
        let w = &words().trace;
        let none = TraceEntry { rectangle: Vec::new(), ..self.trace.clone() };
        let begun = !self.trace.rectangle.is_empty();
        html! {
            <>
                { self.form.message_below(Field::TraceRectangle) }
                if begun {
                    { self.form.number(Field::TraceRectangleWidth) }
                    { self.form.number(Field::TraceRectangleHeight) }
                }
                { self.change("trace-no-rectangle", w.no_rectangle, none) }
            </>
        }
    }

    /// Step 4; `hole` says whether a hole was asked for.
    pub fn outline(&self, hole: &UseStateHandle<bool>, snap: Option<&UseStateHandle<bool>>) -> Html {
        let w = &words().trace;
        let trace = self.trace;
        let toggle = |state: &UseStateHandle<bool>, test: &'static str, text: &'static str, can: bool| {
            let (now, set) = (**state, state.setter());
            let onclick = Callback::from(move |_: MouseEvent| set.set(!now));
            html! {
                <button type="button" class="segment" data-testid={test} aria-pressed={if now { "true" } else { "false" }} disabled={!can} {onclick}>{ text }</button>
            }
        };
        let closed = !trace.outline.is_empty();
        let can_hole = closed && trace.open.is_empty() && trace.holes.len() < MOST_HOLES;
        let without = |k: usize| {
            let mut next = trace.clone();
            next.holes.remove(k);
            let text = fill(w.remove_hole, &[("n", &(k + 1).to_string())]);
            html! {
                <li key={k}>
                    { self.form.message_below(Place::in_row(Field::TraceHole, k)) }
                    { self.change(&format!("trace-remove-hole-{k}"), &text, next) }
                </li>
            }
        };
        let anew = TraceEntry { outline: Vec::new(), holes: Vec::new(), open: Vec::new(), ..trace.clone() };
        let dropped = TraceEntry { open: Vec::new(), ..trace.clone() };
        html! {
            <>
                { self.form.message_below(Field::TraceOutline) }
                <ul>{ for (0..trace.holes.len()).map(without) }</ul>
                // A hole beyond those there may be is said behind the last.
                { self.form.message_below(Place::in_row(Field::TraceHole, trace.holes.len())) }
                <div class="tr-buttons">
                    { toggle(hole, "trace-hole", w.hole, can_hole) }
                    if let Some(snap) = snap {
                        { toggle(snap, "trace-snap", w.snap, true) }
                    }
                    if !trace.open.is_empty() {
                        { self.change("trace-drop-open", w.drop_open, dropped) }
                    }
                    { self.change("trace-anew", w.anew, anew) }
                </div>
            </>
        }
    }
}
