//! In the truck's card: the set-up of the book that it came from, and which plate of the book covers it as it stands.

use super::edit::find;
use super::ui::button;
use super::use_book;
use crate::entries::Entries;
use crate::figures::{self, Printer, fine, quantity_of};
use crate::form::Form;
use crate::places::Screen;
use crate::sentences::name_of;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use standfast_core::book::{Of, SetUp, TruckRecord};
use standfast_core::covering::{Covering, Difference, covering};
use standfast_core::document::Truck;
use standfast_core::place::{Field, Place};
use standfast_core::plate::Tilted;
use standfast_core::units::Rounding::{Down, Nearest, Up};
use std::rc::Rc;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct OfBookProps {
    pub form: Form,
}

/// What the book says of the check's truck.
#[component]
pub fn OfBook(props: &OfBookProps) -> Html {
    let (act, book) = (use_act(), use_book());
    let (b, w) = (&words().book, &words().covers);
    let entries = &props.form.entries;
    let go = button(b.open_book, "to-trucks", act.reform(|_: MouseEvent| Action::Go(Screen::Trucks)));
    let Some((record, set_up)) = entries.of.as_ref().and_then(|of| find(&book, of)) else {
        return html! { <div class="of-book">{ go }</div> };
    };
    let today = &props.form.answer.document.truck;
    let list = covering(record, today);
    let print = Printer(props.form.system);
    html! {
        <div class="of-book" data-testid="of-book">
            <p>{ fill(b.present_from, &[("truck", &record.name), ("set_up", &set_up.name)]) }</p>
            <p>
                <b>{ w.heading }{ ": " }</b>
                { match list.first() {
                    None => html! { w.no_plates },
                    Some(best) => said(record, best, today, entries, &act),
                } }
            </p>
            if let Some(best) = list.first().filter(|c| !c.exactly()) {
                <ul class="differs">{ for best.differences.iter().map(|d| html! { <li>{ difference(d, print) }</li> }) }</ul>
            }
            { go }
        </div>
    }
}

fn set_up_of<'a>(record: &'a TruckRecord, covering: &Covering) -> Option<&'a SetUp> {
    record.set_ups.iter().find(|s| s.id == covering.set_up)
}

/// The best plate, with the way to it where the check has another one.
fn said(record: &TruckRecord, best: &Covering, today: &Truck, entries: &Rc<Entries>, act: &Callback<Action>) -> Html {
    let w = &words().covers;
    let Some(set_up) = set_up_of(record, best) else { return Html::default() };
    let named = |text: &str| fill(text, &[("set_up", &set_up.name)]);
    if !best.exactly() {
        return html! { named(w.nearest) };
    }
    if today.plate == set_up.truck.plate {
        return html! { named(w.covered) };
    }
    let taken = with_plate(entries, record, set_up);
    let take = act.reform(move |_: MouseEvent| Action::Set(Rc::new(taken.clone())));
    html! { <>{ named(w.covered_by) }{ " " }{ button(w.take_plate, "take-plate", take) }</> }
}

/// The check with the plate of a set-up on its truck; all else of the truck stays as it stands today.
fn with_plate(entries: &Entries, record: &TruckRecord, set_up: &SetUp) -> Entries {
    let (mut truck, mut known) = entries.truck();
    truck.plate.clone_from(&set_up.truck.plate);
    known.retain(|path, _| !path.starts_with("truck.plate"));
    let of_plate = set_up.known.iter().filter(|(path, _)| path.starts_with("truck.plate"));
    known.extend(of_plate.map(|(path, known)| (path.clone(), *known)));
    let of = Of { truck: record.id.clone(), set_up: set_up.id.clone() };
    let checklist = entries.checklist.clone();
    Entries { checklist, ..entries.with_truck(&truck, &known, Some(of)) }
}

/// An attachment by what is known of it.
fn attachment(name: &str, mass_kg: Option<f64>, print: Printer) -> String {
    let p = &words().plate;
    match (name, mass_kg.map(|kg| print.mass(kg, Nearest))) {
        ("", None) => p.some.to_owned(),
        ("", Some(mass)) => fill(p.weighing, &[("mass", &mass)]),
        (name, None) => name.to_owned(),
        (name, Some(mass)) => fill(p.named, &[("name", name), ("mass", &mass)]),
    }
}

