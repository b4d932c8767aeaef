//! The sheet's facts in words, for the page and for a text.

use crate::answer::Answer;
use crate::figures::{Printer, quantity_of};
use crate::sentences::{gap_said, name_of};
use crate::words::{fill, words};
use standfast_core::document::Wheels;
use standfast_core::request::{Fact, Part, Request, Value, What};
use standfast_core::scalar::Scalar;
use standfast_core::units::Rounding;
use std::fmt::Write;

/// A fact in words.
pub struct Line {
    pub name: String,
    pub value: Option<String>,
    /// How it is known.
    pub known: Option<&'static str>,
}

/// Facts about one thing.
pub struct PartLines {
    pub name: &'static str,
    pub lines: Vec<Line>,
}

/// The whole sheet.
pub struct Sheet {
    pub parts: Vec<PartLines>,
    /// The plate's rows.
    pub rows: Vec<String>,
    /// What they do not cover; none where that cannot be said yet.
    pub gaps: Option<Vec<String>>,
    pub estimate: String,
    /// How much is not entered.
    pub missing: Option<String>,
}

impl Sheet {
    pub fn of(answer: &Answer, print: Printer) -> Self {
        let w = &words().request;
        let request = Request::of(&answer.document, answer.assessment.as_ref());
        let part = |(part, facts): &(Part, Vec<Fact>)| PartLines {
            name: (w.part)(*part),
            lines: facts.iter().map(|f| line(f, print)).collect(),
        };
        let row = |r: &[Option<Scalar>; 3]| {
            let said = |k: usize, way: fn(Printer, f64) -> String| {
                r[k].map_or_else(|| w.blank.to_owned(), |v| way(print, v.get()))
            };
            let height = said(0, |p, v| p.height(v));
            let centre = said(1, |p, v| p.length(v, Rounding::Nearest));
            let mass = said(2, |p, v| p.mass(v, Rounding::Down));
            format!("{height} \u{b7} {centre} \u{b7} {mass}")
        };
        let missing = request.missing();
        let estimate = request.estimate.map(|e| print.mass(e.get(), Rounding::Down));
        Self {
            parts: request.parts.iter().map(part).collect(),
            rows: request.rows.iter().flatten().map(row).collect(),
            gaps: request.gaps.map(|list| list.iter().map(|f| gap_said(f, answer, print)).collect()),
            estimate: estimate.map_or_else(|| w.no_estimate.to_owned(), |e| fill(w.estimate_is, &[("estimate", &e)])),
            missing: (missing > 0).then(|| w.missing.of(missing)),
        }
    }

    /// What the plate does not cover, or that it covers it, or that this cannot be said.
    pub fn gaps_said(&self) -> Vec<String> {
        let w = &words().request;
        match &self.gaps {
            None => vec![w.not_yet.to_owned()],
            Some(list) if list.is_empty() => vec![w.covered.to_owned()],
            Some(list) => list.clone(),
        }
    }

    /// As a plain text: what is not entered leaves room to write it in.
    pub fn text(&self) -> String {
        let w = &words().request;
        let mut text = format!("{}\n\n{}\n", w.heading, w.intro);
        let heading = |text: &mut String, name: &str| {
            let _ = write!(text, "\n{name}\n");
        };
        let line = |text: &mut String, line: &Line| {
            let value = line.value.as_deref().unwrap_or(w.blank);
            let known = line.known.map(|k| format!(" ({k})")).unwrap_or_default();
            let _ = writeln!(text, "  {}: {value}{known}", line.name);
        };
        for part in &self.parts {
            heading(&mut text, part.name);
            part.lines.iter().for_each(|l| line(&mut text, l));
        }
        heading(&mut text, if self.rows.is_empty() { w.no_plate } else { w.rows });
        self.rows.iter().for_each(|r| _ = writeln!(text, "  {r}"));
        heading(&mut text, w.not_covered);
        self.gaps_said().iter().for_each(|g| _ = writeln!(text, "  {g}"));
        heading(&mut text, w.estimate);
        let _ = writeln!(text, "  {}", self.estimate);
        heading(&mut text, w.asked);
        w.asked_list.iter().enumerate().for_each(|(k, a)| _ = writeln!(text, "  {}. {a}", k + 1));
        heading(&mut text, w.from);
        w.from_list.iter().for_each(|name| _ = writeln!(text, "  {name}: {}", w.blank));
        let _ = write!(text, "\n{}\n{}\n", w.standing, fill(w.program, &[("version", env!("CARGO_PKG_VERSION"))]));
        text
    }
}

fn line(fact: &Fact, print: Printer) -> Line {
    let (w, p) = (&words().request, &words().plate);
    let name = match fact.what {
        What::At(place) => name_of(place),
        what => (w.what)(what).to_owned(),
    };
    let value = fact.value.as_ref().map(|value| match value {
        Value::Number(n) => number(fact.what, n.get(), print),
        Value::Text(text) => text.clone(),
        Value::Wheels(Wheels::Three) => w.three.to_owned(),
        Value::Wheels(Wheels::Four) => w.four.to_owned(),
        Value::Tyres(tyres) => (p.tyres)(*tyres).to_owned(),
        Value::FrontEnd(of) => (w.front_end)(*of).to_owned(),
        Value::Is(so) => if *so { w.yes } else { w.no }.to_owned(),
    });
    let known = match (fact.what, fact.by) {
        (What::At(place), Some(by)) => Some((words().known.by)(by, quantity_of(place)).0),
        _ => None,
    };
    Line { name, value, known }
}

/// What is wanted is rounded up, what is entered as it is.
fn number(what: What, value: f64, print: Printer) -> String {
    match what {
        What::At(place) => print.at(place, value, Rounding::Nearest),
        What::Mass => print.mass(value, Rounding::Up),
        What::Height => print.height_up(value),
        _ => print.length(value, Rounding::Up),
    }
}
