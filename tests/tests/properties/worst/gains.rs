//! What knowing a figure exactly gains, by entering it with no tolerance.

use super::{Case, tie, worked};
use standfast_core::document::{CentreKnown, Document, GivenAs, Known};
use standfast_core::gain;
use standfast_core::place::{Field, Place};
use standfast_core::step::{Check, Step};
use standfast_tests::truth::SetUp;

/// Random trucks, loads and lifts.
const CASES: u64 = 150;

/// Whether a tolerance entered for the figure is what counts for it: a load's own figures may be decided by
/// other ways.
fn counts(document: &Document, place: Place) -> bool {
    let load = &document.load;
    let block = load.given_as == GivenAs::Block && load.weighing.is_none();
    let marked = block && load.centre_known == Some(CentreKnown::Mark);
    let of_its_own = match place.field {
        Field::LoadMass => block,
        Field::LoadCgFromHeel | Field::LoadCgLeft => marked,
        Field::LoadCgAbove => marked && !load.hanging,
        // The load's weight is ranked as a whole.
        Field::PartMass => false,
        _ => true,
    };
    of_its_own && place.field.takes_tolerance() && place.get(document).is_some()
}

fn check_of(step: &Step, line: usize) -> (Check, f64) {
    let standing = &step.standing[line];
    let of_tests = step.tests.iter().find(|t| t.line == standing.line.id);
    let test = of_tests.map(|t| t.test);
    let check = Check { step: step.id, line: standing.line.id, test };
    (check, of_tests.map_or(standing.moment.nominal, |t| t.moment.nominal))
}

/// The gain in the ranking is what the worst moment gains where the figure is entered with a tolerance of 0, and
/// no figure known better ever costs anything.
#[test]
fn a_gain_is_what_entering_the_figure_exactly_gains() {
    let (mut compared, mut most, mut beyond) = (0, 0.0_f64, Vec::new());
    for seed in 0..CASES {
        let case = Case::of(50_000 + seed);
        for id in case.steps() {
            let step = Step::new(&case.scenario, &case.balance, &case.placed, id);
            let tie = tie(&case.stated(id, SetUp::Standing));
            let line = (seed as usize + id as usize) % 3;
            let (check, stated) = check_of(&step, line);
            let worst = check.worst(&case.scenario, &case.balance, &case.placed);
            let ranked = gain::ranked(&case.scenario, &case.balance, &case.placed, &check, stated);
            for found in &ranked {
                assert!(found.moment.get() >= 0.0);
            }
            for place in Place::all_numbers(&case.document).into_iter().filter(|p| counts(&case.document, *p)) {
                let mut exact = case.document.clone();
                exact.known.insert(place.to_string(), Known { by: None, tolerance: Some(0.0) });
                let exact = super::scenario(&exact);
                let (balance, placed) = worked(&exact);
                let then = check.worst(&exact, &balance, &placed);
                let gained = ranked.iter().find(|g| g.place == place).map_or(0.0, |g| g.moment.get());
                compared += 1;
                most = most.max(gained);
                // A height or axle loads that the plate has no room for contradict it once they are exact: then
                // nothing is gained.
                let balance = matches!(place.field, Field::CgHeight | Field::FrontAxle | Field::SteerAxleLoad);
                let then = if balance { then.max(worst) } else { then };
                if (then - worst - gained).abs() > tie {
                    beyond.push(format!("{} {check:?} {place}: {} gained, {gained} said", case.seed, then - worst));
                }
            }
        }
    }
    println!("{compared} gains compared, the greatest {most:.0} N m");
    assert!(beyond.is_empty(), "{} beyond: {:#?}", beyond.len(), &beyond[..beyond.len().min(12)]);
}
