//! What the browser keeps from one visit to the next.

use crate::answer::Card;
use crate::entries::Entries;
use crate::places::Screen;
use crate::state::{Bench, State};
use serde::{Deserialize, Serialize};
use standfast_core::step::StepId;
use standfast_core::units::System;
use std::cell::RefCell;
use std::rc::Rc;

mod drafts;

pub use drafts::Draft;
use drafts::{Drafts, Texts};

/// Where the state is kept.
pub const KEY: &str = "standfast.v1.check";
/// Where a text that could not be read is set aside.
pub const ASIDE: &str = "standfast.v1.aside";

/// More rows than anybody enters: no text may make the page build that many.
const MOST_ROWS: usize = 10_000;

/// What is kept: never what was said or dragged, nor the steps to undo.
#[derive(Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Kept {
    system: System,
    step: Option<String>,
    card: Option<Card>,
    #[serde(default)]
    bench: Option<Bench>,
    /// Left out where it is the check, so that an older page reads it still.
    #[serde(default, skip_serializing_if = "Screen::is_check")]
    place: Screen,
    entries: Entries,
}

/// The state as a text to keep.
pub fn to_text(state: &State) -> String {
    let kept = Kept {
        system: state.system,
        step: state.picked.map(|id| name(id).to_owned()),
        card: state.open,
        bench: state.bench,
        place: state.place,
        entries: Entries::clone(&state.entries),
    };
    serde_json::to_string(&kept).unwrap_or_default()
}

/// The state that a text keeps.
///
/// # Errors
/// The reader's words where it is damaged or not ours.
pub fn from_text(text: &str) -> Result<State, String> {
    let kept: Kept = serde_json::from_str(text).map_err(|e| e.to_string())?;
    let supports = kept.entries.weighing.map_or(0, |w| w.points);
    if kept.entries.plate_rows.max(kept.entries.stages).max(supports) > MOST_ROWS {
        return Err("too many rows".to_owned());
    }
    let picked = match kept.step {
        None => None,
        Some(step) => Some(StepId::ALL.into_iter().find(|&id| name(id) == step).ok_or(step)?),
    };
    let (entries, system, open, bench) = (Rc::new(kept.entries), kept.system, kept.card, kept.bench);
    Ok(State { place: kept.place, entries, system, picked, open, bench, ..State::example() })
}

/// A step's name, here and in test names.
pub fn name(id: StepId) -> &'static str {
    match id {
        StepId::TakeUp => "take_up",
        StepId::TiltBack => "tilt_back",
        StepId::Travel => "travel",
        StepId::Brake => "brake",
        StepId::CornerLeft => "corner_left",
        StepId::CornerRight => "corner_right",
        StepId::RampUp => "ramp_up",
        StepId::RampDown => "ramp_down",
        StepId::CrossFallLeft => "cross_fall_left",
        StepId::CrossFallRight => "cross_fall_right",
        StepId::RaisedBack => "raised_back",
        StepId::RaisedUpright => "raised_upright",
        StepId::RaisedForward => "raised_forward",
        StepId::BackOut => "back_out",
        StepId::EmptyCornerLeft => "empty_corner_left",
        StepId::EmptyCornerRight => "empty_corner_right",
    }
}

/// What was found at the start.
#[derive(Debug, PartialEq)]
pub enum Found {
    /// Nothing: the first visit.
    Nothing,
    /// The last visit's state.
    Kept(State),
    /// A text that cannot be read.
    Damaged(String),
}

/// Looks at what was kept.
pub fn found(text: Option<String>) -> Found {
    match text {
        None => Found::Nothing,
        Some(text) => match from_text(&text) {
            Ok(state) => Found::Kept(state),
            Err(_) => Found::Damaged(text),
        },
    }
}

thread_local! {
    /// This tab's view of what several tabs entered.
    static DRAFTS: RefCell<Drafts> = RefCell::default();
}

fn texts(storage: &Option<web_sys::Storage>) -> Option<&dyn Texts> {
    storage.as_ref().map(|s| s as &dyn Texts)
}

/// What is kept as long as the tab is open, over reloads.
fn session() -> Option<web_sys::Storage> {
    web_sys::window()?.session_storage().ok()?
}

/// Keeps this tab's check; whether that worked. What another tab entered is not lost by it.
pub fn keep_check(text: &str) -> bool {
    DRAFTS.with_borrow_mut(|drafts| drafts.keep(texts(&session()), texts(&browser()), text))
}

