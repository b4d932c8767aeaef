//! Puts the parts of the page into a folder, as trunk would: each `data-trunk` link becomes what the browser needs.

use std::fs;
use std::path::Path;

use crate::bindings::Bound;
use crate::failure::{Failure, Outcome};
use crate::links::{Kind, Link};
use crate::{digest, files, html};

/// Writes the page into `stage`, an empty folder. `base` is the folder of `index.html`, `source` its text.
///
/// Program, style sheet and icon get names that change with their content; copied files keep theirs.
///
/// # Errors
/// When a part is missing or the folder cannot be written.
pub fn page(source: &str, links: &[Link], bound: &Bound, base: &Path, stage: &Path) -> Outcome<()> {
    let mut edits = Vec::new();
    for link in links {
        let path = base.join(&link.href);
        let element = match &link.kind {
            Kind::Rust(program) => program_element(&program.bin, bound, stage)?,
            Kind::Css => format!("<link rel=\"stylesheet\" href=\"./{}\">", place_tagged(&path, stage)?),
            Kind::Icon => format!("<link rel=\"icon\" href=\"./{}\">", place_tagged(&path, stage)?),
            Kind::CopyFile => {
                let target = stage.join(file_name(&path)?);
                fs::copy(&path, target).map_err(|e| Failure::at("copy", &path, e))?;
                String::new()
            }
            Kind::CopyDir => {
                files::copy_folder(&path, &stage.join(file_name(&path)?))?;
                String::new()
            }
        };
        edits.push((link.place.clone(), element));
    }
    files::write(&stage.join("index.html"), html::replace(source, edits).as_bytes())
}

/// Writes the program and gives the elements that fetch and start it, in the manner of trunk.
fn program_element(bin: &str, bound: &Bound, stage: &Path) -> Outcome<String> {
    // One tag for both: script and module only fit together.
    let both = [bound.script.as_bytes(), &bound.module].concat();
    let name = format!("{bin}-{}", digest::name_tag(&both));
    let (script, module) = (format!("{name}.js"), format!("{name}_bg.wasm"));
    files::write(&stage.join(&script), bound.script.as_bytes())?;
    files::write(&stage.join(&module), &bound.module)?;
    Ok(format!(
        "<link rel=\"modulepreload\" href=\"./{script}\" crossorigin=\"anonymous\">\n\
         <link rel=\"preload\" href=\"./{module}\" crossorigin=\"anonymous\" as=\"fetch\" type=\"application/wasm\">\n\
         <script type=\"module\">\n\
         import init, * as bindings from './{script}';\n\
         await init({{ module_or_path: './{module}' }});\n\
         window.wasmBindings = bindings;\n\
         </script>"
    ))
}

/// Copies a file under a name that changes with its content, and gives that name.
fn place_tagged(path: &Path, stage: &Path) -> Outcome<String> {
    let content = files::read(path)?;
    let tag = digest::name_tag(&content);
    let name = file_name(path)?;
    let tagged = match name.rsplit_once('.') {
        Some((stem, ending)) => format!("{stem}-{tag}.{ending}"),
        None => format!("{name}-{tag}"),
    };
    files::write(&stage.join(&tagged), &content)?;
    Ok(tagged)
}

fn file_name(path: &Path) -> Outcome<&str> {
    path.file_name()
        .and_then(|name| name.to_str())
        .ok_or_else(|| Failure::at("use the name of", path, "it is no plain file name"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::links;

    #[test]
    fn links_become_elements_and_files() -> Result<(), Box<dyn std::error::Error>> {
        let folder = tempfile::tempdir()?;
        let (base, stage) = (folder.path().join("base"), folder.path().join("stage"));
        fs::create_dir_all(base.join("extra"))?;
        fs::create_dir(&stage)?;
        for (name, text) in [("app.css", "p{}"), ("icon.svg", "<svg/>"), ("robots.txt", "x"), ("extra/a.txt", "y")] {
            fs::write(base.join(name), text)?;
        }
        let source = r#"<head><link data-trunk rel="css" href="app.css"><link data-trunk rel="icon" href="icon.svg">
            <link data-trunk rel="copy-file" href="robots.txt"><link data-trunk rel="copy-dir" href="extra">
            <link data-trunk rel="rust" href="Cargo.toml" data-bin="page"></head>"#;
        let bound = Bound { script: "export default 1".into(), module: b"\0asm".to_vec() };
        page(source, &links::read(source)?, &bound, &base, &stage)?;

        let html = fs::read_to_string(stage.join("index.html"))?;
        assert!(!html.contains("data-trunk"), "{html}");
        for tag in html::tags(&html) {
            if let Some(href) = tag.get("href") {
                assert!(stage.join(href).is_file(), "{href}");
            }
        }
        let relations: Vec<_> = html::tags(&html).iter().filter_map(|tag| tag.get("rel").map(str::to_owned)).collect();
        assert_eq!(relations, ["stylesheet", "icon", "modulepreload", "preload"]);
        assert_eq!(fs::read_to_string(stage.join("robots.txt"))?, "x");
        assert_eq!(fs::read_to_string(stage.join("extra/a.txt"))?, "y");

        fs::remove_file(base.join("app.css"))?;
        let result = page(source, &links::read(source)?, &bound, &base, &stage);
        assert!(result.is_err_and(|e| e.to_string().contains("app.css")));
        Ok(())
    }
}
