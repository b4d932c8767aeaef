//! Where the unladen truck's centre of gravity is, or may be.
//!
//! Axle loads give it along the truck, by moments. Its height is seldom known; but a truck that
//! carries a plate has passed the platform tests at its plate load, so the height lies under the
//! greatest that still passes every one of them. Where the axle loads are not known either, the
//! trucks that fit form a polygon in (x, z). What is inferred is kept as a range, and each tipping
//! line takes its own worst member.

use crate::body::{Outfit, Placed, Pose, Rig, Setting};
use crate::doubt::Doubts;
use crate::field::Field;
use crate::place::Field as Entry;
use crate::place::Place;
use crate::platform::{Reading, TIE, Test};
use crate::rules;
use crate::scalar::{Scalar, Span};
use crate::scenario::{Assumed, Basis, Truck};
use crate::stance::{Stance, Yield};
use crate::statics;
use crate::support::LineId;
use glam::{DVec2, DVec3};
use serde::Serialize;

/// The balance, and what the platform tests say of the figures entered.
#[derive(Clone, Debug, PartialEq)]
pub struct Balance {
    /// The chassis for the model.
    pub rig: Rig,
    /// Corners (x, z) of the unladen truck's centre; one where it is known.
    pub whole: Vec<DVec2>,
    /// The unladen centre (x, z) as stated, or what stands for it.
    pub stated: (f64, f64),
    /// What was inferred, for the list of assumed figures.
    pub inferred: Vec<Assumed>,
    /// Tests that the entered truck would not have passed at its own plate load.
    pub contradictions: Vec<Contradiction>,
}

/// The truck as entered fails a test that a truck with this plate has passed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Contradiction {
    /// The test.
    pub test: Test,
    /// The plate's row, from 0; `None` for the test without a load.
    pub row: Option<usize>,
    /// Slope asked, a tangent.
    pub asked: Scalar,
    /// Slope it would stand, at the best of what is inferred.
    pub stood: Scalar,
    /// Entries that may be wrong.
    pub suspects: Vec<Place>,
}

/// One platform test as it was run on a truck with this plate.
struct Setup {
    test: Test,
    row: Option<usize>,
    asked: f64,
    pose: Pose,
    load: Option<Placed>,
}

impl Setup {
    /// The tests that this truck's plate stands for.
    fn all(truck: &Truck) -> Vec<Self> {
        let Some(plate) = &truck.plate else { return Vec::new() };
        let rated = truck.rated();
        let setup = |test: Test, row, lift, tilt, load| Self {
            test,
            row,
            asked: test.slope(rated, truck.top_speed_kmh, Reading::Proven),
            pose: Pose { lift, tilt, lean: 0.0, sway: 0.0, sideshift: 0.0 },
            load,
        };
        let (low, back) = (Test::travelling_lift(rated), -truck.mast.tilt_back);
        let mut list = vec![setup(Test::LateralTravelling, None, low, back, None)];
        for (row, r) in plate.rows.iter().enumerate() {
            let cube = Some(Placed::cube(r.capacity, r.load_centre));
            list.push(setup(Test::LongitudinalStacking, Some(row), r.height, 0.0, cube));
            list.push(setup(Test::LongitudinalTravelling, Some(row), low, back, cube));
            list.push(setup(Test::LateralStacking, Some(row), r.height, back, cube));
        }
        list
    }

