//! Type sheets: one that is consistent never contradicts itself, whatever its figures' tolerances let them be; one
//! figure that is further out than they explain does, and is among the suspects.

use proptest::prelude::*;
use standfast_core::closure::{self, Test};
use standfast_core::document::Document;
use standfast_core::known;
use standfast_core::place::{Field, Place};
use standfast_tests::draw::Draws;
use standfast_tests::sensible;

const FIGURES: [Field; 9] = [
    Field::Wheelbase,
    Field::LoadDistance,
    Field::Service,
    Field::FrontAxle,
    Field::SteerAxleLoad,
    Field::Rated,
    Field::RatedCentre,
    Field::FrontAxleLaden,
    Field::SteerAxleLaden,
];

fn get(document: &Document, field: Field) -> f64 {
    Place::from(field).get(document).expect("entered")
}

fn set(document: &mut Document, field: Field, value: f64) {
    *Place::from(field).number(document).expect("there") = Some(value);
}

/// A truck whose sheet is right to the last bit, by moments about the front axle.
fn right(draws: &mut Draws) -> Document {
    let mut d = sensible::document(draws);
    let (wheelbase, distance, service) =
        (get(&d, Field::Wheelbase), get(&d, Field::LoadDistance), get(&d, Field::Service));
    let steer = service * draws.within(0.47..0.6);
    let centre = draws.one_of(&[0.5, 0.6]).expect("one");
    // So heavy that the steer axle keeps a tenth of the weight or more.
    let rated = draws.within(0.5..0.95) * (steer - 0.1 * service) * wheelbase / (distance + centre);
    let laden = steer - rated * (distance + centre) / wheelbase;
    for (field, value) in [
        (Field::FrontAxle, service - steer),
        (Field::SteerAxleLoad, steer),
        (Field::Rated, rated),
        (Field::RatedCentre, centre),
        (Field::FrontAxleLaden, service + rated - laden),
        (Field::SteerAxleLaden, laden),
    ] {
        set(&mut d, field, value);
    }
    d
}

/// The same as somebody read it off: each figure out by up to its tolerance.
fn read_off(right: &Document, draws: &mut Draws) -> Document {
    let mut d = right.clone();
    for field in FIGURES {
        let value = get(right, field);
        let tolerance = known::tolerance_of(right, field.into(), value).unwrap_or_default();
        set(&mut d, field, value + 0.9 * tolerance * draws.within(-1.0..1.0));
    }
    d
}

proptest! {
    #[test]
    fn a_consistent_sheet_never_contradicts_itself(mut draws in Draws::any()) {
        let right = right(&mut draws);
        let read = read_off(&right, &mut draws);
        for document in [right, read] {
            let tested = closure::check(&document);
            prop_assert_eq!(tested.len(), 2);
            prop_assert!(tested.iter().all(|t| t.closes && t.suspects.is_empty()), "{tested:?}");
        }
    }

    #[test]
    fn a_figure_further_out_is_found_and_suspected(
        mut draws in Draws::any(), k in 0..FIGURES.len() - 1, up in any::<bool>(),
    ) {
        let wrong = FIGURES.into_iter().filter(|f| *f != Field::FrontAxle).nth(k).expect("one");
        let right = right(&mut draws);
        let mut d = read_off(&right, &mut draws);
        let test = match wrong {
            Field::Service | Field::Rated | Field::FrontAxleLaden => Test::LadenSum,
            _ => Test::LadenMoments,
        };
        let allowed = closure::check(&d).iter().find(|t| t.test == test).expect("made").allowed.get();
        // What one unit of the figure makes of the difference between what is found and expected.
        let (rated, wheelbase) = (get(&d, Field::Rated), get(&d, Field::Wheelbase));
        let taken = get(&d, Field::SteerAxleLoad) - get(&d, Field::SteerAxleLaden);
        let each = match wrong {
            Field::Wheelbase => taken / wheelbase,
            Field::LoadDistance | Field::RatedCentre => rated / wheelbase,
            _ => 1.0,
        };
        let by = 4.0 * allowed / each * if up { 1.0 } else { -1.0 };
        let value = get(&d, wrong) + by;
        let row = wrong.row();
        prop_assume!((row.min..=row.max).contains(&value));
        set(&mut d, wrong, value);
        let tested = closure::check(&d);
        let failed = tested.iter().find(|t| t.test == test).expect("made");
        prop_assert!(!failed.closes, "{wrong:?} by {by}: {failed:?}");
        let suspect = failed.suspects.iter().find(|s| s.place.field == wrong);
        prop_assert!(suspect.is_some(), "{wrong:?}: {failed:?}");
        // What it should be holds what it was.
        let (lo, hi) = suspect.and_then(|s| s.should_be).expect("it alone explains it");
        let was = get(&right, wrong);
        prop_assert!(lo.get() <= was + 1e-6 && was - 1e-6 <= hi.get(), "{was} not in {lo:?} to {hi:?}");
    }
}
