//! A truck in one pose, with all that is uncertain about it and everything its mast may do of its own:
//! give forward, play sideways.

use crate::body::{Bodies, Outfit, Placed, Pose, Rig, Setting, turned};
use crate::corner::{Few, Sums, Terms, View};
use crate::doubt::Doubts;
use crate::field::Field;
use crate::scalar::Span;
use crate::scenario::Truck;
use crate::statics::{self, Pair, Reach};
use crate::support::{Line, LineId, Support};
use crate::units::GRAVITY;
use glam::DVec3;

/// The bodies of one pose as stated, and all they may be.
///
/// Each tipping line takes its own worst: the mast leaning as far as it may or not at all, and for
/// the side lines swaying towards that side; the tread at its least (no wider one was ever found worse), the
/// wheelbase and a pivot's height at either end.
#[derive(Clone, Debug)]
pub struct Stance<'r> {
    /// What it stands on, as stated.
    pub support: Support,
    /// The pose as stated.
    pub pose: Pose,
    /// As stated.
    pub nominal: Bodies,
    /// All it may be.
    terms: Terms<'r>,
    /// Tilt and lean together.
    angle: Span,
    /// Not swaying, swaying to the left, to the right; or not swaying alone.
    sways: Few<Swaying, 3>,
    /// What it may stand on at the least, with the wheelbase at its ends.
    narrowest: Few<Narrowest, 2>,
    /// How much higher its pivot may be.
    higher: f64,
}

/// What a mast may do of its own in a pose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Yield {
    /// Forward lean, rad.
    pub lean: Span,
    /// Sideways, each way, rad.
    pub sway: f64,
}

impl Yield {
    /// A stiff mast: as platform tests are set up, its deflection tilted out.
    pub const NONE: Self = Self { lean: Span::exact(0.0), sway: 0.0 };

    /// Of a truck's mast under a load in a setting.
    ///
    /// Forward lean = give x (load moment / rated load moment) x (lift / full lift); sideways play
    /// grows with the lift alike. Without a plate the load moment counts as the rated one.
    pub fn of(truck: &Truck, doubts: &Doubts, load: Option<&Placed>, setting: &Setting) -> Self {
        let lift = setting.pose.lift;
        let height = |more: f64| ((lift + more) / truck.mast.lift).max(0.0);
        let further = doubts.load_distance.hi + truck.attachment.as_ref().map_or(0.0, |_| doubts.lost_load.hi);
        let moment = load.map_or(0.0, |l| l.mass.hi * (truck.face(Outfit::Today) + further + l.centre.hi.x));
        let rated = truck.rated_moment();
        let loaded = if load.is_none() {
            0.0
        } else if rated > 0.0 {
            moment / rated
        } else {
            1.0
        };
        let give = truck.mast.give;
        let (least, stated, most) = (height(setting.lift.lo), height(0.0), height(setting.lift.hi));
        Self {
            lean: Span {
                lo: loaded * least * give.lo,
                nominal: loaded * stated * give.nominal,
                hi: loaded * most * give.hi,
            },
            sway: (truck.mast.play + doubts.play.hi) * most,
        }
    }
}

/// What a truck may stand on at the least, its wheelbase longer by so much, m.
#[derive(Clone, Copy, Debug, Default)]
struct Narrowest {
    longer: f64,
    support: Support,
}

/// The mast swaying so far, at both ends of its angle.
#[derive(Clone, Copy, Debug, Default)]
struct Swaying {
    sway: f64,
    ends: [View; 2],
}

/// The corner that was found to be the worst.
#[derive(Clone, Copy)]
struct Found {
    /// Its value: the moment, less what was taken off each kilogram.
    value: f64,
    line: Line,
    /// Which of the fields it was.
    field: usize,
    w: DVec3,
    n: DVec3,
    /// What was taken off each kilogram.
    taken: f64,
    view: View,
    /// How far the mast sways, and at which end of its angle it stands.
    sway: f64,
    end: usize,
}

impl Found {
    /// The moment at that corner in another field.
    fn moment(&self, sums: &Sums, w: DVec3) -> f64 {
        sums.moment(self.line.from, statics::lever_vector(&self.line, w), &self.view)
    }
}

