//! The shapes, the straightened picture, the common centre and the weighing, each against an outside
//! reference: general-purpose libraries, or statics and brute force written here apart from the core.
//!
//! Random but reproducible; each test says the worst difference it saw (`--nocapture`).

mod composites;
mod outlines;
mod pictures;
mod ranges;
mod solids;
mod weighings;

use standfast_tests::draw::Draws;

/// Rows of draws long enough for any case here.
fn seeds(cases: u64) -> impl Iterator<Item = Draws> {
    (0..cases).map(|seed| Draws::seeded_row(seed, 400))
}

/// The worst of what a test saw.
#[derive(Default)]
struct Worst(f64);

impl Worst {
    /// A relative difference that must stay within `most`.
    #[track_caller]
    fn within(&mut self, difference: f64, most: f64, what: impl std::fmt::Debug) {
        assert!(difference <= most, "{difference:e} is more than {most:e}: {what:?}");
        self.0 = self.0.max(difference);
    }

    fn say(&self, what: &str) {
        eprintln!("{what}: worst difference {:.1e}", self.0);
    }
}
