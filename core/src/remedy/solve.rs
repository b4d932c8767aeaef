//! Each kind of change solved for the value at which it would help.

use super::{Case, Remedy, in_range, touches};
use crate::document::{Document, GivenAs, PlateFor, Turned};
use crate::forks::Arm;
use crate::limit;
use crate::limit::Limit;
use crate::place::Field;
use crate::plate::Gap;
use crate::rules;
use crate::scalar::Scalar;
use crate::scenario::Scenario;
use crate::seat::Over;
use crate::step::StepId;
use crate::verdict::Reason;

/// A kind of change, the one that asks least first: what the driver does with his hands, what he does
/// when he drives, what takes a tool or another way, what takes another load or another truck set-up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    PushHome,
    Sideshift,
    Shift,
    TiltForward,
    TiltBack,
    Corner,
    CornerEmpty,
    Brake,
    RampBackwards,
    Turn,
    Spread,
    Lower,
    Ramp,
    CrossFall,
    ExtensionsOff,
    NewForks,
    Lighter,
    AttachmentOff,
    Battery,
}

impl Kind {
    /// All, what asks least first.
    pub const ALL: [Self; 19] = [
        Self::PushHome,
        Self::Sideshift,
        Self::Shift,
        Self::TiltForward,
        Self::TiltBack,
        Self::Corner,
        Self::CornerEmpty,
        Self::Brake,
        Self::RampBackwards,
        Self::Turn,
        Self::Spread,
        Self::Lower,
        Self::Ramp,
        Self::CrossFall,
        Self::ExtensionsOff,
        Self::NewForks,
        Self::Lighter,
        Self::AttachmentOff,
        Self::Battery,
    ];

    /// How much it asks: its place in the order.
    pub fn asks(self) -> usize {
        self as usize
    }

    /// Whether there is anything of the kind to change.
    pub fn at_hand(self, document: &Document, scenario: &Scenario) -> bool {
        let (truck, drive) = (&scenario.truck, &scenario.drive);
        match self {
            // Only who entered a sideshift has one.
            Self::Sideshift => document.lift.sideshift_m.is_some(),
            Self::Corner => drive.corner.is_some(),
            Self::CornerEmpty => drive.corner_empty.is_some(),
            Self::Brake => drive.braking.is_some(),
            Self::RampBackwards => drive.load_downhill,
            Self::Ramp => drive.ramp.is_some(),
            Self::CrossFall => drive.cross_fall.is_some(),
            Self::ExtensionsOff => truck.forks.extension.is_some(),
            Self::NewForks => truck.forks.wear.is_some_and(|wear| wear > 0.0),
            // What a load of parts weighs, or one that was weighed, is not for a tap to change.
            Self::Lighter => document.load.given_as == GivenAs::Block && document.load.weighing.is_none(),
            Self::AttachmentOff => {
                truck.attachment.is_some() && truck.plate.as_ref().is_some_and(|p| p.issued_for == PlateFor::Forks)
            }
            _ => true,
        }
    }
}

/// Down to a whole number of `steps` to the unit, never above.
fn down(value: f64, steps: f64) -> f64 {
    (value * steps + 1e-6).floor() / steps
}

/// Up to a whole centimetre.
fn up(metres: f64) -> f64 {
    (metres * 100.0 - 1e-6).ceil() / 100.0
}

