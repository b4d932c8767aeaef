//! The truck's card.

use super::{group, mast, plate, sheet};
use crate::book::OfBook;
use crate::field::TextInput;
use crate::fold::Fold;
use crate::form::{Choosable, Form, buttons};
use crate::state::{Action, Choice, Text};
use crate::words::words;
use standfast_core::document::Wheels;
use standfast_core::place::Field;
use yew::prelude::*;

/// Figures that a type sheet or a tape seldom gives.
const RARE: [Field; 15] = [
    Field::CgHeight,
    Field::Operator,
    Field::BatteryBehind,
    Field::BatteryHeight,
    Field::AxleMass,
    Field::PivotHeight,
    Field::FreeLift,
    Field::MastLowered,
    Field::MastGive,
    Field::MastPlay,
    Field::MastPivotX,
    Field::MastPivotZ,
    Field::Carriage,
    Field::ForkPair,
    Field::MastOuter,
];

/// What is stamped on the forks, their wear, what lengthens them.
const FORKS: [Field; 7] = [
    Field::ForkStamped,
    Field::ForkStampedCentre,
    Field::BladeWidth,
    Field::BladeThickness,
    Field::BladeThicknessNow,
    Field::Extension,
    Field::ExtensionMass,
];

pub(super) fn card(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let e = &form.entries;
    let wheels =
        |code, name, wheels| Choosable { code, name, chosen: e.wheels == Some(wheels), choice: Choice::Wheels(wheels) };
    let numbers = |fields: &[Field]| html! { <>{ for fields.iter().map(|&f| form.number(f)) }</> };
    let wheels = [wheels("three", w.three, Wheels::Three), wheels("four", w.four, Wheels::Four)];
    html! {
        <>
            <OfBook form={form.clone()} />
            <TextInput which={Text::TruckName} path="truck.name" label={w.truck_name} value={e.truck_name.clone()} />
            { group(w.group_plate, plate::plate(form, act)) }
            { group(w.group_build, html! {
                <>
                    { form.choice(Field::Wheels, &wheels, act) }
                    { numbers(&[Field::Wheelbase, Field::Tread, Field::LoadDistance, Field::TopSpeed]) }
                </>
            }) }
            { group(w.group_weights, numbers(&[
                Field::Service,
                Field::FrontAxle,
                Field::SteerAxleLoad,
                Field::BatteryStated,
                Field::BatteryFitted,
            ])) }
            { sheet::sheet(form, act) }
            { group(w.group_mast, numbers(&[Field::MastLift, Field::MaxTiltBack, Field::MaxTiltForward])) }
            { group(w.group_forks, html! {
                <>
                    { numbers(&[Field::ForkLength, Field::ForkSpread]) }
                    { more_forks(form) }
                </>
            }) }
            { group(w.group_attachment, attachment(form, act)) }
            { rare(form, act) }
            <TextInput which={Text::Note} path="note" label={w.note} value={e.note.clone()} />
        </>
    }
}

fn attachment(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let fitted = form.entries.attachment;
    let options = [
        Choosable { code: "none", name: w.attachment_none, chosen: !fitted, choice: Choice::Attachment(false) },
        Choosable { code: "there", name: w.attachment_there, chosen: fitted, choice: Choice::Attachment(true) },
    ];
    let fields = [Field::AttachmentMass, Field::LostLoad, Field::AttachmentAhead, Field::AttachmentAbove];
    html! {
        <>
            <fieldset class="choice">
                <legend>{ w.attachment_present }</legend>
                { buttons("truck.attachment", &options, act) }
            </fieldset>
            if fitted {
                <TextInput
                    which={Text::AttachmentName}
                    path="truck.attachment.name"
                    label={w.attachment_name}
                    value={form.entries.attachment_name.clone()}
                />
                { for fields.map(|f| form.number(f)) }
            }
        </>
    }
}

fn more_forks(form: &Form) -> Html {
    let wanted = form.answer.any_problem(&FORKS);
    let holds: Vec<_> = FORKS.iter().map(|f| f.row().path).collect();
    let inside = {
        let form = form.clone();
        Callback::from(move |()| html! { <>{ for FORKS.map(|f| form.number(f)) }</> })
    };
    html! { <Fold name={words().card.more_forks} test="more-forks" {wanted} holds={holds.join(" ")} {inside} /> }
}

fn rare(form: &Form, act: &Callback<Action>) -> Html {
    let wanted = form.answer.any_problem(&RARE) || form.answer.any_problem(&mast::FIELDS);
    let inside = {
        let (form, act) = (form.clone(), act.clone());
        Callback::from(move |()| {
            let shown = RARE.iter().filter(|&&f| form.entries.counts(f));
            html! {
                <>
                    { for shown.map(|&f| form.number(f)) }
                    { mast::sections(&form, &act) }
                </>
            }
        })
    };
    let holds: Vec<_> = RARE.iter().map(|f| f.row().path).collect();
    let holds = holds.join(" ");
    html! { <Fold name={words().card.more_figures} test="more-truck" {wanted} {holds} {inside} /> }
}
