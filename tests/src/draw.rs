//! Random documents are built from a row of numbers between 0 and 1, so that one generator serves the
//! property tests (which shrink towards 0) and the seeded, reproducible runs beside the engine.

use proptest::prelude::*;
use std::ops::Range;

/// How many numbers a document may take; beyond them the row starts again.
pub const DRAWS: usize = 240;

/// A row of draws, read from the left.
#[derive(Clone, Debug)]
pub struct Draws {
    row: Vec<f64>,
    next: usize,
}

impl Draws {
    /// Reads a row; an empty one reads as zeros.
    pub fn new(row: Vec<f64>) -> Self {
        Self { row, next: 0 }
    }

    /// A reproducible row: the same seed gives the same numbers on every machine.
    pub fn seeded(seed: u64) -> Self {
        Self::seeded_row(seed, DRAWS)
    }

    /// The same, as long as need be.
    pub fn seeded_row(seed: u64, length: usize) -> Self {
        let mut state = seed.wrapping_mul(0x9E37_79B9_7F4A_7C15);
        // SplitMix64 (public domain; Steele, Lea and Flood 2014): 53 bits make a number in [0, 1).
        let mut draw = || {
            state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
            let mut z = state;
            z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
            z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
            ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
        };
        Self::new((0..length).map(|_| draw()).collect())
    }

    /// Rows for a property test.
    pub fn any() -> impl Strategy<Value = Self> {
        prop::collection::vec(0.0..1.0, DRAWS).prop_map(Self::new)
    }

    /// The next number.
    pub fn unit(&mut self) -> f64 {
        let value = self.row.get(self.next % self.row.len().max(1)).copied().unwrap_or_default();
        self.next += 1;
        value
    }

    /// A number of a range.
    pub fn within(&mut self, range: Range<f64>) -> f64 {
        range.start + (range.end - range.start) * self.unit()
    }

    /// A whole number of a range.
    pub fn count(&mut self, range: Range<usize>) -> usize {
        range.start + (self.unit() * range.len() as f64) as usize
    }

    /// Yes, this often.
    pub fn chance(&mut self, part: f64) -> bool {
        self.unit() < part
    }

    /// One of several; `None` of none.
    pub fn one_of<T: Copy>(&mut self, list: &[T]) -> Option<T> {
        let at = (self.unit() * list.len() as f64) as usize;
        list.get(at).copied()
    }
}
