//! Where the load's centre may stand in the step that is shown: its outline for the plan, and the button
//! that shows it.

use crate::answer::Answer;
use crate::figures::Printer;
use crate::shared::Shared;
use crate::words::{fill, words};
use gloo::timers::callback::Timeout;
use standfast_core::region::{self, Region};
use standfast_core::step::StepId;
use standfast_core::units::{Rounding, System};
use std::rc::Rc;
use yew::prelude::*;

/// How long the entries must rest before it is worked out anew, ms: never on the way of a drag.
const REST: u32 = 150;

/// A region that was worked out, and what from.
#[derive(Clone, PartialEq)]
struct Worked {
    of: Shared<Answer>,
    step: StepId,
    region: Option<Rc<Region>>,
}

/// A region to draw.
#[derive(Clone, Debug, PartialEq)]
pub struct MayStand {
    pub region: Rc<Region>,
    /// The entries have changed since.
    pub stale: bool,
}

/// The region of a step, while it is wanted; of the entries as they last rested.
#[hook]
pub fn use_may_stand(wanted: bool, answer: &Shared<Answer>, step: Option<StepId>) -> Option<MayStand> {
    let worked = use_state(|| None::<Worked>);
    {
        let worked = worked.clone();
        use_effect_with((wanted, answer.clone(), step), move |(wanted, answer, step)| {
            let last = worked.as_ref();
            let same_step = last.is_some_and(|w| Some(w.step) == *step);
            let known = same_step && last.is_some_and(|w| w.of == *answer);
            let (answer, step) = (answer.clone(), step.filter(|_| *wanted && !known));
            let later = step.map(|step| {
                Timeout::new(if same_step { REST } else { 0 }, move || {
                    let region = region::of_step(&answer.document, step).map(Rc::new);
                    worked.set(Some(Worked { of: answer, step, region }));
                })
            });
            // Another change before it is due takes its place.
            move || drop(later)
        });
    }
    let worked = worked.as_ref().filter(|w| wanted && Some(w.step) == step)?;
    Some(MayStand { region: worked.region.clone()?, stale: worked.of != *answer })
}

/// The button under the plan, and how far that is in words.
pub fn button(wanted: bool, shown: Option<&MayStand>, system: System, onclick: Callback<MouseEvent>) -> Html {
    let w = &words().limits;
    html! {
        <div class="may-stand">
            <button
                type="button"
                data-testid="may-stand"
                aria-pressed={if wanted { "true" } else { "false" }}
                {onclick}
            >
                <svg class="sample" viewBox="0 0 40 12" aria-hidden="true" focusable="false"><path d="M0 6H40" /></svg>
                { w.may_stand }
            </button>
            <p class="help" data-testid="may-stand-said" role="status">
                if let Some(shown) = shown {
                    { said(&shown.region, Printer(system)) }
                }
            </p>
        </div>
    }
}

/// How far it is at most each way, rounded inward.
fn said(region: &Region, print: Printer) -> String {
    let w = &words().limits;
    let ends = |of: fn(&(standfast_core::scalar::Scalar, standfast_core::scalar::Scalar)) -> f64| {
        region.on_forks.iter().map(of).fold(None, |ends: Option<(f64, f64)>, v| {
            let (lo, hi) = ends.unwrap_or((v, v));
            Some((lo.min(v), hi.max(v)))
        })
    };
    let (Some((_, ahead)), Some((right, left))) = (ends(|c| c.0.get()), ends(|c| c.1.get())) else {
        return w.may_stand_nowhere.to_owned();
    };
    let side = |name: &str, by: f64| {
        // Where it ends short of the middle it ends on the other side.
        if by >= 0.0 { fill(name, &[("by", &print.length(by, Rounding::Down))]) } else { String::new() }
    };
    let sides = [side(w.may_stand_left, left), side(w.may_stand_right, -right)];
    let sides: Vec<String> = sides.into_iter().filter(|s| !s.is_empty()).collect();
    let ahead = fill(w.may_stand_ahead, &[("by", &print.length(ahead, Rounding::Down))]);
    [vec![ahead], sides].concat().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::example;

    #[test]
    fn what_is_said_is_rounded_inward() {
        let document = example::document(example::THREE_WHEEL);
        let region = region::of_step(&document, StepId::RaisedForward).expect("with a load");
        let most = region.on_forks.iter().map(|c| c.0.get()).fold(0.0, f64::max);
        let said = said(&region, Printer(System::Metric)).replace(['\u{202f}', '\u{a0}'], "");
        let first = said.split("mm").next().and_then(|t| t.rsplit(' ').next()).and_then(|n| n.parse::<f64>().ok());
        let shown = first.expect("a figure") / 1000.0;
        assert!(shown <= most + 1e-9 && shown > most - 0.001 - 1e-9, "{said} of {most}");
        assert!(said.contains("left") && said.contains("right"), "{said}");
    }

    #[test]
    fn nothing_is_said_to_be_nowhere() {
        let nowhere = Region::default();
        assert_eq!(said(&nowhere, Printer(System::Metric)), words().limits.may_stand_nowhere);
    }
}
