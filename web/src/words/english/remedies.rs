//! What would have to change, in English.

use crate::words::remedies::RemedyWords;
use standfast_core::document::Turned;

pub const REMEDIES: RemedyWords = RemedyWords {
    heading: "What would have to change",
    both: "{one}, and {other}",
    push_home: "Push the load {by} further home",
    push_home_assumed: "Push the load home against the heel",
    sideshift: "Sideshift the carriage to {to} {way}",
    shift: "Shift it {by} {way}",
    to_the_left: "to the left",
    to_the_right: "to the right",
    tilt_forward: "Tilt forward no more than {to} to place it",
    tilt_back: "Tilt back no more than {to} while it is raised",
    corner: "With the load, take bends at {to} or slower",
    corner_empty: "Without the load, take bends at {to} or slower",
    brake: "Brake no harder than {to} with the load",
    ramp_backwards: "Drive down the ramp backwards, load uphill",
    turn,
    spread: "Set the forks {to} apart or more",
    lower: "Raise it no higher than {to}",
    ramp: "Go where no ramp is steeper than {to}",
    cross_fall: "Go where the ground falls no more than {to} to a side",
    extensions_off: "Take the fork extensions off",
    new_forks: "Fit forks that are not worn",
    lighter: "Take some of the load off: {to} or less",
    attachment_off: "Take the attachment off, as the plate has it",
    battery: "Fit a battery of {to}, inside the plate\u{2019}s window",
    to_go: "then: go, within the plate",
    to_hold: "then: hold",
    needed: "Nothing here would make it go. It takes a truck whose plate allows {mass} at {centre}, raised to {height}.",
    settles: "Measure {figure} better",
    settles_then: "if it is as stated: go, within the plate",
};

fn turn(turned: Turned) -> &'static str {
    match turned {
        Turned::No => "Turn the load back as it was given",
        Turned::Left => "Turn the load a quarter to the left",
        Turned::Half => "Turn the load half round",
        Turned::Right => "Turn the load a quarter to the right",
    }
}
