//! The drive and the steps, in English.

use crate::words::drive::DriveWords;
use crate::words::{StepWords, Twice};
use standfast_core::step::StepId;

pub(super) const DRIVE: DriveWords = DriveWords {
    group_braking: "The drive: braking",
    group_bends: "The drive: bends",
    group_slopes: "The drive: ramp and cross-fall",
    group_reserve: "The drive: what must be left",
    looked_at: "Looked at",
    left_out: "Left out",
    backwards: "Backwards, load uphill",
    forwards: "Forwards, load downhill",
    backwards_taken: "Not chosen: backwards, load uphill, is taken.",
    over_limit: "Over {limit} a loaded truck keeps its load uphill. {source}",
    unit: "Unit of \u{201c}{field}\u{201d}",
    percent: "%",
    degrees: "degrees",
    is: "{this} is {other}",
    in_degrees: "{n} degrees",
    compare: "{this} would be {other}",
    summary_ramp: "ramp {slope}",
    summary_cross_fall: "cross-fall {slope}",
    reserve: Twice {
        stated: "{when} it uses {share} of what holds it from going over {way}; {allowed} may be used, {margin} too much.",
        may: "{when} it may use {share} of what holds it from going over {way}; {allowed} may be used, {margin} too much.",
    },
    load_downhill: Twice {
        stated: "The ramp is {grade} and the load leads downhill; over {limit} it stays uphill (29 CFR 1910.178 (n)(7)). \
                 Drive down backwards.",
        may: "The ramp may be {grade} and the load leads downhill; over {limit} it stays uphill (29 CFR 1910.178 (n)(7)). \
              Drive down backwards.",
    },
    when,
    way_backwards: "backwards with the load uphill",
    way_forwards: "with the load downhill",
    when_braking: "{when} and braking at {braking}",
    working: "What it is driven like",
    working_intro: "Slope and acceleration act on every kilogram of truck and load. The platform tests ask nothing of this \
                    step; instead a reserve must be left: {source}.",
    up_ahead: "{slope} ({angle}), rising ahead",
    down_ahead: "{slope} ({angle}), falling ahead",
    left_high: "{slope} ({angle}), left side high",
    right_high: "{slope} ({angle}), right side high",
    level: "level",
    evenly: "none",
    acceleration: "Pull of speeding, braking, turning",
    slope: "Slope of the ground",
    pulls: "{acceleration} {way}",
    pulls_ahead: "ahead",
    pulls_back: "to the rear",
    pulls_left: "to the left",
    pulls_right: "to the right",
    may_be_used: "May be used",
    is_used: "Is used, of what holds it",
    left_in_hand: "In hand at worst",
    play: "Play the move",
    stop: "Stop",
    next: "Next step",
    stands: "passes",
    stands_stated: "hold",
    fails: "fails",
    no_answer: "no answer yet",
    load_moves: "LOAD MOVES",
    load_may_move: "LOAD MAY MOVE",
    may_be_over: "MAY BE OVER",
    caution_brake: "Braking is left out of this check: neither on the level nor down the ramp is it looked at.",
    caution_corner: "Bends with the load are left out of this check.",
    caution_corner_empty: "Bends without the load are left out of this check.",
    caution_level: "No ramp and no cross-fall is entered: the way is taken to be level.",
    caution_no_ramp: "No ramp is entered: along its way the truck is taken to stand level.",
    caution_no_cross_fall: "No cross-fall is entered: across its way the truck is taken to stand level.",
};

fn when(id: StepId) -> Option<&'static str> {
    Some(match id {
        StepId::Brake => "Braking at {braking}",
        StepId::CornerLeft => "In the left-hand bend at {speed} on {radius}",
        StepId::CornerRight => "In the right-hand bend at {speed} on {radius}",
        StepId::RampUp => "Driving up the {ramp} ramp",
        StepId::RampDown => "Down the {ramp} ramp {way_down}",
        StepId::CrossFallLeft => "On the {cross_fall} cross-fall with its left side high",
        StepId::CrossFallRight => "On the {cross_fall} cross-fall with its right side high",
        StepId::BackOut => "Backing out empty at {height}",
        StepId::EmptyCornerLeft => "In the left-hand bend empty at {speed_empty} on {radius}",
        StepId::EmptyCornerRight => "In the right-hand bend empty at {speed_empty} on {radius}",
        StepId::TakeUp
        | StepId::TiltBack
        | StepId::Travel
        | StepId::RaisedBack
        | StepId::RaisedUpright
        | StepId::RaisedForward => return None,
    })
}

pub(super) fn step(id: StepId) -> StepWords {
    const RAISED: &str = "Raised to {height}, {mast}";
    const CARRIED: &str = "Carried at {height}, {mast}";
    const EMPTY: &str = "Empty, forks at {height}, {mast}";
    let (name, pose) = match id {
        StepId::TakeUp => ("Take up", "Taken up at {height}, {mast}"),
        StepId::TiltBack => ("Tilt back", "Taken up at {height}, {mast}"),
        StepId::Travel => ("Carry low", CARRIED),
        StepId::Brake => ("Brake", CARRIED),
        StepId::CornerLeft => ("Bend to the left", CARRIED),
        StepId::CornerRight => ("Bend to the right", CARRIED),
        StepId::RampUp => ("Up the ramp", CARRIED),
        StepId::RampDown => ("Down the ramp", CARRIED),
        StepId::CrossFallLeft => ("Cross-fall, left high", CARRIED),
        StepId::CrossFallRight => ("Cross-fall, right high", CARRIED),
        StepId::RaisedBack => ("Raised, mast back", RAISED),
        StepId::RaisedUpright => ("Raised, upright", RAISED),
        StepId::RaisedForward => ("Raised, to place", RAISED),
        StepId::BackOut => ("Back out, empty", EMPTY),
        StepId::EmptyCornerLeft => ("Bend to the left, empty", EMPTY),
        StepId::EmptyCornerRight => ("Bend to the right, empty", EMPTY),
    };
    StepWords { name, pose }
}
