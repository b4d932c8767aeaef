//! Every point in text, to read and to type.

use super::glass::Pixel;
use super::hand::with;
use super::points::{At, Ring, Task, added, pixel, placed, taken_out};
use crate::entries::TraceEntry;
use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use standfast_core::number;
use standfast_core::units::Unit;
use std::rc::Rc;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct ListProps {
    pub form: Form,
    pub task: Task,
}

/// The list.
#[component]
pub fn PointList(props: &ListProps) -> Html {
    let act = use_act();
    let w = &words().trace;
    let trace = props.form.entries.trace.clone().unwrap_or_default();
    let (wide, high) = trace.picture.as_ref().map_or((0.0, 0.0), pixel);
    let middle = ((0.5 * wide).round(), (0.5 * high).round());
    let add = props.task.adds_to(&trace).filter(|_| wide > 0.0).map(|ring| {
        let (act, entries, next) = (act.clone(), Rc::clone(&props.form.entries), added(&trace, ring, middle));
        Callback::from(move |_: MouseEvent| act.emit(Action::Set(with(&entries, next.clone()))))
    });
    let rings: Vec<Ring> = Ring::all(&trace).into_iter().filter(|r| !r.of(&trace).is_empty()).collect();
    html! {
        <div class="tr-list">
            <p class="help">{ w.list_help }</p>
            if rings.is_empty() {
                <p>{ w.none_yet }</p>
            }
            { for rings.into_iter().map(|ring| table(ring, &trace, &props.form)) }
            <button type="button" data-testid="trace-add-point" disabled={add.is_none()} onclick={add}>{ w.add }</button>
        </div>
    }
}

fn table(ring: Ring, trace: &TraceEntry, form: &Form) -> Html {
    let w = &words().trace;
    let row = |(point, at): (usize, Pixel)| {
        let which = At { ring, point };
        html! { <PointRow key={point} form={form.clone()} {which} x={(at.0 * 10.0).round() as i64} y={(at.1 * 10.0).round() as i64} /> }
    };
    html! {
        <table key={ring.key()}>
            <caption>{ (w.ring)(ring) }</caption>
            <thead><tr><th scope="col"></th><th scope="col">{ w.right }</th><th scope="col">{ w.down }</th><th scope="col"></th></tr></thead>
            <tbody>{ for ring.pixels(trace).into_iter().enumerate().map(row) }</tbody>
        </table>
    }
}

#[derive(Properties, PartialEq)]
struct RowProps {
    form: Form,
    which: At,
    /// Tenths of a pixel.
    x: i64,
    y: i64,
}

/// One point. What is typed is taken when the input is left, and stays to be put right where it
/// cannot be read.
#[component]
fn PointRow(props: &RowProps) -> Html {
    let act = use_act();
    let typing = use_state(|| [None::<String>, None]);
    let w = &words().trace;
    let RowProps { form, which, x, y } = props;
    let which = *which;
    let trace = form.entries.trace.clone().unwrap_or_default();
    let picture = trace.picture.as_ref().map_or((0.0, 0.0), pixel);
    let at = (*x as f64 / 10.0, *y as f64 / 10.0);
    let n = (which.point + 1).to_string();
    let input = |down: bool| {
        let (now, most, name) = if down { (at.1, picture.1, w.down) } else { (at.0, picture.0, w.right) };
        let mine = typing[usize::from(down)].clone();
        let read = |text: &str| number::read(text, Unit::One).ok().filter(|v| (0.0..=most).contains(v));
        let wrong = mine.as_ref().is_some_and(|t| read(t).is_none());
        let keep = {
            let typing = typing.clone();
            move |text: Option<String>| {
                let mut next = (*typing).clone();
                next[usize::from(down)] = text;
                typing.set(next);
            }
        };
        let oninput = {
            let keep = keep.clone();
            Callback::from(move |event: InputEvent| {
                keep(Some(event.target_unchecked_into::<HtmlInputElement>().value()));
            })
        };
        let onchange = {
            let (act, entries, trace) = (act.clone(), Rc::clone(&form.entries), trace.clone());
            Callback::from(move |event: Event| {
                let text = event.target_unchecked_into::<HtmlInputElement>().value();
                let value = number::read(&text, Unit::One).ok().filter(|v| (0.0..=most).contains(v));
                if let Some(value) = value {
                    let to = if down { (at.0, value) } else { (value, at.1) };
                    keep(None);
                    act.emit(Action::Set(with(&entries, placed(&trace, which, to))));
                }
            })
        };
        let test = format!("trace-{}-{}-{}", if down { "down" } else { "right" }, which.ring.key(), which.point);
        html! {
            <td>
                <input
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    aria-label={format!("{} {n}, {name}", (w.ring)(which.ring))}
                    aria-invalid={if wrong { "true" } else { "false" }}
                    data-testid={test}
                    value={mine.unwrap_or_else(|| number::show(now, 1))}
                    {oninput}
                    {onchange}
                />
                if wrong {
                    <span class="message">{ w.not_a_number }</span>
                }
            </td>
        }
    };
    let out = taken_out(&trace, which).map(|next| {
        let (act, entries) = (act.clone(), Rc::clone(&form.entries));
        Callback::from(move |_: MouseEvent| act.emit(Action::Set(with(&entries, next.clone()))))
    });
    html! {
        <tr>
            <th scope="row">{ fill(w.nth, &[("n", &n)]) }</th>
            { input(false) }
            { input(true) }
            <td>
                <button type="button" class="tr-sign" aria-label={format!("{}: {} {n}", w.take_out, (w.ring)(which.ring))} disabled={out.is_none()} onclick={out}>{ "\u{d7}" }</button>
            </td>
        </tr>
    }
}
