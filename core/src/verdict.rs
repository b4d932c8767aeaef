//! Go, hold or no-go, and the one reason that governs.

use crate::balance::Contradiction;
use crate::forks::{self, Arm};
use crate::found::LoadFigure;
use crate::place::{Field as Entry, Place};
use crate::plate::{self, Gap};
use crate::rules;
use crate::scalar::{Scalar, Span};
use crate::scenario::Scenario;
use crate::seat::{Over, Seat};
use crate::step::{Standing, Step, StepId};
use serde::{Deserialize, Serialize};

mod reason;

pub use reason::Reason;

/// The three states.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(rename_all = "snake_case")]
pub enum State {
    /// The plate does not cover it, or it fails at the stated values.
    NoGo,
    /// It passes as stated, but not over the whole of what was measured or assumed.
    Hold,
    /// It passes over the whole range, and a plate covers it.
    Go,
}

/// A reason with what it weighs.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Ground {
    /// The state that this reason alone leads to.
    pub state: State,
    /// The reason.
    pub reason: Reason,
    /// For a hold: the figure that would help most to know better.
    pub measure: Option<Place>,
}

/// The verdict.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Verdict {
    /// The state.
    pub state: State,
    /// The reason that governs.
    pub governing: Ground,
    /// The other reasons, worst first.
    pub others: Vec<Ground>,
}

/// Gathers every reason and picks the one that governs: no-go before hold; what is not in order before
/// the plate, the plate before the blades, the blades before toppling and sliding, those before tipping, and among tipping the
/// greatest share used.
pub fn decide(
    plate: &plate::Outcome,
    forks: &forks::Outcome,
    seats: &[Option<Seat>],
    steps: &[Step],
    contradictions: &[Contradiction],
    scenario: &Scenario,
) -> Verdict {
    let mut grounds = Vec::new();
    if !scenario.not_in_order.is_empty() {
        // No figure is in doubt: it is put right, not measured.
        grounds.push(ground(false, Reason::NotInOrder { items: scenario.not_in_order.clone() }, None));
    }
    let found = &scenario.load.found;
    let weighed = found.ways.iter().any(|s| s.rank == 0 && s.figures[0].is_some());
    for finding in &plate.findings {
        let measure = match finding.gap {
            Gap::BatteryUnknown => Some(Entry::BatteryFitted),
            Gap::TooHeavy { .. } if !weighed || plate.need.load_centre == plate.need.load_centre_worst => {
                Some(Entry::LoadMass)
            }
            Gap::TooHeavy { .. } | Gap::TooFarOut { .. } => Some(Entry::LoadCgFromHeel),
            Gap::OffCentre { .. } => Some(Entry::LoadCgLeft),
            Gap::TooHigh { .. } => Some(Entry::LiftHeight),
            Gap::Battery { .. } => Some(Entry::BatteryFitted),
            Gap::OtherTyres { .. } => Some(Entry::Tyres),
            Gap::OtherAttachment { .. } => Some(Entry::PlateAttachment),
            _ => None,
        };
        grounds.push(ground(finding.as_stated, Reason::Plate { gap: finding.gap.clone() }, measure));
    }
    grounds.extend(blade_grounds(forks));
    for d in &found.disagreements {
        let ends = |s: Span| (Scalar::computed(s.lo), Scalar::computed(s.hi));
        let reason = Reason::WaysDisagree {
            figure: d.figure,
            one: d.ways.0,
            one_says: ends(d.ranges.0),
            other: d.ways.1,
            other_says: ends(d.ranges.1),
        };
        let measure = match d.figure {
            LoadFigure::Mass => Entry::LoadMass,
            LoadFigure::Ahead => Entry::LoadCgFromHeel,
            LoadFigure::Left => Entry::LoadCgLeft,
            LoadFigure::Above => Entry::LoadCgAbove,
        };
        grounds.push(ground(false, reason, Some(measure)));
    }
    if let (true, Some(grade)) = (scenario.drive.load_downhill, scenario.drive.ramp) {
        let limit = rules::LOAD_UPHILL_OVER.value;
        let (stated, steepest) = (grade > limit + 1e-12, grade + scenario.doubts.ramp.hi);
        if stated || steepest > limit + 1e-12 {
            let grade = Scalar::computed(if stated { grade } else { steepest });
            let reason = Reason::LoadDownhill { grade, limit: Scalar::computed(limit) };
            grounds.push(ground(stated, reason, Some(Entry::RampGrade)));
        }
    }
    for contradiction in contradictions {
        let measure = contradiction.suspects.first().copied();
        let reason = Reason::Contradicts { contradiction: contradiction.clone() };
        grounds.push(Ground { state: State::Hold, reason, measure });
    }
    for tested in scenario.closure.iter().filter(|t| !t.closes) {
        let measure = tested.suspects.first().map(|s| s.place);
        grounds.push(Ground {
            state: State::Hold,
            reason: Reason::SheetContradicts { tested: tested.clone() },
            measure,
        });
    }
    for (seat, step) in seats.iter().zip(steps) {
        grounds.extend(seat.as_ref().and_then(|seat| seat_ground(seat, step)));
    }
    let mut failed: Vec<(f64, Ground)> = steps.iter().flat_map(step_grounds).collect();
    failed.sort_by(|a, b| b.0.total_cmp(&a.0));
    grounds.extend(failed.into_iter().map(|(_, g)| g));
    grounds.sort_by_key(|g| g.state);
    // Where the load's centre is on the forks is measured on the load itself.
    for ground in grounds.iter_mut().filter(|g| !matches!(g.reason, Reason::WaysDisagree { .. })) {
        ground.measure = ground.measure.map(|place| Place { field: scenario.load.own(place.field), ..place });
    }
    if grounds.is_empty() {
        grounds.push(within(plate, steps));
    }
    let governing = grounds.remove(0);
    Verdict { state: governing.state, governing, others: grounds }
}

