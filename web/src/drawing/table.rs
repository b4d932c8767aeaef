//! The numbers of the drawings as a table.

use super::figures::{angle, floor_load, length_range, percent};
use super::labels::Labels;
use super::margin::{Fares, Margin, line_name};
use super::seat::{self, event_name, friction_words};
use standfast_core::report::{CaseReport, Point, SeatReport, StepReport};
use standfast_core::scalar::Scalar;
use standfast_core::units::{Rounding, System};
use yew::prelude::*;

/// Distances, shares used, tip angles and wheel loads of a step, and the load on its forks. What is in
/// hand is rounded down, what is used up.
pub fn numbers_table(step: &StepReport, system: System, labels: &Labels) -> Html {
    let lines = step.lines.iter().filter_map(|l| Margin::of(step, l.id)).map(|margin| {
        let share = margin.line.share;
        let angles = [margin.line.tip_angle_deg, margin.line.tip_angle_worst_deg];
        let worst_angle = angles.into_iter().flatten().min();
        let tips = |a: Option<Scalar>| {
            a.map_or_else(|| labels.never.to_owned(), |a| angle(a.get(), Rounding::Down))
        };
        html! {
            <tr>
                <th scope="row">{ line_name(margin.line.id, labels) }</th>
                <td>{ margin.words(system, labels) }<small>{ margin.worst_words(system, labels) }</small></td>
                <td>
                    { percent(share.nominal.get(), Rounding::Up) }
                    <small>{ format!("{} {}", labels.worst, percent(share.worst.max(share.nominal).get(), Rounding::Up)) }</small>
                </td>
                <td>
                    { tips(margin.line.tip_angle_deg) }
                    <small>{ format!("{} {}", labels.worst, tips(worst_angle)) }</small>
                </td>
            </tr>
        }
    });
    let wheels = &step.wheels;
    let floor = [
        (labels.front_axle, wheels.front, Rounding::Up),
        (labels.left_wheel, wheels.left, Rounding::Up),
        (labels.right_wheel, wheels.right, Rounding::Up),
        (labels.steer_axle, wheels.steer, Rounding::Down),
    ];
    let floor = floor.into_iter().map(|(name, load, way)| {
        html! { <tr><th scope="row">{ name }</th><td colspan="3">{ floor_load(load.get(), system, way) }</td></tr> }
    });
    html! {
        <table class="d-numbers" data-testid="drawing-numbers">
            <caption>{ labels.numbers }</caption>
            <thead>
                <tr>
                    <th scope="col">{ labels.column_line }</th>
                    <th scope="col">{ labels.column_distance }</th>
                    <th scope="col">{ labels.column_share }</th>
                    <th scope="col">{ labels.column_angle }</th>
                </tr>
            </thead>
            <tbody>{ for lines }</tbody>
            <tbody>
                <tr><th scope="rowgroup" colspan="4">{ labels.column_floor }<small>{ labels.floor_note }</small></th></tr>
                { for floor }
            </tbody>
            <tbody data-testid="numbers-spread">
                <tr><th scope="rowgroup" colspan="4">{ labels.may_be }<small>{ labels.may_be_note }</small></th></tr>
                { spread(step, system, labels) }
            </tbody>
            if let Some(seat) = &step.seat {
                <tbody>
                    <tr><th scope="rowgroup" colspan="4">{ labels.on_forks }<small>{ labels.forks_note }</small></th></tr>
                    { on_forks(seat, system, labels) }
                </tbody>
            }
        </table>
    }
}

/// Where the common centre may lie, and where the line of action may meet the ground.
fn spread(step: &StepReport, system: System, labels: &Labels) -> Html {
    let (lo, hi) = step.spread;
    let ends = |axis: fn(&Point) -> Scalar| {
        let met = || step.bob_spread.iter().map(axis);
        met().min().zip(met().max())
    };
    let rows = [
        (labels.common_centre, labels.ahead, Some((lo.x, hi.x))),
        (labels.common_centre, labels.left, Some((lo.y, hi.y))),
        (labels.common_centre, labels.up, Some((lo.z, hi.z))),
        (labels.on_the_ground, labels.ahead, ends(|p| p.x)),
        (labels.on_the_ground, labels.left, ends(|p| p.y)),
    ];
    let row = |(what, way, ends): (&str, &str, Option<(Scalar, Scalar)>)| {
        let (lo, hi) = ends?;
        Some(html! {
            <tr>
                <th scope="row">{ format!("{what}, {way}") }</th>
                <td colspan="3">{ length_range(lo.get(), hi.get(), labels.to, system) }</td>
            </tr>
        })
    };
    html! { { for rows.into_iter().filter_map(row) } }
}

/// The load on the forks in every event: what is in hand against toppling, and its friction.
fn on_forks(seat: &SeatReport, system: System, labels: &Labels) -> Html {
    if seat.cases.is_empty() {
        return html! { <tr class="d-over"><td colspan="4">{ labels.off_forks }</td></tr> };
    }
    let over = |fares: Fares| (fares == Fares::Past).then_some("d-over");
    let edges = seat::edges(seat).map(|edge| {
        html! {
            <tr class={classes!(over(edge.fares))}>
                <th scope="row">
                    { format!("{}, {}", event_name(edge.event, labels), seat::over_name(edge.over, labels)) }
                </th>
                <td colspan="3">
                    { edge.words(system, labels) }
                    <small>{ edge.worst_words(system, labels) }</small>
                </td>
            </tr>
        }
    });
    let friction = |case: &CaseReport| {
        let pair = |asked, there| {
            let (asked, there) = friction_words(asked, there, labels);
            format!("{asked}, {there}")
        };
        html! {
            <tr class={classes!(over(seat::sliding(case)))}>
                <th scope="row">{ format!("{}, {}", event_name(case.event, labels), labels.friction) }</th>
                <td colspan="3">
                    { pair(case.asked.nominal, case.friction) }
                    <small>{ format!("{} {}", labels.worst, pair(case.asked.worst, case.friction_worst)) }</small>
                </td>
            </tr>
        }
    };
    html! { <>{ for edges }{ for seat.cases.iter().map(friction) }</> }
}
