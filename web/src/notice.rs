//! Something to say or to ask, in a panel under the verdict.

use crate::entries::Entries;
use crate::files::{self, Fresh};
use crate::share::opened;
use crate::state::{Action, use_act};
use crate::storage::{self, Draft, Found};
use crate::words::{fill, words};
use std::rc::Rc;
use yew::prelude::*;

/// What is said or asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Notice {
    /// The browser keeps nothing.
    Blocked,
    /// What was kept could not be read and was set aside.
    Damaged,
    /// What was kept could not be read, nor set aside.
    Lost,
    /// Other tabs' checks are kept as well.
    Drafts(Vec<Draft>),
    /// A file was refused.
    Refused {
        /// The file's name.
        name: String,
        /// Why.
        why: String,
    },
    /// Who made the check that is to be kept in the log.
    ToLog,
    /// A file was opened.
    Opened {
        /// The file's name.
        name: String,
    },
    /// A link's check is shown.
    LinkOpened {
        /// What it is about.
        what: String,
    },
    /// A link was refused.
    LinkRefused {
        /// Why.
        why: String,
    },
    /// Whether to show a link's check in the place of what is entered.
    AskLink {
        /// It.
        entries: Rc<Entries>,
    },
    /// Whether to clear everything for something fresh.
    AskClear(Fresh),
    /// Whether to save without the entries that cannot be read.
    AskSave {
        /// Their names.
        left_out: Vec<String>,
    },
}

#[derive(Properties, PartialEq)]
pub struct NoticeProps {
    pub notice: Notice,
    pub entries: Rc<Entries>,
}

/// The panel.
#[component]
pub fn NoticePanel(props: &NoticeProps) -> Html {
    let act = use_act();
    let w = &words().tools;
    let say = |action: Action| {
        let act = act.clone();
        Callback::from(move |_: MouseEvent| act.emit(action.clone()))
    };
    let hush = |text: &'static str, test: &'static str| {
        html! { <button type="button" data-testid={test} onclick={say(Action::Hush)}>{ text }</button> }
    };
    let (test, text, buttons) = match &props.notice {
        Notice::Blocked => ("storage-blocked", w.storage_blocked.to_owned(), hush(w.close, "notice-close")),
        Notice::Damaged => ("storage-damaged", w.storage_damaged.to_owned(), hush(w.close, "notice-close")),
        Notice::Lost => ("storage-lost", w.storage_lost.to_owned(), hush(w.close, "notice-close")),
        Notice::Drafts(drafts) => return drafts_panel(drafts, &act),
        // It needs the check with its answer: the page shows it.
        Notice::ToLog => return Html::default(),
        Notice::Refused { name, why } => {
            ("file-refused", fill(w.file_refused, &[("name", name), ("why", why)]), hush(w.close, "notice-close"))
        }
        Notice::Opened { name } => {
            ("file-opened", fill(w.file_opened, &[("name", name)]), hush(w.close, "notice-close"))
        }
        Notice::LinkOpened { what } => {
            ("link-opened", fill(words().share.opened, &[("what", what)]), hush(w.close, "notice-close"))
        }
        Notice::LinkRefused { why } => {
            ("link-refused", fill(words().share.refused, &[("why", why)]), hush(w.close, "notice-close"))
        }
        Notice::AskLink { entries } => {
            let (act, linked) = (act.clone(), Rc::clone(entries));
            let show =
                Callback::from(move |_: MouseEvent| opened::shown(&linked).into_iter().for_each(|a| act.emit(a)));
            let buttons = html! {
                <>
                    <button type="button" class="main" data-testid="link-yes" onclick={show}>{ words().share.found_yes }</button>
                    { hush(words().share.found_no, "link-no") }
                </>
            };
            ("link-ask", fill(words().share.found, &[("what", &opened::what(entries))]), buttons)
        }
        Notice::AskClear(fresh) => {
            let (yes, name) = match fresh {
                Fresh::Own => ("start-own-yes", w.start_yes),
                Fresh::One | Fresh::Two | Fresh::Three => ("example-yes", w.example_yes),
            };
            let buttons = html! {
                <>
                    <button type="button" class="main" data-testid={yes} onclick={say(fresh.action())}>{ name }</button>
                    { hush(w.start_no, "start-own-no") }
                </>
            };
            ("start-own-ask", w.start_ask.to_owned(), buttons)
        }
        Notice::AskSave { left_out } => {
            let (entries, act) = (Rc::clone(&props.entries), act.clone());
            let save = Callback::from(move |_: MouseEvent| {
                files::save(&entries);
                act.emit(Action::Hush);
            });
            let buttons = html! {
                <>
                    <button type="button" class="main" data-testid="save-file-yes" onclick={save}>{ w.save_yes }</button>
                    { hush(w.save_no, "save-file-no") }
                </>
            };
            ("save-file-ask", fill(w.save_ask, &[("list", &left_out.join(", "))]), buttons)
        }
    };
    html! {
        <div class="notice" role="alert" data-testid={test}>
            <p>{ text }</p>
            <div class="buttons">{ buttons }</div>
        </div>
    }
}

/// What other tabs entered: each can be shown here, or forgotten.
fn drafts_panel(drafts: &[Draft], act: &Callback<Action>) -> Html {
    let w = &words().store;
    let left = |draft: &Draft| {
        let left: Vec<_> = drafts.iter().filter(|d| *d != draft).cloned().collect();
        if left.is_empty() { Action::Hush } else { Action::Say(Notice::Drafts(left)) }
    };
    let row = |draft: &Draft| {
        let (taken, forgotten) = (draft.clone(), draft.clone());
        let (left_taken, left_forgotten) = (left(draft), left(draft));
        let show = act.reform(move |_: MouseEvent| match storage::draft(&taken) {
            // Undo brings back what was here; what is shown is kept as this tab's own from now on.
            Found::Kept(state) => Action::Replace(Rc::clone(&state.entries), state.open),
            Found::Nothing | Found::Damaged(_) => left_taken.clone(),
        });
        let forget = act.reform(move |_: MouseEvent| {
            storage::forget(&forgotten);
            left_forgotten.clone()
        });
        html! {
            <li key={draft.key.clone()}>
                <span>{ if draft.title.is_empty() { w.draft_unnamed } else { &draft.title } }</span>
                <button type="button" data-testid="draft-show" onclick={show}>{ w.draft_show }</button>
                <button type="button" data-testid="draft-forget" onclick={forget}>{ w.draft_forget }</button>
            </li>
        }
    };
    let close = act.reform(|_: MouseEvent| Action::Hush);
    html! {
        <div class="notice" role="alert" data-testid="drafts">
            <p>{ w.drafts }</p>
            <ul class="drafts">{ for drafts.iter().map(row) }</ul>
            <div class="buttons">
                <button type="button" data-testid="notice-close" onclick={close}>{ w.draft_later }</button>
            </div>
        </div>
    }
}
