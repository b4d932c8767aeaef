//! The row of names: which column holds what, in which unit; and reading the cells under them.

use super::cells::{MOST_BYTES, Row, Rows};
use super::guard;
use super::measure::Measure;
use super::wrong::{Fault, Wrong, short};
use crate::number::NotRead;
use crate::place::Field;
use crate::scalar::Scalar;
use crate::units::Quantity;
use crate::validate;

/// The most that is said of one table.
const MOST_WRONGS: usize = 100;
/// Separators that are looked for; of equals the first.
const SEPARATORS: [char; 3] = [',', ';', '\t'];

/// A column that a kind of table can have.
pub(super) struct Column {
    /// Its name as we write it, first of all that are understood; small letters, blanks between words.
    pub names: &'static [&'static str],
    /// What kind of figures stand in it; none for texts.
    pub quantity: Option<Quantity>,
    /// Whether there is no table without it.
    pub needed: bool,
}

impl Column {
    pub const fn text(names: &'static [&'static str], needed: bool) -> Self {
        Self { names, quantity: None, needed }
    }

    pub const fn figure(names: &'static [&'static str], quantity: Quantity, needed: bool) -> Self {
        Self { names, quantity: Some(quantity), needed }
    }
}

/// A column as a table has it.
#[derive(Clone, Debug)]
struct Found {
    at: usize,
    name: String,
    measure: Option<Measure>,
}

/// A table that is being read.
pub(super) struct Sheet {
    columns: &'static [Column],
    found: Vec<Option<Found>>,
    names: usize,
    rows: Vec<Row>,
    wrongs: Vec<Wrong>,
}

/// The words of a column's name: small letters, whatever stands between them.
fn words_of(name: &str) -> Vec<String> {
    let between = |c: char| !c.is_alphanumeric();
    guard::restored(name).to_lowercase().split(between).filter(|w| !w.is_empty()).map(str::to_owned).collect()
}

/// Which column a name is of, and what it says of the unit.
fn recognised(name: &str, columns: &[Column]) -> Option<(usize, Option<Measure>)> {
    let words = words_of(name);
    let index = |words: &[String]| columns.iter().position(|c| c.names.contains(&words.join(" ").as_str()));
    if let Some(at) = index(&words) {
        return Some((at, None));
    }
    let (unit, rest) = words.split_last()?;
    Some((index(rest)?, Some(Measure::named(unit)?)))
}

impl Sheet {
    /// A table with these columns.
    pub fn read(text: &str, columns: &'static [Column]) -> Result<Self, Vec<Wrong>> {
        let whole = |fault| vec![Wrong { row: 1, column: None, fault }];
        if text.len() > MOST_BYTES {
            return Err(whole(Fault::TooLarge { most: MOST_BYTES }));
        }
        let known = |row: &Row| row.cells.iter().filter(|c| recognised(c, columns).is_some()).count();
        let heads = SEPARATORS.map(|s| Rows::new(text, s).next().and_then(Result::ok));
        let counts = heads.map(|h| h.map_or((0, 0), |row| (known(&row), row.cells.len())));
        let best = counts.into_iter().max().unwrap_or_default();
        let separator = SEPARATORS.into_iter().zip(counts).find(|(_, n)| *n == best).map_or(',', |(s, _)| s);
        let mut rows = Rows::new(text, separator);
        let head = rows.next().ok_or_else(|| whole(Fault::Empty))?.map_err(|w| vec![w])?;
        let mut sheet = Self {
            columns,
            found: columns.iter().map(|_| None).collect(),
            names: head.cells.len(),
            rows: Vec::new(),
            wrongs: Vec::new(),
        };
        sheet.name_columns(&head);
        // Cells are not looked at under names that say nothing.
        sheet.done(())?;
        sheet.rows = rows.collect::<Result<_, _>>().map_err(|wrong| vec![sheet.named(wrong)])?;
        if sheet.rows.is_empty() {
            return Err(vec![Wrong { row: head.number, column: None, fault: Fault::Empty }]);
        }
        for row in &mut sheet.rows {
            let found = row.cells.len();
            // A spreadsheet may write empty cells behind the last name.
            let more = row.cells.iter().skip(sheet.names).any(|c| !c.trim().is_empty());
            if more || found < sheet.names {
                let fault = Fault::Cells { found, names: sheet.names };
                sheet.wrongs.push(Wrong { row: row.number, column: None, fault });
            }
        }
        sheet.done(())?;
        Ok(sheet)
    }

    fn name_columns(&mut self, head: &Row) {
        for (at, cell) in head.cells.iter().enumerate() {
            if cell.trim().is_empty() && at + 1 == self.names {
                // A separator behind the last name.
                self.names = at;
                continue;
            }
            let name = short(cell);
            let wrong = |fault| head.wrong(at, &name, fault);
            let Some((column, measure)) = recognised(cell, self.columns) else {
                self.wrongs.push(wrong(self.of_unknown(cell)));
                continue;
            };
            match (self.columns[column].quantity, measure) {
                (Some(quantity), None) => {
                    self.wrongs.push(wrong(Fault::NoUnit { units: Measure::symbols(quantity) }));
                }
                (Some(quantity), Some(unit)) if unit.quantity() != quantity => {
                    self.wrongs.push(wrong(Fault::OtherUnit { units: Measure::symbols(quantity) }));
                }
                (None, Some(_)) => self.wrongs.push(wrong(Fault::UnknownColumn)),
                _ => {}
            }
            match &mut self.found[column] {
                Some(_) => self.wrongs.push(wrong(Fault::ColumnTwice)),
                empty => *empty = Some(Found { at, name, measure }),
            }
        }
        for (column, found) in self.columns.iter().zip(&self.found) {
            if column.needed && found.is_none() {
                let units = column.quantity.map_or(&[][..], Measure::symbols);
                let fault = Fault::NoColumn { name: column.names[0], units };
                self.wrongs.push(Wrong { row: head.number, column: None, fault });
            }
        }
    }

