//! A drawing that nobody drags: for paper, and to be saved.

use super::sheet::{Item, Sheet};
use super::{Handle, Labels, View, marks, may_stand_outline, said, write};
use crate::may_stand::MayStand;
use standfast_core::report::StepReport;
use standfast_core::units::System;
use yew::prelude::*;

/// Size of the sign for the load's centre, as its handle has it.
const CENTRE: f64 = 9.0;

/// A drawing worked out, without what is only there to be dragged.
#[derive(Debug)]
pub struct Still {
    /// Width and height.
    pub size: (f64, f64),
    /// Its pieces, the hindmost first.
    pub items: Vec<Item>,
    /// Its name.
    pub title: &'static str,
    /// What it shows, in words.
    pub about: String,
}

impl Still {
    /// Of one step.
    pub fn of(view: View, step: &StepReport, system: System, labels: &Labels, may_stand: Option<&MayStand>) -> Self {
        let Sheet { width, height, projection, mut items, words_from, grips } = view.sheet(step, system, labels, None);
        if let Some(outline) = may_stand.and_then(|m| may_stand_outline(m, &projection)) {
            items.insert(words_from.min(items.len()), outline);
        }
        // Where it is dragged on the page, the load's centre is part of its handle.
        for grip in grips.iter().filter(|g| g.handle == Handle::Centre) {
            let shape = |class, path| Item::Shape { class, path, test: None };
            items.push(shape("d-cg", marks::circle(grip.spot, CENTRE)));
            items.push(shape("d-cg-quarters", marks::quarters(grip.spot, CENTRE)));
        }
        let (title, about) = view.words(labels);
        let about = format!("{about} {}", said(step, system, labels));
        Self { size: (width, height), items, title, about }
    }

    /// On the page.
    pub fn view(&self) -> Html {
        html! {
            <svg
                class="d"
                viewBox={format!("0 0 {} {}", self.size.0, self.size.1)}
                role="img"
                aria-label={format!("{}. {}", self.title, self.about)}
            >
                { for self.items.iter().map(without_test).map(|item| write::item(&item)) }
            </svg>
        }
    }
}

/// The same without a name for tests: it stands in the drawing itself.
fn without_test(item: &Item) -> Item {
    let mut item = item.clone();
    match &mut item {
        Item::Shape { test, .. } => *test = None,
        Item::Words(words) => words.test = None,
    }
    item
}
