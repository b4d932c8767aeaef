//! The checks of several tabs side by side: each tab keeps its own, and none writes over what
//! another one entered without keeping that too.
//!
//! A tab's own check lies in its session's storage, the one that was changed last in the common storage.
//! Whoever writes over what he has not written or begun with puts it among the drafts first, and so does
//! whoever hears that his was written over. What a tab goes on with is taken out of the drafts again.

use super::{KEY, found};
use crate::files;
use crate::storage::Found;

/// What the names of drafts begin with; a number follows.
const DRAFT: &str = "standfast.v1.draft.";

/// Somewhere to keep texts by name.
pub trait Texts {
    fn get(&self, name: &str) -> Option<String>;
    /// Whether it is kept.
    fn set(&self, name: &str, text: &str) -> bool;
    fn remove(&self, name: &str);
    fn names(&self) -> Vec<String>;
}

impl Texts for web_sys::Storage {
    fn get(&self, name: &str) -> Option<String> {
        self.get_item(name).ok().flatten()
    }

    fn set(&self, name: &str, text: &str) -> bool {
        self.set_item(name, text).is_ok()
    }

    fn remove(&self, name: &str) {
        let _ = self.remove_item(name);
    }

    fn names(&self) -> Vec<String> {
        let count = self.length().unwrap_or_default();
        (0..count).filter_map(|n| self.key(n).ok().flatten()).collect()
    }
}

/// A check that another tab entered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Draft {
    /// Its name in the storage.
    pub key: String,
    /// What it is about.
    pub title: String,
}

/// One tab's view of the drafts.
#[derive(Debug, Default)]
pub struct Drafts {
    /// What this tab began with, or kept last.
    mine: Option<String>,
}

impl Drafts {
    /// What this tab begins with: its own from before it was loaded again, or else the one changed last.
    pub fn begin(&mut self, session: Option<&dyn Texts>, common: Option<&dyn Texts>) -> Option<String> {
        let own = session.and_then(|s| s.get(KEY));
        let last = common.and_then(|c| c.get(KEY));
        if let (Some(own), Some(last), Some(common)) = (&own, &last, common)
            && !is_same(own, last)
            && is_own(last)
        {
            // It is not shown here, and will be written over.
            put_aside(common, last);
        }
        self.mine = own.or(last);
        self.mine.clone()
    }

    /// Keeps this tab's check; whether it is kept where it outlives the tab.
    pub fn keep(&mut self, session: Option<&dyn Texts>, common: Option<&dyn Texts>, text: &str) -> bool {
        let before = self.mine.replace(text.to_owned());
        if let Some(session) = session {
            session.set(KEY, text);
        }
        let Some(common) = common else { return false };
        let last = common.get(KEY);
        let others = last.filter(|last| last != text && Some(last) != before.as_ref() && is_own(last));
        // Without room for both the other one stays: this one is in the session's storage.
        if others.is_some_and(|others| !put_aside(common, &others)) || !common.set(KEY, text) {
            return false;
        }
        for key in drafts(common) {
            let Some(draft) = common.get(&key) else { continue };
            if is_same(&draft, text) || before.as_ref().is_some_and(|before| is_same(&draft, before)) {
                common.remove(&key);
            }
        }
        true
    }

    /// Another tab's check is now the one changed last: this tab's goes among the drafts.
    pub fn replaced(&self, common: &dyn Texts) {
        if let Some(mine) = self.mine.as_ref().filter(|mine| common.get(KEY).as_ref() != Some(mine) && is_own(mine)) {
            put_aside(common, mine);
        }
    }

    /// What other tabs entered, other than what this tab has.
    pub fn others(&self, common: &dyn Texts) -> Vec<Draft> {
        let mut seen: Vec<_> = self.mine.iter().cloned().collect();
        let mut list = Vec::new();
        for key in drafts(common) {
            let Some(text) = common.get(&key).filter(|text| !seen.iter().any(|s| is_same(s, text))) else { continue };
            if let Found::Kept(state) = found(Some(text.clone())) {
                let names = [&state.entries.load_name, &state.entries.truck_name, &state.entries.note];
                let names: Vec<_> = names.into_iter().filter(|n| !n.is_empty()).map(String::as_str).collect();
                list.push(Draft { key, title: names.join(" \u{b7} ") });
            }
            seen.push(text);
        }
        list
    }
}

/// Puts a text among the drafts, if it is not there; whether it is now.
fn put_aside(common: &dyn Texts, text: &str) -> bool {
    let there = drafts(common);
    if there.iter().any(|key| common.get(key).as_deref() == Some(text)) {
        return true;
    }
    let free = (1..).map(|n| format!("{DRAFT}{n}")).find(|key| !there.contains(key));
    free.is_some_and(|key| common.set(&key, text))
}

fn drafts(common: &dyn Texts) -> Vec<String> {
    let mut names: Vec<_> = common.names().into_iter().filter(|name| name.starts_with(DRAFT)).collect();
    names.sort();
    names
}

/// Whether the same is entered in both, whatever card or place is open.
fn is_same(one: &str, other: &str) -> bool {
    one == other
        || match (found(Some(one.to_owned())), found(Some(other.to_owned()))) {
            (Found::Kept(one), Found::Kept(other)) => one.entries == other.entries,
            _ => false,
        }
}

