//! Units at the edge. Inside, everything is m, kg, s, rad, N; a document holds m, kg, degrees and km/h.

use serde::{Deserialize, Serialize};

/// Standard gravity, m/s^2 (ISO 80000-3; the conventional value).
pub const GRAVITY: f64 = 9.806_65;

/// What kind of figure a number is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// A length; metres in a document.
    Length,
    /// A mass; kilograms in a document.
    Mass,
    /// A mast angle; degrees in a document.
    Angle,
    /// A speed; km/h in a document.
    Speed,
    /// A slope of the ground; percent of tangent in a document.
    Slope,
    /// An acceleration; m/s^2 in a document.
    Acceleration,
    /// A part of a whole; percent in a document.
    Part,
    /// A plain ratio.
    Ratio,
}

/// The two systems a reader may choose between.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum System {
    /// mm, kg, degrees, km/h.
    #[default]
    Metric,
    /// in, lb, degrees, mph.
    Us,
}

/// A unit that figures are typed and shown in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Unit {
    /// mm
    Millimetre,
    /// m
    Metre,
    /// in, exactly 25.4 mm
    Inch,
    /// ft, exactly 304.8 mm
    Foot,
    /// kg
    Kilogram,
    /// lb, exactly 0.453 592 37 kg
    Pound,
    /// degree of angle
    Degree,
    /// percent: of a slope its tangent, 10 % is 5.71 degrees
    Percent,
    /// a slope typed as an angle in degrees, 10 degrees is 17.6 %
    SlopeDegree,
    /// m/s^2
    MetrePerSecondSquared,
    /// ft/s^2
    FootPerSecondSquared,
    /// km/h
    KilometrePerHour,
    /// mile an hour, the mile being exactly 1,609.344 m
    MilePerHour,
    /// no unit
    One,
}

impl Unit {
    /// How much of the document's unit (m, kg, degree, km/h, 1) one of this unit is.
    ///
    /// Source: the international yard and pound agreement of 1959 (exact by definition).
    ///
    /// ```
    /// use standfast_core::units::Unit;
    /// assert_eq!(Unit::Inch.in_document_units(), 0.0254);
    /// ```
    pub const fn in_document_units(self) -> f64 {
        match self {
            Self::Millimetre => 0.001,
            Self::Inch => 0.0254,
            Self::Foot => 0.3048,
            Self::Pound => 0.453_592_37,
            Self::MilePerHour => 1.609_344,
            Self::FootPerSecondSquared => 0.3048,
            Self::Metre
            | Self::Kilogram
            | Self::Degree
            | Self::Percent
            // Not a factor: the conversions below know it.
            | Self::SlopeDegree
            | Self::MetrePerSecondSquared
            | Self::KilometrePerHour
            | Self::One => 1.0,
        }
    }

    /// A figure of this unit in the document's unit. Dividing where the factor is a whole number
    /// keeps 1,350 mm exactly 1.35 m.
    pub fn to_document(self, value: f64) -> f64 {
        match self {
            Self::Millimetre => value / 1000.0,
            // Upright and beyond there is no slope to speak of; the permitted range refuses what comes out.
            Self::SlopeDegree if value.abs() >= 90.0 => 1e9 * value.signum(),
            Self::SlopeDegree => 100.0 * libm::tan(value.to_radians()),
            _ => value * self.in_document_units(),
        }
    }

    /// A figure of the document's unit in this one.
    pub fn from_document(self, value: f64) -> f64 {
        match self {
            Self::Millimetre => value * 1000.0,
            Self::SlopeDegree => libm::atan(value / 100.0).to_degrees(),
            _ => value / self.in_document_units(),
        }
    }

    /// The symbol that stands beside the number.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Metre => "m",
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Kilogram => "kg",
            Self::Pound => "lb",
            Self::Degree | Self::SlopeDegree => "\u{b0}",
            Self::Percent => "%",
            Self::MetrePerSecondSquared => "m/s\u{b2}",
            Self::FootPerSecondSquared => "ft/s\u{b2}",
            Self::KilometrePerHour => "km/h",
            Self::MilePerHour => "mph",
            Self::One => "",
        }
    }
}

