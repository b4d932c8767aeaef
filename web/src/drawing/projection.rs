//! From metres in the truck's frame to units of the drawing's sheet, and back.

/// A point on the sheet: right, down.
pub type Spot = (f64, f64);
/// A point of a view, m: ahead and up in the side view, ahead and left in the plan.
pub type Metres = (f64, f64);

/// The least width or height that is drawn, m: what is smaller is drawn no larger.
const LEAST: f64 = 0.5;
/// The farthest a coordinate is believed, m; beyond it there is no truck to draw.
const FARTHEST: f64 = 1e4;

/// A rectangle of the view, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    lo: Metres,
    hi: Metres,
}

impl Window {
    /// The least rectangle with all these points; about the origin where there are none.
    pub fn of(points: impl IntoIterator<Item = Metres>) -> Self {
        let mut window: Option<Self> = None;
        for (a, b) in points {
            let p = (believed(a), believed(b));
            let w = window.get_or_insert(Self { lo: p, hi: p });
            w.lo = (w.lo.0.min(p.0), w.lo.1.min(p.1));
            w.hi = (w.hi.0.max(p.0), w.hi.1.max(p.1));
        }
        let mut w = window.unwrap_or(Self { lo: (0.0, 0.0), hi: (0.0, 0.0) });
        (w.lo.0, w.hi.0) = widened(w.lo.0, w.hi.0);
        (w.lo.1, w.hi.1) = widened(w.lo.1, w.hi.1);
        w
    }

    /// Width and height, m.
    pub fn size(&self) -> Metres {
        (self.hi.0 - self.lo.0, self.hi.1 - self.lo.1)
    }
}

fn believed(value: f64) -> f64 {
    if value.is_nan() { 0.0 } else { value.clamp(-FARTHEST, FARTHEST) }
}

fn widened(lo: f64, hi: f64) -> (f64, f64) {
    let lack = (LEAST - (hi - lo)).max(0.0);
    (lo - 0.5 * lack, hi + 0.5 * lack)
}

/// The part of the sheet that the view may fill.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Left edge.
    pub left: f64,
    /// Top edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Bottom edge.
    pub bottom: f64,
}

/// Where a view that does not fill its area's height stands in it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rest {
    /// On the bottom edge: a truck stands on its ground.
    Bottom,
    /// In the middle.
    Middle,
}

/// One scale for both directions; up on the sheet is up, or left, in the view.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Projection {
    /// Sheet units in a metre.
    pub scale: f64,
    origin: Spot,
}

impl Projection {
    /// Fits a window into an area, in the middle of its width.
    pub fn fit(window: &Window, area: &Area, rest: Rest) -> Self {
        let (width, height) = window.size();
        let (wide, high) = ((area.right - area.left).max(1.0), (area.bottom - area.top).max(1.0));
        let scale = (wide / width).min(high / height);
        let x = 0.5 * (area.left + area.right) - scale * 0.5 * (window.lo.0 + window.hi.0);
        let y = match rest {
            Rest::Bottom => area.bottom + scale * window.lo.1,
            Rest::Middle => 0.5 * (area.top + area.bottom) + scale * 0.5 * (window.lo.1 + window.hi.1),
        };
        Self { scale, origin: (x, y) }
    }

    /// Where a point of the view is on the sheet.
    pub fn spot(&self, (a, b): Metres) -> Spot {
        (self.origin.0 + self.scale * believed(a), self.origin.1 - self.scale * believed(b))
    }

    /// Which point of the view is there on the sheet.
    pub fn metres(&self, (x, y): Spot) -> Metres {
        ((x - self.origin.0) / self.scale, (self.origin.1 - y) / self.scale)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const AREA: Area = Area { left: 100.0, top: 50.0, right: 540.0, bottom: 370.0 };

    #[test]
    fn there_and_back() {
        let window = Window::of([(-1.8, 0.0), (1.9, 3.1)]);
        for rest in [Rest::Bottom, Rest::Middle] {
            let projection = Projection::fit(&window, &AREA, rest);
            for point in [(0.0, 0.0), (-1.8, 0.0), (1.9, 3.1), (0.123, 6.0), (-40.0, 2.0)] {
                let (a, b) = projection.metres(projection.spot(point));
                assert!((a - point.0).abs() < 1e-9 && (b - point.1).abs() < 1e-9, "{point:?}");
            }
        }
    }

    #[test]
    fn all_of_it_fits_with_one_scale_and_up_is_up() {
        for top in [2.2, 6.9] {
            let corners = [(-1.8, 0.0), (1.9, top)];
            let projection = Projection::fit(&Window::of(corners), &AREA, Rest::Bottom);
            for corner in corners {
                let (x, y) = projection.spot(corner);
                assert!((AREA.left - 1e-9..=AREA.right + 1e-9).contains(&x), "{x}");
                assert!((AREA.top - 1e-9..=AREA.bottom + 1e-9).contains(&y), "{y}");
            }
            assert!((projection.spot((0.0, 0.0)).1 - AREA.bottom).abs() < 1e-9, "it stands on the ground");
            let (o, a, b) = (projection.spot((0.0, 0.0)), projection.spot((1.0, 0.0)), projection.spot((0.0, 1.0)));
            assert!((a.0 - o.0 - projection.scale).abs() < 1e-9 && (o.1 - b.1 - projection.scale).abs() < 1e-9);
        }
    }

    #[test]
    fn nothing_a_point_and_nonsense_are_drawn_too() {
        let nonsense = [(f64::NAN, f64::INFINITY), (f64::NEG_INFINITY, 0.0)];
        let windows = [Window::of([]), Window::of([(3.0, 3.0)]), Window::of(nonsense)];
        for window in windows {
            let projection = Projection::fit(&window, &AREA, Rest::Middle);
            assert!(projection.scale.is_finite() && projection.scale > 0.0, "{window:?}");
            let (x, y) = projection.spot((f64::NAN, f64::INFINITY));
            assert!(x.is_finite() && y.is_finite());
        }
        let flat = Area { left: 10.0, top: 10.0, right: 10.0, bottom: 10.0 };
        assert!(Projection::fit(&Window::of([]), &flat, Rest::Bottom).scale > 0.0);
    }
}
