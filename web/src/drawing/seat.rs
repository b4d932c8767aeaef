//! How the load fares on the blades as a body of its own: read from the report, not reckoned.

use super::figures::{length, number, rounded_length};
use super::labels::Labels;
use super::margin::Fares;
use standfast_core::report::{CaseReport, Figures, SeatReport};
use standfast_core::scalar::Scalar;
use standfast_core::seat::{Event, Over};
use standfast_core::units::{Rounding, System};

/// One edge that the load may topple over, in one event.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// In which event.
    pub event: Event,
    /// Over which edge.
    pub over: Over,
    /// How far inside it the line of action meets the blades, m; negative beyond it.
    pub margin: Figures,
    /// How it fares.
    pub fares: Fares,
}

/// Every edge in every event.
pub fn edges(seat: &SeatReport) -> impl Iterator<Item = Edge> + '_ {
    seat.cases.iter().flat_map(|case| {
        case.topple.iter().map(|t| {
            let fares = standing(t.margin.nominal.get() >= 0.0, t.margin.worst.get() >= 0.0);
            Edge { event: case.event, over: t.over, margin: t.margin, fares }
        })
    })
}

/// The edge that matters most: the one that fares worst, and of those the nearest at the worst.
pub fn tightest(seat: &SeatReport) -> Option<Edge> {
    edges(seat).min_by_key(|e| (e.fares, e.margin.worst.min(e.margin.nominal)))
}

/// The edges to draw: the tightest, and of each other side where it does not hold the worst.
pub fn shown(seat: &SeatReport) -> Vec<Edge> {
    let mut shown: Vec<Edge> = tightest(seat).into_iter().collect();
    let mut others: Vec<Edge> = edges(seat).filter(|e| e.fares != Fares::Clear).collect();
    others.sort_by_key(|e| (e.fares, e.margin.worst));
    for edge in others {
        if shown.iter().all(|s| s.over != edge.over) {
            shown.push(edge);
        }
    }
    shown
}

/// How the load fares against toppling as a whole. Where nothing carries it, it falls.
pub fn fares(seat: &SeatReport) -> Fares {
    edges(seat).map(|e| e.fares).min().unwrap_or(Fares::Past)
}

/// The event in which it slides, and how it fares: nothing where friction holds it at the worst.
pub fn slides(seat: &SeatReport) -> Option<(Fares, &CaseReport)> {
    let each = seat.cases.iter().map(|c| (sliding(c), c)).filter(|(fares, _)| *fares != Fares::Clear);
    each.min_by_key(|(fares, c)| (*fares, Scalar::computed(c.friction_worst.get() - c.asked.worst.get())))
}

/// How friction fares in one event.
pub fn sliding(case: &CaseReport) -> Fares {
    standing(case.asked.nominal <= case.friction, case.asked.worst <= case.friction_worst)
}

const fn standing(as_stated: bool, at_worst: bool) -> Fares {
    match (as_stated, at_worst) {
        (false, _) => Fares::Past,
        (true, false) => Fares::Doubtful,
        (true, true) => Fares::Clear,
    }
}

impl Edge {
    /// The distance as stated, and whether it is in hand or past the edge, in words.
    pub fn stated(&self, system: System, labels: &Labels) -> (String, &'static str) {
        figure(self.margin.nominal.get(), system, labels)
    }

    /// The same at the worst, never more than as stated; and whether that is on the other side of the edge.
    pub fn worst(&self, system: System, labels: &Labels) -> ((String, &'static str), bool) {
        let worst = figure(self.margin.worst.min(self.margin.nominal).get(), system, labels);
        let differs = worst.1 != self.stated(system, labels).1;
        (worst, differs)
    }

    /// The distance as stated in words.
    pub fn words(&self, system: System, labels: &Labels) -> String {
        let (length, state) = self.stated(system, labels);
        format!("{length} {state}")
    }

    /// The distance at the worst in words.
    pub fn worst_words(&self, system: System, labels: &Labels) -> String {
        let ((length, state), _) = self.worst(system, labels);
        format!("{} {length} {state}", labels.worst)
    }

    /// Over which edge, and in which event where it is not standing.
    pub fn name(&self, labels: &Labels) -> &'static str {
        match (self.event, self.over) {
            (Event::Braking, Over::Ahead) => labels.braking,
            (_, over) => over_name(over, labels),
        }
    }
}

/// A distance inside (positive) or beyond an edge, in words: rounded to the cautious side.
fn figure(metres: f64, system: System, labels: &Labels) -> (String, &'static str) {
    if rounded_length(metres, system, Rounding::Down) < 0.0 {
        (length(-metres, system, Rounding::Up), labels.past_edge)
    } else {
        (length(metres, system, Rounding::Down), labels.in_hand)
    }
}

/// The way that a load topples.
pub const fn over_name(over: Over, labels: &Labels) -> &'static str {
    match over {
        Over::Ahead => labels.ahead,
        Over::Left => labels.left,
        Over::Right => labels.right,
        Over::Heel => labels.back,
    }
}

/// An event's name.
pub const fn event_name(event: Event, labels: &Labels) -> &'static str {
    match event {
        Event::Standing => labels.standing,
        Event::Braking => labels.braking,
    }
}

/// Friction to the cautious side: asked up, there down.
pub fn friction_words(asked: Scalar, there: Scalar, labels: &Labels) -> (String, String) {
    (
        format!("{} {}", number(asked.get(), 2, Rounding::Up), labels.asked),
        format!("{} {}", number(there.get(), 2, Rounding::Down), labels.there),
    )
}

/// Toppling and sliding in words, for those who cannot see it; nothing for a load that hangs.
pub fn said(seat: &SeatReport, system: System, labels: &Labels) -> String {
    let Some(edge) = tightest(seat) else { return format!("{}: {}.", labels.load, labels.off_forks) };
    let (words, worst) = (edge.words(system, labels), edge.worst_words(system, labels));
    let mut said = format!("{}, {}: {words}, {worst}.", labels.load_topples, edge.name(labels));
    if let Some((fares, case)) = slides(seat) {
        let slides = if fares == Fares::Past { labels.slides } else { labels.may_slide };
        let (asked, there) = friction_words(case.asked.worst, case.friction_worst, labels);
        said += &format!(" {}, {}: {slides}, {asked}, {there}.", labels.load, event_name(case.event, labels));
    }
    said
}
