//! Every text of the page. One language is one file that fills [`Words`]: a missing text does not compile.

use standfast_core::body::BodyId;
use standfast_core::place::Field;
use standfast_core::platform::Test;
use standfast_core::rules::{BuiltIn, Mark};
use standfast_core::step::StepId;
use standfast_core::support::LineId;

pub mod blades;
pub mod book;
pub mod checklist;
pub mod covers;
pub mod drive;
pub mod english;
pub mod known;
pub mod limits;
pub mod load;
pub mod loads;
pub mod log;
pub mod paper;
pub mod parts;
pub mod places;
pub mod plate;
pub mod remedies;
pub mod request;
pub mod share;
pub mod sheet;
pub mod store;
pub mod tables;
pub mod trace;

/// What a field is called, and a line of help.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Label {
    /// The trade's word.
    pub name: &'static str,
    /// Where to find the figure, or what it is.
    pub help: &'static str,
}

/// A sentence as stated, and the same where only the worst of a range leads to it.
#[derive(Clone, Copy, Debug)]
pub struct Twice {
    /// As stated.
    pub stated: &'static str,
    /// At the worst of the range.
    pub may: &'static str,
}

/// A text for one and a text for several, `{n}` standing for how many.
#[derive(Clone, Copy, Debug)]
pub struct Count {
    /// For one.
    pub one: &'static str,
    /// For none or several.
    pub many: &'static str,
}

impl Count {
    /// The text for `n`.
    pub fn of(self, n: usize) -> String {
        fill(if n == 1 { self.one } else { self.many }, &[("n", &n.to_string())])
    }
}

/// Puts values into a text: `{name}` becomes its value.
///
/// ```ignore
/// assert_eq!(fill("{a} of {b}", &[("a", "1"), ("b", "2")]), "1 of 2");
/// ```
pub fn fill(text: &str, values: &[(&str, &str)]) -> String {
    values.iter().fold(text.to_owned(), |text, (name, value)| text.replace(&format!("{{{name}}}"), value))
}

/// The verdict and its reasons.
#[derive(Debug)]
pub struct VerdictWords {
    pub heading: &'static str,
    pub no_go: &'static str,
    pub hold: &'static str,
    pub go: &'static str,
    pub none: &'static str,
    pub more_reasons: Count,
    pub more_problems: Count,
    pub fewer: &'static str,
    pub go_there: &'static str,
    pub measure: &'static str,
    /// Stands under every verdict.
    pub standing: &'static str,
    pub as_entered: &'static str,
    pub needed: Count,
    pub wrong: &'static str,
    pub no_plate: &'static str,
    pub extensions_not_named: &'static str,
    pub too_high: &'static str,
    pub too_far_out: Twice,
    pub too_heavy: Twice,
    pub battery: &'static str,
    pub battery_unknown: &'static str,
    pub off_centre: Twice,
    pub beyond_tips: Twice,
    pub beside_forks: Twice,
    pub tips: Twice,
    pub slope: Twice,
    pub not_level: Twice,
    pub contradicts: &'static str,
    pub suspects: &'static str,
    pub within: &'static str,
    pub tightest: &'static str,
    pub estimate: &'static str,
    pub at_least: &'static str,
    pub at_most: &'static str,
    pub between: &'static str,
}

/// What is missing or wrong in a field.
#[derive(Debug)]
pub struct ProblemWords {
    pub needed: &'static str,
    pub choose: &'static str,
    pub list_empty: &'static str,
    pub not_a_number: &'static str,
    pub ambiguous: &'static str,
    pub ambiguous_marks: &'static str,
    pub not_finite: &'static str,
    pub within: &'static str,
    pub not_more: &'static str,
    pub not_less: &'static str,
    pub together: &'static str,
    pub axle_sum: &'static str,
    pub parts: &'static str,
    pub plate_falls: &'static str,
    pub plate_twice: &'static str,
    pub not_known_so: &'static str,
    pub tolerance_within: &'static str,
    pub too_long: &'static str,
    pub row: &'static str,
}

