use super::super::view::tests::{VIEWS, boxed};
use super::*;
use crate::answer::Answer;
use crate::bench::parts::samples;
use crate::state::{Action, State};
use yew::Reducible;

const HAND: Manner = Manner::Hand(0.03);

fn bodies(entries: &Entries) -> Rc<Vec<Body>> {
    Rc::new(Answer::of(entries).load.shapes.iter().filter_map(Body::of).collect())
}

fn held(entries: &Rc<Entries>, part: usize, view: View, hold: Hold) -> Held {
    Held::of(entries, &bodies(entries), (part, view, hold), System::Metric).expect("a drawn part")
}

fn figure(entries: &Entries, field: Field, row: usize) -> String {
    entries.shown(Place::in_row(field, row), System::Metric)
}

/// A pallet, a box on it, a cylinder on the box; a cut-out in the box.
fn stack() -> Rc<Entries> {
    Rc::new(samples::stack())
}

#[test]
fn a_part_is_moved_in_the_views_directions_alone_and_rounded() {
    let start = stack();
    let moved = held(&start, 2, View::Side, Hold::Whole).moved((0.1234, 0.3071), HAND);
    assert_eq!(figure(&moved, Field::PartAhead, 2), "420", "from 300 by 123.4: to a round figure");
    assert_eq!(figure(&moved, Field::PartLeft, 2), figure(&start, Field::PartLeft, 2));
    assert_eq!(figure(&moved, Field::PartAbove, 2), "950", "644 + 307.1");
    let front = held(&start, 2, View::Front, Hold::Whole).moved((0.2, 0.0), HAND);
    assert_eq!(figure(&front, Field::PartLeft, 2), "200");
    assert_eq!(figure(&front, Field::PartAhead, 2), "300");
}

#[test]
fn it_comes_to_rest_on_what_lies_under_it() {
    let start = stack();
    let lifted = Rc::new(held(&start, 2, View::Side, Hold::Whole).moved((0.0, 0.5), HAND));
    let down = held(&lifted, 2, View::Side, Hold::Whole).moved((0.0, -0.48), HAND);
    assert_eq!(figure(&down, Field::PartAbove, 2), "644", "on the box, which is no round figure");
    let unsteady = held(&start, 2, View::Side, Hold::Whole).moved((0.3, 0.01), HAND);
    assert_eq!(figure(&unsteady, Field::PartAbove, 2), "644", "an unsteady hand does not lift it");
}

#[test]
fn what_is_cut_out_goes_along_and_the_host_stays_with_its_cut_out() {
    let start = stack();
    let (before, after) = (&start, held(&start, 1, View::Plan, Hold::Whole).moved((0.25, 0.0), HAND));
    let moved = |e: &Entries, row| figure(e, Field::PartAhead, row).parse::<f64>().expect("a figure");
    let by = moved(&after, 1) - moved(before, 1);
    assert!(by > 200.0);
    assert!((moved(&after, 3) - moved(before, 3) - by).abs() < 1e-9);
    let cut = held(&start, 3, View::Plan, Hold::Whole).moved((0.0, 0.1), HAND);
    assert_eq!(figure(&cut, Field::PartLeft, 1), figure(before, Field::PartLeft, 1));
    assert_ne!(figure(&cut, Field::PartLeft, 3), figure(before, Field::PartLeft, 3));
}

#[test]
fn keys_move_by_exactly_one_step() {
    let start = stack();
    let moved = held(&start, 2, View::Side, Hold::Whole).moved((0.001, 0.0), Manner::Exact);
    assert_eq!(figure(&moved, Field::PartAhead, 2), "301");
    let moved = held(&start, 0, View::Side, Hold::Whole).moved((0.0, -0.01), Manner::Exact);
    assert_eq!(figure(&moved, Field::PartAbove, 0), "-10");
}

#[test]
fn no_figure_leaves_its_range() {
    let start = stack();
    for by in [(1e6, -1e6), (-1e6, 1e6)] {
        for hold in [Hold::Whole, Hold::Side(0, true), Hold::Side(0, false), Hold::Side(2, true)] {
            for part in 0..4 {
                let moved = held(&start, part, View::Side, hold).moved(by, HAND);
                let (document, unread) = moved.document();
                assert!(unread.is_empty());
                for place in Place::numbers_of(&document, Field::NUMBERS) {
                    if let Some(value) = place.get(&document) {
                        let row = place.field.row();
                        assert!(value >= row.min && value <= row.max, "{place}: {value}");
                    }
                }
            }
        }
    }
}

