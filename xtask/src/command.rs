//! The command line, turned into a request.

use std::path::PathBuf;

use crate::failure::{Failure, Outcome};

/// How the page is compiled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// Quick to build, large, with checks on.
    Dev,
    /// As it is shipped.
    Release,
}

/// What was asked for.
#[derive(Debug, PartialEq, Eq)]
pub enum Request {
    /// Build the page.
    Build(Mode),
    /// Build it, then serve it.
    Serve {
        /// How to compile.
        mode: Mode,
        /// The port to try first.
        port: u16,
    },
    /// Run every test.
    Test,
    /// Finish a page that was built into this folder; without one, trunk's environment names it.
    PostBuild(Option<PathBuf>),
}

/// The port tried first by `serve`.
const DEFAULT_PORT: u16 = 8080;

/// Reads the words after `cargo xtask`. `None` asks for the help text.
///
/// # Errors
/// Names the first word that is not understood.
pub fn parse(words: &[String]) -> Outcome<Option<Request>> {
    let Some((first, rest)) = words.split_first() else { return Ok(None) };
    let mut rest = rest.iter().map(String::as_str);
    let request = match first.as_str() {
        "help" | "--help" | "-h" => return Ok(None),
        "build" => {
            let mut mode = Mode::Release;
            for word in rest {
                match word {
                    "--dev" => mode = Mode::Dev,
                    "--release" => mode = Mode::Release,
                    other => return Err(unknown(first, other)),
                }
            }
            Request::Build(mode)
        }
        "serve" => {
            let (mut mode, mut port) = (Mode::Dev, DEFAULT_PORT);
            while let Some(word) = rest.next() {
                match word.split_once('=').unwrap_or((word, "")) {
                    ("--release", "") => mode = Mode::Release,
                    ("--port", "") => port = read_port(rest.next().unwrap_or_default())?,
                    ("--port", number) => port = read_port(number)?,
                    _ => return Err(unknown(first, word)),
                }
            }
            Request::Serve { mode, port }
        }
        "test" => match rest.next() {
            None => Request::Test,
            Some(other) => return Err(unknown(first, other)),
        },
        "post-build" => {
            let folder = rest.next().map(PathBuf::from);
            if let Some(other) = rest.next() {
                return Err(unknown(first, other));
            }
            Request::PostBuild(folder)
        }
        other => {
            return Err(Failure::new(format!("there is no command `{other}`; `cargo xtask help` lists them")));
        }
    };
    Ok(Some(request))
}

fn unknown(command: &str, word: &str) -> Failure {
    Failure::new(format!("`{command}` does not know `{word}`; `cargo xtask help` shows what it takes"))
}

fn read_port(text: &str) -> Outcome<u16> {
    match text.parse() {
        Ok(port) if port > 0 => Ok(port),
        _ => Err(Failure::new(format!("--port takes a number from 1 to 65535, not `{text}`"))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(line: &str) -> Outcome<Option<Request>> {
        let words: Vec<String> = line.split_whitespace().map(str::to_owned).collect();
        parse(&words)
    }

    #[test]
    fn no_word_and_help_ask_for_the_help_text() {
        for line in ["", "help", "--help", "-h"] {
            assert_eq!(read(line), Ok(None));
        }
    }

    #[test]
    fn each_command_is_read() {
        assert_eq!(read("build"), Ok(Some(Request::Build(Mode::Release))));
        assert_eq!(read("build --dev"), Ok(Some(Request::Build(Mode::Dev))));
        assert_eq!(read("serve"), Ok(Some(Request::Serve { mode: Mode::Dev, port: 8080 })));
        assert_eq!(read("serve --release --port 9000"), Ok(Some(Request::Serve { mode: Mode::Release, port: 9000 })));
        assert_eq!(read("serve --port=9000"), Ok(Some(Request::Serve { mode: Mode::Dev, port: 9000 })));
        assert_eq!(read("test"), Ok(Some(Request::Test)));
        assert_eq!(read("post-build"), Ok(Some(Request::PostBuild(None))));
        assert_eq!(read("post-build out"), Ok(Some(Request::PostBuild(Some("out".into())))));
    }

    #[test]
    fn what_is_not_understood_is_named() {
        for (line, word) in [
            ("paint", "`paint`"),
            ("build --fast", "`--fast`"),
            ("test core", "`core`"),
            ("serve --port", "``"),
            ("serve --port 0", "`0`"),
            ("serve --port 70000", "`70000`"),
            ("serve --open", "`--open`"),
            ("post-build a b", "`b`"),
        ] {
            let words = read(line).map_err(|e| e.to_string());
            assert!(words.as_ref().is_err_and(|e| e.contains(word)), "{line}: {words:?}");
        }
    }
}
