//! A text as a QR code (ISO/IEC 18004), black on white in either scheme, with its quiet zone.

use qrcodegen::{Mask, QrCode, QrCodeEcc, QrSegment, Version};
use yew::prelude::*;

/// No code has more squares a side than 137: at four pixels a square it and its quiet zone still stand on a
/// tablet's screen, 580 pixels wide, and a phone held a hand's width off reads it.
const LARGEST: u8 = 30;
/// The white edge that readers need, in squares.
const QUIET: i32 = 4;

/// The squares of a text, or nothing where it is too long for a code that can be read.
pub fn code(text: &str) -> Option<QrCode> {
    let segments = QrSegment::make_segments(text);
    // Shown on a screen it is whole: the least correction leaves the largest squares, more is taken where it is free.
    QrCode::encode_segments_advanced(
        &segments,
        QrCodeEcc::Low,
        Version::new(1),
        Version::new(LARGEST),
        None::<Mask>,
        true,
    )
    .ok()
}

/// The dark squares as one path, a stretch of a row at a time.
pub fn path(code: &QrCode) -> String {
    let size = code.size();
    let mut path = String::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let from = x;
            while x < size && code.get_module(x, y) {
                x += 1;
            }
            if x > from {
                path += &format!("M{} {}h{}v1h-{}z", from + QUIET, y + QUIET, x - from, x - from);
            }
            x += 1;
        }
    }
    path
}

/// On the page.
pub fn view(code: &QrCode, name: &'static str) -> Html {
    let side = (code.size() + 2 * QUIET).to_string();
    html! {
        <svg
            class="qr"
            viewBox={format!("0 0 {side} {side}")}
            role="img"
            aria-label={name}
            shape-rendering="crispEdges"
            data-testid="qr"
        >
            <rect width={side.clone()} height={side} fill="#ffffff" />
            <path d={path(code)} fill="#000000" />
        </svg>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every dark square is in the path, and nothing else.
    #[test]
    fn the_path_has_the_dark_squares() {
        let code = code("HTTPS://EXAMPLE.ORG/#check-1.abc").expect("short");
        let dark = (0..code.size()).flat_map(|y| (0..code.size()).map(move |x| (x, y)));
        let dark = dark.filter(|(x, y)| code.get_module(*x, *y)).count();
        let drawn: usize = path(&code)
            .split('M')
            .filter_map(|stretch| stretch.split('h').nth(1)?.split('v').next()?.parse::<usize>().ok())
            .sum();
        assert_eq!(drawn, dark);
    }

    #[test]
    fn what_is_too_long_has_no_code() {
        assert!(code(&"a".repeat(1_700)).is_some());
        assert!(code(&"a".repeat(1_800)).is_none());
    }
}
