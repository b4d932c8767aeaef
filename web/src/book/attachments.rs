//! Attachments to fit to any truck.

use super::facts;
use super::ui::{TextBox, button};
use super::{BookAct, Key, PlaceProps, Record, fresh_id, use_book, use_book_act};
use crate::figures::Printer;
use crate::fold::Fold;
use crate::state::{Action, use_act};
use crate::store::shelf::Line;
use crate::words::{fill, words};
use standfast_core::book::{AttachmentRecord, Book};
use standfast_core::example;
use std::rc::Rc;
use yew::prelude::*;

/// The list, and what can be added to it.
#[component]
pub fn Attachments(props: &PlaceProps) -> Html {
    let (act, book_act, book) = (use_act(), use_book_act(), use_book());
    let with_archived = use_state(|| false);
    let fitted = use_state(|| None::<String>);
    let w = &words().book;
    let print = Printer(props.form.system);
    let (away, shown): (Vec<_>, Vec<_>) = book.attachments.iter().partition(|a| a.archived);
    let view = |record: &AttachmentRecord| {
        let key = Key::attachment(&record.id);
        let name = record.attachment.name.clone();
        let (act, entries, setter) = (act.clone(), Rc::clone(&props.form.entries), fitted.setter());
        let attachment = record.attachment.clone();
        let fit = Callback::from(move |_: MouseEvent| {
            act.emit(Action::Set(Rc::new(entries.with_attachment(&attachment))));
            setter.set(Some(attachment.name.clone()));
        });
        let set = {
            let (book_act, key) = (book_act.clone(), key.clone());
            Callback::from(move |text: String| {
                book_act.emit(BookAct::Write { key: key.clone(), set_up: None, line: Line::Note, text });
            })
        };
        let send = |to: BookAct| book_act.reform(move |_: MouseEvent| to.clone());
        let copy = {
            let (book_act, record) = (book_act.clone(), record.clone());
            Callback::from(move |_: MouseEvent| {
                let mut copy = Record::from(record.clone()).with_fresh_ids(&mut fresh_id);
                copy.call(fill(words().book.copy_of, &[("name", &record.attachment.name)]));
                book_act.emit(BookAct::put(copy));
            })
        };
        let id = record.id.clone();
        let more = {
            let (record, id, key) = (record.clone(), id.clone(), key.clone());
            let archive = send(BookAct::Archive(key.clone(), !record.archived));
            let remove = send(BookAct::Remove(key));
            Callback::from(move |()| {
                let archive_text = if record.archived { w.take_out } else { w.archive };
                html! {
                    <>
                        <TextBox
                            label={w.note}
                            value={record.note.clone()}
                            test={format!("attachment-note-{id}")}
                            set={set.clone()}
                        />
                        <div class="buttons">
                            { button(w.duplicate, format!("attachment-copy-{id}"), copy.clone()) }
                            { button(archive_text, format!("attachment-archive-{id}"), archive.clone()) }
                            { button(w.remove, format!("attachment-remove-{id}"), remove.clone()) }
                        </div>
                    </>
                }
            })
        };
        html! {
            <li key={id.clone()} class="set-up" data-testid={format!("attachment-{id}")}>
                <div class="what">
                    <h4>{ name }</h4>
                    <p>{ facts::attachment(&record.attachment, print) }</p>
                    if !record.note.is_empty() {
                        <p class="help">{ &record.note }</p>
                    }
                </div>
                { button(w.fit, format!("attachment-fit-{id}"), fit) }
                <Fold name={w.more_attachment} test={format!("attachment-more-{id}")} inside={more} />
            </li>
        }
    };
    let present = props.form.entries.truck().0.attachment;
    let new = present.filter(|p| !book.attachments.iter().any(|a| a.attachment == *p));
    let keep = new.map(|attachment| {
        let text = fill(w.keep_attachment, &[("name", &attachment.name)]);
        let book_act = book_act.clone();
        let keep = Callback::from(move |_: MouseEvent| {
            let attachment = attachment.clone();
            book_act.emit(BookAct::put(AttachmentRecord { id: fresh_id(), attachment, ..AttachmentRecord::default() }));
        });
        button(text, "attachment-keep", keep)
    });
    let offer = {
        let (book_act, book) = (book_act.clone(), Rc::clone(&book));
        Callback::from(move |_: MouseEvent| {
            let mut is = Book::clone(&book);
            is.attachments.extend(missing_examples(&book));
            book_act.emit(BookAct::Import { was: Rc::clone(&book), is: Rc::new(is) });
        })
    };
    let toggle_away = {
        let with_archived = with_archived.clone();
        Callback::from(move |_: MouseEvent| with_archived.set(!*with_archived))
    };
    let toggle_text = if *with_archived { w.archived_hide.to_owned() } else { w.archived_show.of(away.len()) };
    html! {
        <section class="attachments" aria-labelledby="attachments-heading">
            <h3 id="attachments-heading">{ w.attachments }</h3>
            if book.attachments.is_empty() {
                <p>{ w.attachments_none }</p>
            }
            if let Some(name) = &*fitted {
                <p role="status" data-testid="attachment-fitted"><b>{ fill(w.fitted, &[("name", name)]) }</b></p>
            }
            <ul>{ for shown.into_iter().map(view) }</ul>
            <div class="buttons">
                { keep }
                if !missing_examples(&book).is_empty() {
                    { button(w.examples, "attachment-examples", offer) }
                }
                if !away.is_empty() {
                    { button(toggle_text, "attachments-archived", toggle_away) }
                }
            </div>
            if *with_archived {
                <ul>{ for away.into_iter().map(view) }</ul>
            }
        </section>
    }
}

/// The invented examples that the book has not.
fn missing_examples(book: &Book) -> Vec<AttachmentRecord> {
    let mut examples = example::attachments();
    examples.retain(|e| !book.attachments.iter().any(|a| a.id == e.id));
    examples
}
