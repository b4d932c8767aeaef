//! Trucks and their plates: a row for each row of a plate.

use super::cells::Row;
use super::head::{Column, Sheet};
use super::write::Writer;
use super::wrong::{Fault, Wrong};
use crate::book::Book;
use crate::document::{Plate, PlateFor, PlateRow, Tyres};
use crate::place::Field;
use crate::units::Quantity::{Angle, Length, Mass};
use crate::units::System;
use crate::validate::MOST_PLATE_ROWS;

const TRUCK: &str = "truck";
const SERIAL: &str = "serial";
const SET_UP: &str = "set up";
const ATTACHMENT: &str = "attachment";
const ARCHIVED: &str = "archived";
const ISSUED_FOR: &str = "plate for";
const NAMES: &str = "plate attachment";
const NAMES_WEIGHT: &str = "plate attachment weight";
const MAST_LIFT: &str = "plate mast lift";
const TYRES: &str = "plate tyres";
const TILT_BACK: &str = "plate tilt back";
const TILT_FORWARD: &str = "plate tilt forward";
const EXTENSIONS: &str = "plate extensions";
const BATTERY_MIN: &str = "battery min";
const BATTERY_MAX: &str = "battery max";
const ISSUED: &str = "issued";
const HEIGHT: &str = "height";
const CENTRE: &str = "load centre";
const CAPACITY: &str = "capacity";

static COLUMNS: [Column; 19] = [
    Column::text(&[TRUCK], false),
    Column::text(&[SERIAL, "serial number"], false),
    Column::text(&[SET_UP, "setup"], false),
    Column::text(&[ATTACHMENT], false),
    Column::text(&[ARCHIVED], false),
    Column::text(&[ISSUED_FOR, "issued for"], false),
    Column::text(&[NAMES], false),
    Column::figure(&[NAMES_WEIGHT], Mass, false),
    Column::figure(&[MAST_LIFT], Length, false),
    Column::text(&[TYRES], false),
    Column::figure(&[TILT_BACK], Angle, false),
    Column::figure(&[TILT_FORWARD], Angle, false),
    Column::text(&[EXTENSIONS], false),
    Column::figure(&[BATTERY_MIN], Mass, false),
    Column::figure(&[BATTERY_MAX], Mass, false),
    Column::text(&[ISSUED], false),
    Column::figure(&[HEIGHT, "lift height"], Length, true),
    Column::figure(&[CENTRE, "load center"], Length, true),
    Column::figure(&[CAPACITY], Mass, true),
];

const YES_NO: &[&str] = &["yes", "no"];
const FORS: &[&str] = &["forks", "attachment"];
const TYRE_WORDS: &[&str] = &["cushion", "solid_pneumatic", "pneumatic"];
const TYRE_KINDS: [Tyres; 3] = [Tyres::Cushion, Tyres::SolidPneumatic, Tyres::Pneumatic];

/// Every plate of the book, archived trucks and set-ups too, which say so; a set-up without a plate has no row.
///
/// ```
/// use standfast_core::{book::Book, table::csv_of_trucks, units::System};
/// let names = csv_of_trucks(&Book::default(), System::Metric);
/// assert!(names.starts_with("truck,serial,set_up,") && names.ends_with("height_m,load_centre_m,capacity_kg\r\n"));
/// ```
pub fn csv_of_trucks(book: &Book, system: System) -> String {
    let mut table = Writer::new(COLUMNS.iter().map(|c| (c.names[0], c.quantity)), system);
    for record in &book.trucks {
        for set_up in &record.set_ups {
            let truck = &set_up.truck;
            let Some(plate) = &truck.plate else { continue };
            for row in &plate.rows {
                table.text(&record.name);
                table.text(&truck.serial);
                table.text(&set_up.name);
                table.text(truck.attachment.as_ref().map_or("", |a| &a.name));
                table.word(if record.archived || set_up.archived { "yes" } else { "no" });
                table.word(plate.issued_for.map_or("", |f| FORS[usize::from(f == PlateFor::Attachment)]));
                table.text(&plate.attachment);
                table.figure(plate.attachment_kg);
                table.figure(plate.mast_lift_m);
                let tyres = plate.tyres.and_then(|t| TYRE_KINDS.iter().position(|k| *k == t));
                table.word(tyres.map_or("", |k| TYRE_WORDS[k]));
                table.figure(plate.tilt_back_deg);
                table.figure(plate.tilt_forward_deg);
                table.word(if plate.extensions { "yes" } else { "no" });
                table.figure(plate.battery_min_kg);
                table.figure(plate.battery_max_kg);
                table.text(&plate.issued);
                table.figure(row.height_m);
                table.figure(row.load_centre_m);
                table.figure(row.capacity_kg);
            }
        }
    }
    table.done()
}

