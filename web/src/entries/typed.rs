//! One figure as typed.

use serde::{Deserialize, Serialize};
use standfast_core::number::{self, NotRead};
use standfast_core::units::Unit;

/// A text and the unit it was typed in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Typed {
    /// Letter by letter as typed.
    pub text: String,
    /// In this unit.
    pub unit: Unit,
}

impl Typed {
    /// The text for a figure of a document: the shortest that reads back as the very same figure.
    pub fn of_value(value: f64, unit: Unit) -> Self {
        let exact =
            |text: &String| number::read(text, unit).is_ok_and(|read| unit.to_document(read).total_cmp(&value).is_eq());
        let shown = unit.from_document(value);
        // Padded with zeros where the short text might be taken for thousands.
        let texts = (0..=17).flat_map(|d| [number::show(shown, d), format!("{shown:.d$}")]);
        let text = texts.into_iter().find(exact).unwrap_or_else(|| number::show(shown, 4));
        Self { text, unit }
    }

    /// The figure in the document's unit.
    ///
    /// # Errors
    /// [`NotRead`] where the text is not a number.
    pub fn read(&self) -> Result<f64, NotRead> {
        number::read(&self.text, self.unit).map(|value| self.unit.to_document(value))
    }

    /// What to show in a unit: the text itself in its own, or where it cannot be read; else the
    /// figure converted for reading only.
    pub fn shown_in(&self, unit: Unit) -> String {
        match self.read() {
            Ok(value) if unit != self.unit => {
                let decimals = match unit {
                    Unit::Inch | Unit::One => 3,
                    Unit::Millimetre => 1,
                    _ => 2,
                };
                let shown = unit.from_document(value);
                let text = number::show(shown, decimals);
                // Typed over by one letter it must still read as it looks.
                if number::read(&text, unit).is_ok() { text } else { format!("{shown:.4}") }
            }
            _ => self.text.clone(),
        }
    }
}
