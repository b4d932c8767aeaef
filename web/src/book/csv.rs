//! Tables on their way out and in: the file, and what is wrong in it, in words.

use super::ui::button;
use crate::files::hand_out;
use crate::words::{fill, words};
use gloo::file::callbacks::FileReader;
use standfast_core::number::show;
use standfast_core::table::{BYTE_ORDER_MARK, Fault, MOST_BYTES, Wrong};
use yew::prelude::*;

/// The most that is shown of what is wrong.
const MOST_SHOWN: usize = 20;

/// Hands out a table.
pub fn save(table: &str, name: &str) {
    hand_out(&format!("{BYTE_ORDER_MARK}{table}"), "text/csv;charset=utf-8", name);
}

/// A file that was chosen: its name, and what is in it or why that cannot be had.
pub type Chosen = (String, Result<String, Vec<Wrong>>);

#[derive(Properties, PartialEq)]
pub struct OpenTableProps {
    pub label: &'static str,
    pub test: &'static str,
    pub chosen: Callback<Chosen>,
}

/// The button that opens a table.
#[component]
pub fn OpenTable(props: &OpenTableProps) -> Html {
    let reading = use_mut_ref(|| None::<FileReader>);
    let chosen = props.chosen.clone();
    let onchange = Callback::from(move |event: Event| {
        let input: web_sys::HtmlInputElement = event.target_unchecked_into();
        let Some(file) = input.files().and_then(|list| list.get(0)) else { return };
        let file = gloo::file::File::from(file);
        let (chosen, name) = (chosen.clone(), file.name());
        let whole = |fault| vec![Wrong { row: 1, column: None, fault }];
        if file.size() > MOST_BYTES as u64 {
            chosen.emit((name, Err(whole(Fault::TooLarge { most: MOST_BYTES }))));
            input.set_value("");
            return;
        }
        let reader = gloo::file::callbacks::read_as_text(&file, move |text| {
            chosen.emit((name, text.map_err(|_| Vec::new())));
            // The same file may be chosen again, mended.
            input.set_value("");
        });
        *reading.borrow_mut() = Some(reader);
    });
    html! {
        <label class="button">
            { props.label }
            <input type="file" accept=".csv,.tsv,.txt,text/csv,text/plain" data-testid={props.test} {onchange} />
        </label>
    }
}

/// A file of which nothing was taken, and why.
pub fn refused(name: &str, wrongs: &[Wrong], close: Callback<MouseEvent>) -> Html {
    let w = &words().tables;
    let more = wrongs.len().saturating_sub(MOST_SHOWN);
    html! {
        <div class="notice" role="alert" data-testid="table-refused">
            <p>{ fill(w.refused, &[("name", name)]) }</p>
            <ul>
                if wrongs.is_empty() {
                    <li>{ w.not_read }</li>
                }
                { for wrongs.iter().take(MOST_SHOWN).map(|wrong| html! { <li>{ message(wrong) }</li> }) }
                if more > 0 {
                    <li>{ w.more.of(more) }</li>
                }
            </ul>
            <div class="buttons">{ button(w.close, "table-refused-close", close) }</div>
        </div>
    }
}

/// One thing that is wrong, with its place.
pub fn message(wrong: &Wrong) -> String {
    let w = &words().tables;
    let (row, fault) = (wrong.row.to_string(), fault(&wrong.fault));
    let mut values = vec![("row", row.as_str()), ("fault", fault.as_str())];
    let text = match &wrong.column {
        None => w.in_row,
        Some(column) => {
            values.push(("letters", &column.letters));
            values.push(("column", &column.name));
            if column.name.is_empty() { w.in_cell } else { w.in_named }
        }
    };
    fill(text, &values)
}

