//! A day's loads with their verdicts.

use super::log::word;
use super::write::Writer;
use crate::day::Line;
use crate::units::Quantity::{Length, Mass};
use crate::units::Rounding;
use crate::units::System;

/// A row for each load: the reason is given with it, in words. Allowed is rounded down, used up.
pub fn csv_of_day<'l>(lines: impl IntoIterator<Item = (&'l Line, &'l str)>, truck: &str, system: System) -> String {
    let columns = [
        ("truck", None),
        ("load", None),
        ("weight", Some(Mass)),
        ("load centre", Some(Length)),
        ("plate allows", Some(Mass)),
        ("verdict", None),
        ("reason", None),
        ("used pct", None),
    ];
    let mut table = Writer::new(columns, system);
    for (line, reason) in lines {
        let answer = line.answer.as_ref().ok();
        table.text(truck);
        table.text(&line.name);
        table.rounded(line.mass.map(|m| m.get()), 1, Rounding::Up);
        table.rounded(answer.map(|a| a.load_centre.get()), 3, Rounding::Up);
        table.rounded(answer.and_then(|a| a.allowed).map(|kg| kg.get()), 0, Rounding::Down);
        table.word(answer.map_or("", |a| word(a.state)));
        table.text(reason);
        table.plain(answer.map(|a| 100.0 * a.used.get()), 1, Rounding::Up);
    }
    table.done()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::LoadRecord;
    use crate::day;
    use crate::example;

    #[test]
    fn a_load_with_a_problem_has_a_row_without_a_verdict() {
        let document = example::document(example::THREE_WHEEL);
        let own = LoadRecord { load: document.load.clone(), ..LoadRecord::default() };
        let mut loads = vec![own.clone(), own];
        loads[1].load.name = "=x".to_owned();
        loads[1].load.height_m = None;
        let lines = day::check(&document, &loads);
        let table = csv_of_day(lines.iter().zip(["Why", "-missing"]), "T", System::Us);
        let rows: Vec<_> = table.lines().collect();
        assert_eq!(rows[0], "truck,load,weight_lb,load_centre_in,plate_allows_lb,verdict,reason,used_pct");
        assert!(rows[1].contains(",Why,") && rows[1].ends_with(|c: char| c.is_ascii_digit()), "{}", rows[1]);
        assert!(rows[2].starts_with("T,'=x,") && rows[2].ends_with(",,,,'-missing,"), "{}", rows[2]);
    }
}
