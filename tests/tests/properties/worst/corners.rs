//! Few figures uncertain and all their corners tried: the worst of them is the worst.

use super::compared::Compared;
use super::{Case, EXACT, reach, tie};
use glam::DVec3;
use standfast_core::balance::Balance;
use standfast_core::doubt::Doubts;
use standfast_core::place::{Field, Place};
use standfast_core::scenario::Scenario;
use standfast_core::step::{Step, StepId};
use standfast_tests::draw::Draws;
use standfast_tests::truth::{Figure, SetUp, Truth};

/// Small cases.
const CASES: u64 = 250;
/// No case is tried at more corners.
const MOST: usize = 20_000;

/// Figures beside those of [`Doubts`] that are not known exactly.
const OWN: [Field; 11] = [
    Field::LoadMass,
    Field::LoadCgFromHeel,
    Field::LoadCgLeft,
    Field::LoadCgAbove,
    Field::HeelGap,
    Field::Offset,
    Field::BatteryFitted,
    Field::BatteryBehind,
    Field::BatteryHeight,
    Field::MastGive,
    Field::PivotHeight,
];

/// A scenario with six to ten figures uncertain at the most; beside them the operator may be off the truck, the
/// mast may sway, and one of its parts may stand elsewhere.
fn small(case: &Case, draws: &mut Draws) -> Scenario {
    let mut scenario = case.scenario.clone();
    let sections = [0, 1, 2].map(|k| [Field::StageMass, Field::StageRatio].map(|f| Place::in_row(f, k)));
    let all = Doubts::FIELDS.iter().chain(&OWN).copied().map(Place::from).chain(sections.concat());
    let mut uncertain: Vec<Place> = all.filter(|place| scenario.exactly(*place).is_some()).collect();
    let keep = draws.count(6..11).min(uncertain.len());
    for _ in 0..keep {
        let k = draws.count(0..uncertain.len());
        uncertain.swap_remove(k);
    }
    for place in uncertain {
        scenario = scenario.exactly(place).unwrap_or(scenario);
    }
    let truck = &mut scenario.truck;
    if draws.chance(0.6) {
        (truck.operator, scenario.doubts.operator.hi) = (0.0, 0.0);
    }
    if draws.chance(0.5) {
        truck.mast.play = 0.0;
    }
    // A part without weight is nowhere.
    let kept = draws.count(0..5);
    let mut weights: Vec<&mut f64> = vec![&mut truck.mast.outer, &mut truck.forks.carriage, &mut truck.forks.pair];
    weights.extend(truck.mast.stages.iter_mut().map(|s| &mut s.0));
    for (k, kg) in weights.into_iter().enumerate() {
        *kg *= f64::from(u8::from(k == kept));
    }
    scenario
}

/// The values that are tried of a figure: its ends, and of a curve places between.
fn tried(figure: &Figure) -> Vec<f64> {
    let range = figure.range;
    let steps = match figure.name.as_str() {
        "tilt" | "lean" | "sway" => 8,
        _ if figure.curved => 2,
        _ => 1,
    };
    (0..=steps).map(|k| range.lo + (range.hi - range.lo) * f64::from(k) / f64::from(steps)).collect()
}

/// Calls `see` at every corner; whether there were few enough.
fn each(truth: &mut Truth, figures: &[Figure], balance: &Balance, mut see: impl FnMut(&Truth)) -> Option<usize> {
    let values: Vec<Vec<f64>> = figures.iter().map(tried).collect();
    let corners = values.iter().map(Vec::len).product::<usize>();
    let count = corners * balance.whole.len();
    if count > MOST {
        return None;
    }
    for &whole in &balance.whole {
        truth.whole = whole;
        for mut k in 0..corners {
            for (figure, values) in figures.iter().zip(&values) {
                figure.set(truth, values[k % values.len()]);
                k /= values.len();
            }
            see(truth);
        }
    }
    Some(count)
}

#[derive(Default)]
struct All {
    corners: usize,
    cases: usize,
    figures: usize,
    moment: Compared,
    distance: Compared,
    angle: Compared,
    stood: Compared,
    platform: Compared,
    box_wider: f64,
    box_beyond: f64,
}

