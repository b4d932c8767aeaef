//! Shared pieces of the checks from outside.

pub mod books;
pub mod draw;
pub mod engine;
pub mod outline;
pub mod parts;
pub mod scales;
pub mod sensible;
pub mod truth;
pub mod turns;
pub mod walk;
