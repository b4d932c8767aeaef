//! SHA-256 and base64, the two encodings that a security policy and a single file need.

use sha2::{Digest, Sha256};

/// How many hexadecimal digits go into a file name: 64 bits are plenty to tell one build's file from another's.
const NAME_DIGITS: usize = 16;

/// The SHA-256 digest of `bytes`.
pub fn sha256(bytes: &[u8]) -> [u8; 32] {
    Sha256::digest(bytes).into()
}

/// A short tag that changes with the content, for file names.
///
/// A cached file then never stands for a newer one.
pub fn name_tag(bytes: &[u8]) -> String {
    let mut tag: String = sha256(bytes).iter().map(|byte| format!("{byte:02x}")).collect();
    tag.truncate(NAME_DIGITS);
    tag
}

/// Standard base64 with padding.
pub fn base64(bytes: &[u8]) -> String {
    const ALPHABET: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for chunk in bytes.chunks(3) {
        let mut three = [0u8; 3];
        three[..chunk.len()].copy_from_slice(chunk);
        let [a, b, c] = three.map(u32::from);
        let word = a << 16 | b << 8 | c;
        for place in 0..4 {
            if place <= chunk.len() {
                text.push(char::from(ALPHABET[(word >> (18 - 6 * place) & 63) as usize]));
            } else {
                text.push('=');
            }
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: RFC 4648, section 10.
    #[test]
    fn base64_gives_the_published_vectors() {
        for (plain, coded) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg=="),
            ("fooba", "Zm9vYmE="),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(base64(plain.as_bytes()), coded);
        }
        assert_eq!(base64(&[0xfb, 0xff, 0xfe]), "+//+");
    }

    /// Source: FIPS 180-2, appendix B.1, the message "abc".
    #[test]
    fn a_name_tag_is_the_head_of_the_digest() {
        assert_eq!(name_tag(b"abc"), "ba7816bf8f01cfea");
    }
}
