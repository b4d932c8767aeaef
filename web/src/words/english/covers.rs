//! Which plate covers the truck as it stands, in English.

use crate::words::covers::CoverWords;

pub(super) const COVERS: CoverWords = CoverWords {
    heading: "Of the book\u{2019}s plates for this truck",
    covered: "The plate of \u{201c}{set_up}\u{201d} is for the truck as it stands.",
    covered_by: "The plate of \u{201c}{set_up}\u{201d} is for the truck as it stands; the check has another one.",
    take_plate: "Put that plate into the check",
    nearest: "None is for the truck as it stands. Nearest is \u{201c}{set_up}\u{201d}:",
    no_plates: "None is kept for this truck.",
    front_end_not_said: "The plate does not say whether it is for the forks alone or for an attachment.",
    figure: "{field}: {named} with the plate, {fitted} as entered.",
    sections: "Moving mast sections: {named} with the plate, {fitted} as entered.",
    extensions: "Fork extensions are on, and the plate does not name them.",
    not_entered: "Not entered: {field}. The plate, or what was kept with it, has one.",
    not_for_it: "The plate is not for the truck as it is kept here:",
};
