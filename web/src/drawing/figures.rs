//! Figures as the drawings write them: unit beside the number, rounded to the cautious side.

use standfast_core::units::{GRAVITY, Quantity, Rounding, System, round};

/// Groups of three digits are parted by a narrow no-break blank, which no one takes for a decimal mark.
const GAP: char = '\u{202f}';
/// The minus sign proper.
const MINUS: char = '\u{2212}';

/// A number with so many decimals, rounded to the side asked for, digits in groups of three.
pub fn number(value: f64, decimals: u8, way: Rounding) -> String {
    let rounded = round(value, decimals, way);
    let plain = format!("{:.*}", usize::from(decimals), rounded.abs());
    let (whole, fraction) = plain.split_once('.').unwrap_or((&plain, ""));
    let mut text = String::new();
    if rounded < 0.0 {
        text.push(MINUS);
    }
    for (k, digit) in whole.chars().enumerate() {
        if k > 0 && (whole.len() - k).is_multiple_of(3) && whole.len() > 3 {
            text.push(GAP);
        }
        text.push(digit);
    }
    if !fraction.is_empty() {
        text.push('.');
        text.push_str(fraction);
    }
    text
}

/// A length in m as whole millimetres, or inches to a tenth.
pub fn length(metres: f64, system: System, way: Rounding) -> String {
    let unit = Quantity::Length.unit(system);
    format!("{} {}", number(unit.from_document(metres), length_decimals(system), way), unit.symbol())
}

/// A range of lengths in m, its ends rounded outward.
pub fn length_range(lo: f64, hi: f64, to: &str, system: System) -> String {
    let unit = Quantity::Length.unit(system);
    let part = |m: f64, way| number(unit.from_document(m), length_decimals(system), way);
    format!("{} {to} {} {}", part(lo, Rounding::Down), part(hi, Rounding::Up), unit.symbol())
}

/// A length in m as the drawings write it, in the unit they write it in.
pub fn rounded_length(metres: f64, system: System, way: Rounding) -> f64 {
    round(Quantity::Length.unit(system).from_document(metres), length_decimals(system), way)
}

const fn length_decimals(system: System) -> u8 {
    match system {
        System::Metric => 0,
        System::Us => 1,
    }
}

/// A mass in kg to the whole unit.
pub fn mass(kilograms: f64, system: System, way: Rounding) -> String {
    let unit = Quantity::Mass.unit(system);
    format!("{} {}", number(unit.from_document(kilograms), 0, way), unit.symbol())
}

/// What presses on the floor, N, as the mass that weighs as much, to ten units.
pub fn floor_load(newtons: f64, system: System, way: Rounding) -> String {
    let unit = Quantity::Mass.unit(system);
    let tens = round(unit.from_document(newtons / GRAVITY) / 10.0, 0, way);
    format!("{} {}", number(tens * 10.0, 0, Rounding::Nearest), unit.symbol())
}

/// An acceleration in m/s^2 to a hundredth, in ft/s^2 to a tenth.
pub fn acceleration(metric: f64, system: System, way: Rounding) -> String {
    let unit = Quantity::Acceleration.unit(system);
    let decimals = if system == System::Metric { 2 } else { 1 };
    format!("{} {}", number(unit.from_document(metric), decimals, way), unit.symbol())
}

/// An angle in degrees to a tenth.
pub fn angle(degrees: f64, way: Rounding) -> String {
    format!("{}\u{b0}", number(degrees, 1, way))
}

/// A ratio as percent to a tenth, without a needless `.0`.
pub fn percent(ratio: f64, way: Rounding) -> String {
    let text = number(ratio * 100.0, 1, way);
    format!("{}{GAP}%", text.strip_suffix(".0").unwrap_or(&text))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_stand_in_groups_of_three() {
        let show = |v| number(v, 0, Rounding::Nearest);
        assert_eq!(show(0.0), "0");
        assert_eq!(show(999.0), "999");
        assert_eq!(show(1234.0), "1\u{202f}234");
        assert_eq!(show(-1_234_567.0), "\u{2212}1\u{202f}234\u{202f}567");
        assert_eq!(number(12.34, 1, Rounding::Up), "12.4");
        assert_eq!(show(-0.2), "0");
    }

    #[test]
    fn lengths_never_gain_by_rounding() {
        assert_eq!(length(0.318_9, System::Metric, Rounding::Down), "318 mm");
        assert_eq!(length(-0.036_2, System::Metric, Rounding::Down), "\u{2212}37 mm");
        // 318.9 mm is 12.555 in.
        assert_eq!(length(0.318_9, System::Us, Rounding::Down), "12.5 in");
        assert_eq!(length(0.318_9, System::Us, Rounding::Up), "12.6 in");
    }

    /// Source: 1 lb = 0.453 592 37 kg and 9.806 65 m/s^2, both exact: 9 806.65 N is 1 000 kg or 2 204.6 lb.
    #[test]
    fn floor_loads_are_masses_to_ten() {
        assert_eq!(floor_load(9_806.65, System::Metric, Rounding::Up), "1\u{202f}000 kg");
        assert_eq!(floor_load(9_806.65, System::Us, Rounding::Up), "2\u{202f}210 lb");
        assert_eq!(floor_load(9_806.65, System::Us, Rounding::Down), "2\u{202f}200 lb");
        assert_eq!(floor_load(-98.0, System::Metric, Rounding::Down), "\u{2212}10 kg");
        assert_eq!(mass(1000.2, System::Metric, Rounding::Up), "1\u{202f}001 kg");
    }

    #[test]
    fn angles_and_ratios() {
        assert_eq!(angle(6.0, Rounding::Nearest), "6.0\u{b0}");
        assert_eq!(percent(0.029_9, Rounding::Down), "2.9\u{202f}%");
        assert_eq!(percent(0.04, Rounding::Nearest), "4\u{202f}%");
        assert_eq!(percent(1.000_1, Rounding::Up), "100.1\u{202f}%");
    }
}
