//! Worked by hand: a truck of 3,200 kg on 1.4 m, 1,560 kg ahead and 1,640 kg behind; rated 1,800 kg at 0.5 m,
//! the fork face 0.36 m ahead of the axle. The rated load takes 1,800 x (0.36 + 0.5) / 1.4 = 1,105.7 kg off the
//! steer axle: 534.3 kg stay on it, and 5,000 - 534.3 = 4,465.7 kg are on the front axle.

use super::*;
use crate::document::{By, Known};
use crate::example;
use approx::assert_relative_eq;

fn sheet() -> Document {
    let mut document = example::document(example::THREE_WHEEL);
    let truck = &mut document.truck;
    (truck.rated_kg, truck.rated_load_centre_m) = (Some(1800.0), Some(0.5));
    (truck.front_axle_laden_kg, truck.steer_axle_laden_kg) = (Some(4465.0), Some(535.0));
    document
}

/// The two tests, one after the other.
fn tested(document: &Document) -> (Tested, Tested) {
    let [sum, moments] = <[Tested; 2]>::try_from(check(document)).expect("both can be made");
    assert_eq!((sum.test, moments.test), (Test::LadenSum, Test::LadenMoments));
    (sum, moments)
}

fn names(tested: &Tested) -> Vec<Field> {
    tested.suspects.iter().map(|s| s.place.field).collect()
}

#[test]
fn a_sheet_that_agrees_closes() {
    let (sum, moments) = tested(&sheet());
    assert_relative_eq!(sum.found.get(), 5000.0);
    assert_relative_eq!(sum.expected.get(), 5000.0);
    // Sheets of 2 %: 89.3 + 10.7 + 64 kg.
    assert_relative_eq!(sum.allowed.get(), 0.02 * (4465.0 + 535.0 + 3200.0), max_relative = 1e-12);
    assert_relative_eq!(moments.found.get(), 535.0);
    assert_relative_eq!(moments.expected.get(), 1640.0 - 1800.0 * 0.86 / 1.4, max_relative = 1e-12);
    assert!(sum.closes && moments.closes && sum.suspects.is_empty() && moments.suspects.is_empty());
}

/// 835 kg on the steer axle in place of 535: 300 kg too much in the sum, and by moments as well. Only that
/// figure and the rated load stand in both.
#[test]
fn the_figure_that_explains_both_is_named() {
    let mut document = sheet();
    document.truck.steer_axle_laden_kg = Some(835.0);
    let (sum, moments) = tested(&document);
    assert!(!sum.closes && !moments.closes);
    assert_eq!(names(&moments), [Field::SteerAxleLaden]);
    assert_eq!(names(&sum), [Field::SteerAxleLaden]);
    let (lo, hi) = moments.suspects[0].should_be.expect("alone");
    assert!(lo.get() < 535.0 && 535.0 < hi.get(), "{lo:?} {hi:?}");
}

/// A front axle load that was copied wrongly is in no moment: nothing else is suspected but what is in the sum
/// and in nothing that closes otherwise.
#[test]
fn a_wrong_front_axle_load_is_in_the_sum_alone() {
    let mut document = sheet();
    document.truck.front_axle_laden_kg = Some(4865.0);
    let (sum, moments) = tested(&document);
    assert!(!sum.closes && moments.closes && moments.suspects.is_empty());
    assert_eq!(names(&sum), [Field::FrontAxleLaden]);
}

/// A wheelbase of 1.2 m for 1.4: 1,640 - 1,800 x 0.86 / 1.2 = 350 kg on the steer axle, not 535.
#[test]
fn a_wrong_length_is_in_the_moments_alone() {
    let mut document = sheet();
    document.truck.wheelbase_m = Some(1.2);
    let (sum, moments) = tested(&document);
    assert!(sum.closes && !moments.closes);
    assert_relative_eq!(moments.expected.get(), 350.0, max_relative = 1e-12);
    let suspects = names(&moments);
    assert!(suspects.contains(&Field::Wheelbase), "{suspects:?}");
    let wheelbase = moments.suspects.iter().find(|s| s.place.field == Field::Wheelbase);
    let (lo, hi) = wheelbase.and_then(|s| s.should_be).expect("alone");
    assert!(lo.get() < 1.4 && 1.4 < hi.get(), "{lo:?} {hi:?}");
}

/// Known by a scale to 1 %, less is let through than by a sheet.
#[test]
fn how_a_figure_is_known_counts() {
    let mut document = sheet();
    document.truck.front_axle_laden_kg = Some(4465.0 + 150.0);
    assert!(tested(&document).0.closes);
    for path in ["truck.front_axle_laden_kg", "truck.steer_axle_laden_kg", "truck.service_kg"] {
        document.known.insert(path.to_owned(), Known { by: Some(By::Scale), tolerance: None });
    }
    assert!(!tested(&document).0.closes);
    document.known.insert("truck.service_kg".to_owned(), Known { by: None, tolerance: Some(120.0) });
    assert!(tested(&document).0.closes);
}

/// Two figures wrong at once: no single one explains it, and all are named.
#[test]
fn where_no_single_figure_explains_it_all_are_named() {
    let mut document = sheet();
    document.truck.wheelbase_m = Some(1.1);
    document.truck.front_axle_laden_kg = Some(5200.0);
    let (sum, moments) = tested(&document);
    assert!(!sum.closes && !moments.closes);
    assert!(moments.suspects.iter().chain(&sum.suspects).all(|s| s.should_be.is_none()));
    assert_eq!((sum.suspects.len(), moments.suspects.len()), (4, 6));
}

/// What is missing or out of its range is held against nothing.
#[test]
fn what_is_not_there_is_not_held_against_anything() {
    let mut document = sheet();
    document.truck.rated_kg = None;
    assert_eq!(check(&document), []);
    document.truck.rated_kg = Some(f64::NAN);
    assert_eq!(check(&document), []);
    let mut document = sheet();
    document.truck.steer_axle_kg = None;
    assert_eq!(check(&document).iter().map(|t| t.test).collect::<Vec<_>>(), [Test::LadenSum]);
}
