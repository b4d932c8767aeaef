//! Bodies in their places.

use super::*;
use crate::doubt::Doubts;
use crate::example;
use crate::scalar::Region;
use approx::assert_relative_eq;

const UPRIGHT: Pose = Pose { lift: 0.0, tilt: 0.0, lean: 0.0, sway: 0.0, sideshift: 0.0 };

/// The parts put together again are the truck that was entered.
#[test]
fn parts_add_up_to_the_service_weight_and_its_axle_loads() {
    for scenario in [example::three_wheel(), example::four_wheel()] {
        let truck = &scenario.truck;
        let whole = DVec3::new(truck.cg_x.unwrap_or(-0.7), 0.0, 0.6);
        let (chassis, chassis_at) = truck.chassis(whole);
        let rig = Rig { chassis, chassis_at, whole: Vec::new() };
        let mut bare = truck.clone();
        bare.attachment = None;
        let bodies = bare.bodies(&Doubts::NONE, &rig, &UPRIGHT, Outfit::Tested { operator: 0.0 }, None);
        let (mass, centre) = bodies.centre(false);
        assert_relative_eq!(mass, truck.service, epsilon = 1e-9);
        assert!((centre - whole).length() < 1e-12, "{centre}");
    }
}

/// Where the model says the load stands with the mast upright: load distance + lost load + heel gap +
/// centre ahead of its rear face.
#[test]
fn a_load_stands_where_the_tape_says() {
    let mut scenario = example::three_wheel();
    scenario.truck.attachment =
        Some(scenario::Attachment { name: String::new(), mass: 100.0, ahead: 0.06, above: 0.3, lost_load: 0.11 });
    let (truck, load) = (
        &scenario.truck,
        Placed { mass: Span::exact(900.0), centre: Region::about(DVec3::new(0.65, 0.04, 0.5), DVec3::ZERO) },
    );
    let rig = Rig { chassis: 1000.0, chassis_at: DVec3::ZERO, whole: Vec::new() };
    let pose = Pose { lift: 2.0, sideshift: 0.1, ..UPRIGHT };
    let bodies = truck.bodies(&Doubts::NONE, &rig, &pose, Outfit::Today, Some(&load));
    let at = bodies.as_slice().iter().find(|b| b.id == BodyId::Load).map(|b| b.at);
    assert_eq!(at, Some(DVec3::new(truck.load_distance + 0.11 + 0.65, 0.14, 2.5)));
}

/// Source: plane rotation. Back tilt is negative and brings a raised load nearer to the truck;
/// sway to the right moves it to -y.
#[test]
fn tilt_and_sway_have_the_signs_stated() {
    let pivot = DVec3::new(0.0, 0.0, 0.25);
    let high = DVec3::new(0.8, 0.0, 4.25);
    let back = Pose { tilt: -0.1, ..UPRIGHT }.place(pivot, high);
    assert_relative_eq!(back.x, 0.8 * libm::cos(0.1) - 4.0 * libm::sin(0.1), epsilon = 1e-12);
    let right = Pose { sway: 0.01, ..UPRIGHT }.place(pivot, high);
    assert_relative_eq!(right.y, -4.0 * libm::sin(0.01), epsilon = 1e-12);
}

/// Free lift leaves the mast sections where they are; beyond it they rise by their ratio.
#[test]
fn sections_rise_after_the_free_lift() {
    let scenario = example::three_wheel();
    let rig = Rig { chassis: 1000.0, chassis_at: DVec3::ZERO, whole: Vec::new() };
    let height = |lift: f64| {
        let pose = Pose { lift, ..UPRIGHT };
        let bodies = scenario.truck.bodies(&Doubts::NONE, &rig, &pose, Outfit::Today, None);
        let z = |id| bodies.as_slice().iter().find(|b| b.id == id).map_or(f64::NAN, |b| b.at.z);
        (z(BodyId::MastStage(0)), z(BodyId::Carriage))
    };
    let mast = &scenario.truck.mast;
    let (low, in_free, high) = (height(0.0), height(mast.free_lift), height(mast.free_lift + 1.0));
    assert_relative_eq!(low.0, in_free.0);
    assert_relative_eq!(in_free.1 - low.1, mast.free_lift, epsilon = 1e-12);
    assert_relative_eq!(high.0 - low.0, mast.stages[0].1, epsilon = 1e-12);
}
