//! The saved file: one JSON document that holds one truck, one load and one lift.
//!
//! A document is what somebody entered, complete or not, in m, kg, degrees and km/h, each unit in
//! the field's name. It is a mirror, apart from the [scenario](crate::scenario) that is assessed, so
//! that the one can change without the other. Unknown fields are refused with their name.
//!
//! Signs: `offset_m`, `sideshift_m` and `cg_left_m` are positive to the truck's left;
//! `tilt_back_deg` and `tilt_forward_deg` are magnitudes, each in its own direction. What concerns
//! the load itself is in its own directions, ahead, left and up as it would face the forks unturned.

use serde::{Deserialize, Serialize};

/// What `format` says.
pub const FORMAT: &str = "standfast-check";
/// What `version` says; a greater one is refused.
pub const VERSION: u32 = 2;

/// One check as entered.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
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
        }
    }
}

/// How the truck stands on the ground.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Wheels {
    /// Two front wheels and one steer wheel (or a close pair).
    Three,
    /// Two front wheels and a steer axle that hangs on a pivot.
    Four,
}

/// What a plate says of the front end it was issued for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PlateFor {
    /// Forks alone.
    Forks,
    /// The attachment that is entered.
    Attachment,
}

/// How a loaded truck is driven down a ramp.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
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
        #[serde(deny_unknown_fields, default)]
        pub struct $name {
            $($(#[$field_doc])* #[serde(skip_serializing_if = "is_default")] pub $field: $kind,)*
        })*
    };
}

mod load;

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
        /// Three or four wheels.
        wheels: Option<Wheels>,
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

/// Why a file was refused.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum FileError {
    /// Not JSON, or cut off, or a field that does not belong: the reader's own words, with the name.
    Unreadable {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What was met there.
        detail: String,
    },
    /// JSON, but not one of ours.
    OtherFormat {
        /// What its `format` says, if anything.
        found: Option<String>,
    },
    /// Written by a newer program.
    Newer {
        /// Its version.
        found: u64,
        /// The newest that can be read.
        known: u32,
    },
}

impl std::fmt::Display for FileError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Unreadable { line, column, detail } => write!(f, "line {line}, column {column}: {detail}"),
            Self::OtherFormat { found: Some(found) } => write!(f, "format is `{found}`, not `{FORMAT}`"),
            Self::OtherFormat { found: None } => write!(f, "there is no `format`; `{FORMAT}` was expected"),
            Self::Newer { found, known } => write!(f, "version {found} is newer than {known}, the newest known here"),
        }
    }
}
impl std::error::Error for FileError {}

impl Document {
    /// Reads a document.
    ///
    /// # Errors
    /// [`FileError`] for anything that is not wholly a document of a known version. Nothing is
    /// taken from a file that is refused.
    ///
    /// ```
    /// use standfast_core::document::Document;
    /// let text = r#"{"format": "standfast-check", "version": 1, "load": {"mass_kg": 900}}"#;
    /// assert_eq!(Document::from_json(text).map(|d| d.load.mass_kg), Ok(Some(900.0)));
    /// let wrong = r#"{"format": "standfast-check", "version": 1, "load": {"mas_kg": 900}}"#;
    /// assert!(Document::from_json(wrong).is_err_and(|e| e.to_string().contains("mas_kg")));
    /// ```
    pub fn from_json(text: &str) -> Result<Self, FileError> {
        let unreadable = |e: serde_json::Error| {
            let detail = e.to_string();
            let detail = detail.split(" at line ").next().unwrap_or_default().to_owned();
            FileError::Unreadable { line: e.line(), column: e.column(), detail }
        };
        let header: serde_json::Value = serde_json::from_str(text).map_err(unreadable)?;
        let found = header.get("format").and_then(|v| v.as_str());
        if found != Some(FORMAT) {
            return Err(FileError::OtherFormat { found: found.map(str::to_owned) });
        }
        match header.get("version").and_then(serde_json::Value::as_u64) {
            Some(version) if version > u64::from(VERSION) => Err(FileError::Newer { found: version, known: VERSION }),
            Some(0) => Err(FileError::Unreadable { line: 1, column: 1, detail: "version 0 was never used".to_owned() }),
            // Version 1 knew only a load of one block; all it can say means the same today.
            _ => serde_json::from_str(text).map(|d| Self { version: VERSION, ..d }).map_err(unreadable),
        }
    }

    /// The document as a file, indented for people.
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_document_survives_writing_and_reading() {
        let mut doc = Document { note: "x".to_owned(), ..Document::default() };
        doc.truck.wheelbase_m = Some(1.35);
        doc.truck.mast.stages.push(Stage { mass_kg: Some(150.0), ratio: None });
        doc.truck.plate = Some(Plate { issued_for: Some(PlateFor::Forks), ..Plate::default() });
        doc.load.weight_known = Some(WeightKnown::Note);
        assert_eq!(Document::from_json(&doc.to_json()), Ok(doc));
    }

    #[test]
    fn what_is_not_ours_is_refused_with_its_name() {
        let refused = |text: &str| Document::from_json(text).expect_err(text).to_string();
        assert!(refused("").contains("line 1"));
        assert!(
            refused("{\"format\": \"standfast-check\", \"version\": 1, \"load\": {\"mass_kg\": 1e999}}")
                .contains("number out of range")
        );
        assert!(refused("{\"format\": \"standfast-check\", \"version\": 3}").contains("newer"));
        assert!(refused("{\"format\": \"standfast-check\"}").contains("version"));
        assert!(refused("{\"format\": \"other\", \"version\": 1}").contains("other"));
        assert!(refused("[1, 2]").contains("format"));
        assert!(refused("{\"format\": \"standfast-check\", \"version\": 1, \"colour\": 3}").contains("colour"));
        assert!(
            refused("{\"format\": \"standfast-check\", \"version\": 1, \"truck\": {\"wheels\": \"five\"}}")
                .contains("five")
        );
        let twice = "{\"format\": \"standfast-check\", \"version\": 1, \"load\": {\"mass_kg\": 1, \"mass_kg\": 2}}";
        assert!(refused(twice).contains("mass_kg"));
        assert!(refused("{\"format\": \"standfast-check\", \"version\": 1} trailing").contains("trailing"));
        assert!(refused(&"[".repeat(5000)).contains("recursion"));
    }
}
