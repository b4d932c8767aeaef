//! Sentences about the load on the blades: reach, stamps, wear, toppling, sliding, ways that disagree.

use super::Teller;
use crate::figures::{self, Printer, bare, number};
use crate::words::{Twice, fill, words};
use standfast_core::found::LoadFigure;
use standfast_core::report::LoadReport;
use standfast_core::scalar::Scalar;
use standfast_core::seat::Event;
use standfast_core::units::Rounding::{Down, Nearest, Up};
use standfast_core::verdict::{Reason, State};

/// A moment in kN m: what an engineer reads in either system.
fn moment(newton_metres: f64, way: standfast_core::units::Rounding) -> String {
    format!("{}\u{a0}kN\u{b7}m", number(newton_metres / 1000.0, 2, way))
}

/// A coefficient of friction.
pub fn friction(value: f64, way: standfast_core::units::Rounding) -> String {
    bare(value, 3, way)
}

/// Where people count a load's figure from, in its own frame: its heel side, its middle, its underside.
pub fn counted_from(load: Option<&LoadReport>, figure: LoadFigure) -> f64 {
    let Some(load) = load else { return 0.0 };
    match figure {
        LoadFigure::Mass => 0.0,
        LoadFigure::Ahead => load.low.x.get(),
        LoadFigure::Left => load.low.y.get() + 0.5 * load.size.y.get(),
        LoadFigure::Above => load.low.z.get(),
    }
}

/// A range of a load's figure, its ends rounded outward.
pub fn figure_range(
    load: Option<&LoadReport>,
    figure: LoadFigure,
    (lo, hi): (Scalar, Scalar),
    print: Printer,
) -> String {
    let from = counted_from(load, figure);
    let text = |v: Scalar, way| match figure {
        LoadFigure::Mass => print.mass(v.get(), way),
        _ => print.length(v.get() - from, way),
    };
    fill(words().card.from_to, &[("a", &text(lo, Down)), ("b", &text(hi, Up))])
}

/// A text about an event; where the truck is driven, what it is driven like says it already.
fn driven(text: &str, event: Event) -> String {
    if event == Event::Standing { text.to_owned() } else { text.replace("{event} ", "") }
}

impl Teller<'_> {
    /// A reason that lies on the blades; nothing for the others.
    pub(super) fn on_blades(&self, reason: &Reason, state: State) -> Option<String> {
        let (w, print) = (&self.w.blades, self.print);
        let load = self.answer.load.load.as_ref();
        let pick = |twice: Twice| if state == State::Hold { twice.may } else { twice.stated };
        let length = |s: &Scalar, way| print.length(s.get(), way);
        Some(match reason {
            Reason::ShortReach { reach, asked } => fill(
                pick(w.short_reach),
                &[
                    ("reach", &figures::slope(reach.get(), Down)),
                    ("asked", &figures::slope(asked.get(), Up)),
                    ("margin", &figures::slope(asked.get() - reach.get(), Up)),
                ],
            ),
            Reason::ForkOver { fork, moment: there, allowed, carries, allowed_mass } => {
                let fork = (w.fork)(*fork);
                // Whichever of the two is further over says it.
                if there.get() * allowed_mass.get() >= carries.get() * allowed.get() {
                    let over = there.get() - allowed.get();
                    fill(
                        pick(w.fork_over_moment),
                        &[
                            ("fork", fork),
                            ("moment", &moment(there.get(), Up)),
                            ("allowed", &moment(allowed.get(), Down)),
                            ("margin", &moment(over, Up)),
                        ],
                    )
                } else {
                    let over = carries.get() - allowed_mass.get();
                    fill(
                        pick(w.fork_over_mass),
                        &[
                            ("fork", fork),
                            ("carries", &print.mass(carries.get(), Up)),
                            ("allowed", &print.mass(allowed_mass.get(), Down)),
                            ("margin", &print.mass(over, Up)),
                        ],
                    )
                }
            }
            Reason::OffBlade { fork, lacks } => {
                let lacks = length(lacks, Up);
                fill(pick(w.off_blade), &[("fork", (w.fork)(*fork)), ("lacks", &lacks)])
            }
            Reason::ForkWorn { wear, limit } => fill(
                w.fork_worn,
                &[("wear", &figures::slope(wear.get(), Up)), ("limit", &figures::slope(limit.get(), Down))],
            ),
            Reason::ExtensionTooLong { length: long, limit } => fill(
                w.extension_too_long,
                &[
                    ("length", &length(long, Nearest)),
                    ("limit", &length(limit, Down)),
                    ("margin", &print.length(long.get() - limit.get(), Up)),
                ],
            ),
            Reason::Topples { step, event, over, beyond, lift, tilt_deg } => fill(
                &driven(pick(w.topples), *event),
                &[
                    ("pose", &self.pose(*step, lift.get(), tilt_deg.get())),
                    ("event", (w.event)(*event)),
                    ("over", (w.over)(*over)),
                    ("beyond", &length(beyond, Up)),
                ],
            ),
            Reason::Slides { step, event, asked, friction: there, lift, tilt_deg } => fill(
                &driven(pick(w.slides), *event),
                &[
                    ("pose", &self.pose(*step, lift.get(), tilt_deg.get())),
                    ("event", (w.event)(*event)),
                    ("asked", &friction(asked.get(), Up)),
                    ("friction", &friction(there.get(), Down)),
                ],
            ),
            Reason::WaysDisagree { figure, one, one_says, other, other_says } => fill(
                w.ways_disagree,
                &[
                    ("figure", (self.w.load.figure)(*figure)),
                    ("one", (self.w.load.way)(*one)),
                    ("one_says", &figure_range(load, *figure, *one_says, print)),
                    ("other", (self.w.load.way)(*other)),
                    ("other_says", &figure_range(load, *figure, *other_says, print)),
                ],
            ),
            _ => return None,
        })
    }
}
