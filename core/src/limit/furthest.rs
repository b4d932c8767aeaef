//! How far a figure goes with every margin held: a bracketed root of the least one.
//!
//! Each margin rises up to somewhere and falls from there (the least of many that are affine does, and what a
//! slope, a speed or a leaning mast makes of them does too), so that what holds it is one stretch, and what
//! holds all is where these overlap.

use super::Bound;

/// A stretch in which something passes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Passes {
    /// Where it begins, where that is neither at the least that may be asked nor before what is stated.
    pub least: Option<f64>,
    /// Where it ends.
    pub most: f64,
    /// What ends it; nothing where it lasts.
    pub by: Option<Bound>,
}

/// Margins that depend on one figure; held where they are not negative.
pub trait Margins {
    /// How many.
    fn count(&self) -> usize;
    /// How many of them, from the last, are looked at only where the others end.
    fn late(&self) -> usize;
    /// One of them.
    fn at(&mut self, k: usize, value: f64) -> f64;
    /// What it means that one is not held.
    fn bound(&self, k: usize) -> Bound;
}

/// The most margins that are looked at together.
pub const MOST: usize = 7;

/// From where to where a figure may go, and how finely.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Course {
    /// The least that may be asked.
    pub from: f64,
    /// The most.
    pub to: f64,
    /// In so many pieces where a margin may dip on the way, else in one.
    pub pieces: u32,
    /// Whether what it does goes with its square, as with a speed in a bend.
    pub square: bool,
}

/// A limit is found to this part of the way there is.
const FINE: f64 = 1e-10;
/// A straight line from one end to another is trusted that a margin is held where it leaves this part of it.
const CLEAR: f64 = 0.25;

impl Course {
    fn fine(&self) -> f64 {
        FINE * (self.to - self.from).abs()
    }

    /// Whether a value lies on it.
    pub fn has(&self, value: f64) -> bool {
        (self.from.min(self.to)..=self.from.max(self.to)).contains(&value)
    }
}

/// A value and a margin there.
type Look = (f64, f64);

/// Where the straight line through two looks meets zero.
fn root((a, at_a): Look, (b, at_b): Look) -> f64 {
    a + (b - a) * (at_a / (at_a - at_b))
}

/// The last value from `a`, where a margin is held, towards `b`, where it is not, at which it still is; each with
/// the margin there. Within `fine`.
///
/// What rises no faster as it goes is held at least up to where the line from `a` to `b` meets zero, and no further
/// than where a line through two looks on one side does: from these in turn. Where lines get nowhere, halves do.
/// Of what has a `corner` on the way the fall near the end is looked at first.
pub fn last_held(mut a: Look, mut b: Look, fine: f64, corner: bool, mut margin: impl FnMut(f64) -> f64) -> f64 {
    let (mut before_a, mut beyond_b): (Option<Look>, Option<Look>) = (None, None);
    let (mut chords, mut slow, mut closer) = (false, 0, 0.5);
    let mut begun = corner;
    loop {
        let left = b.0 - a.0;
        if left.abs() <= fine {
            return a.0;
        }
        let part = |x: f64| (x - a.0) / left;
        let chord = part(root(a, b));
        let nudge = (closer * fine / left.abs()).min(0.5);
        let outer = [beyond_b.map(|c| root(b, c)), before_a.map(|c| root(c, a))];
        let outer = outer.into_iter().flatten().map(part).filter(|p| (0.0..1.0).contains(p));
        let outer = outer.fold(f64::INFINITY, f64::min);
        let close = chord <= nudge || chord >= 1.0 - nudge;
        let halve = !close && (slow >= 4 || !chord.is_finite());
        let p = if close {
            // All but there: a little to the other side of it, further each time that it was not.
            closer *= 8.0;
            chord
        } else if halve {
            0.5
        } else if begun && !chords && outer.is_infinite() && beyond_b.is_none() {
            0.98
        } else {
            begun = true;
            chords = !chords;
            if chords || outer.is_infinite() { chord } else { outer }
        };
        let x = a.0 + left * p.clamp(nudge, 1.0 - nudge);
        if (x - a.0) * (b.0 - x) <= 0.0 {
            return a.0;
        }
        let at = margin(x);
        if at >= 0.0 {
            before_a = Some(a);
            a = (x, at);
        } else {
            beyond_b = Some(b);
            b = (x, at);
        }
        // Where lines got nowhere the next one has one try.
        slow = match (b.0 - a.0).abs() > 0.5 * left.abs() {
            _ if halve => 3,
            true => slow + 1,
            false => 0,
        };
    }
}

