//! Figures as they are printed: in the reader's units, rounded to the side that is asked for.

use crate::words::{fill, words};
use standfast_core::place::{Field, Place};
use standfast_core::report::Range;
use standfast_core::units::{self, Quantity, Rounding, System, Unit};

/// Prints figures in a system of units.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Printer(pub System);

/// A number with its decimals, digits in groups of three.
pub fn number(value: f64, decimals: u8, way: Rounding) -> String {
    let value = units::round(value, decimals, way);
    let text = format!("{:.*}", usize::from(decimals), value.abs());
    let (whole, fraction) = text.split_once('.').unwrap_or((&text, ""));
    let mut grouped = String::new();
    for (k, digit) in whole.chars().enumerate() {
        if k > 0 && (whole.len() - k).is_multiple_of(3) {
            grouped.push_str(words().group);
        }
        grouped.push(digit);
    }
    let sign = if value < 0.0 { "\u{2212}" } else { "" };
    let mark = if fraction.is_empty() { "" } else { words().decimal };
    format!("{sign}{grouped}{mark}{fraction}")
}

/// The same without zeros at the end.
pub fn bare(value: f64, decimals: u8, way: Rounding) -> String {
    let text = number(value, decimals, way);
    if text.contains(words().decimal) {
        text.trim_end_matches('0').trim_end_matches(words().decimal).to_owned()
    } else {
        text
    }
}

fn with_unit(number: &str, unit: Unit) -> String {
    match unit {
        Unit::One => number.to_owned(),
        Unit::Degree | Unit::SlopeDegree => format!("{number}{}", unit.symbol()),
        _ => format!("{number}\u{a0}{}", unit.symbol()),
    }
}

/// Decimals that a figure of this unit is printed with.
fn decimals(unit: Unit) -> u8 {
    match unit {
        Unit::Millimetre | Unit::Kilogram | Unit::Pound => 0,
        Unit::Metre | Unit::One | Unit::MetrePerSecondSquared => 2,
        Unit::Inch
        | Unit::Foot
        | Unit::Degree
        | Unit::SlopeDegree
        | Unit::Percent
        | Unit::FootPerSecondSquared
        | Unit::KilometrePerHour
        | Unit::MilePerHour => 1,
    }
}

impl Printer {
    /// A weight in kg.
    pub fn mass(self, kg: f64, way: Rounding) -> String {
        self.quantity(Quantity::Mass, kg, way)
    }

    /// A short length in m.
    pub fn length(self, m: f64, way: Rounding) -> String {
        self.quantity(Quantity::Length, m, way)
    }

    /// Sizes in m, one behind the other.
    pub fn sizes(self, sizes: [f64; 3]) -> String {
        let unit = Quantity::Length.unit(self.0);
        let texts = sizes.map(|m| bare(unit.from_document(m), decimals(unit), Rounding::Nearest));
        with_unit(&texts.join(" \u{d7} "), unit)
    }

    /// A height in m: in metres where the system is metric.
    pub fn height(self, m: f64) -> String {
        self.height_rounded(m, Rounding::Nearest)
    }

    /// A height in m that may be gone to, rounded down.
    pub fn height_down(self, m: f64) -> String {
        self.height_rounded(m, Rounding::Down)
    }

    /// A height in m that has to be reached, rounded up.
    pub fn height_up(self, m: f64) -> String {
        self.height_rounded(m, Rounding::Up)
    }

    fn height_rounded(self, m: f64, way: Rounding) -> String {
        match self.0 {
            System::Metric => with_unit(&number(m, 2, way), Unit::Metre),
            System::Us => self.length(m, way),
        }
    }

    /// A figure of a document in its own kind.
    pub fn quantity(self, quantity: Quantity, value: f64, way: Rounding) -> String {
        figure(quantity.unit(self.0), value, way)
    }

    /// A figure as entered at a place.
    pub fn at(self, place: Place, value: f64, way: Rounding) -> String {
        self.quantity(quantity_of(place), value, way)
    }

    /// A range, its ends rounded inward, so that what is printed is permitted.
    pub fn permitted(self, quantity: Quantity, min: f64, max: f64) -> String {
        permitted(quantity.unit(self.0), min, max)
    }

    /// A range that is taken for something, its ends rounded outward; one figure where they meet.
    pub fn taken(self, place: Place, lo: f64, hi: f64) -> String {
        if place.field == Field::Underside {
            return range(lo, hi, 3);
        }
        let quantity = quantity_of(place);
        let (a, b) = (self.quantity(quantity, lo, Rounding::Down), self.quantity(quantity, hi, Rounding::Up));
        if hi - lo < 1e-9 {
            return self.quantity(quantity, lo, Rounding::Nearest);
        }
        fill(words().card.from_to, &[("a", &a), ("b", &b)])
    }
}

/// A figure of a document in a unit.
pub fn figure(unit: Unit, value: f64, way: Rounding) -> String {
    with_unit(&bare(unit.from_document(value), decimals(unit), way), unit)
}

