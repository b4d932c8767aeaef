//! A limit's value entered in a document, as a person would.

use standfast_core::balance::Balance;
use standfast_core::bearing::Bearing;
use standfast_core::document::{CentreKnown, Document, GivenAs, RampDown, WeightKnown};
use standfast_core::example;
use standfast_core::limit::Limit;
use standfast_core::plate::Gap;
use standfast_core::scenario::Scenario;
use standfast_core::step::StepId;
use standfast_core::verdict::{Reason, State};
use standfast_core::whole::Whole;
use standfast_tests::draw::Draws;

/// Whether the figure can be entered in this document: a weight or a centre that is worked out of parts,
/// a picture or scales cannot.
pub fn can(document: &Document, limit: Limit) -> bool {
    let load = &document.load;
    let block = load.given_as == GivenAs::Block && load.weighing.is_none();
    match limit {
        Limit::LoadMass => block && load.mass_kg.is_some(),
        Limit::LoadCentre => {
            block && load.centre_known == Some(CentreKnown::Mark) && load.turned == Default::default() && !load.hanging
        }
        // An offset that was only assumed has a wider range than one that is entered.
        Limit::OffsetLeft | Limit::OffsetRight => document.lift.offset_m.is_some(),
        _ => true,
    }
}

/// The document with the limit's figure at `value`; `stated` is where it was.
pub fn at(document: &Document, limit: Limit, stated: Option<f64>, value: f64) -> Document {
    let mut d = document.clone();
    let moved = value - stated.unwrap_or(value);
    match limit {
        Limit::LoadMass => d.load.mass_kg = Some(value),
        Limit::LoadCentre => d.load.cg_from_heel_m = d.load.cg_from_heel_m.map(|x| x + moved),
        Limit::OffsetLeft => d.lift.offset_m = Some(d.lift.offset_m.unwrap_or(0.0) + moved),
        Limit::OffsetRight => d.lift.offset_m = Some(d.lift.offset_m.unwrap_or(0.0) - moved),
        Limit::LiftHeight => d.lift.height_m = Some(value),
        Limit::TiltBack => d.lift.tilt_back_deg = Some(value),
        Limit::TiltForward => d.lift.tilt_forward_deg = Some(value),
        Limit::RampUp | Limit::RampDown => d.drive.ramp_pct = Some(value),
        Limit::CrossFallLeft | Limit::CrossFallRight => d.drive.cross_fall_pct = Some(value),
        Limit::CornerSpeed => (d.drive.corner_kmh, d.drive.corner) = (Some(value), None),
        Limit::CornerSpeedEmpty => (d.drive.corner_empty_kmh, d.drive.corner_empty) = (Some(value), None),
        Limit::Braking => (d.drive.braking_ms2, d.drive.brake) = (Some(value), None),
        Limit::BatteryLeast | Limit::BatteryMost => d.truck.battery.fitted_kg = Some(value),
    }
    d
}

/// A document looked through as far as its steps; nothing where it cannot be (a figure out of its range).
pub fn scenario(document: &Document) -> Option<(Scenario, Balance)> {
    let scenario = Scenario::from_document(document).ok()?;
    let balance = Balance::of(&scenario.truck, &scenario.doubts);
    Some((scenario, balance))
}

/// Whether a step passes at the worst corner, truck and load; for a limit that moves the load, with the load
/// on both blades wherever it may stand.
pub fn step_passes(scenario: &Scenario, whole: &Whole, id: StepId, limit: Limit) -> bool {
    let moved = matches!(limit, Limit::OffsetLeft | Limit::OffsetRight);
    let bearing = Bearing::of(scenario);
    let on_both = bearing.ends.iter().chain([&bearing.stated]).all(|l| l.strips.iter().all(|s| !s.is_empty()));
    let borne = !moved || on_both || scenario.load.hanging.is_some() || !id.laden();
    borne
        && whole.steps.iter().zip(&whole.seats).any(|(step, seat)| {
            step.id == id && step.passes_worst() && seat.as_ref().is_none_or(standfast_core::seat::Seat::holds_worst)
        })
}

/// Whether the move goes, but for what no figure mends: an unknown battery, ways that disagree, a truck
/// that contradicts its plate, and but for a step that the limit leaves out of account.
pub fn goes(whole: &Whole, left_out: Option<StepId>) -> bool {
    let verdict = &whole.verdict;
    std::iter::once(&verdict.governing).chain(&verdict.others).all(|ground| {
        ground.state == State::Go
            || match &ground.reason {
                Reason::Contradicts { .. }
                | Reason::WaysDisagree { .. }
                | Reason::Plate { gap: Gap::BatteryUnknown } => true,
                Reason::Tips { step, .. }
                | Reason::Slope { step, .. }
                | Reason::Reserve { step, .. }
                | Reason::Topples { step, .. }
                | Reason::Slides { step, .. } => left_out == Some(*step),
                Reason::LoadDownhill { .. } => left_out == Some(StepId::RampDown),
                _ => false,
            }
    })
}

/// The step that a limit of the whole move leaves out of account.
pub fn left_out(limit: Limit) -> Option<StepId> {
    match limit {
        Limit::RampUp => Some(StepId::RampDown),
        Limit::RampDown => Some(StepId::RampUp),
        Limit::CrossFallLeft => Some(StepId::CrossFallRight),
        Limit::CrossFallRight => Some(StepId::CrossFallLeft),
        _ => None,
    }
}

/// A check that mostly goes: one of the invented examples with its load and its move drawn anew.
pub fn mild(draws: &mut Draws) -> Document {
    let texts = [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD];
    let mut d = example::document(texts[draws.count(0..3)]);
    if d.load.given_as == GivenAs::Block {
        d.load.mass_kg = Some(draws.within(200.0..1500.0));
        d.load.weight_known = Some(if draws.chance(0.5) { WeightKnown::Scale } else { WeightKnown::Note });
        d.load.cg_from_heel_m = Some(draws.within(0.35..0.62));
        d.load.cg_left_m = Some(draws.within(-0.03..0.03));
    }
    d.lift.heel_gap_m = Some(draws.within(0.0..0.05));
    d.lift.offset_m = Some(draws.within(-0.04..0.04));
    d.lift.sideshift_m = draws.chance(0.3).then(|| draws.within(-0.03..0.03));
    d.lift.height_m = Some(draws.within(0.5..4.0));
    d.lift.tilt_forward_deg = Some(draws.within(0.0..2.0));
    d.drive.ramp_pct = draws.chance(0.5).then(|| draws.within(1.0..9.0));
    d.drive.ramp_down = draws.chance(0.3).then_some(RampDown::Forwards);
    d.drive.cross_fall_pct = draws.chance(0.5).then(|| draws.within(0.5..3.0));
    d.drive.corner_kmh = Some(draws.within(2.0..5.0));
    d.drive.corner_empty_kmh = Some(draws.within(2.0..7.0));
    d.drive.braking_ms2 = Some(draws.within(0.5..1.5));
    d
}
