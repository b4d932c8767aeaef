//! Keeping the book in the browser, entry by entry.
//!
//! [`shelf`] is the book as this tab has it; [`settle`] says what to write where another tab wrote
//! meanwhile; [`kept`] is an entry as a text: these know no browser. [`keeper`] brings changes to the
//! [`place`] where they are kept, and hears of those of other tabs.

mod indexed;
pub mod keeper;
pub mod kept;
mod local;
mod merge;
pub mod place;
mod promise;
pub mod record;
pub mod settle;
pub mod shelf;
pub mod tabs;

/// The time of day, to tell versions apart.
fn clock_time() -> String {
    let now = web_sys::js_sys::Date::new_0();
    format!("{:02}:{:02}", now.get_hours(), now.get_minutes())
}
