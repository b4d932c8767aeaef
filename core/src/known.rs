//! How a figure is known, and how far it may be out for that.
//!
//! A figure is known by a plate, a maker's sheet, a scale, a note, a tape or an estimate; each way has a
//! tolerance, which can be replaced for any one figure. What nobody entered is no better than estimated.

use crate::document::{By, Document, Known};
use crate::place::{Field, Place};
use crate::rules;
use crate::units::Quantity;

impl Field {
    /// How this figure is taken to be known where nobody says. `None` for what counts as it stands:
    /// the plate's own figures, ratings, what is stamped; and for a load's figures, which have ways of
    /// their own ([`weight_known`](crate::document::Load), a mark, parts, a trace, a scale).
    pub const fn usually(self) -> Option<By> {
        match self {
            Self::Wheelbase
            | Self::Tread
            | Self::LoadDistance
            | Self::Service
            | Self::FrontAxle
            | Self::SteerAxleLoad
            | Self::FrontAxleLaden
            | Self::SteerAxleLaden
            | Self::CgHeight
            | Self::BatteryStated
            | Self::BatteryBehind
            | Self::BatteryHeight
            | Self::AxleMass
            | Self::PivotHeight
            | Self::FreeLift
            | Self::MastLowered
            | Self::MaxTiltBack
            | Self::MaxTiltForward
            | Self::MastOuter
            | Self::StageMass
            | Self::StageRatio
            | Self::MastPivotX
            | Self::MastPivotZ
            | Self::Carriage
            | Self::ForkPair
            | Self::ExtensionMass
            | Self::AttachmentMass
            | Self::AttachmentAhead
            | Self::AttachmentAbove
            | Self::LostLoad => Some(By::Sheet),
            Self::BatteryFitted => Some(By::Plate),
            Self::Operator => Some(By::Scale),
            Self::MastGive
            | Self::MastPlay
            | Self::ForkLength
            | Self::ForkSpread
            | Self::Extension
            | Self::HookAbove
            | Self::HeelGap
            | Self::Offset
            | Self::Sideshift
            | Self::TakeUp
            | Self::TravelLift
            | Self::LiftHeight
            | Self::TiltBack
            | Self::TiltForward
            | Self::CornerRadius
            | Self::RampGrade
            | Self::CrossFall => Some(By::Tape),
            // As it was ordered, or as the truck is set.
            Self::Braking | Self::CornerSpeed | Self::CornerSpeedEmpty => Some(By::Sheet),
            _ => None,
        }
    }

    /// The ways that this figure can be known, for a person to choose from; none where it has none.
    pub fn ways(self) -> &'static [By] {
        if self.usually().is_none() {
            return &[];
        }
        match self.row().quantity {
            Some(Quantity::Length | Quantity::Angle) => &[By::Plate, By::Sheet, By::Tape, By::Estimate],
            Some(Quantity::Mass) => &[By::Plate, By::Sheet, By::Scale, By::Note, By::Estimate],
            Some(Quantity::Speed | Quantity::Acceleration | Quantity::Ratio) => &[By::Sheet, By::Tape, By::Estimate],
            Some(Quantity::Slope) => &[By::Sheet, By::Tape, By::Estimate],
            _ => &[],
        }
    }

    /// Whether a tolerance of one's own may be entered for this figure.
    pub fn takes_tolerance(self) -> bool {
        self.usually().is_some()
            || matches!(
                self,
                Self::LoadMass | Self::LoadCgFromHeel | Self::LoadCgLeft | Self::LoadCgAbove | Self::PartMass
            )
    }
}

