//! Where the book is kept: in the browser's database, in its plain storage, or nowhere.

use super::indexed::Indexed;
use super::kept::{self, Damaged};
use super::local::Local;
use super::record::Key;
use super::settle::{Outside, Settled, Wished};
use super::shelf::Slot;

/// Why something was not kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Failure {
    /// No room.
    Full,
    /// Anything else, in the browser's words.
    Other(String),
}

impl Failure {
    /// By the name the browser gives it.
    pub fn of(name: &str, message: String) -> Self {
        match name {
            "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" => Self::Full,
            _ if message.is_empty() => Self::Other(name.to_owned()),
            _ => Self::Other(message),
        }
    }
}

/// What was read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Read {
    /// The count of all writes then.
    pub clock: u64,
    /// Names and texts; no text where there is none.
    pub texts: Vec<(String, Option<String>)>,
}

impl Read {
    /// The entries, and what cannot be read.
    pub fn entries(&self) -> Vec<Result<(Key, Slot), Damaged>> {
        let there = self.texts.iter().filter_map(|(name, text)| Some((name, text.as_ref()?)));
        there.map(|(name, text)| kept::read(name, text)).collect()
    }
}

/// The place.
#[derive(Debug)]
pub enum Place {
    Indexed(Indexed),
    Local(Local),
}

impl Place {
    /// The best there is. What the plain storage kept while there was no database comes along.
    pub async fn find() -> Option<Self> {
        match Indexed::open().await {
            Ok(indexed) => Some(Self::Indexed(indexed)),
            Err(_) => Local::open().map(Self::Local),
        }
    }

    /// The entries of these keys, or all.
    ///
    /// # Errors
    /// Where the browser fails.
    pub async fn read(&self, keys: Option<&[Key]>) -> Result<Read, Failure> {
        match self {
            Self::Indexed(indexed) => indexed.read(keys).await,
            Self::Local(local) => Ok(local.read(keys)),
        }
    }

    /// Writes changes, all or none.
    ///
    /// # Errors
    /// Where the browser fails.
    pub async fn write(&self, wishes: &[Wished], outside: &mut Outside<'_>) -> Result<Settled, Failure> {
        match self {
            Self::Indexed(indexed) => indexed.write(wishes, outside).await,
            Self::Local(local) => local.write(wishes, outside),
        }
    }
}
