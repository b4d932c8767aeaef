//! One step in one view: what both drawings start from.

use super::View;
use super::figures::length;
use super::labels::Labels;
use super::marks;
use super::projection::{Area, Metres, Projection, Rest, Spot, Window};
use super::scene;
use standfast_core::body::BodyId;
use standfast_core::report::{Point, StepReport};
use standfast_core::scene::{Outline, Part};
use standfast_core::units::{Rounding, System};

/// What is drawn, how, and where on the sheet.
#[derive(Clone, Copy, Debug)]
pub struct Frame<'a> {
    /// Seen from where.
    pub view: View,
    /// What is drawn.
    pub step: &'a StepReport,
    /// The units to write.
    pub system: System,
    /// The texts.
    pub labels: &'a Labels,
    /// Where on the sheet.
    pub projection: Projection,
}

impl<'a> Frame<'a> {
    /// Fits a step into an area; `held` keeps the projection of a drag that is going on.
    pub fn new(
        (view, step): (View, &'a StepReport),
        system: System,
        labels: &'a Labels,
        held: Option<Projection>,
        (area, rest): (&Area, Rest),
    ) -> Self {
        let projection = held.unwrap_or_else(|| {
            let marks = [step.centre, step.truck_centre, step.bob].into_iter().chain(step.load_centre);
            let marks = marks.map(|p| seen(view, p));
            let points = scene::points(outlines(view, step)).chain(marks).chain([(0.0, 0.0)]);
            Projection::fit(&Window::of(points), area, rest)
        });
        Self { view, step, system, labels, projection }
    }

    /// The outlines of the view.
    pub fn outlines(&self) -> &'a [Outline] {
        outlines(self.view, self.step)
    }

    /// Where a point of the truck's frame is on the sheet.
    pub fn at(&self, point: Point) -> Spot {
        self.projection.spot(seen(self.view, point))
    }

    /// The way that a plumb line's cord runs up on the sheet, a unit vector: against the field.
    /// Straight up where nothing pulls in this view.
    pub fn plumb(&self) -> Spot {
        let (a, b) = seen(self.view, self.step.field);
        if a * a + b * b > 1e-9 { marks::towards((a, -b), (0.0, 0.0)) } else { (0.0, -1.0) }
    }

    /// A length in words, to the nearest.
    pub fn length(&self, metres: f64) -> String {
        length(metres, self.system, Rounding::Nearest)
    }

    /// The load's centre; without a load the common one, which nothing of a load is drawn at.
    pub fn load_centre(&self) -> Point {
        self.step.load_centre.unwrap_or(self.step.centre)
    }

    /// The load's mass as stated, kg.
    pub fn load_mass(&self) -> f64 {
        self.step.bodies.iter().filter(|b| b.id == BodyId::Load).map(|b| b.mass.get()).sum()
    }

    /// The load's outlines on the sheet, all running the same way round; what is cut out left aside.
    pub fn load(&self) -> Vec<Vec<Spot>> {
        let of = self.outlines().iter().filter(|o| o.part == Part::Load && !o.points.is_empty());
        of.map(|o| marks::one_way_round(scene::spots(o, &self.projection))).collect()
    }
}

/// A point as a view shows it.
fn seen(view: View, point: Point) -> Metres {
    match view {
        View::Side => (point.x.get(), point.z.get()),
        View::Plan => (point.x.get(), point.y.get()),
    }
}

fn outlines(view: View, step: &StepReport) -> &[Outline] {
    match view {
        View::Side => &step.scene.side,
        View::Plan => &step.scene.plan,
    }
}
