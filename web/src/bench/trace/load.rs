//! Step 5: how far the load goes through, what the picture shows, its weight or what it is made of.

use super::hand::with;
use super::panel::Panel;
use crate::entries::{Entries, TraceEntry, unit_of};
use crate::figures::range;
use crate::form::{capital, code, source_text};
use crate::jump::element_id;
use crate::known;
use crate::state::{Action, Choice};
use crate::words::{fill, words};
use standfast_core::document::{PhotoTruck, TraceView, WeightKnown};
use standfast_core::material::Material;
use standfast_core::place::{Field, Place};
use std::rc::Rc;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

/// A button among a few.
fn pick(test: String, text: &str, chosen: bool, action: Action, act: &Callback<Action>) -> Html {
    let act = act.clone();
    let onclick = Callback::from(move |_: MouseEvent| act.emit(action.clone()));
    html! {
        <button key={test.clone()} type="button" class="segment" aria-pressed={if chosen { "true" } else { "false" }} data-testid={test} {onclick}>
            { text }
        </button>
    }
}

impl Panel<'_> {
    /// Step 5.
    pub fn load(&self) -> Html {
        html! {
            <>
                { self.form.number(Field::TraceThrough) }
                { self.view() }
                { self.weight() }
            </>
        }
    }

    fn set(&self, next: TraceEntry) -> Action {
        Action::Set(with(&self.form.entries, next))
    }

    fn view(&self) -> Html {
        let w = &words().trace;
        let views = [TraceView::Side, TraceView::Front, TraceView::Plan].map(|view| {
            let next = self.set(TraceEntry { view, ..self.trace.clone() });
            pick(format!("trace-view-{}", code(&view)), (w.view)(view), self.trace.view == view, next, self.act)
        });
        let trucks = [PhotoTruck::Left, PhotoTruck::Right].map(|truck| {
            let next = self.set(TraceEntry { truck, ..self.trace.clone() });
            pick(format!("trace-truck-{}", code(&truck)), (w.truck)(truck), self.trace.truck == truck, next, self.act)
        });
        let choice = |field: Field, help: &'static str, buttons: Html| {
            html! {
                <fieldset class="choice" id={element_id(field.into())} tabindex="-1">
                    <legend>{ (words().field)(field).name }</legend>
                    if !help.is_empty() {
                        <p class="help">{ help }</p>
                    }
                    <div class="segments">{ buttons }</div>
                    { self.form.message_below(field) }
                </fieldset>
            }
        };
        html! {
            <>
                { choice(Field::TraceView, (w.view_help)(self.trace.view), html! { <>{ for views }</> }) }
                if self.trace.view == TraceView::Side {
                    { choice(Field::TraceTruck, "", html! { <>{ for trucks }</> }) }
                }
            </>
        }
    }

    /// Weight and material stand on the load's card too, so here they have names of their own.
    fn weight(&self) -> Html {
        let w = &words().trace;
        let entries = &self.form.entries;
        let place = Place::from(Field::LoadMass);
        let has_mass = entries.numbers.contains_key(&place);
        let message = self.form.message(place);
        let wrong = message.as_ref().is_some_and(|m| !m.missing);
        let oninput = {
            let act = self.act.clone();
            Callback::from(move |event: InputEvent| {
                act.emit(Action::Type(place, event.target_unchecked_into::<HtmlInputElement>().value()));
            })
        };
        let onblur = self.act.reform(|_: FocusEvent| Action::Settle);
        html! {
            <fieldset class="group">
                <legend>{ w.weight }</legend>
                <p class="help">{ w.weight_help }</p>
                <div class={classes!("field", wrong.then_some("wrong"))}>
                    <label for="trace-mass"><span class="name">{ w.mass }</span></label>
                    <span class="box">
                        <input
                            id="trace-mass"
                            type="text"
                            inputmode="decimal"
                            autocomplete="off"
                            data-testid="trace-mass"
                            aria-invalid={if wrong { "true" } else { "false" }}
                            value={entries.shown(place, self.form.system)}
                            {oninput}
                            {onblur}
                        />
                        <span class="unit">{ unit_of(place, self.form.system).map(|u| u.symbol()).unwrap_or_default() }</span>
                    </span>
                    if let Some(message) = &message {
                        <span class={classes!("message", message.missing.then_some("missing"))} data-testid="trace-mass-problem">{ &message.text }</span>
                    }
                </div>
                if has_mass {
                    { self.known(entries) }
                }
                { self.material(entries, has_mass) }
            </fieldset>
        }
    }

    fn known(&self, entries: &Rc<Entries>) -> Html {
        let w = &words().card;
        let ways =
            [(WeightKnown::Scale, w.scale), (WeightKnown::Note, w.note_on_load), (WeightKnown::Estimate, w.estimate)];
        let button = |(how, text)| {
            let action = Action::Choose(Choice::WeightKnown(how));
            pick(format!("trace-known-{}", code(&how)), text, entries.weight_known == Some(how), action, self.act)
        };
        html! {
            <div class="choice">
                <div class="segments" role="group" aria-label={(words().field)(Field::WeightKnown).name}>{ for ways.map(button) }</div>
                // What changes the tolerance is on the load's card.
                <p class="hint">{ capital(&known::line(self.form, Field::LoadMass.into())) }</p>
            </div>
        }
    }

    fn material(&self, entries: &Rc<Entries>, has_mass: bool) -> Html {
        let (w, l) = (&words().trace, &words().load);
        let chosen = entries.material;
        let onchange = {
            let act = self.act.clone();
            Callback::from(move |event: Event| {
                let select: HtmlSelectElement = event.target_unchecked_into();
                let material =
                    usize::try_from(select.selected_index() - 1).ok().and_then(|k| Material::ALL.get(k).copied());
                act.emit(Action::Choose(Choice::Material(material)));
            })
        };
        let option = |material: Material| {
            html! {
                <option key={code(&material)} value={code(&material)} selected={chosen == Some(material)}>{ (l.material)(material) }</option>
            }
        };
        let counts = chosen.filter(|_| !has_mass).map(|material| {
            let density = material.density();
            let range = range(density.span.lo, density.span.hi, 0);
            let source = source_text(density.source, density.mark);
            fill(l.material_counts, &[("range", &range), ("source", &source)])
        });
        html! {
            <>
                <div class="field tr-pick">
                    <label for="trace-material"><span class="name">{ w.material }</span></label>
                    <select id="trace-material" data-testid="trace-material" {onchange}>
                        <option value="none" selected={chosen.is_none()}>{ l.material_none }</option>
                        { for Material::ALL.iter().copied().map(option) }
                    </select>
                </div>
                if let Some(counts) = counts {
                    <p class="hint" data-testid="trace-density">{ counts }</p>
                }
            </>
        }
    }
}
