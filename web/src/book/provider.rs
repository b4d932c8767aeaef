//! Where the book lives while the page is open.

use crate::shared::Shared;
use crate::store::shelf::{BookAct, Shelf};
use standfast_core::book::Book;
use std::rc::Rc;
use yew::prelude::*;

/// The book as it is now.
#[derive(Clone, PartialEq)]
struct Present(Shared<Book>);

/// Where what happens to it goes.
#[derive(Clone, PartialEq)]
struct Act(Callback<BookAct>);

#[derive(Properties, PartialEq)]
pub struct ProviderProps {
    pub children: Html,
}

/// Gives the book to all that is inside.
#[component]
pub fn BookProvider(props: &ProviderProps) -> Html {
    let shelf = use_mut_ref(Shelf::default);
    let present = use_state(|| Present(Rc::new(Book::default()).into()));
    let act = {
        let present = present.setter();
        use_callback((), move |act: BookAct, ()| {
            let mut shelf = shelf.borrow_mut();
            let changes = shelf.changes(&act);
            if !changes.is_empty() {
                shelf.apply(&changes);
                present.set(Present(Rc::new(shelf.book()).into()));
            }
        })
    };
    html! {
        <ContextProvider<Act> context={Act(act)}>
            <ContextProvider<Present> context={Present::clone(&present)}>{ props.children.clone() }</ContextProvider<Present>>
        </ContextProvider<Act>>
    }
}

/// The book as it is now; whoever asks is shown anew when it changes.
#[hook]
pub fn use_book() -> Rc<Book> {
    use_context::<Present>().map_or_else(Rc::default, |present| present.0.rc())
}

/// Where to send what happens to it.
#[hook]
pub fn use_book_act() -> Callback<BookAct> {
    use_context::<Act>().map_or_else(Callback::noop, |act| act.0)
}
