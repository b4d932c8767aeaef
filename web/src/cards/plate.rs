//! The capacity plate.

use crate::field::Message;
use crate::fold::Fold;
use crate::form::{Choosable, Form, buttons};
use crate::jump::element_id;
use crate::request;
use crate::state::{Action, Choice, Text};
use crate::words::{fill, words};
use standfast_core::document::PlateFor;
use standfast_core::place::{Field, Place};
use standfast_core::plate::Gap;
use standfast_core::validate::MOST_PLATE_ROWS;
use yew::prelude::*;

/// A row's columns.
const COLUMNS: [Field; 3] = [Field::PlateHeight, Field::PlateLoadCentre, Field::PlateCapacity];

/// What is seldom on a plate.
const MORE: [Field; 5] =
    [Field::PlateIssued, Field::PlateMastLift, Field::PlateTiltBack, Field::PlateTiltForward, Field::PlateTyres];

pub(super) fn plate(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let there = form.entries.plate;
    let presence = [
        Choosable { code: "there", name: w.plate_there, chosen: there, choice: Choice::Plate(true) },
        Choosable { code: "none", name: w.plate_none, chosen: !there, choice: Choice::Plate(false) },
    ];
    let issued = |code, name, front_end| Choosable {
        code,
        name,
        chosen: form.entries.plate_for == Some(front_end),
        choice: Choice::PlateFor(front_end),
    };
    let issued =
        [issued("forks", w.for_forks, PlateFor::Forks), issued("attachment", w.for_attachment, PlateFor::Attachment)];
    let named = |code, name, named| Choosable {
        code,
        name,
        chosen: form.entries.plate_extensions == named,
        choice: Choice::PlateExtensions(named),
    };
    let extensions = [named("not_named", w.extensions_unnamed, false), named("named", w.extensions_named, true)];
    html! {
        <>
            <fieldset class="choice">
                <legend>{ w.plate_present }</legend>
                { buttons("truck.plate", &presence, act) }
            </fieldset>
            if there {
                { form.choice(Field::PlateFor, &issued, act) }
                if form.answer.document.truck.forks.extension_m.is_some() {
                    { form.choice(Field::PlateExtensions, &extensions, act) }
                }
                if form.entries.plate_for == Some(PlateFor::Attachment) {
                    { form.text(Text::PlateAttachment, Field::PlateAttachment, &form.entries.plate_attachment) }
                    { form.number(Field::PlateAttachmentMass) }
                }
                { rows(form, act) }
                { form.number(Field::PlateBatteryMin) }
                { form.number(Field::PlateBatteryMax) }
                { more(form, act) }
            }
            { request::opener(act, "request-open-plate") }
        </>
    }
}

/// What it says of the truck it was issued for, beyond the front end.
fn more(form: &Form, act: &Callback<Action>) -> Html {
    let otherwise = |gap: &Gap| matches!(gap, Gap::OtherMast { .. } | Gap::OtherTyres { .. } | Gap::OtherTilt { .. });
    let found = form.answer.assessment.as_ref().map(|a| a.plate.findings.as_slice()).unwrap_or_default();
    let wanted = form.answer.any_problem(&MORE) || found.iter().any(|f| otherwise(&f.gap));
    let holds: Vec<_> = MORE.iter().map(|f| f.row().path).collect();
    let inside = {
        let (form, act) = (form.clone(), act.clone());
        Callback::from(move |()| {
            let e = &form.entries;
            html! {
                <>
                    { form.text(Text::PlateIssued, Field::PlateIssued, &e.plate_issued) }
                    { form.number(Field::PlateMastLift) }
                    { form.number(Field::PlateTiltBack) }
                    { form.number(Field::PlateTiltForward) }
                    { form.tyres(Field::PlateTyres, e.plate_tyres, Choice::PlateTyres, &act) }
                </>
            }
        })
    };
    html! { <Fold name={words().plate.more} test="more-plate" {wanted} holds={holds.join(" ")} {inside} /> }
}

fn rows(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let add = {
        let act = act.clone();
        Callback::from(move |_: MouseEvent| act.emit(Action::AddPlateRow))
    };
    let count = form.entries.plate_rows;
    // A file may hold more than the program takes: enough of them to take some away.
    let shown = count.min(MOST_PLATE_ROWS + 10);
    html! {
        <div class="plate" id={element_id(Field::PlateRows.into())} tabindex="-1">
            if shown > 0 {
                <div class="plate-head" aria-hidden="true">
                    for field in COLUMNS {
                        <span>{ (words().field)(field).name }</span>
                    }
                    <span></span>
                </div>
            }
            { for (0..shown).map(|row| plate_row(form, row, act)) }
            { form.message_below(Field::PlateRows) }
            if count < MOST_PLATE_ROWS {
                <button type="button" data-testid="plate-row-add" onclick={add}>{ w.add_row }</button>
            }
        </div>
    }
}

fn plate_row(form: &Form, row: usize, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let remove = {
        let act = act.clone();
        Callback::from(move |_: MouseEvent| act.emit(Action::RemovePlateRow(row)))
    };
    let name = |text: &str| fill(text, &[("n", &(row + 1).to_string())]);
    let wrong = COLUMNS.map(|f| form.message(Place::in_row(f, row))).into_iter().flatten().any(|m: Message| !m.missing);
    html! {
        <div class={classes!("plate-row", wrong.then_some("wrong"))} role="group" aria-label={name(w.row)} key={row}>
            { for COLUMNS.map(|f| form.cell(Place::in_row(f, row))) }
            <button
                type="button"
                class="remove"
                aria-label={name(w.remove_row)}
                data-testid={format!("plate-row-remove-{row}")}
                onclick={remove}
            >
                { "\u{d7}" }
            </button>
        </div>
    }
}
