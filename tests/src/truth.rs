//! One truck, load and lift as they may really be: every figure at some point of its range, and moments by
//! plain sums over what stands where. Written apart from the core's search for the worst corner, which knows
//! nothing of it; it shares with it the figures of [`rules`], the document's scenario, and what the mast gives.

use glam::{DMat3, DVec2, DVec3};
use standfast_core::balance::Balance;
use standfast_core::body::{Placed, Pose, Setting};
use standfast_core::platform::Test;
use standfast_core::rules;
use standfast_core::scalar::Span;
use standfast_core::scenario::Scenario;
use standfast_core::stance::Yield;
use standfast_core::step::StepId;
use standfast_core::support::LineId;
use standfast_core::units::GRAVITY;

mod figures;

pub use figures::{Figure, figures};

/// How a step's truck is looked at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SetUp {
    /// Standing as it is.
    Standing,
    /// Set up as the platform tests are.
    Tested,
}

/// Lift, tilt and sideshift of a step as stated, how far they may be out, and what the mast gives.
pub fn setting(scenario: &Scenario, placed: &Placed, step: StepId, set_up: SetUp) -> (Setting, Yield) {
    use StepId::{BackOut, RaisedBack, RaisedForward, RaisedUpright, TakeUp, TiltBack, Travel};
    let (truck, lift, doubts) = (&scenario.truck, &scenario.lift, &scenario.doubts);
    let (mut height, higher) = match step {
        TakeUp | TiltBack => (lift.take_up, doubts.take_up),
        RaisedBack | RaisedUpright | RaisedForward | BackOut => (lift.height, doubts.height),
        _ => (lift.travel, doubts.travel),
    };
    let back = |stated: f64, doubt: Span| (-stated, Span { lo: -doubt.hi, nominal: 0.0, hi: -doubt.lo });
    let (tilt, turned) = match step {
        TakeUp | RaisedUpright | BackOut => (0.0, Span::exact(0.0)),
        RaisedBack => back(lift.tilt_back, doubts.tilt_back),
        RaisedForward => (lift.tilt_forward, doubts.tilt_forward),
        _ => back(truck.mast.tilt_back, doubts.tilt_back_most),
    };
    let tested = set_up == SetUp::Tested;
    if tested && step == Travel {
        height = height.max(Test::travelling_lift(truck.rated()));
    }
    // Between the ground and the end of the mast.
    let room = (truck.mast.lift - height).max(0.0);
    let higher = Span { lo: higher.lo.max(-height), nominal: 0.0, hi: higher.hi.min(room) };
    let pose = Pose { lift: height, tilt, lean: 0.0, sway: 0.0, sideshift: lift.sideshift };
    let setting = Setting { pose, lift: higher, tilt: turned, sideshift: doubts.sideshift };
    let mut give = Yield::of(truck, doubts, step.laden().then_some(placed), &setting);
    // The lean is tilted out where the load stands plumb.
    if tested && matches!(step, TakeUp | RaisedUpright) {
        give.lean = Span::exact(0.0);
    }
    (setting, give)
}

/// How a step is driven: braking m/s^2, slopes as tangents, speed m/s, radius m.
#[derive(Clone, Copy, Debug)]
pub struct Driven {
    braking: f64,
    ramp: f64,
    cross_fall: f64,
    speed: f64,
    radius: f64,
}

impl Driven {
    fn stated(scenario: &Scenario, step: StepId) -> Self {
        let drive = &scenario.drive;
        let bend = if step.laden() { drive.corner } else { drive.corner_empty };
        let (speed, radius) = bend.unwrap_or((0.0, 1.0));
        let [braking, ramp, cross_fall] = [drive.braking, drive.ramp, drive.cross_fall].map(Option::unwrap_or_default);
        Self { braking, ramp, cross_fall, speed, radius }
    }
}

