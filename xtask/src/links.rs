//! The `data-trunk` links of `index.html`: what the page is made of.

use std::ops::Range;

use crate::command::Mode;
use crate::failure::{Failure, Outcome};
use crate::html;

/// One part of the page, and where its link stands in the source.
#[derive(Debug, PartialEq, Eq)]
pub struct Link {
    /// The place of the link, to be replaced by what the part becomes.
    pub place: Range<usize>,
    /// The file or folder it names, relative to `index.html`.
    pub href: String,
    /// What to do with it.
    pub kind: Kind,
}

/// The kinds of link that are understood. Trunk knows more; any other is refused, so that both tools always agree.
#[derive(Debug, PartialEq, Eq)]
pub enum Kind {
    /// The program.
    Rust(Program),
    /// A style sheet.
    Css,
    /// The icon beside the page's title.
    Icon,
    /// A file that keeps its name.
    CopyFile,
    /// A folder that keeps its name.
    CopyDir,
}

/// How the program is built.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Program {
    /// The name of the binary.
    pub bin: String,
    /// Cargo's profile for a release.
    pub release_profile: String,
    /// Cargo's profile for a quick build.
    pub dev_profile: String,
    /// wasm-opt's level for a release (`z` makes it `-Oz`); `None` leaves the module as it is.
    pub optimise: Option<String>,
}

impl Program {
    /// The cargo profile of a mode.
    pub fn profile(&self, mode: Mode) -> &str {
        match mode {
            Mode::Dev => &self.dev_profile,
            Mode::Release => &self.release_profile,
        }
    }
}

/// Attributes that say something about any link.
const COMMON: [&str; 3] = ["data-trunk", "rel", "href"];
/// Attributes of the program's link.
const PROGRAM: [&str; 5] =
    ["data-bin", "data-wasm-opt", "data-cargo-profile", "data-cargo-profile-release", "data-cargo-profile-dev"];

/// Reads the links of the page.
///
/// # Errors
/// When a link is of an unknown kind, has an attribute that only trunk would obey, or lacks what it needs, when there
/// is not exactly one program, and when the page has a script of its own: the single file would lose it.
pub fn read(html: &str) -> Outcome<Vec<Link>> {
    let tags = html::tags(html);
    if tags.iter().any(|tag| tag.name == "script" || tag.name == "style") {
        return Err(Failure::new("index.html may hold no <script> or <style> of its own: program and style are links"));
    }
    let links: Vec<Link> =
        tags.iter().filter(|tag| tag.get("data-trunk").is_some()).map(read_one).collect::<Outcome<_>>()?;
    match links.iter().filter(|link| matches!(link.kind, Kind::Rust(_))).count() {
        1 => Ok(links),
        n => Err(Failure::new(format!("index.html must name one program by <link data-trunk rel=\"rust\">, not {n}"))),
    }
}

fn read_one(tag: &html::Tag) -> Outcome<Link> {
    let relation = tag.get("rel").unwrap_or_default();
    let complain =
        |what: String| Failure::new(format!("index.html, <{} data-trunk rel=\"{relation}\">: {what}", tag.name));
    let kind = match (tag.name.as_str(), relation) {
        ("link", "rust") => {
            let bin = tag.get("data-bin").ok_or_else(|| complain("data-bin is missing".into()))?;
            let profile = |mode: &str, otherwise: &str| {
                let own = tag.get(&format!("data-cargo-profile-{mode}")).or_else(|| tag.get("data-cargo-profile"));
                own.unwrap_or(otherwise).to_owned()
            };
            Kind::Rust(Program {
                bin: bin.to_owned(),
                release_profile: profile("release", "release"),
                dev_profile: profile("dev", "dev"),
                optimise: tag.get("data-wasm-opt").filter(|level| *level != "0").map(str::to_owned),
            })
        }
        ("link", "css") => Kind::Css,
        ("link", "icon") => Kind::Icon,
        ("link", "copy-file") => Kind::CopyFile,
        ("link", "copy-dir") => Kind::CopyDir,
        _ => return Err(complain("cargo xtask does not know this kind".into())),
    };
    for (name, _) in tag.attributes() {
        let known = COMMON.contains(&name) || matches!(kind, Kind::Rust(_)) && PROGRAM.contains(&name);
        if !known {
            return Err(complain(format!("cargo xtask does not know the attribute {name}")));
        }
    }
    let href = tag.get("href").filter(|href| !href.is_empty()).ok_or_else(|| complain("href is missing".into()))?;
    Ok(Link { place: tag.place.clone(), href: href.to_owned(), kind })
}

