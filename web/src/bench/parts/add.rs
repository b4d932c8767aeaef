//! The buttons that put a part in.

use super::adding::{self, Kind};
use super::view::Body;
use crate::figures::Printer;
use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use standfast_core::document::Shape;
use standfast_core::pallet;
use standfast_core::units::Rounding;
use standfast_core::validate::MOST_PARTS;
use std::rc::Rc;
use yew::prelude::*;

/// Every shape, in the order of the buttons.
pub const SHAPES: [Shape; 8] = [
    Shape::Box,
    Shape::Cylinder,
    Shape::Tube,
    Shape::Wedge,
    Shape::Cone,
    Shape::Sphere,
    Shape::HalfSphere,
    Shape::Prism,
];

#[derive(Properties, PartialEq)]
pub struct AddProps {
    pub form: Form,
    pub bodies: Rc<Vec<Body>>,
    pub selected: Option<usize>,
    pub on_select: Callback<usize>,
}

/// The buttons.
#[component]
pub fn Add(props: &AddProps) -> Html {
    let act = use_act();
    let AddProps { form, bodies, selected, on_select } = props;
    let w = &words().parts;
    let put = |kind: Kind| {
        let (act, on_select, selected, system) = (act.clone(), on_select.clone(), *selected, form.system);
        let (entries, bodies) = (Rc::clone(&form.entries), Rc::clone(bodies));
        Callback::from(move |_: MouseEvent| {
            if let Some((entries, part)) = adding::added(&entries, &bodies, selected, kind, system) {
                act.emit(Action::Set(Rc::new(entries)));
                on_select.emit(part);
            }
        })
    };
    let full = form.entries.parts.len() >= MOST_PARTS;
    let button = |test: String, name: &'static str, title: String, kind: Kind| {
        html! {
            <button key={test.clone()} type="button" data-testid={test} title={(!title.is_empty()).then_some(title)} disabled={full} onclick={put(kind)}>
                { name }
            </button>
        }
    };
    let print = Printer(form.system);
    html! {
        <section class="pb-add" aria-labelledby="parts-add-head">
            <h3 id="parts-add-head">{ w.add }</h3>
            if full {
                <p class="help">{ fill(w.full, &[("most", &MOST_PARTS.to_string())]) }</p>
            }
            <div class="pb-buttons" role="group" aria-label={w.add_shape}>
                for shape in SHAPES {
                    { button(format!("add-{}", code(shape)), (w.shape)(shape), String::new(), Kind::Shape(shape)) }
                }
                { button("add-bearer".to_owned(), w.bearer, String::new(), Kind::Bearer) }
            </div>
            <details class="fold">
                <summary data-testid="add-pallets">{ w.add_pallet }</summary>
                <div class="inside pb-buttons">
                    for p in &pallet::ALL {
                        { button(
                            format!("add-pallet-{}", p.id),
                            (w.pallet)(p.id),
                            fill(w.pallet_source, &[
                                ("source", p.source),
                                ("mark", (words().mark)(p.mark)),
                                ("range", &fill(words().card.from_to, &[
                                    ("a", &print.mass(p.mass.lo, Rounding::Down)),
                                    ("b", &print.mass(p.mass.hi, Rounding::Up)),
                                ])),
                            ]),
                            Kind::Pallet(p),
                        ) }
                    }
                </div>
            </details>
        </section>
    }
}

/// A shape's name in tests.
pub const fn code(shape: Shape) -> &'static str {
    match shape {
        Shape::Box => "box",
        Shape::Cylinder => "cylinder",
        Shape::Tube => "tube",
        Shape::Cone => "cone",
        Shape::Sphere => "sphere",
        Shape::HalfSphere => "half_sphere",
        Shape::Wedge => "wedge",
        Shape::Prism => "prism",
    }
}
