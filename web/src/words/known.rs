//! How figures are known.

use standfast_core::document::By;
use standfast_core::units::Quantity;

/// The texts.
#[derive(Debug)]
pub struct KnownWords {
    /// What a figure of this kind is known by: in the line, and in full on a button.
    pub by: fn(By, Quantity) -> (&'static str, &'static str),
    /// A centre at a mark.
    pub mark: &'static str,
    /// A weight of which nobody said how it is known.
    pub not_chosen: &'static str,
    /// The way, and how far it may be out.
    pub line: &'static str,
    /// So much each way; of a slope; and not at all.
    pub out: &'static str,
    pub out_of_slope: &'static str,
    pub exact: &'static str,
    /// Where it is not as usual.
    pub changed: &'static str,
    pub heading: &'static str,
    pub own: &'static str,
    pub own_of_slope: &'static str,
    pub own_help: &'static str,
    pub back: &'static str,
    /// Before what is wrong with a tolerance.
    pub problem: &'static str,
    pub tolerance_of: &'static str,
}
