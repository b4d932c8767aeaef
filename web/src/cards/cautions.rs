//! Cautions: those that always stand, and those of this lift.

use crate::entries::DriveEntry;
use crate::figures::Printer;
use crate::form::Form;
use crate::sentences;
use crate::words::{fill, words};
use standfast_core::document::PlateFor;
use standfast_core::place::Field;
use standfast_core::report::Assessment;
use standfast_core::units::Rounding;
use yew::prelude::*;

/// What is to be said of this lift, from the report.
pub fn of_this_lift(form: &Form) -> Vec<String> {
    let w = &words().caution;
    let mut list: Vec<String> = sentences::not_in_order(&form.entries.checklist).into_iter().collect();
    let Some(a) = &form.answer.assessment else { return list };
    let print = Printer(form.system);
    if let Some((centre, tested)) = a.plate.centre_higher {
        let (centre, tested) = (print.length(centre.get(), Rounding::Up), print.length(tested.get(), Rounding::Down));
        list.push(fill(w.centre_higher, &[("centre", &centre), ("tested", &tested)]));
    }
    list.extend(of_the_drive(form).into_iter().map(str::to_owned));
    list.extend(of_the_load(form, a).into_iter().map(str::to_owned));
    if form.entries.attachment {
        list.push(w.attachment.to_owned());
    }
    list.extend(unsaid_by_the_plate(form));
    if let Some(estimate) = a.plate.estimate {
        list.push(fill(w.estimate_here, &[("estimate", &print.mass(estimate.get(), Rounding::Down))]));
    }
    for contradiction in &a.contradictions {
        let names: Vec<_> = contradiction.suspects.iter().map(|&p| sentences::name_of(p)).collect();
        list.push(fill(words().verdict.suspects, &[("list", &names.join(", "))]));
    }
    list.extend(a.closure.iter().filter(|t| !t.closes).map(|t| sentences::suspects(t, print)));
    if let Some(assumed) = form.answer.assumed(Field::CgHeight.into()) {
        let range = print.taken(assumed.place, assumed.lo.get(), assumed.hi.get());
        list.push(fill(w.inferred, &[("range", &range)]));
    }
    list
}

/// What the plate does not say of the truck it was issued for.
fn unsaid_by_the_plate(form: &Form) -> Option<String> {
    let w = &words().plate;
    let plate = form.answer.document.truck.plate.as_ref()?;
    let names_none = plate.attachment.trim().is_empty() && plate.attachment_kg.is_none();
    let unsaid = [
        (plate.mast_lift_m.is_none(), w.unsaid_mast),
        (plate.issued_for == Some(PlateFor::Attachment) && names_none, w.unsaid_attachment),
        (plate.tyres.is_none(), w.unsaid_tyres),
    ];
    let list: Vec<_> = unsaid.into_iter().filter_map(|(so, text)| so.then_some(text)).collect();
    (!list.is_empty()).then(|| fill(w.unsaid, &[("list", &list.join(", "))]))
}

/// What could not be checked on the blades, and what hangs.
fn of_the_load(form: &Form, a: &Assessment) -> Vec<&'static str> {
    let w = &words().blades;
    let unstamped = a.forks.arms.iter().any(|arm| arm.allowed.is_none());
    let hangs = form.entries.hanging;
    [
        (unstamped, w.caution_not_stamped),
        (a.forks.wear.is_none(), w.caution_wear),
        (!hangs && form.entries.underside.is_none(), w.caution_underside),
        (hangs, w.caution_hanging),
    ]
    .into_iter()
    .filter_map(|(so, text)| so.then_some(text))
    .collect()
}

/// What of the drive is left out, and where the way is taken to be level.
fn of_the_drive(form: &Form) -> Vec<&'static str> {
    let w = &words().drive;
    let drive = form.entries.drive;
    let out = |choice| !DriveEntry::looks_at(choice);
    let (ramp, cross) = (&form.answer.document.drive.ramp_pct, &form.answer.document.drive.cross_fall_pct);
    [
        (out(drive.brake), w.caution_brake),
        (out(drive.corner), w.caution_corner),
        (out(drive.corner_empty), w.caution_corner_empty),
        (ramp.is_none() && cross.is_none(), w.caution_level),
        (ramp.is_none() && cross.is_some(), w.caution_no_ramp),
        (ramp.is_some() && cross.is_none(), w.caution_no_cross_fall),
    ]
    .into_iter()
    .filter_map(|(so, text)| so.then_some(text))
    .collect()
}

pub(super) fn card(form: &Form) -> Html {
    let w = &words().caution;
    let here = of_this_lift(form);
    let items = |list: &[&str]| html! { <ul>{ for list.iter().map(|text| html! { <li>{ *text }</li> }) }</ul> };
    html! {
        <div class="cautions" data-testid="cautions">
            <h3>{ w.this_lift }</h3>
            if here.is_empty() {
                <p>{ w.nothing_special }</p>
            } else {
                <ul data-testid="cautions-here">{ for here.iter().map(|text| html! { <li>{ text }</li> }) }</ul>
            }
            <h3>{ w.standing }</h3>
            { items(&[w.first, w.estimate, w.change, w.rounding]) }
            <h3>{ w.not_checked }</h3>
            { items(w.not_checked_list) }
            <h3>{ w.not_modelled }</h3>
            { items(w.not_modelled_list) }
        </div>
    }
}
