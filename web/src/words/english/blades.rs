//! The load on the blades, in English.

use crate::words::Twice;
use crate::words::blades::BladeWords;
use standfast_core::forks::Fork;
use standfast_core::seat::{Event, Over};

pub(super) const BLADES: BladeWords = BladeWords {
    short_reach: Twice {
        stated: "The forks reach under {reach} of the load's depth; {asked} is asked, {margin} short.",
        may: "The forks may reach under only {reach} of the load's depth; {asked} is asked, {margin} short.",
    },
    off_blade: Twice {
        stated: "The load does not lie on the {fork} fork: {lacks} is lacking.",
        may: "The load may not lie on the {fork} fork: {lacks} may be lacking.",
    },
    fork_over_moment: Twice {
        stated: "The {fork} fork would have {moment} at its heel; it is stamped for {allowed}, {margin} too much.",
        may: "The {fork} fork may have {moment} at its heel; it is stamped for {allowed}, {margin} too much.",
    },
    fork_over_mass: Twice {
        stated: "The {fork} fork would carry {carries}; it is stamped for {allowed}, {margin} too much.",
        may: "The {fork} fork may carry {carries}; it is stamped for {allowed}, {margin} too much.",
    },
    fork_worn: "The forks have lost {wear} of their thickness at the heel; at {limit} they are taken out of service.",
    extension_too_long: "The fork extensions are {length} long; these forks carry {limit} at most, {margin} too much.",
    topples: Twice {
        stated: "{pose}, {event} the load topples {over}: its plumb line falls {beyond} outside what carries it.",
        may: "{pose}, {event} the load may topple {over}: its plumb line may fall {beyond} outside what carries it.",
    },
    slides: Twice {
        stated: "{pose}, {event} the load slides on the forks: {asked} of friction is asked, {friction} is there.",
        may: "{pose}, {event} the load may slide on the forks: {asked} of friction is asked, {friction} is sure.",
    },
    ways_disagree: "Two ways do not agree on {figure}: by {one} {one_says}, by {other} {other_says}.",
    too_heavy_hanging: "Of what the plate allows, only {part} may hang.",
    working: "The load on the forks",
    working_intro: "The load as a body of its own: held by its weight and by friction alone, leaning on nothing but the \
                    heel. In hand is how far inside an edge its plumb line meets the blades.",
    hangs: "The load hangs: it neither topples nor slides on the blades.",
    no_load: "In this step there is no load on the forks.",
    edge: "Topples",
    margin: "In hand",
    margin_worst: "At worst",
    friction: "Slides: friction",
    friction_of: "{asked} asked, {there} there",
    forks: "What each fork carries",
    forks_intro: "The load shared between the forks by levers, and its moment at the heel, against the stamp on the \
                  fork with its wear counted off. Taken out of service from {limit} of wear. {source}",
    part: "Part",
    carries: "Weight",
    moment: "Moment at the heel",
    allowed: "Stamped for",
    not_stamped: "not entered",
    event,
    over,
    fork,
    caution_not_stamped: "The forks' own stamped capacity was not entered, so it was not checked. Read it on each fork.",
    caution_underside: "What the load's underside is was not said: sliding is counted with the most slippery of the table.",
    caution_hanging: "The load hangs. Lift and travel slowly, mast upright, load low and held by a guide line; it swings \
                      further than any figure here. Hang it only from what is made for it, with the manufacturer's consent.",
    caution_wear: "The thickness of the blades today was not entered, so wear was not checked.",
};

fn event(event: Event) -> &'static str {
    match event {
        Event::Standing => "standing",
        Event::Braking => "braking",
        Event::Cornering => "in the bend",
        Event::OnSlope => "on the slope",
    }
}

fn over(over: Over) -> &'static str {
    match over {
        Over::Ahead => "ahead",
        Over::Left => "to the left",
        Over::Right => "to the right",
        Over::Heel => "back, towards the mast",
    }
}

fn fork(fork: Fork) -> &'static str {
    match fork {
        Fork::Left => "left",
        Fork::Right => "right",
    }
}
