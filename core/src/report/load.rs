//! The load as found, for the report: in its own frame as entered, m and kg.

use super::Point;
use crate::document::{Document, GivenAs};
use crate::found::{Drawn, Found, LoadFigure, Says, TraceFound, Way};
use crate::problem::Problem;
use crate::scalar::{Region, Scalar, Span};
use crate::validate;
use glam::DVec2;
use serde::Serialize;

/// A figure with the range it may lie in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Range {
    /// The least.
    pub lo: Scalar,
    /// As stated.
    pub nominal: Scalar,
    /// The greatest.
    pub hi: Scalar,
}

impl From<Span> for Range {
    fn from(span: Span) -> Self {
        let c = Scalar::computed;
        Self { lo: c(span.lo), nominal: c(span.nominal), hi: c(span.hi) }
    }
}

/// Where a centre is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct CentreReport {
    /// Ahead.
    pub ahead: Range,
    /// Left.
    pub left: Range,
    /// Above.
    pub above: Range,
}

impl From<&Region> for CentreReport {
    fn from(r: &Region) -> Self {
        Self { ahead: r.x().into(), left: r.y().into(), above: r.z().into() }
    }
}

/// Outlines of one solid: closed, (ahead, left), (ahead, up) and (left, up).
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ShapeReport {
    /// The part it is, from 0.
    pub part: Option<usize>,
    /// A cut-out or a hole.
    pub cut: bool,
    /// From above.
    pub plan: Vec<(Scalar, Scalar)>,
    /// From the truck's right side.
    pub side: Vec<(Scalar, Scalar)>,
    /// As the driver sees it.
    pub front: Vec<(Scalar, Scalar)>,
}

fn points(list: &[DVec2]) -> Vec<(Scalar, Scalar)> {
    list.iter().map(|p| (Scalar::computed(p.x), Scalar::computed(p.y))).collect()
}

impl From<&Drawn> for ShapeReport {
    fn from(d: &Drawn) -> Self {
        let seen = &d.seen;
        Self {
            part: d.part,
            cut: d.cut,
            plan: points(&seen.plan),
            side: points(&seen.side),
            front: points(&seen.front),
        }
    }
}

/// What one way says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct WayReport {
    /// Which.
    pub way: Way,
    /// Weight.
    pub mass: Option<Range>,
    /// Centre ahead.
    pub ahead: Option<Range>,
    /// Centre left.
    pub left: Option<Range>,
    /// Centre above.
    pub above: Option<Range>,
}

impl From<&Says> for WayReport {
    fn from(says: &Says) -> Self {
        let [mass, ahead, left, above] = says.figures.map(|f| f.map(Range::from));
        Self { way: says.way, mass, ahead, left, above }
    }
}

/// Two ways that do not agree.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct DisagreementReport {
    /// On what.
    pub figure: LoadFigure,
    /// Which; the first decides.
    pub ways: (Way, Way),
    /// What they say.
    pub ranges: (Range, Range),
}

/// One part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct PartReport {
    /// Its weight; of a cut-out what it takes away, negative.
    pub mass: Range,
    /// Its own centre, cut-outs taken away.
    pub centre: Point,
    /// Its volume, m^3; of a cut-out negative.
    pub volume: Scalar,
}

/// A traced outline.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct TraceReport {
    /// Whether a rectangle straightened the picture.
    pub straightened: bool,
    /// The outline, m, in the directions of the view.
    pub outline: Vec<(Scalar, Scalar)>,
    /// Its holes.
    pub holes: Vec<Vec<(Scalar, Scalar)>>,
    /// Area, m^2.
    pub area: Range,
    /// How far its centroid may be out across and up the picture, m.
    pub error: (Scalar, Scalar),
    /// The part of the sizes that tilt and perspective, or straightened the lens, may make.
    pub not_square: Scalar,
    /// Its centroid in the picture, pixels.
    pub centre_in_picture: (Scalar, Scalar),
}

