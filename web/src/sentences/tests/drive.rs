//! What is driven, in sentences.

use super::*;
use standfast_core::document::RampDown;

fn all(entries: &Entries) -> Vec<Sentence> {
    let list = reasons(&Answer::of(entries), entries, System::Metric);
    assert!(list.iter().all(|s| !s.main.is_empty() && !s.main.contains(['{', '}'])), "{list:#?}");
    list
}

fn find<'a>(list: &'a [Sentence], what: &str) -> &'a Sentence {
    list.iter().find(|s| s.main.contains(what)).unwrap_or_else(|| panic!("{what}: {list:#?}"))
}

#[test]
fn a_bend_too_fast_says_speed_radius_share_and_limit() {
    let fast = entries(example::THREE_WHEEL, &[(Field::CornerSpeed, "12")]);
    let list = all(&fast);
    let said = find(&list, "it uses");
    let bend = "hand bend at 12\u{a0}km/h on 2.00\u{a0}m it uses";
    assert!(said.main.contains(bend) && said.main.contains("; 85\u{a0}% may be used,"), "{}", said.main);
    assert_eq!(said.at, Some(Field::CornerSpeed.into()), "one touch leads to the speed");
    assert!(find(&list, "the load slides").main.starts_with("In the "), "{list:#?}");
}

#[test]
fn a_load_downhill_on_a_steep_ramp_is_refused_with_the_rule() {
    let mut ramp = entries(example::THREE_WHEEL, &[(Field::RampGrade, "12"), (Field::Braking, "0.3")]);
    assert!(!all(&ramp).iter().any(|s| s.main.contains("downhill")));
    ramp.drive.ramp_down = Some(RampDown::Forwards);
    let list = all(&ramp);
    let said = find(&list, "The ramp is 12\u{a0}% and the load leads downhill; over 10\u{a0}% it stays uphill");
    assert!(said.main.contains("29 CFR 1910.178") && said.at == Some(Field::RampDown.into()), "{said:?}");
}

/// Every driven step has its own words, with every figure in them.
#[test]
fn every_step_says_what_it_is_driven_like() {
    let mut entries = entries(example::THREE_WHEEL, &[(Field::RampGrade, "6"), (Field::CrossFall, "3")]);
    let print = Printer(System::Metric);
    for down in [RampDown::Backwards, RampDown::Forwards] {
        entries.drive.ramp_down = Some(down);
        let answer = Answer::of(&entries);
        assert_eq!(answer.steps.len(), StepId::ALL.len());
        let mut said: Vec<_> = StepId::ALL.into_iter().filter_map(|id| when(id, &answer, print)).collect();
        let count = said.len();
        assert_eq!(count, 10);
        assert!(said.iter().all(|s| !s.contains(['{', '}']) && !s.contains("  ") && !s.ends_with(' ')), "{said:#?}");
        said.sort_unstable();
        said.dedup();
        assert_eq!(said.len(), count);
    }
    let answer = Answer::of(&entries);
    let down = when(StepId::RampDown, &answer, print).expect("driven");
    assert_eq!(down, "Down the 6\u{a0}% ramp with the load downhill and braking at 1.54\u{a0}m/s\u{b2}");
    let us = when(StepId::CornerLeft, &answer, Printer(System::Us)).expect("driven");
    assert!(us.contains("3.1\u{a0}mph") && us.contains("78.7\u{a0}in"), "{us}");
}