/// What fails on the blades.
fn blade_grounds(forks: &forks::Outcome) -> Vec<Ground> {
    let mut grounds = Vec::new();
    let beyond =
        |stated: Scalar, worst: Scalar| (stated < Scalar::ZERO, if stated < Scalar::ZERO { stated } else { worst });
    let (as_stated, tips) = beyond(forks.to_tips, forks.to_tips_worst);
    if tips < Scalar::ZERO {
        let reason = Reason::BeyondTips { beyond: Scalar::computed(-tips.get()) };
        grounds.push(ground(as_stated, reason, Some(Entry::LoadCgFromHeel)));
    }
    let (as_stated, edge) = beyond(forks.to_edge, forks.to_edge_worst);
    if edge < Scalar::ZERO {
        let reason = Reason::BesideForks { beyond: Scalar::computed(-edge.get()) };
        grounds.push(ground(as_stated, reason, Some(Entry::LoadCgLeft)));
    }
    if !forks.bears_worst() {
        let stated = !forks.bears();
        let lies = |a: &Arm| if stated { a.bearing } else { a.bearing_worst };
        if let Some(arm) = forks.arms.iter().min_by_key(|a| lies(a)) {
            let reason = Reason::OffBlade {
                fork: arm.fork,
                lacks: Scalar::computed(forks.bearing_asked.get() - lies(arm).get()),
            };
            grounds.push(ground(stated, reason, Some(Entry::Offset)));
        }
    }
    if let (true, Some(wear)) = (forks.worn_out(), forks.wear) {
        grounds.push(ground(true, Reason::ForkWorn { wear, limit: forks.wear_limit }, None));
    }
    if let (true, Some((length, limit))) = (forks.too_long(), forks.extension) {
        grounds.push(ground(true, Reason::ExtensionTooLong { length, limit }, None));
    }
    // Of the two forks the one that is further over.
    let over = forks.arms.iter().filter(|a| !a.holds_worst()).max_by_key(|a| (!a.holds(), a.part_worst));
    if let (Some(arm), Some((allowed, allowed_mass))) = (over, over.and_then(|a| a.allowed.zip(a.allowed_mass))) {
        let stated = !arm.holds();
        let (moment, carries) = if stated { (arm.moment, arm.carries) } else { (arm.moment_worst, arm.carries_worst) };
        let reason = Reason::ForkOver { fork: arm.fork, moment, allowed, carries, allowed_mass };
        grounds.push(ground(stated, reason, Some(Entry::LoadMass)));
    }
    if !forks.reaches_worst() {
        let stated = !forks.reaches();
        let reach = if stated { forks.reach } else { forks.reach_worst };
        let reason = Reason::ShortReach { reach, asked: forks.reach_asked };
        grounds.push(ground(stated, reason, Some(Entry::HeelGap)));
    }
    grounds
}

