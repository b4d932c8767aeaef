//! Every problem at once, each in its place.

use super::*;
use crate::example;
use crate::problem::Remedy;

fn problems(change: impl FnOnce(&mut Document)) -> Vec<(String, Rule)> {
    let mut document = example::document(example::THREE_WHEEL);
    change(&mut document);
    match Scenario::from_document(&document) {
        Ok(_) => Vec::new(),
        Err(problems) => problems.into_iter().map(|p| (p.place.to_string(), p.rule)).collect(),
    }
}

#[test]
fn an_empty_document_names_every_needed_field_once() {
    let found = Scenario::from_document(&Document::default()).expect_err("empty");
    let mut names: Vec<_> = found.iter().map(|p| p.place.to_string()).collect();
    for field in Field::NUMBERS.iter().filter(|f| f.row().required) {
        let path = field.row().path;
        let absent_part = path.starts_with("truck.attachment.") || path.starts_with("truck.plate.");
        assert_eq!(names.contains(&path.to_owned()), !absent_part, "{path}");
    }
    let all = names.len();
    names.dedup();
    assert_eq!(names.len(), all);
    assert!(found.iter().all(|p| p.rule == Rule::Required));
}

#[test]
fn every_wrong_figure_is_found_at_once() {
    let found = problems(|d| {
        d.truck.wheelbase_m = Some(14.0);
        d.load.mass_kg = Some(-5.0);
        d.lift.height_m = Some(f64::NAN);
        d.truck.mast.tilt_back_deg = None;
        d.truck.wheels = None;
    });
    let names: Vec<_> = found.iter().map(|(name, _)| name.as_str()).collect();
    assert_eq!(
        names,
        ["truck.wheelbase_m", "truck.mast.tilt_back_deg", "load.mass_kg", "lift.height_m", "truck.wheels"]
    );
    assert!(matches!(found[0].1, Rule::Within { .. }) && found[3].1 == Rule::NotFinite);
}

#[test]
fn figures_are_held_against_each_other() {
    let one = |change: fn(&mut Document)| problems(change).into_iter().next();
    let (name, rule) = one(|d| d.lift.height_m = Some(4.8)).expect("above the lift");
    assert!(name == "lift.height_m" && matches!(rule, Rule::NotMoreThan { .. }));
    let (name, rule) = one(|d| d.lift.tilt_forward_deg = Some(5.5)).expect("beyond the tilt");
    assert!(name == "lift.tilt_forward_deg" && matches!(rule, Rule::NotMoreThan { .. }));
    let (name, rule) = one(|d| d.truck.front_axle_kg = Some(1400.0)).expect("axle loads do not add up");
    assert!(name == "truck.steer_axle_kg" && matches!(rule, Rule::AxleSum { .. }));
    let (_, rule) = one(|d| d.truck.front_axle_kg = None).expect("one axle load alone");
    assert!(matches!(rule, Rule::Together { .. }));
    let (name, rule) = one(|d| d.truck.mast.outer_kg = Some(2500.0)).expect("parts heavier than the truck");
    assert!(name == "truck.service_kg" && matches!(rule, Rule::PartsWithin { .. }));
    let (name, _) = one(|d| d.load.cg_from_heel_m = Some(1.3)).expect("centre outside the load");
    assert_eq!(name, "load.cg_from_heel_m");
    let (name, _) = one(|d| d.load.cg_above_m = None).expect("marked, but not given");
    assert_eq!(name, "load.cg_above_m");
}

#[test]
fn a_plate_falls_outward_and_upward() {
    let rule = |row: usize, kg: f64| {
        problems(|d| {
            if let Some(plate) = &mut d.truck.plate {
                plate.rows[row].capacity_kg = Some(kg);
            }
        })
    };
    assert!(
        matches!(rule(1, 1900.0).as_slice(), [(name, Rule::PlateFalls { row: 0 })] if name == "truck.plate.rows[1].capacity_kg")
    );
    let twice = problems(|d| {
        if let Some(plate) = &mut d.truck.plate {
            plate.rows[1].load_centre_m = Some(0.5);
        }
    });
    assert!(twice.iter().any(|(_, rule)| matches!(rule, Rule::PlateTwice { row: 0 })));
    let none = problems(|d| d.truck.plate.iter_mut().for_each(|p| p.rows.clear()));
    assert_eq!(none, [("truck.plate.rows".to_owned(), Rule::Required)]);
    let many = problems(|d| {
        if let Some(plate) = &mut d.truck.plate {
            plate.rows = vec![plate.rows[0].clone(); 41];
        }
    });
    assert!(many.iter().any(|(name, rule)| name == "truck.plate.rows" && matches!(rule, Rule::TooLong { most: 40 })));
}

