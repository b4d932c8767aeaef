//! A type sheet held against itself: laden and unladen axle loads have to fit together, by weights and by
//! moments about the front axle, each figure within its own tolerance.
//!
//! Laden axle loads are of the service weight and the rated load at its load centre, forks down, mast
//! upright, nobody on the truck: so sheets commonly give them (common practice). What does not close is a
//! contradiction: one of the figures is wrong, and those that could be are named.

use crate::document::Document;
use crate::known;
use crate::place::{Field, Place};
use crate::scalar::{Scalar, Span};
use serde::Serialize;

/// What is held against what.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Test {
    /// The laden axle loads add up to service weight and rated load, kg.
    LadenSum,
    /// By moments about the front axle the rated load takes so much off the steer axle: its laden load, kg.
    LadenMoments,
}

/// A figure that may be the wrong one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Suspect {
    /// Which.
    pub place: Place,
    /// If it is the only one, it should be about this, in the document's unit: from, to. `None` where no
    /// single figure explains it all.
    pub should_be: Option<(Scalar, Scalar)>,
}

/// One test as it came out.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Tested {
    /// Which.
    pub test: Test,
    /// As entered.
    pub found: Scalar,
    /// As the other figures have it.
    pub expected: Scalar,
    /// They may differ by so much.
    pub allowed: Scalar,
    /// Whether they agree.
    pub closes: bool,
    /// Where they do not: the figures that may be wrong.
    pub suspects: Vec<Suspect>,
}

/// A relation between figures that comes to nothing where they agree.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Relation {
    /// Unladen axle loads less service weight; held by a rule of its own, and so only a witness here.
    UnladenSum,
    /// Laden axle loads less service weight and rated load.
    LadenSum,
    /// What the steer axle loses, and the rated load, about the front axle.
    LadenMoments,
}

impl Relation {
    const ALL: [Self; 3] = [Self::UnladenSum, Self::LadenSum, Self::LadenMoments];

    /// The figures in it.
    const fn fields(self) -> &'static [Field] {
        match self {
            Self::UnladenSum => &[Field::FrontAxle, Field::SteerAxleLoad, Field::Service],
            Self::LadenSum => &[Field::FrontAxleLaden, Field::SteerAxleLaden, Field::Service, Field::Rated],
            Self::LadenMoments => &[
                Field::SteerAxleLaden,
                Field::SteerAxleLoad,
                Field::Wheelbase,
                Field::LoadDistance,
                Field::Rated,
                Field::RatedCentre,
            ],
        }
    }

    /// What it comes to, kg or kg m; of first degree in each of its figures.
    fn of(self, v: &[f64]) -> f64 {
        match (self, v) {
            (Self::UnladenSum, [front, steer, service]) => front + steer - service,
            (Self::LadenSum, [front, steer, service, rated]) => front + steer - service - rated,
            (Self::LadenMoments, [laden, unladen, wheelbase, distance, rated, centre]) => {
                (unladen - laden) * wheelbase - rated * (distance + centre)
            }
            _ => 0.0,
        }
    }

    fn spans(self, sheet: &dyn Fn(Field) -> Option<Span>) -> Option<Vec<Span>> {
        self.fields().iter().map(|&f| sheet(f)).collect()
    }

    /// All that it may come to: of first degree in each figure, so that its ends are at corners.
    fn range(self, spans: &[Span]) -> Span {
        let nominal: Vec<f64> = spans.iter().map(|s| s.nominal).collect();
        let (lo, hi) = ends(corners(spans).map(|v| self.of(&v)));
        Span { lo, nominal: self.of(&nominal), hi }
    }

    /// What one of its figures would have to be for it to come to nothing, the others in their ranges.
    fn mended_by(self, at: usize, spans: &[Span]) -> (f64, f64) {
        let solved = corners(spans).map(|mut v| {
            v[at] = 0.0;
            let without = self.of(&v);
            v[at] = 1.0;
            (without, self.of(&v) - without)
        });
        let solved: Vec<(f64, f64)> = solved.collect();
        let one_way = solved.iter().all(|s| s.1 > 1e-9) || solved.iter().all(|s| s.1 < -1e-9);
        // What may as well count for nothing mends nothing by a figure that could be named.
        if one_way { ends(solved.iter().map(|s| -s.0 / s.1)) } else { (f64::NEG_INFINITY, f64::INFINITY) }
    }
}