/// The tools: units, undo, files.
#[derive(Debug)]
pub struct ToolWords {
    pub app: &'static str,
    pub units: &'static str,
    pub metric: &'static str,
    pub us: &'static str,
    pub undo: &'static str,
    pub redo: &'static str,
    pub files: &'static str,
    pub start_own: &'static str,
    pub example_1: &'static str,
    pub example_2: &'static str,
    pub example_3: &'static str,
    pub save: &'static str,
    pub open: &'static str,
    pub invented: &'static str,
    pub invented_changed: &'static str,
    pub own: &'static str,
    pub start_ask: &'static str,
    pub start_yes: &'static str,
    pub start_no: &'static str,
    pub example_yes: &'static str,
    pub save_ask: &'static str,
    pub save_yes: &'static str,
    pub save_no: &'static str,
    pub close: &'static str,
    pub storage_blocked: &'static str,
    pub storage_damaged: &'static str,
    pub storage_lost: &'static str,
    pub file_unreadable: &'static str,
    pub file_other: &'static str,
    pub file_other_named: &'static str,
    pub file_newer: &'static str,
    pub file_large: &'static str,
    pub file_not_read: &'static str,
    pub file_refused: &'static str,
    pub file_opened: &'static str,
    pub stopped: &'static str,
    pub stopped_detail: &'static str,
    pub stopped_save: &'static str,
    pub stopped_reload: &'static str,
}

/// Cards and fields.
#[derive(Debug)]
pub struct CardWords {
    pub entries: &'static str,
    pub truck: &'static str,
    pub load: &'static str,
    pub lift: &'static str,
    pub assumed: Count,
    pub cautions: &'static str,
    pub needed: Count,
    pub wrong: Count,
    pub nothing_yet: &'static str,
    pub note: Label,
    pub truck_name: Label,
    pub load_name: Label,
    pub attachment_name: Label,
    pub group_build: &'static str,
    pub group_weights: &'static str,
    pub group_mast: &'static str,
    pub group_forks: &'static str,
    pub group_plate: &'static str,
    pub group_attachment: &'static str,
    pub group_centre: &'static str,
    pub group_heights: &'static str,
    pub group_tilt: &'static str,
    pub group_stands: &'static str,
    pub more_figures: &'static str,
    pub more_forks: &'static str,
    pub three: &'static str,
    pub four: &'static str,
    pub plate_there: &'static str,
    pub plate_none: &'static str,
    pub plate_present: &'static str,
    pub for_forks: &'static str,
    pub for_attachment: &'static str,
    pub extensions_named: &'static str,
    pub extensions_unnamed: &'static str,
    pub add_row: &'static str,
    pub remove_row: &'static str,
    pub row: &'static str,
    pub attachment_present: &'static str,
    pub attachment_none: &'static str,
    pub attachment_there: &'static str,
    pub sections: &'static str,
    pub section: &'static str,
    pub add_section: &'static str,
    pub remove_section: &'static str,
    pub scale: &'static str,
    pub note_on_load: &'static str,
    pub estimate: &'static str,
    pub middle: &'static str,
    pub mark: &'static str,
    pub range: &'static str,
    pub left_empty: &'static str,
    pub optional: &'static str,
    pub from_to: &'static str,
    pub battery_summary: &'static str,
    pub lifts_summary: &'static str,
    pub plate_summary: &'static str,
    pub no_plate_summary: &'static str,
    pub centre_summary: &'static str,
    pub height_summary: &'static str,
    pub back_summary: &'static str,
    pub forward_summary: &'static str,
    pub gap_summary: &'static str,
    pub assumed_intro: &'static str,
    pub assumed_none: &'static str,
    pub assumed_later: &'static str,
    pub built_in: &'static str,
    /// A part of the wheelbase or of the blade's length.
    pub of_wheelbase: &'static str,
    pub of_blade: &'static str,
    pub basis_middle: &'static str,
    pub basis_worked: &'static str,
    pub basis_zero: &'static str,
    pub basis_window: &'static str,
    pub basis_limit: &'static str,
    pub basis_inferred: &'static str,
    pub enter_it: &'static str,
}

/// Standing cautions, and those of this lift.
#[derive(Debug)]
pub struct CautionWords {
    pub about_lift: Count,
    pub only_standing: &'static str,
    pub standing: &'static str,
    pub first: &'static str,
    pub estimate: &'static str,
    pub rounding: &'static str,
    pub change: &'static str,
    pub not_modelled: &'static str,
    pub not_modelled_list: &'static [&'static str],
    pub not_checked: &'static str,
    pub not_checked_list: &'static [&'static str],
    pub this_lift: &'static str,
    pub nothing_special: &'static str,
    pub centre_higher: &'static str,
    pub attachment: &'static str,
    pub inferred: &'static str,
    pub estimate_here: &'static str,
}

