//! The working of the load on the forks in one step: toppling, sliding, what each fork carries.

use super::{kilo, twice};
use crate::figures::{Printer, number, slope};
use crate::form::source;
use crate::sentences::friction;
use crate::words::{fill, words};
use standfast_core::forks::{self, Arm};
use standfast_core::report::{CaseReport, StepReport, ToppleReport};
use standfast_core::rules;
use standfast_core::scalar::Scalar;
use standfast_core::units::Rounding;
use yew::prelude::*;

pub(super) fn blades(step: &StepReport, forks: &forks::Outcome, print: Printer) -> Html {
    let w = &words().blades;
    html! {
        <>
            { match &step.seat {
                Some(seat) => html! {
                    <>
                        <p>{ w.working_intro }</p>
                        { for seat.cases.iter().map(|c| case(c, print)) }
                    </>
                },
                None if !step.laden => html! { <p>{ w.no_load }</p> },
                None => html! { <p>{ w.hangs }</p> },
            } }
            if step.laden {
                { arms(&forks.arms, print) }
            }
        </>
    }
}

/// What is in hand about each edge, and against sliding.
fn case(case: &CaseReport, print: Printer) -> Html {
    let w = &words().blades;
    let caption = format!("{}: {}", w.working, (w.event)(case.event));
    let length = |s: Scalar| print.length(s.get(), Rounding::Down);
    let topples = |t: &ToppleReport| {
        html! {
            <tr class={classes!((t.margin.worst < Scalar::ZERO).then_some("over"))}>
                <th scope="row">{ format!("{} {}", w.edge, (w.over)(t.over)) }</th>
                <td>{ length(t.margin.nominal) }</td>
                <td>{ length(t.margin.worst) }</td>
            </tr>
        }
    };
    let slides = case.asked.worst.get() > case.friction_worst.get();
    let pair = |asked: Scalar, there: Scalar| {
        let (asked, there) = (friction(asked.get(), Rounding::Up), friction(there.get(), Rounding::Down));
        fill(w.friction_of, &[("asked", &asked), ("there", &there)])
    };
    html! {
        <div class="scroll" role="region" tabindex="0" aria-label={caption.clone()} key={format!("{:?}", case.event)}>
            <table>
                <caption>{ caption.clone() }</caption>
                <thead>
                    <tr>
                        <th scope="col"></th>
                        <th scope="col">{ w.margin }</th>
                        <th scope="col">{ w.margin_worst }</th>
                    </tr>
                </thead>
                <tbody>
                    { for case.topple.iter().map(topples) }
                    <tr class={classes!(slides.then_some("over"))}>
                        <th scope="row">{ w.friction }</th>
                        <td>{ pair(case.asked.nominal, case.friction) }</td>
                        <td>{ pair(case.asked.worst, case.friction_worst) }</td>
                    </tr>
                </tbody>
            </table>
        </div>
    }
}

/// Each fork's part of the load against its stamp.
fn arms(arms: &[Arm; 2], print: Printer) -> Html {
    let w = &words().blades;
    let part = |s: Scalar| format!("{}\u{a0}%", number(100.0 * s.get(), 0, Rounding::Up));
    let mass = |s: Scalar, way| print.mass(s.get(), way);
    let moment = |s: Scalar, way| kilo(s.get(), "kN\u{b7}m", way);
    let up = Rounding::Up;
    let limit = slope(rules::FORK_WEAR_LIMIT.value, Rounding::Down);
    let intro = fill(w.forks_intro, &[("limit", &limit), ("source", &source(&rules::FORK_WEAR_LIMIT))]);
    let row = |arm: &Arm| {
        let allowed = match (arm.allowed, arm.allowed_mass) {
            (Some(most), Some(heaviest)) => {
                format!("{}, {}", mass(heaviest, Rounding::Down), moment(most, Rounding::Down))
            }
            _ => w.not_stamped.to_owned(),
        };
        html! {
            <tr class={classes!((!arm.holds_worst()).then_some("over"))}>
                <th scope="row">{ (w.fork)(arm.fork) }</th>
                <td>{ twice(part(arm.part), part(arm.part_worst)) }</td>
                <td>{ twice(mass(arm.carries, up), mass(arm.carries_worst, up)) }</td>
                <td>{ twice(moment(arm.moment, up), moment(arm.moment_worst, up)) }</td>
                <td>{ allowed }</td>
            </tr>
        }
    };
    html! {
        <div class="scroll" role="region" tabindex="0" aria-label={w.forks}>
            <table>
                <caption>{ w.forks }<span class="help">{ intro }</span></caption>
                <thead>
                    <tr>
                        for head in ["", w.part, w.carries, w.moment, w.allowed] {
                            <th scope="col">{ head }</th>
                        }
                    </tr>
                </thead>
                <tbody>{ for arms.iter().map(row) }</tbody>
            </table>
        </div>
    }
}
