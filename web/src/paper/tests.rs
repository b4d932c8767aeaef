//! What stands on paper.

use super::*;
use crate::answer::Answer;
use crate::entries::{Entries, PartEntry};
use crate::paper::card::{Cell, Cells};
use crate::shared::Shared;
use standfast_core::checklist::{Answer as Seen, Item};
use standfast_core::document::{By, GivenAs, Shape};
use standfast_core::example;
use standfast_core::place::{Field, Place};
use standfast_core::units::System;
use std::rc::Rc;
use yew::LocalServerRenderer;

fn form(entries: Entries, system: System) -> Form {
    let entries = Rc::new(entries);
    let answer: Shared<Answer> = Rc::new(Answer::of(&entries)).into();
    Form { entries, answer, system, known: None }
}

fn example_of(text: &str) -> Entries {
    Entries::from_document(&example::document(text))
}

/// As text, special spaces plain.
async fn check(entries: Entries, system: System) -> String {
    let props = check::SheetProps { form: form(entries, system), maker: "R. Otter".to_owned() };
    let html = LocalServerRenderer::<CheckSheet>::with_props(props).hydratable(false).render().await;
    html.replace(['\u{a0}', '\u{202f}'], " ")
}

async fn card(entries: Entries, system: System) -> String {
    let props = check::SheetProps { form: form(entries, system), maker: String::new() };
    let html = LocalServerRenderer::<CapacityCard>::with_props(props).hydratable(false).render().await;
    html.replace(['\u{a0}', '\u{202f}'], " ")
}

#[tokio::test]
async fn everything_that_a_signature_is_put_under_is_there() {
    let mut entries = example_of(example::THREE_WHEEL);
    entries.enter(Field::LoadMass.into(), "1 050,0", System::Metric);
    entries.checklist.insert(Item::Brakes, Seen::Yes);
    let html = check(entries.clone(), System::Metric).await;
    for text in [
        "Invented example",
        env!("CARGO_PKG_VERSION"),
        "R. Otter",
        "GO",
        "1 050,0 kg",
        "\u{25c7} Truck's centre height",
        "1580 kg at 600 mm",
        "Up to 3300 mm",
        "Holds it down",
        "kN\u{b7}m",
        "Not checked",
        "wind",
        "come first",
        "<span class=\"box\">\u{2713}</span><span>Brakes and steering</span>",
        "<span class=\"box\"></span><span>Tyres</span>",
        "In charge of the lift",
        "Operator",
        "Tightest",
    ] {
        assert!(html.contains(text), "{text}");
    }
    for word in [" safe", "style=", "NaN", "infinit"] {
        assert!(!html.to_lowercase().contains(&word.to_lowercase()), "{word}");
    }
    assert_eq!(html.matches(" class=\"d\"").count(), 2);
    let html = check(entries, System::Us).await;
    assert!(html.contains(" lb") && html.contains(" in<"), "US units");
}

/// What is not in order is said with the verdict, whether it governs or not.
#[tokio::test]
async fn what_is_not_in_order_stands_by_the_verdict() {
    let said = "Not in order: mast and chains. Not to be lifted before it is put right.";
    let mut entries = example_of(example::THREE_WHEEL);
    entries.checklist.insert(Item::Mast, Seen::No);
    let html = check(entries.clone(), System::Metric).await;
    assert!(html.contains("HOLD") && html.contains(&format!("<p class=\"reason\">{said}")), "{html}");
    entries.enter(Field::LoadMass.into(), "", System::Metric);
    let html = check(entries, System::Metric).await;
    assert!(html.contains("paper-not-in-order") && html.contains(said), "{html}");
}

/// An unfinished check prints as one, and nothing is left out of it.
#[tokio::test]
async fn an_unfinished_check_says_so() {
    let html = check(Entries::blank(), System::Metric).await;
    assert!(html.contains("NOT YET") && html.contains("paper-verdict none"), "{html}");
    assert!(html.contains("not named") && html.contains("Drawn as soon as"));
    let mut entries = example_of(example::THREE_WHEEL);
    entries.enter(Field::HeelGap.into(), "about 20", System::Metric);
    let html = check(entries, System::Metric).await;
    assert!(html.contains("about 20 mm") && html.contains("cannot be read"), "{html}");
}

