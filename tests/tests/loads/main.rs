//! Odd-shaped loads as whole documents, without any truck: what is wrong is named, nothing is lost, and
//! what is found holds the truth.

mod degenerate;
mod regressions;
mod ways;

use standfast_core::document::{Document, Facing, GivenAs, Part, Shape, Trace, WeighPoint, Weighing};
use standfast_core::problem::{Problem, Rule};
use standfast_core::report::{LoadAnswer, LoadReport, find_load};
use standfast_tests::walk;

/// Looks at a load as it would be after saving and opening again: the file holds all that was entered, and
/// the answer is the same and all of numbers.
#[track_caller]
fn answer(document: &Document) -> LoadAnswer {
    let read = Document::from_json(&document.to_json()).expect("our own file");
    assert_eq!(&read, document, "nothing is lost in the file");
    let answer = find_load(&read);
    let json = serde_json::to_value(&answer).expect("JSON");
    assert_eq!(walk::broken_numbers(&json), Vec::<String>::new());
    assert_eq!(answer.load.is_some(), answer.problems.is_empty());
    answer
}

#[track_caller]
fn found(document: &Document) -> LoadReport {
    let answer = answer(document);
    assert_eq!(answer.problems, []);
    answer.load.expect("no problem, so a load")
}

/// The one problem there is: where, and which rule.
#[track_caller]
fn problem(document: &Document) -> (String, Rule) {
    let answer = answer(document);
    let [Problem { place, rule, .. }] = answer.problems.as_slice() else { panic!("{:?}", answer.problems) };
    (place.to_string(), rule.clone())
}

#[track_caller]
fn is(document: &Document, place: &str, rule: Rule) {
    assert_eq!(problem(document), (place.to_owned(), rule));
}

/// A box of so many kg in its place: low corner ahead and up, middle across.
fn block(kg: f64, size: [f64; 3], at: [f64; 3]) -> Part {
    Part {
        shape: Some(Shape::Box),
        mass_kg: Some(kg),
        length_m: Some(size[0]),
        width_m: Some(size[1]),
        height_m: Some(size[2]),
        ahead_m: Some(at[0]),
        left_m: Some(at[1]),
        above_m: Some(at[2]),
        ..Part::default()
    }
}

fn built(parts: Vec<Part>) -> Document {
    let mut document = Document::default();
    (document.load.given_as, document.load.parts) = (GivenAs::Parts, parts);
    document
}

/// A prism standing on an outline, 0.5 m high, 100 kg.
fn prism(outline: &[[f64; 2]]) -> Document {
    let mut part = block(100.0, [0.5; 3], [0.0; 3]);
    (part.shape, part.facing, part.outline) = (Some(Shape::Prism), Facing::Up, outline.to_vec());
    built(vec![part])
}

/// An L traced from a picture of 1,000 by 800 pixels, 500 of them a metre.
fn traced() -> Document {
    let mut document = Document::default();
    (document.load.given_as, document.load.mass_kg) = (GivenAs::Trace, Some(400.0));
    document.load.trace = Some(Trace {
        picture: Some([1000.0, 800.0]),
        outline: vec![[100.0, 700.0], [700.0, 700.0], [700.0, 550.0], [300.0, 550.0], [300.0, 250.0], [100.0, 250.0]],
        scale: vec![[100.0, 750.0], [600.0, 750.0]],
        scale_m: Some(1.0),
        through_m: Some(0.8),
        ..Trace::default()
    });
    document
}

/// A block of 1.2 x 0.8 x 1.0 m on scales: (ahead, left, level, raised).
fn weighed(points: &[(f64, f64, f64, Option<f64>)]) -> Document {
    let mut document = Document::default();
    let load = &mut document.load;
    (load.length_m, load.width_m, load.height_m) = (Some(1.2), Some(0.8), Some(1.0));
    let point = |&(ahead, left, level, raised): &(f64, f64, f64, Option<f64>)| WeighPoint {
        ahead_m: Some(ahead),
        left_m: Some(left),
        reading_kg: Some(level),
        raised_kg: raised,
    };
    let points = points.iter().map(point).collect();
    load.weighing = Some(Weighing { points, accuracy_kg: Some(1.0), ..Weighing::default() });
    document
}
