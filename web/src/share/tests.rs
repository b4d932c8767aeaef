use super::*;
use crate::answer::Answer;
use crate::entries::{Entries, PartEntry};
use crate::notice::Notice;
use crate::shared::Shared;
use crate::state::{Action, State};
use standfast_core::checklist::{Answer as Seen, Item};
use standfast_core::document::{GivenAs, Shape};
use standfast_core::example;
use standfast_core::place::Field;
use standfast_core::units::System;
use yew::LocalServerRenderer;

fn own() -> Entries {
    let mut entries = Entries::from_document(&example::document(example::ODD_LOAD));
    entries.enter(Field::LiftHeight.into(), "2100", System::Metric);
    entries.checklist.insert(Item::Tyres, Seen::No);
    entries
}

fn after(state: State, actions: Vec<Action>) -> Rc<State> {
    actions.into_iter().fold(Rc::new(state), |state, action| state.reduce(action))
}

/// Nobody's own gives way at once, one's own only after a yes; undo brings it back.
#[test]
fn a_link_replaces_ones_own_only_when_asked() {
    let fragment = link::write(&own().file());
    let start = State::example();
    let actions = opened::actions(&fragment, &start.entries);
    let state = after(start, actions);
    assert_eq!(*state.entries, own());
    assert!(matches!(&state.notice, Some(Notice::LinkOpened { what }) if what.contains("with")), "{:?}", state.notice);

    let mut mine = Entries::blank();
    mine.load_name = "Mine".to_owned();
    let start = State::with(mine.clone());
    let state = after(start, opened::actions(&fragment, &mine));
    assert_eq!(*state.entries, mine);
    let Some(Notice::AskLink { entries }) = &state.notice else { panic!("{:?}", state.notice) };
    let state = after(State::clone(&state), opened::shown(&entries.clone()));
    assert_eq!(*state.entries, own());
    assert_eq!(*state.reduce(Action::Undo).entries, mine);
}

#[test]
fn a_damaged_link_changes_nothing_and_says_why() {
    let fragment = link::write(&own().file());
    for (wrong, says) in [
        (fragment[..fragment.len() - 3].to_owned(), "cut short"),
        (fragment.replace("-1.", "-7."), "newer"),
        (link::write(&Default::default()).replace("check-1.", "check-1.A"), "letters"),
    ] {
        let start = State::with(own());
        let state = after(start, opened::actions(&wrong, &own()));
        assert_eq!(*state.entries, own());
        assert!(matches!(&state.notice, Some(Notice::LinkRefused { why }) if why.contains(says)), "{:?}", state.notice);
    }
}

async fn page(entries: Entries) -> String {
    let entries = Rc::new(entries);
    let answer: Shared<Answer> = Rc::new(Answer::of(&entries)).into();
    let form = Form { entries, answer, system: System::Metric, known: None };
    LocalServerRenderer::<Share>::with_props(ShareProps { form }).hydratable(false).render().await
}

#[tokio::test]
async fn what_is_too_long_offers_the_file() {
    let html = page(own()).await;
    assert!(html.contains("share-link") && html.contains("class=\"qr\"") && !html.contains("share-save"), "{html}");
    let mut long = own();
    long.given_as = GivenAs::Parts;
    let word = |k: usize| format!("{:x}", k.wrapping_mul(0x9e37_79b9_7f4a_7c15));
    for k in 0..60 {
        let name = format!("{} {}", word(k + 1), word(k + 1000));
        long.parts.push(PartEntry { name, shape: Some(Shape::Box), ..PartEntry::default() });
    }
    let html = page(long.clone()).await;
    assert!(html.contains("share-no-code") && html.contains("share-save") && html.contains("share-link"), "{html}");
    for k in 60..195 {
        let name = format!("{} {} {}", word(k + 1), word(k + 1000), word(k + 5000));
        long.parts.push(PartEntry { name, shape: Some(Shape::Box), ..PartEntry::default() });
    }
    let html = page(long).await;
    assert!(html.contains("share-too-long") && html.contains("share-save") && !html.contains("share-link"), "{html}");
    let mut unread = own();
    unread.enter(Field::HeelGap.into(), "about 20", System::Metric);
    let html = page(unread).await;
    assert!(html.contains("share-left-out") && html.contains("eel gap"), "{html}");
}

#[test]
fn a_link_has_one_fragment() {
    assert_eq!(link_to(" https://example.org/yard/ ", "check-1.x"), "https://example.org/yard/#check-1.x");
    assert_eq!(link_to("https://example.org/#old", "check-1.x"), "https://example.org/#check-1.x");
}