/// Without a plate there is nothing to infer from: the balance must be given.
#[test]
fn without_a_plate_the_height_must_be_known() {
    let found = problems(|d| d.truck.plate = None);
    assert_eq!(found, [("truck.cg_height_m".to_owned(), Rule::Required)]);
    assert_eq!(problems(|d| (d.truck.plate, d.truck.cg_height_m) = (None, Some(0.55))), []);
}

#[test]
fn what_was_not_entered_is_named() {
    let mut document = example::document(example::THREE_WHEEL);
    document.truck.mast.give_deg = None;
    document.lift.heel_gap_m = None;
    let scenario = Scenario::from_document(&document).expect("complete");
    let names: Vec<_> = scenario.assumed.iter().map(|a| a.place.to_string()).collect();
    for name in
        ["truck.mast.give_deg", "lift.heel_gap_m", "truck.operator_kg", "truck.battery.behind_m", "truck.mast.play_deg"]
    {
        assert!(names.contains(&name.to_owned()), "{name}");
    }
    assert!(scenario.assumed.iter().all(|a| a.lo <= a.hi));
}

#[test]
fn a_remedy_fits_its_rule() {
    let within = Problem::new(
        Field::LoadMass,
        Some(-1.0),
        Rule::Within { min: Scalar::computed(1.0), max: Scalar::computed(2.0) },
    );
    assert_eq!(within.remedy, Remedy::EnterWithin { min: Scalar::computed(1.0), max: Scalar::computed(2.0) });
    let tall = Problem::new(
        Field::LiftHeight,
        Some(9.0),
        Rule::NotMoreThan { limit: Scalar::computed(4.7), of: Field::MastLift.into() },
    );
    assert_eq!(tall.remedy, Remedy::AtMost { value: Scalar::computed(4.7) });
}

#[test]
fn how_a_figure_is_known_must_make_sense() {
    use crate::document::{By, Known};
    let problems = |path: &str, by: Option<By>, tolerance: Option<f64>| {
        let mut document = example::document(example::THREE_WHEEL);
        document.known.insert(path.to_owned(), Known { by, tolerance });
        let found = Scenario::from_document(&document).err().unwrap_or_default();
        found.into_iter().map(|p| (p.place, p.rule)).collect::<Vec<_>>()
    };
    assert_eq!(problems("truck.tread_m", Some(By::Tape), Some(0.002)), []);
    assert_eq!(problems("load.mass_kg", None, Some(3.0)), []);
    let refused = |path: &str| vec![(Place::from(Field::Known), Rule::NotKnownSo { path: path.to_owned() })];
    assert_eq!(problems("truck.colour", Some(By::Tape), None), refused("truck.colour"));
    assert_eq!(problems("truck.tread_m", Some(By::Scale), None), refused("truck.tread_m"));
    let row = "truck.plate.rows[0].capacity_kg";
    assert_eq!(problems(row, None, Some(5.0)), refused(row));
    for wrong in [-0.001, 5.0, f64::NAN, f64::INFINITY] {
        let found = problems("truck.tread_m", None, Some(wrong));
        assert!(matches!(found[..], [(_, Rule::ToleranceWithin { .. })]), "{wrong}: {found:?}");
    }
}

/// What a plate or a type sheet bears besides figures.
#[test]
fn texts_of_plates_are_short_days_are_days_and_sheet_figures_go_in_pairs() {
    let mut document = example::document(example::THREE_WHEEL);
    document.truck.serial = "x".repeat(MOST_LETTERS + 1);
    document.truck.type_name = "\u{e9}".repeat(MOST_LETTERS);
    (document.truck.rated_load_centre_m, document.truck.steer_axle_laden_kg) = (None, None);
    if let Some(plate) = &mut document.truck.plate {
        (plate.issued, plate.attachment) = ("May 2024".to_owned(), "y".repeat(1000));
    }
    let problems = Scenario::from_document(&document).expect_err("five things");
    let found: Vec<_> = problems.iter().map(|p| (p.place.field, &p.rule)).collect();
    let (most, with) = (MOST_LETTERS, |f: Field| Rule::Together { with: f.into() });
    assert_eq!(
        found,
        [
            (Field::RatedCentre, &with(Field::Rated)),
            (Field::SteerAxleLaden, &with(Field::FrontAxleLaden)),
            (Field::Serial, &Rule::TooLong { most }),
            (Field::PlateIssued, &Rule::NotADay),
            (Field::PlateAttachment, &Rule::TooLong { most }),
        ]
    );
}
