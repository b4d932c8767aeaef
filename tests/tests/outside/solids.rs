//! Every solid, every way it can face, against parry's mass properties and boxes.
//!
//! Shapes that parry has are taken as they are (its cylinder and cone stand along its y axis); prisms
//! and wedges are closed meshes, for which parry's sums are exact; a tube is one cylinder less another;
//! a half sphere is a mesh refined until it has converged.

use crate::{Worst, seeds};
use glam::{DVec2, DVec3};
use parry3d_f64::mass_properties::MassProperties;
use parry3d_f64::math::{Pose, Rotation, Vector};
use parry3d_f64::shape::{Ball, Cone, Cuboid, Cylinder, SharedShape};
use standfast_core::document::Facing;
use standfast_core::solid::{Form, Solid};
use standfast_tests::draw::Draws;
use standfast_tests::outline;

/// What parry says of a solid: volume, centroid, box.
#[derive(Clone, Copy, Debug)]
pub struct Reference {
    pub volume: f64,
    pub centroid: DVec3,
    pub lo: DVec3,
    pub hi: DVec3,
}

fn dvec(v: Vector) -> DVec3 {
    DVec3::new(v.x, v.y, v.z)
}

fn vector(v: DVec3) -> Vector {
    Vector::new(v.x, v.y, v.z)
}

impl Reference {
    fn of(properties: MassProperties, lo: DVec3, hi: DVec3) -> Self {
        Self { volume: properties.mass(), centroid: dvec(properties.local_com), lo, hi }
    }

    /// One of parry's own shapes at density 1, turned so that its y axis points the way.
    pub fn shape(shape: &SharedShape, facing: Facing) -> Self {
        let pose = Pose::from_rotation(y_to(facing));
        let aabb = shape.compute_aabb(&pose);
        Self::of(shape.mass_properties(1.0).transform_by(&pose), dvec(aabb.mins), dvec(aabb.maxs))
    }

    /// A closed mesh at density 1.
    fn mesh(vertices: &[DVec3], triangles: &[[u32; 3]]) -> Self {
        let list: Vec<Vector> = vertices.iter().copied().map(vector).collect();
        let (lo, hi) = vertices.iter().fold((DVec3::INFINITY, DVec3::NEG_INFINITY), |(a, b), p| (a.min(*p), b.max(*p)));
        Self::of(MassProperties::from_trimesh(1.0, &list, triangles), lo, hi)
    }

    /// Moved to where the core's convention wants it: nearest side, middle, underside.
    pub fn placed(self, place: DVec3) -> Self {
        let by = place - DVec3::new(self.lo.x, 0.5 * (self.lo.y + self.hi.y), self.lo.z);
        Self { volume: self.volume, centroid: self.centroid + by, lo: self.lo + by, hi: self.hi + by }
    }
}

/// The turn that takes y to a direction.
pub fn y_to(facing: Facing) -> Rotation {
    let quarter = std::f64::consts::FRAC_PI_2;
    match facing {
        Facing::Left => Rotation::IDENTITY,
        Facing::Right => Rotation::from_rotation_z(2.0 * quarter),
        Facing::Up => Rotation::from_rotation_x(quarter),
        Facing::Down => Rotation::from_rotation_x(-quarter),
        Facing::Ahead => Rotation::from_rotation_z(-quarter),
        Facing::Heel => Rotation::from_rotation_z(quarter),
    }
}

/// A prism as a closed mesh: its two ends as fans (signed, so that hollow outlines come out right too)
/// and its sides.
pub fn prism(points: &[DVec2], length: f64, facing: Facing) -> Reference {
    let n = points.len() as u32;
    let there = |p: &DVec2, w: f64| match facing {
        Facing::Up | Facing::Down => DVec3::new(p.x, p.y, w),
        Facing::Left | Facing::Right => DVec3::new(p.x, w, p.y),
        Facing::Ahead | Facing::Heel => DVec3::new(w, p.x, p.y),
    };
    let vertices: Vec<DVec3> = [0.0, length].iter().flat_map(|&w| points.iter().map(move |p| there(p, w))).collect();
    let mut triangles = Vec::new();
    for k in 0..n {
        let next = (k + 1) % n;
        triangles.extend([[0, next, k], [n, n + k, n + next], [k, next, n + next], [k, n + next, n + k]]);
    }
    Reference::mesh(&vertices, &triangles)
}

