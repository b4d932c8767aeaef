//! What is assessed: a truck, a load and a lift that are complete and in range.
//!
//! Made only by [`Scenario::from_document`](crate::validate). All in m, kg, rad; signs as on the
//! [crate page](crate).

use crate::checklist::Item;
use crate::closure::Tested;
use crate::document::{PlateFor, Turned, Tyres, Wheels};
use crate::doubt::Doubts;
use crate::found::{Drawn, Found, Standing};
use crate::place::{Field, Place};
use crate::scalar::{Region, Scalar, Span};
use glam::{DVec2, DVec3};
use serde::Serialize;
use std::sync::Arc;

/// One truck, one load, one lift.
#[derive(Clone, Debug, PartialEq)]
pub struct Scenario {
    /// The truck as it stands today.
    pub truck: Truck,
    /// The load.
    pub load: Load,
    /// The lift.
    pub lift: Lift,
    /// The drive.
    pub drive: Drive,
    /// How far each figure may be from what is stated.
    pub doubts: Doubts,
    /// Every figure that was not entered, and what stands for it.
    pub assumed: Vec<Assumed>,
    /// The type sheet held against itself.
    pub closure: Vec<Tested>,
    /// What was looked at and is not in order.
    pub not_in_order: Vec<Item>,
}

/// A figure that nobody entered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Assumed {
    /// Which.
    pub place: Place,
    /// The least taken for it, in the document's unit.
    pub lo: Scalar,
    /// The greatest.
    pub hi: Scalar,
    /// Where it comes from.
    pub basis: Basis,
}

/// Where an unentered figure comes from.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Basis {
    /// A default of [`rules`](crate::rules).
    Figure {
        /// Its name there.
        id: &'static str,
    },
    /// The middle of the block.
    Middle,
    /// Worked out from other entries.
    Worked,
    /// Taken as none: on the ground, in the middle, no free lift.
    Zero,
    /// The battery window on the plate.
    PlateWindow,
    /// As far as the truck's own limit allows.
    TruckLimit,
    /// From the platform tests that a plated truck has passed.
    Inferred,
}

/// The truck.
#[derive(Clone, Debug, PartialEq)]
pub struct Truck {
    /// Three or four wheels.
    pub wheels: Wheels,
    /// Front axle to steer axle.
    pub wheelbase: f64,
    /// Front tread.
    pub tread: f64,
    /// Front axle to fork face.
    pub load_distance: f64,
    /// Service weight.
    pub service: f64,
    /// Position of its centre along x where the axle loads are known (negative: behind the front axle).
    pub cg_x: Option<f64>,
    /// Height of its centre where known.
    pub cg_z: Option<f64>,
    /// Its tyres, where that was said.
    pub tyres: Option<Tyres>,
    /// Top speed in km/h, the unit of the rule that uses it.
    pub top_speed_kmh: f64,
    /// Operator: from nobody to this.
    pub operator: f64,
    /// The battery.
    pub battery: Battery,
    /// Steer axle on a pivot, on four wheels.
    pub axle: Option<Axle>,
    /// The mast.
    pub mast: Mast,
    /// Carriage and forks.
    pub forks: Forks,
    /// Attachment fitted.
    pub attachment: Option<Attachment>,
    /// The plate.
    pub plate: Option<Plate>,
}

/// The battery.
#[derive(Clone, Debug, PartialEq)]
pub struct Battery {
    /// The one in the service weight.
    pub stated: f64,
    /// The one fitted.
    pub fitted: Span,
    /// Centre.
    pub at: DVec3,
    /// How far the centre may be out, each way along x, y, z.
    pub spread: DVec3,
}

/// A steer axle on a pivot.
#[derive(Clone, Debug, PartialEq)]
pub struct Axle {
    /// Its weight.
    pub mass: f64,
    /// Pivot height as stated; where it was not entered, the lower reading.
    pub pivot: f64,
    /// Pivot height for what is asked: the least it may be.
    pub pivot_low: f64,
    /// Pivot height for what a plate proves: the higher reading.
    pub pivot_high: f64,
}

/// The mast.
#[derive(Clone, Debug, PartialEq)]
pub struct Mast {
    /// Full lift.
    pub lift: f64,
    /// Free lift.
    pub free_lift: f64,
    /// Height lowered.
    pub lowered: f64,
    /// Limit of tilt back, a magnitude.
    pub tilt_back: f64,
    /// Limit of tilt forward.
    pub tilt_forward: f64,
    /// Outer section's weight.
    pub outer: f64,
    /// Moving sections: weight and ratio.
    pub stages: Vec<(f64, f64)>,
    /// Tilt pivot (x, 0, z).
    pub pivot: DVec3,
    /// Forward lean at full height under rated load.
    pub give: Span,
    /// Sideways lean each way at full height.
    pub play: f64,
}

/// Carriage and forks.
#[derive(Clone, Debug, PartialEq)]
pub struct Forks {
    /// Carriage.
    pub carriage: f64,
    /// The pair.
    pub pair: f64,
    /// Blade length.
    pub length: f64,
    /// Over the outer edges.
    pub spread: f64,
    /// The most it may be where it was not entered.
    pub spread_hi: f64,
    /// Width of one blade.
    pub blade: Span,
    /// Thickness, for the drawings.
    pub thickness: f64,
    /// The part of its thickness that a fork has lost at the heel, where that was measured.
    pub wear: Option<f64>,
    /// Capacity stamped on one fork, at this load centre.
    pub stamped: Option<(f64, f64)>,
    /// Extensions: length from the fork face, weight of the pair.
    pub extension: Option<(f64, f64)>,
}

