//! The figures of the part that is selected: only those that count.

use super::add::{SHAPES, code};
use super::adding::{copied, cut_out, cuts_of, hosts, reshaped};
use super::moving::PLACES;
use super::names;
use super::sizes::{like, ways};
use super::view::Body;
use crate::entries::{Entries, PartEntry, dimensions};
use crate::figures::number;
use crate::form::Form;
use crate::jump::element_id;
use crate::state::{Action, Text, use_act};
use crate::words::{fill, words};
use standfast_core::document::{Facing, Shape, WeightKnown};
use standfast_core::material::Material;
use standfast_core::place::{Field, Place};
use standfast_core::units::{Rounding, System, Unit};
use std::rc::Rc;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct PartProps {
    pub form: Form,
    pub bodies: Rc<Vec<Body>>,
    pub part: usize,
    pub on_select: Callback<usize>,
    pub on_outline: Callback<()>,
}

/// One part's figures.
#[component]
pub fn PartFigures(props: &PartProps) -> Html {
    let act = use_act();
    let PartProps { form, bodies, part, on_select, on_outline } = props;
    let (k, w, entries) = (*part, &words().parts, &form.entries);
    let Some(entry) = entries.parts.get(k) else { return Html::default() };
    let set = {
        let (act, entries) = (act.clone(), Rc::clone(entries));
        move |change: &dyn Fn(&mut Entries)| {
            let mut entries = Entries::clone(&entries);
            change(&mut entries);
            act.emit(Action::Set(Rc::new(entries)));
        }
    };
    let change = |change: fn(&mut PartEntry, &str)| {
        let set = set.clone();
        Callback::from(move |event: Event| {
            let value = event.target_unchecked_into::<HtmlSelectElement>().value();
            set(&|e| {
                if let Some(part) = e.parts.get_mut(k) {
                    change(part, &value);
                }
            });
        })
    };
    let oninput = act.reform(move |event: InputEvent| {
        Action::Write(Text::PartName(k), event.target_unchecked_into::<HtmlInputElement>().value())
    });
    let onblur = act.reform(|_: FocusEvent| Action::Settle);
    let copy = {
        let (act, on_select, entries) = (act.clone(), on_select.clone(), Rc::clone(entries));
        let (bodies, system) = (Rc::clone(bodies), form.system);
        Callback::from(move |_: MouseEvent| {
            if let Some((entries, copy)) = copied(&entries, &bodies, k, system) {
                act.emit(Action::Set(Rc::new(entries)));
                on_select.emit(copy);
            }
        })
    };
    let remove = {
        let set = set.clone();
        Callback::from(move |_: MouseEvent| set(&|e| e.remove_part(k)))
    };
    let reshape = {
        let (act, entries, bodies, system) = (act.clone(), Rc::clone(entries), Rc::clone(bodies), form.system);
        Callback::from(move |event: Event| {
            let value = event.target_unchecked_into::<HtmlSelectElement>().value();
            if let Some(shape) = SHAPES.into_iter().find(|s| code(*s) == value) {
                act.emit(Action::Set(Rc::new(reshaped(&entries, &bodies, k, shape, system))));
            }
        })
    };
    let cut_from = {
        let (act, entries, bodies, system) = (act.clone(), Rc::clone(entries), Rc::clone(bodies), form.system);
        Callback::from(move |event: Event| {
            let host = event.target_unchecked_into::<HtmlSelectElement>().value().parse().ok();
            act.emit(Action::Set(Rc::new(cut_out(&entries, &bodies, k, host, system))));
        })
    };
    let number = |field| form.number(Place::in_row(field, k));
    let below = |field| form.message_below(Place::in_row(field, k));
    let shapes = SHAPES.map(|s| (code(s).to_owned(), (w.shape)(s).to_owned(), entry.shape == Some(s)));
    html! {
        <section class="pb-part-figures" aria-labelledby="parts-part-head" data-testid="part-figures">
            <h3 id="parts-part-head">{ w.part }{ ": " }{ names::part(entries, k) }</h3>
            <div class="pb-buttons">
                <button type="button" data-testid="part-copy" onclick={copy}>{ w.copy }</button>
                <button type="button" data-testid="part-remove" onclick={remove}>{ w.remove }</button>
            </div>
            <div class="field text">
                <label for="part-name"><span class="name">{ w.name }</span></label>
                <span class="box">
                    <input id="part-name" type="text" autocomplete="off" data-testid="part-name" value={entry.name.clone()} {oninput} {onblur} />
                </span>
            </div>
            { pick(Field::PartShape, k, w.form, &shapes, entry.shape.is_none(), reshape) }
            { below(Field::PartShape) }
            { facing(form, k, entry, &set) }
            if entry.shape == Some(Shape::Prism) {
                <div class="pb-buttons">
                    <button type="button" class="main" data-testid="part-outline" onclick={on_outline.reform(|_: MouseEvent| ())}>
                        { w.draw_outline }
                    </button>
                </div>
                { below(Field::PartOutline) }
            }
            <fieldset class="group">
                <legend>{ w.sizes }</legend>
                for &field in entry.shape.map_or(&[][..], dimensions) {
                    { number(field) }
                }
            </fieldset>
            <fieldset class="group">
                <legend>{ w.weighs }</legend>
                { weight(form, k, entry, &set, change(|part, value| {
                    part.material = Material::ALL.iter().copied().find(|m| material_code(*m) == value);
                })) }
            </fieldset>
            <fieldset class="group">
                <legend>{ w.place }</legend>
                <p class="help">{ w.place_help }</p>
                for field in PLACES {
                    { number(field) }
                }
            </fieldset>
            { cut(form, k, entry, cut_from) }
            { below(Field::PartCutFrom) }
        </section>
    }
}

