//! The drive, from what was entered.

use super::Entries;
use crate::document::RampDown;
use crate::place::Field;
use crate::rules;
use crate::scenario::Drive;

/// Metres a second in a km/h.
const KMH: f64 = 1.0 / 3.6;

impl Entries {
    pub(super) fn drive(&mut self) -> Drive {
        let choices = self.document.drive.clone();
        let looked_at = |choice: Option<bool>| choice != Some(false);
        let braking = looked_at(choices.brake).then(|| self.or_figure(Field::Braking, rules::BRAKING_LADEN));
        let bends = looked_at(choices.corner) || looked_at(choices.corner_empty);
        let radius = if bends { self.or_figure(Field::CornerRadius, rules::CORNER_RADIUS) } else { 0.0 };
        let mut corner =
            |choice, field| looked_at(choice).then(|| (self.or_figure(field, rules::CORNER_SPEED) * KMH, radius));
        let laden = corner(choices.corner, Field::CornerSpeed);
        let empty = corner(choices.corner_empty, Field::CornerSpeedEmpty);
        let ramp = self.entered(Field::RampGrade).map(|p| p / 100.0);
        Drive {
            braking,
            corner: laden,
            corner_empty: empty,
            ramp,
            // Unless somebody says otherwise the load stays uphill, as the rule for loaded trucks is.
            load_downhill: ramp.is_some() && choices.ramp_down == Some(RampDown::Forwards),
            cross_fall: self.entered(Field::CrossFall).map(|p| p / 100.0),
            reserve: self.or_figure(Field::Reserve, rules::RESERVE) / 100.0,
        }
    }
}
