//! Keeping the book in the browser, entry by entry.

pub mod record;
pub mod shelf;
