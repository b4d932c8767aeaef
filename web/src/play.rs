//! Running through the move, step by step.

use crate::state::{Action, use_act};
use crate::words::words;
use gloo::timers::callback::Timeout;
use standfast_core::step::StepId;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use yew::prelude::*;

/// How long each step shows, ms.
const EACH: u32 = 1500;

/// What is played.
#[derive(Clone, PartialEq)]
pub struct Play {
    /// The steps of the move.
    pub steps: Rc<Vec<StepId>>,
    /// The one that is shown.
    pub shown: Option<StepId>,
    /// Whether there is an answer to show.
    pub picked_up: bool,
}

impl Play {
    fn at(&self) -> Option<usize> {
        self.steps.iter().position(|s| Some(*s) == self.shown)
    }

    /// The step that comes next; none after the last.
    fn next(&self) -> Option<StepId> {
        self.steps.get(self.at()? + 1).copied()
    }

    /// The step to begin with: the first.
    fn first(&self) -> Option<StepId> {
        self.steps.first().copied()
    }
}

#[derive(Properties, PartialEq)]
pub struct PlayProps {
    pub play: Play,
}

/// Plays the move from its first step to its last; any touch or key stops it. Who asked the device for
/// less motion goes on a step at each press instead.
#[component]
pub fn PlayButton(props: &PlayProps) -> Html {
    let act = use_act();
    let w = &words().drive;
    let playing = use_state(|| false);
    let still = use_state(|| false);
    {
        let still = still.clone();
        use_effect_with((), move |()| still.set(wants_less_motion()));
    }
    let button = use_node_ref();
    // One step after the other, as long as it plays.
    {
        let (act, playing) = (act.clone(), playing.clone());
        use_effect_with((*playing, props.play.clone()), move |(on, play)| {
            let (on, next, answered) = (*on, play.next(), play.picked_up);
            let timer = on.then(|| {
                Timeout::new(EACH, move || match next.filter(|_| answered) {
                    Some(next) => act.emit(Action::Pick(next)),
                    None => playing.set(false),
                })
            });
            move || drop(timer)
        });
    }
    // Any touch or key elsewhere stops it; the button's own press does so by itself.
    {
        let (playing, button) = (playing.clone(), button.clone());
        use_effect_with(*playing, move |&on| {
            let listening = on.then(|| {
                Listening::new(move |event: &Event| {
                    let target = event.target().and_then(|t| t.dyn_into::<web_sys::Node>().ok());
                    let own = button.cast::<web_sys::Node>().is_some_and(|b| b.contains(target.as_ref()));
                    if !own {
                        playing.set(false);
                    }
                })
            });
            move || drop(listening)
        });
    }
    let onclick = {
        let (play, playing, still) = (props.play.clone(), playing.clone(), *still);
        Callback::from(move |_: MouseEvent| {
            if still {
                if let Some(to) = play.next().or_else(|| play.first()) {
                    act.emit(Action::Pick(to));
                }
            } else if *playing {
                playing.set(false);
            } else if let Some(first) = play.first() {
                act.emit(Action::Pick(first));
                playing.set(true);
            }
        })
    };
    let text = match (*still, *playing) {
        (true, _) => w.next,
        (false, true) => w.stop,
        (false, false) => w.play,
    };
    html! {
        <button
            ref={button}
            type="button"
            class={classes!("play", playing.then_some("playing"))}
            data-testid="play"
            data-playing={if *playing { "true" } else { "false" }}
            disabled={!props.play.picked_up}
            {onclick}
        >
            <svg viewBox="0 0 20 20" aria-hidden="true" focusable="false">
                <path d={if *playing { "M4 4h12v12H4z" } else { "M5 3l12 7-12 7z" }} />
            </svg>
            { text }
        </button>
    }
}

/// Whether the device was told to move less.
fn wants_less_motion() -> bool {
    let asked = web_sys::window().and_then(|w| w.match_media("(prefers-reduced-motion: reduce)").ok());
    asked.flatten().is_some_and(|m| m.matches())
}

/// Listens to every touch and key of the page until it is dropped.
struct Listening {
    heard: Closure<dyn Fn(Event)>,
}

const HEARD: [&str; 3] = ["pointerdown", "keydown", "wheel"];

impl Listening {
    fn new(hears: impl Fn(&Event) + 'static) -> Self {
        let heard = Closure::<dyn Fn(Event)>::new(move |event: Event| hears(&event));
        if let Some(window) = web_sys::window() {
            for kind in HEARD {
                let _ = window.add_event_listener_with_callback_and_bool(kind, heard.as_ref().unchecked_ref(), true);
            }
        }
        Self { heard }
    }
}

impl Drop for Listening {
    fn drop(&mut self) {
        if let Some(window) = web_sys::window() {
            for kind in HEARD {
                let heard = self.heard.as_ref().unchecked_ref();
                let _ = window.remove_event_listener_with_callback_and_bool(kind, heard, true);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_goes_from_the_first_step_to_the_last_and_no_further() {
        let steps = Rc::new(vec![StepId::TakeUp, StepId::Travel, StepId::RaisedUpright]);
        let at = |shown| Play { steps: Rc::clone(&steps), shown, picked_up: true };
        let mut seen = vec![at(None).first().expect("a step")];
        while let Some(next) = at(seen.last().copied()).next() {
            seen.push(next);
        }
        assert_eq!(seen, *steps);
        // A step that the move no longer has leads nowhere: it stops.
        assert_eq!(at(Some(StepId::Brake)).next(), None);
    }
}
