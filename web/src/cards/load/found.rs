//! What was found: weight and centre with their tolerances, what each way says of them, and where ways
//! do not agree.

use crate::figures::{Printer, tolerance};
use crate::form::Form;
use crate::sentences::{counted_from, figure_range};
use crate::words::{fill, words};
use standfast_core::found::{LoadFigure, Way};
use standfast_core::report::{DisagreementReport, LoadReport, Range, WayReport};
use standfast_core::scalar::Scalar;
use standfast_core::units::Quantity;
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

/// A range as people count it: from the load's own heel side, middle, underside; to the right where
/// that is where it lies.
fn counted(load: &LoadReport, figure: LoadFigure, range: Range, right: bool) -> Range {
    let from = counted_from(Some(load), figure);
    let at = |s: Scalar| Scalar::computed(if right { from - s.get() } else { s.get() - from });
    let (lo, hi) = if right { (range.hi, range.lo) } else { (range.lo, range.hi) };
    Range { lo: at(lo), nominal: at(range.nominal), hi: at(hi) }
}

/// Whether a figure is counted to the right.
fn is_right(load: &LoadReport, figure: LoadFigure, range: Range) -> bool {
    figure == LoadFigure::Left && range.nominal.get() < counted_from(Some(load), figure)
}

fn print_range(load: &LoadReport, figure: LoadFigure, range: Range, right: bool, print: Printer) -> String {
    let quantity = if figure == LoadFigure::Mass { Quantity::Mass } else { Quantity::Length };
    tolerance(counted(load, figure, range, right), quantity, print)
}

/// A figure with its tolerance, and where it is counted from.
fn shown(load: &LoadReport, figure: LoadFigure, range: Range, print: Printer) -> String {
    let w = &words().load;
    let right = is_right(load, figure, range);
    let text = match figure {
        LoadFigure::Mass => "{value}",
        LoadFigure::Ahead => w.from_heel,
        LoadFigure::Above => w.above_underside,
        LoadFigure::Left if right => w.right_of_middle,
        LoadFigure::Left => w.left_of_middle,
    };
    fill(text, &[("value", &print_range(load, figure, range, right, print))])
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
        (LoadFigure::Mass, load.mass, by.mass),
        (LoadFigure::Ahead, centre.ahead, by.ahead),
        (LoadFigure::Left, centre.left, by.left),
        (LoadFigure::Above, centre.above, by.above),
    ];
    html! {
        <div class="found" data-testid="found">
            <table>
                { for figures.map(|(figure, range, by)| rows(load, figure, range, by, print)) }
                <tbody>
                    <tr class="figure"><th scope="row">{ w.size }</th><td>{ print.sizes([load.size.x, load.size.y, load.size.z].map(Scalar::get)) }</td></tr>
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
fn rows(load: &LoadReport, figure: LoadFigure, range: Range, by: Way, print: Printer) -> Html {
    let w = &words().load;
    let right = is_right(load, figure, range);
    let name = match figure {
        LoadFigure::Mass => w.weight,
        LoadFigure::Ahead => w.centre_from_heel,
        LoadFigure::Above => w.centre_above,
        LoadFigure::Left if right => w.centre_right,
        LoadFigure::Left => w.centre_left,
    };
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
                <td>{ print_range(load, figure, *range, right, print) }</td>
            </tr>
        }
    };
    html! {
        <tbody key={format!("{figure:?}")} data-testid={format!("found-{}", crate::form::code(&figure))}>
            <tr class="figure">
                <th scope="row">{ name }</th>
                <td>{ print_range(load, figure, range, right, print) }</td>
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
