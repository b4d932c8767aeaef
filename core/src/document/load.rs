//! The load in a document: one block, parts or a traced outline, and what was weighed.
//!
//! All in the load's own directions: ahead (away from the truck), left and up as it would stand on
//! the forks unturned. Places may be measured from any one point, the same for all of them.

use super::is_default;
use crate::friction::Underside;
use crate::material::Material;
use serde::{Deserialize, Serialize};

/// How a weight is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum WeightKnown {
    /// Weighed.
    Scale,
    /// Read from a delivery note or from the load itself.
    Note,
    /// Estimated.
    Estimate,
}

/// How the load's centre of gravity is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum CentreKnown {
    /// Taken to be in the middle of the block.
    Middle,
    /// Marked on the load or measured: then its three distances are given.
    Mark,
}

/// How the load's shape is given.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum GivenAs {
    /// One block.
    #[default]
    Block,
    /// Parts.
    Parts,
    /// An outline traced from a photo or on squared paper.
    Trace,
}

/// How far the load is turned on the forks, seen from above.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Turned {
    /// As given: its own heel side faces the forks.
    #[default]
    No,
    /// A quarter turn to the left (counter-clockwise): its left side points to the truck.
    Left,
    /// Half a turn: its far side faces the forks.
    Half,
    /// A quarter turn to the right (clockwise).
    Right,
}

/// A shape that a part may have.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// A box: length, width, height.
    Box,
    /// A cylinder: diameter, and length along its axis.
    Cylinder,
    /// A tube: the same with a bore.
    Tube,
    /// A cone: diameter of its foot, and length along its axis.
    Cone,
    /// A sphere: diameter.
    Sphere,
    /// Half a sphere: diameter.
    HalfSphere,
    /// A wedge: a box cut in half along a slope. Length, width, height.
    Wedge,
    /// A drawn outline, and length square to it.
    Prism,
}

impl Shape {
    /// All of them.
    pub const ALL: [Self; 8] =
        [Self::Box, Self::Cylinder, Self::Tube, Self::Cone, Self::Sphere, Self::HalfSphere, Self::Wedge, Self::Prism];
}

/// A direction of the load's own.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Facing {
    /// Up.
    #[default]
    Up,
    /// Down.
    Down,
    /// Away from the truck.
    Ahead,
    /// To the truck.
    Heel,
    /// Left.
    Left,
    /// Right.
    Right,
}

impl Facing {
    /// All of them, the upright ones first.
    pub const ALL: [Self; 6] = [Self::Up, Self::Down, Self::Ahead, Self::Heel, Self::Left, Self::Right];
}

/// A side of the load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// Away from the truck.
    Ahead,
    /// At the heel.
    Heel,
    /// Left.
    Left,
    /// Right.
    Right,
}

/// Which end was raised for the second weighing.
pub type RaisedEnd = Side;

/// What a traced outline shows.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum TraceView {
    /// The load from the side: ahead and up.
    #[default]
    Side,
    /// From the front, as the driver sees it: left is left.
    Front,
    /// From above, the far side at the top of the picture.
    Plan,
}

/// On which side of a picture from the side the truck stands, or would stand.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum PhotoTruck {
    /// On the left: what is ahead is on the right.
    #[default]
    Left,
    /// On the right.
    Right,
}

