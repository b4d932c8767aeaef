//! How far everything could go, and what the margin hangs on.

use super::Count;
use standfast_core::limit::Limit;

/// The texts.
pub struct LimitWords {
    pub gains: &'static str,
    pub gains_intro: &'static str,
    /// What governs: standing as it is about a line, or a slope that is asked.
    pub check_stands: &'static str,
    pub check_test: &'static str,
    pub gains_help: &'static str,
    pub gains_none: &'static str,
    pub gains_all: Count,
    pub gains_fewer: &'static str,
    /// A part of what the worst takes off, and one that rounds to nothing.
    pub part: &'static str,
    pub part_small: &'static str,
    pub taken: &'static str,
    pub capacity: &'static str,
    pub capacity_about: &'static str,
    pub capacity_note: &'static str,
    pub capacity_no_plate: &'static str,
    pub capacity_not_issued: &'static str,
    pub capacity_too_high: &'static str,
    pub capacity_stale: &'static str,
    pub capacity_numbers: &'static str,
    pub axis_centre: &'static str,
    pub axis_mass: &'static str,
    pub plate_to: &'static str,
    pub model_at: &'static str,
    pub this_load: &'static str,
    pub may_stand: &'static str,
    pub may_stand_ahead: &'static str,
    pub may_stand_left: &'static str,
    pub may_stand_right: &'static str,
    pub may_stand_nowhere: &'static str,
    pub limits: &'static str,
    pub limits_intro: &'static str,
    pub limits_none: &'static str,
    pub figure: &'static str,
    pub now: &'static str,
    pub whole: &'static str,
    pub step: &'static str,
    /// What a limit is of.
    pub name: fn(Limit) -> &'static str,
    /// A greatest, and a least.
    pub up_to: &'static str,
    pub down_to: &'static str,
    /// It passes only from some value on.
    pub from: &'static str,
    pub nowhere: &'static str,
    pub no_end: &'static str,
    pub not_in_move: &'static str,
    pub not_here: &'static str,
    pub to_the_other: &'static str,
    pub too_far: &'static str,
    pub by_plate: &'static str,
    pub by_blades: &'static str,
    pub by_seat: &'static str,
    pub by_step: &'static str,
    pub by_slope: &'static str,
    pub by_rule: &'static str,
}
