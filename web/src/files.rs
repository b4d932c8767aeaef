//! Saving to a file, opening one, the examples, starting anew.

use crate::answer::Card;
use crate::book::{save_book, use_book};
use crate::entries::{Entries, not_known_so};
use crate::notice::Notice;
use crate::out::Out;
use crate::places::Screen;
use crate::problems;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use gloo::file::{Blob, ObjectUrl, callbacks::FileReader};
use gloo::timers::callback::Timeout;
use standfast_core::document::{Document, FileError};
use standfast_core::example;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use yew::prelude::*;

/// No check is larger, in bytes.
const LARGEST: u64 = 1_000_000;

thread_local! {
    /// The examples as they come, and nothing.
    static NOBODYS: [Entries; 4] = [
        Entries::from_document(&example::document(example::THREE_WHEEL)),
        Entries::from_document(&example::document(example::FOUR_WHEEL)),
        Entries::from_document(&example::document(example::ODD_LOAD)),
        Entries::blank(),
    ];
}

/// Whether these entries are more than an example as it came, or nothing.
pub fn are_own(entries: &Entries) -> bool {
    // That the truck is kept in the book makes it no more than it is.
    let plain = entries.of.as_ref().map(|_| Entries { of: None, ..entries.clone() });
    NOBODYS.with(|nobodys| !nobodys.contains(plain.as_ref().unwrap_or(entries)))
}

/// Whether a check is an invented example, changed or not.
pub fn is_invented(entries: &Entries) -> bool {
    entries.note.starts_with(words().tools.invented)
}

/// What the entries may be replaced by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fresh {
    /// Nothing: one's own truck.
    Own,
    /// The first example.
    One,
    /// The second.
    Two,
    /// The third: a load in parts, weighed.
    Three,
}

impl Fresh {
    /// What puts it in place.
    pub fn action(self) -> Action {
        let (entries, card) = match self {
            Self::Own => (Entries::blank(), Card::Truck),
            Self::One => (Entries::from_document(&example::document(example::THREE_WHEEL)), Card::Load),
            Self::Two => (Entries::from_document(&example::document(example::FOUR_WHEEL)), Card::Load),
            Self::Three => (Entries::from_document(&example::document(example::ODD_LOAD)), Card::Load),
        };
        Action::Replace(Rc::new(entries), Some(card))
    }

    /// The same, but asking first where something of one's own would be cleared.
    fn asked(self, entries: &Entries) -> Action {
        if are_own(entries) { Action::Say(Notice::AskClear(self)) } else { self.action() }
    }
}

/// Why a file was refused, in words.
pub fn refusal(error: &FileError) -> String {
    let w = &words().tools;
    match error {
        FileError::Unreadable { line, column, at, detail } => {
            let detail = if at.is_empty() { detail.clone() } else { format!("{at}: {detail}") };
            fill(
                w.file_unreadable,
                &[("line", &line.to_string()), ("column", &column.to_string()), ("detail", &detail)],
            )
        }
        FileError::Wrong { .. } => error.to_string(),
        FileError::TooLarge { .. } => w.file_large.to_owned(),
        FileError::OtherFormat { found: Some(found) } => fill(w.file_other_named, &[("found", found)]),
        FileError::OtherFormat { found: None } => w.file_other.to_owned(),
        FileError::Newer { found, known } => {
            fill(w.file_newer, &[("found", &found.to_string()), ("known", &known.to_string())])
        }
    }
}

/// The document in a file: whole, or refused whole.
///
/// # Errors
/// Why it was refused, in words.
fn read(text: &str) -> Result<Document, String> {
    let document = Document::from_json(text).map_err(|e| refusal(&e))?;
    match not_known_so(&document) {
        Some(path) => Err(fill(words().problem.not_known_so, &[("path", &path)])),
        None => Ok(document),
    }
}

/// A name for the file: what the load is called, in plain letters.
fn file_name(entries: &Entries) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { ' ' };
    let name: String = entries.load_name.chars().map(plain).collect();
    let words: Vec<_> = name.split_whitespace().take(6).collect();
    format!("standfast-{}.json", if words.is_empty() { "check".to_owned() } else { words.join("-") })
}

/// Hands the entries to the person as a file; what cannot be read is left out.
pub fn save(entries: &Entries) {
    hand_out(&entries.file().to_json(), "application/json", &file_name(entries));
}

/// Hands a text to the person as a file of that name.
pub fn hand_out(text: &str, kind: &str, name: &str) {
    let url = ObjectUrl::from(Blob::new_with_options(text, Some(kind)));
    let link = web_sys::window().and_then(|w| w.document()).and_then(|d| d.create_element("a").ok());
    if let Some(link) = link.and_then(|e| e.dyn_into::<web_sys::HtmlAnchorElement>().ok()) {
        link.set_href(&url);
        link.set_download(name);
        link.click();
    }
    // The browser fetches the text a little later.
    Timeout::new(60_000, move || drop(url)).forget();
}

#[derive(Properties, PartialEq)]
pub struct FilesProps {
    pub entries: Rc<Entries>,
    /// What is saved is what is shown: the check, or the book.
    #[prop_or_default]
    pub place: Screen,
}

