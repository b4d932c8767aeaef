//! How far each figure may be out: an entered one as it is known, an assumed one as far as is taken for it.

use super::Entries;
use crate::document::By;
use crate::doubt::Doubts;
use crate::known;
use crate::place::{Field, Place};
use crate::rules;
use crate::scalar::{Scalar, Span};
use crate::units::Quantity;

/// From the document's unit to the model's.
fn in_model(field: Field) -> f64 {
    match field.row().quantity {
        Some(Quantity::Angle) => 1.0_f64.to_radians(),
        Some(Quantity::Speed) => 1.0 / 3.6,
        Some(Quantity::Slope | Quantity::Part) => 0.01,
        _ => 1.0,
    }
}

/// How far a figure that nobody entered may be from what stands for it, in the document's unit.
fn unentered(field: Field, taken: f64) -> Span {
    let about = |t: f64| Span::about(0.0, t);
    match field {
        // The heavy end stands for it already.
        Field::MastOuter | Field::StageMass | Field::Carriage | Field::ForkPair => {
            Span { lo: -rules::ASSUMED_PART_LIGHTER.value * taken, nominal: 0.0, hi: 0.0 }
        }
        Field::MastPivotX | Field::MastPivotZ | Field::MastLowered | Field::AttachmentAbove => {
            about(rules::TOLERANCE_BUILT_IN.value)
        }
        Field::AxleMass | Field::TravelLift => about(known::tolerance(field, By::Estimate, taken)),
        // Chosen to the cautious side already: no worse than if it were entered.
        Field::Braking | Field::CornerSpeed | Field::CornerSpeedEmpty | Field::CornerRadius => {
            about(field.usually().map_or(0.0, |by| known::tolerance(field, by, taken)))
        }
        Field::TiltBack | Field::TiltForward => about(rules::TOLERANCE_ANGLE.value),
        // Nobody shifts, lifts or tilts what is not said; the least rise and the quickest section are the
        // worst already; who sits on the truck counts from nobody upward.
        _ => Span::exact(0.0),
    }
}

impl Entries {
    /// The ranges of all figures; those of assumed ones are noted in the list of what was assumed.
    pub(super) fn doubts(&mut self) -> Doubts {
        let mut doubts = Doubts::NONE;
        let sections = (0..crate::doubt::MOST_STAGES)
            .flat_map(|row| [Field::StageMass, Field::StageRatio].map(|f| Place::in_row(f, row)));
        for place in Doubts::FIELDS.iter().copied().map(Place::from).chain(sections) {
            let range = self.doubt(place);
            if let Some(slot) = doubts.range(place) {
                let unit = in_model(place.field);
                *slot = Span { lo: range.lo * unit, nominal: 0.0, hi: range.hi * unit };
            }
        }
        // The one section that stands for a mast whose sections were not entered.
        if self.document.truck.mast.stages.is_empty()
            && let Some(section) = self.assumed.iter_mut().find(|a| a.place.field == Field::Stages)
        {
            doubts.stage_mass[0] = unentered(Field::StageMass, section.hi.get());
            section.lo = Scalar::computed(section.lo.get() + doubts.stage_mass[0].lo);
        }
        doubts
    }

    /// A figure's range about what is stated, in the document's unit.
    fn doubt(&mut self, place: Place) -> Span {
        let row = place.field.row();
        if let Some(value) = self.entered(place) {
            let tolerance = self.tolerance(place, value, 0.0);
            // No further than anything of the kind can be.
            return Span { lo: (-tolerance).max(row.min.min(0.0) - value), nominal: 0.0, hi: tolerance };
        }
        let Some(assumed) = self.assumed.iter_mut().find(|a| a.place == place) else { return Span::exact(0.0) };
        if assumed.lo != assumed.hi {
            // A range of its own already.
            return Span::exact(0.0);
        }
        let range = unentered(place.field, assumed.lo.get());
        assumed.lo = Scalar::computed(assumed.lo.get() + range.lo);
        assumed.hi = Scalar::computed(assumed.hi.get() + range.hi);
        range
    }
}
