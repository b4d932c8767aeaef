use super::*;
use crate::example;

/// The first example's truck: bare forks, a plate with a battery window.
fn plated() -> Truck {
    let mut truck = example::document(example::THREE_WHEEL).truck;
    let plate = truck.plate.get_or_insert_default();
    (plate.mast_lift_m, plate.tyres) = (Some(4.7), Some(Tyres::SolidPneumatic));
    (plate.tilt_back_deg, plate.tilt_forward_deg) = (Some(6.0), Some(5.0));
    truck.tyres = Some(Tyres::SolidPneumatic);
    truck
}

fn clamp(name: &str, kg: f64) -> Attachment {
    Attachment { name: name.to_owned(), mass_kg: Some(kg), lost_load_m: Some(0.1), ..Attachment::default() }
}

#[test]
fn what_is_the_same_is_covered() {
    assert_eq!(differences(&plated(), &plated()), []);
}

#[test]
fn each_change_is_named_with_both_figures() {
    let changed = |change: &dyn Fn(&mut Truck)| {
        let mut today = plated();
        change(&mut today);
        differences(&plated(), &today)
    };
    let fitted = changed(&|t| t.attachment = Some(clamp("Drum clamp", 120.0)));
    assert_eq!(fitted, [Difference::AttachmentFitted { name: "Drum clamp".to_owned(), mass_kg: Some(120.0) }]);
    let mast = changed(&|t| t.mast.lift_m = Some(5.5));
    assert_eq!(mast, [Difference::Mast { field: Field::MastLift.into(), named: 4.7, fitted: 5.5 }]);
    let tyres = changed(&|t| t.tyres = Some(Tyres::Pneumatic));
    assert_eq!(tyres, [Difference::OtherTyres { named: Tyres::SolidPneumatic, fitted: Tyres::Pneumatic }]);
    let battery = changed(&|t| t.battery.fitted_kg = Some(700.0));
    assert_eq!(battery, [Difference::Battery { fitted: 700.0, min: Some(820.0), max: Some(960.0) }]);
    let tilt = changed(&|t| t.mast.tilt_forward_deg = Some(8.0));
    assert_eq!(tilt, [Difference::Tilt { field: Field::MaxTiltForward.into(), named: 5.0, fitted: 8.0 }]);
    assert_eq!(changed(&|t| t.mast.tilt_forward_deg = Some(3.0)), [], "less tilt is within the plate");
    assert_eq!(changed(&|t| t.forks.extension_m = Some(1.6)), [Difference::Extensions]);
    let face = changed(&|t| t.load_distance_m = Some(0.4));
    assert_eq!(face, [Difference::LoadDistance { named: 0.36, fitted: 0.4 }]);
}

#[test]
fn what_was_not_entered_is_never_taken_to_be_the_same() {
    for (field, clear) in [
        (Field::BatteryFitted, (|t| t.battery.fitted_kg = None) as fn(&mut Truck)),
        (Field::MastLift, |t| t.mast.lift_m = None),
        (Field::Tyres, |t| t.tyres = None),
        (Field::MaxTiltBack, |t| t.mast.tilt_back_deg = None),
        (Field::LoadDistance, |t| t.load_distance_m = None),
    ] {
        let mut today = plated();
        clear(&mut today);
        assert_eq!(differences(&plated(), &today), [Difference::NotEntered { field: field.into() }]);
    }
    let mut unsaid = plated();
    unsaid.plate.get_or_insert_default().issued_for = None;
    assert_eq!(differences(&unsaid, &plated()), [Difference::FrontEndNotSaid]);
}

#[test]
fn an_attachment_is_known_by_its_name_and_its_weight() {
    let mut set_up = plated();
    set_up.attachment = Some(clamp("Drum clamp", 120.0));
    set_up.plate.get_or_insert_default().issued_for = Some(PlateFor::Attachment);
    let with = |attachment: Option<Attachment>| differences(&set_up, &Truck { attachment, ..set_up.clone() });
    assert_eq!(with(Some(clamp("drum  CLAMP", 122.0))), []);
    assert_eq!(with(Some(clamp("", 120.0))), [], "its weight says that it is the same");
    let bare = [Difference::AttachmentMissing { name: "Drum clamp".to_owned(), mass_kg: Some(120.0) }];
    assert_eq!(with(None), bare);
    assert!(matches!(with(Some(clamp("Bale clamp", 120.0)))[..], [Difference::OtherAttachment { .. }]));
    assert!(matches!(with(Some(clamp("Drum clamp", 180.0)))[..], [Difference::OtherAttachment { .. }]));
    let thicker = Attachment { lost_load_m: Some(0.15), ..clamp("Drum clamp", 120.0) };
    let thicker_differs = Difference::AttachmentFigure { field: Field::LostLoad.into(), named: 0.1, fitted: 0.15 };
    assert_eq!(with(Some(thicker)), [thicker_differs]);
    let unweighed = Attachment { mass_kg: None, ..clamp("Drum clamp", 0.0) };
    assert_eq!(with(Some(unweighed)), [Difference::NotEntered { field: Field::AttachmentMass.into() }]);
}

/// The plate with fewest differences is named first; what is put away, or has no plate, not at all.
#[test]
fn of_several_plates_the_nearest_comes_first() {
    let set_up = |id: &str, truck: Truck| SetUp { id: id.to_owned(), truck, ..SetUp::default() };
    let mut clamped = plated();
    clamped.attachment = Some(clamp("Drum clamp", 120.0));
    clamped.plate.get_or_insert_default().issued_for = Some(PlateFor::Attachment);
    let away = SetUp { archived: true, ..set_up("away", plated()) };
    let bare = set_up("none", Truck { plate: None, ..plated() });
    let list = vec![set_up("forks", plated()), set_up("clamp", clamped.clone()), away, bare];
    let record = TruckRecord { set_ups: list, ..TruckRecord::default() };
    let found = covering(&record, &Truck { plate: None, ..clamped });
    assert_eq!(
        found.iter().map(|c| (c.set_up.as_str(), c.exactly())).collect::<Vec<_>>(),
        [("clamp", true), ("forks", false)]
    );
}

/// What is covered exactly is no gap of that kind to the check of a load either.
#[test]
fn covered_is_covered_for_the_check_too() {
    use crate::plate::Gap;
    let mut document = example::document(example::THREE_WHEEL);
    for lift in [4.7, 5.2] {
        document.truck = plated();
        document.truck.mast.lift_m = Some(lift);
        let covered = differences(&plated(), &document.truck).is_empty();
        let scenario = crate::scenario::Scenario::from_document(&document).expect("complete");
        let placed = crate::body::Placed::of(&scenario.load, &scenario.lift);
        let of_truck =
            |gap: &Gap| matches!(gap, Gap::OtherMast { .. } | Gap::OtherTyres { .. } | Gap::OtherTilt { .. });
        let gaps = plate::check(&scenario, &placed).findings;
        assert_eq!(covered, !gaps.iter().any(|f| of_truck(&f.gap)), "{lift}: {gaps:?}");
    }
}
