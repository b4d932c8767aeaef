//! The centre of gravity from scale readings: level for the weight and the plan, one end raised for
//! the height.
//!
//! Statics alone: the readings carry the weight, so their mean place is where the line of action
//! passes between them. With one end raised by an angle t the line of action meets the underside
//! z tan t nearer to the low end: z = (mean level - mean raised) / tan t. Common practice.

use crate::document::Side;
use crate::rules;
use crate::scalar::Span;
use glam::DVec2;

/// A point of support and what was read there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Support {
    /// Ahead and left, m, on the load's underside.
    pub at: DVec2,
    /// The load level, kg.
    pub level: f64,
    /// One end raised, kg.
    pub raised: Option<f64>,
}

/// What the readings come to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weighed {
    /// kg.
    pub mass: Span,
    /// The centre ahead; `None` where two bearers do not tell.
    pub ahead: Option<Span>,
    /// The centre left.
    pub left: Option<Span>,
    /// The centre above the underside.
    pub above: Option<Span>,
}

/// What is wrong with readings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// Below zero: the load would have to pull this support up.
    Negative {
        /// Which support, from 0.
        support: usize,
        /// Whether in the second set.
        raised: bool,
    },
    /// They add up to nothing.
    Nothing,
    /// Two supports stand at the same place.
    Together,
    /// Three or four stand in a line.
    InLine,
    /// The two sets do not add up to the same weight, kg.
    Totals {
        /// Level.
        level: f64,
        /// Raised.
        raised: f64,
        /// They may differ by so much.
        allowed: f64,
    },
    /// One end cannot be raised that far on supports so close together.
    RaisedTooFar,
}

/// Supports closer than this stand at the same place, m.
const APART: f64 = 0.05;

/// Two bearers tell of one direction only; the one along which they stand further apart.
fn directions(supports: &[Support]) -> Result<[bool; 2], Fault> {
    let points: Vec<DVec2> = supports.iter().map(|s| s.at).collect();
    match points.as_slice() {
        [a, b] => {
            let d = (*a - *b).abs();
            if d.max_element() < APART {
                return Err(Fault::Together);
            }
            Ok([d.x >= d.y, d.y > d.x])
        }
        _ => {
            let pairs = || points.iter().enumerate().flat_map(|(k, a)| points[k + 1..].iter().map(move |b| (*a, *b)));
            if pairs().any(|(a, b)| a.distance(b) < APART) {
                return Err(Fault::Together);
            }
            let widest = pairs()
                .map(|(a, b)| b - a)
                .fold(DVec2::ZERO, |w, d| if d.length_squared() > w.length_squared() { d } else { w });
            let off = |p: &DVec2| (*p - points[0]).perp_dot(widest).abs() / widest.length();
            if points.iter().map(off).fold(0.0, f64::max) < APART { Err(Fault::InLine) } else { Ok([true; 2]) }
        }
    }
}

/// The mean place of readings in one direction, and the range it may lie in when each reading is
/// out by up to `accuracy`: exact, over all their corners.
fn mean(places: &[f64], readings: &[f64], accuracy: f64) -> Span {
    let at = |readings: &dyn Fn(usize) -> f64| {
        let total: f64 = (0..places.len()).map(readings).sum();
        let moment: f64 = places.iter().enumerate().map(|(k, x)| x * readings(k)).sum();
        // Readings that may all be nothing say nothing.
        (total > 0.0).then(|| moment / total)
    };
    let (least, most) = places.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), &x| (a.min(x), b.max(x)));
    let stated = at(&|k| readings[k]).unwrap_or(0.5 * (least + most));
    (0..1_usize << places.len()).fold(Span::exact(stated), |span, bits| {
        let reading = |k: usize| (readings[k] + if bits & (1 << k) == 0 { -accuracy } else { accuracy }).max(0.0);
        let x = at(&reading);
        Span { lo: span.lo.min(x.unwrap_or(least)), nominal: stated, hi: span.hi.max(x.unwrap_or(most)) }
    })
}

