//! The part of the picture under a finger, larger and beside it.

use super::glass::{Glass, Pixel, Spot};
use yew::prelude::*;

/// Its radius, sheet units.
const RADIUS: f64 = 66.0;
/// From the finger to its edge.
const OFF: f64 = 44.0;
/// Kept free at the sheet's edges.
const EDGE: f64 = 4.0;
/// How many times larger than the sheet it shows.
const TIMES: f64 = 2.5;
/// It shows a pixel at least so large, sheet units.
const LEAST: f64 = 1.5;

/// Where it stands: above the finger, beside it where there is no room above.
fn place(finger: Spot, sheet: (f64, f64)) -> Spot {
    let away = OFF + RADIUS;
    let inside = |v: f64, size: f64| v.clamp(RADIUS + EDGE, (size - RADIUS - EDGE).max(RADIUS + EDGE));
    let above = finger.1 - away;
    if above >= RADIUS + EDGE {
        return (inside(finger.0, sheet.0), above);
    }
    let x = if finger.0 > 0.5 * sheet.0 { finger.0 - away } else { finger.0 + away };
    (inside(x, sheet.0), inside(finger.1, sheet.1))
}

/// The lens: a place of the picture in the middle of the loupe.
struct Lens {
    pixel: Pixel,
    centre: Spot,
    scale: f64,
}

impl Lens {
    fn transform(&self) -> String {
        let (x, y) = (self.centre.0 - self.scale * self.pixel.0, self.centre.1 - self.scale * self.pixel.1);
        format!("translate({x:.2} {y:.2}) scale({:.4})", self.scale)
    }
}

/// The loupe; `ground` is the id of the picture, `lines` what is drawn on it, in pixels.
pub fn loupe(glass: &Glass, (pixel, finger): (Pixel, Spot), ground: &'static str, lines: &str) -> Html {
    let scale = (TIMES * glass.scale).max(LEAST);
    let lens = Lens { pixel, centre: place(finger, glass.sheet), scale };
    let ((x, y), r) = (lens.centre, RADIUS);
    let transform = lens.transform();
    html! {
        <g class="tr-loupe" data-testid="trace-loupe" aria-hidden="true">
            <clipPath id="tr-loupe-edge"><circle cx={format!("{x:.1}")} cy={format!("{y:.1}")} r={r.to_string()} /></clipPath>
            <g clip-path="url(#tr-loupe-edge)">
                <circle class="tr-paper" cx={format!("{x:.1}")} cy={format!("{y:.1}")} r={r.to_string()} />
                <@{"use"} href={format!("#{ground}")} transform={transform.clone()} />
                <path class="tr-loupe-halo" d={lines.to_owned()} {transform} />
                <path class="tr-loupe-lines" d={lines.to_owned()} transform={lens.transform()} />
            </g>
            <circle class="tr-loupe-rim" cx={format!("{x:.1}")} cy={format!("{y:.1}")} r={r.to_string()} />
            <path class="tr-cross-halo" d={cross(lens.centre)} />
            <path class="tr-cross" d={cross(lens.centre)} />
        </g>
    }
}

/// A cross with its middle left open.
pub fn cross((x, y): Spot) -> String {
    format!("M{:.1} {y:.1}h14M{:.1} {y:.1}h14M{x:.1} {:.1}v14M{x:.1} {:.1}v14", x - 18.0, x + 4.0, y - 18.0, y + 4.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn never_under_the_finger_and_always_on_the_sheet() {
        let sheet = (540.0, 480.0);
        for x in (0..=540).step_by(20) {
            for y in (0..=480).step_by(20) {
                let finger = (f64::from(x), f64::from(y));
                let at = place(finger, sheet);
                let (dx, dy) = (at.0 - finger.0, at.1 - finger.1);
                assert!((dx * dx + dy * dy).sqrt() >= RADIUS + 0.5 * OFF, "{finger:?} {at:?}");
                assert!(at.0 >= RADIUS && at.0 <= sheet.0 - RADIUS && at.1 >= RADIUS && at.1 <= sheet.1 - RADIUS);
            }
        }
    }

    #[test]
    fn the_place_meant_is_in_its_middle() {
        let lens = Lens { pixel: (120.0, 80.0), centre: (300.0, 200.0), scale: 2.0 };
        assert_eq!(lens.transform(), "translate(60.00 40.00) scale(2.0000)");
    }
}
