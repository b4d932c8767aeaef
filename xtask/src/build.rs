//! Builds the page into `dist/`.

use std::fs::{self, File, TryLockError};
use std::path::{Path, PathBuf};

use crate::command::Mode;
use crate::failure::{Failure, Outcome};
use crate::links::{Kind, Link, Program};
use crate::optimiser::Optimiser;
use crate::places::Places;
use crate::progress::Progress;
use crate::wasm_std::{self, WasmStd};
use crate::{assemble, bindings, files, links, post_build, process, sizes};

/// Builds the page. A failure leaves the page of the last build in place.
///
/// # Errors
/// When a part is missing, does not compile, or the result cannot be written.
pub fn run(places: &Places, mode: Mode) -> Outcome<()> {
    let _held_until_the_end = lock(&places.root)?;
    let index = places.root.join("index.html");
    let source = files::read_text(&index)?;
    let links = links::read(&source)?;
    let program = program(&links)?;
    let level = program.optimise.as_deref().filter(|_| mode == Mode::Release);

    let mut progress = Progress::new("build", if level.is_some() { 5 } else { 4 });
    progress.step("standard library for WebAssembly");
    let wasm_std = WasmStd::provide()?;
    println!("  {}", wasm_std.describe());
    let optimiser = level.and_then(|level| {
        progress.step("wasm-opt");
        Some((Optimiser::provide(places)?, level))
    });

    let profile = program.profile(mode);
    progress.step(&format!("compile {} (profile {profile})", program.bin));
    let compiled = compile(places, wasm_std, &links, program, profile)?;

    progress.step("bindings");
    let scratch = places.target.join("xtask").join("bindings");
    let mut bound = bindings::generate(&compiled, &program.bin, mode, &scratch)?;
    if let Some((optimiser, level)) = optimiser {
        bound.module = optimiser.shrink(&bound.module, level)?;
    }

    progress.step("page and single file");
    let stage = places.dist.join(".stage");
    files::make_folder_empty(&stage)?;
    assemble::page(&source, &links, &bound, &places.root, &stage)?;
    post_build::run(&stage)?;
    publish(&stage, &places.dist)?;

    sizes::print(&places.dist)?;
    println!("built {} in {}", places.dist.display(), progress.total_time());
    Ok(())
}

/// Keeps two builds of the same clone from writing to `dist/` at once. The lock is on a file that nothing else locks
/// and that a build by this program does not read; it goes with the returned handle.
fn lock(root: &Path) -> Outcome<File> {
    let path = root.join("trunk.toml");
    let file = File::open(&path).map_err(|e| Failure::at("open", &path, e))?;
    match file.try_lock() {
        Ok(()) => {}
        Err(TryLockError::WouldBlock) => {
            println!("another build is at work in this folder; waiting for it");
            file.lock().map_err(|e| Failure::at("lock", &path, e))?;
        }
        Err(TryLockError::Error(e)) => return Err(Failure::at("lock", &path, e)),
    }
    Ok(file)
}

fn program(links: &[Link]) -> Outcome<&Program> {
    links
        .iter()
        .find_map(|link| if let Kind::Rust(program) = &link.kind { Some(program) } else { None })
        .ok_or_else(|| Failure::new("index.html names no program"))
}

/// Compiles the program and gives the path of the WebAssembly module.
fn compile(places: &Places, from: WasmStd, links: &[Link], program: &Program, profile: &str) -> Outcome<PathBuf> {
    let manifest = links.iter().find(|link| matches!(link.kind, Kind::Rust(_))).map_or("", |link| link.href.as_str());
    let mut cargo = from.cargo();
    cargo.current_dir(&places.root).args(["build", "--target", wasm_std::TARGET, "--profile", profile]);
    cargo.args(["--bin", &program.bin, "--manifest-path"]).arg(places.root.join(manifest));
    cargo.arg("--target-dir").arg(&places.target);
    process::run(&mut cargo, "compiling the page")?;
    // Cargo keeps the folder name of old for this one profile.
    let folder = if profile == "dev" { "debug" } else { profile };
    Ok(places.target.join(wasm_std::TARGET).join(folder).join(format!("{}.wasm", program.bin)))
}

/// Puts the finished stage, a folder inside `dist`, in the place of what `dist` held.
fn publish(stage: &Path, dist: &Path) -> Outcome<()> {
    for old in files::entries(dist)? {
        if old != stage {
            files::remove(&old)?;
        }
    }
    for new in files::entries(stage)? {
        let target = dist.join(new.file_name().unwrap_or_default());
        fs::rename(&new, &target).map_err(|e| Failure::at("move", &new, e))?;
    }
    files::remove(stage)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn publishing_replaces_everything_and_leaves_no_stage() -> Result<(), Box<dyn std::error::Error>> {
        let folder = tempfile::tempdir()?;
        let (dist, stage) = (folder.path().to_path_buf(), folder.path().join(".stage"));
        fs::create_dir(&stage)?;
        fs::write(dist.join("old-1.css"), "old")?;
        fs::write(dist.join("index.html"), "old")?;
        fs::write(stage.join("index.html"), "new")?;
        publish(&stage, &dist)?;
        assert_eq!(files::entries(&dist)?, [dist.join("index.html")]);
        assert_eq!(fs::read_to_string(dist.join("index.html"))?, "new");
        Ok(())
    }
}
