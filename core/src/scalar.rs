//! A finite number, and a figure with the range it may lie in.

use glam::DVec3;
use serde::{Deserialize, Serialize};

/// A number that is certainly finite: neither NaN nor infinity can be made into one.
///
/// It is therefore `Eq`, `Ord` and `Hash`, and a page that compares values to decide whether to
/// draw again always comes to an end. Minus zero becomes zero.
///
/// ```
/// use standfast_core::scalar::Scalar;
/// assert_eq!(Scalar::new(1.5).map(Scalar::get), Some(1.5));
/// assert_eq!(Scalar::new(f64::NAN), None);
/// assert_eq!(Scalar::new(f64::INFINITY), None);
/// ```
#[derive(Clone, Copy, Debug, Default, Serialize, Deserialize)]
#[serde(into = "f64", try_from = "f64")]
pub struct Scalar(f64);

impl Scalar {
    /// Zero.
    pub const ZERO: Self = Self(0.0);

    /// The number, or `None` where it is not finite.
    pub fn new(value: f64) -> Option<Self> {
        value.is_finite().then_some(Self(value + 0.0))
    }

    /// A computed result. The permitted ranges keep results finite; should one ever not be, it
    /// becomes the largest magnitude of its sign (NaN the most negative) rather than a panic.
    pub fn computed(value: f64) -> Self {
        debug_assert!(value.is_finite(), "computed a non-finite figure");
        Self(if value.is_nan() { f64::MIN } else { value.clamp(f64::MIN, f64::MAX) + 0.0 })
    }

    /// The plain number.
    pub fn get(self) -> f64 {
        self.0
    }
}

impl PartialEq for Scalar {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}
impl Eq for Scalar {}
impl PartialOrd for Scalar {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Scalar {
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.0.total_cmp(&other.0)
    }
}
impl std::hash::Hash for Scalar {
    fn hash<H: std::hash::Hasher>(&self, state: &mut H) {
        self.0.to_bits().hash(state);
    }
}
impl From<Scalar> for f64 {
    fn from(value: Scalar) -> Self {
        value.0
    }
}
impl TryFrom<f64> for Scalar {
    type Error = &'static str;
    fn try_from(value: f64) -> Result<Self, Self::Error> {
        Self::new(value).ok_or("a figure must be a finite number")
    }
}

/// A figure as stated, with the least and the greatest it may really be: `lo <= nominal <= hi`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// The least it may be.
    pub lo: f64,
    /// As stated.
    pub nominal: f64,
    /// The greatest it may be.
    pub hi: f64,
}

impl Span {
    /// Known exactly.
    pub const fn exact(value: f64) -> Self {
        Self { lo: value, nominal: value, hi: value }
    }

    /// As stated, give or take `tolerance` (taken as a magnitude).
    pub fn about(value: f64, tolerance: f64) -> Self {
        let t = tolerance.abs();
        Self { lo: value - t, nominal: value, hi: value + t }
    }

    /// Anywhere between two figures, whichever is the greater; the middle stands for it.
    pub fn between(a: f64, b: f64) -> Self {
        Self { lo: a.min(b), nominal: 0.5 * (a + b), hi: a.max(b) }
    }

    /// Moved along by another range.
    pub fn plus(self, other: Self) -> Self {
        Self { lo: self.lo + other.lo, nominal: self.nominal + other.nominal, hi: self.hi + other.hi }
    }

    /// Moved along.
    pub fn moved(self, by: f64) -> Self {
        self.plus(Self::exact(by))
    }

    /// A growing function of it.
    pub fn each(self, f: impl Fn(f64) -> f64) -> Self {
        Self { lo: f(self.lo), nominal: f(self.nominal), hi: f(self.hi) }
    }

    /// The same with its sign turned.
    pub fn mirrored(self) -> Self {
        Self { lo: -self.hi, nominal: -self.nominal, hi: -self.lo }
    }

    /// This much wider on either side.
    pub fn widened(self, by: f64) -> Self {
        self.plus(Self { lo: -by.abs(), nominal: 0.0, hi: by.abs() })
    }

    /// Whether the two have any figure in common.
    pub fn meets(self, other: Self) -> bool {
        self.lo <= other.hi && other.lo <= self.hi
    }

    /// With all that another one may be.
    pub fn with(self, other: Self) -> Self {
        Self { lo: self.lo.min(other.lo), nominal: self.nominal, hi: self.hi.max(other.hi) }
    }

    /// The greatest magnitude in it.
    pub fn furthest(self) -> f64 {
        self.lo.abs().max(self.hi.abs())
    }

    /// Whether there is nothing uncertain about it.
    pub fn is_exact(self) -> bool {
        self.hi <= self.lo
    }

    /// Half the width of the range.
    pub fn half_width(self) -> f64 {
        0.5 * (self.hi - self.lo)
    }
}

/// Whereabouts of a point: as stated, and the box it may lie in, `lo <= at <= hi` in each direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Region {
    /// As stated.
    pub at: DVec3,
    /// The least corner.
    pub lo: DVec3,
    /// The greatest corner.
    pub hi: DVec3,
}

impl Region {
    /// As stated, give or take `spread` in each direction.
    pub fn about(at: DVec3, spread: DVec3) -> Self {
        Self { at, lo: at - spread, hi: at + spread }
    }

    /// From the three directions.
    pub fn of(x: Span, y: Span, z: Span) -> Self {
        let point = |f: fn(&Span) -> f64| DVec3::new(f(&x), f(&y), f(&z));
        Self { at: point(|s| s.nominal), lo: point(|s| s.lo), hi: point(|s| s.hi) }
    }

    /// Along x.
    pub fn x(&self) -> Span {
        Span { lo: self.lo.x, nominal: self.at.x, hi: self.hi.x }
    }

    /// Along y.
    pub fn y(&self) -> Span {
        Span { lo: self.lo.y, nominal: self.at.y, hi: self.hi.y }
    }

    /// Along z.
    pub fn z(&self) -> Span {
        Span { lo: self.lo.z, nominal: self.at.z, hi: self.hi.z }
    }

    /// Half the box's edges.
    pub fn half_edges(&self) -> DVec3 {
        0.5 * (self.hi - self.lo)
    }

    /// The middle of the box, from the stated point.
    pub fn skew(&self) -> DVec3 {
        0.5 * (self.lo + self.hi) - self.at
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_finite_numbers_get_in() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(Scalar::new(bad), None);
            assert!(Scalar::try_from(bad).is_err());
        }
        assert_eq!(Scalar::new(-0.0).map(|s| s.get().is_sign_positive()), Some(true));
    }

    #[test]
    fn spans_order_their_ends() {
        let span = Span::between(3.0, 1.0);
        assert!(span.lo < span.nominal && span.nominal < span.hi);
        assert!(Span::exact(2.0).is_exact());
        assert!((Span::about(5.0, -1.0).half_width() - 1.0).abs() < 1e-15);
    }
}
