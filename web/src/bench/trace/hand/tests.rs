use super::super::points::{Ring, dot};
use super::*;
use crate::state::{Action, State};
use standfast_core::document::GivenAs;
use yew::prelude::Reducible;

const SHEET: (f64, f64) = (400.0, 300.0);
const PICTURE: (f64, f64) = (1600.0, 1200.0);
const OUTLINE: Task = Task::Outline { hole: false };

/// A page with a sheet, without the page.
struct Page {
    state: Rc<State>,
    hand: Hand,
    look: Look,
    task: Task,
    chosen: Option<At>,
    magnified: Option<(Pixel, Spot)>,
    snap: bool,
}

impl Page {
    fn new(task: Task) -> Self {
        let trace = TraceEntry { picture: Some(dot(PICTURE)), ..TraceEntry::default() };
        let entries = Entries { given_as: GivenAs::Trace, trace: Some(trace), ..Entries::blank() };
        let state = Rc::new(State::with(entries));
        Self { state, hand: Hand::default(), look: Look::default(), task, chosen: None, magnified: None, snap: false }
    }

    fn stand(&self) -> Stand {
        let glass = Glass::of(SHEET, PICTURE, self.look);
        Stand { entries: Rc::clone(&self.state.entries), glass, task: self.task, snap: self.snap, slide: false }
    }

    fn hear(&mut self, told: Vec<Told>) {
        for told in told {
            match told {
                Told::Set(e) => self.state = Rc::clone(&self.state).reduce(Action::Set(e)),
                Told::Draw(e, phase) => self.state = Rc::clone(&self.state).reduce(Action::Draw(e, phase)),
                Told::Choose(at) => self.chosen = at,
                Told::Look(look) => self.look = look,
                Told::Magnify(m) => self.magnified = m,
            }
        }
    }

    fn press(&mut self, finger: i32, spot: Spot) {
        let told = self.hand.press(&self.stand(), finger, spot);
        self.hear(told);
    }

    fn go(&mut self, finger: i32, spot: Spot) {
        let told = self.hand.go(&self.stand(), finger, spot);
        self.hear(told);
    }

    fn lift(&mut self, finger: i32, spot: Spot) {
        let told = self.hand.lift(&self.stand(), finger, spot);
        self.hear(told);
    }

    fn tap(&mut self, spot: Spot) {
        self.press(1, spot);
        self.lift(1, spot);
    }

    fn trace(&self) -> &TraceEntry {
        self.state.entries.trace.as_ref().expect("a tracing")
    }

    fn undo(&mut self) {
        self.state = Rc::clone(&self.state).reduce(Action::Undo);
    }
}

fn outlined() -> Page {
    let mut page = Page::new(OUTLINE);
    for spot in [(50.0, 250.0), (350.0, 250.0), (350.0, 50.0), (50.0, 50.0), (50.0, 250.0)] {
        page.tap(spot);
    }
    page
}

#[test]
fn taps_make_an_outline_and_each_is_one_step_back() {
    let mut page = outlined();
    assert_eq!((page.trace().outline.len(), page.trace().open.len()), (4, 0));
    assert_eq!(pixel(&page.trace().outline[1]), (1400.0, 1000.0));
    page.undo();
    assert_eq!((page.trace().outline.len(), page.trace().open.len()), (0, 4), "open again");
    page.undo();
    assert_eq!(page.trace().open.len(), 3);
}

#[test]
fn a_new_point_is_where_the_finger_lifts_and_shown_larger_on_the_way() {
    let mut page = Page::new(Task::Scale);
    page.press(1, (100.0, 100.0));
    assert_eq!(page.magnified, Some(((400.0, 400.0), (100.0, 100.0))));
    assert_eq!(page.trace().scale.len(), 0);
    page.go(1, (120.0, 90.0));
    page.lift(1, (120.0, 90.0));
    assert_eq!(page.magnified, None);
    assert_eq!(page.trace().scale, [dot((480.0, 360.0))]);
    assert_eq!(page.chosen, Some(At { ring: Ring::Scale, point: 0 }));
    page.press(1, (390.0, 290.0));
    page.go(1, (900.0, 900.0));
    page.lift(1, (900.0, 900.0));
    assert_eq!(pixel(&page.trace().scale[1]), PICTURE, "no further than the picture");
}

