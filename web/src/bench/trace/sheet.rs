//! The sheet: picture, points to tap and drag, loupe, and the buttons under it.

use super::drawn;
use super::glass::{Glass, Look, Pixel, Spot};
use super::hand::{Hand, Stand, Told, with};
use super::loupe::{cross, loupe};
use super::points::{At, Ring, Task, can_close, closed, closes, pixel, placed, taken_out};
use super::watch::{use_size, use_wheel};
use crate::entries::TraceEntry;
use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use std::rc::Rc;
use web_sys::Element;
use yew::prelude::*;

/// A press of a button looks so many times closer.
const CLOSER: f64 = 1.5;
/// The arrow keys move by so many pixels, with Shift held.
const FAR: f64 = 10.0;

#[derive(Properties, PartialEq)]
pub struct SheetProps {
    pub form: Form,
    pub task: Task,
    pub snap: bool,
    pub chosen: Option<At>,
    pub choose: Callback<Option<At>>,
    /// The photo, if it is here.
    pub data: Option<AttrValue>,
}

/// Where a pointer is on the sheet.
fn spot_of(svg: &NodeRef, event: &PointerEvent, sheet: (f64, f64)) -> Option<Spot> {
    let rect = svg.cast::<Element>()?.get_bounding_client_rect();
    let unit = sheet.0 / rect.width();
    let (x, y) = (f64::from(event.client_x()) - rect.left(), f64::from(event.client_y()) - rect.top());
    unit.is_finite().then_some((x * unit, y * unit))
}

