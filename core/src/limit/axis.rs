//! One figure that a limit is sought for: from where to where it may go, and how it is entered.

use super::furthest::{Course, Passes};
use super::{Limit, Reach, Solved};
use crate::document::{Document, RampDown};
use crate::doubt::Doubts;
use crate::found::Way;
use crate::known;
use crate::place::{Field, Place};
use crate::rules;
use crate::scalar::{Region, Scalar, Span};
use crate::scenario::Scenario;
use glam::DVec3;

/// Metres a second in a km/h.
const KMH: f64 = 1.0 / 3.6;

/// How the range of a figure goes with it, in the document's unit.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Goes {
    /// By so much at least, and by this part of it.
    Known { least: f64, part: f64 },
    /// Its ends keep to it in proportion.
    InProportion,
    /// Its ends keep their distance.
    AsItIs,
}

/// A figure on its way.
#[derive(Clone, Debug)]
pub struct Axis {
    /// What is sought.
    pub what: Limit,
    /// From the least that may be asked to the most, in the document's unit; downward for what is sought so.
    pub(super) way: Course,
    /// As it is now, where the move has it.
    pub stated: Option<f64>,
    /// Whether entering that changes nothing.
    pub(super) as_it_is: bool,
    /// Other values at which it may well pass.
    pub(super) hints: [f64; 2],
    goes: Goes,
    /// As it stands, in the model's unit, about what is stated.
    range: Span,
    load: (Span, Region),
    offset: Span,
    /// The load's centre as stated: ahead of the face that carries it, left of the middle of the forks.
    centre: (f64, f64),
    radius: f64,
    load_downhill: bool,
}

impl Limit {
    /// Its field in a document; for where the load's centre stands none of its own.
    fn field(self) -> Option<Field> {
        Some(match self {
            Self::LoadMass => Field::LoadMass,
            Self::LoadCentre | Self::OffsetLeft | Self::OffsetRight => return None,
            Self::LiftHeight => Field::LiftHeight,
            Self::TiltBack => Field::TiltBack,
            Self::TiltForward => Field::TiltForward,
            Self::RampUp | Self::RampDown => Field::RampGrade,
            Self::CrossFallLeft | Self::CrossFallRight => Field::CrossFall,
            Self::CornerSpeed => Field::CornerSpeed,
            Self::CornerSpeedEmpty => Field::CornerSpeedEmpty,
            Self::Braking => Field::Braking,
            Self::BatteryLeast | Self::BatteryMost => Field::BatteryFitted,
        })
    }
}

/// How far a field's figure may be out as it is known in a document: by so much at least, and by a part of it.
fn known_so(document: &Document, field: Field) -> Goes {
    let place = Place::from(field);
    let said = known::known(document, place);
    let by = said.by.or(field.usually());
    match (said.tolerance.filter(|_| field.takes_tolerance()), by.filter(|_| field.usually().is_some())) {
        (Some(tolerance), _) => Goes::Known { least: tolerance, part: 0.0 },
        (None, Some(by)) => {
            let least = known::tolerance(field, by, 0.0);
            let at_one = known::tolerance(field, by, 1e6);
            Goes::Known { least, part: if at_one > least { at_one / 1e6 } else { 0.0 } }
        }
        (None, None) => Goes::AsItIs,
    }
}

