//! How a figure is known, small under it: "sheet, ± 5 mm". A tap opens in place what changes it.

use crate::entries::tolerance_unit;
use crate::field::{Message, message_view};
use crate::figures::{self, Printer, quantity_of, share};
use crate::form::{Form, Tile, code, tiles};
use crate::jump;
use crate::problems;
use crate::sentences::name_of;
use crate::state::{Action, Choice};
use crate::words::{fill, words};
use standfast_core::document::{By, WeightKnown};
use standfast_core::known::tolerance;
use standfast_core::place::{Field, Place};
use standfast_core::rules;
use standfast_core::units::{Quantity, Rounding};
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// What is shown of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    line: AttrValue,
    /// Not as it usually is.
    changed: bool,
    /// There where it is open.
    editor: Option<Editor>,
}

/// What changes it.
#[derive(Clone, Debug, PartialEq)]
struct Editor {
    ways: Vec<Way>,
    /// The tolerance's text as typed.
    own: AttrValue,
    unit: AttrValue,
    of_slope: bool,
    /// What counts where nothing is typed.
    instead: Option<AttrValue>,
    message: Option<Message>,
    /// The usual line, where it is not as usual.
    usual: Option<AttrValue>,
}

/// A way to choose.
#[derive(Clone, Debug, PartialEq)]
struct Way {
    by: By,
    name: &'static str,
    out: AttrValue,
    chosen: bool,
}

/// How an entered figure is known; nothing where none is entered, or where it counts as it stands.
pub fn shown(form: &Form, place: Place) -> Option<Shown> {
    if !place.field.takes_tolerance() || !form.entries.is_entered(place) {
        return None;
    }
    let changed = form.entries.is_known_otherwise(place);
    // What is wrong is never folded away.
    let open = form.known == Some(place) || form.answer.tolerance_problem(place).is_some();
    let editor = open.then(|| Teller { form, place }.editor(changed));
    Some(Shown { line: line(form, place).into(), changed, editor })
}

/// How a figure is known, in a line.
pub fn line(form: &Form, place: Place) -> String {
    let teller = Teller { form, place };
    let line = teller.line(teller.way(), teller.out());
    if form.entries.is_known_otherwise(place) { fill(words().known.changed, &[("line", &line)]) } else { line }
}

/// How a weight is known, as a way like others.
fn of_weight(known: Option<WeightKnown>) -> (By, rules::Figure) {
    match known {
        Some(WeightKnown::Scale) => (By::Scale, rules::TOLERANCE_SCALE),
        Some(WeightKnown::Note) => (By::Note, rules::TOLERANCE_NOTE),
        Some(WeightKnown::Estimate) | None => (By::Estimate, rules::TOLERANCE_ESTIMATE),
    }
}

struct Teller<'a> {
    form: &'a Form,
    place: Place,
}

impl Teller<'_> {
    fn line(&self, way: &str, out: Option<String>) -> String {
        match out {
            Some(out) => fill(words().known.line, &[("way", way), ("out", &out)]),
            None => way.to_owned(),
        }
    }

    /// How a weight that has ways of its own is known.
    fn weight_known(&self) -> Option<WeightKnown> {
        let entries = &self.form.entries;
        match self.place.field {
            Field::PartMass => entries.parts.get(self.place.row).and_then(|p| p.weight_known),
            _ => entries.weight_known,
        }
    }

    fn way(&self) -> &'static str {
        let w = &words().known;
        match (self.form.entries.way(self.place), self.place.field) {
            (Some(by), _) => (w.by)(by, quantity_of(self.place)).0,
            (None, Field::LoadMass | Field::PartMass) => match self.weight_known() {
                None => w.not_chosen,
                known => (w.by)(of_weight(known).0, Quantity::Mass).0,
            },
            (None, _) => w.mark,
        }
    }

    /// How far it may be out: as typed, or as the way gives; nothing where one of the two cannot be read.
    fn out(&self) -> Option<String> {
        let own = self.form.entries.own_tolerance(self.place).map(|typed| typed.read());
        match own {
            Some(Ok(own)) => Some(self.own_out(own)),
            Some(Err(e)) if e != standfast_core::number::NotRead::Empty => None,
            _ => self.given(self.form.entries.way(self.place)),
        }
    }

    /// How far it may be out for a way alone.
    fn given(&self, by: Option<By>) -> Option<String> {
        match (by, self.place.field) {
            (Some(by), field) => self.value().map(|value| self.printed(tolerance(field, by, value))),
            (None, Field::LoadMass | Field::PartMass) => {
                let part = share(of_weight(self.weight_known()).1.value);
                Some(fill(words().known.out, &[("figure", &part)]))
            }
            (None, _) => Some(self.printed(rules::TOLERANCE_CENTRE_MARKED.value)),
        }
    }

    /// The figure as entered, where it can be read.
    fn value(&self) -> Option<f64> {
        self.form.entries.numbers.get(&self.place).and_then(|typed| typed.read().ok())
    }

    fn of_slope(&self) -> bool {
        self.place.field.row().quantity == Some(Quantity::Slope)
    }

    /// A tolerance rounded up.
    fn printed(&self, out: f64) -> String {
        let w = &words().known;
        if out <= 0.0 {
            return w.exact.to_owned();
        }
        if self.of_slope() {
            return fill(w.out_of_slope, &[("n", &figures::bare(out, 1, Rounding::Up))]);
        }
        let figure = Printer(self.form.system).quantity(quantity_of(self.place), out, Rounding::Up);
        fill(w.out, &[("figure", &figure)])
    }

    /// A tolerance of one's own, as fine as it was typed.
    fn own_out(&self, own: f64) -> String {
        let w = &words().known;
        let Some(unit) = tolerance_unit(self.place, self.form.system) else { return self.printed(own) };
        if self.of_slope() {
            return fill(w.out_of_slope, &[("n", &figures::bare(own, 2, Rounding::Up))]);
        }
        fill(w.out, &[("figure", &figures::fine(unit, own))])
    }

    fn editor(&self, changed: bool) -> Editor {
        let Self { form, place } = *self;
        let entries = &form.entries;
        let quantity = quantity_of(place);
        let now = entries.way(place);
        let way = |&by: &By| Way {
            by,
            name: (words().known.by)(by, quantity).1,
            out: self.given(Some(by)).unwrap_or_default().into(),
            chosen: now == Some(by),
        };
        let message = form
            .answer
            .tolerance_problem(place)
            .map(|problem| Message { text: problems::message(problem, entries, form.system).into(), missing: false });
        let usual = || match place.field.usually() {
            Some(by) => self.line((words().known.by)(by, quantity).0, self.given(Some(by))),
            None => self.line(self.way(), self.given(None)),
        };
        Editor {
            ways: place.field.ways().iter().map(way).collect(),
            own: entries.tolerance_shown(place, form.system).into(),
            unit: tolerance_unit(place, form.system).map(|u| u.symbol()).unwrap_or_default().into(),
            of_slope: self.of_slope(),
            instead: self.given(now).map(AttrValue::from),
            message,
            usual: changed.then(|| usual().into()),
        }
    }
}

