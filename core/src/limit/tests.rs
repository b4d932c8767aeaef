use super::*;
use crate::bearing::Bearing;
use crate::document::RampDown;
use crate::example;
use crate::scalar::Span;
use crate::seat::Seat;
use crate::step::Step;
use crate::units::GRAVITY;
use crate::verdict::{Reason, State};

pub(super) struct Case {
    pub document: Document,
    pub scenario: Scenario,
    pub balance: Balance,
}

impl Case {
    pub fn of(document: Document) -> Self {
        let scenario = Scenario::from_document(&document).expect("complete");
        let balance = Balance::of(&scenario.truck, &scenario.doubts);
        Self { document, scenario, balance }
    }

    pub fn whole(&self) -> Whole<'_> {
        Whole::of(&self.scenario, &self.balance)
    }

    pub fn limits(&self) -> Limits {
        find(&self.scenario, &self.balance, &self.whole(), &self.document)
    }

    /// With a limit's figure at a value.
    fn at(&self, what: Limit, value: f64) -> Scenario {
        let mut scenario = self.scenario.clone();
        Axis::of(what, &self.scenario, &self.document).set(value, &mut scenario);
        scenario
    }

    /// Whether a step passes with it there.
    fn step(&self, what: Limit, value: f64, id: StepId) -> bool {
        let scenario = self.at(what, value);
        let placed = crate::body::Placed::of(&scenario.load, &scenario.lift);
        let bearing = Bearing::of(&scenario);
        let seat = Seat::of(&scenario, &placed, &bearing, id);
        let off = matches!(what, Limit::OffsetLeft | Limit::OffsetRight) && margin::on_both(&bearing) < 0.0;
        Step::new(&scenario, &self.balance, &placed, id).passes_worst()
            && seat.is_none_or(|s| s.holds_worst() && !s.cases.is_empty() && !off)
    }

    /// Whether the whole move goes, but for what a limit leaves out of account.
    fn goes(&self, what: Limit, value: f64) -> bool {
        let scenario = self.at(what, value);
        let whole = Whole::of(&scenario, &self.balance);
        let verdict = &whole.verdict;
        let out = |reason: &Reason| match reason {
            Reason::Plate { gap } => matches!(gap, crate::plate::Gap::BatteryUnknown),
            Reason::WaysDisagree { .. } | Reason::Contradicts { .. } | Reason::Within { .. } => true,
            Reason::LoadDownhill { .. } => what == Limit::RampUp,
            Reason::Tips { step, .. }
            | Reason::Slope { step, .. }
            | Reason::Reserve { step, .. }
            | Reason::Topples { step, .. }
            | Reason::Slides { step, .. } => what.leaves_out() == Some(*step),
            _ => false,
        };
        std::iter::once(&verdict.governing).chain(&verdict.others).all(|g| g.state == State::Go || out(&g.reason))
    }

    /// A solved limit against what decides: inside and at it, just beyond it, and where it passes nowhere.
    fn holds(&self, solved: &Solved, passes: &dyn Fn(f64) -> bool) {
        let (from, to) = Axis::of(solved.what, &self.scenario, &self.document).ends();
        let beyond = 3e-9 * (to - from);
        match solved.reach {
            Reach::At { value, .. } => {
                assert!(passes(value.get()), "{solved:?}");
                assert!(!passes(value.get() + beyond), "{solved:?}");
            }
            Reach::Beyond { value } => {
                assert!(passes(value.get()), "{solved:?}");
                assert!((value.get() - to).abs() < 1e-12);
            }
            Reach::Never => {}
        }
        let begins = solved.least.map_or(from, Scalar::get);
        if let Some(least) = solved.least {
            assert!(passes(least.get()) && !passes(least.get() - beyond), "{solved:?}");
        }
        for k in 0..=20 {
            let value = from + (to - from) * f64::from(k) / 20.0;
            let along = |x: f64| (x - from) / (to - from);
            let inside = solved.reach.value().is_some_and(|most| along(value) <= along(most));
            let stated = solved.stated.filter(|s| (0.0..=1.0).contains(&along(s.get())) && passes(s.get()));
            // Below what is stated, and passes, a limit says nothing.
            let begins = stated.map_or(begins, Scalar::get);
            if inside && along(value) >= along(begins) {
                assert!(passes(value), "{value} {solved:?}");
            } else if !inside {
                assert!(!passes(value), "{value} {solved:?}");
            }
        }
    }

    /// Every limit of every step and of the whole move.
    fn all_hold(&self) -> usize {
        let (whole, limits) = (self.whole(), self.limits());
        for (step, list) in whole.steps.iter().zip(&limits.steps) {
            let alone = of_step(&self.scenario, &self.balance, &self.document, step.id);
            assert_eq!(alone.len(), list.len());
            for (solved, alone) in list.iter().zip(&alone) {
                self.holds(solved, &|value| self.step(solved.what, value, step.id));
                let apart = solved.reach.value().unwrap_or(-1.0) - alone.reach.value().unwrap_or(-1.0);
                assert!(solved.what == alone.what && apart.abs() < 1e-5, "{solved:?} {alone:?}");
            }
        }
        for solved in &limits.whole {
            self.holds(solved, &|value| self.goes(solved.what, value));
            let alone = of_move(solved.what, &self.scenario, &self.balance, &whole, &self.document);
            assert_eq!(*solved, alone);
        }
        limits.steps.iter().map(Vec::len).sum::<usize>() + limits.whole.len()
    }
}

