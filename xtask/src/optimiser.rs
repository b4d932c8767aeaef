//! wasm-opt, from npm's `binaryen`. The program runs as well without it, only larger.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::failure::{Failure, Outcome};
use crate::places::Places;
use crate::{digest, files, process};

/// The version: Debian's own package is too old to read what today's compiler writes, so none but this one is used.
const VERSION: &str = "132.0.0";

/// Where wasm-opt lies in an npm folder.
const PROGRAM: &str = "node_modules/binaryen/bin/wasm-opt";

/// An installed wasm-opt.
#[derive(Debug)]
pub struct Optimiser {
    node: PathBuf,
    program: PathBuf,
    results: PathBuf,
}

impl Optimiser {
    /// Finds wasm-opt, or installs it. `None`, with the reason told, if that cannot be done.
    pub fn provide(places: &Places) -> Option<Self> {
        match Self::find_or_install(places) {
            Ok(found) => Some(found),
            Err(failure) => {
                println!("  {failure}");
                println!("  going on without wasm-opt: the program will be 5 to 25 % larger to download");
                None
            }
        }
    }

    fn find_or_install(places: &Places) -> Outcome<Self> {
        let missing = |name: &str| Failure::new(format!("wasm-opt needs {name}, which is not installed"));
        let node = process::on_path("node").ok_or_else(|| missing("node"))?;
        let home = places.tools.join(format!("binaryen-{VERSION}"));
        let program = home.join(PROGRAM);
        if !program.is_file() {
            let npm = process::on_path("npm").ok_or_else(|| missing("npm"))?;
            install(&npm, &home)?;
        }
        Ok(Self { node, program, results: places.target.join("xtask").join("optimised") })
    }

    /// Makes a module smaller. The result for a module seen before is kept.
    ///
    /// # Errors
    /// When wasm-opt fails.
    pub fn shrink(&self, module: &[u8], level: &str) -> Outcome<Vec<u8>> {
        let tag = digest::name_tag(module);
        let output = self.results.join(format!("{tag}-{VERSION}-{level}.wasm"));
        if output.is_file() {
            return files::read(&output);
        }
        files::make_folder_empty(&self.results)?;
        let (input, unfinished) = (self.results.join("input.wasm"), self.results.join("unfinished.wasm"));
        files::write(&input, module)?;
        let mut command = Command::new(&self.node);
        command.arg(&self.program).arg(format!("-O{level}")).args(["--strip-debug", "--strip-producers"]);
        command.arg(&input).arg("-o").arg(&unfinished);
        process::run(&mut command, "making the program smaller")?;
        // Renamed only when it is whole: an interrupted run must not leave half a module to be found next time.
        fs::rename(&unfinished, &output).map_err(|e| Failure::at("rename", &unfinished, e))?;
        files::read(&output)
    }
}

fn install(npm: &Path, home: &Path) -> Outcome<()> {
    println!("  installing wasm-opt (npm's binaryen {VERSION}, about 100 MB)");
    let unfinished = home.with_extension("unfinished");
    files::make_folder_empty(&unfinished)?;
    let mut command = Command::new(npm);
    command.args(["install", "--no-audit", "--no-fund", "--no-package-lock", "--loglevel=error", "--prefix"]);
    command.arg(&unfinished).arg(format!("binaryen@{VERSION}")).current_dir(&unfinished);
    process::run(&mut command, "installing binaryen")?;
    if !unfinished.join(PROGRAM).is_file() {
        return Err(Failure::new(format!("npm's binaryen {VERSION} came without {PROGRAM}")));
    }
    files::remove(home)?;
    fs::rename(&unfinished, home).map_err(|e| Failure::at("rename", &unfinished, e))
}
