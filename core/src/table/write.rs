//! Writing a table.

use super::guard;
use super::measure::Measure;
use crate::units;
use crate::units::Quantity;
use crate::units::Rounding;
use crate::units::System;

/// A table as it grows.
pub(super) struct Writer {
    measures: Vec<Option<Measure>>,
    out: String,
    at: usize,
}

impl Writer {
    /// With these columns: a name, and what kind of figures stand in it.
    pub fn new<'a>(columns: impl IntoIterator<Item = (&'a str, Option<Quantity>)>, system: System) -> Self {
        let columns: Vec<_> = columns.into_iter().map(|(name, q)| (name, q.map(|q| Measure::of(q, system)))).collect();
        let measures = columns.iter().map(|(_, measure)| *measure).collect();
        let mut writer = Self { measures, out: String::new(), at: 0 };
        for (name, measure) in columns {
            let name = name.replace(' ', "_");
            writer.cell(&measure.map_or_else(|| name.clone(), |m| format!("{name}_{}", m.symbol())));
        }
        writer
    }

    /// A cell as it is; behind the last of a row comes the line end.
    fn cell(&mut self, text: &str) {
        if text.contains(['"', ',', ';', '\t', '\r', '\n']) {
            self.out.push('"');
            self.out.push_str(&text.replace('"', "\"\""));
            self.out.push('"');
        } else {
            self.out.push_str(text);
        }
        self.at = (self.at + 1) % self.measures.len();
        self.out.push_str(if self.at == 0 { "\r\n" } else { "," });
    }

    /// What somebody called something.
    pub fn text(&mut self, text: &str) {
        self.cell(&guard::guarded(text));
    }

    /// One of our own words.
    pub fn word(&mut self, word: &str) {
        self.cell(word);
    }

    /// A figure as it was entered, in the document's unit. In other units to a millionth, which is far
    /// less than anybody can measure.
    pub fn figure(&mut self, value: Option<f64>) {
        self.rounded(value, 6, Rounding::Nearest);
    }

    /// A figure of the document's unit to so many decimals of the column's; as it is where they are the same
    /// and it was entered.
    pub fn rounded(&mut self, value: Option<f64>, decimals: u8, way: Rounding) {
        let measure = self.measures[self.at];
        let written = value.zip(measure).map(|(value, measure)| {
            let own = matches!(measure, Measure::Metre | Measure::Kilogram | Measure::Degree);
            let shown = measure.shown(value);
            let exact = own && way == Rounding::Nearest;
            measure.written(if exact { shown } else { units::round(shown, decimals, way) })
        });
        self.cell(&written.unwrap_or_default());
    }

    /// A number without a unit.
    pub fn plain(&mut self, value: Option<f64>, decimals: u8, way: Rounding) {
        let number = value.map(|v| units::round(v, decimals, way)).filter(|v| v.is_finite());
        self.cell(&number.map(|v| v.to_string()).unwrap_or_default());
    }

    /// The table.
    pub fn done(self) -> String {
        debug_assert_eq!(self.at, 0, "a row is not finished");
        self.out
    }
}
