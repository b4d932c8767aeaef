//! Pallets to begin with: sizes by the standards, weights to be confirmed.

use crate::rules::Mark;
use crate::scalar::Span;

/// A pallet size. Length along the forks by its longer side, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pallet {
    /// A stable name.
    pub id: &'static str,
    /// Longer side.
    pub length: f64,
    /// Shorter side.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// Weight of a wooden one, kg: to be confirmed, it takes up water.
    pub mass: Span,
    /// Where the size stands.
    pub source: &'static str,
    /// How sure that is.
    pub mark: Mark,
}

const ISO: &str = "ISO 6780:2003, as restated by alumanufacturer.com (plan sizes); height usual";

const fn pallet(id: &'static str, length: f64, width: f64, source: &'static str, mass: Span) -> Pallet {
    Pallet { id, length, width, height: 0.144, mass, source, mark: Mark::Read }
}

const fn kg(lo: f64, nominal: f64, hi: f64) -> Span {
    Span { lo, nominal, hi }
}

/// The list.
pub const ALL: [Pallet; 6] = [
    pallet("eur", 1.2, 0.8, "EN 13698-1; epal-pallets.org: 800 x 1,200 x 144 mm, about 25 kg", kg(20.0, 25.0, 32.0)),
    pallet("1200x1000", 1.2, 1.0, ISO, kg(22.0, 30.0, 42.0)),
    pallet("1219x1016", 1.219, 1.016, ISO, kg(15.0, 25.0, 40.0)),
    pallet("1140x1140", 1.14, 1.14, ISO, kg(18.0, 28.0, 42.0)),
    pallet("1100x1100", 1.1, 1.1, ISO, kg(18.0, 27.0, 40.0)),
    pallet("1067x1067", 1.067, 1.067, ISO, kg(16.0, 26.0, 40.0)),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_is_longer_than_wide_and_weighs_something() {
        for p in ALL {
            assert!(p.length >= p.width && p.width > p.height && p.mass.lo < p.mass.nominal, "{}", p.id);
        }
    }
}
