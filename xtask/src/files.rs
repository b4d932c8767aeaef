//! Reading and writing files, with failures that name the file.

use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use crate::failure::{Failure, Outcome};

/// Reads a file.
///
/// # Errors
/// When it is not there or cannot be read.
pub fn read(path: &Path) -> Outcome<Vec<u8>> {
    fs::read(path).map_err(|e| Failure::at("read", path, e))
}

/// Reads a file of text.
///
/// # Errors
/// As [`read`], and when it is not UTF-8.
pub fn read_text(path: &Path) -> Outcome<String> {
    fs::read_to_string(path).map_err(|e| Failure::at("read", path, e))
}

/// Writes a file.
///
/// # Errors
/// When it cannot be written.
pub fn write(path: &Path, content: &[u8]) -> Outcome<()> {
    fs::write(path, content).map_err(|e| Failure::at("write", path, e))
}

/// Leaves an empty folder at `path`, whatever was there.
///
/// # Errors
/// When the old one cannot be removed or the new one not made.
pub fn make_folder_empty(path: &Path) -> Outcome<()> {
    remove(path)?;
    fs::create_dir_all(path).map_err(|e| Failure::at("make the folder", path, e))
}

/// Removes a file or a folder with all it holds. Nothing there is fine.
///
/// # Errors
/// When it cannot be removed.
pub fn remove(path: &Path) -> Outcome<()> {
    let result = match fs::symlink_metadata(path) {
        Ok(data) if data.is_dir() => fs::remove_dir_all(path),
        Ok(_) => fs::remove_file(path),
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(()),
        Err(error) => Err(error),
    };
    result.map_err(|e| Failure::at("remove", path, e))
}

/// Copies a folder with all it holds.
///
/// # Errors
/// When something cannot be read or written.
pub fn copy_folder(from: &Path, to: &Path) -> Outcome<()> {
    fs::create_dir_all(to).map_err(|e| Failure::at("make the folder", to, e))?;
    for path in entries(from)? {
        let Some(name) = path.file_name() else { continue };
        let target = to.join(name);
        if path.is_dir() {
            copy_folder(&path, &target)?;
        } else {
            fs::copy(&path, &target).map_err(|e| Failure::at("copy", &path, e))?;
        }
    }
    Ok(())
}

/// What a folder holds, in the order of names.
///
/// # Errors
/// When it cannot be read.
pub fn entries(folder: &Path) -> Outcome<Vec<PathBuf>> {
    let broken = |e| Failure::at("read the folder", folder, e);
    let mut paths = Vec::new();
    for entry in fs::read_dir(folder).map_err(broken)? {
        paths.push(entry.map_err(broken)?.path());
    }
    paths.sort();
    Ok(paths)
}
