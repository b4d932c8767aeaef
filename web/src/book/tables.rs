//! Trucks and plates as tables, out and in.

use super::csv::{self, OpenTable, refused};
use super::ui::{button, main_button};
use super::{BookAct, PlaceProps, fresh_id, use_book, use_book_act};
use crate::entries::Entries;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use standfast_core::book::{Book, SetUp, TruckRecord};
use standfast_core::document::{Attachment, Plate, Truck};
use standfast_core::table::{PlateIn, Wrong, csv_of_capacity, csv_of_trucks, plates_from_csv};
use std::rc::Rc;
use yew::prelude::*;

/// A table of plates that was opened.
#[derive(Clone, PartialEq)]
enum Opened {
    Plates(String, Rc<Vec<PlateIn>>),
    Refused(String, Vec<Wrong>),
    Taken,
}

/// What becomes of a plate.
#[derive(Clone, Debug, PartialEq)]
enum Fate {
    /// There is no such set-up.
    New,
    /// In place of the one it has, so many rows; none where it has none.
    Other(Option<usize>),
    Same,
    /// It names no truck.
    Check,
}

/// Where the table says nothing the plate keeps what it says; fork extensions it names only where the table says so.
fn merged(old: Option<&Plate>, new: &Plate) -> Plate {
    let Some(old) = old else { return new.clone() };
    let text = |new: &String, old: &String| if new.trim().is_empty() { old.clone() } else { new.clone() };
    Plate {
        issued_for: new.issued_for.or(old.issued_for),
        rows: new.rows.clone(),
        battery_min_kg: new.battery_min_kg.or(old.battery_min_kg),
        battery_max_kg: new.battery_max_kg.or(old.battery_max_kg),
        extensions: new.extensions,
        issued: text(&new.issued, &old.issued),
        attachment: text(&new.attachment, &old.attachment),
        attachment_kg: new.attachment_kg.or(old.attachment_kg),
        mast_lift_m: new.mast_lift_m.or(old.mast_lift_m),
        tyres: new.tyres.or(old.tyres),
        tilt_back_deg: new.tilt_back_deg.or(old.tilt_back_deg),
        tilt_forward_deg: new.tilt_forward_deg.or(old.tilt_forward_deg),
    }
}

fn names_nobody(plate: &PlateIn) -> bool {
    [&plate.truck, &plate.serial, &plate.set_up].iter().all(|t| t.trim().is_empty())
}

/// The truck that a plate is of: by its name, and by its serial number where both have one.
fn truck_of<'b>(book: &'b mut Book, plate: &PlateIn) -> Option<&'b mut TruckRecord> {
    let serial = plate.serial.trim();
    let is = |t: &TruckRecord| {
        let serials = || t.set_ups.iter().map(|s| s.truck.serial.trim()).filter(|s| !s.is_empty());
        let goes = serial.is_empty() || serials().next().is_none() || serials().any(|s| s == serial);
        let named = if plate.truck.trim().is_empty() { serials().any(|s| s == serial) } else { t.name == plate.truck };
        named && goes
    };
    book.trucks.iter_mut().find(|t| is(t))
}

/// The book with the plates of a table, and what becomes of each.
fn taken(book: &Book, plates: &[PlateIn], fresh: &mut dyn FnMut() -> String) -> (Book, Vec<Fate>) {
    let mut is = book.clone();
    let mut fates = Vec::new();
    for plate in plates {
        if names_nobody(plate) {
            fates.push(Fate::Check);
            continue;
        }
        let record = truck_of(&mut is, plate);
        if let Some(set_up) = record.and_then(|r| r.set_ups.iter_mut().find(|s| s.name == plate.set_up)) {
            let new = merged(set_up.truck.plate.as_ref(), &plate.plate);
            let same = set_up.truck.plate.as_ref() == Some(&new);
            fates.push(if same { Fate::Same } else { Fate::Other(set_up.truck.plate.as_ref().map(|p| p.rows.len())) });
            if !same {
                // How its old rows were known says nothing of the new ones.
                set_up.known.retain(|path, _| !path.starts_with("truck.plate.rows"));
                set_up.truck.plate = Some(new);
            }
            continue;
        }
        fates.push(Fate::New);
        let named = |name: &String| Attachment { name: name.clone(), ..Attachment::default() };
        let truck = Truck {
            name: plate.truck.clone(),
            serial: plate.serial.clone(),
            attachment: (!plate.attachment.trim().is_empty()).then(|| named(&plate.attachment)),
            plate: Some(plate.plate.clone()),
            ..Truck::default()
        };
        let archived = plate.archived;
        let set_up = SetUp { id: fresh(), name: plate.set_up.clone(), archived, truck, ..SetUp::default() };
        match truck_of(&mut is, plate) {
            Some(record) => record.set_ups.push(set_up),
            None => {
                let name = if plate.truck.trim().is_empty() { &plate.serial } else { &plate.truck };
                let record =
                    TruckRecord { id: fresh(), name: name.clone(), set_ups: vec![set_up], ..TruckRecord::default() };
                is.trucks.push(record);
            }
        }
    }
    (is, fates)
}

