//! How far everything could go: the core's solved limits of the whole move and of the step that is shown.

use crate::answer::Answer;
use crate::figures::{self, Printer};
use crate::form::code;
use crate::words::{fill, words};
use standfast_core::limit::{Bound, Limit, Reach, Solved};
use standfast_core::report::StepReport;
use standfast_core::units::Rounding::{self, Down, Nearest, Up};
use standfast_core::units::{Quantity, System};
use yew::prelude::*;

/// The table: one row a figure, for the whole move and for one step.
pub fn limits(answer: &Answer, step: &StepReport, system: System) -> Html {
    let w = &words().limits;
    let Some(assessment) = &answer.assessment else { return Html::default() };
    let print = Printer(system);
    let none = !assessment.limits.is_empty() && assessment.limits.iter().all(|l| l.reach == Reach::Never);
    let step_name = fill(w.step, &[("step", (words().step)(step.id).name)]);
    let rows = assessment.limits.iter().map(|whole| {
        let here = step.limits.iter().find(|l| l.what == whole.what);
        row(whole, here, &step_name, print)
    });
    html! {
        <div class="limits">
            <p class="help">{ w.limits_intro }</p>
            if none {
                <p class="none" data-testid="limits-none">{ w.limits_none }</p>
            }
            <table data-testid="limits">
                <thead>
                    <tr>
                        <th scope="col">{ w.figure }</th>
                        <th scope="col">{ w.now }</th>
                        <th scope="col">{ w.whole }</th>
                        <th scope="col">{ &step_name }</th>
                    </tr>
                </thead>
                <tbody>{ for rows }</tbody>
            </table>
        </div>
    }
}

fn row(whole: &Solved, here: Option<&Solved>, step_name: &str, print: Printer) -> Html {
    let w = &words().limits;
    let code = code(&whole.what);
    html! {
        <tr key={code.clone()} class={classes!(is_over(whole).then_some("over"))} data-testid={format!("limit-{code}")}>
            <th scope="row">{ (w.name)(whole.what) }</th>
            <td data-name={w.now} data-testid={format!("limit-{code}-now")}>{ stated(whole, print) }</td>
            <td data-name={w.whole} data-testid={format!("limit-{code}-whole")}>{ cell(whole, print) }</td>
            <td data-name={step_name.to_owned()} data-testid={format!("limit-{code}-step")}>
                if let Some(here) = here {
                    { cell(here, print) }
                } else {
                    <small>{ w.not_here }</small>
                }
            </td>
        </tr>
    }
}

fn cell(solved: &Solved, print: Printer) -> Html {
    html! {
        <>
            <strong>{ reach(solved, print) }</strong>
            if is_over(solved) {
                <em>{ words().limits.too_far }</em>
            }
            if let Some(by) = stopped_by(solved) {
                <small>{ by }</small>
            }
        </>
    }
}

/// Whether what is entered is beyond the limit: there is one, and the figure lies on its far side by more
/// than a unit's change there and back can make.
fn is_over(solved: &Solved) -> bool {
    let (Some(stated), Reach::At { value, .. }) = (solved.stated, solved.reach) else { return false };
    let (stated, value) = (stated.get(), value.get());
    let over = if is_least(solved.what) { value - stated } else { stated - value };
    over > 1e-9 * (1.0 + value.abs())
}

/// Whether the limit is a least, not a greatest.
fn is_least(what: Limit) -> bool {
    what == Limit::BatteryLeast
}

/// A figure of a limit's kind.
fn figure(what: Limit, value: f64, way: Rounding, print: Printer) -> String {
    match what {
        Limit::LoadMass | Limit::BatteryLeast | Limit::BatteryMost => print.mass(value, way),
        Limit::LoadCentre | Limit::OffsetLeft | Limit::OffsetRight => print.length(value, way),
        Limit::LiftHeight => match way {
            Down => print.height_down(value),
            Up => print.height_up(value),
            Nearest => print.height(value),
        },
        Limit::TiltBack | Limit::TiltForward => figures::angle(value, way),
        Limit::RampUp | Limit::RampDown | Limit::CrossFallLeft | Limit::CrossFallRight => {
            figures::slope(value / 100.0, way)
        }
        Limit::CornerSpeed | Limit::CornerSpeedEmpty => print.quantity(Quantity::Speed, value, way),
        Limit::Braking => print.quantity(Quantity::Acceleration, value, way),
    }
}

/// The figure as it is entered.
fn stated(solved: &Solved, print: Printer) -> String {
    let w = &words().limits;
    match solved.stated {
        None => w.not_in_move.to_owned(),
        Some(value) if value.get() < 0.0 => {
            fill(w.to_the_other, &[("value", &figure(solved.what, -value.get(), Nearest, print))])
        }
        Some(value) => figure(solved.what, value.get(), Nearest, print),
    }
}

