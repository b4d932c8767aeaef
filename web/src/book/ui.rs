//! Small parts of the book's places.

use gloo::timers::callback::Timeout;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// How long after the last letter a text is kept, ms.
const REST: u32 = 600;

#[derive(Properties, PartialEq)]
pub struct TextBoxProps {
    pub label: AttrValue,
    pub value: AttrValue,
    /// Its name in tests and in the page.
    pub test: AttrValue,
    /// Takes the text when it was left, or after a moment's rest.
    pub set: Callback<String>,
}

/// A text's input: what is typed stays as typed, whatever comes from elsewhere meanwhile.
#[component]
pub fn TextBox(props: &TextBoxProps) -> Html {
    // What is typed and not kept yet.
    let typed = use_state(|| None::<String>);
    let resting = use_mut_ref(|| None::<Timeout>);
    let set = {
        let (typed, set) = (typed.setter(), props.set.clone());
        Callback::from(move |text: String| {
            set.emit(text);
            typed.set(None);
        })
    };
    let oninput = {
        let (typed, set, resting) = (typed.setter(), set.clone(), resting.clone());
        Callback::from(move |event: InputEvent| {
            let text = event.target_unchecked_into::<HtmlInputElement>().value();
            typed.set(Some(text.clone()));
            let set = set.clone();
            *resting.borrow_mut() = Some(Timeout::new(REST, move || set.emit(text)));
        })
    };
    let onchange = Callback::from(move |event: Event| {
        *resting.borrow_mut() = None;
        set.emit(event.target_unchecked_into::<HtmlInputElement>().value());
    });
    let id = format!("b-{}", props.test);
    let value = typed.as_ref().map_or_else(|| props.value.clone(), |text| AttrValue::from(text.clone()));
    html! {
        <div class="field text">
            <label for={id.clone()}><span class="name">{ &props.label }</span></label>
            <span class="box">
                <input {id} type="text" autocomplete="off" data-testid={props.test.clone()} {value} {oninput} {onchange} />
            </span>
        </div>
    }
}

/// A button.
pub fn button(text: impl Into<AttrValue>, test: impl Into<AttrValue>, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" data-testid={test.into()} {onclick}>{ text.into() }</button> }
}

/// The one that is meant in most cases.
pub fn main_button(text: impl Into<AttrValue>, test: impl Into<AttrValue>, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" class="main" data-testid={test.into()} {onclick}>{ text.into() }</button> }
}
