//! Reading a number as a person types it.

use crate::units::Unit;

/// Why a text is not a number we dare to use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotRead {
    /// Nothing typed.
    Empty,
    /// Not a plain decimal number.
    NotANumber,
    /// `1,200` and `1.200.000`: a thousand and more, or one and a bit? A factor of a thousand apart.
    Ambiguous,
}

/// A plain decimal number: digits with one decimal point or comma, a sign before it, blanks
/// (and thin or no-break blanks, and apostrophes) between groups of three digits.
///
/// A lone comma or point with exactly three digits behind it and one to three before (`1,200`,
/// `1.800`) is refused for mm, kg and lb, where half the world writes thousands that way; in
/// inches, degrees and speeds it can only be a decimal.
///
/// # Errors
/// [`NotRead`] says why; the caller keeps the text as typed.
///
/// ```
/// use standfast_core::{number::{read, NotRead}, units::Unit};
/// assert_eq!(read("1 350", Unit::Millimetre), Ok(1350.0));
/// assert_eq!(read("2,5", Unit::Degree), Ok(2.5));
/// assert_eq!(read("1,200", Unit::Kilogram), Err(NotRead::Ambiguous));
/// assert_eq!(read("12.125", Unit::Inch), Ok(12.125));
/// assert_eq!(read("12 kg", Unit::Kilogram), Err(NotRead::NotANumber));
/// ```
pub fn read(text: &str, unit: Unit) -> Result<f64, NotRead> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NotRead::Empty);
    }
    let text = text.replace('\u{2212}', "-");
    let (sign, body) = match text.strip_prefix('-') {
        Some(rest) => ("-", rest),
        None => ("", text.strip_prefix('+').unwrap_or(&text)),
    };
    let marks: Vec<char> = body.chars().filter(|c| matches!(c, '.' | ',')).collect();
    let (whole, fraction) = match marks.as_slice() {
        [] => (body, ""),
        [_] => body.split_once(['.', ',']).unwrap_or((body, "")),
        _ => {
            let digits = body.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | ','));
            return Err(if digits { NotRead::Ambiguous } else { NotRead::NotANumber });
        }
    };
    let whole = ungroup(whole).ok_or(NotRead::NotANumber)?;
    if !fraction.chars().all(|c| c.is_ascii_digit()) || (whole.is_empty() && fraction.is_empty()) {
        return Err(NotRead::NotANumber);
    }
    let thousands_likely = matches!(unit, Unit::Millimetre | Unit::Kilogram | Unit::Pound);
    let like_thousands = fraction.len() == 3 && (1..=3).contains(&whole.len()) && !whole.starts_with('0');
    if thousands_likely && like_thousands {
        return Err(NotRead::Ambiguous);
    }
    let value: f64 = format!(
        "{sign}{}.{}",
        if whole.is_empty() { "0" } else { &whole },
        if fraction.is_empty() { "0" } else { fraction }
    )
    .parse()
    .map_err(|_| NotRead::NotANumber)?;
    if value.is_finite() { Ok(value) } else { Err(NotRead::NotANumber) }
}

/// The digits without their grouping, or `None` where the groups are not of three digits.
fn ungroup(whole: &str) -> Option<String> {
    let is_gap = |c: char| matches!(c, ' ' | '\u{a0}' | '\u{2009}' | '\u{202f}' | '\'' | '\u{2019}');
    let groups: Vec<&str> = whole.split(is_gap).collect();
    let digits = groups.iter().all(|g| g.chars().all(|c| c.is_ascii_digit()));
    let grouped = groups.len() == 1 || ((1..=3).contains(&groups[0].len()) && groups[1..].iter().all(|g| g.len() == 3));
    (digits && grouped).then(|| groups.concat())
}

/// A number as it is shown in an entry: no more decimals than asked for, no trailing zeros.
///
/// ```
/// assert_eq!(standfast_core::number::show(1350.0, 3), "1350");
/// assert_eq!(standfast_core::number::show(53.14960629921, 3), "53.15");
/// ```
pub fn show(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text };
    if text == "-0" { "0".to_owned() } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn people_write_numbers_in_many_ways() {
        for (text, value) in [
            ("0", 0.0),
            (" 12 ", 12.0),
            ("1.", 1.0),
            (".5", 0.5),
            (",5", 0.5),
            ("-2,25", -2.25),
            ("+3", 3.0),
            ("\u{2212}4", -4.0),
            ("1 350,5", 1350.5),
            ("12\u{a0}345", 12345.0),
            ("1'800", 1800.0),
            ("1.25", 1.25),
            ("0,250", 0.25),
            ("1,2000", 1.2),
            ("007", 7.0),
        ] {
            assert_eq!(read(text, Unit::Kilogram), Ok(value), "{text}");
        }
    }

    #[test]
    fn what_is_not_a_number_is_refused() {
        for text in ["abc", "1 2", "1e3", "inf", "NaN", "--1", "1-", "12kg", ".", ",", "-", "1 35", "0x10", "\u{661}"] {
            assert_eq!(read(text, Unit::Kilogram), Err(NotRead::NotANumber), "{text}");
        }
        for text in ["1,200", "1.800", "12,500", "1.200,5", "1,200.5", "1.2.3"] {
            assert_eq!(read(text, Unit::Kilogram), Err(NotRead::Ambiguous), "{text}");
        }
        assert_eq!(read("  ", Unit::Degree), Err(NotRead::Empty));
        assert_eq!(read(&"9".repeat(400), Unit::Inch), Err(NotRead::NotANumber));
    }

    #[test]
    fn shown_and_read_back() {
        for value in [0.0, 1.0, -0.25, 1234.567, 0.001] {
            assert_eq!(read(&show(value, 3), Unit::Inch), Ok(value));
        }
        assert_eq!(show(-0.0001, 2), "0");
    }
}
