//! How one tipping line fares in a step, as the drawings mark it: read from the report, not reckoned.

use super::figures::{length, percent, rounded_length};
use super::labels::Labels;
use standfast_core::report::{LineReport, StepReport, TestReport};
use standfast_core::support::LineId;
use standfast_core::units::{Rounding, System};

/// How a line fares, worst first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fares {
    /// The line of action is past it, or on it.
    Past,
    /// It stands, but not on the slope that is asked.
    Short,
    /// As stated it does, at the worst corner it does not.
    Doubtful,
    /// It does over the whole range.
    Clear,
}

/// One line's margin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Margin<'a> {
    /// The line.
    pub line: &'a LineReport,
    /// How it fares.
    pub fares: Fares,
    test: Option<&'a TestReport>,
    /// Share that may be used, where a reserve is asked that is not kept.
    allowed: Option<f64>,
}

impl<'a> Margin<'a> {
    /// Of one line of a step; none where the report has no such line.
    pub fn of(step: &'a StepReport, id: LineId) -> Option<Self> {
        let line = step.lines.iter().find(|l| l.id == id)?;
        let tests = || step.tests.iter().filter(|t| t.line == id);
        let distance = line.distance;
        let allowed = step.share_allowed.get();
        let over = |share: f64| allowed < 1.0 && share > allowed;
        let (short, may) = (over(line.share.nominal.get()), over(line.share.worst.get()));
        let failed = tests().find(|t| !t.passes);
        let doubtful = tests().find(|t| !t.passes_worst);
        let fares = if distance.nominal.get() <= 0.0 {
            Fares::Past
        } else if failed.is_some() || short {
            Fares::Short
        } else if distance.worst.get() <= 0.0 || doubtful.is_some() || may {
            Fares::Doubtful
        } else {
            Fares::Clear
        };
        Some(Self { line, fares, test: failed.or(doubtful), allowed: (short || may).then_some(allowed) })
    }

    /// The line that matters most: the one that fares worst, and of those the nearest.
    pub fn tightest(step: &'a StepReport) -> Option<Self> {
        let all = step.lines.iter().filter_map(|l| Self::of(step, l.id));
        all.min_by_key(|m| (m.fares, m.line.distance.nominal))
    }

    /// The distance in words: rounded down where it is in hand, up where it is past the line.
    pub fn words(&self, system: System, labels: &Labels) -> String {
        distance_words(self.line.distance.nominal.get(), system, labels)
    }

    /// The distance at the worst corner in words; never more than as stated. The corner is the one
    /// with the least moment: with less weight in all, the line of action may even stand farther in.
    pub fn worst_words(&self, system: System, labels: &Labels) -> String {
        let worst = self.line.distance.worst.min(self.line.distance.nominal).get();
        if rounded_length(worst, system, Rounding::Down) < 0.0 {
            format!("{} {}", labels.worst, distance_words(worst, system, labels))
        } else {
            format!("{} {}", labels.worst, length(worst, system, Rounding::Down))
        }
    }

    /// The slope that it does not stand, or the reserve that it does not keep, in words: nothing where
    /// it does all that is asked, nor where it would not even stand as it is.
    pub fn slope_words(&self, labels: &Labels) -> Option<String> {
        if let Some(allowed) = self.allowed.filter(|_| matches!(self.fares, Fares::Short | Fares::Doubtful)) {
            return Some(self.reserve_words(allowed, labels));
        }
        let test = self.test.filter(|_| matches!(self.fares, Fares::Short | Fares::Doubtful))?;
        let stood = if test.passes { test.stood_worst } else { test.stood }.filter(|s| s.get() > 0.0)?;
        let said = format!(
            "{} {} {} {} {}",
            labels.stands,
            percent(stood.get(), Rounding::Down),
            labels.of,
            percent(test.asked.get(), Rounding::Up),
            labels.asked
        );
        Some(if test.passes { format!("{} {said}", labels.worst) } else { said })
    }
}

