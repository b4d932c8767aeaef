//! The load's card, in English.

use crate::words::load::{LoadProblemWords, LoadWords};
use crate::words::{Count, Label};
use standfast_core::document::{RaisedEnd, Side, Turned};
use standfast_core::found::{LoadFigure, Way};
use standfast_core::friction::Underside;
use standfast_core::material::Material;

pub(super) const LOAD: LoadWords = LoadWords {
    group_shape: "Shape",
    group_weight: "Weight",
    group_found: "What was found",
    group_stands: "On the forks",
    block: "One block",
    parts: "Parts",
    trace: "Traced",
    parts_help: "Boxes, cylinders, cones and the like put together, each with a weight or a material.",
    trace_help: "Its outline traced on a photo or on squared paper, and how far it goes through.",
    open_parts: "Build it from parts",
    open_trace: "Trace the outline",
    count_parts: Count { one: "1 part", many: "{n} parts" },
    count_cuts: Count { one: "1 cut-out", many: "{n} cut-outs" },
    count_points: Count { one: "1 point tapped", many: "{n} points tapped" },
    nothing_built: "No part entered yet.",
    nothing_traced: "Nothing traced yet.",
    straightened: "picture straightened",
    weight_optional: "Its shape, or the scales, say the weight. Entered, it is a second way to know it.",
    material_none: "Not chosen",
    material_counts: "Counted as {range} kg/m\u{b3}. {source}",
    weighed: Label {
        name: "Weighed on supports",
        help: "Scales under the load say its weight and where its centre is; one end raised, how high too",
    },
    weigh_none: "Not weighed",
    weigh_two: "Two bearers right across the load. They tell the centre in the direction in which they stand further apart.",
    weigh_more: "The middle of each support, as seen from above.",
    weigh_from_block: "Places: ahead of the block's face at the heel, left of its middle.",
    weigh_from_parts: "Places: from the same point as the parts.",
    weigh_from_trace: "Places: from the outline's end at the heel, left of its middle.",
    support: "Support {n}",
    raised_none: "Level only",
    raised_help: "Lay blocks under that end's supports and read all scales again: it tells how high the centre is.",
    scales_say: "The scales say",
    found_later: "Shows as soon as nothing is missing or wrong with the load.",
    weight: "Weight",
    centre_from_heel: "Centre from its heel side",
    centre_left: "Centre left of its middle",
    centre_right: "Centre right of its middle",
    centre_above: "Centre above its underside",
    from_heel: "{value} from its heel side",
    left_of_middle: "{value} left of its middle",
    right_of_middle: "{value} right of its middle",
    above_underside: "{value} above its underside",
    size: "Size",
    give_or_take: "{value} \u{b1} {by}",
    in_range: "{value} ({a} to {b})",
    ways_help: "What was measured decides before what was worked out, that before what was only taken. The one that \
                decides is marked \u{25c6}.",
    decides: "decides",
    disagree: "They do not agree on {figure}: by {one} {one_says}, by {other} {other_says}.",
    disagree_counted: "Both are counted with, whichever is worse. Measure again.",
    from: "from {list}",
    from_and: "{list} and {last}",
    summary_block: "its middle",
    summary_mark: "a mark",
    summary_parts: Count { one: "1 part", many: "{n} parts" },
    summary_trace: "a traced outline",
    summary_weighing: "a weighing",
    picture: "From above: the forks come from below; the load's own heel side is the thick one.",
    forks_here: "forks",
    underside_unknown: "Not known",
    underside_slippery: "Not said: the most slippery of these is counted.",
    underside_counts: "Friction counted: {there} standing, {worst} once it moves. {source}",
    lies: "Lies on the forks",
    hangs: "Hangs from them",
    hangs_counts: "Of what the plate allows, only a part may hang; the load counts at the hook, for height and place alike.",
    working: "How the load's centre was found",
    working_intro: "Each part with its weight and its own centre, from the point measured from; weight times distance \
                    summed and divided by the whole weight gives the common centre. Cut-outs are already taken away.",
    working_part: "Part",
    working_sum: "Together",
    volume: "Volume",
    part_nth: "Part {n}",
    ahead: "Ahead",
    left: "Left",
    above: "Above",
    way,
    figure,
    turned,
    raised_end,
    underside,
    material,
};