/// How far a pivot may stand above the lowest that it may: as far above what is stated as below it.
fn higher(truck: &Truck) -> f64 {
    truck.axle.as_ref().map_or(0.0, |a| a.pivot_high.max(2.0 * a.pivot - a.pivot_low) - a.pivot_low)
}

/// Tilt and lean by `angle` about +y after a sway about +x, as [`Pose::rotation`] has it.
fn view(angle: f64, sway: f64) -> View {
    seen(libm::sincos(angle), libm::sincos(sway))
}

/// The same for the sines and cosines of both.
fn seen(angle: (f64, f64), sway: (f64, f64)) -> View {
    let to_mast = turned(angle, sway).transpose();
    View { to_mast, axis: to_mast * DVec3::Y, longer: None }
}

impl<'r> Stance<'r> {
    /// A truck, as it is today or as it was tested, in a setting (its lean and sway are those of `give`).
    pub fn new(
        truck: &Truck,
        doubts: &Doubts,
        rig: &'r Rig,
        setting: &Setting,
        outfit: Outfit,
        load: Option<&Placed>,
        give: Yield,
    ) -> Self {
        let pose = Pose { lean: give.lean.nominal, sway: 0.0, ..setting.pose };
        let angle = Span { nominal: pose.tilt, lo: pose.tilt + setting.tilt.lo, hi: pose.tilt + setting.tilt.hi };
        let angle = angle.plus(give.lean);
        let ends = [angle.lo, angle.hi].map(libm::sincos);
        let (mut sways, (s, c)) = (Few::default(), libm::sincos(give.sway));
        let all = [(0.0, (0.0, 1.0)), (-give.sway, (-s, c)), (give.sway, (s, c))];
        for (sway, about_x) in all.into_iter().take(if give.sway > 0.0 { 3 } else { 1 }) {
            sways.push(Swaying { sway, ends: ends.map(|end| seen(end, about_x)) });
        }
        let mut narrowest = Few::default();
        let wheelbase = doubts.wheelbase;
        for longer in [wheelbase.lo, wheelbase.hi].into_iter().take(if wheelbase.is_exact() { 1 } else { 2 }) {
            narrowest.push(Narrowest { longer, support: Support::narrowest(truck, doubts, longer) });
        }
        Self {
            support: Support::of(truck, matches!(outfit, Outfit::Tested { .. })),
            pose,
            nominal: truck.bodies(doubts, rig, &pose, outfit, load),
            terms: truck.terms(doubts, rig, setting, outfit, load),
            angle,
            sways,
            higher: higher(truck),
            narrowest,
        }
    }

    /// The sways that a line is tried with: ahead all three, for swaying a tilted mast carries what is off
    /// its middle a little ahead too; to a side, that side's.
    fn sways(&self, line: LineId) -> &[Swaying] {
        let all = self.sways.as_slice();
        match line {
            _ if all.len() < 3 => all,
            LineId::Front => all,
            LineId::Left => &all[1..2],
            LineId::Right => &all[2..],
        }
    }

    /// Tries all that is shared at its ends, in `fields` fields that `pull` gives for a line, every
    /// kilogram counting `inside` m of what pulls square to the line less; the worst of all.
    fn worst(&self, id: LineId, inside: f64, fields: usize, pull: impl Fn(&Line, usize) -> DVec3) -> Option<Found> {
        let front = id == LineId::Front;
        let bases = self.narrowest.as_slice();
        let bases = if front { &bases[..1] } else { bases };
        let ends = if self.angle.is_exact() { 1 } else { 2 };
        let taken = |line: &Line, w: DVec3| {
            if inside == 0.0 { 0.0 } else { inside * statics::square_pull(line, w).length() }
        };
        let mut worst: Option<Found> = None;
        for Narrowest { longer, support } in bases {
            let line = support.line(id);
            let longer = (!front).then_some(*longer);
            for field in 0..fields {
                let w = pull(&line, field);
                let n = statics::lever_vector(&line, w);
                let taken = taken(&line, w);
                let truck = self.terms.least_of_truck(&line, n, taken, longer);
                for Swaying { sway, ends: both } in self.sways(id) {
                    for (end, view) in both[..ends].iter().enumerate() {
                        let view = View { longer, ..*view };
                        let value = truck + self.terms.least_of_mast(&line, n, taken, &view);
                        if worst.as_ref().is_none_or(|w| value < w.value) {
                            worst = Some(Found { value, line, field, w, n, taken, view, sway: *sway, end });
                        }
                    }
                }
            }
        }
        let worst = worst.map(|worst| if front { self.swayed(worst) } else { self.raised(worst, fields, taken, pull) });
        worst.map(|worst| if ends == 2 { self.dipped(worst) } else { worst })
    }

