//! What is looked at before a lift, from rules and common practice, each with its source.
//!
//! The answers are a person's own: they go with the check into its record and onto paper.

use crate::rules::Mark;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The answers that were given; what nobody answered is not here.
pub type Answers = BTreeMap<Item, Answer>;

/// What was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// In order.
    Yes,
    /// Not in order.
    No,
    /// This truck has no such thing.
    NotThere,
}

/// What was found not to be in order. That a truck has none of what no truck may be without is not in
/// order either.
///
/// ```
/// use standfast_core::checklist::{Answer, Answers, Item, not_in_order};
/// let seen = [(Item::Brakes, Answer::No), (Item::Backrest, Answer::NotThere), (Item::Way, Answer::Yes)];
/// assert_eq!(not_in_order(&Answers::from(seen)), [Item::Brakes]);
/// ```
pub fn not_in_order(answers: &Answers) -> Vec<Item> {
    let wrong = |item: Item| match answers.get(&item) {
        Some(Answer::No) => true,
        Some(Answer::NotThere) => !item.may_lack(),
        Some(Answer::Yes) | None => false,
    };
    Item::ALL.iter().copied().filter(|item| wrong(*item)).collect()
}

macro_rules! items {
    ($($(#[$doc:meta])* $name:ident $source:literal $mark:ident $may_lack:literal;)*) => {
        /// One thing to look at.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[serde(rename_all = "snake_case")]
        pub enum Item { $($(#[$doc])* $name,)* }

        impl Item {
            /// All, in the order they are looked at.
            pub const ALL: &'static [Self] = &[$(Self::$name),*];

            /// Where it comes from, and how sure that is.
            pub const fn source(self) -> (&'static str, Mark) {
                match self { $(Self::$name => ($source, Mark::$mark),)* }
            }

            /// Whether a truck may be without it.
            pub const fn may_lack(self) -> bool {
                match self { $(Self::$name => $may_lack,)* }
            }
        }
    };
}

items! {
    /// Examined for this shift, and nothing found that keeps it out of service.
    Examined "29 CFR 1910.178 (q)(7)" Memory false;
    /// The capacity plate is in its place and legible.
    PlateLegible "29 CFR 1910.178 (a)(6)" Read false;
    /// It is the plate of this truck as it stands: attachment, mast, tyres.
    PlateMatches "29 CFR 1910.178 (a)(4), (a)(5)" Read false;
    /// The battery's restraint is latched.
    BatteryHeld "29 CFR 1910.178 (g)(5)" Memory true;
    /// Both forks are locked in their notches.
    ForksLocked "common practice" CommonPractice false;
    /// They stand evenly about the middle, as far apart as the load lets them.
    ForksEven "common practice" CommonPractice false;
    /// No crack, no bend, heel not worn to its limit.
    ForksSound "ISO 5057" Read false;
    /// An attachment is locked, its hoses whole.
    AttachmentHeld "common practice" CommonPractice true;
    /// A load backrest where the load could fall back.
    Backrest "29 CFR 1910.178 (e)(2)" Memory true;
    /// Tyres whole, and at their pressure where they hold air.
    Tyres "common practice" CommonPractice false;
    /// Mast, chains and hoses whole, nothing leaks.
    Mast "common practice" CommonPractice false;
    /// Brakes and steering work.
    Brakes "common practice" CommonPractice false;
    /// The load is stable and held together.
    LoadHeld "29 CFR 1910.178 (o)(1)" Read false;
    /// The way and the room above it were looked at.
    Way "common practice" CommonPractice false;
}
