//! The load's card: ways in, what was found, what was weighed, how it stands.

use super::*;
use standfast_core::document::{Turned, WeightKnown};
use standfast_core::friction::Underside;

fn odd() -> Entries {
    Entries::from_document(&example::document(example::ODD_LOAD))
}

#[tokio::test]
async fn each_way_in_shows_what_it_needs() {
    let mut entries = odd();
    let html = cards(entries.clone(), Card::Load).await;
    assert!(html.contains("data-testid=\"open-parts\"") && !html.contains("field-load.length_m"));
    assert!(html.contains(&format!("{} part", entries.parts.iter().filter(|p| p.cut_from.is_none()).count())));
    entries.given_as = GivenAs::Trace;
    entries.trace = Some(Default::default());
    entries.enter(Field::LoadMass.into(), "", System::Metric);
    let html = cards(entries.clone(), Card::Load).await;
    assert!(html.contains("data-testid=\"open-trace\"") && html.contains("data-testid=\"load-material\""));
    assert!(html.contains("Nothing traced yet"));
    entries.given_as = GivenAs::Block;
    let html = cards(entries, Card::Load).await;
    assert!(html.contains("field-load.length_m") && !html.contains("open-parts"));
}

/// What is wrong on a bench is said on the card, beside the way there.
#[tokio::test]
async fn a_bench_says_what_is_still_to_be_done() {
    let mut entries = odd();
    let mass = Place::in_row(Field::PartMass, 0);
    entries.enter(mass, "heavy", System::Metric);
    let html = cards(entries, Card::Load).await;
    assert!(html.contains(&format!("data-testid=\"problem-{mass}\"")) && html.contains("is not a number"));
    assert!(html.contains("Shows as soon as nothing is missing or wrong with the load"));
}

#[tokio::test]
async fn what_was_found_stands_with_its_tolerance_and_where_it_is_from() {
    let entries = odd();
    let answer = Answer::of(&entries);
    let load = answer.load.load.as_ref().expect("a load");
    let html = cards(entries, Card::Load).await;
    for figure in ["mass", "ahead", "left", "above"] {
        assert!(html.contains(&format!("data-testid=\"found-{figure}\"")), "{figure}");
    }
    let mass = crate::figures::tolerance(load.mass, standfast_core::units::Quantity::Mass, printer());
    assert!(html.contains(&mass), "{mass}");
    assert!(html.contains("Centre from its heel side") && html.contains("Centre above its underside"));
    assert!(html.contains("turned-picture"));
}

fn printer() -> crate::figures::Printer {
    crate::figures::Printer(System::Metric)
}

fn block_weighed(readings: [&str; 2]) -> Entries {
    let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
    entries.weighing = Some(crate::entries::WeighEntry { points: 2, raised_end: None });
    entries.centre_known = Some(CentreKnown::Middle);
    let length = Field::LoadLength.into();
    let far = entries.shown(length, System::Metric);
    entries.bearers_across();
    for (row, (ahead, reading)) in [("0", readings[0]), (far.as_str(), readings[1])].into_iter().enumerate() {
        entries.enter(Place::in_row(Field::WeighAhead, row), ahead, System::Metric);
        entries.enter(Place::in_row(Field::WeighReading, row), reading, System::Metric);
    }
    entries.enter(Field::WeighAccuracy.into(), "1", System::Metric);
    entries
}

/// Two bearers say weight and one direction of the centre, right below; the weight entered stands beside it.
#[tokio::test]
async fn scales_say_weight_and_centre_beside_what_was_entered() {
    let entries = block_weighed(["525", "525"]);
    assert_eq!(Answer::of(&entries).problems, []);
    let html = cards(entries, Card::Load).await;
    assert!(html.contains("1\u{202f}050 \u{b1} 2\u{a0}kg"), "{html}");
    assert!(html.contains("the scales") && html.contains("the weight entered") && html.contains("\u{25c6}"));
    assert!(html.contains("data-testid=\"scales-say\"") && !html.contains("data-testid=\"disagreement\""));
}

#[tokio::test]
async fn ways_that_do_not_agree_are_named_with_their_figures() {
    let mut entries = block_weighed(["500", "300"]);
    entries.weight_known = Some(WeightKnown::Scale);
    let answer = Answer::of(&entries);
    assert!(!answer.load.load.as_ref().expect("a load").disagreements.is_empty());
    let html = cards(entries, Card::Load).await;
    assert!(html.contains("They do not agree on the weight") && html.contains("Measure again"), "{html}");
}

#[tokio::test]
async fn two_bearers_lie_right_across_until_told_otherwise() {
    let mut entries = Entries::blank();
    entries.bearers_across();
    assert_eq!(entries.shown(Place::in_row(Field::WeighLeft, 1), System::Metric), "0");
    let mut entries = Entries::blank();
    entries.enter(Field::WeighAhead.into(), "0", System::Metric);
    entries.bearers_across();
    assert_eq!(entries.shown(Field::WeighLeft.into(), System::Metric), "", "what somebody began is left alone");
}

#[tokio::test]
async fn the_underside_says_its_friction_and_what_hangs_has_none() {
    let mut entries = odd();
    entries.underside = Some(Underside::WoodenPallet);
    entries.turned = Turned::Left;
    let html = cards(entries.clone(), Card::Load).await;
    assert!(html.contains("Friction counted: 0.3 standing, 0.225 once it moves"), "{html}");
    assert!(!html.contains("field-load.hook_above_m"));
    entries.hanging = true;
    let html = cards(entries, Card::Load).await;
    assert!(html.contains("field-load.hook_above_m") && !html.contains("choice-load.underside"));
}

#[tokio::test]
async fn the_closed_card_says_how_the_load_is_known() {
    let html = cards(odd(), Card::Truck).await;
    assert!(html.contains("from ") && html.contains(" parts"), "{html}");
    let html = cards(block_weighed(["525", "525"]), Card::Truck).await;
    assert!(html.contains("and a weighing"));
}
