//! The trucks.

use super::attachments::Attachments;
use super::edit::is_found;
use super::keep::KeepPresent;
use super::said::Keeping;
use super::tables::Tables;
use super::truck::TruckView;
use super::ui::button;
use super::{PlaceProps, use_book};
use crate::words::words;
use standfast_core::book::TruckRecord;
use std::rc::Rc;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// The place: the truck of the check, the trucks that are kept, the attachments.
#[component]
pub fn TrucksPlace(props: &PlaceProps) -> Html {
    let book = use_book();
    let wanted = use_state(String::new);
    let with_archived = use_state(|| false);
    let open = use_state(|| props.form.entries.of.as_ref().map(|of| of.truck.clone()));
    let w = &words().book;
    let search = {
        let wanted = wanted.setter();
        Callback::from(move |event: InputEvent| wanted.set(event.target_unchecked_into::<HtmlInputElement>().value()))
    };
    let mut found: Vec<&TruckRecord> = book.trucks.iter().filter(|t| is_found(t, &wanted)).collect();
    found.sort_by_key(|t| t.name.to_lowercase());
    let (away, shown): (Vec<_>, Vec<_>) = found.into_iter().partition(|t| t.archived);
    let view = |truck: &TruckRecord| {
        let (id, setter, is_open) = (truck.id.clone(), open.setter(), open.as_deref() == Some(&truck.id));
        let toggle = Callback::from(move |()| setter.set((!is_open).then(|| id.clone())));
        html! {
            <TruckView
                key={truck.id.clone()}
                truck={Rc::new(truck.clone())}
                form={props.form.clone()}
                open={is_open}
                {toggle}
            />
        }
    };
    let toggle_away = {
        let with_archived = with_archived.clone();
        Callback::from(move |_: MouseEvent| with_archived.set(!*with_archived))
    };
    let toggle_text = if *with_archived { w.archived_hide.to_owned() } else { w.archived_show.of(away.len()) };
    html! {
        <>
            <Keeping />
            <KeepPresent form={props.form.clone()} />
            if book.trucks.is_empty() {
                <p>{ w.empty }</p>
            } else {
                <div class="field text search">
                    <label for="b-search"><span class="name">{ w.search }</span></label>
                    <span class="box">
                        <input
                            id="b-search"
                            type="search"
                            autocomplete="off"
                            data-testid="truck-search"
                            value={(*wanted).clone()}
                            oninput={search}
                        />
                    </span>
                </div>
                if shown.is_empty() && !wanted.is_empty() {
                    <p role="status">{ w.found_none }</p>
                }
                <div class="trucks">{ for shown.into_iter().map(view) }</div>
                if !away.is_empty() {
                    <div class="buttons">{ button(toggle_text, "trucks-archived", toggle_away) }</div>
                    if *with_archived {
                        <div class="trucks away">{ for away.into_iter().map(view) }</div>
                    }
                }
            }
            <Attachments form={props.form.clone()} />
            <Tables form={props.form.clone()} />
        </>
    }
}
