//! The last step of every build, by this program or by trunk: security policy, stable name, single file.

use std::path::Path;

use crate::failure::{Failure, Outcome};
use crate::html::{self, Tag};
use crate::{csp, files, single_file};

/// The single file, beside the page.
pub const SINGLE_FILE: &str = "standfast.html";
/// The module for other pages, under a name that does not change from build to build.
pub const STABLE_MODULE: &str = "standfast.js";

/// The names of the program's two files, as the page loads them.
#[derive(Debug, PartialEq, Eq)]
pub struct ProgramFiles {
    /// The ES module.
    pub script: String,
    /// The WebAssembly module.
    pub module: String,
}

/// Finishes the page in `folder`. Running it twice gives the same as once.
///
/// # Errors
/// When the folder holds no page that loads a program.
pub fn run(folder: &Path) -> Outcome<()> {
    let path = folder.join("index.html");
    let page = files::read_text(&path)?;
    let program = program_files(&page)?;
    let single = single_file::make(&page, &program, |name| files::read(&folder.join(name)))?;
    files::write(&folder.join(SINGLE_FILE), single.as_bytes())?;
    files::write(&folder.join(STABLE_MODULE), stable_module(&program).as_bytes())?;
    files::write(&path, secure(&page)?.as_bytes())
}

/// The file that a relative link names.
pub fn linked_name(href: &str) -> &str {
    href.trim_start_matches("./").trim_start_matches('/')
}

/// Whether the tag is a security policy, which is always written anew.
pub fn is_policy(tag: &Tag) -> bool {
    tag.name == "meta"
        && tag.get("http-equiv").is_some_and(|value| value.eq_ignore_ascii_case("content-security-policy"))
}

/// The place for the policy: after the character set, which must be at the very top, and before all that loads.
///
/// # Errors
/// When the page has neither.
pub fn policy_place(tags: &[Tag]) -> Outcome<usize> {
    tags.iter()
        .find(|tag| tag.name == "meta" && tag.get("charset").is_some())
        .or_else(|| tags.iter().find(|tag| tag.name == "head"))
        .map(|tag| tag.place.end)
        .ok_or_else(|| Failure::new("the page has no <head> to put the security policy into"))
}

/// Finds the program by the links that load it early.
fn program_files(page: &str) -> Outcome<ProgramFiles> {
    let tags = html::tags(page);
    let find = |relation: &str, ending: &str| {
        tags.iter()
            .filter(|tag| tag.is_link(relation))
            .filter_map(|tag| tag.get("href"))
            .find(|href| href.ends_with(ending))
            .map(|href| linked_name(href).to_owned())
            .ok_or_else(|| {
                Failure::new(format!("the page has no <link rel=\"{relation}\"> of a {ending} file: was it built?"))
            })
    };
    Ok(ProgramFiles { script: find("modulepreload", ".js")?, module: find("preload", ".wasm")? })
}

/// The page with its policy.
fn secure(page: &str) -> Outcome<String> {
    let tags = html::tags(page);
    let scripts: Vec<&str> = tags
        .iter()
        .filter(|tag| tag.name == "script" && tag.get("src").is_none())
        .map(|tag| &page[tag.text.clone()])
        .collect();
    let place = policy_place(&tags)?;
    let mut edits = vec![(place..place, format!("\n{}", csp::meta(&csp::for_folder(&scripts))))];
    for tag in &tags {
        if is_policy(tag) {
            edits.push((with_line_end_before(page, tag), String::new()));
        } else if tag.is_link("preload") && tag.get("integrity").is_some() {
            // Trunk adds it; browsers do not obey it on this kind of link and warn at every load.
            let kept: String = tag
                .attributes()
                .filter(|(name, _)| *name != "integrity")
                .map(|(name, value)| format!(" {name}=\"{value}\""))
                .collect();
            edits.push((tag.place.clone(), format!("<link{kept}>")));
        }
    }
    Ok(html::replace(page, edits))
}

/// The place of a tag and of the line end before it, so that taking it out undoes putting it in.
fn with_line_end_before(page: &str, tag: &Tag) -> std::ops::Range<usize> {
    let start = if page[..tag.place.start].ends_with('\n') { tag.place.start - 1 } else { tag.place.start };
    start..tag.place.end
}

/// A module that passes on the program's exports and knows where its WebAssembly lies.
fn stable_module(program: &ProgramFiles) -> String {
    let ProgramFiles { script, module } = program;
    format!(
        "// For pages that embed the program: import start, {{ assess }} from './{STABLE_MODULE}'; await start();\n\
         import init from './{script}';\n\
         export * from './{script}';\n\
         export default function start() {{\n\
         \x20 return init({{ module_or_path: new URL('./{module}', import.meta.url) }});\n\
         }}\n"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// In the form that trunk gives it.
    const PAGE: &str = r#"<!DOCTYPE html><html><head>
<meta charset="utf-8">
<link rel="stylesheet" href="./app-1.css" integrity="sha384-a"/>
<script type="module">import init from './page-1.js'; await init('./page-1_bg.wasm');</script>
<link rel="modulepreload" href="./page-1.js" crossorigin="anonymous" integrity="sha384-b">
<link rel="preload" href="./page-1_bg.wasm" crossorigin="anonymous" integrity="sha384-c" as="fetch" type="application/wasm">
</head><body></body></html>"#;

    #[test]
    fn the_program_is_found_by_its_links() {
        let names = ProgramFiles { script: "page-1.js".into(), module: "page-1_bg.wasm".into() };
        assert_eq!(program_files(PAGE), Ok(names));
        assert!(program_files("<head></head>").is_err());
    }

    #[test]
    fn the_policy_comes_first_and_admits_the_script() -> Outcome<()> {
        let secured = secure(PAGE)?;
        let tags = html::tags(&secured);
        let policy = tags.iter().position(is_policy);
        let first_link = tags.iter().position(|tag| tag.name == "link");
        assert!(policy.is_some() && policy < first_link, "{secured}");
        assert!(secured.contains(" 'sha256-"), "{secured}");
        Ok(())
    }

    #[test]
    fn finishing_twice_is_finishing_once() -> Outcome<()> {
        let once = secure(PAGE)?;
        assert_eq!(secure(&once)?, once);
        Ok(())
    }

    #[test]
    fn only_the_useless_integrity_goes() -> Outcome<()> {
        let secured = secure(PAGE)?;
        assert!(secured.contains("sha384-a") && secured.contains("sha384-b"), "{secured}");
        assert!(!secured.contains("sha384-c"), "{secured}");
        assert!(secured.contains(r#"href="./page-1_bg.wasm" crossorigin="anonymous" as="fetch""#), "{secured}");
        Ok(())
    }

    #[test]
    fn the_stable_module_passes_on_and_starts() {
        let text = stable_module(&ProgramFiles { script: "page-1.js".into(), module: "page-1_bg.wasm".into() });
        assert!(text.contains("export * from './page-1.js';"), "{text}");
        assert!(text.contains("new URL('./page-1_bg.wasm', import.meta.url)"), "{text}");
    }
}
