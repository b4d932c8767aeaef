//! Tables for spreadsheets, and what is wrong in one.

use super::Count;

/// The texts.
#[derive(Debug)]
pub struct TableWords {
    pub heading: &'static str,
    pub help: &'static str,
    pub save_plates: &'static str,
    pub save_capacity: &'static str,
    pub no_capacity: &'static str,
    pub open_plates: &'static str,
    pub pattern: &'static str,
    /// A file of plates, and what it would change.
    pub plates_found: Count,
    pub plate_new: &'static str,
    pub plate_other: &'static str,
    pub plate_same: &'static str,
    pub plate_check: &'static str,
    pub rows: Count,
    pub take: &'static str,
    pub taken: &'static str,
    pub leave: &'static str,
    /// A file that was refused.
    pub refused: &'static str,
    pub more: Count,
    pub close: &'static str,
    pub not_read: &'static str,
    /// Where something is wrong.
    pub in_row: &'static str,
    pub in_cell: &'static str,
    pub in_named: &'static str,
    /// What is wrong.
    pub empty: &'static str,
    pub too_large: &'static str,
    pub too_many_rows: &'static str,
    pub too_many_columns: &'static str,
    pub too_long: &'static str,
    pub quote_open: &'static str,
    pub behind_quote: &'static str,
    pub not_utf8: &'static str,
    pub cells: &'static str,
    pub no_column: &'static str,
    pub no_column_unit: &'static str,
    pub unknown_column: &'static str,
    pub column_twice: &'static str,
    pub no_unit: &'static str,
    pub other_unit: &'static str,
    pub needed: &'static str,
    pub together: &'static str,
    pub not_a_number: &'static str,
    pub ambiguous: &'static str,
    pub within: &'static str,
    pub other_word: &'static str,
    pub not_a_day: &'static str,
    pub disagrees: &'static str,
    pub twice: &'static str,
    pub falls: &'static str,
    pub too_many_plate_rows: &'static str,
    /// Between the last two of several.
    pub or: &'static str,
}
