//! The plate's own words, in English.

use crate::words::Twice;
use crate::words::plate::PlateWords;
use standfast_core::document::Tyres;
use standfast_core::plate::Tilted;

pub(super) const PLATE: PlateWords = PlateWords {
    bare_forks: "The plate is for the bare forks; fitted: {what}.",
    with_attachment: "The plate is for {what}; the bare forks are fitted.",
    with_some_attachment: "The plate is for an attachment; the bare forks are fitted.",
    other_attachment: Twice {
        stated: "The plate is for {named}; fitted: {fitted}.",
        may: "The plate is for {named}; fitted: {fitted}. Look whether it is the same one.",
    },
    other_mast: "The plate is for a mast that lifts to {named}; the one fitted lifts to {fitted}.",
    other_tyres: "The plate is for {named}; fitted: {fitted}.",
    tyres_unknown: "The plate is for {named}; which are fitted is not entered.",
    other_tilt,
    named: "{name}, {mass}",
    weighing: "an attachment of {mass}",
    some: "an attachment",
    tyres,
    tyres_button,
    tyres_unsaid: "Not said",
    more: "What else the plate says",
    sheet: "From the type sheet",
    not_a_day: "\u{201c}{text}\u{201d} is not a day. Write year, month and day: 2024-03-12.",
    text_too_long: "At most {most} letters. Shorten it.",
    unsaid: "As entered, the plate does not say {list} it was issued for: compare it with the truck. Another one needs a \
             plate of its own.",
    unsaid_mast: "which mast",
    unsaid_tyres: "which tyres",
    unsaid_attachment: "which attachment",
};

fn other_tilt(way: Tilted) -> &'static str {
    match way {
        Tilted::Back => "The plate is for a mast that tilts back {named} at most; the one fitted tilts back {fitted}.",
        Tilted::Forward => {
            "The plate is for a mast that tilts forward {named} at most; the one fitted tilts forward {fitted}."
        }
    }
}

fn tyres(tyres: Tyres) -> &'static str {
    match tyres {
        Tyres::Cushion => "cushion tyres",
        Tyres::SolidPneumatic => "solid pneumatic tyres",
        Tyres::Pneumatic => "pneumatic tyres",
    }
}

fn tyres_button(tyres: Tyres) -> &'static str {
    match tyres {
        Tyres::Cushion => "Cushion",
        Tyres::SolidPneumatic => "Solid pneumatic",
        Tyres::Pneumatic => "Pneumatic, with air",
    }
}
