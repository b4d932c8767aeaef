//! Says what is being done and how far it is.

use std::time::{Duration, Instant};

/// A row of steps whose number is known beforehand.
#[derive(Debug)]
pub struct Progress {
    label: &'static str,
    total: usize,
    done: usize,
    started: Instant,
    step_started: Instant,
}

impl Progress {
    /// Starts a row of `total` steps. The label tells rows apart when one runs inside another.
    pub fn new(label: &'static str, total: usize) -> Self {
        let now = Instant::now();
        Self { label, total, done: 0, started: now, step_started: now }
    }

    /// Announces the next step.
    pub fn step(&mut self, name: &str) {
        self.done += 1;
        self.step_started = Instant::now();
        println!("[{} {} of {}] {name}", self.label, self.done, self.total);
    }

    /// Says how long the step took.
    pub fn step_done(&self, word: &str) {
        println!("[{} {} of {}] {word}, {}", self.label, self.done, self.total, seconds(self.step_started.elapsed()));
    }

    /// The time since the start.
    pub fn total_time(&self) -> String {
        seconds(self.started.elapsed())
    }
}

/// A duration for reading.
pub fn seconds(time: Duration) -> String {
    format!("{:.1} s", time.as_secs_f64())
}
