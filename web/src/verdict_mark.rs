//! The verdict's mark: ISO 3864's geometry (barred circle, triangle, square) about a plumb bob.

use crate::sentences::Shown;
use yew::prelude::*;

/// The mark. Its word stands beside it, so it is silent to a screen reader.
pub fn verdict_mark(shown: Shown) -> Html {
    let bob = html! {
        <g class="bob">
            <path d="M32 17V36" />
            <path class="weight" d="M32 34l6 6-6 12-6-12z" />
        </g>
    };
    let ground = match shown {
        Shown::NoGo => html! { <circle class="ring" cx="32" cy="32" r="26" /> },
        Shown::Hold => html! { <path class="triangle" d="M32 6L60 56H4z" /> },
        Shown::Go => html! { <rect class="square" x="5" y="5" width="54" height="54" rx="3" /> },
        Shown::None => html! { <path class="plain" d="M8 8h48v48H8z" /> },
    };
    let bar = match shown {
        Shown::NoGo => html! { <path class="bar" d="M14 14L50 50" /> },
        _ => Html::default(),
    };
    html! {
        <svg class={classes!("mark", shown.code())} viewBox="0 0 64 64" aria-hidden="true" focusable="false">
            { ground }
            { bob }
            { bar }
        </svg>
    }
}
