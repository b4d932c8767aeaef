//! What of the views does not move with a part: grid, the truck's side, names, dimensions, the
//! centre of gravity. Worked out as path data and words.

use super::layout::{Layout, Pane, Spot, grid, lines};
use super::names;
use super::view::{At, Body, View};
use crate::drawing::marks;
use crate::words::{fill, words};
use standfast_core::report::{LoadReport, ShapeReport};
use standfast_core::units::{Quantity, System};
use yew::AttrValue;

/// The least distance between two lines of the grid, sheet units.
const APART: f64 = 18.0;

/// Height of letters: of a figure that matters, of others.
const LARGE: f64 = 20.0;
const SMALL: f64 = 13.0;

/// Words on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Words {
    /// What they say.
    pub text: String,
    /// The middle of their foot, or their beginning.
    pub spot: Spot,
    /// Height of their letters.
    pub size: f64,
    /// From their middle.
    pub middle: bool,
    /// Turned to read upward.
    pub upward: bool,
}

/// A line drawing with its words.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Lines {
    /// Paths with their class.
    pub paths: Vec<(&'static str, String)>,
    /// Words.
    pub words: Vec<Words>,
}

/// Path data of a view's edges.
fn frame(pane: &Pane) -> String {
    let a = &pane.area;
    marks::closed(&[(a.left, a.top), (a.right, a.top), (a.right, a.bottom), (a.left, a.bottom)])
}

/// The spacing of a layout's grid, m.
pub fn spacing(layout: &Layout, system: System) -> f64 {
    layout.panes.first().map_or(1.0, |p| grid(p.scale, APART, system))
}

/// Grid, frame, name and the truck's side of one view.
pub fn ground(pane: &Pane, spacing: f64) -> Lines {
    let w = &words().parts;
    let area = &pane.area;
    let (a, b) = (pane.metres((area.left, area.bottom)), pane.metres((area.right, area.top)));
    let mut path = String::new();
    for u in lines(a.0, b.0, spacing) {
        let x = pane.spot((u, 0.0)).0;
        path += &marks::line((x, area.top), (x, area.bottom));
    }
    for v in lines(a.1, b.1, spacing) {
        let y = pane.spot((0.0, v)).1;
        path += &marks::line((area.left, y), (area.right, y));
    }
    let caption = match pane.view {
        View::Side => w.side_caption,
        View::Front => w.front_caption,
        View::Plan => w.plan_caption,
    };
    let plain = |text: &str, spot, upward| Words { text: text.to_owned(), spot, size: SMALL, middle: upward, upward };
    let mut found = Lines {
        paths: vec![("d-grid", path), ("pb-frame", frame(pane))],
        words: vec![plain(caption, (area.left, area.top - 8.0), false)],
    };
    // The driver looks from the truck: it stands before the sheet there.
    if pane.view != View::Front {
        let (top, bottom) = ((area.left - 7.0, area.top), (area.left - 7.0, area.bottom));
        found.paths.push(("pb-truck", marks::line(top, bottom)));
        found.paths.push(("d-hatch", marks::hatching(top, bottom, (-1.0, 0.0), 7.0)));
        let middle = 0.5 * (area.top + area.bottom);
        found.words.push(plain(w.truck, (area.left - 17.0, middle), true));
    }
    found
}

/// A cross at the point measured from, where it lies in the view.
pub fn cross(pane: &Pane) -> Option<String> {
    let (x, y) = pane.spot((0.0, 0.0));
    let arm = 9.0;
    let path = || marks::line((x - arm, y), (x + arm, y)) + &marks::line((x, y - arm), (x, y + arm));
    pane.area.contains((x, y)).then(path)
}

/// The dimensions of the whole: under the view, and beside it.
pub fn dimensions(pane: &Pane, whole: &([f64; 3], [f64; 3]), system: System) -> Lines {
    let (i, j) = pane.view.axes();
    let area = &pane.area;
    let spots = |k: usize, at: fn(f64) -> At| (pane.spot(at(whole.0[k])), pane.spot(at(whole.1[k])));
    let (a, b) = spots(i, |u| (u, 0.0));
    let (c, d) = spots(j, |v| (0.0, v));
    let mut found = Lines::default();
    let mut put = |from: Spot, to: Spot, metres: f64, words: Words| {
        let (line, heads) = marks::dimension(from, to);
        found.paths.push(("d-dim", line));
        found.paths.push(("d-heads", heads));
        found.words.push(Words { text: names::length(system, metres), ..words });
    };
    let blank = |spot, upward| Words { text: String::new(), spot, size: SMALL, middle: true, upward };
    let y = area.bottom + 9.0;
    put((a.0, y), (b.0, y), whole.1[i] - whole.0[i], blank((0.5 * (a.0 + b.0), y + 16.0), false));
    let x = area.right + 9.0;
    put((x, c.1), (x, d.1), whole.1[j] - whole.0[j], blank((x + 16.0, 0.5 * (c.1 + d.1)), true));
    found
}

