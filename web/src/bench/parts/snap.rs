//! Where a moved side comes to rest: flush with a neighbour's, or on a round figure.

use super::view::Body;
use standfast_core::units::{System, Unit};

/// A neighbour further off than this in the other directions does not draw, in reaches.
const NEIGHBOUR: f64 = 3.0;
/// One that is not in line at all draws only from so much nearer.
const ASIDE: f64 = 0.5;

/// The step that a drag is rounded to, m: 10 mm or half an inch.
pub fn round_step(system: System) -> f64 {
    match system {
        System::Metric => Unit::Millimetre.to_document(10.0),
        System::Us => Unit::Inch.to_document(0.5),
    }
}

/// The step of the arrow keys, m: the same, with the shift key 1 mm or a tenth of an inch.
pub fn key_step(shift: bool, system: System) -> f64 {
    match (shift, system) {
        (false, _) => round_step(system),
        (true, System::Metric) => Unit::Millimetre.to_document(1.0),
        (true, System::Us) => Unit::Inch.to_document(0.1),
    }
}

/// How far an arrow key moves on the sheet: to the right, up.
pub fn key_move(key: &str, shift: bool, system: System) -> Option<(f64, f64)> {
    let far = key_step(shift, system);
    match key {
        "ArrowRight" => Some((far, 0.0)),
        "ArrowLeft" => Some((-far, 0.0)),
        "ArrowUp" => Some((0.0, far)),
        "ArrowDown" => Some((0.0, -far)),
        _ => None,
    }
}

/// The nearest multiple of a step.
pub fn rounded(value: f64, step: f64) -> f64 {
    (value / step).round() * step
}

/// Which of its sides a movement takes along.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sides {
    /// Both: it is moved as a whole.
    Both,
    /// The low one alone.
    Low,
    /// The high one alone.
    High,
}

/// How far to go on along `axis` so that a moved side lies flush with a neighbour's, or the middle
/// over its middle; `None` where nothing is near enough. One pass over the others.
pub fn flush<'a>(
    body: &Body,
    sides: Sides,
    axis: usize,
    others: impl IntoIterator<Item = &'a Body>,
    reach: f64,
) -> Option<f64> {
    let mut best: Option<(f64, f64)> = None;
    for other in others {
        // The gap in the two other directions; negative where they overlap.
        let gap = (0..3)
            .filter(|k| *k != axis)
            .map(|k| (body.lo[k] - other.hi[k]).max(other.lo[k] - body.hi[k]))
            .fold(f64::NEG_INFINITY, f64::max);
        if gap > NEIGHBOUR * reach {
            continue;
        }
        let near = if gap > 1e-6 { ASIDE * reach } else { reach };
        let mut offer = |from: f64, to: f64| {
            let by = to - from;
            if by.abs() <= near && best.is_none_or(|b| by.abs() < b.0) {
                best = Some((by.abs(), by));
            }
        };
        for to in [other.lo[axis], other.hi[axis]] {
            if sides != Sides::High {
                offer(body.lo[axis], to);
            }
            if sides != Sides::Low {
                offer(body.hi[axis], to);
            }
        }
        if sides == Sides::Both && axis != 2 {
            offer(body.middle(axis), other.middle(axis));
        }
    }
    best.map(|b| b.1)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn body(lo: [f64; 3], hi: [f64; 3]) -> Body {
        Body { part: 0, cut: false, lo, hi }
    }

    const PALLET: ([f64; 3], [f64; 3]) = ([0.0, -0.4, 0.0], [1.2, 0.4, 0.144]);

    #[test]
    fn it_comes_to_rest_on_what_it_is_lowered_to() {
        let pallet = body(PALLET.0, PALLET.1);
        let above = body([0.2, -0.2, 0.16], [0.6, 0.2, 0.5]);
        let by = flush(&above, Sides::Both, 2, [&pallet], 0.03).expect("near");
        assert!((by + 0.016).abs() < 1e-12, "{by}");
        assert_eq!(flush(&above, Sides::Both, 2, [&pallet], 0.01), None, "too far");
        let aside = body([2.0, -0.2, 0.16], [2.4, 0.2, 0.5]);
        assert_eq!(flush(&aside, Sides::Both, 2, [&pallet], 0.03), None, "not above it");
    }

    #[test]
    fn sides_and_middles_draw_the_nearest_first() {
        let pallet = body(PALLET.0, PALLET.1);
        let far = body([0.0, -0.4, 5.0], [1.19, 0.4, 6.0]);
        let above = body([0.79, -0.3, 0.144], [1.185, 0.31, 0.5]);
        let by = flush(&above, Sides::Both, 0, [&far, &pallet], 0.03).expect("near");
        assert!((by - 0.015).abs() < 1e-12, "flush with the far side of the pallet, not with what is far off: {by}");
        let by = flush(&above, Sides::Both, 1, [&pallet], 0.03).expect("near");
        assert!((by + 0.005).abs() < 1e-12, "middle over middle: {by}");
        assert_eq!(flush(&above, Sides::Low, 0, [&pallet], 0.03), None, "its low side is not near any");
        assert!(flush(&above, Sides::High, 0, [&pallet], 0.03).is_some());
    }

    #[test]
    fn steps_are_round_in_both_systems() {
        assert_eq!(key_move("ArrowUp", false, System::Metric), Some((0.0, 0.01)));
        assert_eq!(key_move("ArrowLeft", true, System::Metric), Some((-0.001, 0.0)));
        assert_eq!(key_move("ArrowRight", false, System::Us), Some((0.0127, 0.0)));
        assert_eq!(key_move("a", false, System::Us), None);
        assert!((rounded(0.1234, 0.01) - 0.12).abs() < 1e-12);
    }
}
