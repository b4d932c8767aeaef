//! The log of checks.

use super::Count;

/// The texts.
#[derive(Debug)]
pub struct LogWords {
    /// In the check.
    pub to_log: &'static str,
    pub who: &'static str,
    pub who_help: &'static str,
    pub keep: &'static str,
    pub cancel: &'static str,
    pub no_answer: &'static str,
    pub kept: &'static str,
    pub open_log: &'static str,
    pub close: &'static str,
    /// The place.
    pub about: &'static str,
    pub empty: &'static str,
    pub search: &'static str,
    pub which: &'static str,
    pub all: &'static str,
    pub found_none: &'static str,
    pub count: Count,
    pub show_more: Count,
    pub save: &'static str,
    pub nobody: &'static str,
    pub unnamed: &'static str,
    /// One of them.
    pub then: &'static str,
    pub program: &'static str,
    pub used: &'static str,
    pub remark: &'static str,
    pub set_up: &'static str,
    pub height: &'static str,
    pub again: &'static str,
    pub now: &'static str,
    pub now_program: &'static str,
    pub same: &'static str,
    pub same_words_differ: &'static str,
    pub differs: &'static str,
    pub no_verdict: &'static str,
    pub inputs: &'static str,
    pub inputs_frozen: &'static str,
    pub open_check: &'static str,
    pub save_check: &'static str,
    pub remove: &'static str,
}
