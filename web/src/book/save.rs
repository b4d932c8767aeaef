//! The book, or one truck of it, as a file.

use crate::files::hand_out;
use crate::store::kept::Damaged;
use standfast_core::book::{Book, TruckRecord};

const JSON: &str = "application/json";

/// The text of a file.
pub fn to_text(book: &Book) -> String {
    book.to_json()
}

/// Hands out all of it.
pub fn save_book(book: &Book) {
    hand_out(&to_text(book), JSON, "standfast-book.json");
}

/// Hands out one truck with its set-ups and plates.
pub fn save_truck(truck: &TruckRecord) {
    let book = Book { trucks: vec![truck.clone()], ..Book::default() };
    hand_out(&to_text(&book), JSON, &format!("standfast-truck-{}.json", plain(&truck.name)));
}

/// Hands out what could not be read, as it is.
pub fn save_damaged(damaged: &[Damaged]) {
    let texts: Vec<_> = damaged.iter().map(|d| format!("{}\n{}\n", d.name, d.text)).collect();
    hand_out(&texts.join("\n"), "text/plain", "standfast-unread.txt");
}

/// A name in plain letters, for a file.
fn plain(name: &str) -> String {
    let letter = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { ' ' };
    let name: String = name.chars().map(letter).collect();
    let words: Vec<_> = name.split_whitespace().take(6).collect();
    if words.is_empty() { "one".to_owned() } else { words.join("-") }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn file_names_are_plain() {
        assert_eq!(plain("Blue one / ../No. 7"), "blue-one-no-7");
        assert_eq!(plain("\u{9752}"), "one");
    }

    #[test]
    fn what_is_saved_reads_back() {
        let truck = TruckRecord { id: "a".to_owned(), name: "Blue".to_owned(), ..TruckRecord::default() };
        let book = Book { trucks: vec![truck], ..Book::default() };
        assert_eq!(Book::from_json(&to_text(&book)).ok(), Some(book));
    }
}
