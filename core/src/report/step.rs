//! One step in the report.

use super::{Figures, Point, SeatReport};
use crate::body::{BodyId, Placed};
use crate::limit::Solved;
use crate::platform::Test;
use crate::polygon;
use crate::scalar::Scalar;
use crate::scenario::Scenario;
use crate::scene;
use crate::scene::Scene;
use crate::seat::Seat;
use crate::statics::Entries;
use crate::step::{Standing, Step, StepId};
use crate::support::LineId;
use glam::{DVec2, DVec3};
use serde::Serialize;

/// One body in a step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct BodyReport {
    /// Which.
    pub id: BodyId,
    /// Mass as stated, kg.
    pub mass: Scalar,
    /// The least it may be.
    pub mass_lo: Scalar,
    /// The greatest.
    pub mass_hi: Scalar,
    /// Centre of gravity as stated.
    pub at: Point,
}

/// One moment entry.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Entry {
    /// The body.
    pub id: BodyId,
    /// Its moment on level ground, N m; positive holds the truck down.
    pub moment: Scalar,
}

/// One tipping line in a step, standing as it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct LineReport {
    /// Which.
    pub id: LineId,
    /// Where it starts.
    pub from: Point,
    /// Where it ends.
    pub to: Point,
    /// Restoring moment, N m.
    pub moment: Figures,
    /// Share used; 1 is the point of tipping.
    pub share: Figures,
    /// Distance of the line of action inside the line, m.
    pub distance: Figures,
    /// Further tilt to the point of tipping, degrees; none where it does not tip.
    pub tip_angle_deg: Option<Scalar>,
    /// The same at the worst corner.
    pub tip_angle_worst_deg: Option<Scalar>,
    /// The bodies' entries as stated.
    pub entries: Vec<Entry>,
    /// The slope's entry, N m.
    pub slope_entry: Scalar,
    /// The acceleration's entry, N m.
    pub acceleration_entry: Scalar,
}

/// One platform slope in a step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct TestReport {
    /// Which.
    pub test: Test,
    /// About which line.
    pub line: LineId,
    /// Slope asked, a tangent.
    pub asked: Scalar,
    /// Slope stood as stated; none where it does not tip that way.
    pub stood: Option<Scalar>,
    /// Slope stood at the worst corner.
    pub stood_worst: Option<Scalar>,
    /// Restoring moment left on the slope asked, N m.
    pub moment: Figures,
    /// Share used on the slope asked.
    pub share: Figures,
    /// Whether it stands it as stated.
    pub passes: bool,
    /// Whether it stands it at the worst corner.
    pub passes_worst: bool,
}

/// Wheel loads, N.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Wheels {
    /// Left front.
    pub left: Scalar,
    /// Right front.
    pub right: Scalar,
    /// Front axle together.
    pub front: Scalar,
    /// Steer wheel or axle.
    pub steer: Scalar,
}

/// One step.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct StepReport {
    /// Which.
    pub id: StepId,
    /// Fork height, m.
    pub lift: Scalar,
    /// Tilt as displayed, degrees: back negative.
    pub tilt_deg: Scalar,
    /// Forward lean of the loaded mast counted as stated, degrees.
    pub lean_deg: Scalar,
    /// What pulls on each kilogram, m/s^2.
    pub field: Point,
    /// The part of that which braking or turning adds.
    pub acceleration: Point,
    /// Slope of the ground along the truck, a tangent: positive where it faces uphill.
    pub grade: Scalar,
    /// Slope across it: positive where its left side is the higher.
    pub cross_fall: Scalar,
    /// Every body.
    pub bodies: Vec<BodyReport>,
    /// All masses together, kg.
    pub total_mass: Scalar,
    /// Their common centre of gravity.
    pub centre: Point,
    /// The truck's own, without the load.
    pub truck_centre: Point,
    /// The load's, where it is on the truck.
    pub load_centre: Option<Point>,
    /// Where the line of action meets the ground.
    pub bob: Point,
    /// The box that the common centre may lie in: its least and its greatest corner.
    pub spread: (Point, Point),
    /// Where the line of action may meet the ground: the outline of that box, carried down along what
    /// pulls, as stated and at all ends of that.
    pub bob_spread: Vec<Point>,
    /// The three tipping lines.
    pub lines: Vec<LineReport>,
    /// The platform slopes it must stand.
    pub tests: Vec<TestReport>,
    /// Wheel loads.
    pub wheels: Wheels,
    /// The greatest share used over lines and slopes.
    pub share: Figures,
    /// The share that may be used: 1, or less where a reserve is asked.
    pub share_allowed: Scalar,
    /// The share used as a part of what may be: 1 is this step's limit.
    pub used: Figures,
    /// Whether the load is on the truck.
    pub laden: bool,
    /// Whether it stands and passes as stated.
    pub passes: bool,
    /// Whether it does so at the worst corner.
    pub passes_worst: bool,
    /// The load on the blades; none for one that hangs.
    pub seat: Option<SeatReport>,
    /// How far each figure that touches it may go before it no longer passes.
    pub limits: Vec<Solved>,
    /// Outlines for the drawings.
    pub scene: Scene,
}

