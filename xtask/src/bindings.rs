//! The bindings: JavaScript that loads the program, and the program made to fit it.

use std::path::Path;

use wasm_bindgen_cli_support::Bindgen;

use crate::command::Mode;
use crate::failure::{Failure, Outcome};
use crate::files;

/// The program, ready for a browser.
#[derive(Debug)]
pub struct Bound {
    /// The ES module.
    pub script: String,
    /// The WebAssembly module.
    pub module: Vec<u8>,
}

/// Makes the bindings of a compiled program. `scratch` is emptied and used.
///
/// # Errors
/// When the program was compiled for another version of the bindings, and when it brings JavaScript files of its own:
/// the single file has no place for them.
pub fn generate(compiled: &Path, bin: &str, mode: Mode, scratch: &Path) -> Outcome<Bound> {
    files::make_folder_empty(scratch)?;
    let shipped = mode == Mode::Release;
    let mut generator = Bindgen::new();
    // The tool's errors come as a chain; `{:#}` prints all of it in one line.
    let broken = |e| Failure::new(format!("cannot make the JavaScript bindings: {e:#}"));
    generator
        .input_path(compiled)
        .web(true)
        .map_err(broken)?
        .out_name(bin)
        .typescript(false)
        .keep_debug(false)
        .remove_name_section(shipped)
        .remove_producers_section(shipped);
    generator.generate(scratch).map_err(broken)?;
    if scratch.join("snippets").exists() {
        return Err(Failure::new(
            "a crate brings JavaScript files of its own (wasm-bindgen `snippets`). The single file cannot hold them: \
             use a crate that does without, or web-sys",
        ));
    }
    Ok(Bound {
        script: files::read_text(&scratch.join(format!("{bin}.js")))?,
        module: files::read(&scratch.join(format!("{bin}_bg.wasm")))?,
    })
}
