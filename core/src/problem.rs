//! What is missing or wrong in a document: the place, the value, the rule and the remedy.
//!
//! All problems are found at once. They are codes and numbers; a page puts them into words.

use crate::place::{Field, Place};
use crate::scalar::Scalar;
use serde::Serialize;

/// One thing to put right before anything can be answered.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Problem {
    /// The field to look at.
    pub place: Place,
    /// What stands there, where it is a number.
    pub value: Option<Scalar>,
    /// The rule it breaks.
    pub rule: Rule,
    /// What would put it right.
    pub remedy: Remedy,
}

/// The rule that is broken.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Rule {
    /// Nothing can be answered without this figure or choice.
    Required,
    /// What was typed is not a number. (From the page; a document holds numbers only.)
    NotANumber,
    /// What was typed may mean thousands or decimals. (From the page.)
    Ambiguous,
    /// Not a finite number.
    NotFinite,
    /// The permitted range, in the document's unit.
    Within {
        /// Least.
        min: Scalar,
        /// Greatest.
        max: Scalar,
    },
    /// It may not exceed another figure.
    NotMoreThan {
        /// That figure.
        limit: Scalar,
        /// Where it stands.
        of: Place,
    },
    /// It may not be less than another figure.
    NotLessThan {
        /// That figure.
        limit: Scalar,
        /// Where it stands.
        of: Place,
    },
    /// Given together or not at all.
    Together {
        /// The other one.
        with: Place,
    },
    /// How a figure is known was said of a figure that there is not, or that cannot be known so.
    NotKnownSo {
        /// Its path as it stands in the document.
        path: String,
    },
    /// A tolerance must be none or more, in the document's unit, and no more than this.
    ToleranceWithin {
        /// The most.
        max: Scalar,
    },
    /// The two axle loads must add up to the service weight.
    AxleSum {
        /// What they add up to, kg.
        sum: Scalar,
        /// The service weight, kg.
        total: Scalar,
    },
    /// Battery, mast, carriage, forks and axle must leave something for the chassis.
    PartsWithin {
        /// What the parts weigh together, kg.
        parts: Scalar,
        /// The most they may weigh, kg.
        limit: Scalar,
    },
    /// A plate never allows more higher up or further out.
    PlateFalls {
        /// The row it contradicts.
        row: usize,
    },
    /// Two rows of the plate are for the same height and load centre.
    PlateTwice {
        /// The earlier row.
        row: usize,
    },
    /// Neither a weight nor a material is given.
    WeightOrMaterial,
    /// An outline needs three different points at least.
    OutlineTooShort {
        /// It has so many.
        points: usize,
    },
    /// Two edges of an outline cross or touch, each named by the point it starts from, from 0.
    OutlineCrosses {
        /// One edge.
        first: usize,
        /// The other.
        second: usize,
    },
    /// An outline encloses nothing.
    OutlineFlat,
    /// A hole is not wholly inside the outline and apart from the other holes.
    HoleOutside,
    /// A cut-out is not wholly inside the part it is cut out of.
    CutOutside {
        /// That part, from 0.
        part: usize,
    },
    /// Two cut-outs of a part would take the same away twice.
    CutsOverlap {
        /// The other one, from 0.
        part: usize,
    },
    /// The cut-outs leave nothing of the part.
    CutTakesAll,
    /// What a cut-out is cut out of is not there, or is itself a cut-out.
    CutHost,
    /// A scale cannot read below zero: the load would have to pull its support up.
    NegativeReading,
    /// Two supports stand at the same place.
    SupportsTogether,
    /// Three or four supports stand in a line.
    SupportsInLine,
    /// The readings put the centre outside the load, m.
    WeighedOutside {
        /// The load begins here.
        lo: Scalar,
        /// And ends here.
        hi: Scalar,
    },
    /// The two sets of readings add up to different weights, kg.
    WeighedTotals {
        /// Level.
        level: Scalar,
        /// One end raised.
        raised: Scalar,
        /// They may differ by so much.
        allowed: Scalar,
    },
    /// One end cannot be raised that far.
    RaisedTooFar,
    /// The readings put the centre's height outside the load, m.
    HeightOutside {
        /// Its underside.
        lo: Scalar,
        /// Its top.
        hi: Scalar,
    },
    /// The ends of the known length are too close together.
    ScaleTooShort,
    /// A known length in a picture straightened by a rectangle comes out otherwise, m.
    ScaleDisagrees {
        /// As the rectangle has it.
        found: Scalar,
    },
    /// The four corners do not go round a rectangle clockwise from its top left.
    RectangleBent,
    /// This shape cannot point that way.
    NotThisWay,
    /// The load as a whole is too small or too large, m.
    WholeWithin {
        /// Least.
        min: Scalar,
        /// Greatest.
        max: Scalar,
    },
    /// The load as a whole is too light or too heavy, kg.
    WeightWithin {
        /// Least.
        min: Scalar,
        /// Greatest.
        max: Scalar,
    },
    /// Not a day of the calendar, written `2024-03-12`.
    NotADay,
    /// A list or a text is longer than the program takes.
    TooLong {
        /// The longest.
        most: usize,
    },
}

