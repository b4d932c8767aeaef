//! What is missing or wrong with a load, in words.

use crate::figures::Printer;
use crate::words::{fill, words};
use standfast_core::place::Field;
use standfast_core::problem::{Problem, Rule};
use standfast_core::scalar::Scalar;
use standfast_core::units::{Quantity, Rounding};

/// What a list or a picture still needs, in its own words.
pub(super) fn needs(field: Field) -> Option<&'static str> {
    let w = &words().load_problem;
    match field {
        Field::Parts => Some(w.no_parts),
        Field::TraceOutline => Some(w.no_outline),
        Field::TracePicture => Some(w.no_picture),
        Field::TraceScaleEnds => Some(w.no_ends),
        Field::TraceRectangle => Some(w.no_corners),
        Field::WeighPoints => Some(w.no_supports),
        _ => None,
    }
}

/// The message of a rule about a load; nothing for the others.
pub(super) fn message(rule: &Rule, problem: &Problem, print: Printer) -> Option<String> {
    let w = &words().load_problem;
    let number = |n: usize| n.to_string();
    let length = |s: &Scalar| print.length(s.get(), Rounding::Nearest);
    let mass = |s: &Scalar, way| print.mass(s.get(), way);
    let value = |quantity: Quantity| {
        problem.value.map(|v| print.quantity(quantity, v.get(), Rounding::Nearest)).unwrap_or_default()
    };
    Some(match rule {
        Rule::WeightOrMaterial if problem.place.field == Field::PartMass => w.part_weight_or_material.to_owned(),
        Rule::WeightOrMaterial => w.weight_or_material.to_owned(),
        Rule::OutlineTooShort { points } => fill(w.outline_short, &[("n", &number(*points))]),
        Rule::OutlineCrosses { first, second } => {
            fill(w.outline_crosses, &[("a", &number(first + 1)), ("b", &number(second + 1))])
        }
        Rule::OutlineFlat => w.outline_flat.to_owned(),
        Rule::HoleOutside => w.hole_outside.to_owned(),
        Rule::CutOutside { part } => fill(w.cut_outside, &[("n", &number(part + 1))]),
        Rule::CutsOverlap { part } => fill(w.cuts_overlap, &[("n", &number(part + 1))]),
        Rule::CutTakesAll => w.cut_all.to_owned(),
        Rule::CutHost => w.cut_host.to_owned(),
        Rule::NegativeReading => fill(w.negative, &[("value", &value(Quantity::Mass))]),
        Rule::SupportsTogether => w.together.to_owned(),
        Rule::SupportsInLine => w.in_line.to_owned(),
        Rule::WeighedOutside { lo, hi } => {
            fill(w.outside, &[("value", &value(Quantity::Length)), ("lo", &length(lo)), ("hi", &length(hi))])
        }
        Rule::HeightOutside { lo, hi } => {
            fill(w.height_outside, &[("value", &value(Quantity::Length)), ("lo", &length(lo)), ("hi", &length(hi))])
        }
        Rule::WeighedTotals { level, raised, allowed } => fill(
            w.totals,
            &[
                ("level", &mass(level, Rounding::Nearest)),
                ("raised", &mass(raised, Rounding::Nearest)),
                ("allowed", &mass(allowed, Rounding::Down)),
            ],
        ),
        Rule::RaisedTooFar => fill(w.too_far, &[("value", &value(Quantity::Length))]),
        Rule::ScaleTooShort => w.scale_short.to_owned(),
        Rule::ScaleDisagrees { found } => fill(w.scale_disagrees, &[("found", &length(found))]),
        Rule::RectangleBent => w.rectangle_bent.to_owned(),
        Rule::NotThisWay => w.not_this_way.to_owned(),
        Rule::WholeWithin { min, max } => {
            let range = print.permitted(Quantity::Length, min.get(), max.get());
            fill(w.whole, &[("value", &value(Quantity::Length)), ("range", &range)])
        }
        Rule::WeightWithin { min, max } => {
            let range = print.permitted(Quantity::Mass, min.get(), max.get());
            fill(w.weight, &[("value", &value(Quantity::Mass)), ("range", &range)])
        }
        // The others are said beside this.
        Rule::Required
        | Rule::NotANumber
        | Rule::Ambiguous
        | Rule::NotFinite
        | Rule::Within { .. }
        | Rule::NotMoreThan { .. }
        | Rule::NotLessThan { .. }
        | Rule::Together { .. }
        | Rule::AxleSum { .. }
        | Rule::PartsWithin { .. }
        | Rule::PlateFalls { .. }
        | Rule::PlateTwice { .. }
        | Rule::NotKnownSo { .. }
        | Rule::ToleranceWithin { .. }
        | Rule::NotADay
        | Rule::TooLong { .. } => return None,
    })
}

