//! All texts of the drawings, in one table per language.

/// The texts. Figures and units are put beside them, so they are pieces, not sentences.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Labels {
    /// Title of the side view.
    pub side_view: &'static str,
    /// Title of the plan view.
    pub plan_view: &'static str,
    /// What the side view shows, for those who cannot see it.
    pub side_about: &'static str,
    /// What the plan view shows, for those who cannot see it.
    pub plan_about: &'static str,
    /// The load's centre of gravity.
    pub load: &'static str,
    /// The truck's.
    pub truck: &'static str,
    /// That of both.
    pub together: &'static str,
    /// The line along which all weight acts.
    pub line_of_action: &'static str,
    /// After a distance inside a line.
    pub in_hand: &'static str,
    /// After a distance beyond a line.
    pub past: &'static str,
    /// Before a figure at the worst corner of what was measured and assumed.
    pub worst: &'static str,
    /// Before a slope that it stands.
    pub stands: &'static str,
    /// Between the slope that it stands and the one asked.
    pub of: &'static str,
    /// After the slope asked.
    pub asked: &'static str,
    /// Before the share used where too little is left.
    pub uses: &'static str,
    /// The front tipping line.
    pub front_line: &'static str,
    /// The left tipping line.
    pub left_line: &'static str,
    /// The right tipping line.
    pub right_line: &'static str,
    /// The front axle.
    pub front_axle: &'static str,
    /// The steer axle or wheel.
    pub steer_axle: &'static str,
    /// The left front wheel.
    pub left_wheel: &'static str,
    /// The right front wheel.
    pub right_wheel: &'static str,
    /// After a wheel load of nothing or less.
    pub lifts: &'static str,
    /// The pivot of the steer axle.
    pub pivot: &'static str,
    /// The height of the forks.
    pub fork_height: &'static str,
    /// The mast's tilt.
    pub tilt: &'static str,
    /// A tilt to the rear.
    pub back: &'static str,
    /// A tilt to the front.
    pub forward: &'static str,
    /// No tilt.
    pub upright: &'static str,
    /// After the angle by which a loaded mast leans forward of what is displayed.
    pub give: &'static str,
    /// The grid's spacing.
    pub grid: &'static str,
    /// What the thin frames are.
    pub frame: &'static str,
    /// Row: where the common centre and the line of action may be.
    pub may_be: &'static str,
    /// How that is measured.
    pub may_be_note: &'static str,
    /// The common centre of gravity.
    pub common_centre: &'static str,
    /// Where the line of action meets the ground.
    pub on_the_ground: &'static str,
    /// Between the ends of a range.
    pub to: &'static str,
    /// Name of the handle that moves the load.
    pub move_load: &'static str,
    /// Name of the handle that moves the load's centre of gravity.
    pub move_centre: &'static str,
    /// Where a handle is, ahead of the front axle.
    pub ahead: &'static str,
    /// Where a handle is, to the left of the truck's middle.
    pub left: &'static str,
    /// Where a handle is, above the ground.
    pub up: &'static str,
    /// To the right.
    pub right: &'static str,
    /// After a distance beyond an edge of what carries the load.
    pub past_edge: &'static str,
    /// The load where the truck stands or goes evenly.
    pub standing: &'static str,
    /// In a bend.
    pub cornering: &'static str,
    /// On a ramp or a cross-fall.
    pub on_slope: &'static str,
    /// The load where the truck brakes.
    pub braking: &'static str,
    /// It slides on the forks as stated.
    pub slides: &'static str,
    /// It slides at the worst.
    pub may_slide: &'static str,
    /// After the friction that there is.
    pub there: &'static str,
    /// Nothing carries the load.
    pub off_forks: &'static str,
    /// The load by itself on the forks.
    pub on_forks: &'static str,
    /// How its distances are measured.
    pub forks_note: &'static str,
    /// How it may topple.
    pub load_topples: &'static str,
    /// Row: friction asked and there is.
    pub friction: &'static str,
    /// Caption of the table of numbers.
    pub numbers: &'static str,
    /// Column: the tipping line.
    pub column_line: &'static str,
    /// Column: the distance.
    pub column_distance: &'static str,
    /// Column: the share used.
    pub column_share: &'static str,
    /// Column: the further tilt to the point of tipping.
    pub column_angle: &'static str,
    /// Where it does not tip about a line at all.
    pub never: &'static str,
    /// Column: what presses on the floor.
    pub column_floor: &'static str,
    /// How the wheel loads are rounded.
    pub floor_note: &'static str,
    /// After a slope that rises ahead.
    pub uphill: &'static str,
    /// After one that falls.
    pub downhill: &'static str,
    /// After a cross-fall with the left side high.
    pub left_high: &'static str,
    /// After one with the right side high.
    pub right_high: &'static str,
    /// After what pulls ahead.
    pub pull_ahead: &'static str,
    /// After what pulls to the rear.
    pub pull_back: &'static str,
    /// After what pulls to the left.
    pub pull_left: &'static str,
    /// After what pulls to the right.
    pub pull_right: &'static str,
}

