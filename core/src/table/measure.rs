//! The units that a table's columns may name.

use crate::number;
use crate::number::NotRead;
use crate::units::Quantity;
use crate::units::System;
use crate::units::Unit;

/// A unit of a column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Measure {
    Millimetre,
    Centimetre,
    Metre,
    Inch,
    Foot,
    Kilogram,
    Tonne,
    Pound,
    Degree,
}

impl Measure {
    const ALL: [Self; 9] = [
        Self::Millimetre,
        Self::Centimetre,
        Self::Metre,
        Self::Inch,
        Self::Foot,
        Self::Kilogram,
        Self::Tonne,
        Self::Pound,
        Self::Degree,
    ];

    /// The unit that we write in.
    pub fn of(quantity: Quantity, system: System) -> Self {
        match (quantity, system) {
            (Quantity::Mass, System::Metric) => Self::Kilogram,
            (Quantity::Mass, System::Us) => Self::Pound,
            (Quantity::Angle, _) => Self::Degree,
            (_, System::Metric) => Self::Metre,
            (_, System::Us) => Self::Inch,
        }
    }

    /// As it stands in a column's name.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Metre => "m",
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Kilogram => "kg",
            Self::Tonne => "t",
            Self::Pound => "lb",
            Self::Degree => "deg",
        }
    }

    /// The unit of that symbol.
    pub fn named(text: &str) -> Option<Self> {
        let text = if text == "lbs" { "lb" } else { text };
        Self::ALL.into_iter().find(|m| m.symbol() == text)
    }

    pub const fn quantity(self) -> Quantity {
        match self {
            Self::Kilogram | Self::Tonne | Self::Pound => Quantity::Mass,
            Self::Degree => Quantity::Angle,
            _ => Quantity::Length,
        }
    }

    /// What a column of such figures may name.
    pub const fn symbols(quantity: Quantity) -> &'static [&'static str] {
        match quantity {
            Quantity::Mass => &["kg", "t", "lb"],
            Quantity::Angle => &["deg"],
            _ => &["m", "cm", "mm", "in", "ft"],
        }
    }

    /// The unit it is typed like: thousands and decimals are told apart as there.
    const fn like(self) -> Unit {
        match self {
            Self::Millimetre | Self::Centimetre => Unit::Millimetre,
            // So many tonnes or metres there never are.
            Self::Metre | Self::Tonne => Unit::Metre,
            Self::Inch => Unit::Inch,
            Self::Foot => Unit::Foot,
            Self::Kilogram => Unit::Kilogram,
            Self::Pound => Unit::Pound,
            Self::Degree => Unit::Degree,
        }
    }

    /// What was typed, in the document's unit.
    pub fn read(self, text: &str) -> Result<f64, NotRead> {
        number::read(text, self.like()).map(|value| match self {
            Self::Centimetre => value / 100.0,
            Self::Tonne => value * 1000.0,
            _ => self.like().to_document(value),
        })
    }

    /// A figure of the document's unit in this one.
    pub fn shown(self, value: f64) -> f64 {
        match self {
            Self::Centimetre => value * 100.0,
            Self::Tonne => value / 1000.0,
            _ => self.like().from_document(value),
        }
    }

    /// A figure of this unit as it stands in a cell: read again it is the same, and never taken for thousands.
    pub fn written(self, value: f64) -> String {
        if !value.is_finite() {
            return String::new();
        }
        let text = format!("{}", value + 0.0);
        match number::read(&text, self.like()) {
            Err(NotRead::Ambiguous) => format!("{text}0"),
            _ => text,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_unit_is_read_by_its_name_and_no_other() {
        for measure in Measure::ALL {
            assert_eq!(Measure::named(measure.symbol()), Some(measure));
            assert!(Measure::symbols(measure.quantity()).contains(&measure.symbol()));
        }
        assert_eq!(Measure::named("lbs"), Some(Measure::Pound));
        for not in ["", "M", "g", "yd", "kgs", "tons"] {
            assert_eq!(Measure::named(not), None, "{not}");
        }
    }

    /// Expected values: exact definitions (inch 25.4 mm, foot 304.8 mm, pound 0.45359237 kg).
    #[test]
    fn figures_are_turned_into_metres_and_kilograms() {
        for (measure, text, value) in [
            (Measure::Millimetre, "1580", 1.58),
            (Measure::Centimetre, "120,5", 1.205),
            (Measure::Metre, "1,580", 1.58),
            (Measure::Inch, "100", 2.54),
            (Measure::Foot, "10", 3.048),
            (Measure::Kilogram, "1 580", 1580.0),
            (Measure::Tonne, "1,580", 1580.0),
            (Measure::Pound, "1000", 453.592_37),
            (Measure::Degree, "-3", -3.0),
        ] {
            let read = measure.read(text).expect(text);
            assert!((read - value).abs() < 1e-12 * value.abs(), "{text} {}: {read}", measure.symbol());
            assert!((measure.shown(read) - measure.shown(value)).abs() < 1e-9);
        }
        for measure in [Measure::Millimetre, Measure::Centimetre, Measure::Kilogram, Measure::Pound] {
            assert_eq!(measure.read("1,580"), Err(NotRead::Ambiguous));
        }
    }

    #[test]
    fn what_is_written_is_never_taken_for_thousands() {
        assert_eq!(Measure::Kilogram.written(136.077), "136.0770");
        assert_eq!(Measure::Kilogram.written(1580.0), "1580");
        assert_eq!(Measure::Metre.written(1.125), "1.125");
        assert_eq!(Measure::Degree.written(-0.0), "0");
        assert_eq!(Measure::Metre.written(f64::NAN), "");
        assert_eq!(Measure::Kilogram.read("136.0770"), Ok(136.077));
    }
}