#[test]
fn a_drag_moves_a_point_in_one_step() {
    let mut page = outlined();
    let before = page.trace().clone();
    page.press(1, (352.0, 251.0));
    page.go(1, (355.0, 252.0));
    assert_eq!(*page.trace(), before, "still a tap");
    page.go(1, (372.0, 231.0));
    page.go(1, (362.0, 261.0));
    page.lift(1, (362.0, 261.0));
    assert_eq!(pixel(&page.trace().outline[1]), (1440.0, 1040.0), "it keeps its place under the finger");
    assert!(!page.state.is_dragging());
    page.undo();
    assert_eq!(*page.trace(), before);
}

#[test]
fn a_point_is_put_in_on_an_edge_and_dragged_on_in_one_step() {
    let mut page = outlined();
    let before = page.trace().clone();
    page.press(1, (200.0, 255.0));
    page.go(1, (200.0, 215.0));
    page.lift(1, (200.0, 215.0));
    assert_eq!(page.trace().outline.len(), 5);
    assert_eq!(pixel(&page.trace().outline[1]), (800.0, 840.0));
    page.undo();
    assert_eq!(*page.trace(), before);
}

#[test]
fn two_fingers_look_closer_and_take_back_what_one_began() {
    let mut page = outlined();
    let before = page.trace().clone();
    page.press(1, (350.0, 250.0));
    page.go(1, (380.0, 250.0));
    assert_ne!(*page.trace(), before);
    page.press(2, (300.0, 250.0));
    assert_eq!(*page.trace(), before);
    page.go(1, (400.0, 250.0));
    page.go(2, (200.0, 250.0));
    assert!((page.look.zoom - 200.0 / 80.0).abs() < 1e-9, "{:?}", page.look);
    page.lift(1, (400.0, 250.0));
    page.go(2, (100.0, 100.0));
    page.lift(2, (100.0, 100.0));
    assert_eq!((page.trace(), page.magnified), (&before, None));
    assert!(!page.state.is_dragging());
    let mut page = Page::new(OUTLINE);
    page.press(1, (100.0, 100.0));
    page.press(2, (200.0, 100.0));
    page.lift(1, (100.0, 100.0));
    page.lift(2, (200.0, 100.0));
    assert_eq!(page.trace().open.len(), 0, "no tap of two fingers");
}

#[test]
fn where_nothing_can_be_put_one_finger_slides_the_picture() {
    let mut page = outlined();
    page.look.zoom = 2.0;
    let pixel_then = page.stand().glass.pixel((200.0, 100.0));
    page.press(1, (200.0, 100.0));
    page.go(1, (170.0, 110.0));
    page.lift(1, (170.0, 110.0));
    let spot = page.stand().glass.spot(pixel_then);
    assert!((spot.0 - 170.0).abs() < 1e-9 && (spot.1 - 110.0).abs() < 1e-9);
    assert_eq!(page.trace().outline.len(), 4);
}

#[test]
fn a_finger_lost_leaves_nothing_behind() {
    let mut page = outlined();
    let before = page.trace().clone();
    page.press(1, (350.0, 250.0));
    page.go(1, (380.0, 250.0));
    let told = page.hand.lost(1);
    page.hear(told);
    assert_eq!(*page.trace(), before);
    page.go(1, (10.0, 10.0));
    page.lift(1, (10.0, 10.0));
    assert_eq!(*page.trace(), before);
}

#[test]
fn on_squared_paper_points_settle_on_half_squares() {
    let mut page = outlined();
    page.snap = true;
    page.press(1, (350.0, 250.0));
    page.go(1, (363.0, 250.0));
    page.lift(1, (363.0, 250.0));
    assert_eq!(pixel(&page.trace().outline[1]), (1450.0, 1000.0));
}