/// The texts in English.
pub const ENGLISH: Labels = Labels {
    side_view: "Side view",
    plan_view: "Plan view",
    side_about: "The truck from its right side, to scale: mast, forks and load; centres of gravity; \
        the line of action as a plumb line down to the ground, and its distance to the front tipping line; \
        a thin frame where both may be over the range of what is uncertain; \
        on the forks the stretch that carries the load, and the load's own line of action.",
    plan_about: "The truck from above, to scale, facing right: wheels, load and the three tipping lines; \
        where the line of action meets the ground, and its distance to each line; a thin frame where it may \
        meet it over the range of what is uncertain; on the forks the region \
        that carries the load, and where the load's own line of action meets it.",
    load: "load",
    truck: "truck",
    together: "both together",
    line_of_action: "line of action",
    in_hand: "in hand",
    past: "past the line",
    worst: "worst",
    stands: "stands",
    of: "of",
    asked: "asked",
    uses: "uses",
    front_line: "front line",
    left_line: "left line",
    right_line: "right line",
    front_axle: "front axle",
    steer_axle: "steer axle",
    left_wheel: "left front wheel",
    right_wheel: "right front wheel",
    lifts: "lifts",
    pivot: "pivot",
    fork_height: "fork height",
    tilt: "tilt",
    back: "back",
    forward: "forward",
    upright: "mast upright",
    give: "give",
    grid: "grid",
    frame: "thin frame: where it may be",
    may_be: "Where it may be",
    may_be_note: "Over the whole range of what is uncertain; from the middle of the front axle.",
    common_centre: "centre of both together",
    on_the_ground: "line of action on the ground",
    to: "to",
    move_load: "Load: drag it, or use the arrow keys",
    move_centre: "Load's centre of gravity: drag it, or use the arrow keys",
    ahead: "ahead",
    left: "left",
    up: "up",
    right: "right",
    past_edge: "past edge",
    standing: "standing",
    braking: "braking",
    cornering: "turning",
    on_slope: "aslant",
    slides: "slips",
    may_slide: "may slip",
    there: "there",
    off_forks: "off forks",
    on_forks: "The load on the forks",
    forks_note: "Its own line of action inside the edges of what carries it; friction asked and there.",
    load_topples: "load on the forks",
    friction: "friction",
    numbers: "The numbers of the drawings",
    column_line: "Tipping line",
    column_distance: "Distance",
    column_share: "Share used",
    column_angle: "Tips at a further",
    never: "does not tip",
    column_floor: "On the floor",
    floor_note: "As stated, to 10: front rounded up, steer axle down.",
    uphill: "up",
    downhill: "down",
    left_high: "across, left high",
    right_high: "across, right high",
    pull_ahead: "pull ahead",
    pull_back: "pull back",
    pull_left: "pull to the left",
    pull_right: "pull to the right",
};