impl From<&TraceFound> for TraceReport {
    fn from(t: &TraceFound) -> Self {
        let c = Scalar::computed;
        Self {
            straightened: t.straightened,
            outline: points(&t.outlined.outline),
            holes: t.outlined.holes.iter().map(|h| points(h)).collect(),
            area: t.outlined.area.into(),
            error: (c(t.outlined.spread.x), c(t.outlined.spread.y)),
            not_square: c(t.outlined.not_square),
            centre_in_picture: (c(t.outlined.in_picture.x), c(t.outlined.in_picture.y)),
        }
    }
}

/// Which way decides each figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct DecidedBy {
    /// The weight.
    pub mass: Way,
    /// The centre ahead.
    pub ahead: Way,
    /// The centre left.
    pub left: Way,
    /// The centre above.
    pub above: Way,
}

/// The load as found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LoadReport {
    /// How its shape is given.
    pub given_as: GivenAs,
    /// Its weight.
    pub mass: Range,
    /// The low corner of its box.
    pub low: Point,
    /// The box's edges.
    pub size: Point,
    /// Its centre.
    pub centre: CentreReport,
    /// All that was said.
    pub ways: Vec<WayReport>,
    /// Which of it decides.
    pub decided_by: DecidedBy,
    /// Where ways disagree.
    pub disagreements: Vec<DisagreementReport>,
    /// Its parts.
    pub parts: Vec<PartReport>,
    /// Its traced outline.
    pub trace: Option<TraceReport>,
}

impl LoadReport {
    pub(super) fn of(found: &Found) -> Self {
        let c = Scalar::computed;
        let shape = &found.shape;
        let [mass, ahead, left, above] = found.decided_by;
        Self {
            given_as: shape.given_as,
            mass: found.mass.into(),
            low: shape.low.into(),
            size: shape.size.into(),
            centre: (&found.centre).into(),
            ways: found.ways.iter().map(WayReport::from).collect(),
            decided_by: DecidedBy { mass, ahead, left, above },
            disagreements: found
                .disagreements
                .iter()
                .map(|d| DisagreementReport {
                    figure: d.figure,
                    ways: d.ways,
                    ranges: (d.ranges.0.into(), d.ranges.1.into()),
                })
                .collect(),
            parts: shape
                .parts
                .iter()
                .map(|p| PartReport { mass: p.mass.into(), centre: p.centre.into(), volume: c(p.volume) })
                .collect(),
            trace: shape.trace.as_ref().map(TraceReport::from),
        }
    }
}

/// What can be said of the load alone, whatever is known of a truck.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct LoadAnswer {
    /// What is missing or wrong in it.
    pub problems: Vec<Problem>,
    /// What can be drawn of it all the same.
    pub shapes: Vec<ShapeReport>,
    /// The load, where nothing is missing or wrong.
    pub load: Option<LoadReport>,
    /// Its traced outline, as soon as that can be worked out: how far it goes through, and the
    /// weight, may still be missing.
    pub outline: Option<TraceReport>,
}

/// Looks at a document's load alone. Never panics.
///
/// ```
/// use standfast_core::{document::Document, report::find_load};
/// let mut document = Document::default();
/// document.load.mass_kg = Some(600.0);
/// document.load.length_m = Some(1.2);
/// document.load.width_m = Some(0.8);
/// document.load.height_m = Some(1.0);
/// let found = find_load(&document).load.expect("a block");
/// assert_eq!(found.centre.ahead.nominal.get(), 0.6);
/// ```
pub fn find_load(document: &Document) -> LoadAnswer {
    LoadAnswer::of(validate::load_alone(document))
}

impl LoadAnswer {
    pub(super) fn of(alone: validate::LoadAlone) -> Self {
        Self {
            shapes: alone.drawn.iter().map(ShapeReport::from).collect(),
            load: alone.found.as_deref().map(LoadReport::of),
            outline: alone.outline.as_ref().map(TraceReport::from),
            problems: alone.problems,
        }
    }
}
