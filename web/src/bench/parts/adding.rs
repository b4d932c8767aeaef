//! A part put in, copied, taken out, made a cut-out.

use super::moving::{PLACES, enter, within};
use super::sizes::{Measure, like, measure};
use super::view::Body;
use crate::entries::{Entries, PartEntry};
use crate::words::words;
use standfast_core::document::{Facing, GivenAs, Shape, WeightKnown};
use standfast_core::material::Material;
use standfast_core::pallet::Pallet;
use standfast_core::place::{Field, Place};
use standfast_core::scalar::Scalar;
use standfast_core::units::System;
use standfast_core::validate::MOST_PARTS;

/// What can be put in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// A shape, its weight still to be given.
    Shape(Shape),
    /// A pallet.
    Pallet(&'static Pallet),
    /// A piece of squared timber under the load.
    Bearer,
}

/// A size to begin with, m.
const USUAL: [f64; 3] = [0.6, 0.6, 0.4];
/// A bearer to begin with, m: square, and as long as it lies across.
const BEARER: [f64; 3] = [0.1, 1.0, 0.1];

/// Sides nearer than this touch and do not overlap, m.
const TOUCH: f64 = 1e-6;

/// A new part and its sizes, m or kg; not larger to begin with than what it is put on.
pub fn part(kind: Kind, on: Option<&Body>) -> (PartEntry, Vec<(Field, f64)>) {
    let [l, w, h] = [0, 1, 2].map(|k| match on {
        Some(body) if k < 2 => USUAL[k].min(body.size(k)),
        _ => USUAL[k],
    });
    let d = l.min(w);
    let (length, width, height) = (Field::PartLength, Field::PartWidth, Field::PartHeight);
    let diameter = Field::PartDiameter;
    let boxed = |l, w, h| vec![(length, l), (width, w), (height, h)];
    match kind {
        Kind::Shape(shape) => {
            let entry = PartEntry { shape: Some(shape), ..PartEntry::default() };
            match shape {
                Shape::Box => (entry, boxed(l, w, h)),
                Shape::Wedge => (PartEntry { facing: Facing::Heel, ..entry }, boxed(l, w, h)),
                Shape::Cylinder | Shape::Cone => (entry, vec![(diameter, d), (length, h)]),
                Shape::Tube => (entry, vec![(diameter, d), (Field::PartBore, 0.75 * d), (length, h)]),
                Shape::Sphere | Shape::HalfSphere => (entry, vec![(diameter, d)]),
                Shape::Prism => {
                    let (a, b) = (0.5 * l, 0.5 * h);
                    let corners = [(0.0, 0.0), (l, 0.0), (l, b), (a, b), (a, h), (0.0, h)];
                    let outline = corners.map(|(x, y)| [Scalar::computed(x), Scalar::computed(y)]).to_vec();
                    (PartEntry { facing: Facing::Left, outline, ..entry }, vec![(length, w)])
                }
            }
        }
        Kind::Pallet(p) => {
            let name = words().parts.pallet_to_confirm.replace("{pallet}", (words().parts.pallet)(p.id));
            let entry = PartEntry {
                name,
                shape: Some(Shape::Box),
                weight_known: Some(WeightKnown::Estimate),
                ..PartEntry::default()
            };
            let mut figures = boxed(p.length, p.width, p.height);
            figures.push((Field::PartMass, p.mass.nominal));
            (entry, figures)
        }
        Kind::Bearer => {
            let name = words().parts.bearer.to_owned();
            let entry =
                PartEntry { name, shape: Some(Shape::Box), material: Some(Material::Softwood), ..PartEntry::default() };
            (entry, boxed(BEARER[0], BEARER[1], BEARER[2]))
        }
    }
}

/// How large it is in the three directions, from its own figures.
fn extents(entry: &PartEntry, figures: &[(Field, f64)]) -> [f64; 3] {
    let value = |field| figures.iter().find(|f| f.0 == field).map_or(0.0, |f| f.1);
    [0, 1, 2].map(|axis| match entry.shape.map(|s| measure(s, entry.facing, axis)) {
        Some(Measure::Figure(field)) => value(field),
        Some(Measure::Half(field)) => 0.5 * value(field),
        Some(Measure::Outline(k)) => {
            let along = || entry.outline.iter().map(|p| p[k].get());
            along().fold(f64::NEG_INFINITY, f64::max) - along().fold(f64::INFINITY, f64::min)
        }
        None => 0.0,
    })
}

