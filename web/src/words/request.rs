//! The sheet to ask a manufacturer for a plate.

use standfast_core::document::PlateFor;
use standfast_core::request::{Part, What};

/// The texts.
pub struct RequestWords {
    /// On the button that opens it.
    pub open: &'static str,
    pub heading: &'static str,
    pub intro: &'static str,
    pub missing: super::Count,
    pub print: &'static str,
    pub save: &'static str,
    pub close: &'static str,
    pub file: &'static str,
    pub part: fn(Part) -> &'static str,
    /// What is no field of its own.
    pub what: fn(What) -> &'static str,
    pub not_entered: &'static str,
    /// Room to write by hand, in a text file.
    pub blank: &'static str,
    pub three: &'static str,
    pub four: &'static str,
    pub front_end: fn(PlateFor) -> &'static str,
    pub yes: &'static str,
    pub no: &'static str,
    pub rows: &'static str,
    pub no_plate: &'static str,
    pub not_covered: &'static str,
    pub covered: &'static str,
    pub not_yet: &'static str,
    pub estimate: &'static str,
    /// `{estimate}`, and that it is none to lift by.
    pub estimate_is: &'static str,
    pub no_estimate: &'static str,
    pub asked: &'static str,
    pub asked_list: &'static [&'static str],
    pub from: &'static str,
    pub from_list: &'static [&'static str],
    pub standing: &'static str,
    pub program: &'static str,
}