fn standing(case: &Case, step: &Step, all: &mut All) -> Option<()> {
    let (seed, id) = (case.seed, step.id);
    let figures = case.figures(id, SetUp::Standing);
    let mut truth = case.stated(id, SetUp::Standing);
    let mut least = [(f64::INFINITY, f64::INFINITY, f64::INFINITY); 3];
    let (mut lo, mut hi) = (DVec3::INFINITY, DVec3::NEG_INFINITY);
    let count = each(&mut truth, &figures, &case.balance, |t| {
        for (least, a) in least.iter_mut().zip(t.about(t.pull())) {
            *least = (least.0.min(a.moment), least.1.min(a.distance), least.2.min(reach(a.tip_angle)));
        }
        let centre = t.centre();
        (lo, hi) = (lo.min(centre), hi.max(centre));
    })?;
    all.corners += count;
    all.cases += 1;
    all.figures += figures.len();
    let tie = tie(&truth);
    for (standing, least) in step.standing.iter().zip(least) {
        let line = standing.line.id;
        let there = || format!("{seed} {id:?} {line:?} {figures:?}");
        let m = standing.moment;
        all.moment.add(there, least.0, m.worst, m.nominal, tie);
        let d = step.distance(line);
        all.distance.add(there, least.1, d.worst, d.nominal, EXACT);
        let a = step.tip_angle(line);
        all.angle.add(there, least.2, reach(a.worst), reach(a.nominal), EXACT);
    }
    // What is stated may stand outside of what the plate leaves possible: the box has it all the same.
    let at = step.stance.nominal.centre(false).1;
    let (found_lo, found_hi) = step.stance.spread();
    let (lo, hi) = (lo.min(at), hi.max(at));
    all.box_wider = all.box_wider.max((lo - found_lo).max_element()).max((found_hi - hi).max_element());
    all.box_beyond = all.box_beyond.max((found_lo - lo).max_element()).max((hi - found_hi).max_element());
    Some(())
}

fn tested(case: &Case, step: &Step, all: &mut All) -> Option<()> {
    let (seed, id) = (case.seed, step.id);
    let figures = case.figures(id, SetUp::Tested);
    let mut truth = case.stated(id, SetUp::Tested);
    let mut least = vec![f64::INFINITY; step.tests.len()];
    let lines = step.standing.clone().map(|s| s.line.id);
    let mut stood = [f64::INFINITY; 3];
    let count = each(&mut truth, &figures, &case.balance, |t| {
        for (least, test) in least.iter_mut().zip(&step.tests) {
            *least = least.min(t.on_platform(test.line, test.asked));
        }
        for (stood, line) in stood.iter_mut().zip(lines) {
            *stood = stood.min(reach(t.stood(line)));
        }
    })?;
    all.corners += count;
    let tie = tie(&truth);
    for (test, least) in step.tests.iter().zip(least) {
        let there = || format!("{seed} {id:?} {:?} {:?} {figures:?}", test.test, test.line);
        all.platform.add(there, least, test.moment.worst, test.moment.nominal, tie);
    }
    for (line, stood) in lines.into_iter().zip(stood) {
        let s = step.stood(line);
        let (worst, nominal) = (reach(s.worst), reach(s.nominal));
        let there = || format!("{seed} {id:?} {line:?} {figures:?}");
        all.stood.add(there, stood, worst, nominal, EXACT * (1.0 + worst * worst));
    }
    Some(())
}

/// Every corner of every figure, angles between too, and every corner of where the unladen centre may be.
#[test]
fn the_worst_corner_is_the_least_of_all_corners() {
    let mut all = All::default();
    for seed in 0..CASES {
        let mut case = Case::of(40_000 + seed);
        let mut draws = Draws::seeded_row(seed, 200);
        case.scenario = small(&case, &mut draws);
        (case.balance, case.placed) = super::worked(&case.scenario);
        let steps: Vec<StepId> = case.steps().collect();
        for _ in 0..3 {
            let id = draws.one_of(&steps).expect("a step");
            let step = Step::new(&case.scenario, &case.balance, &case.placed, id);
            standing(&case, &step, &mut all);
            tested(&case, &step, &mut all);
        }
    }
    println!(
        "{} small cases of {:.1} uncertain figures, {} corners",
        all.cases,
        all.figures as f64 / all.cases as f64,
        all.corners
    );
    all.moment.report("moments, N m", 0.97);
    all.distance.report("distances, m", 0.97);
    all.angle.report("tip angles, rad", 0.97);
    all.platform.report("platform tests, N m", 0.97);
    all.stood.report("slopes stood", 0.97);
    println!(
        "the common centre's box: wider by at most {:.1e} m, beyond it at most {:.1e} m",
        all.box_wider, all.box_beyond
    );
    assert!(all.cases > 300, "{}", all.cases);
    assert!(all.box_beyond <= EXACT && all.box_wider <= 1e-3);
}
