//! The three views: drawn, tapped, dragged.

use super::grab::{Grab, REACH, at, capture, on_sheet};
use super::handles::{handles, outline};
use super::layout::{Layout, Pane, Shown};
use super::moving::{Held, Hold, Manner};
use super::names;
use super::picture::{self, Lines, Outlines, Words};
use super::snap::{key_move, key_step};
use super::view::{Body, View, taken, tapped, under};
use crate::drawing::{Phase, marks};
use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use standfast_core::report::LoadReport;
use standfast_core::units::System;
use std::rc::Rc;
use yew::prelude::*;

/// Radius of the centre's mark.
const CENTRE: f64 = 9.0;
/// The sheet's size where there is room, and on a phone.
const WIDE: (f64, f64) = (560.0, 505.0);
const NARROW: (f64, f64) = (380.0, 400.0);

#[derive(Properties, PartialEq)]
pub struct ViewsProps {
    pub form: Form,
    pub bodies: Rc<Vec<Body>>,
    pub shown: Shown,
    /// On a phone.
    pub narrow: bool,
    pub selected: Option<usize>,
    pub on_select: Callback<usize>,
}

/// A press on a part or one of its sides.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct On {
    pub view: View,
    pub part: usize,
    pub hold: Hold,
}

/// The views. The scale holds still from the beginning of a drag to its end.
#[component]
pub fn Views(props: &ViewsProps) -> Html {
    let act = use_act();
    let svg = use_node_ref();
    let held = use_state(|| None::<Rc<Layout>>);
    let grab = use_mut_ref(|| None::<(Grab<Held>, Option<usize>)>);
    let outlines = use_mut_ref(Outlines::default);
    let ViewsProps { form, bodies, shown, narrow, selected, on_select } = props;
    let (system, selected) = (form.system, *selected);
    let fitted = use_memo((Rc::clone(bodies), *shown, *narrow), |(bodies, shown, narrow)| {
        Layout::fit(*shown, picture::whole(bodies), if *narrow { NARROW } else { WIDE })
    });
    let layout = (*held).clone().unwrap_or(fitted);

    let grasp = {
        let (svg, grab, layout) = (svg.clone(), Rc::clone(&grab), Rc::clone(&layout));
        let (entries, bodies) = (Rc::clone(&form.entries), Rc::clone(bodies));
        move |event: &PointerEvent, on: On, tap: Option<usize>| {
            if event.button() != 0 || grab.borrow().is_some() {
                return;
            }
            let found = Held::of(&entries, &bodies, (on.part, on.view, on.hold), system);
            let pane = layout.pane(on.view).copied();
            if let (Some(held), Some(pane), Some((_, unit))) = (found, pane, on_sheet(&svg, event, layout.width)) {
                capture(&svg, event);
                let taken = Grab { pointer: event.pointer_id(), from: at(event), unit, pane, held, last: None };
                *grab.borrow_mut() = Some((taken, tap));
            }
        }
    };
    let press = {
        let (svg, layout, answer, bodies) = (svg.clone(), Rc::clone(&layout), form.answer.clone(), Rc::clone(bodies));
        let (grasp, on_select) = (grasp.clone(), on_select.clone());
        Callback::from(move |event: PointerEvent| {
            let Some((spot, unit)) = on_sheet(&svg, &event, layout.width) else { return };
            let Some(pane) = layout.pane_at(spot) else { return };
            let found = under(pane.view, &answer.load.shapes, &bodies, pane.metres(spot), REACH * unit / pane.scale);
            if let Some(part) = taken(&found, selected) {
                // Where what is selected was meant to be dragged or tapped away from is known at the end.
                let tap = if selected == Some(part) { tapped(&found, selected) } else { None };
                grasp(&event, On { view: pane.view, part, hold: Hold::Whole }, tap);
                on_select.emit(part);
            }
        })
    };
    let take = Callback::from(move |(event, on): (PointerEvent, On)| {
        event.stop_propagation();
        grasp(&event, on, None);
    });
    let go = {
        let (grab, act, held, layout) = (Rc::clone(&grab), act.clone(), held.clone(), Rc::clone(&layout));
        Callback::from(move |event: PointerEvent| {
            // What is told may lead back here: let go of the cell first.
            let told = match grab.borrow_mut().as_mut() {
                Some((g, _)) if g.pointer == event.pointer_id() => g.moved(at(&event)),
                _ => return,
            };
            for (entries, phase) in told {
                if phase == Phase::Begin {
                    held.set(Some(Rc::clone(&layout)));
                }
                act.emit(Action::Draw(entries, phase));
            }
        })
    };
    let let_go = {
        let (grab, act, held, on_select) = (grab, act.clone(), held.clone(), on_select.clone());
        move |event: PointerEvent, lost: bool| {
            let ended = grab.borrow_mut().take_if(|(g, _)| g.pointer == event.pointer_id());
            let Some((grab, tap)) = ended else { return };
            let told = grab.ended();
            if let (true, false, Some(next)) = (told.is_empty(), lost, tap) {
                on_select.emit(next);
            }
            if !told.is_empty() {
                held.set(None);
            }
            for (entries, phase) in told {
                act.emit(Action::Draw(entries, phase));
            }
        }
    };
    let lose = {
        let let_go = let_go.clone();
        Callback::from(move |event: PointerEvent| let_go(event, true))
    };
    let let_go = Callback::from(move |event: PointerEvent| let_go(event, false));
    let key = {
        let (entries, bodies) = (Rc::clone(&form.entries), Rc::clone(bodies));
        Callback::from(move |(event, on): (KeyboardEvent, On)| {
            let Some((right, up)) = key_move(&event.key(), event.shift_key(), system) else { return };
            event.prevent_default();
            if let Some(held) = Held::of(&entries, &bodies, (on.part, on.view, on.hold), system) {
                let moved = held.moved((on.view.hand() * right, up), Manner::Exact);
                act.emit(Action::Draw(Rc::clone(held.start()), Phase::Begin));
                act.emit(Action::Draw(Rc::new(moved), Phase::End));
            }
        })
    };

    outlines.borrow_mut().update(&layout.panes, &form.answer.load.shapes);
    let outlines = outlines.borrow();
    let w = &words().parts;
    let spacing = picture::spacing(&layout, system);
    let whole = picture::whole(bodies);
    let load = form.answer.load.load.as_ref();
    let body = selected.and_then(|s| bodies.iter().find(|b| b.part == s));
    let name = selected.map(|s| names::part(&form.entries, s)).unwrap_or_default();
    let step = [false, true].map(|shift| names::length(system, key_step(shift, system)));
    html! {
        <>
            <svg
                ref={svg}
                class={classes!("d", "pb-sheet", held.is_some().then_some("d-dragging"))}
                viewBox={format!("0 0 {} {}", layout.width, layout.height)}
                role="group"
                aria-label={w.views}
                aria-describedby="parts-views-about"
                data-testid="parts-views"
                onpointerdown={press}
                onpointermove={go}
                onpointerup={let_go}
                onpointercancel={lose}
            >
                <title>{ w.views }</title>
                <desc id="parts-views-about">{ about(form) }</desc>
                <Ground layout={Rc::clone(&layout)} {spacing} {system} />
                if let Some(load) = load {
                    <g aria-hidden="true">{ lines(&picture::summary(&layout, load, system)) }</g>
                }
                for (n, pane) in layout.panes.iter().enumerate() {
                    <g key={pane.view.key()} data-testid={format!("parts-{}", pane.view.key())}>
                        <g aria-hidden="true">
                            if !bodies.is_empty() {
                                { lines(&picture::dimensions(pane, &whole, system)) }
                            }
                            <g clip-path={format!("url(#parts-clip-{})", pane.view.key())}>
                                for (shape, path) in outlines.of(n, selected) {
                                    { outline(shape, path, selected, pane.view) }
                                }
                                if let Some(load) = load {
                                    { centre(pane, load) }
                                }
                            </g>
                        </g>
                        if let Some(body) = body {
                            { handles(pane, body, &name, system, &take, &key) }
                        }
                    </g>
                }
            </svg>
            <p class="help">{ fill(w.how, &[("step", &step[0]), ("small", &step[1])]) }</p>
        </>
    }
}