/// How far a figure may be out, each way, known so: in the document's unit, as `value` is.
///
/// ```
/// use standfast_core::{document::By, known::tolerance, place::Field};
/// assert_eq!(tolerance(Field::Service, By::Sheet, 3000.0), 60.0);
/// assert_eq!(tolerance(Field::HeelGap, By::Tape, 0.02), 0.01);
/// assert_eq!(tolerance(Field::BatteryFitted, By::Plate, 860.0), 0.0);
/// ```
pub fn tolerance(field: Field, by: By, value: f64) -> f64 {
    let part = |f: rules::Figure| f.value * value.abs();
    match (field.row().quantity, by) {
        (_, By::Plate) => 0.0,
        // No tape reaches a centre of gravity.
        (Some(Quantity::Length), By::Sheet | By::Note | By::Tape | By::Scale) if field == Field::CgHeight => {
            rules::TOLERANCE_SHEET_CG.value
        }
        (Some(Quantity::Length), By::Sheet | By::Note) => rules::TOLERANCE_SHEET_LENGTH.value,
        (Some(Quantity::Length), By::Tape | By::Scale) => rules::TOLERANCE_TAPE_TRUCK.value,
        (Some(Quantity::Length), By::Estimate) => {
            rules::TOLERANCE_ESTIMATE_LENGTH.value.max(part(rules::TOLERANCE_ESTIMATE_LENGTH_PART))
        }
        (Some(Quantity::Mass), By::Sheet) => part(rules::TOLERANCE_SHEET_MASS),
        (Some(Quantity::Mass), By::Scale) => part(rules::TOLERANCE_SCALE),
        (Some(Quantity::Mass), By::Note) => part(rules::TOLERANCE_NOTE),
        (Some(Quantity::Mass), By::Tape | By::Estimate) => part(rules::TOLERANCE_ESTIMATE),
        (Some(Quantity::Angle), By::Estimate) => rules::TOLERANCE_ESTIMATE_ANGLE.value,
        (Some(Quantity::Angle), _) => rules::TOLERANCE_ANGLE.value,
        (Some(Quantity::Slope), By::Estimate) => rules::TOLERANCE_ESTIMATE_SLOPE.value,
        (Some(Quantity::Slope), _) => rules::TOLERANCE_SLOPE.value,
        (Some(Quantity::Speed | Quantity::Acceleration | Quantity::Ratio), By::Estimate) => {
            part(rules::TOLERANCE_ESTIMATE_DRIVE)
        }
        (Some(Quantity::Speed | Quantity::Acceleration | Quantity::Ratio), _) => part(rules::TOLERANCE_SHEET_DRIVE),
        (Some(Quantity::Part) | None, _) => 0.0,
    }
}

/// The figure that a path of [`Document::known`] names, `None` where there is no such figure.
///
/// ```
/// use standfast_core::{known::place_of, place::{Field, Place}};
/// assert_eq!(place_of("truck.mast.stages[1].ratio"), Some(Place::in_row(Field::StageRatio, 1)));
/// assert_eq!(place_of("truck.colour"), None);
/// ```
pub fn place_of(path: &str) -> Option<Place> {
    let (pattern, row) = match path.split_once('[').and_then(|(head, rest)| Some((head, rest.split_once(']')?))) {
        Some((head, (digits, rest))) => (format!("{head}[]{rest}"), digits.parse().ok()?),
        None => (path.to_owned(), 0),
    };
    let field = Field::NUMBERS.iter().copied().find(|f| f.row().path == pattern)?;
    let place = Place::in_row(field, row);
    (place.to_string() == path).then_some(place)
}

/// What a document says of how a figure is known; nothing said is the default.
pub fn known(document: &Document, place: Place) -> Known {
    document.known.get(&place.to_string()).copied().unwrap_or_default()
}

/// How far an entered figure may be out, each way, in the document's unit: the tolerance said, or that
/// of how it is known. `None` for a figure that has none of its own here.
pub fn tolerance_of(document: &Document, place: Place, value: f64) -> Option<f64> {
    let said = known(document, place);
    let by = said.by.or(place.field.usually());
    said.tolerance
        .filter(|_| place.field.takes_tolerance())
        .or_else(|| place.field.usually().and(by).map(|by| tolerance(place.field, by, value)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_surer_way_is_never_the_wider_one() {
        for &field in Field::NUMBERS {
            let row = field.row();
            for value in [row.min, 0.5 * (row.min + row.max), row.max] {
                let ways = field.ways().iter().map(|by| tolerance(field, *by, value));
                let widths: Vec<f64> = ways.collect();
                assert!(widths.iter().all(|w| w.is_finite() && *w >= 0.0));
                assert!(
                    widths.windows(2).all(|w| w[0] <= w[1] || field.row().quantity == Some(Quantity::Mass)),
                    "{field:?} {widths:?}"
                );
                if let Some(usual) = field.usually() {
                    assert!(field.ways().contains(&usual), "{field:?}");
                    assert!(tolerance(field, usual, value) <= tolerance(field, By::Estimate, value) + 1e-12);
                }
            }
        }
    }

    #[test]
    fn what_is_said_goes_before_what_is_usual() {
        let mut document = Document::default();
        let place = Place::from(Field::Tread);
        assert_eq!(tolerance_of(&document, place, 0.9), Some(rules::TOLERANCE_SHEET_LENGTH.value));
        document.known.insert("truck.tread_m".to_owned(), Known { by: Some(By::Tape), tolerance: None });
        assert_eq!(tolerance_of(&document, place, 0.9), Some(rules::TOLERANCE_TAPE_TRUCK.value));
        document.known.insert("truck.tread_m".to_owned(), Known { by: Some(By::Tape), tolerance: Some(0.002) });
        assert_eq!(tolerance_of(&document, place, 0.9), Some(0.002));
        // A plate's row is what the plate says.
        document.known.insert("truck.plate.rows[0].capacity_kg".to_owned(), Known { by: None, tolerance: Some(5.0) });
        assert_eq!(tolerance_of(&document, Place::in_row(Field::PlateCapacity, 0), 1000.0), None);
    }
}