    /// The stance tried, and the line: left and right are alike, a plate load stands in the middle.
    fn stance<'r>(&self, truck: &Truck, rig: &'r Rig, operator: f64) -> (Stance<'r>, LineId) {
        let outfit = Outfit::Tested { operator };
        let (sure, setting) = (&Doubts::NONE, Setting::exact(self.pose));
        (Stance::new(truck, sure, rig, &setting, outfit, self.load.as_ref(), Yield::NONE), self.test.lines()[0])
    }

    /// The moment as it depends on the unladen centre.
    fn proof(&self, truck: &Truck) -> Proof {
        let rig = Rig::at(truck, DVec2::ZERO);
        let at = |operator: f64| {
            let (stance, line) = self.stance(truck, &rig, operator);
            let line = stance.support.line(line);
            let w = Field::platform(line.outward(), self.asked).total();
            (statics::moment(&stance.nominal, &line, w), statics::lever_vector(&line, w))
        };
        // Evidence takes the less demanding reading: nobody or somebody on the seat, whichever stands better.
        let (nobody, n) = at(0.0);
        let (somebody, _) = at(truck.operator);
        Proof { at_origin: nobody.max(somebody), slope: DVec2::new(n.x, n.z) * truck.service }
    }

    /// How far short the truck falls at the best point of `whole`, and which entries may be wrong.
    fn contradiction(&self, truck: &Truck, proof: &Proof, whole: &[DVec2]) -> Contradiction {
        let better = |a: DVec2, b: DVec2| if proof.moment(b) > proof.moment(a) { b } else { a };
        let best = whole.iter().copied().reduce(better).unwrap_or_default();
        let rig = Rig::at(truck, best);
        let stood = |operator: f64| {
            let (stance, line) = self.stance(truck, &rig, operator);
            stance.stood(line).nominal.unwrap_or(statics::STEEPEST)
        };
        let entries: &[Entry] = match self.test {
            Test::LongitudinalStacking | Test::LongitudinalTravelling => {
                &[Entry::Service, Entry::SteerAxleLoad, Entry::Wheelbase, Entry::LoadDistance]
            }
            Test::LateralStacking => &[Entry::CgHeight, Entry::Tread, Entry::SteerAxleLoad],
            Test::LateralTravelling => &[Entry::CgHeight, Entry::Tread, Entry::TopSpeed, Entry::SteerAxleLoad],
        };
        let rows = [Entry::PlateCapacity, Entry::PlateLoadCentre, Entry::PlateHeight];
        let rows = self.row.into_iter().flat_map(|row| rows.map(|f| Place::in_row(f, row)));
        Contradiction {
            test: self.test,
            row: self.row,
            asked: Scalar::computed(self.asked),
            stood: Scalar::computed(stood(0.0).max(stood(truck.operator))),
            suspects: entries.iter().map(|&e| e.into()).chain(rows).collect(),
        }
    }
}

/// A test's moment, affine in the unladen centre: `at_origin + slope . (x, z)`.
struct Proof {
    at_origin: f64,
    slope: DVec2,
}

impl Proof {
    fn moment(&self, whole: DVec2) -> f64 {
        self.at_origin + self.slope.dot(whole)
    }
}

impl Rig {
    /// The chassis for an unladen truck's centre at (x, z).
    fn at(truck: &Truck, whole: DVec2) -> Self {
        let (chassis, chassis_at) = truck.chassis(DVec3::new(whole.x, 0.0, whole.y));
        Self { chassis, chassis_at, whole: vec![whole] }
    }
}

impl Balance {
    /// Of a truck. The platform tests are tried with its figures as stated: what is inferred from them is
    /// a range of its own, and the tolerances of the figures are counted once, in what is asked.
    pub fn of(truck: &Truck, doubts: &Doubts) -> Self {
        let x = truck.cg_x.map_or_else(
            || {
                let share = [rules::STEER_SHARE_MOST.value, rules::STEER_SHARE_LEAST.value];
                Span::between(-truck.wheelbase * share[0], -truck.wheelbase * share[1])
            },
            |x| by_axle_loads(truck, doubts, x),
        );
        let z = truck.cg_z.map_or(Span::between(rules::CG_HEIGHT_LEAST.value, rules::CG_HEIGHT_MOST.value), |z| {
            doubts.cg_height.moved(z)
        });
        let mut whole = corners(x, z);
        let mut contradictions = Vec::new();
        for setup in Setup::all(truck) {
            let proof = setup.proof(truck);
            let left = clip(&whole, |p| proof.moment(p));
            if left.is_empty() {
                contradictions.push(setup.contradiction(truck, &proof, &whole));
            } else {
                whole = left;
            }
        }
        let stated = stated(truck, &whole);
        let rig = Rig { whole: whole.clone(), ..Rig::at(truck, stated) };
        let inferred = inferred(truck, &whole);
        Self { rig, whole, stated: (stated.x, stated.y), inferred, contradictions }
    }
}