/// The changes of a kind that may help, with their values.
pub fn changes(kind: Kind, case: &Case) -> Vec<Remedy> {
    let Case { document, scenario, whole, .. } = *case;
    let c = Scalar::computed;
    let lift = &scenario.lift;
    let plain = |what: Limit, field: Field, steps: f64, make: fn(Scalar) -> Remedy| {
        let values = solved(what, kind, case).into_iter().map(|v| down(v, steps));
        let now = document_value(field, document, scenario);
        values.filter(|v| in_range(field, *v) && *v < now - 1e-9).map(|v| make(c(v))).collect::<Vec<_>>()
    };
    match kind {
        Kind::PushHome => {
            let by = lift.heel_gap.hi;
            if by > 0.0 && document.lift.heel_gap_m != Some(0.0) {
                vec![Remedy::PushHome { by: c(by) }]
            } else {
                Vec::new()
            }
        }
        Kind::Sideshift => {
            // To the millimetre, so that what is said is what is entered.
            let to = (-whole.placed.centre.at.y * 1000.0).round() / 1000.0;
            let within = to.abs() <= rules::SIDESHIFT_USUAL.value && (to - lift.sideshift).abs() >= 0.001;
            if within { vec![Remedy::Sideshift { to: c(to) }] } else { Vec::new() }
        }
        Kind::Shift => {
            let off = whole.placed.centre.at.y + lift.sideshift;
            let offset = ((lift.offset.nominal - off) * 1000.0).round() / 1000.0;
            let by = offset - lift.offset.nominal;
            let help = by.abs() >= 0.001 && in_range(Field::Offset, offset);
            if help { vec![Remedy::Shift { by: c(by), offset: c(offset) }] } else { Vec::new() }
        }
        Kind::Turn => [Turned::No, Turned::Left, Turned::Right, Turned::Half]
            .into_iter()
            .filter(|t| *t != document.load.turned)
            .map(|turned| Remedy::Turn { turned })
            .collect(),
        Kind::Spread => spread_needed(case).map(|to| Remedy::Spread { to: c(to) }).into_iter().collect(),
        Kind::TiltForward => plain(Limit::TiltForward, Field::TiltForward, 10.0, |to| Remedy::TiltForward { to }),
        Kind::TiltBack => plain(Limit::TiltBack, Field::TiltBack, 10.0, |to| Remedy::TiltBack { to }),
        Kind::Corner => plain(Limit::CornerSpeed, Field::CornerSpeed, 10.0, |to| Remedy::Corner { to }),
        Kind::CornerEmpty => {
            plain(Limit::CornerSpeedEmpty, Field::CornerSpeedEmpty, 10.0, |to| Remedy::CornerEmpty { to })
        }
        Kind::Brake => plain(Limit::Braking, Field::Braking, 100.0, |to| Remedy::Brake { to }),
        Kind::RampBackwards => vec![Remedy::RampBackwards],
        Kind::Lower => plain(Limit::LiftHeight, Field::LiftHeight, 100.0, |to| Remedy::Lower { to }),
        Kind::Ramp => {
            let values = [Limit::RampUp, Limit::RampDown].map(|what| least(what, kind, case));
            let rule = if scenario.drive.load_downhill { rules::LOAD_UPHILL_OVER.value * 100.0 } else { f64::INFINITY };
            let tolerance = scenario.doubts.ramp.hi * 100.0;
            let to = values.into_iter().try_fold(rule - tolerance, |to, v| v.map(|v| to.min(v)));
            let now = scenario.drive.ramp.unwrap_or(0.0) * 100.0;
            let to = to.map(|to| down(to, 10.0)).filter(|to| in_range(Field::RampGrade, *to) && *to < now - 1e-9);
            to.map(|to| Remedy::Ramp { to: c(to) }).into_iter().collect()
        }
        Kind::CrossFall => {
            let values = [Limit::CrossFallLeft, Limit::CrossFallRight].map(|what| least(what, kind, case));
            let to = values.into_iter().try_fold(f64::INFINITY, |to, v| v.map(|v| to.min(v)));
            let now = scenario.drive.cross_fall.unwrap_or(0.0) * 100.0;
            let to = to.map(|to| down(to, 10.0)).filter(|to| in_range(Field::CrossFall, *to) && *to < now - 1e-9);
            to.map(|to| Remedy::CrossFall { to: c(to) }).into_iter().collect()
        }
        Kind::ExtensionsOff => vec![Remedy::ExtensionsOff],
        Kind::NewForks => vec![Remedy::NewForks],
        Kind::AttachmentOff => vec![Remedy::AttachmentOff],
        Kind::Lighter => plain(Limit::LoadMass, Field::LoadMass, 1.0, |to| Remedy::Lighter { to }),
        Kind::Battery => {
            let plate = scenario.truck.plate.as_ref();
            let ends = plate.map(|p| (p.battery_min, p.battery_max)).unwrap_or_default();
            let fitted = scenario.truck.battery.fitted.nominal;
            // The nearer end of the window.
            let to = match ends {
                (Some(min), _) if fitted < min => Some(min.ceil()),
                (_, Some(max)) if fitted > max => Some(max.floor()),
                _ => None,
            };
            to.map(|to| Remedy::Battery { to: c(to) }).into_iter().collect()
        }
    }
}

/// A figure as it stands, in the document's unit, whether entered or assumed.
fn document_value(field: Field, document: &Document, scenario: &Scenario) -> f64 {
    let kmh = |bend: Option<(f64, f64)>| bend.map_or(0.0, |(speed, _)| speed * 3.6);
    let entered = crate::place::Place::from(field).get(document);
    entered.unwrap_or_else(|| match field {
        Field::TiltForward => scenario.lift.tilt_forward.to_degrees(),
        Field::TiltBack => scenario.lift.tilt_back.to_degrees(),
        Field::CornerSpeed => kmh(scenario.drive.corner),
        Field::CornerSpeedEmpty => kmh(scenario.drive.corner_empty),
        Field::Braking => scenario.drive.braking.unwrap_or(0.0),
        _ => 0.0,
    })
}

