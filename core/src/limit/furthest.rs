//! How far a figure goes with every margin held: a bracketed root.

use super::Bound;

/// How far it goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Furthest {
    /// Up to here, and what fails beyond.
    At(f64, Bound),
    /// To the end.
    Beyond,
    /// Nowhere.
    Never,
}

/// A limit is found to this part of the way there is.
const FINE: f64 = 1e-10;

/// The last value from `a`, where a margin is held, towards `b`, where it is not, at which it still is; `at_a`
/// and `at_b` are the margins there. A margin is held where it is not negative. Within `fine`.
pub fn last_held(a: (f64, f64), b: (f64, f64), fine: f64, mut margin: impl FnMut(f64) -> f64) -> f64 {
    let ((mut a, mut at_a), (mut b, mut at_b)) = (a, b);
    let mut side = 0;
    let mut straight = 0;
    while (b - a).abs() > fine {
        let before = (b - a).abs();
        let part = at_a / (at_a - at_b);
        // Where straight lines do not halve what is left, halves do.
        let part = if straight >= 3 || !part.is_finite() { 0.5 } else { part };
        let nudge = 0.5 * fine / before;
        let x = a + (b - a) * part.clamp(nudge, 1.0 - nudge);
        if x == a || x == b {
            break;
        }
        let at = margin(x);
        if at >= 0.0 {
            (a, at_a) = (x, at);
            if side == 1 {
                at_b *= 0.5;
            }
            side = 1;
        } else {
            (b, at_b) = (x, at);
            if side == -1 {
                at_a *= 0.5;
            }
            side = -1;
        }
        straight = if (b - a).abs() > 0.5 * before { straight + 1 } else { 0 };
    }
    a
}

/// How far `count` margins are all held on the way `from` .. `to`, beginning at the first of `starts` that holds
/// them, or wherever they do. What holds each is an interval.
pub fn furthest(
    (from, to): (f64, f64),
    starts: &[f64],
    count: usize,
    mut margin: impl FnMut(usize, f64) -> f64,
) -> Option<(f64, Option<usize>)> {
    let fine = FINE * (to - from).abs();
    let mut at = vec![0.0; count];
    let mut holds_all = |x: f64, margin: &mut dyn FnMut(usize, f64) -> f64| {
        (0..count).all(|k| {
            at[k] = margin(k, x);
            at[k] >= 0.0
        })
    };
    let start = starts.iter().copied().find(|x| holds_all(*x, &mut margin));
    let start = start.or_else(|| inside(from, to, count, fine, &mut margin).filter(|x| holds_all(*x, &mut margin)))?;
    let (mut end, mut by) = (to, None);
    for (k, at_start) in at.iter().enumerate() {
        let at_end = margin(k, end);
        if at_end < 0.0 {
            end = last_held((start, *at_start), (end, at_end), fine, |x| margin(k, x));
            by = Some(k);
        }
    }
    Some((end, by))
}

/// A value at which all margins are held, each of which rises up to somewhere and falls from there: cut away, from
/// both ends, what lies on the falling side of one that is not held.
fn inside(from: f64, to: f64, count: usize, fine: f64, margin: &mut dyn FnMut(usize, f64) -> f64) -> Option<f64> {
    let (mut a, mut b) = (from, to);
    for _ in 0..60 {
        let x = 0.5 * (a + b);
        let Some((k, at)) = (0..count).map(|k| (k, margin(k, x))).find(|(_, at)| *at < 0.0) else { return Some(x) };
        let step = 0.1 * (b - a);
        if margin(k, x + step) > at {
            a = x;
        } else {
            b = x;
        }
        if (b - a).abs() < fine {
            break;
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_that_holds_is_found_and_just_beyond_it_nothing_holds() {
        let mut count = 0;
        let functions: [&dyn Fn(f64) -> f64; 5] = [
            &|x| 3.0 - 2.0 * x,
            &|x| 1.0 - x * x * x,
            &|x| if x <= 0.7 { 1.0 } else { -1.0 },
            &|x| (1.0 - x).min(5.0 * (0.9 - x)),
            &|x| libm::cos(x) - 0.2,
        ];
        for f in functions {
            let last = last_held((0.0, f(0.0)), (2.0, f(2.0)), 1e-9, |x| {
                count += 1;
                f(x)
            });
            assert!(f(last) >= 0.0 && f(last + 1e-9) < 0.0, "{last}");
        }
        assert!(count < 100, "{count}");
    }

    #[test]
    fn an_interval_that_neither_end_lies_in_is_found() {
        let margins = [|x: f64| x - 0.31, |x: f64| 0.33 - x];
        let found = furthest((0.0, 1.0), &[0.0, 1.0], 2, |k, x| margins[k](x)).expect("an interval");
        assert!((found.0 - 0.33).abs() < 1e-9 && found.1 == Some(1));
        let apart = [|x: f64| x - 0.34, |x: f64| 0.33 - x];
        assert_eq!(furthest((0.0, 1.0), &[0.0], 2, |k, x| apart[k](x)), None);
        let all = furthest((1.0, 0.0), &[1.0], 1, |_, x| x + 1.0);
        assert_eq!(all, Some((0.0, None)));
    }
}
