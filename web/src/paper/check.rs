//! The check to print and sign: verdict, drawings, what was entered, working, cautions, list, signatures.

use super::rows::{Group, Row, groups};
use super::working::{drawn, pose, steps, working};
use crate::cards::of_this_lift;
use crate::drawing::{ENGLISH, Still, View};
use crate::figures::Printer;
use crate::form::{Form, capital};
use crate::sentences::{self, Shown, reasons};
use crate::verdict_mark::verdict_mark;
use crate::words::{fill, words};
use standfast_core::checklist::{Answer, Item, not_in_order};
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct SheetProps {
    pub form: Form,
    /// Who made the check.
    pub maker: String,
}

/// The sheet.
#[component]
pub fn CheckSheet(props: &SheetProps) -> Html {
    let form = &props.form;
    let print = Printer(form.system);
    html! {
        <article class="paper check" data-testid="paper-check">
            { super::head(words().paper.title, form, &props.maker, true) }
            { verdict(form) }
            { drawings(form, print) }
            <div class="columns">
                { inputs(form) }
                { working(&form.answer, print) }
                { steps(&form.answer) }
                { cautions(form) }
                { list(form) }
            </div>
            { signatures() }
        </article>
    }
}

fn verdict(form: &Form) -> Html {
    let w = words();
    let shown = Shown::of(&form.answer);
    let list = reasons(&form.answer, &form.entries, form.system);
    let (first, others) = list.split_first().map_or((None, &[][..]), |(first, others)| (Some(first), others));
    // Said apart where another reason governs, or where there is no answer yet.
    let governs = first.is_some_and(|f| Some(&f.main) == sentences::not_in_order(&form.entries.checklist).as_ref());
    let apart = sentences::not_in_order(&form.entries.checklist).filter(|_| !governs);
    html! {
        <section class={classes!("paper-verdict", shown.code())} data-testid="paper-verdict">
            { verdict_mark(shown) }
            <div>
                <p class="word">{ shown.word() }</p>
                if let Some(first) = first {
                    <p class="reason">{ &first.main }</p>
                    if let Some(more) = &first.more {
                        <p>{ more }</p>
                    }
                }
                if let Some(apart) = apart {
                    <p class="reason" data-testid="paper-not-in-order">{ apart }</p>
                }
                if !others.is_empty() {
                    <ul>
                        for other in others {
                            <li>{ format!("{}: {}", w.paper.other_reasons, other.main) }</li>
                        }
                    </ul>
                }
                <p class="standing">{ w.verdict.standing }</p>
            </div>
        </section>
    }
}

fn drawings(form: &Form, print: Printer) -> Html {
    let w = &words().paper;
    let Some(step) = drawn(&form.answer) else {
        return html! { <p class="not-drawn">{ w.not_drawn }</p> };
    };
    let drawing = |view: View| {
        let still = Still::of(view, step, form.system, &ENGLISH, None);
        html! { <figure><figcaption>{ still.title }</figcaption>{ still.view() }</figure> }
    };
    html! {
        <section class="paper-drawings">
            <p>{ fill(w.drawn, &[("step", &pose(step, &form.answer, print))]) }{ " " }{ w.drawing_note }</p>
            <div>{ drawing(View::Side) }{ drawing(View::Plan) }</div>
        </section>
    }
}

fn inputs(form: &Form) -> Html {
    let w = &words().paper;
    let row = |row: &Row| {
        html! {
            <tr>
                <th scope="row">{ &row.name }</th>
                <td>{ &row.value }<span class="how">{ &row.known }</span></td>
            </tr>
        }
    };
    let group = |group: &Group| {
        html! {
            <tbody>
                <tr class="group-name"><th scope="rowgroup" colspan="2">{ group.name }</th></tr>
                { for group.rows.iter().map(row) }
            </tbody>
        }
    };
    html! {
        <section class="inputs" data-testid="paper-inputs">
            <h2>{ w.inputs }</h2>
            <p>{ w.inputs_help }</p>
            <table>{ for groups(form).iter().map(group) }</table>
        </section>
    }
}

fn cautions(form: &Form) -> Html {
    let (w, c) = (&words().paper, &words().caution);
    let here = of_this_lift(form);
    html! {
        <>
            if !here.is_empty() {
                <section class="cautions" data-testid="paper-cautions">
                    <h2>{ w.cautions }</h2>
                    <ul>{ for here.iter().map(|text| html! { <li>{ text }</li> }) }</ul>
                </section>
            }
            <section class="cautions" data-testid="paper-not-checked">
                <h2>{ w.not_checked }</h2>
                <p>{ format!("{}.", capital(&c.not_checked_list.join("; "))) }</p>
                <p>{ format!("{}: {}.", c.not_modelled, c.not_modelled_list.join("; ")) }</p>
                <p><b>{ c.first }</b>{ " " }{ [c.estimate, c.change, c.rounding].join(" ") }</p>
            </section>
        </>
    }
}

fn list(form: &Form) -> Html {
    let (w, c) = (&words().paper, &words().checklist);
    let answers = &form.entries.checklist;
    let wrong = not_in_order(answers);
    let row = |item: &Item| {
        let name = (c.item)(*item).name;
        let (sign, said) = match answers.get(item) {
            Some(Answer::Yes) => ("\u{2713}", c.yes),
            Some(Answer::No) => ("\u{2717}", c.no),
            Some(Answer::NotThere) => ("\u{2013}", c.not_there),
            None => ("", ""),
        };
        let wrong = wrong.contains(item);
        html! {
            <li class={classes!(wrong.then_some("wrong"))}>
                <span class="box">{ sign }</span>
                <span>
                    { name }
                    if wrong { <b>{ format!(": {}", said.to_lowercase()) }</b> }
                </span>
            </li>
        }
    };
    html! {
        <section class="list" data-testid="paper-list">
            <h2>{ w.list }</h2>
            <ul>{ for Item::ALL.iter().map(row) }</ul>
            <p>{ w.list_help }</p>
        </section>
    }
}

fn signatures() -> Html {
    let w = &words().paper;
    let signer = |who: &'static str| {
        html! {
            <div class="signer">
                <p class="who">{ who }</p>
                for name in [w.name, w.signature, w.date_signed] {
                    <p class="line"><span>{ name }</span></p>
                }
            </div>
        }
    };
    html! {
        <section class="signatures" data-testid="paper-signatures">
            <h2>{ w.sign }</h2>
            <p>{ w.sign_help }</p>
            <div>{ signer(w.in_charge) }{ signer(w.operator) }</div>
        </section>
    }
}
