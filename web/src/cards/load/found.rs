//! What was found: weight and centre with their tolerances, what each way says of them, and where ways
//! do not agree.

use crate::figures::{Printer, tolerance};
use crate::form::Form;
use crate::sentences::{counted_from, figure_range};
use crate::words::{fill, words};
use standfast_core::found::{LoadFigure, Way};
use standfast_core::report::{DisagreementReport, LoadReport, Range, WayReport};
use standfast_core::scalar::Scalar;
use standfast_core::units::{Quantity, Rounding};
use yew::prelude::*;

/// A way's range of a figure.
fn of(way: &WayReport, figure: LoadFigure) -> Option<Range> {
    match figure {
        LoadFigure::Mass => way.mass,
        LoadFigure::Ahead => way.ahead,
        LoadFigure::Left => way.left,
        LoadFigure::Above => way.above,
    }
}

fn moved(range: Range, by: f64) -> Range {
    let at = |s: Scalar| Scalar::computed(s.get() + by);
    Range { lo: at(range.lo), nominal: at(range.nominal), hi: at(range.hi) }
}

/// A figure with its tolerance, from the load's own heel side, middle and underside.
pub(super) fn shown(load: &LoadReport, figure: LoadFigure, range: Range, print: Printer) -> String {
    let w = &words().load;
    let range = moved(range, -counted_from(Some(load), figure));
    let text = match figure {
        LoadFigure::Mass => return tolerance(range, Quantity::Mass, print),
        LoadFigure::Ahead => w.from_heel,
        LoadFigure::Above => w.above_underside,
        LoadFigure::Left if range.nominal.get() < 0.0 => w.right_of_middle,
        LoadFigure::Left => w.left_of_middle,
    };
    let range = if figure == LoadFigure::Left && range.nominal.get() < 0.0 {
        let turned = |s: Scalar| Scalar::computed(-s.get());
        Range { lo: turned(range.hi), nominal: turned(range.nominal), hi: turned(range.lo) }
    } else {
        range
    };
    fill(text, &[("value", &tolerance(range, Quantity::Length, print))])
}

/// All that one way says, in words.
pub(super) fn said(load: &LoadReport, way: &WayReport, print: Printer) -> Vec<String> {
    LoadFigure::ALL.into_iter().filter_map(|f| of(way, f).map(|range| shown(load, f, range, print))).collect()
}

pub(super) fn found(form: &Form) -> Html {
    let w = &words().load;
    let Some(load) = &form.answer.load.load else {
        return html! { <p class="help">{ w.found_later }</p> };
    };
    let print = Printer(form.system);
    let (centre, by) = (&load.centre, &load.decided_by);
    let figures = [
        (LoadFigure::Mass, w.weight, load.mass, by.mass),
        (LoadFigure::Ahead, w.centre, centre.ahead, by.ahead),
        (LoadFigure::Left, w.centre, centre.left, by.left),
        (LoadFigure::Above, w.centre, centre.above, by.above),
    ];
    let length = |m: Scalar| print.length(m.get(), Rounding::Nearest);
    let size = [length(load.size.x), length(load.size.y), length(load.size.z)].join(" \u{d7} ");
    html! {
        <div class="found" data-testid="found">
            <table>
                { for figures.map(|(figure, name, range, by)| rows(load, figure, name, range, by, print)) }
                <tbody>
                    <tr class="figure"><th scope="row">{ w.size }</th><td>{ size }</td></tr>
                </tbody>
            </table>
            if load.ways.len() > 1 {
                <p class="hint">{ w.ways_help }</p>
            }
            { for load.disagreements.iter().map(|d| disagreement(load, d, print)) }
        </div>
    }
}

/// One figure, and below it what each way says of it, where there is more than one.
fn rows(load: &LoadReport, figure: LoadFigure, name: &str, range: Range, by: Way, print: Printer) -> Html {
    let saying: Vec<_> = load.ways.iter().filter_map(|way| of(way, figure).map(|r| (way.way, r))).collect();
    let way = |(way, range): &(Way, Range)| {
        let mark = if *way == by { "\u{25c6} " } else { "" };
        let unseen =
            (*way == by).then(|| html! { <span class="unseen">{ format!(" ({})", words().load.decides) }</span> });
        html! {
            <tr class="way">
                <th scope="row">
                    <span aria-hidden="true">{ mark }</span>{ (words().load.way)(*way) }{ unseen }
                </th>
                <td>{ shown(load, figure, *range, print) }</td>
            </tr>
        }
    };
    html! {
        <tbody key={format!("{figure:?}")} data-testid={format!("found-{}", crate::form::code(&figure))}>
            <tr class="figure">
                <th scope="row">{ name }</th>
                <td>{ shown(load, figure, range, print) }</td>
            </tr>
            if saying.len() > 1 {
                { for saying.iter().map(way) }
            }
        </tbody>
    }
}

fn disagreement(load: &LoadReport, d: &DisagreementReport, print: Printer) -> Html {
    let w = &words().load;
    let ends = |r: &Range| figure_range(Some(load), d.figure, (r.lo, r.hi), print);
    let text = fill(
        w.disagree,
        &[
            ("figure", (w.figure)(d.figure)),
            ("one", (w.way)(d.ways.0)),
            ("one_says", &ends(&d.ranges.0)),
            ("other", (w.way)(d.ways.1)),
            ("other_says", &ends(&d.ranges.1)),
        ],
    );
    html! { <p class="message" data-testid="disagreement">{ text }{ " " }{ w.disagree_counted }</p> }
}
