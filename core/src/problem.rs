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
    /// Take some away.
    Shorten,
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
            Rule::TooLong { .. } => Remedy::Shorten,
        };
        Self { place, value: value.and_then(Scalar::new), rule, remedy }
    }
}
