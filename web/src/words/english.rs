//! English.

use super::*;

mod blades;
mod book;
mod checklist;
mod covers;
mod drive;
mod fields;
mod known;
mod limits;
mod load;
mod loads;
mod log;
mod paper;
mod parts;
mod places;
mod plate;
mod remedies;
mod request;
mod share;
mod sheet;
mod store;
mod tables;
mod trace;

/// All texts in English.
pub static ENGLISH: Words = Words {
    verdict: VerdictWords {
        heading: "Verdict",
        no_go: "NO-GO",
        hold: "HOLD",
        go: "GO, WITHIN THE PLATE",
        none: "NOT YET",
        more_reasons: Count { one: "1 more reason", many: "{n} more reasons" },
        more_problems: Count { one: "1 more to put right", many: "{n} more to put right" },
        fewer: "Show less",
        go_there: "Go to the field",
        measure: "Measure better: {what}.",
        standing: "For planning and teaching: plate, manufacturer, competent person and local rules come first.",
        as_entered: "As entered it passes; not over the whole range of what is uncertain.",
        needed: Count {
            one: "1 figure is still needed: {first}.",
            many: "{n} figures are still needed, first: {first}.",
        },
        wrong: "{field}: {problem}",
        no_plate: "No capacity plate is entered; nothing is lifted without one that covers it.",
        extensions_not_named: "The plate does not name the fork extensions that are on ({mass}).",
        too_high: "Lifted to {height}; the plate ends at {last}, {margin} short.",
        too_far_out: Twice {
            stated: "The load centre is at {centre}; the plate ends at {last}, {margin} short.",
            may: "The load centre may be at {centre}; the plate ends at {last}, {margin} short.",
        },
        too_heavy: Twice {
            stated: "The load weighs {mass}; the plate allows {allowed} at {centre} and {height}: {margin} too much.",
            may: "The load may weigh {mass}; the plate allows {allowed} at {centre} and {height}: {margin} too much.",
        },
        battery: "The battery weighs {fitted}; the plate asks for {window}.",
        battery_unknown: "The weight of the battery fitted is not entered; the plate has limits for it.",
        off_centre: Twice {
            stated: "The load's centre is {offset} off the middle; the ordinary rating reaches {limit}, {margin} short.",
            may: "The load's centre may be {offset} off the middle; the ordinary rating reaches {limit}, {margin} short.",
        },
        beyond_tips: Twice {
            stated: "The load's centre is {beyond} beyond the fork tips.",
            may: "The load's centre may be {beyond} beyond the fork tips.",
        },
        beside_forks: Twice {
            stated: "The load's centre is {beyond} outside the forks.",
            may: "The load's centre may be {beyond} outside the forks.",
        },
        tips: Twice {
            stated: "{pose}, it goes over {way}: its plumb line falls {beyond} outside the {line}.",
            may: "{pose}, it may go over {way}: its plumb line may fall {beyond} outside the {line}.",
        },
        slope: Twice {
            stated: "{pose}, it stands {stood} of slope {way}; {asked} is asked, {margin} short.",
            may: "{pose}, it may stand only {stood} of slope {way}; {asked} is asked, {margin} short.",
        },
        not_level: Twice {
            stated: "{pose}, it does not stand even level ground {way}; {asked} of slope is asked.",
            may: "{pose}, it may not stand even level ground {way}; {asked} of slope is asked.",
        },
        contradicts: "Entered figures and plate contradict each other: {test}, such a truck stands {stood}; its plate \
                      says it stood {asked}.",
        suspects: "One of these is wrong: {list}.",
        within: "The load weighs {mass} at most; the plate allows {allowed}: {margin} in hand.",
        tightest: "Tightest: {step}, {share} of what may be used.",
        estimate: "Estimate for planning only: about {estimate}. Ask the manufacturer for a plate.",
        at_least: "at least {a}",
        at_most: "at most {a}",
        between: "{a} to {b}",
    },
    problem: ProblemWords {
        needed: "Still needed: {range}.",
        choose: "Still needed: choose one.",
        list_empty: "Still needed: at least one row.",
        not_a_number: "\u{201c}{text}\u{201d} is not a number as it stands. Enter the figure alone: {range}.",
        ambiguous: "\u{201c}{text}\u{201d} may be read two ways. Write {whole}, or {decimal} for the decimal.",
        ambiguous_marks: "\u{201c}{text}\u{201d} may be read two ways. Write it with one decimal mark and no others.",
        not_finite: "That is not a number that can be used. Enter {range}.",
        within: "{value} is out of range. Enter {range}.",
        not_more: "{value} is more than {limit}, the figure for \u{201c}{of}\u{201d}. Lower it, or correct that one.",
        not_less: "{value} is less than {limit}, the figure for \u{201c}{of}\u{201d}. Raise it, or correct that one.",
        together: "Goes with \u{201c}{with}\u{201d}: enter both or neither.",
        axle_sum: "The axle loads add up to {sum}; the service weight is {total}. One of the three is wrong.",
        parts: "Battery, mast, carriage, forks and axle weigh {parts} together; this service weight leaves room for \
                {limit}. One of them is wrong.",
        plate_falls: "A plate never allows more higher up or further out, as here against row {row}. Correct one.",
        plate_twice: "Same height and load centre as row {row}. Correct one, or remove it.",
        not_known_so: "The file says how {path} is known, but there is no such figure, or it cannot be known so.",
        tolerance_within: "\u{201c}{text}\u{201d} is out of range. Enter {range}.",
        too_long: "At most {most}. Remove some.",
        row: "{field}, row {row}",
    },
    tools: ToolWords {
        app: "Standfast",
        units: "Units",
        metric: "Metric",
        us: "US",
        undo: "Undo",
        redo: "Redo",
        files: "Files and examples",
        start_own: "Start with my own truck",
        example_1: "Example 1",
        example_2: "Example 2",
        example_3: "Example 3",
        save: "Save to a file",
        open: "Open a file",
        invented: "Invented example",
        invented_changed: "Invented example, changed",
        own: "Own check",
        start_ask: "This clears every entry. Undo brings them back.",
        start_yes: "Clear and start",
        start_no: "Keep what is there",
        example_yes: "Clear and show the example",
        save_ask: "These entries cannot be read as they stand and will be left out of the file: {list}.",
        save_yes: "Save without them",
        save_no: "Go back",
        close: "Close",
        storage_blocked: "This browser does not keep entries for this page, so a reload loses them. Save to a file instead.",
        storage_damaged: "What was kept from last time could not be read. It was set aside, not deleted; here is the example.",
        storage_lost: "What was kept from last time could not be read, nor set aside. Here is the example.",
        file_unreadable: "line {line}, column {column}: {detail}",
        file_other: "it does not say that it is a Standfast check.",
        file_other_named: "it is a \u{201c}{found}\u{201d} file, not a Standfast check.",
        file_newer: "it was written by a newer Standfast (format {found}; this one reads up to {known}).",
        file_large: "it is larger than any check can be.",
        file_not_read: "the browser could not read it.",
        file_refused: "The file \u{201c}{name}\u{201d} was not opened and nothing was changed: {why}",
        file_opened: "Opened \u{201c}{name}\u{201d}. Undo brings back what was there.",
        stopped: "Standfast has stopped",
        stopped_detail: "A fault in the program, not in your entries. What it last showed may be wrong: do not use it.",
        stopped_save: "Save the last entries to a file",
        stopped_reload: "Then load the page again.",
    },
    card: CardWords {
        entries: "What is entered",
        truck: "Truck",
        load: "Load",
        lift: "Move",
        assumed: Count { one: "Assumed (1 figure)", many: "Assumed ({n} figures)" },
        cautions: "Cautions",
        needed: Count { one: "1 needed", many: "{n} needed" },
        wrong: Count { one: "1 wrong", many: "{n} wrong" },
        nothing_yet: "Nothing entered yet",
        note: Label { name: "Remark", help: "What this check is, who entered it" },
        truck_name: Label { name: "Truck's name", help: "As it is called in the yard" },
        load_name: Label { name: "What it is", help: "" },
        attachment_name: Label { name: "Attachment's name", help: "" },
        group_build: "Build",
        group_weights: "Weight and battery",
        group_mast: "Mast",
        group_forks: "Forks",
        group_plate: "Capacity plate",
        group_attachment: "Attachment",
        group_centre: "Centre of gravity",
        group_heights: "Fork heights",
        group_tilt: "Tilt while raised",
        group_stands: "How it stands on the forks",
        more_figures: "More figures, if known",
        more_forks: "Stamped capacity, wear, extensions",
        three: "Three wheels",
        four: "Four wheels",
        plate_there: "On the truck",
        plate_none: "None",
        plate_present: "Plate",
        for_forks: "Forks alone",
        for_attachment: "The attachment",
        extensions_named: "Named",
        extensions_unnamed: "Not named",
        add_row: "Add a row",
        remove_row: "Remove row {n}",
        row: "Row {n}",
        attachment_present: "Fitted",
        attachment_none: "Forks alone",
        attachment_there: "An attachment",
        sections: "Moving mast sections",
        section: "Section {n}, from outside",
        add_section: "Add a section",
        remove_section: "Remove section {n}",
        scale: "Scale",
        note_on_load: "Note",
        estimate: "Estimate",
        middle: "In the middle",
        mark: "At a mark",
        range: "{min} to {max}",
        left_empty: "Assumed: {range} is taken. {basis}",
        optional: "May stay empty.",
        from_to: "{a} to {b}",
        battery_summary: "battery {mass}",
        lifts_summary: "lifts {height}",
        plate_summary: "plate {mass}",
        no_plate_summary: "no plate",
        centre_summary: "centre {at} from the heel",
        height_summary: "put down at {height}",
        back_summary: "back {angle}",
        forward_summary: "forward {angle}",
        gap_summary: "heel gap {gap}",
        assumed_intro: "Nobody entered these figures. Each is taken over the whole range shown, whichever end is worse. \
                        Entering one makes the answer surer.",
        assumed_none: "Nothing is assumed.",
        built_in: "Built into the model: where it takes these to be, for every truck.",
        of_wheelbase: "{n} % of wheelbase",
        of_blade: "{n} % of blade",
        assumed_later: "What is assumed shows as soon as nothing is missing.",
        basis_middle: "The middle of the block, give or take a part of its size.",
        basis_zero: "Not entered: taken as none.",
        basis_worked: "Worked out from the other entries.",
        basis_window: "The plate's battery window.",
        basis_limit: "As far as the truck's own limit goes.",
        basis_inferred: "Inferred: a truck with this plate has passed the platform tests; all that still pass are counted.",
        enter_it: "Enter it",
    },
    caution: CautionWords {
        only_standing: "The standing ones",
        about_lift: Count { one: "1 about this lift", many: "{n} about this lift" },
        standing: "Always",
        first: "The capacity plate, the truck's operating instructions, the manufacturer, a competent person and the \
                local rules come first.",
        estimate: "This is an estimate for planning and teaching. A wrong entry makes a wrong answer.",
        rounding: "Figures are rounded to the cautious side: allowed and in hand down, asked and used up.",
        change: "A changed attachment, mast or load centre needs the manufacturer's approval and a plate to match \
                 before lifting.",
        not_modelled: "Not in the model",
        not_modelled_list: &[
            "bumps, kerbs and holes, mast swing and hydraulic shocks",
            "tyre squash beyond the mast's stated give",
            "swinging loads, liquids that surge, loads that shift within",
            "wind",
            "more than one truck on a load",
            "people on the forks",
            "other kinds of truck",
        ],
        not_checked: "Not checked here",
        not_checked_list: &[
            "driving otherwise than in the steps shown: braking in a bend, a bend on a ramp or a cross-fall, turning on a \
             ramp, braking without the load, speeding up",
            "whether the tyres hold: on a slope, braking, in a bend",
            "whether the forks, the load or the chassis touch the ground where a ramp begins or ends",
            "the load's own strength: whether it holds together when it is lifted there",
            "the floor, the rack, the way there",
        ],
        this_lift: "This lift",
        nothing_special: "Nothing beyond the standing cautions.",
        centre_higher: "The load's centre stands up to {centre} above the forks; the plate was proven with a load whose \
                        centre stands {tested} up. The slopes above are worked out for the higher one; the plate does \
                        not prove it.",
        attachment: "An attachment is fitted: the plate must name it, and lost load and weight count in every step.",
        inferred: "The height of the truck's centre of gravity is inferred from its plate, {range}, not measured.",
        estimate_here: "Where the plate does not answer, an estimate by moments gives about {estimate}: for planning and \
                        for asking the manufacturer, not for lifting.",
    },
    stage: StageWords {
        heading: "The truck and its load, step by step",
        which_drawing: "Which drawing",
        side: "Side view",
        plan: "Plan",
        nothing_drawn: "Drawn as soon as nothing is missing or wrong.",
        steps: "Steps of the move",
        steps_help: "How much of what may be used is used, at the worst of what is uncertain. 100 % is each step's limit.",
        used: "{share}",
        over: "OVER",
        tightest: "Tightest",
        table: "The numbers of this step",
        working: "Working",
        working_intro: "Moments about each tipping line, as stated: each body on level ground, then slope and \
                        acceleration. The lever is the moment over the weight. 100 % used is the point of tipping.",
        body: "Body",
        mass: "Weight",
        lever: "Lever",
        moment: "Moment",
        holding: "Holds it down",
        overturning: "Turns it over",
        slope_entry: "Slope",
        acceleration_entry: "Acceleration",
        share: "Share used",
        distance: "Plumb line inside by",
        tip_angle: "Tips after a further",
        does_not_tip: "does not tip that way",
        stated_worst: "{stated}; at worst {worst}",
        slopes: "Slopes asked of this step",
        slopes_intro: "The stability standards' platform tests, asked of this step with its own load.",
        test: "Test",
        about: "Over",
        asked: "Asked",
        stood: "Stands",
        stood_worst: "At worst",
        in_hand: "In hand",
        source: "Source",
        wheel_loads: "Wheel loads in this step",
        left_front: "Left front",
        right_front: "Right front",
        front_axle: "Front axle",
        steer_axle: "Steer axle",
    },
    blades: blades::BLADES,
    book: book::BOOK,
    loads: loads::LOADS,
    log: log::LOG,
    tables: tables::TABLES,
    checklist: checklist::CHECKLIST,
    covers: covers::COVERS,
    drive: drive::DRIVE,
    known: known::KNOWN,
    limits: limits::LIMITS,
    load: load::LOAD,
    load_problem: load::LOAD_PROBLEM,
    paper: paper::PAPER,
    parts: parts::PARTS,
    places: places::PLACES,
    plate: plate::PLATE,
    remedies: remedies::REMEDIES,
    request: request::REQUEST,
    share: share::SHARE,
    sheet: sheet::SHEET,
    store: store::STORE,
    trace: trace::TRACE,
    mast_upright: "mast upright",
    mast_back: "mast back {angle}",
    mast_forward: "mast forward {angle}",
    decimal: ".",
    // A narrow space: a comma would be a decimal mark to half the world.
    group: "\u{202f}",
    field: fields::label,
    body,
    step: drive::step,
    line,
    way,
    test,
    mark,
    built_in,
};