#[test]
fn a_side_is_moved_and_the_other_stays() {
    let start = stack();
    let before = bodies(&start);
    for (part, axis, view) in [(1, 0, View::Plan), (1, 1, View::Plan), (1, 2, View::Side), (2, 2, View::Side)] {
        for far in [true, false] {
            let by = if far { 0.2 } else { -0.2 };
            let by = if view.axes().0 == axis { (by, 0.0) } else { (0.0, by) };
            let moved = held(&start, part, view, Hold::Side(axis, far)).moved(by, Manner::Exact);
            let after = bodies(&moved);
            let (a, b) = (&before[part], &after[part]);
            let (stays, goes) = if far { ((a.lo, b.lo), (a.hi, b.hi)) } else { ((a.hi, b.hi), (a.lo, b.lo)) };
            assert!((stays.0[axis] - stays.1[axis]).abs() < 1e-6, "{part} {axis} {far}: {a:?} {b:?}");
            assert!(((goes.0[axis] - goes.1[axis]).abs() - 0.2).abs() < 1e-6, "{part} {axis} {far}: {a:?} {b:?}");
        }
    }
}

#[test]
fn every_shape_can_be_made_larger_in_every_direction() {
    for (shape, facing, entries) in samples::every_way() {
        let start = Rc::new(entries);
        let before = bodies(&start);
        for view in VIEWS {
            for axis in [view.axes().0, view.axes().1] {
                let by = if view.axes().0 == axis { (0.1, 0.0) } else { (0.0, 0.1) };
                let moved = held(&start, 0, view, Hold::Side(axis, true)).moved(by, Manner::Exact);
                let after = bodies(&moved);
                let grown = after[0].size(axis) - before[0].size(axis);
                assert!((grown - 0.1).abs() < 1e-6, "{shape:?} {facing:?} {axis}: {grown}");
                assert!((after[0].lo[axis] - before[0].lo[axis]).abs() < 1e-6, "{shape:?} {facing:?} {axis}");
            }
        }
    }
}

#[test]
fn a_dragged_side_comes_flush_with_a_neighbours() {
    let start = stack();
    let moved = held(&start, 1, View::Side, Hold::Side(0, true)).moved((0.405, 0.0), HAND);
    let after = bodies(&moved);
    assert!((after[1].hi[0] - after[0].hi[0]).abs() < 1e-6, "flush with the pallet's end: {after:?}");
}

#[test]
fn a_drag_is_one_step_to_undo() {
    let state = Rc::new(State::with(samples::stack()));
    let before = Rc::clone(&state.entries);
    let held = held(&state.entries, 2, View::Side, Hold::Whole);
    let send =
        |state: Rc<State>, by: f64, phase| state.reduce(Action::Draw(Rc::new(held.moved((by, 0.0), HAND)), phase));
    use crate::drawing::Phase;
    let mut state = state.reduce(Action::Draw(Rc::clone(held.start()), Phase::Begin));
    for by in [0.05, 0.1, 0.2, 0.3] {
        state = send(state, by, Phase::Move);
    }
    let state = send(state, 0.31, Phase::End);
    assert_ne!(state.entries, before);
    let back = state.reduce(Action::Undo);
    assert_eq!(back.entries, before);
    assert!(!back.history.can_undo());
}

#[test]
fn a_hundred_parts_are_moved_in_a_blink() {
    let entries = Rc::new(samples::many(100));
    let shapes: Vec<_> = (0..100).map(|k| boxed(k, false, [k as f64; 3], [k as f64 + 1.0; 3])).collect();
    let bodies = Rc::new(shapes.iter().filter_map(Body::of).collect());
    let held = Held::of(&entries, &bodies, (50, View::Side, Hold::Whole), System::Metric).expect("drawn");
    let begun = std::time::Instant::now();
    for k in 0..20 {
        assert_ne!(held.moved((0.1 + 0.01 * f64::from(k), 0.1), HAND), *entries);
    }
    assert!(begun.elapsed().as_millis() < 20 * 16, "{:?} for 20 moves", begun.elapsed());
}

/// The figures not moved keep their text and unit.
#[test]
fn in_inches_it_is_rounded_to_half_an_inch() {
    let start = stack();
    let held = Held::of(&start, &bodies(&start), (2, View::Side, Hold::Whole), System::Us).expect("drawn");
    let moved = held.moved((0.2, 0.0), HAND);
    assert_eq!(moved.shown(Place::in_row(Field::PartAhead, 2), System::Us), "19.5");
    assert_eq!(figure(&moved, Field::PartDiameter, 2), "400");
}
