//! Where everything that makes up a truck stands in a pose, and what each may be.

use super::{Bodies, BodyId, Outfit, Placed, Pose, Rig, Setting, Sum};
use crate::corner::{Few, Hung, Kept, Service, Terms, Way};
use crate::document::PlateFor;
use crate::doubt::Doubts;
use crate::rules;
use crate::scalar::{Region, Span};
use crate::scenario;
use crate::scenario::Truck;
use glam::DVec3;

/// A part of the truck that its service weight includes: as stowed and as posed, mast upright.
struct Part {
    id: BodyId,
    mass: Span,
    stowed: DVec3,
    posed: DVec3,
    /// How far up it may be beside `posed`, about that.
    rise: Span,
}

/// A range of a mass about what is stated; never less than nothing.
fn mass(stated: f64, doubt: Span) -> Span {
    Span { lo: (stated + doubt.lo).max(0.0), nominal: stated, hi: stated + doubt.hi }
}

impl Truck {
    /// Whether the front end that a plate was issued for has the attachment.
    fn plate_has_attachment(&self) -> bool {
        self.plate.as_ref().is_some_and(|p| p.issued_for == PlateFor::Attachment)
    }

    /// How far the face that carries the load stands ahead of the front axle with the mast upright, m.
    pub fn face(&self, outfit: Outfit) -> f64 {
        self.load_distance + self.fitted(outfit).map_or(0.0, |a| a.lost_load)
    }

    fn fitted(&self, outfit: Outfit) -> Option<&scenario::Attachment> {
        self.attachment.as_ref().filter(|_| outfit == Outfit::Today || self.plate_has_attachment())
    }

    fn axle_at(&self) -> DVec3 {
        DVec3::new(-self.wheelbase, 0.0, rules::STEER_AXLE_HEIGHT.value)
    }

    fn seat(&self) -> DVec3 {
        DVec3::new(-rules::OPERATOR_BEHIND.value * self.wheelbase, 0.0, rules::OPERATOR_HEIGHT.value)
    }