/// A plate as a table has it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PlateIn {
    /// What the truck is called; empty where the table does not say.
    pub truck: String,
    /// Its serial number.
    pub serial: String,
    /// What the set-up is called.
    pub set_up: String,
    /// The attachment that is fitted in it.
    pub attachment: String,
    /// Whether it is put away.
    pub archived: bool,
    /// The plate.
    pub plate: Plate,
}

impl PlateIn {
    fn is_of_same(&self, other: &Self) -> bool {
        (&self.truck, &self.serial, &self.set_up) == (&other.truck, &other.serial, &other.set_up)
    }
}

/// The plates of a table, in its order: rows with the same truck, serial number and set-up are of one plate.
/// Needed are the columns `height`, `load centre` and `capacity`, each with its unit.
///
/// # Errors
/// All that is wrong, by row; then nothing is taken.
///
/// ```
/// use standfast_core::table::plates_from_csv;
/// let plates = plates_from_csv("height mm;load centre mm;capacity kg\r\n3300;500;1580\r\n4700;500;1200\r\n");
/// assert_eq!(plates.map(|p| p[0].plate.rows.len()), Ok(2));
/// let wrong = plates_from_csv("height m;load centre m;capacity kg\n3,3;0,5;1,580").expect_err("a thousand and more?");
/// assert_eq!((wrong[0].row, wrong[0].column.as_ref().map(|c| c.letters.as_str())), (2, Some("C")));
/// ```
pub fn plates_from_csv(text: &str) -> Result<Vec<PlateIn>, Vec<Wrong>> {
    let mut sheet = Sheet::read(text, &COLUMNS)?;
    let mut plates: Vec<(PlateIn, Vec<usize>)> = Vec::new();
    for row in sheet.rows() {
        let read = plate_in(&mut sheet, &row);
        let figures = PlateRow {
            height_m: sheet.needed(&row, HEIGHT, Field::PlateHeight),
            load_centre_m: sheet.needed(&row, CENTRE, Field::PlateLoadCentre),
            capacity_kg: sheet.needed(&row, CAPACITY, Field::PlateCapacity),
        };
        let k = plates.iter().position(|(p, _)| p.is_of_same(&read)).unwrap_or_else(|| {
            plates.push((read.clone(), Vec::new()));
            plates.len() - 1
        });
        let (plate, numbers) = &mut plates[k];
        if let (Some(first), Some(column)) = (numbers.first(), differs(plate, &read)) {
            sheet.wrong(&row, column, Fault::Disagrees { row: *first });
        }
        if plate.plate.rows.len() == MOST_PLATE_ROWS {
            sheet.wrong(&row, HEIGHT, Fault::TooManyPlateRows { most: MOST_PLATE_ROWS });
            continue;
        }
        if let Some((at, twice)) = contradicted(&plate.plate.rows, &figures) {
            let row_number = numbers[at];
            let fault = if twice { Fault::Twice { row: row_number } } else { Fault::Falls { row: row_number } };
            sheet.wrong(&row, CAPACITY, fault);
        }
        plate.plate.rows.push(figures);
        numbers.push(row.number);
    }
    sheet.done(plates.into_iter().map(|(plate, _)| plate).collect())
}

