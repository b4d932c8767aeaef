//! The same truck in a general-purpose rigid-body engine: it stands on three feet, or on two feet and
//! an axle hung on a hinge, gravity is slowly tilted, and it is watched until it goes over.
//!
//! The engine knows masses, places, contacts and one hinge. It knows nothing of tipping lines, lever
//! arms or moments, and nothing of what the core found.

use glam::DVec3;
use rapier3d_f64::prelude as rapier;
use standfast_core::body::{Bodies, BodyId};
use standfast_core::support::Support;
use standfast_core::units::GRAVITY;

/// A truck in one pose, as masses on supports.
#[derive(Clone, Debug)]
pub struct Rig {
    /// Masses of the truck and its load, a pivoting axle left out: kg, and place in m.
    pub hung: Vec<(f64, DVec3)>,
    /// The pivoting axle.
    pub axle: Option<(f64, DVec3)>,
    /// Contacts, and the pivot where there is one.
    pub support: Support,
}

impl Rig {
    /// Takes masses and places, as stated, from the core.
    pub fn of(support: &Support, bodies: &Bodies) -> Self {
        let (mut hung, mut axle) = (Vec::new(), None);
        for body in bodies.as_slice() {
            let point = (body.mass.nominal, body.at);
            if support.pivoting && body.id == BodyId::SteerAxle {
                axle = Some(point);
            } else {
                hung.push(point);
            }
        }
        Self { hung, axle, support: *support }
    }
}

/// How a run is timed.
#[derive(Clone, Copy, Debug)]
pub struct Timing {
    /// A time step, s.
    pub step: f64,
    /// Gravity is eased from straight down to its slope in this time, s: in a jerk a truck tips too early.
    pub ease: f64,
    /// And then held for this long, s: near the threshold it leaves its feet slowly.
    pub hold: f64,
    /// Damping of every body's movement, 1/s: whatever the easing stirs up dies away.
    pub damping: f64,
}

impl Timing {
    /// For a truck that moves: nothing is damped, for that would hold it back.
    pub const DRIVEN: Self = Self { step: 1.0 / 100.0, ease: 10.0, hold: 5.0, damping: 0.0 };
    /// Good to a few hundredths of a degree; a test compares it with runs four times as fine and
    /// twice as slow.
    pub const USUAL: Self = Self { step: 1.0 / 100.0, ease: 1.0, hold: 3.5, damping: 0.5 };
}

/// How a run ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// All feet still down.
    Stands,
    /// Going over.
    Tips,
    /// It slid away instead: the run says nothing of the truck.
    Slides,
    /// The axle went over under it: the run says nothing of the truck.
    AxleGone,
}

/// A lean beyond this, rad, is going over: standing, a truck leans by thousandths.
const GONE: f64 = 0.02;
/// The feet: small balls that touch the ground where the wheels do, m.
const FOOT: f64 = 0.02;
/// Steeper than this nothing is tried, rad.
pub const STEEPEST: f64 = 1.0;

/// One run: the ground falls by `angle` (rad) towards `downhill`, a horizontal unit vector.
pub fn run(rig: &Rig, downhill: DVec3, angle: f64, timing: &Timing) -> End {
    let mut world = World::of(rig, timing);
    let steps = |time: f64| (time / timing.step).ceil() as usize;
    let (ease, hold) = (steps(timing.ease), steps(timing.hold));
    for k in 0..ease + hold {
        let part = (k as f64 / ease as f64).min(1.0);
        let smooth = part * part * (3.0 - 2.0 * part);
        let (sin, cos) = libm::sincos(angle * smooth);
        world.engine.gravity = vector((downhill * sin - DVec3::Z * cos) * GRAVITY);
        world.engine.step();
        if let Some(end) = world.ended() {
            return end;
        }
    }
    End::Stands
}

/// The slope, as an angle in rad, at which the truck goes over towards `downhill`, found between runs
/// to within `within`; `None` where it still stands at [`STEEPEST`], an error where a run was spoilt.
///
/// # Errors
/// The angle at which a run said nothing, and how it ended.
pub fn tipping_angle(rig: &Rig, downhill: DVec3, within: f64, timing: &Timing) -> Result<Option<f64>, (f64, End)> {
    let tips = |angle: f64| tipped(angle, run(rig, downhill, angle, timing));
    if tips(0.0)? {
        return Ok(Some(0.0));
    }
    threshold(tips, 0.06, STEEPEST, within)
}

/// Whether a run tipped; an error where it says nothing.
fn tipped(at: f64, end: End) -> Result<bool, (f64, End)> {
    match end {
        End::Tips => Ok(true),
        End::Stands => Ok(false),
        End::Slides | End::AxleGone => Err((at, end)),
    }
}

