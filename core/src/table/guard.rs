//! Texts that a spreadsheet would take for a formula.
//!
//! An apostrophe goes before what would begin a cell with `=`, `+`, `-` or `@`, their full-width forms, a
//! tab or a line end; also behind quotes, and behind each separator or line end within the text, for a
//! spreadsheet set to another separator begins a cell there. Where one must go is the same with it as
//! without, so that it can be taken off again and the text is what it was.

/// What begins a formula.
fn begins_formula(c: char) -> bool {
    matches!(c, '=' | '+' | '-' | '@' | '\u{ff1d}' | '\u{ff0b}' | '\u{ff0d}' | '\u{ff20}')
}

/// What some spreadsheet begins another cell behind.
fn separates(c: char) -> bool {
    matches!(c, ',' | ';' | '\t' | '\r' | '\n')
}

/// What does not keep a formula from being one.
fn is_passed_over(c: char) -> bool {
    matches!(c, '"' | '\'' | '\u{feff}')
}

/// Whether a piece of a text, with what separates it from the next, must not begin a cell as it is.
fn is_risky(piece: &str, first: bool) -> bool {
    let rest = piece.trim_start_matches(|c| is_passed_over(c) || (first && c == ' '));
    rest.starts_with(begins_formula) || (first && rest.starts_with(['\t', '\r', '\n']))
}

/// The text as it may stand in a cell.
///
/// ```
/// use standfast_core::table::guard::{guarded, restored};
/// assert_eq!(guarded("=1+1"), "'=1+1");
/// assert_eq!(guarded("Kiln door"), "Kiln door");
/// assert_eq!(restored("'=1+1"), "=1+1");
/// ```
pub fn guarded(text: &str) -> String {
    pieces(text, |piece, first| (if is_risky(piece, first) { "'" } else { "" }, piece))
}

/// The text that stands in a cell.
pub fn restored(cell: &str) -> String {
    pieces(cell, |piece, first| match piece.strip_prefix('\'') {
        Some(rest) if is_risky(rest, first) => ("", rest),
        _ => ("", piece),
    })
}

fn pieces(text: &str, each: impl Fn(&str, bool) -> (&str, &str)) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    for (k, piece) in text.split_inclusive(separates).enumerate() {
        let (before, piece) = each(piece, k == 0);
        out.push_str(before);
        out.push_str(piece);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_begins_like_a_formula_gets_an_apostrophe_and_loses_it_again() {
        for (text, cell) in [
            ("=1+1", "'=1+1"),
            ("+49 crates", "'+49 crates"),
            ("-5", "'-5"),
            ("@sum", "'@sum"),
            ("\tx", "'\tx"),
            ("\rx", "'\rx"),
            ("\nx", "'\nx"),
            ("\"=1", "'\"=1"),
            ("\"\"@x", "'\"\"@x"),
            (" =1", "' =1"),
            ("  \t", "'  \t"),
            ("\u{ff1d}1", "'\u{ff1d}1"),
            ("\u{feff}=1", "'\u{feff}=1"),
            // Cells to a spreadsheet with another separator.
            ("a;=1", "a;'=1"),
            ("a,\"-1", "a,'\"-1"),
            ("a\n+1", "a\n'+1"),
            ("a\t@x;=y", "a\t'@x;'=y"),
            // An apostrophe of the text's own.
            ("'=1", "''=1"),
            ("''-x", "'''-x"),
            ("'\t", "''\t"),
            // None of these.
            ("", ""),
            ("'", "'"),
            ("'tis", "'tis"),
            ("a=1", "a=1"),
            ("3 - 4", "3 - 4"),
            ("Store, -5 at night", "Store, -5 at night"),
            ("\u{2212}5", "\u{2212}5"),
        ] {
            assert_eq!(guarded(text), cell, "{text:?}");
            assert_eq!(restored(cell), text, "{text:?}");
        }
    }

    /// All texts of up to six of the letters that matter.
    #[test]
    fn every_text_comes_back() {
        let letters = ['\'', '"', '=', ';', '\t', ' ', 'a'];
        let mut texts = vec![String::new()];
        for _ in 0..6 {
            let longer: Vec<_> = texts.iter().flat_map(|t| letters.map(|c| format!("{t}{c}"))).collect();
            for text in &longer {
                let cell = guarded(text);
                assert_eq!(restored(&cell), *text, "{text:?}");
                assert!(!cell.starts_with(['=', '\t']) && !cell.contains(";="), "{text:?}");
            }
            texts = longer;
        }
    }
}
