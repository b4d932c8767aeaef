//! The capacity plate: what it allows, and estimates for planning where it says nothing.

use crate::body::Placed;
use crate::document::PlateFor;
use crate::document::Tyres;
use crate::rules;
use crate::scalar::Scalar;
use crate::scenario::{Plate, PlateRow, Scenario};
use serde::Serialize;

mod issued;

pub(crate) use issued::other_attachment;
pub use issued::{alike, differences};

/// Capacity by the load centre alone, which is always less than the truck was designed for; the
/// rougher, more cautious rule of thumb. Any consistent units.
///
/// Source: 29 CFR 1910.178 App. A, A-5.4.
///
/// ```
/// // Case C2: 3,000 lb at 24 in is 2,400 lb at 30 in.
/// assert_eq!(standfast_core::plate::by_load_centre_alone(3000.0, 24.0, 30.0), 2400.0);
/// ```
pub fn by_load_centre_alone(capacity: f64, rated_centre: f64, load_centre: f64) -> f64 {
    if load_centre <= rated_centre { capacity } else { capacity * rated_centre / load_centre }
}

/// Capacity by moments about the front axle, `axle` ahead of which the fork face stands: an estimate
/// for planning. Never more than the plate's. Any consistent units.
///
/// ```
/// // Case C5: 5,000 lb at 24 in, 18 in from axle to fork face, load centre 36 in.
/// assert_eq!(standfast_core::plate::by_moments(5000.0, 18.0, 24.0, 36.0).floor(), 3888.0);
/// ```
pub fn by_moments(capacity: f64, axle: f64, rated_centre: f64, load_centre: f64) -> f64 {
    if load_centre <= rated_centre { capacity } else { capacity * (axle + rated_centre) / (axle + load_centre) }
}

/// An attachment in an estimate by moments.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fitted {
    /// Its weight.
    pub mass: f64,
    /// Its centre ahead of the fork face.
    pub ahead: f64,
    /// How far it pushes the load out.
    pub lost_load: f64,
}

/// The same with an attachment that the plate does not know. Never more than the plate's, never
/// less than nothing.
///
/// ```
/// use standfast_core::plate::{by_moments_with, Fitted};
/// // Case C26: 2,000 kg at 500 mm, 400 mm to the fork face; attachment 100 kg at 60 mm, lost load 110 mm.
/// let clamp = Fitted { mass: 100.0, ahead: 60.0, lost_load: 110.0 };
/// assert!((by_moments_with(2000.0, 400.0, 500.0, 500.0, clamp) - 1736.6).abs() < 0.05);
/// ```
pub fn by_moments_with(capacity: f64, axle: f64, rated_centre: f64, load_centre: f64, fitted: Fitted) -> f64 {
    let moment = capacity * (axle + rated_centre) - fitted.mass * (axle + fitted.ahead);
    (moment / (axle + fitted.lost_load + load_centre)).clamp(0.0, capacity)
}

/// What is asked of a plate, each as stated and at the worst of its range.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Need {
    /// Lift height, m.
    pub height: Scalar,
    /// The greatest it may be.
    pub height_worst: Scalar,
    /// Load centre from the face that carries the load, m.
    pub load_centre: Scalar,
    /// The greatest it may be.
    pub load_centre_worst: Scalar,
    /// Weight, kg.
    pub mass: Scalar,
    /// The greatest it may be.
    pub mass_worst: Scalar,
}

/// One thing the plate does not cover.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Gap {
    /// No plate is entered.
    NoPlate,
    /// It was issued for another front end.
    OtherFrontEnd {
        /// What it was issued for.
        issued_for: PlateFor,
        /// What the attachment is called: the one that is fitted, or the one that the plate asks for.
        name: String,
        /// Its weight, kg, where that is known.
        mass: Option<Scalar>,
    },
    /// It was issued for another attachment, or for one of another name.
    OtherAttachment {
        /// The one it names.
        named: String,
        /// The weight it names, kg.
        named_mass: Option<Scalar>,
        /// The one fitted.
        fitted: String,
        /// Its weight, kg.
        fitted_mass: Scalar,
    },
    /// It was issued for another mast.
    OtherMast {
        /// Greatest lift height of the one it names, m.
        named: Scalar,
        /// Of the one fitted, m.
        fitted: Scalar,
    },
    /// It was issued for other tyres.
    OtherTyres {
        /// Those it names.
        named: Tyres,
        /// Those fitted; none where nobody said.
        fitted: Option<Tyres>,
    },
    /// The mast tilts further than the one it was issued for.
    OtherTilt {
        /// Which way.
        way: Tilted,
        /// The most it names, degrees.
        named: Scalar,
        /// The most that the mast does, degrees.
        fitted: Scalar,
    },
    /// It does not name the fork extensions that are on.
    Extensions {
        /// Their weight, kg.
        mass: Scalar,
    },
    /// Higher than its last height, m.
    TooHigh {
        /// Needed.
        height: Scalar,
        /// The last.
        last: Scalar,
    },
    /// Further out than its last load centre at that height, m.
    TooFarOut {
        /// Needed.
        load_centre: Scalar,
        /// The last.
        last: Scalar,
    },
    /// Heavier than the row allows, kg.
    TooHeavy {
        /// Needed.
        mass: Scalar,
        /// Allowed.
        allowed: Scalar,
        /// By this row, from 0.
        row: usize,
    },
    /// Battery outside the window, kg.
    Battery {
        /// Fitted.
        fitted: Scalar,
        /// Least.
        min: Option<Scalar>,
        /// Greatest.
        max: Option<Scalar>,
    },
    /// The plate has a battery window; what is fitted was not entered.
    BatteryUnknown,
    /// The load's centre stands further off the middle than the ordinary rating reaches, m.
    OffCentre {
        /// How far.
        offset: Scalar,
        /// The threshold.
        limit: Scalar,
    },
}

