//! What the diagram shows, in m and kg, and where it is on the sheet.

use crate::drawing::layout::{Want, spread};
use crate::drawing::projection::Spot;
use standfast_core::capacity::Diagram;
use standfast_core::document::PlateFor;
use standfast_core::plate::Outcome;
use standfast_core::scenario::{Plate, PlateRow};

/// What the model leaves at one height.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// Height of the forks, m.
    pub height: f64,
    /// Load centres, m, and the greatest weight there, kg; in order.
    pub points: Vec<(f64, f64)>,
}

/// What the plate allows at one height: from one load centre to the next, so much.
#[derive(Clone, Debug, PartialEq)]
pub struct Stair {
    /// Height of the forks, m.
    pub height: f64,
    /// From, to (m), and the weight (kg); in order.
    pub treads: Vec<(f64, f64, f64)>,
}

/// A figure with the ends of its range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ranged {
    pub lo: f64,
    pub at: f64,
    pub hi: f64,
}

/// The load as it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Now {
    /// Its centre from the face that carries it, m.
    pub centre: Ranged,
    /// Its weight, kg.
    pub mass: Ranged,
    /// The height it is raised to, m.
    pub height: f64,
}

/// All of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Chart {
    pub curves: Vec<Curve>,
    pub stairs: Vec<Stair>,
    /// Whether the plate was issued for the truck as it is fitted today.
    pub issued_so: bool,
    pub now: Now,
}

impl Chart {
    /// Of the core's diagram, and what it says of the plate.
    pub fn of(diagram: &Diagram, plate: &Outcome) -> Self {
        let load = &diagram.load;
        let curve = |c: &standfast_core::capacity::Curve| Curve {
            height: c.height.get(),
            // Where no weight at all is left the curve has come down to nothing.
            points: (c.points.iter())
                .map(|p| (p.load_centre.get(), p.mass.map_or(0.0, standfast_core::scalar::Scalar::get)))
                .collect(),
        };
        Self {
            curves: diagram.curves.iter().map(curve).collect(),
            stairs: stairs(diagram),
            issued_so: !plate.findings.iter().any(|f| f.gap.is_of_another_truck()),
            now: Now {
                centre: Ranged {
                    lo: load.load_centre_lo.get(),
                    at: load.load_centre.get(),
                    hi: load.load_centre_hi.get(),
                },
                mass: Ranged { lo: load.mass_lo.get(), at: load.mass.get(), hi: load.mass_hi.get() },
                height: load.height.get(),
            },
        }
    }

    /// The plate's height that answers for today's: the next one up.
    pub fn governing(&self) -> Option<&Stair> {
        let covers = |s: &&Stair| self.issued_so && s.height >= self.now.height - 1e-9;
        self.stairs.iter().filter(covers).min_by(|a, b| a.height.total_cmp(&b.height))
    }

    /// The model's curve for today's height, or for the next one up that is drawn: there it leaves no more.
    pub fn today(&self) -> Option<&Curve> {
        let covers = |c: &&Curve| c.height >= self.now.height - 1e-9;
        self.curves.iter().filter(covers).min_by(|a, b| a.height.total_cmp(&b.height))
    }

    /// The least load centre that is shown.
    pub fn nearest(&self) -> f64 {
        let curves = self.curves.iter().filter_map(|c| c.points.first()).map(|p| p.0);
        curves.chain([self.now.centre.lo]).fold(f64::INFINITY, f64::min).max(0.0)
    }

    /// The greatest load centre and the greatest weight that are shown.
    pub fn extent(&self) -> (f64, f64) {
        let curves = self.curves.iter().flat_map(|c| &c.points).copied();
        let stairs = self.stairs.iter().flat_map(|s| &s.treads).map(|t| (t.1, t.2));
        let now = (self.now.centre.hi, self.now.mass.hi);
        curves.chain(stairs).chain([now]).fold((0.1, 10.0), |m, p| (m.0.max(p.0), m.1.max(p.1)))
    }
}

/// The plate's rows as steps, one stair for each height: at a load centre what the plate's own rule gives.
fn stairs(diagram: &Diagram) -> Vec<Stair> {
    let rows = diagram.plate.iter().map(|r| PlateRow {
        height: r.height.get(),
        load_centre: r.load_centre.get(),
        capacity: r.capacity.get(),
    });
    let plate = Plate {
        issued_for: PlateFor::Forks,
        rows: rows.collect(),
        battery_min: None,
        battery_max: None,
        extensions: false,
        attachment: String::new(),
        attachment_mass: None,
        mast_lift: None,
        tyres: None,
        tilt_back: None,
        tilt_forward: None,
    };
    let sorted = |of: fn(&PlateRow) -> f64| {
        let mut all: Vec<f64> = plate.rows.iter().map(of).collect();
        all.sort_by(f64::total_cmp);
        all.dedup_by(|b, a| (*b - *a).abs() < 1e-9);
        all
    };
    let centres = sorted(|r| r.load_centre);
    let stair = |height: f64| {
        let from = std::iter::once(0.0).chain(centres.iter().copied());
        let tread =
            |(from, to): (f64, f64)| plate.row_for(height, 0.5 * (from + to)).map(|(_, row)| (from, to, row.capacity));
        Stair { height, treads: from.zip(centres.iter().copied()).map_while(tread).collect() }
    };
    sorted(|r| r.height).into_iter().map(stair).collect()
}

