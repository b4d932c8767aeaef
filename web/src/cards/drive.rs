//! The drive, on the move's card: what is looked at, how fast, how steep, what must be left.

use super::group;
use crate::entries::DriveEntry;
use crate::figures;
use crate::form::{Choosable, Form, buttons, source};
use crate::state::{Action, Choice};
use crate::words::{fill, words};
use standfast_core::document::RampDown;
use standfast_core::number;
use standfast_core::place::{Field, Place};
use standfast_core::rules;
use standfast_core::units::{Rounding, System, Unit};
use yew::prelude::*;

pub(super) fn card(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().drive;
    let drive = form.entries.drive;
    let looked_at = |field: Field, choice: Option<bool>| {
        let so = DriveEntry::looks_at(choice);
        let options = [
            Choosable { code: "yes", name: w.looked_at, chosen: so, choice: Choice::LookAt(field, true) },
            Choosable { code: "no", name: w.left_out, chosen: !so, choice: Choice::LookAt(field, false) },
        ];
        form.choice(field, &options, act)
    };
    let counted = |field: Field| if form.entries.counts(field) { form.number(field) } else { Html::default() };
    html! {
        <>
            { group(w.group_braking, html! {
                <>
                    { looked_at(Field::Brake, drive.brake) }
                    { counted(Field::Braking) }
                </>
            }) }
            { group(w.group_bends, html! {
                <>
                    { looked_at(Field::Corner, drive.corner) }
                    { looked_at(Field::CornerEmpty, drive.corner_empty) }
                    { for [Field::CornerSpeed, Field::CornerSpeedEmpty, Field::CornerRadius].map(counted) }
                </>
            }) }
            { group(w.group_slopes, html! {
                <>
                    { slope(form, Field::RampGrade, drive.ramp_in_degrees, act) }
                    if form.entries.has_step(standfast_core::step::StepId::RampDown) {
                        { ramp_down(form, act) }
                    }
                    { slope(form, Field::CrossFall, drive.cross_fall_in_degrees, act) }
                </>
            }) }
            { group(w.group_reserve, form.number(Field::Reserve)) }
        </>
    }
}

/// A slope's field with the unit that it is typed in, and the same slope in the other unit.
fn slope(form: &Form, field: Field, in_degrees: bool, act: &Callback<Action>) -> Html {
    let w = &words().drive;
    let unit = |code, name, degrees: bool| Choosable {
        code,
        name,
        chosen: in_degrees == degrees,
        choice: Choice::InDegrees(field, degrees),
    };
    let options = [unit("percent", w.percent, false), unit("degrees", w.degrees, true)];
    let path = field.row().path;
    let label = fill(w.unit, &[("field", (words().field)(field).name)]);
    html! {
        <div class="slope" key={path}>
            { form.number(field) }
            <div class="in-unit">
                <div role="group" aria-label={label}>{ buttons(&format!("{path}-unit"), &options, act) }</div>
                <output class="other" data-testid={format!("other-{path}")}>{ other(form, field, in_degrees) }</output>
            </div>
        </div>
    }
}

/// "10 % is 5.7 degrees", as typed first; where nothing is typed, ten of the unit as an example.
fn other(form: &Form, field: Field, in_degrees: bool) -> String {
    let w = &words().drive;
    let text = form.entries.shown(Place::from(field), System::Metric);
    let (this, there) =
        if in_degrees { (Unit::SlopeDegree, Unit::Percent) } else { (Unit::Percent, Unit::SlopeDegree) };
    let say = |unit: Unit, percent: f64| match unit {
        Unit::SlopeDegree => {
            let n = figures::bare(unit.from_document(percent), 1, Rounding::Nearest);
            fill(w.in_degrees, &[("n", &n)])
        }
        _ => figures::figure(unit, percent, Rounding::Nearest),
    };
    let typed = form.entries.numbers.get(&field.into()).map(|t| t.read());
    let (template, percent) = match typed {
        Some(Ok(percent)) => (w.is, percent),
        // What cannot be read is said beside the field.
        Some(Err(number::NotRead::NotANumber | number::NotRead::Ambiguous)) if !text.is_empty() => {
            return String::new();
        }
        _ => (w.compare, this.to_document(10.0)),
    };
    let row = field.row();
    // What is out of range is no slope to put beside it.
    if !(0.0..=10.0 * row.max).contains(&percent) {
        return String::new();
    }
    fill(template, &[("this", &say(this, percent)), ("other", &say(there, percent))])
}

fn ramp_down(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().drive;
    let chosen = form.entries.drive.ramp_down;
    let forwards = chosen == Some(RampDown::Forwards);
    let way = |code, name, how: RampDown| Choosable {
        code,
        name,
        chosen: forwards == (how == RampDown::Forwards),
        choice: Choice::RampDown(how),
    };
    let options = [way("backwards", w.backwards, RampDown::Backwards), way("forwards", w.forwards, RampDown::Forwards)];
    let limit = figures::slope(rules::LOAD_UPHILL_OVER.value, Rounding::Down);
    let rule = fill(w.over_limit, &[("limit", &limit), ("source", &source(&rules::LOAD_UPHILL_OVER))]);
    html! {
        <div class="choice under">
            { form.choice(Field::RampDown, &options, act) }
            <p class="hint">
                if chosen.is_none() {
                    { w.backwards_taken }{ " " }
                }
                { rule }
            </p>
        </div>
    }
}