/// A way that a mast tilts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Tilted {
    /// Back.
    Back,
    /// Forward.
    Forward,
}

impl Gap {
    /// Whether the plate is one for another truck than this one as it stands, whatever its rows say.
    pub fn is_of_another_truck(&self) -> bool {
        match self {
            Self::NoPlate
            | Self::OtherFrontEnd { .. }
            | Self::OtherAttachment { .. }
            | Self::OtherMast { .. }
            | Self::OtherTyres { .. }
            | Self::OtherTilt { .. }
            | Self::Extensions { .. }
            | Self::Battery { .. } => true,
            Self::TooHigh { .. }
            | Self::TooFarOut { .. }
            | Self::TooHeavy { .. }
            | Self::BatteryUnknown
            | Self::OffCentre { .. } => false,
        }
    }
}

/// A gap, and whether it is there as stated or only at the worst of the ranges.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Finding {
    /// The gap.
    pub gap: Gap,
    /// Whether it is there as stated.
    pub as_stated: bool,
}

impl Finding {
    fn stated(gap: Gap) -> Self {
        Self { gap, as_stated: true }
    }
}

/// What the plate says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Outcome {
    /// What is asked of it.
    pub need: Need,
    /// The row that answers, from 0: the next height up and the next load centre up.
    pub row: Option<usize>,
    /// What that row allows, kg.
    pub allowed: Option<Scalar>,
    /// What it does not cover.
    pub findings: Vec<Finding>,
    /// Where it does not cover the front end or the load centre: an estimate by moments, kg, for
    /// planning and for asking the manufacturer. It never turns a verdict.
    pub estimate: Option<Scalar>,
    /// The load's centre stands higher above the blades than the plate's test load, m: (it, test load).
    pub centre_higher: Option<(Scalar, Scalar)>,
    /// The part of what the plate allows that may hang, where the load does.
    pub hanging: Option<Scalar>,
}

impl Plate {
    /// The row for a need: of the next height up, the next load centre up. Never between rows.
    pub fn row_for(&self, height: f64, load_centre: f64) -> Option<(usize, &PlateRow)> {
        let covers = |r: &&PlateRow| reaches(r.height, height) && reaches(r.load_centre, load_centre);
        let by_height = |r: &PlateRow| r.height;
        let least = self.rows.iter().filter(covers).map(by_height).fold(f64::INFINITY, f64::min);
        let at_least = |(_, r): &(usize, &PlateRow)| covers(&&**r) && r.height <= least;
        self.rows.iter().enumerate().filter(at_least).min_by(|a, b| a.1.load_centre.total_cmp(&b.1.load_centre))
    }

    /// Its greatest height.
    fn last_height(&self) -> f64 {
        self.rows.iter().map(|r| r.height).fold(0.0, f64::max)
    }

    /// Of the next height up that any row reaches, the row with the furthest load centre.
    fn furthest_row(&self, height: f64) -> Option<&PlateRow> {
        let reaching = || self.rows.iter().filter(|r| reaches(r.height, height));
        reaching().max_by(|a, b| a.load_centre.total_cmp(&b.load_centre).then(b.height.total_cmp(&a.height)))
    }
}

/// Whether a plate's figure reaches a need; the noise of the last bits of m and mm apart.
fn reaches(plate: f64, need: f64) -> bool {
    need <= plate + 1e-9
}

