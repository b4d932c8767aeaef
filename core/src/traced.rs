//! A load from its outline in a picture: form, area, centroid, and how far the picture may mislead.

use crate::document::{Facing, PhotoTruck, TraceView};
use crate::picture::{self, Picture};
use crate::polygon;
use crate::rules;
use crate::scalar::Span;
use glam::DVec2;

/// What gives the picture its scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reference {
    /// A known length.
    Length {
        /// Its ends, pixels.
        ends: [DVec2; 2],
        /// m.
        length: f64,
    },
    /// A known rectangle: it straightens too.
    Rectangle {
        /// Its corners: top left, top right, bottom right, bottom left.
        corners: [DVec2; 4],
        /// m.
        width: f64,
        /// m.
        height: f64,
    },
}

/// What was tapped. Points in pixels, right and down.
#[derive(Clone, Debug, PartialEq)]
pub struct Tapped {
    /// What the picture shows.
    pub view: TraceView,
    /// Where the truck is in it.
    pub truck: PhotoTruck,
    /// The picture's longer side, pixels.
    pub longer_side: f64,
    /// The outline.
    pub outline: Vec<DVec2>,
    /// Holes.
    pub holes: Vec<Vec<DVec2>>,
    /// The reference.
    pub reference: Reference,
}

/// What is wrong with it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The reference.
    Reference(picture::Fault),
    /// The outline.
    Outline(polygon::Fault),
    /// A hole, from 0.
    Hole(usize, polygon::Fault),
    /// A hole that is not wholly inside the outline and apart from the others.
    HoleOutside(usize),
}

/// The outline in the load's own directions, m: (ahead, up), (left, up) or (ahead, left) as the
/// view says. It begins at 0 ahead and at 0 up; left is counted from its middle.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlined {
    /// The outline.
    pub outline: Vec<DVec2>,
    /// Its holes.
    pub holes: Vec<Vec<DVec2>>,
    /// Width and height.
    pub size: DVec2,
    /// Area, m^2, less the holes.
    pub area: Span,
    /// Centroid.
    pub centroid: DVec2,
    /// How far it may be out in either direction, m.
    pub spread: DVec2,
    /// The part of the sizes that tilt, perspective or the lens may make.
    pub not_square: f64,
    /// The centroid in the picture, pixels.
    pub in_picture: DVec2,
}

/// Form and place for one set of taps.
struct Seen {
    outline: Vec<DVec2>,
    holes: Vec<Vec<DVec2>>,
    size: DVec2,
    area: f64,
    centroid: DVec2,
    in_picture: DVec2,
}

/// The turn (as a unit complex number) that lays an outline level on the side that it stands on: of its
/// hull the lower edge under its centroid, where that is little askew.
fn levelling(outline: &[DVec2]) -> DVec2 {
    let hull = polygon::hull(outline);
    let (_, centroid) = polygon::area_and_centroid(outline);
    // Counter-clockwise, the lower edges run to the right.
    let under = polygon::edges(&hull).find(|(a, b)| a.x <= centroid.x && centroid.x < b.x);
    let along = under.map_or(DVec2::X, |(a, b)| (b - a).normalize_or(DVec2::X));
    let most = libm::sin(rules::TRACE_LEVELLED.value.to_radians());
    if along.y.abs() <= most { DVec2::new(along.x, -along.y) } else { DVec2::X }
}

impl Tapped {
    /// The way the axis of the prism points that this outline is the foot of.
    pub fn facing(&self) -> Facing {
        match self.view {
            TraceView::Side => Facing::Left,
            TraceView::Front => Facing::Ahead,
            TraceView::Plan => Facing::Up,
        }
    }

    fn picture(&self, reference: &Reference) -> Result<Picture, Fault> {
        match *reference {
            Reference::Length { ends, length } => Picture::scaled(ends, length, self.longer_side),
            Reference::Rectangle { corners, width, height } => {
                Picture::straightened(corners, width, height, self.longer_side)
            }
        }
        .map_err(Fault::Reference)
    }

    /// From the plane pictured (right, up) to the load's directions, and the same back.
    fn turned(&self, DVec2 { x, y }: DVec2) -> DVec2 {
        match (self.view, self.truck) {
            (TraceView::Side, PhotoTruck::Left) => DVec2::new(x, y),
            (TraceView::Side, PhotoTruck::Right) | (TraceView::Front, _) => DVec2::new(-x, y),
            // Ahead is at the top: left is left.
            (TraceView::Plan, _) => DVec2::new(y, -x),
        }
    }

    fn unturned(&self, p: DVec2) -> DVec2 {
        match self.view {
            TraceView::Plan => DVec2::new(-p.y, p.x),
            // A mirror is its own way back.
            TraceView::Side | TraceView::Front => self.turned(p),
        }
    }

