//! The words of the side view: floor loads under the wheels, labels left and right of the truck.

use super::super::blades;
use super::super::figures::{angle, floor_load, mass};
use super::super::frame::Frame;
use super::super::layout::{Want, spread, width};
use super::super::marks::{self, along, towards};
use super::super::projection::Spot;
use super::super::scene;
use super::super::sheet::{Anchor, Sheet};
use super::super::tag::{Label, PLAIN, SMALL, Tag};
use super::{RIGHT_COLUMN, SIZE, front_spot, ground_level, mast};
use standfast_core::scene::Part;
use standfast_core::units::Rounding;

/// What the axles press on the floor: arrows in the wheels, figures under them.
pub(super) fn floor_loads(f: &Frame, sheet: &mut Sheet) {
    let ground = ground_level(f);
    let (bob, post) = (f.at(f.step.bob).0, front_spot(f).0);
    let wheels = [
        (Part::FrontWheel, f.labels.front_axle, f.step.wheels.front.get(), Rounding::Up),
        (Part::SteerWheel, f.labels.steer_axle, f.step.wheels.steer.get(), Rounding::Down),
    ];
    for (part, name, load, way) in wheels {
        let Some(hub) = scene::middle(&f.step.scene.side, part).map(|m| f.projection.spot(m)) else {
            continue;
        };
        let down = (0.0, if load > 0.0 { 1.0 } else { -1.0 });
        let tip = if load > 0.0 { (hub.0, ground - 1.0) } else { (hub.0, hub.1 - 24.0) };
        let class = if load > 0.0 { "d-press" } else { "d-press d-crossed" };
        sheet.shape(class, marks::line(hub, along(tip, down, -8.0)) + &marks::head(tip, down, 1.3));
        let figure = if load > 0.0 {
            format!("{name} {}", floor_load(load, f.system, way))
        } else {
            format!("{name} {}", f.labels.lifts)
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

/// The height of the forks, and beside it in one column what is said of the load.
pub(super) fn right_labels(f: &Frame, sheet: &mut Sheet) {
    let height = f.step.lift.get();
    let (x, ground) = (RIGHT_COLUMN - 14.0, ground_level(f));
    let level = f.projection.spot((0.0, height)).1;
    let from = scene::hull(f.outlines(), Part::Fork).map_or(x - 30.0, |w| f.projection.spot(w).0);
    sheet.shape("d-dim", marks::line((from.min(x - 12.0) + 4.0, level), (x + 6.0, level)));
    let (thin, heads) = marks::dimension((x, ground), (x, level));
    sheet.shape("d-dim", thin);
    sheet.shape("d-heads", heads);
    let load = Label {
        caption: f.labels.load.to_owned(),
        figures: vec![mass(f.load_mass(), f.system, Rounding::Nearest)],
        target: f.at(f.load_centre()),
        clear: 16.0,
    };
    let fork = Label {
        caption: f.labels.fork_height.to_owned(),
        figures: vec![f.length(height)],
        target: (x, 0.5 * (ground + level)),
        clear: 0.0,
    };
    let (top, middle) = (load.target.1, RIGHT_COLUMN + 0.5 * (SIZE.0 - 4.0 - RIGHT_COLUMN));
    // In this order from the top: each stands close under the one before.
    let mut pieces = Vec::new();
    if f.step.laden {
        pieces.push((top, Piece::Label(load, true)));
    }
    if let Some((tag, target)) = blades::side_tag(f) {
        pieces.push((target.1.max(top + 1.0), Piece::Tag(tag, Some(target))));
    }
    if let Some(tag) = blades::slide_tag(f) {
        pieces.push((level.max(top + 2.0), Piece::Tag(tag, None)));
    }
    pieces.push((fork.target.1.max(top + 3.0), Piece::Label(fork, false)));
    let rooms: Vec<Want> = pieces.iter().map(|(at, p)| Want { at: *at, extent: p.height() }).collect();
    for ((_, piece), y) in pieces.iter().zip(spread(&rooms, 8.0, ground - 6.0)) {
        let top = y - 0.5 * piece.height();
        match piece {
            Piece::Label(label, true) => label.draw(sheet, RIGHT_COLUMN, Anchor::Start, top, (RIGHT_COLUMN - 4.0, y)),
            Piece::Label(label, false) => label.words(sheet, RIGHT_COLUMN, Anchor::Start, top),
            Piece::Tag(tag, target) => {
                if let Some(target) = target {
                    let from = (RIGHT_COLUMN - 4.0, top + SMALL + 5.0 + 0.7 * PLAIN);
                    sheet.shape("d-leader", marks::line(from, *target));
                    sheet.shape("d-leader-end", marks::circle(*target, 2.5));
                }
                tag.draw(sheet, middle, top);
            }
        }
    }
}

/// What stands in the column: a label, with or without a leader, or a tag with what it points at.
enum Piece {
    Label(Label, bool),
    Tag(Tag, Option<Spot>),
}

impl Piece {
    fn height(&self) -> f64 {
        match self {
            Self::Label(label, _) => label.height(),
            Self::Tag(tag, _) => tag.height() + 6.0,
        }
    }
}

pub(super) fn left_labels(f: &Frame, sheet: &mut Sheet) {
    let total = f.step.total_mass.get();
    let weigh = |kg: f64| vec![mass(kg, f.system, Rounding::Nearest)];
    let mut labels = vec![
        Label {
            caption: f.labels.together.to_owned(),
            figures: weigh(total),
            target: f.at(f.step.centre),
            clear: 14.0,
        },
        Label {
            caption: f.labels.truck.to_owned(),
            figures: weigh(total - f.load_mass()),
            target: f.at(f.step.truck_centre),
            clear: 9.0,
        },
    ];
    if !f.step.laden {
        // Without a load both together are the truck.
        labels.remove(0);
    }
    if let Some((foot, top)) = mast(f) {
        let target = along(top, towards(foot, top), 16.0);
        labels.push(Label { caption: tilt_words(f), figures: tilt_figures(f), target, clear: 2.0 });
    }
    let clear_of_truck = f.projection.spot((0.0, 1.1)).1.max(200.0);
    let rooms: Vec<Want> = labels.iter().map(|l| Want { at: l.target.1, extent: l.height() }).collect();
    for (label, y) in labels.iter().zip(spread(&rooms, 8.0, clear_of_truck)) {
        label.draw(sheet, 8.0, Anchor::Start, y - 0.5 * label.height(), (12.0 + label.width(), y));
    }
}

fn tilt_words(f: &Frame) -> String {
    let tilt = f.step.tilt_deg.get();
    let labels = f.labels;
    if tilt.abs() < 0.05 {
        labels.upright.to_owned()
    } else {
        format!("{} {}", labels.tilt, if tilt < 0.0 { labels.back } else { labels.forward })
    }
}

fn tilt_figures(f: &Frame) -> Vec<String> {
    let (tilt, lean) = (f.step.tilt_deg.get(), f.step.lean_deg.get());
    let mut figures = Vec::new();
    if tilt.abs() >= 0.05 {
        figures.push(angle(tilt.abs(), Rounding::Nearest));
    }
    if lean >= 0.05 {
        figures.push(format!("{} {}", f.labels.give, angle(lean, Rounding::Up)));
    }
    figures
}
