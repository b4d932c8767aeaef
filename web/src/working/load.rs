//! How the load's common centre was found: its parts with weight and centre, weight times distance, the sum.

use crate::entries::Entries;
use crate::figures::{Printer, number};
use crate::words::{fill, words};
use standfast_core::report::LoadReport;
use standfast_core::scalar::Scalar;
use standfast_core::units::Rounding::Nearest;
use yew::prelude::*;

/// The list of parts; nothing for a load that has none.
pub(super) fn load(load: &LoadReport, entries: &Entries, print: Printer) -> Html {
    let w = &words().load;
    if load.parts.is_empty() {
        return Html::default();
    }
    let length = |s: Scalar| print.length(s.get(), Nearest);
    let volume = |s: Scalar| format!("{}\u{a0}m\u{b3}", number(s.get(), 4, Nearest));
    let row = |(k, part): (usize, &standfast_core::report::PartReport)| {
        let entry = entries.parts.get(k);
        let name = entry.map(|e| e.name.as_str()).filter(|n| !n.is_empty());
        let name = name.map_or_else(|| fill(w.part_nth, &[("n", &(k + 1).to_string())]), str::to_owned);
        // A cut-out is in its part's figures already: shown, not summed.
        let cut = entry.is_some_and(|e| e.cut_from.is_some());
        html! {
            <tr class={classes!(cut.then_some("cut"))} key={k}>
                <th scope="row">{ name }</th>
                <td>{ volume(part.volume) }</td>
                <td>{ print.mass(part.mass.nominal.get(), Nearest) }</td>
                <td>{ length(part.centre.x) }</td>
                <td>{ length(part.centre.y) }</td>
                <td>{ length(part.centre.z) }</td>
            </tr>
        }
    };
    let by_parts = load.ways.iter().find(|s| s.way == standfast_core::found::Way::Parts);
    let sum = by_parts.and_then(|s| Some((s.mass?, s.ahead?, s.left?, s.above?)));
    html! {
        <div class="scroll" role="region" tabindex="0" aria-label={w.working}>
            <table data-testid="working-load">
                <caption>{ w.working }<span class="help">{ w.working_intro }</span></caption>
                <thead>
                    <tr>
                        for head in [w.working_part, w.volume, w.weight, w.ahead, w.left, w.above] {
                            <th scope="col">{ head }</th>
                        }
                    </tr>
                </thead>
                <tbody>{ for load.parts.iter().enumerate().map(row) }</tbody>
                if let Some((mass, ahead, left, above)) = sum {
                    <tfoot>
                        <tr>
                            <th scope="row">{ w.working_sum }</th>
                            <td></td>
                            <td>{ print.mass(mass.nominal.get(), Nearest) }</td>
                            <td>{ length(ahead.nominal) }</td>
                            <td>{ length(left.nominal) }</td>
                            <td>{ length(above.nominal) }</td>
                        </tr>
                    </tfoot>
                }
            </table>
        </div>
    }
}
