//! Where an odd-shaped load is put together: each bench takes the place of the drawings.

pub mod parts;
pub mod trace;
