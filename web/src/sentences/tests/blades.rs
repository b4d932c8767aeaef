//! What the load does on the forks, in sentences.

use super::*;
use standfast_core::document::Turned;
use standfast_core::friction::Underside;

fn all(entries: &Entries) -> Vec<String> {
    reasons(&Answer::of(entries), entries, System::Metric).into_iter().map(|s| s.main).collect()
}

fn says(entries: &Entries, what: &str) {
    let list = all(entries);
    assert!(list.iter().any(|s| s.contains(what)), "{what}: {list:#?}");
    assert!(list.iter().all(|s| !s.is_empty() && !s.contains(['{', '}'])), "{list:#?}");
}

/// Tall and light on smooth metal: braking, it slides and topples.
#[test]
fn braking_makes_a_load_topple_or_slide() {
    let mut tall = entries(example::THREE_WHEEL, &[(Field::LoadHeight, "2400"), (Field::LoadCgAbove, "2200")]);
    for (field, text) in [(Field::LoadCgFromHeel, "900"), (Field::MaxTiltBack, "0"), (Field::TiltBack, "0")] {
        tall.enter(field.into(), text, System::Metric);
    }
    tall.centre_known = Some(CentreKnown::Mark);
    tall.underside = Some(Underside::AntiSlipMat);
    let list = all(&tall);
    assert!(
        list.iter().any(|s| s.contains("Braking at 1.54\u{a0}m/s\u{b2}, the load") && s.contains("topple")),
        "{list:#?}"
    );
    let mut slick = entries(example::THREE_WHEEL, &[(Field::MaxTiltBack, "0"), (Field::TiltBack, "0")]);
    slick.underside = Some(Underside::PlasticPallet);
    says(&slick, "of friction is asked");
}

#[test]
fn short_forks_narrow_stamps_and_wear_say_their_limits() {
    says(&entries(example::THREE_WHEEL, &[(Field::ForkLength, "800")]), "of the load's depth;");
    let stamped = [(Field::ForkStamped, "300"), (Field::ForkStampedCentre, "500")];
    says(&entries(example::THREE_WHEEL, &stamped), "it is stamped for");
    let worn = [(Field::BladeThickness, "40"), (Field::BladeThicknessNow, "35")];
    says(&entries(example::THREE_WHEEL, &worn), "have lost 12.5\u{a0}% of their thickness");
    let long = [(Field::Extension, "2100"), (Field::ExtensionMass, "60")];
    says(&entries(example::THREE_WHEEL, &long), "The fork extensions are 2\u{202f}100\u{a0}mm long");
}

#[test]
fn a_hanging_load_says_what_part_may_hang() {
    let mut hangs = entries(example::THREE_WHEEL, &[(Field::LoadMass, "1300"), (Field::HookAbove, "200")]);
    hangs.hanging = true;
    says(&hangs, "only 70\u{a0}% may hang");
}

#[test]
fn ways_that_do_not_agree_are_a_reason_to_hold() {
    let mut odd = Entries::from_document(&example::document(example::ODD_LOAD));
    assert_eq!(odd.given_as, GivenAs::Parts);
    odd.enter(Field::LoadMass.into(), "900", System::Metric);
    odd.weight_known = Some(WeightKnown::Scale);
    says(&odd, "Two ways do not agree on the weight");
}

/// A hold about a centre that no field holds leads to the scales.
#[test]
fn what_to_measure_is_somewhere_on_the_card() {
    let mut odd = Entries::from_document(&example::document(example::ODD_LOAD));
    odd.enter(Field::LoadMass.into(), "900", System::Metric);
    odd.weighing = None;
    for (given_as, field) in [(GivenAs::Parts, Field::WeighPoints), (GivenAs::Block, Field::CentreKnown)] {
        odd.given_as = given_as;
        let answer = Answer::of(&odd);
        assert_eq!(entered_at(Field::LoadCgLeft.into(), &answer.document), field.into());
        assert_eq!(entered_at(Field::LoadMass.into(), &answer.document), Field::LoadMass.into());
    }
}

#[test]
fn every_remedy_has_its_words() {
    use standfast_core::remedy::{Leads, Remedy};
    use standfast_core::scalar::Scalar;
    let document = example::document(example::THREE_WHEEL);
    let c = Scalar::computed;
    let text = |remedy| remedy_of(Leads { changes: vec![remedy], state: State::Go }, &document);
    fn remedy_of(leads: Leads, document: &Document) -> String {
        remedy(&leads, document, Printer(System::Metric))
    }
    assert_eq!(text(Remedy::PushHome { by: c(0.0401) }), "Push the load 41\u{a0}mm further home");
    assert_eq!(text(Remedy::Spread { to: c(0.62) }), "Set the forks 620\u{a0}mm apart or more");
    assert_eq!(text(Remedy::Turn { turned: Turned::Left }), "Turn the load a quarter to the left");
    assert_eq!(text(Remedy::Shift { by: c(-0.035), offset: c(0.0) }), "Shift it 35\u{a0}mm to the right");
    for (remedy, said) in [
        (Remedy::Lighter { to: c(1306.9) }, "Take some of the load off: 1\u{202f}306\u{a0}kg or less"),
        (Remedy::Lower { to: c(3.297) }, "Raise it no higher than 3.29\u{a0}m"),
        (Remedy::Corner { to: c(6.78) }, "With the load, take bends at 6.7\u{a0}km/h or slower"),
        (Remedy::CornerEmpty { to: c(9.0) }, "Without the load, take bends at 9\u{a0}km/h or slower"),
        (Remedy::Ramp { to: c(8.26) }, "Go where no ramp is steeper than 8.2\u{a0}%"),
        (Remedy::Sideshift { to: c(-0.03) }, "Sideshift the carriage to 30\u{a0}mm to the right"),
        (Remedy::TiltForward { to: c(1.27) }, "Tilt forward no more than 1.2\u{b0} to place it"),
        (Remedy::Battery { to: c(820.0) }, "Fit a battery of 820\u{a0}kg, inside the plate\u{2019}s window"),
    ] {
        assert_eq!(text(remedy), said);
    }
    let pair = Leads { changes: vec![Remedy::RampBackwards, Remedy::ExtensionsOff], state: State::Go };
    let said = "Drive down the ramp backwards, load uphill, and take the fork extensions off";
    assert_eq!(remedy_of(pair, &document), said);
    let mut unsaid = document.clone();
    unsaid.lift.heel_gap_m = None;
    let leads = Leads { changes: vec![Remedy::PushHome { by: c(0.05) }], state: State::Hold };
    assert_eq!(remedy_of(leads, &unsaid), "Push the load home against the heel");
    assert_eq!((leads_to(State::Go), leads_to(State::Hold)), ("then: go, within the plate", "then: hold"));
}
