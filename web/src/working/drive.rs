//! The working of what a step is driven like: slope, pull, and the reserve that must be left.

use super::twice;
use crate::figures::{self, Printer};
use crate::form::source;
use crate::words::{fill, words};
use standfast_core::report::StepReport;
use standfast_core::rules;
use standfast_core::scalar::Scalar;
use standfast_core::units::{Quantity, Rounding, Unit};
use yew::prelude::*;

/// What is less is printed as none.
const LEAST: f64 = 1e-4;

pub(super) fn driven(step: &StepReport, print: Printer) -> Html {
    let w = &words().drive;
    let reserve = step.share_allowed < Scalar::computed(1.0);
    html! {
        <div class="scroll" role="region" tabindex="0" aria-label={w.working} data-testid="working-drive">
            <table>
                <caption>
                    { w.working }
                    if reserve {
                        <span class="help">{ fill(w.working_intro, &[("source", &source(&rules::RESERVE))]) }</span>
                    }
                </caption>
                <tbody>
                    <tr><th scope="row">{ w.slope }</th><td>{ slope(step) }</td></tr>
                    <tr><th scope="row">{ w.acceleration }</th><td>{ pull(step, print) }</td></tr>
                    if reserve {
                        { kept(step) }
                    }
                </tbody>
            </table>
        </div>
    }
}

/// About each line: what is used, and what is in hand of what may be.
fn kept(step: &StepReport) -> Html {
    let w = &words().drive;
    let allowed = step.share_allowed.get();
    let row = |line: &standfast_core::report::LineReport| {
        let (stated, worst) = (line.share.nominal.get(), line.share.worst.get());
        let used = twice(figures::share(stated), figures::share(worst));
        let name = format!("{}, {}", w.is_used, (words().line)(line.id));
        html! {
            <tr class={classes!((worst > allowed).then_some("over"))}><th scope="row">{ name }</th><td>{ used }</td></tr>
        }
    };
    let worst = step.lines.iter().map(|l| l.share.worst.get()).fold(0.0, f64::max);
    html! {
        <>
            { for step.lines.iter().map(row) }
            <tr><th scope="row">{ w.may_be_used }</th><td>{ figures::slope(allowed, Rounding::Down) }</td></tr>
            <tr><th scope="row">{ w.left_in_hand }</th><td>{ figures::slope(allowed - worst, Rounding::Down) }</td></tr>
        </>
    }
}

fn slope(step: &StepReport) -> String {
    let w = &words().drive;
    let (grade, cross) = (step.grade.get(), step.cross_fall.get());
    let (tangent, text) = match (grade, cross) {
        (g, _) if g > LEAST => (g, w.up_ahead),
        (g, _) if g < -LEAST => (-g, w.down_ahead),
        (_, c) if c > LEAST => (c, w.left_high),
        (_, c) if c < -LEAST => (-c, w.right_high),
        _ => return w.level.to_owned(),
    };
    let angle = figures::figure(Unit::SlopeDegree, 100.0 * tangent, Rounding::Nearest);
    fill(text, &[("slope", &figures::slope(tangent, Rounding::Nearest)), ("angle", &angle)])
}

fn pull(step: &StepReport, print: Printer) -> String {
    let w = &words().drive;
    let (ahead, left) = (step.acceleration.x.get(), step.acceleration.y.get());
    let (size, way) = match (ahead, left) {
        (a, _) if a > LEAST => (a, w.pulls_ahead),
        (a, _) if a < -LEAST => (-a, w.pulls_back),
        (_, l) if l > LEAST => (l, w.pulls_left),
        (_, l) if l < -LEAST => (-l, w.pulls_right),
        _ => return w.evenly.to_owned(),
    };
    fill(w.pulls, &[("acceleration", &print.quantity(Quantity::Acceleration, size, Rounding::Up)), ("way", way)])
}
