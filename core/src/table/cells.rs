//! From a text to rows of cells, strictly.

use super::BYTE_ORDER_MARK;
use super::wrong::{At, Fault, Wrong, letters};
use std::iter::Peekable;
use std::str::Chars;

/// No table is larger, in bytes.
pub const MOST_BYTES: usize = 2_000_000;
/// The most rows, names and empty lines counted.
pub const MOST_ROWS: usize = 5000;
/// The most columns.
pub const MOST_COLUMNS: usize = 100;
/// The most letters of a cell.
pub const MOST_LETTERS: usize = 1000;

/// A row that has anything in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Row {
    /// Its number, from 1, empty lines counted.
    pub number: usize,
    pub cells: Vec<String>,
}

impl Row {
    /// What is wrong with a cell.
    pub fn wrong(&self, column: usize, name: &str, fault: Fault) -> Wrong {
        Wrong { row: self.number, column: Some(At { letters: letters(column), name: name.to_owned() }), fault }
    }
}

/// The rows that have anything in them, one after the other; it ends at the first that is damaged.
pub(super) struct Rows<'t> {
    left: Peekable<Chars<'t>>,
    separator: char,
    number: usize,
}

impl<'t> Rows<'t> {
    pub fn new(text: &'t str, separator: char) -> Self {
        let left = text.strip_prefix(BYTE_ORDER_MARK).unwrap_or(text).chars().peekable();
        Self { left, separator, number: 0 }
    }
}

impl Iterator for Rows<'_> {
    type Item = Result<Row, Wrong>;

    fn next(&mut self) -> Option<Self::Item> {
        while self.left.peek().is_some() {
            self.number += 1;
            if self.number > MOST_ROWS {
                let fault = Fault::TooManyRows { most: MOST_ROWS };
                return Some(Err(Wrong { row: self.number, column: None, fault }));
            }
            match row(&mut self.left, self.separator, self.number) {
                Ok(row) if row.cells.iter().all(|c| c.trim().is_empty()) => {}
                read => return Some(read),
            }
        }
        None
    }
}

/// One row, its line end taken with it.
fn row(left: &mut Peekable<Chars>, separator: char, number: usize) -> Result<Row, Wrong> {
    let mut row = Row { number, cells: Vec::new() };
    loop {
        let column = row.cells.len();
        if column == MOST_COLUMNS {
            return Err(row.wrong(column, "", Fault::TooManyColumns { most: MOST_COLUMNS }));
        }
        let cell = cell(left, separator).map_err(|fault| row.wrong(column, "", fault))?;
        row.cells.push(cell);
        match left.next() {
            Some(c) if c == separator => {}
            Some('\r') => {
                left.next_if_eq(&'\n');
                return Ok(row);
            }
            // A line end, or the end.
            _ => return Ok(row),
        }
    }
}

/// One cell, up to the separator or line end behind it.
fn cell(left: &mut Peekable<Chars>, separator: char) -> Result<String, Fault> {
    let ends = |c: char| c == separator || c == '\r' || c == '\n';
    let mut cell = String::new();
    let mut letters = 0;
    let mut take = |c: char| {
        letters += 1;
        cell.push(c);
        match c {
            '\0' | char::REPLACEMENT_CHARACTER => Err(Fault::NotUtf8),
            _ if letters > MOST_LETTERS => Err(Fault::TooLong { most: MOST_LETTERS }),
            _ => Ok(()),
        }
    };
    if left.next_if_eq(&'"').is_none() {
        while let Some(c) = left.next_if(|c| !ends(*c)) {
            take(c)?;
        }
        return Ok(cell);
    }
    loop {
        match left.next() {
            None => return Err(Fault::QuoteOpen),
            Some('"') if left.next_if_eq(&'"').is_some() => take('"')?,
            Some('"') => break,
            Some(c) => take(c)?,
        }
    }
    match left.peek() {
        Some(c) if !ends(*c) => Err(Fault::BehindQuote),
        _ => Ok(cell),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Vec<(usize, Vec<String>)> {
        Rows::new(text, ',').map(|r| r.expect(text)).map(|r| (r.number, r.cells)).collect()
    }

    fn refused(text: &str) -> (usize, String, Fault) {
        let wrong = Rows::new(text, ',').collect::<Result<Vec<_>, _>>().expect_err("damaged");
        (wrong.row, wrong.column.map(|c| c.letters).unwrap_or_default(), wrong.fault)
    }

    #[test]
    fn rows_are_counted_as_a_spreadsheet_counts_them() {
        let cells = |list: &[&str]| list.iter().map(|c| (*c).to_owned()).collect::<Vec<_>>();
        for end in ["\n", "\r\n", "\r"] {
            let text = format!("\u{feff}a,b{end}{end},{end}\"1{end}2\",\"\"\"x, y\"\"\"{end}3,");
            let expected =
                vec![(1, cells(&["a", "b"])), (4, cells(&[&format!("1{end}2"), "\"x, y\""])), (5, cells(&["3", ""]))];
            assert_eq!(read(&text), expected, "{end:?}");
            assert_eq!(read(&format!("{text}{end}")), expected, "{end:?}");
        }
        assert_eq!(read(""), []);
        assert_eq!(read("12\" rail,x"), [(1, cells(&["12\" rail", "x"]))]);
        assert_eq!(read("\n,\n"), []);
    }

    #[test]
    fn damage_is_refused_where_it_is() {
        assert_eq!(refused("a\n1,\"2"), (2, "B".to_owned(), Fault::QuoteOpen));
        // Nothing but damage makes this 15.
        assert_eq!(refused("a\n\n\"1\"5"), (3, "A".to_owned(), Fault::BehindQuote));
        assert_eq!(refused("a,b\nx,\"y\" "), (2, "B".to_owned(), Fault::BehindQuote));
        assert_eq!(refused("a\nGr\u{fffd}n"), (2, "A".to_owned(), Fault::NotUtf8));
        assert_eq!(refused("a\0b"), (1, "A".to_owned(), Fault::NotUtf8));
        assert_eq!(refused(&"x".repeat(MOST_LETTERS + 1)).2, Fault::TooLong { most: MOST_LETTERS });
        let wide = refused(&",".repeat(MOST_COLUMNS));
        assert_eq!(wide, (1, "CW".to_owned(), Fault::TooManyColumns { most: MOST_COLUMNS }));
        let long = refused(&"\n".repeat(MOST_ROWS + 1));
        assert_eq!(long, (MOST_ROWS + 1, String::new(), Fault::TooManyRows { most: MOST_ROWS }));
        assert!(Rows::new(&"x,".repeat(MOST_COLUMNS - 1), ',').all(|r| r.is_ok()));
    }
}
