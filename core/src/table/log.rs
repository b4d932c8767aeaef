//! The log of checks.

use super::write::Writer;
use crate::book::{Book, CheckRecord};
use crate::report;
use crate::units::Quantity::{Length, Mass};
use crate::units::Rounding;
use crate::units::System;
use crate::verdict::State;

/// The log, oldest first: what was said then, not what would be said today. `used_pct` is rounded up,
/// the verdict `go`, `hold`, `no_go`, or empty where something was missing. The weight is the one entered;
/// where it was found from parts or scales, that.
///
/// ```
/// use standfast_core::{book::Book, table::csv_of_log, units::System};
/// assert!(csv_of_log(&Book::default(), System::Us).starts_with("when,who,truck,serial,set_up,load,weight_lb,"));
/// ```
pub fn csv_of_log(book: &Book, system: System) -> String {
    let columns = [
        ("when", None),
        ("who", None),
        ("truck", None),
        ("serial", None),
        ("set up", None),
        ("load", None),
        ("weight", Some(Mass)),
        ("lift height", Some(Length)),
        ("verdict", None),
        ("reason", None),
        ("used pct", None),
        ("program version", None),
        ("note", None),
    ];
    let mut table = Writer::new(columns, system);
    for record in &book.log {
        let check = &record.check;
        table.text(&record.at);
        table.text(&record.who);
        table.text(&check.truck.name);
        table.text(&check.truck.serial);
        table.text(set_up(book, record));
        table.text(&check.load.name);
        table.figure(weight(record));
        table.figure(check.lift.height_m);
        table.word(record.outcome.verdict.map_or("", word));
        table.text(&record.outcome.reason);
        table.plain(record.outcome.used.map(|used| 100.0 * used), 1, Rounding::Up);
        table.text(&record.program);
        table.text(&check.note);
    }
    table.done()
}

/// What the set-up is called that a check was made for.
fn set_up<'b>(book: &'b Book, record: &CheckRecord) -> &'b str {
    let of = record.of.as_ref();
    let set_ups = book.trucks.iter().flat_map(|t| t.set_ups.iter().map(move |s| (t, s)));
    let mut same = set_ups.filter(|(t, s)| of.is_some_and(|of| t.id == of.truck && s.id == of.set_up));
    same.next().map_or("", |(_, s)| &s.name)
}

/// The load's weight, kg.
fn weight(record: &CheckRecord) -> Option<f64> {
    let entered = record.check.load.mass_kg;
    entered.or_else(|| report::find_load(&record.check).load.map(|l| l.mass.nominal.get()))
}

/// A state as a table has it.
pub(super) const fn word(state: State) -> &'static str {
    match state {
        State::Go => "go",
        State::Hold => "hold",
        State::NoGo => "no_go",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::{Of, Outcome, SetUp, TruckRecord};
    use crate::example;

    #[test]
    fn a_row_says_what_was_said_then() {
        let of = Of { truck: "t".to_owned(), set_up: "s".to_owned() };
        let set_up = SetUp { id: "s".to_owned(), name: "Forks".to_owned(), ..SetUp::default() };
        let truck = TruckRecord { id: "t".to_owned(), set_ups: vec![set_up], ..TruckRecord::default() };
        let record = |check: &str, of| CheckRecord {
            id: "c".to_owned(),
            at: "2026-05-14T09:30:00+02:00".to_owned(),
            who: "=HYPERLINK(\"x\")".to_owned(),
            program: "0.1.0".to_owned(),
            of,
            check: example::document(check),
            outcome: Outcome {
                verdict: Some(State::NoGo),
                reason: "Too heavy, by the plate".to_owned(),
                used: Some(0.80101),
            },
        };
        let log = vec![record(example::THREE_WHEEL, Some(of)), record(example::ODD_LOAD, None)];
        let book = Book { trucks: vec![truck], log, ..Book::default() };
        let table = csv_of_log(&book, System::Metric);
        let rows: Vec<_> = table.lines().collect();
        assert_eq!(
            rows[0],
            "when,who,truck,serial,set_up,load,weight_kg,lift_height_m,verdict,reason,used_pct,program_version,note"
        );
        let start =
            "2026-05-14T09:30:00+02:00,\"'=HYPERLINK(\"\"x\"\")\",\"Copperbeck 3 (invented, 1.8 t, three wheels)\",";
        for row in &rows[1..] {
            assert!(row.starts_with(start) && row.contains(",no_go,\"Too heavy, by the plate\",80.2,0.1.0,"), "{row}");
        }
        assert!(rows[1].contains(",Forks,") && rows.len() == 3);
        // Built from parts: what they weigh together.
        let found = report::find_load(&book.log[1].check).load.expect("found").mass.nominal.get();
        assert!(rows[2].contains(&format!(",{found},")), "{found}: {}", rows[2]);
        assert!(csv_of_log(&book, System::Us).contains("weight_lb,lift_height_in"));
    }
}
