//! The drawings as a whole, rendered to text.

use super::layout::Room;
use super::sheet::Words;
use super::*;
use standfast_core::report::Point;
use standfast_core::seat::Over;
use standfast_core::step::StepId;
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

/// The grounds under margins: inside the sheet, clear of one another and of every text but their own.
#[test]
fn no_ground_of_a_margin_covers_a_text_or_leaves_the_sheet() {
    let mut faults = Vec::new();
    for (title, sheet) in sheets() {
        let grounds: Vec<Room> = sheet.items.iter().filter_map(ground).collect();
        assert!(grounds.len() >= if title.contains("Plan") { 3 } else { 1 }, "{title}");
        for (k, room) in grounds.iter().enumerate() {
            if room.left < 0.0 || room.right > sheet.width || room.top < 0.0 || room.bottom > sheet.height {
                faults.push(format!("{title}: {room:?} leaves the sheet"));
            }
            if grounds.iter().take(k).any(|other| room.overlaps(other)) {
                faults.push(format!("{title}: {room:?} on another"));
            }
            for words in sheet.texts().filter(|w| w.room().overlaps(room)) {
                let text = words.room();
                if text.left < room.left || text.right > room.right {
                    faults.push(format!("{title}: {room:?} on {:?}", words.text));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{} faults: {:#?}", faults.len(), &faults[..faults.len().min(20)]);
}

/// The room of the ground of a margin, from its path: from its left end's top along to the right.
fn ground(item: &sheet::Item) -> Option<Room> {
    let sheet::Item::Shape { class, path, .. } = item else { return None };
    let numbers: Vec<f64> = class
        .starts_with("d-tag ")
        .then(|| path.split(|c: char| !(c.is_ascii_digit() || "-.".contains(c))))?
        .filter_map(|n| n.parse().ok())
        .collect();
    // M left+5 top H right-5 a5 5 0 0 1 5 5 V bottom-5
    let [left, top, right, _, _, _, _, _, _, _, bottom, ..] = numbers.as_slice() else { panic!("{path}") };
    Some(Room { left: left - 5.0, top: *top, right: right + 5.0, bottom: bottom + 5.0 })
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
    rendered_with(view, step, system, None).await
}

async fn rendered_with(view: View, step: &StepReport, system: System, may_stand: Option<MayStand>) -> String {
    let (step, on_moved) = (Rc::new(step.clone()), Callback::noop());
    let props = DrawingProps { view, step, system, labels: &ENGLISH, may_stand, on_moved };
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

fn sample(name: &str) -> Vec<StepReport> {
    let (_, document) = samples::documents().into_iter().find(|(n, _)| *n == name).expect("a sample");
    samples::steps(&document)
}

#[tokio::test]
async fn a_load_that_topples_is_said_and_red_in_both_views() {
    for name in ["topples-ahead", "topples-left"] {
        // A bend pulls the load over its other side.
        for step in sample(name).into_iter().filter(|s| s.laden && s.acceleration.y.get().abs() < 1e-9) {
            let side = rendered(View::Side, &step, System::Metric).await;
            let plan = rendered(View::Plan, &step, System::Metric).await;
            for (text, test) in [(&side, "load-margin-side"), (&plan, "load-margin-plan")] {
                assert!(text.contains("past edge") && text.contains(&format!("data-testid=\"{test}\"")), "{name}");
                assert!(text.contains("d-own d-no") && text.contains("d-tag d-no"), "{name}");
            }
            assert!(plan.contains("data-testid=\"load-edge-plan\""), "{name}");
            assert_eq!(side.contains("data-testid=\"load-edge-side\""), name == "topples-ahead");
        }
    }
}

#[tokio::test]
async fn a_load_that_may_topple_is_yellow_and_one_that_stands_green() {
    let steps = sample("may-topple");
    let text = rendered(View::Side, &steps[0], System::Metric).await;
    assert!(text.contains("d-own d-hold") && text.contains("d-tag d-hold") && !text.contains("load-edge-side"));
    let text = rendered(View::Plan, &sample("parts")[0], System::Metric).await;
    assert!(text.contains("d-own d-go") && text.contains("load-region-plan") && !text.contains("load-edge-plan"));
}

#[tokio::test]
async fn a_load_that_slips_when_braking_is_said_in_that_step_alone() {
    let mut slides = Vec::new();
    for step in sample("slides") {
        let text = rendered(View::Side, &step, System::Metric).await;
        if text.contains("data-testid=\"load-slides\"") {
            slides.push(step.id);
        }
    }
    assert_eq!(slides, [StepId::Brake]);
}

#[tokio::test]
async fn a_load_that_lies_on_no_blade_is_said_in_red() {
    for step in sample("off-forks").into_iter().filter(|s| s.laden) {
        for view in [View::Side, View::Plan] {
            let text = rendered(view, &step, System::Metric).await;
            assert!(text.contains("data-testid=\"load-off\"") && text.contains("d-own d-no"));
            assert!(!text.contains("load-region") && text.contains("load: off forks."));
        }
    }
}

#[tokio::test]
async fn what_hangs_has_a_sling_and_no_region() {
    for step in sample("hanging").into_iter().filter(|s| s.laden) {
        for view in [View::Side, View::Plan] {
            let text = rendered(view, &step, System::Metric).await;
            assert_eq!(text.contains("d-sling"), view == View::Side);
            assert!(!text.contains("load-region") && !text.contains("load-line") && !text.contains("d-own"));
        }
    }
}

#[tokio::test]
async fn parts_cut_outs_and_sleeves_are_told_apart() {
    for view in [View::Side, View::Plan] {
        let text = rendered(view, &sample("extensions")[0], System::Metric).await;
        let count = |class: &str| text.matches(&format!("class=\"d-part {class}\"")).count();
        assert_eq!((count("d-load"), count("d-cut"), count("d-fork"), count("d-extension")), (4, 1, 2, 2));
    }
}

/// The plumb line is drawn along the field: on a made-up slope of 20 % down ahead and 10 % to the left.
#[test]
fn on_a_slope_the_plumb_line_hangs_along_the_field() {
    let mut step = sample("parts").swap_remove(0);
    let s = standfast_core::scalar::Scalar::computed;
    let field = (2.0, 1.0, -10.0);
    step.field = Point { x: s(field.0), y: s(field.1), z: s(field.2) };
    let (x, y, z) = (step.centre.x.get(), step.centre.y.get(), step.centre.z.get());
    step.bob = Point { x: s(x + 0.2 * z), y: s(y + 0.1 * z), z: s(0.0) };
    let side = View::Side.sheet(&step, System::Metric, &ENGLISH, None);
    let centre = side.projection.spot((x, z));
    let path_of = |sheet: &Sheet, test: &str| {
        let paths = sheet.items.iter().filter_map(|i| match i {
            sheet::Item::Shape { path, test: Some(t), .. } if t == test => Some(path.clone()),
            _ => None,
        });
        let paths: Vec<String> = paths.collect();
        paths.first().cloned().unwrap_or_else(|| panic!("no {test}"))
    };
    let ends = |path: &str| -> Vec<f64> { path.split(['M', 'L', ' ', 'C']).filter_map(|n| n.parse().ok()).collect() };
    let cord = ends(&path_of(&side, "cord"));
    assert!((cord[0] - centre.0).abs() < 0.1 && (cord[1] - centre.1).abs() < 0.1, "{cord:?} {centre:?}");
    // Down the sheet by 10 it goes 2 to the right.
    assert!(((cord[2] - cord[0]) / (cord[3] - cord[1]) - 0.2).abs() < 0.01, "{cord:?}");
    // The bob's point is where the report says, and its neck hangs from the cord.
    let tip = ends(&path_of(&side, "bob"));
    let foot = side.projection.spot((x + 0.2 * z, 0.0));
    assert!((tip[0] - foot.0).abs() < 0.1 && (tip[1] - foot.1).abs() < 0.1, "{tip:?} {foot:?}");
    let (a, b) = ((cord[2] - tip[0]), (cord[3] - tip[1]));
    assert!((a / b - 0.2).abs() < 0.01, "the bob hangs on the same line");
    // From above the cord runs from the centre to the bob.
    let plan = View::Plan.sheet(&step, System::Metric, &ENGLISH, None);
    let (from, to) = (plan.projection.spot((x, y)), plan.projection.spot((x + 0.2 * z, y + 0.1 * z)));
    assert!(plan.items.iter().any(|i| matches!(i, sheet::Item::Shape { class: "d-cord", path, .. }
        if *path == marks::line(from, to))));
}

/// The distances of the load are drawn as long as the report says, from where its line of action meets
/// the blades to the edge of the region that they are of.
#[test]
fn the_loads_distances_are_to_scale_and_end_on_their_edge() {
    let area = projection::Area { left: 0.0, top: 0.0, right: 600.0, bottom: 400.0 };
    let mut seen = [Over::Ahead, Over::Left, Over::Right].map(|o| (o, 0));
    for step in samples::all() {
        let Some(seat) = step.seat.as_ref().filter(|s| s.region.len() == 4) else { continue };
        let fit = (&area, projection::Rest::Middle);
        let f = frame::Frame::new((View::Plan, &step), System::Metric, &ENGLISH, None, fit);
        let corners: Vec<_> = seat.region.iter().map(|p| f.at(*p)).collect();
        let ends = |pick: fn(&(f64, f64)) -> f64| {
            corners.iter().map(pick).fold((f64::MAX, f64::MIN), |(a, b), v| (a.min(v), b.max(v)))
        };
        let (ahead, across) = (ends(|c| c.0), ends(|c| c.1));
        // A slanted edge may count for one side or the other: only straight regions here.
        if !corners.iter().all(|c| [ahead.0, ahead.1].contains(&c.0) && [across.0, across.1].contains(&c.1)) {
            continue;
        }
        for edge in seat::edges(seat) {
            let (from, to) = blades::distance(&f, seat, &edge).expect("a region");
            let metres = marks::apart(from, to) / f.projection.scale;
            let margin = edge.margin.nominal.get();
            assert!((metres - margin.abs()).abs() < 1e-9, "{edge:?}");
            let (end, beyond) = match edge.over {
                Over::Ahead => (to.0 - ahead.1, from.0 - to.0),
                Over::Heel => (to.0 - ahead.0, to.0 - from.0),
                // On the sheet, left is up.
                Over::Left => (to.1 - across.0, to.1 - from.1),
                Over::Right => (to.1 - across.1, from.1 - to.1),
            };
            assert!(end.abs() < 1e-6, "{edge:?} ends {end} off its edge");
            assert!(margin.abs() < 1e-9 || (beyond > 0.0) == (margin < 0.0), "{edge:?}");
            if matches!(edge.over, Over::Left | Over::Right) {
                assert!((from.1 - f.at(seat.bob).1).abs() < 0.05, "{edge:?} starts at the line of action");
            }
            seen.iter_mut().filter(|(o, _)| *o == edge.over).for_each(|(_, n)| *n += 1);
        }
    }
    assert!(seen.iter().all(|(_, n)| *n > 10), "{seen:?}");
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
    let on_forks = ["standing, ahead", "standing, left", "standing, right", "standing, friction", "asked", "there"];
    for words in on_forks {
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

/// The outline of where the load's centre may stand is there where it is wanted, under every word.
#[tokio::test]
async fn where_the_loads_centre_may_stand_lies_under_the_words() {
    use standfast_core::region::of_step;
    let (_, document) = samples::documents().swap_remove(0);
    let step = samples::steps(&document).into_iter().find(|s| s.id == StepId::RaisedForward).expect("in every move");
    let region = Rc::new(of_step(&document, step.id).expect("with a load"));
    let name = "data-testid=\"may-stand-outline\"";
    for stale in [false, true] {
        let shown = MayStand { region: Rc::clone(&region), stale };
        let html = rendered_with(View::Plan, &step, System::Metric, Some(shown)).await;
        let (at, first_tag) = (html.find(name), html.find("distance-front"));
        assert!(at.is_some() && at < first_tag, "{at:?} {first_tag:?}");
        assert!(at > html.find("load-region-plan"), "over the load");
        assert_eq!(html.contains("d-stale"), stale);
    }
    assert!(!rendered(View::Plan, &step, System::Metric).await.contains(name));
}
