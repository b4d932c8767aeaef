//! The load as it was found: every way that says something, which of them decides, and where they
//! disagree. In the load's own frame as entered, m and kg.

use crate::document::{GivenAs, Turned, WeightKnown};
use crate::scalar::{Region, Span};
use crate::solid::Silhouette;
use glam::{DVec2, DVec3};
use serde::Serialize;

/// A way that says something of weight or centre.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Way {
    /// The middle of a block.
    Block,
    /// A mark on the load.
    Mark,
    /// Its weight as stated.
    Stated,
    /// Its parts.
    Parts,
    /// Its traced outline.
    Trace,
    /// Scales, the load level.
    WeighedLevel,
    /// Scales, one end raised.
    WeighedRaised,
}

/// A figure that ways may disagree on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum LoadFigure {
    /// Weight, kg.
    Mass,
    /// Centre ahead, m.
    Ahead,
    /// Centre left, m.
    Left,
    /// Centre above, m.
    Above,
}

impl LoadFigure {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Mass, Self::Ahead, Self::Left, Self::Above];
}

/// What one way says: a range for some of the figures, in the order of [`LoadFigure::ALL`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Says {
    /// Which way.
    pub way: Way,
    /// Its ranges.
    pub figures: [Option<Span>; 4],
    /// How it ranks for each: measured before worked out before taken; less is better.
    pub rank: u8,
}

impl Says {
    /// A way that gives the weight alone.
    pub fn weight(mass: Span, known: Option<WeightKnown>) -> Self {
        let rank = match known {
            Some(WeightKnown::Scale) => 0,
            Some(WeightKnown::Note) => 1,
            Some(WeightKnown::Estimate) | None => 2,
        };
        Self { way: Way::Stated, figures: [Some(mass), None, None, None], rank }
    }

    /// A way that gives a centre, and perhaps a weight.
    pub fn centre(way: Way, mass: Option<Span>, at: Region) -> Self {
        let rank = match way {
            Way::Mark | Way::WeighedLevel | Way::WeighedRaised => 0,
            Way::Parts | Way::Trace | Way::Stated => 1,
            Way::Block => 2,
        };
        Self { way, figures: [mass, Some(at.x()), Some(at.y()), Some(at.z())], rank }
    }
}

/// Two ways that do not agree.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disagreement {
    /// On what.
    pub figure: LoadFigure,
    /// Which.
    pub ways: (Way, Way),
    /// Their ranges.
    pub ranges: (Span, Span),
}

/// A solid to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// The part it is, from 0.
    pub part: Option<usize>,
    /// A cut-out.
    pub cut: bool,
    /// Its outlines.
    pub seen: Silhouette,
}

/// One part, with what is cut out of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartFound {
    /// kg; of a cut-out what it takes away, negative.
    pub mass: Span,
    /// Its own centre.
    pub centre: DVec3,
    /// m^3, less its cut-outs.
    pub volume: f64,
}

/// A traced outline's own results.
#[derive(Clone, Debug, PartialEq)]
pub struct TraceFound {
    /// As worked out.
    pub outlined: crate::traced::Outlined,
    /// Whether it was straightened.
    pub straightened: bool,
}

/// The load's shape.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// How it is given.
    pub given_as: GivenAs,
    /// The low corner of its box.
    pub low: DVec3,
    /// The box's edges.
    pub size: DVec3,
    /// What it stands on: outlines (ahead, left) of all that touches the ground.
    pub feet: Vec<Vec<DVec2>>,
    /// How far its outline may be out, ahead and left.
    pub doubt: DVec2,
    /// What it says of weight and centre.
    pub says: Says,
    /// To draw.
    pub drawn: Vec<Drawn>,
    /// Its parts.
    pub parts: Vec<PartFound>,
    /// Its outline.
    pub trace: Option<TraceFound>,
}

/// The load as found.
#[derive(Clone, Debug, PartialEq)]
pub struct Found {
    /// Its shape.
    pub shape: Shape,
    /// Its weight.
    pub mass: Span,
    /// Its centre.
    pub centre: Region,
    /// Which way decides each figure, in the order of [`LoadFigure::ALL`].
    pub decided_by: [Way; 4],
    /// All that was said.
    pub ways: Vec<Says>,
    /// Where ways disagree.
    pub disagreements: Vec<Disagreement>,
}