impl Axis {
    /// Of a limit in a scenario and the document that it was made of.
    pub fn of(what: Limit, scenario: &Scenario, document: &Document) -> Self {
        let (truck, load, lift, drive) = (&scenario.truck, &scenario.load, &scenario.lift, &scenario.drive);
        let entered = |field: Field| {
            let row = field.row();
            (row.min, row.max)
        };
        let mast = |entered: Option<f64>, limit: f64| (0.0, entered.unwrap_or(limit));
        let centre = (load.centre.at.x + lift.heel_gap.nominal, load.centre.at.y + lift.offset.nominal);
        let field = what.field().map_or((0.0, 2.0), entered);
        let doubts = &scenario.doubts;
        let per_cent = |s: Option<f64>| s.map(|s| s * 100.0);
        let kmh = |bend: Option<(f64, f64)>| bend.map(|(speed, _)| speed / KMH);
        let battery = Some(truck.battery.fitted.nominal);
        let as_it_is = Span::exact(0.0);
        let ((from, to), stated, range): ((f64, f64), Option<f64>, Span) = match what {
            Limit::LoadMass => (field, Some(load.mass.nominal), load.mass.moved(-load.mass.nominal)),
            Limit::LoadCentre => {
                let gap = lift.heel_gap.nominal;
                ((gap, gap + Field::LoadCgFromHeel.row().max), Some(centre.0), as_it_is)
            }
            // Where a sideshift carries it the other way, it may have to stay on the other side.
            Limit::OffsetLeft => ((centre.1.min(0.0), field.1), Some(centre.1), as_it_is),
            Limit::OffsetRight => (((-centre.1).min(0.0), field.1), Some(-centre.1), as_it_is),
            Limit::LiftHeight => ((0.0, truck.mast.lift), Some(lift.height), doubts.height),
            Limit::TiltBack => {
                let most = mast(document.truck.mast.tilt_back_deg, truck.mast.tilt_back.to_degrees());
                (most, Some(lift.tilt_back.to_degrees()), doubts.tilt_back)
            }
            Limit::TiltForward => {
                let most = mast(document.truck.mast.tilt_forward_deg, truck.mast.tilt_forward.to_degrees());
                (most, Some(lift.tilt_forward.to_degrees()), doubts.tilt_forward)
            }
            Limit::RampUp | Limit::RampDown => (field, per_cent(drive.ramp), doubts.ramp),
            Limit::CrossFallLeft | Limit::CrossFallRight => (field, per_cent(drive.cross_fall), doubts.cross_fall),
            Limit::CornerSpeed => (field, kmh(drive.corner), doubts.corner_speed),
            Limit::CornerSpeedEmpty => (field, kmh(drive.corner_empty), doubts.corner_speed_empty),
            Limit::Braking => (field, drive.braking, doubts.braking),
            Limit::BatteryLeast => {
                ((field.1, field.0), battery, truck.battery.fitted.moved(-truck.battery.fitted.nominal))
            }
            Limit::BatteryMost => (field, battery, truck.battery.fitted.moved(-truck.battery.fitted.nominal)),
        };
        let plate = truck.plate.as_ref();
        let hints = match what {
            Limit::BatteryLeast | Limit::BatteryMost => {
                let window = plate.and_then(|p| p.battery_min.or(p.battery_max));
                [window.unwrap_or(truck.battery.stated), truck.battery.stated]
            }
            Limit::OffsetLeft => [(centre.1 - lift.offset.nominal).max(0.0), from],
            Limit::OffsetRight => [(lift.offset.nominal - centre.1).max(0.0), from],
            _ => [from, from],
        };
        // Of a bend that is not looked at the radius stands nowhere but in the document.
        let radius = drive.corner.or(drive.corner_empty).map(|(_, radius)| radius);
        let radius = radius.or(document.drive.radius_m).unwrap_or(rules::CORNER_RADIUS.value);
        let forwards = document.drive.ramp_down == Some(RampDown::Forwards);
        // A mast raised or tilted may bring what it carries nearer before it takes it away.
        let pieces = if matches!(what, Limit::LiftHeight | Limit::TiltBack | Limit::TiltForward) { 5 } else { 1 };
        let mut axis = Self {
            what,
            way: Course { from, to, pieces, square: matches!(what, Limit::CornerSpeed | Limit::CornerSpeedEmpty) },
            stated: stated.map(tidied),
            as_it_is: stated.is_some(),
            hints,
            goes: Goes::AsItIs,
            range,
            load: (load.mass, load.centre),
            offset: lift.offset,
            centre,
            radius,
            load_downhill: if drive.ramp.is_some() { drive.load_downhill } else { forwards },
        };
        axis.goes = axis.goes(scenario, document);
        let battery = matches!(what, Limit::BatteryLeast | Limit::BatteryMost);
        axis.as_it_is &= !(battery && axis.assumed(scenario, Field::BatteryFitted));
        axis
    }

    /// How its range goes with it: as its way of being known says, where that gives the range it has.
    fn goes(&self, scenario: &Scenario, document: &Document) -> Goes {
        let Some(field) = self.what.field() else { return Goes::AsItIs };
        let goes = known_so(document, field);
        match self.what {
            Limit::LoadMass => {
                let says = scenario.load.found.ways.iter().filter(|s| s.figures[0].is_some());
                let alone = says.clone().count() == 1 && says.clone().all(|s| s.way == Way::Stated);
                let tolerance = known::known(document, field.into()).tolerance.filter(|_| alone);
                tolerance.map_or(Goes::InProportion, |least| Goes::Known { least, part: 0.0 })
            }
            // Entered it is known.
            Limit::BatteryLeast | Limit::BatteryMost if self.range.is_exact() || self.assumed(scenario, field) => goes,
            Limit::BatteryLeast | Limit::BatteryMost => self.if_it_has(goes, field),
            _ if self.stated.is_none() => goes,
            _ => self.if_it_has(goes, field),
        }
    }

    fn assumed(&self, scenario: &Scenario, field: Field) -> bool {
        scenario.assumed.iter().any(|a| a.place.field == field)
    }

    fn if_it_has(&self, goes: Goes, field: Field) -> Goes {
        let (Goes::Known { least, part }, Some(stated)) = (goes, self.stated) else { return goes };
        let tolerance = least.max(part * stated.abs()) * unit(field);
        let same = (self.range.hi - tolerance).abs() <= 1e-9 * (1.0 + tolerance);
        if same { goes } else { Goes::AsItIs }
    }

    /// The range about a value, in the document's unit; as it is, in the model's.
    fn about(&self, value: f64, field: Field) -> Span {
        match self.goes {
            Goes::Known { least, part } => {
                let tolerance = least.max(part * value.abs());
                let unit = unit(field);
                Span {
                    lo: (-tolerance).max(field.row().min.min(0.0) - value) * unit,
                    nominal: 0.0,
                    hi: tolerance * unit,
                }
            }
            _ => self.range,
        }
    }