/// The common centre: its mark, and the box it may lie in.
pub fn centre(pane: &Pane, load: &LoadReport) -> (Spot, String) {
    let c = &load.centre;
    let of = |k: usize| [c.ahead, c.left, c.above][k];
    let (i, j) = pane.view.axes();
    let (u, v) = (of(i), of(j));
    let corner = |a: f64, b: f64| pane.spot((a, b));
    let (lo, hi) = ((u.lo.get(), v.lo.get()), (u.hi.get(), v.hi.get()));
    let path = marks::closed(&[corner(lo.0, lo.1), corner(hi.0, lo.1), corner(hi.0, hi.1), corner(lo.0, hi.1)]);
    (corner(u.nominal.get(), v.nominal.get()), path)
}

/// The box round all bodies; a usual pallet's where there are none.
pub fn whole(bodies: &[Body]) -> ([f64; 3], [f64; 3]) {
    let join = |a: Body, b: &Body| {
        let mut a = a;
        for k in 0..3 {
            a.lo[k] = a.lo[k].min(b.lo[k]);
            a.hi[k] = a.hi[k].max(b.hi[k]);
        }
        a
    };
    let mut solid = bodies.iter().filter(|b| !b.cut);
    let first = solid.next().cloned();
    first.map(|first| solid.fold(first, join)).map_or(([0.0, -0.5, 0.0], [1.2, 0.5, 0.8]), |b| (b.lo, b.hi))
}

/// Outlines as path data, worked out anew only for what has changed since.
#[derive(Debug, Default)]
pub struct Outlines {
    panes: Vec<Pane>,
    drawn: Vec<(ShapeReport, Vec<AttrValue>)>,
    /// How many were worked out in all.
    pub worked: usize,
}

impl Outlines {
    /// Brings them up to date.
    pub fn update(&mut self, panes: &[Pane], shapes: &[ShapeReport]) {
        if self.panes != panes {
            self.drawn.clear();
            self.panes = panes.to_vec();
        }
        self.drawn.truncate(shapes.len());
        for (k, shape) in shapes.iter().enumerate() {
            if self.drawn.get(k).is_some_and(|(old, _)| old == shape) {
                continue;
            }
            self.worked += 1;
            let path = |pane: &Pane| {
                let spots: Vec<Spot> = pane.view.outline(shape).into_iter().map(|p| pane.spot(p)).collect();
                AttrValue::from(marks::closed(&spots))
            };
            let entry = (shape.clone(), panes.iter().map(path).collect());
            match self.drawn.get_mut(k) {
                Some(place) => *place = entry,
                None => self.drawn.push(entry),
            }
        }
    }

    /// One view's outlines, what is furthest from the eye first, the chosen part over the others, and
    /// over it what is cut out: shape and path.
    pub fn of(&self, pane: usize, chosen: Option<usize>) -> Vec<(&ShapeReport, &AttrValue)> {
        let view = self.panes.get(pane).map(|p| p.view);
        let nearness = |s: &ShapeReport| match (view, Body::of(s)) {
            (Some(View::Plan), Some(b)) => b.hi[2],
            (Some(View::Side), Some(b)) => -b.lo[1],
            (Some(View::Front), Some(b)) => -b.lo[0],
            _ => 0.0,
        };
        let on_top = |s: &ShapeReport| (s.cut, chosen.is_some() && s.part == chosen);
        let drawn = self.drawn.iter().filter_map(|(s, paths)| Some((on_top(s), nearness(s), (s, paths.get(pane)?))));
        let mut drawn: Vec<_> = drawn.collect();
        drawn.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        drawn.into_iter().map(|d| d.2).collect()
    }
}