/// Whether a text holds more than an example as it came, or cannot be read.
fn is_own(text: &str) -> bool {
    match found(Some(text.to_owned())) {
        Found::Kept(state) => files::are_own(&state.entries),
        Found::Damaged(_) => true,
        Found::Nothing => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::entries::Entries;
    use crate::state::State;
    use crate::storage::to_text;
    use std::cell::{Cell, RefCell};
    use std::collections::BTreeMap;

    #[derive(Default)]
    struct Map(RefCell<BTreeMap<String, String>>, Cell<bool>);

    impl Texts for Map {
        fn get(&self, name: &str) -> Option<String> {
            self.0.borrow().get(name).cloned()
        }

        fn set(&self, name: &str, text: &str) -> bool {
            let room = !self.1.get();
            if room {
                self.0.borrow_mut().insert(name.to_owned(), text.to_owned());
            }
            room
        }

        fn remove(&self, name: &str) {
            self.0.borrow_mut().remove(name);
        }

        fn names(&self) -> Vec<String> {
            self.0.borrow().keys().cloned().collect()
        }
    }

    fn check(load: &str) -> String {
        to_text(&State::with(Entries { load_name: load.to_owned(), ..Entries::blank() }))
    }

    fn titles(drafts: &[Draft]) -> Vec<&str> {
        drafts.iter().map(|d| d.title.as_str()).collect()
    }

    /// All that was entered is in the common storage, whoever wrote last.
    #[test]
    fn two_tabs_each_keep_their_own_and_neither_is_lost() {
        let common = Map::default();
        let (mut one, mut two) = (Drafts::default(), Drafts::default());
        let (one_session, two_session) = (Map::default(), Map::default());
        assert!(one.keep(Some(&one_session), Some(&common), &check("Kiln")));
        assert_eq!(two.begin(Some(&two_session), Some(&common)), Some(check("Kiln")));
        assert!(two.keep(Some(&two_session), Some(&common), &check("Crate")));
        one.replaced(&common);
        assert!(one.keep(Some(&one_session), Some(&common), &check("Kiln door")));
        two.replaced(&common);
        assert!(two.keep(Some(&two_session), Some(&common), &check("Crate 2")));
        one.replaced(&common);
        // Loaded again each has its own; a new tab has the last, and is offered the other.
        for (session, load, other) in [(&one_session, "Kiln door", "Crate 2"), (&two_session, "Crate 2", "Kiln door")] {
            let mut again = Drafts::default();
            assert_eq!(again.begin(Some(session), Some(&common)), Some(check(load)));
            assert_eq!(titles(&again.others(&common)), [other]);
        }
        let mut new = Drafts::default();
        assert_eq!(new.begin(Some(&Map::default()), Some(&common)), Some(check("Crate 2")));
        assert_eq!(titles(&new.others(&common)), ["Kiln door"]);
    }

    #[test]
    fn a_tab_that_slept_loses_nothing() {
        let common = Map::default();
        let (mut one, mut two) = (Drafts::default(), Drafts::default());
        one.keep(None, Some(&common), &check("Kiln"));
        two.keep(None, Some(&common), &check("Crate"));
        assert_eq!(titles(&two.others(&common)), ["Kiln"]);
        // Shown here, with another card open: it is this tab's now, and the other one's is a draft.
        let mut three = Drafts::default();
        three.begin(None, Some(&common));
        let shown = State { open: None, ..State::with(Entries { load_name: "Kiln".to_owned(), ..Entries::blank() }) };
        three.keep(None, Some(&common), &to_text(&shown));
        assert_eq!(titles(&three.others(&common)), Vec::<&str>::new());
        two.replaced(&common);
        assert_eq!(titles(&three.others(&common)), ["Crate"]);
        // It wakes, and goes on: its older draft is not needed any more.
        one.keep(None, Some(&common), &check("Kiln door"));
        assert_eq!(titles(&one.others(&common)), ["Crate"]);
        assert_eq!(titles(&two.others(&common)), Vec::<&str>::new());
    }

    #[test]
    fn nobodys_is_not_kept_aside_and_one_tab_alone_leaves_no_draft() {
        let (common, session) = (Map::default(), Map::default());
        Drafts::default().keep(None, Some(&common), &to_text(&State::example()));
        let mut two = Drafts::default();
        for load in ["Crate", "Crate 2"] {
            two.keep(Some(&session), Some(&common), &check(load));
        }
        let mut again = Drafts::default();
        again.begin(Some(&session), Some(&common));
        again.keep(Some(&session), Some(&common), &check("Crate 3"));
        assert_eq!(drafts(&common), Vec::<String>::new());
    }

    #[test]
    fn without_room_the_other_tabs_check_is_not_written_over() {
        let common = Map::default();
        let (mut one, mut two) = (Drafts::default(), Drafts::default());
        one.keep(None, Some(&common), &check("Kiln"));
        common.1.set(true);
        assert!(!two.keep(None, Some(&common), &check("Crate")));
        assert_eq!(common.get(KEY), Some(check("Kiln")));
        assert!(!two.keep(None, None, &check("Crate")));
    }
}
