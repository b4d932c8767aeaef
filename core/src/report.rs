//! The whole report: what a page shows and what a program reads. It serialises to JSON.
//!
//! Units: m, kg, N, N m; slopes are tangents; angles are degrees and say so in their name.

use crate::balance::{Balance, Contradiction};
use crate::body::{BodyId, Placed};
use crate::document::Document;
use crate::forks;
use crate::plate;
use crate::platform::Test;
use crate::problem::Problem;
use crate::remedy;
use crate::rules::{BuiltIn, Figure, Mark};
use crate::scalar::Scalar;
use crate::scenario::{Assumed, Scenario};
use crate::scene::{self, Scene};
use crate::seat::Seat;
use crate::statics::{Corner, Entries, Pair};
use crate::step::{Standing, Step, StepId};
use crate::support::LineId;
use crate::validate;
use crate::verdict::Verdict;
use crate::whole::Whole;
use glam::DVec3;
use serde::Serialize;

mod load;
mod seat;

pub use load::{
    CentreReport, DecidedBy, DisagreementReport, LoadAnswer, LoadReport, PartReport, Range, ShapeReport, TraceReport,
    WayReport, find_load,
};
pub use seat::{CaseReport, SeatReport, ToppleReport};

/// A figure as stated and at the worst corner.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Figures {
    /// As stated.
    pub nominal: Scalar,
    /// At the worst corner.
    pub worst: Scalar,
}

impl From<Pair> for Figures {
    fn from(pair: Pair) -> Self {
        Self { nominal: Scalar::computed(pair.nominal), worst: Scalar::computed(pair.worst) }
    }
}

/// A point or vector in the truck's frame.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Point {
    /// Ahead.
    pub x: Scalar,
    /// Left.
    pub y: Scalar,
    /// Up.
    pub z: Scalar,
}

impl From<DVec3> for Point {
    fn from(v: DVec3) -> Self {
        Self { x: Scalar::computed(v.x), y: Scalar::computed(v.y), z: Scalar::computed(v.z) }
    }
}

/// The answer to one document.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Report {
    /// The program's version.
    pub program: &'static str,
    /// What is missing or wrong; empty where there is an assessment.
    pub problems: Vec<Problem>,
    /// The assessment, where nothing is missing or wrong.
    pub assessment: Option<Assessment>,
}

/// What was found.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Assessment {
    /// The verdict.
    pub verdict: Verdict,
    /// Every figure that was assumed or inferred.
    pub assumed: Vec<Assumed>,
    /// Figures of the model's own that nobody can enter: where its parts are taken to be.
    pub built_in: Vec<BuiltInReport>,
    /// Where the entered truck and its plate contradict each other.
    pub contradictions: Vec<Contradiction>,
    /// Corners (x, z) of where the unladen truck's centre may be; one where it is known.
    pub unladen_centre: Vec<(Scalar, Scalar)>,
    /// The plate.
    pub plate: plate::Outcome,
    /// The load on the blades.
    pub forks: forks::Outcome,
    /// The load as found.
    pub load: LoadReport,
    /// What would have to change about how the load stands on the forks, the least first.
    pub remedies: Vec<remedy::Leads>,
    /// Every step.
    pub steps: Vec<StepReport>,
    /// The step with the greatest share used at the worst corner.
    pub governing_step: StepId,
}

/// A figure of the model's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct BuiltInReport {
    /// Which.
    pub what: BuiltIn,
    /// Its value: m, or a part where `unit` is empty.
    pub value: Scalar,
    /// `m`, or empty.
    pub unit: &'static str,
    /// Why that much.
    pub source: &'static str,
    /// How sure it is.
    pub mark: Mark,
}

impl BuiltInReport {
    fn of(what: BuiltIn) -> Self {
        let Figure { value, unit, source, mark, .. } = what.figure();
        Self { what, value: Scalar::computed(value), unit, source, mark }
    }
}

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
    /// Outlines for the drawings.
    pub scene: Scene,
}

/// Checks, fills and assesses a document. Never panics.
///
/// ```
/// use standfast_core::{document::Document, report::assess};
/// let report = assess(&Document::default());
/// assert!(report.assessment.is_none() && !report.problems.is_empty());
/// ```
pub fn assess(document: &Document) -> Report {
    report(document, validate::check(document).0)
}

/// The same with what can be said of the load alone, as [`find_load`] says it: the load is looked at once.
pub fn assess_with_load(document: &Document) -> (Report, LoadAnswer) {
    let (scenario, alone) = validate::check(document);
    (report(document, scenario), LoadAnswer::of(alone))
}

fn report(document: &Document, scenario: Result<Scenario, Vec<Problem>>) -> Report {
    let program = env!("CARGO_PKG_VERSION");
    match scenario {
        Err(problems) => Report { program, problems, assessment: None },
        Ok(scenario) => {
            Report { program, problems: Vec::new(), assessment: Some(assess_scenario(&scenario, document)) }
        }
    }
}

fn assess_scenario(scenario: &Scenario, document: &Document) -> Assessment {
    let balance = Balance::of(&scenario.truck);
    let whole = Whole::of(scenario, &balance);
    let remedies = remedy::find(scenario, &balance, &whole, document.load.turned);
    let Whole { placed, plate, forks, steps, seats, verdict } = whole;
    let mut assumed = scenario.assumed.clone();
    assumed.extend(balance.inferred.iter().cloned());
    assumed.sort_by_key(|a| a.place);
    let pivoting = scenario.truck.axle.is_some();
    let built_in = BuiltIn::ALL.into_iter().filter(|b| pivoting || *b != BuiltIn::SteerAxleHeight);
    let governing_step = steps
        .iter()
        .fold((StepId::TakeUp, -1.0), |best, s| if s.used().worst > best.1 { (s.id, s.used().worst) } else { best })
        .0;
    Assessment {
        verdict,
        assumed,
        built_in: built_in.map(BuiltInReport::of).collect(),
        contradictions: balance.contradictions.clone(),
        unladen_centre: balance.whole.iter().map(|p| (Scalar::computed(p.x), Scalar::computed(p.y))).collect(),
        plate,
        forks,
        load: LoadReport::of(&scenario.load.found),
        remedies,
        steps: steps.iter().zip(&seats).map(|(s, seat)| step_report(scenario, &placed, s, seat.as_ref())).collect(),
        governing_step,
    }
}

fn step_report(scenario: &Scenario, placed: &Placed, step: &Step, seat: Option<&Seat>) -> StepReport {
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
        scene: scene::draw(scenario, pose, placed),
    }
}

fn line_report(step: &Step, standing: &Standing) -> LineReport {
    let c = Scalar::computed;
    let angle = step.tip_angle(&standing.line);
    let entries = Entries::of(&step.stance.nominal, &standing.line, &step.field, Corner::Nominal);
    LineReport {
        id: standing.line.id,
        from: standing.line.from.into(),
        to: standing.line.to.into(),
        moment: standing.moment.into(),
        share: standing.share.into(),
        distance: step.distance(&standing.line).into(),
        tip_angle_deg: angle.nominal.map(|a| c(a.to_degrees())),
        tip_angle_worst_deg: angle.worst.map(|a| c(a.to_degrees())),
        entries: entries.bodies.iter().map(|&(id, m)| Entry { id, moment: c(m) }).collect(),
        slope_entry: c(entries.slope),
        acceleration_entry: c(entries.acceleration),
    }
}
