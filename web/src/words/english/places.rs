//! The places of the page, in English.

use crate::words::places::PlaceWords;

pub(super) const PLACES: PlaceWords =
    PlaceWords { heading: "Places", check: "The check", trucks: "Trucks", loads: "Loads", log: "Log" };