entries! {
    /// The load.
    Load {
        /// What it is.
        name: String,
        /// How its shape is given.
        given_as: GivenAs,
        /// Its whole weight.
        mass_kg: Option<f64>,
        /// How the weight is known.
        weight_known: Option<WeightKnown>,
        /// What it is made of, all through: a traced load without a weight.
        material: Option<Material>,
        /// Block: along the forks.
        length_m: Option<f64>,
        /// Block: across the forks.
        width_m: Option<f64>,
        /// Block: upward.
        height_m: Option<f64>,
        /// Block: how the centre is known.
        centre_known: Option<CentreKnown>,
        /// Block: centre from the face at the heel.
        cg_from_heel_m: Option<f64>,
        /// Block: centre to the left of the block's own middle.
        cg_left_m: Option<f64>,
        /// Block: centre above its underside.
        cg_above_m: Option<f64>,
        /// Its parts.
        parts: Vec<Part>,
        /// Its traced outline.
        trace: Option<Trace>,
        /// What was weighed.
        weighing: Option<Weighing>,
        /// Which way it is turned on the forks.
        turned: Turned,
        /// What its underside is.
        underside: Option<Underside>,
        /// Whether it hangs from the truck instead of lying on the forks.
        hanging: bool,
        /// A hanging load: the hook above the fork blades.
        hook_above_m: Option<f64>,
    }
    /// One part of a load.
    Part {
        /// What it is.
        name: String,
        /// Its shape.
        shape: Option<Shape>,
        /// The way its axis points: of a cone to its point, of half a sphere to its dome, of a
        /// wedge to its high side.
        facing: Facing,
        /// A cut-out: the part, from 0, that it is cut out of. Its weight is never given: it takes
        /// away what that part is made of.
        cut_from: Option<usize>,
        /// Its weight as it is, cut-outs already missing.
        mass_kg: Option<f64>,
        /// How that is known.
        weight_known: Option<WeightKnown>,
        /// What it is made of, where no weight is given.
        material: Option<Material>,
        /// Along the forks; of a cylinder, tube, cone or prism along its own axis.
        length_m: Option<f64>,
        /// Across the forks.
        width_m: Option<f64>,
        /// Upward.
        height_m: Option<f64>,
        /// Diameter.
        diameter_m: Option<f64>,
        /// Diameter of a tube's bore.
        bore_m: Option<f64>,
        /// Its nearest side ahead of the point measured from.
        ahead_m: Option<f64>,
        /// Its middle to the left of that point.
        left_m: Option<f64>,
        /// Its underside above that point.
        above_m: Option<f64>,
        /// A prism's outline, m: (ahead, left) where its axis is upright, (ahead, up) where it lies
        /// across, (left, up) where it lies along. Only its form counts, not where it was drawn.
        outline: Vec<[f64; 2]>,
    }
    /// An outline traced from a photo or on squared paper. Points are in pixels, right and down.
    Trace {
        /// What it shows.
        view: TraceView,
        /// Where the truck is in a picture from the side.
        truck: PhotoTruck,
        /// Size of the picture, pixels: right, down.
        picture: Option<[f64; 2]>,
        /// The outline.
        outline: Vec<[f64; 2]>,
        /// Holes through it.
        holes: Vec<Vec<[f64; 2]>>,
        /// The two ends of a known length.
        scale: Vec<[f64; 2]>,
        /// That length.
        scale_m: Option<f64>,
        /// The corners of a known rectangle, to straighten the picture: top left, top right, bottom
        /// right, bottom left, as the rectangle really stands.
        rectangle: Vec<[f64; 2]>,
        /// That rectangle's width.
        rectangle_width_m: Option<f64>,
        /// Its height.
        rectangle_height_m: Option<f64>,
        /// How far the outline goes through, square to the picture.
        through_m: Option<f64>,
    }
    /// What was read on scales under the load.
    Weighing {
        /// Two, three or four points of support.
        points: Vec<WeighPoint>,
        /// Each reading is right give or take so much.
        accuracy_kg: Option<f64>,
        /// The second set: the end that was raised.
        raised_end: Option<RaisedEnd>,
        /// And how far.
        raised_m: Option<f64>,
    }
    /// One point of support. Two of them are bearers right across the load.
    WeighPoint {
        /// Ahead of the point measured from: the block's face at the heel, or the parts' own datum.
        ahead_m: Option<f64>,
        /// To the left of it: of the block's middle.
        left_m: Option<f64>,
        /// The reading with the load level.
        reading_kg: Option<f64>,
        /// The reading with one end raised.
        raised_kg: Option<f64>,
    }
}
