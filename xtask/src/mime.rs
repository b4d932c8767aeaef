//! Media types by file ending.

use std::path::Path;

/// The media type of a file. An ending that the page does not use is served as plain bytes.
pub fn of(path: &Path) -> &'static str {
    match path.extension().and_then(|ending| ending.to_str()).unwrap_or_default() {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "txt" | "md" => "text/plain; charset=utf-8",
        // Streaming compilation refuses any other type.
        "wasm" => "application/wasm",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "jpg" | "jpeg" => "image/jpeg",
        "ico" => "image/x-icon",
        "woff2" => "font/woff2",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_types_a_browser_insists_on() {
        for (name, kind) in [
            ("index.html", "text/html; charset=utf-8"),
            ("a/app-0f.js", "text/javascript; charset=utf-8"),
            ("page_bg-0f.wasm", "application/wasm"),
            ("app.css", "text/css; charset=utf-8"),
            ("icon.svg", "image/svg+xml"),
            ("README", "application/octet-stream"),
            ("page.wasm.bak", "application/octet-stream"),
        ] {
            assert_eq!(of(Path::new(name)), kind, "{name}");
        }
    }
}
