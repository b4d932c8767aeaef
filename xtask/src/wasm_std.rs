//! Where Rust's standard library for WebAssembly comes from.
//!
//! On most machines rustup has it or fetches it. Where rustup cannot, Debian's packaged compiler does the WebAssembly
//! part: it comes with the library's source, which cargo then builds. That needs settings which would also rebuild the
//! library for the machine itself if native builds saw them, so they are given to that one cargo alone.

use std::env;
use std::path::Path;
use std::process::Command;
use std::time::Duration;

use crate::failure::{Failure, Outcome};
use crate::{install, process};

/// The compilation target.
pub const TARGET: &str = "wasm32-unknown-unknown";

/// The Debian packages: compiler, cargo, source of the standard library, linker.
const PACKAGES: [&str; 5] = ["rustc-web", "cargo-web", "rust-web-src", "rust-web-llvm", "lld-22"];

/// What those packages must have left behind.
const DEBIAN_FILES: [&str; 4] =
    ["/usr/bin/rustc", "/usr/bin/cargo", "/usr/bin/rust-lld", "/usr/lib/rustlib/src/rust/library/std/Cargo.toml"];

/// A machine without access to rustup's server can take minutes to give up by itself.
const RUSTUP_LIMIT: Duration = Duration::from_secs(180);

/// The two sources.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WasmStd {
    /// The compiler that builds everything else, with the library that rustup (or the system) put beside it.
    Installed,
    /// Debian's compiler, building the library from its source.
    Debian,
}

/// What the environment asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Wish {
    None,
    Installed,
    Debian,
}

/// What is to be done.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Plan {
    Use(WasmStd),
    /// Try rustup; `true` permits Debian's packages if that fails.
    AskRustup(bool),
    InstallDebian,
}

impl WasmStd {
    /// Finds the library, or installs it.
    ///
    /// # Errors
    /// When it is not there and cannot be installed; the message names what to install.
    pub fn provide() -> Outcome<Self> {
        let wish = read_wish(env::var("WASM_STD").ok().as_deref())?;
        let found = match plan(wish, is_installed(), is_debian_ready()) {
            Plan::Use(found) => found,
            Plan::AskRustup(may_fall_back) => match ask_rustup() {
                Ok(()) => Self::Installed,
                Err(failure) if may_fall_back => {
                    println!("  {failure}");
                    println!("  taking Debian's compiler for the WebAssembly part instead");
                    if !is_debian_ready() {
                        install::by_apt(&PACKAGES, "Rust's standard library for WebAssembly")?;
                    }
                    Self::Debian
                }
                Err(failure) => {
                    return Err(Failure::new(format!(
                        "{failure}. Put the target {TARGET} beside your compiler, or leave WASM_STD unset to permit \
                         Debian's compiler"
                    )));
                }
            },
            Plan::InstallDebian => {
                install::by_apt(&PACKAGES, "Debian's compiler for WebAssembly")?;
                Self::Debian
            }
        };
        if found == Self::Debian && !is_debian_ready() {
            return Err(Failure::new(format!(
                "Debian's compiler for WebAssembly is not complete; needed are {}",
                DEBIAN_FILES.join(", ")
            )));
        }
        Ok(found)
    }

    /// In words.
    pub fn describe(self) -> &'static str {
        match self {
            Self::Installed => "the compiler's own",
            Self::Debian => "built from source by Debian's compiler",
        }
    }

    /// The cargo for the WebAssembly target, and for nothing else.
    pub fn cargo(self) -> Command {
        match self {
            Self::Installed => process::cargo(),
            Self::Debian => {
                let mut command = Command::new("/usr/bin/cargo");
                process::forget_outer_cargo(&mut command);
                command
                    .env_remove("RUSTUP_TOOLCHAIN")
                    // The outer cargo points it at its own compiler's libraries.
                    .env_remove("LD_LIBRARY_PATH")
                    .env("RUSTC", "/usr/bin/rustc")
                    .env("RUSTDOC", "/usr/bin/rustdoc")
                    .env("RUSTC_BOOTSTRAP", "1")
                    .env("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort");
                command
            }
        }
    }
}

fn read_wish(value: Option<&str>) -> Outcome<Wish> {
    match value.unwrap_or_default() {
        "" => Ok(Wish::None),
        "rustup" => Ok(Wish::Installed),
        "debian" => Ok(Wish::Debian),
        other => Err(Failure::new(format!("WASM_STD may be `rustup` or `debian`, not `{other}`"))),
    }
}

fn plan(wish: Wish, installed: bool, debian_ready: bool) -> Plan {
    match wish {
        Wish::Debian if debian_ready => Plan::Use(WasmStd::Debian),
        Wish::Debian => Plan::InstallDebian,
        _ if installed => Plan::Use(WasmStd::Installed),
        // Debian's packages are there already: quicker than finding out whether rustup's server answers.
        Wish::None if debian_ready => Plan::Use(WasmStd::Debian),
        Wish::None => Plan::AskRustup(true),
        Wish::Installed => Plan::AskRustup(false),
    }
}

/// Whether the compiler in use has the library.
fn is_installed() -> bool {
    process::answer(Command::new("rustc").args(["--print", "sysroot"]))
        .is_some_and(|sysroot| Path::new(&sysroot).join("lib/rustlib").join(TARGET).join("lib").is_dir())
}

fn is_debian_ready() -> bool {
    DEBIAN_FILES.iter().all(|file| Path::new(file).exists())
}

fn ask_rustup() -> Outcome<()> {
    let Some(rustup) = process::on_path("rustup") else {
        return Err(Failure::new("Rust's standard library for WebAssembly is missing, and rustup to fetch it too"));
    };
    println!("  rustup target add {TARGET}");
    let mut command = Command::new(rustup);
    command.args(["target", "add", TARGET]);
    process::run_within(&mut command, "fetching Rust's standard library for WebAssembly", Some(RUSTUP_LIMIT))?;
    if is_installed() {
        return Ok(());
    }
    Err(Failure::new(format!("rustup added {TARGET}, but not to the compiler in use (`rustc --print sysroot`)")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_there_is_used_before_anything_is_fetched() {
        assert_eq!(plan(Wish::None, true, true), Plan::Use(WasmStd::Installed));
        assert_eq!(plan(Wish::None, false, true), Plan::Use(WasmStd::Debian));
        assert_eq!(plan(Wish::None, false, false), Plan::AskRustup(true));
    }

    #[test]
    fn a_wish_is_kept_to() {
        assert_eq!(plan(Wish::Debian, true, true), Plan::Use(WasmStd::Debian));
        assert_eq!(plan(Wish::Debian, true, false), Plan::InstallDebian);
        assert_eq!(plan(Wish::Installed, false, true), Plan::AskRustup(false));
        assert_eq!(read_wish(Some("debian")), Ok(Wish::Debian));
        assert_eq!(read_wish(Some("rustup")), Ok(Wish::Installed));
        assert_eq!((read_wish(None), read_wish(Some(""))), (Ok(Wish::None), Ok(Wish::None)));
        assert!(read_wish(Some("fedora")).is_err_and(|e| e.to_string().contains("`fedora`")));
    }

    #[test]
    fn the_settings_for_building_the_library_stay_with_its_cargo() {
        let set = |source: WasmStd| {
            source.cargo().get_envs().any(|(name, value)| name == "CARGO_UNSTABLE_BUILD_STD" && value.is_some())
        };
        assert!(set(WasmStd::Debian));
        assert!(!set(WasmStd::Installed));
    }
}