/// A truck as it may really be, in one step.
#[derive(Clone, Debug)]
pub struct Truth {
    /// Every figure as it is; the ranges in it mean nothing.
    pub scenario: Scenario,
    /// Which step.
    pub step: StepId,
    /// Where the unladen truck's centre is (x, z), with the wheelbase as stated.
    pub whole: DVec2,
    /// Its lift, tilt, lean, sway and sideshift.
    pub pose: Pose,
    /// How far the operator's centre is from where the model has it, m.
    pub operator_out: DVec3,
    /// How much higher the steer axle's centre is.
    pub axle_up: f64,
    /// How far mast sections (the fixed one first), carriage and forks are from where the stated figures
    /// have them.
    pub parts_out: [DVec3; 6],
    /// How far the battery's centre is from where it is stated.
    pub battery_out: DVec3,
    /// Height of the axle's pivot.
    pub pivot: f64,
    /// How it is driven.
    pub driven: Driven,
    /// Wheelbase and load distance as stated.
    stated: (f64, f64),
}

/// Masses added up.
#[derive(Clone, Copy, Debug, Default)]
struct Sum {
    kg: f64,
    moment: DVec3,
}

impl Sum {
    fn add(&mut self, kg: f64, at: DVec3) {
        self.kg += kg;
        self.moment += kg * at;
    }
}

/// A tipping line: a point of it, its unit vector, and what turns about it.
#[derive(Clone, Copy, Debug)]
struct Axis {
    from: DVec3,
    along: DVec3,
    sum: Sum,
}

impl Axis {
    /// -((r - p0) x m w) . u, by definition.
    fn moment(&self, w: DVec3) -> f64 {
        -(self.sum.moment - self.from * self.sum.kg).cross(w).dot(self.along)
    }

    /// Horizontal, square to the line seen from above, out of the truck.
    fn outward(&self) -> DVec3 {
        DVec3::new(self.along.y, -self.along.x, 0.0).normalize()
    }

    /// The common centre from the line, inward and upward in the plane square to it, as a pull w has them.
    fn inward_and_up(&self, w: DVec3) -> (f64, f64) {
        let square = w - self.along * w.dot(self.along);
        let up = -square.normalize();
        let arm = self.sum.moment / self.sum.kg - self.from;
        (arm.dot(up.cross(self.along)), arm.dot(up))
    }
}

impl Truth {
    /// As stated: the stated figures themselves.
    pub fn stated(scenario: &Scenario, balance: &Balance, placed: &Placed, step: StepId, set_up: SetUp) -> Self {
        let (setting, give) = setting(scenario, placed, step, set_up);
        Self {
            scenario: scenario.clone(),
            step,
            whole: DVec2::new(balance.stated.0, balance.stated.1),
            pose: Pose { lean: give.lean.nominal, ..setting.pose },
            operator_out: DVec3::ZERO,
            axle_up: 0.0,
            parts_out: [DVec3::ZERO; 6],
            battery_out: DVec3::ZERO,
            pivot: scenario.truck.axle.as_ref().map_or(0.0, |a| a.pivot),
            driven: Driven::stated(scenario, step),
            stated: (scenario.truck.wheelbase, scenario.truck.load_distance),
        }
    }

    /// Mast, carriage and forks: kg, where they were when the truck was weighed, where the mast has them
    /// when upright.
    fn parts(&self) -> Vec<(f64, DVec3, DVec3)> {
        let (mast, forks, pose) = (&self.scenario.truck.mast, &self.scenario.truck.forks, &self.pose);
        let face = self.stated.1;
        let foot = DVec3::new(face - rules::MAST_BEHIND_FACE.value, 0.0, 0.5 * mast.lowered);
        let mut parts = vec![(mast.outer, foot, foot)];
        for &(kg, ratio) in &mast.stages {
            let rise = ratio * (pose.lift - mast.free_lift).max(0.0);
            parts.push((kg, foot, foot + DVec3::Z * rise));
        }
        let up = DVec3::new(0.0, pose.sideshift, pose.lift);
        let carriage = DVec3::new(face - rules::CARRIAGE_BEHIND_FACE.value, 0.0, rules::CARRIAGE_ABOVE_FORKS.value);
        let blades = DVec3::new(face + rules::FORKS_AHEAD.value * forks.length, 0.0, 0.0);
        parts.push((forks.carriage, carriage, carriage + up));
        parts.push((forks.pair, blades, blades + up));
        for ((_, stowed, upright), out) in parts.iter_mut().zip(self.parts_out) {
            *stowed += out;
            *upright += out;
        }
        parts
    }

