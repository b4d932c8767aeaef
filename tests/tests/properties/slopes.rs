//! The slope stood is where the moment vanishes.

use crate::worked;
use proptest::prelude::*;
use standfast_core::field::Field;
use standfast_core::stance::Stance;
use standfast_core::statics::{Corner, STEEPEST, critical};
use standfast_core::step::{Step, StepId};
use standfast_core::support::Line;
use standfast_core::units::GRAVITY;
use standfast_tests::sensible;

/// The least moment that a stance has about a line on a platform of this slope.
fn left(stance: &Stance, line: &Line, slope: f64, corner: Corner) -> f64 {
    let pair = stance.moment(line, Field::platform(line.outward(), slope).total());
    if corner == Corner::Nominal { pair.nominal } else { pair.worst }
}

fn root(stance: &Stance, line: &Line, corner: Corner) -> Option<f64> {
    let sets = if corner == Corner::Nominal { vec![&stance.nominal] } else { stance.sets(line.id) };
    critical(&sets, line, Field::LEVEL.level, line.outward() * GRAVITY, corner)
}

proptest! {
    /// Just inside it the moment is not negative, just outside it is; where there is none, no slope upsets it.
    #[test]
    fn the_slope_stood_is_where_the_moment_vanishes(document in sensible::documents()) {
        let (scenario, balance, placed) = worked(&document);
        for id in StepId::ALL {
            let step = Step::new(&scenario, &balance, &placed, id);
            for line in step.stance.support.lines() {
                for corner in [Corner::Nominal, Corner::Worst] {
                    let left = |slope: f64| left(&step.stance, &line, slope, corner);
                    match root(&step.stance, &line, corner) {
                        Some(t) if t > 0.0 => {
                            prop_assert!(left(t * (1.0 - 1e-7)) >= -1e-6, "{id:?} {:?} {corner:?} {t}", line.id);
                            prop_assert!(left(t * (1.0 + 1e-6) + 1e-7) < 0.0, "{id:?} {:?} {corner:?} {t}", line.id);
                            // And nowhere before it.
                            for k in 0..20 {
                                prop_assert!(left(t * f64::from(k) / 20.0) >= -1e-6);
                            }
                        }
                        Some(_) => prop_assert!(left(0.0) <= 1e-6),
                        None => {
                            for k in 0..40 {
                                prop_assert!(left(STEEPEST * f64::from(k) / 40.0) >= -1e-6);
                            }
                        }
                    }
                }
            }
        }
    }

    /// A test passes just where the slope stood is not less than the slope asked.
    #[test]
    fn a_test_passes_where_the_slope_stood_suffices(document in sensible::documents()) {
        let (scenario, balance, placed) = worked(&document);
        for id in StepId::ALL {
            let step = Step::new(&scenario, &balance, &placed, id);
            for test in &step.tests {
                let reach = step.stood(test.line);
                for (stood, passes) in [(reach.nominal, test.passes()), (reach.worst, test.passes_worst())] {
                    match stood {
                        Some(stood) if (stood - test.asked).abs() > 1e-7 => {
                            prop_assert_eq!(passes, stood > test.asked, "{:?} {:?}", id, test);
                        }
                        Some(_) => {}
                        None => prop_assert!(passes),
                    }
                }
            }
        }
    }
}
