//! Which figures count as the choices stand. What a choice hides keeps its text for when it shows again.

use super::Entries;
use standfast_core::document::{CentreKnown, GivenAs, PlateFor, Shape, Wheels};
use standfast_core::place::{Field, Place};

impl Entries {
    /// Whether a figure counts, as the choices stand.
    pub fn counts(&self, place: impl Into<Place>) -> bool {
        let place = place.into();
        let as_block = self.given_as == GivenAs::Block;
        let traced = || self.trace.as_ref().filter(|_| self.given_as == GivenAs::Trace);
        match place.field {
            Field::AxleMass | Field::PivotHeight => self.wheels == Some(Wheels::Four),
            Field::PlateAttachmentMass => self.plate_for == Some(PlateFor::Attachment),
            Field::LoadLength | Field::LoadWidth | Field::LoadHeight => as_block,
            Field::LoadCgFromHeel | Field::LoadCgLeft | Field::LoadCgAbove => {
                as_block && self.centre_known == Some(CentreKnown::Mark)
            }
            Field::PartMass
            | Field::PartLength
            | Field::PartWidth
            | Field::PartHeight
            | Field::PartDiameter
            | Field::PartBore
            | Field::PartAhead
            | Field::PartLeft
            | Field::PartAbove => self.given_as == GivenAs::Parts && self.counts_in_part(place),
            // The rectangle sets the scale where there is one.
            Field::TraceScale => traced().is_some_and(|t| t.rectangle.is_empty()),
            Field::TraceRectangleWidth | Field::TraceRectangleHeight => {
                traced().is_some_and(|t| !t.rectangle.is_empty())
            }
            Field::TraceThrough => traced().is_some(),
            Field::WeighRaised | Field::WeighRaisedReading => self.weighing.is_some_and(|w| w.raised_end.is_some()),
            Field::HookAbove => self.hanging,
            field => self.counts_in_drive(field).unwrap_or(true),
        }
    }

    /// The same for a figure of a part: its shape says which of its dimensions there are.
    fn counts_in_part(&self, place: Place) -> bool {
        let Some(part) = self.parts.get(place.row) else { return false };
        match place.field {
            Field::PartMass => part.cut_from.is_none(),
            Field::PartAhead | Field::PartLeft | Field::PartAbove => true,
            field => part.shape.is_some_and(|shape| dimensions(shape).contains(&field)),
        }
    }
}

/// The dimensions of a shape.
pub fn dimensions(shape: Shape) -> &'static [Field] {
    match shape {
        Shape::Box | Shape::Wedge => &[Field::PartLength, Field::PartWidth, Field::PartHeight],
        Shape::Cylinder | Shape::Cone => &[Field::PartDiameter, Field::PartLength],
        Shape::Tube => &[Field::PartDiameter, Field::PartBore, Field::PartLength],
        Shape::Sphere | Shape::HalfSphere => &[Field::PartDiameter],
        Shape::Prism => &[Field::PartLength],
    }
}
