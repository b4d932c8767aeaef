use super::*;
use crate::example;
use crate::rules;

fn seat(scenario: &Scenario, id: StepId) -> Seat {
    let placed = Placed::of(&scenario.load, &scenario.lift);
    Seat::of(scenario, &placed, &Bearing::of(scenario), id).expect("it lies on the forks")
}

/// A load and a mast known exactly, upright, standing.
fn exact() -> Scenario {
    let mut s = example::three_wheel();
    s.doubts = crate::doubt::Doubts::NONE;
    s.truck.mast.give = Span::exact(0.0);
    s.truck.mast.play = 0.0;
    s.lift.heel_gap = Span::exact(0.0);
    s.lift.offset = Span::exact(0.0);
    s.load.doubt = DVec2::ZERO;
    s.load.centre = crate::scalar::Region::about(DVec3::new(0.5, 0.1, 0.4), DVec3::ZERO);
    s
}

fn rectangle(from: f64, to: f64, half: f64) -> Vec<DVec2> {
    [(from, -half), (to, -half), (to, half), (from, half)].map(|(x, y)| DVec2::new(x, y)).to_vec()
}

/// Three feet carry no further than between them.
#[test]
fn a_load_on_three_feet_is_carried_between_them() {
    let mut s = exact();
    s.load.feet = vec![vec![DVec2::new(0.0, -0.3), DVec2::new(0.0, 0.3), DVec2::new(0.9, 0.0)]];
    s.load.centre = crate::scalar::Region::about(DVec3::new(0.3, 0.25, 0.4), DVec3::ZERO);
    let seat = seat(&s, StepId::RaisedUpright);
    // At 0.3 ahead the triangle is 0.2 wide to the left.
    let left = seat.cases[0].topple.iter().find(|t| t.over == Over::Left).expect("a left edge");
    assert!(left.margin.nominal < 0.0 && !seat.holds());
}

/// A cylinder across the forks rests on a line: the least doubt of its centre is too much.
#[test]
fn a_round_load_needs_a_cradle() {
    let mut s = exact();
    s.load.feet = vec![vec![DVec2::new(0.5, -0.5), DVec2::new(0.5, 0.5)]];
    s.load.centre = crate::scalar::Region::about(DVec3::new(0.5, 0.0, 0.5), DVec3::splat(0.01));
    let seat = seat(&s, StepId::RaisedUpright);
    assert!(seat.holds() && !seat.holds_worst());
}

#[test]
fn upright_and_level_the_margins_are_the_distances() {
    let mut s = exact();
    let case = seat(&s, StepId::RaisedUpright).cases[0].clone();
    // Forks 1.15 m, load 1.2 m: the tips come first. Forks 0.7 m over both, load 1.0 m wide.
    let margins: Vec<f64> = case.topple.iter().map(|t| t.margin.worst).collect();
    for (margin, expected) in margins.iter().zip([0.65, 0.25, 0.45]) {
        assert!((margin - expected).abs() < 1e-12, "{margins:?}");
    }
    assert!(case.asked.worst.abs() < 1e-12 && case.holds_worst());
    // A load shorter than the forks topples over its own edge, wherever it lies on them.
    s.load.feet = vec![rectangle(0.0, 0.8, 0.5)];
    s.lift.heel_gap = Span::exact(0.2);
    assert!((seat(&s, StepId::RaisedUpright).cases[0].topple[0].margin.worst - 0.3).abs() < 1e-12);
}

/// Tilted forward by t, a centre z above the blades passes z tan t nearer to the edge, and friction
/// tan t is asked for.
#[test]
fn tilted_forward_it_leans_by_its_height() {
    let mut s = exact();
    s.lift.tilt_forward = 4.0_f64.to_radians();
    let case = seat(&s, StepId::RaisedForward).cases[0].clone();
    let tangent = libm::tan(4.0_f64.to_radians());
    assert!((case.topple[0].margin.nominal - (0.65 - 0.4 * tangent)).abs() < 1e-12);
    assert!((case.asked.nominal - tangent).abs() < 1e-12);
}

/// Source: moments on a slope; back tilt b raises the braking limit to (mu + tan b) / (1 - mu tan b).
#[test]
fn tilt_back_helps_when_braking() {
    let s = exact();
    let limit = |mu: f64, b: f64| (mu + libm::tan(b)) / (1.0 - mu * libm::tan(b));
    let case = seat(&s, StepId::Brake).cases[0].clone();
    assert_eq!(case.event, Event::Braking);
    let part = rules::BRAKING_LADEN.value / crate::units::GRAVITY;
    let b = s.truck.mast.tilt_back;
    // Friction just enough for this braking is what is asked for.
    assert!((limit(case.asked.nominal, b) - part).abs() < 1e-12);
    assert!((case.topple[0].margin.nominal - (0.65 - 0.4 * case.asked.nominal)).abs() < 1e-12);
}

#[test]
fn a_tall_narrow_load_topples_before_it_slides() {
    let mut s = exact();
    s.load.feet = vec![rectangle(0.0, 0.3, 0.5)];
    s.load.centre = crate::scalar::Region::about(DVec3::new(0.29, 0.0, 1.6), DVec3::ZERO);
    s.lift.tilt_forward = 1.0_f64.to_radians();
    let seat = seat(&s, StepId::RaisedForward);
    assert!(seat.cases[0].topple[0].margin.nominal < 0.0 && !seat.holds());
    assert!(seat.cases[0].asked.nominal < seat.cases[0].friction.lo);
}

/// The region and the foot of the plumb line are drawn where the forks are.
#[test]
fn the_region_lies_on_the_blades_in_their_pose() {
    let s = exact();
    let seat = seat(&s, StepId::RaisedBack);
    let xs: Vec<f64> = seat.region.iter().map(|p| p.x).collect();
    assert_eq!(seat.region.len(), 4);
    assert!(seat.region[1].z > seat.region[0].z, "tilted back the tips are higher");
    assert!(seat.bob.x > xs[0] && seat.bob.x < xs[1]);
    let mut hung = s;
    hung.load.hanging = Some(0.2);
    let placed = Placed::of(&hung.load, &hung.lift);
    assert_eq!(Seat::of(&hung, &placed, &Bearing::of(&hung), StepId::Travel), None);
}

/// The worst of all ranges is never better than any place within them.
#[test]
fn nothing_within_the_ranges_beats_the_worst() {
    let base = example::three_wheel();
    let worst = seat(&base, StepId::RaisedForward).cases[0].clone();
    for k in 0..64_u32 {
        let bit = |b: u32| f64::from((k >> b) & 1);
        let at = |s: Span, t: f64| Span::exact(s.lo + (s.hi - s.lo) * t);
        let mut s = base.clone();
        s.lift.heel_gap = at(s.lift.heel_gap, bit(0));
        s.lift.offset = at(s.lift.offset, bit(1));
        let c = s.load.centre;
        s.load.centre = crate::scalar::Region::of(at(c.x(), bit(2)), at(c.y(), bit(3)), at(c.z(), bit(4)));
        s.load.mass = at(s.load.mass, bit(5));
        let one = seat(&s, StepId::RaisedForward).cases[0].clone();
        for (a, b) in one.topple.iter().zip(&worst.topple) {
            assert!(a.margin.worst >= b.margin.worst - 1e-9 && a.margin.nominal >= b.margin.worst - 1e-9);
        }
        assert!(one.asked.nominal <= worst.asked.worst + 1e-12);
    }
}
