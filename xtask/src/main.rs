//! Builds, serves and tests the page: `cargo xtask help` lists the commands.
//!
//! Nothing but cargo is needed to start. What a command lacks it installs, once, and says so. The page is described
//! by `index.html` alone, in the `data-trunk` links that the trunk tool reads too; people who have trunk get the same
//! page from `trunk build`, whose hook calls [`post_build`] as [`build`] does.

mod assemble;
mod bindings;
mod browser;
mod build;
mod command;
mod csp;
mod digest;
mod failure;
mod files;
mod help;
mod html;
mod install;
mod links;
mod mime;
mod optimiser;
mod places;
mod post_build;
mod process;
mod progress;
mod server;
mod single_file;
mod sizes;
mod tally;
mod test_steps;
mod wasm_std;

use std::process::ExitCode;

use failure::{Failure, Outcome};
use places::Places;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match run(&words) {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            eprintln!("\nxtask: {failure}");
            ExitCode::FAILURE
        }
    }
}

fn run(words: &[String]) -> Outcome<()> {
    let Some(request) = command::parse(words)? else {
        print!("{}", help::TEXT);
        return Ok(());
    };
    let places = Places::find()?;
    match request {
        command::Request::Build(mode) => build::run(&places, mode),
        command::Request::Serve { mode, port } => {
            build::run(&places, mode)?;
            server::serve(&places.dist, port)
        }
        command::Request::Test => test_steps::run(&places),
        command::Request::PostBuild(folder) => {
            let folder = folder.or_else(|| std::env::var_os("TRUNK_STAGING_DIR").map(Into::into));
            let Some(folder) = folder else {
                return Err(Failure::new(
                    "post-build needs the folder that holds the built page: give it as an argument, or let trunk's \
                     hook set TRUNK_STAGING_DIR",
                ));
            };
            post_build::run(&folder)
        }
    }
}
