//! The outline of a prism, drawn large.

use super::grab::{Draggable, Grab, at, capture, on_sheet};
use super::layout::{Layout, Shown};
use super::names;
use super::outline::Drawn;
use super::picture::{self, Outlines};
use super::point::PointFigures;
use super::snap::key_move;
use super::view::{Body, extents};
use super::views::Ground;
use crate::drawing::{Phase, marks};
use crate::entries::Entries;
use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use standfast_core::place::{Field, Place};
use std::rc::Rc;
use yew::prelude::*;

/// The sheet's size where there is room, and on a phone.
const WIDE: (f64, f64) = (560.0, 505.0);
const NARROW: (f64, f64) = (380.0, 400.0);
/// So much of the outline's size is left free about it.
const FREE: f64 = 0.25;
/// A tap this near to an edge puts a point in, in pixels.
const EDGE: f64 = 18.0;
/// How far from a point a finger takes hold of it, sheet units.
const TAKE: f64 = 26.0;

#[derive(Properties, PartialEq)]
pub struct EditorProps {
    pub form: Form,
    pub bodies: Rc<Vec<Body>>,
    pub part: usize,
    pub narrow: bool,
    pub on_done: Callback<()>,
}

/// A point of an outline taken hold of.
#[derive(Debug)]
pub struct HeldPoint {
    /// As it was; with the point put in where an edge was tapped.
    pub drawn: Drawn,
    /// Which point.
    pub point: usize,
}

impl Draggable for HeldPoint {
    fn start(&self) -> &Rc<Entries> {
        &self.drawn.start
    }

    fn by_hand(&self, by: (f64, f64), reach: f64) -> Entries {
        self.drawn.dragged(self.point, by, reach)
    }
}

/// A layout about the outline.
fn fitted(drawn: &Drawn, narrow: bool) -> Layout {
    let (lo, hi) = extents(drawn.points.iter().copied()).unwrap_or(((0.0, 0.0), (0.6, 0.4)));
    let (i, j) = drawn.view.axes();
    let free = FREE * (hi.0 - lo.0).max(hi.1 - lo.1);
    let (mut low, mut high) = ([0.0; 3], [0.0; 3]);
    (low[i], low[j], high[i], high[j]) = (lo.0 - free, lo.1 - free, hi.0 + free, hi.1 + free);
    Layout::fit(Shown::One(drawn.view), (low, high), if narrow { NARROW } else { WIDE })
}

