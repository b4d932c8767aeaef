//! Load stability of counterbalanced fork-lift trucks: statics, capacity plate, verdict.
//!
//! An estimate for planning and teaching. The capacity plate, the truck's operating instructions,
//! the manufacturer, a competent person and the local rules come first.
//!
//! # Conventions
//!
//! - Inside: m, kg, s, rad, N, `f64`. A [document] holds m, kg, degrees and km/h. Slopes are
//!   tangents: 4 % is 0.04.
//! - Frame: origin on the ground midway between the two front wheel contacts; **x** forward, **y**
//!   left, **z** up; right-handed.
//! - Mast tilt: 0 is forks level, **back is negative, forward positive**: a positive rotation about +y.
//! - Grade: positive facing uphill. Cross-fall: positive with the left side the higher.
//! - Acceleration is the truck's own: braking while going forward is ax < 0, a left-hand bend is ay > 0.
//! - One field `w` (m/s^2) pulls on every kilogram: gravity on the slope less the acceleration.
//! - A tipping line runs counter-clockwise about the truck as seen from above; with its unit vector
//!   u, a body's restoring moment is `m (r - p0) . (u x w)`, positive while it holds the truck down.
//!
//! # Flow
//!
//! [document] (as entered) -> [validate] (all problems at once) -> [scenario] (complete, in range)
//! -> [report::assess] -> [report::Report] (codes and numbers; a page puts them into words).

pub mod balance;
pub mod bearing;
pub mod body;
pub mod book;
pub mod capacity;
pub mod checklist;
pub mod closure;
pub mod composite;
pub mod corner;
pub mod covering;
pub mod day;
pub mod document;
pub mod doubt;
pub mod example;
pub mod field;
pub mod forks;
pub mod found;
pub mod friction;
pub mod gain;
pub mod known;
pub mod limit;
pub mod material;
pub mod number;
pub mod pallet;
pub mod picture;
pub mod place;
pub mod plate;
pub mod platform;
pub mod polygon;
pub mod problem;
pub mod region;
pub mod remedy;
pub mod report;
pub mod request;
pub mod rules;
pub mod scalar;
pub mod scenario;
pub mod scene;
#[cfg(feature = "schema")]
pub mod schema;
pub mod seat;
pub mod solid;
pub mod stance;
pub mod statics;
pub mod step;
pub mod support;
pub mod table;
pub mod traced;
pub mod units;
pub mod validate;
pub mod verdict;
pub mod weighed;
pub mod wheels;
pub mod whole;
