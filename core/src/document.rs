//! The saved file: one JSON document that holds one truck, one load and one lift.
//!
//! A document is what somebody entered, complete or not, in m, kg, degrees and km/h, each unit in
//! the field's name. It is a mirror, apart from the [scenario](crate::scenario) that is assessed, so
//! that the one can change without the other. Unknown fields are refused with their name.
//!
//! Signs: `offset_m`, `sideshift_m` and `cg_left_m` are positive to the truck's left;
//! `tilt_back_deg` and `tilt_forward_deg` are magnitudes, each in its own direction. What concerns
//! the load itself is in its own directions, ahead, left and up as it would face the forks unturned.

use crate::checklist::Answers;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What `format` says.
pub const FORMAT: &str = "standfast-check";
/// What `version` says; a greater one is refused.
pub const VERSION: u32 = 3;

/// One check as entered.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Document {
    /// Always [`FORMAT`].
    pub format: String,
    /// The version of the format.
    pub version: u32,
    /// Free text: what this is, who entered it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// The truck as it stands today.
    #[serde(default)]
    pub truck: Truck,
    /// The load.
    #[serde(default)]
    pub load: Load,
    /// The lift.
    #[serde(default)]
    pub lift: Lift,
    /// Where and how the truck drives with it.
    #[serde(default, skip_serializing_if = "is_default")]
    pub drive: Drive,
    /// How single figures are known, each by its path in this document (`truck.tread_m`,
    /// `truck.mast.stages[0].mass_kg`); what is not here is known in its usual way.
    #[serde(default, skip_serializing_if = "is_default")]
    pub known: BTreeMap<String, Known>,
    /// What was looked at before the lift.
    #[serde(default, skip_serializing_if = "is_default")]
    pub checklist: Answers,
}

impl Default for Document {
    fn default() -> Self {
        Self {
            format: FORMAT.to_owned(),
            version: VERSION,
            note: String::new(),
            truck: Truck::default(),
            load: Load::default(),
            lift: Lift::default(),
            drive: Drive::default(),
            known: BTreeMap::new(),
            checklist: Answers::default(),
        }
    }
}

/// What a figure is known by.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum By {
    /// A plate on the thing itself.
    Plate,
    /// The maker's sheet.
    Sheet,
    /// A scale.
    Scale,
    /// A delivery note, or what is marked on it.
    Note,
    /// A tape, a level or a gauge.
    Tape,
    /// An estimate.
    Estimate,
}

/// How one figure is known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Known {
    /// By what; not said is the usual way for that figure.
    #[serde(skip_serializing_if = "is_default")]
    pub by: Option<By>,
    /// It may be out by so much, each way, in the unit of its field; not said is what the way gives.
    #[serde(skip_serializing_if = "is_default")]
    pub tolerance: Option<f64>,
}

/// How the truck stands on the ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Wheels {
    /// Two front wheels and one steer wheel (or a close pair).
    Three,
    /// Two front wheels and a steer axle that hangs on a pivot.
    Four,
}

/// What a plate says of the front end it was issued for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum PlateFor {
    /// Forks alone.
    Forks,
    /// The attachment that is entered.
    Attachment,
}

/// What the truck's tyres are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Tyres {
    /// Press-on bands of solid rubber.
    Cushion,
    /// Solid tyres on wheels made for air.
    SolidPneumatic,
    /// Filled with air.
    Pneumatic,
}

/// How a loaded truck is driven down a ramp.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum RampDown {
    /// Backwards: the load stays uphill.
    Backwards,
    /// Forwards: the load leads downhill.
    Forwards,
}

