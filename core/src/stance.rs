//! A truck in one pose, with all that is uncertain about it and everything its mast may do of its own:
//! give forward, play sideways.

use crate::body::{Bodies, Outfit, Placed, Pose, Rig, Setting};
use crate::corner::{Sums, Terms, View};
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
/// the side lines swaying towards that side; the tread at its least, the wheelbase at either end.
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
    /// Sideways, each way.
    sway: f64,
    /// What it may stand on at the least, with the wheelbase at its ends.
    narrowest: Vec<(f64, Support)>,
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
    /// grows with the lift alike. Without a plate the load moment counts as the rated one; beyond
    /// twice the rated one, which no plate covers, the lean grows no more: the formula is for small angles.
    pub fn of(truck: &Truck, doubts: &Doubts, load: Option<&Placed>, setting: &Setting) -> Self {
        let lift = setting.pose.lift;
        let height = |more: f64| ((lift + more) / truck.mast.lift).max(0.0);
        let moment = load.map_or(0.0, |l| l.mass.hi * (truck.face(Outfit::Today) + l.centre.hi.x));
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

/// The corner that was found to be the worst.
struct Found {
    /// Its value: the moment, less what was taken off each kilogram.
    value: f64,
    line: Line,
    /// Which of the fields it was.
    field: usize,
    w: DVec3,
    view: View,
    sums: Sums,
}

impl Found {
    fn moment(&self, w: DVec3) -> f64 {
        self.sums.moment(self.line.from, statics::lever_vector(&self.line, w), &self.view)
    }
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
        let ends = if doubts.wheelbase.is_exact() { vec![0.0] } else { vec![doubts.wheelbase.lo, doubts.wheelbase.hi] };
        Self {
            support: Support::of(truck, matches!(outfit, Outfit::Tested { .. })),
            pose,
            nominal: truck.bodies(doubts, rig, &pose, outfit, load),
            terms: truck.terms(doubts, rig, setting, outfit, load),
            angle: angle.plus(give.lean),
            sway: give.sway,
            narrowest: ends.into_iter().map(|longer| (longer, Support::narrowest(truck, doubts, longer))).collect(),
        }
    }

    fn view(&self, angle: f64, sway: f64, longer: Option<f64>) -> View {
        let to_mast = Pose { lift: 0.0, tilt: angle, lean: 0.0, sway, sideshift: 0.0 }.rotation().transpose();
        View { to_mast, longer }
    }

    /// The sways that a line is tried with: ahead all three, for swaying a tilted mast carries what is off
    /// its middle a little ahead too; to a side, that side's.
    fn sways(&self, line: LineId) -> Vec<f64> {
        match line {
            _ if self.sway <= 0.0 => vec![0.0],
            LineId::Front => vec![0.0, -self.sway, self.sway],
            LineId::Left => vec![-self.sway],
            LineId::Right => vec![self.sway],
        }
    }

    /// Tries all that is shared at its ends, in `fields` fields that `pull` gives for a line, every
    /// kilogram counting `inside` m of what pulls square to the line less; the worst of all.
    fn worst(&self, id: LineId, inside: f64, fields: usize, pull: impl Fn(&Line, usize) -> DVec3) -> Option<Found> {
        let mut worst: Option<Found> = None;
        let bases: &[(f64, Support)] = if id == LineId::Front { &self.narrowest[..1] } else { &self.narrowest };
        let angles = [self.angle.lo, self.angle.hi];
        let angles = if self.angle.is_exact() { &angles[..1] } else { &angles[..] };
        for sway in self.sways(id) {
            let mut turned = [(0.0, View { to_mast: glam::DMat3::IDENTITY, longer: None }); 2];
            for (slot, angle) in turned.iter_mut().zip(angles) {
                *slot = (*angle, self.view(*angle, sway, None));
            }
            let turned = &turned[..angles.len()];
            for (longer, support) in bases {
                let line = support.line(id);
                let longer = (id != LineId::Front).then_some(*longer);
                for k in 0..fields {
                    let w = pull(&line, k);
                    let n = statics::lever_vector(&line, w);
                    let taken = if inside == 0.0 { 0.0 } else { inside * statics::square_pull(&line, w).length() };
                    let at = |view: View| {
                        let sums = self.terms.least(&line, n, taken, &view);
                        let value = sums.moment(line.from, n, &view) - taken * sums.mass;
                        Found { value, line, field: k, w, view, sums }
                    };
                    let mut keep = |found: Found| {
                        if worst.as_ref().is_none_or(|w| found.value < w.value) {
                            worst = Some(found);
                        }
                    };
                    let views = turned.iter().map(|&(angle, view)| (angle, at(View { longer, ..view })));
                    let mut falls_towards_the_middle = true;
                    for (end, (angle, found)) in views.enumerate() {
                        let slope = self.slope(&found, n, angle, sway);
                        falls_towards_the_middle &= if end == 0 { slope < 0.0 } else { slope > 0.0 };
                        keep(found);
                    }
                    if turned.len() == 2 && falls_towards_the_middle {
                        keep(self.dip(n, sway, |angle| at(self.view(angle, sway, longer))));
                    }
                }
            }
        }
        worst
    }

    /// How fast the moment grows with the mast's angle at a corner, N m per rad: d/da of Ry(a)^T n is
    /// -(y x Ry^T n).
    fn slope(&self, found: &Found, n: DVec3, angle: f64, sway: f64) -> f64 {
        let upright = self.view(angle, 0.0, None).to_mast * n;
        let swayed = self.view(0.0, sway, None).to_mast;
        found.sums.hung.dot(swayed * -DVec3::Y.cross(upright))
    }

    /// The least between both ends of the mast's angle, where the moment falls from either towards the
    /// middle: what hangs on the mast reaches furthest level with its pivot.
    fn dip(&self, n: DVec3, sway: f64, at: impl Fn(f64) -> Found) -> Found {
        let (mut lo, mut hi) = (self.angle.lo, self.angle.hi);
        let mut best = at(0.5 * (lo + hi));
        for _ in 0..40 {
            let middle = 0.5 * (lo + hi);
            let found = at(middle);
            if self.slope(&found, n, middle, sway) < 0.0 {
                lo = middle
            } else {
                hi = middle
            }
            if found.value < best.value {
                best = found;
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
            let down = worst.sums.mass * statics::square_pull(&worst.line, worst.w).length();
            let next = if down > 0.0 { worst.moment(worst.w) / down } else { 0.0 };
            if next >= found - 1e-13 {
                break;
            }
            found = next;
        }
        Pair { nominal, worst: found }
    }

    /// The least t at which a field `from + t towards` upsets it at the worst corner.
    fn critical(&self, id: LineId, fields: usize, field: impl Fn(&Line, usize) -> (DVec3, DVec3)) -> Option<f64> {
        statics::walk_to_root(|t| {
            let pull = |line: &Line, k: usize| {
                let (from, towards) = field(line, k);
                from + towards * t
            };
            let Some(worst) = self.worst(id, 0.0, fields, pull) else { return (0.0, 0.0) };
            let (from, towards) = field(&worst.line, worst.field);
            (worst.moment(from), worst.moment(towards))
        })
    }

    /// The slope (a tangent) that it stands about a line, on a platform falling square to it.
    pub fn stood(&self, id: LineId) -> Reach {
        let field = |line: &Line, _: usize| (Field::LEVEL.level, line.outward() * GRAVITY);
        let line = self.support.line(id);
        let (from, towards) = field(&line, 0);
        Reach::new(statics::critical(&self.nominal, &line, from, towards), self.critical(id, 1, field))
    }

    /// The further tilt about a line to the point of tipping, rad.
    pub fn tip_angle(&self, id: LineId, field: &Field, ends: &[DVec3]) -> Reach {
        let line = self.support.line(id);
        let square = |line: &Line, k: usize| {
            let square = statics::square_pull(line, ends[k]);
            (square, square.cross(line.direction()))
        };
        let worst = self.critical(id, ends.len(), square).map(libm::atan);
        Reach::new(statics::tip_angle(&self.nominal, &line, field.total()), worst)
    }

    /// The box that the common centre of truck and load may lie in, m: its least and greatest corner.
    pub fn spread(&self) -> (DVec3, DVec3) {
        let sways = self.sways(LineId::Front);
        let angles = [self.angle.lo, self.angle.hi];
        let views: Vec<View> = sways.iter().flat_map(|s| angles.map(|angle| self.view(angle, *s, None))).collect();
        let least = |direction: DVec3| -self.terms.furthest(-direction, &views);
        let most = |direction: DVec3| self.terms.furthest(direction, &views);
        let ends = |f: &dyn Fn(DVec3) -> f64| DVec3::new(f(DVec3::X), f(DVec3::Y), f(DVec3::Z));
        (ends(&least), ends(&most))
    }
}
