//! Step 1: a photo from the camera or a file, or squared paper.

use super::paper::{self, Refused};
use super::photo::Photo;
use super::points::pixel;
use crate::entries::{Ground, TraceEntry};
use crate::figures::Printer;
use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use standfast_core::place::Field;
use standfast_core::units::{Quantity, System};
use std::rc::Rc;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// One square as it stands before anything is typed, in the unit of lengths.
const fn first_square(system: System) -> &'static str {
    match system {
        System::Metric => "100",
        System::Us => "4",
    }
}

#[derive(Properties, PartialEq)]
pub struct GroundStepProps {
    pub form: Form,
    pub photo: Photo,
    /// Told when there is something to trace on.
    pub ready: Callback<()>,
}

/// The step.
#[component]
pub fn GroundStep(props: &GroundStepProps) -> Html {
    let w = &words().trace;
    let GroundStepProps { form, photo, ready } = props;
    let blank = TraceEntry::default();
    let trace = form.entries.trace.as_ref().unwrap_or(&blank);
    let onchange = photo.take.clone();
    let onchange = Callback::from(move |event: Event| {
        let input: HtmlInputElement = event.target_unchecked_into();
        if let Some(file) = input.files().and_then(|list| list.get(0)) {
            onchange.emit(file);
        }
        // The same file may be chosen again.
        input.set_value("");
    });
    html! {
        <>
            <div class="tr-files">
                <label class="button">
                    { w.camera }
                    <input type="file" accept="image/*" capture="environment" data-testid="trace-camera" disabled={photo.busy} onchange={onchange.clone()} />
                </label>
                <label class="button">
                    { w.file }
                    <input type="file" accept="image/*" data-testid="trace-photo" disabled={photo.busy} {onchange} />
                </label>
            </div>
            <p class="tr-said" role="status" data-testid="trace-said">
                if photo.busy {
                    <span data-testid="trace-preparing">{ w.preparing }</span>
                }
                { for photo.said.iter().map(|said| html! { <span class="message" data-testid="trace-notice">{ said.text() }</span> }) }
            </p>
            { lies_on(trace, photo) }
            <p class="hint">{ w.stays }</p>
            <Paper form={form.clone()} {ready} />
            { form.message_below(Field::TracePicture) }
        </>
    }
}

/// What is traced on now.
fn lies_on(trace: &TraceEntry, photo: &Photo) -> Html {
    let w = &words().trace;
    let Some((wide, high)) = trace.picture.as_ref().map(pixel) else { return Html::default() };
    let size = |text: &str, unit: f64| {
        let number = |v: f64| format!("{:.0}", v / unit);
        fill(text, &[("wide", &number(wide)), ("high", &number(high))])
    };
    let text = match (trace.ground, &photo.data) {
        (Ground::Paper, _) => size(w.paper_here, paper::SQUARE),
        (Ground::Photo(_), Some(_)) => size(w.photo_here, 1.0),
        (Ground::Photo(_) | Ground::Gone, _) => w.gone.to_owned(),
    };
    let photo_here = matches!(trace.ground, Ground::Photo(_)) && photo.data.is_some();
    html! {
        <div class="tr-lies">
            <p data-testid="trace-ground">{ text }</p>
            if photo_here {
                <button type="button" data-testid="trace-remove-photo" onclick={photo.remove.clone()}>{ w.remove_photo }</button>
            }
        </div>
    }
}

#[derive(Properties, PartialEq)]
struct PaperProps {
    form: Form,
    ready: Callback<()>,
}

/// Squared paper, by the length of a square.
#[component]
fn Paper(props: &PaperProps) -> Html {
    let act = use_act();
    let w = &words().trace;
    let (form, system) = (&props.form, props.form.system);
    let typed = use_state(|| None::<String>);
    let text = (*typed).clone().unwrap_or_else(|| first_square(system).to_owned());
    let square = paper::read(&text, system);
    let laid = form.entries.trace.as_ref().is_some_and(|t| t.ground == Ground::Paper);
    let oninput = {
        let typed = typed.setter();
        Callback::from(move |event: InputEvent| {
            typed.set(Some(event.target_unchecked_into::<HtmlInputElement>().value()));
        })
    };
    let lay = square.ok().map(|square| {
        let (entries, ready) = (Rc::clone(&form.entries), props.ready.clone());
        Callback::from(move |_: MouseEvent| {
            act.emit(Action::Set(Rc::new(paper::laid(&entries, square, system))));
            if !laid {
                ready.emit(());
            }
        })
    });
    let wrong = square.err().map(|why| match why {
        Refused::NotRead(_) => w.not_a_number.to_owned(),
        Refused::Range => {
            let (min, max) = paper::range();
            fill(w.square_range, &[("range", &Printer(system).permitted(Quantity::Length, min, max))])
        }
    });
    html! {
        <fieldset class="group">
            <legend>{ w.paper }</legend>
            <p class="help">{ w.paper_help }</p>
            <div class={classes!("field", wrong.is_some().then_some("wrong"))}>
                <label for="trace-square"><span class="name">{ w.square }</span></label>
                <span class="box">
                    <input
                        id="trace-square"
                        type="text"
                        inputmode="decimal"
                        autocomplete="off"
                        data-testid="trace-square"
                        aria-invalid={if wrong.is_some() { "true" } else { "false" }}
                        value={text}
                        {oninput}
                    />
                    <span class="unit">{ Quantity::Length.unit(system).symbol() }</span>
                </span>
                if let Some(wrong) = &wrong {
                    <span class="message" data-testid="trace-square-wrong">{ wrong }</span>
                }
            </div>
            <button type="button" data-testid="trace-paper" disabled={lay.is_none()} onclick={lay}>
                { if laid { w.relay } else { w.lay } }
            </button>
        </fieldset>
    }
}
