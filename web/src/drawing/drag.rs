//! From a finger on the glass, or an arrow key, to metres in the truck's frame.

use super::projection::Metres;
use super::sheet::Axes;
use super::{Handle, Moved, Phase, View};
use standfast_core::units::{System, Unit};

/// A handle being held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grab {
    /// In which view.
    pub view: View,
    /// Which handle.
    pub handle: Handle,
    /// The pointer that holds it.
    pub pointer: i32,
    /// Where it was taken, in the window's pixels.
    pub from: (f64, f64),
    /// Where it was last seen.
    pub last: (f64, f64),
    /// Metres in a pixel.
    pub metres_per_pixel: f64,
    /// The directions that a move is counted in.
    pub axes: Axes,
}

impl Grab {
    /// How far it has been moved when the pointer is at a place of the window.
    pub fn moved(&self, phase: Phase, at: (f64, f64)) -> Moved {
        let right = (at.0 - self.from.0) * self.metres_per_pixel;
        let up = (self.from.1 - at.1) * self.metres_per_pixel;
        let along = |(a, b): Metres| right * a + up * b;
        Moved { handle: self.handle, phase, by: self.view.by(along(self.axes.0), along(self.axes.1)) }
    }
}

impl View {
    /// A move along the view's two directions, in the truck's frame.
    pub(super) const fn by(self, first: f64, second: f64) -> (f64, f64, f64) {
        match self {
            Self::Side => (first, 0.0, second),
            Self::Plan => (first, second, 0.0),
        }
    }
}

/// How far an arrow key moves along the view's two directions, m: 10 mm or half an inch, with the
/// shift key 50 mm or two inches. `None` for another key.
pub fn key_move(key: &str, shift: bool, system: System) -> Option<Metres> {
    let far = match (system, shift) {
        (System::Metric, false) => Unit::Millimetre.to_document(10.0),
        (System::Metric, true) => Unit::Millimetre.to_document(50.0),
        (System::Us, false) => Unit::Inch.to_document(0.5),
        (System::Us, true) => Unit::Inch.to_document(2.0),
    };
    match key {
        "ArrowRight" => Some((far, 0.0)),
        "ArrowLeft" => Some((-far, 0.0)),
        "ArrowUp" => Some((0.0, far)),
        "ArrowDown" => Some((0.0, -far)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LEVEL: Axes = ((1.0, 0.0), (0.0, 1.0));

    fn grab(view: View, axes: Axes) -> Grab {
        let from = (100.0, 200.0);
        Grab { view, handle: Handle::Load, pointer: 1, from, last: from, metres_per_pixel: 0.01, axes }
    }

    fn near(a: (f64, f64, f64), b: (f64, f64, f64)) -> bool {
        (a.0 - b.0).abs() < 1e-12 && (a.1 - b.1).abs() < 1e-12 && (a.2 - b.2).abs() < 1e-12
    }

    #[test]
    fn up_on_the_glass_is_up_in_the_side_view_and_left_in_the_plan() {
        let at = (130.0, 150.0);
        let side = grab(View::Side, LEVEL).moved(Phase::Move, at);
        assert!(near(side.by, (0.3, 0.0, 0.5)), "{side:?}");
        let plan = grab(View::Plan, LEVEL).moved(Phase::End, at);
        assert!(near(plan.by, (0.3, 0.5, 0.0)), "{plan:?}");
        let begin = grab(View::Side, LEVEL).moved(Phase::Begin, (100.0, 200.0));
        assert!(near(begin.by, (0.0, 0.0, 0.0)));
    }

    /// On blades tilted back by 30 degrees, straight up is partly ahead: their up leans to the rear.
    #[test]
    fn a_tilted_load_counts_along_its_own_directions() {
        let (s, c) = (0.5, 0.75_f64.sqrt());
        let by = grab(View::Side, ((c, s), (-s, c))).moved(Phase::Move, (100.0, 100.0)).by;
        assert!(near(by, (s, 0.0, c)), "{by:?}");
    }

    #[test]
    fn keys_move_by_round_figures() {
        assert_eq!(key_move("ArrowUp", false, System::Metric), Some((0.0, 0.01)));
        assert_eq!(key_move("ArrowLeft", true, System::Metric), Some((-0.05, 0.0)));
        assert_eq!(key_move("ArrowRight", false, System::Us), Some((0.0127, 0.0)));
        assert_eq!(key_move("ArrowDown", true, System::Us), Some((0.0, -0.0508)));
        assert_eq!(key_move("Enter", false, System::Us), None);
    }
}
