//! The photo under the outline: taken in, shown, removed.

use super::kept;
use super::points::dot;
use super::prepare::{Refused, prepare};
use crate::entries::{Entries, Ground, TraceEntry};
use crate::form::Form;
use crate::state::{Action, use_act};
use crate::words::{fill, words};
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use web_sys::js_sys::Date;
use yew::prelude::*;

/// What is to be said of a photo.
#[derive(Clone, Debug, PartialEq)]
pub enum Said {
    /// A file of this name is not taken.
    Refused(Refused, String),
    /// The browser has no room for it.
    NotKept,
    /// Points that lay on another picture are gone.
    Cleared,
}

impl Said {
    /// In words.
    pub fn text(&self) -> String {
        let w = &words().trace;
        let (text, name) = match self {
            Self::Refused(why, name) => match why {
                Refused::NoPicture => (w.no_picture_file, name.as_str()),
                Refused::Unread => (w.unread, name.as_str()),
                Refused::Large => (w.large, name.as_str()),
                Refused::Small => (w.small, name.as_str()),
            },
            Self::NotKept => (w.not_kept, ""),
            Self::Cleared => (w.cleared, ""),
        };
        fill(text, &[("name", name)])
    }
}

/// The photo, and what can be done about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Photo {
    /// The picture, if it is here.
    pub data: Option<AttrValue>,
    /// Whether one is being made ready.
    pub busy: bool,
    pub said: Vec<Said>,
    pub take: Callback<web_sys::File>,
    pub remove: Callback<MouseEvent>,
}

/// The entries with a new photo to trace on, and whether points went with the old ground. Where the
/// old picture is not here and had the same size, it is taken to be the same one come back.
fn with_photo(entries: &Entries, number: u64, size: (u32, u32), here: bool) -> (Entries, bool) {
    let mut next = entries.clone();
    let trace = next.trace.get_or_insert_default();
    let size = dot((f64::from(size.0), f64::from(size.1)));
    let had_points =
        !(trace.outline.is_empty() && trace.open.is_empty() && trace.scale.is_empty() && trace.rectangle.is_empty());
    let comes_back = !here && trace.picture == Some(size);
    if !comes_back {
        let (view, truck) = (trace.view, trace.truck);
        *trace = TraceEntry { view, truck, ..TraceEntry::default() };
    }
    trace.picture = Some(size);
    trace.ground = Ground::Photo(number);
    (next, had_points && !comes_back)
}

/// Whether what the tracing lies on is here.
fn is_here(trace: Option<&TraceEntry>) -> bool {
    match trace.map(|t| t.ground) {
        Some(Ground::Photo(number)) => kept::find(number).is_some(),
        Some(Ground::Paper) => true,
        Some(Ground::Gone) | None => false,
    }
}