/// The sheet.
#[component]
pub fn Sheet(props: &SheetProps) -> Html {
    let act = use_act();
    let svg = use_node_ref();
    let (look, slide) = (use_state(Look::default), use_state(|| false));
    let magnified = use_state(|| None::<(Pixel, Spot)>);
    let hand = use_mut_ref(Hand::default);
    let SheetProps { form, task, snap, chosen, choose, data } = props;
    let w = &words().trace;
    let trace = form.entries.trace.clone().unwrap_or_default();
    let picture = trace.picture.as_ref().map_or((1.0, 1.0), pixel);
    let sheet = use_size(&svg);
    let glass = Glass::of(sheet, picture, *look);
    use_wheel(&svg, glass, look.setter());
    let stand = Stand { entries: Rc::clone(&form.entries), glass, task: *task, snap: *snap, slide: *slide };
    let hear = {
        let (act, choose, look, magnified) = (act.clone(), choose.clone(), look.setter(), magnified.setter());
        Callback::from(move |told: Vec<Told>| {
            for told in told {
                match told {
                    Told::Set(entries) => act.emit(Action::Set(entries)),
                    Told::Draw(entries, phase) => act.emit(Action::Draw(entries, phase)),
                    Told::Choose(at) => choose.emit(at),
                    Told::Look(at) => look.set(at),
                    Told::Magnify(at) => magnified.set(at),
                }
            }
        })
    };
    let on_finger = |what: fn(&mut Hand, &Stand, i32, Spot) -> Vec<Told>, presses: bool| {
        let (svg, hand, stand, hear) = (svg.clone(), Rc::clone(&hand), stand.clone(), hear.clone());
        Callback::from(move |event: PointerEvent| {
            if presses && event.button() != 0 {
                return;
            }
            let Some(spot) = spot_of(&svg, &event, stand.glass.sheet) else { return };
            if presses {
                // One that is already gone cannot be kept; then its moves over the sheet do.
                let _ = svg.cast::<Element>().map(|s| s.set_pointer_capture(event.pointer_id()));
            }
            let told = what(&mut hand.borrow_mut(), &stand, event.pointer_id(), spot);
            hear.emit(told);
        })
    };
    let lost = {
        let (hand, hear) = (Rc::clone(&hand), hear.clone());
        Callback::from(move |event: PointerEvent| {
            let told = hand.borrow_mut().lost(event.pointer_id());
            hear.emit(told);
        })
    };
    let to_look = |next: Look| {
        let look = look.setter();
        Callback::from(move |_: MouseEvent| look.set(next))
    };
    let middle = (0.5 * glass.sheet.0, 0.5 * glass.sheet.1);
    let set = |next: Option<TraceEntry>| {
        let (act, choose, entries) = (act.clone(), choose.clone(), Rc::clone(&form.entries));
        next.map(|trace| {
            Callback::from(move |_: MouseEvent| {
                choose.emit(None);
                act.emit(Action::Set(with(&entries, trace.clone())));
            })
        })
    };
    let active = task.rings(&trace);
    let open = matches!(task, Task::Outline { .. }) && !trace.open.is_empty();
    let close = set(closed(&trace).filter(|_| open));
    let held = chosen.filter(|at| active.contains(&at.ring) && at.point < at.ring.of(&trace).len());
    let take_out = set(held.and_then(|at| taken_out(&trace, at)));
    let undo = act.reform(|_: MouseEvent| Action::Undo);
    let toggle = {
        let slide = slide.clone();
        Callback::from(move |_: MouseEvent| slide.set(!*slide))
    };
    let key = {
        let (act, choose, entries) = (act.clone(), choose.clone(), Rc::clone(&form.entries));
        Callback::from(move |(which, event): (At, KeyboardEvent)| {
            let Some((next, gone)) = by_key(entries.trace.as_ref(), which, &event, glass) else { return };
            event.prevent_default();
            if gone {
                choose.emit(None);
            }
            act.emit(Action::Set(with(&entries, next)));
        })
    };
    let points = active.iter().filter(|r| !r.of(&trace).is_empty());
    html! {
        <div class="tr-sheet">
            <svg
                ref={svg.clone()}
                class="tr-canvas"
                data-testid="trace-canvas"
                viewBox={format!("0 0 {:.1} {:.1}", glass.sheet.0, glass.sheet.1)}
                role="group"
                aria-labelledby="tr-title"
                aria-describedby="tr-about"
                data-scale={format!("{:.6}", glass.scale)}
                data-left={format!("{:.3}", glass.spot((0.0, 0.0)).0)}
                data-top={format!("{:.3}", glass.spot((0.0, 0.0)).1)}
                onpointerdown={on_finger(Hand::press, true)}
                onpointermove={on_finger(Hand::go, false)}
                onpointerup={on_finger(Hand::lift, false)}
                onpointercancel={lost}
            >
                <title id="tr-title">{ w.sheet }</title>
                <desc id="tr-about">{ about(&trace) }</desc>
                { drawn::ground(&glass, &trace, data.as_ref()) }
                { drawn::rings(&glass, &trace, &active) }
                { drawn::references(&glass, &trace, form) }
                { drawn::lengths(&glass, &trace, form) }
                if let Some(report) = &form.answer.load.outline {
                    { drawn::centre(&glass, report) }
                }
                { for points.map(|&ring| dots(ring, &trace, &glass, held, &key, choose)) }
                if let Some((at, finger)) = *magnified {
                    <path class="tr-cross-halo" d={cross(glass.spot(at))} />
                    <path class="tr-cross" d={cross(glass.spot(at))} />
                    { loupe(&glass, (at, finger), drawn::GROUND, &drawn::lines(&trace)) }
                }
            </svg>
            <div class="tr-tools">
                if open {
                    <button type="button" class="main" data-testid="trace-close" disabled={!can_close(&trace)} onclick={close}>
                        { if trace.outline.is_empty() { w.close } else { w.close_hole } }
                    </button>
                }
                <button type="button" class="tr-sign" aria-label={w.smaller} data-testid="trace-smaller" disabled={glass.is_whole()} onclick={to_look(glass.closer(1.0 / CLOSER, middle))}>{ "\u{2212}" }</button>
                <button type="button" class="tr-sign" aria-label={w.larger} data-testid="trace-larger" onclick={to_look(glass.closer(CLOSER, middle))}>{ "+" }</button>
                <button type="button" data-testid="trace-whole" disabled={glass.is_whole()} onclick={to_look(Look::default())}>{ w.whole }</button>
                <button type="button" class="segment" aria-label={w.slide_how} data-testid="trace-slide" aria-pressed={if *slide { "true" } else { "false" }} onclick={toggle}>{ w.slide }</button>
                <button type="button" data-testid="trace-take-out" disabled={take_out.is_none()} onclick={take_out}>{ w.take_out }</button>
                <button type="button" class="tr-undo" data-testid="trace-undo" onclick={undo}>{ w.undo }</button>
            </div>
        </div>
    }
}

