//! The photo that is traced on, kept in the browser apart from the entries: by its number, so that
//! none shows under an outline that was traced on another.

use super::prepare::READY;
use crate::storage;
use std::cell::RefCell;
use std::rc::Rc;

/// Where the photo is kept.
pub const KEY: &str = "standfast.v1.photo";
/// So many are held while the page is open, to go back to.
const HELD: usize = 4;

/// A photo by its number.
type Numbered = (u64, Rc<str>);

thread_local! {
    /// The photos of this visit, the latest last.
    static PHOTOS: RefCell<Vec<Numbered>> = const { RefCell::new(Vec::new()) };
}

/// As it is kept: its number, a space, the picture.
fn to_text(number: u64, data: &str) -> String {
    format!("{number} {data}")
}

/// What a kept text holds; nothing where it is not ours.
fn from_text(text: &str) -> Option<Numbered> {
    let (number, data) = text.split_once(' ')?;
    let inside = data.strip_prefix(READY)?;
    let plain = |b: u8| b.is_ascii_alphanumeric() || matches!(b, b'+' | b'/' | b'=');
    (!inside.is_empty() && inside.bytes().all(plain)).then_some(())?;
    Some((number.parse().ok()?, data.into()))
}

/// Holds one more; the oldest beyond [`HELD`] goes.
fn hold(held: &mut Vec<Numbered>, photo: Numbered) {
    held.retain(|(number, _)| *number != photo.0);
    held.push(photo);
    if held.len() > HELD {
        held.remove(0);
    }
}

fn held(number: u64) -> Option<Rc<str>> {
    PHOTOS.with_borrow(|all| all.iter().find(|p| p.0 == number).map(|p| Rc::clone(&p.1)))
}

fn in_browser() -> Option<Numbered> {
    storage::browser()?.get_item(KEY).ok().flatten().as_deref().and_then(from_text)
}

/// The photo of this number, if it is still here.
pub fn find(number: u64) -> Option<Rc<str>> {
    held(number).or_else(|| {
        let photo = in_browser().filter(|p| p.0 == number)?;
        PHOTOS.with_borrow_mut(|all| hold(all, photo.clone()));
        Some(photo.1)
    })
}

/// Takes a new photo in; whether the browser keeps it for the next visit.
pub fn take(number: u64, data: &Rc<str>) -> bool {
    PHOTOS.with_borrow_mut(|all| hold(all, (number, Rc::clone(data))));
    keep(number)
}

/// Keeps a photo of this visit for the next: the one that is traced on, also after going back.
pub fn keep(number: u64) -> bool {
    let Some(data) = held(number) else { return false };
    if in_browser().is_some_and(|p| p.0 == number) {
        return true;
    }
    // The old one first: there may be no room for both.
    let _ = storage::browser().map(|s| s.remove_item(KEY));
    storage::keep(KEY, &to_text(number, &data))
}

/// Removes a photo that was kept for another tracing, as long as there is no way back to that.
pub fn tidy(number: Option<u64>) {
    if in_browser().is_some_and(|p| Some(p.0) != number) {
        remove();
    }
}

/// Removes every photo, from the browser and from this visit.
pub fn remove() {
    PHOTOS.with_borrow_mut(Vec::clear);
    let _ = storage::browser().map(|s| s.remove_item(KEY));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_photo_is_kept_with_its_number() {
        let data = format!("{READY}/9j/4AAQ+w==");
        let (number, read) = from_text(&to_text(1_234_567_890_123, &data)).expect("ours");
        assert_eq!((number, &*read), (1_234_567_890_123, data.as_str()));
    }

    #[test]
    fn what_is_not_ours_is_no_photo() {
        let good = to_text(5, &format!("{READY}/9j/4AAQ"));
        assert!(from_text(&good).is_some());
        for bad in [
            "".to_owned(),
            good.replace("5 ", ""),
            good.replace("5 ", "five "),
            good.replace("image/jpeg", "text/html"),
            good.replace("4AAQ", "4A\"onload=x"),
            to_text(5, READY),
        ] {
            assert_eq!(from_text(&bad), None, "{bad}");
        }
    }

    #[test]
    fn the_latest_few_are_held() {
        let mut all = Vec::new();
        for number in [1, 2, 3, 1, 4, 5] {
            hold(&mut all, (number, "x".into()));
        }
        let numbers: Vec<_> = all.iter().map(|p| p.0).collect();
        assert_eq!(numbers, [3, 1, 4, 5]);
    }
}
