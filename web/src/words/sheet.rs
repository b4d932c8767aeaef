//! The type sheet held against itself.

use standfast_core::closure::Test;

/// The texts.
pub struct SheetWords {
    /// What does not fit together, `{found}` and `{expected}`.
    pub open: fn(Test) -> &'static str,
    /// What does, within `{allowed}`.
    pub closed: fn(Test) -> &'static str,
    /// One figure that alone explains it, and all that may be wrong.
    pub alone: &'static str,
    pub should_be: &'static str,
    pub several: &'static str,
    /// What is held against what, and what it takes.
    pub help: &'static str,
}
