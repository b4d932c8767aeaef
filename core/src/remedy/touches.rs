//! Which reasons a kind of change has anything to do with. What it has nothing to do with it cannot mend,
//! so that need not be tried.

use super::solve::Kind;
use crate::plate::Gap;
use crate::step::StepId;
use crate::verdict::{Ground, Reason};

/// A bit for each ground that the kind of change touches.
pub fn mask(kind: Kind, grounds: &[&Ground]) -> u64 {
    let bit = |(k, g): (usize, &&Ground)| if touches(kind, &g.reason) { 1 << k.min(63) } else { 0 };
    grounds.iter().enumerate().map(bit).fold(0, |mask, bit| mask | bit)
}

/// All of them.
pub fn all(grounds: &[&Ground]) -> u64 {
    (0..grounds.len()).fold(0, |mask, k| mask | 1 << k.min(63))
}

/// The steps whose pose or field a change of a kind alters.
pub fn steps(kind: Kind) -> &'static [StepId] {
    match kind {
        Kind::TiltForward => &[StepId::RaisedForward],
        Kind::TiltBack => &[StepId::RaisedBack],
        Kind::Corner => &[StepId::CornerLeft, StepId::CornerRight],
        Kind::CornerEmpty => &[StepId::EmptyCornerLeft, StepId::EmptyCornerRight],
        Kind::Brake => &[StepId::Brake, StepId::RampDown],
        Kind::RampBackwards => &[StepId::RampDown],
        Kind::Ramp => &[StepId::RampUp, StepId::RampDown],
        Kind::CrossFall => &[StepId::CrossFallLeft, StepId::CrossFallRight],
        Kind::Lower => &[StepId::RaisedBack, StepId::RaisedUpright, StepId::RaisedForward, StepId::BackOut],
        _ => &[],
    }
}

/// Whether it moves the load on the forks, or the forks under it.
fn moves_load(kind: Kind) -> bool {
    matches!(kind, Kind::PushHome | Kind::Shift | Kind::Turn | Kind::Spread)
}

/// Whether it changes what hangs on the mast, or where.
fn changes_moments(kind: Kind) -> bool {
    matches!(
        kind,
        Kind::PushHome
            | Kind::Shift
            | Kind::Turn
            | Kind::Sideshift
            | Kind::Lighter
            | Kind::AttachmentOff
            | Kind::ExtensionsOff
            | Kind::Battery
    )
}

fn touches(kind: Kind, reason: &Reason) -> bool {
    match reason {
        Reason::Plate { gap } => match gap {
            Gap::NoPlate => false,
            // Nothing that is done to a load or to a lift gives a truck another plate.
            Gap::OtherAttachment { .. } | Gap::OtherMast { .. } | Gap::OtherTyres { .. } | Gap::OtherTilt { .. } => {
                false
            }
            Gap::OtherFrontEnd { .. } => kind == Kind::AttachmentOff,
            Gap::Extensions { .. } => kind == Kind::ExtensionsOff,
            Gap::TooHigh { .. } => kind == Kind::Lower,
            Gap::TooFarOut { .. } => matches!(kind, Kind::PushHome | Kind::Turn | Kind::Lower),
            Gap::TooHeavy { .. } => matches!(kind, Kind::PushHome | Kind::Turn | Kind::Lower | Kind::Lighter),
            Gap::Battery { .. } => kind == Kind::Battery,
            Gap::BatteryUnknown => false,
            Gap::OffCentre { .. } => matches!(kind, Kind::Shift | Kind::Sideshift | Kind::Turn),
        },
        Reason::BeyondTips { .. } | Reason::ShortReach { .. } => matches!(kind, Kind::PushHome | Kind::Turn),
        Reason::BesideForks { .. } => matches!(kind, Kind::Shift | Kind::Spread | Kind::Turn),
        Reason::OffBlade { .. } => moves_load(kind),
        Reason::ForkOver { .. } => {
            moves_load(kind) || matches!(kind, Kind::Lighter | Kind::ExtensionsOff | Kind::NewForks)
        }
        Reason::ForkWorn { .. } => kind == Kind::NewForks,
        Reason::ExtensionTooLong { .. } => kind == Kind::ExtensionsOff,
        Reason::LoadDownhill { .. } => matches!(kind, Kind::RampBackwards | Kind::Ramp),
        Reason::WaysDisagree { .. }
        | Reason::Contradicts { .. }
        | Reason::SheetContradicts { .. }
        | Reason::NotInOrder { .. }
        | Reason::Within { .. } => false,
        Reason::Topples { step, .. } | Reason::Slides { step, .. } => moves_load(kind) || steps(kind).contains(step),
        Reason::Tips { step, .. } | Reason::Slope { step, .. } | Reason::Reserve { step, .. } => {
            steps(kind).contains(step) || (changes_moments(kind) && (step.laden() || !needs_load(kind)))
        }
    }
}

/// Whether it changes nothing where no load is on the truck.
fn needs_load(kind: Kind) -> bool {
    matches!(kind, Kind::PushHome | Kind::Shift | Kind::Turn | Kind::Lighter)
}
