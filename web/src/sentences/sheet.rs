//! The type sheet held against itself, in sentences.

use super::name_of;
use crate::figures::Printer;
use crate::words::{fill, words};
use standfast_core::closure::Tested;
use standfast_core::units::Rounding;

/// What came of one test.
pub fn tested(tested: &Tested, print: Printer) -> String {
    let w = &words().sheet;
    let mass = |kg: f64, way| print.mass(kg, way);
    let text = if tested.closes { (w.closed)(tested.test) } else { (w.open)(tested.test) };
    fill(
        text,
        &[
            ("found", &mass(tested.found.get(), Rounding::Nearest)),
            ("expected", &mass(tested.expected.get(), Rounding::Nearest)),
            ("allowed", &mass(tested.allowed.get(), Rounding::Down)),
        ],
    )
}

/// Which figures may be wrong.
pub fn suspects(tested: &Tested, print: Printer) -> String {
    let w = &words().sheet;
    let list = tested.suspects.iter().map(|s| match s.should_be {
        Some((lo, hi)) => {
            let range = print.taken(s.place, lo.get(), hi.get());
            fill(w.should_be, &[("name", &name_of(s.place)), ("range", &range)])
        }
        None => name_of(s.place),
    });
    let list: Vec<_> = list.collect();
    let alone = tested.suspects.iter().all(|s| s.should_be.is_some());
    fill(if alone { w.alone } else { w.several }, &[("list", &list.join(", "))])
}