impl Found {
    /// Puts together what all ways say. `None` where none says the weight.
    ///
    /// For each figure the best way decides: what was measured before what was worked out, that
    /// before what was only taken; of equals the one with the narrower range, and of weights
    /// the heavier with all that its equals may be. Where another way's
    /// range does not meet it, the two disagree, and the load may be as either says.
    pub fn of(shape: Shape, others: &[Says]) -> Option<Self> {
        let mut ways = vec![shape.says];
        ways.extend_from_slice(others);
        let mut disagreements = Vec::new();
        let mut settled = [(Span::exact(0.0), Way::Block); 4];
        for (k, figure) in LoadFigure::ALL.into_iter().enumerate() {
            let said = || ways.iter().filter_map(|s| s.figures[k].map(|span| (s.rank, span, s.way)));
            let narrow = |s: &Span| s.hi - s.lo;
            let best = said().min_by(|a, b| {
                let of_equals = match figure {
                    // The heavier: knowing a load to be heavier never makes it easier.
                    LoadFigure::Mass => b.1.nominal.total_cmp(&a.1.nominal).then(narrow(&a.1).total_cmp(&narrow(&b.1))),
                    _ => narrow(&a.1).total_cmp(&narrow(&b.1)),
                };
                a.0.cmp(&b.0).then(of_equals)
            })?;
            let mut range = best.1;
            if figure == LoadFigure::Mass {
                let equals = said().filter(|s| s.0 == best.0);
                range = equals.fold(range, |range, s| range.with(s.1));
            }
            for (_, other, way) in said().filter(|(_, _, way)| *way != best.2) {
                if !best.1.meets(other) {
                    disagreements.push(Disagreement { figure, ways: (best.2, way), ranges: (best.1, other) });
                    range = range.with(other);
                }
            }
            settled[k] = (range, best.2);
        }
        let [mass, ahead, left, above] = settled.map(|s| s.0);
        let (lo, hi) = (shape.low, shape.low + shape.size);
        // Wherever it is, it is inside.
        let inside = |s: Span, k: usize| Span {
            lo: s.lo.clamp(lo[k], hi[k]),
            nominal: s.nominal.clamp(lo[k], hi[k]),
            hi: s.hi.clamp(lo[k], hi[k]),
        };
        let centre = Region::of(inside(ahead, 0), inside(left, 1), inside(above, 2));
        let mass = Span { lo: mass.lo.max(0.0), ..mass };
        Some(Self { shape, mass, centre, decided_by: settled.map(|s| s.1), ways, disagreements })
    }

    /// The load as it stands on the forks: turned, its nearest side at 0 ahead, its middle at 0
    /// left, its underside at 0.
    pub fn turned(&self, turned: Turned) -> Standing {
        self.standing(turned, &self.shape.drawn)
    }

    /// The same with nothing to draw: to try it.
    pub fn turned_unseen(&self, turned: Turned) -> Standing {
        self.standing(turned, &[])
    }

    fn standing(&self, turned: Turned, drawn: &[Drawn]) -> Standing {
        let Shape { low, size, .. } = self.shape;
        let datum = DVec3::new(low.x + 0.5 * size.x, low.y + 0.5 * size.y, low.z);
        let (s, c): (f64, f64) = match turned {
            Turned::No => (0.0, 1.0),
            Turned::Left => (1.0, 0.0),
            Turned::Half => (0.0, -1.0),
            Turned::Right => (-1.0, 0.0),
        };
        let size = if s == 0.0 { size } else { DVec3::new(size.y, size.x, size.z) };
        let half = 0.5 * size.x;
        let plan = |p: DVec2| {
            let p = p - DVec2::new(datum.x, datum.y);
            DVec2::new(c * p.x - s * p.y + half, s * p.x + c * p.y)
        };
        let point = |p: DVec3| plan(DVec2::new(p.x, p.y)).extend(p.z - datum.z);
        let (at, a, b) = (point(self.centre.at), point(self.centre.lo), point(self.centre.hi));
        let drawn = drawn.iter().map(|d| {
            // Seen from the side, a quarter turn brings the front round.
            let up = |u: f64, z: f64| DVec2::new(u, z - datum.z);
            let ahead = |q: &DVec2| up(c * (q.x - datum.x) + half, q.y);
            let across = |q: &DVec2| up(c * (q.x - datum.y), q.y);
            let front_to_side = |q: &DVec2| up(-s * (q.x - datum.y) + half, q.y);
            let side_to_front = |q: &DVec2| up(s * (q.x - datum.x), q.y);
            let (side, front) = if s == 0.0 {
                (d.seen.side.iter().map(ahead).collect(), d.seen.front.iter().map(across).collect())
            } else {
                (d.seen.front.iter().map(front_to_side).collect(), d.seen.side.iter().map(side_to_front).collect())
            };
            let seen = Silhouette { plan: d.seen.plan.iter().map(|&p| plan(p)).collect(), side, front };
            Drawn { part: d.part, cut: d.cut, seen }
        });
        Standing {
            size,
            centre: Region { at, lo: a.min(b), hi: a.max(b) },
            feet: self.shape.feet.iter().map(|f| f.iter().map(|&p| plan(p)).collect()).collect(),
            doubt: if s == 0.0 { self.shape.doubt } else { DVec2::new(self.shape.doubt.y, self.shape.doubt.x) },
            drawn: drawn.collect(),
            turned,
        }
    }
}

