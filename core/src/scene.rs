//! Outlines for the drawings, in the truck's frame, m: what moves is where the model puts it; the
//! outline of the truck itself is only a picture.

use crate::body::{Outfit, Placed, Pose};
use crate::document::Wheels;
use crate::found::Drawn;
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
    /// What a hanging load hangs from its hook by: a picture.
    Sling,
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
    blades(&mut scene, scenario, pose);
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
    let (face, shift) = (truck.load_distance, pose.sideshift);
    let back = DVec3::new(face - 2.0 * rules::CARRIAGE_BEHIND_FACE.value, shift - half, lift);
    let front = DVec3::new(face - truck.forks.thickness, shift + half, lift + 0.5);
    scene.tilting(Part::Carriage, scenario, pose, back, front);
    if let Some(a) = &truck.attachment {
        let (lo, hi) =
            (DVec3::new(face, shift - half, lift), DVec3::new(face + a.lost_load.max(0.02), shift + half, lift + 0.6));
        scene.tilting(Part::Attachment, scenario, pose, lo, hi);
    }
}

/// The blades, and sleeves over them: tops at the fork height, from the face that carries the load.
fn blades(scene: &mut Scene, scenario: &Scenario, pose: &Pose) {
    let (truck, forks) = (&scenario.truck, &scenario.truck.forks);
    let (heel, thick, wide) = (truck.face(Outfit::Today), forks.thickness, forks.blade.nominal);
    // From above, a sleeve is drawn wider than the blade in it: a picture, only its length is known.
    let wall = 0.3 * thick;
    let mut pair = |part: Part, back: f64, length: f64, thick: f64, wall: f64| {
        for y in [0.5 * forks.spread - wide, -0.5 * forks.spread] {
            let y = pose.sideshift + y;
            let lo = DVec3::new(heel - back, y - wall, pose.lift - thick);
            let hi = DVec3::new(heel + length, y + wide + wall, pose.lift);
            scene.tilting(part, scenario, pose, lo, hi);
        }
    };
    if let Some((length, _)) = forks.extension {
        pair(Part::Extension, 0.0, length, thick + wall, wall);
    }
    pair(Part::Fork, thick, forks.length, thick, 0.0);
}

/// How long a sling is drawn, m, where the hook hangs high enough: only the sling knows.
const SLING: (f64, f64) = (0.1, 0.4);

fn load(scene: &mut Scene, scenario: &Scenario, pose: &Pose, placed: &Placed) {
    let (truck, load) = (&scenario.truck, &scenario.load);
    // The load about its centre of gravity, as it stands on the blades.
    let heel = truck.face(Outfit::Today) + placed.centre.at.x - load.centre.at.x;
    let middle = pose.sideshift + placed.centre.at.y - load.centre.at.y;
    let on_blades = DVec3::new(heel, middle, pose.lift);
    // A load that hangs keeps upright below its hook.
    let hung = load.hanging.map(|hook| {
        let hook = DVec3::new(load.centre.at.x, load.centre.at.y, hook);
        let at = pose.place(truck.mast.pivot, on_blades + hook);
        let sling = (at.z - load.size.z).clamp(SLING.0, SLING.1);
        (at, at - DVec3::new(hook.x, hook.y, load.size.z + sling))
    });
    let at = |p: DVec3| hung.map_or_else(|| pose.place(truck.mast.pivot, on_blades + p), |(_, low)| low + p);
    // What is nearer is drawn over what is farther; what is cut out, over what it is cut out of.
    let mut drawn: Vec<_> = load.drawn.iter().map(|d| (d, polygon::extents(&d.seen.front))).collect();
    drawn.sort_by(|(a, (p, _)), (b, (q, _))| a.cut.cmp(&b.cut).then(q.x.total_cmp(&p.x)));
    for (shape, (front_lo, front_hi)) in &drawn {
        let across = 0.5 * (front_lo.x + front_hi.x);
        let side: Vec<_> = shape.seen.side.iter().map(|p| at(DVec3::new(p.x, across, p.y))).collect();
        scene.side(part_of(shape), &side.iter().map(|p| (p.x, p.z)).collect::<Vec<_>>());
    }
    drawn.sort_by(|(a, (_, p)), (b, (_, q))| a.cut.cmp(&b.cut).then(p.y.total_cmp(&q.y)));
    for (shape, (front_lo, front_hi)) in &drawn {
        let shown = |z: f64| shape.seen.plan.iter().map(move |p| at(DVec3::new(p.x, p.y, z)));
        let plan = |p: DVec3| DVec2::new(p.x, p.y);
        // From above a tilted load shows its top and its foot, one pushed past the other; one with a
        // hollow is drawn by its top alone.
        let top: Vec<DVec2> = shown(front_hi.y).map(plan).collect();
        let foot: Vec<DVec2> = shown(front_lo.y).map(plan).collect();
        let pushed = foot.first().zip(top.first()).map_or(DVec2::ZERO, |(a, b)| *b - *a);
        let seen = if polygon::is_convex(&foot) { polygon::swept(&foot, pushed) } else { top };
        scene.plan(part_of(shape), &seen.iter().map(|p| (p.x, p.y)).collect::<Vec<_>>());
    }
    if let Some((hook, low)) = hung {
        let top = low.z + load.size.z;
        scene.side(Part::Sling, &[(hook.x, hook.z), (low.x, top), (low.x + load.size.x, top)]);
    }
}

const fn part_of(shape: &Drawn) -> Part {
    if shape.cut { Part::LoadCut } else { Part::Load }
}

#[cfg(test)]
mod tests;