/// The line, and what it opens.
pub fn view(place: Place, shown: &Shown, act: &Callback<Action>) -> Html {
    let w = &words().known;
    let open = shown.editor.is_some();
    let id = format!("k-{place}");
    let toggle = {
        let id = id.clone();
        act.reform(move |_: MouseEvent| {
            if !open {
                jump::show(id.clone());
            }
            Action::Known((!open).then_some(place))
        })
    };
    let heading = fill(w.heading, &[("field", &name_of(place))]);
    html! {
        <>
            <button
                type="button"
                class={classes!("known", shown.changed.then_some("changed"))}
                data-testid={format!("known-{place}")}
                aria-expanded={if open { "true" } else { "false" }}
                aria-controls={id.clone()}
                onclick={toggle}
            >
                <span class="unseen">{ &heading }{ ": " }</span>
                <span class="line">{ &shown.line }</span>
            </button>
            <div class="how-known" id={id} role="group" aria-label={heading} hidden={!open}>
                if let Some(editor) = &shown.editor {
                    { inside(place, editor, act) }
                }
            </div>
        </>
    }
}

fn inside(place: Place, editor: &Editor, act: &Callback<Action>) -> Html {
    let w = &words().known;
    let way = |way: &Way| Tile {
        code: code(&way.by),
        name: way.name.to_owned(),
        note: way.out.to_string(),
        chosen: way.chosen,
        choice: Choice::KnownBy(place, way.by),
    };
    let ways: Vec<_> = editor.ways.iter().map(way).collect();
    let back = act.reform(move |_: MouseEvent| Action::Choose(Choice::AsUsual(place)));
    html! {
        <>
            if !ways.is_empty() {
                { tiles(&format!("known.{place}"), &ways, act) }
            }
            { own(place, editor, act) }
            if let Some(usual) = &editor.usual {
                <button type="button" class="back" data-testid={format!("known-usual-{place}")} onclick={back}>
                    { fill(w.back, &[("line", usual)]) }
                </button>
            }
        </>
    }
}

/// The box for a tolerance of one's own.
fn own(place: Place, editor: &Editor, act: &Callback<Action>) -> Html {
    let w = &words().known;
    let oninput = act.reform(move |event: InputEvent| {
        Action::Tolerance(place, event.target_unchecked_into::<HtmlInputElement>().value())
    });
    let onblur = act.reform(|_: FocusEvent| Action::Settle);
    let id = jump::tolerance_id(place);
    let (hint_id, message_id) = (format!("{id}-hint"), format!("{id}-message"));
    let wrong = editor.message.is_some();
    let described = if wrong { format!("{message_id} {hint_id}") } else { hint_id.clone() };
    html! {
        <div class={classes!("field", wrong.then_some("wrong"))}>
            <label for={id.clone()}>
                <span class="name">{ if editor.of_slope { w.own_of_slope } else { w.own } }</span>
                <span class="help" id={hint_id}>
                    if let Some(instead) = &editor.instead {
                        { fill(w.own_help, &[("out", instead)]) }
                    }
                </span>
            </label>
            <span class="box">
                <input
                    {id}
                    type="text"
                    inputmode="decimal"
                    autocomplete="off"
                    spellcheck="false"
                    data-testid={format!("field-known.{place}")}
                    aria-describedby={described}
                    aria-invalid={if wrong { "true" } else { "false" }}
                    value={editor.own.clone()}
                    {oninput}
                    {onblur}
                />
                if !editor.unit.is_empty() {
                    <span class="unit">{ &editor.unit }</span>
                }
            </span>
            if let Some(message) = &editor.message {
                { message_view(message, message_id, &format!("problem-known.{place}")) }
            }
        </div>
    }
}

#[cfg(test)]
mod tests;
