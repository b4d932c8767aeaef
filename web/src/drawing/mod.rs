//! The two drawings of the page: the side view and the plan of one step, to scale.
//!
//! Everything is read from the report: here are only projection, layout and lines. A drawing is
//! worked out in full as a [`sheet::Sheet`], then written as SVG. Both are drawn in the manner of
//! ISO 128: thick visible edges, thin dimension lines, long-dash-dot centre lines, hatching for what
//! lies beyond a tipping line. The plumb line is the strongest line of all.

mod blades;
mod drag;
mod driven;
mod figures;
mod frame;
mod labels;
pub(crate) mod layout;
mod margin;
pub(crate) mod marks;
mod plan;
pub(crate) mod projection;
#[cfg(test)]
mod samples;
mod scene;
mod seat;
pub(crate) mod sheet;
mod side;
mod spread;
mod still;
mod table;
mod tag;
#[cfg(test)]
mod tests;
pub(crate) mod write;

pub use labels::{ENGLISH, Labels};
pub use still::Still;
pub use table::numbers_table;

use crate::may_stand::MayStand;
use drag::{Grab, key_move};
use projection::Projection;
use sheet::Sheet;
use standfast_core::report::StepReport;
use standfast_core::units::System;
use std::rc::Rc;
use web_sys::{Element, SvgGraphicsElement};
use yew::prelude::*;

/// What was dragged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Handle {
    /// The load, with the forks under it.
    Load,
    /// The load's centre of gravity within the load.
    Centre,
}

/// How far a drag has come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Taken hold of.
    Begin,
    /// On the way.
    Move,
    /// Let go.
    End,
}

/// A drag, in metres since [`Phase::Begin`]: (ahead, left, up).
///
/// For [`Handle::Load`] in the truck's frame; for [`Handle::Centre`] in the side view along the
/// blades and square to them, as the load is tilted. What a view does not show is 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moved {
    /// What is dragged.
    pub handle: Handle,
    /// How far it has come.
    pub phase: Phase,
    /// By how much, m.
    pub by: (f64, f64, f64),
}

/// Which drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// From the truck's right side, so that it faces right.
    Side,
    /// From above, the truck facing right.
    Plan,
}

impl View {
    const fn key(self) -> &'static str {
        match self {
            Self::Side => "side",
            Self::Plan => "plan",
        }
    }

    /// Its title, and what it shows.
    const fn words(self, labels: &Labels) -> (&'static str, &'static str) {
        match self {
            Self::Side => (labels.side_view, labels.side_about),
            Self::Plan => (labels.plan_view, labels.plan_about),
        }
    }

    fn sheet(self, step: &StepReport, system: System, labels: &Labels, held: Option<Projection>) -> Sheet {
        match self {
            Self::Side => side::sheet(step, system, labels, held),
            Self::Plan => plan::sheet(step, system, labels, held),
        }
    }
}

/// What a drawing is given.
#[derive(Clone, Debug, PartialEq, Properties)]
pub struct DrawingProps {
    /// Which drawing.
    pub view: View,
    /// The step to draw.
    pub step: Rc<StepReport>,
    /// The units to write.
    pub system: System,
    /// The texts.
    pub labels: &'static Labels,
    /// Where the load's centre may stand, to be drawn in the plan.
    #[prop_or_default]
    pub may_stand: Option<MayStand>,
    /// Told of every drag.
    pub on_moved: Callback<Moved>,
}

