//! A check for the log, and one of the log assessed again.

use crate::answer::Answer;
use crate::entries::Entries;
use crate::sentences::{Shown, reasons};
use standfast_core::book::{CheckRecord, Outcome};
use standfast_core::units::System;

/// The program's version.
pub const PROGRAM: &str = env!("CARGO_PKG_VERSION");

/// The check as it stands with its answer; none while there is no answer.
pub fn record(
    entries: &Entries,
    answer: &Answer,
    system: System,
    who: &str,
    at: String,
    id: String,
) -> Option<CheckRecord> {
    let assessment = answer.assessment.as_ref()?;
    let reason = reasons(answer, entries, system).into_iter().next()?.main;
    let used = answer.step(assessment.governing_step).map(|step| step.used.worst.get());
    Some(CheckRecord {
        id,
        at,
        who: who.trim().to_owned(),
        program: PROGRAM.to_owned(),
        of: entries.of.clone(),
        check: answer.document.clone(),
        outcome: Outcome { verdict: Some(assessment.verdict.state), reason, used },
    })
}

/// How what is said today stands to what was said then.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sameness {
    Same,
    /// The same verdict in other words, or with other figures.
    WordsDiffer,
    Differs,
    /// Nothing can be said today.
    NoVerdict,
}

/// What is said today of a check of the log.
#[derive(Clone, Debug, PartialEq)]
pub struct Again {
    pub shown: Shown,
    pub reason: String,
    pub used: Option<f64>,
    pub sameness: Sameness,
}

/// Assesses what was entered then.
pub fn again(record: &CheckRecord, system: System) -> Again {
    let entries = Entries::from_document(&record.check);
    let answer = Answer::of(&entries);
    let said = |system| reasons(&answer, &entries, system).into_iter().next().map(|s| s.main).unwrap_or_default();
    let state = answer.assessment.as_ref().map(|a| a.verdict.state);
    let used = answer.assessment.as_ref().and_then(|a| answer.step(a.governing_step)).map(|s| s.used.worst.get());
    // It may have been said in the other units then.
    let same_words = [System::Metric, System::Us].into_iter().any(|s| said(s) == record.outcome.reason);
    let percent = |used: Option<f64>| used.map(|u| (1000.0 * u).round() as i64);
    let sameness = match state {
        None => Sameness::NoVerdict,
        Some(_) if state != record.outcome.verdict => Sameness::Differs,
        Some(_) if same_words && percent(used) == percent(record.outcome.used) => Sameness::Same,
        Some(_) => Sameness::WordsDiffer,
    };
    Again { shown: Shown::of_state(state), reason: said(system), used, sameness }
}

/// A time as people read it: the day and the minute, where the check was made.
pub fn day_and_minute(at: &str) -> String {
    match (at.get(..10), at.get(11..16)) {
        (Some(day), Some(minute)) => format!("{day} {minute}"),
        _ => at.to_owned(),
    }
}

/// A time with its offset from UTC, in minutes, as ISO 8601 has it.
fn iso([year, month, day, hour, minute, second]: [u32; 6], offset: i32) -> String {
    let (sign, off) = (if offset < 0 { '-' } else { '+' }, offset.unsigned_abs());
    let (hours, minutes) = (off / 60, off % 60);
    format!("{year:04}-{month:02}-{day:02}T{hour:02}:{minute:02}:{second:02}{sign}{hours:02}:{minutes:02}")
}

/// The time now.
#[cfg(target_arch = "wasm32")]
pub fn now() -> String {
    let d = web_sys::js_sys::Date::new_0();
    let parts = [d.get_full_year(), d.get_month() + 1, d.get_date(), d.get_hours(), d.get_minutes(), d.get_seconds()];
    // The browser counts the other way: so many minutes behind UTC.
    iso(parts, -(d.get_timezone_offset() as i32))
}

/// Outside a browser there is no clock.
#[cfg(not(target_arch = "wasm32"))]
pub fn now() -> String {
    iso([1970, 1, 1, 0, 0, 0], 0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::example;
    use standfast_core::report::assess;
    use standfast_core::verdict::State;

    fn logged(text: &str, system: System) -> CheckRecord {
        let entries = Entries::from_document(&example::document(text));
        let at = "2026-05-14T09:30:00+02:00".to_owned();
        record(&entries, &Answer::of(&entries), system, " Ann ", at, "a".to_owned()).expect("an answer")
    }

    #[test]
    fn times_are_those_of_the_standard() {
        assert_eq!(iso([2026, 5, 4, 9, 3, 7], 120), "2026-05-04T09:03:07+02:00");
        assert_eq!(iso([2026, 12, 31, 23, 59, 59], -210), "2026-12-31T23:59:59-03:30");
        assert_eq!(iso([2026, 1, 1, 0, 0, 0], 0), "2026-01-01T00:00:00+00:00");
        assert_eq!(day_and_minute("2026-05-04T09:03:07+02:00"), "2026-05-04 09:03");
        assert_eq!(day_and_minute("yesterday \u{e4}\u{e4}\u{e4}\u{e4}"), "yesterday \u{e4}\u{e4}\u{e4}\u{e4}");
    }

    /// What is kept is what was assessed, and assessed again it says the same, in whichever units.
    #[test]
    fn what_is_kept_is_frozen_and_says_the_same_again() {
        for text in [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD] {
            for system in [System::Metric, System::Us] {
                let kept = logged(text, system);
                assert_eq!((kept.check.clone(), kept.who.as_str()), (example::document(text), "Ann"));
                let alone = assess(&kept.check).assessment.expect("complete");
                assert_eq!(kept.outcome.verdict, Some(alone.verdict.state));
                let again = again(&kept, System::Metric);
                assert_eq!(again.sameness, Sameness::Same, "{again:?} {:?}", kept.outcome);
                assert_eq!(again.shown, Shown::of_state(kept.outcome.verdict));
            }
        }
    }

    #[test]
    fn another_verdict_other_words_or_none_are_told_apart() {
        let kept = logged(example::THREE_WHEEL, System::Metric);
        let state = kept.outcome.verdict.expect("a verdict");
        let mut other = kept.clone();
        other.outcome.verdict = Some(if state == State::Go { State::NoGo } else { State::Go });
        assert_eq!(again(&other, System::Us).sameness, Sameness::Differs);
        let mut words = kept.clone();
        words.outcome.reason.push('!');
        assert_eq!(again(&words, System::Us).sameness, Sameness::WordsDiffer);
        let mut figures = kept.clone();
        figures.outcome.used = figures.outcome.used.map(|u| u + 0.01);
        assert_eq!(again(&figures, System::Us).sameness, Sameness::WordsDiffer);
        let mut none = kept;
        none.check.load.mass_kg = None;
        assert_eq!(again(&none, System::Metric).sameness, Sameness::NoVerdict);
    }

    #[test]
    fn without_an_answer_there_is_nothing_to_keep() {
        let entries = Entries::blank();
        assert_eq!(record(&entries, &Answer::of(&entries), System::Metric, "", now(), String::new()), None);
    }
}
