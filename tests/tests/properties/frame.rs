//! Moments do not depend on where the frame stands; and what a moment is.

use crate::{close, counts, fields, places, steps, worked};
use glam::{DMat3, DVec3};
use proptest::prelude::*;
use standfast_core::body::Bodies;
use standfast_core::field::Field;
use standfast_core::statics::{self, critical, distance, moment};
use standfast_core::step::Step;
use standfast_core::support::{Line, LineId, Support};
use standfast_core::units::GRAVITY;
use standfast_tests::sensible;

/// The bodies that count for a line, as points that can be moved.
fn loose(bodies: &Bodies, line: &Line) -> Vec<(f64, DVec3)> {
    bodies.as_slice().iter().filter(|b| counts(b, line)).map(|b| (b.mass.nominal, b.at)).collect()
}

fn moved(points: &[(f64, DVec3)], by: impl Fn(DVec3) -> DVec3) -> Bodies {
    Bodies::points(&points.iter().map(|&(m, at)| (m, by(at))).collect::<Vec<_>>())
}

proptest! {
    /// Moving bodies and line together changes no moment, no distance and no tip angle; turning them
    /// together with the field does not either, about z or about anything.
    #[test]
    fn moving_the_frame_changes_nothing(
        document in sensible::documents(), id in steps(), field in fields(), shift in places(),
        turn in -3.2..3.2, axis in places(),
    ) {
        let (scenario, balance, placed) = worked(&document);
        let step = Step::new(&scenario, &balance, &placed, id);
        let w = field.total();
        let about_z = DMat3::from_rotation_z(turn);
        let about_any = axis.try_normalize().map_or(DMat3::IDENTITY, |u| DMat3::from_axis_angle(u, turn));
        for line in step.stance.support.lines() {
            let points = loose(&step.stance.nominal, &line);
            let scale = points.iter().map(|(m, at)| m * (at.length() + 2.0)).sum::<f64>() * w.length();
            let before = moment(&step.stance.nominal, &line, w);
            let inside = distance(&step.stance.nominal, &line, w);
            let angle = statics::tip_angle(&step.stance.nominal, &line, w);
            for turned in [DMat3::IDENTITY, about_z, about_any] {
                let by = |r: DVec3| turned * r + shift;
                let bodies = moved(&points, by);
                let line = Line::new(line.id, by(line.from), by(line.to), false);
                let w = turned * w;
                prop_assert!(close(moment(&bodies, &line, w), before, scale));
                prop_assert!(close(distance(&bodies, &line, w), inside, 5.0));
                let after = statics::tip_angle(&bodies, &line, w);
                let both = angle.unwrap_or(2.0) - after.unwrap_or(2.0);
                prop_assert!(both.abs() < 1e-6, "{:?}: {angle:?} {after:?}", line.id);
            }
        }
    }

    /// About a line on level ground a point's moment is mass x g x its distance in plan, positive
    /// inside, whatever its height.
    #[test]
    fn a_moment_is_mass_times_distance(
        mass in 1.0..5000.0, at in places(), from in places(), turn in -3.2..3.2_f64,
    ) {
        let (sin, cos) = libm::sincos(turn);
        let (u, inward) = (DVec3::new(cos, sin, 0.0), DVec3::new(-sin, cos, 0.0));
        let from = from.with_z(0.0);
        let line = Line::new(LineId::Front, from, from + 1.7 * u, false);
        let (bodies, w) = (Bodies::points(&[(mass, at)]), Field::LEVEL.total());
        let inside = (at - from).dot(inward);
        let found = moment(&bodies, &line, w);
        prop_assert!(close(found, mass * GRAVITY * inside, mass * GRAVITY));
        prop_assert!(close(distance(&bodies, &line, w), inside, 5.0));
        // And by its definition, for any field: -((r - p0) x F) . u.
        let w = Field::new(0.1, -0.2, 1.0, -2.0).total();
        let by_definition = -(at - from).cross(mass * w).dot(u);
        prop_assert!(close(moment(&bodies, &line, w), by_definition, mass * 50.0));
    }

    /// A mass set down inside the triangle takes no moment from any line, and so does not lower the
    /// slope at which any line is crossed below what the mass alone would stand. Of the line that it
    /// stands further inside of than the rest does, the distance does not fall; there is always one
    /// such line, as the distances from three lines on the ground, each times its line's length, add
    /// up to twice the triangle for every point inside.
    #[test]
    fn a_mass_inside_takes_nothing_from_the_line_it_is_furthest_from(
        document in sensible::documents(), id in steps(), extra in 1.0..2000.0,
        (p, q) in (0.0..1.0, 0.0..1.0), height in 0.0..3.0,
    ) {
        let (scenario, balance, placed) = worked(&document);
        let step = Step::new(&scenario, &balance, &placed, id);
        let ground = Support { steer: step.stance.support.steer.with_z(0.0), pivoting: false, ..step.stance.support };
        let (p, q): (f64, f64) = if p + q > 1.0 { (1.0 - p, 1.0 - q) } else { (p, q) };
        let at = ground.left + p * (ground.right - ground.left) + q * (ground.steer - ground.left) + DVec3::Z * height;
        let w = Field::LEVEL.total();
        let points = loose(&step.stance.nominal, &ground.line(LineId::Front));
        let with: Vec<_> = points.iter().copied().chain([(extra, at)]).collect();
        // Eleven bodies at most, and this one.
        let (before, after) = (Bodies::points(&points), Bodies::points(&with));
        prop_assert_eq!(after.as_slice().len(), points.len() + 1);
        let alone = Bodies::points(&[(extra, at)]);
        let margin = |bodies: &Bodies, line: &Line| distance(bodies, line, w);
        let mut gain: f64 = f64::MIN;
        for line in ground.lines() {
            let m = |bodies: &Bodies| moment(bodies, &line, w);
            prop_assert!(m(&after) >= m(&before) - 1e-6);
            if margin(&alone, &line) >= margin(&before, &line) {
                prop_assert!(margin(&after, &line) >= margin(&before, &line) - 1e-9);
            }
            let downhill = line.outward() * GRAVITY;
            let stood = |bodies: &Bodies| critical(bodies, &line, w, downhill).unwrap_or(20.0);
            prop_assert!(stood(&after) >= stood(&before).min(stood(&alone)) - 1e-9);
            gain = gain.max(margin(&after, &line) - margin(&before, &line));
        }
        prop_assert!(gain >= -1e-9, "no line gained: {gain}");
    }
}
