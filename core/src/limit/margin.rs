//! What a step has in hand of each thing that it must pass, at the worst corner.

use super::furthest::MOST;
use crate::bearing::Bearing;
use crate::field::Field;
use crate::platform::{self, Test};
use crate::scenario::Scenario;
use crate::seat::{Case, Seat};
use crate::stance::Stance;
use crate::statics::{Balanced, Pair};
use crate::step::{self, Demand, Step, StepId};
use crate::support::LineId;

/// A margin whose sign says what was decided, whatever rounding makes of it.
pub fn signed(margin: f64, held: bool) -> f64 {
    if held { margin.max(0.0) } else { margin.min(-f64::MIN_POSITIVE) }
}

const LINES: [LineId; 3] = [LineId::Front, LineId::Left, LineId::Right];

/// A line, and the platform test about it; none for standing as it is.
pub type Check = (LineId, Option<Test>);

/// What decides a step. Where the platform slopes are tried as it stands, on level ground, they ask more than
/// standing does.
pub fn checks(id: StepId, scenario: &Scenario) -> Vec<Check> {
    let standing = LINES.map(|line| (line, None));
    match id.demand(scenario) {
        Demand::Reserve(_) => standing.to_vec(),
        Demand::Platform([ahead, aside]) => {
            let tests = [(LineId::Front, Some(ahead)), (LineId::Left, Some(aside)), (LineId::Right, Some(aside))];
            if step::has_set_up(id) { tests.into_iter().chain(standing).collect() } else { tests.to_vec() }
        }
    }
}

/// The margin of standing about a line, with the reserve that is asked.
pub fn standing(stance: &Stance, line: LineId, moment: Pair, field: &Field, allowed: f64) -> f64 {
    let stands = moment.worst > platform::TIE;
    let margin = moment.worst - platform::TIE;
    if allowed >= 1.0 {
        return signed(margin, stands);
    }
    let balanced = Balanced::of(&stance.nominal, &stance.support.line(line), field);
    let kept = moment.worst - (1.0 - allowed) * balanced.holding;
    signed(margin.min(kept), stands && balanced.shares(moment).worst <= allowed)
}
/// The margin of a platform slope.
pub fn tested(moment: Pair) -> f64 {
    signed(moment.worst + platform::TIE, moment.worst >= -platform::TIE)
}

/// The margin of a load on the blades. One that lies on neither has left them.
pub fn seated(seat: &Seat) -> f64 {
    if seat.cases.is_empty() {
        return -1.0;
    }
    let case = |c: &Case| c.topple.iter().map(|t| t.margin.worst).fold(c.friction.lo - c.asked.worst, f64::min);
    signed(seat.cases.iter().map(case).fold(10.0, f64::min), seat.holds_worst())
}

/// A load that lies no wider than this on a blade is all but off it, m.
const OFF: f64 = 5e-7;

/// How much wider than that a load lies on both blades, wherever it may stand, m.
pub fn on_both(bearing: &Bearing) -> f64 {
    let lies = bearing.ends.iter().chain([&bearing.stated]);
    let widths =
        lies.flat_map(|l| [0, 1].map(|k| if l.strips[k].is_empty() { l.width[k].min(0.0) } else { l.width[k] }));
    widths.fold(f64::INFINITY, f64::min) - OFF
}

/// The margins of a step as it was worked out, in the order in which they are probed.
pub fn of_step(scenario: &Scenario, step: &Step, seat: Option<&Seat>) -> [f64; MOST] {
    let mut margins = [1.0; MOST];
    let checks = checks(step.id, scenario);
    for (slot, (line, test)) in margins.iter_mut().zip(&checks) {
        let k = *line as usize;
        *slot = match test {
            Some(_) => step.tests.get(k).map_or(-1.0, |t| tested(t.moment)),
            None => {
                let moment = step.standing[k].moment;
                standing(&step.stance, *line, moment, &step.field, step.allowed)
            }
        };
    }
    if let (Some(slot), Some(seat)) = (margins.get_mut(checks.len()), seat) {
        *slot = seated(seat);
    }
    margins
}
