//! The bench for tracing, in English.

use crate::bench::trace::points::Ring;
use crate::bench::trace::steps::Step;
use crate::words::trace::TraceWords;
use crate::words::{Count, fill};
use standfast_core::document::{PhotoTruck, TraceView};

pub(super) const TRACE: TraceWords = TraceWords {
    heading: "The load, traced from a picture",
    back: "Back to the truck",
    steps: "Steps of the tracing",
    step,
    done: "done",
    wrong: "to put right",
    wanted: "still needed",
    optional: "only if needed",
    spared: "not needed: the rectangle gives the scale",
    do_picture: "Take or choose a photo of the load, square on and from far; or lay out squared paper.",
    do_scale: [
        "Tap one end of a length you know, in the plane of the face that you trace.",
        "Tap the other end.",
        "Type how long it is. Drag an end to correct it.",
    ],
    do_scale_spared: "The rectangle of step 3 gives the scale. A length is not needed here.",
    do_corner: [
        "Only if the camera was not square to it: tap the top left corner of a rectangle of known size.",
        "Tap its top right corner.",
        "Tap its bottom right corner.",
        "Tap its bottom left corner.",
    ],
    do_rectangle: "Type its width and height. Drag a corner to correct it.",
    do_outline: [
        "Tap a corner of the load, then go on round it.",
        "Go on round the load, corner by corner.",
        "Go on round it; tap point 1 again to close it.",
        "Drag a point to correct it. Tap an edge to put a point in.",
    ],
    do_hole: "Tap round the hole; tap its first point again to close it.",
    do_load: "Say how far it goes through, what the picture shows, what it weighs or is made of.",
    sheet: "Picture with what was tapped",
    about: "{outline}; {holes}; {scale}; {rectangle}. Every point stands in the list of points, where its numbers can be typed.",
    count_outline: Count { one: "Outline of 1 point", many: "Outline of {n} points" },
    count_open: Count { one: "1 point of an open outline", many: "{n} points of an open outline" },
    count_holes: Count { one: "1 hole", many: "{n} holes" },
    scale_marked: "a known length is marked",
    scale_open: "no known length is marked",
    rectangle_marked: "a known rectangle is marked",
    rectangle_open: "no known rectangle is marked",
    point_of: "{ring}, point {n}: {x} right, {y} down. Arrow keys move it, Delete takes it out.",
    ring,
    no_picture_yet: "No picture yet",
    larger: "Larger",
    smaller: "Smaller",
    whole: "Whole",
    slide: "Move",
    slide_how: "Move the picture with one finger",
    undo: "Undo",
    take_out: "Take out",
    close: "Close it",
    close_hole: "Close hole",
    centre_mark: "Centre of the outline",
    camera: "Take a photo",
    file: "Choose a picture",
    stays: "The photo stays on this device. It is not sent anywhere and goes into no file that you save.",
    preparing: "Preparing the picture \u{2026}",
    photo_here: "Photo, {wide} by {high} pixels as kept, on this device alone.",
    paper_here: "Squared paper, {wide} by {high} squares.",
    gone: "The picture of this outline is not on this device. The outline stays as it was traced. If you choose the same photo again, it comes back under it.",
    not_kept: "The browser has no room to keep the photo: it is there until the page is closed. The outline does not need it.",
    cleared: "The points lay on the other picture and went with it. Undo brings both back.",
    remove_photo: "Remove the photo",
    no_picture_file: "{name} is not a picture. Choose a photo: JPEG, PNG or the like. Nothing was changed.",
    unread: "This browser cannot read {name}: it is damaged, or of a kind it does not know. Save it as JPEG and choose it again. Nothing was changed.",
    large: "{name} is too large to be read here. Take it with fewer pixels. Nothing was changed.",
    small: "{name} has too few pixels to trace on. Choose a larger one. Nothing was changed.",
    paper: "Squared paper",
    paper_help: "For a load drawn on squares, or whose sizes you know.",
    square: "One square is",
    square_range: "Enter {range}.",
    lay: "Lay out squared paper",
    relay: "Set the squares",
    good: "How to take a good photo",
    good_list: [
        "Stand square to the face that you trace, at most 10\u{b0} off, at the middle of its height.",
        "Stand far off and zoom in: at least twice the load\u{2019}s longer side away.",
        "Hold a tape or staff against the traced face, not in front of it or behind.",
        "The longer the known length, the better; best right across the load.",
        "Not square? Have a rectangle of known size in the plane of that face.",
        "The whole outline must be in the picture, clear of shadows.",
    ],
    scale_anew: "Tap both ends again",
    paper_scale: "On squared paper ten squares lie between the two marks.",
    no_rectangle: "Do without",
    hole: "Tap a hole",
    drop_open: "Drop the open points",
    remove_hole: "Remove hole {n}",
    anew: "Tap the outline again",
    snap: "Half squares",
    view,
    truck,
    view_help,
    weight: "Weight or material",
    weight_help: "A weight decides. Without one, what it is made of, all through, says it.",
    mass: "Weight of the load",
    material: "Made of",
    result: "What comes out",
    uneven: "Known by its weight alone it need not be the same all through: that may put the centre another {part} of its size off. All of one material? Leave the weight empty and choose the material.",
    result_later: "Shows as soon as picture, scale and outline are there.",
    outline_centre: "Centre of the outline, known to",
    known_to: "\u{b1} {across} across the picture, \u{b1} {up} up it",
    from_plain: "The larger part, {part} of the size, is for a camera up to 10\u{b0} off square to the load and at least twice its size away. Nearer or more aslant, straighten it (step 3). The rest is for fingertips and tape.",
    from_paper: "{part} of the size is for a drawing that is not exact; the rest for fingertips and tape. Every size measured? Tap the corners of a rectangle of squares in step 3.",
    open_hole: "A hole is not closed yet: it is not counted.",
    from_straight: "Straightened: {part} of the size is for the lens and for what is not flat; the rest for fingertips and tape.",
    size: "Outline",
    mass_row: "Weight",
    centre_row: "Centre",
    decided_else: "The centre counted for the load is known better in another way; it stands on the load\u{2019}s card.",
    list: "Points, to type",
    list_help: "Pixels from the picture\u{2019}s top left corner.",
    right: "Right",
    down: "Down",
    nth: "{n}",
    add: "Add a point in the middle",
    none_yet: "No point yet.",
    not_a_number: "Not a number as it stands.",
};

