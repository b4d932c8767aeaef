//! What would have to change, in the imperative, and where it leads.

use crate::figures::{Printer, angle, slope};
use crate::sentences::name_of;
use crate::words::{fill, words};
use standfast_core::document::Document;
use standfast_core::remedy::{Leads, Needed, Remedy};
use standfast_core::scalar::Scalar;
use standfast_core::units::Quantity;
use standfast_core::units::Rounding::{Down, Nearest, Up};
use standfast_core::verdict::State;

/// What a button says: one change, or one and another.
pub fn remedy(leads: &Leads, document: &Document, print: Printer) -> String {
    let said: Vec<String> = leads.changes.iter().map(|change| one(change, document, print)).collect();
    match &said[..] {
        [first, second] => {
            // The second goes on in the same sentence.
            let mut letters = second.chars();
            let second: String = letters.next().into_iter().flat_map(char::to_lowercase).chain(letters).collect();
            fill(words().remedies.both, &[("one", first), ("other", &second)])
        }
        _ => said.concat(),
    }
}

fn one(change: &Remedy, document: &Document, print: Printer) -> String {
    let w = &words().remedies;
    let sideways = |by: Scalar| if by.get() < 0.0 { w.to_the_right } else { w.to_the_left };
    let most = |text: &str, value: String| fill(text, &[("to", &value)]);
    let percent = |to: Scalar| slope(to.get() / 100.0, Down);
    let quantity = |quantity: Quantity, to: Scalar| print.quantity(quantity, to.get(), Down);
    match *change {
        // Nobody said how far it stands off: then the gap is only assumed.
        Remedy::PushHome { .. } if document.lift.heel_gap_m.is_none() => w.push_home_assumed.to_owned(),
        Remedy::PushHome { by } => fill(w.push_home, &[("by", &print.length(by.get(), Up))]),
        Remedy::Sideshift { to } => {
            let shown = print.length(to.get().abs(), Nearest);
            fill(w.sideshift, &[("to", &shown), ("way", sideways(to))])
        }
        Remedy::Shift { by, .. } => {
            fill(w.shift, &[("by", &print.length(by.get().abs(), Nearest)), ("way", sideways(by))])
        }
        Remedy::TiltForward { to } => most(w.tilt_forward, angle(to.get(), Down)),
        Remedy::TiltBack { to } => most(w.tilt_back, angle(to.get(), Down)),
        Remedy::Corner { to } => most(w.corner, quantity(Quantity::Speed, to)),
        Remedy::CornerEmpty { to } => most(w.corner_empty, quantity(Quantity::Speed, to)),
        Remedy::Brake { to } => most(w.brake, quantity(Quantity::Acceleration, to)),
        Remedy::RampBackwards => w.ramp_backwards.to_owned(),
        Remedy::Turn { turned } => (w.turn)(turned).to_owned(),
        Remedy::Spread { to } => most(w.spread, print.length(to.get(), Up)),
        Remedy::Lower { to } => most(w.lower, print.height_down(to.get())),
        Remedy::Ramp { to } => most(w.ramp, percent(to)),
        Remedy::CrossFall { to } => most(w.cross_fall, percent(to)),
        Remedy::ExtensionsOff => w.extensions_off.to_owned(),
        Remedy::NewForks => w.new_forks.to_owned(),
        Remedy::Lighter { to } => most(w.lighter, print.mass(to.get(), Down)),
        Remedy::AttachmentOff => w.attachment_off.to_owned(),
        Remedy::Battery { to } => most(w.battery, print.mass(to.get(), Nearest)),
    }
}

/// Where a remedy leads.
pub fn leads_to(state: State) -> &'static str {
    let w = &words().remedies;
    if state == State::Go { w.to_go } else { w.to_hold }
}

/// What a truck would have to lift where nothing here helps.
pub fn needed(needed: &Needed, print: Printer) -> String {
    let values = [
        ("mass", print.mass(needed.mass.get(), Up)),
        ("centre", print.length(needed.load_centre.get(), Up)),
        ("height", print.height_up(needed.height.get())),
    ];
    fill(words().remedies.needed, &values.each_ref().map(|(name, value)| (*name, value.as_str())))
}

/// A figure that would settle a hold.
pub fn settles(place: standfast_core::place::Place) -> String {
    fill(words().remedies.settles, &[("figure", &name_of(place))])
}
