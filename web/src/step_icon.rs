//! A small picture of each step: the truck from its right side, from behind or from above.

use standfast_core::step::StepId;
use yew::prelude::*;

/// The picture. The step's name stands beside it, so it is silent to a screen reader.
///
/// Down the ramp the load is uphill, or leads downhill.
pub fn step_icon(id: StepId, load_downhill: bool) -> Html {
    let drawn = match id {
        StepId::TakeUp => html! { <>{ side(0, 18.0, true) }{ ground(0) }{ arrow("M44 25V13", "44,9 41,14 47,14") }</> },
        StepId::TiltBack => {
            html! { <>{ side(-12, 20.0, true) }{ ground(0) }{ arrow("M42 8Q37 3 31 5", "28,6.5 33,2.5 33.5,8.5") }</> }
        }
        StepId::Travel => {
            html! { <>{ side(-8, 24.0, true) }{ ground(0) }{ arrow("M30 5H40", "45,5 39,2 39,8") }</> }
        }
        StepId::Brake => {
            html! { <>{ side(-8, 24.0, true) }{ ground(0) }{ arrow("M29 5H38", "42,5 36,2 36,8") }<path class="i-stop" d="M45 0V10" /></> }
        }
        StepId::CornerLeft => above(false, true),
        StepId::CornerRight => above(true, true),
        StepId::EmptyCornerLeft => above(false, false),
        StepId::EmptyCornerRight => above(true, false),
        StepId::RampUp => {
            html! { <><g transform="rotate(-14 22 30)">{ side(-8, 24.0, true) }{ ground(0) }</g>{ arrow("M4 12L12 9", "17,7.5 11,6 12.5,12") }</> }
        }
        StepId::RampDown if load_downhill => {
            html! { <><g transform="rotate(12 22 30)">{ side(-8, 24.0, true) }{ ground(0) }</g>{ arrow("M36 3L42 5", "47,7 40.5,8 42.5,2.5") }</> }
        }
        StepId::RampDown => {
            html! { <><g transform="rotate(-14 22 30)">{ side(-8, 24.0, true) }{ ground(0) }</g>{ arrow("M15 8L8 10.5", "3,12.5 9,13.5 7.5,8") }</> }
        }
        StepId::CrossFallLeft => html! { <g transform="rotate(12 24 30)">{ behind() }{ ground(0) }</g> },
        StepId::CrossFallRight => html! { <g transform="rotate(-12 24 30)">{ behind() }{ ground(0) }</g> },
        StepId::RaisedBack => html! { <>{ side(-10, 8.0, true) }{ ground(0) }</> },
        StepId::RaisedUpright => html! { <>{ side(0, 8.0, true) }{ ground(0) }</> },
        StepId::RaisedForward => html! { <>{ side(8, 9.0, true) }{ ground(0) }</> },
        StepId::BackOut => {
            html! { <>{ side(0, 8.0, false) }{ ground(0) }{ arrow("M46 24H38", "33,24 39,21 39,27") }</> }
        }
    };
    html! { <svg class="icon" viewBox="0 -2 50 38" aria-hidden="true" focusable="false">{ drawn }</svg> }
}

fn ground(x: i32) -> Html {
    html! { <path class="i-ground" d={format!("M{x} 33H48")} /> }
}

fn arrow(shaft: &'static str, head: &'static str) -> Html {
    html! { <><path class="i-arrow" d={shaft} /><polygon class="i-head" points={head} /></> }
}

/// From its right side, facing right: the mast tilted by so many degrees, the forks so far down the sheet.
fn side(tilt: i32, forks: f64, laden: bool) -> Html {
    let load = format!("M26.5 {:.1}h12v-9h-12z", forks + 3.0);
    html! {
        <>
            <path class="i-truck" d="M3 29V20h6l3-7h7l2 9v7z" />
            <g transform={format!("rotate({tilt} 23 30)")}>
                <path class="i-mast" d={format!("M23 30V{:.1}", (forks - 6.0).min(8.0))} />
                <path class="i-fork" d={format!("M23 {0:.1}h16", forks + 5.0)} />
                if laden {
                    <path class="i-load" d={load} />
                }
            </g>
            <circle class="i-wheel" cx="8" cy="29.5" r="3.5" />
            <circle class="i-wheel" cx="19" cy="29.5" r="3.5" />
        </>
    }
}

/// From behind, the load above it.
fn behind() -> Html {
    html! {
        <>
            <path class="i-load" d="M15 12V3h18v9z" />
            <path class="i-truck" d="M14 30V14h20v16z" />
            <path class="i-wheel" d="M12 33v-8h4v8zM32 33v-8h4v8z" />
        </>
    }
}

/// From above, driving up the sheet and turning to a side.
fn above(right: bool, laden: bool) -> Html {
    let mirrored = if right { "translate(50 0) scale(-1 1)" } else { "" };
    html! {
        <g transform={mirrored}>
            <g transform="rotate(-14 32 20)">
                if laden {
                    <path class="i-load" d="M26 8V-1h12v9z" />
                } else {
                    <path class="i-fork" d="M29 12V1M35 12V1" />
                }
                <path class="i-truck" d="M26 33V12h12v21z" />
                <path class="i-wheel" d="M24 12h3v6h-3zM37 12h3v6h-3zM30.5 33h3v2h-3z" />
            </g>
            { arrow("M18 28Q18 14 9 12", "3,11 9.5,8 9,15") }
        </g>
    }
}
