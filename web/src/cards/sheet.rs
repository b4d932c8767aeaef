//! What a type sheet gives beyond the figures that every check needs, in a sheet's usual order.

use crate::figures::Printer;
use crate::fold::Fold;
use crate::form::Form;
use crate::sentences;
use crate::state::{Action, Choice, Text};
use crate::words::words;
use standfast_core::closure;
use standfast_core::place::Field;
use standfast_core::plate::Gap;
use yew::prelude::*;

/// What is entered of it here.
const FIELDS: [Field; 8] = [
    Field::TypeName,
    Field::Serial,
    Field::Rated,
    Field::RatedCentre,
    Field::FrontAxleLaden,
    Field::SteerAxleLaden,
    Field::Tyres,
    Field::SteerTread,
];

pub(super) fn sheet(form: &Form, act: &Callback<Action>) -> Html {
    let found = form.answer.assessment.as_ref().map(|a| a.plate.findings.as_slice()).unwrap_or_default();
    let tyres = found.iter().any(|f| matches!(f.gap, Gap::OtherTyres { .. }));
    let tested = closure::check(&form.answer.document);
    let wanted = form.answer.any_problem(&FIELDS) || tyres || tested.iter().any(|t| !t.closes);
    let holds: Vec<_> = FIELDS.iter().map(|f| f.row().path).collect();
    let inside = {
        let (form, act, print) = (form.clone(), act.clone(), Printer(form.system));
        Callback::from(move |()| {
            let e = &form.entries;
            html! {
                <>
                    { form.text(Text::TypeName, Field::TypeName, &e.type_name) }
                    { form.text(Text::Serial, Field::Serial, &e.serial) }
                    { for FIELDS[2..6].iter().map(|&f| form.number(f)) }
                    { form.tyres(Field::Tyres, e.tyres, Choice::Tyres, &act) }
                    { form.number(Field::SteerTread) }
                    <div class="held" data-testid="closure" role="status">
                        if tested.is_empty() {
                            <p class="help">{ words().sheet.help }</p>
                        }
                        for t in &tested {
                            <p key={format!("{:?}", t.test)} class={classes!((!t.closes).then_some("open"))}>
                                { sentences::tested(t, print) }
                                if !t.closes {
                                    { " " }
                                    { sentences::suspects(t, print) }
                                }
                            </p>
                        }
                    </div>
                </>
            }
        })
    };
    html! { <Fold name={words().plate.sheet} test="type-sheet" {wanted} holds={holds.join(" ")} {inside} /> }
}
