//! How figures are known, in English.

use crate::words::known::KnownWords;
use standfast_core::document::By;
use standfast_core::units::Quantity;

pub(super) const KNOWN: KnownWords = KnownWords {
    by,
    mark: "mark",
    not_chosen: "not chosen: as an estimate",
    line: "{way}, {out}",
    out: "\u{b1}\u{a0}{figure}",
    out_of_slope: "\u{b1}\u{a0}{n}\u{a0}% slope",
    exact: "as it stands",
    changed: "changed: {line}",
    heading: "How \u{201c}{field}\u{201d} is known",
    own: "Give or take",
    own_of_slope: "Give or take, in % slope",
    own_help: "Left empty, {out} counts.",
    back: "Back to the usual: {line}",
    problem: "Give or take: {problem}",
    tolerance_of: "give or take of {field}",
};

fn by(by: By, quantity: Quantity) -> (&'static str, &'static str) {
    match (by, quantity) {
        (By::Plate, _) => ("plate", "Plate"),
        (By::Sheet, Quantity::Slope) => ("drawing", "Drawing of the site"),
        (By::Sheet, Quantity::Speed | Quantity::Acceleration) => ("as set", "As set or ordered"),
        (By::Sheet, _) => ("sheet", "Maker's sheet"),
        (By::Scale, _) => ("scale", "Scale"),
        (By::Note, _) => ("note", "Delivery note"),
        (By::Tape, Quantity::Angle) => ("gauge", "Gauge or level"),
        (By::Tape, Quantity::Slope) => ("level", "Level and tape"),
        (By::Tape, Quantity::Speed | Quantity::Acceleration | Quantity::Ratio) => ("measured", "Measured"),
        (By::Tape, _) => ("tape", "Tape"),
        (By::Estimate, _) => ("estimate", "Estimate"),
    }
}