/// Drawings, steps and working.
#[derive(Debug)]
pub struct StageWords {
    pub heading: &'static str,
    pub which_drawing: &'static str,
    pub side: &'static str,
    pub plan: &'static str,
    pub nothing_drawn: &'static str,
    pub steps: &'static str,
    pub steps_help: &'static str,
    pub used: &'static str,
    pub over: &'static str,
    pub tightest: &'static str,
    pub table: &'static str,
    pub working: &'static str,
    pub working_intro: &'static str,
    pub body: &'static str,
    pub mass: &'static str,
    pub lever: &'static str,
    pub moment: &'static str,
    pub holding: &'static str,
    pub overturning: &'static str,
    pub slope_entry: &'static str,
    pub acceleration_entry: &'static str,
    pub share: &'static str,
    pub distance: &'static str,
    pub tip_angle: &'static str,
    pub does_not_tip: &'static str,
    pub stated_worst: &'static str,
    pub slopes: &'static str,
    pub slopes_intro: &'static str,
    pub test: &'static str,
    pub about: &'static str,
    pub asked: &'static str,
    pub stood: &'static str,
    pub stood_worst: &'static str,
    pub in_hand: &'static str,
    pub source: &'static str,
    pub wheel_loads: &'static str,
    pub left_front: &'static str,
    pub right_front: &'static str,
    pub front_axle: &'static str,
    pub steer_axle: &'static str,
}

/// A step's words.
#[derive(Clone, Copy, Debug)]
pub struct StepWords {
    /// On its button.
    pub name: &'static str,
    /// Its pose in a sentence: `{height}` and `{mast}`.
    pub pose: &'static str,
}

/// All texts.
pub struct Words {
    pub verdict: VerdictWords,
    pub problem: ProblemWords,
    pub tools: ToolWords,
    pub card: CardWords,
    pub caution: CautionWords,
    pub stage: StageWords,
    pub blades: blades::BladeWords,
    pub book: book::BookWords,
    pub checklist: checklist::ChecklistWords,
    pub covers: covers::CoverWords,
    pub drive: drive::DriveWords,
    pub known: known::KnownWords,
    pub limits: limits::LimitWords,
    pub load: load::LoadWords,
    pub load_problem: load::LoadProblemWords,
    pub paper: paper::PaperWords,
    pub loads: loads::LoadsWords,
    pub log: log::LogWords,
    pub parts: parts::PartsWords,
    pub places: places::PlaceWords,
    pub plate: plate::PlateWords,
    pub remedies: remedies::RemedyWords,
    pub request: request::RequestWords,
    pub share: share::ShareWords,
    pub sheet: sheet::SheetWords,
    pub store: store::StoreWords,
    pub tables: tables::TableWords,
    pub trace: trace::TraceWords,
    pub mast_upright: &'static str,
    pub mast_back: &'static str,
    pub mast_forward: &'static str,
    /// Decimal mark and mark between groups of three digits.
    pub decimal: &'static str,
    pub group: &'static str,
    pub field: fn(Field) -> Label,
    pub body: fn(BodyId) -> String,
    pub step: fn(StepId) -> StepWords,
    /// A tipping line's name.
    pub line: fn(LineId) -> &'static str,
    /// Which way it tips over that line.
    pub way: fn(LineId) -> &'static str,
    pub test: fn(Test) -> &'static str,
    pub mark: fn(Mark) -> &'static str,
    pub built_in: fn(BuiltIn) -> &'static str,
}

/// The words in use.
pub fn words() -> &'static Words {
    &english::ENGLISH
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_go_where_their_names_stand() {
        assert_eq!(fill("{a} of {b}, {a}", &[("a", "1"), ("b", "2")]), "1 of 2, 1");
        assert_eq!(Count { one: "one", many: "{n} more" }.of(3), "3 more");
        assert_eq!(Count { one: "one", many: "{n} more" }.of(1), "one");
    }

    #[test]
    fn every_field_has_a_name_and_help_of_its_own() {
        let fields = Field::NUMBERS.iter().chain(Field::CHOICES);
        let mut names: Vec<_> = fields.map(|&f| (words().field)(f).name).collect();
        assert!(names.iter().all(|n| !n.is_empty()));
        names.sort_unstable();
        let count = names.len();
        names.dedup();
        assert_eq!(names.len(), count, "two fields share a name");
    }
}
