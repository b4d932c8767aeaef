//! The move's card: the lift, and how the load stands on the forks; the drive joins them.

use super::{drive, group};
use crate::form::Form;
use crate::state::Action;
use crate::words::words;
use standfast_core::place::Field;
use yew::prelude::*;

pub(super) fn card(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let numbers = |fields: &[Field]| html! { <>{ for fields.iter().map(|&f| form.number(f)) }</> };
    html! {
        <>
            { group(w.group_heights, numbers(&[Field::LiftHeight, Field::TakeUp, Field::TravelLift])) }
            { group(w.group_tilt, numbers(&[Field::TiltBack, Field::TiltForward])) }
            { group(w.group_stands, numbers(&[Field::HeelGap, Field::Offset, Field::Sideshift])) }
            { drive::card(form, act) }
        </>
    }
}