/// What the load does on the blades in one step: as stated before at the worst, toppling before sliding.
fn seat_ground(seat: &Seat, step: &Step) -> Option<Ground> {
    let c = Scalar::computed;
    let pose = step.stance.pose;
    let (lift, tilt_deg) = (c(pose.lift), c(pose.tilt.to_degrees()));
    let mut found: Vec<Ground> = Vec::new();
    for case in &seat.cases {
        for t in case.topple.iter().filter(|t| t.margin.worst < 0.0) {
            let stated = t.margin.nominal < 0.0;
            let beyond = c(-if stated { t.margin.nominal } else { t.margin.worst });
            let reason = Reason::Topples { step: step.id, event: case.event, over: t.over, beyond, lift, tilt_deg };
            let measure = if t.over == Over::Ahead { Entry::LoadCgFromHeel } else { Entry::LoadCgLeft };
            found.push(ground(stated, reason, Some(measure)));
        }
        if case.asked.worst > case.friction.lo {
            let stated = case.asked.nominal > case.friction.nominal;
            let (asked, friction) =
                if stated { (case.asked.nominal, case.friction.nominal) } else { (case.asked.worst, case.friction.lo) };
            let (asked, friction) = (c(asked), c(friction));
            let reason = Reason::Slides { step: step.id, event: case.event, asked, friction, lift, tilt_deg };
            found.push(ground(stated, reason, Some(Entry::Underside)));
        }
    }
    found.sort_by_key(|g| g.state);
    found.into_iter().next()
}

fn ground(as_stated: bool, reason: Reason, measure: Option<Entry>) -> Ground {
    if as_stated {
        Ground { state: State::NoGo, reason, measure: None }
    } else {
        Ground { state: State::Hold, reason, measure: measure.map(Place::from) }
    }
}

/// What fails in one step: of the lines that cross and the slopes not stood, the one with the
/// greatest share, as stated before at the worst corner.
fn step_grounds(step: &Step) -> Option<(f64, Ground)> {
    let c = Scalar::computed;
    let pose = step.stance.pose;
    let (lift, tilt_deg) = (c(pose.lift), c(pose.tilt.to_degrees()));
    let id = step.id;
    let tips = step.standing.iter().filter(|s| !s.stands_worst()).map(|s| {
        let stated = !s.stands();
        let distance = step.distance(s.line.id);
        let (share, beyond) =
            if stated { (s.share.nominal, distance.nominal) } else { (s.share.worst, distance.worst) };
        let reason = Reason::Tips { step: id, line: s.line.id, beyond: c((-beyond).max(0.0)), lift, tilt_deg };
        (stated, share, reason)
    });
    let slopes = step.tests.iter().filter(|t| !t.passes_worst()).map(|t| {
        let stated = !t.passes();
        let reach = step.stood(t.line);
        let (share, stood) = if stated { (t.share.nominal, reach.nominal) } else { (t.share.worst, reach.worst) };
        let stood = c(stood.unwrap_or(t.asked));
        let reason = Reason::Slope { step: id, test: t.test, line: t.line, stood, asked: c(t.asked), lift, tilt_deg };
        (stated, share, reason)
    });
    // What is not kept as stated counts as stated, whatever happens at the worst.
    let short = |s: &&Standing| (s.stands_worst() && !step.keeps_worst(s)) || (s.stands() && !step.keeps(s));
    let stays = step.standing.iter().filter(short).map(|s| {
        let stated = !step.keeps(s);
        let share = if stated { s.share.nominal } else { s.share.worst };
        let (line, shown) = (s.line.id, c(share));
        let reason = Reason::Reserve { step: id, line, share: shown, allowed: c(step.allowed), lift, tilt_deg };
        (stated, share / step.allowed, reason)
    });
    // Tipping as it stands is plainer than a slope not stood: it comes first where both fail.
    let all = tips.chain(slopes).chain(stays);
    let worst = all.fold(None, |best: Option<(bool, f64, Reason)>, next| match best {
        Some(b) if b.0 && !next.0 => Some(b),
        Some(b) if (b.0 || !next.0) && (matches!(b.2, Reason::Tips { .. }) || b.1 >= next.1) => Some(b),
        _ => Some(next),
    });
    let (stated, share, reason) = worst?;
    // Which figure to measure is found out for the reason that governs alone: see `gain`.
    Some((share, ground(stated, reason, None)))
}

fn within(plate: &plate::Outcome, steps: &[Step]) -> Ground {
    let tightest =
        steps.iter().map(|s| (s.id, s.used().worst)).fold((StepId::TakeUp, 0.0), |a, b| if b.1 > a.1 { b } else { a });
    let reason = Reason::Within {
        step: tightest.0,
        share: Scalar::computed(tightest.1),
        mass: plate.need.mass_worst,
        allowed: plate.allowed.unwrap_or(Scalar::ZERO),
    };
    Ground { state: State::Go, reason, measure: None }
}

#[cfg(test)]
mod tests;