    /// The same with the mast swaying less than it may, where that is worse: what hangs off its middle rises a
    /// hair before it falls. With q the lever vector in the tilted mast the moment is A cos s + B sin s and
    /// what does not change.
    fn swayed(&self, worst: Found) -> Found {
        let angle = if worst.end == 0 { self.angle.lo } else { self.angle.hi };
        let q = view(angle, 0.0).to_mast * worst.n;
        let there = |sway: f64| View { longer: worst.view.longer, ..view(angle, sway) };
        // Towards either side, with what is off the middle where that side has it.
        self.sways.as_slice()[1..].iter().fold(worst, |best, Swaying { sway: most, .. }| {
            let hung = self.terms.hung(&worst.line, worst.n, worst.taken, &there(*most));
            let (a, b) = (hung.y * q.y + hung.z * q.z, hung.y * q.z - hung.z * q.y);
            let sway = libm::atan2(-b, -a);
            if sway.abs() >= most.abs() {
                return best;
            }
            let view = there(sway);
            let value = self.terms.least(&worst.line, worst.n, worst.taken, &view);
            if value < best.value { Found { value, view, sway, ..worst } } else { best }
        })
    }

    /// The same with the pivot at its highest, where that is worse: a steeper line passes nearer to what hangs
    /// over it.
    fn raised(
        &self,
        worst: Found,
        fields: usize,
        taken: impl Fn(&Line, DVec3) -> f64,
        pull: impl Fn(&Line, usize) -> DVec3,
    ) -> Found {
        let mut best = worst;
        for Narrowest { longer, support } in self.narrowest.as_slice().iter().filter(|_| self.higher > 0.0) {
            let line = support.raised(self.higher).line(worst.line.id);
            let view = View { longer: Some(*longer), ..worst.view };
            for field in 0..fields {
                let w = pull(&line, field);
                let (n, taken) = (statics::lever_vector(&line, w), taken(&line, w));
                let value = self.terms.least(&line, n, taken, &view);
                if value < best.value {
                    best = Found { value, line, field, w, n, taken, view, ..worst };
                }
            }
        }
        best
    }

    /// How fast the moment at a corner grows with the mast's angle, N m per rad.
    fn slope(&self, found: &Found, view: &View) -> f64 {
        let hung = self.terms.hung(&found.line, found.n, found.taken, view);
        hung.dot(-view.axis.cross(view.to_mast * found.n))
    }

    /// The least between both ends of the mast's angle, where the moment falls from either towards the
    /// middle: what hangs on the mast reaches furthest level with its pivot. Anywhere else it lies at an end.
    fn dipped(&self, worst: Found) -> Found {
        let at_end = self.slope(&worst, &worst.view);
        if (worst.end == 0) == (at_end >= 0.0) {
            return worst;
        }
        let (mut lo, mut hi) = (self.angle.lo, self.angle.hi);
        let mut best = worst;
        for _ in 0..40 {
            let middle = 0.5 * (lo + hi);
            let view = View { longer: worst.view.longer, ..view(middle, worst.sway) };
            if self.slope(&worst, &view) < 0.0 {
                lo = middle
            } else {
                hi = middle
            }
            let value = self.terms.least(&worst.line, worst.n, worst.taken, &view);
            if value < best.value {
                best = Found { value, view, ..worst };
            }
        }
        best
    }

    /// The restoring moment about a line in a field, N m: as stated, and at the worst over `ends` of it.
    pub fn moment(&self, id: LineId, field: &Field, ends: &[DVec3]) -> Pair {
        let nominal = statics::moment(&self.nominal, &self.support.line(id), field.total());
        let worst = self.worst(id, 0.0, ends.len(), |_, k| ends[k]);
        Pair { nominal, worst: worst.map_or(nominal, |f| f.value.min(nominal)) }
    }

