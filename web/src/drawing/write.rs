//! A worked-out drawing as SVG.

use super::sheet::{Axes, Grip, Item};
use super::{Handle, View, marks};
use yew::prelude::*;

/// A piece of the drawing.
pub fn item(item: &Item) -> Html {
    match item {
        Item::Shape { class, path, test } => {
            html! { <path class={*class} d={path.clone()} data-testid={test.clone()} /> }
        }
        Item::Words(words) => html! {
            <text
                class={words.class}
                x={format!("{:.1}", words.spot.0)}
                y={format!("{:.1}", words.spot.1)}
                font-size={words.size.to_string()}
                text-anchor={words.anchor.name()}
                data-testid={words.test.clone()}
            >{ &words.text }</text>
        },
    }
}

/// A handle, for pointer and arrow keys.
pub fn grip(
    view: View,
    grip: &Grip,
    take: &Callback<(PointerEvent, Handle, Axes)>,
    press: &Callback<(KeyboardEvent, Handle)>,
) -> Html {
    let (handle, axes) = (grip.handle, grip.axes);
    let name = match handle {
        Handle::Load => "load",
        Handle::Centre => "centre",
    };
    let take = take.reform(move |event: PointerEvent| (event, handle, axes));
    let mm = |v: f64| format!("{v:.0}");
    let (x, y) = grip.spot;
    // Drawn about its own middle, so that its box on the screen has the sign in the centre.
    html! {
        <>
            if let Some(stem) = &grip.stem {
                <path class="d-stem" d={stem.clone()} />
            }
            if let Some(body) = &grip.body {
                <path class="d-hold-body" d={body.clone()} onpointerdown={take.clone()} />
            }
            <g
                key={name}
                class={classes!("d-grip", format!("d-grip-{name}"))}
                transform={format!("translate({x:.1} {y:.1})")}
                tabindex="0"
                role="slider"
                aria-label={grip.name}
                aria-valuenow={mm(grip.now.0)}
                aria-valuemin={mm(grip.now.1)}
                aria-valuemax={mm(grip.now.2)}
                aria-valuetext={grip.says.clone()}
                data-testid={format!("handle-{name}-{}", view.key())}
                onpointerdown={take}
                onkeydown={press.reform(move |event: KeyboardEvent| (event, handle))}
            >
                <circle class="d-reach" r="34" />
                <circle class="d-focus" r="22" />
                { sign(handle) }
            </g>
        </>
    }
}

/// What a grip looks like: four arrows for the load, a ringed quartered circle for its centre.
fn sign(handle: Handle) -> Html {
    let o = (0.0, 0.0);
    match handle {
        Handle::Load => html! {
            <>
                <circle class="d-grip-ground" r="16" />
                <path class="d-grip-sign" d={marks::four_ways(o)} />
            </>
        },
        Handle::Centre => html! {
            <>
                <circle class="d-grip-ring" r="15" />
                <path class="d-cg" d={marks::circle(o, 9.0)} />
                <path class="d-cg-quarters" d={marks::quarters(o, 9.0)} />
            </>
        },
    }
}
