//! How far each figure may be from what is stated: from a document's tolerances, or what is taken for
//! what nobody entered.
//!
//! Each is a range about nothing, `lo <= 0 <= hi`, in m, kg, rad, m/s, m/s^2 and tangents, to be added
//! to the stated figure. Load, heel gap, offset, battery fitted, give and blades carry their own range.

use crate::place::{Field, Place};
use crate::scalar::Span;

/// The most moving mast sections.
pub const MOST_STAGES: usize = 3;

/// Nothing uncertain.
const SURE: Span = Span::exact(0.0);

macro_rules! doubts {
    ($($(#[$doc:meta])* $name:ident: $field:ident,)*) => {
        /// The ranges of a scenario's figures about what is stated.
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct Doubts {
            $($(#[$doc])* pub $name: Span,)*
            /// The weight of each moving mast section.
            pub stage_mass: [Span; MOST_STAGES],
            /// How far each rises for each metre of lift.
            pub stage_ratio: [Span; MOST_STAGES],
        }

        impl Doubts {
            /// Everything known exactly.
            pub const NONE: Self = Self {
                $($name: SURE,)*
                stage_mass: [SURE; MOST_STAGES],
                stage_ratio: [SURE; MOST_STAGES],
            };

            /// The figures that have a range here, sections' apart.
            pub const FIELDS: &'static [Field] = &[$(Field::$field),*];

            /// The range of a figure, to read or to change; `None` for one that carries its own.
            pub fn range(&mut self, place: Place) -> Option<&mut Span> {
                match place.field {
                    $(Field::$field => Some(&mut self.$name),)*
                    Field::StageMass => self.stage_mass.get_mut(place.row),
                    Field::StageRatio => self.stage_ratio.get_mut(place.row),
                    _ => None,
                }
            }
        }
    };
}

doubts! {
    /// Front axle to steer axle.
    wheelbase: Wheelbase,
    /// Between the middles of the front tyres.
    tread: Tread,
    /// Front axle to fork face.
    load_distance: LoadDistance,
    /// Service weight.
    service: Service,
    /// Front axle load, unladen.
    front_axle: FrontAxle,
    /// Steer axle load, unladen.
    steer_axle: SteerAxleLoad,
    /// Height of the unladen centre.
    cg_height: CgHeight,
    /// The operator's weight.
    operator: Operator,
    /// The battery that the service weight includes.
    battery_stated: BatteryStated,
    /// The steer axle's weight.
    axle_mass: AxleMass,
    /// Lift before the mast rises.
    free_lift: FreeLift,
    /// Lowered height.
    lowered: MastLowered,
    /// The fixed mast section.
    outer: MastOuter,
    /// Tilt pivot along the truck.
    pivot_x: MastPivotX,
    /// Tilt pivot's height.
    pivot_z: MastPivotZ,
    /// Sideways play.
    play: MastPlay,
    /// Fork carriage.
    carriage: Carriage,
    /// Pair of forks.
    fork_pair: ForkPair,
    /// Blade length.
    fork_length: ForkLength,
    /// Width over the forks.
    fork_spread: ForkSpread,
    /// Length of fork extensions.
    extension: Extension,
    /// Weight of fork extensions.
    extension_mass: ExtensionMass,
    /// Attachment's weight.
    attachment_mass: AttachmentMass,
    /// Its centre ahead of the fork face.
    attachment_ahead: AttachmentAhead,
    /// Its centre above the blades.
    attachment_above: AttachmentAbove,
    /// Lost load.
    lost_load: LostLoad,
    /// The truck's tilt back, as it is used for travelling.
    tilt_back_most: MaxTiltBack,
    /// Sideshift.
    sideshift: Sideshift,
    /// Fork height at take-up.
    take_up: TakeUp,
    /// Fork height travelling.
    travel: TravelLift,
    /// Fork height for putting down.
    height: LiftHeight,
    /// Tilt back while raised.
    tilt_back: TiltBack,
    /// Tilt forward for placing.
    tilt_forward: TiltForward,
    /// Deceleration.
    braking: Braking,
    /// Speed in a bend with the load.
    corner_speed: CornerSpeed,
    /// Speed in a bend without it.
    corner_speed_empty: CornerSpeedEmpty,
    /// Radius of the bend.
    radius: CornerRadius,
    /// The ramp's grade.
    ramp: RampGrade,
    /// The cross-fall.
    cross_fall: CrossFall,
}

impl Default for Doubts {
    fn default() -> Self {
        Self::NONE
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The table here and the table of how figures are known are about the same figures.
    #[test]
    fn every_figure_with_a_way_of_being_known_has_a_range_somewhere() {
        let own = [
            Field::BatteryFitted,
            Field::BatteryBehind,
            Field::BatteryHeight,
            Field::PivotHeight,
            Field::MastGive,
            Field::HookAbove,
            Field::HeelGap,
            Field::Offset,
            // A limit of the truck's own, beyond which no tilt is asked.
            Field::MaxTiltForward,
            // Held against the unladen ones, and nothing else.
            Field::FrontAxleLaden,
            Field::SteerAxleLaden,
        ];
        for &field in Field::NUMBERS {
            let mut doubts = Doubts::NONE;
            let here = doubts.range(field.into()).is_some();
            assert_eq!(here || own.contains(&field), field.usually().is_some(), "{field:?}");
        }
    }
}
