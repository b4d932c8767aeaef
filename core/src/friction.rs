//! How well a load's underside holds on the fork blades.

use crate::rules::{Figure, Mark};
use crate::scalar::Span;
use serde::{Deserialize, Serialize};

/// What lies on the steel of the blades.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Underside {
    /// A wooden pallet.
    WoodenPallet,
    /// A plastic pallet.
    PlasticPallet,
    /// Planed wood.
    PlanedWood,
    /// Smooth metal.
    SmoothMetal,
    /// Rough metal.
    RoughMetal,
    /// A steel crate.
    SteelCrate,
    /// Anti-slip mat between blades and load.
    AntiSlipMat,
}

/// Dynamic friction as a part of static friction: what a load that has begun to move still has.
///
/// Source: CTU Code, annex 7, appendix 2 (read).
pub const DYNAMIC: f64 = 0.75;

impl Underside {
    /// All of them.
    pub const ALL: [Self; 7] = [
        Self::WoodenPallet,
        Self::PlasticPallet,
        Self::PlanedWood,
        Self::SmoothMetal,
        Self::RoughMetal,
        Self::SteelCrate,
        Self::AntiSlipMat,
    ];

    /// Coefficient of static friction, swept clean.
    ///
    /// Source: CTU Code, annex 7, appendix 2; anti-slip mat EN 12195-1.
    pub const fn figure(self) -> Figure {
        const CTU: &str = "CTU Code, annex 7, appendix 2 (wiki.unece.org), on steel";
        let (id, value, source) = match self {
            Self::WoodenPallet => ("FRICTION_WOODEN_PALLET", 0.30, CTU),
            Self::PlasticPallet => ("FRICTION_PLASTIC_PALLET", 0.15, CTU),
            Self::PlanedWood => ("FRICTION_PLANED_WOOD", 0.20, CTU),
            Self::SmoothMetal => ("FRICTION_SMOOTH_METAL", 0.20, CTU),
            Self::RoughMetal => ("FRICTION_ROUGH_METAL", 0.40, CTU),
            Self::SteelCrate => ("FRICTION_STEEL_CRATE", 0.20, CTU),
            Self::AntiSlipMat => ("FRICTION_ANTI_SLIP_MAT", 0.60, "EN 12195-1"),
        };
        Figure { id, value, unit: "", source, mark: Mark::Read }
    }

    /// The range to count with: as stated the static figure, at worst the dynamic one.
    pub fn range(self) -> Span {
        let value = self.figure().value;
        Span { lo: DYNAMIC * value, nominal: value, hi: value }
    }

    /// Where nobody said what it is: the most slippery of the table.
    pub fn unknown() -> Span {
        Self::ALL.into_iter().map(Self::range).fold(Self::PlasticPallet.range(), |a, b| if b.lo < a.lo { b } else { a })
    }
}

/// The slope, rad, on which a load begins to slide.
///
/// ```
/// use standfast_core::friction::slide_angle;
/// // Case C20 (CTU Code): 0.30 slides at 16.7 degrees, 0.15 at 8.5.
/// assert!((slide_angle(0.30).to_degrees() - 16.7).abs() < 0.05);
/// assert!((slide_angle(0.15).to_degrees() - 8.5).abs() < 0.05);
/// ```
pub fn slide_angle(friction: f64) -> f64 {
    libm::atan(friction)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: CTU Code, annex 7, appendix 2, restated.
    #[test]
    fn the_table_is_the_sources() {
        let values = Underside::ALL.map(|u| (100.0 * u.figure().value).round() as i32);
        assert_eq!(values, [30, 15, 20, 20, 40, 20, 60]);
        assert!((Underside::WoodenPallet.range().lo - 0.225).abs() < 1e-15, "dynamic is 75 %");
        assert_eq!(Underside::unknown(), Underside::PlasticPallet.range());
    }
}