/// Another tab's check was kept.
pub fn check_replaced() {
    if let Some(common) = browser() {
        DRAFTS.with_borrow(|drafts| drafts.replaced(&common));
    }
}

/// What other tabs entered.
pub fn drafts() -> Vec<Draft> {
    browser().map_or_else(Vec::new, |common| DRAFTS.with_borrow(|drafts| drafts.others(&common)))
}

/// The state in a draft; it is taken out where it is taken over.
pub fn draft(draft: &Draft) -> Found {
    found(browser().and_then(|s| s.get_item(&draft.key).ok()).flatten())
}

/// Forgets a draft.
pub fn forget(draft: &Draft) {
    let _ = browser().map(|s| s.remove_item(&draft.key));
}

/// The browser's storage, if it lets us have it.
pub fn browser() -> Option<web_sys::Storage> {
    web_sys::window()?.local_storage().ok()?
}

/// Reads what is kept of this tab, or else of the one that was changed last.
pub fn load() -> Found {
    found(DRAFTS.with_borrow_mut(|drafts| drafts.begin(texts(&session()), texts(&browser()))))
}

/// Sets a text aside where nothing lies yet; whether it is kept there.
pub fn set_aside(text: &str) -> bool {
    let Some(storage) = browser() else { return false };
    let places = (1..=9).map(|n| format!("{ASIDE}.{n}"));
    let mut free = places.filter(|key| matches!(storage.get_item(key), Ok(None)) || is_at(&storage, key, text));
    free.next().is_some_and(|key| storage.set_item(&key, text).is_ok())
}

fn is_at(storage: &web_sys::Storage, key: &str, text: &str) -> bool {
    storage.get_item(key).ok().flatten().as_deref() == Some(text)
}

/// Keeps a text; whether that worked.
pub fn keep(key: &str, text: &str) -> bool {
    browser().is_some_and(|s| s.set_item(key, text).is_ok())
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::place::Field;

    #[test]
    fn a_state_is_kept_letter_by_letter() {
        let mut entries = Entries::clone(&State::example().entries);
        entries.enter(Field::LiftHeight.into(), "99.", System::Us);
        entries.enter(Field::LoadMass.into(), "12 tons", System::Metric);
        let (system, picked, place) = (System::Us, Some(StepId::RaisedForward), Screen::Trucks);
        let state = State { place, system, picked, open: None, ..State::with(entries) };
        assert_eq!(found(Some(to_text(&state))), Found::Kept(state));
    }

    /// What a page kept before parts and benches were known still opens.
    #[test]
    fn a_text_of_an_older_page_opens() {
        let text = r#"{"system":"us","step":"travel","card":"truck","entries":{"note":"n","truck_name":"T",
            "load_name":"L","attachment_name":"","wheels":"four","weight_known":"note","centre_known":"mark",
            "plate_for":"forks","attachment":false,"plate":true,"plate_rows":2,"stages":1,
            "numbers":{"load.mass_kg":{"text":"1 500","unit":"pound"}}}}"#;
        let state = from_text(text).expect("an older text");
        assert_eq!((state.system, state.picked, state.bench), (System::Us, Some(StepId::Travel), None));
        assert_eq!(state.entries.shown(Field::LoadMass.into(), System::Us), "1 500");
    }

    #[test]
    fn an_open_bench_and_its_parts_are_kept() {
        let mut entries = Entries::blank();
        entries.add_part(crate::entries::PartEntry { name: "Bed".to_owned(), ..Default::default() });
        entries.trace = Some(Default::default());
        let state = State { bench: Some(Bench::Trace), ..State::with(entries) };
        assert_eq!(found(Some(to_text(&state))), Found::Kept(state));
    }

    #[test]
    fn damaged_texts_are_told_apart_and_never_panic() {
        let good = to_text(&State::example());
        for end in 0..good.len() {
            if let Some(cut) = good.get(..end) {
                assert_eq!(found(Some(cut.to_owned())), Found::Damaged(cut.to_owned()));
            }
        }
        for (a, b) in [
            ("load.mass_kg", "load.weight"),
            ("\"metric\"", "\"furlong\""),
            ("\"step\":null", "\"step\":\"fly\""),
            ("\"stages\":2", "\"stages\":9999999999"),
        ] {
            let wrong = good.replace(a, b);
            assert_ne!(wrong, good, "{a}");
            assert_eq!(found(Some(wrong.clone())), Found::Damaged(wrong));
        }
        assert_eq!(found(None), Found::Nothing);
    }
}
