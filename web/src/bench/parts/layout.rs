//! The sheet with its views: one scale for all of them, the plan under the side view, the front
//! view beside it, so that what belongs together stands in line.

use super::view::{At, View};
use standfast_core::units::{System, Unit};

/// A point of the sheet: right, down.
pub type Spot = (f64, f64);

/// Room over a view for its name.
const NAME: f64 = 26.0;
/// Room beside and under a view for its dimensions.
const FIGURES: f64 = 34.0;
/// Room at the left for the truck's side.
const TRUCK: f64 = 30.0;
/// Room between.
const GAP: f64 = 10.0;
/// So much of the load's size is left free about it.
const FREE: f64 = 0.09;
/// What is smaller is drawn no larger, m.
const LEAST: f64 = 0.4;
/// The farthest a coordinate is believed, m.
const FARTHEST: f64 = 1e3;

/// Which views stand on the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// All three.
    All,
    /// One of them.
    One(View),
}

/// A rectangle of the sheet.
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

impl Area {
    /// Whether a spot lies in it.
    pub fn contains(&self, s: Spot) -> bool {
        s.0 >= self.left && s.0 <= self.right && s.1 >= self.top && s.1 <= self.bottom
    }
}

/// One view on the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pane {
    /// Which view.
    pub view: View,
    /// Where it may draw.
    pub area: Area,
    /// Sheet units in a metre.
    pub scale: f64,
    /// Where the point measured from is.
    pub origin: Spot,
}

impl Pane {
    /// Where a point of the view is.
    pub fn spot(&self, (a, b): At) -> Spot {
        (self.origin.0 + self.view.hand() * self.scale * believed(a), self.origin.1 - self.scale * believed(b))
    }

    /// Which point of the view is there.
    pub fn metres(&self, (x, y): Spot) -> At {
        (self.view.hand() * (x - self.origin.0) / self.scale, (self.origin.1 - y) / self.scale)
    }

    /// A movement on the sheet (right, down) along the view's two directions, m.
    pub fn moved(&self, by: Spot) -> At {
        (self.view.hand() * by.0 / self.scale, -by.1 / self.scale)
    }
}

/// The sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// The views on it.
    pub panes: Vec<Pane>,
}

impl Layout {
    /// Fits a box (low and high corner, m) into a sheet.
    pub fn fit(shown: Shown, (lo, hi): ([f64; 3], [f64; 3]), (width, height): (f64, f64)) -> Self {
        let mut middle = [0.0; 3];
        let mut size = [LEAST; 3];
        for k in 0..3 {
            let (a, b) = (believed(lo[k]).min(believed(hi[k])), believed(hi[k]).max(believed(lo[k])));
            middle[k] = 0.5 * (a + b);
            size[k] = (b - a).max(LEAST) * (1.0 + 2.0 * FREE);
        }
        match shown {
            Shown::One(view) => {
                let area = Area { left: TRUCK, top: NAME, right: width - FIGURES, bottom: height - FIGURES };
                let (i, j) = view.axes();
                let scale = ((area.right - area.left) / size[i]).min((area.bottom - area.top) / size[j]).max(1e-3);
                Self { width, height, panes: vec![pane(view, area, scale, middle)] }
            }
            Shown::All => {
                let wide = width - TRUCK - 2.0 * FIGURES - GAP;
                let high = height - 2.0 * NAME - 2.0 * FIGURES;
                let (across, up) = (size[0] + size[1], size[2] + size[1]);
                let scale = (wide / across).min(high / up).max(1e-3);
                // What is left over is shared out.
                let spare = (0.5 * (wide - scale * across), 0.5 * (high - scale * up));
                let column = TRUCK + scale * size[0] + spare.0;
                let row = NAME + scale * size[2] + spare.1;
                let side = Area { left: TRUCK, top: NAME, right: column, bottom: row };
                let front = Area { left: column + FIGURES + GAP, right: width - FIGURES, ..side };
                let plan = Area { top: row + FIGURES + NAME, bottom: height - FIGURES, ..side };
                let panes = [(View::Side, side), (View::Front, front), (View::Plan, plan)];
                Self { width, height, panes: panes.map(|(view, area)| pane(view, area, scale, middle)).to_vec() }
            }
        }
    }

    /// The view at a spot, the nearest where there is none.
    pub fn pane_at(&self, spot: Spot) -> Option<&Pane> {
        self.panes.iter().find(|p| p.area.contains(spot))
    }

    /// One of the views.
    pub fn pane(&self, view: View) -> Option<&Pane> {
        self.panes.iter().find(|p| p.view == view)
    }
}

fn believed(value: f64) -> f64 {
    if value.is_nan() { 0.0 } else { value.clamp(-FARTHEST, FARTHEST) }
}

/// A view with the middle of the load in the middle of its area.
fn pane(view: View, area: Area, scale: f64, middle: [f64; 3]) -> Pane {
    let (i, j) = view.axes();
    let x = 0.5 * (area.left + area.right) - view.hand() * scale * middle[i];
    let y = 0.5 * (area.top + area.bottom) + scale * middle[j];
    Pane { view, area, scale, origin: (x, y) }
}

