//! The Standfast page: what is entered, what the core says of it, in words and drawings.
//!
//! It holds no formula, no limit and no published figure. Data flows one way: [`entries`] (as typed)
//! -> document -> the core's report ([`answer`]) -> [`sentences`], [`drawing`], [`working`].

mod answer;
mod app;
mod cards;
mod drawing;
mod embed;
mod entries;
mod field;
mod figures;
mod files;
mod fold;
mod form;
mod grip;
mod history;
mod jump;
mod notice;
mod problems;
mod sentences;
mod shared;
mod stage;
mod state;
mod step_strip;
mod stopped;
mod storage;
mod tools;
mod verdict_bar;
mod verdict_mark;
mod words;
mod working;

fn main() {
    stopped::install();
    yew::Renderer::<app::App>::new().render();
}
