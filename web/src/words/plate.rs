//! The plate's own words: what it was issued for, and what is otherwise.

use super::Twice;
use standfast_core::document::Tyres;
use standfast_core::plate::Tilted;

/// The texts.
pub struct PlateWords {
    /// For bare forks, with `{what}` fitted.
    pub bare_forks: &'static str,
    /// For an attachment, with bare forks; and where it does not say which.
    pub with_attachment: &'static str,
    pub with_some_attachment: &'static str,
    pub other_attachment: Twice,
    pub other_mast: &'static str,
    pub other_tyres: &'static str,
    pub tyres_unknown: &'static str,
    pub other_tilt: fn(Tilted) -> &'static str,
    /// An attachment by name and weight, by weight, and without either.
    pub named: &'static str,
    pub weighing: &'static str,
    pub some: &'static str,
    /// Tyres in a sentence.
    pub tyres: fn(Tyres) -> &'static str,
    /// On a button.
    pub tyres_button: fn(Tyres) -> &'static str,
    pub tyres_unsaid: &'static str,
    /// What is folded away.
    pub more: &'static str,
    pub sheet: &'static str,
    /// A day that is none.
    pub not_a_day: &'static str,
    pub text_too_long: &'static str,
    /// What the plate does not say: `{list}` of these.
    pub unsaid: &'static str,
    pub unsaid_mast: &'static str,
    pub unsaid_tyres: &'static str,
    pub unsaid_attachment: &'static str,
}
