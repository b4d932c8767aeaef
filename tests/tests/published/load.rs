//! The load on the forks: off centre, and how far the forks reach under.

use standfast_core::body::Placed;
use standfast_core::plate::{self, Gap};
use standfast_core::scalar::Span;
use standfast_core::scenario::Scenario;
use standfast_core::{example, forks, rules};

/// Whether the core calls a load's offset substantial on a truck of this rated capacity, as stated.
fn substantial(rated: f64, offset: f64) -> bool {
    let mut scenario: Scenario = example::four_wheel();
    if let Some(plate) = &mut scenario.truck.plate {
        plate.rows.retain(|r| r.load_centre < 0.55);
        plate.rows.iter_mut().for_each(|r| r.capacity = rated);
    }
    let centre = &mut scenario.load.centre;
    (centre.at.y, centre.lo.y, centre.hi.y) = (0.0, 0.0, 0.0);
    scenario.lift.offset = Span::exact(offset);
    let placed = Placed::of(&scenario.load, &scenario.lift);
    let findings = plate::check(&scenario, &placed).findings;
    findings.iter().any(|f| matches!(f.gap, Gap::OffCentre { .. }) && f.as_stated)
}

/// C18. Source: ISO 22915-10 and -20 (read): an offset is substantial beyond 100 mm under 5 t, 150 mm
/// from 5 to 10 t, 250 mm from 10 to 20 t, 350 mm from there. So 120 mm at 2.5 t is, 90 mm is not, and
/// 120 mm at 6 t is not.
#[test]
fn c18_substantial_offset() {
    for side in [1.0, -1.0] {
        assert!(substantial(2500.0, side * 0.120));
        assert!(!substantial(2500.0, side * 0.090));
        assert!(!substantial(6000.0, side * 0.120));
    }
    assert!(substantial(6000.0, 0.151) && !substantial(12_000.0, 0.249) && substantial(12_000.0, 0.251));
    assert!(!substantial(20_000.0, 0.349) && substantial(20_000.0, 0.351));
    // "Beyond": on the threshold it is not.
    assert!(!substantial(2500.0, 0.100) && !substantial(6000.0, 0.150));
}

/// C32. Source: fork-length guidance (read): forks should reach under two thirds of the load: 900 mm under
/// a load 1,350 mm deep just passes, under 1,400 mm it fails.
#[test]
fn c32_two_thirds_under_the_load() {
    let outcome = |depth: f64| {
        let mut scenario = example::three_wheel();
        scenario.truck.forks.length = 0.9;
        scenario.lift.heel_gap = Span::exact(0.0);
        scenario.load.size.x = depth;
        let placed = Placed::of(&scenario.load, &scenario.lift);
        forks::check(&scenario, &placed, &standfast_core::bearing::Bearing::of(&scenario))
    };
    assert!(outcome(1.35).reaches());
    assert!(!outcome(1.40).reaches());
    assert!((forks::reach(0.9, 0.0, 1.35) - rules::FORK_REACH.value).abs() < 1e-12);
}
