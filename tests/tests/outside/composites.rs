//! Loads built from random parts with cut-outs, whole documents, against parry's mass properties added up
//! and taken away.

use crate::solids::{Reference, converged_half_sphere, prism, tube, wedge};
use crate::{Worst, seeds};
use glam::{DVec2, DVec3};
use parry3d_f64::math::Vector;
use parry3d_f64::shape::{Ball, Cone, Cuboid, Cylinder, SharedShape};
use standfast_core::document::{Document, Facing, GivenAs, Part, Shape};
use standfast_core::report::find_load;
use standfast_tests::parts;

/// What parry says of one part, in its place; nothing taken from the core but the entry itself.
fn reference(part: &Part) -> Reference {
    let m = |figure: Option<f64>| figure.expect("entered");
    let facing = part.facing;
    let edges = || DVec3::new(m(part.length_m), m(part.width_m), m(part.height_m));
    let (radius, half) = (|| 0.5 * m(part.diameter_m), || 0.5 * m(part.length_m));
    let found = match part.shape.expect("a shape") {
        Shape::Box => {
            let half = edges() * 0.5;
            Reference::shape(&SharedShape::new(Cuboid::new(Vector::new(half.x, half.y, half.z))), Facing::Left)
        }
        Shape::Wedge => wedge(edges(), facing).expect("a wedge lies flat"),
        Shape::Cylinder => Reference::shape(&SharedShape::new(Cylinder::new(half(), radius())), facing),
        Shape::Tube => tube(half(), radius(), 0.5 * m(part.bore_m), facing),
        Shape::Cone => Reference::shape(&SharedShape::new(Cone::new(half(), radius())), facing),
        Shape::Sphere => Reference::shape(&SharedShape::new(Ball::new(radius())), facing),
        Shape::HalfSphere => converged_half_sphere(radius(), facing),
        Shape::Prism => {
            let points: Vec<DVec2> = part.outline.iter().map(|p| DVec2::from_array(*p)).collect();
            prism(&points, m(part.length_m), facing)
        }
    };
    found.placed(DVec3::new(m(part.ahead_m), m(part.left_m), m(part.above_m)))
}

/// Volume, mass and centre of a load: hosts less their cut-outs, each of its own density.
fn composite(parts: &[Part]) -> (f64, DVec3, Vec<f64>) {
    let solids: Vec<Reference> = parts.iter().map(reference).collect();
    let (mut mass, mut moment, mut volumes) = (0.0, DVec3::ZERO, Vec::new());
    for (k, part) in parts.iter().enumerate().filter(|(_, p)| p.cut_from.is_none()) {
        let (mut volume, mut first) = (solids[k].volume, solids[k].centroid * solids[k].volume);
        for (c, _) in parts.iter().enumerate().filter(|(_, p)| p.cut_from == Some(k)) {
            volume -= solids[c].volume;
            first -= solids[c].centroid * solids[c].volume;
        }
        let density = match (part.mass_kg, part.material) {
            (Some(kg), _) => kg / volume,
            (None, material) => material.expect("weight or material").density().span.nominal,
        };
        mass += density * volume;
        moment += density * first;
        volumes.push(volume);
    }
    (mass, moment / mass, volumes)
}

#[test]
fn loads_built_from_parts() {
    let (mut masses, mut centres, mut volumes, mut boxes) =
        (Worst::default(), Worst::default(), Worst::default(), Worst::default());
    let (mut cuts, mut seen) = (0, std::collections::BTreeSet::new());
    for mut draws in seeds(250) {
        let count = draws.count(1..7);
        let parts = parts::parts(&mut draws, count, 300.0);
        let mut document = Document::default();
        (document.load.given_as, document.load.parts) = (GivenAs::Parts, parts.clone());
        let answer = find_load(&document);
        let load = match answer.load {
            Some(load) => load,
            // Too small or too large as a whole is said, and nothing else may be wrong.
            None => {
                let codes = serde_json::to_value(&answer.problems).expect("JSON");
                let list = codes.as_array().expect("a list");
                assert!(
                    list.iter().all(|p| matches!(p["rule"]["code"].as_str(), Some("whole_within" | "weight_within"))),
                    "{codes}"
                );
                continue;
            }
        };
        cuts += parts.iter().filter(|p| p.cut_from.is_some()).count();
        seen.extend(parts.iter().map(|p| format!("{:?} {} {:?}", p.shape, p.cut_from.is_some(), p.facing)));
        let (mass, centre, net) = composite(&parts);
        masses.within((load.mass.nominal.get() - mass).abs() / mass, 1e-9, &parts);
        let size = DVec3::new(load.size.x.get(), load.size.y.get(), load.size.z.get());
        let at = &load.centre;
        let found = DVec3::new(at.ahead.nominal.get(), at.left.nominal.get(), at.above.nominal.get());
        centres.within((found - centre).abs().max_element() / size.max_element(), 1e-9, &parts);
        let whole = load.parts.iter().zip(&parts).filter(|(_, p)| p.cut_from.is_none());
        for ((report, part), volume) in whole.zip(&net) {
            volumes.within((report.volume.get() - volume).abs() / volume, 1e-9, part);
        }
        let solids = parts.iter().filter(|p| p.cut_from.is_none()).map(reference);
        let (lo, hi) = solids.fold((DVec3::INFINITY, DVec3::NEG_INFINITY), |(a, b), r| (a.min(r.lo), b.max(r.hi)));
        let low = DVec3::new(load.low.x.get(), load.low.y.get(), load.low.z.get());
        boxes.within((low - lo).abs().max((size - (hi - lo)).abs()).max_element(), 1e-9, &parts);
        // What is cut out is told as negative, and the parts add up.
        let told: f64 = load
            .parts
            .iter()
            .zip(&parts)
            .filter(|(_, p)| p.cut_from.is_none())
            .map(|(r, _)| r.mass.nominal.get())
            .sum();
        assert!((told - mass).abs() <= 1e-9 * mass);
        assert!(load.parts.iter().zip(&parts).all(|(r, p)| (r.volume.get() < 0.0) == p.cut_from.is_some()));
    }
    assert!(cuts > 150 && seen.len() > 80, "{cuts} cut-outs, {} kinds", seen.len());
    masses.say("loads from parts, mass");
    centres.say("loads from parts, centre, of the size");
    volumes.say("loads from parts, volumes");
    boxes.say("loads from parts, box, m");
}