/// What it takes to go over, found between runs to within `within`: from below in ever greater steps, so
/// that no run is harder than it need be. `None` where `most` is not enough.
fn threshold(
    tips: impl Fn(f64) -> Result<bool, (f64, End)>,
    first: f64,
    most: f64,
    within: f64,
) -> Result<Option<f64>, (f64, End)> {
    let (mut stands, mut over) = (0.0, first);
    while !tips(over)? {
        if over >= most {
            return Ok(None);
        }
        (stands, over) = (over, (1.6 * over).min(most));
    }
    while over - stands > within {
        let middle = 0.5 * (stands + over);
        if tips(middle)? {
            over = middle;
        } else {
            stands = middle;
        }
    }
    Ok(Some(0.5 * (stands + over)))
}

/// How the truck really moves: the ground under it does, with the truck held by its wheels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Motion {
    /// Braking, going forward.
    Braking,
    /// Round a left-hand bend.
    BendLeft,
    /// Round a right-hand bend.
    BendRight,
}

/// Radius of the bends to the truck's origin, m.
pub const RADIUS: f64 = 20.0;
/// More than this is not tried, m/s^2.
pub const HARDEST: f64 = 12.0;

/// One run of a truck that brakes or goes round a bend with an acceleration, m/s^2.
pub fn drive(rig: &Rig, motion: Motion, acceleration: f64, timing: &Timing) -> End {
    let side = match motion {
        Motion::Braking => 0.0,
        Motion::BendLeft => RADIUS,
        Motion::BendRight => -RADIUS,
    };
    let mut world = World::on(rig, timing, Some(side));
    let steps = |time: f64| (time / timing.step).ceil() as usize;
    let (ease, hold) = (steps(timing.ease), steps(timing.hold));
    let (mut speed, mut gone, mut angle) = (0.0, 0.0, 0.0);
    for k in 0..ease + hold {
        let part = (k as f64 / ease as f64).min(1.0);
        let smooth = part * part * (3.0 - 2.0 * part);
        let Some(ground) = world.engine.bodies.get_mut(world.ground) else { return End::Slides };
        if motion == Motion::Braking {
            speed -= acceleration * smooth * timing.step;
            gone += speed * timing.step;
            ground.set_next_kinematic_translation(rapier::Vector::new(gone, 0.0, 0.0));
        } else {
            // Up to speed slowly and smoothly; then v^2 / r is all there is.
            let turning = (acceleration / RADIUS).sqrt() * smooth * side.signum();
            angle += turning * timing.step;
            ground.set_next_kinematic_rotation(rapier::Rotation::from_rotation_z(angle));
        }
        world.engine.step();
        if let Some(end) = world.ended() {
            return end;
        }
    }
    End::Stands
}

/// The acceleration, m/s^2, at which the truck goes over when it moves so; `None` where it stands at
/// [`HARDEST`].
///
/// # Errors
/// The acceleration at which a run said nothing, and how it ended.
pub fn tipping_acceleration(
    rig: &Rig,
    motion: Motion,
    within: f64,
    timing: &Timing,
) -> Result<Option<f64>, (f64, End)> {
    let tips = |acceleration: f64| tipped(acceleration, drive(rig, motion, acceleration, timing));
    threshold(tips, 0.6, HARDEST, within)
}

fn vector(v: DVec3) -> rapier::Vector {
    rapier::Vector::new(v.x, v.y, v.z)
}

struct World {
    engine: rapier::PhysicsWorld,
    ground: rapier::RigidBodyHandle,
    /// Where the ground's own origin was, from the truck's.
    began: rapier::Vector,
    truck: rapier::RigidBodyHandle,
    axle: Option<rapier::RigidBodyHandle>,
}

impl World {
    fn of(rig: &Rig, timing: &Timing) -> Self {
        Self::on(rig, timing, None)
    }

