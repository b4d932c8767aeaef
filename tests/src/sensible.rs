//! Trucks, loads and lifts as they might stand in a yard: the permitted ranges narrowed to plausible
//! magnitudes (three-wheel trucks of 1.5 to 2 t, four-wheel trucks of 2.5 to 3 t). All invented.

use crate::draw::Draws;
use proptest::prelude::*;
use standfast_core::document::{
    Attachment, CentreKnown, Document, Plate, PlateFor, PlateRow, RampDown, Stage, WeightKnown, Wheels,
};
use standfast_core::place::{Field, Place};
use std::fmt;
use std::ops::{Deref, DerefMut, Range};

/// A document that shows itself as its file, so that a case which fails can be saved and opened.
pub struct Entered(Document);

impl fmt::Debug for Entered {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&serde_json::to_string(&self.0).unwrap_or_default())
    }
}

impl Deref for Entered {
    type Target = Document;
    fn deref(&self) -> &Document {
        &self.0
    }
}

impl DerefMut for Entered {
    fn deref_mut(&mut self) -> &mut Document {
        &mut self.0
    }
}

/// Documents for a property test: complete and free of problems.
pub fn documents() -> impl Strategy<Value = Entered> {
    Draws::any().prop_map(|mut draws| Entered(document(&mut draws)))
}

/// One document from a row of draws.
pub fn document(draws: &mut Draws) -> Document {
    let mut maker = Maker { document: Document::default(), draws };
    let three = maker.draws.chance(0.5);
    let rated = maker.truck(three);
    maker.load(rated);
    maker.lift();
    maker.blades();
    load::odd(&mut maker.document, maker.draws, rated);
    maker.drive();
    maker.document
}

pub mod load;

struct Maker<'d> {
    document: Document,
    draws: &'d mut Draws,
}

