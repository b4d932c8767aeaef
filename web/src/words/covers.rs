//! Which plate covers the truck as it stands, or what differs.

/// The texts; what a plate says of itself is with its own words.
#[derive(Debug)]
pub struct CoverWords {
    pub heading: &'static str,
    pub covered: &'static str,
    /// Another set-up's plate does.
    pub covered_by: &'static str,
    pub take_plate: &'static str,
    pub nearest: &'static str,
    pub no_plates: &'static str,
    pub front_end_not_said: &'static str,
    /// A figure of the plate's set-up and today's.
    pub figure: &'static str,
    pub sections: &'static str,
    pub extensions: &'static str,
    pub not_entered: &'static str,
    /// A set-up's own plate.
    pub not_for_it: &'static str,
}
