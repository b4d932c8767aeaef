//! Damaged files are refused, or mean what they say; nothing panics, nothing takes long.

use crate::{good, sound};
use serde_json::{Value, json};
use standfast_core::book::{self, Book, CheckRecord};
use standfast_core::document::{FileError, LARGEST};
use standfast_core::example;
use standfast_tests::draw::Draws;
use standfast_tests::walk;
use std::time::{Duration, Instant};

/// No file, whatever is in it, may keep anybody waiting longer; several times what was measured.
const PATIENCE: Duration = Duration::from_secs(6);

fn timed(what: &str, text: &str) -> Result<(), String> {
    let start = Instant::now();
    let read = book::open(text).map(|_| ()).map_err(|e| e.to_string());
    let took = start.elapsed();
    let said = read.as_ref().err().map_or("read", |e| e.get(..e.len().min(90)).unwrap_or("refused"));
    eprintln!("{what}, {} MB: {took:.2?}, {said}", text.len() / 1_000_000);
    assert!(took < PATIENCE, "{what} took {took:?}");
    read
}

#[test]
fn truncated_at_every_byte() {
    let mut texts: Vec<String> = good().iter().map(Value::to_string).collect();
    texts.extend([example::THREE_WHEEL, example::ODD_LOAD, example::ATTACHMENTS].map(|t| t.trim_end().to_owned()));
    let mut cuts = 0;
    for text in texts {
        assert!(sound(&text), "whole, it is read");
        for k in 0..text.len() {
            let cut = String::from_utf8_lossy(&text.as_bytes()[..k]);
            assert!(book::open(&cut).is_err(), "{cut}");
            cuts += 1;
        }
    }
    eprintln!("{cuts} cuts, all refused");
}

#[test]
fn a_hundred_thousand_flipped_bits() {
    let book = good()[0].to_string();
    let (mut refused, mut flips) = (0, 0);
    for (seed, text) in [example::ODD_LOAD, example::ATTACHMENTS, &book].into_iter().enumerate() {
        let mut draws = Draws::seeded_row(seed as u64, 300_000);
        for _ in 0..33_500 {
            let mut bytes = text.as_bytes().to_vec();
            for _ in 0..draws.count(1..4) {
                let at = draws.count(0..bytes.len());
                bytes[at] ^= 1 << draws.count(0..8);
            }
            // As a browser reads a file: what is no letter becomes the mark for it.
            refused += usize::from(!sound(&String::from_utf8_lossy(&bytes)));
            flips += 1;
        }
    }
    eprintln!("{refused} of {flips} refused, the others are files of ours");
    assert!(flips > 100_000 && refused > flips / 4);
}

#[test]
fn pieces_of_files_in_any_order() {
    let book = good()[0].to_string();
    let mut draws = Draws::seeded_row(7, 100_000);
    for _ in 0..3_000 {
        let mut text = String::new();
        for _ in 0..draws.count(1..6) {
            let from = draws.count(0..book.len());
            let to = (from + draws.count(0..400)).min(book.len());
            text.push_str(&String::from_utf8_lossy(&book.as_bytes()[from..to]));
        }
        sound(&text);
        sound(&format!("{{\"format\":\"standfast-book\",\"version\":1,{text}"));
    }
}

#[test]
fn huge_numbers() {
    for file in good() {
        let mut figures = Vec::new();
        walk::values(&file, "", &mut |path, v| figures.extend(v.is_number().then(|| path.to_owned())));
        assert!(figures.len() > 40);
        for path in figures {
            for number in
                ["1e999", "-1e999", "1e400", "99999999999999999999999999", "1e308", "-0", "5e-324", "0.1e-400"]
            {
                let mut with = file.clone();
                *with.pointer_mut(&path).expect("a figure") = json!("HERE");
                sound(&with.to_string().replace("\"HERE\"", number));
                let beyond = number.contains("999") && number.contains('e') || number == "1e400";
                if beyond {
                    let error = book::open(&with.to_string().replace("\"HERE\"", number)).expect_err(number);
                    assert!(error.to_string().contains("number out of range"), "{error}");
                }
            }
        }
    }
}

/// Not one byte too deep for the machine's stack.
#[test]
fn deep_nesting() {
    for depth in [100, 127, 128, 129, 1000, 100_000, 1_000_000] {
        for (open, close) in [("[", "]"), ("{\"a\":", "}"), ("[{\"trucks\":", "}]")] {
            let text = format!("{}1{}", open.repeat(depth), close.repeat(depth));
            assert!(book::open(&text).is_err());
            assert!(book::open(&open.repeat(depth)).is_err());
            let inside = format!("{{\"format\":\"standfast-book\",\"version\":1,\"trucks\":{text}}}");
            assert!(book::open(&inside).is_err());
        }
    }
}

#[test]
fn fifty_megabytes() {
    let head = "{\"format\":\"standfast-book\",\"version\":1,";
    let fifty = 50_000_000;
    let refused = |what: &str, text: &str| timed(what, text).expect_err(what);
    refused("opening brackets", &"[".repeat(fifty));
    refused("spaces", &" ".repeat(fifty));
    refused("one digit after the other", &format!("{head}\"trucks\":[{}]}}", "7".repeat(fifty)));
    refused("digits behind a point", &format!("{head}\"trucks\":[0.{}]}}", "7".repeat(fifty)));
    refused("one text", &format!("{head}\"trucks\":\"{}\"}}", "x".repeat(fifty)));
    refused("one key", &format!("{{\"{}\":1}}", "k".repeat(fifty)));
    refused("escapes", &format!("{head}\"trucks\":\"{}\"}}", "\\u0041".repeat(fifty / 6)));
    refused("many rows", &format!("{head}\"trucks\":[{}{{}}]}}", "{},".repeat(fifty / 3)));
    refused("many keys", &format!("{{{}\"x\":1}}", (0..4_000_000).map(|k| format!("\"{k}\":1,")).collect::<String>()));
    refused("no letters at all", &"\u{fffd}".repeat(fifty / 3));
    let lists = format!("[{}[]]", "[[],[],[],[],[],[],[],[]],".repeat(1_900));
    refused(
        "lists in lists",
        &format!("{head}\"trucks\":[{}1]}}", format!("{lists},").repeat(fifty / lists.len() - 1)),
    );
}

/// The largest book there may be is read in the time that anybody waits for it.
#[test]
fn as_large_as_may_be() {
    let mut book = standfast_tests::books::full();
    let one = book.log[0].clone();
    let each = serde_json::to_string(&one).expect("JSON").len();
    let few = Book { log: vec![one.clone(); 3], ..Book::default() };
    assert!(book::open(&few.to_json()).is_err(), "the same id");
    let count = (LARGEST - 100_000) / (each + 8);
    book.log = (0..count).map(|k| CheckRecord { id: format!("n{k}"), ..one.clone() }).collect();
    let text = serde_json::to_string(&book).expect("JSON");
    assert!(text.len() > LARGEST * 9 / 10, "{}", text.len());
    eprintln!("{count} checks");
    assert_eq!(timed("a book of checks", &text), Ok(()));
    // Its last byte gone: all of it is refused.
    assert!(timed("the same, cut off", &text[..text.len() - 1]).is_err());
    let larger = format!("{text}{}", " ".repeat(LARGEST + 1 - text.len()));
    assert_eq!(book::open(&larger), Err(FileError::TooLarge { bytes: LARGEST + 1, most: LARGEST }));
}