    /// A mass in its range.
    fn mass(&self, value: f64, field: Field, was: Span) -> Span {
        if self.goes == Goes::InProportion && was.nominal > 0.0 {
            let by = |end: f64| value * (end / was.nominal);
            return Span { lo: by(was.lo), nominal: value, hi: by(was.hi) };
        }
        let about = self.about(value, field);
        Span { lo: (value + about.lo).max(0.0), nominal: value, hi: value + about.hi }
    }

    /// The least and the most that may be asked, in the document's unit; the most first for what is sought downward.
    pub fn ends(&self) -> (f64, f64) {
        (self.way.from, self.way.to)
    }

    /// A value without the last digits, which nobody enters: to the gram, the micrometre.
    pub(super) fn tidy(&self, value: f64) -> f64 {
        let mass = matches!(self.what, Limit::LoadMass | Limit::BatteryLeast | Limit::BatteryMost);
        let digits = if mass { 1e3 } else { 1e6 };
        (value * digits).round() / digits
    }

    /// Enters a value in a scenario.
    pub fn set(&self, value: f64, scenario: &mut Scenario) {
        let (load, lift, drive) = (&mut scenario.load, &mut scenario.lift, &mut scenario.drive);
        let Doubts {
            height, tilt_back, tilt_forward, braking, corner_speed, corner_speed_empty, ramp, cross_fall, ..
        } = &mut scenario.doubts;
        match self.what {
            Limit::LoadMass => load.mass = self.mass(value, Field::LoadMass, self.load.0),
            Limit::LoadCentre => {
                let (Region { at, lo, hi }, by) = (self.load.1, DVec3::X * (value - self.centre.0));
                load.centre = Region { at: at + by, lo: lo + by, hi: hi + by };
            }
            Limit::OffsetLeft => lift.offset = self.offset.moved(value - self.centre.1),
            Limit::OffsetRight => lift.offset = self.offset.moved(-value - self.centre.1),
            Limit::LiftHeight => (lift.height, *height) = (value, self.about(value, Field::LiftHeight)),
            Limit::TiltBack => (lift.tilt_back, *tilt_back) = (value.to_radians(), self.about(value, Field::TiltBack)),
            Limit::TiltForward => {
                (lift.tilt_forward, *tilt_forward) = (value.to_radians(), self.about(value, Field::TiltForward));
            }
            Limit::RampUp | Limit::RampDown => {
                (drive.ramp, *ramp) = (Some(value / 100.0), self.about(value, Field::RampGrade));
                drive.load_downhill = self.load_downhill;
            }
            Limit::CrossFallLeft | Limit::CrossFallRight => {
                (drive.cross_fall, *cross_fall) = (Some(value / 100.0), self.about(value, Field::CrossFall));
            }
            Limit::CornerSpeed => {
                (drive.corner, *corner_speed) =
                    (Some((value * KMH, self.radius)), self.about(value, Field::CornerSpeed));
            }
            Limit::CornerSpeedEmpty => {
                drive.corner_empty = Some((value * KMH, self.radius));
                *corner_speed_empty = self.about(value, Field::CornerSpeedEmpty);
            }
            Limit::Braking => (drive.braking, *braking) = (Some(value), self.about(value, Field::Braking)),
            Limit::BatteryLeast | Limit::BatteryMost => {
                let battery = &mut scenario.truck.battery;
                battery.fitted = self.mass(value, Field::BatteryFitted, battery.fitted);
                if scenario.assumed.iter().any(|a| a.place.field == Field::BatteryFitted) {
                    scenario.assumed.retain(|a| a.place.field != Field::BatteryFitted);
                }
            }
        }
    }

    /// The stretch in which both pass, where they overlap.
    pub(super) fn both(&self, a: Passes, b: Passes) -> Passes {
        let ends_first = if self.way.from < self.way.to { b.most < a.most } else { b.most > a.most };
        Passes { least: None, ..if ends_first { b } else { a } }
    }

    /// A limit for the report.
    pub(super) fn solved(&self, passes: Option<Passes>) -> Solved {
        let c = Scalar::computed;
        let reach = match passes {
            None => Reach::Never,
            Some(Passes { most, by: Some(by), .. }) => Reach::At { value: c(most), by },
            Some(Passes { most, by: None, .. }) => Reach::Beyond { value: c(most) },
        };
        let least = passes.and_then(|p| p.least).map(c);
        Solved { what: self.what, stated: self.stated.map(c), least, reach }
    }
}

/// Without what converting units leaves behind.
fn tidied(value: f64) -> f64 {
    (value * 1e10).round() / 1e10
}

/// From the document's unit to the model's.
fn unit(field: Field) -> f64 {
    use crate::units::Quantity;
    match field.row().quantity {
        Some(Quantity::Angle) => 1.0_f64.to_radians(),
        Some(Quantity::Speed) => KMH,
        Some(Quantity::Slope) => 0.01,
        _ => 1.0,
    }
}