    /// What is added up for the front line, and for the side lines: a pivoting axle stays on the ground.
    fn sums(&self) -> (Sum, Sum) {
        let (truck, pose) = (&self.scenario.truck, &self.pose);
        let turn = DMat3::from_rotation_y(pose.tilt + pose.lean) * DMat3::from_rotation_x(pose.sway);
        let pivot = truck.mast.pivot;
        let posed = |upright: DVec3| pivot + turn * (upright - pivot);
        let mut sum = Sum::default();
        // The truck as it was weighed; axle loads put its centre at a part of the wheelbase.
        let x = if truck.cg_x.is_some() { self.whole.x * truck.wheelbase / self.stated.0 } else { self.whole.x };
        sum.add(truck.service, DVec3::new(x, 0.0, self.whole.y));
        // What is moved from there is taken out and put back where it is.
        let battery = truck.battery.at + self.battery_out;
        sum.add(-truck.battery.stated, battery);
        sum.add(truck.battery.fitted.nominal, battery);
        for (kg, stowed, upright) in self.parts() {
            sum.add(-kg, stowed);
            sum.add(kg, posed(upright));
        }
        let seat = DVec3::new(-rules::OPERATOR_BEHIND.value * truck.wheelbase, 0.0, rules::OPERATOR_HEIGHT.value);
        sum.add(truck.operator, seat + self.operator_out);
        let mut face = truck.load_distance;
        let raised = |x: f64, y: f64, z: f64| posed(DVec3::new(x, y + pose.sideshift, z + pose.lift));
        if let Some(attachment) = &truck.attachment {
            sum.add(attachment.mass, raised(face + attachment.ahead, 0.0, attachment.above));
            face += attachment.lost_load;
        }
        if let Some((length, kg)) = truck.forks.extension {
            sum.add(kg, raised(face + 0.5 * length, 0.0, 0.0));
        }
        if self.step.laden() {
            let (load, lift) = (&self.scenario.load, &self.scenario.lift);
            let at = load.centre.at;
            let (x, y) = (face + lift.heel_gap.nominal + at.x, lift.offset.nominal + at.y);
            sum.add(load.mass.nominal, raised(x, y, at.z));
        }
        let mut hung = sum;
        if let Some(axle) = &truck.axle {
            let at = DVec3::new(-truck.wheelbase, 0.0, rules::STEER_AXLE_HEIGHT.value + self.axle_up);
            hung.add(-axle.mass, at);
        }
        (sum, hung)
    }

    /// Its three tipping lines: front, left, right.
    fn axes(&self) -> [(LineId, Axis); 3] {
        let truck = &self.scenario.truck;
        let (all, hung) = self.sums();
        let left = DVec3::new(0.0, 0.5 * truck.tread, 0.0);
        let right = DVec3::new(0.0, -0.5 * truck.tread, 0.0);
        let steer = DVec3::new(-truck.wheelbase, 0.0, if truck.axle.is_some() { self.pivot } else { 0.0 });
        let axis = |from: DVec3, to: DVec3, sum: Sum| Axis { from, along: (to - from).normalize(), sum };
        [
            (LineId::Front, axis(right, left, all)),
            (LineId::Left, axis(left, steer, hung)),
            (LineId::Right, axis(steer, right, hung)),
        ]
    }

