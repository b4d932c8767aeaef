//! A finger on the glass: what it holds, how far it has come, and what is told of it.

use super::layout::Pane;
use super::moving::{Held, Manner};
use crate::drawing::Phase;
use crate::entries::Entries;
use std::rc::Rc;
use web_sys::Element;
use yew::prelude::*;

/// A finger that has not come so far is tapping, in pixels.
const TAP: f64 = 5.0;
/// A side is drawn to a neighbour's from so far, in pixels.
pub const REACH: f64 = 8.0;

/// What is told: entries on the way of a drag.
pub type Told = Vec<(Rc<Entries>, Phase)>;

/// What can be dragged: from how far it has come along the view's two directions, and a reach, m.
pub trait Draggable {
    /// What was entered before.
    fn start(&self) -> &Rc<Entries>;
    /// The entries with it moved by hand.
    fn by_hand(&self, by: (f64, f64), reach: f64) -> Entries;
}

impl Draggable for Held {
    fn start(&self) -> &Rc<Entries> {
        self.start()
    }

    fn by_hand(&self, by: (f64, f64), reach: f64) -> Entries {
        self.moved(by, Manner::Hand(reach))
    }
}

/// Something held by a pointer.
#[derive(Debug)]
pub struct Grab<H> {
    /// The pointer.
    pub pointer: i32,
    /// Where it was taken, in the window's pixels.
    pub from: (f64, f64),
    /// Sheet units in a pixel.
    pub unit: f64,
    /// The view it was taken in.
    pub pane: Pane,
    /// What is held.
    pub held: H,
    /// What was told last; nothing while it may still be a tap.
    pub last: Option<Rc<Entries>>,
}

impl<H: Draggable> Grab<H> {
    /// Told of a move: nothing where it changes nothing.
    pub fn moved(&mut self, at: (f64, f64)) -> Told {
        let (dx, dy) = (at.0 - self.from.0, at.1 - self.from.1);
        if self.last.is_none() && dx * dx + dy * dy < TAP * TAP {
            return Vec::new();
        }
        let mut told = Vec::new();
        let last = self.last.get_or_insert_with(|| {
            told.push((Rc::clone(self.held.start()), Phase::Begin));
            Rc::clone(self.held.start())
        });
        let by = self.pane.moved((dx * self.unit, dy * self.unit));
        let entries = self.held.by_hand(by, REACH * self.unit / self.pane.scale);
        if entries != **last {
            *last = Rc::new(entries);
            told.push((Rc::clone(last), Phase::Move));
        }
        told
    }

    /// Told of its end; nothing where it was a tap.
    pub fn ended(self) -> Told {
        self.last.map(|last| (last, Phase::End)).into_iter().collect()
    }
}

/// Where a pointer is, in the window's pixels.
pub fn at(event: &PointerEvent) -> (f64, f64) {
    (f64::from(event.client_x()), f64::from(event.client_y()))
}

/// Where a pointer is on a sheet so wide, and the sheet units in a pixel.
pub fn on_sheet(svg: &NodeRef, event: &PointerEvent, width: f64) -> Option<((f64, f64), f64)> {
    let rect = svg.cast::<Element>()?.get_bounding_client_rect();
    let unit = width / rect.width();
    let at = at(event);
    unit.is_finite().then(|| (((at.0 - rect.left()) * unit, (at.1 - rect.top()) * unit), unit))
}

/// Keeps a pointer's moves with the drawing. One that is already gone cannot be kept; then its moves
/// over the drawing do.
pub fn capture(svg: &NodeRef, event: &PointerEvent) {
    let _ = svg.cast::<Element>().map(|s| s.set_pointer_capture(event.pointer_id()));
}

#[cfg(test)]
mod tests {
    use super::super::layout::{Layout, Shown};
    use super::super::view::View;
    use super::*;

    /// Writes how far it has come, rounded to a tenth of a metre, as the note.
    struct Note(Rc<Entries>);

    impl Draggable for Note {
        fn start(&self) -> &Rc<Entries> {
            &self.0
        }
        fn by_hand(&self, by: (f64, f64), _: f64) -> Entries {
            Entries { note: format!("{:.1} {:.1}", by.0, by.1), ..Entries::clone(&self.0) }
        }
    }

    fn grab(view: View) -> Grab<Note> {
        let pane = Layout::fit(Shown::One(view), ([0.0; 3], [1.0; 3]), (380.0, 400.0)).panes[0];
        let held = Note(Rc::new(Entries::blank()));
        Grab { pointer: 1, from: (100.0, 100.0), unit: 2.0, pane, held, last: None }
    }

    #[test]
    fn a_tap_tells_nothing_and_a_drag_begins_once() {
        let mut tap = grab(View::Side);
        assert_eq!(tap.moved((103.0, 102.0)), []);
        assert_eq!(tap.ended(), []);
        let mut drag = grab(View::Side);
        let far = drag.pane.scale * 0.1 / drag.unit;
        let phases = |told: Told| told.into_iter().map(|t| t.1).collect::<Vec<_>>();
        assert_eq!(phases(drag.moved((100.0 + far, 100.0))), [Phase::Begin, Phase::Move]);
        assert_eq!(phases(drag.moved((100.1 + far, 100.0))), [], "nothing has changed");
        let told = drag.moved((100.0 + 3.0 * far, 100.0 - far));
        assert_eq!((told.len(), told[0].0.note.as_str()), (1, "0.3 0.1"));
        assert_eq!(phases(drag.ended()), [Phase::End]);
    }

    #[test]
    fn to_the_left_in_the_drivers_view_is_left() {
        let mut drag = grab(View::Front);
        let far = drag.pane.scale * 0.2 / drag.unit;
        let told = drag.moved((100.0 - far, 100.0 + far));
        assert_eq!(told[1].0.note, "0.2 -0.2");
    }
}
