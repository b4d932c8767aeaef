//! The diagram as a whole.

use super::*;
use crate::drawing::layout::Room;
use crate::drawing::sheet::{Item, Words};
use standfast_core::document::Document;
use standfast_core::example;
use standfast_core::report::assess;
use yew::LocalServerRenderer;

fn documents() -> Vec<Document> {
    let mut all: Vec<Document> =
        [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD].map(example::document).into();
    let mut none = example::document(example::THREE_WHEEL);
    if let Some(plate) = &mut none.truck.plate {
        // Of one row, far below the height.
        plate.rows.truncate(1);
        plate.rows[0].height_m = Some(1.0);
    }
    let mut heavy = example::document(example::FOUR_WHEEL);
    heavy.load.mass_kg = Some(9000.0);
    let mut near = example::document(example::THREE_WHEEL);
    near.load.cg_from_heel_m = Some(0.1);
    near.load.mass_kg = Some(30.0);
    all.extend([none, heavy, near]);
    all
}

fn charts() -> Vec<Chart> {
    let plate = |d: &Document| assess(d).assessment.expect("complete").plate;
    documents().iter().map(|d| Chart::of(&diagram(d).expect("complete"), &plate(d))).collect()
}

fn texts(items: &[Item]) -> Vec<&Words> {
    items
        .iter()
        .filter_map(|i| match i {
            Item::Words(words) => Some(words),
            Item::Shape { .. } => None,
        })
        .collect()
}

#[test]
fn no_name_lies_over_another_or_leaves_the_sheet() {
    for chart in charts() {
        for system in [System::Metric, System::Us] {
            let items = draw::items(&chart, Printer(system));
            let rooms: Vec<(&str, Room)> = texts(&items).iter().map(|w| (w.text.as_str(), w.room())).collect();
            assert!(rooms.len() > 12);
            for (k, (text, room)) in rooms.iter().enumerate() {
                let inside =
                    room.left >= 0.0 && room.top >= 0.0 && room.right <= draw::SIZE.0 && room.bottom <= draw::SIZE.1;
                assert!(inside, "{text} leaves the sheet: {room:?}");
                for (other, b) in rooms.iter().take(k) {
                    assert!(!room.overlaps(b), "{text} over {other}");
                }
            }
        }
    }
}

/// What is shaded never lies above the plate, nor above the model.
#[test]
fn the_shaded_ground_is_the_lesser_of_both() {
    let chart = &charts()[0];
    let (stair, curve) = (chart.governing().expect("covered"), chart.today().expect("drawn"));
    assert!((stair.height - 3.3).abs() < 1e-9 && curve.height >= 3.2 - 1e-9);
    let items = draw::items(chart, Printer(System::Metric));
    let path = |name: &str| {
        let found = items.iter().find_map(|i| match i {
            Item::Shape { path, test: Some(test), .. } if test == name => Some(path.clone()),
            _ => None,
        });
        let path = found.unwrap_or_else(|| panic!("{name} is drawn"));
        path.split(['M', 'L', 'Z', ' ']).filter_map(|n| n.parse().ok()).collect::<Vec<f64>>()
    };
    let top = |name: &str| path(name).chunks(2).map(|c| c[1]).fold(f64::MAX, f64::min);
    assert!(top("capacity-both") >= top("capacity-plate") && top("capacity-both") >= top("capacity-model"));
}

#[tokio::test]
async fn it_shows_plate_model_and_this_load() {
    let answer = Answer::of(&crate::entries::Entries::from_document(&example::document(example::THREE_WHEEL)));
    let answer: Shared<Answer> = Rc::new(answer).into();
    let props = CapacityProps { answer, system: System::Metric };
    let html = LocalServerRenderer::<Capacity>::with_props(props).hydratable(false).render().await;
    for name in ["capacity-plate", "capacity-plate-other", "capacity-model", "capacity-now", "capacity-range"] {
        assert!(html.contains(&format!("data-testid=\"{name}\"")), "{name}: {html}");
    }
    assert!(html.contains("this load: 1\u{202f}050\u{a0}kg"), "{html}");
    assert!(html.contains("plate to 3.30\u{a0}m") && !html.contains("capacity-missing"), "{html}");
}

#[tokio::test]
async fn where_the_plate_does_not_reach_that_is_said() {
    let chart = Rc::new(charts().swap_remove(3));
    let props = ViewProps { chart, system: System::Metric, stale: false };
    let html = LocalServerRenderer::<View>::with_props(props).hydratable(false).render().await;
    assert!(html.contains("does not reach this height") && !html.contains("capacity-both"), "{html}");
}