pub(super) fn examples() -> [Document; 3] {
    [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD].map(example::document)
}

/// The examples as they are and changed so that other things bind.
fn variants() -> Vec<Document> {
    let changes: [fn(&mut Document); 12] = [
        |_| {},
        |d| (d.drive.ramp_pct, d.drive.cross_fall_pct) = (Some(8.0), Some(3.0)),
        |d| {
            (d.drive.ramp_pct, d.drive.ramp_down) = (Some(12.0), Some(RampDown::Forwards));
            d.load.mass_kg = d.load.mass_kg.map(|m| 0.7 * m);
        },
        |d| (d.drive.brake, d.drive.corner, d.drive.corner_empty) = (Some(false), Some(false), Some(false)),
        |d| d.drive.corner_kmh = Some(12.0),
        |d| d.drive.corner_empty_kmh = Some(14.0),
        |d| d.truck.battery.fitted_kg = None,
        |d| d.truck.battery.fitted_kg = Some(400.0),
        |d| (d.lift.offset_m, d.lift.heel_gap_m) = (Some(0.25), None),
        |d| (d.lift.height_m, d.lift.tilt_forward_deg) = (d.truck.mast.lift_m, Some(5.0)),
        |d| (d.truck.front_axle_kg, d.truck.steer_axle_kg, d.truck.cg_height_m) = (None, None, None),
        |d| {
            d.load.mass_kg = d.load.mass_kg.map(|m| 1.6 * m);
            d.truck.plate = None;
            d.truck.cg_height_m = Some(0.6);
        },
    ];
    examples()
        .iter()
        .flat_map(|document| {
            changes.iter().map(|change| {
                let mut document = document.clone();
                change(&mut document);
                document
            })
        })
        .collect()
}

#[test]
fn just_inside_passes_and_just_outside_does_not() {
    let count: usize = variants().into_iter().map(|document| Case::of(document).all_hold()).sum();
    assert!(count > 3000, "{count}");
}

/// A truck of one weight, its mast and forks without any, everything known, and a load in the middle: what it
/// does follows from moments by hand. Taken as 3,000 kg at 0.7 m behind the front axle and 0.6 m high, 1.4 m
/// wheelbase, 0.92 m tread; 700 kg, its centre 1 m ahead of the front axle and 0.5 m above the blades.
struct ByHand {
    case: Case,
    /// Weight, how far behind the front axle and how high it stands.
    truck: (f64, f64, f64),
    /// Weight, how far ahead of it, how high above the blades.
    load: (f64, f64, f64),
    wheelbase: f64,
    half_tread: f64,
}

impl ByHand {
    fn new() -> Self {
        let document = example::document(example::THREE_WHEEL);
        let mut s = example::three_wheel();
        s.doubts = crate::doubt::Doubts::NONE;
        let truck = &mut s.truck;
        (truck.service, truck.cg_x, truck.cg_z) = (3000.0, Some(-0.7), Some(0.6));
        (truck.operator, truck.plate, truck.load_distance) = (0.0, None, 0.36);
        truck.battery.spread = glam::DVec3::ZERO;
        (truck.mast.outer, truck.mast.give, truck.mast.play) = (0.0, Span::exact(0.0), 0.0);
        truck.mast.tilt_back = 0.0;
        truck.mast.stages.iter_mut().for_each(|stage| stage.0 = 0.0);
        (truck.forks.carriage, truck.forks.pair) = (0.0, 0.0);
        s.load.mass = Span::exact(700.0);
        s.load.centre = crate::scalar::Region::about(glam::DVec3::new(0.64, 0.0, 0.5), glam::DVec3::ZERO);
        (s.lift.heel_gap, s.lift.offset, s.lift.travel) = (Span::exact(0.0), Span::exact(0.0), 0.15);
        (s.drive.ramp, s.drive.cross_fall) = (Some(0.05), Some(0.02));
        // So that the load on the blades binds nothing.
        s.load.hanging = Some(0.5);
        let balance = Balance::of(&s.truck, &s.doubts);
        Self {
            case: Case { document, scenario: s, balance },
            truck: (3000.0, 0.7, 0.6),
            load: (700.0, 1.0, 0.5),
            wheelbase: 1.4,
            half_tread: 0.46,
        }
    }

