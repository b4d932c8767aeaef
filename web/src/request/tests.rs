use super::*;
use crate::entries::Entries;
use standfast_core::document::Attachment;
use standfast_core::example;
use standfast_core::place::Field;
use yew::LocalServerRenderer;

fn with_clamp() -> Entries {
    let mut document = example::document(example::THREE_WHEEL);
    document.truck.attachment = Some(Attachment {
        name: "Drum clamp".to_owned(),
        mass_kg: Some(120.0),
        cg_ahead_m: Some(0.08),
        cg_above_m: None,
        lost_load_m: Some(0.11),
    });
    Entries::from_document(&document)
}

fn sheet(entries: &Entries, system: System) -> Sheet {
    Sheet::of(&Answer::of(entries), Printer(system))
}

#[test]
fn the_text_holds_every_fact_and_the_estimate_is_marked() {
    let text = sheet(&with_clamp(), System::Metric).text();
    for said in [
        "Serial number: CB-3 (invented)",
        "Wheels: three",
        "Service weight: 3\u{202f}200\u{a0}kg (sheet)",
        "Steer axle load, laden: 535\u{a0}kg (sheet)",
        "Battery fitted today: 860\u{a0}kg (plate)",
        "Tyres: cushion tyres",
        "Attachment: Drum clamp",
        "Lost load: 110\u{a0}mm (sheet)",
        "Attachment's centre above: ____________",
        "Weight of the load: 1\u{202f}103\u{a0}kg",
        "The plate is for the bare forks; fitted: Drum clamp, 120\u{a0}kg.",
        "Plate issued on: 2024-03-12",
        "About 1\u{202f}",
        "for planning only. It is no capacity, and nothing is lifted by it",
        "Name: ____________",
    ] {
        assert!(text.contains(said), "no {said:?} in\n{text}");
    }
    assert!(!text.contains(['{', '}']) && !text.contains(":  ") && !text.contains("NaN"), "{text}");
}

#[test]
fn in_us_units_the_same() {
    let text = sheet(&with_clamp(), System::Us).text();
    assert!(text.contains("lb") && text.contains("in") && !text.contains("\u{a0}kg"), "{text}");
}

#[test]
fn a_blank_check_leaves_room_for_everything() {
    let found = sheet(&Entries::blank(), System::Metric);
    assert!(found.missing.is_some() && found.gaps.is_none());
    assert!(found.text().contains("Too little is entered") && !found.text().contains("covers what is wanted"));
    let mut none = Entries::blank();
    none.plate = false;
    let found = sheet(&none, System::Metric);
    assert_eq!(found.gaps.as_ref().map(Vec::len), Some(1));
    assert!(found.text().contains("There is no plate."));
}

#[tokio::test]
async fn the_page_shows_what_the_text_says() {
    let entries = with_clamp();
    let answer: Shared<Answer> = Rc::new(Answer::of(&entries)).into();
    let props = RequestProps { answer, system: System::Metric };
    let html = LocalServerRenderer::<RequestSheet>::with_props(props).hydratable(false).render().await;
    for said in ["Drum clamp", "CB-3 (invented)", "request-print", "request-save", "request-gaps", "planning only"] {
        assert!(html.contains(said), "{said}");
    }
    assert_eq!(html.matches("<h1").count(), 1);
    let name = (words().field)(Field::Wheelbase).name;
    assert_eq!(html.matches(&format!("<dt>{name}</dt>")).count(), 1);
}
