//! Wheel loads and tipping lines are two ways to say one thing.

use crate::{close, steps, worked};
use proptest::prelude::*;
use standfast_core::field::Field;
use standfast_core::statics::moment;
use standfast_core::step::Step;
use standfast_core::support::LineId;
use standfast_core::wheels::loads;
use standfast_tests::sensible;

proptest! {
    /// They add up to what presses on the ground, and the steer wheels' load is the moment about the
    /// front line over the wheelbase, in any field.
    #[test]
    fn loads_add_up(document in sensible::documents(), id in steps(), field in crate::fields()) {
        let (scenario, balance, placed) = worked(&document);
        let stance = Step::new(&scenario, &balance, &placed, id).stance;
        let w = field.total();
        let found = loads(&stance.support, &stance.nominal, w);
        let (mass, _) = stance.nominal.centre(false);
        prop_assert!(close(found.left + found.right + found.steer, -mass * w.z, mass * 10.0));
        let front = moment(&stance.nominal, &stance.support.line(LineId::Front), w);
        prop_assert!(close(found.steer * scenario.truck.wheelbase, front, mass * 50.0));
    }

    /// Under a sideways pull a front wheel goes light just where the opposite line is crossed; on three
    /// wheels its load is that line's moment over its distance from it.
    #[test]
    fn a_front_wheel_is_light_where_the_other_sides_line_is_crossed(
        document in sensible::documents(), id in steps(), fall in -0.6..0.6, bend in -5.0..5.0,
    ) {
        let (scenario, balance, placed) = worked(&document);
        let stance = Step::new(&scenario, &balance, &placed, id).stance;
        let w = Field::new(0.0, fall, 0.0, bend).total();
        let found = loads(&stance.support, &stance.nominal, w);
        let (mass, _) = stance.nominal.centre(false);
        for (line, wheel, at) in [
            (LineId::Left, found.right, stance.support.right),
            (LineId::Right, found.left, stance.support.left),
        ] {
            let line = stance.support.line(line);
            let m = moment(&stance.nominal, &line, w);
            if m.abs() > 1e-6 * mass {
                prop_assert_eq!(wheel > 0.0, m > 0.0, "{:?}: {} N, {} N m", line.id, wheel, m);
            }
            if !stance.support.pivoting {
                let away = -(at - line.from).dot(line.outward());
                prop_assert!(close(wheel * away, m, mass * 50.0), "{:?}: {} N, {} N m", line.id, wheel, m);
            }
        }
    }
}
