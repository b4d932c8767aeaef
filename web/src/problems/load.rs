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
        | Rule::TooLong { .. } => return None,
    })
}
