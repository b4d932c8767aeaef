//! The place of the trucks.

use super::PlaceProps;
use yew::prelude::*;

/// The place.
#[component]
pub fn TrucksPlace(props: &PlaceProps) -> Html {
    let _ = &props.form;
    Html::default()
}