impl Quantity {
    /// The unit this kind of figure is typed in.
    pub const fn unit(self, system: System) -> Unit {
        match (self, system) {
            (Self::Length, System::Metric) => Unit::Millimetre,
            (Self::Length, System::Us) => Unit::Inch,
            (Self::Mass, System::Metric) => Unit::Kilogram,
            (Self::Mass, System::Us) => Unit::Pound,
            (Self::Angle, _) => Unit::Degree,
            (Self::Speed, System::Metric) => Unit::KilometrePerHour,
            (Self::Speed, System::Us) => Unit::MilePerHour,
            (Self::Slope | Self::Part, _) => Unit::Percent,
            (Self::Acceleration, System::Metric) => Unit::MetrePerSecondSquared,
            (Self::Acceleration, System::Us) => Unit::FootPerSecondSquared,
            (Self::Ratio, _) => Unit::One,
        }
    }
}

/// Which way a displayed figure may be rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// Never more than the figure: for what is allowed, stood or in hand.
    Down,
    /// Never less than the figure: for what is asked, weighed or used.
    Up,
    /// To the nearest: for a figure as stated.
    Nearest,
}

/// `value` to a number of decimals, to the side asked for. A figure within a billionth of a step is
/// taken as standing on it, so that 0.3 does not become 0.4 by the noise of its last bit.
///
/// ```
/// use standfast_core::units::{round, Rounding};
/// assert_eq!(round(2.99, 1, Rounding::Down), 2.9);
/// assert_eq!(round(2.91, 1, Rounding::Up), 3.0);
/// assert_eq!(round(0.1 + 0.2, 1, Rounding::Up), 0.3);
/// ```
pub fn round(value: f64, decimals: u8, way: Rounding) -> f64 {
    let mut scale = 1.0;
    for _ in 0..decimals {
        scale *= 10.0;
    }
    let steps = value * scale;
    let nearest = steps.round();
    let whole = if (steps - nearest).abs() <= 1e-9 * nearest.abs().max(1.0) {
        nearest
    } else {
        match way {
            Rounding::Down => steps.floor(),
            Rounding::Up => steps.ceil(),
            Rounding::Nearest => nearest,
        }
    };
    whole / scale + 0.0
}

/// Slopes are percent of tangent, never degrees.
///
/// ```
/// use standfast_core::units::slope_angle;
/// assert!((slope_angle(0.04).to_degrees() - 2.29).abs() < 0.005);
/// ```
pub fn slope_angle(slope: f64) -> f64 {
    libm::atan(slope)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: exact definitions of 1959. Slopes: arithmetic from percent = tan (4, 6, 10, 18, 40, 50 %).
    #[test]
    fn conversions_are_exact() {
        assert!((Unit::Inch.to_document(24.0) - 0.6096).abs() < 1e-15);
        assert!((Unit::Pound.to_document(3000.0) - 1_360.777_11).abs() < 1e-9);
        assert!((Unit::MilePerHour.to_document(10.0) - 16.093_44).abs() < 1e-12);
        assert!((Unit::Millimetre.to_document(1350.0) - 1.35).abs() < 1e-16);
        for (percent, degrees) in [(4.0, 2.29), (6.0, 3.43), (10.0, 5.71), (18.0, 10.20), (40.0, 21.80), (50.0, 26.57)]
        {
            assert!((slope_angle(percent / 100.0).to_degrees() - degrees).abs() < 0.006, "{percent}");
        }
    }

    /// 10 degrees is 17.6 %: a rule in degrees is not the same rule in percent.
    #[test]
    fn ten_degrees_is_not_ten_percent() {
        assert!((Unit::SlopeDegree.to_document(10.0) - 17.63).abs() < 0.005);
        assert!((Unit::SlopeDegree.from_document(10.0) - 5.71).abs() < 0.005);
        assert!((Unit::Percent.to_document(10.0) - 10.0).abs() < 1e-15);
        assert!(Unit::SlopeDegree.to_document(90.0) > 1e6, "no range permits it");
        assert!((libm::tan(10.0_f64.to_radians()) - 0.1763).abs() < 5e-5);
    }

    #[test]
    fn rounding_keeps_its_side() {
        assert!(round(1234.001, 0, Rounding::Up) > 1234.5);
        assert!(round(1234.999, 0, Rounding::Down) < 1234.5);
        assert!(round(-0.04, 1, Rounding::Down) < -0.05);
        assert!(round(-0.04, 1, Rounding::Nearest).is_sign_positive());
    }
}
