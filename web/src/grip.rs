//! A load or a centre of gravity taken hold of in a drawing: what moving it writes into the entries.

use crate::answer::Answer;
use crate::drawing::Handle;
use crate::entries::{Entries, unit_of};
use standfast_core::document::{CentreKnown, Turned};
use standfast_core::number;
use standfast_core::place::{Field, Place};
use standfast_core::step::StepId;
use standfast_core::units::{System, Unit};
use std::rc::Rc;

/// One figure that a movement changes.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Axis {
    place: Place,
    /// Its value when taken hold of, m.
    start: f64,
    min: f64,
    max: f64,
}

/// What was taken hold of, and where everything stood then.
#[derive(Clone, Debug, PartialEq)]
pub struct Grip {
    start: Rc<Entries>,
    centre: bool,
    /// How the load is turned: its centre is entered in the load's own directions.
    turned: Turned,
    /// Ahead, left, up.
    axes: [Axis; 3],
}

/// How far a load must move in a direction to count as moved that way: a quarter of its main movement.
const STRAY: f64 = 0.25;

impl Grip {
    /// Takes hold in a step; `None` where there is nothing to move.
    pub fn of(handle: Handle, step: StepId, answer: &Answer, entries: &Rc<Entries>) -> Option<Self> {
        let document = &answer.document;
        let axis = |field: Field, least: f64, most: f64| {
            let (place, row) = (Place::from(field), field.row());
            let start = answer.value(place)?;
            Some(Axis { place, start, min: least.max(row.min), max: most.min(row.max) })
        };
        let free = f64::INFINITY;
        let axes = match handle {
            Handle::Load => {
                let height = match step {
                    StepId::TakeUp | StepId::TiltBack => Field::TakeUp,
                    StepId::RaisedBack | StepId::RaisedUpright | StepId::RaisedForward | StepId::BackOut => {
                        Field::LiftHeight
                    }
                    // All that is driven is driven with the forks low.
                    _ => Field::TravelLift,
                };
                let mast = document.truck.mast.lift_m?;
                [axis(Field::HeelGap, 0.0, free)?, axis(Field::Offset, -free, free)?, axis(height, 0.0, mast)?]
            }
            Handle::Centre => {
                let load = &document.load;
                let half = 0.5 * load.width_m?;
                [
                    axis(Field::LoadCgFromHeel, 0.0, load.length_m?)?,
                    axis(Field::LoadCgLeft, -half, half)?,
                    axis(Field::LoadCgAbove, 0.0, load.height_m?)?,
                ]
            }
        };
        Some(Self { start: Rc::clone(entries), centre: handle == Handle::Centre, turned: document.load.turned, axes })
    }

    /// What was entered when it was taken hold of.
    pub fn start(&self) -> &Rc<Entries> {
        &self.start
    }

    /// The entries with it moved so far (ahead, left, up; m) from where it was taken hold of.
    pub fn moved(&self, by: (f64, f64, f64), system: System) -> Entries {
        let mut entries = Entries::clone(&self.start);
        let by = if self.centre { own(by, self.turned) } else { [by.0, by.1, by.2] };
        let most = by.iter().fold(0.0, |a: f64, b| a.max(b.abs()));
        let step = |place| steps_of(unit_of(place, system).unwrap_or(Unit::Millimetre));
        let stays = |axis: &Axis, by: f64| by.abs() < 0.5 * step(axis.place).1;
        if self.axes.iter().zip(by).all(|(axis, by)| stays(axis, by)) {
            return entries;
        }
        for (axis, by) in self.axes.iter().zip(by) {
            // A load raised by an unsteady hand stays where it is on the forks.
            if self.centre || !(stays(axis, by) || by.abs() < STRAY * most) {
                let (unit, step) = step(axis.place);
                let value = snap(axis.start + by, axis.min, axis.max, step);
                entries.enter(axis.place, &number::show(unit.from_document(value), 4), system);
            }
        }
        if self.centre {
            entries.centre_known = Some(CentreKnown::Mark);
        }
        entries
    }
}

/// A movement over the forks in the directions of a load that is turned on them.
fn own((ahead, left, up): (f64, f64, f64), turned: Turned) -> [f64; 3] {
    match turned {
        Turned::No => [ahead, left, up],
        Turned::Left => [left, -ahead, up],
        Turned::Half => [-ahead, -left, up],
        Turned::Right => [-left, ahead, up],
    }
}

/// The unit that a length is written in, and what it is rounded to, m: 1 mm or a sixteenth of an inch.
fn steps_of(unit: Unit) -> (Unit, f64) {
    let step = if unit == Unit::Inch { 1.0 / 16.0 } else { 1.0 };
    (unit, unit.to_document(step))
}

