//! What is missing or wrong, in words: the value, the rule and the remedy.

mod load;

use crate::answer::is_of_tolerance;
use crate::entries::{Entries, tolerance_unit};
use crate::figures::{self, Printer, quantity_of};
use crate::sentences::name_of;
use crate::words::{fill, words};
use standfast_core::number::{self, NotRead};
use standfast_core::place::{Field, Place};
use standfast_core::problem::{Problem, Rule};
use standfast_core::units::{Rounding, System, Unit};

/// The message beside a field.
pub fn message(problem: &Problem, entries: &Entries, system: System) -> String {
    let (w, print, place) = (&words().problem, Printer(system), problem.place);
    let row = place.field.row();
    let unit = entries.unit(place, system);
    let permitted = |min, max| match unit {
        Some(unit) => figures::permitted(unit, min, max),
        None => print.permitted(quantity_of(place), min, max),
    };
    let range = || permitted(row.min, row.max);
    let text = || entries.shown(place, system);
    let figure = |v: f64| match unit {
        Some(unit) => figures::figure(unit, v, Rounding::Nearest),
        None => print.at(place, v, Rounding::Nearest),
    };
    let value = || problem.value.map(|v| figure(v.get())).unwrap_or_else(text);
    let mass = |kg: f64| print.at(Field::Service.into(), kg, Rounding::Nearest);
    match &problem.rule {
        Rule::Required if place.field == Field::PlateRows => w.list_empty.to_owned(),
        Rule::Required if load::needs(place.field).is_some() => load::needs(place.field).unwrap_or_default().to_owned(),
        Rule::Required if row.quantity.is_none() => w.choose.to_owned(),
        Rule::Required => fill(w.needed, &[("range", &range())]),
        Rule::NotANumber => fill(w.not_a_number, &[("text", &text()), ("range", &range())]),
        Rule::Ambiguous => ambiguous(&text(), unit),
        Rule::NotFinite => fill(w.not_finite, &[("range", &range())]),
        Rule::Within { min, max } => {
            let range = permitted(min.get(), max.get());
            fill(w.within, &[("value", &value()), ("range", &range)])
        }
        Rule::NotMoreThan { limit, of } => {
            let limit = print.at(place, limit.get(), Rounding::Down);
            fill(w.not_more, &[("value", &value()), ("limit", &limit), ("of", &name_of(*of))])
        }
        Rule::NotLessThan { limit, of } => {
            let limit = print.at(place, limit.get(), Rounding::Up);
            fill(w.not_less, &[("value", &value()), ("limit", &limit), ("of", &name_of(*of))])
        }
        Rule::Together { with } => fill(w.together, &[("with", &name_of(*with))]),
        Rule::AxleSum { sum, total } => fill(w.axle_sum, &[("sum", &mass(sum.get())), ("total", &mass(total.get()))]),
        Rule::PartsWithin { parts, limit } => {
            fill(w.parts, &[("parts", &mass(parts.get())), ("limit", &mass(limit.get()))])
        }
        Rule::PlateFalls { row } => fill(w.plate_falls, &[("row", &(row + 1).to_string())]),
        Rule::PlateTwice { row } => fill(w.plate_twice, &[("row", &(row + 1).to_string())]),
        Rule::NotKnownSo { path } => fill(w.not_known_so, &[("path", path)]),
        Rule::ToleranceWithin { max } => tolerance(place, max.get(), entries, system),
        Rule::NotADay => fill(words().plate.not_a_day, &[("text", entries.plate_issued.trim())]),
        Rule::TooLong { most } if is_text(place.field) => {
            fill(words().plate.text_too_long, &[("most", &most.to_string())])
        }
        Rule::TooLong { most } => fill(w.too_long, &[("most", &most.to_string())]),
        rule => load::message(rule, problem, print).unwrap_or_default(),
    }
}

/// Whether a text is entered there.
fn is_text(field: Field) -> bool {
    matches!(field, Field::Serial | Field::TypeName | Field::PlateAttachment)
}

