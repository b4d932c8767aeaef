//! What was read on scales under the load.

use super::found;
use crate::field::Message;
use crate::figures::Printer;
use crate::form::{Choosable, Form, buttons};
use crate::jump::element_id;
use crate::state::{Action, Choice};
use crate::words::{fill, words};
use standfast_core::document::{GivenAs, Side};
use standfast_core::found::Way;
use standfast_core::place::{Field, Place};
use standfast_core::validate::MOST_SUPPORTS;
use yew::prelude::*;

pub(super) fn weighed(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().load;
    let weighing = form.entries.weighing;
    let points = weighing.map_or(0, |w| w.points);
    let supports = |code, name, n: usize| Choosable {
        code,
        name,
        chosen: if n == 0 { weighing.is_none() } else { weighing.is_some() && points == n },
        choice: Choice::Supports(n),
    };
    let options = [
        supports("none", w.weigh_none, 0),
        supports("two", "2", 2),
        supports("three", "3", 3),
        supports("four", "4", 4),
    ];
    html! {
        <div class="weighed" id={element_id(Field::WeighPoints.into())} tabindex="-1">
            <p class="help">{ w.weighed.help }</p>
            <div role="group" aria-label={w.weighed.name}>{ buttons("load.weighing", &options, act) }</div>
            if weighing.is_some() {
                <p class="help">{ if points == 2 { w.weigh_two } else { w.weigh_more } }</p>
                <p class="help">{ measured_from(form) }</p>
                { table(form, points) }
                { form.message_below(Field::WeighPoints) }
                { form.number(Field::WeighAccuracy) }
                { raised(form, act) }
                { result(form) }
            }
        </div>
    }
}

fn measured_from(form: &Form) -> &'static str {
    let w = &words().load;
    match form.entries.given_as {
        GivenAs::Block => w.weigh_from_block,
        GivenAs::Parts => w.weigh_from_parts,
        GivenAs::Trace => w.weigh_from_trace,
    }
}

fn table(form: &Form, points: usize) -> Html {
    let raised = form.entries.counts(Field::WeighRaisedReading);
    let columns: &[Field] = if raised {
        &[Field::WeighAhead, Field::WeighLeft, Field::WeighReading, Field::WeighRaisedReading]
    } else {
        &[Field::WeighAhead, Field::WeighLeft, Field::WeighReading]
    };
    let class = classes!("supports", raised.then_some("four"));
    let row = |k: usize| {
        let name = fill(words().load.support, &[("n", &(k + 1).to_string())]);
        let wrong = columns.iter().filter_map(|&f| form.message(Place::in_row(f, k))).any(|m: Message| !m.missing);
        html! {
            <div class={classes!("support", wrong.then_some("wrong"))} role="group" aria-label={name.clone()} key={k}>
                <span class="nth" aria-hidden="true">{ k + 1 }</span>
                { for columns.iter().map(|&f| form.cell(Place::in_row(f, k))) }
            </div>
        }
    };
    html! {
        <div {class}>
            <div class="support heads" aria-hidden="true">
                <span></span>
                for field in columns {
                    <span>{ (words().field)(*field).name }</span>
                }
            </div>
            { for (0..points.min(MOST_SUPPORTS)).map(row) }
        </div>
    }
}

/// The second set, with one end raised.
fn raised(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().load;
    let end = form.entries.weighing.and_then(|w| w.raised_end);
    let option =
        |code, name, side: Option<Side>| Choosable { code, name, chosen: end == side, choice: Choice::RaisedEnd(side) };
    let side = |code, side| option(code, (w.raised_end)(side), Some(side));
    let options = [
        option("none", w.raised_none, None),
        side("ahead", Side::Ahead),
        side("heel", Side::Heel),
        side("left", Side::Left),
        side("right", Side::Right),
    ];
    html! {
        <>
            { form.choice(Field::WeighRaisedEnd, &options, act) }
            <p class="hint under">{ w.raised_help }</p>
            if end.is_some() {
                { form.number(Field::WeighRaised) }
            }
        </>
    }
}

/// What the scales alone say.
fn result(form: &Form) -> Html {
    let w = &words().load;
    let Some(load) = &form.answer.load.load else { return Html::default() };
    let ways = load.ways.iter().filter(|s| matches!(s.way, Way::WeighedLevel | Way::WeighedRaised));
    let print = Printer(form.system);
    let said: Vec<String> = ways.flat_map(|s| found::said(load, s, print)).collect();
    if said.is_empty() {
        return Html::default();
    }
    html! {
        <p class="scales-say" data-testid="scales-say">
            <strong>{ w.scales_say }</strong>{ ": " }{ said.join(", ") }{ "." }
        </p>
    }
}
