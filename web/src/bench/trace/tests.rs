//! The bench as a whole, rendered to text.

use super::points::{Ring, dot};
use super::*;
use crate::answer::Answer;
use crate::entries::TraceEntry;
use standfast_core::document::{GivenAs, TraceView, WeightKnown};
use standfast_core::material::Material;
use standfast_core::place::{Field, Place};
use standfast_core::units::System;
use std::rc::Rc;

fn form(entries: Entries, system: System) -> Form {
    let answer = Rc::new(Answer::of(&entries));
    Form { entries: Rc::new(entries), answer: answer.into(), system, known: None }
}

fn blank() -> Entries {
    Entries { given_as: GivenAs::Trace, trace: Some(TraceEntry::default()), ..Entries::blank() }
}

/// An L on squared paper, one square 100 mm: 1.2 m along and 0.9 m up.
fn l() -> Entries {
    let mut entries = paper::laid(&blank(), 0.1, System::Metric);
    let outline =
        [(100.0, 700.0), (700.0, 700.0), (700.0, 550.0), (300.0, 550.0), (300.0, 250.0), (100.0, 250.0)].map(dot);
    entries.trace.as_mut().expect("laid").outline = outline.to_vec();
    entries
}

fn complete() -> Entries {
    let mut entries = l();
    entries.enter(Field::TraceThrough.into(), "800", System::Metric);
    entries.enter(Field::LoadMass.into(), "600", System::Metric);
    entries.weight_known = Some(WeightKnown::Scale);
    entries
}

async fn rendered(entries: Entries, system: System) -> String {
    let props = TraceProps { form: form(entries, system) };
    yew::LocalServerRenderer::<TraceBench>::with_props(props).hydratable(false).render().await
}

fn tests_of(text: &str, name: &str) -> usize {
    text.matches(&format!("data-testid=\"{name}\"")).count()
}

fn trace(entries: &mut Entries) -> &mut TraceEntry {
    entries.trace.as_mut().expect("a tracing")
}

#[tokio::test]
async fn it_begins_with_the_picture() {
    let text = rendered(blank(), System::Metric).await;
    assert_eq!((tests_of(&text, "trace-photo"), tests_of(&text, "trace-camera")), (1, 1));
    assert!(text.contains("capture=\"environment\"") && text.contains("stays on this device"));
    assert_eq!(tests_of(&text, "trace-canvas"), 0);
    assert!(text.contains("a photo or squared paper"), "what is needed stands beside the step");
    for step in Step::ALL {
        assert_eq!(tests_of(&text, &format!("trace-step-{}", step.key())), 1);
    }
}

/// Whatever is entered, the step with something to do is the one that opens.
#[test]
fn the_first_step_with_something_to_do_opens() {
    let first = |entries: &Entries| Step::first(&form(entries.clone(), System::Metric));
    assert_eq!(first(&blank()), Step::Picture);
    let paper = paper::laid(&blank(), 0.1, System::Metric);
    assert_eq!(first(&paper), Step::Outline);
    let mut photo = paper.clone();
    trace(&mut photo).scale.clear();
    assert_eq!(first(&photo), Step::Scale);
    let mut bent = l();
    trace(&mut bent).rectangle = [(100.0, 100.0), (300.0, 100.0), (100.0, 300.0), (300.0, 300.0)].map(dot).to_vec();
    assert_eq!(first(&bent), Step::Straighten);
    assert_eq!(first(&l()), Step::Load);
    assert_eq!(first(&complete()), Step::Outline, "nothing to do");
    let all = Step::ALL.map(|s| s.progress(&form(complete(), System::Metric)));
    let (done, optional) = (Progress::Done, Progress::Optional);
    assert_eq!(all, [done, done, optional, done, done]);
}

/// Every field and choice of a tracing is entered in a step.
#[test]
fn every_field_belongs_to_a_step() {
    let fields = Field::NUMBERS.iter().chain(Field::CHOICES).filter(|f| f.row().path.starts_with("load.trace"));
    for field in fields {
        assert_eq!(Step::ALL.iter().filter(|s| s.fields().contains(field)).count(), 1, "{field:?}");
    }
}