/// One of a list, by its code and name.
fn pick(
    field: Field,
    k: usize,
    name: &str,
    options: &[(String, String, bool)],
    empty: bool,
    onchange: Callback<Event>,
) -> Html {
    let id = element_id(Place::in_row(field, k));
    html! {
        <div class="field pb-pick">
            <label for={id.clone()}><span class="name">{ name }</span></label>
            <select key={id.clone()} id={id} data-testid={format!("field-{}", Place::in_row(field, k))} {onchange}>
                if empty {
                    <option value="" selected={true} />
                }
                for (code, name, chosen) in options {
                    <option key={code.clone()} value={code.clone()} selected={*chosen}>{ name }</option>
                }
            </select>
        </div>
    }
}

/// Buttons side by side: code, name, pressed, what a press does.
fn buttons(test: &str, options: Vec<(&'static str, &'static str, bool, Callback<MouseEvent>)>) -> Html {
    html! {
        <div class="pb-buttons">
            for (code, name, pressed, onclick) in options {
                <button key={code} type="button" class="segment" aria-pressed={if pressed { "true" } else { "false" }} data-testid={format!("{test}-{code}")} {onclick}>
                    { name }
                </button>
            }
        </div>
    }
}

/// The way it points, where that makes a difference.
fn facing(form: &Form, k: usize, entry: &PartEntry, set: &(impl Fn(&dyn Fn(&mut Entries)) + Clone + 'static)) -> Html {
    let w = &words().parts;
    let Some(shape) = entry.shape.filter(|s| !ways(*s).is_empty()) else { return Html::default() };
    let now = like(shape, entry.facing);
    let way = |facing: Facing| {
        let set = set.clone();
        let press = Callback::from(move |_: MouseEvent| {
            set(&|e| {
                if let Some(part) = e.parts.get_mut(k) {
                    part.facing = facing;
                }
            })
        });
        let wrong = shape == Shape::Wedge && now != entry.facing;
        (facing_code(facing), (w.points)(shape, facing), now == facing && !wrong, press)
    };
    let place = Place::in_row(Field::PartFacing, k);
    html! {
        <fieldset class="choice" id={element_id(place)} tabindex="-1">
            <legend>{ w.way }</legend>
            { buttons("part-facing", ways(shape).iter().map(|f| way(*f)).collect()) }
            { form.message_below(place) }
        </fieldset>
    }
}

/// Its weight, or what it is made of.
fn weight(
    form: &Form,
    k: usize,
    entry: &PartEntry,
    set: &(impl Fn(&dyn Fn(&mut Entries)) + Clone + 'static),
    on_material: Callback<Event>,
) -> Html {
    let (w, c) = (&words().parts, &words().card);
    if let Some(host) = entry.cut_from {
        return html! { <p class="help">{ fill(w.cut_weighs, &[("part", &names::part(&form.entries, host))]) }</p> };
    }
    let given = !form.entries.shown(Place::in_row(Field::PartMass, k), form.system).trim().is_empty();
    let known = |code, name, how| {
        let set = set.clone();
        let press = Callback::from(move |_: MouseEvent| {
            set(&|e| e.weight_is_known(Some(k), how));
        });
        (code, name, entry.weight_known == Some(how), press)
    };
    let none = (String::new(), w.no_material.to_owned(), entry.material.is_none());
    let all = Material::ALL
        .iter()
        .map(|&m| (material_code(m), (words().load.material)(m).to_owned(), entry.material == Some(m)));
    let materials: Vec<_> = std::iter::once(none).chain(all).collect();
    html! {
        <>
            { form.number(Place::in_row(Field::PartMass, k)) }
            if given {
                <div class="choice" id={element_id(Place::in_row(Field::PartWeightKnown, k))} tabindex="-1" role="group" aria-label={(words().field)(Field::PartWeightKnown).name}>
                    { buttons("part-known", vec![
                        known("scale", c.scale, WeightKnown::Scale),
                        known("note", c.note_on_load, WeightKnown::Note),
                        known("estimate", c.estimate, WeightKnown::Estimate),
                    ]) }
                </div>
            }
            { pick(Field::PartMaterial, k, w.material, &materials, false, on_material) }
            if let Some(material) = entry.material {
                <p class="hint under">
                    if given {
                        { w.weight_counts }{ " " }
                    }
                    { density(material, form.system) }
                </p>
            }
            { form.message_below(Place::in_row(Field::PartMaterial, k)) }
        </>
    }
}

/// A density with its range and source.
fn density(material: Material, system: System) -> String {
    let row = material.density();
    // A cubic foot is so many cubic metres.
    let (per, unit) = match system {
        System::Metric => (1.0, "kg/m\u{b3}"),
        System::Us => {
            let foot = Unit::Foot.to_document(1.0);
            (Unit::Pound.from_document(foot * foot * foot), "lb/ft\u{b3}")
        }
    };
    let show = |v: f64, way| format!("{}\u{a0}{unit}", number(per * v, 0, way));
    let range = fill(
        words().card.from_to,
        &[("a", &show(row.span.lo, Rounding::Down)), ("b", &show(row.span.hi, Rounding::Up))],
    );
    fill(
        words().parts.density,
        &[
            ("density", &show(row.span.nominal, Rounding::Nearest)),
            ("range", &range),
            ("source", row.source),
            ("mark", (words().mark)(row.mark)),
        ],
    )
}

/// What it is cut out of.
fn cut(form: &Form, k: usize, entry: &PartEntry, onchange: Callback<Event>) -> Html {
    let w = &words().parts;
    if entry.cut_from.is_none() && !cuts_of(&form.entries, k).is_empty() {
        return html! { <p class="help">{ w.host_has_cuts }</p> };
    }
    let mut hosts = hosts(&form.entries, k);
    // One that is no host any more is shown with its message until another is chosen.
    hosts.extend(entry.cut_from.filter(|h| !hosts.contains(h)));
    let host = |h: usize| (h.to_string(), names::part(&form.entries, h), entry.cut_from == Some(h));
    let solid = ("solid".to_owned(), w.solid.to_owned(), entry.cut_from.is_none());
    let options: Vec<_> = std::iter::once(solid).chain(hosts.into_iter().map(host)).collect();
    pick(Field::PartCutFrom, k, w.cut_from, &options, false, onchange)
}

/// A material's name in a document.
fn material_code(material: Material) -> String {
    serde_json::to_value(material).ok().and_then(|v| v.as_str().map(str::to_owned)).unwrap_or_default()
}

/// A way's name in tests.
const fn facing_code(facing: Facing) -> &'static str {
    match facing {
        Facing::Up => "up",
        Facing::Down => "down",
        Facing::Ahead => "ahead",
        Facing::Heel => "heel",
        Facing::Left => "left",
        Facing::Right => "right",
    }
}
