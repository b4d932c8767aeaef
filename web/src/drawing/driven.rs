//! What the ground and the driving do in a step, in words for the drawings.

use super::figures::{acceleration, percent};
use super::labels::Labels;
use standfast_core::report::StepReport;
use standfast_core::units::{Rounding, System};

/// What is less is none: a tangent, and m/s^2.
const LEAST: f64 = 1e-4;

/// A slope of the ground.
pub struct Slope {
    /// How it rises ahead, a tangent; none for one across.
    pub rise: Option<f64>,
    /// In words.
    pub words: String,
}

/// The slopes of a step's ground.
pub fn slopes(step: &StepReport, labels: &Labels) -> Vec<Slope> {
    let (grade, cross) = (step.grade.get(), step.cross_fall.get());
    let say = |slope: f64, way: &str| format!("{} {way}", percent(slope.abs(), Rounding::Nearest));
    let along = (grade.abs() > LEAST).then(|| {
        let way = if grade > 0.0 { labels.uphill } else { labels.downhill };
        Slope { rise: Some(grade), words: say(grade, way) }
    });
    let across = (cross.abs() > LEAST).then(|| {
        let way = if cross > 0.0 { labels.left_high } else { labels.right_high };
        Slope { rise: None, words: say(cross, way) }
    });
    along.into_iter().chain(across).collect()
}

/// What braking or turning pulls with.
pub struct Pull {
    /// Ahead, m/s^2.
    pub ahead: f64,
    /// To the left, m/s^2.
    pub left: f64,
    /// In words.
    pub words: String,
}

/// The pull of a step's driving; none where it stands or goes on evenly.
pub fn pull(step: &StepReport, system: System, labels: &Labels) -> Option<Pull> {
    let (ahead, left) = (step.acceleration.x.get(), step.acceleration.y.get());
    let most = ahead.abs().max(left.abs());
    let way = match (ahead.abs() > left.abs(), ahead > 0.0, left > 0.0) {
        (true, true, _) => labels.pull_ahead,
        (true, false, _) => labels.pull_back,
        (false, _, true) => labels.pull_left,
        (false, _, false) => labels.pull_right,
    };
    let words = format!("{} {way}", acceleration(most, system, Rounding::Up));
    (most > LEAST).then_some(Pull { ahead, left, words })
}