/// A figure of a document in a unit, as fine as anybody types one.
pub fn fine(unit: Unit, value: f64) -> String {
    with_unit(&bare(unit.from_document(value), 3, Rounding::Up), unit)
}

/// A range in a unit, its ends rounded inward, so that what is printed is permitted.
pub fn permitted(unit: Unit, min: f64, max: f64) -> String {
    let part = |v: f64, way| bare(unit.from_document(v), decimals(unit), way);
    let (min, max) = (part(min, Rounding::Up), with_unit(&part(max, Rounding::Down), unit));
    fill(words().card.range, &[("min", &min), ("max", &max)])
}

/// The kind of figure at a place; mast sections as a whole stand for their weight.
pub fn quantity_of(place: Place) -> Quantity {
    place.field.row().quantity.unwrap_or(Quantity::Mass)
}

/// A bare range, its ends rounded outward.
pub fn range(lo: f64, hi: f64, decimals: u8) -> String {
    let (a, b) = (bare(lo, decimals, Rounding::Down), bare(hi, decimals, Rounding::Up));
    if a == b { a } else { fill(words().card.from_to, &[("a", &a), ("b", &b)]) }
}

/// A figure with its tolerance, rounded up; with both its ends where they are not alike.
pub fn tolerance(range: Range, quantity: Quantity, print: Printer) -> String {
    let (lo, nominal, hi) = (range.lo.get(), range.nominal.get(), range.hi.get());
    let unit = quantity.unit(print.0);
    let places = decimals(unit);
    let part = |v: f64, way| bare(unit.from_document(v), places, way);
    let value = part(nominal, Rounding::Nearest);
    let (below, above) = (nominal - lo, hi - nominal);
    // Alike to what is printed.
    let alike = part(below, Rounding::Up) == part(above, Rounding::Up);
    let w = &words().load;
    if alike {
        let by = with_unit(&part(below.max(above), Rounding::Up), unit);
        return fill(w.give_or_take, &[("value", &value), ("by", &by)]);
    }
    let (a, b) = (part(lo, Rounding::Down), part(hi, Rounding::Up));
    fill(w.in_range, &[("value", &with_unit(&value, unit)), ("a", &a), ("b", &b)])
}

/// A slope (a tangent) in percent.
pub fn slope(tangent: f64, way: Rounding) -> String {
    format!("{}\u{a0}%", bare(100.0 * tangent, 1, way))
}

/// A share in whole percent, rounded up; what exceeds the whole is never printed as 100.
pub fn share(part: f64) -> String {
    format!("{}\u{a0}%", number(100.0 * part, 0, Rounding::Up))
}

/// An angle in degrees.
pub fn angle(degrees: f64, way: Rounding) -> String {
    with_unit(&bare(degrees, 1, way), Unit::Degree)
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::place::Field;

    #[test]
    fn digits_in_threes_and_a_true_minus() {
        assert_eq!(number(1580.0, 0, Rounding::Nearest), "1\u{202f}580");
        assert_eq!(number(1_234_567.0, 0, Rounding::Nearest), "1\u{202f}234\u{202f}567");
        assert_eq!(number(-0.04, 1, Rounding::Down), "\u{2212}0.1");
        assert_eq!(number(580.0, 0, Rounding::Nearest), "580");
    }

    #[test]
    fn printed_to_the_cautious_side() {
        let metric = Printer(System::Metric);
        assert_eq!(metric.mass(1579.9, Rounding::Down), "1\u{202f}579\u{a0}kg");
        assert_eq!(metric.mass(1050.01, Rounding::Up), "1\u{202f}051\u{a0}kg");
        assert_eq!(slope(0.0396, Rounding::Down), "3.9\u{a0}%");
        assert_eq!(slope(0.04, Rounding::Up), "4\u{a0}%");
        assert_eq!(share(1.0004), "101\u{a0}%");
        assert_eq!(Printer(System::Us).mass(1580.0, Rounding::Down), "3\u{202f}483\u{a0}lb");
        assert_eq!(metric.height(3.2), "3.20\u{a0}m");
    }

    #[test]
    fn a_printed_permitted_range_is_permitted() {
        let us = Printer(System::Us);
        for &field in Field::NUMBERS {
            let row = field.row();
            let quantity = quantity_of(field.into());
            for system in [System::Metric, System::Us] {
                assert!(!Printer(system).permitted(quantity, row.min, row.max).is_empty());
            }
        }
        // 0.8 m is 31.496 in: 31.5 is printed, not 31.4.
        assert_eq!(us.permitted(Quantity::Length, 0.8, 4.0), "31.5 to 157.4\u{a0}in");
        assert_eq!(us.taken(Field::HeelGap.into(), 0.0, 0.05), "0\u{a0}in to 2\u{a0}in");
        assert_eq!(Printer(System::Metric).taken(Field::MastGive.into(), 2.0, 2.0), "2\u{b0}");
    }
}
