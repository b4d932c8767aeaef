//! The capacity diagram: weight against load centre for several heights. What the plate allows governs;
//! beside it stands what the model would leave, which is never more than a curve to compare with.

use crate::balance::Balance;
use crate::body::Placed;
use crate::document::Document;
use crate::limit;
use crate::limit::{Axis, Limit};
use crate::plate;
use crate::scalar::Scalar;
use crate::scenario::Scenario;
use crate::step::StepId;
use serde::Serialize;

/// The diagram of one truck with one load's height of centre and tolerances.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Diagram {
    /// One for each height, lowest first.
    pub curves: Vec<Curve>,
    /// The plate's rows, by height, then by load centre; none without a plate.
    pub plate: Vec<Row>,
    /// The load as it is.
    pub load: Today,
}

/// What the model leaves at one height.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Curve {
    /// Fork height, m.
    pub height: Scalar,
    /// From the nearest load centre outward.
    pub points: Vec<Point>,
}

/// One point of a curve.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Point {
    /// Load centre from the face that carries the load, m.
    pub load_centre: Scalar,
    /// The greatest weight, as stated with its tolerance on top, that is left standing at the worst corner
    /// when it is lifted, carried low and raised to that height, kg; none where none is.
    pub mass: Option<Scalar>,
}

/// One row of the plate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Row {
    /// Up to this height, m.
    pub height: Scalar,
    /// Up to this load centre, m.
    pub load_centre: Scalar,
    /// So much, kg; of a hanging load the part of it that may hang.
    pub capacity: Scalar,
}

/// The load of the check.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Today {
    /// Its weight as stated, kg, and the range it may have.
    pub mass: Scalar,
    /// The least.
    pub mass_lo: Scalar,
    /// The greatest.
    pub mass_hi: Scalar,
    /// Its load centre as stated, m, and the range it may have.
    pub load_centre: Scalar,
    /// The nearest.
    pub load_centre_lo: Scalar,
    /// The furthest.
    pub load_centre_hi: Scalar,
    /// The greatest fork height of the move, m.
    pub height: Scalar,
}

/// The steps that a curve is about: what is lifted with, low and raised. How it is driven has limits of its own.
const LOW: [StepId; 3] = [StepId::Travel, StepId::TakeUp, StepId::TiltBack];
/// What mostly ends it comes first.
const RAISED: [StepId; 3] = [StepId::RaisedForward, StepId::RaisedUpright, StepId::RaisedBack];

/// The nearest load centre that is drawn, how far past the plate's last one it goes on, and in what steps, m.
const CENTRES: (f64, f64, f64) = (0.30, 0.40, 0.05);
/// Without a plate the load centres end here, m.
const LAST_CENTRE: f64 = 0.80;
/// The most heights that are drawn: more cannot be told apart.
const HEIGHTS: usize = 4;

/// The diagram of a document, where nothing is missing or wrong in it. Never panics.
///
/// ```
/// use standfast_core::{capacity, example};
/// let diagram = capacity::diagram(&example::document(example::THREE_WHEEL)).expect("complete");
/// let lowest = &diagram.curves[0];
/// // Further out it is never more.
/// assert!(lowest.points.windows(2).all(|p| p[0].mass >= p[1].mass));
/// ```
pub fn diagram(document: &Document) -> Option<Diagram> {
    let scenario = Scenario::from_document(document).ok()?;
    let balance = Balance::of(&scenario.truck, &scenario.doubts);
    let placed = Placed::of(&scenario.load, &scenario.lift);
    let need = plate::check(&scenario, &placed).need;
    let rows = scenario.truck.plate.iter().flat_map(|p| &p.rows);
    let part = if scenario.load.hanging.is_some() { crate::rules::HANGING_PART.value } else { 1.0 };
    let c = Scalar::computed;
    let mut plate: Vec<Row> = rows
        .map(|r| Row { height: c(r.height), load_centre: c(r.load_centre), capacity: c(r.capacity * part) })
        .collect();
    plate.sort_by_key(|r| (r.height, r.load_centre));
    let last = plate.iter().map(|r| r.load_centre.get()).reduce(f64::max).unwrap_or(LAST_CENTRE);
    let curves = curves(&scenario, &balance, document, &heights(&scenario, &plate), last + CENTRES.1);
    let x = placed.centre.x();
    let load = Today {
        mass: c(placed.mass.nominal),
        mass_lo: c(placed.mass.lo),
        mass_hi: c(placed.mass.hi),
        load_centre: c(x.nominal),
        load_centre_lo: c(x.lo),
        load_centre_hi: c(x.hi),
        height: need.height,
    };
    Some(Diagram { curves, plate, load })
}