fn step(step: Step) -> &'static str {
    match step {
        Step::Picture => "Picture",
        Step::Scale => "Scale",
        Step::Straighten => "Straighten",
        Step::Outline => "Outline",
        Step::Load => "Load",
    }
}

fn ring(ring: Ring) -> String {
    match ring {
        Ring::Scale => "Known length".to_owned(),
        Ring::Rectangle => "Known rectangle".to_owned(),
        Ring::Outline => "Outline".to_owned(),
        Ring::Hole(k) => fill("Hole {n}", &[("n", &(k + 1).to_string())]),
        Ring::Open => "Not closed yet".to_owned(),
    }
}

fn view(view: TraceView) -> &'static str {
    match view {
        TraceView::Side => "From the side",
        TraceView::Front => "As the driver sees it",
        TraceView::Plan => "From above",
    }
}

fn view_help(view: TraceView) -> &'static str {
    match view {
        TraceView::Side => {
            "The forks run along the picture; the load goes through from one side of the truck to the other."
        }
        TraceView::Front => {
            "Taken from where the truck would stand: left is left; it goes through away from the truck."
        }
        TraceView::Plan => "The truck is at the lower edge of the picture; it goes through from the underside up.",
    }
}

fn truck(truck: PhotoTruck) -> &'static str {
    match truck {
        PhotoTruck::Left => "On the left",
        PhotoTruck::Right => "On the right",
    }
}