impl Forks {
    /// How far the blades, or what lengthens them, reach from the fork face.
    pub fn reach(&self) -> f64 {
        self.extension.map_or(self.length, |(length, _)| length.max(self.length))
    }
}

/// An attachment.
#[derive(Clone, Debug, PartialEq)]
pub struct Attachment {
    /// What it is called.
    pub name: String,
    /// Its weight.
    pub mass: f64,
    /// Centre ahead of the fork face.
    pub ahead: f64,
    /// Centre above the blades.
    pub above: f64,
    /// Lost load.
    pub lost_load: f64,
}

/// The plate.
#[derive(Clone, Debug, PartialEq)]
pub struct Plate {
    /// Front end it was issued for.
    pub issued_for: PlateFor,
    /// Its rows.
    pub rows: Vec<PlateRow>,
    /// Least battery.
    pub battery_min: Option<f64>,
    /// Greatest battery.
    pub battery_max: Option<f64>,
    /// Whether it was issued for the extensions that are on.
    pub extensions: bool,
    /// The attachment it names; counts where it was issued for one.
    pub attachment: String,
    /// That attachment's weight.
    pub attachment_mass: Option<f64>,
    /// Full lift of the mast it was issued for.
    pub mast_lift: Option<f64>,
    /// The tyres it was issued for.
    pub tyres: Option<Tyres>,
    /// The most that mast tilts back, a magnitude.
    pub tilt_back: Option<f64>,
    /// The most it tilts forward.
    pub tilt_forward: Option<f64>,
}

/// A row of the plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateRow {
    /// Up to this height.
    pub height: f64,
    /// At this load centre.
    pub load_centre: f64,
    /// So much.
    pub capacity: f64,
}

/// The load as it stands on the forks.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// Its weight.
    pub mass: Span,
    /// Size along the forks, across, upward.
    pub size: DVec3,
    /// Centre from the face at the heel, left of the load's middle, above the blades. Of a hanging
    /// load its hook, where it pulls.
    pub centre: Region,
    /// Outlines of all that rests on the blades: from the heel, left of the middle.
    pub feet: Vec<Vec<DVec2>>,
    /// How far its outline may be out, along the forks and across.
    pub doubt: DVec2,
    /// To draw.
    pub drawn: Arc<[Drawn]>,
    /// Friction on the blades.
    pub friction: Span,
    /// Hangs from a hook so far above the blades.
    pub hanging: Option<f64>,
    /// How it is turned on the forks.
    pub turned: Turned,
    /// How all this was found.
    pub found: Arc<Found>,
}

impl Load {
    /// What was found, as it stands on the forks. A load that hangs freely pulls at its hook, wherever
    /// its own centre is below.
    pub fn of(found: Arc<Found>, standing: Standing, friction: Span, hanging: Option<f64>) -> Self {
        let Standing { size, centre, feet, doubt, drawn, turned } = standing;
        let height = hanging.map_or(centre.z(), Span::exact);
        let centre = Region::of(centre.x(), centre.y(), height);
        Self { mass: found.mass, size, centre, feet, doubt, drawn: drawn.into(), friction, hanging, turned, found }
    }

    /// The load's own figure for a place of its centre on the forks, or the other way round: turned a quarter,
    /// what lies along it lies across the forks.
    pub fn own(&self, place: Field) -> Field {
        match (self.turned, place) {
            (Turned::Left | Turned::Right, Field::LoadCgFromHeel) => Field::LoadCgLeft,
            (Turned::Left | Turned::Right, Field::LoadCgLeft) => Field::LoadCgFromHeel,
            _ => place,
        }
    }
}

/// The lift.
#[derive(Clone, Debug, PartialEq)]
pub struct Lift {
    /// Heel gap.
    pub heel_gap: Span,
    /// Off centre to the left.
    pub offset: Span,
    /// Sideshift to the left.
    pub sideshift: f64,
    /// Fork height at take-up.
    pub take_up: f64,
    /// Fork height travelling.
    pub travel: f64,
    /// Fork height for putting down.
    pub height: f64,
    /// Tilt back while raised, a magnitude.
    pub tilt_back: f64,
    /// Tilt forward for placing.
    pub tilt_forward: f64,
}

/// The drive with the load, and without it.
#[derive(Clone, Debug, PartialEq)]
pub struct Drive {
    /// Braking with the load, m/s^2, where it is looked at.
    pub braking: Option<f64>,
    /// A bend with the load: speed m/s, radius m.
    pub corner: Option<(f64, f64)>,
    /// A bend without it.
    pub corner_empty: Option<(f64, f64)>,
    /// The steepest ramp, a tangent.
    pub ramp: Option<f64>,
    /// Whether the load leads downhill.
    pub load_downhill: bool,
    /// The steepest cross-fall, a tangent.
    pub cross_fall: Option<f64>,
    /// The part of what holds the truck that must be left.
    pub reserve: f64,
}

impl Truck {
    /// Rated capacity: the most that any row of the plate allows; 0 without a plate.
    pub fn rated(&self) -> f64 {
        self.plate.iter().flat_map(|p| &p.rows).map(|r| r.capacity).fold(0.0, f64::max)
    }

    /// Rated load moment about the front axle: the greatest of the plate's rows, kg m; 0 without a plate.
    pub fn rated_moment(&self) -> f64 {
        let lost = match (&self.plate, &self.attachment) {
            (Some(Plate { issued_for: PlateFor::Attachment, .. }), Some(a)) => a.lost_load,
            _ => 0.0,
        };
        let rows = self.plate.iter().flat_map(|p| &p.rows);
        rows.map(|r| r.capacity * (self.load_distance + lost + r.load_centre)).fold(0.0, f64::max)
    }
}