/// A surface of revolution about w, its outline from pole to pole as (radius, w), as a closed mesh.
fn round(outline: &[(f64, f64)], corners: u32, facing: Facing) -> Reference {
    let turn = y_to(facing);
    let mut vertices = Vec::new();
    for &(r, w) in outline {
        for k in 0..corners {
            let (sin, cos) = libm::sincos(std::f64::consts::TAU * f64::from(k) / f64::from(corners));
            vertices.push(dvec(turn * Vector::new(r * sin, w, r * cos)));
        }
    }
    let mut triangles = Vec::new();
    for ring in 0..outline.len() as u32 - 1 {
        for k in 0..corners {
            let (a, b) = (ring * corners + k, ring * corners + (k + 1) % corners);
            triangles.extend([[a, b, b + corners], [a, b + corners, a + corners]]);
        }
    }
    Reference::mesh(&vertices, &triangles)
}

/// One cylinder less another.
pub fn tube(half: f64, radius: f64, bore: f64, facing: Facing) -> Reference {
    let pose = Pose::from_rotation(y_to(facing));
    let left = MassProperties::from_cylinder(1.0, half, radius) - MassProperties::from_cylinder(1.0, half, bore);
    let aabb = SharedShape::new(Cylinder::new(half, radius)).compute_aabb(&pose);
    Reference::of(left.transform_by(&pose), dvec(aabb.mins), dvec(aabb.maxs))
}

/// The half sphere's mesh, `fine` rings; from the middle of its foot over its rim to its dome.
pub fn half_sphere(radius: f64, fine: u32, facing: Facing) -> Reference {
    let arc = (0..=fine).map(|k| {
        let (sin, cos) = libm::sincos(std::f64::consts::FRAC_PI_2 * f64::from(k) / f64::from(fine));
        (radius * cos, radius * sin)
    });
    round(&std::iter::once((0.0, 0.0)).chain(arc).collect::<Vec<_>>(), 4 * fine, facing)
}

/// Richardson's extrapolation of what converges with the square of the step, twice.
pub fn extrapolated<T>(at: impl Fn(u32) -> T, fine: u32) -> T
where
    T: std::ops::Mul<f64, Output = T> + std::ops::Sub<Output = T> + Copy,
{
    let [a, b, c] = [fine, 2 * fine, 4 * fine].map(at);
    let (first, second) = ((b * 4.0 - a) * (1.0 / 3.0), (c * 4.0 - b) * (1.0 / 3.0));
    (second * 16.0 - first) * (1.0 / 15.0)
}

/// A half sphere as its mesh converges.
pub fn converged_half_sphere(radius: f64, facing: Facing) -> Reference {
    let coarse = half_sphere(radius, 8, facing);
    Reference {
        volume: extrapolated(|n| half_sphere(radius, n, facing).volume, 24),
        centroid: extrapolated(|n| half_sphere(radius, n, facing).centroid, 24),
        ..coarse
    }
}

/// A ramp, its high edge on a side, in its own box from 0. Its corners are a convex solid: parry finds the
/// faces itself.
pub fn wedge(edges: DVec3, high: Facing) -> Option<Reference> {
    let top = match high {
        Facing::Heel => [(0.0, -0.5), (0.0, 0.5)],
        Facing::Ahead => [(1.0, -0.5), (1.0, 0.5)],
        Facing::Left => [(0.0, 0.5), (1.0, 0.5)],
        Facing::Right => [(0.0, -0.5), (1.0, -0.5)],
        Facing::Up | Facing::Down => return None,
    };
    let foot = [(0.0, -0.5), (1.0, -0.5), (1.0, 0.5), (0.0, 0.5)];
    let corner = |&(x, y): &(f64, f64), z: f64| vector(edges * DVec3::new(x, y, z));
    let points: Vec<Vector> = foot.iter().map(|p| corner(p, 0.0)).chain(top.iter().map(|p| corner(p, 1.0))).collect();
    Some(Reference::shape(&SharedShape::convex_hull(&points)?, Facing::Left))
}