/// Every corner of a box, each figure at one of its ends.
fn corners(spans: &[Span]) -> impl Iterator<Item = Vec<f64>> {
    (0..1_u32 << spans.len()).map(move |corner| {
        let end = |(k, s): (usize, &Span)| if corner >> k & 1 == 0 { s.lo } else { s.hi };
        spans.iter().enumerate().map(end).collect()
    })
}

fn ends(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values.fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), v| (lo.min(v), hi.max(v)))
}

/// The noise of the last bits of kg and kg m.
const TIE: f64 = 1e-6;

fn closes(range: Span) -> bool {
    range.lo <= TIE && range.hi >= -TIE
}

/// Holds a document's figures against each other, as far as they are entered and in their ranges.
///
/// ```
/// use standfast_core::{closure, document::Document};
/// assert!(closure::check(&Document::default()).is_empty());
/// ```
pub fn check(document: &Document) -> Vec<Tested> {
    let sheet = |field: Field| {
        let row = field.row();
        let place = Place::from(field);
        let value = place.get(document).filter(|v| (row.min..=row.max).contains(v))?;
        let tolerance = known::tolerance_of(document, place, value).filter(|t| t.is_finite() && *t >= 0.0);
        Some(Span::about(value, tolerance.unwrap_or(0.0)))
    };
    let at = |field: Field| sheet(field).map_or(0.0, |s| s.nominal);
    let held: Vec<(Relation, Vec<Span>)> =
        Relation::ALL.into_iter().filter_map(|r| Some((r, r.spans(&sheet)?))).collect();
    let suspects = suspects(&held);
    let tested = |(relation, spans): &(Relation, Vec<Span>)| {
        let range = relation.range(spans);
        let (test, found, expected, unit) = match relation {
            Relation::UnladenSum => return None,
            Relation::LadenSum => {
                let found = at(Field::FrontAxleLaden) + at(Field::SteerAxleLaden);
                (Test::LadenSum, found, at(Field::Service) + at(Field::Rated), 1.0)
            }
            Relation::LadenMoments => {
                let wheelbase = at(Field::Wheelbase);
                let taken = at(Field::Rated) * (at(Field::LoadDistance) + at(Field::RatedCentre)) / wheelbase;
                (Test::LadenMoments, at(Field::SteerAxleLaden), at(Field::SteerAxleLoad) - taken, wheelbase)
            }
        };
        let allowed = 0.5 * (range.hi - range.lo) / unit;
        let c = Scalar::computed;
        let closes = closes(range);
        let own = suspects.iter().filter(|s| !closes && relation.fields().contains(&s.place.field));
        let suspects = own.copied().collect();
        Some(Tested { test, found: c(found), expected: c(expected), allowed: c(allowed), closes, suspects })
    };
    held.iter().filter_map(tested).collect()
}

/// The figures of which one alone explains all that does not close; where there is none, all of what does not.
fn suspects(held: &[(Relation, Vec<Span>)]) -> Vec<Suspect> {
    let (open, closed): (Vec<_>, Vec<_>) = held.iter().partition(|(r, spans)| !closes(r.range(spans)));
    let mut fields: Vec<Field> = Vec::new();
    for field in open.iter().flat_map(|(r, _)| r.fields()) {
        if !fields.contains(field) {
            fields.push(*field);
        }
    }
    let alone = |field: Field| {
        let row = field.row();
        let mut should_be = (row.min, row.max);
        for (relation, spans) in open.iter().chain(&closed) {
            match relation.fields().iter().position(|f| *f == field) {
                Some(at) => {
                    let (lo, hi) = relation.mended_by(at, spans);
                    should_be = (should_be.0.max(lo), should_be.1.min(hi));
                }
                None if !closes(relation.range(spans)) => return None,
                None => {}
            }
        }
        let between = (Scalar::computed(should_be.0), Scalar::computed(should_be.1));
        (should_be.0 <= should_be.1 + TIE).then_some(Suspect { place: field.into(), should_be: Some(between) })
    };
    let alone: Vec<Suspect> = fields.iter().filter_map(|f| alone(*f)).collect();
    if alone.is_empty() {
        return fields.into_iter().map(|f| Suspect { place: f.into(), should_be: None }).collect();
    }
    alone
}

#[cfg(test)]
mod tests;
