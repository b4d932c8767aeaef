//! Counts single tests by what cargo's test programs print.

/// Tests that passed and failed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// How many passed.
    pub passed: usize,
    /// How many failed.
    pub failed: usize,
}

impl Tally {
    /// Takes in one line of a test program's output. Only its closing line counts:
    /// `test result: ok. 5 passed; 0 failed; …`.
    pub fn read(&mut self, line: &str) {
        let Some(result) = line.trim_start().strip_prefix("test result: ") else { return };
        let Some((_, counts)) = result.split_once(". ") else { return };
        for count in counts.split(';') {
            match count.trim().split_once(' ') {
                Some((number, "passed")) => self.passed += number.parse().unwrap_or(0),
                Some((number, "failed")) => self.failed += number.parse().unwrap_or(0),
                _ => {}
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closing_lines_are_summed_and_others_ignored() {
        let mut tally = Tally::default();
        for line in [
            "running 3 tests",
            "test core::a ... ok",
            "test result: ok. 3 passed; 0 failed; 1 ignored; 0 measured; 2 filtered out; finished in 0.00s",
            "test result: FAILED. 10 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out; finished in 1.20s",
            "test result: strange",
            "it said: test result: ok. 9 passed;",
        ] {
            tally.read(line);
        }
        assert_eq!(tally, Tally { passed: 13, failed: 2 });
    }
}
