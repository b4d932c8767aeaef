//! The steps of a tracing: how far each is, and what to do in it now.

use super::points::{LEAST, Task};
use crate::answer::is_missing;
use crate::entries::TraceEntry;
use crate::form::Form;
use crate::words::words;
use standfast_core::place::Field;

/// A step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    Picture,
    Scale,
    Straighten,
    Outline,
    Load,
}

/// How far a step is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Progress {
    /// Nothing is missing.
    Done,
    /// Something is wrong.
    Wrong,
    /// Something is missing.
    Wanted,
    /// Nothing is entered, and nothing has to be.
    Optional,
    /// Another step makes it needless.
    Spared,
}

impl Step {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Picture, Self::Scale, Self::Straighten, Self::Outline, Self::Load];

    /// Its name in tests.
    pub const fn key(self) -> &'static str {
        match self {
            Self::Picture => "picture",
            Self::Scale => "scale",
            Self::Straighten => "straighten",
            Self::Outline => "outline",
            Self::Load => "load",
        }
    }

    /// What is entered in it.
    pub const fn fields(self) -> &'static [Field] {
        match self {
            Self::Picture => &[Field::TracePicture],
            Self::Scale => &[Field::TraceScale, Field::TraceScaleEnds],
            Self::Straighten => &[Field::TraceRectangle, Field::TraceRectangleWidth, Field::TraceRectangleHeight],
            Self::Outline => &[Field::TraceOutline, Field::TraceHole],
            Self::Load => {
                &[Field::TraceThrough, Field::TraceView, Field::TraceTruck, Field::LoadMass, Field::LoadMaterial]
            }
        }
    }

    /// How far it is.
    pub fn progress(self, form: &Form) -> Progress {
        let problems = || form.answer.problems.iter().filter(|p| self.fields().contains(&p.place.field));
        let blank = TraceEntry::default();
        let trace = form.entries.trace.as_ref().unwrap_or(&blank);
        if problems().any(|p| !is_missing(p)) {
            return Progress::Wrong;
        }
        if problems().next().is_some() {
            return Progress::Wanted;
        }
        match self {
            Self::Outline if !trace.open.is_empty() => Progress::Wanted,
            Self::Straighten if trace.rectangle.is_empty() => Progress::Optional,
            Self::Scale if !trace.rectangle.is_empty() => Progress::Spared,
            _ => Progress::Done,
        }
    }

    /// The step to begin with: the first with something to do, else the outline.
    pub fn first(form: &Form) -> Self {
        let open = |s: &Self| matches!(s.progress(form), Progress::Wrong | Progress::Wanted);
        Self::ALL.into_iter().find(open).unwrap_or(Self::Outline)
    }

    /// What can be tapped in it.
    pub fn task(self, hole: bool) -> Task {
        match self {
            Self::Picture | Self::Load => Task::Look,
            Self::Scale => Task::Scale,
            Self::Straighten => Task::Rectangle,
            Self::Outline => Task::Outline { hole },
        }
    }

    /// What to do in it now.
    pub fn to_do(self, trace: &TraceEntry, hole: bool) -> &'static str {
        let w = &words().trace;
        match self {
            Self::Picture => w.do_picture,
            Self::Scale if trace.scale.is_empty() && !trace.rectangle.is_empty() => w.do_scale_spared,
            Self::Scale => w.do_scale[trace.scale.len().min(2)],
            Self::Straighten => w.do_corner.get(trace.rectangle.len()).copied().unwrap_or(w.do_rectangle),
            Self::Outline if !trace.outline.is_empty() && (hole || !trace.open.is_empty()) => w.do_hole,
            Self::Outline if !trace.outline.is_empty() => w.do_outline[3],
            Self::Outline => match trace.open.len() {
                0 => w.do_outline[0],
                n if n < LEAST => w.do_outline[1],
                _ => w.do_outline[2],
            },
            Self::Load => w.do_load,
        }
    }
}
