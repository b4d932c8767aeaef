//! Where things are: the repository, the build folder, the tools.

use std::env;
use std::path::{Path, PathBuf};

use crate::failure::{Failure, Outcome};

/// The folders that every command works with, all absolute.
#[derive(Debug)]
pub struct Places {
    /// The repository.
    pub root: PathBuf,
    /// The built page.
    pub dist: PathBuf,
    /// Cargo's target folder. It is passed to every cargo that is started, so that all agree on it.
    pub target: PathBuf,
    /// Downloaded tools. Outside the repository, so that a fresh clone finds them again.
    pub tools: PathBuf,
}

impl Places {
    /// Finds them from the environment.
    ///
    /// # Errors
    /// When the current folder cannot be read, or there is no home folder to keep tools in.
    pub fn find() -> Outcome<Self> {
        let here = env::current_dir().map_err(|e| Failure::new(format!("cannot tell the current folder: {e}")))?;
        // Cargo says which clone it runs in; the path compiled in is for a program that is started by itself.
        let package = env::var_os("CARGO_MANIFEST_DIR").unwrap_or_else(|| env!("CARGO_MANIFEST_DIR").into());
        let root = Path::new(&package).parent().unwrap_or(&here).to_path_buf();
        let target = match env::var_os("CARGO_TARGET_DIR") {
            Some(given) if !given.is_empty() => here.join(given),
            _ => root.join("target"),
        };
        let tools = tools_folder(env::var_os("XDG_CACHE_HOME").map(Into::into), env::home_dir())?;
        Ok(Self { dist: root.join("dist"), root, target, tools })
    }
}

/// `$XDG_CACHE_HOME/standfast/tools`, or the same under `~/.cache`. A relative XDG_CACHE_HOME is ignored, as its
/// specification asks.
fn tools_folder(cache: Option<PathBuf>, home: Option<PathBuf>) -> Outcome<PathBuf> {
    cache
        .filter(|path| path.is_absolute())
        .or_else(|| home.filter(|path| path.is_absolute()).map(|path| path.join(".cache")))
        .map(|path| path.join("standfast").join("tools"))
        .ok_or_else(|| Failure::new("no folder to keep tools in: set HOME or XDG_CACHE_HOME"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tools_go_to_the_cache_folder_else_under_home() {
        let ask = |cache: &str, home: &str| {
            let path = |text: &str| (!text.is_empty()).then(|| PathBuf::from(text));
            tools_folder(path(cache), path(home)).ok()
        };
        assert_eq!(ask("/c", "/h"), Some("/c/standfast/tools".into()));
        assert_eq!(ask("", "/h"), Some("/h/.cache/standfast/tools".into()));
        assert_eq!(ask("relative", "/h"), Some("/h/.cache/standfast/tools".into()));
        assert_eq!(ask("", ""), None);
    }
}
