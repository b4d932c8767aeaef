//! Where the book lives while the page is open.

use crate::store::keeper::{Keeper, Present};
use crate::store::shelf::BookAct;
use standfast_core::book::Book;
use std::rc::Rc;
use yew::prelude::*;

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
    let keeper = use_state(|| Rc::new(Keeper::default()));
    let present = use_state(Present::default);
    {
        let (keeper, setter) = (Rc::clone(&keeper), present.setter());
        use_effect_with((), move |()| keeper.start(Callback::from(move |present| setter.set(present))));
    }
    let act = {
        let keeper = Rc::clone(&keeper);
        use_callback((), move |act: BookAct, ()| keeper.act(&act))
    };
    html! {
        <ContextProvider<Act> context={Act(act)}>
            <Given present={Present::clone(&present)}>{ props.children.clone() }</Given>
        </ContextProvider<Act>>
    }
}

#[derive(Properties, PartialEq)]
pub struct GivenProps {
    pub present: Present,
    pub children: Html,
}

/// Gives what is kept to all that is inside.
#[component]
pub fn Given(props: &GivenProps) -> Html {
    html! {
        <ContextProvider<Present> context={props.present.clone()}>{ props.children.clone() }</ContextProvider<Present>>
    }
}

/// The book as it is now; whoever asks is shown anew when it changes.
#[hook]
pub fn use_book() -> Rc<Book> {
    use_present().book.rc()
}

/// The same with how it stands with keeping it.
#[hook]
pub fn use_present() -> Present {
    use_context::<Present>().unwrap_or_default()
}

/// Where to send what happens to it.
#[hook]
pub fn use_book_act() -> Callback<BookAct> {
    use_context::<Act>().map_or_else(Callback::noop, |act| act.0)
}