/// Where all margins are held: the stretch that the value stated lies in, whose margins may be `known`, or else
/// one of `starts`, or wherever they are.
pub fn passes(
    margins: &mut impl Margins,
    way: &Course,
    stated: Option<f64>,
    known: Option<&[f64; MOST]>,
    starts: &[f64],
) -> Option<Passes> {
    let mut at = [0.0; MOST];
    let count = margins.count().min(MOST);
    let stated = stated.filter(|x| way.has(*x));
    let as_stated = stated.filter(|x| match known {
        Some(known) => {
            at = *known;
            known[..count].iter().all(|m| *m >= 0.0)
        }
        None => all_held(margins, *x, &mut at),
    });
    if let Some(start) = as_stated {
        return Some(up_from(margins, way, start, &at, None));
    }
    if let Some(start) = all_held(margins, way.from, &mut at).then_some(way.from) {
        return Some(up_from(margins, way, start, &at, None));
    }
    let start = starts.iter().copied().find(|x| way.has(*x) && all_held(margins, *x, &mut at));
    let start = start.or_else(|| inside(margins, way, stated, &mut at))?;
    let least = begins(margins, way, start, &at);
    Some(up_from(margins, way, start, &at, least))
}

fn all_held(margins: &mut impl Margins, x: f64, at: &mut [f64; MOST]) -> bool {
    (0..margins.count().min(MOST)).all(|k| {
        at[k] = margins.at(k, x);
        at[k] >= 0.0
    })
}

/// Where the stretch that holds `start` begins, where that is not at the least that may be asked.
pub fn begins(margins: &mut impl Margins, way: &Course, start: f64, at: &[f64; MOST]) -> Option<f64> {
    let mut least = None;
    for (k, at) in at.iter().enumerate().take(margins.count()) {
        let from = least.unwrap_or(way.from);
        let there = margins.at(k, from);
        if there < 0.0 {
            least = Some(last_held((start, *at), (from, there), way.fine(), true, |x| margins.at(k, x)));
        }
    }
    least
}

/// How far the stretch goes from `start`, where the margins are `at_start`.
fn up_from(margins: &mut impl Margins, way: &Course, start: f64, at_start: &[f64; MOST], least: Option<f64>) -> Passes {
    let count = margins.count().min(MOST);
    let early = count - margins.late().min(count);
    let fine = way.fine();
    let (mut most, mut by) = (way.to, None);
    let (mut held, mut at_held) = (start, *at_start);
    let mut at_end = [0.0; MOST];
    for piece in 1..=way.pieces {
        let end = if piece == way.pieces {
            way.to
        } else {
            start + (way.to - start) * f64::from(piece) / f64::from(way.pieces)
        };
        let mut ends = false;
        for (k, there) in at_end.iter_mut().enumerate().take(early) {
            *there = margins.at(k, end);
            ends |= *there < 0.0;
        }
        if !ends {
            (held, at_held) = (end, at_end);
            continue;
        }
        // The one first that straight lines have end first.
        let part = |k: usize| at_held[k] / (at_held[k] - at_end[k]);
        most = end;
        let mut left: [bool; MOST] = std::array::from_fn(|k| k < early && at_end[k] < 0.0);
        while let Some(k) = (0..early).filter(|k| left[*k]).min_by(|a, b| part(*a).total_cmp(&part(*b))) {
            left[k] = false;
            let there = if by.is_none() {
                at_end[k]
            } else {
                let along = (most - held) / (end - held);
                if at_held[k] + (at_end[k] - at_held[k]) * along > CLEAR * at_held[k] {
                    continue;
                }
                margins.at(k, most)
            };
            if there < 0.0 {
                most = last_held((held, at_held[k]), (most, there), fine, false, |x| margins.at(k, x));
                by = Some(k);
            }
        }
        break;
    }
    for (k, at_start) in at_start.iter().enumerate().take(count).skip(early) {
        let there = margins.at(k, most);
        if there < 0.0 {
            most = last_held((start, *at_start), (most, there), fine, true, |x| margins.at(k, x));
            by = Some(k);
        }
    }
    Passes { least, most, by: by.map(|k| margins.bound(k)) }
}

