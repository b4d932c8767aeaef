//! The places of the page, one row, always there.

use crate::state::{Action, use_act};
use crate::words::words;
use serde::{Deserialize, Serialize};
use yew::prelude::*;

/// A place.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Screen {
    /// One truck, one load, one move.
    #[default]
    Check,
    Trucks,
    Loads,
    Log,
}

impl Screen {
    const ALL: [Self; 4] = [Self::Check, Self::Trucks, Self::Loads, Self::Log];

    /// Whether it is the first one.
    pub fn is_check(&self) -> bool {
        *self == Self::Check
    }

    /// Its name, and that in tests.
    pub fn names(self) -> (&'static str, &'static str) {
        let w = &words().places;
        match self {
            Self::Check => (w.check, "place-check"),
            Self::Trucks => (w.trucks, "place-trucks"),
            Self::Loads => (w.loads, "place-loads"),
            Self::Log => (w.log, "place-log"),
        }
    }
}

#[derive(Properties, PartialEq)]
pub struct PlacesProps {
    pub now: Screen,
}

/// The row. The present one stands out by a bar and by weight, not by colour alone.
#[component]
pub fn Places(props: &PlacesProps) -> Html {
    let act = use_act();
    let button = |screen: Screen| {
        let (name, test) = screen.names();
        let onclick = act.reform(move |_: MouseEvent| Action::Go(screen));
        let now = (screen == props.now).then_some("page");
        html! {
            <button key={test} type="button" class="place" aria-current={now} data-testid={test} {onclick}>{ name }</button>
        }
    };
    html! {
        <nav class="places" aria-label={words().places.heading}>{ for Screen::ALL.map(button) }</nav>
    }
}