#[tokio::test]
async fn an_outline_shows_its_lengths_its_centre_and_how_well_it_is_known() {
    let text = rendered(complete(), System::Metric).await;
    for length in ["1\u{202f}200\u{a0}mm", "300\u{a0}mm", "900\u{a0}mm"] {
        assert!(text.contains(length), "{length}");
    }
    for point in 0..6 {
        assert_eq!(tests_of(&text, &format!("trace-point-outline-{point}")), 1);
    }
    assert_eq!((tests_of(&text, "trace-centre"), tests_of(&text, "trace-known-to")), (1, 1));
    assert!(text.contains("6\u{a0}% of the size is for a drawing"));
    assert!(text.contains("from its heel side") && text.contains("600 \u{b1} "));
    assert!(text.contains("<title") && text.contains("<desc") && text.contains("Outline of 6 points"));
    assert!(!text.contains("style=") && !text.contains("NaN") && !text.contains("inf "), "{text}");
    let us = rendered(complete(), System::Us).await;
    assert!(us.contains("47.2\u{a0}in"), "1200 mm");
}

/// As soon as it can be: what it weighs and how far it goes through may come later.
#[tokio::test]
async fn lengths_and_centre_show_before_weight_and_depth() {
    let text = rendered(l(), System::Metric).await;
    assert!(text.contains("1\u{202f}200\u{a0}mm") && tests_of(&text, "trace-centre") == 1);
    assert_eq!(tests_of(&text, "trace-mass-found"), 0);
    assert!(text.contains("trace-mass-problem") && text.contains("choose a material"));
    // The load's card has the same figures: no two elements of one id or name.
    assert_eq!((tests_of(&text, "field-load.mass_kg"), text.matches("id=\"f-load.mass_kg\"").count()), (0, 0));
}

#[tokio::test]
async fn an_open_outline_is_no_outline_yet() {
    let mut entries = complete();
    let t = trace(&mut entries);
    t.open = std::mem::take(&mut t.outline);
    let answer = Answer::of(&entries);
    assert!(answer.load.load.is_none() && answer.load.outline.is_none());
    let text = rendered(entries, System::Metric).await;
    assert!(text.contains("tap point 1 again") && text.contains("the outline, tapped round"));
    assert_eq!((tests_of(&text, "trace-close"), tests_of(&text, "trace-point-open-5")), (1, 1));
}

#[tokio::test]
async fn what_is_wrong_stands_in_its_step() {
    let mut crossed = complete();
    trace(&mut crossed).outline.swap(0, 1);
    let text = rendered(crossed, System::Metric).await;
    assert_eq!(tests_of(&text, "trace-panel-outline"), 1);
    assert_eq!(tests_of(&text, "problem-load.trace.outline"), 1);
    let mut short = complete();
    trace(&mut short).scale = [(100.0, 100.0), (110.0, 100.0)].map(dot).to_vec();
    let text = rendered(short, System::Metric).await;
    assert_eq!((tests_of(&text, "trace-panel-scale"), tests_of(&text, "problem-load.trace.scale")), (1, 1));
    assert!(text.contains("too close together"));
    let mut hole = complete();
    trace(&mut hole).holes = vec![[(10.0, 10.0), (40.0, 10.0), (20.0, 40.0)].map(dot).to_vec()];
    let text = rendered(hole, System::Metric).await;
    let place = Place::in_row(Field::TraceHole, 0);
    assert_eq!(tests_of(&text, &format!("problem-{place}")), 1);
    assert_eq!(tests_of(&text, "trace-remove-hole-0"), 1);
}

#[tokio::test]
async fn corners_are_asked_for_one_by_one_in_their_order() {
    let corners = [(100.0, 100.0), (800.0, 100.0), (800.0, 600.0), (100.0, 600.0)].map(dot);
    let blank = TraceEntry::default();
    let asked: Vec<_> = (0..=4)
        .map(|n| Step::Straighten.to_do(&TraceEntry { rectangle: corners[..n].to_vec(), ..blank.clone() }, false))
        .collect();
    for (text, part) in asked.iter().zip(["top left", "top right", "bottom right", "bottom left", "width and height"]) {
        assert!(text.contains(part), "{text}");
    }
    let mut straight = complete();
    trace(&mut straight).rectangle = corners.to_vec();
    straight.enter(Field::TraceRectangleWidth.into(), "1400", System::Metric);
    let text = rendered(straight.clone(), System::Metric).await;
    assert_eq!(tests_of(&text, "field-load.trace.rectangle_height_m"), 1, "the height is missing");
    straight.enter(Field::TraceRectangleHeight.into(), "1000", System::Metric);
    let all = form(straight.clone(), System::Metric);
    assert_eq!(Step::Scale.progress(&all), Progress::Spared);
    assert!(rendered(straight, System::Metric).await.contains("Straightened: 1\u{a0}%"));
}

