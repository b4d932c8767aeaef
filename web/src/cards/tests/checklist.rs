//! The card of what is looked at before the lift.

use super::*;
use crate::entries::Entries;
use crate::state::{Action, Choice, State};
use standfast_core::checklist::{Answer as Seen, Answers, Item};
use standfast_core::verdict::State as Verdict;
use yew::functional::Reducible;

fn answered(answers: &[(Item, Seen)]) -> Entries {
    let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
    entries.checklist = answers.iter().copied().collect();
    entries
}

/// Every thing with its source, and no way to say that a truck has no brakes.
#[tokio::test]
async fn everything_is_there_with_its_source() {
    let html = cards(answered(&[]), Card::Checklist).await;
    for item in Item::ALL {
        let name = crate::form::code(item);
        for (answer, there) in [("yes", true), ("no", true), ("not_there", item.may_lack())] {
            let found = html.contains(&format!("data-testid=\"check-{name}-{answer}\""));
            assert_eq!(found, there, "{name} {answer}");
        }
    }
    for text in ["29 CFR 1910.178 (q)(7) (from memory)", "(a)(6) (read in the source)", "Nothing looked at yet"] {
        assert!(html.contains(text), "{text}");
    }
    assert!(!html.contains("not-in-order"));
}

#[tokio::test]
async fn the_closed_card_counts() {
    let some = [
        (Item::Brakes, Seen::No),
        (Item::Way, Seen::Yes),
        (Item::Mast, Seen::Yes),
        (Item::AttachmentHeld, Seen::NotThere),
    ];
    let html = cards(answered(&some), Card::Load).await;
    assert!(html.contains("2 of 13 in order, 1 not in order"), "{html}");
    let html = cards(answered(&some), Card::Cautions).await;
    assert!(html.contains("Not in order: brakes and steering. Not to be lifted before it is put right."), "{html}");
    // It is said though nothing else is known yet.
    let blank = Entries { checklist: Answers::from(some), ..Entries::blank() };
    assert!(cards(blank, Card::Cautions).await.contains("Not in order: brakes"));
}

/// An answer holds the verdict, is one step to undo, and goes into the file and out of it.
#[test]
fn an_answer_is_entered_kept_and_undone() {
    let start = Rc::new(State::with(answered(&[])));
    let seen = |state: &Rc<State>, seen| Rc::clone(state).reduce(Action::Choose(Choice::Seen(Item::Tyres, seen)));
    let no = seen(&start, Some(Seen::No));
    let verdict = |state: &State| Answer::of(&state.entries).assessment.map(|a| a.verdict.state);
    assert_eq!((verdict(&start), verdict(&no)), (Some(Verdict::Go), Some(Verdict::Hold)));
    let file = no.entries.file();
    assert_eq!(file.checklist, Answers::from([(Item::Tyres, Seen::No)]));
    assert_eq!(Entries::from_document(&file), *no.entries);
    assert_eq!(seen(&no, None).entries, start.entries);
    assert_eq!(Rc::clone(&no).reduce(Action::Undo).entries, start.entries);
}
