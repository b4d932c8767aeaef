//! The house in order: what each layer may know, the documented format, the words.

use standfast_core::place::Field;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("workspace").to_owned()
}

fn read(path: &str) -> String {
    std::fs::read_to_string(root().join(path)).unwrap_or_else(|e| panic!("{path}: {e}"))
}

fn rust_files(folder: &str) -> Vec<(String, String)> {
    fn walk(folder: &Path, found: &mut Vec<PathBuf>) {
        for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|e| e == "rs") {
                found.push(path);
            }
        }
    }
    let mut found = Vec::new();
    walk(&root().join(folder), &mut found);
    assert!(!found.is_empty(), "{folder} has no code");
    let name = |p: &PathBuf| p.strip_prefix(root()).unwrap_or(p).display().to_string();
    found.iter().map(|p| (name(p), std::fs::read_to_string(p).unwrap_or_default())).collect()
}

/// The code of a file without its tests and comments.
fn code(text: &str) -> String {
    let text = text.split("#[cfg(test)]").next().unwrap_or_default();
    text.lines().filter(|l| !l.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")
}

/// From the ground up: a file of the core uses only what stands above it in this list.
const LAYERS: [&str; 53] = [
    "scalar",
    "units",
    "number",
    "rules",
    "material",
    "friction",
    "pallet",
    "checklist",
    "document",
    "place",
    "known",
    "closure",
    "doubt",
    "problem",
    "polygon",
    "solid",
    "picture",
    "composite",
    "traced",
    "weighed",
    "found",
    "scenario",
    "validate",
    "field",
    "support",
    "corner",
    "body",
    "statics",
    "wheels",
    "stance",
    "platform",
    "balance",
    "plate",
    "bearing",
    "forks",
    "step",
    "seat",
    "verdict",
    "book",
    "schema",
    "covering",
    "whole",
    "gain",
    "limit",
    "remedy",
    "capacity",
    "region",
    "scene",
    "report",
    "request",
    "day",
    "table",
    "example",
];

#[test]
fn the_core_uses_only_what_stands_below() {
    for (name, text) in rust_files("core/src") {
        let module = name.trim_start_matches("core/src/").trim_end_matches(".rs");
        if module == "lib" || module.ends_with("/tests") {
            continue;
        }
        let module = module.split('/').next().unwrap_or(module);
        let height = LAYERS.iter().position(|l| *l == module).unwrap_or_else(|| panic!("{name} is in no layer"));
        let text = code(&text);
        for (other, layer) in LAYERS.iter().enumerate() {
            let used = text.contains(&format!("crate::{layer}::")) || text.contains(&format!("crate::{layer};"));
            assert!(!used || other < height || *layer == module, "{name} uses {layer}, which stands above it");
        }
        let braces = text.lines().filter(|l| l.contains("use crate::{")).count();
        assert_eq!(braces, 0, "{name}: one `use crate::layer` a line, so that this test can read it");
    }
}

#[test]
fn the_core_knows_no_browser_clock_file_or_chance() {
    let manifest = read("core/Cargo.toml");
    let own = manifest.split("[dependencies]").nth(1).and_then(|t| t.split('[').next()).unwrap_or_default();
    let names: Vec<_> = own
        .lines()
        .filter(|l| !l.starts_with('#'))
        .filter_map(|l| l.split(['.', ' ', '=']).next())
        .filter(|n| !n.is_empty())
        .collect();
    assert_eq!(names, ["glam", "libm", "serde", "serde_json", "schemars"]);
    for (name, text) in rust_files("core/src") {
        let text = code(&text);
        for word in ["std::fs", "std::time", "std::env::", "std::net", "std::process", "rand::", "web_sys", "println!"]
        {
            assert!(!text.contains(word), "{name} uses {word}");
        }
    }
}

/// No published figure, formula or limit in the page: what it shows, it reads from the core.
#[test]
fn the_page_has_no_mechanics() {
    for (name, text) in rust_files("web/src") {
        let text = code(&text);
        for word in
            ["9.80", "9.81", "libm::", "0.0254", "0.45359", "statics::", "stance::", "balance::", "step::Step::"]
        {
            // Drawing a turned outline needs a turn, and a weight in kg the one constant of the core.
            let drawing = word == "libm::" && name.contains("drawing/");
            assert!(drawing || !text.contains(word), "{name} has {word}");
        }
    }
}

/// The word is never used for a result.
#[test]
fn nothing_is_ever_called_safe() {
    let files = rust_files("web/src").into_iter().chain(rust_files("core/src"));
    // Titles of published sources stand in the table of figures as they are.
    for (name, text) in files.filter(|(name, _)| name != "core/src/rules.rs") {
        for (k, line) in code(&text).lines().enumerate() {
            let in_quotes = line.split('"').skip(1).step_by(2).collect::<String>().to_lowercase();
            let word = in_quotes.split(|c: char| !c.is_alphabetic()).any(|w| matches!(w, "safe" | "safely" | "safety"));
            assert!(!word, "{name}, line {k}: {line}");
        }
    }
}

#[test]
fn the_documented_format_is_the_programs_own() {
    let text = read("core/FORMAT.md");
    let rows: Vec<Vec<&str>> = text
        .lines()
        .filter(|l| l.starts_with("| `") && l.matches('|').count() == 6)
        .map(|l| l.split('|').map(str::trim).collect())
        .collect();
    assert_eq!(rows.len(), Field::NUMBERS.len());
    for (field, cells) in Field::NUMBERS.iter().zip(rows) {
        let row = field.row();
        assert_eq!(cells[1], format!("`{}`", row.path));
        assert_eq!(cells[2].parse(), Ok(row.min), "{}", row.path);
        assert_eq!(cells[3].parse(), Ok(row.max), "{}", row.path);
        assert_eq!(cells[4] == "yes", row.required, "{}", row.path);
    }
}

#[test]
fn no_file_has_grown_past_reading() {
    let folders = ["core/src", "web/src", "xtask/src", "tests/tests", "tests/src"];
    for (name, text) in folders.into_iter().flat_map(rust_files) {
        let lines = text.lines().count();
        assert!(lines <= 450, "{name} has {lines} lines");
    }
}
