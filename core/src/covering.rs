//! Which plate of a truck covers it as it stands today, or what differs.
//!
//! A set-up of the book has a plate of its own. The plate covers the truck as it stands where all that it
//! names, and all that its set-up says beside it, is the same today; what one of them says and the other
//! does not is said to be missing, never taken to be the same. It says nothing of a load: the check does.

use crate::book::{SetUp, TruckRecord};
use crate::document::{Attachment, Plate, PlateFor, Truck, Tyres};
use crate::place::{Field, Place};
use crate::plate;
use crate::rules;
use serde::Serialize;

/// One thing that is not as the plate has it. Figures in the document's units: m, kg, degrees.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Difference {
    /// The plate does not say whether it is for bare forks or an attachment.
    FrontEndNotSaid,
    /// The plate is for the bare forks, and an attachment is fitted.
    AttachmentFitted {
        /// What it is called.
        name: String,
        /// Its weight.
        mass_kg: Option<f64>,
    },
    /// The plate is for an attachment, and none is fitted.
    AttachmentMissing {
        /// What it is called.
        name: String,
        /// Its weight.
        mass_kg: Option<f64>,
    },
    /// The plate is for another attachment.
    OtherAttachment {
        /// The one that the plate is for.
        named: String,
        /// Its weight.
        named_kg: Option<f64>,
        /// The one that is fitted.
        fitted: String,
        /// Its weight.
        fitted_kg: Option<f64>,
    },
    /// One of these weights or lengths of the attachment is another.
    AttachmentFigure {
        /// Which.
        field: Place,
        /// With the plate.
        named: f64,
        /// Today.
        fitted: f64,
    },
    /// The mast is another: it lifts to another height, or is another height lowered.
    Mast {
        /// Which figure.
        field: Place,
        /// With the plate.
        named: f64,
        /// Today.
        fitted: f64,
    },
    /// The mast has another number of moving sections.
    MastSections {
        /// With the plate.
        named: usize,
        /// Today.
        fitted: usize,
    },
    /// The mast tilts further than the plate has it.
    Tilt {
        /// Back or forward.
        field: Place,
        /// The plate's.
        named: f64,
        /// Today.
        fitted: f64,
    },
    /// Other tyres.
    OtherTyres {
        /// The plate's.
        named: Tyres,
        /// Today's.
        fitted: Tyres,
    },
    /// The battery is outside the plate's window.
    Battery {
        /// The one fitted.
        fitted: f64,
        /// Least.
        min: Option<f64>,
        /// Greatest.
        max: Option<f64>,
    },
    /// Fork extensions are on, and the plate does not name them.
    Extensions,
    /// The fork face stands further from or nearer to the front axle.
    LoadDistance {
        /// With the plate.
        named: f64,
        /// Today.
        fitted: f64,
    },
    /// The plate, or its set-up, says it; of the truck today it was not entered.
    NotEntered {
        /// What.
        field: Place,
    },
}

/// A set-up with a plate, and how today's truck differs from it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Covering {
    /// The set-up, by its id.
    pub set_up: String,
    /// Nothing where its plate covers the truck as it stands.
    pub differences: Vec<Difference>,
}

impl Covering {
    /// Whether its plate covers the truck as it stands.
    pub fn exactly(&self) -> bool {
        self.differences.is_empty()
    }
}

/// The set-ups of a truck that have a plate with rows, against the truck as it stands today: fewest
/// differences first. What is put away is not looked at.
///
/// ```
/// use standfast_core::{book::{SetUp, TruckRecord}, covering::covering, example};
/// let truck = example::document(example::THREE_WHEEL).truck;
/// let set_up = SetUp { id: "a".to_owned(), truck: truck.clone(), ..SetUp::default() };
/// let record = TruckRecord { set_ups: vec![set_up], ..TruckRecord::default() };
/// assert!(covering(&record, &truck)[0].exactly());
/// ```
pub fn covering(record: &TruckRecord, today: &Truck) -> Vec<Covering> {
    let plated = |s: &&SetUp| !s.archived && s.truck.plate.as_ref().is_some_and(|p| !p.rows.is_empty());
    let against = |s: &SetUp| Covering { set_up: s.id.clone(), differences: differences(&s.truck, today) };
    let mut list: Vec<Covering> = record.set_ups.iter().filter(plated).map(against).collect();
    list.sort_by_key(|c| c.differences.len());
    list
}

/// How today's truck differs from a set-up, as far as the set-up's plate is about it; nothing where there
/// is no plate to be about anything.
pub fn differences(set_up: &Truck, today: &Truck) -> Vec<Difference> {
    let Some(plate) = &set_up.plate else { return Vec::new() };
    let mut found = Vec::new();
    front_end(plate, set_up, today, &mut found);
    mast(plate, set_up, today, &mut found);
    match (plate.tyres.or(set_up.tyres), today.tyres) {
        (Some(named), Some(fitted)) if named != fitted => found.push(Difference::OtherTyres { named, fitted }),
        (Some(_), None) => found.push(Difference::NotEntered { field: Field::Tyres.into() }),
        _ => {}
    }
    let (min, max) = (plate.battery_min_kg, plate.battery_max_kg);
    match today.battery.fitted_kg {
        Some(fitted) if min.is_some_and(|min| fitted < min) || max.is_some_and(|max| fitted > max) => {
            found.push(Difference::Battery { fitted, min, max });
        }
        None if min.is_some() || max.is_some() => {
            found.push(Difference::NotEntered { field: Field::BatteryFitted.into() });
        }
        _ => {}
    }
    if today.forks.extension_m.is_some() && !plate.extensions {
        found.push(Difference::Extensions);
    }
    let load_distance = (set_up.load_distance_m, today.load_distance_m);
    compare(load_distance, SAME_LENGTH, Field::LoadDistance, &mut found, |_, named, fitted| Difference::LoadDistance {
        named,
        fitted,
    });
    found
}

