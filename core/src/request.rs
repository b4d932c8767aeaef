//! All that a manufacturer would ask for before giving a truck a plate: each fact with its value, or missing.
//!
//! It says what is wanted and what there is; an estimate on it is for planning, and is no plate.

use crate::document::{By, Document, PlateFor, PlateRow, Turned, Tyres, Wheels};
use crate::known;
use crate::place::{Field, Place};
use crate::plate::Finding;
use crate::plate::Gap;
use crate::report::Assessment;
use crate::report::LoadReport;
use crate::scalar::Scalar;
use serde::Serialize;

/// What facts are about, in the order of the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// Which truck it is, and how it is built.
    Truck,
    /// Its weight and its axle loads.
    Weights,
    /// The battery.
    Battery,
    /// The mast.
    Mast,
    /// The forks.
    Forks,
    /// What is fitted to the carriage.
    Attachment,
    /// What is to be lifted, how high and how far out.
    Wanted,
    /// The plate there is.
    Plate,
}

/// One fact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum What {
    /// A figure, choice or text of the document.
    At(Place),
    /// What the attachment is called.
    AttachmentName,
    /// What is fitted: forks or an attachment.
    FrontEnd,
    /// What the load is.
    LoadName,
    /// The most that the load may weigh, kg.
    Mass,
    /// The furthest that its centre may be from the face that carries it, m.
    LoadCentre,
    /// The highest that its centre may stand above the blades, m.
    CentreHeight,
    /// The highest that it is to be raised, m.
    Height,
    /// Its greatest size along the forks, m.
    Depth,
    /// Across the forks, m.
    Width,
}

/// A fact's value.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Value {
    /// In the document's unit; m and kg where it is none of the document's.
    Number(Scalar),
    /// As it was written.
    Text(String),
    /// Three or four wheels.
    Wheels(Wheels),
    /// Tyres.
    Tyres(Tyres),
    /// Forks or an attachment.
    FrontEnd(PlateFor),
    /// Yes or no.
    Is(bool),
}

/// One fact with its value.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Fact {
    /// What it is.
    pub what: What,
    /// Its value; none where it is missing.
    pub value: Option<Value>,
    /// How it is known, of a figure that has ways to be known.
    pub by: Option<By>,
}

/// The sheet.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Request {
    /// The facts, part by part.
    pub parts: Vec<(Part, Vec<Fact>)>,
    /// The rows of the plate there is: height, load centre, capacity. None without a plate.
    pub rows: Option<Vec<[Option<Scalar>; 3]>>,
    /// What that plate does not cover of what is wanted; none where too little is entered to say.
    pub gaps: Option<Vec<Finding>>,
    /// By moments, kg, for planning: no plate, and nothing to lift by.
    pub estimate: Option<Scalar>,
}

impl Request {
    /// Of what was entered, and of what was worked out where nothing was missing or wrong.
    ///
    /// ```
    /// use standfast_core::{document::Document, request::Request};
    /// let sheet = Request::of(&Document::default(), None);
    /// assert!(sheet.missing() > 20 && sheet.estimate.is_none());
    /// ```
    pub fn of(document: &Document, assessment: Option<&Assessment>) -> Self {
        let sheet = Sheet { document, assessment };
        let plate = document.truck.plate.as_ref();
        let rows = plate.map(|p| {
            let row = |r: &PlateRow| [r.height_m, r.load_centre_m, r.capacity_kg].map(|n| n.and_then(Scalar::new));
            p.rows.iter().map(row).collect()
        });
        let no_plate = || plate.is_none().then(|| vec![Finding { gap: Gap::NoPlate, as_stated: true }]);
        Self {
            parts: sheet.parts(),
            rows,
            gaps: assessment.map(|a| a.plate.findings.clone()).or_else(no_plate),
            estimate: assessment.and_then(|a| a.plate.estimate),
        }
    }

    /// How many facts are missing.
    pub fn missing(&self) -> usize {
        self.parts.iter().flat_map(|(_, facts)| facts).filter(|f| f.value.is_none()).count()
    }
}

struct Sheet<'a> {
    document: &'a Document,
    assessment: Option<&'a Assessment>,
}

