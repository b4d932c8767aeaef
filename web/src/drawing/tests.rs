//! The drawings as a whole, rendered to text.

use super::layout::Room;
use super::sheet::Words;
use super::*;
use standfast_core::units::System;

const SYSTEMS: [System; 2] = [System::Metric, System::Us];

fn sheets() -> Vec<(String, Sheet)> {
    let mut found = Vec::new();
    for (name, document) in samples::documents() {
        for step in samples::steps(&document) {
            for system in SYSTEMS {
                for view in [View::Side, View::Plan] {
                    let title = format!("{name}, {:?}, {system:?}, {view:?}", step.id);
                    found.push((title, view.sheet(&step, system, &ENGLISH, None)));
                }
            }
        }
    }
    // Two of them go over a ramp and a cross-fall: four steps more.
    let steps = samples::documents().len() * 12 + 2 * 4;
    assert_eq!(found.len(), steps * 2 * 2, "every sample is complete");
    found
}

#[test]
fn no_text_overlaps_another_or_leaves_the_sheet() {
    let mut faults = Vec::new();
    for (title, sheet) in sheets() {
        let rooms: Vec<(&Words, Room)> = sheet.texts().map(|w| (w, w.room())).collect();
        for (k, (words, room)) in rooms.iter().enumerate() {
            if room.left < 0.0 || room.top < 0.0 || room.right > sheet.width || room.bottom > sheet.height {
                faults.push(format!("{title}: {:?} leaves the sheet: {room:?}", words.text));
            }
            for (other, b) in rooms.iter().take(k) {
                if room.overlaps(b) {
                    faults.push(format!("{title}: {:?} over {:?}", words.text, other.text));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{} faults: {:#?}", faults.len(), &faults[..faults.len().min(20)]);
}

#[test]
fn every_handle_can_be_reached() {
    for (title, sheet) in sheets() {
        if title.contains("Empty") || title.contains("BackOut") {
            assert!(sheet.grips.is_empty(), "{title}: nothing to take hold of");
            continue;
        }
        let [load, centre] = sheet.grips.as_slice() else { panic!("{title}: two handles") };
        assert_eq!((load.handle, centre.handle), (Handle::Load, Handle::Centre));
        for grip in [load, centre] {
            assert!((20.0..=sheet.width - 20.0).contains(&grip.spot.0), "{title}: {:?}", grip.spot);
            assert!((20.0..=sheet.height - 20.0).contains(&grip.spot.1), "{title}: {:?}", grip.spot);
            assert!(grip.now.1 < grip.now.2 && (grip.now.1..=grip.now.2).contains(&grip.now.0), "{title}");
        }
        // The middle of one is not covered by the reach of the other.
        assert!(marks::apart(load.spot, centre.spot) > 34.0, "{title}");
    }
}

#[test]
fn a_held_projection_stays() {
    let steps = samples::steps(&samples::documents()[0].1);
    for view in [View::Side, View::Plan] {
        let first = view.sheet(&steps[0], System::Metric, &ENGLISH, None);
        let held = view.sheet(&steps[3], System::Metric, &ENGLISH, Some(first.projection));
        assert_eq!(held.projection, first.projection);
    }
    let fitted = View::Side.sheet(&steps[3], System::Metric, &ENGLISH, None);
    assert_ne!(fitted.projection, View::Side.sheet(&steps[0], System::Metric, &ENGLISH, None).projection);
}

async fn rendered(view: View, step: &StepReport, system: System) -> String {
    let props =
        DrawingProps { view, step: Rc::new(step.clone()), system, labels: &ENGLISH, on_moved: Callback::noop() };
    yew::LocalServerRenderer::<Drawing>::with_props(props).hydratable(false).render().await
}

#[tokio::test]
async fn the_drawings_render_with_their_handles_lines_and_no_inline_style() {
    for step in samples::all() {
        let side = rendered(View::Side, &step, System::Metric).await;
        for name in ["drawing-side", "handle-load-side", "handle-centre-side", "bob", "distance-front-side"] {
            let there = step.laden || !name.starts_with("handle");
            assert_eq!(side.contains(&format!("data-testid=\"{name}\"")), there, "{name}");
        }
        let plan = rendered(View::Plan, &step, System::Us).await;
        for name in ["drawing-plan", "handle-load-plan", "handle-centre-plan", "bob-plan", "line-front", "line-left"]
            .into_iter()
            .chain(["line-right", "distance-front", "distance-left", "distance-right"])
        {
            let there = step.laden || !name.starts_with("handle");
            assert_eq!(plan.contains(&format!("data-testid=\"{name}\"")), there, "{name}");
        }
        for text in [&side, &plan] {
            assert!(!text.contains("style=") && !text.contains("NaN") && !text.contains("inf "));
            assert!(text.contains("<title>") && text.contains("<desc"));
        }
    }
}

#[tokio::test]
async fn a_crossed_line_is_said_hatched_and_red() {
    let steps = samples::all();
    let past = steps.iter().filter(|s| s.lines[0].distance.nominal.get() < 0.0).collect::<Vec<_>>();
    assert!(!past.is_empty());
    for step in past {
        for view in [View::Side, View::Plan] {
            let text = rendered(view, step, System::Metric).await;
            assert!(
                text.contains("past the line") && text.contains("d-hatch d-crossed") && text.contains("d-tag d-no")
            );
        }
    }
}

#[tokio::test]
async fn the_table_has_every_line_and_wheel() {
    #[component]
    fn Table() -> Html {
        let steps = samples::steps(&samples::documents()[0].1);
        numbers_table(&steps[0], System::Metric, &ENGLISH)
    }
    let text = yew::LocalServerRenderer::<Table>::new().hydratable(false).render().await;
    for words in ["front line", "left line", "right line", "in hand", "worst", "steer axle", "front axle", "%", "kg"] {
        assert!(text.contains(words), "{words}: {text}");
    }
}

/// Writes a page with all samples, to look at: set STANDFAST_SHEETS to the folder for it.
#[tokio::test]
async fn sheets_to_look_at() {
    let Some(folder) = std::env::var_os("STANDFAST_SHEETS") else { return };
    let css = include_str!("../../assets/drawing.css");
    for (name, document) in samples::documents() {
        let mut body = String::new();
        for step in samples::steps(&document) {
            for view in [View::Side, View::Plan] {
                body += &rendered(view, &step, System::Metric).await;
            }
        }
        let page = format!(
            "<!doctype html><meta charset=utf-8><style>{css} body{{margin:8px;font:16px sans-serif;display:grid;\
             grid-template-columns:1fr 1fr;gap:8px;align-items:start}}</style>{body}"
        );
        let path = std::path::Path::new(&folder).join(format!("{name}.html"));
        std::fs::write(path, page).expect("written");
    }
}
