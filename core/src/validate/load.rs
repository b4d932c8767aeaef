//! The load, from what was entered: its shape, its weight, what was weighed, how it stands.

use super::Entries;
use crate::document::{CentreKnown, GivenAs, WeightKnown};
use crate::found::{Drawn, Found, LoadFigure, Says, Shape, Way};
use crate::friction::Underside;
use crate::place::{Field, Place};
use crate::problem::Rule;
use crate::rules;
use crate::scalar::{Region, Scalar, Span};
use crate::scenario::{Basis, Load};
use crate::solid::{Form, Solid};
use glam::{DVec2, DVec3};

/// A weight as stated, by how it is known; not said is no better than an estimate.
pub(super) fn stated(mass: f64, known: Option<WeightKnown>) -> Span {
    let tolerance = match known {
        Some(WeightKnown::Scale) => rules::TOLERANCE_SCALE,
        Some(WeightKnown::Note) => rules::TOLERANCE_NOTE,
        Some(WeightKnown::Estimate) | None => rules::TOLERANCE_ESTIMATE,
    };
    Span::about(mass, tolerance.value * mass)
}

/// What touches the ground is within this of the lowest point, m.
const TOUCHES: f64 = 0.005;

/// The box round solids, and the hull of all of them that touches the ground.
pub(super) fn box_and_foot(solids: &[&Solid]) -> Option<(DVec3, DVec3, Vec<DVec2>)> {
    let (lo, hi) = solids.iter().map(|s| s.extents()).reduce(|(a, b), (c, d)| (a.min(c), b.max(d)))?;
    let touching: Vec<DVec2> = solids
        .iter()
        .filter(|s| s.extents().0.z <= lo.z + TOUCHES)
        .flat_map(|s| s.rim())
        .filter(|p| p.z <= lo.z + TOUCHES)
        .map(|p| DVec2::new(p.x, p.y))
        .collect();
    Some((lo, hi - lo, crate::polygon::hull(&touching)))
}

impl Entries {
    /// The load alone, in its own frame.
    pub(super) fn found(&mut self) -> Option<Found> {
        let given_as = self.document.load.given_as;
        let mass = self.entered(Field::LoadMass);
        let shape = match given_as {
            GivenAs::Block => self.block(),
            GivenAs::Parts => self.parts(),
            GivenAs::Trace => self.traced(),
        };
        let mut says = Vec::new();
        if let Some(mass) = mass {
            says.push(Says::weight(stated(mass, self.document.load.weight_known), self.document.load.weight_known));
        }
        says.extend(self.weighed(shape.as_ref()));
        let weighed = self.document.load.weighing.is_some();
        // Parts, and a traced outline of a known material, say the weight themselves.
        if given_as == GivenAs::Block && mass.is_none() && !weighed {
            self.problem(Field::LoadMass, None, Rule::Required);
        }
        let shape = shape?;
        let low = shape.low;
        let found = Found::of(shape, &says)?;
        self.whole(given_as, &found);
        if found.decided_by[1] == Way::Block && self.problems.is_empty() {
            let at = &found.centre;
            for (k, field, range) in [
                (LoadFigure::Ahead, Field::LoadCgFromHeel, at.x().moved(-low.x)),
                (LoadFigure::Left, Field::LoadCgLeft, at.y()),
                (LoadFigure::Above, Field::LoadCgAbove, at.z().moved(-low.z)),
            ] {
                if found.decided_by[k as usize] == Way::Block {
                    self.assume(field, range, Basis::Middle);
                }
            }
        }
        Some(found)
    }

