//! Worked cases from outside, each held against the core's own functions: regulations, textbooks,
//! training texts and closed forms. Not one of the answers is worked out again here: it is printed
//! beside its source, and the core has to arrive at it.
//!
//! Mark beside each source: *read* there or in a public re-statement, from *memory* (the arithmetic
//! checked), or *arithmetic* from stated inputs. Tolerance 0.5 % unless said to be exact; a printed
//! whole number that was cut off is compared with the floor.

mod balance;
mod bends;
mod capacity;
mod centres;
mod forks;
mod load;
mod platform;

use glam::DVec3;
use standfast_core::support::Support;
use standfast_core::units::{GRAVITY, Unit};

/// Printed figures are held to this.
const TOLERANCE: f64 = 0.005;

#[track_caller]
fn near(found: f64, printed: f64) {
    assert!((found - printed).abs() <= TOLERANCE * printed.abs(), "found {found}, printed {printed}");
}

#[track_caller]
fn exact(found: f64, printed: f64) {
    assert!((found - printed).abs() <= 1e-12 * printed.abs().max(1.0), "found {found}, printed {printed}");
}

fn lb(pounds: f64) -> f64 {
    Unit::Pound.to_document(pounds)
}

fn inches(inches: f64) -> f64 {
    Unit::Inch.to_document(inches)
}

fn feet(feet: f64) -> f64 {
    Unit::Foot.to_document(feet)
}

/// N as pounds-force.
fn lbf(newtons: f64) -> f64 {
    newtons / (GRAVITY * lb(1.0))
}

/// A truck's three points, m; on a pivot where its height is above zero.
fn support(wheelbase: f64, tread: f64, pivot: f64) -> Support {
    Support {
        left: DVec3::new(0.0, 0.5 * tread, 0.0),
        right: DVec3::new(0.0, -0.5 * tread, 0.0),
        steer: DVec3::new(-wheelbase, 0.0, pivot),
        pivoting: pivot > 0.0,
    }
}

/// Point masses: (kg, ahead of the front axle m, height m).
fn points(list: &[(f64, f64, f64)]) -> standfast_core::body::Bodies {
    let list: Vec<_> = list.iter().map(|&(kg, x, z)| (kg, DVec3::new(x, 0.0, z))).collect();
    standfast_core::body::Bodies::points(&list)
}
