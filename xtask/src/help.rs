//! The text of `cargo xtask help`.

/// Printed by `help`, and when no command is given.
pub const TEXT: &str = "\
Standfast: build, serve and test the page.

  cargo xtask serve [--port N] [--release]
      Build the page and serve it to this machine only, at http://127.0.0.1:8080/ or, if that port is
      taken, at the next free one. Builds fast and large unless --release is given. Ctrl-C stops it.

  cargo xtask build [--dev]
      Leave the page in dist/, and the same page as one file that opens without a server in
      dist/standfast.html. --dev builds fast and large.

  cargo xtask test
      Format, lints, every test, documentation, the page, and the browser journeys. Stops at the first
      failure and ends with a line `N passed, N failed`.

  cargo xtask post-build [FOLDER]
      The last step of a build, for trunk's hook: security policy and single file.

  cargo xtask help
      This text.

What is missing is installed on first use, and only then: Rust's standard library for WebAssembly (by
rustup, or else Debian's rustc-web packages), wasm-opt (npm's binaryen), and for `test` chromium with its
driver (by apt-get).

Environment:
  WASM_STD=debian    take Debian's compiler for the WebAssembly part even where rustup could do it
  WASM_STD=rustup    never fall back on Debian's compiler
  CARGO_TARGET_DIR   where cargo builds, as usual (default: target/)
  XDG_CACHE_HOME     tools are kept in its folder standfast/tools (default: ~/.cache)
";