/// Examples, saving, opening.
#[component]
pub fn Files(props: &FilesProps) -> Html {
    let act = use_act();
    let reading = use_mut_ref(|| None::<FileReader>);
    let w = &words().tools;
    let fresh = |fresh: Fresh| {
        let (act, entries) = (act.clone(), Rc::clone(&props.entries));
        Callback::from(move |_: MouseEvent| act.emit(fresh.asked(&entries)))
    };
    let on_save = {
        let (act, entries, place, book) = (act.clone(), Rc::clone(&props.entries), props.place, use_book());
        Callback::from(move |_: MouseEvent| {
            if !place.is_check() {
                save_book(&book);
                return;
            }
            let (_, unread) = entries.document();
            if unread.is_empty() {
                save(&entries);
            } else {
                let left_out = unread.iter().map(problems::subject).collect();
                act.emit(Action::Say(Notice::AskSave { left_out }));
            }
        })
    };
    let on_share = act.reform(|_: MouseEvent| Action::Out(Some(Out::Link)));
    let on_print = act.reform(|_: MouseEvent| Action::Out(Some(Out::Check)));
    let on_open = {
        let act = act.clone();
        Callback::from(move |event: Event| {
            let input: web_sys::HtmlInputElement = event.target_unchecked_into();
            let Some(file) = input.files().and_then(|list| list.get(0)) else { return };
            let file = gloo::file::File::from(file);
            let (act, name) = (act.clone(), file.name());
            let refused = |name: String, why: String| Action::Say(Notice::Refused { name, why });
            if file.size() > LARGEST {
                act.emit(refused(name, words().tools.file_large.to_owned()));
                return;
            }
            let reader = gloo::file::callbacks::read_as_text(&file, move |text| {
                let text = text.map_err(|_| words().tools.file_not_read.to_owned());
                match text.and_then(|t| read(&t)) {
                    Ok(document) => {
                        act.emit(Action::Replace(Rc::new(Entries::from_document(&document)), None));
                        act.emit(Action::Say(Notice::Opened { name }));
                    }
                    Err(why) => act.emit(refused(name, why)),
                }
                // The same file may be chosen again.
                input.set_value("");
            });
            *reading.borrow_mut() = Some(reader);
        })
    };
    html! {
        <nav class="files" aria-label={w.files}>
            if props.place.is_check() {
            <button type="button" data-testid="example-1" onclick={fresh(Fresh::One)}>{ w.example_1 }</button>
            <button type="button" data-testid="example-2" onclick={fresh(Fresh::Two)}>{ w.example_2 }</button>
            <button type="button" data-testid="example-3" onclick={fresh(Fresh::Three)}>{ w.example_3 }</button>
            }
            <button type="button" data-testid="save-file" onclick={on_save}>
                { if props.place.is_check() { w.save } else { words().book.save_all } }
            </button>
            if props.place.is_check() {
                <button type="button" data-testid="print" onclick={on_print}>{ words().paper.print }</button>
                <button type="button" data-testid="share" onclick={on_share}>{ words().share.share }</button>
            }
            <label class="button">
                { w.open }
                <input type="file" accept=".json,application/json" data-testid="open-file" onchange={on_open} />
            </label>
        </nav>
    }
}

#[derive(Properties, PartialEq)]
pub struct OriginProps {
    pub entries: Rc<Entries>,
}

/// Whose check this is, and the way to one's own truck.
#[component]
pub fn Origin(props: &OriginProps) -> Html {
    let act = use_act();
    let w = &words().tools;
    let entries = Rc::clone(&props.entries);
    let (invented, own) = (is_invented(&entries), are_own(&entries));
    let start = Callback::from(move |_: MouseEvent| act.emit(Fresh::Own.asked(&entries)));
    let (name, class) = match (invented, own) {
        (true, false) => (w.invented, "invented"),
        (true, true) => (w.invented_changed, "invented"),
        (false, _) => (w.own, "own"),
    };
    html! {
        <div class="origin">
            <span class={class} data-testid={class}>{ name }</span>
            <button type="button" class="main" data-testid="start-own" onclick={start}>{ w.start_own }</button>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn examples_and_nothing_are_nobodys_own() {
        let mut entries = Entries::from_document(&example::document(example::FOUR_WHEEL));
        assert!(!are_own(&entries) && is_invented(&entries));
        entries.load_name.push('!');
        assert!(are_own(&entries) && is_invented(&entries));
        assert!(!are_own(&Entries::blank()) && !is_invented(&Entries::blank()));
    }

    /// One slip of a glove must not clear what somebody typed.
    #[test]
    fn only_what_is_nobodys_is_cleared_without_asking() {
        let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
        for fresh in [Fresh::Own, Fresh::One, Fresh::Two, Fresh::Three] {
            assert_eq!(fresh.asked(&entries), fresh.action());
        }
        entries.load_name.push('!');
        for fresh in [Fresh::Own, Fresh::One, Fresh::Two, Fresh::Three] {
            assert_eq!(fresh.asked(&entries), Action::Say(Notice::AskClear(fresh)));
        }
    }

    #[test]
    fn a_refusal_says_where_and_what() {
        let text = example::THREE_WHEEL.replace("\"tread_m\"", "\"colour\"");
        let why = Document::from_json(&text).map_err(|e| refusal(&e)).expect_err("a foreign field");
        assert!(why.starts_with("line 13, column ") && why.contains("colour"), "{why}");
        let why = |text| refusal(&Document::from_json(text).expect_err("not ours"));
        assert!(why("{\"format\": \"other\"}").contains("\u{201c}other\u{201d}"));
        assert!(why("{}").contains("does not say"));
        assert!(why("{\"format\": \"standfast-check\", \"version\": 9}").contains("newer"));
    }

    #[test]
    fn file_names_are_plain() {
        let mut entries = Entries::blank();
        assert_eq!(file_name(&entries), "standfast-check.json");
        entries.load_name = "Kiln door / ../in its: crate (invented)".to_owned();
        assert_eq!(file_name(&entries), "standfast-kiln-door-in-its-crate-invented.json");
    }
}
