//! What a closed card says in a line.

use super::cautions;
use crate::figures::{Printer, tolerance};
use crate::form::Form;
use crate::words::{fill, words};
use standfast_core::document::{CentreKnown, GivenAs, WeightKnown};
use standfast_core::place::Field;
use standfast_core::units::Quantity;
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
    let (answer, print) = (&form.answer, Printer(form.system));
    let load = &answer.document.load;
    let known = match load.weight_known {
        Some(WeightKnown::Scale) => w.scale,
        Some(WeightKnown::Note) => w.note_on_load,
        Some(WeightKnown::Estimate) => w.estimate,
        None => "",
    };
    let entered = figure(form, Field::LoadMass).map(|mass| match known {
        "" => mass,
        known => format!("{mass} ({})", known.to_lowercase()),
    });
    let plain = load.given_as == GivenAs::Block && load.weighing.is_none();
    let found = answer.load.load.as_ref();
    let mass = match found.filter(|_| !plain) {
        Some(found) => Some(tolerance(found.mass, Quantity::Mass, print)),
        None => entered,
    };
    let size = found.map(|f| print.sizes([f.size.x.get(), f.size.y.get(), f.size.z.get()]));
    let centre = match found.filter(|_| !plain) {
        Some(found) => Some(print.length(found.centre.ahead.nominal.get() - found.low.x.get(), Nearest)),
        None => figure(form, Field::LoadCgFromHeel),
    };
    let centre = centre.map(|at| fill(w.centre_summary, &[("at", &at)]));
    joined([Some(load.name.clone()), mass, size, centre, known_from(form)])
}

/// What the load is known from, where that is more than a block and its weight.
fn known_from(form: &Form) -> Option<String> {
    let w = &words().load;
    let e = &form.entries;
    let parts = e.parts.iter().filter(|p| p.cut_from.is_none()).count();
    let shape = match e.given_as {
        GivenAs::Block => match e.centre_known {
            Some(CentreKnown::Mark) => w.summary_mark.to_owned(),
            _ => w.summary_block.to_owned(),
        },
        GivenAs::Parts if parts == 0 => return Some(w.nothing_built.to_owned()),
        GivenAs::Parts => w.summary_parts.of(parts),
        GivenAs::Trace if e.trace.as_ref().is_none_or(|t| t.outline.is_empty()) => {
            return Some(w.nothing_traced.to_owned());
        }
        GivenAs::Trace => w.summary_trace.to_owned(),
    };
    let list = match e.weighing {
        Some(_) => fill(w.from_and, &[("list", &shape), ("last", w.summary_weighing)]),
        None if e.given_as == GivenAs::Block => return None,
        None => shape,
    };
    Some(fill(w.from, &[("list", &list)]))
}

pub(super) fn lift(form: &Form) -> String {
    let w = &words().card;
    let with = |text: &str, name: &str, field: Field| figure(form, field).map(|v| fill(text, &[(name, &v)]));
    joined([
        with(w.height_summary, "height", Field::LiftHeight),
        with(w.back_summary, "angle", Field::TiltBack),
        with(w.forward_summary, "angle", Field::TiltForward),
        with(w.gap_summary, "gap", Field::HeelGap),
        with(words().drive.summary_ramp, "slope", Field::RampGrade),
        with(words().drive.summary_cross_fall, "slope", Field::CrossFall),
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
