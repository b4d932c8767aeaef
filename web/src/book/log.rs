//! The place of the log.

use super::PlaceProps;
use yew::prelude::*;

/// The place.
#[component]
pub fn LogPlace(props: &PlaceProps) -> Html {
    let _ = &props.form;
    Html::default()
}
