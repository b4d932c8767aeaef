//! What the properties found, each in its smallest form, by its name.

use crate::{assessment, close, worked};
use standfast_core::document::{Document, GivenAs, Trace, TraceView, Turned, WeightKnown};
use standfast_core::example;
use standfast_core::material::Material;
use standfast_core::report::ToppleReport;
use standfast_core::seat::Over;
use standfast_core::step::{Step, StepId};
use standfast_tests::turns::mirrored;

fn four_wheel(change: impl FnOnce(&mut Document)) -> Document {
    let mut document = example::document(example::FOUR_WHEEL);
    change(&mut document);
    document
}

/// The corner that is worst for the moment has nobody on the seat; without the operator's weight, which
/// stood nearer to the front line than the rest, the line of action runs further inside. So the distance
/// at that corner is greater than the one stated: it is not the worst distance.
#[test]
fn a_worst_distance_is_not_that_of_the_worst_moment() {
    let document = four_wheel(|d| {
        (d.load.mass_kg, d.load.weight_known) = (Some(150.0), Some(WeightKnown::Scale));
        (d.load.length_m, d.load.width_m, d.load.height_m) = (Some(0.4), Some(0.4), Some(0.2));
        (d.truck.operator_kg, d.lift.heel_gap_m) = (Some(120.0), Some(0.0));
        d.truck.mast.give_deg = Some(0.0);
    });
    let (scenario, balance, placed) = worked(&document);
    let step = Step::new(&scenario, &balance, &placed, StepId::TakeUp);
    for standing in &step.standing {
        let (line, distance) = (standing.line.id, step.distance(standing.line.id));
        assert!(distance.worst <= distance.nominal + 1e-9, "{line:?}: {distance:?}");
    }
}

/// The corner that leaves the least moment may do so with less on both sides of the balance: then the
/// share used at that corner is less than the one stated, and it is not the worst share.
#[test]
fn a_worst_share_is_not_that_of_the_worst_moment() {
    let mut document = example::document(example::THREE_WHEEL);
    let (truck, load, lift) = (&mut document.truck, &mut document.load, &mut document.lift);
    (truck.operator_kg, truck.cg_height_m, truck.mast.play_deg) = (Some(0.0), Some(0.5), Some(0.0));
    (load.mass_kg, load.weight_known) = (Some(150.0), None);
    (load.length_m, load.width_m, load.height_m) = (Some(0.4), Some(1.6), Some(1.75));
    (load.cg_from_heel_m, load.cg_left_m, load.cg_above_m) = (Some(0.1), Some(-0.32), Some(1.2));
    (lift.heel_gap_m, lift.offset_m, lift.take_up_m) = (Some(0.0), Some(-0.12), Some(0.0));
    let (scenario, balance, placed) = worked(&document);
    for id in StepId::ALL {
        for test in Step::new(&scenario, &balance, &placed, id).tests {
            let (line, share) = (test.line, test.share);
            assert!(share.worst >= share.nominal - 1e-9, "{id:?} {:?} {line:?}: {share:?}", test.test);
        }
    }
}

/// A load on the point of its outline stands on a line across the blades. Rounding made a sliver of that line,
/// with short edges that faced anywhere; the mirrored load had other margins.
#[test]
fn a_load_on_a_line_is_the_same_in_a_mirror() {
    let document = four_wheel(|d| {
        d.truck.forks.spread_m = Some(0.45);
        d.truck.forks.blade_width_m = Some(0.13435773530506373);
        d.lift.offset_m = Some(0.090082809358152);
        (d.load.given_as, d.load.turned) = (GivenAs::Trace, Turned::Right);
        (d.load.mass_kg, d.load.material) = (None, Some(Material::Softwood));
        d.load.trace = Some(Trace {
            view: TraceView::Front,
            picture: Some([1400.0, 1200.0]),
            outline: vec![
                [473.5781756296546, 670.2945821802502],
                [473.5781756296546, 483.699822006247],
                [723.9768993540188, 558.6473321259585],
                [473.5781756296546, 783.2193533933405],
            ],
            rectangle: vec![
                [140.0, 90.0],
                [1140.0, 191.8507830167058],
                [1140.0, 990.0],
                [205.8848460802601, 1051.8461356730147],
            ],
            rectangle_width_m: Some(2.0),
            rectangle_height_m: Some(1.8),
            through_m: Some(1.378449039475548),
            ..Trace::default()
        });
    });
    let (a, b) = (assessment(&document), assessment(&mirrored(&document)));
    for u in a.steps.iter().filter(|s| s.laden) {
        let v = b.steps.iter().find(|v| v.id == crate::symmetry::mirrored_step(u.id)).expect("the mirrored step");
        let (u, v) = (u.seat.as_ref().expect("it lies"), v.seat.as_ref().expect("it lies"));
        for (c, d) in u.cases.iter().zip(&v.cases) {
            let least = |case: &standfast_core::report::CaseReport| {
                case.topple.iter().map(|t| t.margin.nominal).min().expect("an edge").get()
            };
            assert!(close(least(c), least(d), 1.0), "{c:?} {d:?}");
            assert_eq!(c.topple.len(), d.topple.len(), "{c:?} {d:?}");
        }
    }
}

/// What carries the load as stated, a third of a millimetre on one blade, had no edge towards the heel; a little
/// shifted it has one, and the worst there stood for what is stated.
#[test]
fn a_way_without_an_edge_as_stated_is_not_the_worst_as_stated() {
    let mut document = example::document(example::THREE_WHEEL);
    (document.truck.forks.spread_m, document.truck.forks.blade_width_m) = (None, Some(0.10174529924652592));
    (document.truck.forks.length_m, document.truck.mast.tilt_back_deg) = (Some(0.9), Some(3.0));
    document.lift.tilt_back_deg = Some(0.0);
    (document.lift.heel_gap_m, document.lift.offset_m) = (Some(0.08506732296539792), Some(-0.08860171931083141));
    document.drive.ramp_pct = Some(0.5);
    let load = &mut document.load;
    *load = standfast_core::document::Load::default();
    (load.given_as, load.turned) = (GivenAs::Trace, Turned::Right);
    (load.mass_kg, load.weight_known) = (Some(150.0), Some(WeightKnown::Scale));
    let steps = [[754.9, 600.0], [754.9, 545.1], [736.6, 545.1], [736.6, 526.8], [718.3, 526.8], [718.3, 545.1]];
    load.trace = Some(Trace {
        view: TraceView::Plan,
        picture: Some([1400.0, 1200.0]),
        outline: steps.into_iter().chain([[700.0, 545.1], [700.0, 600.0]]).collect(),
        scale: vec![[200.0, 1100.0], [1000.0, 1100.0]],
        scale_m: Some(1.3113549307037196),
        through_m: Some(0.4),
        ..Trace::default()
    });
    let down = assessment(&document).steps.into_iter().find(|s| s.id == StepId::RampDown).expect("a ramp");
    let case = &down.seat.expect("it lies").cases[0];
    let (heel, others): (Vec<&ToppleReport>, Vec<_>) = case.topple.iter().partition(|t| t.over == Over::Heel);
    let tightest = others.iter().map(|t| t.margin.nominal).min().expect("other ways");
    assert!(heel[0].margin.worst < tightest && heel[0].margin.nominal >= tightest, "{case:?}");
}