    /// Where counting begins: 0 ahead, 0 up, the middle across.
    fn datum(&self, lo: DVec2, hi: DVec2) -> DVec2 {
        let middle = 0.5 * (lo + hi);
        match self.view {
            TraceView::Side => lo,
            TraceView::Front => DVec2::new(middle.x, lo.y),
            TraceView::Plan => DVec2::new(lo.x, middle.y),
        }
    }

    fn seen(&self, reference: &Reference, outline: &[DVec2], holes: &[Vec<DVec2>]) -> Result<Seen, Fault> {
        let picture = self.picture(reference)?;
        if !picture.sees(outline) {
            return Err(Fault::Reference(picture::Fault::RectangleBent));
        }
        let plane = |points: &[DVec2]| points.iter().map(|&p| self.turned(picture.to_plane(p))).collect::<Vec<_>>();
        let mut outline = plane(outline);
        // Seen from the side or the front it stands on its lowest side, however the camera was held.
        let upright = if self.view == TraceView::Plan { DVec2::X } else { levelling(&outline) };
        outline.iter_mut().for_each(|p| *p = upright.rotate(*p));
        let (lo, hi) = polygon::extents(&outline);
        let datum = self.datum(lo, hi);
        outline.iter_mut().for_each(|p| *p -= datum);
        let (mut area, centroid) = polygon::area_and_centroid(&outline);
        let mut moment = centroid * area;
        let mut kept = Vec::with_capacity(holes.len());
        for hole in holes {
            let hole: Vec<DVec2> = plane(hole).into_iter().map(|p| upright.rotate(p) - datum).collect();
            let (less, at) = polygon::area_and_centroid(&hole);
            area -= less;
            moment -= at * less;
            kept.push(hole);
        }
        let centroid = if area > 0.0 { moment / area } else { centroid };
        let in_picture = picture.to_picture(self.unturned(DVec2::new(upright.x, -upright.y).rotate(centroid + datum)));
        Ok(Seen { outline, holes: kept, size: hi - lo, area, centroid, in_picture })
    }

    /// What is wrong with the outline and its holes as tapped.
    fn fault(&self) -> Option<Fault> {
        if let Some(fault) = polygon::fault(&self.outline) {
            return Some(Fault::Outline(fault));
        }
        for (k, hole) in self.holes.iter().enumerate() {
            if let Some(fault) = polygon::fault(hole) {
                return Some(Fault::Hole(k, fault));
            }
            let inside = |outline: &[DVec2], hole: &[DVec2]| hole.iter().all(|p| polygon::contains(outline, *p, 0.0));
            let apart = |other: &Vec<DVec2>| {
                !polygon::outlines_meet(other, hole) && !inside(other, hole) && !inside(hole, other)
            };
            let within = inside(&self.outline, hole) && !polygon::outlines_meet(&self.outline, hole);
            if !within || !self.holes[..k].iter().all(apart) {
                return Some(Fault::HoleOutside(k));
            }
        }
        None
    }

    /// Works the outline out.
    ///
    /// The tolerance adds up, each to its full extent: every tap out by what a fingertip misses, the
    /// tape, and what the camera's tilt and perspective (or, straightened, the lens) may do.
    ///
    /// # Errors
    /// [`Fault`], the first that is met.
    pub fn find(&self) -> Result<Outlined, Fault> {
        let seen = self.seen(&self.reference, &self.outline, &self.holes)?;
        if let Some(fault) = self.fault() {
            return Err(fault);
        }
        let (by_taps, area_by_taps) = self.taps(&seen);
        let tape = rules::TOLERANCE_TAPE.value;
        let (not_square, by_tape) = match self.reference {
            Reference::Length { length, .. } => (rules::TRACE_NOT_SQUARE.value, tape / length),
            Reference::Rectangle { width, height, .. } => (rules::TRACE_STRAIGHTENED.value, tape / width.min(height)),
        };
        let part = not_square + by_tape;
        let of_area = seen.area * 2.0 * part + area_by_taps;
        let area = Span { lo: (seen.area - of_area).max(0.0), nominal: seen.area, hi: seen.area + of_area };
        Ok(Outlined {
            outline: seen.outline,
            holes: seen.holes,
            size: seen.size,
            area,
            centroid: seen.centroid,
            spread: by_taps + seen.size * part,
            not_square,
            in_picture: seen.in_picture,
        })
    }