    /// Mast, carriage and forks, stowed (forks down, mast upright) and at a lift and sideshift.
    fn parts<'s>(&'s self, doubts: &Doubts, setting: &Setting) -> impl Iterator<Item = Part> + use<'s> {
        let (mast, forks, doubts) = (&self.mast, &self.forks, *doubts);
        let Setting { pose: Pose { lift, sideshift, .. }, lift: higher, .. } = *setting;
        let mast_x = self.load_distance - rules::MAST_BEHIND_FACE.value;
        let foot = DVec3::new(mast_x, 0.0, 0.5 * mast.lowered);
        let outer = Part {
            id: BodyId::MastOuter,
            mass: mass(mast.outer, doubts.outer),
            stowed: foot,
            posed: foot,
            rise: Span::exact(0.0),
        };
        let rise = |lift: f64, free: f64| (lift - free).max(0.0);
        let least = rise(lift + higher.lo, mast.free_lift + doubts.free_lift.hi);
        let stated = rise(lift, mast.free_lift);
        let most = rise(lift + higher.hi, mast.free_lift + doubts.free_lift.lo);
        let stages = mast.stages.iter().enumerate().map(move |(k, &(m, ratio))| {
            let sure = Span::exact(0.0);
            let doubt = |list: &[Span]| list.get(k).copied().unwrap_or(sure);
            let quicker = doubt(&doubts.stage_ratio);
            let posed = foot + DVec3::Z * (ratio * stated);
            let (lo, hi) = ((ratio + quicker.lo).max(0.0) * least, (ratio + quicker.hi) * most);
            let rise = Span { lo: lo - ratio * stated, nominal: 0.0, hi: hi - ratio * stated };
            Part { id: BodyId::MastStage(k), mass: mass(m, doubt(&doubts.stage_mass)), stowed: foot, posed, rise }
        });
        let carriage_x = self.load_distance - rules::CARRIAGE_BEHIND_FACE.value;
        let forks_x = self.load_distance + rules::FORKS_AHEAD.value * forks.length;
        let lifted = [
            (BodyId::Carriage, mass(forks.carriage, doubts.carriage), carriage_x, rules::CARRIAGE_ABOVE_FORKS.value),
            (BodyId::Forks, mass(forks.pair, doubts.fork_pair), forks_x, 0.0),
        ];
        let lifted = lifted.map(|(id, mass, x, z)| Part {
            id,
            mass,
            stowed: DVec3::new(x, 0.0, z),
            posed: DVec3::new(x, sideshift, lift + z),
            rise: higher,
        });
        std::iter::once(outer).chain(stages).chain(lifted)
    }

    /// The chassis that, with all the parts stowed, has its common centre at `whole` (x, 0, z).
    ///
    /// The axle loads and the centre's height are those of the service weight with the battery it
    /// was stated with; another battery is a change of bodies, not of scale.
    pub fn chassis(&self, whole: DVec3) -> (f64, DVec3) {
        let down = Setting::exact(Pose { lift: 0.0, tilt: 0.0, lean: 0.0, sway: 0.0, sideshift: 0.0 });
        let mut sum = Sum::default().with(self.battery.stated, self.battery.at);
        if let Some(axle) = &self.axle {
            sum = sum.with(axle.mass, self.axle_at());
        }
        let parts = self.parts(&Doubts::NONE, &down);
        let Sum { mass: parts, moment } = parts.fold(sum, |s, p| s.with(p.mass.nominal, p.stowed));
        let mass = self.service - parts;
        (mass, (self.service * whole - moment) / mass)
    }

    /// What is put on the truck's front end besides what its service weight includes: mass, place with
    /// the mast upright, half its box.
    fn put_on(
        &self,
        doubts: &Doubts,
        setting: &Setting,
        outfit: Outfit,
        load: Option<&Placed>,
    ) -> impl Iterator<Item = (BodyId, Span, Region)> + use<> {
        let Setting { pose: Pose { lift, sideshift, .. }, lift: higher, sideshift: aside, .. } = *setting;
        let around =
            |x: Span, y: Span, z: Span| Region::of(x, y.plus(aside).moved(sideshift), z.plus(higher).moved(lift));
        let middle = Span::exact(0.0);
        let from = |distance: f64, doubt: Span| doubt.moved(distance);
        let distance = from(self.load_distance, doubts.load_distance);
        let fitted = self.fitted(outfit);
        let face = fitted.map_or(distance, |a| distance.plus(from(a.lost_load, doubts.lost_load)));
        let attachment = fitted.map(|a| {
            let x = distance.plus(from(a.ahead, doubts.attachment_ahead));
            let z = from(a.above, doubts.attachment_above);
            (BodyId::Attachment, mass(a.mass, doubts.attachment_mass), around(x, middle, z))
        });
        let extensions = self.forks.extension.filter(|_| outfit == Outfit::Today).map(|(length, m)| {
            let x = face.plus(doubts.extension.moved(length).each(|l| 0.5 * l));
            (BodyId::Extensions, mass(m, doubts.extension_mass), around(x, middle, middle))
        });
        let load = load.map(|load| {
            let at = &load.centre;
            (BodyId::Load, load.mass, around(face.plus(at.x()), at.y(), at.z()))
        });
        attachment.into_iter().chain(extensions).chain(load)
    }

    fn battery_and_operator(&self, doubts: &Doubts, outfit: Outfit) -> (Span, Span) {
        match outfit {
            Outfit::Today => {
                let operator = Span { lo: 0.0, nominal: self.operator, hi: self.operator + doubts.operator.hi };
                (self.battery.fitted, operator)
            }
            Outfit::Tested { operator } => (Span::exact(self.battery.stated), Span::exact(operator)),
        }
    }

    /// Every body of the truck in a pose as stated, with its load.
    pub fn bodies(&self, doubts: &Doubts, rig: &Rig, pose: &Pose, outfit: Outfit, load: Option<&Placed>) -> Bodies {
        let setting = &Setting::exact(*pose);
        let mut bodies = Bodies::new();
        let (battery, operator) = self.battery_and_operator(doubts, outfit);
        bodies.push(BodyId::Chassis, Span::exact(rig.chassis), rig.chassis_at);
        bodies.push(BodyId::Battery, battery, self.battery.at);
        bodies.push(BodyId::Operator, operator, self.seat());
        if let Some(axle) = &self.axle {
            bodies.push(BodyId::SteerAxle, mass(axle.mass, doubts.axle_mass), self.axle_at());
        }
        let (pivot, rotation) = (self.mast.pivot, pose.rotation());
        let place = |upright: DVec3| pivot + rotation * (upright - pivot);
        for part in self.parts(doubts, setting) {
            bodies.push(part.id, part.mass, place(part.posed));
        }
        for (id, mass, region) in self.put_on(doubts, setting, outfit, load) {
            bodies.push(id, mass, place(region.at));
        }
        bodies
    }

    /// The same with all it may be.
    pub fn terms<'r>(
        &self,
        doubts: &Doubts,
        rig: &'r Rig,
        setting: &Setting,
        outfit: Outfit,
        load: Option<&Placed>,
    ) -> Terms<'r> {
        let ends = |s: Span| (s.lo, s.hi);
        // The platform tests were run on the truck as it is: what the model takes for its parts is no doubt there.
        let built_in = if outfit == Outfit::Today { rules::TOLERANCE_BUILT_IN.value } else { 0.0 };
        let (battery, operator) = self.battery_and_operator(doubts, outfit);
        let mut kept = Few::default();
        // Another battery is put in the place of the one that the service weight includes.
        let stated = mass(self.battery.stated, doubts.battery_stated);
        let swapped = (battery.lo - stated.hi, battery.hi - stated.lo);
        if swapped != (0.0, 0.0) {
            kept.push(Kept { mass: swapped, at: self.battery.at, half: self.battery.spread, with_wheelbase: 0.0 });
        }
        kept.push(Kept {
            mass: ends(operator),
            at: self.seat(),
            half: DVec3::new(built_in, 0.0, built_in),
            with_wheelbase: -rules::OPERATOR_BEHIND.value,
        });
        let pivot = self.mast.pivot;
        let half_pivot = DVec3::new(doubts.pivot_x.furthest(), 0.0, doubts.pivot_z.furthest());
        let mut ways = Few::default();
        for part in self.parts(doubts, setting) {
            let lifted = matches!(part.id, BodyId::Carriage | BodyId::Forks);
            let aside = if lifted { setting.sideshift.furthest() } else { 0.0 };
            let lowered = if lifted { 0.0 } else { 0.5 * doubts.lowered.furthest() };
            ways.push(Way {
                mass: ends(part.mass),
                from: pivot - part.stowed,
                hung: part.posed + DVec3::Z * (0.5 * (part.rise.lo + part.rise.hi)) - pivot,
                half_hung: DVec3::new(0.0, aside, part.rise.half_width()),
                half_both: half_pivot + DVec3::new(built_in, 0.0, built_in + lowered),
            });
        }
        let mut hung = Few::default();
        for (_, mass, region) in self.put_on(doubts, setting, outfit, load) {
            hung.push(Hung { mass: ends(mass), at: region.at + region.skew() - pivot, half: region.half_edges() });
        }
        let axle = self.axle.as_ref().map(|axle| {
            let m = mass(axle.mass, doubts.axle_mass);
            let half = DVec3::Z * built_in;
            Kept { mass: (-m.hi, -m.lo), at: self.axle_at(), half, with_wheelbase: -1.0 }
        });
        let by_axles = if self.cg_x.is_some() { 1.0 / self.wheelbase } else { 0.0 };
        let service =
            Service { mass: ends(mass(self.service, doubts.service)), places: &rig.whole, with_wheelbase: by_axles };
        Terms { service, axle, kept, ways, hung, pivot, half_pivot, wheelbase: doubts.wheelbase.furthest() }
    }
}
