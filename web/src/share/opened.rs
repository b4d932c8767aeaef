//! A link that was opened: what it holds is shown, and asked for where it would replace something of one's own.

use crate::entries::{Entries, not_known_so};
use crate::files::{are_own, refusal};
use crate::link::{self, LinkError};
use crate::notice::Notice;
use crate::state::Action;
use crate::words::{fill, words};
use std::rc::Rc;
use wasm_bindgen::JsValue;

/// The fragment of ours in the page's address. It is taken out of it: loaded again, the page goes on with what
/// was entered since.
pub fn taken_out() -> Option<String> {
    let window = web_sys::window()?;
    let location = window.location();
    let fragment = location.hash().ok().filter(|f| link::is_ours(f))?;
    let plain = location.href().ok().and_then(|href| href.split('#').next().map(str::to_owned));
    let history = window.history().ok();
    let replaced = history.zip(plain).map(|(h, plain)| h.replace_state_with_url(&JsValue::NULL, "", Some(&plain)));
    if !matches!(replaced, Some(Ok(()))) {
        let _ = location.set_hash("");
    }
    Some(fragment)
}

/// What is to be done about it, in this order.
pub fn actions(fragment: &str, now: &Entries) -> Vec<Action> {
    let refused = |why: String| vec![Action::Say(Notice::LinkRefused { why })];
    let w = &words().share;
    let document = match link::read(fragment) {
        Ok(document) => document,
        Err(LinkError::Newer { .. }) => return refused(w.newer.to_owned()),
        Err(LinkError::Damaged) => return refused(w.damaged.to_owned()),
        Err(LinkError::TooLarge) => return refused(w.large.to_owned()),
        Err(LinkError::Refused(error)) => return refused(refusal(&error)),
    };
    if let Some(path) = not_known_so(&document) {
        return refused(fill(words().problem.not_known_so, &[("path", &path)]));
    }
    let entries = Rc::new(Entries::from_document(&document));
    if *entries != *now && are_own(now) {
        return vec![Action::Say(Notice::AskLink { entries })];
    }
    shown(&entries)
}

/// Shows it.
pub fn shown(entries: &Rc<Entries>) -> Vec<Action> {
    vec![
        Action::Out(None),
        Action::Go(crate::places::Screen::Check),
        Action::Replace(Rc::clone(entries), None),
        Action::Say(Notice::LinkOpened { what: what(entries) }),
    ]
}

/// What a check is about.
pub fn what(entries: &Entries) -> String {
    let named = |name: &str| match name.trim() {
        "" => words().paper.unnamed.to_owned(),
        name => name.to_owned(),
    };
    fill(words().share.found_list, &[("load", &named(&entries.load_name)), ("truck", &named(&entries.truck_name))])
}
