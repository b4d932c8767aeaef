//! The parts in words: what each is and weighs, what is to put right; the load as a whole.

use super::names;
use crate::figures::Printer;
use crate::form::Form;
use crate::words::{fill, words};
use standfast_core::place::Field;
use standfast_core::problem::Problem;
use standfast_core::units::{Quantity, Rounding};
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct ListProps {
    pub form: Form,
    pub selected: Option<usize>,
    pub on_select: Callback<usize>,
}

/// How many problems each part has, in one pass.
pub fn counts(problems: &[Problem], parts: usize) -> Vec<usize> {
    let mut found = vec![0; parts];
    for problem in problems {
        let of_part = problem.place.field.row().path.starts_with("load.parts[]");
        if let (true, Some(n)) = (of_part, found.get_mut(problem.place.row)) {
            *n += 1;
        }
    }
    found
}

/// The list of parts.
#[component]
pub fn PartList(props: &ListProps) -> Html {
    let ListProps { form, selected, on_select } = props;
    let w = &words().parts;
    let e = &form.entries;
    let list = use_node_ref();
    {
        let list = list.clone();
        use_effect_with(*selected, move |selected| {
            if let (Some(k), Some(list)) = (*selected, list.cast::<HtmlElement>()) {
                into_sight(&list, k);
            }
        });
    }
    let problems = counts(&form.answer.problems, e.parts.len());
    let rows = (0..e.parts.len()).map(|k| {
        let about = match e.parts[k].cut_from {
            Some(host) => fill(w.cut_of, &[("part", &names::part(e, host))]),
            None if e.parts[k].name.trim().is_empty() => String::new(),
            None => e.parts[k].shape.map_or("", w.shape).to_owned(),
        };
        html! {
            <Row
                key={k}
                {k}
                name={AttrValue::from(names::part(e, k))}
                about={AttrValue::from(about)}
                weight={AttrValue::from(weight(form, k))}
                problems={problems[k]}
                selected={*selected == Some(k)}
                on_select={on_select.clone()}
            />
        }
    });
    html! {
        <section class="pb-list" aria-labelledby="parts-list-head">
            <h3 id="parts-list-head">{ w.list }</h3>
            { form.message_below(Field::Parts) }
            if e.parts.is_empty() {
                <p class="help">{ w.none_yet }</p>
            }
            <ol ref={list} data-testid="parts-list">{ for rows }</ol>
        </section>
    }
}

/// Scrolls the list alone, never the page, so that a row is in sight.
fn into_sight(list: &HtmlElement, k: usize) {
    let row = list.query_selector(&format!("li:nth-child({})", k + 1)).ok().flatten();
    let Some(row) = row.and_then(|r| r.dyn_into::<HtmlElement>().ok()) else { return };
    let (top, height) = (row.offset_top() - list.offset_top(), row.offset_height());
    let (from, high) = (list.scroll_top(), list.client_height());
    if top < from || top + height > from + high {
        list.set_scroll_top(top - (high - height) / 2);
    }
}

/// What one part weighs, as far as it is known.
fn weight(form: &Form, k: usize) -> String {
    let w = &words().parts;
    let print = Printer(form.system);
    let cut = form.entries.parts[k].cut_from.is_some();
    let found = form.answer.load.load.as_ref().and_then(|l| l.parts.get(k)).map(|p| p.mass.nominal.get());
    match found {
        Some(kg) if cut => fill(w.takes_away, &[("weight", &print.mass(-kg, Rounding::Nearest))]),
        Some(kg) => print.mass(kg, Rounding::Nearest),
        None if cut => String::new(),
        // While the load as a whole is not known, a weight as entered is.
        None => {
            let entered = form.answer.document.load.parts.get(k).and_then(|p| p.mass_kg);
            let made_of = || form.entries.parts[k].material.map_or(w.weight_open, words().load.material).to_owned();
            entered.map_or_else(made_of, |kg| print.mass(kg, Rounding::Nearest))
        }
    }
}

#[derive(Properties, PartialEq)]
struct RowProps {
    k: usize,
    name: AttrValue,
    about: AttrValue,
    weight: AttrValue,
    problems: usize,
    selected: bool,
    on_select: Callback<usize>,
}

#[component]
fn Row(props: &RowProps) -> Html {
    let RowProps { k, name, about, weight, problems, selected, on_select } = props;
    let k = *k;
    html! {
        <li>
            <button
                type="button"
                class="pb-row"
                aria-pressed={if *selected { "true" } else { "false" }}
                data-testid={format!("part-{k}")}
                onclick={on_select.reform(move |_: MouseEvent| k)}
            >
                <span class="number">{ k + 1 }</span>
                <span class="name">{ name }</span>
                <span class="weight">{ weight }</span>
                if !about.is_empty() {
                    <span class="about">{ about }</span>
                }
                if *problems > 0 {
                    <span class="count">{ words().parts.to_do.of(*problems) }</span>
                }
            </button>
        </li>
    }
}

#[derive(Properties, PartialEq)]
pub struct TotalsProps {
    pub form: Form,
}

/// The load as a whole.
#[component]
pub fn Totals(props: &TotalsProps) -> Html {
    let w = &words().parts;
    let system = props.form.system;
    let inside = match &props.form.answer.load.load {
        None => html! { <p class="help">{ w.total_open }</p> },
        Some(load) => {
            let size = load.size;
            let [ahead, left, above] = names::centre(load).map(|r| names::ranged(system, Quantity::Length, &r));
            let centre = [(ahead, w.from_heel_side), (left, w.left_of_middle), (above, w.above_underside)];
            let sizes = [size.x, size.y, size.z].map(|s| names::length(system, s.get())).join(" \u{d7} ");
            html! {
                <dl>
                    <dt>{ w.weight }</dt>
                    <dd data-testid="parts-weight"><b>{ names::ranged(system, Quantity::Mass, &load.mass) }</b></dd>
                    <dt>{ w.centre }</dt>
                    for (value, what) in centre {
                        <dd><b>{ value }</b>{ " " }{ what }</dd>
                    }
                    <dt>{ w.size }</dt>
                    <dd>{ sizes }</dd>
                </dl>
            }
        }
    };
    html! {
        <section class="pb-totals" aria-labelledby="parts-totals-head" data-testid="parts-totals">
            <h3 id="parts-totals-head">{ w.total }</h3>
            { inside }
        </section>
    }
}
