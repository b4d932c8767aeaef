//! The truck book's places. What is in the book comes from [`use_book`], what happens to it goes to [`use_book_act`].

mod attachments;
mod covers;
pub mod csv;
mod day;
mod differ;
pub mod edit;
pub mod facts;
mod keep;
mod loads;
mod log;
mod log_entry;
mod log_record;
mod provider;
mod said;
mod save;
mod tables;
mod to_log;
mod truck;
mod trucks;
pub mod ui;

pub use crate::store::record::{Key, Record, fresh_id};
pub use crate::store::shelf::BookAct;
pub use covers::OfBook;
pub use loads::LoadsPlace;
pub use log::LogPlace;
pub use provider::{BookProvider, use_book, use_book_act, use_present};
pub use said::BookSaid;
pub use save::save_book;
pub use to_log::{ToLog, opener as to_log};
pub use trucks::TrucksPlace;

use crate::form::Form;
use crate::places::Screen;
use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct BookPageProps {
    pub place: Screen,
    /// The present check.
    pub form: Form,
}

/// A place of the book.
#[component]
pub fn BookPage(props: &BookPageProps) -> Html {
    let (name, test) = props.place.names();
    let form = props.form.clone();
    let inside = match props.place {
        Screen::Check => return Html::default(),
        Screen::Trucks => html! { <TrucksPlace {form} /> },
        Screen::Loads => html! { <LoadsPlace {form} /> },
        Screen::Log => html! { <LogPlace {form} /> },
    };
    html! {
        <section class="book" aria-labelledby="book-heading" data-testid={format!("{test}-page")}>
            <h2 id="book-heading">{ name }</h2>
            { inside }
        </section>
    }
}

/// What every place of the book is given.
#[derive(Properties, PartialEq)]
pub struct PlaceProps {
    /// The present check.
    pub form: Form,
}

#[cfg(test)]
mod tests;
