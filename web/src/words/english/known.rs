//! How figures are known, in English.

use crate::words::known::KnownWords;
use standfast_core::document::By;
use standfast_core::units::Quantity;

pub(super) const KNOWN: KnownWords = KnownWords {
    by,
    mark: "mark",
    not_chosen: "not chosen, taken as an estimate",
    line: "{way}, {out}",
    out: "\u{b1}\u{a0}{figure}",
    out_of_slope: "\u{b1}\u{a0}{n} points of\u{a0}%",
    exact: "as it stands",
    changed: "changed: {line}",
    heading: "How \u{201c}{field}\u{201d} is known",
    own: "Give or take",
    own_of_slope: "Give or take, in points of percent",
    own_help: "Left empty, {out} counts.",
    back: "Back to the usual: {line}",
    problem: "Give or take: {problem}",
    tolerance_of: "give or take of {field}",
};

fn by(by: By, quantity: Quantity) -> &'static str {
    match (by, quantity) {
        (By::Plate, _) => "plate",
        (By::Sheet, Quantity::Slope) => "site drawing",
        (By::Sheet, _) => "maker's sheet",
        (By::Scale, _) => "scale",
        (By::Note, _) => "note",
        (By::Tape, Quantity::Angle | Quantity::Slope) => "level or gauge",
        (By::Tape, Quantity::Speed | Quantity::Acceleration | Quantity::Ratio) => "measured",
        (By::Tape, _) => "tape",
        (By::Estimate, _) => "estimate",
    }
}
