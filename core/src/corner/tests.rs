//! Corners against hand arithmetic.

use super::*;
use crate::body::Pose;
use crate::field::Field;
use crate::statics::lever_vector;
use crate::support::LineId;
use crate::units::GRAVITY;
use approx::assert_relative_eq;

const UPRIGHT: View = View { to_mast: DMat3::IDENTITY, axis: DVec3::Y, longer: Some(0.0) };

fn front() -> Line {
    Line::new(LineId::Front, DVec3::new(0.0, -0.5, 0.0), DVec3::new(0.0, 0.5, 0.0), false)
}

fn truck(places: &[DVec2]) -> Terms<'_> {
    Terms {
        service: Service { mass: (2900.0, 3100.0), places, with_wheelbase: 0.0 },
        axle: None,
        kept: Few::default(),
        ways: Few::default(),
        hung: Few::default(),
        pivot: DVec3::new(0.0, 0.0, 0.25),
        half_pivot: DVec3::ZERO,
        wheelbase: 0.0,
    }
}

fn level(terms: &Terms, view: &View) -> f64 {
    let n = lever_vector(&front(), Field::LEVEL.total());
    let (value, corner) = (terms.least(&front(), n, 0.0, view), terms.corner(&front(), n, 0.0, view));
    assert_relative_eq!(value, corner.moment(front().from, n, view), max_relative = 1e-12);
    value / GRAVITY
}

/// The lightest truck at its foremost place, the heaviest load at its furthest.
#[test]
fn each_takes_the_worst_of_its_own_range() {
    let places = [DVec2::new(-0.75, 0.5), DVec2::new(-0.70, 0.6)];
    let mut terms = truck(&places);
    terms.hung.push(Hung { mass: (900.0, 1100.0), at: DVec3::new(1.0, 0.0, 0.5), half: DVec3::new(0.05, 0.1, 0.2) });
    assert_relative_eq!(level(&terms, &UPRIGHT), 2900.0 * 0.70 - 1100.0 * 1.05, max_relative = 1e-12);
    // Behind the axle it is the lighter load that holds less.
    let mut terms = truck(&places);
    terms.hung.push(Hung { mass: (900.0, 1100.0), at: DVec3::new(-0.5, 0.0, 0.5), half: DVec3::new(0.05, 0.0, 0.0) });
    assert_relative_eq!(level(&terms, &UPRIGHT), 2900.0 * 0.70 + 900.0 * 0.45, max_relative = 1e-12);
}

/// Another battery may be lighter or heavier than the one weighed; where it is lighter, its place is
/// worst the other way.
#[test]
fn what_is_taken_away_is_worst_the_other_way() {
    let places = [DVec2::new(-0.70, 0.6)];
    let mut terms = truck(&places);
    let battery =
        Kept { mass: (-200.0, 50.0), at: DVec3::new(-0.8, 0.0, 0.5), half: DVec3::X * 0.1, with_wheelbase: 0.0 };
    terms.kept.push(battery);
    assert_relative_eq!(level(&terms, &UPRIGHT), 2900.0 * 0.70 - 200.0 * 0.9, max_relative = 1e-12);
}

/// A part's weight is the truck's already: stowed it changes nothing, raised and level nothing about the
/// front line either; leaning out it counts by the way it has gone.
#[test]
fn a_part_counts_by_its_way_from_where_it_was_stowed() {
    let places = [DVec2::new(-0.70, 0.6)];
    let stowed = DVec3::new(0.2, 0.0, 1.0);
    let at = |mass: (f64, f64), posed: DVec3, view: &View| {
        let mut terms = truck(&places);
        let pivot = terms.pivot;
        terms.ways.push(Way { mass, from: pivot - stowed, hung: posed - pivot, ..Way::default() });
        level(&terms, view)
    };
    let alone = 2900.0 * 0.70;
    assert_relative_eq!(at((100.0, 300.0), stowed, &UPRIGHT), alone, max_relative = 1e-12);
    assert_relative_eq!(at((100.0, 300.0), stowed + DVec3::Z * 2.0, &UPRIGHT), alone, max_relative = 1e-12);
    let tilted = Pose { lift: 0.0, tilt: 0.1, lean: 0.0, sway: 0.0, sideshift: 0.0 };
    let view = View { to_mast: tilted.rotation().transpose(), ..UPRIGHT };
    let gone = tilted.place(DVec3::new(0.0, 0.0, 0.25), stowed + DVec3::Z * 2.0).x - stowed.x;
    assert!(gone > 0.2);
    assert_relative_eq!(at((100.0, 300.0), stowed + DVec3::Z * 2.0, &view), alone - 300.0 * gone, max_relative = 1e-9);
}

/// Two masses: the common centre is furthest ahead with the front one heavy and ahead, the rear one light.
#[test]
fn the_common_centre_reaches_as_far_as_two_masses_let_it() {
    let places = [DVec2::new(-0.75, 0.5), DVec2::new(-0.70, 0.6)];
    let mut terms = truck(&places);
    terms.hung.push(Hung { mass: (900.0, 1100.0), at: DVec3::new(1.0, 0.0, 0.5), half: DVec3::new(0.05, 0.0, 0.0) });
    let furthest = terms.furthest(DVec3::X, -0.35, &[UPRIGHT]);
    assert_relative_eq!(furthest, (1100.0 * 1.05 - 2900.0 * 0.70) / 4000.0, max_relative = 1e-9);
    let nearest = -terms.furthest(-DVec3::X, 0.35, &[UPRIGHT]);
    assert_relative_eq!(nearest, (900.0 * 0.95 - 3100.0 * 0.75) / 4000.0, max_relative = 1e-9);
    let highest = terms.furthest(DVec3::Z, 0.55, &[UPRIGHT]);
    // The load's centre is 0.25 m of pivot and 0.5 m above it: 0.75 m, over the truck's 0.6 m.
    assert_relative_eq!(highest, (1100.0 * 0.75 + 2900.0 * 0.6) / 4000.0, max_relative = 1e-9);
}

/// A longer wheelbase takes a centre that was found by axle loads back with it.
#[test]
fn what_was_found_by_axle_loads_goes_with_the_wheelbase() {
    let places = [DVec2::new(-0.70, 0.6)];
    let mut terms = truck(&places);
    (terms.service.with_wheelbase, terms.wheelbase) = (1.0 / 1.4, 0.014);
    let at = |longer: Option<f64>| level(&terms, &View { longer, ..UPRIGHT });
    assert_relative_eq!(at(Some(0.014)), 2900.0 * 0.70 * 1.01, max_relative = 1e-12);
    assert_relative_eq!(at(Some(-0.014)), 2900.0 * 0.70 * 0.99, max_relative = 1e-12);
    assert_relative_eq!(at(None), 2900.0 * 0.70 * 0.99, max_relative = 1e-12);
}

#[test]
fn a_short_list_takes_no_more_than_it_holds() {
    let mut few: Few<u8, 2> = Few::default();
    (1..=3).for_each(|n| few.push(n));
    assert_eq!(few.as_slice(), [1, 2]);
}
