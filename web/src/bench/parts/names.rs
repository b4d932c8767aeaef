//! What a part is called, and figures with their ranges.

use crate::entries::Entries;
use crate::figures::Printer;
use crate::words::{fill, words};
use standfast_core::report::{LoadReport, Range};
use standfast_core::scalar::Scalar;
use standfast_core::units::{Quantity, Rounding, System};

/// A part's own name, or its shape and number.
pub fn part(entries: &Entries, k: usize) -> String {
    let w = &words().parts;
    let entry = entries.parts.get(k);
    match entry.map(|e| e.name.trim()).filter(|n| !n.is_empty()) {
        Some(name) => name.to_owned(),
        None => {
            let what = entry.and_then(|e| e.shape).map_or(w.part, w.shape);
            fill(w.numbered, &[("what", what), ("n", &(k + 1).to_string())])
        }
    }
}

/// A figure as stated.
pub fn value(system: System, quantity: Quantity, range: &Range) -> String {
    Printer(system).quantity(quantity, range.nominal.get(), Rounding::Nearest)
}

/// The range it may lie in, rounded outward.
pub fn range(system: System, quantity: Quantity, range: &Range) -> String {
    let figure = |v: f64, way| Printer(system).quantity(quantity, v, way);
    let (a, b) = (figure(range.lo.get(), Rounding::Down), figure(range.hi.get(), Rounding::Up));
    fill(words().card.from_to, &[("a", &a), ("b", &b)])
}

/// A figure with its range.
pub fn ranged(system: System, quantity: Quantity, figure: &Range) -> String {
    let stated = value(system, quantity, figure);
    if figure.hi.get() - figure.lo.get() < 1e-9 {
        return stated;
    }
    fill(words().parts.with_range, &[("value", &stated), ("range", &range(system, quantity, figure))])
}

/// The common centre: ahead of the load's side at the heel, left of its middle, above its underside.
pub fn centre(load: &LoadReport) -> [Range; 3] {
    let (c, low, size) = (&load.centre, load.low, load.size);
    let zeros = [low.x.get(), low.y.get() + 0.5 * size.y.get(), low.z.get()];
    let from = |range: &Range, zero: f64| {
        let by = |s: Scalar| Scalar::computed(s.get() - zero);
        Range { lo: by(range.lo), nominal: by(range.nominal), hi: by(range.hi) }
    };
    [from(&c.ahead, zeros[0]), from(&c.left, zeros[1]), from(&c.above, zeros[2])]
}

/// A length, to the nearest.
pub fn length(system: System, metres: f64) -> String {
    Printer(system).length(metres, Rounding::Nearest)
}

#[cfg(test)]
mod tests {
    use super::super::samples;
    use super::*;

    #[test]
    fn a_name_or_what_it_is_and_its_number() {
        let mut entries = samples::stack();
        assert_eq!(part(&entries, 2), "Cylinder 3");
        entries.parts[2].name = " Motor ".to_owned();
        assert_eq!(part(&entries, 2), "Motor");
        assert!(!part(&entries, 99).is_empty());
    }

    #[test]
    fn ranges_are_rounded_outward() {
        let c = |v| Scalar::new(v).expect("finite");
        let range = Range { lo: c(0.1006), nominal: c(0.1204), hi: c(0.1402) };
        let text = ranged(System::Metric, Quantity::Length, &range);
        assert_eq!(text, "120\u{a0}mm (100\u{a0}mm to 141\u{a0}mm)");
    }
}