/// Where the axle loads put the centre along x: stated at `x`, the axle loads each in its range.
fn by_axle_loads(truck: &Truck, doubts: &Doubts, x: f64) -> Span {
    let steer = -x / truck.wheelbase * truck.service;
    let front = truck.service - steer;
    let share = |steer: f64, front: f64| steer / (steer + front);
    let most = share(steer + doubts.steer_axle.hi, front + doubts.front_axle.lo);
    let least = share(steer + doubts.steer_axle.lo, front + doubts.front_axle.hi);
    Span { lo: -truck.wheelbase * most, nominal: x, hi: -truck.wheelbase * least }
}

/// What stands for the centre as stated: as entered, else the middle of what was inferred.
fn stated(truck: &Truck, whole: &[DVec2]) -> DVec2 {
    let middle = whole.iter().copied().sum::<DVec2>() / whole.len().max(1) as f64;
    let Some(x) = truck.cg_x else { return DVec2::new(middle.x, truck.cg_z.unwrap_or(middle.y)) };
    let z = truck.cg_z.unwrap_or_else(|| {
        // Straight over the entered place: where the region's edges cross it.
        let crossing = |(a, b): (DVec2, DVec2)| {
            let along = if a.x < b.x { (x - a.x) / (b.x - a.x) } else { 0.0 };
            a.y + along.clamp(0.0, 1.0) * (b.y - a.y)
        };
        let edges = (0..whole.len()).map(|k| (whole[k], whole[(k + 1) % whole.len()]));
        let over = edges.map(|(a, b)| if a.x <= b.x { (a, b) } else { (b, a) }).filter(|(a, b)| a.x <= x && x <= b.x);
        let (lo, hi) = over
            .flat_map(|(a, b)| if a.x < b.x { [crossing((a, b)); 2] } else { [a.y, b.y] })
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), z| (lo.min(z), hi.max(z)));
        if lo.is_finite() { 0.5 * (lo + hi) } else { middle.y }
    });
    DVec2::new(x, z)
}

fn corners(x: Span, z: Span) -> Vec<DVec2> {
    let mut list = vec![DVec2::new(x.lo, z.lo), DVec2::new(x.hi, z.lo), DVec2::new(x.hi, z.hi), DVec2::new(x.lo, z.hi)];
    list.dedup_by(|a, b| a.distance(*b) < 1e-12);
    if list.len() > 1 && list[0].distance(list[list.len() - 1]) < 1e-12 {
        list.pop();
    }
    list
}

/// The part of a convex polygon (or segment, or point) where `f`, affine, is not negative.
fn clip(polygon: &[DVec2], f: impl Fn(DVec2) -> f64) -> Vec<DVec2> {
    let mut kept: Vec<DVec2> = Vec::with_capacity(polygon.len() + 1);
    for (k, &a) in polygon.iter().enumerate() {
        let b = polygon[(k + 1) % polygon.len()];
        let (fa, fb) = (f(a), f(b));
        if fa >= -TIE {
            kept.push(a);
        }
        if (fa < -TIE && fb > TIE) || (fa > TIE && fb < -TIE) {
            kept.push(a + (b - a) * (fa / (fa - fb)));
        }
    }
    kept.dedup_by(|a, b| a.distance(*b) < 1e-9);
    if kept.len() > 1 && kept[0].distance(kept[kept.len() - 1]) < 1e-9 {
        kept.pop();
    }
    kept
}

fn inferred(truck: &Truck, whole: &[DVec2]) -> Vec<Assumed> {
    let mut list = Vec::new();
    let range =
        |f: fn(&DVec2) -> f64| whole.iter().map(f).fold((f64::MAX, f64::MIN), |(lo, hi), v| (lo.min(v), hi.max(v)));
    let mut note = |place: Entry, lo: f64, hi: f64| {
        let (lo, hi) = (Scalar::computed(lo), Scalar::computed(hi));
        list.push(Assumed { place: place.into(), lo, hi, basis: Basis::Inferred });
    };
    if truck.cg_x.is_none() {
        let (lo, hi) = range(|p| p.x);
        let steer = |x: f64| -x / truck.wheelbase * truck.service;
        note(Entry::FrontAxle, truck.service - steer(lo), truck.service - steer(hi));
        note(Entry::SteerAxleLoad, steer(hi), steer(lo));
    }
    if truck.cg_z.is_none() {
        let (lo, hi) = range(|p| p.y);
        note(Entry::CgHeight, lo, hi);
    }
    list
}

#[cfg(test)]
mod tests;
