//! How far everything could go, and what the margin hangs on, in English.

use crate::words::Count;
use crate::words::limits::LimitWords;
use standfast_core::limit::Limit;

pub(super) const LIMITS: LimitWords = LimitWords {
    gains: "What to measure better",
    gains_intro: "At the worst of what is uncertain, this uses most: {check}.",
    check_stands: "{step}, {line}",
    check_test: "{step}, {line}, on the slope that is asked",
    gains_help: "How much of what that worst takes off would be won back if this one figure were known exactly. \
                 Tap a figure to go to it.",
    gains_none: "Nothing that can be measured is uncertain here.",
    gains_all: Count { one: "Show all", many: "Show all {n}" },
    gains_fewer: "Show the first five",
    part: "{part}",
    part_small: "under 1\u{a0}%",
    taken: "taken: {range}",
    limits: "How far it could go",
    limits_intro: "Each figure by itself, all others as entered, at the worst of what is uncertain. What may be entered, \
                   rounded to the cautious side. The grip of the tyres, the brakes and what the drive can pull are \
                   not looked at.",
    limits_none: "No one of these figures alone makes the whole move go.",
    figure: "Figure",
    now: "As entered",
    whole: "Whole move",
    step: "This step: {step}",
    name,
    up_to: "up to {value}",
    down_to: "down to {value}",
    from: "only from {value} on",
    nowhere: "at none",
    no_end: "no limit of this kind up to there",
    not_in_move: "not in this move",
    not_here: "plays no part",
    to_the_other: "{value} to the other side",
    too_far: "as entered it is too far",
    by_plate: "the plate",
    by_blades: "the forks",
    by_seat: "the load on the forks: {step}",
    by_step: "{step}: tipping {way}",
    by_slope: "{step}: tipping {way}, on the slope asked",
    by_rule: "the rule for ramps: load uphill",
};

fn name(what: Limit) -> &'static str {
    match what {
        Limit::LoadMass => "Load weight",
        Limit::LoadCentre => "Load centre, heel gap included",
        Limit::OffsetLeft => "Load\u{2019}s centre off the middle, left",
        Limit::OffsetRight => "Load\u{2019}s centre off the middle, right",
        Limit::LiftHeight => "Fork height for putting down",
        Limit::TiltBack => "Tilt back while raised",
        Limit::TiltForward => "Tilt forward to place it",
        Limit::RampUp => "Ramp up",
        Limit::RampDown => "Ramp down, as it is driven",
        Limit::CrossFallLeft => "Cross-fall, left side high",
        Limit::CrossFallRight => "Cross-fall, right side high",
        Limit::CornerSpeed => "Speed in the bend, with the load",
        Limit::CornerSpeedEmpty => "Speed in the bend, empty",
        Limit::Braking => "Braking with the load",
        Limit::BatteryLeast => "Battery, lightest",
        Limit::BatteryMost => "Battery, heaviest",
    }
}
