//! What the ground and the driving do, at the top of the side view: a slope as it rises, a pull as an arrow.

use super::super::driven::{pull, slopes};
use super::super::frame::Frame;
use super::super::marks;
use super::super::sheet::{Anchor, Sheet};
use super::super::tag::SMALL;

/// Left edge and foot of the first sign; each further one stands below.
const PLACE: (f64, f64) = (240.0, 24.0);
/// Width of a sign.
const WIDE: f64 = 44.0;
/// From one sign to the next.
const NEXT: f64 = 26.0;

/// The signs. A cross-fall and a bend are not seen from the side: they are only written.
pub(super) fn signs(f: &Frame, sheet: &mut Sheet) {
    let (left, mut foot) = PLACE;
    for slope in slopes(f.step, f.labels) {
        if let Some(rise) = slope.rise {
            // Rising to the right, the way the truck faces, or to the left.
            let (low, high) = if rise > 0.0 { (left, left + WIDE) } else { (left + WIDE, left) };
            sheet.shape("d-slope", marks::closed(&[(low, foot), (high, foot), (high, foot - 14.0)]));
        }
        sheet.words("d-figure", (left + WIDE + 8.0, foot), Anchor::Start, SMALL, &slope.words);
        foot += NEXT;
    }
    if let Some(pull) = pull(f.step, f.system, f.labels) {
        let d = (pull.ahead.signum(), 0.0);
        if pull.ahead.abs() > pull.left.abs() {
            let (from, tip) = if d.0 > 0.0 { (left, left + WIDE) } else { (left + WIDE, left) };
            let y = foot - 6.0;
            let shaft = marks::line((from, y), (tip - 8.0 * d.0, y));
            sheet.named("d-press", shaft + &marks::head((tip, y), d, 1.3), "pull-side");
        }
        sheet.words("d-figure", (left + WIDE + 8.0, foot), Anchor::Start, SMALL, &pull.words);
    }
}