    fn is(&self, id: StepId, what: Limit, value: f64) {
        let Case { document, scenario, balance } = &self.case;
        let solved = of_step(scenario, balance, document, id).into_iter().find(|s| s.what == what).expect("touched");
        let Reach::At { value: found, .. } = solved.reach else { panic!("{solved:?}") };
        assert!((found.get() - value).abs() < 2e-6 * value.abs().max(1.0), "{solved:?}, by hand {value}");
    }
}

/// On a slope s falling ahead a weight holds with its distance behind the front axle less s times its height.
#[test]
fn by_hand_on_the_platform_falling_ahead() {
    let hand = ByHand::new();
    let ((w, behind, high), (m, ahead, above)) = (hand.truck, hand.load);
    let (s, lift) = (0.04, hand.case.scenario.lift.height);
    let holds = w * (behind - s * high);
    let id = StepId::RaisedUpright;
    hand.is(id, Limit::LoadMass, holds / (ahead + s * (lift + above)));
    hand.is(id, Limit::LoadCentre, holds / m - s * (lift + above) - 0.36);
    let mut heavy = ByHand::new();
    heavy.case.scenario.load.mass = Span::exact(1700.0);
    heavy.is(id, Limit::LiftHeight, (holds / 1700.0 - ahead) / s - above);
    // A lighter battery takes away what it holds with.
    heavy.case.scenario.load.mass = Span::exact(1400.0);
    let battery = &hand.case.scenario.truck.battery;
    let spare = holds - 1400.0 * (ahead + s * (lift + above));
    heavy.is(id, Limit::BatteryLeast, battery.stated - spare / (-battery.at.x - s * battery.at.z));
}

/// Falling square to a side line the load's distance inside the line grows with x T/2 and falls with y L.
#[test]
fn by_hand_on_the_platform_falling_aside() {
    let hand = ByHand::new();
    let ((w, behind, high), (m, ahead, above)) = (hand.truck, hand.load);
    let (l, t, s) = (hand.wheelbase, hand.half_tread, 0.06);
    let length = libm::hypot(l, t);
    let lift = hand.case.scenario.lift.height;
    let holds = w * (t * (l - behind) / length - s * high);
    let y = t * (ahead + l) / l + (length / l) * (holds / m - s * (lift + above));
    hand.is(StepId::RaisedUpright, Limit::OffsetLeft, y);
    hand.is(StepId::RaisedUpright, Limit::OffsetRight, y);
}

/// In a bend without a load v^2 / R pulls at the height of the centre: what is left of the reserve by then.
#[test]
fn by_hand_in_a_bend() {
    let hand = ByHand::new();
    let (_, behind, high) = hand.truck;
    let (_, radius) = hand.case.scenario.drive.corner_empty.expect("a bend");
    let kept = hand.case.scenario.drive.reserve;
    let pull = (1.0 - kept) * GRAVITY * hand.half_tread * (hand.wheelbase - behind) / (hand.wheelbase * high);
    hand.is(StepId::EmptyCornerLeft, Limit::CornerSpeedEmpty, 3.6 * libm::sqrt(pull * radius));
    hand.is(StepId::EmptyCornerRight, Limit::CornerSpeedEmpty, 3.6 * libm::sqrt(pull * radius));
}

/// Braking pulls at both heights; down the ramp, load ahead, gravity does: A cos a - B sin a is what is left.
#[test]
fn by_hand_braking_and_down_the_ramp() {
    let mut hand = ByHand::new();
    let ((w, behind, high), (m, ahead, above)) = (hand.truck, hand.load);
    let (kept, above) = (hand.case.scenario.drive.reserve, above + hand.case.scenario.lift.travel);
    let pulls = w * high + m * above;
    hand.is(StepId::Brake, Limit::Braking, GRAVITY * ((1.0 - kept) * w * behind - m * ahead) / pulls);
    (hand.case.scenario.drive.braking, hand.case.scenario.drive.load_downhill) = (None, true);
    let holds = w * behind - m * ahead;
    let angle = libm::acos(kept * w * behind / libm::hypot(holds, pulls)) - libm::atan2(pulls, holds);
    hand.is(StepId::RampDown, Limit::RampDown, 100.0 * libm::tan(angle));
}
