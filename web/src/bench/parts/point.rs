//! The two figures of one point of an outline. A point is no field of its own: the text stands here
//! as typed until it is left.

use super::outline::Drawn;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use standfast_core::number;
use standfast_core::units::{Quantity, Unit};
use std::rc::Rc;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct PointProps {
    pub drawn: Drawn,
    pub point: usize,
}

/// A text being typed: of which point and direction.
#[derive(Clone, Debug, PartialEq)]
struct Typing {
    point: usize,
    second: bool,
    text: String,
}

/// A coordinate as its input shows it.
fn shown(value: f64, unit: Unit) -> String {
    number::show(unit.from_document(value), if unit == Unit::Inch { 3 } else { 1 })
}

/// The figures.
#[component]
pub fn PointFigures(props: &PointProps) -> Html {
    let act = use_act();
    let typing = use_state(|| None::<Typing>);
    let PointProps { drawn, point } = props;
    let (point, w) = (*point, &words().parts);
    let unit = Quantity::Length.unit(drawn.system);
    let Some(&(a, b)) = drawn.points.get(point) else { return Html::default() };
    let (i, j) = drawn.view.axes();
    let input = |second: bool, value: f64, name: &'static str| {
        let mine = (*typing).clone().filter(|t| t.point == point && t.second == second).map(|t| t.text);
        let wrong = mine.as_ref().is_some_and(|t| number::read(t, unit).is_err());
        let oninput = {
            let (typing, act, drawn) = (typing.clone(), act.clone(), drawn.clone());
            Callback::from(move |event: InputEvent| {
                let text = event.target_unchecked_into::<HtmlInputElement>().value();
                if let Ok(value) = number::read(&text, unit) {
                    let value = unit.to_document(value);
                    let at = if second { (a, value) } else { (value, b) };
                    act.emit(Action::Set(Rc::new(drawn.placed(point, at))));
                }
                typing.set(Some(Typing { point, second, text }));
            })
        };
        let onblur = {
            let typing = typing.clone();
            // What could not be read stays to be put right.
            Callback::from(move |_: FocusEvent| {
                if !wrong {
                    typing.set(None);
                }
            })
        };
        let id = if second { "outline-second" } else { "outline-first" };
        html! {
            <div class={classes!("field", wrong.then_some("wrong"))}>
                <label for={id}><span class="name">{ name }</span></label>
                <span class="box">
                    <input
                        {id}
                        type="text"
                        inputmode="decimal"
                        autocomplete="off"
                        data-testid={id}
                        aria-invalid={if wrong { "true" } else { "false" }}
                        value={mine.unwrap_or_else(|| shown(value, unit))}
                        {oninput}
                        {onblur}
                    />
                    <span class="unit">{ unit.symbol() }</span>
                </span>
                if wrong {
                    <span class="message">{ w.not_a_number }</span>
                }
            </div>
        }
    };
    let (n, count) = ((point + 1).to_string(), drawn.points.len().to_string());
    html! {
        <fieldset class="group" data-testid="outline-figures">
            <legend>{ fill(w.point, &[("n", &n), ("count", &count)]) }</legend>
            { input(false, a, w.point_at[i]) }
            { input(true, b, w.point_at[j]) }
        </fieldset>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_coordinate_reads_back_as_it_is_shown() {
        for (value, unit) in [(0.4321, Unit::Millimetre), (-0.05, Unit::Millimetre), (0.0127, Unit::Inch)] {
            let read = number::read(&shown(value, unit), unit).expect("a number");
            assert!((unit.to_document(read) - value).abs() < 5e-5, "{value}");
        }
    }
}
