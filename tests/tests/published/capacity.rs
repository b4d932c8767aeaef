//! Load moments and what a capacity becomes further out.

use crate::{exact, inches, lb, lbf, near, points, support};
use standfast_core::document::{Attachment, Document, PlateFor, Tyres};
use standfast_core::example;
use standfast_core::field::Field;
use standfast_core::plate::{Fitted, Gap, by_load_centre_alone, by_moments, by_moments_with};
use standfast_core::report::assess;
use standfast_core::scalar::Scalar;
use standfast_core::statics::moment;
use standfast_core::support::LineId;
use standfast_core::verdict::{Reason, State};

/// The overturning moment about the front axle that the core gives one weight ahead of it, in-lb.
fn inch_pounds(pounds: f64, ahead: f64) -> f64 {
    let line = support(1.4, 0.9, 0.0).line(LineId::Front);
    let bodies = points(&[(lb(pounds), inches(ahead), 1.0)]);
    -lbf(moment(&bodies, &line, Field::LEVEL.total())) / inches(1.0)
}

/// C1. Source: 29 CFR 1910.178 App. A, A-5.4 (read): 3,000 lb at 24 in is 72,000 in-lb.
#[test]
fn c01_a_load_moment() {
    exact(inch_pounds(3000.0, 24.0), 72_000.0);
}

/// C2. Source: 29 CFR 1910.178 App. A, A-5.4 (read): by the load centre alone, 2,400 lb at 30 in
/// (a uniform load 60 in long).
#[test]
fn c02_capacity_by_load_centre_alone() {
    exact(by_load_centre_alone(3000.0, 24.0, 0.5 * 60.0), 2400.0);
    exact(inch_pounds(2400.0, 30.0), 72_000.0);
}

/// C3, C4. Source: a training text on load composition (read): 5,000 lb at 24 in, centre at 28 in:
/// 4,285 lb; 4,000 lb at 24 in, centre at 36 in: 2,666 lb. Whole pounds, cut off.
#[test]
fn c03_c04_capacity_by_load_centre_alone_cut_off() {
    exact(by_load_centre_alone(5000.0, 24.0, 28.0).floor(), 4285.0);
    exact(by_load_centre_alone(4000.0, 24.0, 36.0).floor(), 2666.0);
}

/// C5. Source: a training page on lever arms (read): 5,000 lb at 24 in, 18 in from axle to fork face:
/// 210,000 in-lb; with the centre at 36 in, 3,888 lb (cut off).
#[test]
fn c05_capacity_by_moments() {
    exact(inch_pounds(5000.0, 18.0 + 24.0), 210_000.0);
    let capacity = by_moments(5000.0, 18.0, 24.0, 36.0);
    exact(capacity.floor(), 3888.0);
    exact(inch_pounds(capacity, 18.0 + 36.0), 210_000.0);
}

/// C6. Source: a trade article of 2007 (read): 3,000 lb at 24 in, 14.1 in from axle to fork face:
/// 114,300 in-lb; with the centre at 48 in, 1,840 lb (cut off); by the load centre alone, 1,500 lb.
#[test]
fn c06_two_ways_to_estimate() {
    exact(inch_pounds(3000.0, 14.1 + 24.0), 114_300.0);
    exact(by_moments(3000.0, 14.1, 24.0, 48.0).floor(), 1840.0);
    exact(by_load_centre_alone(3000.0, 24.0, 48.0), 1500.0);
}

/// C7. Source: a trade-press forum (read): rated at 24 in with 16 in from axle to fork face, the
/// capacity is halved at 64 in exactly.
#[test]
fn c07_half_the_capacity() {
    exact(by_moments(4000.0, 16.0, 24.0, 64.0), 2000.0);
}

/// C8. Source: the same forum (read): a pair of forks rated at 24 in carries 0.375 of that at 64 in.
/// The forks bend about their own shanks, so that the load centre alone counts.
#[test]
fn c08_forks_bend_about_their_shanks() {
    exact(by_load_centre_alone(1.0, 24.0, 64.0), 0.375);
}

/// C9. Source: a Japanese trade column (read), fitted by arithmetic: a plate of 1,500 kg at 500 mm,
/// 1,350 at 600 and 960 at 1,000 answers to one axle distance of 400 mm.
#[test]
fn c09_a_real_plate_falls_by_moments() {
    exact(by_moments(1500.0, 400.0, 500.0, 600.0), 1350.0);
    near(by_moments(1500.0, 400.0, 500.0, 1000.0), 960.0);
}

/// C10. Source: trade guidance (read): a load nearer than the rated load centre is never more than rated.
#[test]
fn c10_nearer_is_not_more() {
    for centre in [0.0, 1.0, 12.0, 23.999, 24.0] {
        exact(by_load_centre_alone(3000.0, 24.0, centre), 3000.0);
        exact(by_moments(3000.0, 14.1, 24.0, centre), 3000.0);
        let weightless = Fitted { mass: 0.0, ahead: 0.0, lost_load: 0.0 };
        exact(by_moments_with(3000.0, 14.1, 24.0, centre, weightless), 3000.0);
    }
}