/// The photo of the tracing; `ready` is told of a new one.
#[hook]
pub fn use_photo(form: &Form, ready: Callback<()>) -> Photo {
    let act = use_act();
    let (data, busy, said) = (use_state(|| None::<AttrValue>), use_state(|| false), use_state(Vec::new));
    // A photo takes a while: by then other entries may stand, or this bench may be gone.
    let latest = use_mut_ref(|| Rc::clone(&form.entries));
    *latest.borrow_mut() = Rc::clone(&form.entries);
    let turn = use_mut_ref(|| 0_u32);
    {
        let turn = Rc::clone(&turn);
        use_effect_with((), move |()| move || *turn.borrow_mut() += 1);
    }
    let ground = form.entries.trace.as_ref().map(|t| t.ground).unwrap_or_default();
    {
        let data = data.clone();
        use_effect_with(ground, move |ground| {
            data.set(match ground {
                Ground::Photo(number) => {
                    let found = kept::find(*number);
                    // After going back it is another one that must be there at the next visit.
                    kept::keep(*number);
                    found.map(AttrValue::from)
                }
                Ground::Paper | Ground::Gone => None,
            });
        });
    }
    let take = {
        let (act, busy, said) = (act.clone(), busy.setter(), said.setter());
        Callback::from(move |file: web_sys::File| {
            *turn.borrow_mut() += 1;
            let mine = *turn.borrow();
            let (act, busy, said, ready) = (act.clone(), busy.clone(), said.clone(), ready.clone());
            let (turn, latest) = (Rc::clone(&turn), Rc::clone(&latest));
            busy.set(true);
            said.set(Vec::new());
            spawn_local(async move {
                let name = file.name();
                let found = prepare(file).await;
                if *turn.borrow() != mine {
                    return;
                }
                busy.set(false);
                match found {
                    Ok(picture) => {
                        let entries = Rc::clone(&latest.borrow());
                        let here = is_here(entries.trace.as_ref());
                        // Its number: when it was taken in.
                        let number = Date::now() as u64;
                        let kept = kept::take(number, &picture.data);
                        let (next, cleared) = with_photo(&entries, number, picture.size, here);
                        act.emit(Action::Set(Rc::new(next)));
                        let notes = [(!kept, Said::NotKept), (cleared, Said::Cleared)];
                        said.set(notes.into_iter().filter(|n| n.0).map(|n| n.1).collect());
                        ready.emit(());
                    }
                    Err(why) => said.set(vec![Said::Refused(why, name)]),
                }
            });
        })
    };
    let remove = {
        let (act, data, entries) = (act, data.setter(), Rc::clone(&form.entries));
        let said = said.setter();
        Callback::from(move |_: MouseEvent| {
            kept::remove();
            data.set(None);
            said.set(Vec::new());
            let mut next = Entries::clone(&entries);
            if let Some(trace) = &mut next.trace {
                trace.ground = Ground::Gone;
            }
            act.emit(Action::Set(Rc::new(next)));
        })
    };
    Photo { data: (*data).clone(), busy: *busy, said: (*said).clone(), take, remove }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn traced(ground: Ground) -> Entries {
        let outline = vec![dot((10.0, 10.0)), dot((90.0, 10.0)), dot((50.0, 80.0))];
        let trace = TraceEntry { ground, outline, picture: Some(dot((1600.0, 1200.0))), ..TraceEntry::default() };
        Entries { trace: Some(trace), ..Entries::blank() }
    }

    fn points(entries: &Entries) -> usize {
        entries.trace.as_ref().map_or(0, |t| t.outline.len())
    }

    #[test]
    fn another_photo_takes_the_points_of_the_old_one_with_it() {
        for old in [Ground::Photo(3), Ground::Paper] {
            let (next, cleared) = with_photo(&traced(old), 4, (1600, 1200), true);
            assert_eq!((points(&next), cleared), (0, true), "{old:?}");
            assert_eq!(next.trace.map(|t| t.ground), Some(Ground::Photo(4)));
        }
        let (_, cleared) = with_photo(&Entries::blank(), 4, (1600, 1200), false);
        assert!(!cleared, "there was nothing");
    }

    #[test]
    fn a_photo_that_was_gone_comes_back_under_its_outline() {
        for old in [Ground::Gone, Ground::Photo(3)] {
            let (next, cleared) = with_photo(&traced(old), 4, (1600, 1200), false);
            assert_eq!((points(&next), cleared), (3, false), "{old:?}");
        }
        let (next, cleared) = with_photo(&traced(Ground::Gone), 4, (1200, 1600), false);
        assert_eq!((points(&next), cleared), (0, true), "a picture of another size is another picture");
    }

    #[test]
    fn every_refusal_names_the_file_and_says_that_nothing_is_lost() {
        for why in [Refused::NoPicture, Refused::Unread, Refused::Large, Refused::Small] {
            let text = Said::Refused(why, "plan.pdf".to_owned()).text();
            assert!(text.contains("plan.pdf") && text.contains("Nothing was changed"), "{text}");
        }
    }
}