/// What the views show, in words.
fn about(form: &Form) -> String {
    let count = words().parts.count.of(form.entries.parts.len());
    fill(words().parts.about, &[("count", &count)])
}

/// The common centre and where it may be.
fn centre(pane: &Pane, load: &LoadReport) -> Html {
    let (spot, path) = picture::centre(pane, load);
    html! {
        <>
            <path class="d-cg" d={marks::circle(spot, CENTRE)} />
            <path class="d-cg-quarters" d={marks::quarters(spot, CENTRE)} data-testid={format!("parts-centre-{}", pane.view.key())} />
            <path class="pb-may" d={path} data-testid={format!("parts-may-{}", pane.view.key())} />
        </>
    }
}

/// Lines and words.
pub fn lines(found: &Lines) -> Html {
    html! {
        <>
            for (class, path) in &found.paths {
                <path class={*class} d={path.clone()} />
            }
            for words in &found.words {
                { written(words) }
            }
        </>
    }
}

fn written(words: &Words) -> Html {
    let (x, y) = words.spot;
    let place = if words.upward {
        format!("translate({x:.1} {y:.1}) rotate(-90)")
    } else {
        format!("translate({x:.1} {y:.1})")
    };
    html! {
        <text class={if words.size > 14.0 { "d-figure" } else { "d-caption" }} font-size={words.size.to_string()} transform={place} text-anchor={if words.middle { "middle" } else { "start" }}>
            { &words.text }
        </text>
    }
}

#[derive(Properties, PartialEq)]
pub struct GroundProps {
    pub layout: Rc<Layout>,
    pub spacing: f64,
    pub system: System,
}

/// What stays while a part is dragged: grids, frames, names, the truck's side.
#[component]
pub fn Ground(props: &GroundProps) -> Html {
    let GroundProps { layout, spacing, system } = props;
    let w = &words().parts;
    let note = fill(w.grid, &[("spacing", &names::length(*system, *spacing))]);
    html! {
        <g aria-hidden="true">
            <defs>
                for pane in &layout.panes {
                    <clipPath key={pane.view.key()} id={format!("parts-clip-{}", pane.view.key())}>
                        <rect
                            x={format!("{:.1}", pane.area.left)}
                            y={format!("{:.1}", pane.area.top)}
                            width={format!("{:.1}", pane.area.right - pane.area.left)}
                            height={format!("{:.1}", pane.area.bottom - pane.area.top)}
                        />
                    </clipPath>
                }
            </defs>
            for pane in &layout.panes {
                <g key={pane.view.key()}>
                    { lines(&picture::ground(pane, *spacing)) }
                    if let Some(path) = picture::cross(pane) {
                        <path class="pb-cross" d={path} />
                    }
                </g>
            }
            <text class="d-note" font-size="12" x={format!("{:.1}", layout.width - 6.0)} y={format!("{:.1}", layout.height - 6.0)} text-anchor="end">
                { note }
            </text>
        </g>
    }
}
