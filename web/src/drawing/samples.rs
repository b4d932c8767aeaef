//! Steps to draw in tests: the examples as they are, and made worse.

use standfast_core::document::{Document, Drive, GivenAs, RampDown, Trace, TraceView, Turned, Weighing};
use standfast_core::example;
use standfast_core::friction::Underside;
use standfast_core::material::Material;
use standfast_core::report::{StepReport, assess};

/// The steps of a document.
pub fn steps(document: &Document) -> Vec<StepReport> {
    let report = assess(document);
    report.assessment.unwrap_or_else(|| panic!("{:?}", report.problems)).steps
}

/// An example with some of its figures changed.
pub fn changed(text: &str, changes: &[(&str, f64)]) -> Document {
    let mut value: serde_json::Value = serde_json::from_str(text).expect("an example");
    for (pointer, figure) in changes {
        let (parent, key) = pointer.rsplit_once('/').expect("a pointer");
        value.pointer_mut(parent).expect(pointer)[key] = (*figure).into();
    }
    Document::from_json(&value.to_string()).expect("still a document")
}

/// A move over ramp and cross-fall, with fast bends and hard braking.
fn driven(text: &str, ramp_down: RampDown) -> Document {
    let mut document = changed(text, &[]);
    document.drive = Drive {
        braking_ms2: Some(2.5),
        corner_kmh: Some(9.0),
        corner_empty_kmh: Some(12.0),
        ramp_pct: Some(14.0),
        ramp_down: Some(ramp_down),
        cross_fall_pct: Some(5.5),
        ..Drive::default()
    };
    document
}

/// Named documents.
pub fn documents() -> Vec<(&'static str, Document)> {
    let three = example::THREE_WHEEL;
    let four = example::FOUR_WHEEL;
    let mut all = vec![
        ("three", changed(three, &[])),
        ("four", changed(four, &[])),
        ("past-front", changed(four, &[("/load/mass_kg", 3600.0), ("/load/length_m", 2.4)])),
        ("off-centre", changed(three, &[("/load/mass_kg", 1500.0), ("/lift/offset_m", 0.35)])),
        ("wide", changed(four, &[("/load/width_m", 3.0), ("/load/length_m", 3.0), ("/load/mass_kg", 900.0)])),
        ("short", changed(three, &[("/load/mass_kg", 1750.0), ("/lift/height_m", 4.6)])),
        ("doubtful", changed(four, &[("/load/mass_kg", 2700.0), ("/lift/height_m", 3.9)])),
        ("doubtful-2", changed(four, &[("/load/mass_kg", 2500.0), ("/lift/height_m", 3.6)])),
        ("doubtful-3", changed(three, &[("/load/mass_kg", 1600.0), ("/lift/height_m", 4.6)])),
        ("tall", changed(four, &[("/truck/mast/lift_m", 7.2), ("/lift/height_m", 6.9), ("/load/height_m", 2.4)])),
        ("low and long", changed(four, &[("/load/length_m", 4.0), ("/load/height_m", 0.15), ("/load/mass_kg", 500.0)])),
        ("driven", driven(three, RampDown::Forwards)),
        ("driven-2", driven(four, RampDown::Backwards)),
        ("light", changed(four, &[("/load/mass_kg", 40.0), ("/load/height_m", 0.2), ("/load/length_m", 0.4)])),
    ];
    all.extend(on_forks());
    all
}

/// Loads that matter for how they stand on the forks.
pub fn on_forks() -> Vec<(&'static str, Document)> {
    let parts = changed(example::ODD_LOAD, &[]);
    vec![
        ("parts", parts.clone()),
        ("trace", traced()),
        ("hanging", hanging()),
        ("extensions", extended(&parts)),
        ("topples-ahead", topples(&[("/load/length_m", 2.4), ("/load/cg_from_heel_m", 1.3)])),
        ("topples-left", topples(&[("/load/cg_left_m", 0.41), ("/load/cg_above_m", 1.9)])),
        (
            "topples-braking",
            topples(&[
                ("/load/cg_from_heel_m", 1.02),
                ("/load/cg_above_m", 1.9),
                ("/truck/mast/tilt_back_deg", 0.0),
                ("/lift/tilt_back_deg", 0.0),
            ]),
        ),
        ("may-topple", topples(&[("/load/cg_from_heel_m", 1.16), ("/load/cg_left_m", 0.36)])),
        ("slides", slides()),
        ("off-forks", topples(&[("/lift/heel_gap_m", 1.25)])),
        ("round", round(&parts)),
    ]
}

/// An L-shaped load of brick, traced from above and turned a quarter to the left.
fn traced() -> Document {
    let mut document = changed(example::FOUR_WHEEL, &[]);
    let load = &mut document.load;
    *load = standfast_core::document::Load { given_as: GivenAs::Trace, ..Default::default() };
    load.material = Some(Material::Brick);
    load.underside = Some(Underside::WoodenPallet);
    load.turned = Turned::Left;
    load.trace = Some(Trace {
        view: TraceView::Plan,
        picture: Some([1000.0, 800.0]),
        outline: vec![[100.0, 700.0], [900.0, 700.0], [900.0, 500.0], [400.0, 500.0], [400.0, 100.0], [100.0, 100.0]],
        scale: vec![[100.0, 750.0], [900.0, 750.0]],
        scale_m: Some(1.2),
        through_m: Some(0.8),
        ..Default::default()
    });
    document
}

/// One that hangs below the forks, raised high enough for it.
fn hanging() -> Document {
    let changes =
        [("/lift/take_up_m", 1.6), ("/lift/travel_m", 1.7), ("/lift/height_m", 2.4), ("/load/hook_above_m", 0.1)];
    let mut document = changed(example::THREE_WHEEL, &changes);
    document.load.hanging = true;
    document.load.mass_kg = Some(500.0);
    document
}

/// The same on forks made longer.
fn extended(document: &Document) -> Document {
    let mut document = document.clone();
    document.truck.forks.extension_m = Some(1.6);
    document.truck.forks.extension_kg = Some(40.0);
    document
}

/// A block with a marked centre of gravity, high or far out.
fn topples(changes: &[(&str, f64)]) -> Document {
    let block = [("/load/height_m", 2.1), ("/load/mass_kg", 700.0), ("/load/length_m", 1.2), ("/load/width_m", 1.0)];
    let centre = [("/load/cg_from_heel_m", 0.6), ("/load/cg_left_m", 0.0), ("/load/cg_above_m", 1.0)];
    let mut document = changed(example::FOUR_WHEEL, &[&block[..], &centre, changes].concat());
    document.load.centre_known = Some(standfast_core::document::CentreKnown::Mark);
    document
}

/// A steel load on bare forks.
fn slides() -> Document {
    let low = [("/load/height_m", 0.8), ("/load/cg_above_m", 0.4), ("/truck/mast/tilt_back_deg", 0.0)];
    let mut document = topples(&low);
    document.load.underside = Some(Underside::SmoothMetal);
    document.lift.tilt_back_deg = Some(0.0);
    document
}

/// A drum that lies across the forks without a cradle: it rests on a line.
fn round(document: &Document) -> Document {
    let mut document = document.clone();
    document.load.weighing = None::<Weighing>;
    document.load.parts.retain(|p| p.name == "Drum");
    document.load.parts.iter_mut().for_each(|p| p.facing = standfast_core::document::Facing::Left);
    document
}

/// Every step of all of them.
pub fn all() -> Vec<StepReport> {
    documents().iter().flat_map(|(_, d)| steps(d)).collect()
}
