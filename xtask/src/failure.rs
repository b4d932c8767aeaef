//! What went wrong, in words for the person at the keyboard.

use std::fmt;
use std::path::Path;

/// A reason to stop. It names what was tried, why it failed and, where there is one, the way out.
#[derive(Debug, PartialEq, Eq)]
pub struct Failure(String);

/// The result of a step.
pub type Outcome<T> = Result<T, Failure>;

impl Failure {
    /// A failure with this sentence.
    pub fn new(words: impl Into<String>) -> Self {
        Self(words.into())
    }

    /// A failure to `verb` the file or folder at `path`.
    pub fn at(verb: &str, path: &Path, cause: impl fmt::Display) -> Self {
        Self(format!("cannot {verb} {}: {cause}", path.display()))
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Failure {}
