//! The slope stood is where the moment vanishes.

use crate::worked;
use proptest::prelude::*;
use standfast_core::statics::STEEPEST;
use standfast_core::step::{Step, StepId};
use standfast_core::support::LineId;
use standfast_tests::sensible;

proptest! {
    /// Just inside it the moment is not negative, just outside it is; where there is none, no slope upsets it.
    #[test]
    fn the_slope_stood_is_where_the_moment_vanishes(document in sensible::documents()) {
        let (scenario, balance, placed) = worked(&document);
        for id in StepId::ALL {
            let stance = Step::new(&scenario, &balance, &placed, id).stance;
            for line in [LineId::Front, LineId::Left, LineId::Right] {
                let stood = stance.stood(line);
                for (at_worst, root) in [(false, stood.nominal), (true, stood.worst)] {
                    let left = |slope: f64| {
                        let pair = stance.on_platform(line, slope);
                        if at_worst { pair.worst } else { pair.nominal }
                    };
                    match root {
                        Some(t) if t > 0.0 => {
                            prop_assert!(left(t * (1.0 - 1e-7)) >= -1e-6, "{id:?} {line:?} {at_worst} {t}");
                            prop_assert!(left(t * (1.0 + 1e-6) + 1e-7) < 0.0, "{id:?} {line:?} {at_worst} {t}");
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
