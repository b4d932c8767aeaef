//! What stands on the sheet: the picture, the outline with its lengths, the references, the points.

use super::glass::{Glass, Pixel, Spot};
use super::paper;
use super::points::{Ring, pixel};
use crate::drawing::marks::{apart, circle, middle, quarters, towards};
use crate::entries::{Entries, Ground, TraceEntry, unit_of};
use crate::figures::Printer;
use crate::form::Form;
use crate::words::words;
use standfast_core::place::Field;
use standfast_core::report::TraceReport;
use standfast_core::units::{Rounding, System};
use std::fmt::Write as _;
use yew::prelude::*;

/// The id of what is traced on.
pub const GROUND: &str = "tr-ground";
/// An edge shorter than this on the sheet has no room for its length, sheet units.
const ROOM: f64 = 46.0;
/// The room that a length needs, across and down.
const TEXT: (f64, f64) = (72.0, 16.0);
/// How far a text stands from its line, across and down.
const BESIDE: (f64, f64) = (36.0, 13.0);
/// Radius of the mark of a centre of gravity, sheet units.
const MARK: f64 = 13.0;

#[derive(Properties, PartialEq)]
pub struct GroundProps {
    pub ground: Ground,
    pub size: (u32, u32),
    pub data: Option<AttrValue>,
}

/// What is traced on, in pixels. A component of its own: a photo is a long text, compared only
/// where it may have changed.
#[component]
pub fn GroundPicture(props: &GroundProps) -> Html {
    let (wide, high) = (props.size.0.to_string(), props.size.1.to_string());
    let squares = || {
        let (thin, thick) = paper::lines();
        html! { <><path class="tr-square" d={thin} /><path class="tr-square tr-tenth" d={thick} /></> }
    };
    html! {
        <g id={GROUND}>
            <rect class="tr-paper" width={wide.clone()} height={high.clone()} />
            if props.ground == Ground::Paper {
                { squares() }
            }
            if let Some(data) = &props.data {
                <image href={data} width={wide} height={high} preserveAspectRatio="none" />
            }
        </g>
    }
}

/// The picture as it lies on the sheet.
pub fn ground(glass: &Glass, trace: &TraceEntry, data: Option<&AttrValue>) -> Html {
    let (x, y) = glass.spot((0.0, 0.0));
    let transform = format!("translate({x:.2} {y:.2}) scale({:.5})", glass.scale);
    let size = (glass.picture.0 as u32, glass.picture.1 as u32);
    html! { <g {transform}><GroundPicture ground={trace.ground} {size} data={data.cloned()} /></g> }
}

/// A path through places of the picture, as they are or as they lie on a sheet.
fn path(points: &[Pixel], closed: bool) -> String {
    let mut path = String::new();
    for (k, (x, y)) in points.iter().enumerate() {
        let _ = write!(path, "{}{x:.1} {y:.1}", if k == 0 { "M" } else { "L" });
    }
    if closed && points.len() > 1 {
        path.push('Z');
    }
    path
}

fn is_joined(ring: Ring, trace: &TraceEntry) -> bool {
    ring.is_closed() || (ring == Ring::Rectangle && trace.rectangle.len() == 4)
}

/// All lines in pixels, as the loupe shows them.
pub fn lines(trace: &TraceEntry) -> String {
    Ring::all(trace).into_iter().map(|ring| path(&ring.pixels(trace), is_joined(ring, trace))).collect()
}

/// The lines on the sheet.
pub fn rings(glass: &Glass, trace: &TraceEntry, active: &[Ring]) -> Html {
    let on_sheet = |ring: Ring| {
        let spots: Vec<Spot> = ring.pixels(trace).into_iter().map(|p| glass.spot(p)).collect();
        path(&spots, is_joined(ring, trace))
    };
    let body: String = Ring::all(trace).into_iter().filter(|r| r.is_closed()).map(on_sheet).collect();
    let line = |ring: Ring| {
        let d = on_sheet(ring);
        let kind = match ring {
            Ring::Scale => "tr-scale",
            Ring::Rectangle => "tr-rectangle",
            Ring::Open => "tr-open",
            Ring::Outline | Ring::Hole(_) => "tr-closed",
        };
        let faint = (!active.is_empty() && !active.contains(&ring)).then_some("tr-faint");
        html! {
            <g key={ring.key()} class={classes!(faint)}>
                <path class="tr-halo" d={d.clone()} />
                <path class={classes!("tr-line", kind)} {d} />
            </g>
        }
    };
    html! {
        <g aria-hidden="true">
            <path class="tr-body" d={body} fill-rule="evenodd" />
            { for Ring::all(trace).into_iter().filter(|r| !r.of(trace).is_empty()).map(line) }
        </g>
    }
}

/// The side of its edges on which an outline's inside lies: 1 right of the way round, on the sheet.
fn inward(spots: &[Spot]) -> f64 {
    let next = spots.iter().cycle().skip(1);
    let twice: f64 = spots.iter().zip(next).map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
    twice.signum()
}

/// Where a text stands beside the middle of a line, clear of it: 1 on the right of the way from `a`
/// to `b`, -1 on the left.
fn beside(a: Spot, b: Spot, side: f64) -> Spot {
    let (d, m) = (towards(a, b), middle(a, b));
    let (x, y) = (-d.1 * side, d.0 * side);
    // Texts are wider than high.
    (m.0 + x * BESIDE.0, m.1 + y * BESIDE.1)
}

