//! The common centre of gravity of several pieces, each known within ranges.

use crate::scalar::{Region, Span};

/// One piece: how heavy, and where its own centre is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// kg.
    pub mass: Span,
    /// m.
    pub centre: Region,
}

/// The weight of all pieces together and where their common centre may be; `None` without any weight.
///
/// Each coordinate's range is exact: the centre is a mean, and it lies furthest out where every
/// piece beyond it is as heavy, and every piece short of it as light, as it may be.
///
/// ```
/// use standfast_core::{composite::{common, Piece}, scalar::{Region, Span}};
/// use glam::DVec3;
/// // Case C30: 5 kg at 2 m and 10 kg at 5 m.
/// let at = |kg, x| Piece { mass: Span::exact(kg), centre: Region::about(DVec3::X * x, DVec3::ZERO) };
/// let (mass, centre) = common(&[at(5.0, 2.0), at(10.0, 5.0)]).expect("two pieces");
/// assert_eq!((mass.nominal, centre.at.x), (15.0, 4.0));
/// ```
pub fn common(pieces: &[Piece]) -> Option<(Span, Region)> {
    let total = |f: fn(&Span) -> f64| pieces.iter().map(|p| f(&p.mass)).sum::<f64>();
    let mass = Span { lo: total(|m| m.lo), nominal: total(|m| m.nominal), hi: total(|m| m.hi) };
    if mass.nominal <= 0.0 {
        return None;
    }
    let along = |get: fn(&Region) -> Span| {
        let places: Vec<(Span, Span)> = pieces.iter().map(|p| (p.mass, get(&p.centre))).collect();
        let stated = places.iter().map(|(m, x)| m.nominal * x.nominal).sum::<f64>() / mass.nominal;
        let hi = furthest(places.iter().map(|(m, x)| (*m, x.hi)).collect());
        let lo = -furthest(places.iter().map(|(m, x)| (*m, -x.lo)).collect());
        Span { lo: lo.min(stated), nominal: stated, hi: hi.max(stated) }
    };
    Some((mass, Region::of(along(Region::x), along(Region::y), along(Region::z))))
}

/// The greatest mean of places with weights anywhere in their ranges.
fn furthest(mut places: Vec<(Span, f64)>) -> f64 {
    places.sort_by(|a, b| b.1.total_cmp(&a.1));
    let (mut mass, mut moment) =
        places.iter().fold((0.0, 0.0), |(mass, moment), (m, x)| (mass + m.lo, moment + m.lo * x));
    // Where all of it may be nothing, only what has some weight says where it is.
    let mut best = if mass > 0.0 { moment / mass } else { f64::NEG_INFINITY };
    // The heavier what lies beyond, the further the mean: one after the other, from the furthest.
    for (m, x) in &places {
        mass += m.hi - m.lo;
        moment += (m.hi - m.lo) * x;
        if mass > 0.0 {
            best = best.max(moment / mass);
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::DVec3;

    fn piece(lo: f64, hi: f64, x: f64, spread: f64) -> Piece {
        Piece { mass: Span::between(lo, hi), centre: Region::about(DVec3::new(x, 0.0, 0.0), DVec3::X * spread) }
    }

    /// Source: a published balance example: 3,500 at 40 in and 5,500 at 195 in (case C28).
    #[test]
    fn a_published_balance() {
        let (_, centre) = common(&[piece(3500.0, 3500.0, 40.0, 0.0), piece(5500.0, 5500.0, 195.0, 0.0)]).expect("two");
        assert!((centre.at.x - 134.72).abs() < 0.005, "{}", centre.at.x);
        assert!(centre.x().is_exact());
    }

    #[test]
    fn a_doubtful_weight_draws_the_centre_both_ways() {
        let (_, centre) = common(&[piece(90.0, 110.0, 0.0, 0.0), piece(40.0, 60.0, 1.0, 0.1)]).expect("two");
        assert!((centre.hi.x - 60.0 * 1.1 / 150.0).abs() < 1e-12);
        assert!((centre.lo.x - 40.0 * 0.9 / 150.0).abs() < 1e-12);
    }

    #[test]
    fn nothing_has_no_centre() {
        assert_eq!(common(&[]), None);
        assert_eq!(common(&[piece(0.0, 0.0, 1.0, 0.0)]), None);
        let (_, centre) = common(&[piece(0.0, 1.0, 2.0, 0.1)]).expect("it may weigh something");
        assert!((centre.lo.x - 1.9).abs() < 1e-12 && (centre.hi.x - 2.1).abs() < 1e-12);
    }
}
