//! The page as one file that opens from a disk or a stick, without a server.
//!
//! A browser refuses modules, WebAssembly and checked style sheets from `file:`, so all of it goes into the text: the
//! style as a style block, the script as an inline module, and the program as base64 in a block that the script reads.

use crate::failure::{Failure, Outcome};
use crate::html::{self, Tag};
use crate::post_build::{self, ProgramFiles};
use crate::{csp, digest, mime};

/// Makes the single file out of a built page. `file` gives the content of a file of the page.
///
/// # Errors
/// When a file is missing, or the page has no head or body.
pub fn make(page: &str, program: &ProgramFiles, file: impl Fn(&str) -> Outcome<Vec<u8>>) -> Outcome<String> {
    let text = |name: &str| -> Outcome<String> {
        String::from_utf8(file(name)?).map_err(|_| Failure::new(format!("{name} is not text")))
    };
    let tags = html::tags(page);
    let mut style = String::from("\n");
    let mut edits = Vec::new();
    for tag in &tags {
        let name = tag.get("href").map(post_build::linked_name);
        match name {
            Some(name) if tag.is_link("stylesheet") => {
                style.push_str(&text(name)?);
                edits.push((tag.place.clone(), String::new()));
            }
            Some(name) if tag.is_link("icon") => edits.push((tag.place.clone(), icon(name, &file(name)?))),
            // Every other link fetches something, and the scripts start what is started differently here.
            _ if tag.name == "link" || tag.name == "script" || post_build::is_policy(tag) => {
                edits.push((tag.place.clone(), String::new()));
            }
            _ => {}
        }
    }
    let style = escape_end(&style, "style");
    let script = starter(&text(&program.script)?);

    let top = post_build::policy_place(&tags)?;
    let policy = csp::meta(&csp::for_single_file(&script, &style));
    edits.push((top..top, format!("\n{policy}\n<style>{style}</style>")));
    let bottom = page.rfind("</body>").ok_or_else(|| Failure::new("the page has no </body>"))?;
    let module = digest::base64(&file(&program.module)?);
    edits.push((
        bottom..bottom,
        format!(
            "<script type=\"application/wasm-base64\" id=\"standfast-program\">{module}</script>\n\
             <script type=\"module\">{script}</script>\n"
        ),
    ));
    Ok(without_blank_lines(&html::replace(page, edits)))
}

/// The inline module: the bindings, and the lines that start the program from the block.
fn starter(bindings: &str) -> String {
    let exports = exported_names(bindings).join(", ");
    let start = format!(
        "\n{{\n\
         const block = document.getElementById('standfast-program');\n\
         const bytes = Uint8Array.from(atob(block.textContent), (c) => c.charCodeAt(0));\n\
         block.remove();\n\
         await __wbg_init({{ module_or_path: bytes }});\n\
         window.wasmBindings = {{ {exports} }};\n\
         }}\n"
    );
    escape_end(&(bindings.to_owned() + &start), "script")
}

/// The functions that the bindings export, to be offered on the window as the page in a folder does.
fn exported_names(bindings: &str) -> Vec<&str> {
    bindings
        .lines()
        .filter_map(|line| line.strip_prefix("export function ").or_else(|| line.strip_prefix("export class ")))
        .filter_map(|rest| rest.split(|c: char| !c.is_alphanumeric() && c != '_' && c != '$').next())
        .collect()
}

/// An icon as part of the text.
fn icon(name: &str, content: &[u8]) -> String {
    let kind = mime::of(name.as_ref());
    format!("<link rel=\"icon\" href=\"data:{kind};base64,{}\">", digest::base64(content))
}

/// Breaks up every end tag, and comment start, that would end the block early. In the strings of scripts and style
/// sheets, the only places where these can stand, the added backslash changes nothing.
fn escape_end(text: &str, element: &str) -> String {
    let mut result = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find('<') {
        let (before, after) = rest.split_at(at + 1);
        result.push_str(before);
        let ends = after.strip_prefix('/').and_then(|tail| tail.get(..element.len()));
        if ends.is_some_and(|name| name.eq_ignore_ascii_case(element)) || after.starts_with("!--") {
            result.push('\\');
        }
        rest = after;
    }
    result + rest
}

