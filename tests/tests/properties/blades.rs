//! The load on the blades against statics written here: forces at the blades' edges, and every corner of what
//! is not known.

use crate::{close, worked};
use glam::{DVec2, DVec3};
use proptest::prelude::*;
use standfast_core::bearing::Bearing;
use standfast_core::body::Pose;
use standfast_core::forks;
use standfast_core::rules;
use standfast_core::scalar::Span;
use standfast_core::scenario::Scenario;
use standfast_core::seat::{Over, Seat};
use standfast_core::stance::Yield;
use standfast_core::step::StepId;
use standfast_core::units::GRAVITY;
use standfast_tests::sensible;

proptest! {
    /// The two forks carry the load between them: their parts add up while its centre stands between the
    /// middles of what lies on them, and the moment of what they carry is the load's own.
    #[test]
    fn forks_carry_the_load_between_them(document in sensible::documents()) {
        let (scenario, _, placed) = worked(&document);
        let bearing = Bearing::of(&scenario);
        let found = forks::check(&scenario, &placed, &bearing);
        let [left, right] = found.arms;
        let mass = placed.mass.nominal;
        let (long, heavy) = scenario.truck.forks.extension.unwrap_or_default();
        if let [Some(l), Some(r)] = bearing.stated.strips.each_ref().map(|strip| middle_across(strip)) {
            let (apart, aside) = (l - r, placed.centre.at.y - 0.5 * (l + r));
            prop_assert!(close(left.part.get() + right.part.get(), 1.0, 1.0));
            if aside.abs() <= 0.5 * apart {
                prop_assert!(close(left.carries.get() + right.carries.get(), mass + heavy, mass));
                let moment = 0.5 * apart * (left.carries.get() - right.carries.get());
                prop_assert!(close(moment, mass * aside, mass), "{moment} {mass} {aside}");
            }
            let heel = left.moment.get() + right.moment.get();
            let expected = GRAVITY * (mass * placed.centre.at.x + heavy * 0.5 * long);
            prop_assert!(close(heel, expected, 1e5), "{heel} {expected}");
        }
        for arm in found.arms {
            prop_assert!(arm.part_worst >= arm.part && arm.moment_worst >= arm.moment && arm.carries_worst >= arm.carries);
        }
    }

    /// Standing in a tilt of t the load asks for tan t of friction, braking for what carries it on besides; its
    /// line of action meets the blades where the field through its centre does.
    #[test]
    fn a_load_asks_for_what_the_field_pulls(document in sensible::documents()) {
        let (scenario, _, placed) = worked(&document);
        for id in StepId::ALL {
            let pose = id.pose(&scenario);
            let Some(seat) = Seat::of(&scenario, &placed, &Bearing::of(&scenario), id) else { continue };
            let lean = Yield::of(&scenario.truck, &scenario.doubts, Some(&placed), &id.setting(&scenario)).lean.nominal;
            let tilt = pose.tilt + lean;
            for case in &seat.cases {
                // Along the blades, across and into them, by hand.
                let (sin, cos) = libm::sincos(tilt);
                let pull = id.field(&scenario).total();
                let (along, into) = (pull.x * cos - pull.z * sin, -pull.x * sin - pull.z * cos);
                // Close to the face it leans on it.
                let held = scenario.lift.heel_gap.nominal <= rules::HEEL_LEANS.value;
                let along = if held { along.max(0.0) } else { along };
                let asked = libm::hypot(along, pull.y) / into;
                prop_assert!(close(case.asked.nominal, asked, 1.0), "{id:?} {case:?} {tilt}");
                prop_assert!(case.asked.worst >= case.asked.nominal - 1e-12);
                prop_assert!(case.topple.iter().all(|t| t.margin.worst <= t.margin.nominal + 1e-12));
                prop_assert!(case.friction.lo <= case.friction.nominal);
                // The tightest margin as stated is that of the edges as stated, whichever way they are counted.
                let stated = Bearing::of(&scenario).stated;
                let across = Pose { lean, ..pose }.rotation().transpose() * pull;
                let fall = DVec2::new(if held { across.x.max(0.0) } else { across.x }, across.y) / -across.z;
                let at = scenario.load.centre.at;
                let bob = stated.by + at.truncate() + fall * at.z;
                let edges = stated.edges.iter().filter(|(over, ..)| !held || *over != Over::Heel);
                let tightest = edges.map(|(_, n, out)| out - n.dot(bob)).fold(f64::INFINITY, f64::min);
                let found = case.topple.iter().map(|t| t.margin.nominal).fold(f64::INFINITY, f64::min);
                prop_assert!(tightest.is_infinite() || close(found, tightest, 1.0), "{id:?} {found} {tightest}");
            }
            // The bob lies where the pull through the load's centre points, in the pose.
            let stated = Pose { lean, ..pose };
            let face = DVec3::new(truck_face(&scenario), pose.sideshift, pose.lift);
            let centre = stated.place(scenario.truck.mast.pivot, face + placed.centre.at);
            let pull = id.field(&scenario).total();
            let off = (seat.bob - centre).cross(pull.normalize()).length();
            prop_assert!(off < 1e-9, "{} {centre}: {off}", seat.bob);
            prop_assert!(seat.bob.z <= centre.z + 1e-9 || placed.centre.at.z < 0.0);
        }
    }

    /// Whatever of the ranges is true, the load's line of action passes no nearer to the hull of what carries it
    /// than the worst says: tried with the corners of the centre's box and of its place on the blades.
    #[test]
    fn no_corner_beats_the_worst_margin(document in sensible::documents()) {
        let (scenario, _, placed) = worked(&document);
        for id in StepId::ALL {
            let pose = id.pose(&scenario);
            let Some(seat) = Seat::of(&scenario, &placed, &Bearing::of(&scenario), id) else { continue };
            let setting = id.setting(&scenario);
            let give = Yield::of(&scenario.truck, &scenario.doubts, Some(&placed), &setting);
            let (_, pulls) = id.fields(&scenario);
            for case in &seat.cases {
                let least = case.topple.iter().map(|t| t.margin.worst).fold(f64::INFINITY, f64::min);
                // Beyond a slanted edge it is further beyond the furthest corner: only inside do they compare.
                if least < 0.0 {
                    continue;
                }
                for (by, corners) in places_on_the_blades(&scenario) {
                    // Out over the tips, and to either side, of all that carries it.
                    let far = |n: DVec2| corners.iter().map(|p| p.dot(n)).fold(f64::NEG_INFINITY, f64::max);
                    for (bits, pull) in (0..64_u32).flat_map(|bits| pulls.iter().map(move |pull| (bits, *pull))) {
                        let pick = |bit: u32, lo: f64, hi: f64| if bits & (1 << bit) == 0 { lo } else { hi };
                        let lean = pick(0, give.lean.lo, give.lean.hi);
                        let tilt = pose.tilt + pick(1, setting.tilt.lo, setting.tilt.hi);
                        let sway = pick(2, -give.sway, give.sway);
                        let w = Pose { tilt, lean, sway, ..pose }.rotation().transpose() * pull;
                        let c = &scenario.load.centre;
                        let own = DVec3::new(pick(3, c.lo.x, c.hi.x), pick(4, c.lo.y, c.hi.y), pick(5, c.lo.z, c.hi.z));
                        let at = own + by.extend(0.0);
                        let bob = (at - w * (at.z / w.z)).truncate();
                        for n in [DVec2::X, DVec2::Y, DVec2::NEG_Y] {
                            let inside = far(n) - bob.dot(n);
                            prop_assert!(inside >= least - 1e-6, "{id:?} {n} {by} {bits:b}: {inside} {least}");
                        }
                    }
                }
            }
        }
    }
}