fn body(id: BodyId) -> String {
    match id {
        BodyId::Chassis => "Chassis and counterweight".to_owned(),
        BodyId::Battery => "Battery".to_owned(),
        BodyId::Operator => "Operator".to_owned(),
        BodyId::SteerAxle => "Steer axle".to_owned(),
        BodyId::MastOuter => "Outer mast".to_owned(),
        BodyId::MastStage(n) => format!("Mast section {}", n + 1),
        BodyId::Carriage => "Carriage".to_owned(),
        BodyId::Forks => "Forks".to_owned(),
        BodyId::Extensions => "Fork extensions".to_owned(),
        BodyId::Attachment => "Attachment".to_owned(),
        BodyId::Load => "Load".to_owned(),
    }
}

fn line(id: LineId) -> &'static str {
    match id {
        LineId::Front => "front tipping line",
        LineId::Left => "left tipping line",
        LineId::Right => "right tipping line",
    }
}

fn way(id: LineId) -> &'static str {
    match id {
        LineId::Front => "ahead",
        LineId::Left => "to the left",
        LineId::Right => "to the right",
    }
}

fn test(test: Test) -> &'static str {
    match test {
        Test::LongitudinalStacking => "Stacking, ahead",
        Test::LongitudinalTravelling => "Travelling, ahead",
        Test::LateralStacking => "Stacking, sideways",
        Test::LateralTravelling => "Travelling, sideways",
    }
}

fn built_in(what: BuiltIn) -> &'static str {
    match what {
        BuiltIn::OperatorBehind => "Operator behind the front axle",
        BuiltIn::OperatorHeight => "Operator's centre above the ground",
        BuiltIn::SteerAxleHeight => "Steer axle's centre above the ground",
        BuiltIn::MastBehindFace => "Mast sections behind the fork face",
        BuiltIn::CarriageBehindFace => "Carriage centre behind the fork face",
        BuiltIn::CarriageAboveForks => "Carriage centre above the blades",
        BuiltIn::ForksAhead => "Centre of the forks ahead of the fork face",
    }
}

fn mark(mark: Mark) -> &'static str {
    match mark {
        Mark::Read => "read in the source",
        Mark::Memory => "from memory",
        Mark::CommonPractice => "common practice",
        Mark::OurChoice => "our choice",
    }
}
