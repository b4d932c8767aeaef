use super::*;
use standfast_core::document::WeightKnown;
use standfast_core::example;

fn entries(text: &str, changes: &[(Field, &str)]) -> Entries {
    let mut entries = Entries::from_document(&example::document(text));
    for (field, typed) in changes {
        entries.enter((*field).into(), typed, System::Metric);
    }
    entries
}

fn first(entries: &Entries, system: System) -> (Shown, Sentence) {
    let answer = Answer::of(entries);
    let list = reasons(&answer, entries, system);
    for sentence in &list {
        let text = format!("{} {}", sentence.main, sentence.more.clone().unwrap_or_default());
        assert!(!text.contains(['{', '}']) && !text.contains("NaN"), "{text}");
    }
    (Shown::of(&answer), list.into_iter().next().expect("a reason"))
}

#[test]
fn go_says_weight_limit_and_margin() {
    let (shown, sentence) = first(&entries(example::THREE_WHEEL, &[]), System::Metric);
    assert_eq!(shown, Shown::Go);
    // 1,050 kg by a note may be 5 % more, 1,102.5: up. The plate allows 1,580: what is left, down.
    assert!(sentence.main.contains("1\u{202f}103\u{a0}kg at most"), "{}", sentence.main);
    assert!(sentence.main.contains("allows 1\u{202f}580\u{a0}kg: 477\u{a0}kg in hand"), "{}", sentence.main);
    assert!(sentence.more.is_some_and(|m| m.contains("used")));
}

#[test]
fn the_plate_says_by_how_much_it_is_too_heavy() {
    let mut heavy = entries(example::THREE_WHEEL, &[(Field::LoadMass, "1580.2")]);
    heavy.weight_known = Some(WeightKnown::Scale);
    let (shown, sentence) = first(&heavy, System::Metric);
    assert_eq!(shown, Shown::NoGo);
    let text = "The load weighs 1\u{202f}581\u{a0}kg; the plate allows 1\u{202f}580\u{a0}kg at 600\u{a0}mm and \
                3.30\u{a0}m: 1\u{a0}kg too much.";
    assert_eq!(sentence.main, text);
    let (_, us) = first(&heavy, System::Us);
    assert!(us.main.contains("3\u{202f}484\u{a0}lb") && us.main.contains("3\u{202f}483\u{a0}lb"), "{}", us.main);
}

#[test]
fn a_hold_says_may_and_what_to_measure() {
    let mut unsure = entries(example::THREE_WHEEL, &[(Field::LoadMass, "1500")]);
    unsure.weight_known = Some(WeightKnown::Estimate);
    let (shown, sentence) = first(&unsure, System::Metric);
    assert_eq!(shown, Shown::Hold);
    assert!(sentence.main.contains("may weigh 1\u{202f}800\u{a0}kg"), "{}", sentence.main);
    assert!(sentence.more.is_some_and(|m| m.contains("Measure better: load weight.")));
}

#[test]
fn a_slope_says_stood_asked_and_short() {
    // High, heavy as the plate allows, far forward: some raised step no longer stands its slope.
    let steep = entries(
        example::THREE_WHEEL,
        &[(Field::LiftHeight, "4700"), (Field::LoadMass, "1150"), (Field::TiltForward, "5"), (Field::MastGive, "4")],
    );
    let answer = Answer::of(&steep);
    let list = reasons(&answer, &steep, System::Metric);
    let slope = list.iter().find(|s| s.main.contains("of slope")).unwrap_or_else(|| panic!("{list:?}"));
    assert!(slope.main.starts_with("Raised to 4.70\u{a0}m, mast"), "{}", slope.main);
    assert!(slope.main.contains("is asked") && slope.main.ends_with("short."), "{}", slope.main);
}

#[test]
fn every_plate_gap_has_its_sentence() {
    let mut list = vec![
        entries(example::THREE_WHEEL, &[(Field::BatteryFitted, "1000")]),
        entries(example::THREE_WHEEL, &[(Field::BatteryFitted, "")]),
        entries(example::THREE_WHEEL, &[(Field::Offset, "120")]),
        entries(example::THREE_WHEEL, &[(Field::Offset, "60")]),
        entries(example::THREE_WHEEL, &[(Field::HeelGap, "400")]),
        entries(example::THREE_WHEEL, &[(Field::HeelGap, "600")]),
        entries(example::FOUR_WHEEL, &[(Field::LiftHeight, "4000"), (Field::MastLift, "4500")]),
        entries(example::FOUR_WHEEL, &[(Field::LiftHeight, "4200"), (Field::MastLift, "4500")]),
    ];
    let mut no_plate = entries(example::FOUR_WHEEL, &[]);
    no_plate.plate = false;
    list.push(no_plate);
    let mut fitted = entries(
        example::FOUR_WHEEL,
        &[(Field::AttachmentMass, "200"), (Field::AttachmentAhead, "80"), (Field::LostLoad, "120")],
    );
    fitted.attachment = true;
    for field in [Field::AttachmentMass, Field::AttachmentAhead, Field::LostLoad] {
        let typed = match field {
            Field::AttachmentMass => "200",
            Field::AttachmentAhead => "80",
            _ => "120",
        };
        fitted.enter(field.into(), typed, System::Metric);
    }
    list.push(fitted);
    for entries in list {
        let (shown, sentence) = first(&entries, System::Metric);
        assert!(matches!(shown, Shown::NoGo | Shown::Hold), "{shown:?}: {sentence:?}");
        first(&entries, System::Us);
    }
}

#[test]
fn without_an_answer_what_is_wrong_comes_first() {
    let (shown, sentence) = first(&entries(example::THREE_WHEEL, &[(Field::LoadMass, "12 tons")]), System::Metric);
    assert_eq!(shown, Shown::None);
    assert!(sentence.main.starts_with("Load weight: \u{201c}12 tons"), "{}", sentence.main);
    let (shown, sentence) = first(&Entries::blank(), System::Metric);
    assert_eq!(shown, Shown::None);
    assert!(sentence.main.contains("figures are still needed, first: wheelbase"), "{}", sentence.main);
}

#[test]
fn poses_and_names_as_people_say_them() {
    let metric = Printer(System::Metric);
    assert_eq!(pose(StepId::Travel, 0.15, -6.0, metric), "Carried at 0.15\u{a0}m, mast back 6\u{b0}");
    assert_eq!(pose(StepId::RaisedForward, 3.2, 0.0, metric), "Raised to 3.20\u{a0}m, mast upright");
    assert_eq!(name_of(Place::in_row(Field::PlateCapacity, 2)), "Capacity, row 3");
    assert_eq!((lower("Load weight"), lower("US")), ("load weight".to_owned(), "US".to_owned()));
}

mod blades;
mod drive;
