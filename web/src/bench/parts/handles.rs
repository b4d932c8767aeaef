//! The parts' outlines, and the handles of the one that is selected.

use super::layout::{Pane, Spot};
use super::moving::Hold;
use super::names;
use super::view::{Body, View};
use super::views::On;
use crate::words::{fill, words};
use standfast_core::report::ShapeReport;
use standfast_core::units::System;
use yew::prelude::*;

/// How far outside a part its handles stand, sheet units.
const OUT: f64 = 15.0;
/// Half the width of what reacts to a finger.
const REACH: f64 = 26.0;
/// Half the width of the handle's own sign.
const SIGN: f64 = 6.5;

/// One outline.
pub fn outline(shape: &ShapeReport, path: &AttrValue, selected: Option<usize>, view: View) -> Html {
    let chosen = shape.part.is_some() && shape.part == selected;
    let class = match (shape.cut, chosen) {
        (false, false) => "pb-part",
        (false, true) => "pb-part pb-chosen",
        (true, false) => "pb-part pb-cut",
        (true, true) => "pb-part pb-cut pb-chosen",
    };
    let part = shape.part.unwrap_or_default();
    html! {
        <path key={part} {class} d={path.clone()} data-testid={format!("part-{part}-{}", view.key())} />
    }
}

/// The two sides of a body along one direction of a view, and where their handles stand: near or
/// right or under one first.
pub fn stands(pane: &Pane, body: &Body, second: bool) -> [Spot; 2] {
    let (i, j) = pane.view.axes();
    let axis = if second { j } else { i };
    let middle = (body.middle(i), body.middle(j));
    let spot = |at: f64, out: f64| {
        let (x, y) = pane.spot(if second { (middle.0, at) } else { (at, middle.1) });
        let (x, y) = if second { (x, y - out) } else { (x + pane.view.hand() * out, y) };
        // Where the part fills the view, its handles stay on it.
        let a = &pane.area;
        (x.clamp(a.left + 2.0, a.right - 2.0), y.clamp(a.top + 2.0, a.bottom - 2.0))
    };
    [spot(body.lo[axis], -OUT), spot(body.hi[axis], OUT)]
}

/// A part's focusable outline and the handles of its sides, in one view.
pub fn handles(
    pane: &Pane,
    body: &Body,
    name: &str,
    system: System,
    take: &Callback<(PointerEvent, On)>,
    key: &Callback<(KeyboardEvent, On)>,
) -> Html {
    let w = &words().parts;
    let view = pane.view;
    let (i, j) = view.axes();
    let called = match view {
        View::Plan => w.plan,
        View::Side => w.side,
        View::Front => w.front,
    };
    let length = |m: f64| names::length(system, m);
    let at = fill(w.at, &[("a", &length(body.place(0))), ("b", &length(body.place(1))), ("c", &length(body.place(2)))]);
    let (low, high) = (pane.spot((body.lo[i], body.lo[j])), pane.spot((body.hi[i], body.hi[j])));
    let whole = On { view, part: body.part, hold: Hold::Whole };
    let side = |axis: usize, far: bool, spot: Spot| {
        let on = On { hold: Hold::Side(axis, far), ..whole };
        let label = fill(w.move_side, &[("part", name), ("view", called), ("side", w.sides[axis][usize::from(far)])]);
        let test = format!("part-side-{}-{axis}-{}", view.key(), if far { "far" } else { "near" });
        html! {
            <g
                key={test.clone()}
                class="d-grip"
                transform={format!("translate({:.1} {:.1})", spot.0, spot.1)}
                tabindex="0"
                role="slider"
                aria-label={label}
                aria-valuenow={format!("{:.0}", 1e3 * body.size(axis))}
                aria-valuemin="0"
                aria-valuetext={length(body.size(axis))}
                data-testid={test}
                onpointerdown={take.reform(move |event: PointerEvent| (event, on))}
                onkeydown={key.reform(move |event: KeyboardEvent| (event, on))}
            >
                <circle class="d-reach" r={REACH.to_string()} />
                <circle class="d-focus" r="13" />
                <rect class="pb-handle" x={(-SIGN).to_string()} y={(-SIGN).to_string()} width={(2.0 * SIGN).to_string()} height={(2.0 * SIGN).to_string()} />
            </g>
        }
    };
    let (first, second) = (stands(pane, body, false), stands(pane, body, true));
    html! {
        <>
            <rect
                class="pb-whole"
                x={format!("{:.1}", low.0.min(high.0))}
                y={format!("{:.1}", low.1.min(high.1))}
                width={format!("{:.1}", (high.0 - low.0).abs())}
                height={format!("{:.1}", (high.1 - low.1).abs())}
                tabindex="0"
                role="slider"
                aria-label={fill(w.move_part, &[("part", name), ("view", called)])}
                aria-valuenow={format!("{:.0}", 1e3 * body.place(i))}
                aria-valuetext={at}
                data-testid={format!("part-whole-{}", view.key())}
                onkeydown={key.reform(move |event: KeyboardEvent| (event, whole))}
            />
            { side(i, false, first[0]) }
            { side(i, true, first[1]) }
            { side(j, false, second[0]) }
            { side(j, true, second[1]) }
        </>
    }
}

#[cfg(test)]
mod tests {
    use super::super::layout::{Layout, Shown};
    use super::*;

    #[test]
    fn handles_stand_outside_their_sides_and_apart() {
        let body = Body { part: 0, cut: false, lo: [0.3, -0.2, 0.2], hi: [0.5, 0.0, 0.22] };
        let layout = Layout::fit(Shown::All, ([0.0, -0.5, 0.0], [1.2, 0.5, 0.8]), (560.0, 540.0));
        for pane in &layout.panes {
            let (a, b) = (stands(pane, &body, false), stands(pane, &body, true));
            let (i, _) = pane.view.axes();
            let low = pane.spot((body.lo[i], 0.0)).0;
            assert!((a[0].0 - low).abs() > 10.0 && (a[0].0 - low) * pane.view.hand() < 0.0, "{:?}", pane.view);
            assert!(b[0].1 > b[1].1, "the underside's handle hangs below");
            let spots = [a[0], a[1], b[0], b[1]];
            for (k, p) in spots.iter().enumerate() {
                assert!(pane.area.contains(*p));
                for q in &spots[..k] {
                    assert!((p.0 - q.0).abs().max((p.1 - q.1).abs()) > 2.0 * SIGN, "{:?} {p:?} {q:?}", pane.view);
                }
            }
        }
    }
}
