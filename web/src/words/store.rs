//! Keeping the book in the browser.

use super::Count;

/// The texts.
#[derive(Debug)]
pub struct StoreWords {
    /// What our version of an entry is called beside the one of another tab.
    pub this_tab: &'static str,
    pub both_kept: &'static str,
    pub joined: &'static str,
    pub not_removed: &'static str,
    pub put_back: &'static str,
    pub changed: &'static str,
    pub archived: &'static str,
    pub taken_out: &'static str,
    pub removed: &'static str,
    pub imported: Count,
    pub undo: &'static str,
    pub close: &'static str,
    pub full: &'static str,
    pub failed: &'static str,
    pub unkept: Count,
    pub again: &'static str,
    pub save_book: &'static str,
    pub nowhere: &'static str,
    pub starting: &'static str,
    pub kept_here: &'static str,
    pub kept_plain: &'static str,
    pub promised: &'static str,
    pub not_promised: &'static str,
    pub promise_unknown: &'static str,
    pub damaged: Count,
    pub damaged_one: &'static str,
    pub save_damaged: &'static str,
    pub drafts: &'static str,
    pub draft_unnamed: &'static str,
    pub draft_show: &'static str,
    pub draft_forget: &'static str,
    pub draft_later: &'static str,
}