/// Where the whole move would go; failing that, where all that is wrong now and this has to do with would
/// not be wrong any more: the furthest first.
fn solved(what: Limit, kind: Kind, case: &Case) -> Vec<f64> {
    let whole = limit::of_move(what, case.scenario, case.balance, case.whole, case.document).reach.value();
    match whole {
        Some(value) => vec![value],
        None => least(what, kind, case).into_iter().collect(),
    }
}

/// The least that any of the reasons asks for which a change of this kind has to do with.
fn least(what: Limit, kind: Kind, case: &Case) -> Option<f64> {
    let mut steps: Vec<StepId> = touches::steps(kind).to_vec();
    let mut value = f64::INFINITY;
    for ground in case.grounds() {
        match &ground.reason {
            Reason::Tips { step, .. }
            | Reason::Slope { step, .. }
            | Reason::Reserve { step, .. }
            | Reason::Topples { step, .. }
            | Reason::Slides { step, .. }
                if !steps.contains(step) && what.touches(*step, case.scenario) =>
            {
                steps.push(*step);
            }
            Reason::Plate { gap: Gap::TooHeavy { allowed, .. } } if what == Limit::LoadMass => {
                let mass = case.whole.placed.mass;
                let part = if mass.nominal > 0.0 { mass.hi / mass.nominal } else { 1.0 };
                value = value.min(allowed.get() / part);
            }
            Reason::ForkOver { carries, allowed_mass, moment, allowed, .. } if what == Limit::LoadMass => {
                let part = (allowed_mass.get() / carries.get()).min(allowed.get() / moment.get());
                value = value.min(case.whole.placed.mass.nominal * part);
            }
            Reason::Plate { gap: Gap::TooHigh { last, .. } } if what == Limit::LiftHeight => {
                value = value.min(last.get() - case.scenario.doubts.height.hi);
            }
            _ => {}
        }
    }
    steps.retain(|id| what.touches(*id, case.scenario) && id.applies(case.scenario));
    let by_steps = limit::in_steps(what, &steps, case.scenario, case.balance, case.document)?;
    let value = value.min(by_steps);
    value.is_finite().then_some(value)
}

/// The least width over the forks that would carry the load within all edges and stamps, where the
/// forks' width is what fails.
fn spread_needed(case: &Case) -> Option<f64> {
    let Case { scenario, whole, .. } = *case;
    let (forks, load) = (&scenario.truck.forks, &scenario.load);
    let seats = whole.seats.iter().flatten().flat_map(|s| &s.cases);
    let beside =
        seats.flat_map(|c| &c.topple).filter(|t| matches!(t.over, Over::Left | Over::Right)).map(|t| t.margin.worst);
    let short = beside.fold(whole.forks.to_edge_worst.get(), f64::min);
    let by_edge = forks.spread + 2.0 * (-short).max(0.0);
    let by_arm = |arm: &Arm| {
        let towards = whole.placed.centre.y().furthest();
        let (mass, ahead) = (whole.placed.mass.hi, whole.placed.centre.hi.x);
        let moment = mass * crate::units::GRAVITY * ahead;
        let (allowed, most) = arm.allowed.zip(arm.allowed_mass)?;
        let part = (allowed.get() / moment).min(most.get() / mass);
        // At the worst it lies on the blades' inner edges; half and half is the best that any width can do.
        (part > 0.5).then(|| 2.0 * forks.blade.hi + towards / (part - 0.5) - scenario.doubts.fork_spread.lo)
    };
    if !whole.forks.bears_worst() {
        // The load falls between them: their outer edges flush with its underside.
        let (lo, hi) = crate::polygon::extents(&load.feet.concat());
        let flush = (2.0 * (-lo.y).min(hi.y) * 100.0 + 1e-6).floor() / 100.0;
        let least = Field::ForkSpread.row().min.max(2.0 * forks.blade.hi);
        return (flush < forks.spread && flush >= least).then_some(flush);
    }
    let over: Vec<Option<f64>> = whole.forks.arms.iter().filter(|a| !a.holds_worst()).map(by_arm).collect();
    let by_arms = over.into_iter().try_fold(0.0, |most: f64, one| one.map(|o| most.max(o)))?;
    let to = up(by_edge.max(by_arms));
    // Blades beside the load carry nothing.
    (to > forks.spread && to <= load.size.y && to <= Field::ForkSpread.row().max).then_some(to)
}
