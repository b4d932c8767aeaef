//! The load and the lift, from what was entered.

use super::Entries;
use crate::document::{CentreKnown, WeightKnown};
use crate::place::Field;
use crate::problem::Rule;
use crate::rules;
use crate::scalar::{Scalar, Span};
use crate::scenario::{Basis, Lift, Load, Truck};
use glam::DVec3;

impl Entries {
    pub(super) fn load(&mut self) -> Load {
        let mass = self.needed(Field::LoadMass);
        let tolerance = match self.document.load.weight_known {
            Some(WeightKnown::Scale) => rules::TOLERANCE_SCALE,
            Some(WeightKnown::Note) => rules::TOLERANCE_NOTE,
            // Not said how it is known: no better than an estimate.
            Some(WeightKnown::Estimate) | None => rules::TOLERANCE_ESTIMATE,
        };
        let size =
            DVec3::new(self.needed(Field::LoadLength), self.needed(Field::LoadWidth), self.needed(Field::LoadHeight));
        let (centre, centre_spread) = match self.document.load.centre_known {
            Some(CentreKnown::Mark) => {
                for (field, lo, hi) in [
                    (Field::LoadCgFromHeel, 0.0, size.x),
                    (Field::LoadCgLeft, -0.5 * size.y, 0.5 * size.y),
                    (Field::LoadCgAbove, 0.0, size.z),
                ] {
                    match self.entered(field) {
                        None => self.problem(field, None, Rule::Required),
                        Some(value) if size.min_element() > 0.0 && !(lo..=hi).contains(&value) => {
                            let (min, max) = (Scalar::computed(lo), Scalar::computed(hi));
                            self.problem(field, Some(value), Rule::Within { min, max });
                        }
                        Some(_) => {}
                    }
                }
                let at = DVec3::new(
                    self.needed(Field::LoadCgFromHeel),
                    self.needed(Field::LoadCgLeft),
                    self.needed(Field::LoadCgAbove),
                );
                (at, DVec3::splat(rules::TOLERANCE_CENTRE_MARKED.value))
            }
            Some(CentreKnown::Middle) | None => {
                let at = DVec3::new(0.5 * size.x, 0.0, 0.5 * size.z);
                let spread = size * rules::TOLERANCE_CENTRE_MIDDLE.value;
                for (field, value, spread) in [
                    (Field::LoadCgFromHeel, at.x, spread.x),
                    (Field::LoadCgLeft, at.y, spread.y),
                    (Field::LoadCgAbove, at.z, spread.z),
                ] {
                    self.assume(field, Span::about(value, spread), Basis::Middle);
                }
                (at, spread)
            }
        };
        Load { mass: Span::about(mass, tolerance.value * mass), size, centre, centre_spread }
    }

    pub(super) fn lift(&mut self, truck: &Truck) -> Lift {
        for field in [Field::LiftHeight, Field::TakeUp, Field::TravelLift] {
            self.at_most(field, Field::MastLift);
        }
        self.at_most(Field::TiltBack, Field::MaxTiltBack);
        self.at_most(Field::TiltForward, Field::MaxTiltForward);
        let heel_gap = match self.entered(Field::HeelGap) {
            Some(gap) => Span::exact(gap),
            None => {
                let gap = Span { lo: 0.0, nominal: 0.0, hi: rules::HEEL_GAP_UNKNOWN.value };
                self.assume(Field::HeelGap, gap, Basis::Figure { id: rules::HEEL_GAP_UNKNOWN.id });
                gap
            }
        };
        let offset = match self.entered(Field::Offset) {
            Some(offset) => Span::exact(offset),
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