/// What a key does to a point, and whether the point is gone then; nothing for other keys.
fn by_key(trace: Option<&TraceEntry>, which: At, event: &KeyboardEvent, glass: Glass) -> Option<(TraceEntry, bool)> {
    let trace = trace?;
    let by = if event.shift_key() { FAR } else { 1.0 };
    let (dx, dy) = match event.key().as_str() {
        "ArrowLeft" => (-by, 0.0),
        "ArrowRight" => (by, 0.0),
        "ArrowUp" => (0.0, -by),
        "ArrowDown" => (0.0, by),
        "Delete" | "Backspace" => return taken_out(trace, which).map(|t| (t, true)),
        "Enter" | " " if closes(trace, which) => return closed(trace).map(|t| (t, true)),
        _ => return None,
    };
    let (x, y) = which.ring.of(trace).get(which.point).map(pixel)?;
    Some((placed(trace, which, glass.within((x + dx, y + dy))), false))
}

/// What is tapped, in words.
fn about(trace: &TraceEntry) -> String {
    let w = &words().trace;
    let outline = if trace.open.is_empty() || !trace.outline.is_empty() {
        w.count_outline.of(trace.outline.len())
    } else {
        w.count_open.of(trace.open.len())
    };
    let scale = if trace.scale.len() == 2 { w.scale_marked } else { w.scale_open };
    let rectangle = if trace.rectangle.len() == 4 { w.rectangle_marked } else { w.rectangle_open };
    let holes = w.count_holes.of(trace.holes.len());
    fill(w.about, &[("outline", &outline), ("holes", &holes), ("scale", scale), ("rectangle", rectangle)])
}

/// The points of a list that can be taken hold of.
fn dots(
    ring: Ring,
    trace: &TraceEntry,
    glass: &Glass,
    held: Option<At>,
    key: &Callback<(At, KeyboardEvent)>,
    choose: &Callback<Option<At>>,
) -> Html {
    let w = &words().trace;
    let name = (w.ring)(ring);
    let one = |(point, p): (usize, Pixel)| {
        let which = At { ring, point };
        let (x, y) = glass.spot(p);
        let closing = closes(trace, which);
        let number = |v: f64| format!("{v:.0}");
        let n = (point + 1).to_string();
        let said = fill(w.point_of, &[("ring", &name), ("n", &n), ("x", &number(p.0)), ("y", &number(p.1))]);
        let on = (held == Some(which)).then_some("tr-on");
        let onkeydown = key.reform(move |event| (which, event));
        let onfocus = choose.reform(move |_: FocusEvent| Some(which));
        html! {
            <g
                key={point}
                class={classes!("tr-point", on, closing.then_some("tr-closing"))}
                transform={format!("translate({x:.2} {y:.2})")}
                tabindex="0"
                role="button"
                aria-label={said}
                data-testid={format!("trace-point-{}-{point}", ring.key())}
                {onkeydown}
                {onfocus}
            >
                if closing {
                    <circle class="tr-pull" r="18" />
                }
                <circle class="tr-dot" r="9" />
                <circle class="tr-pin" r="1.6" />
                <text x="13" y="-9">{ n }</text>
            </g>
        }
    };
    html! { <g key={ring.key()}>{ for ring.pixels(trace).into_iter().enumerate().map(one) }</g> }
}