/// Two hundred parts and forty rows of a plate: every one is a line.
#[tokio::test]
async fn long_lists_are_printed_whole() {
    let mut entries = example_of(example::THREE_WHEEL);
    entries.given_as = GivenAs::Parts;
    for k in 0..200 {
        entries.parts.push(PartEntry { name: format!("Board {k};"), shape: Some(Shape::Box), ..PartEntry::default() });
        for (field, text) in [(Field::PartLength, "1200"), (Field::PartWidth, "100"), (Field::PartHeight, "22")] {
            entries.enter(Place::in_row(field, k), text, System::Metric);
        }
        entries.enter(Place::in_row(Field::PartMass, k), "2", System::Metric);
    }
    for k in 0..40 {
        for (field, at) in [(Field::PlateHeight, 1000 + k), (Field::PlateLoadCentre, 600), (Field::PlateCapacity, 900)]
        {
            entries.enter(Place::in_row(field, k), &at.to_string(), System::Metric);
        }
    }
    entries.plate_rows = 40;
    let html = check(entries, System::Metric).await;
    for k in 0..200 {
        assert!(html.contains(&format!("Board {k};")), "part {k}");
    }
    for k in 0..40 {
        assert!(html.contains(&format!("Up to {} mm", 1000 + k)), "row {k}");
    }
    assert!(html.contains("1200 mm \u{d7} 100 mm \u{d7} 22 mm, 2 kg"), "{html}");
}

/// How a figure is known stands beside it.
#[test]
fn a_figure_is_printed_as_typed_with_how_it_is_known() {
    let mut entries = example_of(example::THREE_WHEEL);
    entries.enter(Field::Tread.into(), "0920", System::Metric);
    entries.choose_way(Field::Tread.into(), By::Tape);
    let groups = rows::groups(&form(entries, System::Metric));
    let row = groups.iter().flat_map(|g| &g.rows).find(|r| r.name == "Front tread").expect("a row");
    assert_eq!(row.value, "0920\u{a0}mm");
    assert!(row.known.contains("tape") && row.known.contains('\u{b1}'), "{}", row.known);
}

/// Never more than the plate, never more than the model, and the lesser is marked.
#[test]
fn the_card_allows_no_more_than_plate_and_model() {
    for (text, system) in
        [(example::THREE_WHEEL, System::Metric), (example::FOUR_WHEEL, System::Us), (example::ODD_LOAD, System::Metric)]
    {
        let form = form(example_of(text), system);
        let plate = &form.answer.assessment.as_ref().expect("complete").plate;
        let diagram = standfast_core::capacity::diagram(&form.answer.document).expect("complete");
        let chart = crate::capacity::Chart::of(&diagram, plate);
        let cells = Cells::of(&chart, system);
        assert!(!cells.rows.is_empty() && cells.centres.len() > 1, "{cells:?}");
        let rows = &form.answer.document.truck.plate.as_ref().expect("a plate").rows;
        for (height, row) in &cells.rows {
            for (centre, cell) in cells.centres.iter().zip(row) {
                let covers = |r: &&standfast_core::document::PlateRow| {
                    r.height_m.is_some_and(|h| h >= height - 1e-9)
                        && r.load_centre_m.is_some_and(|c| c >= centre - 1e-9)
                };
                let most = rows.iter().filter(covers).filter_map(|r| r.capacity_kg).fold(0.0, f64::max);
                let said = match cell {
                    Cell::NotCovered => 0.0,
                    Cell::Allowed(kg) | Cell::NotWorked(kg) | Cell::Less(_, kg) => *kg,
                };
                assert!(said <= most + 1e-9, "{height} {centre}: {cell:?}, plate {most}");
                let curves = diagram.curves.iter().filter(|c| c.height.get() >= height - 1e-9);
                if let (Some(curve), false) = (curves.min_by_key(|c| c.height), *cell == Cell::NotCovered) {
                    let next = curve.points.iter().find(|p| p.load_centre.get() >= centre - 1e-6).expect("a point");
                    let left = next.mass.map_or(0.0, |m| m.get());
                    assert!(said <= left + 1e-9, "{height} {centre}: {cell:?}, model {left}");
                }
            }
        }
    }
}

#[tokio::test]
async fn the_card_says_what_it_is_not() {
    let html = card(example_of(example::THREE_WHEEL), System::Metric).await;
    assert!(html.contains("NOT A CAPACITY PLATE") && html.contains("card-table") && html.contains("1 580 kg"));
    assert!(html.contains("The plate&#x27;s own rows") || html.contains("The plate's own rows"), "{html}");
    let mut fitted = example_of(example::THREE_WHEEL);
    fitted.attachment = true;
    fitted.attachment_name = "Drum clamp".to_owned();
    for (field, text) in [(Field::AttachmentMass, "120"), (Field::AttachmentAhead, "80"), (Field::LostLoad, "110")] {
        fitted.enter(field.into(), text, System::Metric);
    }
    let html = card(fitted, System::Metric).await;
    assert!(html.contains("card-not-this") && !html.contains("card-table"), "{html}");
    let mut without = example_of(example::THREE_WHEEL);
    without.plate = false;
    let html = card(without, System::Metric).await;
    assert!(html.contains("There is no plate: nothing is allowed.") && !html.contains("card-table"));
}
