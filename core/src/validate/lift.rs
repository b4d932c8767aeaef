//! The lift, from what was entered.

use super::Entries;
use crate::place::Field;
use crate::rules;
use crate::scalar::Span;
use crate::scenario::{Basis, Lift, Truck};

impl Entries {
    pub(super) fn lift(&mut self, truck: &Truck) -> Lift {
        for field in [Field::LiftHeight, Field::TakeUp, Field::TravelLift] {
            self.at_most(field, Field::MastLift);
        }
        self.at_most(Field::TiltBack, Field::MaxTiltBack);
        self.at_most(Field::TiltForward, Field::MaxTiltForward);
        let heel_gap = match self.entered(Field::HeelGap) {
            Some(gap) => {
                let tolerance = self.tolerance(Field::HeelGap, gap, 0.0);
                Span { lo: (gap - tolerance).max(0.0), nominal: gap, hi: gap + tolerance }
            }
            None => {
                let gap = Span { lo: 0.0, nominal: 0.0, hi: rules::HEEL_GAP_UNKNOWN.value };
                self.assume(Field::HeelGap, gap, Basis::Figure { id: rules::HEEL_GAP_UNKNOWN.id });
                gap
            }
        };
        let offset = match self.entered(Field::Offset) {
            Some(offset) => Span::about(offset, self.tolerance(Field::Offset, offset, 0.0)),
            None => {
                let offset = Span::about(0.0, rules::OFFSET_UNKNOWN.value);
                self.assume(Field::Offset, offset, Basis::Figure { id: rules::OFFSET_UNKNOWN.id });
                offset
            }
        };
        let travel = rules::TRAVEL_LIFT_DEFAULT;
        let back_limit = truck.mast.tilt_back.to_degrees();
        let place_tilt = rules::PLACE_TILT_DEFAULT.value.min(truck.mast.tilt_forward.to_degrees());
        Lift {
            heel_gap,
            offset,
            sideshift: self.or_worked(Field::Sideshift, 0.0, Basis::Zero),
            take_up: self.or_worked(Field::TakeUp, 0.0, Basis::Zero),
            travel: self.or_worked(
                Field::TravelLift,
                travel.value.min(truck.mast.lift),
                Basis::Figure { id: travel.id },
            ),
            height: self.needed(Field::LiftHeight),
            tilt_back: self.entered(Field::TiltBack).map_or_else(
                || {
                    self.assume(Field::TiltBack, Span::exact(back_limit), Basis::TruckLimit);
                    truck.mast.tilt_back
                },
                f64::to_radians,
            ),
            tilt_forward: self
                .or_worked(Field::TiltForward, place_tilt, Basis::Figure { id: rules::PLACE_TILT_DEFAULT.id })
                .to_radians(),
        }
    }
}
