//! The loads, and the day's list.

use super::Count;

/// The texts.
#[derive(Debug)]
pub struct LoadsWords {
    /// The load of the present check.
    pub present: &'static str,
    pub present_kept: &'static str,
    pub present_own: &'static str,
    pub present_changed: &'static str,
    pub keep: &'static str,
    pub update: &'static str,
    pub unread: &'static str,
    pub unnamed: &'static str,
    pub no_weight: &'static str,
    pub parts: Count,
    pub traced: &'static str,
    /// The list.
    pub list: &'static str,
    pub list_of_file: &'static str,
    pub against: &'static str,
    pub against_own: &'static str,
    pub nobody: &'static str,
    pub truck_unread: &'static str,
    pub empty: &'static str,
    pub search: &'static str,
    pub found_none: &'static str,
    pub count: Count,
    pub load: &'static str,
    pub weight: &'static str,
    pub allowed: &'static str,
    pub verdict: &'static str,
    pub used: &'static str,
    pub no_row: &'static str,
    pub standing: &'static str,
    pub use_it: &'static str,
    pub used_now: &'static str,
    pub more: &'static str,
    pub others: Count,
    /// A file.
    pub open: &'static str,
    pub open_help: &'static str,
    pub opened: Count,
    pub keep_all: &'static str,
    pub kept_all: Count,
    pub close_list: &'static str,
    pub save_list: &'static str,
    pub print: &'static str,
    pub example_name: &'static str,
}
