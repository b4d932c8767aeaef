//! The capacity of one set-up: weight against load centre for several heights.

use super::write::Writer;
use crate::body::Placed;
use crate::capacity;
use crate::document::Document;
use crate::plate;
use crate::rules;
use crate::scenario::Scenario;
use crate::units::Quantity::{Length, Mass};
use crate::units::Rounding::Down;
use crate::units::System;

/// A row for each height and load centre of the [diagram](capacity::diagram): what the plate allows, what
/// the model would leave standing, and `allowed`, the less of the two. Everything is rounded down. Nothing is
/// allowed, and the cell is empty, where no plate covers it: none at that height and load centre, or one that
/// was issued for another truck than this one as it stands. None where something is missing in the document.
///
/// ```
/// use standfast_core::{example, table::csv_of_capacity, units::System};
/// let document = example::document(example::THREE_WHEEL);
/// let table = csv_of_capacity(&document, ["Copperbeck 3", "Forks"], System::Metric).expect("complete");
/// assert!(table.starts_with("truck,set_up,height_m,load_centre_m,plate_allows_kg,model_estimate_kg,allowed_kg\r\n"));
/// ```
pub fn csv_of_capacity(document: &Document, [truck, set_up]: [&str; 2], system: System) -> Option<String> {
    let diagram = capacity::diagram(document)?;
    let scenario = Scenario::from_document(document).ok()?;
    let placed = Placed::of(&scenario.load, &scenario.lift);
    let issued_so = !plate::check(&scenario, &placed).findings.iter().any(|f| f.gap.is_of_another_truck());
    let part = if scenario.load.hanging.is_some() { rules::HANGING_PART.value } else { 1.0 };
    let plate = scenario.truck.plate.as_ref().filter(|_| issued_so);
    let columns = [
        ("truck", None),
        ("set up", None),
        ("height", Some(Length)),
        ("load centre", Some(Length)),
        ("plate allows", Some(Mass)),
        ("model estimate", Some(Mass)),
        ("allowed", Some(Mass)),
    ];
    let mut table = Writer::new(columns, system);
    for curve in &diagram.curves {
        for point in &curve.points {
            let (height, centre) = (curve.height.get(), point.load_centre.get());
            let plate = plate.and_then(|p| p.row_for(height, centre)).map(|(_, row)| row.capacity * part);
            // No weight at all is left.
            let model = point.mass.map_or(0.0, |m| m.get());
            table.text(truck);
            table.text(set_up);
            table.rounded(Some(height), 3, Down);
            table.rounded(Some(centre), 3, Down);
            table.rounded(plate, 0, Down);
            table.rounded(Some(model), 0, Down);
            table.rounded(plate.map(|p| p.min(model)), 0, Down);
        }
    }
    Some(table.done())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::PlateFor;
    use crate::example;

    fn rows(document: &Document, system: System) -> Vec<Vec<String>> {
        let table = csv_of_capacity(document, ["T", "S"], system).expect("complete");
        table.lines().skip(1).map(|r| r.split(',').map(str::to_owned).collect()).collect()
    }

    /// Never more than the plate's row, nor than the model leaves; beyond the plate nothing.
    #[test]
    fn the_less_of_plate_and_model_is_allowed() {
        let document = example::document(example::THREE_WHEEL);
        let plate = document.truck.plate.as_ref().expect("a plate");
        let (mut allowed, mut beyond) = (0, 0);
        for row in rows(&document, System::Metric) {
            let number = |k: usize| row[k].parse::<f64>().ok();
            let (height, centre) = (number(2).expect("a height"), number(3).expect("a centre"));
            let covering = |r: &&crate::document::PlateRow| {
                r.height_m.is_some_and(|h| h >= height) && r.load_centre_m.is_some_and(|c| c >= centre)
            };
            let most = plate.rows.iter().filter(covering).filter_map(|r| r.capacity_kg).reduce(f64::max);
            assert_eq!(number(4).is_some(), most.is_some(), "{row:?}");
            match (number(6), most) {
                (Some(kg), Some(most)) => {
                    assert!(kg <= most && number(5).is_some_and(|m| kg <= m), "{row:?}");
                    allowed += 1;
                }
                (None, None) => beyond += 1,
                _ => panic!("{row:?}"),
            }
        }
        assert!(allowed > 10 && beyond > 5, "{allowed} {beyond}");
    }

    #[test]
    fn a_plate_for_something_else_allows_nothing() {
        let mut document = example::document(example::THREE_WHEEL);
        document.truck.plate.as_mut().expect("a plate").issued_for = Some(PlateFor::Attachment);
        for system in [System::Metric, System::Us] {
            assert!(rows(&document, system).iter().all(|r| r[4].is_empty() && r[6].is_empty() && !r[5].is_empty()));
        }
        document.truck.tread_m = None;
        assert_eq!(csv_of_capacity(&document, ["T", "S"], System::Metric), None);
    }
}
