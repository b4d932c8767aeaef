//! The place of the loads.

use super::PlaceProps;
use yew::prelude::*;

/// The place.
#[component]
pub fn LoadsPlace(props: &PlaceProps) -> Html {
    let _ = &props.form;
    Html::default()
}
