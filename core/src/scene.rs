//! Outlines for the drawings, in the truck's frame, m: what moves is where the model puts it; the
//! outline of the truck itself is only a picture.

use crate::body::{Outfit, Placed, Pose};
use crate::document::Wheels;
use crate::polygon;
use crate::rules;
use crate::scalar::Scalar;
use crate::scenario::Scenario;
use glam::{DVec2, DVec3};
use serde::Serialize;

/// What an outline is of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// Chassis and counterweight: a picture.
    Chassis,
    /// Overhead guard: a picture.
    Guard,
    /// A front wheel (side view: both).
    FrontWheel,
    /// Steer wheel or wheels.
    SteerWheel,
    /// Fixed mast section.
    MastOuter,
    /// Moving mast section.
    MastStage,
    /// Carriage.
    Carriage,
    /// Fork blade.
    Fork,
    /// Attachment.
    Attachment,
    /// Fork extension.
    Extension,
    /// Load, or a part of it.
    Load,
    /// What is cut out of it.
    LoadCut,
}

/// A closed outline.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Outline {
    /// Of what.
    pub part: Part,
    /// Its corners, (ahead, up) in the side view and (ahead, left) in the plan.
    pub points: Vec<(Scalar, Scalar)>,
}

/// The two views of one pose.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct Scene {
    /// From the truck's right side.
    pub side: Vec<Outline>,
    /// From above.
    pub plan: Vec<Outline>,
}

/// Draws a pose.
pub fn draw(scenario: &Scenario, pose: &Pose, placed: Option<&Placed>) -> Scene {
    let mut scene = Scene::default();
    chassis(&mut scene, scenario);
    mast(&mut scene, scenario, pose);
    if let Some(placed) = placed {
        load(&mut scene, scenario, pose, placed);
    }
    scene
}

impl Scene {
    fn side(&mut self, part: Part, points: &[(f64, f64)]) {
        self.side.push(Outline { part, points: scalars(points) });
    }

    fn plan(&mut self, part: Part, points: &[(f64, f64)]) {
        self.plan.push(Outline { part, points: scalars(points) });
    }

    /// A box that tilts with the mast, in both views: `lo` and `hi` its corners with the mast upright.
    fn tilting(&mut self, part: Part, scenario: &Scenario, pose: &Pose, lo: DVec3, hi: DVec3) {
        let at = |p: DVec3| pose.place(scenario.truck.mast.pivot, p);
        let middle = 0.5 * (lo.y + hi.y);
        let side = [(lo.x, lo.z), (hi.x, lo.z), (hi.x, hi.z), (lo.x, hi.z)].map(|(x, z)| at(DVec3::new(x, middle, z)));
        self.side(part, &side.map(|p| (p.x, p.z)));
        let (back, front) = side.iter().fold((f64::MAX, f64::MIN), |(a, b), p| (a.min(p.x), b.max(p.x)));
        self.plan(part, &rectangle(back, lo.y, front, hi.y));
    }
}

fn scalars(points: &[(f64, f64)]) -> Vec<(Scalar, Scalar)> {
    points.iter().map(|&(a, b)| (Scalar::computed(a), Scalar::computed(b))).collect()
}

