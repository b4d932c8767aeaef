//! The Standfast page.

use yew::prelude::*;

#[component]
fn App() -> Html {
    html! { <main><h1>{ "Standfast" }</h1></main> }
}

fn main() {
    yew::Renderer::<App>::new().render();
}