/// Two lengths of a truck are the same up to this, m: they are typed from the same sheet.
const SAME_LENGTH: f64 = 0.001;

/// Compares a figure of the plate's set-up with today's; one that only today's truck has says nothing.
fn compare(
    (named, fitted): (Option<f64>, Option<f64>),
    same: f64,
    field: Field,
    found: &mut Vec<Difference>,
    differs: impl FnOnce(Place, f64, f64) -> Difference,
) {
    match (named, fitted) {
        (Some(named), Some(fitted)) if (named - fitted).abs() > same + 1e-9 => {
            found.push(differs(field.into(), named, fitted));
        }
        (Some(_), None) => found.push(Difference::NotEntered { field: field.into() }),
        _ => {}
    }
}

/// Bare forks or an attachment, and which.
fn front_end(plate: &Plate, set_up: &Truck, today: &Truck, found: &mut Vec<Difference>) {
    match (plate.issued_for, &today.attachment) {
        (None, _) => found.push(Difference::FrontEndNotSaid),
        (Some(PlateFor::Forks), None) => {}
        (Some(PlateFor::Forks), Some(a)) => {
            found.push(Difference::AttachmentFitted { name: a.name.clone(), mass_kg: a.mass_kg });
        }
        (Some(PlateFor::Attachment), None) => {
            let own = set_up.attachment.as_ref();
            let name = if plate.attachment.is_empty() {
                own.map(|a| a.name.clone()).unwrap_or_default()
            } else {
                plate.attachment.clone()
            };
            let mass_kg = plate.attachment_kg.or(own.and_then(|a| a.mass_kg));
            found.push(Difference::AttachmentMissing { name, mass_kg });
        }
        (Some(PlateFor::Attachment), Some(fitted)) => attachment(plate, set_up, fitted, found),
    }
}

/// Whether the attachment that is fitted is the one of the plate, and of its set-up.
fn attachment(plate: &Plate, set_up: &Truck, fitted: &Attachment, found: &mut Vec<Difference>) {
    let own = set_up.attachment.clone().unwrap_or_default();
    let named = if plate.attachment.is_empty() { own.name.clone() } else { plate.attachment.clone() };
    let named_kg = plate.attachment_kg.or(own.mass_kg);
    if named_kg.is_some() && fitted.mass_kg.is_none() {
        found.push(Difference::NotEntered { field: Field::AttachmentMass.into() });
    }
    let (weighs_other, named_other) = plate::other_attachment((&named, named_kg), (&fitted.name, fitted.mass_kg));
    if weighs_other || named_other {
        let (fitted, fitted_kg) = (fitted.name.clone(), fitted.mass_kg);
        found.push(Difference::OtherAttachment { named, named_kg, fitted, fitted_kg });
        return;
    }
    let figures = [
        (own.lost_load_m, fitted.lost_load_m, Field::LostLoad),
        (own.cg_ahead_m, fitted.cg_ahead_m, Field::AttachmentAhead),
    ];
    for (own, fitted, field) in figures {
        compare((own, fitted), SAME_LENGTH, field, found, |field, named, fitted| Difference::AttachmentFigure {
            field,
            named,
            fitted,
        });
    }
}

/// Whether the mast is the one of the plate, and of its set-up.
fn mast(plate: &Plate, set_up: &Truck, today: &Truck, found: &mut Vec<Difference>) {
    let (own, fitted) = (&set_up.mast, &today.mast);
    let differs = |field, named, fitted| Difference::Mast { field, named, fitted };
    let lift = (plate.mast_lift_m.or(own.lift_m), fitted.lift_m);
    compare(lift, rules::PLATE_SAME_LIFT.value, Field::MastLift, found, differs);
    let lowered = (own.lowered_m, fitted.lowered_m);
    compare(lowered, rules::PLATE_SAME_LIFT.value, Field::MastLowered, found, differs);
    let (named, now) = (own.stages.len(), fitted.stages.len());
    if named != now && named > 0 && now > 0 {
        found.push(Difference::MastSections { named, fitted: now });
    }
    let tilts = [
        (Field::MaxTiltBack, plate.tilt_back_deg.or(own.tilt_back_deg), fitted.tilt_back_deg),
        (Field::MaxTiltForward, plate.tilt_forward_deg.or(own.tilt_forward_deg), fitted.tilt_forward_deg),
    ];
    for (field, named, fitted) in tilts {
        match (named, fitted) {
            (Some(named), Some(fitted)) if fitted > named + rules::PLATE_SAME_TILT.value + 1e-9 => {
                found.push(Difference::Tilt { field: field.into(), named, fitted });
            }
            (Some(_), None) => found.push(Difference::NotEntered { field: field.into() }),
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests;
