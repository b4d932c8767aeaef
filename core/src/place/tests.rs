//! Every row against the document.

use super::*;
use crate::document::{Attachment, Part, Plate, PlateRow, Stage, Trace, WeighPoint, Weighing};

fn full() -> Document {
    let mut d = Document::default();
    d.truck.attachment = Some(Attachment::default());
    d.truck.plate = Some(Plate { rows: vec![PlateRow::default(); 2], ..Plate::default() });
    d.truck.mast.stages = vec![Stage::default(); 2];
    d.load.parts = vec![Part::default(); 2];
    d.load.trace = Some(Trace::default());
    d.load.weighing = Some(Weighing { points: vec![WeighPoint::default(); 2], ..Weighing::default() });
    d
}

#[test]
fn every_row_is_a_range_and_its_path_is_the_documents_own() {
    let mut d = full();
    let places = Place::all_numbers(&d);
    let listed = Field::NUMBERS.iter().filter(|f| f.row().path.contains("[]")).count();
    assert_eq!(places.len(), Field::NUMBERS.len() + listed);
    for (k, place) in places.iter().enumerate() {
        let row = place.field.row();
        assert!(row.min < row.max, "{place}");
        if let Some(number) = place.number(&mut d) {
            *number = Some(k as f64 + 0.5);
        }
    }
    let json: serde_json::Value = serde_json::from_str(&d.to_json()).expect("our own file");
    for (k, place) in places.iter().enumerate() {
        let pointer = format!("/{}", place.to_string().replace(['.', '['], "/").replace(']', ""));
        assert_eq!(json.pointer(&pointer).and_then(serde_json::Value::as_f64), Some(k as f64 + 0.5), "{place}");
        assert_eq!(place.get(&d), Some(k as f64 + 0.5));
    }
}
