//! What a plate says of the truck it was issued for, held against the truck as it stands. What it does not
//! say is not held against anything.

use super::{Finding, Gap, Tilted};
use crate::document::PlateFor;
use crate::rules;
use crate::scalar::Scalar;
use crate::scenario::{Plate, Truck};

/// All that is otherwise than the plate says.
///
/// Sources: 29 CFR 1910.178 (a)(4), (a)(5): the plate changed with what affects capacity, an attachment
/// marked on it; AS 2359.1 cl. 14.4: attachment, lift height and tilt on the plate. Tyres: common practice.
pub fn differences(plate: &Plate, truck: &Truck) -> Vec<Finding> {
    let mut found: Vec<Finding> = front_end(plate, truck).into_iter().collect();
    let c = Scalar::computed;
    if let Some(named) = plate.mast_lift
        && (named - truck.mast.lift).abs() > rules::PLATE_SAME_LIFT.value + 1e-9
    {
        found.push(Finding::stated(Gap::OtherMast { named: c(named), fitted: c(truck.mast.lift) }));
    }
    if let Some(named) = plate.tyres
        && truck.tyres != Some(named)
    {
        let gap = Gap::OtherTyres { named, fitted: truck.tyres };
        found.push(Finding { gap, as_stated: truck.tyres.is_some() });
    }
    let tilts = [
        (Tilted::Back, plate.tilt_back, truck.mast.tilt_back),
        (Tilted::Forward, plate.tilt_forward, truck.mast.tilt_forward),
    ];
    for (way, named, fitted) in tilts {
        if let Some(named) = named.map(f64::to_degrees)
            && fitted.to_degrees() > named + rules::PLATE_SAME_TILT.value + 1e-9
        {
            found.push(Finding::stated(Gap::OtherTilt { way, named: c(named), fitted: c(fitted.to_degrees()) }));
        }
    }
    found
}

/// Bare forks or an attachment, and which.
fn front_end(plate: &Plate, truck: &Truck) -> Option<Finding> {
    let c = Scalar::computed;
    let named_mass = plate.attachment_mass.map(c);
    let issued_for = plate.issued_for;
    match (issued_for, &truck.attachment) {
        (PlateFor::Forks, None) => None,
        (PlateFor::Forks, Some(a)) => {
            let gap = Gap::OtherFrontEnd { issued_for, name: a.name.clone(), mass: Some(c(a.mass)) };
            Some(Finding::stated(gap))
        }
        (PlateFor::Attachment, None) => {
            let gap = Gap::OtherFrontEnd { issued_for, name: plate.attachment.clone(), mass: named_mass };
            Some(Finding::stated(gap))
        }
        (PlateFor::Attachment, Some(a)) => {
            let named = (plate.attachment.as_str(), plate.attachment_mass);
            let (weighs_other, named_other) = other_attachment(named, (&a.name, Some(a.mass)));
            let gap = Gap::OtherAttachment {
                named: plate.attachment.clone(),
                named_mass,
                fitted: a.name.clone(),
                fitted_mass: c(a.mass),
            };
            (weighs_other || named_other).then_some(Finding { gap, as_stated: weighs_other })
        }
    }
}

/// Whether the attachment that is fitted weighs otherwise than the one that is named, and whether it is called
/// otherwise; each a name and a weight in kg. What one of them does not say is not held against the other.
pub(crate) fn other_attachment(named: (&str, Option<f64>), fitted: (&str, Option<f64>)) -> (bool, bool) {
    let allowed = |named: f64| rules::PLATE_SAME_ATTACHMENT.value * named;
    let differ = |(named, fitted): (f64, f64)| (named - fitted).abs() > allowed(named) + 1e-9;
    let weighs_other = named.1.zip(fitted.1).is_some_and(differ);
    // A name is how somebody wrote it: where the weights agree, one that differs is looked at once more. One
    // that was not written down is no other one, where a weight says that it is the same.
    let unnamed = fitted.0.is_empty() && named.1.is_some();
    (weighs_other, !named.0.is_empty() && !unnamed && !alike(named.0, fitted.0))
}

/// Whether two names are the same but for capitals and spaces.
///
/// ```
/// use standfast_core::plate::alike;
/// assert!(alike("Drum  clamp", "drum clamp") && !alike("Drum clamp", "Bale clamp"));
/// ```
pub fn alike(one: &str, other: &str) -> bool {
    let plain = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ").to_lowercase();
    plain(one) == plain(other)
}
