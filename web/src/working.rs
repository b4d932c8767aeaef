//! The working of one step: every moment, sum, share, slope and wheel load, with its source.

mod blades;
mod drive;
mod load;

use crate::answer::Answer;
use crate::entries::Entries;
use crate::figures::{self, Printer, number};
use crate::form::source;
use crate::words::{fill, words};
use standfast_core::body::BodyId;
use standfast_core::platform::Test;
use standfast_core::report::{LineReport, StepReport, TestReport};
use standfast_core::rules::{self, Figure};
use standfast_core::scalar::Scalar;
use standfast_core::units::{GRAVITY, Rounding, System};
use yew::prelude::*;

/// The tables of one step.
pub fn working(step: &StepReport, answer: &Answer, entries: &Entries, system: System) -> Html {
    let w = &words().stage;
    let print = Printer(system);
    let assessment = answer.assessment.as_ref();
    html! {
        <div class="working" data-testid="working-tables">
            <p>{ w.working_intro }</p>
            { drive::driven(step, print) }
            { for step.lines.iter().map(|line| moments(step, line, print)) }
            if !step.tests.is_empty() {
                { slopes(step) }
            }
            { wheels(step, print) }
            { for assessment.map(|a| blades::blades(step, &a.forks, print)) }
            { for assessment.map(|a| load::load(&a.load, entries, print)) }
        </div>
    }
}

/// A figure as stated and at the worst.
fn twice(stated: String, worst: String) -> String {
    fill(words().stage.stated_worst, &[("stated", &stated), ("worst", &worst)])
}

/// A moment in kN m, a force in kN: what an engineer reads in either system.
fn kilo(value: f64, unit: &str, way: Rounding) -> String {
    format!("{}\u{a0}{unit}", number(value / 1000.0, 2, way))
}

/// The moments of every body about a line, and what they come to.
pub fn moments(step: &StepReport, line: &LineReport, print: Printer) -> Html {
    let w = &words().stage;
    let mass = |id: BodyId| step.bodies.iter().find(|b| b.id == id).map(|b| b.mass.get()).unwrap_or_default();
    let row = |name: String, mass: Option<f64>, moment: f64| {
        let lever = mass.filter(|m| *m > 0.0).map(|m| print.length(moment / (m * GRAVITY), Rounding::Nearest));
        html! {
            <tr>
                <th scope="row">{ name }</th>
                <td>{ mass.map(|m| print.mass(m, Rounding::Nearest)) }</td>
                <td>{ lever }</td>
                <td>{ kilo(moment, "kN\u{b7}m", Rounding::Nearest) }</td>
            </tr>
        }
    };
    let extra = [(w.slope_entry, line.slope_entry), (w.acceleration_entry, line.acceleration_entry)];
    let extra = || extra.iter().filter(|(_, m)| *m != Scalar::ZERO);
    let all = || line.entries.iter().map(|e| e.moment.get()).chain(extra().map(|(_, m)| m.get()));
    let holding: f64 = all().filter(|m| *m > 0.0).sum();
    let over: f64 = all().filter(|m| *m < 0.0).sum();
    let angle =
        |a: Option<Scalar>| a.map_or_else(|| w.does_not_tip.to_owned(), |a| figures::angle(a.get(), Rounding::Down));
    let shares = twice(figures::share(line.share.nominal.get()), figures::share(line.share.worst.get()));
    let length = |s: Scalar| print.length(s.get(), Rounding::Down);
    let sums = [
        (w.holding, kilo(holding, "kN\u{b7}m", Rounding::Down)),
        (w.overturning, kilo(over, "kN\u{b7}m", Rounding::Down)),
        (w.share, shares),
        (w.distance, twice(length(line.distance.nominal), length(line.distance.worst))),
        (w.tip_angle, twice(angle(line.tip_angle_deg), angle(line.tip_angle_worst_deg))),
    ];
    html! {
        <div class="scroll" role="region" tabindex="0" aria-label={(words().line)(line.id)} key={format!("{:?}", line.id)}>
            <table>
                <caption>{ (words().line)(line.id) }</caption>
                <thead>
                    <tr>
                        for head in [w.body, w.mass, w.lever, w.moment] {
                            <th scope="col">{ head }</th>
                        }
                    </tr>
                </thead>
                <tbody>
                    { for line.entries.iter().map(|e| row((words().body)(e.id), Some(mass(e.id)), e.moment.get())) }
                    { for extra().map(|(name, m)| row((*name).to_owned(), None, m.get())) }
                </tbody>
                <tfoot>
                    for (name, value) in sums {
                        <tr><th scope="row">{ name }</th><td colspan="3">{ value }</td></tr>
                    }
                </tfoot>
            </table>
        </div>
    }
}

/// The published figures that a slope asked is made of.
fn figures_of(test: &TestReport) -> Vec<Figure> {
    let is = |f: &Figure| Scalar::new(f.value) == Some(test.asked);
    let either = |a: Figure, b: Figure| vec![if is(&b) && !is(&a) { b } else { a }];
    match test.test {
        Test::LongitudinalStacking => either(rules::STACKING_LONGITUDINAL, rules::STACKING_LONGITUDINAL_HEAVY),
        Test::LongitudinalTravelling => vec![rules::TRAVELLING_LONGITUDINAL],
        Test::LateralStacking => vec![rules::STACKING_LATERAL],
        Test::LateralTravelling => {
            let caps = [rules::TRAVELLING_LATERAL_CAP, rules::TRAVELLING_LATERAL_CAP_HEAVY];
            match caps.into_iter().find(is) {
                Some(cap) => vec![cap],
                None => vec![rules::TRAVELLING_LATERAL_BASE, rules::TRAVELLING_LATERAL_PER_KMH_ASKED],
            }
        }
    }
}

