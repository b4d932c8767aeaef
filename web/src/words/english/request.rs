//! The sheet to ask a manufacturer for a plate, in English.

use crate::words::Count;
use crate::words::request::RequestWords;
use standfast_core::document::PlateFor;
use standfast_core::request::{Part, What};

pub(super) const REQUEST: RequestWords = RequestWords {
    open: "Plate request sheet",
    heading: "Request for a capacity plate",
    intro: "To the truck's manufacturer: please give the capacities of this truck as it stands, and a plate for it.",
    missing: Count {
        one: "1 fact is not entered: write it in by hand, or enter it first.",
        many: "{n} facts are not entered: write them in by hand, or enter them first.",
    },
    print: "Print",
    save: "Save as a text file",
    close: "Back to the check",
    file: "standfast-plate-request",
    part,
    what,
    not_entered: "not entered",
    blank: "____________",
    three: "three",
    four: "four",
    front_end,
    yes: "yes",
    no: "no",
    rows: "Its rows: up to this height, at this load centre, so much",
    no_plate: "There is no plate.",
    not_covered: "What it does not cover of what is wanted",
    covered: "As entered, it covers what is wanted.",
    not_yet: "Too little is entered to say, or something entered is wrong.",
    estimate: "Estimate by moments",
    estimate_is: "About {estimate}: worked out by moments about the front axle, for planning only. It is no capacity, and \
                  nothing is lifted by it.",
    no_estimate: "None can be made from what is entered.",
    asked: "Please answer",
    asked_list: &[
        "Capacity at each height and load centre wanted, and beyond",
        "Battery's least and greatest weight for it",
        "Tilt forward and back at height",
        "Whether the attachment, tyres and mast named here are approved together",
        "The plate itself, or what is to be stamped on it",
    ],
    from: "Asked by",
    from_list: &["Name", "Company", "Date", "Answer to"],
    standing: "Made from what was entered by hand. The manufacturer's answer and the plate count, not this sheet.",
    program: "Standfast {version}",
};

fn part(part: Part) -> &'static str {
    match part {
        Part::Truck => "Truck",
        Part::Weights => "Weight and axle loads",
        Part::Battery => "Battery",
        Part::Mast => "Mast",
        Part::Forks => "Forks",
        Part::Attachment => "On the carriage",
        Part::Wanted => "Wanted, each at the most it may be",
        Part::Plate => "The plate there is",
    }
}

fn what(what: What) -> &'static str {
    match what {
        // The page says these by the field's own name.
        What::At(_) => "",
        What::AttachmentName => "Attachment",
        What::FrontEnd => "Fitted",
        What::LoadName => "Load",
        What::Mass => "Weight of the load",
        What::LoadCentre => "Load centre from the face that carries it",
        What::CentreHeight => "Load's centre above the forks",
        What::Height => "Lift height",
        What::Depth => "Load along the forks",
        What::Width => "Load across the forks",
    }
}

fn front_end(of: PlateFor) -> &'static str {
    match of {
        PlateFor::Forks => "bare forks",
        PlateFor::Attachment => "an attachment",
    }
}
