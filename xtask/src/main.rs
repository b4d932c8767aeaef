//! Builds, serves and tests the page.
fn main() {}
