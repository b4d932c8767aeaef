//! Another library, the `csv` crate, reads what we write and writes what we read. The core uses none: it
//! must refuse what that one, by its purpose, mends.

use crate::{books, loads, names, texts};
use csv::{QuoteStyle, ReaderBuilder, StringRecord, Terminator, WriterBuilder};
use proptest::prelude::*;
use standfast_core::book::{Book, CheckRecord, Outcome};
use standfast_core::document::Document;
use standfast_core::table::guard::restored;
use standfast_core::table::{csv_of_loads, csv_of_log, csv_of_trucks, loads_from_csv, plates_from_csv};
use standfast_core::units::System;
use standfast_core::verdict::State;

/// A table by the other library: the names, and the rows.
fn read(text: &str) -> (StringRecord, Vec<StringRecord>) {
    let mut reader = ReaderBuilder::new().from_reader(text.as_bytes());
    let names = reader.headers().expect("names").clone();
    (names, reader.records().map(|r| r.expect("as many cells as names")).collect())
}

fn column(names: &StringRecord, name: &str) -> usize {
    names.iter().position(|n| n == name).unwrap_or_else(|| panic!("no {name} in {names:?}"))
}

/// Nothing that a spreadsheet takes for a formula, whatever separator it is set to.
fn has_formula(text: &str, cells: &[&str]) -> bool {
    let is_number = |cell: &str| cell.parse::<f64>().is_ok();
    let formula = |cell: &str| cell.starts_with(['=', '+', '-', '@', '\t', '\r', '\n']) && !is_number(cell);
    let begins = |cell: &str| formula(cell.trim_start_matches('"'));
    let as_another = text.split([';', '\t', '\n', '\r', ',']).any(|cell| begins(cell) && !cell.is_empty());
    cells.iter().any(|cell| begins(cell)) || as_another
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn plates_are_read_by_another_library_and_by_ours(book in books()) {
        let table = csv_of_trucks(&book, System::Metric);
        let (names, rows) = read(&table);
        let set_ups = book.trucks.iter().flat_map(|t| t.set_ups.iter().map(move |s| (t, s)));
        let mut expected = Vec::new();
        for (truck, set_up) in set_ups {
            for row in &set_up.truck.plate.as_ref().expect("a plate").rows {
                expected.push((truck, set_up, row));
            }
        }
        prop_assert_eq!(rows.len(), expected.len());
        for (cells, (truck, set_up, row)) in rows.iter().zip(&expected) {
            let text = |name: &str| restored(&cells[column(&names, name)]);
            let figure = |name: &str| cells[column(&names, name)].parse::<f64>().ok();
            prop_assert_eq!(text("truck"), truck.name.as_str());
            prop_assert_eq!(text("set_up"), set_up.name.as_str());
            prop_assert_eq!(text("serial"), set_up.truck.serial.as_str());
            prop_assert_eq!(figure("height_m"), row.height_m);
            prop_assert_eq!(figure("capacity_kg"), row.capacity_kg);
            prop_assert!(!has_formula(&table, &cells.iter().collect::<Vec<_>>()), "{:?}", cells);
        }
        if rows.is_empty() {
            return Ok(());
        }
        let plates = plates_from_csv(&table);
        let plates = plates.map_err(|w| TestCaseError::fail(format!("{w:?}\n{table}")))?;
        let ours: Vec<_> = plates.iter().map(|p| (&p.truck, &p.set_up, &p.plate)).collect();
        let was = book.trucks.iter().flat_map(|t| t.set_ups.iter().map(move |s| (&t.name, &s.name, s.truck.plate.as_ref())));
        prop_assert_eq!(ours, was.filter_map(|(t, s, p)| Some((t, s, p?))).collect::<Vec<_>>());
    }

    #[test]
    fn loads_are_read_by_another_library_and_by_ours(loads in loads()) {
        let table = csv_of_loads(&loads, System::Metric);
        let (names, rows) = read(&table);
        for (cells, load) in rows.iter().zip(&loads) {
            prop_assert_eq!(restored(&cells[column(&names, "name")]), load.name.as_str());
            prop_assert_eq!(cells[column(&names, "weight_kg")].parse::<f64>().ok(), load.mass_kg);
            prop_assert_eq!(cells[column(&names, "centre_left_m")].parse::<f64>().ok(), load.cg_left_m);
            prop_assert!(!has_formula(&table, &cells.iter().collect::<Vec<_>>()), "{:?}", cells);
        }
        prop_assert_eq!(loads_from_csv(&table), Ok(loads.clone()));
        // In inches and pounds to far less than anybody measures.
        let us = loads_from_csv(&csv_of_loads(&loads, System::Us));
        let us = us.map_err(|w| TestCaseError::fail(format!("{w:?}")));
        for (a, b) in us.into_iter().flatten().zip(&loads) {
            prop_assert_eq!(&a.name, &b.name);
            let near = |a: Option<f64>, b: Option<f64>| a.zip(b).is_some_and(|(a, b)| (a - b).abs() < 1e-6);
            prop_assert!(near(a.mass_kg, b.mass_kg) && near(a.height_m, b.height_m));
        }
    }

    /// Any separator, line end and way to quote; names with anything in them but a formula, which only we guard.
    #[test]
    fn what_another_library_writes_is_read(
        loads in loads(),
        separator in prop::sample::select(b",;\t".to_vec()),
        style in prop::sample::select(vec![QuoteStyle::Necessary, QuoteStyle::Always, QuoteStyle::NonNumeric]),
        crlf in any::<bool>(),
        mark in any::<bool>(),
    ) {
        let end = if crlf { Terminator::CRLF } else { Terminator::Any(b'\n') };
        let mut writer =
            WriterBuilder::new().delimiter(separator).quote_style(style).terminator(end).from_writer(Vec::new());
        writer.write_record(["name", "weight (kg)", "length (mm)", "width (mm)", "height (mm)"]).expect("names");
        let whole = |metres: Option<f64>| format!("{:.4}", 1000.0 * metres.unwrap_or_default()).replace('.', ",");
        for load in &loads {
            let kg = format!("{:.4}", load.mass_kg.unwrap_or_default()).replace('.', ",");
            let sides = [load.length_m, load.width_m, load.height_m].map(whole);
            writer.write_record([&load.name, &kg, &sides[0], &sides[1], &sides[2]]).expect("a row");
        }
        let text = String::from_utf8(writer.into_inner().expect("written")).expect("UTF-8");
        let text = if mark { format!("\u{feff}{text}") } else { text };
        let read = loads_from_csv(&text).map_err(|w| TestCaseError::fail(format!("{w:?}\n{text}")))?;
        prop_assert_eq!(read.len(), loads.len());
        for (a, b) in read.iter().zip(&loads) {
            prop_assert_eq!(&a.name, &restored(&b.name));
            prop_assert!(a.mass_kg.zip(b.mass_kg).is_some_and(|(a, b)| (a - b).abs() < 1e-4));
            prop_assert!(a.width_m.zip(b.width_m).is_some_and(|(a, b)| (a - b).abs() < 1e-6));
        }
    }

    #[test]
    fn the_log_is_read_by_another_library(rows in prop::collection::vec((texts(), names(), texts(), 0.0..2.0), 0..6)) {
        let record = |(who, load, reason, used): &(String, String, String, f64)| {
            let mut check = Document::default();
            (check.load.name, check.load.mass_kg) = (load.clone(), Some(900.0));
            CheckRecord {
                id: String::new(),
                at: "2026-05-14T09:30:00+02:00".to_owned(),
                who: who.clone(),
                program: "0.1.0".to_owned(),
                of: None,
                check,
                outcome: Outcome { verdict: Some(State::Hold), reason: reason.clone(), used: Some(*used) },
            }
        };
        let book = Book { log: rows.iter().map(record).collect(), ..Book::default() };
        let table = csv_of_log(&book, System::Us);
        let (names, found) = read(&table);
        prop_assert_eq!(found.len(), rows.len());
        for (cells, (who, load, reason, used)) in found.iter().zip(&rows) {
            let text = |name: &str| restored(&cells[column(&names, name)]);
            prop_assert_eq!(&text("who"), who);
            prop_assert_eq!(&text("load"), load);
            prop_assert_eq!(&text("reason"), reason);
            prop_assert_eq!(text("verdict"), "hold");
            let shown: f64 = text("used_pct").parse().expect("a number");
            prop_assert!(shown >= 100.0 * used - 1e-6 && shown <= 100.0 * used + 0.1 + 1e-6);
            prop_assert!(!has_formula(&table, &cells.iter().collect::<Vec<_>>()), "{:?}", cells);
        }
    }
}
