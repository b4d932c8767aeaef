//! What was looked at before the lift and is not in order.

use super::lower;
use crate::words::{fill, words};
use standfast_core::checklist::{self, Answers, Item};

/// These are not in order.
pub(super) fn said(items: &[Item]) -> String {
    let w = &words().checklist;
    let names: Vec<_> = items.iter().map(|item| lower((w.item)(*item).name)).collect();
    fill(w.not_in_order, &[("list", &names.join(", "))])
}

/// Of what was answered; nothing where nothing is wrong.
pub fn not_in_order(answers: &Answers) -> Option<String> {
    let items = checklist::not_in_order(answers);
    (!items.is_empty()).then(|| said(&items))
}