#[derive(Default)]
struct Seen {
    volume: Worst,
    centroid: Worst,
    extents: Worst,
}

impl Seen {
    /// Relative to the solid's own size.
    #[track_caller]
    fn same(&mut self, solid: &Solid, reference: &Reference, most: f64) {
        let size = (reference.hi - reference.lo).max_element();
        let (lo, hi) = solid.extents();
        self.volume.within((solid.volume() - reference.volume).abs() / reference.volume, most, solid);
        self.centroid.within((solid.centroid() - reference.centroid).abs().max_element() / size, most, solid);
        let out = (lo - reference.lo).abs().max((hi - reference.hi).abs()).max_element();
        self.extents.within(out / size, most, solid);
    }

    fn say(&self, what: &str) {
        eprintln!(
            "{what}: volume {:.1e}, centroid {:.1e}, box {:.1e} of the size",
            self.volume.0, self.centroid.0, self.extents.0
        );
    }
}

/// From a bolt to a boiler, and anywhere about the datum.
fn size(draws: &mut Draws) -> f64 {
    0.01 * libm::pow(600.0, draws.unit())
}

fn place(draws: &mut Draws) -> DVec3 {
    DVec3::new(draws.within(-10.0..10.0), draws.within(-10.0..10.0), draws.within(-10.0..10.0))
}

const MOST: f64 = 1e-9;

#[test]
fn boxes() {
    let mut seen = Seen::default();
    for mut draws in seeds(600) {
        let (edges, at) = (DVec3::new(size(&mut draws), size(&mut draws), size(&mut draws)), place(&mut draws));
        let cuboid = SharedShape::new(Cuboid::new(vector(edges * 0.5)));
        let reference = Reference::shape(&cuboid, Facing::Left).placed(at);
        seen.same(&Solid::new(Form::block(edges), Facing::Up, at), &reference, MOST);
    }
    seen.say("boxes");
}

#[test]
fn cylinders_tubes_cones_and_spheres() {
    let (mut cylinders, mut tubes, mut cones, mut spheres) =
        (Seen::default(), Seen::default(), Seen::default(), Seen::default());
    for mut draws in seeds(300) {
        let (diameter, length, at) = (size(&mut draws), size(&mut draws), place(&mut draws));
        let (radius, half) = (0.5 * diameter, 0.5 * length);
        let bore = diameter * draws.within(0.05..0.98);
        for facing in Facing::ALL {
            let cylinder = SharedShape::new(Cylinder::new(half, radius));
            let reference = Reference::shape(&cylinder, facing).placed(at);
            let form = Form::Cylinder { diameter, bore: 0.0, length };
            cylinders.same(&Solid::new(form, facing, at), &reference, MOST);
            let pose = Pose::from_rotation(y_to(facing));
            let left =
                MassProperties::from_cylinder(1.0, half, radius) - MassProperties::from_cylinder(1.0, half, 0.5 * bore);
            let aabb = cylinder.compute_aabb(&pose);
            let tube = Reference::of(left.transform_by(&pose), dvec(aabb.mins), dvec(aabb.maxs)).placed(at);
            tubes.same(&Solid::new(Form::Cylinder { diameter, bore, length }, facing, at), &tube, MOST);
            let cone = Reference::shape(&SharedShape::new(Cone::new(half, radius)), facing).placed(at);
            cones.same(&Solid::new(Form::Cone { diameter, length }, facing, at), &cone, MOST);
            let ball = Reference::shape(&SharedShape::new(Ball::new(radius)), facing).placed(at);
            spheres.same(&Solid::new(Form::Sphere { diameter }, facing, at), &ball, MOST);
        }
    }
    cylinders.say("cylinders");
    tubes.say("tubes");
    cones.say("cones");
    spheres.say("spheres");
}

