//! What would have to change.

use standfast_core::document::Turned;

/// The texts.
pub struct RemedyWords {
    pub heading: &'static str,
    pub both: &'static str,
    pub push_home: &'static str,
    pub push_home_assumed: &'static str,
    pub sideshift: &'static str,
    pub shift: &'static str,
    pub to_the_left: &'static str,
    pub to_the_right: &'static str,
    pub tilt_forward: &'static str,
    pub tilt_back: &'static str,
    pub corner: &'static str,
    pub corner_empty: &'static str,
    pub brake: &'static str,
    pub ramp_backwards: &'static str,
    pub turn: fn(Turned) -> &'static str,
    pub spread: &'static str,
    pub lower: &'static str,
    pub ramp: &'static str,
    pub cross_fall: &'static str,
    pub extensions_off: &'static str,
    pub new_forks: &'static str,
    pub lighter: &'static str,
    pub attachment_off: &'static str,
    pub battery: &'static str,
    pub to_go: &'static str,
    pub to_hold: &'static str,
    pub needed: &'static str,
    pub settles: &'static str,
    pub settles_then: &'static str,
}
