//! The state of the page, and all that can happen to it.

use crate::answer::Card;
use crate::entries::Entries;
use crate::grip::Grip;
use crate::history::{History, Typing};
use crate::notice::Notice;
use standfast_core::document::{CentreKnown, PlateFor, WeightKnown, Wheels};
use standfast_core::example;
use standfast_core::place::Place;
use standfast_core::step::StepId;
use standfast_core::units::System;
use standfast_core::validate::{MOST_PLATE_ROWS, MOST_STAGES};
use std::rc::Rc;
use yew::prelude::*;

/// The state. What can be derived from it is not in it.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    pub entries: Rc<Entries>,
    pub system: System,
    /// The step the person picked; else the tightest is shown.
    pub picked: Option<StepId>,
    /// The card that is open.
    pub open: Option<Card>,
    pub history: Rc<History>,
    /// What is being dragged.
    pub grip: Option<Rc<Grip>>,
    /// Something to say or to ask.
    pub notice: Option<Notice>,
}

/// A free text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Text {
    Note,
    TruckName,
    LoadName,
    AttachmentName,
}

/// A choice made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    Wheels(Wheels),
    Plate(bool),
    PlateFor(PlateFor),
    Attachment(bool),
    WeightKnown(WeightKnown),
    CentreKnown(CentreKnown),
}

/// What can happen.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// A figure's text has changed.
    Type(Place, String),
    /// A free text has changed.
    Write(Text, String),
    /// An input was left.
    Settle,
    Choose(Choice),
    AddPlateRow,
    RemovePlateRow(usize),
    AddStage,
    RemoveStage(usize),
    /// Other entries altogether: an example, a file, nothing.
    Replace(Rc<Entries>, Option<Card>),
    Undo,
    Redo,
    Units(System),
    Pick(StepId),
    Open(Option<Card>),
    Hold(Rc<Grip>),
    /// Moved so far since it was taken hold of.
    Drag((f64, f64, f64)),
    Release((f64, f64, f64)),
    Say(Notice),
    Hush,
}

impl State {
    /// The first screen: an invented example.
    pub fn example() -> Self {
        Self::with(Entries::from_document(&example::document(example::THREE_WHEEL)))
    }

    /// These entries and nothing else set.
    pub fn with(entries: Entries) -> Self {
        Self {
            entries: Rc::new(entries),
            system: System::default(),
            picked: None,
            open: Some(Card::Load),
            history: Rc::default(),
            grip: None,
            notice: None,
        }
    }

    /// The same with other entries; the state itself where they are the same.
    fn changed(self: Rc<Self>, typing: Option<Typing>, change: impl FnOnce(&mut Entries)) -> Rc<Self> {
        let mut entries = Entries::clone(&self.entries);
        change(&mut entries);
        if entries == *self.entries {
            return self;
        }
        let mut history = History::clone(&self.history);
        history.note(&self.entries, typing);
        Rc::new(Self { entries: Rc::new(entries), history: Rc::new(history), ..State::clone(&self) })
    }

    fn travelled(self: Rc<Self>, step: fn(&mut History, &Rc<Entries>) -> Option<Rc<Entries>>) -> Rc<Self> {
        let mut history = History::clone(&self.history);
        match step(&mut history, &self.entries) {
            Some(entries) => {
                Rc::new(Self { entries, history: Rc::new(history), grip: None, notice: None, ..State::clone(&self) })
            }
            None => self,
        }
    }

    fn dragged(self: Rc<Self>, by: (f64, f64, f64), ends: bool) -> Rc<Self> {
        let Some(grip) = self.grip.clone() else { return self };
        let entries = grip.moved(by, self.system);
        let mut next = State::clone(&self);
        if entries != *self.entries {
            // One step for the whole movement: what stood before it is noted at its first change.
            if self.entries == *grip.start() {
                let mut history = History::clone(&self.history);
                history.settle();
                history.note(grip.start(), None);
                next.history = Rc::new(history);
            }
            next.entries = Rc::new(entries);
        } else if !ends {
            return self;
        }
        if ends {
            next.grip = None;
        }
        Rc::new(next)
    }
}

impl Reducible for State {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let system = self.system;
        match action {
            Action::Type(place, text) => self.changed(Some(Typing::Figure(place)), |e| e.enter(place, &text, system)),
            Action::Write(which, text) => self.changed(Some(Typing::Free(which)), |e| match which {
                Text::Note => e.note = text,
                Text::TruckName => e.truck_name = text,
                Text::LoadName => e.load_name = text,
                Text::AttachmentName => e.attachment_name = text,
            }),
            Action::Settle => {
                if !self.history.is_typing() {
                    return self;
                }
                let mut history = History::clone(&self.history);
                history.settle();
                Rc::new(Self { history: Rc::new(history), ..State::clone(&self) })
            }
            Action::Choose(choice) => self.changed(None, |e| match choice {
                Choice::Wheels(wheels) => e.wheels = Some(wheels),
                Choice::Plate(there) => {
                    e.plate = there;
                    e.plate_rows = e.plate_rows.max(1);
                }
                Choice::PlateFor(front_end) => e.plate_for = Some(front_end),
                Choice::Attachment(fitted) => e.attachment = fitted,
                Choice::WeightKnown(how) => e.weight_known = Some(how),
                Choice::CentreKnown(how) => e.centre_known = Some(how),
            }),
            Action::AddPlateRow => self.changed(None, |e| {
                if e.plate_rows < MOST_PLATE_ROWS {
                    e.add_plate_row();
                }
            }),
            Action::RemovePlateRow(row) => self.changed(None, |e| e.remove_plate_row(row)),
            Action::AddStage => self.changed(None, |e| e.stages = (e.stages + 1).min(MOST_STAGES.max(e.stages))),
            Action::RemoveStage(row) => self.changed(None, |e| e.remove_stage(row)),
            Action::Replace(entries, open) => {
                let next = self.changed(None, |e| *e = Entries::clone(&entries));
                Rc::new(Self { picked: None, open, grip: None, notice: None, ..State::clone(&next) })
            }
            Action::Undo => self.travelled(History::undo),
            Action::Redo => self.travelled(History::redo),
            Action::Units(system) if system == self.system => self,
            Action::Units(system) => Rc::new(Self { system, ..State::clone(&self) }),
            Action::Pick(step) if self.picked == Some(step) => self,
            Action::Pick(step) => Rc::new(Self { picked: Some(step), ..State::clone(&self) }),
            Action::Open(open) if open == self.open => self,
            Action::Open(open) => Rc::new(Self { open, ..State::clone(&self) }),
            Action::Hold(grip) => Rc::new(Self { grip: Some(grip), ..State::clone(&self) }),
            Action::Drag(by) => self.dragged(by, false),
            Action::Release(by) => self.dragged(by, true),
            Action::Say(notice) => Rc::new(Self { notice: Some(notice), ..State::clone(&self) }),
            Action::Hush if self.notice.is_none() => self,
            Action::Hush => Rc::new(Self { notice: None, ..State::clone(&self) }),
        }
    }
}

/// Where components send what happens; it is given by the page.
#[hook]
pub fn use_act() -> Callback<Action> {
    use_context::<Callback<Action>>().unwrap_or_else(Callback::noop)
}

#[cfg(test)]
mod tests;
