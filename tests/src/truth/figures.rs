//! Every figure that may be out, and how to put it somewhere in its range.

use super::{SetUp, Truth, setting};
use glam::DVec3;
use standfast_core::body::Placed;
use standfast_core::rules;
use standfast_core::scalar::Span;
use standfast_core::scenario::Scenario;
use standfast_core::step::StepId;
use std::fmt;

type Slot = Box<dyn Fn(&mut Truth) -> &mut f64>;

/// One figure and all it may be.
pub struct Figure {
    /// What it is called, for a message.
    pub name: String,
    /// Its range, in the model's unit.
    pub range: Span,
    /// Whether what it does to a moment is a curve, so that both ends need not be the worst of it.
    pub curved: bool,
    slot: Slot,
}

impl fmt::Debug for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {:?}", self.name, self.range)
    }
}

impl Figure {
    /// Makes it so.
    pub fn set(&self, truth: &mut Truth, value: f64) {
        *(self.slot)(truth) = value;
    }

    /// As it is.
    pub fn get(&self, truth: &mut Truth) -> f64 {
        *(self.slot)(truth)
    }
}

struct List(Vec<Figure>);

impl List {
    fn add(&mut self, name: impl Into<String>, range: Span, slot: impl Fn(&mut Truth) -> &mut f64 + 'static) {
        if !range.is_exact() {
            self.0.push(Figure { name: name.into(), range, curved: false, slot: Box::new(slot) });
        }
    }

    fn curved(&mut self, name: &str, range: Span, slot: impl Fn(&mut Truth) -> &mut f64 + 'static) {
        self.add(name, range, slot);
        self.0.iter_mut().filter(|f| f.name == name).for_each(|f| f.curved = true);
    }

    /// A weight: never less than none.
    fn kg(
        &mut self,
        name: impl Into<String>,
        stated: f64,
        doubt: Span,
        slot: impl Fn(&mut Truth) -> &mut f64 + 'static,
    ) {
        let range = doubt.moved(stated);
        self.add(name, Span { lo: range.lo.max(0.0), ..range }, slot);
    }

    /// A place that nobody can enter, along and upward.
    fn built_in(&mut self, name: &str, out: impl Fn(&mut Truth) -> &mut DVec3 + Copy + 'static) {
        let range = Span::about(0.0, rules::TOLERANCE_BUILT_IN.value);
        self.add(format!("{name} along"), range, move |t| &mut out(t).x);
        self.add(format!("{name} up"), range, move |t| &mut out(t).z);
    }
}

/// All that is uncertain in a step, the place of the unladen truck's centre apart.
pub fn figures(scenario: &Scenario, placed: &Placed, step: StepId, set_up: SetUp) -> Vec<Figure> {
    let mut list = List(Vec::new());
    chassis(&mut list, scenario);
    mast(&mut list, scenario);
    front_end(&mut list, scenario);
    if step.laden() {
        load(&mut list, scenario);
    }
    if set_up == SetUp::Standing {
        drive(&mut list, scenario, step);
    }
    let (setting, give) = setting(scenario, placed, step, set_up);
    let pose = setting.pose;
    list.add("lift", setting.lift.moved(pose.lift), |t| &mut t.pose.lift);
    list.add("sideshift", setting.sideshift.moved(pose.sideshift), |t| &mut t.pose.sideshift);
    list.curved("tilt", setting.tilt.moved(pose.tilt), |t| &mut t.pose.tilt);
    list.curved("lean", give.lean, |t| &mut t.pose.lean);
    list.curved("sway", Span::about(0.0, give.sway), |t| &mut t.pose.sway);
    list.0
}

fn chassis(list: &mut List, scenario: &Scenario) {
    let (truck, d) = (&scenario.truck, &scenario.doubts);
    list.curved("wheelbase", d.wheelbase.moved(truck.wheelbase), |t| &mut t.scenario.truck.wheelbase);
    list.curved("tread", d.tread.moved(truck.tread), |t| &mut t.scenario.truck.tread);
    list.kg("service weight", truck.service, d.service, |t| &mut t.scenario.truck.service);
    // From nobody on the seat.
    let operator = Span { lo: -truck.operator, ..d.operator };
    list.kg("operator", truck.operator, operator, |t| &mut t.scenario.truck.operator);
    if truck.operator + d.operator.hi > 0.0 {
        list.built_in("operator", |t| &mut t.operator_out);
    }
    let battery = &truck.battery;
    list.kg("battery stated", battery.stated, d.battery_stated, |t| &mut t.scenario.truck.battery.stated);
    list.add("battery fitted", battery.fitted, |t| &mut t.scenario.truck.battery.fitted.nominal);
    list.add("battery along", Span::about(0.0, battery.spread.x), |t| &mut t.battery_out.x);
    list.add("battery up", Span::about(0.0, battery.spread.z), |t| &mut t.battery_out.z);
    if let Some(axle) = &truck.axle {
        list.kg("axle", axle.mass, d.axle_mass, |t| &mut of(&mut t.scenario.truck.axle).mass);
        let up = Span::about(0.0, rules::TOLERANCE_BUILT_IN.value);
        list.add("axle up", up, |t| &mut t.axle_up);
        let high = axle.pivot_high.max(2.0 * axle.pivot - axle.pivot_low);
        let height = Span { lo: axle.pivot_low, nominal: axle.pivot, hi: high };
        list.curved("axle pivot", height, |t| &mut t.pivot);
    }
}