/// Weight and centre in short, where the sheet has room for them: under the front view.
pub fn summary(layout: &Layout, load: &LoadReport, system: System) -> Lines {
    let mut found = Lines::default();
    if let (Some(front), Some(plan)) = (layout.pane(View::Front), layout.pane(View::Plan)) {
        let (x, mut y) = (front.area.left, plan.area.top + 22.0);
        let mut put = |size: f64, text: String| {
            found.words.push(Words { text, spot: (x, y), size, middle: false, upward: false });
            y += if size > SMALL { 19.0 } else { 17.0 };
        };
        put(LARGE, names::value(system, Quantity::Mass, &load.mass));
        put(SMALL, names::range(system, Quantity::Mass, &load.mass));
        let w = &words().parts;
        let [ahead, left, above] = names::centre(load).map(|r| r.nominal.get());
        let (aside, which) = if left < 0.0 { (-left, w.short_right) } else { (left, w.short_left) };
        for (value, text) in [(ahead, w.short_ahead), (aside, which), (above, w.short_above)] {
            put(SMALL, fill(text, &[("value", &names::length(system, value))]));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::super::layout::Shown;
    use super::super::view::tests::boxed;
    use super::*;

    fn layout() -> Layout {
        Layout::fit(Shown::All, ([0.0, -0.5, 0.0], [1.2, 0.5, 0.8]), (560.0, 540.0))
    }

    #[test]
    fn only_what_changed_is_worked_out_again() {
        let layout = layout();
        let mut shapes: Vec<_> =
            (0..100).map(|k| boxed(k, false, [0.01 * k as f64, 0.0, 0.0], [0.01 * k as f64 + 0.1, 0.1, 0.1])).collect();
        let mut outlines = Outlines::default();
        outlines.update(&layout.panes, &shapes);
        assert_eq!(outlines.worked, 100);
        outlines.update(&layout.panes, &shapes);
        assert_eq!(outlines.worked, 100);
        shapes[7] = boxed(7, false, [0.0; 3], [0.5; 3]);
        outlines.update(&layout.panes, &shapes);
        assert_eq!(outlines.worked, 101);
        shapes.truncate(50);
        outlines.update(&layout.panes, &shapes);
        assert_eq!((outlines.worked, outlines.of(0, None).len()), (101, 50));
        let other = Layout::fit(Shown::One(View::Plan), ([0.0; 3], [1.0; 3]), (380.0, 400.0));
        outlines.update(&other.panes, &shapes);
        assert_eq!(outlines.worked, 151, "another scale, all of them");
    }

    #[test]
    fn what_is_nearer_to_the_eye_is_drawn_later_and_cut_outs_last() {
        let shapes = [
            boxed(0, true, [0.0; 3], [0.1; 3]),
            boxed(1, false, [0.0, 0.0, 0.5], [1.0, 1.0, 1.0]),
            boxed(2, false, [0.0; 3], [1.0, 1.0, 0.5]),
        ];
        let layout = Layout::fit(Shown::One(View::Plan), ([0.0; 3], [1.0; 3]), (380.0, 400.0));
        let mut outlines = Outlines::default();
        outlines.update(&layout.panes, &shapes);
        let order: Vec<_> = outlines.of(0, None).iter().filter_map(|(s, _)| s.part).collect();
        assert_eq!(order, [2, 1, 0]);
        let order: Vec<_> = outlines.of(0, Some(2)).iter().filter_map(|(s, _)| s.part).collect();
        assert_eq!(order, [1, 2, 0], "the chosen one over the others, under what is cut out");
    }

    #[test]
    fn dimensions_are_of_the_whole_and_stand_clear_of_the_view() {
        let layout = layout();
        for pane in &layout.panes {
            let found = dimensions(pane, &([0.0, -0.5, 0.0], [1.2, 0.5, 0.8]), System::Metric);
            assert_eq!(found.words.len(), 2);
            for words in &found.words {
                assert!(!pane.area.contains(words.spot), "{words:?}");
                assert!(words.spot.0 > 0.0 && words.spot.0 < 560.0 && words.spot.1 < 540.0, "{words:?}");
            }
        }
        let side =
            dimensions(layout.pane(View::Side).expect("all"), &([0.0, -0.5, 0.0], [1.2, 0.5, 0.8]), System::Metric);
        let texts: Vec<_> = side.words.iter().map(|w| w.text.as_str()).collect();
        assert_eq!(texts, ["1\u{202f}200\u{a0}mm", "800\u{a0}mm"]);
    }

    #[test]
    fn the_truck_stands_at_the_heel_and_not_in_the_drivers_own_view() {
        let layout = layout();
        let truck = |v: View| {
            let pane = layout.pane(v).expect("all");
            ground(pane, 0.1).words.iter().find(|w| w.upward).map(|w| w.spot.0 < pane.area.left)
        };
        assert_eq!((truck(View::Side), truck(View::Plan), truck(View::Front)), (Some(true), Some(true), None));
    }
}