impl Sheet<'_> {
    fn parts(&self) -> Vec<(Part, Vec<Fact>)> {
        let truck = &self.document.truck;
        let numbers = |fields: &[Field]| fields.iter().map(|&f| self.number(f)).collect::<Vec<_>>();
        let text = |field: Field, text: &str| fact(What::At(field.into()), written(text));
        let mut build = vec![
            text(Field::TypeName, &truck.type_name),
            text(Field::Serial, &truck.serial),
            fact(What::At(Field::Wheels.into()), truck.wheels.map(Value::Wheels)),
        ];
        build.extend(numbers(&[Field::Rated, Field::RatedCentre, Field::LoadDistance, Field::Wheelbase, Field::Tread]));
        if truck.wheels != Some(Wheels::Three) {
            build.push(self.number(Field::SteerTread));
        }
        build.push(fact(What::At(Field::Tyres.into()), truck.tyres.map(Value::Tyres)));
        let mut forks =
            numbers(&[Field::ForkLength, Field::BladeThickness, Field::ForkStamped, Field::ForkStampedCentre]);
        if truck.forks.extension_m.is_some() {
            forks.extend(numbers(&[Field::Extension, Field::ExtensionMass]));
        }
        let mut parts = vec![
            (Part::Truck, build),
            (
                Part::Weights,
                numbers(&[
                    Field::Service,
                    Field::FrontAxle,
                    Field::SteerAxleLoad,
                    Field::FrontAxleLaden,
                    Field::SteerAxleLaden,
                ]),
            ),
            (Part::Battery, numbers(&[Field::BatteryStated, Field::BatteryFitted])),
            (
                Part::Mast,
                numbers(&[
                    Field::MastLift,
                    Field::MastLowered,
                    Field::FreeLift,
                    Field::MaxTiltBack,
                    Field::MaxTiltForward,
                ]),
            ),
            (Part::Forks, forks),
            (Part::Attachment, self.attachment()),
            (Part::Wanted, self.wanted()),
        ];
        if truck.plate.is_some() {
            parts.push((Part::Plate, self.plate()));
        }
        parts
    }

    fn number(&self, field: Field) -> Fact {
        let place = Place::from(field);
        let value = place.get(self.document).and_then(Scalar::new).map(Value::Number);
        let by = value.is_some().then(|| known::known(self.document, place).by.or(field.usually())).flatten();
        Fact { what: What::At(place), value, by }
    }

    fn attachment(&self) -> Vec<Fact> {
        let Some(attachment) = &self.document.truck.attachment else {
            return vec![fact(What::FrontEnd, Some(Value::FrontEnd(PlateFor::Forks)))];
        };
        let figures = [Field::AttachmentMass, Field::AttachmentAhead, Field::AttachmentAbove, Field::LostLoad];
        let mut facts = vec![fact(What::AttachmentName, written(&attachment.name))];
        facts.extend(figures.map(|f| self.number(f)));
        facts
    }

    /// At the most that each may be; as entered where not everything is there to work it out.
    fn wanted(&self) -> Vec<Fact> {
        let Document { load, lift, .. } = self.document;
        let need = self.assessment.map(|a| &a.plate.need);
        let found = self.assessment.map(|a| &a.load);
        let number = |s: Scalar| Some(Value::Number(s));
        let entered = |n: Option<f64>| n.and_then(Scalar::new).map(Value::Number);
        // As it stands on the forks.
        let across = matches!(load.turned, Turned::Left | Turned::Right);
        let (along, aside) = if across { (load.width_m, load.length_m) } else { (load.length_m, load.width_m) };
        let size = found.map(|f| if across { (f.size.y, f.size.x) } else { (f.size.x, f.size.y) });
        let above = |f: &LoadReport| Scalar::computed(f.centre.above.hi.get() - f.low.z.get());
        vec![
            fact(What::LoadName, written(&load.name)),
            fact(What::Mass, need.map_or_else(|| entered(load.mass_kg), |n| number(n.mass_worst))),
            fact(What::LoadCentre, need.and_then(|n| number(n.load_centre_worst))),
            fact(What::CentreHeight, found.and_then(|f| number(above(f)))),
            fact(What::Height, need.map_or_else(|| entered(lift.height_m), |n| number(n.height_worst))),
            fact(What::Depth, size.map_or_else(|| entered(along), |s| number(s.0))),
            fact(What::Width, size.map_or_else(|| entered(aside), |s| number(s.1))),
        ]
    }

    fn plate(&self) -> Vec<Fact> {
        let Some(plate) = &self.document.truck.plate else { return Vec::new() };
        let at = |field: Field, value: Option<Value>| fact(What::At(field.into()), value);
        let mut facts = vec![
            at(Field::PlateIssued, written(&plate.issued)),
            at(Field::PlateFor, plate.issued_for.map(Value::FrontEnd)),
        ];
        if plate.issued_for == Some(PlateFor::Attachment) {
            facts.push(at(Field::PlateAttachment, written(&plate.attachment)));
            facts.push(self.number(Field::PlateAttachmentMass));
        }
        facts.push(self.number(Field::PlateMastLift));
        facts.push(self.number(Field::PlateTiltBack));
        facts.push(self.number(Field::PlateTiltForward));
        facts.push(at(Field::PlateTyres, plate.tyres.map(Value::Tyres)));
        facts.push(self.number(Field::PlateBatteryMin));
        facts.push(self.number(Field::PlateBatteryMax));
        if self.document.truck.forks.extension_m.is_some() {
            facts.push(at(Field::PlateExtensions, Some(Value::Is(plate.extensions))));
        }
        facts
    }
}

fn fact(what: What, value: Option<Value>) -> Fact {
    Fact { what, value, by: None }
}

fn written(text: &str) -> Option<Value> {
    let text = text.trim();
    (!text.is_empty()).then(|| Value::Text(text.to_owned()))
}

#[cfg(test)]
mod tests;