#[tokio::test]
async fn a_material_says_its_density_and_source() {
    let mut entries = l();
    entries.enter(Field::TraceThrough.into(), "800", System::Metric);
    entries.material = Some(Material::Steel);
    // With everything there it opens at the outline; the figures stand in the last step.
    let form = form(entries, System::Metric);
    let trace = form.entries.trace.clone().expect("a tracing");
    let html = Panel { form: &form, trace: &trace, act: &Callback::noop() }.load();
    let text = shown(html).await;
    let row = Material::Steel.density();
    assert!(text.contains("kg/m\u{b3}") && text.contains(&row.source[..12]), "{text}");
    for view in ["side", "front", "plan"] {
        assert_eq!(tests_of(&text, &format!("trace-view-{view}")), 1);
    }
    assert_eq!(tests_of(&text, "trace-truck-left"), 1);
    let front = TraceEntry { view: TraceView::Front, ..trace };
    let text = shown(Panel { form: &form, trace: &front, act: &Callback::noop() }.load()).await;
    assert_eq!(tests_of(&text, "trace-truck-left"), 0, "only a picture from the side has the truck beside it");
}

#[derive(Properties, PartialEq)]
struct Bare {
    html: Html,
}

#[component]
fn Show(props: &Bare) -> Html {
    props.html.clone()
}

async fn shown(html: Html) -> String {
    yew::LocalServerRenderer::<Show>::with_props(Bare { html }).hydratable(false).render().await
}

#[tokio::test]
async fn the_list_has_every_point_with_its_figures() {
    let list = html! { <PointList form={form(complete(), System::Metric)} task={Step::Outline.task(false)} /> };
    let text = shown(list).await;
    for point in 0..6 {
        assert_eq!(tests_of(&text, &format!("trace-right-outline-{point}")), 1);
        assert_eq!(tests_of(&text, &format!("trace-down-outline-{point}")), 1);
    }
    assert_eq!(tests_of(&text, "trace-right-scale-1"), 1);
    assert!(text.contains("value=\"700\""), "{text}");
    assert_eq!(Ring::all(&TraceEntry::default()).len(), 4);
}

/// The words name the conditions of the core's figure: where those change, the words must.
#[test]
fn a_good_photo_is_what_the_tolerance_is_for() {
    let figure = standfast_core::rules::TRACE_NOT_SQUARE;
    assert!(figure.source.contains("10 deg"), "{}", figure.source);
    let w = &words().trace;
    assert!(w.from_plain.contains("10\u{b0}") && w.from_plain.contains("twice its size"));
    assert!(w.good_list[0].contains("10\u{b0}") && w.good_list[1].contains("twice"));
}

/// What is not closed is not counted, and that is said.
#[tokio::test]
async fn an_open_hole_is_said_not_to_count() {
    let mut entries = complete();
    let before = Answer::of(&entries).load.load.clone();
    trace(&mut entries).open = [(150.0, 300.0), (250.0, 300.0), (250.0, 500.0)].map(dot).to_vec();
    assert_eq!(Answer::of(&entries).load.load.clone(), before);
    assert_eq!(Step::Outline.progress(&form(entries.clone(), System::Metric)), Progress::Wanted);
    let text = rendered(entries, System::Metric).await;
    assert_eq!((tests_of(&text, "trace-open-hole"), tests_of(&text, "trace-close")), (1, 1));
}

/// A file of another device: the outline is there, its photo is not.
#[tokio::test]
async fn a_picture_that_is_not_here_is_said() {
    let entries = complete();
    let (document, _) = entries.document();
    let opened = Entries::from_document(&document);
    let form = form(opened, System::Metric);
    let photo =
        photo::Photo { data: None, busy: false, said: Vec::new(), take: Callback::noop(), remove: Callback::noop() };
    let step = html! { <GroundStep {form} {photo} ready={Callback::noop()} /> };
    let text = shown(step).await;
    assert!(text.contains("not on this device") && text.contains("stays as it was traced"));
    assert_eq!(tests_of(&text, "trace-remove-photo"), 0);
}