/// The spacing of the grid, m: the least of a round row whose lines stand at least `apart` sheet
/// units from each other.
pub fn grid(scale: f64, apart: f64, system: System) -> f64 {
    let (unit, row): (Unit, &[f64]) = match system {
        System::Metric => (Unit::Millimetre, &[10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0, 2000.0, 5000.0]),
        System::Us => (Unit::Inch, &[0.5, 1.0, 2.0, 6.0, 12.0, 24.0, 60.0, 120.0, 240.0]),
    };
    let enough = |v: &&f64| unit.to_document(**v) * scale >= apart;
    unit.to_document(row.iter().find(enough).or(row.last()).copied().unwrap_or(1000.0))
}

/// The multiples of a spacing between two values; not more than a grid can show.
pub fn lines(from: f64, to: f64, spacing: f64) -> Vec<f64> {
    let (from, to) = (from.min(to), from.max(to));
    let (first, last) = ((from / spacing).ceil(), (to / spacing).floor());
    let count = (last - first).clamp(-1.0, 400.0);
    if count.is_nan() || count < 0.0 {
        return Vec::new();
    }
    (0..=count as u32).map(|k| (first + f64::from(k)) * spacing).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const LOAD: ([f64; 3], [f64; 3]) = ([0.1, -0.5, 0.0], [1.3, 0.5, 1.5]);

    #[test]
    fn one_scale_and_what_belongs_together_in_line() {
        let layout = Layout::fit(Shown::All, LOAD, (560.0, 540.0));
        let [side, front, plan] = [View::Side, View::Front, View::Plan].map(|v| *layout.pane(v).expect("all"));
        let same = |a: f64, b: f64| (a - b).abs() < 1e-9;
        assert!(same(side.scale, front.scale) && same(side.scale, plan.scale));
        assert!(same(side.spot((0.7, 0.3)).0, plan.spot((0.7, 0.1)).0), "ahead in line");
        assert!(same(side.spot((0.7, 0.3)).1, front.spot((0.2, 0.3)).1), "up in line");
        assert!(front.spot((0.5, 0.0)).0 < front.spot((-0.5, 0.0)).0, "left is left");
        assert!(plan.spot((0.0, 0.5)).1 < plan.spot((0.0, -0.5)).1, "left is up in the plan");
        for pane in &layout.panes {
            let (i, j) = pane.view.axes();
            for (a, b) in [(LOAD.0[i], LOAD.0[j]), (LOAD.1[i], LOAD.1[j])] {
                assert!(pane.area.contains(pane.spot((a, b))), "{pane:?}");
            }
            assert!(pane.area.right <= layout.width && pane.area.bottom <= layout.height);
        }
        let apart =
            |a: &Area, b: &Area| a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
        assert!(apart(&side.area, &front.area) && apart(&side.area, &plan.area) && apart(&plan.area, &front.area));
    }

    #[test]
    fn there_and_back_in_every_view() {
        for shown in [Shown::All, Shown::One(View::Plan), Shown::One(View::Front), Shown::One(View::Side)] {
            let layout = Layout::fit(shown, LOAD, (380.0, 400.0));
            for pane in &layout.panes {
                for p in [(0.0, 0.0), (0.33, -0.7)] {
                    let (a, b) = pane.metres(pane.spot(p));
                    assert!((a - p.0).abs() < 1e-9 && (b - p.1).abs() < 1e-9);
                }
                let (from, to) = (pane.spot((0.2, 0.2)), pane.spot((0.5, 0.9)));
                let (a, b) = pane.moved((to.0 - from.0, to.1 - from.1));
                assert!((a - 0.3).abs() < 1e-9 && (b - 0.7).abs() < 1e-9);
            }
        }
    }

    #[test]
    fn nothing_tiny_huge_and_nonsense_are_laid_out() {
        let odd =
            [([0.0; 3], [0.0; 3]), ([f64::NAN; 3], [f64::INFINITY; 3]), ([-1e9; 3], [1e9; 3]), ([1.0; 3], [0.0; 3])];
        for corners in odd {
            for shown in [Shown::All, Shown::One(View::Side)] {
                for pane in Layout::fit(shown, corners, (560.0, 540.0)).panes {
                    assert!(pane.scale > 0.0 && pane.origin.0.is_finite() && pane.origin.1.is_finite(), "{pane:?}");
                }
            }
        }
    }

    #[test]
    fn the_grid_is_round_and_never_crowded() {
        assert!((grid(200.0, 18.0, System::Metric) - 0.1).abs() < 1e-12);
        assert!((grid(40.0, 18.0, System::Metric) - 0.5).abs() < 1e-12);
        assert!((grid(200.0, 18.0, System::Us) - Unit::Inch.to_document(6.0)).abs() < 1e-12);
        for scale in [0.1, 3.0, 40.0, 200.0, 3000.0] {
            let spacing = grid(scale, 18.0, System::Metric);
            assert!(spacing * scale >= 18.0 || spacing > 4.99);
        }
        assert_eq!(lines(-0.15, 0.25, 0.1).len(), 4);
        assert_eq!(lines(0.31, 0.39, 0.1), Vec::<f64>::new());
        assert!(lines(f64::NAN, 1.0, 0.1).len() <= 401 && lines(-1e9, 1e9, 0.01).len() == 401);
    }
}
