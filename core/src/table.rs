//! Tables for spreadsheets: comma-separated text as RFC 4180 has it, out and in.
//!
//! Written is UTF-8 with a row of names, the unit of each figure in its column's name (`height_m`,
//! `capacity_lb`), a decimal point, no thousands. A text that a spreadsheet would take for a formula is
//! kept from it by an apostrophe ([`guard`]), which is taken off again in reading; figures stay figures.
//!
//! Read is what spreadsheets write: commas, semicolons or tabs, a decimal point or comma, quoted cells, any
//! line end, a byte order mark. A column of figures must name its unit. Nothing is taken from a table in
//! which anything is wrong, and all that is wrong is said with its row, as a spreadsheet counts, and column.
//! The reader is our own: one that passes over empty lines, or over what stands behind a closing quote, may
//! make a figure out of damage, and cannot count rows as a spreadsheet does.

pub mod guard;

mod capacity;
mod cells;
mod day;
mod head;
mod loads;
mod log;
mod measure;
mod plates;
mod write;
mod wrong;

pub use capacity::csv_of_capacity;
pub use cells::{MOST_BYTES, MOST_COLUMNS, MOST_LETTERS, MOST_ROWS};
pub use day::csv_of_day;
pub use loads::{csv_of_loads, is_one_block, loads_from_csv};
pub use log::csv_of_log;
pub use plates::{PlateIn, csv_of_trucks, plates_from_csv};
pub use wrong::{At, Fault, Wrong};

/// What a file for a spreadsheet may begin with, so that it is taken for UTF-8.
pub const BYTE_ORDER_MARK: &str = "\u{feff}";
