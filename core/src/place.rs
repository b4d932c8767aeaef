//! Every figure that can be entered: its name in the document and the range it may lie in.
//!
//! One row of this table makes the check, the words of its message, the form's hint and the
//! generator of the property tests.

use crate::document::Document;
use crate::units::Quantity;
use serde::{Serialize, Serializer};
use std::fmt;

/// What one enterable figure may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// The path in the document, `[]` standing for a row number.
    pub path: &'static str,
    /// What kind of figure, or `None` for a choice.
    pub quantity: Option<Quantity>,
    /// The least permitted, in the document's unit.
    pub min: f64,
    /// The greatest permitted.
    pub max: f64,
    /// Whether nothing can be answered without it.
    pub required: bool,
}

macro_rules! fields {
    (
        numbers { $($(#[$doc:meta])* $name:ident $path:literal $quantity:ident $min:literal..$max:literal $need:ident
            |$d:ident, $i:ident| $get:expr;)* }
        choices { $($(#[$choice_doc:meta])* $choice:ident $choice_path:literal;)* }
    ) => {
        /// A figure or a choice that can be entered.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Field { $($(#[$doc])* $name,)* $($(#[$choice_doc])* $choice,)* }

        impl Field {
            /// Every figure, in the order of the document.
            pub const NUMBERS: &'static [Field] = &[$(Field::$name),*];
            /// Every choice.
            pub const CHOICES: &'static [Field] = &[$(Field::$choice),*];

            /// What it may be.
            pub const fn row(self) -> Row {
                match self {
                    $(Field::$name => Row {
                        path: $path, quantity: Some(Quantity::$quantity), min: $min, max: $max, required: fields!(@need $need),
                    },)*
                    $(Field::$choice => Row { path: $choice_path, quantity: None, min: 0.0, max: 0.0, required: true },)*
                }
            }
        }

        impl Place {
            /// Where the figure stands in a document, or `None` for a choice, for a row that is not
            /// there and for a part (attachment, plate) that is not there.
            pub fn number(self, document: &mut Document) -> Option<&mut Option<f64>> {
                match self.field {
                    $(Field::$name => { let ($d, $i) = (document, self.row); let _ = $i; $get })*
                    $(Field::$choice)|* => None,
                }
            }
        }
    };
    (@need needed) => { true };
    (@need optional) => { false };
}

fields! {
    numbers {
        /// Rated capacity.
        Rated "truck.rated_kg" Mass 50.0..20000.0 optional |d, i| Some(&mut d.truck.rated_kg);
        /// Load centre of the rated capacity.
        RatedCentre "truck.rated_load_centre_m" Length 0.2..3.0 optional |d, i| Some(&mut d.truck.rated_load_centre_m);
        /// Front axle to steer axle.
        Wheelbase "truck.wheelbase_m" Length 0.8..4.0 needed |d, i| Some(&mut d.truck.wheelbase_m);
        /// Between the middles of the front tyres.
        Tread "truck.tread_m" Length 0.5..2.5 needed |d, i| Some(&mut d.truck.tread_m);
        /// Front axle to fork face.
        LoadDistance "truck.load_distance_m" Length 0.15..1.2 needed |d, i| Some(&mut d.truck.load_distance_m);
        /// Service weight.
        Service "truck.service_kg" Mass 800.0..40000.0 needed |d, i| Some(&mut d.truck.service_kg);
        /// Front axle load, unladen.
        FrontAxle "truck.front_axle_kg" Mass 100.0..30000.0 optional |d, i| Some(&mut d.truck.front_axle_kg);
        /// Steer axle load, unladen.
        SteerAxleLoad "truck.steer_axle_kg" Mass 100.0..30000.0 optional |d, i| Some(&mut d.truck.steer_axle_kg);
        /// Front axle load, with the rated load.
        FrontAxleLaden "truck.front_axle_laden_kg" Mass 100.0..60000.0 optional |d, i| Some(&mut d.truck.front_axle_laden_kg);
        /// Steer axle load, with the rated load.
        SteerAxleLaden "truck.steer_axle_laden_kg" Mass 0.0..30000.0 optional |d, i| Some(&mut d.truck.steer_axle_laden_kg);
        /// Between the middles of a steer axle's tyres.
        SteerTread "truck.steer_tread_m" Length 0.1..2.5 optional |d, i| Some(&mut d.truck.steer_tread_m);
        /// Centre of gravity height, unladen.
        CgHeight "truck.cg_height_m" Length 0.3..2.0 optional |d, i| Some(&mut d.truck.cg_height_m);
        /// Top speed.
        TopSpeed "truck.top_speed_kmh" Speed 3.0..40.0 needed |d, i| Some(&mut d.truck.top_speed_kmh);
        /// Operator's weight.
        Operator "truck.operator_kg" Mass 0.0..200.0 optional |d, i| Some(&mut d.truck.operator_kg);
        /// Battery weight that the service weight includes.
        BatteryStated "truck.battery.stated_kg" Mass 0.0..4000.0 needed |d, i| Some(&mut d.truck.battery.stated_kg);
        /// Weight of the battery fitted.
        BatteryFitted "truck.battery.fitted_kg" Mass 0.0..4000.0 optional |d, i| Some(&mut d.truck.battery.fitted_kg);
        /// Battery centre behind the front axle.
        BatteryBehind "truck.battery.behind_m" Length -0.5..4.5 optional |d, i| Some(&mut d.truck.battery.behind_m);
        /// Battery centre height.
        BatteryHeight "truck.battery.height_m" Length 0.1..2.0 optional |d, i| Some(&mut d.truck.battery.height_m);
        /// Weight of the steer axle.
        AxleMass "truck.axle.mass_kg" Mass 20.0..2000.0 optional |d, i| Some(&mut d.truck.axle.mass_kg);
        /// Height of its pivot.
        PivotHeight "truck.axle.pivot_height_m" Length 0.0..0.8 optional |d, i| Some(&mut d.truck.axle.pivot_height_m);
        /// Greatest lift height.
        MastLift "truck.mast.lift_m" Length 0.5..12.0 needed |d, i| Some(&mut d.truck.mast.lift_m);
        /// Free lift.
        FreeLift "truck.mast.free_lift_m" Length 0.0..5.0 optional |d, i| Some(&mut d.truck.mast.free_lift_m);
        /// Lowered height.
        MastLowered "truck.mast.lowered_m" Length 0.8..6.0 optional |d, i| Some(&mut d.truck.mast.lowered_m);
        /// Greatest tilt back.
        MaxTiltBack "truck.mast.tilt_back_deg" Angle 0.0..15.0 needed |d, i| Some(&mut d.truck.mast.tilt_back_deg);
        /// Greatest tilt forward.
        MaxTiltForward "truck.mast.tilt_forward_deg" Angle 0.0..15.0 needed |d, i| Some(&mut d.truck.mast.tilt_forward_deg);
        /// Outer mast section.
        MastOuter "truck.mast.outer_kg" Mass 10.0..4000.0 optional |d, i| Some(&mut d.truck.mast.outer_kg);
        /// A moving section's weight.
        StageMass "truck.mast.stages[].mass_kg" Mass 10.0..4000.0 optional |d, i| d.truck.mast.stages.get_mut(i).map(|s| &mut s.mass_kg);
        /// A moving section's rise for each metre of lift.
        StageRatio "truck.mast.stages[].ratio" Ratio 0.0..1.0 optional |d, i| d.truck.mast.stages.get_mut(i).map(|s| &mut s.ratio);
        /// Tilt pivot ahead of the front axle.
        MastPivotX "truck.mast.pivot_x_m" Length -0.5..0.6 optional |d, i| Some(&mut d.truck.mast.pivot_x_m);
        /// Tilt pivot height.
        MastPivotZ "truck.mast.pivot_z_m" Length 0.0..1.0 optional |d, i| Some(&mut d.truck.mast.pivot_z_m);
        /// Forward give.
        MastGive "truck.mast.give_deg" Angle 0.0..5.0 optional |d, i| Some(&mut d.truck.mast.give_deg);
        /// Sideways play.
        MastPlay "truck.mast.play_deg" Angle 0.0..3.0 optional |d, i| Some(&mut d.truck.mast.play_deg);
        /// Fork carriage.
        Carriage "truck.forks.carriage_kg" Mass 5.0..2000.0 optional |d, i| Some(&mut d.truck.forks.carriage_kg);
        /// Pair of forks.
        ForkPair "truck.forks.pair_kg" Mass 5.0..2000.0 optional |d, i| Some(&mut d.truck.forks.pair_kg);
        /// Blade length.
        ForkLength "truck.forks.length_m" Length 0.4..3.0 optional |d, i| Some(&mut d.truck.forks.length_m);
        /// Width over the forks.
        ForkSpread "truck.forks.spread_m" Length 0.15..2.5 optional |d, i| Some(&mut d.truck.forks.spread_m);
        /// Width of one blade.
        BladeWidth "truck.forks.blade_width_m" Length 0.04..0.4 optional |d, i| Some(&mut d.truck.forks.blade_width_m);
        /// Blade thickness at the heel, new.
        BladeThickness "truck.forks.thickness_m" Length 0.015..0.15 optional |d, i| Some(&mut d.truck.forks.thickness_m);
        /// Blade thickness at the heel, today.
        BladeThicknessNow "truck.forks.thickness_now_m" Length 0.005..0.15 optional |d, i| Some(&mut d.truck.forks.thickness_now_m);
        /// Capacity stamped on one fork.
        ForkStamped "truck.forks.stamped_kg" Mass 100.0..20000.0 optional |d, i| Some(&mut d.truck.forks.stamped_kg);
        /// Load centre that it is stamped for.
        ForkStampedCentre "truck.forks.stamped_centre_m" Length 0.2..1.5 optional |d, i| Some(&mut d.truck.forks.stamped_centre_m);
        /// Length of fork extensions.
        Extension "truck.forks.extension_m" Length 0.5..4.0 optional |d, i| Some(&mut d.truck.forks.extension_m);
        /// Weight of the pair of extensions.
        ExtensionMass "truck.forks.extension_kg" Mass 5.0..500.0 optional |d, i| Some(&mut d.truck.forks.extension_kg);
        /// Attachment weight.
        AttachmentMass "truck.attachment.mass_kg" Mass 1.0..3000.0 needed |d, i| d.truck.attachment.as_mut().map(|a| &mut a.mass_kg);
        /// Attachment centre ahead of the fork face.
        AttachmentAhead "truck.attachment.cg_ahead_m" Length -0.3..3.0 needed |d, i| d.truck.attachment.as_mut().map(|a| &mut a.cg_ahead_m);
        /// Attachment centre above the blades.
        AttachmentAbove "truck.attachment.cg_above_m" Length -0.5..3.0 optional |d, i| d.truck.attachment.as_mut().map(|a| &mut a.cg_above_m);
        /// Lost load.
        LostLoad "truck.attachment.lost_load_m" Length 0.0..1.0 needed |d, i| d.truck.attachment.as_mut().map(|a| &mut a.lost_load_m);
        /// Plate: lift height of a row.
        PlateHeight "truck.plate.rows[].height_m" Length 0.1..12.0 needed |d, i| plate_row(d, i).map(|r| &mut r.height_m);
        /// Plate: load centre of a row.
        PlateLoadCentre "truck.plate.rows[].load_centre_m" Length 0.2..3.0 needed |d, i| plate_row(d, i).map(|r| &mut r.load_centre_m);
        /// Plate: capacity of a row.
        PlateCapacity "truck.plate.rows[].capacity_kg" Mass 50.0..20000.0 needed |d, i| plate_row(d, i).map(|r| &mut r.capacity_kg);
        /// Plate: least battery weight.
        PlateBatteryMin "truck.plate.battery_min_kg" Mass 0.0..4000.0 optional |d, i| d.truck.plate.as_mut().map(|p| &mut p.battery_min_kg);
        /// Plate: greatest battery weight.
        PlateBatteryMax "truck.plate.battery_max_kg" Mass 0.0..4000.0 optional |d, i| d.truck.plate.as_mut().map(|p| &mut p.battery_max_kg);
        /// Plate: weight of the attachment it names.
        PlateAttachmentMass "truck.plate.attachment_kg" Mass 1.0..3000.0 optional |d, i| d.truck.plate.as_mut().map(|p| &mut p.attachment_kg);
        /// Plate: greatest lift height of its mast.
        PlateMastLift "truck.plate.mast_lift_m" Length 0.5..12.0 optional |d, i| d.truck.plate.as_mut().map(|p| &mut p.mast_lift_m);
        /// Plate: greatest tilt back.
        PlateTiltBack "truck.plate.tilt_back_deg" Angle 0.0..15.0 optional |d, i| d.truck.plate.as_mut().map(|p| &mut p.tilt_back_deg);
        /// Plate: greatest tilt forward.
        PlateTiltForward "truck.plate.tilt_forward_deg" Angle 0.0..15.0 optional |d, i| d.truck.plate.as_mut().map(|p| &mut p.tilt_forward_deg);
        /// Load weight.
        LoadMass "load.mass_kg" Mass 1.0..20000.0 optional |d, i| Some(&mut d.load.mass_kg);
        /// Load along the forks.
        LoadLength "load.length_m" Length 0.05..6.0 optional |d, i| Some(&mut d.load.length_m);
        /// Load across the forks.
        LoadWidth "load.width_m" Length 0.05..8.0 optional |d, i| Some(&mut d.load.width_m);
        /// Load upward.
        LoadHeight "load.height_m" Length 0.02..6.0 optional |d, i| Some(&mut d.load.height_m);
        /// Load centre from its face at the heel.
        LoadCgFromHeel "load.cg_from_heel_m" Length 0.0..6.0 optional |d, i| Some(&mut d.load.cg_from_heel_m);
        /// Load centre left of its middle.
        LoadCgLeft "load.cg_left_m" Length -4.0..4.0 optional |d, i| Some(&mut d.load.cg_left_m);
        /// Load centre above the blades.
        LoadCgAbove "load.cg_above_m" Length 0.0..6.0 optional |d, i| Some(&mut d.load.cg_above_m);
        /// A part's weight.
        PartMass "load.parts[].mass_kg" Mass 0.05..20000.0 optional |d, i| d.load.parts.get_mut(i).map(|p| &mut p.mass_kg);
        /// A part along the forks, or along its own axis.
        PartLength "load.parts[].length_m" Length 0.002..8.0 optional |d, i| d.load.parts.get_mut(i).map(|p| &mut p.length_m);
        /// A part across the forks.
        PartWidth "load.parts[].width_m" Length 0.002..8.0 optional |d, i| d.load.parts.get_mut(i).map(|p| &mut p.width_m);
        /// A part upward.
        PartHeight "load.parts[].height_m" Length 0.002..6.0 optional |d, i| d.load.parts.get_mut(i).map(|p| &mut p.height_m);
        /// A part's diameter.
        PartDiameter "load.parts[].diameter_m" Length 0.002..6.0 optional |d, i| d.load.parts.get_mut(i).map(|p| &mut p.diameter_m);
        /// A tube's bore.
        PartBore "load.parts[].bore_m" Length 0.001..6.0 optional |d, i| d.load.parts.get_mut(i).map(|p| &mut p.bore_m);
        /// A part's nearest side ahead of the point measured from.
        PartAhead "load.parts[].ahead_m" Length -10.0..10.0 optional |d, i| d.load.parts.get_mut(i).map(|p| &mut p.ahead_m);
        /// A part's middle to the left of that point.
        PartLeft "load.parts[].left_m" Length -10.0..10.0 optional |d, i| d.load.parts.get_mut(i).map(|p| &mut p.left_m);
        /// A part's underside above that point.
        PartAbove "load.parts[].above_m" Length -10.0..10.0 optional |d, i| d.load.parts.get_mut(i).map(|p| &mut p.above_m);
        /// The known length in a picture.
        TraceScale "load.trace.scale_m" Length 0.02..10.0 optional |d, i| d.load.trace.as_mut().map(|t| &mut t.scale_m);
        /// Width of the known rectangle.
        TraceRectangleWidth "load.trace.rectangle_width_m" Length 0.02..10.0 optional |d, i| d.load.trace.as_mut().map(|t| &mut t.rectangle_width_m);
        /// Height of the known rectangle.
        TraceRectangleHeight "load.trace.rectangle_height_m" Length 0.02..10.0 optional |d, i| d.load.trace.as_mut().map(|t| &mut t.rectangle_height_m);
        /// How far a traced outline goes through.
        TraceThrough "load.trace.through_m" Length 0.005..8.0 optional |d, i| d.load.trace.as_mut().map(|t| &mut t.through_m);
        /// Accuracy of a scale.
        WeighAccuracy "load.weighing.accuracy_kg" Mass 0.0..500.0 optional |d, i| d.load.weighing.as_mut().map(|w| &mut w.accuracy_kg);
        /// How far one end was raised for the second weighing.
        WeighRaised "load.weighing.raised_m" Length 0.02..1.5 optional |d, i| d.load.weighing.as_mut().map(|w| &mut w.raised_m);
        /// A point of support ahead of the point measured from.
        WeighAhead "load.weighing.points[].ahead_m" Length -10.0..10.0 optional |d, i| weigh_point(d, i).map(|p| &mut p.ahead_m);
        /// A point of support to the left of it.
        WeighLeft "load.weighing.points[].left_m" Length -10.0..10.0 optional |d, i| weigh_point(d, i).map(|p| &mut p.left_m);
        /// A reading with the load level.
        WeighReading "load.weighing.points[].reading_kg" Mass -20000.0..20000.0 optional |d, i| weigh_point(d, i).map(|p| &mut p.reading_kg);
        /// A reading with one end raised.
        WeighRaisedReading "load.weighing.points[].raised_kg" Mass -20000.0..20000.0 optional |d, i| weigh_point(d, i).map(|p| &mut p.raised_kg);
        /// The hook of a hanging load above the blades.
        HookAbove "load.hook_above_m" Length -1.0..3.0 optional |d, i| Some(&mut d.load.hook_above_m);
        /// Heel gap.
        HeelGap "lift.heel_gap_m" Length 0.0..2.0 optional |d, i| Some(&mut d.lift.heel_gap_m);
        /// Load off centre to the left.
        Offset "lift.offset_m" Length -2.0..2.0 optional |d, i| Some(&mut d.lift.offset_m);
        /// Sideshift to the left.
        Sideshift "lift.sideshift_m" Length -0.5..0.5 optional |d, i| Some(&mut d.lift.sideshift_m);
        /// Fork height at take-up.
        TakeUp "lift.take_up_m" Length 0.0..12.0 optional |d, i| Some(&mut d.lift.take_up_m);
        /// Fork height for travelling.
        TravelLift "lift.travel_m" Length 0.0..2.0 optional |d, i| Some(&mut d.lift.travel_m);
        /// Fork height for putting down.
        LiftHeight "lift.height_m" Length 0.0..12.0 needed |d, i| Some(&mut d.lift.height_m);
        /// Tilt back while raised.
        TiltBack "lift.tilt_back_deg" Angle 0.0..15.0 optional |d, i| Some(&mut d.lift.tilt_back_deg);
        /// Tilt forward for placing.
        TiltForward "lift.tilt_forward_deg" Angle 0.0..15.0 optional |d, i| Some(&mut d.lift.tilt_forward_deg);
        /// Deceleration when braking with the load.
        Braking "drive.braking_ms2" Acceleration 0.2..6.0 optional |d, i| Some(&mut d.drive.braking_ms2);
        /// Speed in a bend with the load.
        CornerSpeed "drive.corner_kmh" Speed 0.5..40.0 optional |d, i| Some(&mut d.drive.corner_kmh);
        /// Speed in a bend without a load.
        CornerSpeedEmpty "drive.corner_empty_kmh" Speed 0.5..40.0 optional |d, i| Some(&mut d.drive.corner_empty_kmh);
        /// Radius of the bend.
        CornerRadius "drive.radius_m" Length 0.5..100.0 optional |d, i| Some(&mut d.drive.radius_m);
        /// The steepest ramp on the way.
        RampGrade "drive.ramp_pct" Slope 0.1..50.0 optional |d, i| Some(&mut d.drive.ramp_pct);
        /// The steepest cross-fall on the way.
        CrossFall "drive.cross_fall_pct" Slope 0.1..40.0 optional |d, i| Some(&mut d.drive.cross_fall_pct);
        /// The part of what holds the truck that must be left.
        Reserve "drive.reserve_pct" Part 15.0..90.0 optional |d, i| Some(&mut d.drive.reserve_pct);
    }
    choices {
        /// Three or four wheels.
        Wheels "truck.wheels";
        /// The truck's serial number.
        Serial "truck.serial";
        /// Its type.
        TypeName "truck.type_name";
        /// Its tyres.
        Tyres "truck.tyres";
        /// What the plate was issued for.
        PlateFor "truck.plate.issued_for";
        /// The day the plate was issued.
        PlateIssued "truck.plate.issued";
        /// The attachment it names.
        PlateAttachment "truck.plate.attachment";
        /// The tyres it names.
        PlateTyres "truck.plate.tyres";
        /// Whether the plate names the fork extensions.
        PlateExtensions "truck.plate.extensions";
        /// The plate's rows as a whole.
        PlateRows "truck.plate.rows";
        /// The mast's moving sections as a whole.
        Stages "truck.mast.stages";
        /// How the load's weight is known.
        WeightKnown "load.weight_known";
        /// How the load's centre is known.
        CentreKnown "load.centre_known";
        /// How the load's shape is given.
        GivenAs "load.given_as";
        /// What a traced load is made of.
        LoadMaterial "load.material";
        /// The load's parts as a whole.
        Parts "load.parts";
        /// A part's shape.
        PartShape "load.parts[].shape";
        /// The way a part's axis points.
        PartFacing "load.parts[].facing";
        /// What a part is cut out of.
        PartCutFrom "load.parts[].cut_from";
        /// How a part's weight is known.
        PartWeightKnown "load.parts[].weight_known";
        /// What a part is made of.
        PartMaterial "load.parts[].material";
        /// A prism's outline.
        PartOutline "load.parts[].outline";
        /// What a traced outline shows.
        TraceView "load.trace.view";
        /// Where the truck is in the picture.
        TraceTruck "load.trace.truck";
        /// The size of the picture.
        TracePicture "load.trace.picture";
        /// A traced outline.
        TraceOutline "load.trace.outline";
        /// A hole in it.
        TraceHole "load.trace.holes[]";
        /// The ends of the known length.
        TraceScaleEnds "load.trace.scale";
        /// The corners of the known rectangle.
        TraceRectangle "load.trace.rectangle";
        /// The points of support as a whole.
        WeighPoints "load.weighing.points";
        /// The end that was raised.
        WeighRaisedEnd "load.weighing.raised_end";
        /// Which way the load is turned.
        Turned "load.turned";
        /// What its underside is.
        Underside "load.underside";
        /// Whether it hangs.
        Hanging "load.hanging";
        /// How the ramp is driven down.
        RampDown "drive.ramp_down";
        /// Whether braking is looked at.
        Brake "drive.brake";
        /// Whether bends with the load are.
        Corner "drive.corner";
        /// Whether bends without a load are.
        CornerEmpty "drive.corner_empty";
        /// How single figures are known.
        Known "known";
    }
}

fn plate_row(d: &mut Document, i: usize) -> Option<&mut crate::document::PlateRow> {
    d.truck.plate.as_mut().and_then(|p| p.rows.get_mut(i))
}

fn weigh_point(d: &mut Document, i: usize) -> Option<&mut crate::document::WeighPoint> {
    d.load.weighing.as_mut().and_then(|w| w.points.get_mut(i))
}

/// One place in a document: a field, and a row number where it stands in a list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Place {
    /// Which figure.
    pub field: Field,
    /// Which row, from 0; 0 for what does not stand in a list.
    pub row: usize,
}

impl From<Field> for Place {
    fn from(field: Field) -> Self {
        Self { field, row: 0 }
    }
}

impl Place {
    /// A figure in row `row` of its list.
    pub fn in_row(field: Field, row: usize) -> Self {
        Self { field, row }
    }

    /// All places of figures that this document has, choices left out.
    pub fn all_numbers(document: &Document) -> Vec<Self> {
        Self::numbers_of(document, Field::NUMBERS)
    }

    /// All places of these figures that this document has.
    pub fn numbers_of(document: &Document, fields: &[Field]) -> Vec<Self> {
        let mut document = document.clone();
        let mut places = Vec::new();
        for &field in fields {
            let listed = field.row().path.contains("[]");
            let mut row = 0;
            while (Self { field, row }).number(&mut document).is_some() {
                places.push(Self { field, row });
                row += 1;
                if !listed {
                    break;
                }
            }
        }
        places
    }

    /// The figure as it stands in a document, or `None` where nothing is entered.
    pub fn get(self, document: &Document) -> Option<f64> {
        // The one accessor of the table is the mutable one; a copy is cheap beside a second table.
        self.number(&mut document.clone()).and_then(|n| *n)
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.field.row().path.replace("[]", &format!("[{}]", self.row)))
    }
}

impl Serialize for Place {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests;