fn mast(list: &mut List, scenario: &Scenario) {
    let (mast, d) = (&scenario.truck.mast, &scenario.doubts);
    list.add("free lift", d.free_lift.moved(mast.free_lift), |t| &mut t.scenario.truck.mast.free_lift);
    list.add("lowered", d.lowered.moved(mast.lowered), |t| &mut t.scenario.truck.mast.lowered);
    list.add("mast pivot along", d.pivot_x.moved(mast.pivot.x), |t| &mut t.scenario.truck.mast.pivot.x);
    list.add("mast pivot up", d.pivot_z.moved(mast.pivot.z), |t| &mut t.scenario.truck.mast.pivot.z);
    list.kg("fixed section", mast.outer, d.outer, |t| &mut t.scenario.truck.mast.outer);
    if mast.outer + d.outer.hi > 0.0 {
        list.built_in("fixed section", |t| &mut t.parts_out[0]);
    }
    for (k, &(kg, ratio)) in mast.stages.iter().enumerate() {
        list.kg(format!("section {k}"), kg, d.stage_mass[k], move |t| &mut t.scenario.truck.mast.stages[k].0);
        let quicker = d.stage_ratio[k].moved(ratio);
        let ratio = Span { lo: quicker.lo.max(0.0), ..quicker };
        list.add(format!("ratio {k}"), ratio, move |t| &mut t.scenario.truck.mast.stages[k].1);
        if kg + d.stage_mass[k].hi > 0.0 {
            list.built_in(&format!("section {k}"), move |t| &mut t.parts_out[1 + k]);
        }
    }
}

fn front_end(list: &mut List, scenario: &Scenario) {
    let (truck, d) = (&scenario.truck, &scenario.doubts);
    let (forks, after) = (&truck.forks, 1 + truck.mast.stages.len());
    list.kg("carriage", forks.carriage, d.carriage, |t| &mut t.scenario.truck.forks.carriage);
    if forks.carriage + d.carriage.hi > 0.0 {
        list.built_in("carriage", move |t| &mut t.parts_out[after]);
    }
    list.kg("forks", forks.pair, d.fork_pair, |t| &mut t.scenario.truck.forks.pair);
    if forks.pair + d.fork_pair.hi > 0.0 {
        list.built_in("forks", move |t| &mut t.parts_out[after + 1]);
    }
    let distance = d.load_distance.moved(truck.load_distance);
    list.add("load distance", distance, |t| &mut t.scenario.truck.load_distance);
    if let Some((length, kg)) = forks.extension {
        list.add("extension's length", d.extension.moved(length), |t| &mut of(&mut t.scenario.truck.forks.extension).0);
        list.kg("extensions", kg, d.extension_mass, |t| &mut of(&mut t.scenario.truck.forks.extension).1);
    }
    if let Some(a) = &truck.attachment {
        let (ahead, above) = (d.attachment_ahead.moved(a.ahead), d.attachment_above.moved(a.above));
        list.kg("attachment", a.mass, d.attachment_mass, |t| &mut of(&mut t.scenario.truck.attachment).mass);
        list.add("attachment ahead", ahead, |t| &mut of(&mut t.scenario.truck.attachment).ahead);
        list.add("attachment above", above, |t| &mut of(&mut t.scenario.truck.attachment).above);
        let lost = d.lost_load.moved(a.lost_load);
        list.add("lost load", lost, |t| &mut of(&mut t.scenario.truck.attachment).lost_load);
    }
}

fn load(list: &mut List, scenario: &Scenario) {
    let (load, lift) = (&scenario.load, &scenario.lift);
    list.add("load", load.mass, |t| &mut t.scenario.load.mass.nominal);
    list.add("load along", load.centre.x(), |t| &mut t.scenario.load.centre.at.x);
    list.add("load aside", load.centre.y(), |t| &mut t.scenario.load.centre.at.y);
    list.add("load up", load.centre.z(), |t| &mut t.scenario.load.centre.at.z);
    list.add("heel gap", lift.heel_gap, |t| &mut t.scenario.lift.heel_gap.nominal);
    list.add("offset", lift.offset, |t| &mut t.scenario.lift.offset.nominal);
}

fn drive(list: &mut List, scenario: &Scenario, step: StepId) {
    let (drive, d) = (&scenario.drive, &scenario.doubts);
    let range = |stated: f64, doubt: Span| Span { lo: (stated + doubt.lo).max(0.0), ..doubt.moved(stated) };
    if let Some(braking) = drive.braking.filter(|_| matches!(step, StepId::Brake | StepId::RampDown)) {
        list.add("braking", range(braking, d.braking), |t| &mut t.driven.braking);
    }
    if let Some(ramp) = drive.ramp.filter(|_| matches!(step, StepId::RampUp | StepId::RampDown)) {
        list.curved("ramp", range(ramp, d.ramp), |t| &mut t.driven.ramp);
    }
    if let Some(fall) = drive.cross_fall.filter(|_| matches!(step, StepId::CrossFallLeft | StepId::CrossFallRight)) {
        list.curved("cross-fall", range(fall, d.cross_fall), |t| &mut t.driven.cross_fall);
    }
    let bend = match step {
        StepId::CornerLeft | StepId::CornerRight => drive.corner.zip(Some(d.corner_speed)),
        StepId::EmptyCornerLeft | StepId::EmptyCornerRight => drive.corner_empty.zip(Some(d.corner_speed_empty)),
        _ => None,
    };
    if let Some(((speed, radius), faster)) = bend {
        list.curved("speed", range(speed, faster), |t| &mut t.driven.speed);
        let radius = d.radius.moved(radius);
        list.curved("radius", Span { lo: radius.lo.max(0.1), ..radius }, |t| &mut t.driven.radius);
    }
}

/// What a truck has, for a figure that is listed only where it has it.
fn of<T>(part: &mut Option<T>) -> &mut T {
    part.as_mut().unwrap_or_else(|| unreachable!("listed, so the truck has it"))
}