/// Works out readings under two (bearers right across), three or four supports, each right give or
/// take `accuracy`, kg; `raised` is the end that was raised and how far, m.
///
/// # Errors
/// [`Fault`] where they contradict each other or cannot tell.
pub fn find(supports: &[Support], accuracy: f64, raised: Option<(Side, f64)>) -> Result<Weighed, Fault> {
    if let Some(support) = supports.iter().position(|s| s.level < 0.0) {
        return Err(Fault::Negative { support, raised: false });
    }
    let readings: Vec<f64> = supports.iter().map(|s| s.level).collect();
    let total: f64 = readings.iter().sum();
    if total <= 0.0 {
        return Err(Fault::Nothing);
    }
    let tells = directions(supports)?;
    let place = rules::TOLERANCE_SUPPORT_PLACE.value;
    let along = |axis: usize| supports.iter().map(|s| s.at[axis]).collect::<Vec<_>>();
    // The mean is out by no more than the supports themselves are.
    let level = |axis: usize| tells[axis].then(|| mean(&along(axis), &readings, accuracy).widened(place));
    let count = supports.len() as f64;
    let above = match raised {
        Some((end, by)) => Some(height(supports, accuracy, end, by)?),
        None => None,
    };
    let mass = Span { lo: (total - count * accuracy).max(0.0), nominal: total, hi: total + count * accuracy };
    Ok(Weighed { mass, ahead: level(0), left: level(1), above })
}

/// The height of the centre above the underside, from the second set.
fn height(supports: &[Support], accuracy: f64, end: Side, by: f64) -> Result<Span, Fault> {
    let (axis, sign) = match end {
        Side::Ahead => (0, 1.0),
        Side::Heel => (0, -1.0),
        Side::Left => (1, 1.0),
        Side::Right => (1, -1.0),
    };
    // As if the raised end were the one at greater places.
    let places: Vec<f64> = supports.iter().map(|s| sign * s.at[axis]).collect();
    let (lo, hi) = places.iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), &x| (a.min(x), b.max(x)));
    let apart = hi - lo;
    if apart < APART {
        return Err(Fault::Together);
    }
    let level: Vec<f64> = supports.iter().map(|s| s.level).collect();
    let raised: Vec<f64> = supports.iter().map(|s| s.raised.unwrap_or_default()).collect();
    if let Some(support) = raised.iter().position(|r| *r < 0.0) {
        return Err(Fault::Negative { support, raised: true });
    }
    let (sum, sum_raised) = (level.iter().sum::<f64>(), raised.iter().sum::<f64>());
    let allowed = 2.0 * accuracy * supports.len() as f64 + 1e-9 * sum;
    if (sum - sum_raised).abs() > allowed {
        return Err(Fault::Totals { level: sum, raised: sum_raised, allowed });
    }
    let (place, off) = (rules::TOLERANCE_SUPPORT_PLACE.value, rules::TOLERANCE_RAISED.value);
    // Blocks under the end, measured upright: its rise is the sine.
    let tangent = |rise: f64, apart: f64| {
        let sine = rise / apart;
        (sine < 0.9).then(|| sine / (1.0 - sine * sine).sqrt())
    };
    let Some(t) = tangent(by, apart) else { return Err(Fault::RaisedTooFar) };
    let (Some(t_hi), Some(t_lo)) =
        (tangent(by + off, apart - 2.0 * place), tangent((by - off).max(0.25 * by), apart + 2.0 * place))
    else {
        return Err(Fault::RaisedTooFar);
    };
    let (a, b) = (mean(&places, &level, accuracy), mean(&places, &raised, accuracy));
    // A support out of its place is out alike in both sets: only what moved from one to another counts.
    let shares = |r: &[f64]| r.iter().map(|x| x / r.iter().sum::<f64>()).collect::<Vec<_>>();
    let moved: f64 = shares(&level).iter().zip(shares(&raised)).map(|(p, q)| (p - q).abs()).sum();
    // Readings out by their accuracy shift the shares of a set by no more than twice their sum; and no
    // more can move than all.
    let out = accuracy * supports.len() as f64;
    let doubt = if out < sum { 4.0 * out / (sum - out) } else { 2.0 };
    let difference = a.plus(b.mirrored()).widened(place * (moved + doubt).min(2.0));
    let over = |d: f64, small: f64, large: f64| if d > 0.0 { d / small } else { d / large };
    Ok(Span {
        lo: over(difference.lo, t_hi, t_lo),
        nominal: difference.nominal / t,
        hi: over(difference.hi, t_lo, t_hi),
    })
}

#[cfg(test)]
mod tests;
