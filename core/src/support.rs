//! What the truck stands on: contacts, the pivot of the steer axle, and the tipping lines.

use crate::doubt::Doubts;
use crate::scenario::Truck;
use glam::DVec3;
use serde::Serialize;

/// A tipping line's name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LineId {
    /// Through the front wheel contacts.
    Front,
    /// From the left front wheel to the steer wheel or pivot.
    Left,
    /// From the steer wheel or pivot to the right front wheel.
    Right,
}

/// A tipping line, running counter-clockwise about the truck as seen from above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Which.
    pub id: LineId,
    /// Where it starts, m.
    pub from: DVec3,
    /// Where it ends, m.
    pub to: DVec3,
    /// Whether what stays on the ground (a pivoting axle) is left out of its moments.
    pub leaves_axle: bool,
    /// Unit vector along it.
    along: DVec3,
}

impl Line {
    /// A line from one point to another, m. A line between equal points has no direction, and
    /// every moment about it is zero.
    pub fn new(id: LineId, from: DVec3, to: DVec3, leaves_axle: bool) -> Self {
        Self { id, from, to, leaves_axle, along: (to - from).normalize_or_zero() }
    }

    /// Unit vector along it; zero where it has no length.
    pub fn direction(&self) -> DVec3 {
        self.along
    }

    /// The horizontal unit vector square to its plan projection, pointing out of the truck: the way a
    /// platform falls that tries this line.
    pub fn outward(&self) -> DVec3 {
        let along = (self.to - self.from).truncate();
        DVec3::new(along.y, -along.x, 0.0).normalize_or_zero()
    }
}

/// The tipping lines of a truck.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Support {
    /// Left front contact.
    pub left: DVec3,
    /// Right front contact.
    pub right: DVec3,
    /// Steer wheel contact, or the pivot at its own height.
    pub steer: DVec3,
    /// Whether `steer` is a pivot.
    pub pivoting: bool,
}

impl Support {
    /// Of a truck as stated, with the pivot (if it has one) at the height for what is asked, or at that
    /// for what a plate proves.
    pub fn of(truck: &Truck, proven: bool) -> Self {
        let half = 0.5 * truck.tread;
        let pivot = truck.axle.as_ref().map_or(0.0, |a| if proven { a.pivot_high } else { a.pivot });
        Self {
            left: DVec3::new(0.0, half, 0.0),
            right: DVec3::new(0.0, -half, 0.0),
            steer: DVec3::new(-truck.wheelbase, 0.0, pivot),
            pivoting: truck.axle.is_some(),
        }
    }

    /// The narrowest that it may be, for a wheelbase longer by `longer`, m. A narrower tread brings both
    /// side lines nearer to all that stands ahead of the steer axle.
    pub fn narrowest(truck: &Truck, doubts: &Doubts, longer: f64) -> Self {
        let stated = Self::of(truck, false);
        let half = DVec3::Y * (0.5 * doubts.tread.lo);
        Self {
            left: stated.left + half,
            right: stated.right - half,
            steer: DVec3::new(stated.steer.x - longer, 0.0, truck.axle.as_ref().map_or(0.0, |a| a.pivot_low)),
            ..stated
        }
    }

    /// With its steer wheel's contact, or the pivot, so much higher, m.
    pub fn raised(self, by: f64) -> Self {
        Self { steer: self.steer + DVec3::Z * by, ..self }
    }

    /// One of its lines.
    pub fn line(&self, id: LineId) -> Line {
        let (from, to) = match id {
            LineId::Front => (self.right, self.left),
            LineId::Left => (self.left, self.steer),
            LineId::Right => (self.steer, self.right),
        };
        Line::new(id, from, to, self.pivoting && id != LineId::Front)
    }

    /// All three.
    pub fn lines(&self) -> [Line; 3] {
        [LineId::Front, LineId::Left, LineId::Right].map(|id| self.line(id))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_run_counter_clockwise_and_point_outward() {
        let support = Support {
            left: DVec3::new(0.0, 0.5, 0.0),
            right: DVec3::new(0.0, -0.5, 0.0),
            steer: DVec3::new(-1.6, 0.0, 0.3),
            pivoting: true,
        };
        let lines = support.lines();
        for (line, next) in lines.iter().zip(lines.iter().cycle().skip(1)) {
            assert_eq!(line.to, next.from);
            let middle = DVec3::new(-0.5, 0.0, 0.0);
            assert!((middle - line.from).dot(line.outward()) < 0.0, "{:?}", line.id);
            assert!(line.outward().z.abs() < 1e-15);
        }
        assert_eq!(lines.map(|l| l.leaves_axle), [false, true, true]);
        assert!(lines[0].outward().x > 0.999 && lines[1].outward().y > 0.0 && lines[2].outward().y < 0.0);
    }
}
