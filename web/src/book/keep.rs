//! The truck of the present check: kept as a new one, as another set-up, or in the place of what it came from.

use super::differ::{Differing, differing};
use super::edit::{self, Standing, find};
use super::ui::{button, main_button};
use super::{BookAct, PlaceProps, fresh_id, use_book, use_book_act};
use crate::figures::Printer;
use crate::problems;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use standfast_core::book::{Of, SetUp, TruckRecord};
use std::rc::Rc;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

/// What a set-up is called after what is fitted.
fn usual_name(standing: &Standing) -> String {
    let w = &words().book;
    match &standing.0.attachment {
        None => w.forks.to_owned(),
        Some(a) if a.name.is_empty() => w.set_up.to_owned(),
        Some(a) => a.name.clone(),
    }
}

/// The list of what differs.
pub fn differences(list: &[Differing]) -> Html {
    html! { <ul class="differs">{ for list.iter().map(|d| html! { <li key={d.path.clone()}>{ &d.text }</li> }) }</ul> }
}

/// The panel.
#[component]
pub fn KeepPresent(props: &PlaceProps) -> Html {
    let (act, book_act, book) = (use_act(), use_book_act(), use_book());
    let chosen = use_state(|| None::<String>);
    let w = &words().book;
    let entries = &props.form.entries;
    let standing = Rc::new(entries.truck());
    let unread: Vec<_> = entries.unread_truck().iter().map(problems::subject).collect();
    let from = entries.of.as_ref().and_then(|of| find(&book, of));
    let list = from.map(|(_, set_up)| {
        differing(&(set_up.truck.clone(), set_up.known.clone()), &standing, Printer(props.form.system))
    });

    // What was kept is where the check's truck comes from, from then on.
    let comes_from = {
        let (act, entries) = (act.clone(), Rc::clone(entries));
        move |of: Of| {
            let mut entries = crate::entries::Entries::clone(&entries);
            entries.of = Some(of);
            act.emit(Action::Set(Rc::new(entries)));
        }
    };
    let keep_new = {
        let (standing, book_act, comes_from) = (Rc::clone(&standing), book_act.clone(), comes_from.clone());
        Callback::from(move |_: MouseEvent| {
            let name = match standing.0.name.as_str() {
                "" => words().book.unnamed.to_owned(),
                name => name.to_owned(),
            };
            let record = edit::record(&standing, name, usual_name(&standing), [fresh_id(), fresh_id()]);
            comes_from(Of { truck: record.id.clone(), set_up: record.set_ups[0].id.clone() });
            book_act.emit(BookAct::put(record));
        })
    };
    let trucks: Vec<&TruckRecord> = book.trucks.iter().filter(|t| !t.archived).collect();
    let target = chosen.as_ref().or(entries.of.as_ref().map(|of| &of.truck));
    let target = target.and_then(|id| trucks.iter().find(|t| t.id == *id)).or(trucks.first()).copied().cloned();
    let choose = {
        let chosen = chosen.setter();
        Callback::from(move |event: Event| {
            chosen.set(Some(event.target_unchecked_into::<HtmlSelectElement>().value()));
        })
    };
    let keep_set_up = target.clone().map(|truck| {
        let (standing, book_act, comes_from) = (Rc::clone(&standing), book_act.clone(), comes_from.clone());
        Callback::from(move |_: MouseEvent| {
            let set_up = edit::set_up(&standing, usual_name(&standing), fresh_id());
            comes_from(Of { truck: truck.id.clone(), set_up: set_up.id.clone() });
            book_act.emit(BookAct::put(edit::with_set_up(&truck, set_up)));
        })
    });
    let update = from.map(|(truck, set_up)| {
        let (truck, id) = (truck.clone(), set_up.id.clone());
        let (standing, book_act) = (Rc::clone(&standing), book_act.clone());
        let update = Callback::from(move |_: MouseEvent| {
            let (new, known) = Standing::clone(&standing);
            let change = |set_up: &mut SetUp| (set_up.truck, set_up.known) = (new, known);
            book_act.emit(BookAct::put(edit::with_changed(&truck, &id, change)));
        });
        (fill(w.update, &[("set_up", &set_up.name)]), update)
    });
    let differs = list.as_ref().is_some_and(|list| !list.is_empty());
    html! {
        <section class="keep" aria-labelledby="keep-heading" data-testid="keep-present">
            <h3 id="keep-heading">{ w.present }{ ": " }{ if standing.0.name.is_empty() { w.unnamed } else { &standing.0.name } }</h3>
            <p>
                { match from {
                    Some((truck, set_up)) => {
                        fill(w.present_from, &[("truck", &truck.name), ("set_up", &set_up.name)])
                    }
                    None => w.present_own.to_owned(),
                } }
                if let Some(list) = &list {
                    { " " }
                    { if list.is_empty() { w.present_same.to_owned() } else { w.present_differs.of(list.len()) } }
                }
            </p>
            if let Some(list) = &list {
                { differences(list) }
            }
            if unread.is_empty() && (from.is_none() || differs) {
                <div class="buttons">
                    if let Some((text, update)) = update.filter(|_| differs) {
                        { main_button(text, "keep-update", update) }
                    }
                    if from.is_none() || differs {
                        { if from.is_none() {
                            main_button(w.keep_new, "keep-new", keep_new)
                        } else {
                            button(w.keep_new, "keep-new", keep_new)
                        } }
                        if let (Some(target), Some(keep_set_up)) = (&target, keep_set_up) {
                            <span class="with-choice">
                                <select aria-label={w.which_truck} data-testid="keep-truck" onchange={choose}>
                                    for truck in trucks.iter() {
                                        <option key={truck.id.clone()} value={truck.id.clone()} selected={truck.id == target.id}>
                                            { &truck.name }
                                        </option>
                                    }
                                </select>
                                { button(w.keep_set_up, "keep-set-up", keep_set_up) }
                            </span>
                        }
                    }
                </div>
            }
            if !unread.is_empty() {
                <p class="message" data-testid="keep-unread">{ fill(w.unread, &[("list", &unread.join(", "))]) }</p>
            }
        </section>
    }
}
