//! A truck in one pose, with everything its mast may do of its own: give forward, play sideways.

use crate::body::{Bodies, Outfit, Placed, Pose, Rig};
use crate::scalar::Span;
use crate::scenario::Truck;
use crate::statics::{self, Corner, Pair};
use crate::support::{Line, LineId, Support};
use glam::DVec3;

/// The bodies of one pose, as stated and at both ends of what the mast gives.
///
/// Each tipping line takes its own worst: the mast leaning as far as it may or not at all, and for
/// the side lines swaying towards that side.
#[derive(Clone, Debug)]
pub struct Stance<'r> {
    /// What it stands on.
    pub support: Support,
    /// The pose as stated.
    pub pose: Pose,
    /// As stated.
    pub nominal: Bodies<'r>,
    /// For the front line: no lean, full lean.
    front: [Bodies<'r>; 2],
    /// For the left line: the same, swaying left.
    left: [Bodies<'r>; 2],
    /// For the right line.
    right: [Bodies<'r>; 2],
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

    /// Of a truck's mast under a load raised to a height.
    ///
    /// Forward lean = give x (load moment / rated load moment) x (lift / full lift); sideways play
    /// grows with the lift alike. Without a plate the load moment counts as the rated one.
    pub fn of(truck: &Truck, load: Option<&Placed>, lift: f64) -> Self {
        let height = lift / truck.mast.lift;
        let moment = load.map_or(0.0, |l| l.mass.hi * (truck.face(Outfit::Today) + l.centre.x + l.spread.x));
        let rated = truck.rated_moment();
        let loaded = if load.is_none() {
            0.0
        } else if rated > 0.0 {
            moment / rated
        } else {
            1.0
        };
        let part = loaded * height;
        let give = truck.mast.give;
        Self {
            lean: Span { lo: part * give.lo, nominal: part * give.nominal, hi: part * give.hi },
            sway: truck.mast.play * height,
        }
    }
}

impl<'r> Stance<'r> {
    /// A truck, as it is today or as it was tested, in a pose (its lean and sway are those of `give`).
    pub fn new(truck: &Truck, rig: &'r Rig, pose: Pose, outfit: Outfit, load: Option<&Placed>, give: Yield) -> Self {
        let bodies = |lean: f64, sway: f64| truck.bodies(rig, &Pose { lean, sway, ..pose }, outfit, load);
        let ends = |sway: f64| [bodies(give.lean.lo, sway), bodies(give.lean.hi, sway)];
        let front = ends(0.0);
        let (left, right) = if give.sway > 0.0 { (ends(-give.sway), ends(give.sway)) } else { (front, front) };
        let pose = Pose { lean: give.lean.nominal, sway: 0.0, ..pose };
        let nominal = truck.bodies(rig, &pose, outfit, load);
        Self { support: Support::of(truck, matches!(outfit, Outfit::Tested { .. })), pose, nominal, front, left, right }
    }

    /// The bodies to hold against a line, at a corner.
    pub fn sets(&self, line: LineId, corner: Corner) -> [&Bodies<'r>; 2] {
        match (corner, line) {
            (Corner::Nominal, _) => [&self.nominal, &self.nominal],
            (Corner::Worst, LineId::Front) => [&self.front[0], &self.front[1]],
            (Corner::Worst, LineId::Left) => [&self.left[0], &self.left[1]],
            (Corner::Worst, LineId::Right) => [&self.right[0], &self.right[1]],
        }
    }

    /// The set of bodies that is worst for a line in a field.
    pub fn worst_set(&self, line: &Line, w: DVec3, corner: Corner) -> &Bodies<'r> {
        let [a, b] = self.sets(line.id, corner);
        let m = |set| statics::moment(set, line, w, corner);
        if m(b) < m(a) { b } else { a }
    }

    /// The restoring moment about a line, N m.
    pub fn moment(&self, line: &Line, w: DVec3) -> Pair {
        let at = |corner| {
            let [a, b] = self.sets(line.id, corner);
            statics::moment(a, line, w, corner).min(statics::moment(b, line, w, corner))
        };
        Pair { nominal: statics::moment(&self.nominal, line, w, Corner::Nominal), worst: at(Corner::Worst) }
    }
}