/// Several words, as a choice.
fn choice(list: &[&str]) -> String {
    match list {
        [] => String::new(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{}{}{last}", first.join(", "), words().tables.or),
    }
}

fn fault(fault: &Fault) -> String {
    let w = &words().tables;
    let most = |text: &str, most: &usize| fill(text, &[("most", &most.to_string())]);
    let other = |text: &str, row: &usize| fill(text, &[("other", &row.to_string())]);
    let quoted = |text: &str, cell: &String| fill(text, &[("text", cell)]);
    match fault {
        Fault::Empty => w.empty.to_owned(),
        Fault::TooLarge { most: n } => most(w.too_large, n),
        Fault::TooManyRows { most: n } => most(w.too_many_rows, n),
        Fault::TooManyColumns { most: n } => most(w.too_many_columns, n),
        Fault::TooLong { most: n } => most(w.too_long, n),
        Fault::QuoteOpen => w.quote_open.to_owned(),
        Fault::BehindQuote => w.behind_quote.to_owned(),
        Fault::NotUtf8 => w.not_utf8.to_owned(),
        Fault::Cells { found, names } => fill(w.cells, &[("found", &found.to_string()), ("names", &names.to_string())]),
        Fault::NoColumn { name, units: [] } => fill(w.no_column, &[("name", name)]),
        Fault::NoColumn { name, units } => {
            fill(w.no_column_unit, &[("name", name), ("unit", units[0]), ("units", &choice(units))])
        }
        Fault::UnknownColumn => w.unknown_column.to_owned(),
        Fault::ColumnTwice => w.column_twice.to_owned(),
        Fault::NoUnit { units } => fill(w.no_unit, &[("units", &choice(units))]),
        Fault::OtherUnit { units } => fill(w.other_unit, &[("units", &choice(units))]),
        Fault::Needed => w.needed.to_owned(),
        Fault::Together { columns } => fill(w.together, &[("columns", &columns.join(", "))]),
        Fault::NotANumber { text } => quoted(w.not_a_number, text),
        Fault::Ambiguous { text } => quoted(w.ambiguous, text),
        Fault::Within { text, min, max, unit } => {
            let [min, max] = [min, max].map(|v| show(v.get(), 3));
            fill(w.within, &[("text", text), ("min", &min), ("max", &max), ("unit", unit)])
        }
        Fault::OtherWord { text, words } => fill(w.other_word, &[("text", text), ("words", &choice(words))]),
        Fault::NotADay { text } => quoted(w.not_a_day, text),
        Fault::Disagrees { row } => other(w.disagrees, row),
        Fault::Twice { row } => other(w.twice, row),
        Fault::Falls { row } => other(w.falls, row),
        Fault::TooManyPlateRows { most: n } => most(w.too_many_plate_rows, n),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::scalar::Scalar;
    use standfast_core::table::{loads_from_csv, plates_from_csv};

    #[test]
    fn what_is_wrong_is_said_with_row_column_and_what_to_do() {
        let said = |text: &str| {
            let wrongs = loads_from_csv(text).expect_err("something is wrong");
            wrongs.iter().map(message).collect::<Vec<_>>()
        };
        assert_eq!(
            said("name,weight kg,length mm,width mm,height\nA,900,1200,800,900"),
            [
                "Row 1, column E \u{201c}height\u{201d}: the unit is missing. Write it behind the name: m, cm, mm, in or ft."
            ]
        );
        let text = "name;weight kg;length mm;width mm;height mm\n\nA;\"1,580\";1200;800;900";
        assert_eq!(
            said(text),
            [
                "Row 3, column B \u{201c}weight kg\u{201d}: \u{201c}1,580\u{201d} may be thousands or decimals. Write it without \
              marks between thousands."
            ]
        );
        assert_eq!(
            said("name;length mm;width mm;height mm\nA;1;1;1"),
            [
                "Row 1: there is no column \u{201c}weight\u{201d}. Name it with its unit, as \u{201c}weight kg\u{201d} (kg, t or lb)."
            ]
        );
    }

    /// Whatever is wrong is said in words: no gap left open.
    #[test]
    fn every_fault_has_a_sentence() {
        let text = "x".to_owned();
        let c = Scalar::computed;
        let all = [
            Fault::Empty,
            Fault::TooLarge { most: 1 },
            Fault::TooManyRows { most: 1 },
            Fault::TooManyColumns { most: 1 },
            Fault::TooLong { most: 1 },
            Fault::QuoteOpen,
            Fault::BehindQuote,
            Fault::NotUtf8,
            Fault::Cells { found: 1, names: 2 },
            Fault::NoColumn { name: "name", units: &[] },
            Fault::NoColumn { name: "weight", units: &["kg"] },
            Fault::UnknownColumn,
            Fault::ColumnTwice,
            Fault::NoUnit { units: &["kg", "lb"] },
            Fault::OtherUnit { units: &["kg"] },
            Fault::Needed,
            Fault::Together { columns: &["a", "b"] },
            Fault::NotANumber { text: text.clone() },
            Fault::Ambiguous { text: text.clone() },
            Fault::Within { text: text.clone(), min: c(1.0), max: c(2.0), unit: "kg" },
            Fault::OtherWord { text: text.clone(), words: &["yes", "no"] },
            Fault::NotADay { text },
            Fault::Disagrees { row: 3 },
            Fault::Twice { row: 3 },
            Fault::Falls { row: 3 },
            Fault::TooManyPlateRows { most: 40 },
        ];
        for one in all {
            let said = fault(&one);
            assert!(said.ends_with(['.', ',']) && !said.contains(['{', '}', '_']), "{one:?}: {said}");
        }
        assert!(plates_from_csv("").is_err_and(|w| message(&w[0]).starts_with("Row 1: ")));
    }
}
