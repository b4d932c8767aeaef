use super::*;
use standfast_core::document::{GivenAs, Side, Turned};
use standfast_core::friction::Underside;

fn part(shape: Shape) -> Part {
    Part { shape: Some(shape), ahead_m: Some(0.1), left_m: Some(-0.25), above_m: Some(1.0 / 3.0), ..Part::default() }
}

fn parts() -> Document {
    let mut document = Document::default();
    let load = &mut document.load;
    load.given_as = GivenAs::Parts;
    load.parts = vec![
        Part {
            name: "Bed".to_owned(),
            mass_kg: Some(812.5),
            weight_known: Some(WeightKnown::Scale),
            length_m: Some(1.2),
            width_m: Some(0.8),
            height_m: Some(0.1 + 0.2),
            ..part(Shape::Box)
        },
        Part { cut_from: Some(0), diameter_m: Some(0.2), length_m: Some(0.3), ..part(Shape::Cylinder) },
        Part {
            material: Some(Material::CastIron),
            diameter_m: Some(0.4),
            bore_m: Some(0.3),
            length_m: Some(0.5),
            facing: Facing::Left,
            ..part(Shape::Tube)
        },
        Part { diameter_m: Some(0.4), mass_kg: Some(40.0), ..part(Shape::Sphere) },
        Part {
            length_m: Some(0.4),
            mass_kg: Some(40.0),
            outline: vec![[0.0, 0.0], [0.3, 0.0], [0.0, 1.0 / 7.0]],
            ..part(Shape::Prism)
        },
    ];
    load.weighing = Some(Weighing {
        points: vec![WeighPoint { ahead_m: Some(0.1), reading_kg: Some(401.25), ..WeighPoint::default() }; 3],
        raised_end: Some(Side::Ahead),
        raised_m: Some(0.2),
        accuracy_kg: Some(0.5),
    });
    load.turned = Turned::Left;
    load.underside = Some(Underside::WoodenPallet);
    load.hanging = true;
    load.hook_above_m = Some(0.3);
    document
}

fn traced() -> Document {
    let mut document = Document::default();
    document.load.given_as = GivenAs::Trace;
    document.load.material = Some(Material::Steel);
    document.load.trace = Some(Trace {
        view: TraceView::Front,
        truck: PhotoTruck::Right,
        picture: Some([4000.0, 3000.0]),
        outline: vec![[10.5, 20.25], [1000.0 / 3.0, 20.0], [300.0, 700.125]],
        holes: vec![vec![[100.0, 100.0], [120.0, 100.0], [110.0, 130.0]]],
        scale: vec![[1.0, 2.0], [3.0, 4.0]],
        rectangle: vec![[0.0, 0.0], [9.0, 0.0], [9.0, 9.0], [0.0, 9.0]],
        rectangle_width_m: Some(0.8),
        rectangle_height_m: Some(0.6),
        through_m: Some(0.4),
        scale_m: None,
    });
    document
}

#[test]
fn a_load_of_any_kind_comes_back_as_it_was() {
    for document in [parts(), traced()] {
        let entries = Entries::from_document(&document);
        assert_eq!(entries.document(), (document.clone(), vec![]));
        assert_eq!(entries.file(), document);
        let text = serde_json::to_string(&entries).expect("stored");
        assert_eq!(serde_json::from_str::<Entries>(&text).expect("read"), entries);
    }
}

/// What another choice hides waits, counts for nothing, and goes into the file.
#[test]
fn another_way_in_hides_but_does_not_lose() {
    let mut entries = Entries::from_document(&parts());
    entries.enter(Place::in_row(Field::PartDiameter, 0), "nonsense", System::Metric);
    assert_eq!(entries.document().1, [], "a box has no diameter");
    entries.parts[0].shape = Some(Shape::Cylinder);
    assert_eq!(entries.document().1.len(), 1);
    entries.given_as = GivenAs::Block;
    let (document, problems) = entries.document();
    assert_eq!((problems, document.load.parts[0].mass_kg, document.load.parts[0].name.as_str()), (vec![], None, "Bed"));
    assert_eq!(entries.file().load.parts[0].mass_kg, Some(812.5));
    let back = Entries::from_document(&entries.file());
    assert_eq!(back.shown(Place::in_row(Field::PartMass, 0), System::Metric), "812.5");
}

/// A text from before parts were known still opens.
#[test]
fn older_texts_open() {
    let old = r#"{"note":"","truck_name":"T","load_name":"L","attachment_name":"","wheels":"three","weight_known":null,
        "centre_known":"middle","plate_for":null,"attachment":false,"plate":true,"plate_rows":1,"stages":0,
        "numbers":{"load.mass_kg":{"text":"900,","unit":"kilogram"}}}"#;
    let entries: Entries = serde_json::from_str(old).expect("an older text");
    assert_eq!((entries.given_as, entries.parts.len(), entries.weighing), (GivenAs::Block, 0, None));
    assert_eq!(entries.shown(Field::LoadMass.into(), System::Metric), "900,");
}

#[test]
fn a_part_goes_with_its_cut_outs_and_the_others_close_up() {
    let mut entries = Entries::from_document(&parts());
    entries.parts[4].cut_from = Some(3);
    entries.remove_part(0);
    let names: Vec<_> = entries.parts.iter().map(|p| (p.shape, p.cut_from)).collect();
    assert_eq!(names, [(Some(Shape::Tube), None), (Some(Shape::Sphere), None), (Some(Shape::Prism), Some(1))]);
    let shown = |field, row| entries.shown(Place::in_row(field, row), System::Metric);
    assert_eq!((shown(Field::PartBore, 0), shown(Field::PartDiameter, 1), shown(Field::PartLength, 2)), {
        ("300".to_owned(), "400".to_owned(), "400".to_owned())
    });
    assert!(entries.numbers.keys().all(|p| !OF_PART.contains(&p.field) || p.row < 3));
    let before = entries.clone();
    entries.remove_part(17);
    assert_eq!(entries, before);
}

#[test]
fn a_copy_is_the_same_with_cut_outs_of_its_own() {
    let mut entries = Entries::from_document(&parts());
    assert_eq!(entries.copy_part(0), Some(5));
    assert_eq!((entries.parts.len(), entries.parts[6].cut_from, entries.parts[1].cut_from), (7, Some(5), Some(0)));
    for field in OF_PART {
        for (from, to) in [(0, 5), (1, 6)] {
            assert_eq!(
                entries.numbers.get(&Place::in_row(field, from)),
                entries.numbers.get(&Place::in_row(field, to))
            );
        }
    }
    assert_eq!(entries.copy_part(17), None);
}
