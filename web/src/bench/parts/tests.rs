//! The bench as a whole, rendered to text.

use super::*;
use crate::answer::Answer;
use crate::entries::Entries;
use standfast_core::material::Material;
use standfast_core::place::{Field, Place};
use standfast_core::units::System;
use std::rc::Rc;

fn form(entries: Entries, system: System) -> Form {
    let answer = Rc::new(Answer::of(&entries));
    Form { entries: Rc::new(entries), answer: answer.into(), system, known: None }
}

async fn rendered(entries: Entries, system: System) -> String {
    let props = PartsProps { form: form(entries, system) };
    yew::LocalServerRenderer::<PartsBench>::with_props(props).hydratable(false).render().await
}

fn tests_of(text: &str, name: &str) -> usize {
    text.matches(&format!("data-testid=\"{name}\"")).count()
}

#[tokio::test]
async fn three_views_with_outlines_handles_centre_and_the_list() {
    let text = rendered(samples::stack(), System::Metric).await;
    for view in ["plan", "side", "front"] {
        for k in 0..4 {
            assert_eq!(tests_of(&text, &format!("part-{k}-{view}")), 1, "part {k} in {view}");
        }
        assert_eq!(tests_of(&text, &format!("parts-centre-{view}")), 1);
        assert_eq!(tests_of(&text, &format!("parts-may-{view}")), 1);
        assert_eq!(text.matches(&format!("data-testid=\"part-side-{view}-")).count(), 4);
    }
    for k in 0..4 {
        assert_eq!(tests_of(&text, &format!("part-{k}")), 1);
    }
    assert!(text.contains("<title>") && text.contains("<desc") && text.contains("4 parts"));
    assert!(text.contains("1\u{202f}200\u{a0}mm"), "the length of the whole");
    assert!(text.contains("takes away") && text.contains("cut out of Box 2"));
    assert!(!text.contains("style=") && !text.contains("NaN") && !text.contains("inf"), "{text}");
}

#[tokio::test]
async fn only_figures_that_count_are_asked_for() {
    let mut entries = samples::stack();
    entries.parts.rotate_left(0);
    let text = rendered(entries, System::Metric).await;
    assert_eq!(tests_of(&text, "field-load.parts[0].length_m"), 1);
    assert_eq!(tests_of(&text, "field-load.parts[0].diameter_m"), 0);
    assert_eq!(tests_of(&text, "field-load.parts[1].length_m"), 0, "one part's figures at a time");
    assert_eq!(text.matches("part-facing-").count(), 0, "a box does not point");
    for (shape, facing, entries) in samples::every_way() {
        let text = rendered(entries, System::Us).await;
        for field in Field::NUMBERS {
            let dimension = matches!(
                field,
                Field::PartLength | Field::PartWidth | Field::PartHeight | Field::PartDiameter | Field::PartBore
            );
            if dimension {
                let asked = tests_of(&text, &format!("field-{}", Place::in_row(*field, 0))) == 1;
                assert_eq!(asked, crate::entries::dimensions(shape).contains(field), "{shape:?} {facing:?} {field:?}");
            }
        }
        assert_eq!(tests_of(&text, "part-outline") == 1, shape == Shape::Prism);
    }
}

#[tokio::test]
async fn a_material_says_its_density_range_and_source() {
    let text = rendered(samples::stack(), System::Metric).await;
    let row = Material::Steel.density();
    assert!(text.contains("kg/m\u{b3}") && text.contains(&row.source[..12]), "{text}");
    let us = rendered(samples::stack(), System::Us).await;
    assert!(us.contains("490\u{a0}lb/ft\u{b3}"), "7850 kg/m3 is 490 lb/ft3");
}

/// A part that cannot be drawn keeps its figures and says what is wrong, in the list and at the field.
#[tokio::test]
async fn a_problem_is_counted_and_said() {
    let mut entries = samples::stack();
    entries.enter(Place::in_row(Field::PartLength, 1), "long", System::Metric);
    let text = rendered(entries, System::Metric).await;
    assert_eq!(tests_of(&text, "part-1-plan"), 0);
    assert!(text.contains("1 to put right"));
    assert_eq!(tests_of(&text, "problem-load.parts[1].length_m"), 1, "the part in trouble is shown first");
    assert!(text.contains("value=\"long\""));
    assert_eq!(tests_of(&text, "parts-centre-plan"), 0, "no centre without all parts");
}

#[tokio::test]
async fn nothing_yet_and_a_hundred_parts() {
    let text = rendered(samples::empty(), System::Metric).await;
    assert!(text.contains("No part yet") && tests_of(&text, "add-box") == 1 && tests_of(&text, "part-figures") == 0);
    let text = rendered(samples::many(100), System::Metric).await;
    assert_eq!(tests_of(&text, "part-99-plan"), 1);
    assert_eq!(
        text.matches("<input").count(),
        rendered(samples::many(1), System::Metric).await.matches("<input").count()
    );
}

/// Left and right in words on the sheet, never a left that is less than nothing.
#[tokio::test]
async fn a_centre_to_the_right_is_said_to_be_right() {
    for (aside, says) in [(-0.2, "right of middle"), (0.2, "left of middle")] {
        let mut entries = samples::stack();
        moving::enter(&mut entries, Place::in_row(Field::PartLeft, 2), aside, System::Metric);
        let text = rendered(entries, System::Metric).await;
        let at = text.find(says).unwrap_or_else(|| panic!("{says}"));
        assert!(!text[at - 20..at].contains('\u{2212}'), "{}", &text[at - 20..at]);
    }
}

/// A pressed choice is the only one, and what is known of a weight is asked where one is given.
#[tokio::test]
async fn a_pallet_is_an_estimate_to_be_confirmed() {
    use super::adding::{Kind, added};
    use standfast_core::pallet;
    let kind = Kind::Pallet(&pallet::ALL[0]);
    let (entries, _) = added(&samples::empty(), &[], None, kind, System::Metric).expect("room");
    let text = rendered(entries, System::Metric).await;
    assert!(text.contains("to be confirmed"));
    assert_eq!(tests_of(&text, "part-known-estimate"), 1);
    let at = text.find("part-known-estimate").expect("a button");
    assert!(text[at - 60..at].contains("aria-pressed=\"true\""), "{}", &text[at - 60..at]);
}

/// Writes pages with samples, to look at: set STANDFAST_SHEETS to the folder for them.
#[tokio::test]
async fn benches_to_look_at() {
    let Some(folder) = std::env::var_os("STANDFAST_SHEETS") else { return };
    let css = [
        include_str!("../../../assets/app.css"),
        include_str!("../../../assets/drawing.css"),
        include_str!("../../../assets/parts.css"),
    ]
    .concat();
    for (name, entries) in [("stack", samples::stack()), ("empty", samples::empty()), ("many", samples::many(100))] {
        let body = rendered(entries, System::Metric).await;
        let page = format!("<!doctype html><meta charset=utf-8><style>{css}</style>{body}");
        std::fs::write(std::path::Path::new(&folder).join(format!("parts-{name}.html")), page).expect("written");
    }
}
