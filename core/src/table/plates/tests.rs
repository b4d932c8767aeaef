use super::*;
use crate::book::{SetUp, TruckRecord};
use crate::document::{Attachment, Truck};
use crate::example;

fn wrongs(text: &str) -> Vec<(usize, String, Fault)> {
    let wrongs = plates_from_csv(text).expect_err("something is wrong");
    wrongs.into_iter().map(|w| (w.row, w.column.map(|c| c.letters).unwrap_or_default(), w.fault)).collect()
}

fn one(row: usize, column: &str, fault: Fault) -> Vec<(usize, String, Fault)> {
    vec![(row, column.to_owned(), fault)]
}

/// Some trucks with all that a plate may say, and names that a spreadsheet must not take for formulas.
fn book() -> Book {
    let mut truck = example::document(example::THREE_WHEEL).truck;
    truck.serial = "-17".to_owned();
    truck.attachment = Some(Attachment { name: "Clamp, \"wide\"\r\n=1".to_owned(), ..Attachment::default() });
    let plate = truck.plate.as_mut().expect("a plate");
    plate.issued_for = Some(PlateFor::Attachment);
    (plate.attachment, plate.attachment_kg) = ("@clamp".to_owned(), Some(136.077));
    (plate.mast_lift_m, plate.tyres) = (Some(4.7), Some(Tyres::SolidPneumatic));
    (plate.tilt_back_deg, plate.tilt_forward_deg) = (Some(6.0), Some(2.5));
    (plate.battery_min_kg, plate.battery_max_kg) = (Some(810.5), Some(910.125));
    (plate.extensions, plate.issued) = (true, "2024-03-12".to_owned());
    let other = example::document(example::FOUR_WHEEL).truck;
    let set_up = |name: &str, truck: &Truck, archived| SetUp {
        name: name.to_owned(),
        truck: truck.clone(),
        archived,
        ..SetUp::default()
    };
    let bare = Truck { plate: None, ..other.clone() };
    let set_ups = vec![set_up("Clamp", &truck, false), set_up("+Forks", &other, true), set_up("Bare", &bare, false)];
    let trucks = vec![
        TruckRecord { name: "Gr\u{fc}ne; Ente".to_owned(), set_ups: set_ups.clone(), ..TruckRecord::default() },
        TruckRecord { name: "'=tricky".to_owned(), set_ups, archived: true, ..TruckRecord::default() },
    ];
    Book { trucks, ..Book::default() }
}

fn written(book: &Book) -> Vec<PlateIn> {
    let set_ups = book.trucks.iter().flat_map(|t| t.set_ups.iter().map(move |s| (t, s)));
    let plate_in = |(record, set_up): (&TruckRecord, &SetUp)| {
        let truck = &set_up.truck;
        Some(PlateIn {
            truck: record.name.clone(),
            serial: truck.serial.clone(),
            set_up: set_up.name.clone(),
            attachment: truck.attachment.as_ref().map(|a| a.name.clone()).unwrap_or_default(),
            archived: record.archived || set_up.archived,
            plate: truck.plate.clone()?,
        })
    };
    set_ups.filter_map(plate_in).collect()
}

#[test]
fn what_is_written_is_read_back_to_the_last_letter_and_figure() {
    let table = csv_of_trucks(&book(), System::Metric);
    assert!(table.contains(",136.0770,") && table.contains("\"Clamp, \"\"wide\"\"\r\n'=1\"") && table.contains("'-17"));
    assert_eq!(plates_from_csv(&table), Ok(written(&book())));
    let plates = plates_from_csv(&format!("\u{feff}{}", table.replace("\r\n", "\n"))).expect("read");
    assert_eq!(plates[1], written(&book())[1]);
}

#[test]
fn in_inches_and_pounds_a_plate_comes_back_to_a_millionth() {
    let table = csv_of_trucks(&book(), System::Us);
    assert!(table.lines().next().is_some_and(|l| l.ends_with("issued,height_in,load_centre_in,capacity_lb")));
    let plates = plates_from_csv(&table).expect("read");
    for (read, was) in plates.iter().zip(written(&book())) {
        for (a, b) in read.plate.rows.iter().zip(&was.plate.rows) {
            let near = |a: Option<f64>, b: Option<f64>| a.zip(b).is_some_and(|(a, b)| (a - b).abs() < 1e-6);
            assert!(near(a.capacity_kg, b.capacity_kg) && near(a.height_m, b.height_m), "{a:?} {b:?}");
            assert!(near(a.load_centre_m, b.load_centre_m), "{a:?} {b:?}");
        }
        assert_eq!((&read.truck, read.plate.rows.len()), (&was.truck, was.plate.rows.len()));
    }
}

