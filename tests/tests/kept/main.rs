//! The saved files from outside: there and back, damaged, merged, and held against their published schema.

mod damaged;
mod merged;
mod schema;
mod there_and_back;

use serde_json::Value;
use standfast_core::book::{self, Opened};

/// A file that was let in is one of ours: written again, it is read as the same.
#[track_caller]
fn sound(text: &str) -> bool {
    match book::open(text) {
        Ok(Opened::Book(book)) => {
            assert_eq!(book::open(&book.to_json()), Ok(Opened::Book(book)));
            true
        }
        Ok(Opened::Check(check)) => {
            assert_eq!(book::open(&check.to_json()), Ok(Opened::Check(check)));
            true
        }
        Err(why) => {
            assert!(!why.to_string().is_empty());
            false
        }
    }
}

/// A good file of each format.
fn good() -> [Value; 2] {
    let book = standfast_tests::books::full();
    let check = book.log[0].check.clone();
    [serde_json::to_value(book).expect("JSON"), serde_json::to_value(check).expect("JSON")]
}