#[cfg(test)]
mod tests {
    use super::*;

    const RUST: &str = r#"<link data-trunk rel="rust" href="web/Cargo.toml" data-bin="page">"#;

    #[test]
    fn the_kinds_are_told_apart_and_other_links_left_alone() -> Outcome<()> {
        let html = format!(
            r#"<link rel="manifest" href="m"><link data-trunk rel="css" href="a.css">{RUST}
            <link data-trunk rel="icon" href="i.svg"><link data-trunk rel="copy-file" href="f">
            <link data-trunk rel="copy-dir" href="d">"#
        );
        let links = read(&html)?;
        let hrefs: Vec<&str> = links.iter().map(|link| link.href.as_str()).collect();
        assert_eq!(hrefs, ["a.css", "web/Cargo.toml", "i.svg", "f", "d"]);
        assert_eq!(links[0].kind, Kind::Css);
        assert_eq!(&html[links[1].place.clone()], RUST);
        assert_eq!(links[2].kind, Kind::Icon);
        assert_eq!(links[3].kind, Kind::CopyFile);
        assert_eq!(links[4].kind, Kind::CopyDir);
        Ok(())
    }

    #[test]
    fn profiles_default_to_cargos_own_and_can_be_set() -> Outcome<()> {
        let program = |more: &str| -> Outcome<Program> {
            let html = RUST.replace('>', &format!(" {more}>"));
            match read(&html)?.remove(0).kind {
                Kind::Rust(program) => Ok(program),
                other => Err(Failure::new(format!("{other:?}"))),
            }
        };
        let plain = program("")?;
        assert_eq!((plain.profile(Mode::Dev), plain.profile(Mode::Release)), ("dev", "release"));
        assert_eq!(plain.optimise, None);
        let set = program(r#"data-cargo-profile-release="page" data-wasm-opt="z""#)?;
        assert_eq!((set.profile(Mode::Dev), set.profile(Mode::Release)), ("dev", "page"));
        assert_eq!(set.optimise.as_deref(), Some("z"));
        assert_eq!(program(r#"data-cargo-profile="both""#)?.profile(Mode::Dev), "both");
        assert_eq!(program(r#"data-wasm-opt="0""#)?.optimise, None);
        Ok(())
    }

    #[test]
    fn what_only_trunk_would_understand_is_refused_by_name() {
        for (html, word) in [
            (format!(r#"{RUST}<link data-trunk rel="sass" href="a">"#), "sass"),
            (format!(r#"{RUST}<base data-trunk href="a">"#), "<base"),
            (format!("{RUST}<script>go()</script>"), "<script>"),
            (format!(r#"{RUST}<link data-trunk rel="css" href="a" data-inline>"#), "data-inline"),
            (format!(r#"{RUST}<link data-trunk rel="css">"#), "href is missing"),
            (r#"<link data-trunk rel="rust" href="Cargo.toml">"#.to_owned(), "data-bin is missing"),
            (format!("{RUST}{RUST}"), "not 2"),
            ("<p>".to_owned(), "not 0"),
        ] {
            let result = read(&html).map_err(|e| e.to_string());
            assert!(result.as_ref().is_err_and(|e| e.contains(word)), "{html}: {result:?}");
        }
    }
}