/// What would put it right.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "code", rename_all = "snake_case")]
pub enum Remedy {
    /// Enter it.
    Enter,
    /// Enter a figure in this range.
    EnterWithin {
        /// Least.
        min: Scalar,
        /// Greatest.
        max: Scalar,
    },
    /// Lower it to at most this, or correct the figure it is held against.
    AtMost {
        /// At most.
        value: Scalar,
    },
    /// Raise it to at least this, or correct the figure it is held against.
    AtLeast {
        /// At least.
        value: Scalar,
    },
    /// Make these agree: one of them is wrong.
    MakeAgree {
        /// The suspects.
        places: Vec<Place>,
    },
    /// Write it without a thousands mark, or with another number of decimals.
    WritePlainly,
    /// Write it as year, month and day, `2024-03-12`.
    WriteDay,
    /// Take some away.
    Shorten,
    /// Draw it again, or move the points.
    DrawAgain,
    /// Put it inside.
    MoveInside,
    /// Read, measure and enter it again.
    ReadAgain,
    /// Choose another one.
    ChooseAnother,
}

impl Problem {
    /// A problem, with the remedy that its rule implies.
    pub fn new(place: impl Into<Place>, value: Option<f64>, rule: Rule) -> Self {
        let place = place.into();
        let row = place.field.row();
        let range = || Remedy::EnterWithin { min: Scalar::computed(row.min), max: Scalar::computed(row.max) };
        let remedy = match &rule {
            Rule::Required if row.quantity.is_none() => Remedy::Enter,
            Rule::Required | Rule::NotANumber | Rule::NotFinite => range(),
            Rule::Within { min, max } => Remedy::EnterWithin { min: *min, max: *max },
            Rule::Ambiguous => Remedy::WritePlainly,
            Rule::NotMoreThan { limit, .. } => Remedy::AtMost { value: *limit },
            Rule::NotLessThan { limit, .. } => Remedy::AtLeast { value: *limit },
            Rule::Together { with } => Remedy::MakeAgree { places: vec![place, *with] },
            Rule::AxleSum { .. } => Remedy::MakeAgree {
                places: vec![Field::FrontAxle.into(), Field::SteerAxleLoad.into(), Field::Service.into()],
            },
            Rule::PartsWithin { .. } => Remedy::MakeAgree {
                places: vec![Field::Service.into(), Field::BatteryStated.into(), Field::MastOuter.into()],
            },
            Rule::PlateFalls { row } | Rule::PlateTwice { row } => {
                Remedy::MakeAgree { places: vec![Place::in_row(place.field, *row), place] }
            }
            Rule::NotKnownSo { .. } => Remedy::ChooseAnother,
            Rule::ToleranceWithin { max } => Remedy::EnterWithin { min: Scalar::ZERO, max: *max },
            Rule::NotADay => Remedy::WriteDay,
            Rule::TooLong { .. } => Remedy::Shorten,
            Rule::WeightOrMaterial => Remedy::Enter,
            Rule::OutlineTooShort { .. } | Rule::OutlineCrosses { .. } | Rule::OutlineFlat => Remedy::DrawAgain,
            Rule::ScaleTooShort | Rule::ScaleDisagrees { .. } | Rule::RectangleBent => Remedy::DrawAgain,
            Rule::HoleOutside | Rule::CutOutside { .. } | Rule::CutsOverlap { .. } | Rule::CutTakesAll => {
                Remedy::MoveInside
            }
            Rule::CutHost | Rule::NotThisWay => Remedy::ChooseAnother,
            Rule::NegativeReading
            | Rule::SupportsTogether
            | Rule::SupportsInLine
            | Rule::WeighedOutside { .. }
            | Rule::WeighedTotals { .. }
            | Rule::RaisedTooFar
            | Rule::HeightOutside { .. } => Remedy::ReadAgain,
            Rule::WholeWithin { min, max } | Rule::WeightWithin { min, max } => {
                Remedy::EnterWithin { min: *min, max: *max }
            }
        };
        Self { place, value: value.and_then(Scalar::new), rule, remedy }
    }
}
