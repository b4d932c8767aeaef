//! What the truck carries as it stands: the plate's weights by height and load centre, and where the model
//! leaves less. No capacity plate, and says so.

use crate::capacity::{Chart, Curve, Stair};
use crate::figures::Printer;
use crate::form::Form;
use crate::paper::check::SheetProps;
use crate::sentences::gap_said;
use crate::words::{fill, words};
use standfast_core::capacity::diagram;
use standfast_core::units::{Quantity, Rounding, System};
use yew::prelude::*;

/// Load centres in the unit that they are read in: first, step.
const METRIC: (f64, f64) = (400.0, 100.0);
const US: (f64, f64) = (16.0, 4.0);
/// No card is wider.
const MOST_COLUMNS: usize = 10;

/// What a cell says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Cell {
    /// The plate does not reach here.
    NotCovered,
    /// So much, kg.
    Allowed(f64),
    /// The plate's, kg; and the less that the model leaves.
    Less(f64, f64),
    /// The plate's, kg; the model was not asked.
    NotWorked(f64),
}

/// The card's rows.
#[derive(Debug)]
pub(super) struct Cells {
    pub centres: Vec<f64>,
    pub rows: Vec<(f64, Vec<Cell>)>,
}

impl Cells {
    /// Of a diagram.
    pub fn of(chart: &Chart, system: System) -> Self {
        let centres = centres(chart, system);
        let row = |stair: &Stair| {
            // The next height up that is worked out: there the model leaves no more.
            let curves = chart.curves.iter().filter(|c| c.height >= stair.height - 1e-9);
            let curve = curves.min_by(|a, b| a.height.total_cmp(&b.height));
            (stair.height, centres.iter().map(|&at| cell(stair, curve, at)).collect())
        };
        let rows = chart.stairs.iter().map(row).collect();
        Self { centres, rows }
    }
}

/// Round ones up to the furthest of the plate, and the plate's own.
fn centres(chart: &Chart, system: System) -> Vec<f64> {
    let unit = Quantity::Length.unit(system);
    let (first, step) = if system == System::Metric { METRIC } else { US };
    let ends = |s: &Stair| s.treads.iter().map(|t| t.1).collect::<Vec<_>>();
    let mut own: Vec<f64> = chart.stairs.iter().flat_map(ends).collect();
    own.sort_by(f64::total_cmp);
    own.dedup_by(|b, a| (*b - *a).abs() < 1e-6);
    let last = own.last().copied().unwrap_or_default();
    let round = (0..MOST_COLUMNS).map(|k| unit.to_document(first + step * k as f64)).filter(|c| *c < last);
    // A round one close by one of the plate's would say the same twice.
    let round: Vec<f64> = round.filter(|c| own.iter().all(|o| (o - c).abs() > 0.02)).collect();
    let mut all: Vec<f64> = own.into_iter().chain(round).collect();
    all.sort_by(f64::total_cmp);
    all
}

fn cell(stair: &Stair, curve: Option<&Curve>, at: f64) -> Cell {
    let Some(allowed) = stair.treads.iter().find(|t| at > t.0 && at <= t.1 + 1e-9).map(|t| t.2) else {
        return Cell::NotCovered;
    };
    // At the next point outward it leaves no more than here.
    let left = curve.and_then(|c| c.points.iter().find(|p| p.0 >= at - 1e-6)).map(|p| p.1);
    match left {
        None => Cell::NotWorked(allowed),
        Some(left) if left < allowed => Cell::Less(allowed, left),
        Some(_) => Cell::Allowed(allowed),
    }
}

/// The card.
#[component]
pub fn CapacityCard(props: &SheetProps) -> Html {
    let w = &words().paper;
    let form = &props.form;
    let worked = use_memo(form.answer.clone(), |answer| {
        let plate = &answer.assessment.as_ref()?.plate;
        Some(Chart::of(&diagram(&answer.document)?, plate))
    });
    html! {
        <article class="paper card" data-testid="paper-card">
            { super::head(w.card_title, form, &props.maker, false) }
            <p class="loud" data-testid="card-loud">{ w.card_loud }</p>
            { match worked.as_ref() {
                None if !form.entries.plate => html! { <p class="loud">{ w.card_none }</p> },
                None => html! { <p>{ w.card_later }</p> },
                Some(chart) => inside(chart, form),
            } }
        </article>
    }
}

fn inside(chart: &Chart, form: &Form) -> Html {
    let w = &words().paper;
    let print = Printer(form.system);
    let findings = form.answer.assessment.iter().flat_map(|a| &a.plate.findings);
    let other: Vec<_> =
        findings.filter(|f| f.gap.is_of_another_truck()).map(|f| gap_said(f, &form.answer, print)).collect();
    let load = match form.entries.load_name.trim() {
        "" => w.unnamed,
        name => name,
    };
    html! {
        <>
            if chart.stairs.is_empty() {
                <p class="loud">{ w.card_none }</p>
            } else if !chart.issued_so {
                <p class="loud" data-testid="card-not-this">{ fill(w.card_not_this, &[("reason", &other.join(" "))]) }</p>
            } else {
                <p>{ w.card_help }</p>
                { table(&Cells::of(chart, form.system), print) }
                <p class="legend">{ w.card_legend }{ " " }{ fill(w.card_of_load, &[("load", load)]) }</p>
            }
            { plate(form) }
            <p class="legend">{ words().caution.first }{ " " }{ words().caution.change }</p>
        </>
    }
}

fn table(cells: &Cells, print: Printer) -> Html {
    let w = &words().paper;
    let mass = |kg: f64| super::rows::allowed(print, kg);
    let cell = |cell: &Cell| match cell {
        Cell::NotCovered => html! { <td class="none">{ w.card_not_covered }</td> },
        Cell::Allowed(kg) => html! { <td>{ mass(*kg) }</td> },
        Cell::NotWorked(kg) => html! { <td>{ mass(*kg) }{ " " }{ w.card_not_worked }</td> },
        Cell::Less(plate, kg) => {
            html! { <td class="less"><b>{ fill(w.card_less, &[("mass", &mass(*kg))]) }</b><s>{ mass(*plate) }</s></td> }
        }
    };
    html! {
        <table class="capacity-card" data-testid="card-table">
            <thead>
                <tr>
                    <th scope="col">{ w.card_height }</th>
                    <th scope="colgroup" colspan={cells.centres.len().to_string()}>{ w.card_centre }</th>
                </tr>
                <tr>
                    <td></td>
                    for centre in &cells.centres {
                        <th scope="col">{ print.length(*centre, Rounding::Nearest) }</th>
                    }
                </tr>
            </thead>
            <tbody>
                for (height, row) in &cells.rows {
                    <tr><th scope="row">{ print.height(*height) }</th>{ for row.iter().map(cell) }</tr>
                }
            </tbody>
        </table>
    }
}

/// The plate's own rows as entered, with what it was issued for.
fn plate(form: &Form) -> Html {
    let w = &words().paper;
    let rows = super::rows::groups(form).into_iter().find(|g| g.name == w.group_plate);
    let row = |row: super::rows::Row| {
        html! { <tr><th scope="row">{ row.name }</th><td>{ row.value }</td><td class="how">{ row.known }</td></tr> }
    };
    html! {
        <section class="plate-rows">
            <h2>{ w.card_plate }</h2>
            <table>{ for rows.into_iter().flat_map(|g| g.rows).map(row) }</table>
        </section>
    }
}