    /// What pulls on every kilogram in its step, m/s^2, in the truck's frame.
    pub fn pull(&self) -> DVec3 {
        let Driven { braking, ramp, cross_fall, speed, radius } = self.driven;
        let (ramp, cross_fall) = (libm::atan(ramp), libm::atan(cross_fall));
        let bend = speed * speed / radius;
        // Nose up, left side up, forward and leftward acceleration.
        let (up, high, ahead, left) = match self.step {
            StepId::Brake => (0.0, 0.0, -braking, 0.0),
            StepId::CornerLeft | StepId::EmptyCornerLeft => (0.0, 0.0, 0.0, bend),
            StepId::CornerRight | StepId::EmptyCornerRight => (0.0, 0.0, 0.0, -bend),
            StepId::RampUp => (ramp, 0.0, 0.0, 0.0),
            // Forwards down the ramp its nose is low; backwards down it, braking pushes it uphill, ahead.
            StepId::RampDown if self.scenario.drive.load_downhill => (-ramp, 0.0, -braking, 0.0),
            StepId::RampDown => (ramp, 0.0, braking, 0.0),
            StepId::CrossFallLeft => (0.0, cross_fall, 0.0, 0.0),
            StepId::CrossFallRight => (0.0, -cross_fall, 0.0, 0.0),
            _ => (0.0, 0.0, 0.0, 0.0),
        };
        let to_world = DMat3::from_rotation_x(high) * DMat3::from_rotation_y(-up);
        to_world.transpose() * DVec3::new(0.0, 0.0, -GRAVITY) - DVec3::new(ahead, left, 0.0)
    }

    /// All that a pull leaves of each line.
    pub fn about(&self, w: DVec3) -> [About; 3] {
        self.axes().map(|(line, axis)| {
            let (inward, up) = axis.inward_and_up(w);
            About {
                line,
                moment: axis.moment(w),
                distance: inward,
                tip_angle: within_reach(inward, up).map(libm::atan),
            }
        })
    }

    /// The restoring moment about one line in a pull, N m.
    pub fn moment(&self, line: LineId, w: DVec3) -> f64 {
        self.axes()[line as usize].1.moment(w)
    }

    /// The restoring moment on a platform that falls square to the line, N m.
    pub fn on_platform(&self, line: LineId, slope: f64) -> f64 {
        let axis = self.axes()[line as usize].1;
        let down = (axis.outward() * slope - DVec3::Z).normalize();
        axis.moment(down * GRAVITY)
    }

    /// The slope (a tangent) of such a platform at which it goes over.
    pub fn stood(&self, line: LineId) -> Option<f64> {
        let axis = self.axes()[line as usize].1;
        within_reach(axis.moment(-DVec3::Z), -axis.moment(axis.outward()))
    }

    /// The common centre of truck and load.
    pub fn centre(&self) -> DVec3 {
        let (all, _) = self.sums();
        all.moment / all.kg
    }

    /// Its weight, N.
    pub fn weight(&self) -> f64 {
        self.sums().0.kg * GRAVITY
    }
}

/// What a pull leaves of one line.
#[derive(Clone, Copy, Debug)]
pub struct About {
    /// Which.
    pub line: LineId,
    /// Restoring moment, N m.
    pub moment: f64,
    /// How far inside the line of action passes, m.
    pub distance: f64,
    /// The further tilt to the point of tipping, rad.
    pub tip_angle: Option<f64>,
}

/// What is left over what takes it, where that ever takes it all; no further than the core tells slopes apart.
fn within_reach(left: f64, takes: f64) -> Option<f64> {
    if left < 0.0 {
        return Some(if takes > 0.0 { left / takes } else { 0.0 });
    }
    (takes > 0.0).then(|| left / takes).filter(|t| *t <= standfast_core::statics::STEEPEST)
}
