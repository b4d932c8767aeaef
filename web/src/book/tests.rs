use super::provider::{Given, GivenProps};
use super::*;
use crate::answer::Answer;
use crate::entries::Entries;
use crate::store::keeper::{At, Keeping, Present};
use crate::store::kept::Damaged;
use crate::store::place::Failure;
use standfast_core::book::{Book, Of};
use standfast_core::example;
use standfast_core::units::System;
use std::rc::Rc;
use yew::LocalServerRenderer;

fn example_entries() -> Entries {
    Entries::from_document(&example::document(example::THREE_WHEEL))
}

fn of() -> Of {
    Of { truck: "t".to_owned(), set_up: "s".to_owned() }
}

fn book(entries: &Entries) -> Book {
    let ids = ["t", "s"].map(str::to_owned);
    let record = edit::record(&entries.truck(), "Blue one".to_owned(), "Forks".to_owned(), ids);
    Book { trucks: vec![record], attachments: example::attachments(), ..Book::default() }
}

fn form(entries: Entries) -> Form {
    let answer = Rc::new(Answer::of(&entries)).into();
    Form { entries: Rc::new(entries), answer, system: System::Metric, known: None }
}

async fn shown(present: Present, inside: Html) -> String {
    let props = GivenProps { present, children: inside };
    LocalServerRenderer::<Given>::with_props(props).hydratable(false).render().await
}

fn present(book: Book) -> Present {
    Present { book: Rc::new(book).into(), ..Present::default() }
}

#[tokio::test]
async fn a_truck_is_shown_with_its_set_up_and_its_plate_row_by_row() {
    let entries = example_entries();
    let kept = book(&entries);
    // Opened where the check's truck is the one.
    let form = form(Entries { of: Some(of()), ..entries });
    let html = shown(present(kept), html! { <BookPage place={Screen::Trucks} {form} /> }).await;
    for text in [
        "Blue one",
        "1\u{202f}800\u{a0}kg at 500\u{a0}mm to 3.30\u{a0}m",
        "battery 820\u{a0}kg to 960\u{a0}kg",
        "issued 2024-03-12",
        "As it is kept there.",
        "Crate clamp",
        "Invented example",
    ] {
        assert!(html.contains(text), "{text}: {html}");
    }
    assert!(html.contains("data-testid=\"set-up-use-s\"") && !html.contains(" style="));
    assert!(!html.contains("keep-new"), "what is kept already is not offered to be kept");
}

#[tokio::test]
async fn the_card_says_what_differs_from_the_plate_and_keeping_says_which_entry() {
    let entries = example_entries();
    let kept = book(&entries);
    let clamp = &example::attachments()[0].attachment;
    let form = form(Entries { of: Some(of()), ..entries.with_attachment(clamp) });
    let card = shown(present(kept.clone()), html! { <OfBook form={form.clone()} /> }).await;
    assert!(card.contains("None is for the truck as it stands."), "{card}");
    assert!(card.contains("The plate is for the bare forks; fitted: Crate clamp, 120\u{a0}kg."), "{card}");
    let page = shown(present(kept.clone()), html! { <BookPage place={Screen::Trucks} form={form.clone()} /> }).await;
    assert!(page.contains("data-testid=\"keep-update\"") && page.contains("Attachment weight: not entered"), "{page}");
    assert!(!page.contains("set-up-plate-"), "what is kept has the plate it was issued for");
    // Kept so, its plate is not for it: that is said.
    let truck = edit::with_changed(&kept.trucks[0], "s", |s| (s.truck, s.known) = form.entries.truck());
    let kept = Book { trucks: vec![truck], ..Book::default() };
    let page = shown(present(kept), html! { <BookPage place={Screen::Trucks} {form} /> }).await;
    assert!(page.contains("set-up-plate-s") && page.contains("The plate is not for the truck as it is kept here:"));
}

#[tokio::test]
async fn what_is_not_kept_and_what_cannot_be_read_is_said_with_a_way_to_save() {
    let keeping = Keeping { at: At::Indexed, unkept: 2, failure: Some(Failure::Full), promised: Some(false) };
    let damaged = Damaged { name: "truck/x".to_owned(), text: "{".to_owned(), why: "cut off".to_owned() };
    let present = Present { keeping, damaged: Rc::new(vec![damaged]), ..present(book(&example_entries())) };
    let html =
        shown(present, html! { <><BookSaid /><BookPage place={Screen::Trucks} form={form(example_entries())} /></> });
    let html = html.await;
    for text in ["no room left", "2 entries are only in this tab", "Try again", "truck/x: cut off", "may clear it"] {
        assert!(html.contains(text), "{text}");
    }
    assert!(html.contains("data-testid=\"book-save-now\"") && html.contains("data-testid=\"book-damaged-save\""));
}
