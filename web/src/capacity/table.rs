//! The diagram in numbers.

use super::chart::{Chart, Curve, Stair};
use crate::figures::Printer;
use crate::words::{fill, words};
use standfast_core::units::Rounding::{Down, Nearest};
use yew::prelude::*;

/// What a stair allows at a load centre.
fn tread(stair: &Stair, centre: f64) -> Option<f64> {
    stair.treads.iter().find(|t| centre > t.0 && centre <= t.1 + 1e-9).map(|t| t.2)
}

/// What a curve leaves there.
fn point(curve: &Curve, centre: f64) -> Option<f64> {
    curve.points.iter().find(|p| (p.0 - centre).abs() < 1e-6).map(|p| p.1)
}

/// A row for every load centre at which the curves have a point, rounded down.
pub fn numbers(chart: &Chart, print: Printer) -> Html {
    let w = &words().limits;
    let named = |text: &str, height: f64| fill(text, &[("height", &print.height(height))]);
    let mut centres: Vec<f64> =
        chart.curves.first().map(|c| c.points.iter().map(|p| p.0).collect()).unwrap_or_default();
    centres.sort_by(f64::total_cmp);
    let figure = |kg: Option<f64>| html! { <td>{ kg.map_or("\u{2013}".to_owned(), |kg| print.mass(kg, Down)) }</td> };
    let row = |centre: f64| {
        html! {
            <tr>
                <th scope="row">{ print.length(centre, Nearest) }</th>
                { for chart.stairs.iter().map(|s| figure(tread(s, centre))) }
                { for chart.curves.iter().map(|c| figure(point(c, centre))) }
            </tr>
        }
    };
    html! {
        <div class="scroll" role="region" tabindex="0" aria-label={w.capacity_numbers}>
            <table>
                <thead>
                    <tr>
                        <th scope="col">{ w.axis_centre }</th>
                        { for chart.stairs.iter().map(|s| html! { <th scope="col">{ named(w.plate_to, s.height) }</th> }) }
                        { for chart.curves.iter().map(|c| html! { <th scope="col">{ named(w.model_at, c.height) }</th> }) }
                    </tr>
                </thead>
                <tbody>{ for centres.into_iter().map(row) }</tbody>
            </table>
        </div>
    }
}
