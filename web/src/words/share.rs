//! The link and its code.

/// The texts.
#[derive(Debug)]
pub struct ShareWords {
    pub share: &'static str,
    pub link: &'static str,
    pub heading: &'static str,
    pub intro: &'static str,
    pub holds: &'static str,
    pub left_out: &'static str,
    pub no_photo: &'static str,
    pub address: &'static str,
    pub address_help: &'static str,
    pub address_file: &'static str,
    pub the_link: &'static str,
    pub copy: &'static str,
    pub copied: &'static str,
    pub selected: &'static str,
    pub code: &'static str,
    pub code_help: &'static str,
    pub too_long: &'static str,
    pub no_code: &'static str,
    pub save: &'static str,
    pub found: &'static str,
    pub found_list: &'static str,
    pub found_yes: &'static str,
    pub found_no: &'static str,
    pub opened: &'static str,
    pub refused: &'static str,
    pub damaged: &'static str,
    pub large: &'static str,
    pub newer: &'static str,
}
