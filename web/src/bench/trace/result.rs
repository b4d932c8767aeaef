//! What comes out: weight, centre, and how well the outline is known.

use crate::entries::Ground;
use crate::figures::{Printer, share, tolerance};
use crate::form::Form;
use crate::words::{fill, words};
use standfast_core::found::Way;
use standfast_core::place::Field;
use standfast_core::report::{LoadReport, TraceReport};
use standfast_core::rules;
use standfast_core::units::{Quantity, Rounding};
use yew::prelude::*;

/// The results.
pub fn result(form: &Form) -> Html {
    let w = &words().trace;
    let (outline, load) = (&form.answer.load.outline, &form.answer.load.load);
    let trace = form.entries.trace.as_ref();
    let on_paper = trace.is_some_and(|t| t.ground == Ground::Paper);
    let open_hole = trace.is_some_and(|t| !t.outline.is_empty() && !t.open.is_empty());
    html! {
        <section class="tr-result" data-testid="trace-result" aria-labelledby="tr-result-head" aria-live="polite">
            <h3 id="tr-result-head">{ w.result }</h3>
            if outline.is_none() {
                <p class="help">{ w.result_later }</p>
            }
            if open_hole {
                <p class="message" data-testid="trace-open-hole">{ w.open_hole }</p>
            }
            <dl>
                if let Some(load) = load {
                    { of_load(load, Printer(form.system)) }
                }
                if let Some(outline) = outline {
                    { of_outline(outline, Printer(form.system)) }
                }
            </dl>
            if let Some(outline) = outline {
                <p class="hint" data-testid="trace-from">{ why(outline, on_paper) }</p>
                if is_only_weighed(form) {
                    <p class="hint" data-testid="trace-uneven">{ fill(w.uneven, &[("part", &share(rules::TOLERANCE_CENTRE_MIDDLE.value))]) }</p>
                }
            }
        </section>
    }
}

fn row(name: &str, test: &'static str, lines: Vec<String>) -> Html {
    html! {
        <>
            <dt>{ name }</dt>
            <dd data-testid={test}>{ for lines.into_iter().map(|line| html! { <span>{ line }</span> }) }</dd>
        </>
    }
}

fn of_load(load: &LoadReport, print: Printer) -> Html {
    let (w, l) = (&words().trace, &words().load);
    let by = &load.decided_by;
    let elsewhere = [by.ahead, by.left, by.above].into_iter().any(|way| way != Way::Trace);
    let at = |text: &str, range| fill(text, &[("value", &tolerance(range, Quantity::Length, print))]);
    let centre = &load.centre;
    html! {
        <>
            { row(w.mass_row, "trace-mass-found", vec![tolerance(load.mass, Quantity::Mass, print)]) }
            if elsewhere {
                <dt>{ w.centre_row }</dt>
                <dd>{ w.decided_else }</dd>
            } else {
                { row(w.centre_row, "trace-centre-found", vec![
                    at(l.from_heel, centre.ahead),
                    at(l.left_of_middle, centre.left),
                    at(l.above_underside, centre.above),
                ]) }
            }
        </>
    }
}

fn of_outline(outline: &TraceReport, print: Printer) -> Html {
    let w = &words().trace;
    let points = || outline.outline.iter().map(|p| (p.0.get(), p.1.get()));
    let span = |list: &mut dyn Iterator<Item = f64>| {
        let (lo, hi) = list.fold((f64::INFINITY, f64::NEG_INFINITY), |(lo, hi), v| (lo.min(v), hi.max(v)));
        print.length(hi - lo, Rounding::Nearest)
    };
    let size = format!("{} \u{d7} {}", span(&mut points().map(|p| p.0)), span(&mut points().map(|p| p.1)));
    let off = |m: f64| print.length(m, Rounding::Up);
    let (across, up) = outline.error;
    let known = fill(w.known_to, &[("across", &off(across.get())), ("up", &off(up.get()))]);
    html! {
        <>
            { row(w.size, "trace-size", vec![size]) }
            { row(w.outline_centre, "trace-known-to", vec![known]) }
        </>
    }
}

/// Whether the outline decides where the centre is, of a load that is not known to be even.
fn is_only_weighed(form: &Form) -> bool {
    let by_outline = |l: &LoadReport| l.decided_by.ahead == Way::Trace || l.decided_by.above == Way::Trace;
    form.answer.load.load.as_ref().is_some_and(by_outline) && form.entries.numbers.contains_key(&Field::LoadMass.into())
}

/// Where the tolerance comes from.
fn why(outline: &TraceReport, on_paper: bool) -> String {
    let w = &words().trace;
    let text = match (outline.straightened, on_paper) {
        (true, _) => w.from_straight,
        (false, true) => w.from_paper,
        (false, false) => w.from_plain,
    };
    fill(text, &[("part", &share(outline.not_square.get()))])
}
