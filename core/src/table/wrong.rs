//! What can be wrong in a table, with its row and column.

use crate::scalar::Scalar;
use serde::Serialize;

/// One thing that is wrong in a table.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Wrong {
    /// In this row, from 1, as a spreadsheet counts: the names are a row, and so is an empty line.
    pub row: usize,
    /// In this column, where it is in one.
    pub column: Option<At>,
    /// What.
    pub fault: Fault,
}

/// A column.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct At {
    /// As a spreadsheet names it: A, B, ... AA.
    pub letters: String,
    /// As the table names it; empty where it does not.
    pub name: String,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Fault {
    /// There is nothing in it, or nothing but names.
    Empty,
    /// It is larger than this many bytes.
    TooLarge {
        /// The most.
        most: usize,
    },
    /// It has more than this many rows.
    TooManyRows {
        /// The most.
        most: usize,
    },
    /// It has more than this many columns.
    TooManyColumns {
        /// The most.
        most: usize,
    },
    /// A cell has more than this many letters.
    TooLong {
        /// The most.
        most: usize,
    },
    /// A quote is opened and not closed.
    QuoteOpen,
    /// Something stands between a closing quote and the next cell.
    BehindQuote,
    /// Letters were lost: it is not UTF-8.
    NotUtf8,
    /// The row has another number of cells than there are names.
    Cells {
        /// So many.
        found: usize,
        /// So many names.
        names: usize,
    },
    /// There is no such column.
    NoColumn {
        /// Its name.
        name: &'static str,
        /// What its unit may be; none where it has none.
        units: &'static [&'static str],
    },
    /// No column that this kind of table can have.
    UnknownColumn,
    /// The column is there twice.
    ColumnTwice,
    /// The column does not say its unit.
    NoUnit {
        /// What it may be.
        units: &'static [&'static str],
    },
    /// Its unit is none for this column.
    OtherUnit {
        /// What it may be.
        units: &'static [&'static str],
    },
    /// Nothing stands in a cell that must be filled.
    Needed,
    /// Some of several cells are filled, and all or none must be.
    Together {
        /// The columns.
        columns: &'static [&'static str],
    },
    /// Not a number.
    NotANumber {
        /// What stands there.
        text: String,
    },
    /// It may mean thousands or decimals.
    Ambiguous {
        /// What stands there.
        text: String,
    },
    /// Outside the permitted range.
    Within {
        /// What stands there.
        text: String,
        /// Least, in the column's unit.
        min: Scalar,
        /// Greatest, in the column's unit.
        max: Scalar,
        /// The column's unit.
        unit: &'static str,
    },
    /// None of the words that may stand there.
    OtherWord {
        /// What stands there.
        text: String,
        /// What may.
        words: &'static [&'static str],
    },
    /// Not a day, year, month and day: 2026-05-14.
    NotADay {
        /// What stands there.
        text: String,
    },
    /// The plate says something else about itself in an earlier row.
    Disagrees {
        /// That row.
        row: usize,
    },
    /// The plate has this height with this load centre already.
    Twice {
        /// In this row.
        row: usize,
    },
    /// The plate allows more than in a row that is no higher and no further out.
    Falls {
        /// In this row.
        row: usize,
    },
    /// More rows than a plate may have.
    TooManyPlateRows {
        /// The most.
        most: usize,
    },
}

/// What stands in a cell, as much of it as a message has room for.
pub(super) fn short(text: &str) -> String {
    let text = text.trim();
    match text.char_indices().nth(40) {
        Some((end, _)) => format!("{}\u{2026}", &text[..end]),
        None => text.to_owned(),
    }
}

/// A column's letters, the first being 0.
pub(super) fn letters(mut column: usize) -> String {
    let mut letters = Vec::new();
    loop {
        letters.push(char::from(b'A' + (column % 26) as u8));
        match column / 26 {
            0 => break,
            more => column = more - 1,
        }
    }
    letters.iter().rev().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn columns_are_lettered_as_spreadsheets_do() {
        for (column, name) in [(0, "A"), (25, "Z"), (26, "AA"), (51, "AZ"), (52, "BA"), (701, "ZZ"), (702, "AAA")] {
            assert_eq!(letters(column), name);
        }
    }
}
