//! What is looked at before the lift, in English.

use crate::words::checklist::ChecklistWords;
use crate::words::{Count, Label};
use standfast_core::checklist::Item;

pub(super) const CHECKLIST: ChecklistWords = ChecklistWords {
    heading: "Before the lift",
    intro: "Look at each, then answer. What is not in order holds the verdict. A second tap takes an answer back.",
    item,
    yes: "In order",
    no: "Not in order",
    not_there: "Has none",
    anew: "Begin the list anew",
    summary: "{yes} of {all} in order",
    summary_no: Count { one: "1 not in order", many: "{n} not in order" },
    nothing_yet: "Nothing looked at yet",
    not_in_order: "Not in order: {list}. Not to be lifted before it is put right.",
    to_list: "Show the list",
};

fn item(item: Item) -> Label {
    let (name, help) = match item {
        Item::Examined => ("Examined for this shift", "Nothing found that keeps the truck out of service."),
        Item::PlateLegible => ("Capacity plate", "In its place and legible."),
        Item::PlateMatches => ("Plate of this truck", "As it stands: attachment, mast, tyres."),
        Item::BatteryHeld => ("Battery restraint", "Latched."),
        Item::ForksLocked => ("Fork locks", "Both forks locked in their notches."),
        Item::ForksEven => ("Fork spread", "Even about the middle, as wide as the load lets them."),
        Item::ForksSound => ("Forks", "No crack, no bend, heels not worn to their limit."),
        Item::AttachmentHeld => ("Attachment", "Locked; its hoses whole."),
        Item::Backrest => ("Load backrest", "Fitted where the load could fall back."),
        Item::Tyres => ("Tyres", "Whole; at their pressure where they hold air."),
        Item::Mast => ("Mast and chains", "Mast, chains and hoses whole; nothing leaks."),
        Item::Brakes => ("Brakes and steering", "They work."),
        Item::LoadHeld => ("Load", "Stable and held together."),
        Item::Way => ("The way", "It and the room above it looked at."),
    };
    Label { name, help }
}
