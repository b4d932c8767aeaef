//! What loads are made of: densities, each with its range, source and mark.

use crate::rules::Mark;
use crate::scalar::Span;
use serde::{Deserialize, Serialize};

/// A row of the table of densities.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Density {
    /// As usual and the range it may lie in, kg/m^3.
    pub span: Span,
    /// Where it stands.
    pub source: &'static str,
    /// How sure it is.
    pub mark: Mark,
}

macro_rules! materials {
    ($($(#[$doc:meta])* $name:ident = $lo:literal, $nominal:literal, $hi:literal, $mark:ident, $source:literal;)*) => {
        /// A material.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[serde(rename_all = "snake_case")]
        pub enum Material { $($(#[$doc])* $name,)* }

        impl Material {
            /// All of them, in the order of the table.
            pub const ALL: &'static [Self] = &[$(Self::$name),*];

            /// Its density.
            pub const fn density(self) -> Density {
                match self {
                    $(Self::$name => Density {
                        span: Span { lo: $lo, nominal: $nominal, hi: $hi }, source: $source, mark: Mark::$mark,
                    },)*
                }
            }
        }
    };
}

materials! {
    /// Steel.
    Steel = 7700.0, 7850.0, 8000.0, Memory, "EN 1991-1-1, annex A: 77.0 to 78.5 kN/m3; stainless up to 8,000 kg/m3";
    /// Cast iron.
    CastIron = 6600.0, 7200.0, 7700.0, Read,
        "machinemfg.com, density table of metals: grey 6,600 to 7,400, malleable 7,200 to 7,400, white 7,400 to 7,700";
    /// Aluminium.
    Aluminium = 2640.0, 2700.0, 2850.0, Read,
        "wermac.org, density of metals: aluminium 2,712, alloys 2,640 to 2,830";
    /// Copper, brass, bronze.
    Copper = 7400.0, 8700.0, 8960.0, Read,
        "wermac.org, density of metals: bronze 7,400 to 8,920, brass 8,400 to 8,730, copper 8,940";
    /// Lead.
    Lead = 10900.0, 11340.0, 11650.0, Read,
        "wermac.org, density of metals: hard lead 10,900, lead 11,340, and a margin above";
    /// Concrete, plain or reinforced.
    Concrete = 2200.0, 2400.0, 2550.0, Read,
        "EN 1991-1-1, annex A, restated by structville.com: 24 kN/m3, reinforced 25";
    /// Granite and other hard stone.
    Granite = 2600.0, 2750.0, 3060.0, Read,
        "EN 1991-1-1, annex A, restated by structville.com: 27 to 30 kN/m3";
    /// Sandstone, limestone and other soft stone.
    Sandstone = 2000.0, 2400.0, 2960.0, Read,
        "EN 1991-1-1, annex A, restated by structville.com: sandstone 21 to 27 kN/m3, limestone 20 to 29";
    /// Brick and fired clay, solid.
    Brick = 1600.0, 1900.0, 2200.0, Memory, "usual range of fired clay";
    /// Glass.
    Glass = 2450.0, 2500.0, 2600.0, Memory, "EN 1991-1-1, annex A: 25 kN/m3";
    /// Softwood, dry to moist.
    Softwood = 350.0, 500.0, 650.0, Read,
        "EN 1991-1-1, annex A, restated by structville.com: C14 to C30 3.5 to 4.6 kN/m3; moist above that";
    /// Hardwood, dry to moist.
    Hardwood = 580.0, 720.0, 1105.0, Memory,
        "EN 1991-1-1, annex A: D30 to D70 6.4 to 10.8 kN/m3 (D30 6.4 and D50 7.8 read)";
    /// Plywood, chipboard, fibreboard.
    WoodBoard = 450.0, 680.0, 1020.0, Memory, "EN 1991-1-1, annex A: 5 to 10 kN/m3";
    /// Paper in stacks and rolls.
    Paper = 700.0, 1000.0, 1530.0, Memory, "EN 1991-1-1, annex A: rolls 15 kN/m3, dense stacks 11, files 8.5";
    /// Plastics, solid.
    Plastic = 900.0, 1050.0, 1450.0, Memory, "polyethylene to PVC";
    /// Rubber.
    Rubber = 930.0, 1200.0, 1735.0, Memory, "EN 1991-1-1, annex A: 10 to 17 kN/m3";
    /// Water, and what is about as heavy.
    Water = 990.0, 1000.0, 1030.0, Memory, "EN 1991-1-1, annex A: 10 kN/m3";
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_density_is_a_range_with_a_source() {
        for material in Material::ALL {
            let Density { span, source, .. } = material.density();
            assert!(0.0 < span.lo && span.lo < span.nominal && span.nominal < span.hi, "{material:?}");
            assert!(span.hi < 25_000.0 && !source.is_empty());
        }
    }

    /// Source: EN 1991-1-1, annex A, as restated by structville.com, kN/m3 over 9.81 m/s2: whatever it
    /// allows lies in the range.
    #[test]
    fn the_ranges_take_in_what_was_read() {
        for (material, least, most) in [
            (Material::Concrete, 24.0, 25.0),
            (Material::Granite, 27.0, 30.0),
            (Material::Sandstone, 20.0, 29.0),
            (Material::Softwood, 3.5, 4.6),
            (Material::Hardwood, 6.4, 7.8),
        ] {
            let span = material.density().span;
            assert!(span.lo <= least * 1000.0 / 9.81 && most * 1000.0 / 9.81 <= span.hi, "{material:?}");
        }
    }
}
