//! What a card needs to show its fields.

use crate::answer::{Answer, is_missing};
use crate::entries::Entries;
use crate::field::{FieldInput, Message, TextInput};
use crate::figures::{self, Printer, quantity_of};
use crate::jump::element_id;
use crate::known;
use crate::problems;
use crate::shared::Shared;
use crate::state::{Action, Choice, Text};
use crate::words::{fill, words};
use standfast_core::document::Tyres;
use standfast_core::friction::Underside;
use standfast_core::place::{Field, Place};
use standfast_core::rules;
use standfast_core::scenario::{Assumed, Basis};
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

/// Entries, what is said of them, and the units to show them in: what every card is given.
#[derive(Clone, Properties, PartialEq)]
pub struct Form {
    pub entries: Rc<Entries>,
    pub answer: Shared<Answer>,
    pub system: System,
    /// The figure of which it is open to change how it is known.
    pub known: Option<Place>,
}

/// One of several to choose from.
pub struct Choosable {
    /// Its name in the document and in tests.
    pub code: &'static str,
    pub name: &'static str,
    pub chosen: bool,
    pub choice: Choice,
}

/// One of many to choose from, with a figure beside its name.
pub struct Tile {
    /// Its name in the document and in tests.
    pub code: String,
    pub name: String,
    pub note: String,
    pub chosen: bool,
    pub choice: Choice,
}

/// What a choice is called in the document.
pub fn code<T: serde::Serialize>(choice: &T) -> String {
    serde_json::to_value(choice).ok().and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
}

impl Form {
    /// A figure's input.
    pub fn number(&self, place: impl Into<Place>) -> Html {
        self.input(place.into(), false)
    }

    /// A figure's input in a table, without a label.
    pub fn cell(&self, place: Place) -> Html {
        self.input(place, true)
    }

    fn input(&self, place: Place, in_table: bool) -> Html {
        let value = self.entries.shown(place, self.system);
        let unit = self.entries.unit(place, self.system).map(|u| u.symbol()).unwrap_or_default();
        let message = self.message(place);
        // What is still needed says its range itself.
        let said = in_table || message.as_ref().is_some_and(|m| m.missing);
        let hint = if said { String::new() } else { self.hint(place, value.is_empty()) };
        html! {
            <FieldInput
                key={place.to_string()}
                {place}
                value={AttrValue::from(value)}
                {unit}
                hint={AttrValue::from(hint)}
                {message}
                {in_table}
                known={known::shown(self, place)}
            />
        }
    }

    /// The permitted range; for an optional figure left empty, what is taken instead.
    fn hint(&self, place: Place, empty: bool) -> String {
        let (w, row, print) = (&words().card, place.field.row(), Printer(self.system));
        if empty && !row.required {
            return match self.answer.assumed(place) {
                Some(assumed) => {
                    let range = print.taken(place, assumed.lo.get(), assumed.hi.get());
                    fill(w.left_empty, &[("range", &range), ("basis", &basis(assumed))])
                }
                None => w.optional.to_owned(),
            };
        }
        match self.entries.unit(place, self.system) {
            Some(unit) => figures::permitted(unit, row.min, row.max),
            None => print.permitted(quantity_of(place), row.min, row.max),
        }
    }

    /// What is missing or wrong at a place.
    pub fn message(&self, place: Place) -> Option<Message> {
        let problem = self.answer.problem(place)?;
        let text = problems::message(problem, &self.entries, self.system);
        Some(Message { text: text.into(), missing: is_missing(problem) })
    }

    /// The message of a choice or a list.
    pub fn message_below(&self, place: impl Into<Place>) -> Html {
        let place = place.into();
        match self.message(place) {
            Some(message) => html! {
                <p class={classes!("message", message.missing.then_some("missing"))} data-testid={format!("problem-{place}")}>
                    { message.text }
                </p>
            },
            None => Html::default(),
        }
    }

    /// A text that stands on a plate.
    pub fn text(&self, which: Text, field: Field, value: &str) -> Html {
        let (path, label) = (field.row().path, (words().field)(field));
        let message = self.message(field.into());
        html! { <TextInput {which} {path} {label} value={value.to_owned()} {message} /> }
    }

