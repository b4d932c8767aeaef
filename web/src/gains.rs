//! What the margin hangs on: the figures whose uncertainty costs most, the dearest first, each leading to
//! its field.

use crate::answer::Answer;
use crate::entries::Entries;
use crate::figures::{Printer, number};
use crate::form::Form;
use crate::jump;
use crate::known;
use crate::sentences::{entered_at, lower, name_of};
use crate::shared::Shared;
use crate::state::use_act;
use crate::words::{fill, words};
use standfast_core::gain::Gain;
use standfast_core::platform::Test;
use standfast_core::report::Assessment;
use standfast_core::step::StepId;
use standfast_core::support::LineId;
use standfast_core::units::{Rounding, System};
use std::rc::Rc;
use yew::prelude::*;

/// How many are shown at first.
const FIRST: usize = 5;

#[derive(Properties, PartialEq)]
pub struct GainsProps {
    pub entries: Rc<Entries>,
    pub answer: Shared<Answer>,
    pub system: System,
}

/// The list.
#[component]
pub fn Gains(props: &GainsProps) -> Html {
    let all = use_state(|| false);
    let act = use_act();
    let w = &words().limits;
    let Some(assessment) = &props.answer.assessment else { return Html::default() };
    let gains = &assessment.gains;
    if gains.is_empty() {
        return html! { <p data-testid="gains-none">{ w.gains_none }</p> };
    }
    let form =
        Form { entries: Rc::clone(&props.entries), answer: props.answer.clone(), system: props.system, known: None };
    let row = |gain: &Gain| {
        let leads_to = entered_at(gain.place, &props.answer.document);
        let act = act.clone();
        let onclick = Callback::from(move |_: MouseEvent| jump::to(leads_to, &act));
        html! {
            <li key={gain.place.to_string()}>
                <button type="button" class="gain" data-testid={format!("gain-{}", gain.place)} {onclick}>
                    <span class="name">{ name_of(gain.place) }</span>
                    <span class="part">{ part(gain.part.get()) }</span>
                    <span class="note">{ known_how(gain, &form) }</span>
                    { bar(gain.part.get()) }
                </button>
            </li>
        }
    };
    let shown = if *all { gains.len() } else { FIRST };
    let toggle = {
        let all = all.clone();
        Callback::from(move |_: MouseEvent| all.set(!*all))
    };
    html! {
        <div class="gains">
            <p data-testid="gains-check">{ fill(w.gains_intro, &[("check", &governing(assessment))]) }</p>
            <p class="help">{ w.gains_help }</p>
            <ol data-testid="gains">{ for gains.iter().take(shown).map(row) }</ol>
            if gains.len() > FIRST {
                <button
                    type="button"
                    data-testid="gains-all"
                    aria-expanded={if *all { "true" } else { "false" }}
                    onclick={toggle}
                >
                    { if *all { w.gains_fewer.to_owned() } else { w.gains_all.of(gains.len()) } }
                </button>
            }
        </div>
    }
}

/// The check that uses most, in words.
fn governing(assessment: &Assessment) -> String {
    let (line, test) = assessment.governing_check;
    check(assessment.governing_step, line, test)
}

fn check(step: StepId, line: LineId, test: Option<Test>) -> String {
    let w = words();
    let text = if test.is_some() { w.limits.check_test } else { w.limits.check_stands };
    fill(text, &[("step", &lower((w.step)(step).name)), ("line", (w.line)(line))])
}

/// How a figure is known now: as entered, or the range taken where nobody entered it.
fn known_how(gain: &Gain, form: &Form) -> String {
    if let Some(assumed) = form.answer.assumed(gain.place) {
        let range = Printer(form.system).taken(gain.place, assumed.lo.get(), assumed.hi.get());
        return fill(words().limits.taken, &[("range", &range)]);
    }
    let entered = gain.place.field.takes_tolerance() && form.entries.is_entered(gain.place);
    if entered { known::line(form, gain.place) } else { String::new() }
}

/// A part in whole percent, rounded down: no more is promised than there is.
fn part(part: f64) -> String {
    let w = &words().limits;
    if part < 0.01 {
        return w.part_small.to_owned();
    }
    fill(w.part, &[("part", &format!("{}\u{a0}%", number(100.0 * part, 0, Rounding::Down)))])
}

fn bar(part: f64) -> Html {
    let width = (100.0 * part).clamp(0.0, 100.0);
    html! {
        <svg class="bar" viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true" focusable="false">
            <rect class="track" x="0" y="1" width="100" height="6" />
            <rect class="filled" x="0" y="1" width={format!("{width:.1}")} height="6" />
        </svg>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::example;
    use standfast_core::place::{Field, Place};
    use yew::LocalServerRenderer;

    async fn rendered(entries: Entries) -> (String, Shared<Answer>) {
        let entries = Rc::new(entries);
        let answer: Shared<Answer> = Rc::new(Answer::of(&entries)).into();
        let props = GainsProps { entries, answer: answer.clone(), system: System::Metric };
        (LocalServerRenderer::<Gains>::with_props(props).hydratable(false).render().await, answer)
    }

    #[tokio::test]
    async fn the_dearest_five_come_first_in_the_fields_words() {
        let (html, answer) = rendered(Entries::from_document(&example::document(example::THREE_WHEEL))).await;
        let gains = &answer.assessment.as_ref().expect("answered").gains;
        assert!(gains.len() > FIRST);
        assert_eq!(html.matches("class=\"gain\"").count(), FIRST);
        let mut from = 0;
        for gain in &gains[..FIRST] {
            let name = (words().field)(gain.place.field).name;
            from += html[from..].find(name).unwrap_or_else(|| panic!("{name} in its turn: {html}"));
        }
        assert!(html.contains(&format!("Show all {}", gains.len())), "{html}");
    }

    #[tokio::test]
    async fn what_nobody_entered_shows_the_range_that_is_taken() {
        let (html, answer) = rendered(Entries::from_document(&example::document(example::THREE_WHEEL))).await;
        let assumed = answer.assumed(Field::CgHeight.into()).expect("not entered");
        let range = Printer(System::Metric).taken(assumed.place, assumed.lo.get(), assumed.hi.get());
        assert!(html.contains(&format!("taken: {range}")), "{html}");
    }

    #[test]
    fn parts_are_never_promised_higher_than_they_are() {
        assert_eq!(part(0.5382), "53\u{a0}%");
        assert_eq!(part(0.0099), "under 1\u{a0}%");
        assert_eq!(part(0.01), "1\u{a0}%");
    }

    /// A load's centre that no field holds is measured by scales.
    #[test]
    fn each_leads_to_where_it_can_be_entered() {
        let block = example::document(example::THREE_WHEEL);
        let parts = example::document(example::ODD_LOAD);
        let at = |field: Field, document| entered_at(Place::from(field), document).field;
        assert_eq!(at(Field::Tread, &block), Field::Tread);
        assert_eq!(at(Field::LoadCgLeft, &parts), Field::WeighPoints);
    }
}
