//! The drive on the move's card.

use super::*;
use crate::figures::Printer;
use standfast_core::document::RampDown;

fn three(figures: &[(Field, &str)]) -> Entries {
    let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
    for (field, text) in figures {
        entries.enter((*field).into(), text, System::Metric);
    }
    entries
}

/// The text of the element with a test name.
fn text<'a>(html: &'a str, name: &str) -> &'a str {
    let behind = html.split(&format!("data-testid=\"{name}\"")).nth(1).unwrap_or_else(|| panic!("no {name}"));
    behind.split_once('>').and_then(|(_, t)| t.split('<').next()).unwrap_or_default()
}

#[tokio::test]
async fn a_slope_stands_in_both_units() {
    let other = |html: &str| text(html, "other-drive.ramp_pct").to_owned();
    let empty = cards(three(&[]), Card::Move).await;
    assert_eq!(other(&empty), "10\u{a0}% would be 5.7 degrees");
    let mut entries = three(&[(Field::RampGrade, "10")]);
    assert_eq!(other(&cards(entries.clone(), Card::Move).await), "10\u{a0}% is 5.7 degrees");
    entries.drive.ramp_in_degrees = true;
    let html = cards(entries.clone(), Card::Move).await;
    assert_eq!(other(&html), "5.7 degrees is 10\u{a0}%");
    // The range beside the field is in the field's own unit: 50 % is 26.56 degrees, rounded inward.
    assert!(html.contains("to 26.5\u{b0}"), "{html}");
    entries.enter(Field::RampGrade.into(), "60", System::Metric);
    let html = cards(entries.clone(), Card::Move).await;
    assert!(text(&html, "problem-drive.ramp_pct").contains("60\u{b0} is out of range"), "{html}");
    entries.enter(Field::RampGrade.into(), "steep", System::Metric);
    assert_eq!(other(&cards(entries, Card::Move).await), "");
}

/// What is left out shows no figure, and is said among the cautions.
#[tokio::test]
async fn what_is_left_out_is_said() {
    let mut entries = three(&[(Field::Braking, "2.2")]);
    entries.drive.brake = Some(false);
    let html = cards(entries.clone(), Card::Move).await;
    assert!(!html.contains("field-drive.braking_ms2") && html.contains("field-drive.radius_m"));
    let html = cards(entries.clone(), Card::Cautions).await;
    assert!(html.contains("Braking is left out") && html.contains("taken to be level"), "{html}");
    entries.drive.brake = Some(true);
    entries.enter(Field::RampGrade.into(), "4", System::Metric);
    let html = cards(entries.clone(), Card::Move).await;
    assert!(html.contains("value=\"2.2\"") && html.contains("Not chosen: backwards"), "{html}");
    entries.drive.ramp_down = Some(RampDown::Forwards);
    assert!(!cards(entries.clone(), Card::Move).await.contains("Not chosen: backwards"));
    let html = cards(entries, Card::Cautions).await;
    assert!(!html.contains("Braking is left out") && html.contains("No cross-fall is entered"), "{html}");
}

/// Defaults are shown as assumed, with where they come from.
#[tokio::test]
async fn what_is_taken_for_the_drive_says_where_from() {
    let html = cards(three(&[]), Card::Move).await;
    let answer = Answer::of(&three(&[]));
    for (field, stands) in
        [(Field::Braking, 1.54), (Field::CornerSpeed, 5.0), (Field::CornerRadius, 2.0), (Field::Reserve, 15.0)]
    {
        let assumed = answer.assumed(field.into()).expect("nobody entered it");
        let (lo, hi) = (assumed.lo.get(), assumed.hi.get());
        assert!((lo..=hi).contains(&stands), "{field:?}: {lo} to {hi}");
        let said = format!("{} is taken", Printer(System::Metric).taken(field.into(), lo, hi));
        assert!(html.contains(&said), "{said}: {html}");
    }
    assert!(html.contains("A walking pace (our choice)"));
}