/// How far it may go, rounded to the side where it still passes.
fn reach(solved: &Solved, print: Printer) -> String {
    let w = &words().limits;
    let Some(value) = solved.reach.value() else { return w.nowhere.to_owned() };
    let (text, way, other) = if is_least(solved.what) { (w.down_to, Up, Down) } else { (w.up_to, Down, Up) };
    let said = fill(text, &[("value", &figure(solved.what, value, way, print))]);
    match solved.least {
        Some(least) => {
            let from = fill(w.from, &[("value", &figure(solved.what, least.get(), other, print))]);
            format!("{from}, {said}")
        }
        None => said,
    }
}

/// What stops it there.
fn stopped_by(solved: &Solved) -> Option<String> {
    let (all, w) = (words(), &words().limits);
    let named = |step| (all.step)(step).name;
    Some(match solved.reach {
        Reach::Never => return None,
        Reach::Beyond { .. } => w.no_end.to_owned(),
        Reach::At { by, .. } => match by {
            Bound::Plate => w.by_plate.to_owned(),
            Bound::Blades => w.by_blades.to_owned(),
            Bound::Seat { step } => fill(w.by_seat, &[("step", named(step))]),
            Bound::Step { step, line, test } => {
                let text = if test.is_some() { w.by_slope } else { w.by_step };
                fill(text, &[("step", named(step)), ("way", (all.way)(line))])
            }
            Bound::Rule => w.by_rule.to_owned(),
        },
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::entries::Entries;
    use standfast_core::example;
    use standfast_core::scalar::Scalar;
    use standfast_core::step::StepId;

    const METRIC: Printer = Printer(System::Metric);

    fn at(what: Limit, stated: Option<f64>, value: f64) -> Solved {
        let reach = Reach::At { value: Scalar::computed(value), by: Bound::Plate };
        Solved { what, stated: stated.map(Scalar::computed), least: None, reach }
    }

    #[test]
    fn a_limit_is_rounded_to_the_side_where_it_passes() {
        let say = |what, value| reach(&at(what, None, value), METRIC);
        assert_eq!(say(Limit::LoadMass, 1579.97), "up to 1\u{202f}579\u{a0}kg");
        assert_eq!(say(Limit::LiftHeight, 3.2599), "up to 3.25\u{a0}m");
        assert_eq!(say(Limit::RampUp, 14.69), "up to 14.6\u{a0}%");
        assert_eq!(say(Limit::TiltForward, 2.99), "up to 2.9\u{b0}");
        assert_eq!(say(Limit::BatteryLeast, 800.1), "down to 801\u{a0}kg");
        assert_eq!(say(Limit::BatteryMost, 899.9), "up to 899\u{a0}kg");
        let mut part_way = at(Limit::LiftHeight, None, 3.2599);
        part_way.least = Some(Scalar::computed(1.001));
        assert_eq!(reach(&part_way, METRIC), "only from 1.01\u{a0}m on, up to 3.25\u{a0}m");
    }

    #[test]
    fn what_is_entered_beyond_a_limit_is_marked() {
        assert!(is_over(&at(Limit::LoadMass, Some(1600.0), 1579.9)));
        assert!(!is_over(&at(Limit::LoadMass, Some(1500.0), 1579.9)));
        assert!(is_over(&at(Limit::BatteryLeast, Some(700.0), 800.1)));
        assert!(!is_over(&at(Limit::RampUp, None, 10.0)));
        assert!(!is_over(&at(Limit::TiltBack, Some(6.000_000_000_000_001), 6.0)));
    }

    #[test]
    fn a_figure_on_the_other_side_is_said_to_be_there() {
        assert_eq!(stated(&at(Limit::OffsetRight, Some(-0.02), 0.1), METRIC), "20\u{a0}mm to the other side");
        assert_eq!(stated(&at(Limit::RampUp, None, 0.1), METRIC), "not in this move");
    }

    /// Of every example and every step: all of the report's limits have their row and their figure.
    #[tokio::test]
    async fn every_limit_of_the_report_is_in_the_table() {
        for text in [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD] {
            let answer = Answer::of(&Entries::from_document(&example::document(text)));
            let whole = &answer.assessment.as_ref().expect("answered").limits;
            assert!(whole.len() >= 12);
            for id in [StepId::RaisedForward, StepId::Travel] {
                let step = answer.step(id).expect("in every move");
                let html = rendered(limits(&answer, step, System::Metric)).await;
                for limit in whole.iter().chain(&step.limits) {
                    assert!(html.contains(&format!("data-testid=\"limit-{}\"", code(&limit.what))));
                    assert!(html.contains(&reach(limit, METRIC)), "{limit:?}: {html}");
                }
            }
        }
    }

    async fn rendered(inside: Html) -> String {
        #[derive(Properties, PartialEq)]
        struct Props {
            inside: Html,
        }
        #[component]
        fn Shell(props: &Props) -> Html {
            props.inside.clone()
        }
        yew::LocalServerRenderer::<Shell>::with_props(Props { inside }).hydratable(false).render().await
    }
}
