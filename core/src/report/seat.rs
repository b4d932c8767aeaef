//! The load on the blades, for the report.

use super::{Figures, Point};
use crate::scalar::Scalar;
use crate::seat::{Event, Over, Seat};
use crate::statics::Pair;
use serde::Serialize;

/// One edge that the load may topple over.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct ToppleReport {
    /// Which.
    pub over: Over,
    /// How far inside it the load's line of action meets the blades, m; negative beyond it.
    pub margin: Figures,
}

/// One event.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CaseReport {
    /// Which.
    pub event: Event,
    /// About each edge.
    pub topple: Vec<ToppleReport>,
    /// Friction asked for: what pulls along the blades over what presses on them.
    pub asked: Figures,
    /// Friction as stated.
    pub friction: Scalar,
    /// The least it may be.
    pub friction_worst: Scalar,
    /// Whether the load neither topples nor slides, as stated.
    pub passes: bool,
    /// Whether it does so at the worst.
    pub passes_worst: bool,
}

/// The load on the blades in one step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct SeatReport {
    /// Corners of the region that carries it, in the truck's frame, as stated.
    pub region: Vec<Point>,
    /// Where its own line of action meets the plane of the blades.
    pub bob: Point,
    /// Standing, and braking where it is carried.
    pub cases: Vec<CaseReport>,
}

impl SeatReport {
    pub(super) fn of(seat: &Seat) -> Self {
        let c = Scalar::computed;
        let figures = |p: Pair| Figures { nominal: c(p.nominal), worst: c(p.worst) };
        let case = |case: &crate::seat::Case| CaseReport {
            event: case.event,
            topple: case.topple.iter().map(|t| ToppleReport { over: t.over, margin: figures(t.margin) }).collect(),
            asked: figures(case.asked),
            friction: c(case.friction.nominal),
            friction_worst: c(case.friction.lo),
            passes: case.holds(),
            passes_worst: case.holds_worst(),
        };
        Self {
            region: seat.region.iter().map(|p| (*p).into()).collect(),
            bob: seat.bob.into(),
            cases: seat.cases.iter().map(case).collect(),
        }
    }
}