#[test]
fn prisms_on_any_outline() {
    let mut seen = Seen::default();
    for mut draws in seeds(1500) {
        let scale = size(&mut draws);
        let points: Vec<DVec2> = outline::simple(&mut draws).iter().map(|p| *p * scale).collect();
        let (length, at) = (size(&mut draws), place(&mut draws));
        // Drawn anywhere: only its form counts.
        let drawn: Vec<DVec2> = points.iter().map(|p| *p + DVec2::new(3.0, -7.0)).collect();
        for facing in Facing::ALL {
            let solid = Solid::new(Form::Prism { outline: drawn.clone(), length }, facing, at);
            seen.same(&solid, &prism(&points, length, facing).placed(at), MOST);
        }
    }
    seen.say("prisms");
}

#[test]
fn wedges() {
    let mut seen = Seen::default();
    for mut draws in seeds(600) {
        let (edges, at) = (DVec3::new(size(&mut draws), size(&mut draws), size(&mut draws)), place(&mut draws));
        for high in [Facing::Heel, Facing::Ahead, Facing::Left, Facing::Right] {
            let reference = wedge(edges, high).expect("a wedge").placed(at);
            let (form, facing) = Form::wedge(edges, high).expect("a wedge lies flat");
            seen.same(&Solid::new(form, facing, at), &reference, MOST);
        }
        assert!(Form::wedge(edges, Facing::Up).is_none() && Form::wedge(edges, Facing::Down).is_none());
    }
    seen.say("wedges");
}

/// A mesh of a round thing is short of it by the square of its fineness; with that taken out it is there.
#[test]
fn half_spheres_and_round_meshes() {
    let mut seen = Seen::default();
    for (k, mut draws) in seeds(12).enumerate() {
        let (diameter, at) = (size(&mut draws), place(&mut draws));
        let facing = Facing::ALL[k % 6];
        let reference = converged_half_sphere(0.5 * diameter, facing);
        let solid = Solid::new(Form::HalfSphere { diameter }, facing, at);
        seen.same(&solid, &reference.placed(at), MOST);
        // And it comes nearer at the right rate: four times with every doubling.
        let short = |n: u32| solid.volume() - half_sphere(0.5 * diameter, n, facing).volume;
        for n in [8, 16, 32] {
            let rate = short(n) / short(2 * n);
            assert!((rate - 4.0).abs() < 0.1, "{rate} at {n}");
        }
    }
    seen.say("half spheres");
    // The meshes of the other round things tell the same as parry's closed forms.
    for (outline, form) in [
        (
            vec![(0.0, 0.0), (0.7, 0.0), (0.7, 1.3), (0.0, 1.3)],
            Form::Cylinder { diameter: 1.4, bore: 0.0, length: 1.3 },
        ),
        (
            vec![(0.2, 0.0), (0.7, 0.0), (0.7, 1.3), (0.2, 1.3), (0.2, 0.0)],
            Form::Cylinder { diameter: 1.4, bore: 0.4, length: 1.3 },
        ),
        (vec![(0.0, 0.0), (0.7, 0.0), (0.0, 1.3)], Form::Cone { diameter: 1.4, length: 1.3 }),
    ] {
        for facing in Facing::ALL {
            let fine = |n: u32| round(&outline, n, facing);
            let volume = extrapolated(|n| fine(n).volume, 64);
            let solid = Solid::new(form.clone(), facing, DVec3::ZERO);
            assert!((volume - solid.volume()).abs() / volume < 1e-9, "{form:?}");
            let whole = fine(64);
            let centroid = whole.placed(DVec3::ZERO).centroid;
            assert!((centroid - solid.centroid()).length() < 1e-9, "{form:?} {facing:?}: {centroid}");
        }
    }
}
