//! The type sheet held against itself, in English.

use crate::words::sheet::SheetWords;
use standfast_core::closure::Test;

pub(super) const SHEET: SheetWords = SheetWords {
    open,
    closed,
    alone: "If only one figure is wrong: {list}.",
    should_be: "{name} (rather {range})",
    several: "No single figure explains it. Look at all of these again: {list}.",
    help: "As sheets commonly give it: laden is the service weight with the rated load at its load centre, forks down, \
           mast upright, nobody on the truck. Once rated capacity and axle loads are there, they are held against each \
           other.",
};

fn open(test: Test) -> &'static str {
    match test {
        Test::LadenSum => {
            "The type sheet does not fit together: the laden axle loads add up to {found}; service weight and rated load \
             to {expected}."
        }
        Test::LadenMoments => {
            "The type sheet does not fit together: {found} on the laden steer axle; by moments the rated load leaves \
             {expected} there."
        }
    }
}

fn closed(test: Test) -> &'static str {
    match test {
        Test::LadenSum => {
            "Laden axle loads add up: {found}, with service weight and rated load {expected}; {allowed} either way is let \
             through."
        }
        Test::LadenMoments => {
            "Laden steer axle load fits by moments: {found}, worked out {expected}; {allowed} either way is let through."
        }
    }
}
