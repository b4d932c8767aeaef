//! The load on the blades: why not, and the numbers behind it.

use super::Twice;
use standfast_core::forks::Fork;
use standfast_core::seat::{Event, Over};

/// The texts.
pub struct BladeWords {
    pub short_reach: Twice,
    pub off_blade: Twice,
    pub fork_over_moment: Twice,
    pub fork_over_mass: Twice,
    pub fork_worn: &'static str,
    pub extension_too_long: &'static str,
    pub topples: Twice,
    pub slides: Twice,
    pub ways_disagree: &'static str,
    pub too_heavy_hanging: &'static str,
    pub working: &'static str,
    pub working_intro: &'static str,
    pub hangs: &'static str,
    pub no_load: &'static str,
    pub edge: &'static str,
    pub margin: &'static str,
    pub margin_worst: &'static str,
    pub friction: &'static str,
    pub friction_of: &'static str,
    pub forks: &'static str,
    pub forks_intro: &'static str,
    pub part: &'static str,
    pub carries: &'static str,
    pub moment: &'static str,
    pub allowed: &'static str,
    pub not_stamped: &'static str,
    pub event: fn(Event) -> &'static str,
    /// In a sentence: over the edge of what.
    pub over: fn(Over) -> &'static str,
    pub fork: fn(Fork) -> &'static str,
    pub caution_not_stamped: &'static str,
    pub caution_underside: &'static str,
    pub caution_hanging: &'static str,
    pub caution_wear: &'static str,
}