/// From load centre and weight to the sheet, each with a scale of its own.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// Left and bottom edge.
    pub origin: Spot,
    /// Right and top edge.
    pub far: Spot,
    /// What stands at the left edge, m; at the bottom nothing.
    pub least: f64,
    /// What stands at the right and the top edge, m and kg.
    pub most: (f64, f64),
}

impl Field {
    /// Where it is on the sheet.
    pub fn spot(&self, (centre, mass): (f64, f64)) -> Spot {
        let part = |v: f64, least: f64, most: f64| {
            if most > least { ((v - least) / (most - least)).clamp(0.0, 1.0) } else { 0.0 }
        };
        let (x, y) = (part(centre, self.least, self.most.0), part(mass, 0.0, self.most.1));
        (self.origin.0 + x * (self.far.0 - self.origin.0), self.origin.1 + y * (self.far.1 - self.origin.1))
    }
}

/// A round step, 1, 2 or 5 times a power of ten, that parts `most` in at most `parts`.
pub fn round_step(most: f64, parts: f64) -> f64 {
    let mut step = 1e-3;
    // Twelve decades are more than any load.
    for k in 0..36 {
        if most <= step * parts {
            break;
        }
        step *= if k % 3 == 1 { 2.5 } else { 2.0 };
    }
    step
}

/// Middles of so many lines of text, each as near its wish as the others allow.
pub fn column(wishes: &[f64], line: f64, (top, bottom): (f64, f64)) -> Vec<f64> {
    let wants: Vec<Want> = wishes.iter().map(|&at| Want { at, extent: line }).collect();
    spread(&wants, top, bottom)
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::capacity::diagram;
    use standfast_core::document::{Document, Known, PlateRow};
    use standfast_core::example;
    use standfast_core::report::assess;

    fn of(document: &Document) -> Chart {
        let plate = assess(document).assessment.expect("complete").plate;
        Chart::of(&diagram(document).expect("complete"), &plate)
    }

    #[test]
    fn a_plate_for_another_front_end_covers_nothing() {
        let mut document = example::document(example::THREE_WHEEL);
        assert!(of(&document).governing().is_some());
        document.truck.plate.iter_mut().for_each(|p| p.issued_for = Some(PlateFor::Attachment));
        assert!(of(&document).governing().is_none());
    }

    #[test]
    fn steps_are_round_and_few() {
        for (most, parts, step) in [(1800.0, 10.0, 200.0), (1.1, 8.0, 0.2), (43.0, 8.0, 10.0), (0.0009, 5.0, 0.001)] {
            assert!((round_step(most, parts) - step).abs() < 1e-9 * step, "{most}: {}", round_step(most, parts));
        }
    }

    #[test]
    fn more_weight_is_higher_and_a_further_centre_more_to_the_right() {
        let field = Field { origin: (50.0, 400.0), far: (550.0, 20.0), least: 0.0, most: (1.0, 2000.0) };
        assert_eq!(field.spot((0.0, 0.0)), (50.0, 400.0));
        assert_eq!(field.spot((1.0, 2000.0)), (550.0, 20.0));
        let flat = Field { most: (0.0, 0.0), ..field };
        assert_eq!(flat.spot((1.0, 1.0)), (50.0, 400.0));
    }

    /// What a stair has at a load centre is what the check itself reads off the plate there.
    #[test]
    fn a_stair_is_the_plates_own_answer() {
        let mut document = example::document(example::THREE_WHEEL);
        // Higher up the plate reaches further out, at less.
        let rows = &mut document.truck.plate.as_mut().expect("a plate").rows;
        let last = rows.last().expect("rows").clone();
        rows.push(PlateRow { load_centre_m: Some(0.8), capacity_kg: Some(900.0), ..last });
        let chart = of(&document);
        assert_eq!(chart.stairs.iter().map(|s| s.height).collect::<Vec<_>>(), [3.3, 4.7]);
        for (k, centre) in [0.41, 0.52, 0.6, 0.65, 0.74].into_iter().enumerate() {
            let mut document = document.clone();
            document.load.cg_from_heel_m = Some(centre - 0.02);
            document.known.insert("load.cg_from_heel_m".to_owned(), Known { by: None, tolerance: Some(0.0) });
            document.known.insert("lift.heel_gap_m".to_owned(), Known { by: None, tolerance: Some(0.0) });
            let report = assess(&document).assessment.expect("complete");
            let stair = of(&document).governing().expect("covered").clone();
            let here = stair.treads.iter().find(|t| centre > t.0 && centre <= t.1 + 1e-9).map(|t| t.2);
            assert_eq!(here, report.plate.allowed.map(|a| a.get()), "{k}: {centre}");
        }
    }

    #[test]
    fn the_next_height_up_of_the_plate_governs() {
        let stair = |height| Stair { height, treads: vec![(0.0, 0.5, 1000.0)] };
        let sure = |at| Ranged { lo: at, at, hi: at };
        let now = Now { centre: sure(0.4), mass: sure(500.0), height: 3.2 };
        let mut chart =
            Chart { curves: Vec::new(), stairs: vec![stair(4.7), stair(3.3), stair(2.0)], issued_so: true, now };
        assert_eq!(chart.governing().map(|s| s.height), Some(3.3));
        chart.issued_so = false;
        assert_eq!(chart.governing(), None);
        chart.issued_so = true;
        chart.now.height = 5.0;
        assert_eq!(chart.governing(), None);
        assert_eq!((chart.extent(), chart.nearest()), ((0.5, 1000.0), 0.4));
    }
}