fn slopes(step: &StepReport) -> Html {
    let w = &words().stage;
    let stood =
        |s: Option<Scalar>| s.map_or_else(|| w.does_not_tip.to_owned(), |s| figures::slope(s.get(), Rounding::Down));
    let row = |t: &TestReport| {
        let in_hand = t.stood_worst.map(|s| figures::slope(s.get() - t.asked.get(), Rounding::Down));
        let sources: Vec<_> = figures_of(t).iter().map(source).collect();
        html! {
            <tr class={classes!((!t.passes_worst).then_some("over"))}>
                <th scope="row">{ (words().test)(t.test) }</th>
                <td class="words">{ (words().line)(t.line) }</td>
                <td>{ figures::slope(t.asked.get(), Rounding::Up) }</td>
                <td>{ stood(t.stood) }</td>
                <td>{ stood(t.stood_worst) }</td>
                <td>{ in_hand }</td>
                <td class="words source">{ sources.join("; ") }</td>
            </tr>
        }
    };
    html! {
        <div class="scroll" role="region" tabindex="0" aria-label={w.slopes}>
            <table>
                <caption>{ w.slopes }<span class="help">{ w.slopes_intro }</span></caption>
                <thead>
                    <tr>
                        <th scope="col">{ w.test }</th>
                        <th scope="col" class="words">{ w.about }</th>
                        for head in [w.asked, w.stood, w.stood_worst, w.in_hand] {
                            <th scope="col">{ head }</th>
                        }
                        <th scope="col" class="words">{ w.source }</th>
                    </tr>
                </thead>
                <tbody>{ for step.tests.iter().map(row) }</tbody>
            </table>
        </div>
    }
}

fn wheels(step: &StepReport, print: Printer) -> Html {
    let w = &words().stage;
    let loads = [
        (w.left_front, step.wheels.left),
        (w.right_front, step.wheels.right),
        (w.front_axle, step.wheels.front),
        (w.steer_axle, step.wheels.steer),
    ];
    html! {
        <table>
            <caption>{ w.wheel_loads }</caption>
            <tbody>
                for (name, force) in loads {
                    <tr>
                        <th scope="row">{ name }</th>
                        <td>{ kilo(force.get(), "kN", Rounding::Nearest) }</td>
                        <td>{ print.mass(force.get() / GRAVITY, Rounding::Nearest) }</td>
                    </tr>
                }
            </tbody>
        </table>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::rc::Rc;
    use yew::LocalServerRenderer;

    #[derive(Properties, PartialEq)]
    struct Shown {
        entries: Rc<Entries>,
    }

    #[component]
    fn Tables(props: &Shown) -> Html {
        let answer = Answer::of(&props.entries);
        let step = answer.step(standfast_core::step::StepId::Travel).cloned();
        html! { { for step.map(|step| working(&step, &answer, &props.entries, System::Metric)) } }
    }

    async fn tables(entries: Entries) -> String {
        let props = Shown { entries: Rc::new(entries) };
        LocalServerRenderer::<Tables>::with_props(props).hydratable(false).render().await
    }

    /// A sceptic finds every part with its weight and centre, their sum, and the load on the forks.
    #[tokio::test]
    async fn the_working_holds_the_load_and_its_parts() {
        let entries = Entries::from_document(&example::document(example::ODD_LOAD));
        let html = tables(entries.clone()).await;
        for part in &entries.parts {
            assert!(html.contains(&format!("<th scope=\"row\">{}</th>", part.name)), "{}", part.name);
        }
        assert!(html.contains("working-load") && html.contains("Together") && html.contains("m\u{b3}"));
        assert!(html.contains("Topples ahead") && html.contains("braking") && html.contains("Moment at the heel"));
        let mut hangs = entries;
        hangs.hanging = true;
        hangs.enter(standfast_core::place::Field::HookAbove.into(), "100", System::Metric);
        let html = tables(hangs).await;
        assert!(html.contains("The load hangs") && !html.contains("Topples ahead"));
    }
    use standfast_core::example;
    use standfast_core::report::assess;

    /// Every slope that is asked anywhere is made of the figures named as its source.
    #[test]
    fn the_sources_named_make_the_slope_asked() {
        for text in [example::THREE_WHEEL, example::FOUR_WHEEL] {
            let document = example::document(text);
            let speed = document.truck.top_speed_kmh.expect("a speed");
            for step in assess(&document).assessment.expect("an answer").steps {
                for test in &step.tests {
                    let named = figures_of(test);
                    let sum = named[0].value + named.get(1).map_or(0.0, |per_kmh| per_kmh.value * speed);
                    assert!((sum - test.asked.get()).abs() < 1e-12, "{:?}: {named:?}", test.test);
                }
            }
        }
    }
}