impl Margin<'_> {
    /// The share used against the one that may be.
    fn reserve_words(&self, allowed: f64, labels: &Labels) -> String {
        let share = self.line.share;
        let doubtful = share.nominal.get() <= allowed;
        let used = if doubtful { share.worst } else { share.nominal };
        let (used, allowed) = (percent(used.get(), Rounding::Up), percent(allowed, Rounding::Down));
        let said = format!("{} {used} {} {allowed}", labels.uses, labels.of);
        if doubtful { format!("{} {said}", labels.worst) } else { said }
    }
}

/// A distance inside (positive) or past a line, in words.
pub fn distance_words(metres: f64, system: System, labels: &Labels) -> String {
    if rounded_length(metres, system, Rounding::Down) < 0.0 {
        format!("{} {}", length(-metres, system, Rounding::Up), labels.past)
    } else {
        format!("{} {}", length(metres, system, Rounding::Down), labels.in_hand)
    }
}

/// A line's name.
pub const fn line_name(id: LineId, labels: &Labels) -> &'static str {
    match id {
        LineId::Front => labels.front_line,
        LineId::Left => labels.left_line,
        LineId::Right => labels.right_line,
    }
}

/// A line's name in test ids.
pub const fn line_key(id: LineId) -> &'static str {
    match id {
        LineId::Front => "front",
        LineId::Left => "left",
        LineId::Right => "right",
    }
}

#[cfg(test)]
mod tests {
    use super::super::labels::ENGLISH;
    use super::super::samples;
    use super::*;
    use standfast_core::scalar::Scalar;

    #[test]
    fn words_round_to_the_cautious_side() {
        let say = |m| distance_words(m, System::Metric, &ENGLISH);
        assert_eq!(say(0.318_9), "318 mm in hand");
        assert_eq!(say(0.000_4), "0 mm in hand");
        assert_eq!(say(-0.000_4), "1 mm past the line");
        assert_eq!(say(-0.036_2), "37 mm past the line");
        assert_eq!(distance_words(-0.036_2, System::Us, &ENGLISH), "1.5 in past the line");
    }

    #[test]
    fn a_line_is_clear_only_where_the_step_passes() {
        let mut seen = [Fares::Past, Fares::Short, Fares::Doubtful, Fares::Clear].map(|f| (f, 0));
        for step in samples::all() {
            let fares: Vec<Fares> =
                step.lines.iter().filter_map(|l| Margin::of(&step, l.id)).map(|m| m.fares).collect();
            assert_eq!(fares.len(), 3);
            assert_eq!(fares.iter().all(|f| *f == Fares::Clear), step.passes && step.passes_worst);
            assert_eq!(fares.iter().all(|f| *f >= Fares::Doubtful), step.passes);
            for (kind, count) in &mut seen {
                *count += fares.iter().filter(|f| *f == kind).count();
            }
        }
        assert!(seen.iter().all(|(_, count)| *count > 0), "the samples do not show all: {seen:?}");
    }

    /// With less weight in all, the corner with the least moment may have the greater distance.
    #[test]
    fn the_worst_is_never_said_to_be_better() {
        let mut step = samples::all().swap_remove(0);
        for (stated, worst, said) in [(0.9574, 0.9591, "worst 957 mm"), (-0.0362, 0.5, "worst 37 mm past the line")] {
            step.lines[0].distance.nominal = Scalar::computed(stated);
            step.lines[0].distance.worst = Scalar::computed(worst);
            let margin = Margin::of(&step, step.lines[0].id).expect("there");
            assert_eq!(margin.worst_words(System::Metric, &ENGLISH), said);
        }
    }

    #[test]
    fn the_tightest_line_fares_worst() {
        for step in samples::all() {
            let tightest = Margin::tightest(&step).expect("three lines");
            for line in &step.lines {
                let other = Margin::of(&step, line.id).expect("there");
                assert!(tightest.fares <= other.fares);
            }
        }
    }

    #[test]
    fn a_slope_not_stood_is_told_with_both_figures() {
        let told = samples::all()
            .iter()
            .flat_map(|s| s.lines.iter().filter_map(|l| Margin::of(s, l.id)).collect::<Vec<_>>())
            .filter(|m| m.fares == Fares::Short)
            .filter_map(|m| m.slope_words(&ENGLISH))
            .next()
            .expect("one sample falls short");
        assert!(told.starts_with("stands ") && told.ends_with("% asked"), "{told}");
    }
}