/// What a new part is put on: what is selected, or for a cut-out what it is cut out of.
fn support<'a>(entries: &Entries, bodies: &'a [Body], selected: Option<usize>) -> Option<&'a Body> {
    let part = selected.map(|s| entries.parts.get(s).and_then(|p| p.cut_from).unwrap_or(s))?;
    bodies.iter().find(|b| b.part == part)
}

/// Puts a part in: over the middle of what is selected, on the highest that stands there; else beyond all that is there. Returns the
/// entries with it and its number; `None` where there are as many as there may be.
pub fn added(
    entries: &Entries,
    bodies: &[Body],
    selected: Option<usize>,
    kind: Kind,
    system: System,
) -> Option<(Entries, usize)> {
    if entries.parts.len() >= MOST_PARTS {
        return None;
    }
    let on = support(entries, bodies, selected);
    let (entry, figures) = part(kind, on);
    let size = extents(&entry, &figures);
    let solid = || bodies.iter().filter(|b| !b.cut);
    let place = match on {
        Some(on) => {
            let (ahead, left) = (on.middle(0) - 0.5 * size[0], on.middle(1));
            // What already stands there is in the way: it lands on that.
            let apart = |b: &&Body| {
                b.lo[0] >= ahead + size[0] - TOUCH
                    || b.hi[0] <= ahead + TOUCH
                    || b.lo[1] >= left + 0.5 * size[1] - TOUCH
                    || b.hi[1] <= left - 0.5 * size[1] + TOUCH
            };
            let top = solid().filter(|b| !apart(b)).map(|b| b.hi[2]).fold(on.hi[2], f64::max);
            [ahead, left, top]
        }
        None => {
            let far = solid().map(|b| b.hi[0]).fold(f64::NEG_INFINITY, f64::max);
            let low = solid().map(|b| b.lo[2]).fold(f64::INFINITY, f64::min);
            if far.is_finite() && low.is_finite() { [far, 0.0, low] } else { [0.0; 3] }
        }
    };
    let mut entries = Entries { given_as: GivenAs::Parts, ..entries.clone() };
    let k = entries.add_part(entry);
    for (field, value) in figures.into_iter().chain((0..3).map(|a| (PLACES[a], within(PLACES[a], place[a])))) {
        enter(&mut entries, Place::in_row(field, k), value, system);
    }
    Some((entries, k))
}

/// Copies a part with what is cut out of it, to its left. Returns the entries and the copy's number.
pub fn copied(entries: &Entries, bodies: &[Body], part: usize, system: System) -> Option<(Entries, usize)> {
    let cuts: Vec<usize> = cuts_of(entries, part);
    if entries.parts.len() + 1 + cuts.len() > MOST_PARTS {
        return None;
    }
    let aside = bodies.iter().find(|b| b.part == part).map(|b| b.size(1));
    let mut entries = entries.clone();
    let copy = entries.copy_part(part)?;
    // The copies of what is cut out of it follow it in the same order.
    for (k, of) in std::iter::once(part).chain(cuts).enumerate() {
        if let (Some(body), Some(aside)) = (bodies.iter().find(|b| b.part == of), aside) {
            let left = within(Field::PartLeft, body.place(1) + aside);
            enter(&mut entries, Place::in_row(Field::PartLeft, copy + k), left, system);
        }
    }
    Some((entries, copy))
}

