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
    capacity: "Weight against load centre",
    capacity_about: "A diagram: the greatest weight over the load centre, for several heights of the forks. Thick steps: \
                     what the plate allows. Dashed: what the model would leave. A cross: this load and its range.",
    capacity_note: "The plate governs: thick steps, beyond them nothing is covered. Dashed: what the model would leave \
                    standing and carried low at the worst of what is uncertain, for this load\u{2019}s height of centre; \
                    above the plate it allows nothing. Shaded: what both leave at this height.",
    capacity_no_plate: "No plate is entered: the dashed curves allow nothing.",
    capacity_not_issued: "The plate was issued for another set-up than today\u{2019}s: nothing is covered.",
    capacity_too_high: "The plate does not reach this height: nothing is covered.",
    capacity_stale: "Being worked out anew",
    capacity_numbers: "The same in numbers",
    axis_centre: "load centre",
    axis_mass: "weight",
    plate_to: "plate to {height}",
    model_at: "model at {height}",
    this_load: "this load: {mass}",
    may_stand: "Where the load\u{2019}s centre may stand",
    may_stand_ahead: "For the truck alone, in this step: at most {by} ahead of the face that carries it",
    may_stand_left: "{by} left",
    may_stand_right: "{by} right",
    may_stand_nowhere: "Nowhere in this step.",
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