/// Both ends of heel gap and offset, on blades as long and as far apart as stated and at their least: how far
/// the load is moved, and the corners of what carries it.
fn places_on_the_blades(scenario: &Scenario) -> Vec<(DVec2, Vec<DVec2>)> {
    let (gap, offset, doubts) = (scenario.lift.heel_gap, scenario.lift.offset, &scenario.doubts);
    let place = |bits: u32| {
        let pick = |bit: u32, a: f64, b: f64| if bits & (1 << bit) == 0 { a } else { b };
        let by = DVec2::new(pick(0, gap.lo, gap.hi), pick(1, offset.lo, offset.hi));
        let mut there = scenario.clone();
        (there.lift.heel_gap, there.lift.offset) = (Span::exact(by.x), Span::exact(by.y));
        let forks = &mut there.truck.forks;
        forks.spread += pick(2, 0.0, doubts.fork_spread.lo);
        match &mut forks.extension {
            Some((length, _)) => *length += pick(3, 0.0, doubts.extension.lo),
            None => forks.length += pick(3, 0.0, doubts.fork_length.lo),
        }
        (by, Bearing::of(&there).stated.strips.concat())
    };
    (0..16).map(place).filter(|(_, corners)| !corners.is_empty()).collect()
}

fn middle_across(strip: &[DVec2]) -> Option<f64> {
    let lo = strip.iter().map(|p| p.y).min_by(f64::total_cmp)?;
    let hi = strip.iter().map(|p| p.y).max_by(f64::total_cmp)?;
    Some(0.5 * (lo + hi))
}

fn truck_face(scenario: &Scenario) -> f64 {
    scenario.truck.face(standfast_core::body::Outfit::Today)
}
