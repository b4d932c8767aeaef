//! Undo and redo for everything entered.

use crate::entries::Entries;
use crate::state::Text;
use standfast_core::place::Place;
use std::rc::Rc;

/// The most steps that are kept.
const MOST: usize = 200;

/// What is being typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Typing {
    /// A figure.
    Figure(Place),
    /// A figure's tolerance.
    Tolerance(Place),
    /// A free text.
    Free(Text),
}

/// What was entered before, and what was taken back.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct History {
    past: Vec<Rc<Entries>>,
    future: Vec<Rc<Entries>>,
    /// What is being typed: its letters make one step.
    typing: Option<Typing>,
}

impl History {
    /// Notes what stood before a change. Changes to one input, letter after letter, are one step.
    pub fn note(&mut self, before: &Rc<Entries>, typing: Option<Typing>) {
        self.future.clear();
        if typing.is_none() || self.typing != typing {
            if self.past.len() == MOST {
                self.past.remove(0);
            }
            self.past.push(Rc::clone(before));
        }
        self.typing = typing;
    }

    /// Ends the step being typed.
    pub fn settle(&mut self) {
        self.typing = None;
    }

    /// Whether something is being typed.
    pub fn is_typing(&self) -> bool {
        self.typing.is_some()
    }

    /// What stood before the last change, given what stands now.
    pub fn undo(&mut self, now: &Rc<Entries>) -> Option<Rc<Entries>> {
        let back = self.past.pop()?;
        self.future.push(Rc::clone(now));
        self.typing = None;
        Some(back)
    }

    /// What was taken back last.
    pub fn redo(&mut self, now: &Rc<Entries>) -> Option<Rc<Entries>> {
        let forth = self.future.pop()?;
        self.past.push(Rc::clone(now));
        self.typing = None;
        Some(forth)
    }

    /// Whether anything can be undone.
    pub fn can_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// Whether anything can be redone.
    pub fn can_redo(&self) -> bool {
        !self.future.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::place::Field;

    fn named(name: &str) -> Rc<Entries> {
        Rc::new(Entries { note: name.to_owned(), ..Entries::blank() })
    }

    #[test]
    fn there_and_back_and_a_change_forgets_the_future() {
        let (a, b, c) = (named("a"), named("b"), named("c"));
        let mut history = History::default();
        history.note(&a, None);
        history.note(&b, None);
        assert_eq!(history.undo(&c), Some(Rc::clone(&b)));
        assert_eq!(history.undo(&b), Some(Rc::clone(&a)));
        assert_eq!(history.undo(&a), None);
        assert_eq!(history.redo(&a), Some(Rc::clone(&b)));
        history.note(&b, None);
        assert!(!history.can_redo() && history.can_undo());
    }

    #[test]
    fn letters_of_one_figure_are_one_step() {
        let (a, b, c, d) = (named(""), named("1"), named("15"), named("150"));
        let mass = Some(Typing::Figure(Field::LoadMass.into()));
        let mut history = History::default();
        history.note(&a, mass);
        history.note(&b, mass);
        history.settle();
        history.note(&c, mass);
        assert_eq!(history.undo(&d), Some(c));
        assert_eq!(history.undo(&d), Some(a));
    }

    #[test]
    fn the_oldest_steps_fall_off() {
        let mut history = History::default();
        for k in 0..MOST + 5 {
            history.note(&named(&k.to_string()), None);
        }
        assert_eq!(history.past.len(), MOST);
        assert_eq!(history.past[0].note, "5");
    }
}
