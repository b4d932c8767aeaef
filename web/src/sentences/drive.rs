//! Sentences about what is driven: braking, bends, ramps, cross-fall, the empty truck.

use super::Teller;
use crate::answer::Answer;
use crate::entries::DriveEntry;
use crate::figures::{self, Printer};
use crate::words::{Twice, fill, words};
use standfast_core::document::RampDown;
use standfast_core::place::Field;
use standfast_core::step::StepId;
use standfast_core::units::Rounding::{Down, Nearest, Up};
use standfast_core::verdict::{Reason, State};

/// What a step is driven like, with its figures, to begin a sentence: "In the left-hand bend at 8 km/h
/// on 2.00 m"; nothing for a step that stands or goes on evenly.
pub fn when(step: StepId, answer: &Answer, print: Printer) -> Option<String> {
    let w = &words().drive;
    let drive = &answer.document.drive;
    let value = |field: Field| answer.value(field.into());
    let figure = |field: Field| value(field).map(|v| print.at(field.into(), v, Nearest)).unwrap_or_default();
    let height = |field: Field| value(field).map(|v| print.height(v)).unwrap_or_default();
    let forwards = drive.ramp_down == Some(RampDown::Forwards);
    let way_down = if forwards { w.way_forwards } else { w.way_backwards };
    let text = fill(
        (w.when)(step)?,
        &[
            ("braking", &figure(Field::Braking)),
            ("speed", &figure(Field::CornerSpeed)),
            ("speed_empty", &figure(Field::CornerSpeedEmpty)),
            ("radius", &height(Field::CornerRadius)),
            ("ramp", &figure(Field::RampGrade)),
            ("cross_fall", &figure(Field::CrossFall)),
            ("height", &height(Field::LiftHeight)),
            ("way_down", way_down),
        ],
    );
    if step == StepId::RampDown && DriveEntry::looks_at(drive.brake) {
        return Some(fill(w.when_braking, &[("when", &text), ("braking", &figure(Field::Braking))]));
    }
    Some(text)
}

/// The field that sets how a step is driven: where to go when it does not pass.
fn sets(step: StepId) -> Option<Field> {
    match step {
        StepId::Brake => Some(Field::Braking),
        StepId::CornerLeft | StepId::CornerRight => Some(Field::CornerSpeed),
        StepId::EmptyCornerLeft | StepId::EmptyCornerRight => Some(Field::CornerSpeedEmpty),
        StepId::RampUp | StepId::RampDown => Some(Field::RampGrade),
        StepId::CrossFallLeft | StepId::CrossFallRight => Some(Field::CrossFall),
        StepId::BackOut => Some(Field::LiftHeight),
        _ => None,
    }
}

/// The step that a reason is about.
pub fn step_of(reason: &Reason) -> Option<StepId> {
    match reason {
        Reason::Topples { step, .. }
        | Reason::Slides { step, .. }
        | Reason::Tips { step, .. }
        | Reason::Slope { step, .. }
        | Reason::Reserve { step, .. } => Some(*step),
        Reason::LoadDownhill { .. } => Some(StepId::RampDown),
        _ => None,
    }
}

/// The field that would change what a reason is about, where that is how the truck is driven.
pub(super) fn driven_by(reason: &Reason) -> Option<Field> {
    match reason {
        Reason::LoadDownhill { .. } => Some(Field::RampDown),
        _ => step_of(reason).and_then(sets),
    }
}

impl Teller<'_> {
    /// A reason of the drive alone; nothing for the others.
    pub(super) fn on_the_drive(&self, reason: &Reason, state: State) -> Option<String> {
        let w = &self.w.drive;
        let pick = |twice: Twice| if state == State::Hold { twice.may } else { twice.stated };
        Some(match reason {
            Reason::Reserve { step, line, share, allowed, lift, tilt_deg } => fill(
                pick(w.reserve),
                &[
                    ("when", &self.pose(*step, lift.get(), tilt_deg.get())),
                    ("share", &figures::share(share.get())),
                    ("way", (self.w.way)(*line)),
                    ("allowed", &figures::slope(allowed.get(), Down)),
                    ("margin", &figures::share(share.get() - allowed.get())),
                ],
            ),
            Reason::LoadDownhill { grade, limit } => fill(
                pick(w.load_downhill),
                &[("grade", &figures::slope(grade.get(), Up)), ("limit", &figures::slope(limit.get(), Down))],
            ),
            _ => return None,
        })
    }
}
