//! The truck book: trucks with their set-ups and plates, attachments, loads, and the log of checks.
//!
//! A set-up is a whole truck as it stands in that set-up: another mast or attachment changes weights,
//! axle loads and the load distance, so nothing of it is worked out from another one. The plate that
//! belongs to a set-up stands in its truck.
//!
//! The core makes no identities and knows no time: both come from outside, as texts.

use crate::checklist::Answers;
use crate::document::{Attachment, Document, Known, Load, Truck};
use crate::verdict::State;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

mod file;
pub mod merge;

pub use file::{MOST_SET_UPS, Opened, open};

/// What `format` says.
pub const FORMAT: &str = "standfast-book";
/// What `version` says; a greater one is refused.
pub const VERSION: u32 = 1;

/// Everything that is kept: one file, or a part of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Book {
    /// Always [`FORMAT`].
    pub format: String,
    /// The version of the format.
    pub version: u32,
    /// The trucks.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub trucks: Vec<TruckRecord>,
    /// Attachments to fit to any of them.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub attachments: Vec<AttachmentRecord>,
    /// Loads.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub loads: Vec<LoadRecord>,
    /// Checks as they were made, oldest first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub log: Vec<CheckRecord>,
}

impl Default for Book {
    fn default() -> Self {
        Self {
            format: FORMAT.to_owned(),
            version: VERSION,
            trucks: Vec::new(),
            attachments: Vec::new(),
            loads: Vec::new(),
            log: Vec::new(),
        }
    }
}

/// A truck in all its set-ups.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct TruckRecord {
    /// Its own among all records, never changed.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// Free text.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Put away: kept, not offered.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub archived: bool,
    /// Its set-ups.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub set_ups: Vec<SetUp>,
}

/// A truck as it stands with one attachment, mast, battery, kind of tyres; and the plate for that.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct SetUp {
    /// Its own among all records, never changed.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// Free text: the state of tyres, what was changed when.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Put away: kept, not offered.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub archived: bool,
    /// The truck in it, with its plate.
    #[serde(default)]
    pub truck: Truck,
    /// How its figures are known, by their path in a check (`truck.tread_m`).
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub known: BTreeMap<String, Known>,
}

/// An attachment.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct AttachmentRecord {
    /// Its own among all records, never changed.
    pub id: String,
    /// Free text.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Put away: kept, not offered.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub archived: bool,
    /// The attachment.
    #[serde(default)]
    pub attachment: Attachment,
}

/// A load.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LoadRecord {
    /// Its own among all records, never changed.
    pub id: String,
    /// Free text.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// Put away: kept, not offered.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub archived: bool,
    /// The load.
    #[serde(default)]
    pub load: Load,
    /// How its figures are known, by their path in a check (`load.mass_kg`).
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub known: BTreeMap<String, Known>,
}

/// A check as it was made: its inputs, and what was said of them then.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct CheckRecord {
    /// Its own among all records, never changed.
    pub id: String,
    /// When: ISO 8601 with its offset from UTC, `2026-05-14T09:30:00+02:00`.
    pub at: String,
    /// Who made it: free text.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub who: String,
    /// The program's version then.
    pub program: String,
    /// The truck of the book that it was made for, and its set-up, by their ids.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<Of>,
    /// All that was entered, the checklist with it.
    pub check: Document,
    /// What came of it.
    pub outcome: Outcome,
}

impl CheckRecord {
    /// What was looked at before the lift.
    pub fn checklist(&self) -> &Answers {
        &self.check.checklist
    }
}

/// A truck of the book in one of its set-ups.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Of {
    /// The truck.
    pub truck: String,
    /// The set-up.
    pub set_up: String,
}

/// What was said of a check.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Outcome {
    /// The verdict; none where something was missing or wrong.
    pub verdict: Option<State>,
    /// The reason, as it was shown.
    pub reason: String,
    /// The greatest part of what may be used that some step uses, at the worst corner; none without a verdict.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub used: Option<f64>,
}