/// One drawing of one step, with handles to drag by pointer or arrow keys.
///
/// The scale holds still from the beginning of a drag to its end, and is fitted anew thereafter.
#[component]
pub fn Drawing(props: &DrawingProps) -> Html {
    let svg = use_node_ref();
    let held = use_state(|| None::<Projection>);
    let grab = use_mut_ref(|| None::<Grab>);
    let DrawingProps { view, step, system, labels, may_stand, on_moved } = props.clone();
    let sheet = use_memo((view, step.clone(), system, *held), |(view, step, system, held)| {
        view.sheet(step, *system, labels, *held)
    });

    let take = {
        let (svg, held, grab, on_moved) = (svg.clone(), held.clone(), grab.clone(), on_moved.clone());
        let projection = sheet.projection;
        Callback::from(move |(event, handle, axes): (PointerEvent, Handle, _)| {
            if event.button() != 0 || grab.borrow().is_some() {
                return;
            }
            let Some(pixels) = svg.cast::<SvgGraphicsElement>().and_then(|s| s.get_screen_ctm()).map(|m| m.a()) else {
                return;
            };
            let metres_per_pixel = 1.0 / (f64::from(pixels) * projection.scale);
            if !metres_per_pixel.is_finite() {
                return;
            }
            // A pointer that is already gone cannot be captured; then its moves over the drawing do.
            let _ = svg.cast::<Element>().map(|s| s.set_pointer_capture(event.pointer_id()));
            let from = (f64::from(event.client_x()), f64::from(event.client_y()));
            let taken = Grab { view, handle, pointer: event.pointer_id(), from, last: from, metres_per_pixel, axes };
            *grab.borrow_mut() = Some(taken);
            held.set(Some(projection));
            on_moved.emit(taken.moved(Phase::Begin, from));
        })
    };
    let place = |event: &PointerEvent| (f64::from(event.client_x()), f64::from(event.client_y()));
    let go = {
        let (grab, on_moved) = (grab.clone(), on_moved.clone());
        Callback::from(move |event: PointerEvent| {
            let at = place(&event);
            // The callback may lead back here: let go of the cell first.
            let taken = match grab.borrow_mut().as_mut() {
                Some(g) if g.pointer == event.pointer_id() => {
                    g.last = at;
                    *g
                }
                _ => return,
            };
            on_moved.emit(taken.moved(Phase::Move, at));
        })
    };
    let let_go = {
        let (grab, held, on_moved) = (grab.clone(), held.clone(), on_moved.clone());
        Callback::from(move |event: PointerEvent| {
            let taken = grab.borrow_mut().take_if(|g| g.pointer == event.pointer_id());
            if let Some(taken) = taken {
                held.set(None);
                on_moved.emit(taken.moved(Phase::End, place(&event)));
            }
        })
    };
    // A cancelled pointer has no place: the drag ends where it last was.
    let lose = {
        let (grab, held, on_moved) = (grab, held.clone(), on_moved.clone());
        Callback::from(move |event: PointerEvent| {
            let taken = grab.borrow_mut().take_if(|g| g.pointer == event.pointer_id());
            if let Some(taken) = taken {
                held.set(None);
                on_moved.emit(taken.moved(Phase::End, taken.last));
            }
        })
    };
    let press = Callback::from(move |(event, handle): (KeyboardEvent, Handle)| {
        let Some((first, second)) = key_move(&event.key(), event.shift_key(), system) else { return };
        event.prevent_default();
        let by = view.by(first, second);
        on_moved.emit(Moved { handle, phase: Phase::Begin, by: (0.0, 0.0, 0.0) });
        on_moved.emit(Moved { handle, phase: Phase::Move, by });
        on_moved.emit(Moved { handle, phase: Phase::End, by });
    });

    let (under, over) = sheet.items.split_at(sheet.words_from.min(sheet.items.len()));
    let outline = may_stand.as_ref().and_then(|m| may_stand_outline(m, &sheet.projection));
    let (title, about) = view.words(labels);
    let described = format!("drawing-{}-about", view.key());
    html! {
        <svg
            ref={svg}
            class={classes!("d", format!("d-{}", view.key()), held.is_some().then_some("d-dragging"))}
            viewBox={format!("0 0 {} {}", sheet.width, sheet.height)}
            role="group"
            aria-label={title}
            aria-describedby={described.clone()}
            data-testid={format!("drawing-{}", view.key())}
            onpointermove={go}
            onpointerup={let_go}
            onpointercancel={lose}
        >
            <title>{ title }</title>
            <desc id={described}>{ about }{ " " }{ said(&step, system, labels) }</desc>
            <g aria-hidden="true">
                { for under.iter().map(write::item) }
                if let Some(outline) = &outline {
                    { write::item(outline) }
                }
                { for over.iter().map(write::item) }
            </g>
            { for sheet.grips.iter().map(|g| write::grip(view, g, &take, &press)) }
        </svg>
    }
}

/// Where the load's centre may stand, as an outline in the plan.
fn may_stand_outline(shown: &MayStand, projection: &Projection) -> Option<sheet::Item> {
    let corners: Vec<_> = shown.region.in_plan.iter().map(|(x, y)| projection.spot((x.get(), y.get()))).collect();
    let class = if shown.stale { "d-may-stand d-stale" } else { "d-may-stand" };
    let test = Some("may-stand-outline".to_owned());
    (corners.len() > 2).then(|| sheet::Item::Shape { class, path: marks::closed(&corners), test })
}

/// The distances in words.
fn said(step: &StepReport, system: System, labels: &Labels) -> String {
    let each = step.lines.iter().filter_map(|l| margin::Margin::of(step, l.id)).map(|m| {
        let (words, worst) = (m.words(system, labels), m.worst_words(system, labels));
        format!("{}: {words}, {worst}.", margin::line_name(m.line.id, labels))
    });
    let load = step.seat.as_ref().map(|s| seat::said(s, system, labels));
    each.chain(load).collect::<Vec<_>>().join(" ")
}
