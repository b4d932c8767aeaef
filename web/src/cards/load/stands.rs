//! How the load stands on the forks: which way it is turned, what its underside is, whether it hangs.

use super::picture;
use crate::form::{Choosable, Form, Tile, code, source};
use crate::sentences::friction;
use crate::state::{Action, Choice};
use crate::words::{fill, words};
use standfast_core::document::Turned;
use standfast_core::friction::Underside;
use standfast_core::place::Field;
use standfast_core::units::Rounding;
use yew::prelude::*;

pub(super) fn stands(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().load;
    let e = &form.entries;
    let turned = |code, turned| Choosable {
        code,
        name: (w.turned)(turned),
        chosen: e.turned == turned,
        choice: Choice::Turned(turned),
    };
    let turns = [
        turned("left", Turned::Left),
        turned("no", Turned::No),
        turned("right", Turned::Right),
        turned("half", Turned::Half),
    ];
    let hangs =
        |code, name, hanging| Choosable { code, name, chosen: e.hanging == hanging, choice: Choice::Hanging(hanging) };
    let hanging = [hangs("lies", w.lies, false), hangs("hangs", w.hangs, true)];
    html! {
        <>
            { form.choice(Field::Turned, &turns, act) }
            { picture::picture(form) }
            { form.choice(Field::Hanging, &hanging, act) }
            if e.hanging {
                { form.number(Field::HookAbove) }
                <p class="hint under">{ w.hangs_counts }</p>
            } else {
                { underside(form, act) }
            }
        </>
    }
}

fn underside(form: &Form, act: &Callback<Action>) -> Html {
    let w = &words().load;
    let chosen = form.entries.underside;
    let tile = |underside: Underside| Tile {
        code: code(&underside),
        name: (w.underside)(underside).to_owned(),
        note: friction(underside.figure().value, Rounding::Nearest),
        chosen: chosen == Some(underside),
        choice: Choice::Underside(Some(underside)),
    };
    let unknown = Tile {
        code: "unknown".to_owned(),
        name: w.underside_unknown.to_owned(),
        note: friction(Underside::unknown().nominal, Rounding::Nearest),
        chosen: chosen.is_none(),
        choice: Choice::Underside(None),
    };
    let tiles: Vec<_> = Underside::ALL.into_iter().map(tile).chain([unknown]).collect();
    let range = chosen.map_or_else(Underside::unknown, Underside::range);
    let from = chosen.map_or_else(|| w.underside_slippery.to_owned(), |u| source(&u.figure()));
    let counts = fill(
        w.underside_counts,
        &[
            ("there", &friction(range.nominal, Rounding::Down)),
            ("worst", &friction(range.lo, Rounding::Down)),
            ("source", &from),
        ],
    );
    html! {
        <>
            { form.tiles(Field::Underside, &tiles, act) }
            <p class="hint under">{ counts }</p>
        </>
    }
}
