//! All figures of a whole truck, moved one after the other to where they are worst: that finds no worse than
//! the worst, and nearly always just that.

use super::compared::Compared;
use super::{Case, EXACT, descend, reach, tie};
use standfast_core::step::{Step, StepId};
use standfast_tests::truth::{SetUp, Truth};

fn search(case: &Case, id: StepId, set_up: SetUp, objective: impl Fn(&Truth) -> f64) -> f64 {
    descend(&case.stated(id, set_up), &case.figures(id, set_up), &case.balance.whole, objective)
}

#[test]
fn a_search_finds_the_worst_and_no_worse() {
    let (mut standing, mut tests) = (Compared::default(), Compared::default());
    for seed in 0..90 {
        let case = Case::of(20_000 + seed);
        for id in case.steps() {
            let step = Step::new(&case.scenario, &case.balance, &case.placed, id);
            let tie = tie(&case.stated(id, SetUp::Standing));
            for found in &step.standing {
                let line = found.line.id;
                let least = search(&case, id, SetUp::Standing, |t| t.moment(line, t.pull()));
                let there = || format!("{seed} {id:?} {line:?}");
                standing.add(there, least, found.moment.worst, found.moment.nominal, tie);
            }
            for test in &step.tests {
                let least = search(&case, id, SetUp::Tested, |t| t.on_platform(test.line, test.asked));
                let there = || format!("{seed} {id:?} {:?} {:?}", test.test, test.line);
                tests.add(there, least, test.moment.worst, test.moment.nominal, tie);
            }
        }
    }
    standing.report("moments, N m", 0.97);
    tests.report("platform tests, N m", 0.97);
}

/// Distance, tip angle and slope stood, likewise.
#[test]
fn a_search_finds_no_shorter_reach() {
    let [mut distances, mut angles, mut slopes] = [Compared::default(), Compared::default(), Compared::default()];
    for seed in 0..25 {
        let case = Case::of(30_000 + seed);
        for id in case.steps() {
            let step = Step::new(&case.scenario, &case.balance, &case.placed, id);
            for (k, standing) in step.standing.iter().enumerate() {
                let line = standing.line.id;
                let there = || format!("{seed} {id:?} {line:?}");
                let distance = search(&case, id, SetUp::Standing, |t| t.about(t.pull())[k].distance);
                let d = step.distance(line);
                distances.add(there, distance, d.worst, d.nominal, EXACT);
                let angle = search(&case, id, SetUp::Standing, |t| reach(t.about(t.pull())[k].tip_angle));
                let a = step.tip_angle(line);
                angles.add(there, angle, reach(a.worst), reach(a.nominal), EXACT);
                let slope = search(&case, id, SetUp::Tested, |t| reach(t.stood(line)));
                let stood = step.stood(line);
                let (worst, nominal) = (reach(stood.worst), reach(stood.nominal));
                slopes.add(there, slope, worst, nominal, EXACT * (1.0 + worst * worst));
            }
        }
    }
    distances.report("distances, m", 0.95);
    angles.report("tip angles, rad", 0.95);
    slopes.report("slopes stood", 0.95);
}
