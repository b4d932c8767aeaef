//! Squared paper in place of a photo: a sheet of squares, its scale from the length of one.

use super::glass::Pixel;
use super::points::dot;
use crate::entries::{Entries, Ground, TraceEntry};
use standfast_core::number::{self, NotRead};
use standfast_core::place::Field;
use standfast_core::units::{Quantity, System};

/// The sheet's size, pixels.
pub const SHEET: Pixel = (1200.0, 900.0);
/// The side of one square, pixels.
pub const SQUARE: f64 = 50.0;
/// So many squares lie between the two marks that give the scale.
pub const BETWEEN: f64 = 10.0;
/// Those marks: on two crossings near the lower edge.
const MARKS: [Pixel; 2] = [(50.0, 850.0), (550.0, 850.0)];

/// Why a length of a square is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// Not a number as it stands.
    NotRead(NotRead),
    /// Out of the range of a square's length.
    Range,
}

/// The range of a square's length, m: between two marks it must be a length that can be entered.
pub fn range() -> (f64, f64) {
    let row = Field::TraceScale.row();
    (row.min / BETWEEN, row.max / BETWEEN)
}

/// Reads the length of a square, in the unit lengths are typed in.
///
/// # Errors
/// [`Refused`] where it is no length that a square may have.
pub fn read(text: &str, system: System) -> Result<f64, Refused> {
    let unit = Quantity::Length.unit(system);
    let length = number::read(text, unit).map(|v| unit.to_document(v)).map_err(Refused::NotRead)?;
    let (min, max) = range();
    if (min..=max).contains(&length) { Ok(length) } else { Err(Refused::Range) }
}

/// The entries with squared paper to trace on, one square so long in m. What was traced on other
/// ground goes: it lay elsewhere. On the same paper it stays.
pub fn laid(entries: &Entries, square: f64, system: System) -> Entries {
    let mut next = entries.clone();
    let trace = next.trace.get_or_insert_default();
    if trace.ground != Ground::Paper {
        let (view, truck) = (trace.view, trace.truck);
        *trace = TraceEntry { view, truck, ground: Ground::Paper, ..TraceEntry::default() };
    }
    trace.picture = Some(dot(SHEET));
    trace.scale = MARKS.map(dot).to_vec();
    // The paper is square on by itself.
    trace.rectangle.clear();
    let unit = Quantity::Length.unit(system);
    let text = number::show(unit.from_document(square * BETWEEN), 4);
    next.enter(Field::TraceScale.into(), &text, system);
    next
}

/// The nearest half square.
pub fn snapped((x, y): Pixel) -> Pixel {
    let half = 0.5 * SQUARE;
    ((x / half).round() * half, (y / half).round() * half)
}

/// The squares as lines: thin ones, and thick ones every [`BETWEEN`] squares.
pub fn lines() -> (String, String) {
    let (mut thin, mut thick) = (String::new(), String::new());
    let mut draw = |count: f64, line: &dyn Fn(f64) -> String| {
        for k in 0..=(count / SQUARE) as u32 {
            let list = if f64::from(k) % BETWEEN == 0.0 { &mut thick } else { &mut thin };
            *list += &line(f64::from(k) * SQUARE);
        }
    };
    draw(SHEET.0, &|x| format!("M{x} 0V{}", SHEET.1));
    draw(SHEET.1, &|y| format!("M0 {y}H{}", SHEET.0));
    (thin, thick)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answer::Answer;
    use standfast_core::document::{GivenAs, TraceView};

    fn traced() -> Entries {
        Entries { given_as: GivenAs::Trace, trace: Some(TraceEntry::default()), ..Entries::blank() }
    }

    #[test]
    fn a_square_gives_the_scale_in_either_system() {
        for (text, system, metres) in [("100", System::Metric, 0.1), ("4", System::Us, 0.1016)] {
            let square = read(text, system).expect("a length");
            let mut entries = laid(&traced(), square, system);
            let outline = [(100.0, 800.0), (700.0, 800.0), (700.0, 500.0), (100.0, 500.0)];
            entries.trace.as_mut().expect("laid").outline = outline.map(dot).to_vec();
            let answer = Answer::of(&entries);
            let outline = answer.load.outline.as_ref().expect("worked out");
            let width = outline.outline.iter().map(|p| p.0.get()).fold(0.0, f64::max);
            assert!((width - 12.0 * metres).abs() < 1e-9, "twelve squares: {width}");
            assert!(!answer.problems.iter().any(|p| p.place == Field::TraceScale.into()));
        }
    }

    #[test]
    fn what_is_no_length_of_a_square_is_refused() {
        assert!(matches!(read("about", System::Metric), Err(Refused::NotRead(_))));
        for text in ["0", "-100", "1", "1500"] {
            assert_eq!(read(text, System::Metric), Err(Refused::Range), "{text}");
        }
        for (text, system) in [("2", System::Metric), ("1000", System::Metric), ("39", System::Us)] {
            let entries = laid(&traced(), read(text, system).expect(text), system);
            let place = Field::TraceScale.into();
            let problem = Answer::of(&entries).problem(place).cloned();
            assert_eq!(problem, None, "{text}");
        }
    }

    #[test]
    fn what_was_traced_on_a_photo_goes_and_on_paper_stays() {
        let mut entries = traced();
        let trace = entries.trace.as_mut().expect("there");
        trace.ground = Ground::Photo(7);
        trace.view = TraceView::Front;
        trace.outline = vec![dot((1.0, 1.0)); 4];
        let mut paper = laid(&entries, 0.1, System::Metric);
        let trace = paper.trace.as_mut().expect("laid");
        assert_eq!((trace.outline.len(), trace.view, trace.ground), (0, TraceView::Front, Ground::Paper));
        trace.outline = vec![dot((50.0, 50.0)); 5];
        let other = laid(&paper, 0.2, System::Metric);
        assert_eq!(other.trace.as_ref().map(|t| t.outline.len()), Some(5));
        assert_eq!(other.shown(Field::TraceScale.into(), System::Metric), "2000");
    }

    #[test]
    fn the_marks_and_every_snapped_tap_lie_on_the_squares() {
        for mark in MARKS {
            assert_eq!(snapped(mark), mark);
        }
        assert!((MARKS[1].0 - MARKS[0].0 - BETWEEN * SQUARE).abs() < 1e-12);
        assert_eq!(snapped((112.4, 389.0)), (100.0, 400.0));
        assert_eq!(snapped((113.0, 380.0)), (125.0, 375.0));
        let (thin, thick) = lines();
        assert_eq!((thin.matches('M').count(), thick.matches('M').count()), (25 + 19 - 5, 5));
    }
}
