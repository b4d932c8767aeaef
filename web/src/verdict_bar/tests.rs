use super::*;
use standfast_core::document::WeightKnown;
use standfast_core::example;
use standfast_core::place::Field;
use yew::LocalServerRenderer;

async fn bar(change: impl FnOnce(&mut Entries)) -> String {
    let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
    change(&mut entries);
    let entries = Rc::new(entries);
    let answer: Shared<Answer> = Rc::new(Answer::of(&entries)).into();
    let props = VerdictProps { answer, entries, system: System::Metric };
    LocalServerRenderer::<VerdictBar>::with_props(props).hydratable(false).render().await
}

/// Never by colour alone: state, word and shape go together.
#[tokio::test]
async fn each_state_has_its_word_and_its_shape() {
    let go = bar(|_| {}).await;
    assert!(go.contains("data-state=\"go\"") && go.contains("GO, WITHIN THE PLATE") && go.contains("<rect"));
    let no_go = bar(|e| e.enter(Field::LoadMass.into(), "2600", System::Metric)).await;
    assert!(no_go.contains("data-state=\"no_go\"") && no_go.contains("NO-GO") && no_go.contains("<circle"));
    let hold = bar(|e| {
        e.enter(Field::LoadMass.into(), "1500", System::Metric);
        e.weight_known = Some(WeightKnown::Estimate);
    })
    .await;
    assert!(hold.contains("data-state=\"hold\"") && hold.contains(">HOLD<") && hold.contains("class=\"triangle\""));
    let none = bar(|e| e.enter(Field::LoadMass.into(), "", System::Metric)).await;
    assert!(none.contains("data-state=\"none\"") && none.contains("NOT YET"));
    assert!(!none.contains("<circle") && !none.contains("<rect") && !none.contains("triangle"));
}

#[tokio::test]
async fn the_reason_is_read_out_and_the_others_are_counted() {
    let html = bar(|e| {
        e.enter(Field::LoadMass.into(), "2600", System::Metric);
        e.enter(Field::BatteryFitted.into(), "700", System::Metric);
    })
    .await;
    assert!(html.contains("aria-live=\"polite\""));
    assert!(html.contains("1\u{202f}580\u{a0}kg at 600\u{a0}mm") || html.contains("The battery weighs"), "{html}");
    assert!(html.contains("more reason"), "{html}");
}

#[tokio::test]
async fn what_is_missing_is_one_touch_away() {
    let html = bar(|e| e.enter(Field::LoadMass.into(), "", System::Metric)).await;
    assert!(html.contains("1 figure is still needed: load weight.") && html.contains("verdict-go"), "{html}");
}

/// Forks set too narrow for the load: the bar offers what helps, and a tap enters just that.
#[tokio::test]
async fn what_would_have_to_change_is_a_button_that_enters_it() {
    let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
    entries.enter(Field::HeelGap.into(), "350", System::Metric);
    let answer = Answer::of(&entries);
    let assessment = answer.assessment.as_ref().expect("an answer");
    assert!(!assessment.remedies.leads.is_empty(), "{:?}", assessment.verdict.governing);
    let entries = Rc::new(entries);
    for (k, leads) in assessment.remedies.leads.iter().enumerate() {
        let after = remedies::applied(leads, &answer, &entries);
        let state = Answer::of(&after).assessment.expect("an answer").verdict.state;
        assert_eq!(state, leads.state, "{k}: what was said is what comes");
        // Only what the remedy is about differs.
        let changed: Vec<_> = after.numbers.iter().filter(|(p, t)| entries.numbers.get(p) != Some(t)).collect();
        assert!(changed.len() <= leads.changes.len(), "{changed:?}");
    }
    let html = bar(|e| e.enter(Field::HeelGap.into(), "350", System::Metric)).await;
    assert!(
        html.contains("data-testid=\"remedy-0\"") && html.contains("Push the load 360\u{a0}mm further home"),
        "{html}"
    );
    let go = bar(|_| {}).await;
    assert!(!go.contains("remedy-0"));
}
