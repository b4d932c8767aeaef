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
    /// For the front line: least lean, full lean, swaying either way or not at all.
    front: Vec<Bodies<'r>>,
    /// For the left line: the same, swaying left.
    left: Vec<Bodies<'r>>,
    /// For the right line.
    right: Vec<Bodies<'r>>,
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
    /// grows with the lift alike. Without a plate the load moment counts as the rated one; beyond
    /// twice the rated one, which no plate covers, the lean grows no more: the formula is for small angles.
    pub fn of(truck: &Truck, load: Option<&Placed>, lift: f64) -> Self {
        let height = lift / truck.mast.lift;
        let moment = load.map_or(0.0, |l| l.mass.hi * (truck.face(Outfit::Today) + l.centre.hi.x));
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
        let ends = |sway: f64| vec![bodies(give.lean.lo, sway), bodies(give.lean.hi, sway)];
        let mut front = ends(0.0);
        let (left, right) =
            if give.sway > 0.0 { (ends(-give.sway), ends(give.sway)) } else { (front.clone(), front.clone()) };
        // Swaying a tilted mast carries what is off its middle a little ahead too.
        if give.sway > 0.0 {
            front.extend(left.iter().chain(&right).cloned());
        }
        let pose = Pose { lean: give.lean.nominal, sway: 0.0, ..pose };
        let nominal = truck.bodies(rig, &pose, outfit, load);
        Self { support: Support::of(truck, matches!(outfit, Outfit::Tested { .. })), pose, nominal, front, left, right }
    }

    /// The bodies to hold against a line at the worst corner: all ends of what the mast may do.
    pub fn sets(&self, line: LineId) -> Vec<&Bodies<'r>> {
        self.ends(line).iter().collect()
    }

    fn ends(&self, line: LineId) -> &[Bodies<'r>] {
        match line {
            LineId::Front => &self.front,
            LineId::Left => &self.left,
            LineId::Right => &self.right,
        }
    }

    /// The set of bodies that is worst for a line in a field, and the moment it leaves, N m.
    pub fn worst(&self, line: &Line, w: DVec3) -> (&Bodies<'r>, f64) {
        let m = |set| (set, statics::moment(set, line, w, Corner::Worst));
        let all = self.ends(line.id).iter().map(m);
        all.reduce(|a, b| if b.1 < a.1 { b } else { a }).unwrap_or((&self.nominal, f64::MIN))
    }

    /// The restoring moment about a line, N m.
    pub fn moment(&self, line: &Line, w: DVec3) -> Pair {
        Pair { nominal: statics::moment(&self.nominal, line, w, Corner::Nominal), worst: self.worst(line, w).1 }
    }
}
