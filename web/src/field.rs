//! One figure's input: label, help, text as typed, unit, range, message.

use crate::jump::element_id;
use crate::known::{self, Shown};
use crate::state::{Action, Text, use_act};
use crate::words::{Label, words};
use standfast_core::place::Place;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// A message beside a field.
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    pub text: AttrValue,
    /// Only missing, not wrong.
    pub missing: bool,
}

#[derive(Properties, PartialEq)]
pub struct FieldProps {
    pub place: Place,
    pub value: AttrValue,
    /// The unit's symbol.
    pub unit: AttrValue,
    /// The permitted range, or what is taken where it is left empty.
    pub hint: AttrValue,
    #[prop_or_default]
    pub message: Option<Message>,
    /// In a table: the heading is the label.
    #[prop_or_default]
    pub in_table: bool,
    /// How the figure is known, where one is entered that can be known in several ways.
    #[prop_or_default]
    pub known: Option<Shown>,
}

/// The input.
#[component]
pub fn FieldInput(props: &FieldProps) -> Html {
    let act = use_act();
    let place = props.place;
    let oninput = use_callback((act.clone(), place), |event: InputEvent, (act, place)| {
        let input: HtmlInputElement = event.target_unchecked_into();
        act.emit(Action::Type(*place, input.value()));
    });
    let onblur = use_callback(act.clone(), |_: FocusEvent, act| act.emit(Action::Settle));
    let Label { name, help } = (words().field)(place.field);
    let id = element_id(place);
    let (hint_id, message_id) = (format!("{id}-hint"), format!("{id}-message"));
    let wrong = props.message.as_ref().is_some_and(|m| !m.missing);
    let described = if props.message.is_some() { format!("{message_id} {hint_id}") } else { hint_id.clone() };
    let label = props.in_table.then(|| AttrValue::from(crate::sentences::name_of(place)));
    html! {
        <div class={classes!("field", wrong.then_some("wrong"), props.in_table.then_some("cell"), props.known.is_some().then_some("has-known"))}>
            if !props.in_table {
                <label for={id.clone()}>
                    <span class="name">{ name }</span>
                    if !help.is_empty() {
                        <span class="help">{ help }</span>
                    }
                </label>
            }
            <span class="box">
                <input
                    id={id}
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    spellcheck="false"
                    data-testid={format!("field-{place}")}
                    aria-label={label}
                    aria-describedby={described}
                    aria-invalid={if wrong { "true" } else { "false" }}
                    value={props.value.clone()}
                    {oninput}
                    {onblur}
                />
                if !props.unit.is_empty() {
                    <span class="unit">{ &props.unit }</span>
                }
            </span>
            // Under what is entered stands how it is known; who does not see still hears the range.
            <span class={classes!("hint", props.known.is_some().then_some("unseen"))} id={hint_id}>{ &props.hint }</span>
            if let Some(message) = &props.message {
                { message_view(message, message_id, &format!("problem-{place}")) }
            }
            if let Some(shown) = &props.known {
                { known::view(place, shown, &act) }
            }
        </div>
    }
}

/// A message under an input.
pub fn message_view(message: &Message, id: String, test: &str) -> Html {
    html! {
        <span class={classes!("message", message.missing.then_some("missing"))} {id} data-testid={test.to_owned()}>
            { &message.text }
        </span>
    }
}

#[derive(Properties, PartialEq)]
pub struct TextProps {
    pub which: Text,
    /// The path in the document.
    pub path: &'static str,
    pub label: Label,
    pub value: AttrValue,
    #[prop_or_default]
    pub message: Option<Message>,
}

/// A free text's input.
#[component]
pub fn TextInput(props: &TextProps) -> Html {
    let act = use_act();
    let onblur = use_callback(act.clone(), |_: FocusEvent, act| act.emit(Action::Settle));
    let oninput = use_callback((act, props.which), |event: InputEvent, (act, which)| {
        let input: HtmlInputElement = event.target_unchecked_into();
        act.emit(Action::Write(*which, input.value()));
    });
    let id = format!("f-{}", props.path);
    let message_id = format!("{id}-message");
    let described = props.message.is_some().then(|| message_id.clone());
    let wrong = props.message.as_ref().is_some_and(|m| !m.missing);
    html! {
        <div class={classes!("field", "text", wrong.then_some("wrong"))}>
            <label for={id.clone()}>
                <span class="name">{ props.label.name }</span>
                if !props.label.help.is_empty() {
                    <span class="help">{ props.label.help }</span>
                }
            </label>
            <span class="box">
                <input
                    id={id}
                    type="text"
                    autocomplete="off"
                    data-testid={format!("field-{}", props.path)}
                    aria-describedby={described}
                    aria-invalid={if wrong { "true" } else { "false" }}
                    value={props.value.clone()}
                    {oninput}
                    {onblur}
                />
            </span>
            if let Some(message) = &props.message {
                { message_view(message, message_id, &format!("problem-{}", props.path)) }
            }
        </div>
    }
}