    /// A name that is none of ours may be one with a unit that is none of ours.
    fn of_unknown(&self, cell: &str) -> Fault {
        let words = words_of(cell);
        let rest = words.split_last().map(|(_, rest)| rest.join(" ")).unwrap_or_default();
        let column = self.columns.iter().find(|c| c.names.contains(&rest.as_str()));
        match column.and_then(|c| c.quantity) {
            Some(quantity) => Fault::OtherUnit { units: Measure::symbols(quantity) },
            None => Fault::UnknownColumn,
        }
    }

    /// The same with the name of its column.
    fn named(&self, mut wrong: Wrong) -> Wrong {
        if let Some(column) = &mut wrong.column {
            let of = |f: &&Found| super::wrong::letters(f.at) == column.letters;
            column.name = self.found.iter().flatten().find(of).map(|f| f.name.clone()).unwrap_or_default();
        }
        wrong
    }

    /// The rows under the names.
    pub fn rows(&self) -> Vec<Row> {
        self.rows.clone()
    }

    /// Whether the table has a column.
    fn found(&self, name: &'static str) -> Option<&Found> {
        let k = self.columns.iter().position(|c| c.names[0] == name);
        debug_assert!(k.is_some(), "{name} is no column");
        self.found[k?].as_ref()
    }

    /// Says that something is wrong in a column of a row.
    pub fn wrong(&mut self, row: &Row, name: &'static str, fault: Fault) {
        let wrong = match self.found(name) {
            Some(found) => row.wrong(found.at, &found.name, fault),
            None => Wrong { row: row.number, column: None, fault },
        };
        self.wrongs.push(wrong);
    }

    /// The text of a cell; empty where there is no such column.
    pub fn text(&self, row: &Row, name: &'static str) -> String {
        self.found(name).and_then(|f| row.cells.get(f.at)).map(|c| guard::restored(c)).unwrap_or_default()
    }

    /// The same of a cell that must be filled.
    pub fn needed_text(&mut self, row: &Row, name: &'static str) -> String {
        let text = self.text(row, name);
        if text.trim().is_empty() {
            self.wrong(row, name, Fault::Needed);
        }
        text
    }

    /// One of some words, by its place among them; none for an empty cell.
    pub fn word(&mut self, row: &Row, name: &'static str, words: &'static [&'static str]) -> Option<usize> {
        let text = self.text(row, name);
        let text = text.trim();
        let found = words.iter().position(|w| w.eq_ignore_ascii_case(text));
        if found.is_none() && !text.is_empty() {
            self.wrong(row, name, Fault::OtherWord { text: short(text), words });
        }
        found
    }

    /// A day; empty for an empty cell.
    pub fn day(&mut self, row: &Row, name: &'static str) -> String {
        let text = self.text(row, name).trim().to_owned();
        if !text.is_empty() && !validate::is_day(&text) {
            self.wrong(row, name, Fault::NotADay { text: short(&text) });
        }
        text
    }

    /// A figure in the document's unit, within the range of its field; none for an empty cell.
    pub fn figure(&mut self, row: &Row, name: &'static str, field: Field) -> Option<f64> {
        let found = self.found(name)?;
        let (measure, text) = (found.measure?, row.cells.get(found.at)?.clone());
        let fault = match measure.read(&text) {
            Err(NotRead::Empty) => return None,
            Err(NotRead::NotANumber) => Fault::NotANumber { text: short(&text) },
            Err(NotRead::Ambiguous) => Fault::Ambiguous { text: short(&text) },
            Ok(value) => {
                let range = field.row();
                if (range.min..=range.max).contains(&value) {
                    return Some(value);
                }
                let [min, max] = [range.min, range.max].map(|v| Scalar::computed(measure.shown(v)));
                Fault::Within { text: short(&text), min, max, unit: measure.symbol() }
            }
        };
        self.wrong(row, name, fault);
        None
    }

    /// The same of a cell that must be filled.
    pub fn needed(&mut self, row: &Row, name: &'static str, field: Field) -> Option<f64> {
        let before = self.wrongs.len();
        let value = self.figure(row, name, field);
        if value.is_none() && self.wrongs.len() == before {
            self.wrong(row, name, Fault::Needed);
        }
        value
    }

    /// What was read, where nothing was wrong; else all that was, by row.
    pub fn done<T>(&mut self, read: T) -> Result<T, Vec<Wrong>> {
        if self.wrongs.is_empty() {
            return Ok(read);
        }
        let mut wrongs = std::mem::take(&mut self.wrongs);
        wrongs.sort_by_key(|w| w.row);
        wrongs.truncate(MOST_WRONGS);
        Err(wrongs)
    }
}