/// A value at which all margins are held. Where one is not, it would have to go along its slope at least as
/// far as that would take it, for it rises no faster from there: what lies before that is cut away.
fn inside(margins: &mut impl Margins, way: &Course, first: Option<f64>, at: &mut [f64; MOST]) -> Option<f64> {
    let (mut lo, mut hi) = (way.from.min(way.to), way.from.max(way.to));
    let mut x = first.unwrap_or(0.5 * (lo + hi));
    let fine = way.fine();
    for _ in 0..60 {
        if all_held(margins, x, at) {
            return Some(x);
        }
        let k = at.iter().take(margins.count().min(MOST)).position(|m| *m < 0.0)?;
        let step = 1e-5 * (way.to - way.from).abs();
        let step = if x + step > hi { -step } else { step };
        let slope = (margins.at(k, x + step) - at[k]) / step;
        let go = -at[k] / slope;
        if !go.is_finite() {
            return None;
        }
        // Not quite as far, for a margin may dip a little. What goes with a square rises the faster, the further on.
        let go = 0.9 * go;
        if go > 0.0 {
            let cut = if way.square { libm::sqrt(x * x + 2.0 * x.max(0.0) * go) } else { x + go };
            lo = lo.max(cut).max(x);
        } else {
            hi = hi.min(x + go).min(x);
        }
        if hi - lo < fine {
            return None;
        }
        x = 0.5 * (lo + hi);
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    struct Plain<'f>(&'f [fn(f64) -> f64], usize);

    impl Margins for Plain<'_> {
        fn count(&self) -> usize {
            self.0.len()
        }
        fn late(&self) -> usize {
            0
        }
        fn at(&mut self, k: usize, value: f64) -> f64 {
            self.1 += 1;
            self.0[k](value)
        }
        fn bound(&self, _: usize) -> Bound {
            Bound::Plate
        }
    }

    fn way(from: f64, to: f64) -> Course {
        Course { from, to, pieces: 1, square: false }
    }

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
            let last = last_held((0.0, f(0.0)), (2.0, f(2.0)), 1e-9, count % 2 == 0, |x| {
                count += 1;
                f(x)
            });
            assert!(f(last) >= 0.0 && f(last + 1e-9) < 0.0, "{last}");
        }
        assert!(count < 70, "{count}");
    }

    #[test]
    fn what_is_affine_takes_few_looks() {
        let mut margins = Plain(&[|x| 700.0 - x, |x| 650.0 - 0.5 * x, |_| 3.0], 0);
        let found = passes(&mut margins, &way(1.0, 20_000.0), Some(500.0), None, &[]).expect("a stretch");
        assert!((found.most - 700.0).abs() < 1e-5 && found.most <= 700.0 && margins.1 <= 10, "{found:?} {}", margins.1);
    }

    #[test]
    fn a_stretch_that_neither_end_lies_in_is_found() {
        let mut margins = Plain(&[|x| x - 0.31, |x| 0.33 - x], 0);
        let found = passes(&mut margins, &way(0.0, 1.0), Some(0.9), None, &[]).expect("a stretch");
        assert!((found.most - 0.33).abs() < 1e-9 && (found.least.expect("a beginning") - 0.31).abs() < 1e-9);
        let mut apart = Plain(&[|x| x - 0.34, |x| 0.33 - x], 0);
        assert_eq!(passes(&mut apart, &way(0.0, 1.0), Some(0.5), None, &[]), None);
        let mut never = Plain(&[|_| -1.0], 0);
        assert_eq!(passes(&mut never, &way(0.0, 1.0), Some(0.5), None, &[]), None);
        let mut late = Plain(&[|x| x * x - 81.0, |x| 10.0 - x], 0);
        let squares = Course { square: true, ..way(0.5, 40.0) };
        let found = passes(&mut late, &squares, Some(1.0), None, &[]).expect("a stretch");
        assert!((found.most - 10.0).abs() < 1e-7 && (found.least.expect("a beginning") - 9.0).abs() < 1e-7);
        let mut all = Plain(&[|x| x + 1.0], 0);
        let found = passes(&mut all, &way(1.0, 0.0), None, None, &[]);
        assert_eq!(found, Some(Passes { least: None, most: 0.0, by: None }));
    }

    /// In one piece the dip between 0.4 and 0.5 is leapt over; in pieces it ends the stretch.
    #[test]
    fn a_dip_on_the_way_ends_it() {
        let mut margins = Plain(&[|x| (x - 0.45) * (x - 0.45) - 0.0025], 0);
        let pieces = Course { pieces: 10, ..way(0.0, 1.0) };
        let found = passes(&mut margins, &pieces, Some(0.05), None, &[]).expect("a stretch");
        assert!((found.most - 0.4).abs() < 1e-9, "{found:?}");
    }
}