fn label(at: Spot, text: String) -> Html {
    html! { <text class="tr-length" x={format!("{:.1}", at.0)} y={format!("{:.1}", at.1)}>{ text }</text> }
}

/// The lengths of the outline's edges, in metres, in the order of its points.
pub fn edges(report: &TraceReport) -> Vec<f64> {
    let at = |k: usize| report.outline.get(k % report.outline.len().max(1)).map(|p| (p.0.get(), p.1.get()));
    (0..report.outline.len()).filter_map(|k| Some(apart(at(k)?, at(k + 1)?))).collect()
}

/// The edges' lengths on the sheet, where they have room.
pub fn lengths(glass: &Glass, trace: &TraceEntry, form: &Form) -> Html {
    let Some(report) = &form.answer.load.outline else { return Html::default() };
    let (lengths, print) = (edges(report), Printer(form.system));
    let spots: Vec<Spot> = trace.outline.iter().map(|p| glass.spot(pixel(p))).collect();
    if lengths.len() != spots.len() {
        return Html::default();
    }
    let (side, next) = (inward(&spots), spots.iter().cycle().skip(1));
    let mut all: Vec<_> = spots.iter().zip(next).zip(lengths).map(|((a, b), m)| (apart(*a, *b), *a, *b, m)).collect();
    // The longest first: where two would lie on each other, the shorter waits for a closer look.
    all.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut taken: Vec<Spot> = Vec::new();
    let mut texts = Vec::new();
    for (_, a, b, m) in all.into_iter().take_while(|edge| edge.0 >= ROOM) {
        let at = beside(a, b, side);
        if taken.iter().all(|t| (t.0 - at.0).abs() > TEXT.0 || (t.1 - at.1).abs() > TEXT.1) {
            taken.push(at);
            texts.push(label(at, print.length(m, Rounding::Nearest)));
        }
    }
    html! { <g aria-hidden="true" data-testid="trace-lengths">{ for texts }</g> }
}

fn entered(entries: &Entries, field: Field, system: System) -> Option<String> {
    let text = entries.shown(field.into(), system);
    let unit = unit_of(field.into(), system).map(|u| u.symbol()).unwrap_or_default();
    (!text.is_empty()).then(|| format!("{text}\u{a0}{unit}"))
}

/// The figures of the references, as entered, beside what they are of.
pub fn references(glass: &Glass, trace: &TraceEntry, form: &Form) -> Html {
    let spots = |ring: Ring| ring.pixels(trace).into_iter().map(|p| glass.spot(p)).collect::<Vec<_>>();
    // Away from the outline, whose lengths stand inside it.
    let outline = spots(Ring::Outline);
    let count = outline.len().max(1) as f64;
    let centre = (outline.iter().map(|p| p.0).sum::<f64>() / count, outline.iter().map(|p| p.1).sum::<f64>() / count);
    let away = |points: &[Spot], a: usize, b: usize, field: Field| {
        let text = entered(&form.entries, field, form.system)?;
        let (a, b) = (*points.get(a)?, *points.get(b)?);
        let sides = [1.0, -1.0].map(|side| beside(a, b, side));
        let farther = if apart(sides[0], centre) >= apart(sides[1], centre) { sides[0] } else { sides[1] };
        Some(label(farther, text))
    };
    let (scale, corners) = (spots(Ring::Scale), spots(Ring::Rectangle));
    html! {
        <g aria-hidden="true">
            { for away(&scale, 0, 1, Field::TraceScale) }
            { for away(&corners, 0, 1, Field::TraceRectangleWidth) }
            { for away(&corners, 1, 2, Field::TraceRectangleHeight) }
        </g>
    }
}

/// The mark of the outline's centre.
pub fn centre(glass: &Glass, report: &TraceReport) -> Html {
    let (x, y) = report.centre_in_picture;
    let spot = glass.spot((x.get(), y.get()));
    html! {
        <g class="tr-centre" data-testid="trace-centre" data-x={x.get().to_string()} data-y={y.get().to_string()}>
            <title>{ words().trace.centre_mark }</title>
            <path class="tr-centre-disc" d={circle(spot, MARK)} />
            <path class="tr-centre-quarters" d={quarters(spot, MARK)} />
        </g>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_stand_inside_whichever_way_round_it_was_tapped() {
        let mut square = vec![(0.0, 0.0), (200.0, 0.0), (200.0, 200.0), (0.0, 200.0)];
        for _ in 0..2 {
            let side = inward(&square);
            for k in 0..4 {
                let (x, y) = beside(square[k], square[(k + 1) % 4], side);
                assert!(x > 0.0 && x < 200.0 && y > 0.0 && y < 200.0, "{k}: {x} {y}");
            }
            square.reverse();
        }
    }

    #[test]
    fn a_closed_path_is_closed_and_nothing_is_drawn_of_nothing() {
        assert_eq!(path(&[(1.0, 2.0), (3.0, 4.0)], true), "M1.0 2.0L3.0 4.0Z");
        assert_eq!(path(&[(1.0, 2.0)], true), "M1.0 2.0");
        assert_eq!(path(&[], true), "");
    }
}