macro_rules! entries {
    ($($(#[$doc:meta])* $name:ident { $($(#[$field_doc:meta])* $field:ident: $kind:ty,)* })*) => {
        $($(#[$doc])*
        #[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[serde(deny_unknown_fields, default)]
        pub struct $name {
            $($(#[$field_doc])* #[serde(skip_serializing_if = "is_default")] pub $field: $kind,)*
        })*
    };
}

pub(crate) mod file;
mod load;
pub(crate) mod survey;

pub use file::{FileError, Wrong};
pub use survey::{LARGEST, LISTS, LONGEST_TEXT, MOST_CHECKS, MOST_ROWS, OBJECTS, POINTS};

pub use load::{
    CentreKnown, Facing, GivenAs, Load, Part, PhotoTruck, RaisedEnd, Shape, Side, Trace, TraceView, Turned, WeighPoint,
    Weighing, WeightKnown,
};

fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

entries! {
    /// The truck as it stands today.
    Truck {
        /// What it is called.
        name: String,
        /// Its serial number.
        serial: String,
        /// Its type, as its plate has it.
        type_name: String,
        /// Three or four wheels.
        wheels: Option<Wheels>,
        /// Rated capacity, as its type sheet has it.
        rated_kg: Option<f64>,
        /// The load centre of that.
        rated_load_centre_m: Option<f64>,
        /// Front axle to steer axle.
        wheelbase_m: Option<f64>,
        /// Between the middles of the front tyres.
        tread_m: Option<f64>,
        /// Front axle to the fork face.
        load_distance_m: Option<f64>,
        /// Weight with the battery it was stated with, bare forks, no operator.
        service_kg: Option<f64>,
        /// Front axle load unladen, of the service weight.
        front_axle_kg: Option<f64>,
        /// Steer axle load unladen, of the service weight.
        steer_axle_kg: Option<f64>,
        /// Front axle load with the rated load at its load centre, forks down, mast upright, no operator.
        front_axle_laden_kg: Option<f64>,
        /// Steer axle load so.
        steer_axle_laden_kg: Option<f64>,
        /// Between the middles of the tyres of a steer axle.
        steer_tread_m: Option<f64>,
        /// Its tyres.
        tyres: Option<Tyres>,
        /// Height of the centre of gravity at the service weight, forks down.
        cg_height_m: Option<f64>,
        /// Top speed, unladen.
        top_speed_kmh: Option<f64>,
        /// Operator's weight.
        operator_kg: Option<f64>,
        /// The battery.
        battery: Battery,
        /// The pivoting steer axle of a four-wheel truck.
        axle: SteerAxle,
        /// The mast.
        mast: Mast,
        /// Carriage and forks.
        forks: Forks,
        /// What is fitted to the carriage besides forks.
        attachment: Option<Attachment>,
        /// The capacity plate.
        plate: Option<Plate>,
    }
    /// The battery.
    Battery {
        /// Weight that the service weight was stated with.
        stated_kg: Option<f64>,
        /// Weight of the one fitted today.
        fitted_kg: Option<f64>,
        /// Its centre behind the front axle.
        behind_m: Option<f64>,
        /// Its centre above the ground.
        height_m: Option<f64>,
    }
    /// The pivoting steer axle.
    SteerAxle {
        /// Axle, hubs and wheels.
        mass_kg: Option<f64>,
        /// Height of the pivot pin.
        pivot_height_m: Option<f64>,
    }
    /// The mast, without carriage and forks.
    Mast {
        /// Greatest lift height.
        lift_m: Option<f64>,
        /// Lift before the mast itself begins to rise.
        free_lift_m: Option<f64>,
        /// Height lowered.
        lowered_m: Option<f64>,
        /// Greatest tilt back.
        tilt_back_deg: Option<f64>,
        /// Greatest tilt forward.
        tilt_forward_deg: Option<f64>,
        /// The fixed outer section.
        outer_kg: Option<f64>,
        /// The moving sections, outermost first.
        stages: Vec<Stage>,
        /// Tilt pivot ahead of the front axle (behind is negative).
        pivot_x_m: Option<f64>,
        /// Tilt pivot above the ground.
        pivot_z_m: Option<f64>,
        /// Forward lean at full height under rated load.
        give_deg: Option<f64>,
        /// Sideways lean each way at full height.
        play_deg: Option<f64>,
    }
    /// A moving mast section.
    Stage {
        /// Its weight.
        mass_kg: Option<f64>,
        /// How far it rises for each metre of lift beyond the free lift.
        ratio: Option<f64>,
    }
    /// Carriage and forks.
    Forks {
        /// The fork carriage.
        carriage_kg: Option<f64>,
        /// The pair of forks.
        pair_kg: Option<f64>,
        /// Blade length from the fork face.
        length_m: Option<f64>,
        /// Width over the outer edges as set.
        spread_m: Option<f64>,
        /// Width of one blade.
        blade_width_m: Option<f64>,
        /// Thickness at the heel when new.
        thickness_m: Option<f64>,
        /// Thickness at the heel as measured today.
        thickness_now_m: Option<f64>,
        /// Capacity stamped on one fork.
        stamped_kg: Option<f64>,
        /// The load centre that it is stamped for.
        stamped_centre_m: Option<f64>,
        /// Length of fork extensions from the fork face, where they are on.
        extension_m: Option<f64>,
        /// Weight of the pair of extensions.
        extension_kg: Option<f64>,
    }
    /// An attachment.
    Attachment {
        /// What it is called.
        name: String,
        /// Its weight.
        mass_kg: Option<f64>,
        /// Its centre ahead of the fork face.
        cg_ahead_m: Option<f64>,
        /// Its centre above the fork blades.
        cg_above_m: Option<f64>,
        /// How far it pushes the load out: the lost load.
        lost_load_m: Option<f64>,
    }
    /// One capacity plate.
    Plate {
        /// The front end it was issued for.
        issued_for: Option<PlateFor>,
        /// Its rows.
        rows: Vec<PlateRow>,
        /// Least battery weight.
        battery_min_kg: Option<f64>,
        /// Greatest battery weight.
        battery_max_kg: Option<f64>,
        /// Whether it names the fork extensions that are on.
        extensions: bool,
        /// The day it was issued, `2026-05-14`.
        issued: String,
        /// The attachment it names.
        attachment: String,
        /// That attachment's weight.
        attachment_kg: Option<f64>,
        /// Greatest lift height of the mast it names.
        mast_lift_m: Option<f64>,
        /// The tyres it names.
        tyres: Option<Tyres>,
        /// Greatest tilt back it names.
        tilt_back_deg: Option<f64>,
        /// Greatest tilt forward it names.
        tilt_forward_deg: Option<f64>,
    }
    /// One row of a plate.
    PlateRow {
        /// Up to this lift height.
        height_m: Option<f64>,
        /// At this load centre.
        load_centre_m: Option<f64>,
        /// So much.
        capacity_kg: Option<f64>,
    }
    /// Where and how the truck drives with the load, and without it.
    Drive {
        /// Whether braking with the load is looked at; it is unless this says no.
        brake: Option<bool>,
        /// Whether bends with the load are.
        corner: Option<bool>,
        /// Whether bends without a load are.
        corner_empty: Option<bool>,
        /// Deceleration when braking.
        braking_ms2: Option<f64>,
        /// Speed in a bend with the load.
        corner_kmh: Option<f64>,
        /// Speed in a bend without a load.
        corner_empty_kmh: Option<f64>,
        /// Radius of the bend, to the middle of the front axle.
        radius_m: Option<f64>,
        /// The steepest ramp on the way, percent of tangent; none where the way is level.
        ramp_pct: Option<f64>,
        /// How the ramp is driven down.
        ramp_down: Option<RampDown>,
        /// The steepest cross-fall on the way, percent of tangent.
        cross_fall_pct: Option<f64>,
        /// The part of what holds the truck that must be left, percent.
        reserve_pct: Option<f64>,
    }
    /// The lift.
    Lift {
        /// Between the fork face (or attachment) and the load.
        heel_gap_m: Option<f64>,
        /// The block's middle to the left of the middle between the forks.
        offset_m: Option<f64>,
        /// The carriage's sideshift to the left.
        sideshift_m: Option<f64>,
        /// Fork height where the load is taken up.
        take_up_m: Option<f64>,
        /// Fork height for travelling.
        travel_m: Option<f64>,
        /// Fork height where it is put down.
        height_m: Option<f64>,
        /// Mast tilted back this far while raised.
        tilt_back_deg: Option<f64>,
        /// Mast tilted forward this far for placing.
        tilt_forward_deg: Option<f64>,
    }
}
