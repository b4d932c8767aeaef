//! What was weighed, from what was entered.

use super::Entries;
use crate::found::{Says, Shape, Way};
use crate::place::{Field, Place};
use crate::problem::Rule;
use crate::rules;
use crate::scalar::{Scalar, Span};
use crate::weighed::{self, Fault, Support};
use glam::DVec2;

impl Entries {
    /// What the scales say; nothing where nothing was weighed or something is wrong with it.
    pub(super) fn weighed(&mut self, shape: Option<&Shape>) -> Vec<Says> {
        let Some(weighing) = self.document.load.weighing.clone() else { return Vec::new() };
        let before = self.problems.len();
        let count = weighing.points.len();
        if count < 2 {
            self.problem(Field::WeighPoints, None, Rule::Required);
        }
        // A second set that nobody said the raised end of is not passed over.
        let read = (0..count).any(|k| self.entered(Place::in_row(Field::WeighRaisedReading, k)).is_some());
        let raised = weighing.raised_end.is_some() || self.entered(Field::WeighRaised).is_some() || read;
        let by = if raised { self.needed_here(Field::WeighRaised) } else { None };
        if raised && weighing.raised_end.is_none() {
            self.problem(Field::WeighRaisedEnd, None, Rule::Required);
        }
        let supports: Vec<Option<Support>> = (0..count).map(|k| self.support(k, raised)).collect();
        let Some(supports) = supports.into_iter().collect::<Option<Vec<_>>>() else { return Vec::new() };
        if self.problems.len() > before {
            return Vec::new();
        }
        let largest = supports.iter().map(|s| s.level).fold(0.0, f64::max);
        let accuracy = match self.entered(Field::WeighAccuracy) {
            Some(accuracy) => accuracy,
            None => {
                let accuracy = rules::TOLERANCE_SCALE.value * largest;
                let basis = crate::scenario::Basis::Figure { id: rules::TOLERANCE_SCALE.id };
                self.assume(Field::WeighAccuracy, Span::exact(accuracy), basis);
                accuracy
            }
        };
        let found = match weighed::find(&supports, accuracy, weighing.raised_end.zip(by)) {
            Ok(found) => found,
            Err(fault) => {
                self.weighing_problem(&supports, fault);
                return Vec::new();
            }
        };
        let above = found.above.map(|z| z.moved(shape.map_or(0.0, |s| s.low.z)));
        if let Some(shape) = shape {
            self.weighed_inside(shape, [found.ahead, found.left, above]);
        }
        let level =
            Says { way: Way::WeighedLevel, figures: [Some(found.mass), found.ahead, found.left, None], rank: 0 };
        let raised = Says { way: Way::WeighedRaised, figures: [None, None, None, above], rank: 0 };
        std::iter::once(level).chain(above.map(|_| raised)).collect()
    }

    fn support(&mut self, k: usize, raised: bool) -> Option<Support> {
        let mut at = |field| self.needed_here(Place::in_row(field, k));
        let (ahead, left, level) = (at(Field::WeighAhead), at(Field::WeighLeft), at(Field::WeighReading));
        let raised = if raised { at(Field::WeighRaisedReading).map(Some) } else { Some(None) };
        Some(Support { at: DVec2::new(ahead?, left?), level: level?, raised: raised? })
    }

    fn weighing_problem(&mut self, supports: &[Support], fault: Fault) {
        let c = Scalar::computed;
        let (place, value, rule) = match fault {
            Fault::Negative { support, raised: false } => (
                Place::in_row(Field::WeighReading, support),
                supports.get(support).map(|s| s.level),
                Rule::NegativeReading,
            ),
            Fault::Negative { support, raised: true } => (
                Place::in_row(Field::WeighRaisedReading, support),
                supports.get(support).and_then(|s| s.raised),
                Rule::NegativeReading,
            ),
            Fault::Nothing => (Field::WeighPoints.into(), Some(0.0), Rule::Required),
            Fault::Together => (Field::WeighPoints.into(), None, Rule::SupportsTogether),
            Fault::InLine => (Field::WeighPoints.into(), None, Rule::SupportsInLine),
            Fault::Totals { level, raised, allowed } => (
                Field::WeighPoints.into(),
                None,
                Rule::WeighedTotals { level: c(level), raised: c(raised), allowed: c(allowed) },
            ),
            Fault::RaisedTooFar => (Field::WeighRaised.into(), self.entered(Field::WeighRaised), Rule::RaisedTooFar),
        };
        self.problem(place, value, rule);
    }

    /// The centre that was weighed is one that the load can have.
    fn weighed_inside(&mut self, shape: &Shape, figures: [Option<Span>; 3]) {
        let c = Scalar::computed;
        let (lo, hi) = (shape.low, shape.low + shape.size);
        for (k, figure) in figures.into_iter().enumerate() {
            let Some(figure) = figure else { continue };
            if figure.meets(Span::between(lo[k], hi[k])) {
                continue;
            }
            let (lo, hi) = (c(lo[k]), c(hi[k]));
            let (place, rule) = if k < 2 {
                (Field::WeighPoints, Rule::WeighedOutside { lo, hi })
            } else {
                (Field::WeighRaised, Rule::HeightOutside { lo, hi })
            };
            self.problem(place, Some(figure.nominal), rule);
        }
    }
}