/// The heights of the plate's rows and of the move, lowest first; of too many the highest.
fn heights(scenario: &Scenario, plate: &[Row]) -> Vec<f64> {
    let mut heights: Vec<f64> = plate.iter().map(|r| r.height.get()).collect();
    heights.push(scenario.lift.height);
    heights.retain(|h| *h <= scenario.truck.mast.lift + 1e-9);
    heights.sort_by(f64::total_cmp);
    // No two that a drawing could not tell apart.
    heights.dedup_by(|b, a| (*b - *a).abs() < 0.15);
    let over = heights.len().saturating_sub(HEIGHTS);
    heights.split_off(over)
}

/// A curve for each height, its points up to a load centre.
fn curves(scenario: &Scenario, balance: &Balance, document: &Document, heights: &[f64], to: f64) -> Vec<Curve> {
    let mut scenario = scenario.clone();
    // How it lies on the blades is another question: it counts as held.
    scenario.load.hanging = Some(0.0);
    let (from, step) = (CENTRES.0, CENTRES.2);
    let count = ((to - from) / step + 1e-6).max(0.0) as usize;
    let c = Scalar::computed;
    let mut curves: Vec<Curve> =
        heights.iter().map(|height| Curve { height: c(*height), points: Vec::with_capacity(count + 1) }).collect();
    let mut at = scenario.lift.heel_gap.nominal + scenario.load.centre.at.x;
    for k in 0..=count {
        let load_centre = from + step * k as f64;
        let by = load_centre - at;
        let centre = &mut scenario.load.centre;
        (centre.at.x, centre.lo.x, centre.hi.x) = (centre.at.x + by, centre.lo.x + by, centre.hi.x + by);
        at = load_centre;
        // Whatever the height, it is taken up and carried low.
        let axis = Axis::of(Limit::LoadMass, &scenario, document);
        let low = limit::in_steps_to(axis.ends().1, &axis, &LOW, &scenario, balance);
        for (curve, height) in curves.iter_mut().zip(heights) {
            scenario.lift.height = *height;
            let raised = low.and_then(|low| limit::in_steps_to(low, &axis, &RAISED, &scenario, balance));
            curve.points.push(Point { load_centre: c(load_centre), mass: raised.map(c) });
        }
    }
    curves
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::example;

    #[test]
    fn higher_or_further_out_the_model_never_leaves_more() {
        for text in [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD] {
            let diagram = diagram(&example::document(text)).expect("complete");
            assert!(diagram.curves.len() >= 2 && diagram.curves.len() <= HEIGHTS);
            for pair in diagram.curves.windows(2) {
                assert!(pair[0].height < pair[1].height);
            }
            for curve in &diagram.curves {
                assert!(curve.points.len() > 10);
                for pair in curve.points.windows(2) {
                    assert!(pair[0].mass >= pair[1].mass, "{:?}: {pair:?}", curve.height);
                }
            }
        }
    }

    /// The point at the load's own centre and height is the limit of the load's weight in those steps.
    #[test]
    fn a_curve_passes_through_the_limit_of_the_load_itself() {
        let mut document = example::document(example::THREE_WHEEL);
        document.load.cg_from_heel_m = Some(0.58);
        document.lift.height_m = Some(4.7);
        let scenario = Scenario::from_document(&document).expect("complete");
        let balance = Balance::of(&scenario.truck, &scenario.doubts);
        let steps = [LOW, RAISED].concat();
        let own = limit::in_steps(Limit::LoadMass, &steps, &scenario, &balance, &document).expect("some weight");
        let found = diagram(&document).expect("complete");
        let curve = found.curves.iter().find(|c| (c.height.get() - 4.7).abs() < 1e-9).expect("drawn");
        let point = curve.points.iter().find(|p| (p.load_centre.get() - 0.60).abs() < 1e-9).expect("drawn");
        let mass = point.mass.expect("some weight").get();
        assert!((mass - own).abs() < 1e-3, "{mass} {own}");
    }

    #[test]
    fn an_incomplete_check_has_no_diagram() {
        assert_eq!(diagram(&Document::default()), None);
    }
}