#[test]
fn a_table_as_people_keep_it() {
    for text in [
        "Truck;Lift height [mm];Load centre (mm);Capacity kg\r\nBlue;3300;500;1 580\r\n;;;\r\nBlue;4700;500;1200,5\r\n",
        "\u{feff}truck\tHeight_m\tload-center cm\tCAPACITY (t)\nBlue\t3,3\t50\t1,580\n\nBlue\t4,7\t50\t1,2005\n\n",
        "capacity lb,load centre in,height ft,truck\n3483.34,19.685,10.8268,Blue\n2646.65,19.685,15.42,Blue",
    ] {
        let plates = plates_from_csv(text).expect(text);
        assert_eq!((plates.len(), plates[0].truck.as_str(), plates[0].plate.rows.len()), (1, "Blue", 2));
        for (row, figures) in plates[0].plate.rows.iter().zip([(3.3, 0.5, 1580.0), (4.7, 0.5, 1200.5)]) {
            let near = |a: Option<f64>, b: f64| a.is_some_and(|a| (a - b).abs() < 1e-4 * b);
            assert!(near(row.height_m, figures.0) && near(row.load_centre_m, figures.1), "{text} {row:?}");
            assert!(near(row.capacity_kg, figures.2), "{text} {row:?}");
        }
    }
}

#[test]
fn what_the_names_lack_is_said_with_the_word() {
    let lengths = &["m", "cm", "mm", "in", "ft"][..];
    let masses = &["kg", "t", "lb"][..];
    assert_eq!(
        wrongs("height,load centre mm,capacity kg\n3300,500,1580"),
        one(1, "A", Fault::NoUnit { units: lengths })
    );
    assert_eq!(
        wrongs("\nheight mm,load centre kg,capacity kg\n3300,500,1580"),
        one(2, "B", Fault::OtherUnit { units: lengths })
    );
    assert_eq!(
        wrongs("height mm,load centre mm,capacity stone\n1,1,1"),
        [
            (1, String::new(), Fault::NoColumn { name: "capacity", units: masses }),
            (1, "C".to_owned(), Fault::OtherUnit { units: masses })
        ]
        .into_iter()
        .rev()
        .collect::<Vec<_>>()
    );
    assert_eq!(wrongs("height mm;load centre mm;capacity kg;colour\n1;1;1;1"), one(1, "D", Fault::UnknownColumn));
    assert_eq!(wrongs("height mm;load centre mm;capacity kg;height m\n1;1;1;1"), one(1, "D", Fault::ColumnTwice));
    assert_eq!(wrongs(""), one(1, "", Fault::Empty));
    assert_eq!(wrongs("\n\nheight mm;load centre mm;capacity kg\n\n"), one(3, "", Fault::Empty));
    let name = plates_from_csv("height mm,load centre mm,capacity kg,Farbe (neu)\n1,1,1,1").expect_err("unknown");
    assert_eq!(name[0].column.as_ref().map(|c| c.name.as_str()), Some("Farbe (neu)"));
}

#[test]
fn every_fault_of_a_cell_has_its_row_and_column() {
    let head = "truck;issued;height m;load centre mm;capacity kg\n";
    let at = |row: &str| wrongs(&format!("{head}\nA;;3;500;900\n{row}"));
    let text = |t: &str| t.to_owned();
    assert_eq!(at("A;;4;500;1,580"), one(4, "E", Fault::Ambiguous { text: text("1,580") }));
    assert_eq!(at("A;;4;500;abc"), one(4, "E", Fault::NotANumber { text: text("abc") }));
    assert_eq!(at("A;;4;;800"), one(4, "D", Fault::Needed));
    assert_eq!(at("A;;4;500"), one(4, "", Fault::Cells { found: 4, names: 5 }));
    assert_eq!(at("A;;4;500;8;9"), one(4, "", Fault::Cells { found: 6, names: 5 }));
    assert_eq!(at("A;2024-13-01;4;500;800")[0], (4, text("B"), Fault::NotADay { text: text("2024-13-01") }));
    assert_eq!(at("A;2024-12-01;4;500;800"), one(4, "B", Fault::Disagrees { row: 3 }));
    assert_eq!(at("A;;3;500;900"), one(4, "E", Fault::Twice { row: 3 }));
    assert_eq!(at("A;;4;500;950"), one(4, "E", Fault::Falls { row: 3 }));
    assert_eq!(at("A;;2;500;850"), one(4, "E", Fault::Falls { row: 3 }));
    let (min, max) = (crate::scalar::Scalar::computed(200.0), crate::scalar::Scalar::computed(3000.0));
    assert_eq!(at("A;;4;50000;800"), one(4, "D", Fault::Within { text: text("50000"), min, max, unit: "mm" }));
    assert_eq!(at("A;;4;\"500;800"), one(4, "D", Fault::QuoteOpen));
    // All at once.
    assert_eq!(at("A;;x;y;z\nA;;;;").len(), 6);
    assert_eq!(at("A;;x;y;z\nA;;4;500;\n").len(), 4);
    // Another truck is another plate.
    assert_eq!(plates_from_csv(&format!("{head}A;;3;500;900\nB;;4;500;950")).map(|p| p.len()), Ok(2));
    let many: String = (0..=MOST_PLATE_ROWS).map(|k| format!("A;;{};500;900\n", 1.0 + 0.1 * k as f64)).collect();
    let most = Fault::TooManyPlateRows { most: MOST_PLATE_ROWS };
    assert_eq!(wrongs(&format!("{head}{many}")), one(MOST_PLATE_ROWS + 2, "C", most));
}
