//! The Standfast page: what is entered, what the core says of it, in words and drawings.
//!
//! It holds no formula, no limit and no published figure. Data flows one way: [`entries`] (as typed)
//! -> document -> the core's report ([`answer`]) -> [`sentences`], [`drawing`], [`working`].

mod answer;
mod app;
mod bench;
mod book;
mod capacity;
mod cards;
mod drawing;
mod embed;
mod entries;
mod field;
mod figures;
mod files;
mod fold;
mod form;
mod gains;
mod grip;
mod history;
mod jump;
mod known;
mod limits;
mod link;
mod may_stand;
mod notice;
mod out;
mod paper;
mod places;
mod play;
mod problems;
mod qr;
mod request;
mod sentences;
mod share;
mod shared;
mod stage;
mod state;
mod step_icon;
mod step_strip;
mod stopped;
mod storage;
mod store;
mod tools;
mod verdict_bar;
mod verdict_mark;
mod words;
mod working;

fn main() {
    if !own_page() {
        // Loaded by another page, for `assess` alone: its body is not ours to fill.
        return;
    }
    stopped::install();
    yew::Renderer::<app::App>::new().render();
}

/// Whether the module runs in its own page, which says so in a `meta` element.
fn own_page() -> bool {
    let document = web_sys::window().and_then(|w| w.document());
    let own = document.and_then(|d| d.query_selector("meta[name=\"app-id\"][content=\"standfast\"]").ok());
    own.flatten().is_some()
}
