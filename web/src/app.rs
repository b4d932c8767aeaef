//! The whole page.

use crate::answer::Answer;
use crate::bench::parts::PartsBench;
use crate::bench::trace::{self, TraceBench};
use crate::book::{BookPage, BookProvider, BookSaid, ToLog};
use crate::cards::Cards;
use crate::files::{Files, Origin};
use crate::form::Form;
use crate::notice::{Notice, NoticePanel};
use crate::out::OutPage;
use crate::places::Places;
use crate::request::RequestSheet;
use crate::share::opened;
use crate::shared::Shared;
use crate::stage::Stage;
use crate::state::{Action, Bench, State};
use crate::storage::{self, Found};
use crate::store::tabs;
use crate::tools::Tools;
use crate::verdict_bar::VerdictBar;
use std::rc::Rc;
use yew::prelude::*;

/// The state of the last visit, or the example.
fn start() -> State {
    let state = match storage::load() {
        Found::Kept(state) => {
            let drafts = storage::drafts();
            let notice = (!drafts.is_empty()).then_some(Notice::Drafts(drafts));
            State { notice, ..state }
        }
        Found::Nothing => State::example(),
        Found::Damaged(text) => {
            let notice = if storage::set_aside(&text) { Notice::Damaged } else { Notice::Lost };
            State { notice: Some(notice), ..State::example() }
        }
    };
    trace::tidy(&state.entries);
    state
}

/// The page.
#[component]
pub fn App() -> Html {
    let state = use_reducer(start);
    let act = {
        let send = state.dispatcher();
        use_callback(send, |action: Action, send| send.dispatch(action))
    };
    let answer: Shared<Answer> = use_memo(Rc::clone(&state.entries), |entries| Answer::of(entries)).into();
    use_keeping(&state, &act);
    use_link(&state, &act);
    html! {
        <ContextProvider<Callback<Action>> context={act}>
            <BookProvider>
                <Page state={Rc::new(State::clone(&state))} {answer} />
            </BookProvider>
        </ContextProvider<Callback<Action>>>
    }
}

/// Keeps what matters in the browser after every change, and says so once where that fails.
#[hook]
fn use_keeping(state: &State, act: &Callback<Action>) {
    let told = use_mut_ref(|| false);
    let act = act.clone();
    // A drag is kept when it ends.
    let text = (!state.is_dragging()).then(|| storage::to_text(state));
    use_effect_with(text, move |text| {
        let kept = text.as_ref().is_none_or(|text| storage::keep_check(text));
        if !kept && !told.replace(true) {
            act.emit(Action::Say(Notice::Blocked));
        }
    });
    use_effect_with((), |()| {
        tabs::on_window("storage", |event: web_sys::StorageEvent| {
            if event.key().as_deref() == Some(storage::KEY) {
                storage::check_replaced();
            }
        });
    });
}

/// Takes up a check that stands in the address, at the start or when a link is put into an open page.
#[hook]
fn use_link(state: &State, act: &Callback<Action>) {
    let now = use_mut_ref(|| Rc::clone(&state.entries));
    *now.borrow_mut() = Rc::clone(&state.entries);
    let act = act.clone();
    use_effect_with((), move |()| {
        let look = move || {
            let entries = Rc::clone(&now.borrow());
            let found = opened::taken_out();
            found.iter().flat_map(|fragment| opened::actions(fragment, &entries)).for_each(|action| act.emit(action));
        };
        look();
        tabs::on_window("hashchange", move |_: Event| look());
    });
}

#[derive(Properties, PartialEq)]
pub struct PageProps {
    pub state: Rc<State>,
    pub answer: Shared<Answer>,
}

/// All parts of the page, for a state and its answer.
#[component]
pub fn Page(props: &PageProps) -> Html {
    let state = &props.state;
    let (entries, answer, system, place) = (&state.entries, &props.answer, state.system, state.place);
    if state.request {
        return html! { <RequestSheet answer={answer.clone()} {system} /> };
    }
    let form = Form { entries: Rc::clone(entries), answer: answer.clone(), system, known: state.known };
    if let Some(out) = state.out {
        return html! { <OutPage {out} {form} /> };
    }
    html! {
        <div class={classes!("page", (!place.is_check()).then_some("booked"))}>
            <header>
                <Tools {system} history={Rc::clone(&state.history)} {place} />
                <Places now={place} />
                if place.is_check() {
                    <Origin entries={Rc::clone(entries)} />
                }
            </header>
            if place.is_check() {
                <VerdictBar answer={answer.clone()} entries={Rc::clone(entries)} {system} />
            }
            <div class="notices">
                if state.notice == Some(Notice::ToLog) && place.is_check() {
                    <ToLog form={form.clone()} />
                } else if let Some(notice) = &state.notice {
                    <NoticePanel notice={notice.clone()} entries={Rc::clone(entries)} />
                }
                <BookSaid {place} />
            </div>
            <main>
                if place.is_check() {
                    <Cards form={form.clone()} open={state.open} />
                    { match state.bench() {
                        Some(Bench::Parts) => html! { <PartsBench {form} /> },
                        Some(Bench::Trace) => html! { <TraceBench {form} /> },
                        None => html! {
                            <Stage entries={Rc::clone(entries)} answer={answer.clone()} {system} picked={state.picked} />
                        },
                    } }
                } else {
                    <BookPage {place} {form} />
                }
            </main>
            <Files entries={Rc::clone(entries)} {place} />
        </div>
    }
}

#[cfg(test)]
mod tests;