/// Takes out the empty lines that removed links leave before the body's end. Scripts and styles, whose hashes stand
/// in the policy, keep theirs.
fn without_blank_lines(page: &str) -> String {
    let blocks: Vec<Tag> = html::tags(page).into_iter().filter(|tag| !tag.text.is_empty()).collect();
    let mut result = String::with_capacity(page.len());
    let mut at = 0;
    for line in page.split_inclusive('\n') {
        let inside = blocks.iter().any(|tag| tag.text.contains(&at));
        if inside || !line.trim().is_empty() {
            result.push_str(line);
        }
        at += line.len();
    }
    result
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = r#"<!doctype html><html><head>
<meta charset="utf-8">
<link rel="stylesheet" href="./app-1.css">
<link rel="icon" href="./icon-1.svg">
<link rel="manifest" href="m.webmanifest">
<link rel="modulepreload" href="./page-1.js"><link rel="preload" href="./page-1_bg.wasm">
<script type="module">import './page-1.js';</script>
</head><body><p>Starting</p></body></html>
"#;

    fn single() -> Outcome<String> {
        let program = ProgramFiles { script: "page-1.js".into(), module: "page-1_bg.wasm".into() };
        make(PAGE, &program, |name| match name {
            "app-1.css" => Ok(b"p{margin:0}\n\nb{}".to_vec()),
            "icon-1.svg" => Ok(b"<svg/>".to_vec()),
            "page-1.js" => Ok(b"export function assess(a) {}\n\nconst s = '</script>';\n".to_vec()),
            "page-1_bg.wasm" => Ok(b"\0asm".to_vec()),
            other => Err(Failure::new(other)),
        })
    }

    #[test]
    fn nothing_is_fetched() -> Outcome<()> {
        let single = single()?;
        for tag in html::tags(&single) {
            assert_eq!(tag.get("src"), None);
            assert!(tag.get("href").is_none_or(|href| href.starts_with("data:")), "{tag:?}");
        }
        assert!(single.contains("<p>Starting</p>") && single.contains(">AGFzbQ==</script>"), "{single}");
        Ok(())
    }

    #[test]
    fn the_policy_holds_the_hashes_of_what_is_there() -> Outcome<()> {
        let single = single()?;
        let tags = html::tags(&single);
        let text = |name: &str, kind: Option<&str>| {
            tags.iter().find(|tag| tag.name == name && tag.get("type") == kind).map(|tag| &single[tag.text.clone()])
        };
        let (script, style) = (text("script", Some("module")).unwrap(), text("style", None).unwrap());
        assert!(single.contains(&csp::for_single_file(script, style)), "{single}");
        assert!(style.contains("p{margin:0}\n\nb{}"), "blank lines inside stay: {style}");
        assert!(script.contains("window.wasmBindings = { assess };"), "{script}");
        Ok(())
    }

    #[test]
    fn an_end_tag_in_a_string_does_not_end_the_block() {
        assert_eq!(escape_end("'</script>'", "script"), r"'<\/script>'");
        assert_eq!(escape_end("'</SCRIPT ' < 1", "script"), r"'<\/SCRIPT ' < 1");
        assert_eq!(escape_end("'<!--'", "script"), r"'<\!--'");
        assert_eq!(escape_end("a</b 1</style", "script"), "a</b 1</style");
        assert_eq!(escape_end("</", "style"), "</");
        assert_eq!(escape_end("'</ſcript'", "script"), "'</ſcript'");
    }

    #[test]
    fn a_page_without_body_or_with_a_missing_file_is_refused() {
        let program = ProgramFiles { script: "a.js".into(), module: "a.wasm".into() };
        assert!(make("<head></head>", &program, |_| Ok(Vec::new())).is_err());
        assert!(make(PAGE, &program, |name| Err(Failure::new(name))).is_err());
    }
}