#[cfg(test)]
mod tests {
    use crate::answer::Answer;
    use crate::entries::{Entries, PartEntry, TraceEntry, WeighEntry};
    use crate::problems::message;
    use standfast_core::document::{GivenAs, Shape, Side};
    use standfast_core::example;
    use standfast_core::place::{Field, Place};
    use standfast_core::problem::{Problem, Rule};
    use standfast_core::scalar::Scalar;
    use standfast_core::units::System;

    /// Every rule about a load is said, with its value and no gap.
    #[test]
    fn every_rule_has_its_words() {
        let c = Scalar::computed;
        let (lo, hi, min, max) = (c(0.1), c(1.2), c(0.05), c(6.0));
        let rules = [
            Rule::WeightOrMaterial,
            Rule::OutlineTooShort { points: 2 },
            Rule::OutlineCrosses { first: 0, second: 2 },
            Rule::OutlineFlat,
            Rule::HoleOutside,
            Rule::CutOutside { part: 0 },
            Rule::CutsOverlap { part: 0 },
            Rule::CutTakesAll,
            Rule::CutHost,
            Rule::NegativeReading,
            Rule::SupportsTogether,
            Rule::SupportsInLine,
            Rule::WeighedOutside { lo, hi },
            Rule::HeightOutside { lo, hi },
            Rule::WeighedTotals { level: c(800.0), raised: c(790.0), allowed: c(4.0) },
            Rule::RaisedTooFar,
            Rule::ScaleTooShort,
            Rule::ScaleDisagrees { found: c(0.7) },
            Rule::RectangleBent,
            Rule::NotThisWay,
            Rule::WholeWithin { min, max },
            Rule::WeightWithin { min, max },
        ];
        let entries = Entries::blank();
        let mut said: Vec<String> = rules
            .into_iter()
            .map(|rule| message(&Problem::new(Field::Parts, Some(1.3), rule), &entries, System::Metric))
            .collect();
        assert!(said.iter().all(|s| s.len() > 12 && !s.contains(['{', '}'])), "{said:#?}");
        let count = said.len();
        said.sort_unstable();
        said.dedup();
        assert_eq!(said.len(), count);
    }

    fn odd() -> Entries {
        Entries::from_document(&example::document(example::ODD_LOAD))
    }

    fn says(entries: &Entries, place: Place, what: &str) {
        let answer = Answer::of(entries);
        let problem = answer.problem(place).unwrap_or_else(|| panic!("{place}: {:?}", answer.problems));
        let text = message(problem, entries, System::Metric);
        assert!(text.contains(what), "{text}");
    }

    #[test]
    fn what_is_wrong_with_a_load_is_said_where_it_is() {
        let mut entries = odd();
        entries.parts.clear();
        says(&entries, Field::Parts.into(), "at least one part");
        let mut entries = odd();
        let k = entries.add_part(PartEntry { shape: Some(Shape::Sphere), ..PartEntry::default() });
        says(&entries, Place::in_row(Field::PartMass, k), "choose what it is made of");
        let mut entries = odd();
        entries.given_as = GivenAs::Trace;
        entries.trace = Some(TraceEntry::default());
        says(&entries, Field::TracePicture.into(), "a photo or squared paper");
        let mut entries = Entries::from_document(&example::document(example::THREE_WHEEL));
        entries.weighing = Some(WeighEntry { points: 2, raised_end: Some(Side::Ahead) });
        entries.bearers_across();
        for (field, texts) in [
            (Field::WeighAhead, ["0", "1000"]),
            (Field::WeighReading, ["-5", "900"]),
            (Field::WeighRaisedReading, ["400", "500"]),
        ] {
            for (row, text) in texts.into_iter().enumerate() {
                entries.enter(Place::in_row(field, row), text, System::Metric);
            }
        }
        entries.enter(Field::WeighRaised.into(), "100", System::Metric);
        says(&entries, Place::in_row(Field::WeighReading, 0), "5\u{a0}kg is below zero");
    }
}