/// The check with a plate on its truck.
fn on_check(entries: &Entries, plate: &Plate) -> Entries {
    let (mut truck, mut known) = entries.truck();
    truck.plate = Some(merged(truck.plate.as_ref(), plate));
    known.retain(|path, _| !path.starts_with("truck.plate.rows"));
    entries.with_truck(&truck, &known, entries.of.clone())
}

fn fate_said(plate: &PlateIn, fate: &Fate) -> String {
    let w = &words().tables;
    let b = &words().book;
    let rows = w.rows.of(plate.plate.rows.len());
    let truck = [&plate.truck, &plate.serial].into_iter().find(|t| !t.trim().is_empty()).map_or(b.unnamed, |t| t);
    let set_up = if plate.set_up.trim().is_empty() { b.unnamed } else { &plate.set_up };
    let before = match fate {
        Fate::Other(Some(rows)) => w.rows.of(*rows),
        _ => b.no_plate.to_owned(),
    };
    let text = match fate {
        Fate::New => w.plate_new,
        Fate::Other(_) => w.plate_other,
        Fate::Same => w.plate_same,
        Fate::Check => w.plate_check,
    };
    fill(text, &[("truck", truck), ("set_up", set_up), ("rows", &rows), ("before", &before)])
}

/// The panel.
#[component]
pub fn Tables(props: &PlaceProps) -> Html {
    let (act, book_act, book) = (use_act(), use_book_act(), use_book());
    let opened = use_state(|| None::<Opened>);
    let w = &words().tables;
    let form = &props.form;
    let chosen = {
        let setter = opened.setter();
        Callback::from(move |(name, text): csv::Chosen| {
            setter.set(Some(match text.and_then(|text| plates_from_csv(&text)) {
                Ok(plates) => Opened::Plates(name, Rc::new(plates)),
                Err(wrongs) => Opened::Refused(name, wrongs),
            }));
        })
    };
    let close = {
        let setter = opened.setter();
        Callback::from(move |_: MouseEvent| setter.set(None))
    };
    let save_plates = {
        let (book, system) = (Rc::clone(&book), form.system);
        Callback::from(move |_: MouseEvent| csv::save(&csv_of_trucks(&book, system), "standfast-plates.csv"))
    };
    let save_capacity = {
        let (answer, system) = (form.answer.clone(), form.system);
        let from = form.entries.of.as_ref().and_then(|of| super::edit::find(&book, of));
        let set_up = from.map(|(_, s)| s.name.clone()).unwrap_or_default();
        Callback::from(move |_: MouseEvent| {
            let names = [answer.document.truck.name.as_str(), set_up.as_str()];
            if let Some(table) = csv_of_capacity(&answer.document, names, system) {
                csv::save(&table, "standfast-capacity.csv");
            }
        })
    };
    let has_answer = form.answer.assessment.is_some();
    let panel = match &*opened {
        None => Html::default(),
        Some(Opened::Taken) => html! { <p role="status" data-testid="plates-taken"><b>{ w.taken }</b></p> },
        Some(Opened::Refused(name, wrongs)) => refused(name, wrongs, close),
        Some(Opened::Plates(name, plates)) => {
            // Ids are made when it is taken over.
            let (_, fates) = taken(&book, plates, &mut String::new);
            let take = {
                let (plates, book, entries, setter) =
                    (Rc::clone(plates), Rc::clone(&book), Rc::clone(&form.entries), opened.setter());
                Callback::from(move |_: MouseEvent| {
                    if let Some(plate) = plates.iter().find(|p| names_nobody(p)) {
                        act.emit(Action::Set(Rc::new(on_check(&entries, &plate.plate))));
                    }
                    let (is, _) = taken(&book, &plates, &mut fresh_id);
                    book_act.emit(BookAct::Import { was: Rc::clone(&book), is: Rc::new(is) });
                    setter.set(Some(Opened::Taken));
                })
            };
            html! {
                <div class="notice" role="status" data-testid="plates-found">
                    <p>{ fill(&w.plates_found.of(plates.len()), &[("name", name)]) }</p>
                    <ul>{ for plates.iter().zip(&fates).map(|(p, fate)| html! { <li>{ fate_said(p, fate) }</li> }) }</ul>
                    <div class="buttons">
                        { main_button(w.take, "plates-take", take) }
                        { button(w.leave, "plates-leave", close) }
                    </div>
                </div>
            }
        }
    };
    html! {
        <section class="tables" aria-labelledby="tables-heading">
            <h3 id="tables-heading">{ w.heading }</h3>
            <p class="help">{ w.help }</p>
            <div class="buttons">
                if !book.trucks.is_empty() {
                    { button(w.save_plates, "plates-save", save_plates) }
                }
                if has_answer {
                    { button(w.save_capacity, "capacity-save", save_capacity) }
                }
                <OpenTable label={w.open_plates} test="plates-open" {chosen} />
            </div>
            if !has_answer {
                <p class="help">{ w.no_capacity }</p>
            }
            { panel }
        </section>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::document::{PlateFor, PlateRow};
    use standfast_core::example;
    use standfast_core::units::System;

    fn book() -> Book {
        let truck = example::document(example::THREE_WHEEL).truck;
        let set_up = SetUp { id: "s".to_owned(), name: "Forks".to_owned(), truck, ..SetUp::default() };
        let record =
            TruckRecord { id: "t".to_owned(), name: "One".to_owned(), set_ups: vec![set_up], ..TruckRecord::default() };
        Book { trucks: vec![record], ..Book::default() }
    }

    fn ids() -> impl FnMut() -> String {
        let mut n = 0;
        move || {
            n += 1;
            format!("n{n}")
        }
    }

    #[test]
    fn what_was_saved_changes_nothing() {
        let plates = plates_from_csv(&csv_of_trucks(&book(), System::Metric)).expect("read");
        assert_eq!(taken(&book(), &plates, &mut ids()), (book(), vec![Fate::Same]));
    }

    /// What the table does not say of the plate stays: a battery window must not go with a column that is not there.
    #[test]
    fn rows_go_in_place_of_the_old_ones_and_the_rest_stays() {
        let text = "truck;set up;height m;load centre mm;capacity kg\nOne;Forks;3;500;900\nOne;Clamp;3;500;800\nTwo;Forks;3;500;700\nTwo;Clamp;3;500;600\n";
        let plates = plates_from_csv(text).expect("read");
        let (is, fates) = taken(&book(), &plates, &mut ids());
        let before = book().trucks[0].set_ups[0].truck.plate.clone().expect("a plate");
        assert_eq!(fates, [Fate::Other(Some(before.rows.len())), Fate::New, Fate::New, Fate::New]);
        let plate = is.trucks[0].set_ups[0].truck.plate.as_ref().expect("a plate");
        assert_eq!(plate.rows, [PlateRow { height_m: Some(3.0), load_centre_m: Some(0.5), capacity_kg: Some(900.0) }]);
        assert_eq!(Plate { rows: before.rows.clone(), ..plate.clone() }, before);
        let names: Vec<_> = is.trucks.iter().map(|t| (t.name.as_str(), t.set_ups.len())).collect();
        assert_eq!(names, [("One", 2), ("Two", 2)]);
        for (plate, fate) in plates.iter().zip(&fates) {
            let said = fate_said(plate, fate);
            assert!(!said.contains(['{', '}']), "{said}");
        }
    }

    #[test]
    fn a_plate_that_names_no_truck_goes_on_the_truck_of_the_check() {
        let plates = plates_from_csv("height m;load centre mm;capacity kg\n3;500;900\n").expect("read");
        assert_eq!(taken(&book(), &plates, &mut ids()), (book(), vec![Fate::Check]));
        let entries = Entries::from_document(&example::document(example::FOUR_WHEEL));
        let truck = on_check(&entries, &plates[0].plate).document().0.truck;
        let plate = truck.plate.expect("a plate");
        assert_eq!((plate.rows.len(), plate.issued_for), (1, Some(PlateFor::Forks)));
    }
}
