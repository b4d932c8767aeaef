//! A part that unfolds at a tap. What is folded away is not built.

use yew::prelude::*;

#[derive(Properties, PartialEq)]
pub struct FoldProps {
    pub name: AttrValue,
    /// Its name in tests.
    pub test: AttrValue,
    /// Unfolds when this turns true, and never folds by itself: a hand may be in it.
    #[prop_or_default]
    pub wanted: bool,
    /// The paths of the fields inside, parted by spaces: who looks for one unfolds it.
    #[prop_or_default]
    pub holds: AttrValue,
    /// Builds what is inside.
    pub inside: Callback<(), Html>,
}

/// The fold.
#[component]
pub fn Fold(props: &FoldProps) -> Html {
    let open = use_state(|| props.wanted);
    {
        let open = open.clone();
        use_effect_with(props.wanted, move |&wanted| {
            if wanted {
                open.set(true);
            }
        });
    }
    let toggle = {
        let open = open.clone();
        Callback::from(move |event: MouseEvent| {
            event.prevent_default();
            open.set(!*open);
        })
    };
    html! {
        <details class="fold" open={*open} data-holds={props.holds.clone()}>
            <summary data-testid={props.test.clone()} onclick={toggle}>{ &props.name }</summary>
            if *open {
                <div class="inside">{ props.inside.emit(()) }</div>
            }
        </details>
    }
}
