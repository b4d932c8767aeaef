//! What a closed card says in a line.

use super::cautions;
use crate::figures::{self, Printer};
use crate::form::Form;
use crate::words::{fill, words};
use standfast_core::document::WeightKnown;
use standfast_core::place::Field;
use standfast_core::units::Rounding::{self, Nearest};

/// What is known, parted by points.
fn joined(parts: impl IntoIterator<Item = Option<String>>) -> String {
    let parts: Vec<_> = parts.into_iter().flatten().filter(|p| !p.is_empty()).collect();
    if parts.is_empty() { words().card.nothing_yet.to_owned() } else { parts.join(" \u{b7} ") }
}

fn figure(form: &Form, field: Field) -> Option<String> {
    let place = field.into();
    let value = standfast_core::place::Place::get(place, &form.answer.document)?;
    Some(Printer(form.system).at(place, value, Nearest))
}

pub(super) fn truck(form: &Form) -> String {
    let w = &words().card;
    let with = |text: &str, name: &str, field: Field| figure(form, field).map(|v| fill(text, &[(name, &v)]));
    let truck = &form.answer.document.truck;
    let rows = truck.plate.as_ref().map(|p| p.rows.iter().filter_map(|r| r.capacity_kg).fold(0.0, f64::max));
    let plate = match rows {
        None => Some(w.no_plate_summary.to_owned()),
        Some(most) if most > 0.0 => {
            Some(fill(w.plate_summary, &[("mass", &Printer(form.system).mass(most, Rounding::Down))]))
        }
        Some(_) => None,
    };
    let list = joined([
        Some(truck.name.clone()),
        figure(form, Field::Service),
        with(w.battery_summary, "mass", Field::BatteryFitted),
        with(w.lifts_summary, "height", Field::MastLift),
        truck.attachment.as_ref().map(|a| a.name.clone()),
    ]);
    match plate {
        Some(plate) if list != w.nothing_yet => format!("{list} \u{b7} {plate}"),
        _ => list,
    }
}

pub(super) fn load(form: &Form) -> String {
    let w = &words().card;
    let load = &form.answer.document.load;
    let known = match load.weight_known {
        Some(WeightKnown::Scale) => w.scale,
        Some(WeightKnown::Note) => w.note_on_load,
        Some(WeightKnown::Estimate) => w.estimate,
        None => "",
    };
    let mass = figure(form, Field::LoadMass).map(|mass| match known {
        "" => mass,
        known => format!("{mass} ({})", known.to_lowercase()),
    });
    let size = match (load.length_m, load.width_m, load.height_m) {
        (Some(l), Some(w), Some(h)) => {
            let print = |m| Printer(form.system).length(m, Nearest);
            let bare = |m| print(m).split('\u{a0}').next().unwrap_or_default().to_owned();
            Some(format!("{} \u{d7} {} \u{d7} {}", bare(l), bare(w), print(h)))
        }
        _ => None,
    };
    let centre = figure(form, Field::LoadCgFromHeel).map(|at| fill(w.centre_summary, &[("at", &at)]));
    joined([Some(load.name.clone()), mass, size, centre])
}

pub(super) fn lift(form: &Form) -> String {
    let w = &words().card;
    let with = |text: &str, name: &str, field: Field| figure(form, field).map(|v| fill(text, &[(name, &v)]));
    joined([
        with(w.height_summary, "height", Field::LiftHeight),
        with(w.back_summary, "angle", Field::TiltBack),
        with(w.forward_summary, "angle", Field::TiltForward),
        with(w.gap_summary, "gap", Field::HeelGap),
    ])
}

pub(super) fn assumed(form: &Form) -> String {
    let w = &words().card;
    let Some(assessment) = &form.answer.assessment else { return w.assumed_later.to_owned() };
    let names = assessment.assumed.iter().map(|a| crate::sentences::name_of(a.place));
    let names: Vec<_> = names.take(3).collect();
    match assessment.assumed.len() {
        0 => w.assumed_none.to_owned(),
        n if n > names.len() => format!("{} \u{2026}", names.join(" \u{b7} ")),
        _ => names.join(" \u{b7} "),
    }
}

pub(super) fn cautions(form: &Form) -> String {
    let w = &words().caution;
    match cautions::of_this_lift(form).len() {
        0 => w.only_standing.to_owned(),
        n => w.about_lift.of(n),
    }
}

/// A part of a whole in percent, rounded down.
pub(super) fn part(value: f64) -> String {
    figures::slope(value, Rounding::Down)
}
