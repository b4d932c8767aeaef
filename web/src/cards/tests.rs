use super::*;
use crate::answer::Answer;
use crate::entries::Entries;
use crate::shared::Shared;
use standfast_core::document::{
    Attachment, CentreKnown, Document, GivenAs, Plate, PlateFor, PlateRow, Side, Stage, WeighPoint, Weighing, Wheels,
};
use standfast_core::example;
use standfast_core::place::{Field, Place};
use standfast_core::units::System;
use std::rc::Rc;
use yew::LocalServerRenderer;

async fn cards(entries: Entries, open: Card) -> String {
    let entries = Rc::new(entries);
    let answer: Shared<Answer> = Rc::new(Answer::of(&entries)).into();
    let form = Form { entries, answer, system: System::Metric, known: None };
    let props = CardsProps { form, open: Some(open) };
    LocalServerRenderer::<Cards>::with_props(props).hydratable(false).render().await
}

fn everything() -> Document {
    let mut document = Document::default();
    document.truck.wheels = Some(Wheels::Four);
    document.truck.attachment = Some(Attachment::default());
    document.truck.plate =
        Some(Plate { issued_for: Some(PlateFor::Attachment), rows: vec![PlateRow::default(); 2], ..Plate::default() });
    document.truck.mast.stages = vec![Stage::default(); 2];
    document.load.centre_known = Some(CentreKnown::Mark);
    document.load.weighing =
        Some(Weighing { points: vec![WeighPoint::default(); 4], raised_end: Some(Side::Ahead), ..Weighing::default() });
    document.load.hanging = true;
    document.load.mass_kg = Some(500.0);
    document.drive.ramp_pct = Some(8.0);
    document
}

/// Every figure of a document can be entered on one of the cards, once.
#[tokio::test]
async fn every_figure_has_its_field() {
    let document = everything();
    let mut entries = Entries::from_document(&document);
    // A wrong one among the rare figures unfolds them.
    for field in [Field::MastOuter, Field::Extension, Field::PlateMastLift, Field::SteerTread] {
        entries.enter(field.into(), "?", System::Metric);
    }
    let mut html = String::new();
    for card in [Card::Truck, Card::Load, Card::Move] {
        html += &cards(entries.clone(), card).await;
    }
    for place in Place::all_numbers(&document) {
        assert_eq!(html.matches(&format!("data-testid=\"field-{place}\"")).count(), 1, "{place}");
    }
    for choice in [
        "truck.wheels-three",
        "truck.wheels-four",
        "truck.plate-there",
        "truck.plate-none",
        "truck.plate.issued_for-forks",
        "truck.plate.issued_for-attachment",
        "truck.attachment-there",
        "load.weight_known-scale",
        "load.weight_known-note",
        "load.weight_known-estimate",
        "load.centre_known-middle",
        "load.centre_known-mark",
        "load.given_as-block",
        "load.given_as-parts",
        "load.given_as-trace",
        "load.turned-left",
        "load.hanging-lies",
        "load.weighing-three",
        "load.weighing.raised_end-heel",
        "drive.brake-no",
        "drive.corner-no",
        "drive.corner_empty-no",
        "drive.ramp_pct-unit-degrees",
        "drive.cross_fall_pct-unit-percent",
        "drive.ramp_down-forwards",
    ] {
        assert!(html.contains(&format!("data-testid=\"choice-{choice}\"")), "{choice}");
    }
    for text in [
        "truck.name",
        "truck.serial",
        "truck.type_name",
        "truck.attachment.name",
        "truck.plate.issued",
        "truck.plate.attachment",
        "load.name",
        "note",
    ] {
        assert!(html.contains(&format!("data-testid=\"field-{text}\"")), "{text}");
    }
}

/// Every problem of a document without anything has its message beside a field.
#[tokio::test]
async fn every_problem_shows_on_its_card() {
    let mut document = everything();
    document.truck.wheels = None;
    let entries = Entries::from_document(&document);
    for card in [Card::Truck, Card::Load, Card::Move] {
        let html = cards(entries.clone(), card).await;
        for problem in Answer::of(&entries).problems.iter().filter(|p| Card::of(p.place) == card) {
            assert!(html.contains(&format!("data-testid=\"problem-{}\"", problem.place)), "{}", problem.place);
        }
    }
}

#[tokio::test]
async fn a_closed_card_says_its_facts_and_counts_its_problems() {
    let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
    entries.enter(Field::LoadMass.into(), "heavy", System::Metric);
    entries.enter(Field::LoadLength.into(), "", System::Metric);
    let html = cards(entries, Card::Move).await;
    assert!(html.contains("1 wrong") && html.contains("1 needed"));
    assert!(html.contains("Copperbeck 3") && html.contains("plate 1\u{202f}800\u{a0}kg"));
    assert!(html.contains("put down at 3\u{202f}200\u{a0}mm"));
    assert_eq!(html.matches("aria-expanded=\"true\"").count(), 1);
}

#[tokio::test]
async fn what_is_assumed_says_how_much_and_where_from() {
    let entries = Entries::from_document(&example::document(example::THREE_WHEEL));
    let answer = Answer::of(&entries);
    let html = cards(entries.clone(), Card::Assumed).await;
    for assumed in &answer.assessment.as_ref().expect("an answer").assumed {
        assert!(html.contains(&format!("data-testid=\"assumed-{}\"", assumed.place)), "{}", assumed.place);
    }
    assert!(html.contains("from memory") && html.contains("our choice") && html.contains("Inferred"));
    let html = cards(Entries::blank(), Card::Assumed).await;
    assert!(html.contains("as soon as nothing is missing"));
}

#[tokio::test]
async fn cautions_always_stand_and_those_of_the_lift_join_them() {
    let plain = Entries::from_document(&example::document(example::FOUR_WHEEL));
    let html = cards(plain.clone(), Card::Cautions).await;
    assert!(
        html.contains("come first")
            && html.contains("hydraulic shocks")
            && html.contains("driving otherwise than in the steps shown")
    );
    let mut fitted = plain;
    fitted.attachment = true;
    fitted.enter(Field::ForkLength.into(), "700", System::Metric);
    for (field, typed) in [(Field::AttachmentMass, "100"), (Field::AttachmentAhead, "60"), (Field::LostLoad, "90")] {
        fitted.enter(field.into(), typed, System::Metric);
    }
    let html = cards(fitted, Card::Cautions).await;
    assert!(html.contains("An attachment is fitted") && html.contains("stamped capacity was not entered"), "{html}");
    assert!(html.contains("estimate by moments"));
}

mod checklist;
mod drive;
mod load;