/// The multiple of `step` nearest to `value` that lies between `min` and `max`.
fn snap(value: f64, min: f64, max: f64, step: f64) -> f64 {
    let nearest = (value.clamp(min, max) / step).round();
    let (least, most) = ((min / step - 1e-6).ceil(), (max / step + 1e-6).floor());
    nearest.min(most).max(least) * step
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::example;

    fn grip(handle: Handle, step: StepId) -> Grip {
        let entries = Rc::new(Entries::from_document(&example::document(example::THREE_WHEEL)));
        Grip::of(handle, step, &Answer::of(&entries), &entries).expect("an example can be taken hold of")
    }

    fn shown(entries: &Entries, field: Field) -> String {
        entries.shown(field.into(), System::Metric)
    }

    #[test]
    fn raising_the_load_sets_the_height_of_the_step_shown() {
        for (step, field, shows) in [
            (StepId::TakeUp, Field::TakeUp, "350"),
            (StepId::Travel, Field::TravelLift, "400"),
            (StepId::RaisedForward, Field::LiftHeight, "3450"),
        ] {
            let moved = grip(Handle::Load, step).moved((0.02, 0.0, 0.250_2), System::Metric);
            assert_eq!(shown(&moved, field), shows);
            assert_eq!(shown(&moved, Field::HeelGap), "20", "an unsteady hand");
        }
    }

    #[test]
    fn it_stops_where_the_truck_and_the_table_end() {
        let up = grip(Handle::Load, StepId::RaisedUpright).moved((0.0, 0.0, 9.0), System::Metric);
        assert_eq!(shown(&up, Field::LiftHeight), "4700");
        let home = grip(Handle::Load, StepId::RaisedUpright).moved((-1.0, 0.0, 0.0), System::Metric);
        assert_eq!(shown(&home, Field::HeelGap), "0");
        let low = grip(Handle::Load, StepId::TakeUp).moved((0.0, 0.0, -3.0), System::Metric);
        assert_eq!(shown(&low, Field::TakeUp), "0");
    }

    #[test]
    fn moving_the_centre_makes_it_a_mark_inside_the_load() {
        let entries = {
            let mut e = Entries::from_document(&example::document(example::FOUR_WHEEL));
            e.centre_known = Some(CentreKnown::Middle);
            Rc::new(e)
        };
        let grip = Grip::of(Handle::Centre, StepId::Travel, &Answer::of(&entries), &entries).expect("a centre");
        let moved = grip.moved((0.1, 0.0, 9.0), System::Metric);
        assert_eq!(moved.centre_known, Some(CentreKnown::Mark));
        let fields = [Field::LoadCgFromHeel, Field::LoadCgLeft, Field::LoadCgAbove];
        assert_eq!(fields.map(|f| shown(&moved, f)), ["700", "0", "1300"]);
        assert_eq!(Answer::of(&moved).problems, []);
    }

    /// What is dragged ahead on the forks moves ahead on the forks, however the load is turned.
    #[test]
    fn the_centre_of_a_turned_load_goes_where_it_is_dragged() {
        for turned in [Turned::No, Turned::Left, Turned::Half, Turned::Right] {
            let entries = {
                let mut e = Entries::from_document(&example::document(example::THREE_WHEEL));
                e.turned = turned;
                Rc::new(e)
            };
            let answer = Answer::of(&entries);
            let grip = Grip::of(Handle::Centre, StepId::TakeUp, &answer, &entries).expect("a centre");
            let after = Answer::of(&grip.moved((0.05, -0.02, 0.0), System::Metric));
            let at = |a: &Answer| a.step(StepId::TakeUp).and_then(|s| s.load_centre).expect("a load");
            let (was, is) = (at(&answer), at(&after));
            assert!((is.x.get() - was.x.get() - 0.05).abs() < 1e-3, "{turned:?}: {was:?} {is:?}");
            assert!((is.y.get() - was.y.get() + 0.02).abs() < 1e-3, "{turned:?}: {was:?} {is:?}");
        }
    }

    #[test]
    fn a_touch_that_does_not_move_changes_nothing() {
        let grip = grip(Handle::Centre, StepId::Travel);
        assert_eq!(&grip.moved((0.0, 0.0, 0.000_4), System::Metric), grip.start().as_ref());
    }

    #[test]
    fn inches_come_in_sixteenths() {
        let moved = grip(Handle::Load, StepId::RaisedUpright).moved((0.0, 0.3, 0.0), System::Us);
        // 300 mm is 11.811 in: 11 13/16.
        assert_eq!(moved.shown(Field::Offset.into(), System::Us), "11.8125");
        assert_eq!(Answer::of(&moved).problems, []);
    }

    #[test]
    fn rounding_never_leaves_the_range() {
        for (value, min, max, step) in
            [(0.9526, 0.0, 0.9525, 0.001), (-1.0, 0.0004, 2.0, 0.001), (0.2, 0.0, 1.0, 0.0015875)]
        {
            let snapped = snap(value, min, max, step);
            assert!((min..=max).contains(&snapped), "{value}: {snapped}");
        }
    }
}