    /// The restoring moment about a line on a platform that falls square to it, N m.
    pub fn on_platform(&self, id: LineId, slope: f64) -> Pair {
        let line = self.support.line(id);
        let pull = |line: &Line, _: usize| Field::platform(line.outward(), slope).total();
        let nominal = statics::moment(&self.nominal, &line, pull(&line, 0));
        let worst = self.worst(id, 0.0, 1, pull);
        Pair { nominal, worst: worst.map_or(nominal, |f| f.value.min(nominal)) }
    }

    /// How far inside a line the line of action passes, m; at the worst the least over every corner: a
    /// fraction of two sums, so every lever is taken shorter by the least distance so far until that no
    /// longer finds a lesser one (Dinkelbach's iteration).
    pub fn distance(&self, id: LineId, field: &Field, ends: &[DVec3]) -> Pair {
        let nominal = statics::distance(&self.nominal, &self.support.line(id), field.total());
        let mut found = nominal;
        for _ in 0..60 {
            let Some(worst) = self.worst(id, found, ends.len(), |_, k| ends[k]) else { break };
            // Nothing is nearer than what was taken off.
            if worst.value >= 0.0 {
                break;
            }
            let sums = self.terms.corner(&worst.line, worst.n, worst.taken, &worst.view);
            let down = sums.mass * statics::square_pull(&worst.line, worst.w).length();
            let next = if down > 0.0 { worst.moment(&sums, worst.w) / down } else { 0.0 };
            if next >= found - 1e-13 {
                break;
            }
            found = next;
        }
        Pair { nominal, worst: found }
    }

    /// The least t at which a field `from + t towards` upsets it at the worst corner.
    fn critical(
        &self,
        id: LineId,
        fields: usize,
        field: impl Fn(&Line, usize) -> (DVec3, DVec3),
        stated: Option<f64>,
    ) -> Option<f64> {
        statics::walk_to_root(stated, |t| {
            let pull = |line: &Line, k: usize| {
                let (from, towards) = field(line, k);
                from + towards * t
            };
            let Some(worst) = self.worst(id, 0.0, fields, pull) else { return (0.0, 0.0) };
            let (from, towards) = field(&worst.line, worst.field);
            let sums = self.terms.corner(&worst.line, worst.n, 0.0, &worst.view);
            (worst.moment(&sums, from), worst.moment(&sums, towards))
        })
    }

    /// The slope (a tangent) that it stands about a line, on a platform falling square to it.
    pub fn stood(&self, id: LineId) -> Reach {
        let field = |line: &Line, _: usize| (Field::LEVEL.level, line.outward() * GRAVITY);
        let line = self.support.line(id);
        let (from, towards) = field(&line, 0);
        let stated = statics::critical(&self.nominal, &line, from, towards);
        Reach::new(stated, self.critical(id, 1, field, stated))
    }

    /// The further tilt about a line to the point of tipping, rad.
    pub fn tip_angle(&self, id: LineId, field: &Field, ends: &[DVec3]) -> Reach {
        let line = self.support.line(id);
        let square = |line: &Line, k: usize| {
            let square = statics::square_pull(line, ends[k]);
            (square, square.cross(line.direction()))
        };
        let stated = statics::tip_angle(&self.nominal, &line, field.total());
        let worst = self.critical(id, ends.len(), square, stated.map(libm::tan)).map(libm::atan);
        Reach::new(stated, worst)
    }

    /// The box that the common centre of truck and load may lie in, m: its least and greatest corner.
    pub fn spread(&self) -> (DVec3, DVec3) {
        let views: Vec<View> = self.sways.as_slice().iter().flat_map(|s| s.ends).collect();
        let (_, stated) = self.nominal.centre(false);
        let furthest = |direction: DVec3| self.terms.furthest(direction, direction.dot(stated), &views);
        let ends = |sign: f64| DVec3::from_array([DVec3::X, DVec3::Y, DVec3::Z].map(|d| sign * furthest(d * sign)));
        (ends(-1.0), ends(1.0))
    }
}