/// Holds a lift against the plate.
pub fn check(scenario: &Scenario, placed: &Placed) -> Outcome {
    let (truck, lift) = (&scenario.truck, &scenario.lift);
    let height = lift.height.max(lift.take_up).max(lift.travel);
    let doubts = &scenario.doubts;
    // A mast ends where it ends, however its height was measured.
    let end = truck.mast.lift.max(height);
    let raised = [(lift.height, doubts.height), (lift.take_up, doubts.take_up), (lift.travel, doubts.travel)];
    let highest = raised.map(|(at, doubt)| at + doubt.hi).into_iter().fold(height, f64::max).min(end);
    let centre = placed.centre.x();
    // Only this part of what a row allows may hang.
    let hanging = scenario.load.hanging.map(|_| rules::HANGING_PART.value);
    let allows = |r: &PlateRow| r.capacity * hanging.unwrap_or(1.0);
    let mass = placed.mass;
    let c = Scalar::computed;
    let need = Need {
        height: c(height),
        height_worst: c(highest),
        load_centre: c(centre.nominal),
        load_centre_worst: c(centre.hi),
        mass: c(mass.nominal),
        mass_worst: c(mass.hi),
    };
    let mut outcome = Outcome {
        need,
        row: None,
        allowed: None,
        findings: Vec::new(),
        estimate: None,
        centre_higher: None,
        hanging: hanging.map(c),
    };
    let Some(plate) = &truck.plate else {
        outcome.findings.push(Finding::stated(Gap::NoPlate));
        return outcome;
    };
    outcome.findings = differences(plate, truck);
    // Of a plate for another mast or another attachment nothing can be estimated: only of one for bare forks.
    let estimated = outcome.findings.iter().all(|f| matches!(f.gap, Gap::OtherFrontEnd { .. }));
    let mut found = |gap: Gap, as_stated: bool| outcome.findings.push(Finding { gap, as_stated });
    if let (Some((_, mass)), false) = (truck.forks.extension, plate.extensions) {
        found(Gap::Extensions { mass: c(mass) }, true);
    }
    if plate.battery_min.is_some() || plate.battery_max.is_some() {
        let fitted = truck.battery.fitted;
        let outside =
            |kg: f64| plate.battery_min.is_some_and(|min| kg < min) || plate.battery_max.is_some_and(|max| kg > max);
        if scenario.assumed.iter().any(|a| a.place.field == crate::place::Field::BatteryFitted) {
            found(Gap::BatteryUnknown, false);
        } else if let Some(kg) = [fitted.nominal, fitted.lo, fitted.hi].into_iter().find(|kg| outside(*kg)) {
            let gap = Gap::Battery { fitted: c(kg), min: plate.battery_min.map(c), max: plate.battery_max.map(c) };
            found(gap, outside(fitted.nominal));
        }
    }
    let last = plate.last_height();
    if !reaches(last, height) {
        found(Gap::TooHigh { height: c(height), last: c(last) }, true);
    } else if !reaches(last, highest) {
        found(Gap::TooHigh { height: c(highest), last: c(last) }, false);
    } else if let (Some(furthest), None) = (plate.furthest_row(highest), plate.row_for(highest, centre.hi)) {
        let as_stated = plate.row_for(height, centre.nominal).is_none();
        let asked = if as_stated { centre.nominal } else { centre.hi };
        found(Gap::TooFarOut { load_centre: c(asked), last: c(furthest.load_centre) }, as_stated);
    }
    if let Some((row, r)) = plate.row_for(height, centre.nominal) {
        if !reaches(allows(r), mass.nominal) {
            found(Gap::TooHeavy { mass: c(mass.nominal), allowed: c(allows(r)), row }, true);
        } else if let Some((row, r)) = plate.row_for(highest, centre.hi)
            && !reaches(allows(r), mass.hi)
        {
            found(Gap::TooHeavy { mass: c(mass.hi), allowed: c(allows(r)), row }, false);
        }
    }
    let aside = placed.centre.y().plus(doubts.sideshift).moved(lift.sideshift);
    let limit = rules::off_centre_threshold(truck.rated()).value;
    let furthest_aside = aside.furthest();
    if !reaches(limit, furthest_aside) {
        let as_stated = !reaches(limit, aside.nominal.abs());
        let offset = if as_stated { aside.nominal.abs() } else { furthest_aside };
        found(Gap::OffCentre { offset: c(offset), limit: c(limit) }, as_stated);
    }
    let row = plate.row_for(highest, centre.hi).or_else(|| plate.row_for(height, centre.nominal));
    if let Some((row, r)) = row {
        outcome.row = Some(row);
        outcome.allowed = Some(c(allows(r)));
        if !reaches(r.load_centre, placed.centre.hi.z) {
            outcome.centre_higher = Some((c(placed.centre.hi.z), c(r.load_centre)));
        }
    }
    let estimate = estimate(scenario, plate, highest, centre.hi).filter(|_| estimated);
    outcome.estimate = estimate.map(|e| c(e * hanging.unwrap_or(1.0)));
    outcome
}

/// The planning estimate where the plate is for bare forks and an attachment is fitted, or where
/// the load centre lies beyond its last; `None` where the plate answers or nothing can be said.
fn estimate(scenario: &Scenario, plate: &Plate, height: f64, load_centre: f64) -> Option<f64> {
    let truck = &scenario.truck;
    let base = plate.row_for(height, load_centre).map(|(_, r)| r).or_else(|| plate.furthest_row(height))?;
    let axle = truck.load_distance;
    match (&truck.attachment, plate.issued_for) {
        (Some(a), PlateFor::Forks) => {
            let fitted = Fitted { mass: a.mass, ahead: a.ahead, lost_load: a.lost_load };
            Some(by_moments_with(base.capacity, axle, base.load_centre, load_centre, fitted))
        }
        (Some(a), PlateFor::Attachment) if plate.row_for(height, load_centre).is_none() => {
            Some(by_moments(base.capacity, axle + a.lost_load, base.load_centre, load_centre))
        }
        (None, PlateFor::Forks) if plate.row_for(height, load_centre).is_none() => {
            Some(by_moments(base.capacity, axle, base.load_centre, load_centre))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests;