pub(super) const LOAD_PROBLEM: LoadProblemWords = LoadProblemWords {
    weight_or_material: "Enter a weight, choose a material or weigh it: one of them is needed.",
    part_weight_or_material: "Enter this part's weight, or choose what it is made of.",
    outline_short: "The outline has {n} points; it needs three at least.",
    outline_crosses: "The edges from points {a} and {b} cross or touch. Move one of those points.",
    outline_flat: "The outline encloses nothing. Draw it again.",
    hole_outside: "This hole is not wholly inside the outline, or meets another hole. Move it.",
    cut_outside: "This cut-out is not wholly inside part {n}. Move it or make it smaller.",
    cuts_overlap: "This cut-out takes away some of what part {n} takes away already. Move it or make it smaller.",
    cut_all: "The cut-outs leave nothing of this part. Make them smaller.",
    cut_host: "Choose a part that is there and is not itself a cut-out.",
    negative: "{value} is below zero: the load would have to pull this support up. Read it again.",
    together: "Two supports stand at the same place. Correct their places.",
    in_line: "The supports stand in a line, so they do not tell the centre. Move one aside, or use two.",
    outside: "The readings put the centre at {value}, but the load reaches from {lo} to {hi}. Check places and readings.",
    totals: "Level the scales add up to {level}, with one end raised to {raised}; they may differ by {allowed}. Read again.",
    too_far: "These supports stand too close together for one end to be raised by {value}. Check both.",
    height_outside: "The readings put the centre {value} up, but the load reaches from {lo} to {hi}. Check the rise and \
                     the readings.",
    scale_disagrees: "The rectangle makes this length {found}. One of the two is wrong: check both, or take one away.",
    scale_short: "The two ends of the known length are too close together. Tap them further apart.",
    rectangle_bent: "The corners do not go round a rectangle: top left, top right, bottom right, bottom left. Tap them again.",
    not_this_way: "A wedge's high side points ahead, to the heel, left or right. Choose one of these.",
    whole: "The load as a whole comes to {value}. Possible are {range}. Check sizes and places.",
    weight: "The load as a whole comes to {value}. Possible are {range}. Check weights, materials and sizes.",
    no_parts: "Still needed: at least one part.",
    no_outline: "Still needed: the outline, tapped round.",
    no_picture: "Still needed: a photo or squared paper.",
    no_ends: "Still needed: the two ends of a known length.",
    no_corners: "Still needed: all four corners of the rectangle.",
    no_supports: "Still needed: readings that add up to something.",
};

fn way(way: Way) -> &'static str {
    match way {
        Way::Block => "the block's middle",
        Way::Mark => "the mark",
        Way::Stated => "the weight entered",
        Way::Parts => "the parts",
        Way::Trace => "the traced outline",
        Way::WeighedLevel => "the scales",
        Way::WeighedRaised => "the scales, one end raised",
    }
}

fn figure(figure: LoadFigure) -> &'static str {
    match figure {
        LoadFigure::Mass => "the weight",
        LoadFigure::Ahead => "how far ahead the centre is",
        LoadFigure::Left => "how far to the left the centre is",
        LoadFigure::Above => "how high the centre is",
    }
}

fn turned(turned: Turned) -> &'static str {
    match turned {
        Turned::No => "As given",
        Turned::Left => "Quarter left",
        Turned::Half => "Half round",
        Turned::Right => "Quarter right",
    }
}

fn raised_end(end: RaisedEnd) -> &'static str {
    match end {
        Side::Ahead => "Far end",
        Side::Heel => "Heel end",
        Side::Left => "Left",
        Side::Right => "Right",
    }
}

fn underside(underside: Underside) -> &'static str {
    match underside {
        Underside::WoodenPallet => "Wooden pallet",
        Underside::PlasticPallet => "Plastic pallet",
        Underside::PlanedWood => "Planed wood",
        Underside::SmoothMetal => "Smooth metal",
        Underside::RoughMetal => "Rough metal",
        Underside::SteelCrate => "Steel crate",
        Underside::AntiSlipMat => "Anti-slip mat between",
    }
}

fn material(material: Material) -> &'static str {
    match material {
        Material::Steel => "Steel",
        Material::CastIron => "Cast iron",
        Material::Aluminium => "Aluminium",
        Material::Copper => "Copper, brass, bronze",
        Material::Lead => "Lead",
        Material::Concrete => "Concrete",
        Material::Granite => "Granite, hard stone",
        Material::Sandstone => "Sandstone, soft stone",
        Material::Brick => "Brick, fired clay",
        Material::Glass => "Glass",
        Material::Softwood => "Softwood",
        Material::Hardwood => "Hardwood",
        Material::WoodBoard => "Wood-based board",
        Material::Paper => "Paper",
        Material::Plastic => "Plastics, solid",
        Material::Rubber => "Rubber",
        Material::Water => "Water and the like",
    }
}
