//! What is looked at before the lift.

use super::{Count, Label};
use standfast_core::checklist::Item;

/// The texts.
#[derive(Debug)]
pub struct ChecklistWords {
    pub heading: &'static str,
    pub intro: &'static str,
    /// What a thing is called, and what is to be seen of it.
    pub item: fn(Item) -> Label,
    pub yes: &'static str,
    pub no: &'static str,
    pub not_there: &'static str,
    pub anew: &'static str,
    /// `{yes}` of `{all}`.
    pub summary: &'static str,
    pub summary_no: Count,
    pub nothing_yet: &'static str,
    /// `{list}` is not in order.
    pub not_in_order: &'static str,
    pub to_list: &'static str,
}