    /// On ground that keeps still, or that moves about a point so far to the left.
    fn on(rig: &Rig, timing: &Timing, moves: Option<f64>) -> Self {
        let mut engine = rapier::PhysicsWorld::new();
        let parameters = &mut engine.integration_parameters;
        parameters.dt = timing.step;
        parameters.num_solver_iterations = 8;
        parameters.normalized_allowed_linear_error = 1e-5;
        parameters.contact_recycling = false;
        parameters.friction_model = rapier::FrictionModel::Coulomb;
        engine.gravity = vector(DVec3::NEG_Z * GRAVITY);
        let aside = DVec3::Y * moves.unwrap_or(0.0);
        let ground = engine.insert_body(match moves {
            None => rapier::RigidBodyBuilder::fixed(),
            Some(_) => rapier::RigidBodyBuilder::kinematic_position_based().translation(vector(aside)),
        });
        let under = vector(DVec3::NEG_Z - aside);
        let block = rapier::ColliderBuilder::cuboid(20.0, 20.0, 1.0).translation(under).friction(5.0);
        engine.insert_collider(block, Some(ground));

        let truck = insert(&mut engine, &rig.hung, timing);
        for contact in [rig.support.left, rig.support.right] {
            foot(&mut engine, truck, contact, 5.0);
        }
        let axle = rig.axle.map(|axle| {
            let handle = insert(&mut engine, &[axle], timing);
            // The wheels roll: nothing holds them along the truck. Across it they are held where they
            // touch the ground. So the feet are frictionless, and a guide on the ground keeps the axle
            // from going sideways while it may roll, rise and go along.
            let pivot = rig.support.steer;
            let half_track = 0.45 * (rig.support.left.y - rig.support.right.y);
            for side in [half_track, -half_track] {
                foot(&mut engine, handle, DVec3::new(pivot.x, side, 0.0), 0.0);
            }
            let on_ground = pivot.with_z(0.0);
            let guide = rapier::GenericJointBuilder::new(rapier::JointAxesMask::LIN_Y)
                .local_anchor1(vector(on_ground - aside))
                .local_anchor2(vector(on_ground));
            engine.insert_impulse_joint(ground, handle, guide.build());
            let hinge = rapier::RevoluteJointBuilder::new(rapier::Vector::X)
                .local_anchor1(vector(pivot))
                .local_anchor2(vector(pivot))
                .contacts_enabled(false);
            engine.insert_impulse_joint(truck, handle, hinge);
            handle
        });
        if axle.is_none() {
            foot(&mut engine, truck, rig.support.steer, 5.0);
        }
        Self { engine, ground, began: vector(aside), truck, axle }
    }

    fn ended(&self) -> Option<End> {
        let truck = self.engine.bodies.get(self.truck)?;
        let lean = |turn: &rapier::Rotation| (*turn * rapier::Vector::Z).z.clamp(-1.0, 1.0);
        let upright = libm::cos(GONE);
        if lean(truck.rotation()) < upright {
            return Some(End::Tips);
        }
        let axle = self.axle.and_then(|a| self.engine.bodies.get(a));
        // Where the truck's own origin stands on the ground.
        let ground = self.engine.bodies.get(self.ground)?;
        let began = ground.translation() - *ground.rotation() * self.began;
        let slid = (truck.translation() - began).truncate().length() > 0.05;
        // The axle leans with the truck where both go over the front wheels: it may lead by a little.
        let axle_gone = axle.is_some_and(|a| lean(a.rotation()) < libm::cos(2.0 * GONE));
        if axle_gone { Some(End::AxleGone) } else { slid.then_some(End::Slides) }
    }
}

/// A body of these masses, its frame the truck's own. Each mass counts as a small ball: a quarter
/// metre of radius of gyration keeps the inertia away from zero and changes no point of balance.
fn insert(engine: &mut rapier::PhysicsWorld, masses: &[(f64, DVec3)], timing: &Timing) -> rapier::RigidBodyHandle {
    let mass: f64 = masses.iter().map(|(m, _)| m).sum();
    let centre = masses.iter().map(|&(m, at)| m * at).sum::<DVec3>() / mass;
    let mut inertia = glam::DMat3::ZERO;
    for &(m, at) in masses {
        let r = at - centre;
        let outer = glam::DMat3::from_cols(r * r.x, r * r.y, r * r.z);
        inertia += (glam::DMat3::IDENTITY * (r.length_squared() + 0.0625) - outer) * m;
    }
    let [x, y, z] = [inertia.x_axis, inertia.y_axis, inertia.z_axis].map(vector);
    let matrix = rapier::Matrix::from_cols(x, y, z);
    let properties = rapier::MassProperties::with_inertia_matrix(vector(centre), mass, matrix);
    let body = rapier::RigidBodyBuilder::dynamic()
        .additional_mass_properties(properties)
        .linear_damping(timing.damping)
        .angular_damping(timing.damping)
        .can_sleep(false);
    engine.insert_body(body)
}

fn foot(engine: &mut rapier::PhysicsWorld, body: rapier::RigidBodyHandle, contact: DVec3, friction: f64) {
    let ball = rapier::ColliderBuilder::ball(FOOT)
        .translation(vector(contact + DVec3::Z * FOOT))
        .density(0.0)
        .friction(friction)
        .friction_combine_rule(rapier::CoefficientCombineRule::Min);
    engine.insert_collider(ball, Some(body));
}