    /// The load as a whole within what the program takes.
    fn whole(&mut self, given_as: GivenAs, found: &Found) {
        let place = match given_as {
            // Entered, its own fields are held to their ranges.
            GivenAs::Block if found.decided_by[0] != Way::WeighedLevel => return,
            GivenAs::Block => Field::WeighPoints,
            GivenAs::Parts => Field::Parts,
            GivenAs::Trace => Field::TraceOutline,
        };
        let c = Scalar::computed;
        let size = found.shape.size;
        for (field, size) in [(Field::LoadLength, size.x), (Field::LoadWidth, size.y), (Field::LoadHeight, size.z)] {
            let row = field.row();
            if !(row.min..=row.max).contains(&size) {
                self.problem(place, Some(size), Rule::WholeWithin { min: c(row.min), max: c(row.max) });
            }
        }
        let row = Field::LoadMass.row();
        if !(row.min..=row.max).contains(&found.mass.nominal) {
            self.problem(place, Some(found.mass.nominal), Rule::WeightWithin { min: c(row.min), max: c(row.max) });
        }
    }

    fn block(&mut self) -> Option<Shape> {
        let sides = [Field::LoadLength, Field::LoadWidth, Field::LoadHeight].map(|f| self.needed_here(f));
        let marked = self.document.load.centre_known == Some(CentreKnown::Mark);
        let mark = marked.then(|| self.mark(sides));
        let [Some(x), Some(y), Some(z)] = sides else { return None };
        let size = DVec3::new(x, y, z);
        let solid = Solid::new(Form::block(size), crate::document::Facing::Up, DVec3::ZERO);
        let (low, _, foot) = box_and_foot(&[&solid])?;
        let drawn = vec![Drawn { part: None, cut: false, seen: solid.silhouette() }];
        self.drawn.clone_from(&drawn);
        let (way, centre) = match mark {
            Some(at) => (Way::Mark, Region::about(at?, DVec3::splat(rules::TOLERANCE_CENTRE_MARKED.value))),
            None => (Way::Block, Region::about(solid.centroid(), size * rules::TOLERANCE_CENTRE_MIDDLE.value)),
        };
        let says = Says::centre(way, None, centre);
        Some(Shape { given_as: GivenAs::Block, low, size, foot, says, drawn, parts: Vec::new(), trace: None })
    }

    /// A marked centre, inside the block as far as that is known.
    fn mark(&mut self, [x, y, z]: [Option<f64>; 3]) -> Option<DVec3> {
        let half = y.map(|y| 0.5 * y);
        let [ahead, left, above] = [
            (Field::LoadCgFromHeel, x.map(|x| (0.0, x))),
            (Field::LoadCgLeft, half.map(|h| (-h, h))),
            (Field::LoadCgAbove, z.map(|z| (0.0, z))),
        ]
        .map(|(field, range)| {
            let value = self.needed_here(field)?;
            if let Some((lo, hi)) = range
                && !(lo..=hi).contains(&value)
            {
                let (min, max) = (Scalar::computed(lo), Scalar::computed(hi));
                self.problem(field, Some(value), Rule::Within { min, max });
            }
            Some(value)
        });
        Some(DVec3::new(ahead?, left?, above?))
    }

    /// The load as it stands on the forks, or hangs.
    pub(super) fn load(&mut self) -> Option<Load> {
        let found = self.found();
        let hanging = if self.document.load.hanging { Some(self.needed_here(Field::HookAbove)?) } else { None };
        let friction = match self.document.load.underside {
            Some(underside) => underside.range(),
            None if hanging.is_some() => Underside::unknown(),
            None => {
                let range = Underside::unknown();
                self.assume(Place::from(Field::Underside), range, Basis::Figure { id: "FRICTION_PLASTIC_PALLET" });
                range
            }
        };
        let found = found?;
        let standing = found.turned(self.document.load.turned);
        let crate::found::Standing { size, mut centre, foot, drawn } = standing;
        if let Some(hook) = hanging {
            // A load that hangs freely pulls at its hook, wherever its own centre is below.
            centre = Region::of(centre.x(), centre.y(), Span::exact(hook));
        }
        Some(Load { mass: found.mass, size, centre, foot, drawn, friction, hanging, found })
    }
}