    /// What its tyres are, or that nobody says.
    pub fn tyres(
        &self,
        field: Field,
        now: Option<Tyres>,
        choice: fn(Option<Tyres>) -> Choice,
        act: &Callback<Action>,
    ) -> Html {
        let w = &words().plate;
        let all = [Some(Tyres::Cushion), Some(Tyres::SolidPneumatic), Some(Tyres::Pneumatic), None];
        let options = all.map(|tyres| {
            let (code, name) = match tyres {
                Some(Tyres::Cushion) => ("cushion", (w.tyres_button)(Tyres::Cushion)),
                Some(Tyres::SolidPneumatic) => ("solid_pneumatic", (w.tyres_button)(Tyres::SolidPneumatic)),
                Some(Tyres::Pneumatic) => ("pneumatic", (w.tyres_button)(Tyres::Pneumatic)),
                None => ("unsaid", w.tyres_unsaid),
            };
            let (code, name) = (code.to_owned(), name.to_owned());
            Tile { code, name, note: String::new(), chosen: now == tyres, choice: choice(tyres) }
        });
        self.tiles(field, &options, act)
    }

    /// A choice between a few, as buttons side by side.
    pub fn choice(&self, field: Field, options: &[Choosable], act: &Callback<Action>) -> Html {
        self.choosing(field, buttons(field.row().path, options, act))
    }

    /// A choice between many, as a field of buttons.
    pub fn tiles(&self, field: Field, tiles: &[Tile], act: &Callback<Action>) -> Html {
        self.choosing(field, self::tiles(field.row().path, tiles, act))
    }

    fn choosing(&self, field: Field, inside: Html) -> Html {
        let label = (words().field)(field);
        let place = Place::from(field);
        html! {
            <fieldset class="choice" id={element_id(place)} tabindex="-1">
                <legend>{ label.name }</legend>
                if !label.help.is_empty() {
                    <p class="help">{ label.help }</p>
                }
                { inside }
                { self.message_below(place) }
            </fieldset>
        }
    }
}

/// The buttons of a choice between many.
pub fn tiles(path: &str, tiles: &[Tile], act: &Callback<Action>) -> Html {
    html! { <div class="tiles">{ for tiles.iter().map(|t| tile(path, t, act)) }</div> }
}

fn tile(path: &str, tile: &Tile, act: &Callback<Action>) -> Html {
    let inside = html! {
        <>
            <span>{ &tile.name }</span>
            if !tile.note.is_empty() {
                <span class="note">{ &tile.note }</span>
            }
        </>
    };
    pressed((path, &tile.code), "segment tile", tile.chosen, tile.choice, act, inside)
}

/// The buttons of a choice.
pub fn buttons(path: &str, options: &[Choosable], act: &Callback<Action>) -> Html {
    html! {
        <div class="segments">
            for option in options {
                { button(path, option, act) }
            }
        </div>
    }
}

fn button(path: &str, option: &Choosable, act: &Callback<Action>) -> Html {
    let name = html! { { option.name } };
    pressed((path, option.code), "segment", option.chosen, option.choice, act, name)
}

/// A button that is pressed or not.
fn pressed(
    (path, code): (&str, &str),
    class: &'static str,
    chosen: bool,
    choice: Choice,
    act: &Callback<Action>,
    inside: Html,
) -> Html {
    let onclick = act.reform(move |_: MouseEvent| Action::Choose(choice));
    html! {
        <button
            key={code}
            type="button"
            {class}
            aria-pressed={if chosen { "true" } else { "false" }}
            data-testid={format!("choice-{path}-{code}")}
            {onclick}
        >
            { inside }
        </button>
    }
}

/// Where an assumed figure comes from, with how sure that is.
pub fn basis(assumed: &Assumed) -> String {
    let w = &words().card;
    match assumed.basis {
        Basis::Figure { id } => figure_named(id).as_ref().map_or_else(String::new, |f| capital(&source(f))),
        Basis::Middle => w.basis_middle.to_owned(),
        Basis::Worked => w.basis_worked.to_owned(),
        Basis::Zero => w.basis_zero.to_owned(),
        Basis::PlateWindow => w.basis_window.to_owned(),
        Basis::TruckLimit => w.basis_limit.to_owned(),
        Basis::Inferred => w.basis_inferred.to_owned(),
    }
}

/// A text that begins a sentence.
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// The published figure of this name.
fn figure_named(id: &str) -> Option<rules::Figure> {
    let frictions = Underside::ALL.map(Underside::figure);
    rules::ALL.iter().chain(&frictions).find(|f| f.id == id).copied()
}

/// A published figure's source and how sure it is.
pub fn source(figure: &rules::Figure) -> String {
    source_text(figure.source, figure.mark)
}

/// A source and how sure it is.
pub fn source_text(source: &str, mark: rules::Mark) -> String {
    format!("{source} ({})", (words().mark)(mark))
}