/// One thing that is not as the plate has it, in words.
pub fn difference(difference: &Difference, print: Printer) -> String {
    let (w, p, v) = (&words().covers, &words().plate, &words().verdict);
    let both = |text: &str, named: &str, fitted: &str| fill(text, &[("named", named), ("fitted", fitted)]);
    match difference {
        Difference::FrontEndNotSaid => w.front_end_not_said.to_owned(),
        Difference::AttachmentFitted { name, mass_kg } => {
            fill(p.bare_forks, &[("what", &attachment(name, *mass_kg, print))])
        }
        Difference::AttachmentMissing { name, mass_kg: None } if name.is_empty() => p.with_some_attachment.to_owned(),
        Difference::AttachmentMissing { name, mass_kg } => {
            fill(p.with_attachment, &[("what", &attachment(name, *mass_kg, print))])
        }
        Difference::OtherAttachment { named, named_kg, fitted, fitted_kg } => both(
            p.other_attachment.stated,
            &attachment(named, *named_kg, print),
            &attachment(fitted, *fitted_kg, print),
        ),
        Difference::Mast { field, named, fitted } if field.field == Field::MastLift => {
            both(p.other_mast, &print.height(*named), &print.height(*fitted))
        }
        Difference::AttachmentFigure { field, named, fitted } | Difference::Mast { field, named, fitted } => {
            figure(*field, *named, *fitted, print)
        }
        Difference::LoadDistance { named, fitted } => figure(Field::LoadDistance.into(), *named, *fitted, print),
        Difference::MastSections { named, fitted } => both(w.sections, &named.to_string(), &fitted.to_string()),
        Difference::Tilt { field, named, fitted } => {
            let way = if field.field == Field::MaxTiltBack { Tilted::Back } else { Tilted::Forward };
            both((p.other_tilt)(way), &figures::angle(*named, Down), &figures::angle(*fitted, Up))
        }
        Difference::OtherTyres { named, fitted } => both(p.other_tyres, (p.tyres)(*named), (p.tyres)(*fitted)),
        Difference::Battery { fitted, min, max } => {
            let window = match (min.map(|kg| print.mass(kg, Up)), max.map(|kg| print.mass(kg, Down))) {
                (Some(min), Some(max)) => fill(v.between, &[("a", &min), ("b", &max)]),
                (Some(min), None) => fill(v.at_least, &[("a", &min)]),
                (None, max) => fill(v.at_most, &[("a", &max.unwrap_or_default())]),
            };
            fill(v.battery, &[("fitted", &print.mass(*fitted, Nearest)), ("window", &window)])
        }
        Difference::Extensions => w.extensions.to_owned(),
        Difference::NotEntered { field } => fill(w.not_entered, &[("field", &name_of(*field))]),
    }
}

fn figure(place: Place, named: f64, fitted: f64, print: Printer) -> String {
    let unit = quantity_of(place).unit(print.0);
    let values = [("field", name_of(place)), ("named", fine(unit, named)), ("fitted", fine(unit, fitted))];
    fill(words().covers.figure, &values.each_ref().map(|(name, value)| (*name, value.as_str())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::covering::differences;
    use standfast_core::document::{Attachment, PlateFor, Tyres};
    use standfast_core::example;
    use standfast_core::units::System;

    fn today() -> Truck {
        example::document(example::THREE_WHEEL).truck
    }

    fn told(set_up: &Truck, today: &Truck) -> Vec<String> {
        differences(set_up, today).iter().map(|d| difference(d, Printer(System::Metric))).collect()
    }

    #[test]
    fn what_differs_is_said_with_both_figures() {
        let set_up = today();
        assert_eq!(told(&set_up, &today()), Vec::<String>::new());
        let mut fitted = today();
        let clamp = Attachment { name: "Crate clamp".to_owned(), mass_kg: Some(120.0), ..Attachment::default() };
        fitted.attachment = Some(clamp);
        assert_eq!(told(&set_up, &fitted), ["The plate is for the bare forks; fitted: Crate clamp, 120\u{a0}kg."]);
        let mut other = today();
        other.load_distance_m = other.load_distance_m.map(|m| m + 0.04);
        other.battery.fitted_kg = Some(700.0);
        let said = told(&set_up, &other);
        assert!(said.iter().any(|s| s.starts_with("The battery weighs 700\u{a0}kg;")), "{said:?}");
        assert!(
            said.iter().any(|s| s.starts_with("Load distance: 360\u{a0}mm with the plate, 400\u{a0}mm")),
            "{said:?}"
        );
    }

    /// Whatever differs is said in words: no code, no gap left open.
    #[test]
    fn every_difference_has_a_sentence() {
        let field = Place::from(Field::MastLowered);
        let (name, mass_kg) = (String::new(), None);
        let all = [
            Difference::FrontEndNotSaid,
            Difference::AttachmentFitted { name: name.clone(), mass_kg },
            Difference::AttachmentMissing { name: name.clone(), mass_kg },
            Difference::OtherAttachment { named: name.clone(), named_kg: Some(1.0), fitted: name, fitted_kg: None },
            Difference::AttachmentFigure { field: Field::LostLoad.into(), named: 0.1, fitted: 0.2 },
            Difference::Mast { field, named: 2.0, fitted: 2.1 },
            Difference::Mast { field: Field::MastLift.into(), named: 3.0, fitted: 4.0 },
            Difference::MastSections { named: 1, fitted: 2 },
            Difference::Tilt { field: Field::MaxTiltBack.into(), named: 5.0, fitted: 6.0 },
            Difference::OtherTyres { named: Tyres::Cushion, fitted: Tyres::Pneumatic },
            Difference::Battery { fitted: 700.0, min: None, max: Some(600.0) },
            Difference::Extensions,
            Difference::LoadDistance { named: 0.3, fitted: 0.4 },
            Difference::NotEntered { field: Field::Tyres.into() },
        ];
        for one in &all {
            let text = difference(one, Printer(System::Us));
            assert!(text.ends_with('.') && !text.contains(['{', '}', '_']), "{one:?}: {text}");
        }
    }

    #[test]
    fn a_plate_is_put_on_the_truck_as_it_stands() {
        let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
        entries.enter(Field::BatteryFitted.into(), "861", System::Metric);
        let mut other = today();
        if let Some(plate) = &mut other.plate {
            plate.issued_for = Some(PlateFor::Attachment);
            plate.rows.truncate(1);
        }
        let set_up = SetUp { id: "s".to_owned(), truck: other.clone(), ..SetUp::default() };
        let record = TruckRecord { id: "t".to_owned(), set_ups: vec![set_up.clone()], ..TruckRecord::default() };
        let taken = with_plate(&entries, &record, &set_up);
        let truck = taken.document().0.truck;
        assert_eq!((truck.plate, truck.battery.fitted_kg), (other.plate, Some(861.0)));
        assert_eq!(taken.of, Some(Of { truck: "t".to_owned(), set_up: "s".to_owned() }));
    }
}