/// Of a tolerance: that its text is no number, or out of its range.
fn tolerance(place: Place, max: f64, entries: &Entries, system: System) -> String {
    let w = &words().problem;
    let unit = tolerance_unit(place, system);
    let range = unit.map(|unit| figures::permitted(unit, 0.0, max)).unwrap_or_default();
    let text = entries.tolerance_shown(place, system);
    let read = entries.own_tolerance(place).map(|typed| typed.read());
    let said = match read {
        Some(Err(NotRead::Ambiguous)) => ambiguous(&text, unit),
        Some(Err(_)) => fill(w.not_a_number, &[("text", &text), ("range", &range)]),
        _ => fill(w.tolerance_within, &[("text", &text), ("range", &range)]),
    };
    fill(words().known.problem, &[("problem", &said)])
}

/// What a problem is about, by name.
pub fn subject(problem: &Problem) -> String {
    let name = name_of(problem.place);
    if is_of_tolerance(problem) { fill(words().known.tolerance_of, &[("field", &name)]) } else { name }
}

/// For `1,050`: both ways to write it so that it is read one way only.
fn ambiguous(text: &str, unit: Option<Unit>) -> String {
    let w = &words().problem;
    let body = text.trim();
    let mut parts = body.split([',', '.']);
    if let (Some(before), Some(behind), None, Some(unit)) = (parts.next(), parts.next(), parts.next(), unit) {
        let whole = format!("{before}{behind}");
        let short = format!("{before}{}{}", words().decimal, behind.trim_end_matches('0'));
        let short = short.trim_end_matches(words().decimal).to_owned();
        // Three decimals that all count need a fourth to tell them from thousands.
        let decimal =
            if number::read(&short, unit).is_ok() { short } else { format!("{before}{}{behind}0", words().decimal) };
        if number::read(&whole, unit).is_ok() && number::read(&decimal, unit).is_ok() {
            return fill(w.ambiguous, &[("text", body), ("whole", &whole), ("decimal", &decimal)]);
        }
    }
    fill(w.ambiguous_marks, &[("text", body)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answer::Answer;
    use standfast_core::document::Wheels;
    use standfast_core::example;

    fn says(field: Field, text: &str, system: System) -> String {
        let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
        entries.enter(field.into(), text, system);
        let answer = Answer::of(&entries);
        let at = answer.problem(field.into()).or_else(|| answer.problems.first()).expect("a problem");
        message(at, &entries, system)
    }

    #[test]
    fn value_rule_and_remedy() {
        let metric = |field, text| says(field, text, System::Metric);
        assert!(metric(Field::LoadMass, "12 tons").contains("\u{201c}12 tons\u{201d} is not a number"));
        assert!(metric(Field::LoadMass, "1,050").contains("Write 1050, or 1.05 for"));
        assert!(metric(Field::LoadMass, "1.234").contains("Write 1234, or 1.2340 for"));
        assert!(metric(Field::LoadMass, "1.200,5").contains("one decimal mark"));
        assert!(metric(Field::LoadMass, "99000").contains("Enter 1 to 20\u{202f}000\u{a0}kg"));
        assert!(metric(Field::LiftHeight, "5000").contains("4\u{202f}700\u{a0}mm, the figure for"));
        assert!(metric(Field::LoadMass, "").contains("Still needed: 1 to"));
        assert!(metric(Field::SteerAxleLoad, "").contains("Front axle load"));
        assert!(metric(Field::SteerAxleLoad, "1700").contains("3\u{202f}260\u{a0}kg"));
        assert!(says(Field::Tread, "1", System::Us).contains("19.7 to 98.4\u{a0}in"));
    }

    #[test]
    fn no_message_leaves_a_gap() {
        let mut all = vec![Answer::of(&Entries::blank())];
        let mut four = Entries::from_document(&example::document(example::FOUR_WHEEL));
        four.wheels = Some(Wheels::Four);
        four.enter(Place::in_row(Field::PlateCapacity, 1), "2600", System::Metric);
        four.enter(Place::in_row(Field::PlateLoadCentre, 2), "600", System::Metric);
        four.enter(Field::MastOuter.into(), "3900", System::Metric);
        all.push(Answer::of(&four));
        for answer in all {
            assert!(!answer.problems.is_empty());
            for problem in &answer.problems {
                let text = message(problem, &four, System::Metric);
                assert!(!text.contains(['{', '}']), "{text}");
            }
        }
    }
}