/// Another shape, about as large: figures that it needs and that were never typed are taken from the
/// box it had.
pub fn reshaped(entries: &Entries, bodies: &[Body], k: usize, shape: Shape, system: System) -> Entries {
    let mut entries = entries.clone();
    let body = bodies.iter().find(|b| b.part == k);
    let (usual, figures) = part(Kind::Shape(shape), body);
    let Some(entry) = entries.parts.get_mut(k) else { return entries };
    entry.shape = Some(shape);
    entry.facing = like(shape, entry.facing);
    if entry.outline.is_empty() {
        entry.outline = usual.outline;
    }
    let facing = entry.facing;
    for (field, mut value) in figures {
        let place = Place::in_row(field, k);
        if let Some(body) = body {
            let size = |axis: &usize| measure(shape, facing, *axis) == Measure::Figure(field);
            value = (0..3).filter(size).map(|axis| body.size(axis)).reduce(f64::min).unwrap_or(value);
        }
        if entries.shown(place, system).is_empty() {
            enter(&mut entries, place, within(field, value), system);
        }
    }
    entries
}

/// Makes a part a cut-out of another, or solid again. One that does not lie in its host's box yet is
/// put to the middle of it.
pub fn cut_out(entries: &Entries, bodies: &[Body], k: usize, host: Option<usize>, system: System) -> Entries {
    let mut entries = entries.clone();
    let Some(entry) = entries.parts.get_mut(k) else { return entries };
    entry.cut_from = host;
    let body = |k: usize| bodies.iter().find(|b| b.part == k);
    if let (Some(cut), Some(host)) = (body(k), host.and_then(body)) {
        let inside = (0..3).all(|a| cut.lo[a] >= host.lo[a] - TOUCH && cut.hi[a] <= host.hi[a] + TOUCH);
        for axis in (0..3).filter(|_| !inside) {
            let value = cut.place(axis) + host.middle(axis) - cut.middle(axis);
            enter(&mut entries, Place::in_row(PLACES[axis], k), within(PLACES[axis], value), system);
        }
    }
    entries
}

/// What is cut out of a part.
pub fn cuts_of(entries: &Entries, part: usize) -> Vec<usize> {
    let parts = entries.parts.iter().enumerate();
    parts.filter(|(_, p)| p.cut_from == Some(part)).map(|(k, _)| k).collect()
}

/// What a part may be cut out of: solid parts other than itself, while nothing is cut out of it.
pub fn hosts(entries: &Entries, part: usize) -> Vec<usize> {
    if !cuts_of(entries, part).is_empty() {
        return Vec::new();
    }
    let parts = entries.parts.iter().enumerate();
    parts.filter(|(k, p)| *k != part && p.cut_from.is_none()).map(|(k, _)| k).collect()
}

#[cfg(test)]
mod tests {
    use super::super::samples;
    use super::*;
    use crate::answer::Answer;
    use standfast_core::pallet;
    use standfast_core::problem::Rule;

    fn bodies(entries: &Entries) -> Vec<Body> {
        Answer::of(entries).load.shapes.iter().filter_map(Body::of).collect()
    }

    #[test]
    fn every_kind_lands_over_what_is_selected_and_is_drawn_at_once() {
        let pallets = pallet::ALL.iter().map(Kind::Pallet);
        for kind in Shape::ALL.map(Kind::Shape).into_iter().chain(pallets).chain([Kind::Bearer]) {
            let start = samples::stack();
            let before = bodies(&start);
            let (after, k) = added(&start, &before, Some(1), kind, System::Metric).expect("room");
            let after = bodies(&after);
            let body = after.iter().find(|b| b.part == k).unwrap_or_else(|| panic!("{kind:?} is not drawn"));
            assert!((body.lo[2] - before[2].hi[2]).abs() < 1e-6, "{kind:?}: on the cylinder that stands there");
            assert!((body.middle(0) - before[1].middle(0)).abs() < 1e-4, "{kind:?}: {body:?}");
            assert!((body.middle(1) - before[1].middle(1)).abs() < 1e-6, "{kind:?}");
        }
    }

    #[test]
    fn the_first_stands_at_the_point_measured_from_and_the_next_beyond() {
        let kind = Kind::Shape(Shape::Box);
        let (one, k) = added(&samples::empty(), &[], None, kind, System::Us).expect("room");
        let b = bodies(&one);
        assert_eq!((k, b[0].lo[0], b[0].lo[2]), (0, 0.0, 0.0));
        let (two, k) = added(&one, &b, None, kind, System::Us).expect("room");
        let c = bodies(&two);
        assert!((c[k].lo[0] - b[0].hi[0]).abs() < 1e-5);
    }

