//! Content-security policies: what the page may load. Nothing from elsewhere, and no inline code but its own.

use crate::digest;

/// The policy of the page in a folder. Only its own files, and the inline scripts whose text is given.
///
/// `data:` and `blob:` images are the drawings on their way to a picture file.
pub fn for_folder(inline_scripts: &[&str]) -> String {
    let hashes: String = inline_scripts.iter().map(|text| format!(" {}", source_hash(text))).collect();
    format!(
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'{hashes}; style-src 'self'; \
         img-src 'self' data: blob:; connect-src 'self'; manifest-src 'self'; worker-src 'self'; \
         base-uri 'none'; form-action 'none'"
    )
}

/// The policy of the single file: its one script, its one style sheet, and no connection at all.
pub fn for_single_file(script: &str, style: &str) -> String {
    format!(
        "default-src 'none'; script-src 'wasm-unsafe-eval' {}; style-src {}; img-src data: blob:; \
         base-uri 'none'; form-action 'none'",
        source_hash(script),
        source_hash(style)
    )
}

/// The element that puts `policy` into force from its place in the head onwards.
pub fn meta(policy: &str) -> String {
    format!("<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">")
}

/// The hash that admits an inline script or style with exactly this text.
fn source_hash(text: &str) -> String {
    // Line ends are counted as the browser sees them: its reader turns CR LF into LF before hashing.
    let text = text.replace("\r\n", "\n");
    format!("'sha256-{}'", digest::base64(&digest::sha256(text.as_bytes())))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: the example of the CSP Level 2 recommendation, section "Usage of hash-source": `alert('Hello, world.');`
    #[test]
    fn the_hash_is_the_one_of_the_recommendation() {
        assert_eq!(source_hash("alert('Hello, world.');"), "'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='");
    }

    #[test]
    fn line_ends_do_not_change_the_hash() {
        assert_eq!(source_hash("a\r\nb"), source_hash("a\nb"));
    }

    #[test]
    fn every_inline_script_is_admitted_and_nothing_else_inline() {
        let policy = for_folder(&["one()", "two()"]);
        for text in ["one()", "two()"] {
            assert!(policy.contains(&source_hash(text)), "{policy}");
        }
        for policy in [policy, for_single_file("one()", "p{}")] {
            assert!(policy.starts_with("default-src 'none'"), "{policy}");
            assert!(!policy.contains("unsafe-inline") && !policy.contains("'unsafe-eval'"), "{policy}");
            assert!(!policy.contains("http"), "{policy}");
            assert!(!policy.contains('"'), "it stands in a quoted attribute: {policy}");
        }
    }

    #[test]
    fn the_single_file_may_connect_nowhere() {
        let policy = for_single_file("one()", "p{}");
        assert!(!policy.contains("connect-src") && !policy.contains("'self'"), "{policy}");
    }
}
