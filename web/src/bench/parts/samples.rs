//! Loads to test with.

use super::adding::{self, Kind};
use super::moving::enter;
use super::sizes::ways;
use crate::entries::{Entries, PartEntry};
use standfast_core::document::{Facing, GivenAs, Shape};
use standfast_core::material::Material;
use standfast_core::place::{Field, Place};
use standfast_core::units::System;

/// A part with its figures, m or kg.
fn part(entries: &mut Entries, shape: Shape, facing: Facing, figures: &[(Field, f64)]) -> usize {
    let (entry, sizes) = adding::part(Kind::Shape(shape), None);
    let k = entries.add_part(PartEntry { facing, material: Some(Material::Steel), ..entry });
    for (field, value) in sizes.iter().chain(figures) {
        enter(entries, Place::in_row(*field, k), *value, System::Metric);
    }
    k
}

/// Nothing but the way it is given.
pub fn empty() -> Entries {
    Entries { given_as: GivenAs::Parts, ..Entries::blank() }
}

/// A pallet, a box on it, a cylinder on the box, and a cut-out of the box.
pub fn stack() -> Entries {
    let mut e = empty();
    let (l, w, h, d) = (Field::PartLength, Field::PartWidth, Field::PartHeight, Field::PartDiameter);
    let (a, s, u) = (Field::PartAhead, Field::PartLeft, Field::PartAbove);
    part(&mut e, Shape::Box, Facing::Up, &[(l, 1.2), (w, 0.8), (h, 0.144), (a, 0.0), (s, 0.0), (u, 0.0)]);
    part(&mut e, Shape::Box, Facing::Up, &[(l, 0.6), (w, 0.6), (h, 0.5), (a, 0.2), (s, 0.0), (u, 0.144)]);
    part(&mut e, Shape::Cylinder, Facing::Up, &[(d, 0.4), (l, 0.3), (a, 0.3), (s, 0.0), (u, 0.644)]);
    let cut = part(&mut e, Shape::Box, Facing::Up, &[(l, 0.2), (w, 0.2), (h, 0.2), (a, 0.3), (s, 0.0), (u, 0.2)]);
    e.parts[cut].cut_from = Some(1);
    e.parts[cut].material = None;
    e
}

/// One part of every shape in every way that it can point.
pub fn every_way() -> Vec<(Shape, Facing, Entries)> {
    let mut found = Vec::new();
    for shape in Shape::ALL {
        let all = ways(shape);
        for facing in if all.is_empty() { &[Facing::Up] } else { all } {
            let mut e = empty();
            part(&mut e, shape, *facing, &[(Field::PartAhead, 0.1), (Field::PartLeft, -0.2), (Field::PartAbove, 0.3)]);
            found.push((shape, *facing, e));
        }
    }
    found
}

/// So many parts of all shapes, in rows on each other.
pub fn many(count: u32) -> Entries {
    let mut e = empty();
    for k in 0..count {
        let shape = Shape::ALL[k as usize % Shape::ALL.len()];
        let facing = ways(shape).first().copied().unwrap_or_default();
        let at = |n: u32| 0.65 * f64::from(n);
        let place = [(Field::PartAhead, at(k % 4)), (Field::PartLeft, at(k / 4 % 5)), (Field::PartAbove, at(k / 20))];
        part(&mut e, shape, facing, &place);
    }
    e
}
