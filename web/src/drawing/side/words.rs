//! The words of the side view: floor loads under the wheels, labels left and right of the truck.

use super::super::figures::{angle, floor_load, length, mass};
use super::super::layout::{Want, spread, width};
use super::super::marks::{self, along, towards};
use super::super::scene;
use super::super::sheet::{Anchor, Sheet};
use super::super::tag::{Label, PLAIN, SMALL};
use super::{RIGHT_COLUMN, SIZE, View};
use standfast_core::body::BodyId;
use standfast_core::scene::Part;
use standfast_core::units::Rounding;

impl View<'_> {
    /// What the axles press on the floor: arrows in the wheels, figures under them.
    pub(super) fn floor_loads(&self, sheet: &mut Sheet) {
        let ground = self.ground_level();
        let (bob, post) = (self.at(self.step.bob).0, self.front_spot().0);
        let wheels = [
            (Part::FrontWheel, self.labels.front_axle, self.step.wheels.front.get(), Rounding::Up),
            (Part::SteerWheel, self.labels.steer_axle, self.step.wheels.steer.get(), Rounding::Down),
        ];
        for (part, name, load, way) in wheels {
            let Some(hub) = scene::middle(&self.step.scene.side, part).map(|m| self.projection.spot(m)) else {
                continue;
            };
            let down = (0.0, if load > 0.0 { 1.0 } else { -1.0 });
            let tip = if load > 0.0 { (hub.0, ground - 1.0) } else { (hub.0, hub.1 - 24.0) };
            let class = if load > 0.0 { "d-press" } else { "d-press d-crossed" };
            sheet.shape(class, marks::line(hub, along(tip, down, -8.0)) + &marks::head(tip, down, 1.3));
            let figure = if load > 0.0 {
                format!("{name} {}", floor_load(load, self.system, way))
            } else {
                format!("{name} {}", self.labels.lifts)
            };
            let wide = width(&figure, SMALL);
            let (least, most) = (post.min(bob) - 26.0, post.max(bob) + 26.0);
            let x = match part {
                Part::FrontWheel if most + wide < SIZE.0 - 6.0 => most,
                Part::FrontWheel => least - wide,
                _ => (hub.0 - 0.5 * wide).min(least - wide).max(6.0),
            };
            sheet.words("d-floor", (x, ground + 32.0), Anchor::Start, SMALL, &figure);
        }
    }

    pub(super) fn fork_height(&self, sheet: &mut Sheet) {
        let height = self.step.lift.get();
        let (x, ground) = (RIGHT_COLUMN - 14.0, self.ground_level());
        let level = self.projection.spot((0.0, height)).1;
        let from = scene::hull(&self.step.scene.side, Part::Fork).map_or(x - 30.0, |w| self.projection.spot(w).0);
        sheet.shape("d-dim", marks::line((from.min(x - 12.0) + 4.0, level), (x + 6.0, level)));
        let (thin, heads) = marks::dimension((x, ground), (x, level));
        sheet.shape("d-dim", thin);
        sheet.shape("d-heads", heads);
        let fork = Label {
            caption: self.labels.fork_height.to_owned(),
            figures: vec![length(height, self.system, Rounding::Nearest)],
            target: (x, 0.5 * (ground + level)),
            clear: 0.0,
        };
        let load = self.step.load_centre.map(|at| Label {
            caption: self.labels.load.to_owned(),
            figures: vec![mass(self.load_mass(), self.system, Rounding::Nearest)],
            target: self.at(at),
            clear: 16.0,
        });
        let of_load = load.is_some();
        let wants: Vec<Label> = load.into_iter().chain([fork]).collect();
        let rooms: Vec<Want> = wants.iter().map(|l| Want { at: l.target.1, extent: l.height() }).collect();
        for (k, (label, y)) in wants.iter().zip(spread(&rooms, 8.0, ground - 6.0)).enumerate() {
            if of_load && k == 0 {
                label.draw(sheet, RIGHT_COLUMN, Anchor::Start, y - 0.5 * label.height(), (RIGHT_COLUMN - 4.0, y));
            } else {
                let top = y - 0.5 * label.height();
                sheet.words("d-caption", (RIGHT_COLUMN, top + SMALL), Anchor::Start, SMALL, &label.caption);
                let base = (RIGHT_COLUMN, top + SMALL + 1.1 * PLAIN);
                sheet.words("d-figure", base, Anchor::Start, PLAIN, &label.figures[0]);
            }
        }
    }

    pub(super) fn left_labels(&self, sheet: &mut Sheet) {
        let total = self.step.total_mass.get();
        let weigh = |kg: f64| vec![mass(kg, self.system, Rounding::Nearest)];
        let mut labels = vec![
            Label {
                caption: self.labels.together.to_owned(),
                figures: weigh(total),
                target: self.at(self.step.centre),
                clear: 14.0,
            },
            Label {
                caption: self.labels.truck.to_owned(),
                figures: weigh(total - self.load_mass()),
                target: self.at(self.step.truck_centre),
                clear: 9.0,
            },
        ];
        if !self.step.laden {
            // Without a load both together are the truck.
            labels.remove(0);
        }
        if let Some((foot, top)) = self.mast() {
            let target = along(top, towards(foot, top), 16.0);
            labels.push(Label { caption: self.tilt_words(), figures: self.tilt_figures(), target, clear: 2.0 });
        }
        let clear_of_truck = self.projection.spot((0.0, 1.1)).1.max(200.0);
        let rooms: Vec<Want> = labels.iter().map(|l| Want { at: l.target.1, extent: l.height() }).collect();
        for (label, y) in labels.iter().zip(spread(&rooms, 8.0, clear_of_truck)) {
            label.draw(sheet, 8.0, Anchor::Start, y - 0.5 * label.height(), (12.0 + label.width(), y));
        }
    }

    fn tilt_words(&self) -> String {
        let tilt = self.step.tilt_deg.get();
        let labels = self.labels;
        if tilt.abs() < 0.05 {
            labels.upright.to_owned()
        } else {
            format!("{} {}", labels.tilt, if tilt < 0.0 { labels.back } else { labels.forward })
        }
    }

    fn tilt_figures(&self) -> Vec<String> {
        let (tilt, lean) = (self.step.tilt_deg.get(), self.step.lean_deg.get());
        let mut figures = Vec::new();
        if tilt.abs() >= 0.05 {
            figures.push(angle(tilt.abs(), Rounding::Nearest));
        }
        if lean >= 0.05 {
            figures.push(format!("{} {}", self.labels.give, angle(lean, Rounding::Up)));
        }
        figures
    }

    fn load_mass(&self) -> f64 {
        self.step.bodies.iter().filter(|b| b.id == BodyId::Load).map(|b| b.mass.get()).sum()
    }
}
