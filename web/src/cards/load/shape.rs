//! How the load's shape is given: one block, parts, a traced outline.

use crate::answer::is_missing;
use crate::cards::group;
use crate::fold::Fold;
use crate::form::{Choosable, Form, Tile, code, source_text};
use crate::problems;
use crate::sentences::name_of;
use crate::state::{Action, Bench, Choice};
use crate::words::{fill, words};
use standfast_core::document::{CentreKnown, GivenAs};
use standfast_core::material::Material;
use standfast_core::place::Field;
use yew::prelude::*;

pub(super) fn shape(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().load;
    let e = &form.entries;
    let given = |code, name, how| Choosable { code, name, chosen: e.given_as == how, choice: Choice::GivenAs(how) };
    let given = [
        given("block", w.block, GivenAs::Block),
        given("parts", w.parts, GivenAs::Parts),
        given("trace", w.trace, GivenAs::Trace),
    ];
    html! {
        <>
            { form.choice(Field::GivenAs, &given, act) }
            { match e.given_as {
                GivenAs::Block => block(form, act),
                GivenAs::Parts => bench(form, act, Bench::Parts, &counted_parts(form)),
                GivenAs::Trace => html! {
                    <>
                        { bench(form, act, Bench::Trace, &counted_points(form)) }
                        if !e.numbers.contains_key(&Field::LoadMass.into()) {
                            { made_of(form, act) }
                        }
                    </>
                },
            } }
        </>
    }
}

fn block(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().card;
    let known = form.entries.centre_known;
    let centre =
        |code, name, how| Choosable { code, name, chosen: known == Some(how), choice: Choice::CentreKnown(how) };
    let centre = [centre("middle", w.middle, CentreKnown::Middle), centre("mark", w.mark, CentreKnown::Mark)];
    let numbers = |fields: &[Field]| html! { <>{ for fields.iter().map(|&f| form.number(f)) }</> };
    html! {
        <>
            { numbers(&[Field::LoadLength, Field::LoadWidth, Field::LoadHeight]) }
            { group(w.group_centre, html! {
                <>
                    { form.choice(Field::CentreKnown, &centre, act) }
                    if known == Some(CentreKnown::Mark) {
                        { numbers(&[Field::LoadCgFromHeel, Field::LoadCgLeft, Field::LoadCgAbove]) }
                    }
                </>
            }) }
        </>
    }
}

fn counted_parts(form: &Form) -> String {
    let w = &words().load;
    let cuts = form.entries.parts.iter().filter(|p| p.cut_from.is_some()).count();
    match form.entries.parts.len() - cuts {
        0 => w.nothing_built.to_owned(),
        parts if cuts == 0 => w.count_parts.of(parts),
        parts => format!("{} \u{b7} {}", w.count_parts.of(parts), w.count_cuts.of(cuts)),
    }
}

fn counted_points(form: &Form) -> String {
    let w = &words().load;
    let points = form.entries.trace.as_ref().map_or(0, |t| t.outline.len());
    let straightened = form.answer.load.load.as_ref().and_then(|l| l.trace.as_ref()).is_some_and(|t| t.straightened);
    match points {
        0 => w.nothing_traced.to_owned(),
        n if straightened => format!("{} \u{b7} {}", w.count_points.of(n), w.straightened),
        n => w.count_points.of(n),
    }
}

/// The way to a bench, and what is still to be done there.
fn bench(form: &Form, act: &Callback<Action>, bench: Bench, counted: &str) -> Html {
    let w = &words().load;
    let (help, name, test) = match bench {
        Bench::Parts => (w.parts_help, w.open_parts, "open-parts"),
        Bench::Trace => (w.trace_help, w.open_trace, "open-trace"),
    };
    let open = {
        let act = act.clone();
        Callback::from(move |_: MouseEvent| act.emit(Action::Bench(Some(bench))))
    };
    let there: Vec<_> = form.answer.problems.iter().filter(|p| Bench::holds(p.place) == Some(bench)).collect();
    // What is wrong before what is missing; without a picture, that comes first.
    let picture = || there.iter().find(|p| p.place.field == Field::TracePicture);
    let first = there.iter().find(|p| !is_missing(p)).or_else(picture).or(there.first());
    let first = first.map(|p| {
        let said = problems::message(p, &form.entries, form.system);
        let said = fill(words().verdict.wrong, &[("field", &name_of(p.place)), ("problem", &said)]);
        html! {
            <p
                class={classes!("message", is_missing(p).then_some("missing"))}
                data-testid={format!("problem-{}", p.place)}
            >
                { said }
            </p>
        }
    });
    html! {
        <div class="to-bench">
            <p class="help">{ help }</p>
            <button type="button" class="main" data-testid={test} onclick={open}>{ name }</button>
            <p class="counted" data-testid="counted">{ counted.to_owned() }</p>
            { first }
        </div>
    }
}

/// What a traced load is made of, all through.
fn made_of(form: &Form, act: &Callback<Action>) -> Html {
    let chosen = form.entries.material;
    let name = chosen.map_or(words().load.material_none, |m| (words().load.material)(m));
    let name = format!("{}: {name}", (words().field)(Field::LoadMaterial).name);
    let wanted = form.answer.any_problem(&[Field::LoadMaterial]);
    let inside = {
        let (form, act) = (form.clone(), act.clone());
        Callback::from(move |()| {
            let none = Tile {
                code: "none".to_owned(),
                name: words().load.material_none.to_owned(),
                note: String::new(),
                chosen: chosen.is_none(),
                choice: Choice::Material(None),
            };
            let tiles = Material::ALL.iter().map(|&m| Tile {
                code: code(&m),
                name: (words().load.material)(m).to_owned(),
                note: String::new(),
                chosen: chosen == Some(m),
                choice: Choice::Material(Some(m)),
            });
            let tiles: Vec<_> = std::iter::once(none).chain(tiles).collect();
            form.tiles(Field::LoadMaterial, &tiles, &act)
        })
    };
    let counts = chosen.map(|m| {
        let density = m.density();
        let range = crate::figures::range(density.span.lo, density.span.hi, 0);
        let source = source_text(density.source, density.mark);
        fill(words().load.material_counts, &[("range", &range), ("source", &source)])
    });
    html! {
        <>
            <Fold {name} test="load-material" {wanted} holds="load.material" {inside} />
            <p class="hint under">{ counts }</p>
        </>
    }
}