fn rectangle(x0: f64, y0: f64, x1: f64, y1: f64) -> [(f64, f64); 4] {
    [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
}

fn wheel(x: f64, radius: f64) -> Vec<(f64, f64)> {
    let corners = 24;
    (0..corners)
        .map(|k| {
            let (s, c) = libm::sincos(std::f64::consts::TAU * f64::from(k) / f64::from(corners));
            (x + radius * c, radius + radius * s)
        })
        .collect()
}

fn chassis(scene: &mut Scene, scenario: &Scenario) {
    let truck = &scenario.truck;
    let (length, half) = (truck.wheelbase, 0.5 * truck.tread);
    let overhang = 0.25 * length;
    let (front, rear) = (0.12 * length, -length - overhang);
    let radius = 0.3_f64.min(0.2 * length);
    let steer_radius = 0.8 * radius;
    scene.side(
        Part::Chassis,
        &[
            (front, 0.12),
            (front, 0.55),
            (-0.25 * length, 0.55),
            (-0.35 * length, 0.9),
            (-0.8 * length, 1.0),
            (rear + 0.05, 0.95),
            (rear, 0.7),
            (rear, 0.2),
            (rear + 0.1, 0.12),
        ],
    );
    let roof = 2.1;
    scene.side(
        Part::Guard,
        &[
            (0.02 * length, 0.55),
            (-0.12 * length, roof),
            (-0.85 * length, roof),
            (-0.9 * length, 0.97),
            (-0.86 * length, 0.97),
            (-0.82 * length, roof - 0.06),
            (-0.14 * length, roof - 0.06),
            (-0.02 * length, 0.55),
        ],
    );
    let body = half * 0.95;
    scene.plan(
        Part::Chassis,
        &[
            (front, body * 0.8),
            (-0.15 * length, body),
            (rear + 0.2, body),
            (rear, body * 0.6),
            (rear, -body * 0.6),
            (rear + 0.2, -body),
            (-0.15 * length, -body),
            (front, -body * 0.8),
        ],
    );
    scene.side(Part::FrontWheel, &wheel(0.0, radius));
    scene.side(Part::SteerWheel, &wheel(-length, steer_radius));
    let width = 0.09;
    for y in [half, -half] {
        scene.plan(Part::FrontWheel, &rectangle(-radius, y - width, radius, y + width));
    }
    let steer: &[f64] = if truck.wheels == Wheels::Three { &[0.0] } else { &[0.42, -0.42] };
    for part in steer {
        let y = part * truck.tread;
        scene.plan(Part::SteerWheel, &rectangle(-length - steer_radius, y - width, -length + steer_radius, y + width));
    }
}

fn mast(scene: &mut Scene, scenario: &Scenario, pose: &Pose) {
    let (truck, lift) = (&scenario.truck, pose.lift);
    let (mast, half) = (&truck.mast, 0.35 * truck.tread);
    let x = truck.load_distance - rules::MAST_BEHIND_FACE.value;
    let rise = (lift - mast.free_lift).max(0.0);
    let foot = 0.1;
    let mut section = |part: Part, z: f64, depth: f64, half: f64| {
        let (lo, hi) = (DVec3::new(x - depth, -half, foot + z), DVec3::new(x + depth, half, mast.lowered + z));
        scene.tilting(part, scenario, pose, lo, hi);
    };
    section(Part::MastOuter, 0.0, 0.07, half);
    for (k, (_, ratio)) in mast.stages.iter().enumerate() {
        section(Part::MastStage, ratio * rise, 0.055 - 0.012 * k as f64, half - 0.04 * (k + 1) as f64);
    }
    let (face, spread, shift) = (truck.load_distance, truck.forks.spread, pose.sideshift);
    let (thick, wide) = (truck.forks.thickness, truck.forks.blade.nominal);
    let back = DVec3::new(face - 2.0 * rules::CARRIAGE_BEHIND_FACE.value, shift - half, lift);
    let front = DVec3::new(face - thick, shift + half, lift + 0.5);
    scene.tilting(Part::Carriage, scenario, pose, back, front);
    let mut blades = |part: Part, length: f64, thick: f64, wide: f64| {
        for y in [0.5 * spread - wide, -0.5 * spread] {
            let (lo, hi) =
                (DVec3::new(face - thick, shift + y, lift - thick), DVec3::new(face + length, shift + y + wide, lift));
            scene.tilting(part, scenario, pose, lo, hi);
        }
    };
    if let Some((length, _)) = truck.forks.extension {
        blades(Part::Extension, length, 1.3 * thick, wide);
    }
    blades(Part::Fork, truck.forks.length, thick, wide);
    if let Some(a) = &truck.attachment {
        let (lo, hi) =
            (DVec3::new(face, shift - half, lift), DVec3::new(face + a.lost_load.max(0.02), shift + half, lift + 0.6));
        scene.tilting(Part::Attachment, scenario, pose, lo, hi);
    }
}

fn load(scene: &mut Scene, scenario: &Scenario, pose: &Pose, placed: &Placed) {
    let (truck, load) = (&scenario.truck, &scenario.load);
    // The load about its centre of gravity, as it stands on the blades.
    let heel = truck.face(Outfit::Today) + placed.centre.at.x - load.centre.at.x;
    let middle = pose.sideshift + placed.centre.at.y - load.centre.at.y;
    let on_blades = DVec3::new(heel, middle, pose.lift);
    // A load that hangs keeps upright below its hook; by how much only the sling knows.
    let hung = load.hanging.map(|hook| {
        let hook = DVec3::new(load.centre.at.x, load.centre.at.y, hook);
        pose.place(truck.mast.pivot, on_blades + hook) - DVec3::new(hook.x, hook.y, load.size.z)
    });
    let at = |p: DVec3| hung.map_or_else(|| pose.place(truck.mast.pivot, on_blades + p), |low| low + p);
    for drawn in &load.drawn {
        let part = if drawn.cut { Part::LoadCut } else { Part::Load };
        let (front_lo, front_hi) = polygon::extents(&drawn.seen.front);
        let across = 0.5 * (front_lo.x + front_hi.x);
        let side: Vec<_> = drawn.seen.side.iter().map(|p| at(DVec3::new(p.x, across, p.y))).collect();
        scene.side(part, &side.iter().map(|p| (p.x, p.z)).collect::<Vec<_>>());
        // From above a tilted load shows its top and its foot, one pushed past the other.
        let shown = |z: f64| drawn.seen.plan.iter().map(move |p| at(DVec3::new(p.x, p.y, z)));
        let both: Vec<DVec2> = shown(front_lo.y).chain(shown(front_hi.y)).map(|p| DVec2::new(p.x, p.y)).collect();
        let plan =
            if is_convex(&drawn.seen.plan) { polygon::hull(&both) } else { both[..drawn.seen.plan.len()].to_vec() };
        scene.plan(part, &plan.iter().map(|p| (p.x, p.y)).collect::<Vec<_>>());
    }
}

/// Whether an outline has no hollow.
fn is_convex(points: &[DVec2]) -> bool {
    polygon::hull(points).len() >= polygon::tidied(points).len()
}
