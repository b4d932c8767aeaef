//! The load, from what was entered: its shape, its weight, what was weighed, how it stands.

use super::Entries;
use crate::document::{CentreKnown, GivenAs, TraceView, WeightKnown};
use crate::found::{Drawn, Found, LoadFigure, Says, Shape, Way};
use crate::friction::Underside;
use crate::place::{Field, Place};
use crate::problem::Rule;
use crate::rules;
use crate::scalar::{Region, Scalar, Span};
use crate::scenario::{Basis, Load};
use crate::solid::{self, Form, Solid};
use glam::{DVec2, DVec3};
use std::sync::Arc;

/// A weight as stated, by how it is known; not said is no better than an estimate.
pub(super) fn stated(mass: f64, known: Option<WeightKnown>) -> Span {
    let tolerance = match known {
        Some(WeightKnown::Scale) => rules::TOLERANCE_SCALE,
        Some(WeightKnown::Note) => rules::TOLERANCE_NOTE,
        Some(WeightKnown::Estimate) | None => rules::TOLERANCE_ESTIMATE,
    };
    Span::about(mass, tolerance.value * mass)
}

/// A solid this much higher than the lowest does not touch the ground, m.
const TOUCHES: f64 = 0.005;

/// The box round solids, and the outlines on which they touch the ground; each solid with what is
/// cut out of it.
pub(super) fn box_and_feet(solids: &[(&Solid, Vec<&Solid>)]) -> Option<(DVec3, DVec3, Vec<Vec<DVec2>>)> {
    let (lo, hi) = solids.iter().map(|(s, _)| s.extents()).reduce(|(a, b), (c, d)| (a.min(c), b.max(d)))?;
    let touches = |s: &Solid| s.extents().0.z <= lo.z + TOUCHES;
    let feet = solids.iter().filter(|(s, _)| touches(s)).flat_map(|(solid, cuts)| {
        cuts.iter().filter(|c| touches(c)).fold(solid.feet(), |feet, cut| {
            // No more than a few pieces are worth telling apart; a rectangle round the cut-out is cautious.
            let (a, b) = cut.extents();
            solid::without(feet, DVec2::new(a.x, a.y), DVec2::new(b.x, b.y))
        })
    });
    Some((lo, hi - lo, feet.collect()))
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
            let known = self.document.load.weight_known;
            let usual = stated(mass, known);
            let tolerance = self.tolerance(Field::LoadMass, mass, usual.half_width());
            says.push(Says::weight(Span { lo: (mass - tolerance).max(0.0), ..Span::about(mass, tolerance) }, known));
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
        if self.problems.is_empty() {
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
        let (shape, by_scales) = (&found.shape, found.decided_by[0] == Way::WeighedLevel);
        let mut place = match given_as {
            // Entered, its own fields are held to their ranges.
            GivenAs::Block => None,
            GivenAs::Parts => Some(Field::Parts),
            GivenAs::Trace => Some(Field::TraceOutline),
        };
        let view = self.document.load.trace.as_ref().map(|t| t.view).filter(|_| given_as == GivenAs::Trace);
        let through = view.map(|view| match view {
            TraceView::Front => 0,
            TraceView::Side => 1,
            TraceView::Plan => 2,
        });
        let c = Scalar::computed;
        let sizes = [Field::LoadLength, Field::LoadWidth, Field::LoadHeight];
        for (k, field) in sizes.into_iter().enumerate() {
            let (row, size) = (field.row(), shape.size[k]);
            let at = if through == Some(k) { Some(Field::TraceThrough) } else { place };
            if let Some(at) = at
                && !(row.min..=row.max).contains(&size)
            {
                self.problem(at, Some(size), Rule::WholeWithin { min: c(row.min), max: c(row.max) });
            }
        }
        if by_scales {
            place = Some(Field::WeighPoints);
        }
        let row = Field::LoadMass.row();
        if let Some(place) = place
            && !(row.min..=row.max).contains(&found.mass.nominal)
        {
            self.problem(place, Some(found.mass.nominal), Rule::WeightWithin { min: c(row.min), max: c(row.max) });
        }
    }

    fn block(&mut self) -> Option<Shape> {
        let sides = [Field::LoadLength, Field::LoadWidth, Field::LoadHeight].map(|f| self.needed_here(f));
        let marked = self.document.load.centre_known == Some(CentreKnown::Mark);
        // A centre that was entered is not passed over because nobody said what it is.
        let given = [Field::LoadCgFromHeel, Field::LoadCgLeft, Field::LoadCgAbove].map(|f| self.entered(f).is_some());
        if self.document.load.centre_known.is_none() && given.contains(&true) {
            self.problem(Field::CentreKnown, None, Rule::Required);
        }
        let mark = marked.then(|| self.mark(sides));
        let [Some(x), Some(y), Some(z)] = sides else { return None };
        let size = DVec3::new(x, y, z);
        let solid = Solid::new(Form::block(size), crate::document::Facing::Up, DVec3::ZERO);
        let (low, _, feet) = box_and_feet(&[(&solid, Vec::new())])?;
        let doubt = DVec2::splat(rules::TOLERANCE_TAPE.value);
        let drawn = vec![Drawn { part: None, cut: false, seen: solid.silhouette() }];
        self.drawn.clone_from(&drawn);
        let (way, centre) = match mark {
            Some(at) => {
                let (at, usual) = (at?, rules::TOLERANCE_CENTRE_MARKED.value);
                let fields = [Field::LoadCgFromHeel, Field::LoadCgLeft, Field::LoadCgAbove];
                let [x, y, z] = std::array::from_fn(|k| self.tolerance(fields[k], at[k], usual));
                (Way::Mark, Region::about(at, DVec3::new(x, y, z)))
            }
            None => (Way::Block, Region::about(solid.centroid(), size * rules::TOLERANCE_CENTRE_MIDDLE.value)),
        };
        let says = Says::centre(way, None, centre);
        Some(Shape { given_as: GivenAs::Block, low, size, feet, doubt, says, drawn, parts: Vec::new(), trace: None })
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
        let found = self.found().map(Arc::new);
        self.found.clone_from(&found);
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
        Some(Load::of(found, standing, friction, hanging))
    }
}