/// The outline on the ground of a box seen along what pulls.
fn carried_down((lo, hi): (DVec3, DVec3), pulls: &[DVec3]) -> Vec<Point> {
    let corners = (0..8).map(|k| {
        let pick = |axis: usize| if k >> axis & 1 == 0 { lo[axis] } else { hi[axis] };
        DVec3::new(pick(0), pick(1), pick(2))
    });
    let down = |c: DVec3, w: &DVec3| c - *w * (c.z / w.z);
    let met: Vec<DVec2> = corners.flat_map(|c| pulls.iter().map(move |w| down(c, w).truncate())).collect();
    polygon::hull(&met).into_iter().map(|p| p.extend(0.0).into()).collect()
}

pub(super) fn step_report(
    scenario: &Scenario,
    placed: &Placed,
    step: &Step,
    seat: Option<&Seat>,
    limits: Vec<Solved>,
) -> StepReport {
    let c = Scalar::computed;
    let bodies = &step.stance.nominal;
    let pose = &step.stance.pose;
    let (total, centre) = bodies.centre(false);
    let load = bodies.as_slice().iter().filter(|b| b.id == BodyId::Load).map(|b| (b.mass.nominal, b.at)).next();
    let (load_mass, load_at) = load.unwrap_or_default();
    let truck = (total * centre - load_mass * load_at) / (total - load_mass);
    let placed = step.id.laden().then_some(placed);
    let w = step.field.total();
    let (grade, cross_fall) = step.field.tangents();
    let bob = centre - w * (centre.z / w.z);
    let wheels = step.wheels;
    let spread = step.stance.spread();
    StepReport {
        id: step.id,
        lift: c(pose.lift),
        tilt_deg: c(pose.tilt.to_degrees()),
        lean_deg: c(pose.lean.to_degrees()),
        field: w.into(),
        acceleration: step.field.acceleration.into(),
        grade: c(grade),
        cross_fall: c(cross_fall),
        bodies: bodies
            .as_slice()
            .iter()
            .map(|b| BodyReport {
                id: b.id,
                mass: c(b.mass.nominal),
                mass_lo: c(b.mass.lo),
                mass_hi: c(b.mass.hi),
                at: b.at.into(),
            })
            .collect(),
        total_mass: c(total),
        centre: centre.into(),
        truck_centre: truck.into(),
        load_centre: load.map(|_| load_at.into()),
        bob: bob.into(),
        spread: (spread.0.into(), spread.1.into()),
        bob_spread: carried_down(spread, &step.ends),
        lines: step.standing.iter().map(|s| line_report(step, s)).collect(),
        tests: step
            .tests
            .iter()
            .map(|t| {
                let stood = step.stood(t.line);
                TestReport {
                    test: t.test,
                    line: t.line,
                    asked: c(t.asked),
                    stood: stood.nominal.map(c),
                    stood_worst: stood.worst.map(c),
                    moment: t.moment.into(),
                    share: t.share.into(),
                    passes: t.passes(),
                    passes_worst: t.passes_worst(),
                }
            })
            .collect(),
        wheels: Wheels {
            left: c(wheels.left),
            right: c(wheels.right),
            front: c(wheels.left + wheels.right),
            steer: c(wheels.steer),
        },
        share: step.share().into(),
        share_allowed: c(step.allowed),
        used: step.used().into(),
        laden: step.id.laden(),
        passes: step.passes(),
        passes_worst: step.passes_worst(),
        seat: seat.map(SeatReport::of),
        limits,
        scene: scene::draw(scenario, pose, placed),
    }
}

fn line_report(step: &Step, standing: &Standing) -> LineReport {
    let c = Scalar::computed;
    let angle = step.tip_angle(standing.line.id);
    let entries = Entries::of(&step.stance.nominal, &standing.line, &step.field);
    LineReport {
        id: standing.line.id,
        from: standing.line.from.into(),
        to: standing.line.to.into(),
        moment: standing.moment.into(),
        share: standing.share.into(),
        distance: step.distance(standing.line.id).into(),
        tip_angle_deg: angle.nominal.map(|a| c(a.to_degrees())),
        tip_angle_worst_deg: angle.worst.map(|a| c(a.to_degrees())),
        entries: entries.bodies.iter().map(|&(id, m)| Entry { id, moment: c(m) }).collect(),
        slope_entry: c(entries.slope),
        acceleration_entry: c(entries.acceleration),
    }
}