/// C26. Source: moments about the front axle (arithmetic): 2,000 kg at 500 mm, 400 mm to the fork
/// face; attachment of 100 kg at 60 mm, lost load 110 mm, load centre 500 mm: 1,736.6 kg.
#[test]
fn c26_an_attachment_costs_capacity() {
    let fitted = Fitted { mass: 100.0, ahead: 60.0, lost_load: 110.0 };
    let capacity = by_moments_with(2000.0, 400.0, 500.0, 500.0, fitted);
    assert!((capacity - 1736.6).abs() < 0.05, "{capacity}");
}

/// C27. Source: moments about the front axle (arithmetic): 5,000 lb at 24 in, 15.5 in to the fork face;
/// attachment of 600 lb at 7 in, lost load 6 in, load centre 24 in: 4,044.0 lb.
#[test]
fn c27_an_attachment_costs_capacity_in_pounds() {
    let fitted = Fitted { mass: 600.0, ahead: 7.0, lost_load: 6.0 };
    let capacity = by_moments_with(5000.0, 15.5, 24.0, 24.0, fitted);
    assert!((capacity - 4044.0).abs() < 0.05, "{capacity}");
}

/// The verdict on the invented three-wheel truck after a change, and the plate's gap that governs it.
fn governed(change: impl FnOnce(&mut Document)) -> (State, Option<Gap>) {
    let mut document = example::document(example::THREE_WHEEL);
    change(&mut document);
    let report = assess(&document);
    assert_eq!(report.problems, []);
    let verdict = report.assessment.expect("complete").verdict;
    let gap = match verdict.governing.reason {
        Reason::Plate { gap } => Some(gap),
        _ => None,
    };
    (verdict.state, gap)
}

fn clamp(document: &mut Document, name: &str, kg: f64) {
    document.truck.attachment = Some(Attachment {
        name: name.to_owned(),
        mass_kg: Some(kg),
        cg_ahead_m: Some(0.08),
        cg_above_m: Some(0.3),
        lost_load_m: Some(0.11),
    });
}

/// Source: 29 CFR 1910.178 (a)(4) (read): what affects capacity is not changed without the manufacturer's approval, and
/// the plates are changed with it. A plate for the mast, the tyres or the tilt of before covers nothing.
#[test]
fn a_changed_truck_needs_a_changed_plate() {
    assert_eq!(governed(|_| {}).0, State::Go);
    let (state, gap) = governed(|d| d.truck.mast.lift_m = Some(5.5));
    assert_eq!(state, State::NoGo);
    assert!(
        matches!(gap, Some(Gap::OtherMast { named, fitted }) if named == Scalar::computed(4.7) && fitted == Scalar::computed(5.5)),
        "{gap:?}"
    );
    let (state, gap) = governed(|d| d.truck.tyres = Some(Tyres::Pneumatic));
    assert_eq!(state, State::NoGo);
    assert!(matches!(gap, Some(Gap::OtherTyres { .. })), "{gap:?}");
    let (state, gap) = governed(|d| d.truck.mast.tilt_forward_deg = Some(8.0));
    assert_eq!(state, State::NoGo);
    assert!(matches!(gap, Some(Gap::OtherTilt { .. })), "{gap:?}");
}

/// Source: 29 CFR 1910.178 (a)(5) (read): a truck with a front-end attachment is marked with that attachment. A plate for
/// the bare forks, or for another attachment, covers nothing; the one that names it does.
#[test]
fn an_attachment_needs_a_plate_that_names_it() {
    let (state, gap) = governed(|d| clamp(d, "Drum clamp", 120.0));
    assert_eq!(state, State::NoGo);
    let Some(Gap::OtherFrontEnd { issued_for: PlateFor::Forks, name, mass }) = gap else { panic!("{gap:?}") };
    assert_eq!((name.as_str(), mass.map(|m| m.get())), ("Drum clamp", Some(120.0)));

    let named = |name: &'static str, kg: f64| {
        governed(move |d| {
            clamp(d, "Drum clamp", 120.0);
            d.load.mass_kg = Some(600.0);
            let plate = d.truck.plate.as_mut().expect("a plate");
            plate.issued_for = Some(PlateFor::Attachment);
            (plate.attachment, plate.attachment_kg) = (name.to_owned(), Some(kg));
        })
    };
    let (state, gap) = named("Drum clamp", 120.0);
    assert!(gap.is_none(), "{state:?} {gap:?}");
    let (state, gap) = named("Bale clamp", 210.0);
    assert_eq!(state, State::NoGo);
    assert!(matches!(gap, Some(Gap::OtherAttachment { .. })), "{gap:?}");
}

/// Source: capacity-plate practice (read) and 29 CFR 1910.178 (a)(4): battery inside the plate's window; a new plate
/// whenever the load centre differs.
#[test]
fn a_battery_or_a_load_centre_outside_the_plate_is_a_no_go() {
    for kg in [810.0, 970.0] {
        let (state, gap) = governed(|d| d.truck.battery.fitted_kg = Some(kg));
        assert_eq!(state, State::NoGo);
        assert!(matches!(gap, Some(Gap::Battery { fitted, .. }) if fitted == Scalar::computed(kg)), "{gap:?}");
    }
    let (state, gap) = governed(|d| (d.load.length_m, d.load.cg_from_heel_m) = (Some(1.6), Some(0.8)));
    assert_eq!(state, State::NoGo);
    assert!(matches!(gap, Some(Gap::TooFarOut { last, .. }) if last == Scalar::computed(0.7)), "{gap:?}");
}