    /// No weight is made up: a shape's is asked for, a pallet's is an estimate that says so.
    #[test]
    fn weights_are_asked_for_or_marked() {
        let (entries, k) = added(&samples::empty(), &[], None, Kind::Shape(Shape::Cone), System::Metric).expect("room");
        let problems = Answer::of(&entries).load.problems;
        assert!(problems.iter().any(|p| p.rule == Rule::WeightOrMaterial && p.place.row == k), "{problems:?}");
        let kind = Kind::Pallet(&pallet::ALL[0]);
        let (entries, k) = added(&samples::empty(), &[], None, kind, System::Metric).expect("room");
        assert_eq!(entries.parts[k].weight_known, Some(WeightKnown::Estimate));
        assert!(entries.parts[k].name.contains("confirm"));
        assert_eq!(Answer::of(&entries).load.problems, []);
    }

    #[test]
    fn a_host_takes_its_cut_outs_along_when_copied_and_removed() {
        let start = samples::stack();
        let (twice, copy) = copied(&start, &bodies(&start), 1, System::Metric).expect("room");
        assert_eq!(twice.parts.len(), 6);
        assert_eq!(cuts_of(&twice, copy).len(), 1);
        let b = bodies(&twice);
        let body = |k: usize| b.iter().find(|x| x.part == k).expect("drawn");
        assert!((body(copy).lo[1] - body(1).hi[1]).abs() < 1e-6, "beside it");
        assert_eq!(Answer::of(&twice).load.problems, []);
        let mut less = start;
        less.remove_part(1);
        assert_eq!(less.parts.len(), 2);
        assert!(less.parts.iter().all(|p| p.cut_from.is_none()));
        assert!((bodies(&less)[1].size(2) - 0.3).abs() < 1e-9, "the cylinder keeps its figures");
    }

    #[test]
    fn another_shape_is_drawn_at_once_and_typed_figures_stay() {
        let start = samples::stack();
        for shape in Shape::ALL {
            let after = reshaped(&start, &bodies(&start), 1, shape, System::Metric);
            assert!(bodies(&after).iter().any(|b| b.part == 1), "{shape:?}: {:?}", Answer::of(&after).load.problems);
            let back = reshaped(&after, &bodies(&after), 1, Shape::Box, System::Metric);
            assert_eq!(bodies(&back)[1], bodies(&start)[1], "{shape:?}");
        }
    }

    #[test]
    fn only_a_solid_part_can_be_a_host() {
        let start = samples::stack();
        assert_eq!(hosts(&start, 3), [0, 1, 2]);
        assert_eq!(hosts(&start, 1), Vec::<usize>::new(), "something is cut out of it");
        assert_eq!(hosts(&start, 2), [0, 1]);
    }

    #[test]
    fn a_cut_out_is_put_into_its_host_and_comes_back_out_solid() {
        let mut small = samples::stack();
        small.remove_part(3);
        enter(&mut small, Place::in_row(Field::PartDiameter, 2), 0.2, System::Metric);
        let cut = cut_out(&small, &bodies(&small), 2, Some(1), System::Metric);
        assert_eq!(Answer::of(&cut).load.problems, []);
        let b = bodies(&cut);
        assert!(b[2].cut && (0..3).all(|a| (b[2].middle(a) - b[1].middle(a)).abs() < 1e-6), "{b:?}");
        let again = cut_out(&cut, &b, 2, Some(1), System::Metric);
        assert_eq!(again, cut, "what lies inside stays where it is");
        assert_eq!(cut_out(&cut, &b, 2, None, System::Metric).parts[2].cut_from, None);
    }

    #[test]
    fn there_is_an_end_to_it() {
        let full = samples::many(MOST_PARTS as u32);
        assert!(added(&full, &[], None, Kind::Bearer, System::Metric).is_none());
        assert!(copied(&full, &[], 0, System::Metric).is_none());
    }
}
