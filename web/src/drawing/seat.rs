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

/// The edge that matters most: the one that fares worst, and of those the nearest.
pub fn tightest(seat: &SeatReport) -> Option<Edge> {
    edges(seat).min_by_key(|e| (e.fares, e.margin.nominal, e.margin.worst))
}

/// The edges to draw: the tightest, and of each other side where it does not hold the worst.
pub fn shown(seat: &SeatReport) -> Vec<Edge> {
    let mut shown: Vec<Edge> = tightest(seat).into_iter().collect();
    let mut others: Vec<Edge> = edges(seat).filter(|e| e.fares != Fares::Clear).collect();
    others.sort_by_key(|e| (e.fares, e.margin.nominal));
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
        Event::Cornering => labels.cornering,
        Event::OnSlope => labels.on_slope,
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

#[cfg(test)]
mod tests {
    use super::super::labels::ENGLISH;
    use super::super::samples;
    use super::*;
    use standfast_core::report::StepReport;

    fn seats() -> Vec<SeatReport> {
        samples::all().into_iter().filter_map(|s| s.seat).collect()
    }

    /// The report's own word on whether it holds is what the colours say.
    #[test]
    fn an_event_is_clear_only_where_the_report_says_so() {
        let mut seen = [Fares::Past, Fares::Doubtful, Fares::Clear].map(|f| (f, 0));
        for seat in seats() {
            for case in &seat.cases {
                let each = edges(&seat).filter(|e| e.event == case.event).map(|e| e.fares);
                let worst = each.chain([sliding(case)]).min().expect("edges");
                assert_eq!(worst == Fares::Clear, case.passes && case.passes_worst);
                assert_eq!(worst == Fares::Past, !case.passes);
            }
            seen.iter_mut().filter(|(f, _)| *f == fares(&seat)).for_each(|(_, n)| *n += 1);
        }
        assert!(seen.iter().all(|(_, n)| *n > 0), "the samples do not show all: {seen:?}");
    }

    #[test]
    fn the_tightest_edge_is_shown_first_and_every_one_that_topples() {
        for seat in seats() {
            let shown = shown(&seat);
            assert_eq!(shown.first().copied(), tightest(&seat));
            for edge in edges(&seat) {
                assert!(tightest(&seat).is_some_and(|t| t.fares <= edge.fares));
                let told = shown.iter().any(|s| s.over == edge.over && s.fares <= edge.fares);
                assert!(edge.fares == Fares::Clear || told, "{edge:?}");
            }
        }
    }

    #[test]
    fn words_round_to_the_cautious_side_and_the_worst_is_never_better() {
        let edge = |nominal, worst| {
            let margin = Figures { nominal: Scalar::computed(nominal), worst: Scalar::computed(worst) };
            Edge { event: Event::Braking, over: Over::Ahead, margin, fares: Fares::Clear }
        };
        let say = |e: &Edge| (e.words(System::Metric, &ENGLISH), e.worst_words(System::Metric, &ENGLISH));
        let pair = |a: &str, b: &str| (a.to_owned(), b.to_owned());
        assert_eq!(say(&edge(0.2699, 0.2469)), pair("269 mm in hand", "worst 246 mm in hand"));
        assert_eq!(say(&edge(0.0101, -0.0121)), pair("10 mm in hand", "worst 13 mm past edge"));
        assert_eq!(say(&edge(-0.0004, 0.5)), pair("1 mm past edge", "worst 1 mm past edge"));
        assert_eq!(edge(0.1, 0.1).name(&ENGLISH), "braking");
        let friction = friction_words(Scalar::computed(0.1571), Scalar::computed(0.1599), &ENGLISH);
        assert_eq!(friction, pair("0.16 asked", "0.15 there"));
    }

    #[test]
    fn what_topples_slips_or_lies_on_nothing_is_said() {
        let said_of = |name: &str| {
            let (_, document) = samples::documents().into_iter().find(|(n, _)| *n == name).expect("a sample");
            let steps: Vec<StepReport> = samples::steps(&document);
            let seats = steps.iter().filter_map(|s| s.seat.as_ref());
            seats.map(|s| said(s, System::Metric, &ENGLISH)).collect::<String>()
        };
        assert!(said_of("topples-ahead").contains("load on the forks, ahead: 131 mm past edge"));
        assert!(said_of("topples-left").contains("load on the forks, left: 30 mm past edge"));
        assert!(said_of("topples-braking").contains("load on the forks, braking: 1"));
        assert!(said_of("slides").contains("load, braking: may slip, 0.17 asked, 0.15 there."));
        assert_eq!(said_of("hanging"), "");
        let mut nothing = seats().swap_remove(0);
        nothing.cases.clear();
        assert_eq!(
            (said(&nothing, System::Metric, &ENGLISH), fares(&nothing)),
            ("load: off forks.".to_owned(), Fares::Past)
        );
    }
}