/// A load as it stands on the forks.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    /// Along the forks, across, upward.
    pub size: DVec3,
    /// Its centre: from its nearest side, left of its middle, above its underside.
    pub centre: Region,
    /// What it stands on: outlines (ahead, left) of all that touches the blades.
    pub feet: Vec<Vec<DVec2>>,
    /// How far its outline may be out.
    pub doubt: DVec2,
    /// To draw.
    pub drawn: Vec<Drawn>,
    /// How it is turned.
    pub turned: Turned,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Facing;
    use crate::solid::{Form, Solid};

    fn block() -> Shape {
        let size = DVec3::new(1.2, 0.8, 0.9);
        let solid = Solid::new(Form::block(size), Facing::Up, DVec3::new(0.5, 0.0, 0.1));
        let (low, _) = solid.extents();
        let middle = solid.centroid();
        Shape {
            given_as: GivenAs::Block,
            low,
            size,
            feet: solid.feet(),
            doubt: DVec2::ZERO,
            says: Says::centre(Way::Block, None, Region::about(middle, 0.05 * size)),
            drawn: vec![Drawn { part: None, cut: false, seen: solid.silhouette() }],
            parts: Vec::new(),
            trace: None,
        }
    }

    fn scale(mass: f64) -> Says {
        Says::weight(Span::about(mass, 0.01 * mass), Some(WeightKnown::Scale))
    }

    #[test]
    fn what_was_measured_decides_and_a_contradiction_is_said_and_counted() {
        let at = |x: f64, spread: f64| [Some(Span::exact(800.0)), Some(Span::about(x, spread)), None, None];
        let weighed = |x| Says { way: Way::WeighedLevel, figures: at(x, 0.01), rank: 0 };
        let found = Found::of(block(), &[scale(800.0), weighed(1.08)]).expect("a load");
        assert_eq!(found.decided_by, [Way::WeighedLevel, Way::WeighedLevel, Way::Block, Way::Block]);
        assert_eq!((found.centre.at.x, found.disagreements.len()), (1.08, 0));
        let found = Found::of(block(), &[scale(900.0), weighed(1.3)]).expect("a load");
        let on: Vec<_> = found.disagreements.iter().map(|d| d.figure).collect();
        assert_eq!(on, [LoadFigure::Mass, LoadFigure::Ahead]);
        assert_eq!((found.centre.at.x, found.centre.lo.x), (1.3, 1.1 - 0.05 * 1.2));
        assert!((found.mass.hi - 909.0).abs() < 1e-9);
        assert!(Found::of(block(), &[]).is_none(), "no weight");
        // Of two notes the heavier counts, however wide.
        let note = |mass: f64, off: f64| Says::weight(Span::about(mass, off), Some(WeightKnown::Note));
        let found = Found::of(block(), &[note(360.0, 5.0), note(1500.0, 75.0)]).expect("a load");
        assert!(found.mass.nominal > 1499.0 && found.mass.lo < 356.0 && found.mass.hi > 1574.0);
    }

    #[test]
    fn four_quarter_turns_are_none() {
        let mut shape = block();
        shape.says = Says::centre(
            Way::Mark,
            Some(Span::exact(500.0)),
            Region::about(DVec3::new(0.8, 0.3, 0.3), DVec3::splat(0.02)),
        );
        let found = Found::of(shape, &[]).expect("a load");
        let as_given = found.turned(Turned::No);
        assert!((as_given.centre.at - DVec3::new(0.3, 0.3, 0.2)).length() < 1e-12);
        // A quarter to the left: what was 0.3 left of the middle now lies 0.3 nearer than the middle.
        let left = found.turned(Turned::Left);
        assert_eq!(left.size, DVec3::new(0.8, 1.2, 0.9));
        assert!((left.centre.at - DVec3::new(0.4 - 0.3, -0.3, 0.2)).length() < 1e-12, "{}", left.centre.at);
        let right = found.turned(Turned::Right);
        assert!((right.centre.at - DVec3::new(0.4 + 0.3, 0.3, 0.2)).length() < 1e-12);
        let half = found.turned(Turned::Half);
        assert!((half.centre.at - DVec3::new(1.2 - 0.3, -0.3, 0.2)).length() < 1e-12);
        for standing in [as_given, left, half, right] {
            let (lo, hi) = crate::polygon::extents(&standing.drawn[0].seen.side);
            assert!(
                (lo - DVec2::ZERO).length() < 1e-12
                    && (hi - DVec2::new(standing.size.x, standing.size.z)).length() < 1e-12
            );
            let (lo, hi) = crate::polygon::extents(&standing.drawn[0].seen.front);
            assert!((hi.x - lo.x - standing.size.y).abs() < 1e-12 && (hi.x + lo.x).abs() < 1e-12);
            let (lo, _) = crate::polygon::extents(&standing.drawn[0].seen.plan);
            assert!(lo.x.abs() < 1e-12 && (lo.y + 0.5 * standing.size.y).abs() < 1e-12);
            assert!(
                standing.centre.lo.cmple(standing.centre.at).all()
                    && standing.centre.at.cmple(standing.centre.hi).all()
            );
        }
    }
}
