//! What is written is read again, to the last bit.

use proptest::prelude::*;
use standfast_core::book::{self, Book, Opened};
use standfast_core::document::Document;
use standfast_core::place::Place;
use standfast_tests::books;
use standfast_tests::draw::Draws;

proptest! {
    #[test]
    fn a_book(mut draws in Draws::any(), family in 0..7_u64) {
        let book = books::book(&mut draws, family);
        let text = book.to_json();
        prop_assert_eq!(Book::from_json(&text), Ok(book.clone()));
        // As short as it can be written, too.
        let text = serde_json::to_string(&book).expect("JSON");
        prop_assert_eq!(book::open(&text), Ok(Opened::Book(book)));
    }

    #[test]
    fn a_check_with_any_figures(mut draws in Draws::any(), any in prop::collection::vec(any::<f64>(), 120)) {
        let mut check = books::check(&mut draws);
        for (place, value) in Place::all_numbers(&check).into_iter().zip(any.iter().filter(|v| v.is_finite())) {
            *place.number(&mut check).expect("listed") = Some(*value);
        }
        let read = Document::from_json(&check.to_json()).expect("our own file");
        for place in Place::all_numbers(&check) {
            prop_assert_eq!(place.get(&check).map(f64::to_bits), place.get(&read).map(f64::to_bits), "{}", place);
        }
        prop_assert_eq!(read, check);
    }

    /// Any text in any text field, also one that looks like a part of the file.
    #[test]
    fn any_text(mut draws in Draws::any(), text in "\\PC{0,40}|[\\x00-\\x7f]{0,20}") {
        let mut book = books::book(&mut draws, 0);
        for truck in &mut book.trucks {
            truck.note.clone_from(&text);
            truck.set_ups.iter_mut().for_each(|s| s.truck.serial.clone_from(&text));
        }
        book.log.iter_mut().for_each(|c| c.outcome.reason.clone_from(&text));
        prop_assert_eq!(Book::from_json(&book.to_json()), Ok(book));
    }
}
