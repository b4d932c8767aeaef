//! What would have to change, entered: it leads where it was said to lead.

use crate::entered;
use standfast_core::remedy;
use standfast_core::verdict::State;
use standfast_core::whole::Whole;
use standfast_tests::draw::Draws;
use standfast_tests::sensible;

/// Over 1,000 random moves that are a no-go, and the holds met on the way.
#[test]
fn each_leads_where_it_was_said_to() {
    let [mut no_go, mut helped, mut by_pair, mut to_go, mut hold, mut hold_helped, mut settled] = [0; 7];
    let mut seed = 0;
    while no_go < 1_000 {
        seed += 1;
        let document = sensible::document(&mut Draws::seeded(500_000 + seed));
        let Some((scenario, balance)) = entered::scenario(&document) else { continue };
        let whole = Whole::of(&scenario, &balance);
        let now = whole.verdict.state;
        let found = remedy::find(&document, &scenario, &balance, &whole);
        if now == State::Go {
            assert!(found.leads.is_empty() && found.settle.is_empty() && found.needed.is_none(), "seed {seed}");
            continue;
        }
        for leads in &found.leads {
            let mut after = document.clone();
            leads.changes.iter().for_each(|change| change.apply(&mut after));
            let (scenario, balance) =
                entered::scenario(&after).unwrap_or_else(|| panic!("seed {seed}: {leads:?} cannot be entered"));
            let then = Whole::of(&scenario, &balance).verdict.state;
            assert_eq!(then, leads.state, "seed {seed}: {leads:?}");
            assert!(then > now, "seed {seed}: {leads:?}");
        }
        let states: Vec<State> = found.leads.iter().map(|l| l.state).collect();
        assert!(states.windows(2).all(|w| w[0] >= w[1]), "what leads further comes first, seed {seed}");
        for place in &found.settle {
            let (scenario, balance) =
                standfast_core::gain::known(&scenario, &balance, *place).unwrap_or_else(|| panic!("{place}"));
            assert_eq!(Whole::of(&scenario, &balance).verdict.state, State::Go, "seed {seed}: {place}");
        }
        if now == State::NoGo {
            no_go += 1;
            helped += usize::from(!found.leads.is_empty());
            by_pair += usize::from(found.leads.first().is_some_and(|l| l.changes.len() == 2));
            to_go += usize::from(states.contains(&State::Go));
            assert_eq!(found.needed.is_some(), found.leads.is_empty(), "seed {seed}");
        } else {
            hold += 1;
            hold_helped += usize::from(!found.leads.is_empty());
            settled += usize::from(!found.settle.is_empty());
        }
    }
    println!(
        "of {no_go} no-go cases {helped} have something that helps ({by_pair} only in pairs), {to_go} as far as go; \
         of {hold} holds {hold_helped}, and {settled} can be settled by measuring one figure"
    );
    assert!(helped > 400, "{helped} of {no_go}");
}