impl Maker<'_> {
    /// Enters a figure, drawn from a range that must lie within the permitted one.
    fn set(&mut self, place: impl Into<Place>, range: Range<f64>) -> f64 {
        let place = place.into();
        let row = place.field.row();
        assert!(row.min <= range.start && range.start <= range.end && range.end <= row.max, "{place}: {range:?}");
        let value = self.draws.within(range);
        *place.number(&mut self.document).unwrap_or_else(|| unreachable!("{place} is in the document")) = Some(value);
        value
    }

    /// Enters it two times in three; else it is left to be assumed.
    fn maybe(&mut self, place: impl Into<Place>, range: Range<f64>) -> Option<f64> {
        let given = self.draws.chance(0.67);
        given.then(|| self.set(place, range))
    }

    /// The truck; gives its rated capacity.
    fn truck(&mut self, three: bool) -> f64 {
        let pick = |small: Range<f64>, large: Range<f64>| if three { small } else { large };
        self.document.truck.wheels = Some(if three { Wheels::Three } else { Wheels::Four });
        let wheelbase = self.set(Field::Wheelbase, pick(1.15..1.55, 1.60..1.75));
        self.set(Field::Tread, pick(0.88..0.95, 0.96..1.06));
        let load_distance = self.set(Field::LoadDistance, pick(0.33..0.40, 0.42..0.50));
        let service = self.set(Field::Service, pick(2700.0..3500.0, 3700.0..4600.0));
        self.set(Field::TopSpeed, pick(12.0..16.0, 18.0..22.0));
        self.maybe(Field::Operator, 0.0..120.0);
        let plated = self.draws.chance(0.85);
        if self.draws.chance(0.8) || !plated {
            let steer = service * self.draws.within(pick(0.45..0.55, 0.55..0.62));
            self.document.truck.steer_axle_kg = Some(steer);
            self.document.truck.front_axle_kg = Some(service - steer);
        }
        if self.draws.chance(0.5) || !plated {
            self.set(Field::CgHeight, pick(0.50..0.65, 0.55..0.70));
        }
        let battery = self.set(Field::BatteryStated, pick(700.0..1100.0, 1000.0..1600.0));
        if self.draws.chance(0.7) {
            self.set(Field::BatteryFitted, 0.9 * battery..1.1 * battery);
        }
        self.maybe(Field::BatteryBehind, 0.4 * wheelbase..0.7 * wheelbase);
        self.maybe(Field::BatteryHeight, 0.4..0.75);
        if !three {
            self.maybe(Field::AxleMass, 150.0..250.0);
            self.maybe(Field::PivotHeight, 0.25..0.35);
        }
        let lift = self.mast(three);
        self.maybe(Field::Carriage, pick(60.0..100.0, 90.0..140.0));
        self.maybe(Field::ForkPair, pick(60.0..90.0, 90.0..140.0));
        self.maybe(Field::ForkLength, 0.9..1.3);
        self.maybe(Field::ForkSpread, 0.45..0.9);
        if self.draws.chance(0.25) {
            self.document.truck.attachment = Some(Attachment { name: "invented".to_owned(), ..Attachment::default() });
            self.set(Field::AttachmentMass, 50.0..250.0);
            self.set(Field::AttachmentAhead, 0.03..0.2);
            self.maybe(Field::AttachmentAbove, 0.1..0.5);
            self.set(Field::LostLoad, 0.05..0.2);
        }
        let rated = (service * self.draws.within(0.45..0.6) / 10.0).floor() * 10.0;
        if plated {
            self.plate(rated, load_distance, lift, battery);
        }
        rated
    }

    fn mast(&mut self, three: bool) -> f64 {
        let pick = |small: Range<f64>, large: Range<f64>| if three { small } else { large };
        let lift = self.set(Field::MastLift, 2.8..6.0);
        self.maybe(Field::FreeLift, 0.0..1.4);
        self.maybe(Field::MastLowered, 1.9..2.6);
        self.set(Field::MaxTiltBack, pick(3.0..7.0, 5.0..12.0));
        self.set(Field::MaxTiltForward, pick(2.0..5.0, 3.0..6.0));
        self.maybe(Field::MastOuter, pick(130.0..200.0, 180.0..300.0));
        let stages = self.draws.one_of(&[0_usize, 1, 2]).unwrap_or_default();
        self.document.truck.mast.stages = vec![Stage::default(); stages];
        for row in 0..stages {
            self.maybe(Place::in_row(Field::StageMass, row), pick(100.0..170.0, 150.0..250.0));
            self.maybe(Place::in_row(Field::StageRatio, row), 0.4..1.0);
        }
        self.maybe(Field::MastPivotX, -0.1..0.15);
        self.maybe(Field::MastPivotZ, 0.15..0.35);
        self.maybe(Field::MastGive, 0.0..2.0);
        self.maybe(Field::MastPlay, 0.0..0.7);
        lift
    }

    /// Two heights by three load centres, falling by moments and with the height.
    fn plate(&mut self, rated: f64, load_distance: f64, lift: f64, battery: f64) {
        let both = [PlateFor::Forks, PlateFor::Attachment];
        let issued_for =
            if self.document.truck.attachment.is_some() { self.draws.one_of(&both) } else { Some(PlateFor::Forks) };
        let loss = self.draws.within(0.75..1.0);
        let mut rows = Vec::new();
        for (height, part) in [(0.7 * lift, 1.0), (lift, loss)] {
            for centre in [0.5, 0.6, 0.7] {
                let kg = rated * part * (load_distance + 0.5) / (load_distance + centre);
                rows.push(PlateRow {
                    height_m: Some(height),
                    load_centre_m: Some(centre),
                    capacity_kg: Some((kg / 10.0).floor() * 10.0),
                });
            }
        }
        let mut plate = Plate { issued_for, rows, ..Plate::default() };
        if self.draws.chance(0.4) {
            (plate.battery_min_kg, plate.battery_max_kg) = (Some(0.95 * battery), Some(1.15 * battery));
        }
        self.document.truck.plate = Some(plate);
    }

    fn load(&mut self, rated: f64) {
        self.set(Field::LoadMass, 150.0..1.1 * rated);
        let known = [Some(WeightKnown::Scale), Some(WeightKnown::Note), Some(WeightKnown::Estimate), None];
        self.document.load.weight_known = self.draws.one_of(&known).flatten();
        let length = self.set(Field::LoadLength, 0.4..1.6);
        let width = self.set(Field::LoadWidth, 0.4..1.6);
        let height = self.set(Field::LoadHeight, 0.2..2.0);
        if self.draws.chance(0.5) {
            self.document.load.centre_known = Some(CentreKnown::Mark);
            self.set(Field::LoadCgFromHeel, 0.3 * length..0.7 * length);
            self.set(Field::LoadCgLeft, -0.2 * width..0.2 * width);
            self.set(Field::LoadCgAbove, 0.3 * height..0.7 * height);
        } else {
            self.document.load.centre_known = self.draws.one_of(&[Some(CentreKnown::Middle), None]).flatten();
        }
    }

    /// Blades, stamps, wear and extensions.
    fn blades(&mut self) {
        let thickness = self.maybe(Field::BladeThickness, 0.03..0.06);
        if let Some(thickness) = thickness {
            // Beyond a tenth it is withdrawn; most are not.
            self.maybe(Field::BladeThicknessNow, 0.88 * thickness..thickness);
        }
        self.maybe(Field::BladeWidth, 0.08..0.15);
        if self.draws.chance(0.5) {
            self.set(Field::ForkStamped, 600.0..2500.0);
            self.maybe(Field::ForkStampedCentre, 0.4..0.6);
        }
        if self.draws.chance(0.15) {
            let length = self.document.truck.forks.length_m.unwrap_or(1.0);
            self.set(Field::Extension, length..1.6 * length);
            self.set(Field::ExtensionMass, 20.0..60.0);
        }
    }

    /// Most of what is driven stands as it would be taken; some of it is fast, steep or left out.
    fn drive(&mut self) {
        self.maybe(Field::Braking, 0.5..2.5);
        self.maybe(Field::CornerSpeed, 1.5..9.0);
        self.maybe(Field::CornerSpeedEmpty, 2.0..12.0);
        self.maybe(Field::CornerRadius, 1.8..6.0);
        if self.draws.chance(0.4) {
            self.set(Field::RampGrade, 0.5..15.0);
            self.document.drive.ramp_down =
                self.draws.one_of(&[Some(RampDown::Forwards), Some(RampDown::Backwards), None]).flatten();
        }
        if self.draws.chance(0.4) {
            self.set(Field::CrossFall, 0.5..8.0);
        }
        if self.draws.chance(0.3) {
            self.set(Field::Reserve, 15.0..40.0);
        }
        let mut looked_at = || self.draws.one_of(&[None, None, Some(true), Some(false)]).flatten();
        let (brake, corner, corner_empty) = (looked_at(), looked_at(), looked_at());
        let drive = &mut self.document.drive;
        (drive.brake, drive.corner, drive.corner_empty) = (brake, corner, corner_empty);
    }

    fn lift(&mut self) {
        let truck = &self.document.truck;
        let lift = truck.mast.lift_m.unwrap_or_default();
        let back = truck.mast.tilt_back_deg.unwrap_or_default();
        let forward = truck.mast.tilt_forward_deg.unwrap_or_default();
        self.maybe(Field::HeelGap, 0.0..0.1);
        self.maybe(Field::Offset, -0.12..0.12);
        self.maybe(Field::Sideshift, -0.1..0.1);
        self.maybe(Field::TakeUp, 0.0..0.4 * lift);
        self.maybe(Field::TravelLift, 0.05..0.4);
        self.set(Field::LiftHeight, 0.2..lift);
        self.maybe(Field::TiltBack, 0.0..back);
        self.maybe(Field::TiltForward, 0.0..forward);
    }
}