/// What a row says of its plate, but for the figures of the row.
fn plate_in(sheet: &mut Sheet, row: &Row) -> PlateIn {
    let fors = [PlateFor::Forks, PlateFor::Attachment];
    PlateIn {
        truck: sheet.text(row, TRUCK),
        serial: sheet.text(row, SERIAL),
        set_up: sheet.text(row, SET_UP),
        attachment: sheet.text(row, ATTACHMENT),
        archived: sheet.word(row, ARCHIVED, YES_NO) == Some(0),
        plate: Plate {
            issued_for: sheet.word(row, ISSUED_FOR, FORS).map(|k| fors[k]),
            rows: Vec::new(),
            battery_min_kg: sheet.figure(row, BATTERY_MIN, Field::PlateBatteryMin),
            battery_max_kg: sheet.figure(row, BATTERY_MAX, Field::PlateBatteryMax),
            extensions: sheet.word(row, EXTENSIONS, YES_NO) == Some(0),
            issued: sheet.day(row, ISSUED),
            attachment: sheet.text(row, NAMES),
            attachment_kg: sheet.figure(row, NAMES_WEIGHT, Field::PlateAttachmentMass),
            mast_lift_m: sheet.figure(row, MAST_LIFT, Field::PlateMastLift),
            tyres: sheet.word(row, TYRES, TYRE_WORDS).map(|k| TYRE_KINDS[k]),
            tilt_back_deg: sheet.figure(row, TILT_BACK, Field::PlateTiltBack),
            tilt_forward_deg: sheet.figure(row, TILT_FORWARD, Field::PlateTiltForward),
        },
    }
}

/// The first column in which two rows say different things of their plate.
fn differs(a: &PlateIn, b: &PlateIn) -> Option<&'static str> {
    let (p, q) = (&a.plate, &b.plate);
    let same = [
        (ATTACHMENT, a.attachment == b.attachment),
        (ARCHIVED, a.archived == b.archived),
        (ISSUED_FOR, p.issued_for == q.issued_for),
        (NAMES, p.attachment == q.attachment),
        (NAMES_WEIGHT, p.attachment_kg == q.attachment_kg),
        (MAST_LIFT, p.mast_lift_m == q.mast_lift_m),
        (TYRES, p.tyres == q.tyres),
        (TILT_BACK, p.tilt_back_deg == q.tilt_back_deg),
        (TILT_FORWARD, p.tilt_forward_deg == q.tilt_forward_deg),
        (EXTENSIONS, p.extensions == q.extensions),
        (BATTERY_MIN, p.battery_min_kg == q.battery_min_kg),
        (BATTERY_MAX, p.battery_max_kg == q.battery_max_kg),
        (ISSUED, p.issued == q.issued),
    ];
    same.into_iter().find(|(_, same)| !same).map(|(column, _)| column)
}

/// The earlier row that a row does not go with, and whether it is the same one twice: no plate allows more
/// where it is lifted higher or stands further out.
fn contradicted(rows: &[PlateRow], late: &PlateRow) -> Option<(usize, bool)> {
    let figures = |r: &PlateRow| Some((r.height_m?, r.load_centre_m?, r.capacity_kg?));
    let b = figures(late)?;
    rows.iter().enumerate().find_map(|(at, row)| {
        let a = figures(row)?;
        let twice = a.0.total_cmp(&b.0).is_eq() && a.1.total_cmp(&b.1).is_eq();
        let falls = |low: (f64, f64, f64), high: (f64, f64, f64)| high.0 >= low.0 && high.1 >= low.1 && high.2 > low.2;
        (twice || falls(a, b) || falls(b, a)).then_some((at, twice))
    })
}

#[cfg(test)]
mod tests;
