//! The places of the page.

/// The texts.
#[derive(Debug)]
pub struct PlaceWords {
    pub heading: &'static str,
    pub check: &'static str,
    pub trucks: &'static str,
    pub loads: &'static str,
    pub log: &'static str,
}
