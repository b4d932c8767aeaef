//! Starting other programs. None of them can ask anything: their standard input is closed.

use std::env;
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

use crate::failure::{Failure, Outcome};

/// Runs a program to its end and shows what it writes.
///
/// # Errors
/// When it cannot be started, or ends with an error of its own. `what` names the work in the message.
pub fn run(command: &mut Command, what: &str) -> Outcome<()> {
    run_within(command, what, None)
}

/// As [`run`], but stops the program when it takes longer than `limit`.
///
/// # Errors
/// As [`run`], and when the time is up.
pub fn run_within(command: &mut Command, what: &str, limit: Option<Duration>) -> Outcome<()> {
    let started = Instant::now();
    let name = command.get_program().display().to_string();
    let broken = |e| Failure::new(format!("{what}: cannot run {name}: {e}"));
    let mut child = command.stdin(Stdio::null()).spawn().map_err(broken)?;
    let status = loop {
        let Some(limit) = limit else { break child.wait().map_err(broken)? };
        if let Some(status) = child.try_wait().map_err(broken)? {
            break status;
        }
        if started.elapsed() > limit {
            // It may have ended by itself in this very moment; either way it is over.
            let _ = child.kill();
            let _ = child.wait();
            return Err(Failure::new(format!("{what}: {name} was stopped after {} s", limit.as_secs())));
        }
        sleep(Duration::from_millis(50));
    };
    if status.success() { Ok(()) } else { Err(Failure::new(format!("{what}: {name} failed ({status})"))) }
}

/// What a program prints, trimmed, or `None` if it cannot be run or fails.
pub fn answer(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// The full path of a program that the shell would find.
pub fn on_path(name: &str) -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    let file = format!("{name}{}", env::consts::EXE_SUFFIX);
    env::split_paths(&path).map(|folder| folder.join(&file)).find(|candidate| is_program(candidate))
}

#[cfg(unix)]
fn is_program(path: &Path) -> bool {
    use std::os::unix::fs::PermissionsExt;
    path.metadata().is_ok_and(|data| data.is_file() && data.permissions().mode() & 0o111 != 0)
}

#[cfg(not(unix))]
fn is_program(path: &Path) -> bool {
    path.is_file()
}

/// The cargo that runs this program, with what it has set for this program alone taken away again.
pub fn cargo() -> Command {
    let mut command = Command::new(env::var_os("CARGO").unwrap_or_else(|| "cargo".into()));
    forget_outer_cargo(&mut command);
    command
}

/// Takes away the variables by which the outer cargo describes this package. Left in place, they would look like
/// settings to the inner one.
pub fn forget_outer_cargo(command: &mut Command) {
    for (name, _) in env::vars_os() {
        if describes_a_package(&name) {
            command.env_remove(&name);
        }
    }
}

fn describes_a_package(name: &OsStr) -> bool {
    name.to_str()
        .is_some_and(|name| name == "CARGO" || name.starts_with("CARGO_PKG_") || name.starts_with("CARGO_MANIFEST_"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_outer_package_is_forgotten() {
        for name in ["CARGO", "CARGO_PKG_NAME", "CARGO_MANIFEST_DIR"] {
            assert!(describes_a_package(OsStr::new(name)), "{name}");
        }
        for name in ["CARGO_HOME", "CARGO_TARGET_DIR", "CARGO_NET_OFFLINE", "PATH"] {
            assert!(!describes_a_package(OsStr::new(name)), "{name}");
        }
    }

    #[test]
    fn a_program_that_is_not_there_is_a_plain_failure() {
        let result = run(&mut Command::new("no-such-program-anywhere"), "a trial");
        assert!(result.is_err_and(|e| e.to_string().starts_with("a trial: cannot run no-such-program-anywhere")));
        assert_eq!(on_path("no-such-program-anywhere"), None);
        assert_eq!(answer(&mut Command::new("no-such-program-anywhere")), None);
    }
}
