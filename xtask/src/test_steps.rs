//! Every test, from format to browser, in the order in which failures are cheapest to find.

use std::env;
use std::io::{BufRead, BufReader};
use std::process::{Command, Stdio};

use crate::browser::Browser;
use crate::command::Mode;
use crate::failure::{Failure, Outcome};
use crate::places::Places;
use crate::progress::Progress;
use crate::tally::Tally;
use crate::wasm_std::{self, WasmStd};
use crate::{build, process};

/// What all steps share.
struct Run<'a> {
    places: &'a Places,
    wasm_std: WasmStd,
    tally: Tally,
}

/// One step: its name and its work.
type Step = (&'static str, fn(&mut Run<'_>) -> Outcome<()>);

const STEPS: [Step; 8] = [
    ("format", format),
    ("lints", lints),
    ("lints of the page for WebAssembly", wasm_lints),
    ("tests of core, page and published cases", tests),
    ("tests of xtask", own_tests),
    ("documentation", documentation),
    ("the page as it is shipped", page),
    ("journeys in a browser", journeys),
];

/// Runs the steps up to the first that fails, and ends with the count of single tests.
///
/// # Errors
/// When a step fails.
pub fn run(places: &Places) -> Outcome<()> {
    let mut run = Run { places, wasm_std: WasmStd::provide()?, tally: Tally::default() };
    let mut progress = Progress::new("test", STEPS.len());
    let mut result = Ok(());
    for (name, work) in STEPS {
        progress.step(name);
        result = work(&mut run);
        progress.step_done(if result.is_ok() { "passed" } else { "FAILED" });
        if let Err(failure) = &result {
            println!("{failure}");
            // A step may fail without a failed test: by its format, its lints, or because it does not compile.
            run.tally.failed = run.tally.failed.max(1);
            result = Err(Failure::new(format!("the step `{name}` failed")));
            break;
        }
    }
    println!("\nall steps took {}", progress.total_time());
    println!("{} passed, {} failed", run.tally.passed, run.tally.failed);
    result
}

impl Run<'_> {
    fn cargo(&self, words: &[&str]) -> Command {
        let mut cargo = process::cargo();
        cargo.current_dir(&self.places.root).env("CARGO_TARGET_DIR", &self.places.target).args(words);
        cargo
    }

    /// Runs a cargo whose output holds test results: shows it, and counts.
    fn count(&mut self, mut cargo: Command, what: &str) -> Outcome<()> {
        let broken = |e| Failure::new(format!("{what}: {e}"));
        let mut child = cargo.stdin(Stdio::null()).stdout(Stdio::piped()).spawn().map_err(broken)?;
        if let Some(output) = child.stdout.take() {
            for line in BufReader::new(output).split(b'\n') {
                let line = line.map_err(broken)?;
                let line = String::from_utf8_lossy(&line);
                println!("{line}");
                self.tally.read(&line);
            }
        }
        let status = child.wait().map_err(broken)?;
        if status.success() { Ok(()) } else { Err(Failure::new(format!("{what}: cargo test failed ({status})"))) }
    }
}

/// Makes sure that one of rustup's optional parts is there.
fn component(name: &str, probe: &[&str]) -> Outcome<()> {
    if process::answer(process::cargo().args(probe)).is_some() {
        return Ok(());
    }
    let Some(rustup) = process::on_path("rustup") else {
        return Err(Failure::new(format!("{name} is missing: install it with the compiler")));
    };
    println!("  rustup component add {name}");
    process::run(Command::new(rustup).args(["component", "add", name]), &format!("installing {name}"))
}

fn format(run: &mut Run<'_>) -> Outcome<()> {
    component("rustfmt", &["fmt", "--version"])?;
    process::run(&mut run.cargo(&["fmt", "--all", "--", "--check"]), "not formatted; `cargo fmt --all` mends it")
}

fn lints(run: &mut Run<'_>) -> Outcome<()> {
    component("clippy", &["clippy", "--version"])?;
    let words = ["clippy", "--workspace", "--all-targets", "--all-features", "--", "-D", "warnings"];
    process::run(&mut run.cargo(&words), "clippy")
}

/// The page once more, for the target it is made for: what stands behind `cfg(target_arch)` is seen only here.
fn wasm_lints(run: &mut Run<'_>) -> Outcome<()> {
    if run.wasm_std == WasmStd::Debian {
        println!("  left out: Debian's compiler comes without clippy; the page is compiled for WebAssembly below");
        return Ok(());
    }
    let words = ["clippy", "-p", "standfast-web", "--target", wasm_std::TARGET, "--", "-D", "warnings"];
    process::run(&mut run.cargo(&words), "clippy")
}

fn tests(run: &mut Run<'_>) -> Outcome<()> {
    run.count(run.cargo(&["test", "--workspace", "--exclude", "xtask"]), "tests")
}

/// Apart from the others, so that what this program is built of is not built a second time with their features.
fn own_tests(run: &mut Run<'_>) -> Outcome<()> {
    run.count(run.cargo(&["test", "-p", "xtask"]), "tests")
}

fn documentation(run: &mut Run<'_>) -> Outcome<()> {
    let flags = format!("{} -D warnings", env::var("RUSTDOCFLAGS").unwrap_or_default());
    let mut cargo = run.cargo(&["doc", "--workspace", "--no-deps"]);
    process::run(cargo.env("RUSTDOCFLAGS", flags.trim()), "documentation")
}

fn page(run: &mut Run<'_>) -> Outcome<()> {
    build::run(run.places, Mode::Release)
}

fn journeys(run: &mut Run<'_>) -> Outcome<()> {
    let browser = Browser::provide()?;
    let mut cargo = run.cargo(&["test", "-p", "standfast-tests", "--features", "browser", "--test", "browser"]);
    cargo
        .env("STANDFAST_DIST", &run.places.dist)
        .env("STANDFAST_BROWSER", browser.program)
        .env("STANDFAST_DRIVER", browser.driver);
    run.count(cargo, "journeys")
}
