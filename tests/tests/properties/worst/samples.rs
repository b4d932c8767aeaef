//! Random trucks within the ranges: none is worse than the worst.

use super::{Case, EXACT, reach, somewhere, somewhere_of, tie};
use crate::fields;
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use standfast_core::step::Step;
use standfast_tests::draw::Draws;
use standfast_tests::truth::{Figure, SetUp, Truth};
use std::collections::BTreeMap;

/// Random trucks, loads and lifts.
const CASES: u64 = 300;
/// Samples of each of their steps.
const SAMPLES: usize = 32;

/// How near the samples came, and how often they were beyond.
#[derive(Default)]
struct Tally {
    samples: usize,
    compared: usize,
    kinds: BTreeMap<&'static str, Kind>,
}

#[derive(Default)]
struct Kind {
    beaten: usize,
    /// How far beyond at the most, 1 being what may be lost in adding up, and where.
    most: f64,
    there: String,
}

impl Tally {
    /// A sample's figure may be no less than the worst; `scale` makes 1 of what may be lost in adding up.
    fn hold(&mut self, kind: &'static str, there: impl Fn() -> String, sample: f64, worst: f64, scale: f64) {
        self.compared += 1;
        let beyond = (worst - sample) / scale;
        let kind = self.kinds.entry(kind).or_default();
        kind.beaten += usize::from(beyond > 1.0);
        if beyond > kind.most {
            (kind.most, kind.there) = (beyond, format!("{}: {sample} under {worst}", there()));
        }
    }

    fn report(&self) {
        let Self { samples, compared, kinds } = self;
        println!("{samples} samples, {compared} figures compared");
        for (kind, Kind { beaten, most, there }) in kinds {
            println!("  {kind}: {beaten} beyond; at the most {most:.3} times what may be lost in adding up; {there}");
        }
        assert!(kinds.values().all(|k| k.beaten == 0), "the worst was beaten");
    }
}

fn scatter(truth: &mut Truth, figures: &[Figure], case: &Case, draws: &mut Draws) {
    for figure in figures {
        figure.set(truth, somewhere(draws, figure));
    }
    truth.whole = somewhere_of(draws, &case.balance.whole);
}

fn one_step(case: &Case, step: &Step, draws: &mut Draws, tally: &mut Tally) {
    let (seed, id) = (case.seed, step.id);
    let (standing, tested) = (case.figures(id, SetUp::Standing), case.figures(id, SetUp::Tested));
    let lines = step.standing.clone().map(|s| s.line.id);
    let distance = lines.map(|line| step.distance(line).worst);
    let angle = lines.map(|line| reach(step.tip_angle(line).worst));
    let stood = lines.map(|line| reach(step.stood(line).worst));
    let (lo, hi) = step.stance.spread();
    let mut truth = case.stated(id, SetUp::Standing);
    let mut on_platform = case.stated(id, SetUp::Tested);
    for _ in 0..SAMPLES {
        tally.samples += 1;
        scatter(&mut truth, &standing, case, draws);
        for (k, about) in truth.about(truth.pull()).into_iter().enumerate() {
            let there = || format!("{seed} {id:?} {:?}", about.line);
            tally.hold("moment", there, about.moment, step.standing[k].moment.worst, tie(&truth));
            tally.hold("distance", there, about.distance, distance[k], EXACT);
            tally.hold("tip angle", there, reach(about.tip_angle), angle[k], EXACT);
        }
        let centre = truth.centre();
        for axis in 0..3 {
            let there = || format!("{seed} {id:?} {axis}");
            tally.hold("spread, least", there, centre[axis], lo[axis], EXACT);
            tally.hold("spread, most", there, -centre[axis], -hi[axis], EXACT);
        }
        scatter(&mut on_platform, &tested, case, draws);
        for (line, stood) in lines.into_iter().zip(stood) {
            let found = reach(on_platform.stood(line));
            tally.hold(
                "slope stood",
                || format!("{seed} {id:?} {line:?}"),
                found,
                stood,
                EXACT * (1.0 + stood * stood),
            );
        }
        for test in &step.tests {
            let found = on_platform.on_platform(test.line, test.asked);
            let there = || format!("{seed} {id:?} {:?} {:?}", test.test, test.line);
            tally.hold("platform", there, found, test.moment.worst, tie(&on_platform));
        }
    }
}

/// Moments, distances, tip angles, slopes stood, platform tests and the spread: all steps that apply, three
/// wheels and four, known in all kinds of ways.
#[test]
fn no_sample_beats_the_worst() {
    let mut tally = Tally::default();
    for seed in 0..CASES {
        let case = Case::of(seed);
        for id in case.steps() {
            let step = Step::new(&case.scenario, &case.balance, &case.placed, id);
            one_step(&case, &step, &mut Draws::seeded_row(seed * 16 + id as u64, 5000), &mut tally);
        }
    }
    assert!(tally.samples >= 100_000);
    tally.report();
}

/// The same about any pull at all, not a step's own.
#[test]
fn no_sample_beats_the_worst_in_any_field() {
    let mut runner = TestRunner::new_with_rng(Config::default(), TestRng::deterministic_rng(RngAlgorithm::ChaCha));
    let mut tally = Tally::default();
    for seed in 0..CASES {
        let case = Case::of(10_000 + seed);
        for id in case.steps() {
            let step = Step::new(&case.scenario, &case.balance, &case.placed, id);
            let mut draws = Draws::seeded_row(seed * 16 + id as u64, 5000);
            let field = fields().new_tree(&mut runner).expect("a field").current();
            let w = field.total();
            let figures = case.figures(id, SetUp::Standing);
            let mut truth = case.stated(id, SetUp::Standing);
            let worst = step.standing.clone().map(|s| step.stance.moment(s.line.id, &field, &[w]).worst);
            for _ in 0..8 {
                tally.samples += 1;
                scatter(&mut truth, &figures, &case, &mut draws);
                for (about, worst) in truth.about(w).into_iter().zip(worst) {
                    let there = || format!("{} {id:?} {:?} {w}", case.seed, about.line);
                    tally.hold("moment", there, about.moment, worst, tie(&truth));
                }
            }
        }
    }
    tally.report();
}
