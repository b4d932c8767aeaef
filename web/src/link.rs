//! A whole check in the fragment of a link: its file, deflated, in letters that every address may hold.
//!
//! A fragment goes to no server. It is `check-1.` and then, in base64 for addresses and without padding, the
//! check's JSON as a zlib stream, whose checksum tells a damaged link from a whole one. It is read whole or
//! refused whole. This file knows no browser.

use base64::Engine;
use base64::engine::general_purpose::URL_SAFE_NO_PAD;
use miniz_oxide::deflate::compress_to_vec_zlib;
use miniz_oxide::inflate::TINFLStatus;
use miniz_oxide::inflate::core::{DecompressorOxide, decompress, inflate_flags};
use standfast_core::document::{Document, FileError};

/// What a fragment of ours begins with; a version and a point follow.
const NAME: &str = "check-";
/// The version that is written, and the last one that is read.
pub const VERSION: u32 = 1;

/// No link is longer, in characters: mail and messengers cut or break longer ones, and then it would only be
/// refused at the other end.
pub const LONGEST: usize = 8_000;
/// No longer fragment is looked at: a hundred times what we write is not ours.
const MOST_READ: usize = 100 * LONGEST;
/// No check is larger as text, in bytes: what claims to be stops there.
const MOST_TEXT: usize = 1_000_000;

/// Why a link was refused.
#[derive(Clone, Debug, PartialEq)]
pub enum LinkError {
    /// It was made by a newer program.
    Newer {
        /// The version that it names.
        found: u32,
    },
    /// It is cut short, or letters of it are wrong.
    Damaged,
    /// It holds more than any check.
    TooLarge,
    /// It is whole, but what it holds is no check that can be read.
    Refused(FileError),
}

/// Whether a fragment is one of ours, of whatever version.
pub fn is_ours(fragment: &str) -> bool {
    body(fragment).is_some()
}

fn body(fragment: &str) -> Option<&str> {
    fragment.strip_prefix('#').unwrap_or(fragment).strip_prefix(NAME)
}

/// A check as a fragment, without the `#`.
pub fn write(document: &Document) -> String {
    // As in a file, but without room between: what cannot be put into words is no document of ours.
    let text = serde_json::to_string(document).unwrap_or_default();
    let packed = compress_to_vec_zlib(text.as_bytes(), 9);
    format!("{NAME}{VERSION}.{}", URL_SAFE_NO_PAD.encode(packed))
}

/// The check in a fragment.
///
/// # Errors
/// Why it was refused; nothing of it is taken then. Never panics.
pub fn read(fragment: &str) -> Result<Document, LinkError> {
    let (version, letters) = body(fragment).and_then(|b| b.split_once('.')).ok_or(LinkError::Damaged)?;
    let found: u32 = version.parse().map_err(|_| LinkError::Damaged)?;
    if found > VERSION {
        return Err(LinkError::Newer { found });
    }
    if found != VERSION {
        return Err(LinkError::Damaged);
    }
    if letters.len() > MOST_READ {
        return Err(LinkError::TooLarge);
    }
    let packed = URL_SAFE_NO_PAD.decode(letters).map_err(|_| LinkError::Damaged)?;
    let text = String::from_utf8(unpack(&packed)?).map_err(|_| LinkError::Damaged)?;
    Document::from_json(&text).map_err(LinkError::Refused)
}

/// What a zlib stream holds, if it is whole, nothing follows it, and it is no larger than a check.
fn unpack(packed: &[u8]) -> Result<Vec<u8>, LinkError> {
    let flags = inflate_flags::TINFL_FLAG_PARSE_ZLIB_HEADER | inflate_flags::TINFL_FLAG_USING_NON_WRAPPING_OUTPUT_BUF;
    let mut text = vec![0; MOST_TEXT];
    let (status, read, written) = decompress(&mut DecompressorOxide::new(), packed, &mut text, 0, flags);
    match status {
        TINFLStatus::Done if read == packed.len() => {
            text.truncate(written);
            Ok(text)
        }
        TINFLStatus::HasMoreOutput => Err(LinkError::TooLarge),
        _ => Err(LinkError::Damaged),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use standfast_core::example;

    #[test]
    fn the_examples_go_there_and_back() {
        for text in [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD] {
            let document = example::document(text);
            let fragment = write(&document);
            assert!(fragment.len() < 2_000, "{}", fragment.len());
            assert!(fragment.bytes().all(|b| b.is_ascii_alphanumeric() || b"-._".contains(&b)), "{fragment}");
            assert_eq!(read(&fragment), Ok(document.clone()));
            assert_eq!(read(&format!("#{fragment}")), Ok(document));
        }
    }

    /// Cut anywhere, with any letter changed or one too many: refused, never another check.
    #[test]
    fn a_damaged_link_is_refused() {
        let fragment = write(&example::document(example::THREE_WHEEL));
        for end in 0..fragment.len() {
            assert!(read(&fragment[..end]).is_err(), "cut at {end}");
        }
        for at in NAME.len()..fragment.len() {
            let other = if &fragment[at..=at] == "A" { "B" } else { "A" };
            let wrong = format!("{}{other}{}", &fragment[..at], &fragment[at + 1..]);
            assert!(read(&wrong).is_err(), "letter {at}");
        }
        for more in ["A", "AA", "AAAA", "=", " ", ".", "\u{e9}"] {
            assert!(read(&format!("{fragment}{more}")).is_err(), "{more}");
        }
        assert_eq!(read(&fragment.replace("-1.", "-2.")), Err(LinkError::Newer { found: 2 }));
        assert_eq!(read(&fragment.replace("-1.", "-0.")), Err(LinkError::Damaged));
        assert!(!is_ours("#") && !is_ours("#load") && is_ours("#check-9.x"));
    }

    fn packed(text: &[u8]) -> String {
        format!("{NAME}{VERSION}.{}", URL_SAFE_NO_PAD.encode(compress_to_vec_zlib(text, 9)))
    }

    /// A few letters that would unpack to more memory than there is stop at what a check may be.
    #[test]
    fn what_swells_is_stopped() {
        assert_eq!(read(&packed(&vec![b' '; 50_000_000])), Err(LinkError::TooLarge));
        assert_eq!(read(&format!("{NAME}1.{}", "A".repeat(MOST_READ + 1))), Err(LinkError::TooLarge));
    }

    #[test]
    fn what_is_whole_but_no_check_says_why() {
        for text in ["{\"format\": \"other\"}", "{}", "[", "{\"format\": \"standfast-check\", \"version\": 99}"] {
            let why = Document::from_json(text).expect_err("no check");
            assert_eq!(read(&packed(text.as_bytes())), Err(LinkError::Refused(why)), "{text}");
        }
        assert_eq!(read(&packed(&[0xff, 0xfe])), Err(LinkError::Damaged));
    }
}