    /// What all taps together may do to the centroid and to the area, each tap out by its tolerance
    /// in either direction and the worse way.
    fn taps(&self, seen: &Seen) -> (DVec2, f64) {
        let off = rules::TOLERANCE_TAP.value * self.longer_side;
        let (mut spread, mut area) = (DVec2::ZERO, 0.0);
        // One tap moved by so much: what that makes of the load.
        let mut count = |moved: &dyn Fn(DVec2) -> Result<Seen, Fault>| {
            for way in [DVec2::X, DVec2::Y] {
                let (mut by_tap, mut area_by_tap) = (DVec2::ZERO, 0.0_f64);
                for other in [way * off, way * -off].into_iter().filter_map(|by| moved(by).ok()) {
                    by_tap = by_tap.max((other.centroid - seen.centroid).abs());
                    area_by_tap = area_by_tap.max((other.area - seen.area).abs());
                }
                spread += by_tap;
                area += area_by_tap;
            }
        };
        for k in 0..self.outline.len() {
            count(&|by| {
                let mut outline = self.outline.clone();
                outline[k] += by;
                self.seen(&self.reference, &outline, &self.holes)
            });
        }
        for (h, hole) in self.holes.iter().enumerate() {
            for k in 0..hole.len() {
                count(&|by| {
                    let mut holes = self.holes.clone();
                    holes[h][k] += by;
                    self.seen(&self.reference, &self.outline, &holes)
                });
            }
        }
        let points = if matches!(self.reference, Reference::Length { .. }) { 2 } else { 4 };
        for k in 0..points {
            count(&|by| {
                let mut reference = self.reference;
                match &mut reference {
                    Reference::Length { ends, .. } => ends[k] += by,
                    Reference::Rectangle { corners, .. } => corners[k] += by,
                }
                self.seen(&reference, &self.outline, &self.holes)
            });
        }
        (spread, area)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(list: &[(f64, f64)]) -> Vec<DVec2> {
        list.iter().map(|&(x, y)| DVec2::new(x, y)).collect()
    }

    /// An L 1.2 m long and 0.9 m high, 500 pixels a metre, its foot at the bottom of the picture.
    fn l(view: TraceView, truck: PhotoTruck) -> Tapped {
        let outline =
            points(&[(100.0, 700.0), (700.0, 700.0), (700.0, 550.0), (300.0, 550.0), (300.0, 250.0), (100.0, 250.0)]);
        let reference = Reference::Length { ends: [DVec2::new(100.0, 750.0), DVec2::new(600.0, 750.0)], length: 1.0 };
        Tapped { view, truck, longer_side: 1000.0, outline, holes: Vec::new(), reference }
    }

    /// Two rectangles by hand: 1.2 x 0.3 and 0.4 x 0.6 on top of it.
    #[test]
    fn an_l_has_the_centroid_of_its_two_rectangles() {
        let (a, b) = (1.2 * 0.3, 0.4 * 0.6);
        let (x, z) = ((a * 0.6 + b * 0.2) / (a + b), (a * 0.15 + b * 0.6) / (a + b));
        let found = l(TraceView::Side, PhotoTruck::Left).find().expect("an outline");
        assert!((found.centroid - DVec2::new(x, z)).length() < 1e-12 && (found.area.nominal - 0.6).abs() < 1e-12);
        assert!((found.size - DVec2::new(1.2, 0.9)).length() < 1e-12);
        assert!((found.in_picture - DVec2::new(100.0 + 500.0 * x, 700.0 - 500.0 * z)).length() < 1e-9);
        let mirrored = l(TraceView::Side, PhotoTruck::Right).find().expect("an outline");
        assert!((mirrored.centroid - DVec2::new(1.2 - x, z)).length() < 1e-12);
        assert!((mirrored.in_picture - found.in_picture).length() < 1e-9);
        let front = l(TraceView::Front, PhotoTruck::Left).find().expect("an outline");
        assert!((front.centroid - DVec2::new(0.6 - x, z)).length() < 1e-12, "left of the picture is left");
        let plan = l(TraceView::Plan, PhotoTruck::Left).find().expect("an outline");
        assert!((plan.centroid - DVec2::new(z, 0.6 - x)).length() < 1e-12, "the top of the picture is ahead");
        assert!((plan.in_picture - found.in_picture).length() < 1e-9);
    }

    #[test]
    fn a_hole_moves_the_centroid_away() {
        let mut tapped = l(TraceView::Side, PhotoTruck::Left);
        tapped.holes.push(points(&[(150.0, 300.0), (250.0, 300.0), (250.0, 500.0), (150.0, 500.0)]));
        let (with, without) =
            (tapped.find().expect("a hole"), l(TraceView::Side, PhotoTruck::Left).find().expect("none"));
        assert!((without.area.nominal - with.area.nominal - 0.08).abs() < 1e-12);
        assert!(with.centroid.x > without.centroid.x && with.centroid.y < without.centroid.y);
        tapped.holes.push(points(&[(160.0, 310.0), (200.0, 310.0), (200.0, 400.0)]));
        assert_eq!(tapped.find(), Err(Fault::HoleOutside(1)), "a hole in a hole");
        tapped.holes = vec![points(&[(150.0, 300.0), (400.0, 300.0), (250.0, 500.0)])];
        assert_eq!(tapped.find(), Err(Fault::HoleOutside(0)));
    }

    #[test]
    fn straightened_it_is_better_known() {
        let plain = l(TraceView::Side, PhotoTruck::Left);
        let corners = [(100.0, 200.0), (800.0, 200.0), (800.0, 700.0), (100.0, 700.0)].map(|(x, y)| DVec2::new(x, y));
        let reference = Reference::Rectangle { corners, width: 1.4, height: 1.0 };
        let straight = Tapped { reference, ..plain.clone() }.find().expect("an outline");
        let plain = plain.find().expect("an outline");
        assert!((straight.centroid - plain.centroid).length() < 1e-9);
        assert!(straight.spread.cmplt(plain.spread).all() && straight.spread.min_element() > 0.0);
    }

    /// A pinhole camera up to 10 degrees off square to either side and up or down, rolled by up to 2, at
    /// twice the load's size or further away, the tape along the foot: what it shows lies within what is said of it.
    #[test]
    fn a_picture_within_its_conditions_is_within_its_tolerance() {
        let metres = points(&[(0.0, 0.0), (1.2, 0.0), (1.2, 0.3), (0.4, 0.3), (0.4, 0.9), (0.0, 0.9)]);
        let (_, truth) = polygon::area_and_centroid(&metres);
        let mut worst: f64 = 0.0;
        for k in 0..243_u32 {
            let pick = |digit: u32| f64::from((k / 3_u32.pow(digit)) % 3) - 1.0;
            let (sy, cy) = libm::sincos(10.0_f64.to_radians() * pick(0));
            let (sp, cp) = libm::sincos(10.0_f64.to_radians() * pick(1));
            let (sr, cr) = libm::sincos(2.0_f64.to_radians() * pick(2));
            let far = 2.4 * (1.5 + 0.5 * pick(3));
            let aside = DVec2::new(0.3 * pick(4), 0.1);
            let shown = |p: &DVec2| {
                // About the load's middle: yaw, pitch, roll, then away from the lens.
                let (x, y) = (p.x - 0.6 - aside.x, p.y - 0.45 - aside.y);
                let (x, z) = (x * cy, x * sy);
                let (y, z) = (y * cp - z * sp, y * sp + z * cp);
                let (x, y) = (x * cr - y * sr, x * sr + y * cr);
                let scale = 1400.0 / (far + z);
                DVec2::new(800.0 + scale * x, 600.0 - scale * y)
            };
            let ends = [shown(&metres[0]), shown(&metres[1])];
            let tapped = Tapped {
                view: TraceView::Side,
                truck: PhotoTruck::Left,
                longer_side: 1600.0,
                outline: metres.iter().map(shown).collect(),
                holes: Vec::new(),
                reference: Reference::Length { ends, length: 1.2 },
            };
            let found = tapped.find().expect("an outline");
            let off = (found.centroid - truth).abs() / found.spread;
            worst = worst.max(off.max_element());
        }
        assert!(worst < 1.0, "{worst}");
        assert!(worst > 0.2, "the tolerance is not plucked from the air: {worst}");
    }

    /// A box rolled by half a degree and more in the picture stands on its whole side all the same.
    #[test]
    fn a_camera_not_held_level_is_levelled() {
        for degrees in [-3.0_f64, 0.5, 4.0] {
            let turn = DVec2::from_angle(degrees.to_radians());
            let corners = [(0.0, 0.0), (600.0, 0.0), (600.0, 400.0), (0.0, 400.0)];
            let outline: Vec<DVec2> =
                corners.iter().map(|&(x, y)| DVec2::new(200.0, 900.0) + turn.rotate(DVec2::new(x, -y))).collect();
            let ends = [outline[0], outline[1]];
            let reference = Reference::Length { ends, length: 1.2 };
            let tapped = Tapped { outline, reference, ..l(TraceView::Side, PhotoTruck::Left) };
            let found = tapped.find().expect("an outline");
            assert!((found.size - DVec2::new(1.2, 0.8)).length() < 1e-9, "{degrees}: {}", found.size);
            assert!((found.centroid - DVec2::new(0.6, 0.4)).length() < 1e-9);
            let middle = DVec2::new(200.0, 900.0) + turn.rotate(DVec2::new(300.0, -200.0));
            assert!((found.in_picture - middle).length() < 1e-6);
        }
    }
}