/// The outline, its points to drag, and the figures of the one selected.
#[component]
pub fn OutlineEditor(props: &EditorProps) -> Html {
    let act = use_act();
    let svg = use_node_ref();
    let held = use_state(|| None::<Rc<Layout>>);
    let chosen = use_state(|| 0_usize);
    let grab = use_mut_ref(|| None::<Grab<HeldPoint>>);
    let others = use_mut_ref(Outlines::default);
    let EditorProps { form, part, narrow, on_done, .. } = props;
    let (part, system, w) = (*part, form.system, &words().parts);
    let drawn = Drawn::of(&form.entries, &form.answer.document, part, system);
    let drawn = use_memo(drawn, Clone::clone);
    let layout = use_memo((Rc::clone(&drawn), *narrow), |(drawn, narrow)| {
        (**drawn)
            .as_ref()
            .map(|d| fitted(d, *narrow))
            .unwrap_or_else(|| Layout::fit(Shown::All, ([0.0; 3], [1.0; 3]), WIDE))
    });
    let layout = (*held).clone().unwrap_or(layout);
    let (Some(d), Some(pane)) = ((*drawn).clone(), layout.panes.first().copied()) else { return Html::default() };
    let point = (*chosen).min(d.points.len().saturating_sub(1));

    let press = {
        let (svg, grab, layout, d) = (svg.clone(), Rc::clone(&grab), Rc::clone(&layout), d.clone());
        let (act, chosen, held) = (act.clone(), chosen.clone(), held.clone());
        Callback::from(move |event: PointerEvent| {
            let Some((spot, unit)) = on_sheet(&svg, &event, layout.width) else { return };
            if event.button() != 0 || grab.borrow().is_some() {
                return;
            }
            let near = d.points.iter().enumerate().map(|(k, p)| (marks::apart(pane.spot(*p), spot), k));
            let near = near.min_by(|a, b| a.0.total_cmp(&b.0)).filter(|n| n.0 <= TAKE);
            let put = |drawn: Drawn, point: usize, last: Option<Rc<Entries>>| {
                capture(&svg, &event);
                chosen.set(point);
                held.set(Some(Rc::clone(&layout)));
                let held = HeldPoint { drawn, point };
                let (pointer, from) = (event.pointer_id(), at(&event));
                *grab.borrow_mut() = Some(Grab { pointer, from, unit, pane, held, last });
            };
            if let Some((_, k)) = near {
                put(d.clone(), k, None);
                return;
            }
            let Some((edge, foot)) = d.edge(pane.metres(spot), EDGE * unit / pane.scale) else { return };
            if let Some(entries) = d.put_in(edge, foot).map(Rc::new) {
                // Put in and dragged on is one step.
                let with = Drawn::of(&entries, &entries.document().0, part, system);
                act.emit(Action::Draw(Rc::clone(&d.start), Phase::Begin));
                act.emit(Action::Draw(Rc::clone(&entries), Phase::Move));
                if let Some(with) = with {
                    put(with, edge + 1, Some(entries));
                }
            }
        })
    };
    let go = {
        let (grab, act) = (Rc::clone(&grab), act.clone());
        Callback::from(move |event: PointerEvent| {
            let told = match grab.borrow_mut().as_mut() {
                Some(g) if g.pointer == event.pointer_id() => g.moved(at(&event)),
                _ => return,
            };
            for (entries, phase) in told {
                act.emit(Action::Draw(entries, phase));
            }
        })
    };
    let let_go = {
        let (grab, act, held) = (grab, act.clone(), held.clone());
        Callback::from(move |event: PointerEvent| {
            let ended = grab.borrow_mut().take_if(|g| g.pointer == event.pointer_id());
            if let Some(grab) = ended {
                held.set(None);
                for (entries, phase) in grab.ended() {
                    act.emit(Action::Draw(entries, phase));
                }
            }
        })
    };
    let delete = {
        let (act, d, chosen) = (act.clone(), d.clone(), chosen.clone());
        Callback::from(move |point: usize| {
            if let Some(entries) = d.taken_out(point) {
                chosen.set(point.saturating_sub(1));
                act.emit(Action::Set(Rc::new(entries)));
            }
        })
    };
    let key = {
        let (act, d, delete) = (act.clone(), d.clone(), delete.clone());
        Callback::from(move |(event, k): (KeyboardEvent, usize)| {
            if matches!(event.key().as_str(), "Delete" | "Backspace") {
                event.prevent_default();
                delete.emit(k);
            }
            let Some((right, up)) = key_move(&event.key(), event.shift_key(), system) else { return };
            event.prevent_default();
            if let Some(p) = d.points.get(k) {
                let entries = d.placed(k, (p.0 + d.view.hand() * right, p.1 + up));
                act.emit(Action::Set(Rc::new(entries)));
            }
        })
    };

    others.borrow_mut().update(&layout.panes, &form.answer.load.shapes);
    let others = others.borrow();
    let spots: Vec<_> = d.points.iter().map(|p| pane.spot(*p)).collect();
    let title = fill(w.outline, &[("part", &names::part(&form.entries, part))]);
    let handles = spots.iter().enumerate().map(|(k, spot)| {
        let label = fill(w.move_point, &[("n", &(k + 1).to_string())]);
        let pick = {
            let chosen = chosen.clone();
            Callback::from(move |_: FocusEvent| chosen.set(k))
        };
        html! {
            <g
                key={k}
                class={classes!("d-grip", (k == point).then_some("pb-point-on"))}
                transform={format!("translate({:.1} {:.1})", spot.0, spot.1)}
                tabindex="0"
                role="slider"
                aria-label={label}
                aria-valuenow={format!("{:.0}", 1e3 * d.points[k].0)}
                aria-valuetext={format!("{}, {}", names::length(system, d.points[k].0), names::length(system, d.points[k].1))}
                data-testid={format!("outline-point-{k}")}
                onfocus={pick}
                onkeydown={key.reform(move |event: KeyboardEvent| (event, k))}
            >
                <circle class="d-reach" r={TAKE.to_string()} />
                <circle class="d-focus" r="14" />
                <circle class="pb-point" r={if k == point { "8" } else { "6" }} />
                <text class="d-plain" font-size="13" x="11" y="-9" aria-hidden="true">{ k + 1 }</text>
            </g>
        }
    });
    html! {
        <section class="pb-outline" aria-label={title.clone()} data-testid="parts-outline">
            <div class="pb-buttons">
                <button type="button" class="main" data-testid="outline-done" onclick={on_done.reform(|_: MouseEvent| ())}>{ w.outline_done }</button>
                <button type="button" data-testid="outline-delete" disabled={d.points.len() <= 3} onclick={delete.reform(move |_: MouseEvent| point)}>
                    { w.delete_point }
                </button>
            </div>
            <svg
                ref={svg}
                class={classes!("d", "pb-sheet", "pb-drawing", held.is_some().then_some("d-dragging"))}
                viewBox={format!("0 0 {} {}", layout.width, layout.height)}
                role="group"
                aria-label={title.clone()}
                data-testid="outline-sheet"
                onpointerdown={press}
                onpointermove={go}
                onpointerup={let_go.clone()}
                onpointercancel={let_go}
            >
                <title>{ title }</title>
                <desc>{ w.outline_how }</desc>
                <Ground layout={Rc::clone(&layout)} spacing={picture::spacing(&layout, system)} {system} />
                <g aria-hidden="true" clip-path={format!("url(#parts-clip-{})", pane.view.key())}>
                    for (shape, path) in others.of(0, None) {
                        if shape.part != Some(part) {
                            <path key={shape.part.unwrap_or_default()} class={if shape.cut { "pb-other pb-cut" } else { "pb-other" }} d={path.clone()} />
                        }
                    }
                </g>
                <path class="pb-edge-reach" d={marks::closed(&spots)} />
                <path class="pb-edge" d={marks::closed(&spots)} data-testid="outline-path" />
                { for handles }
            </svg>
            <p class="help">{ w.outline_how }{ " " }if d.points.len() <= 3 { { w.three_stay } }</p>
            { form.message_below(Place::in_row(Field::PartOutline, part)) }
            <PointFigures drawn={d} {point} />
        </section>
    }
}
