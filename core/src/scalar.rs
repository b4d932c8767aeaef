//! A finite number, and a figure with the range it may lie in.

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

    /// Whether there is nothing uncertain about it.
    pub fn is_exact(self) -> bool {
        self.hi <= self.lo
    }

    /// Half the width of the range.
    pub fn half_width(self) -> f64 {
        0.5 * (self.hi - self.lo)
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
