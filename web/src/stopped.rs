//! What shows when the program has failed: it has stopped, and the last entries can still be saved.

use crate::storage::{self, Found};
use crate::words::words;
use gloo::file::{Blob, ObjectUrl};
use std::panic::PanicHookInfo;
use wasm_bindgen::JsCast;
use wasm_bindgen::JsValue;

/// Makes the panel take the page's place whenever the program fails.
pub fn install() {
    yew::set_custom_panic_hook(Box::new(|info| {
        report(info);
        let _ = show();
    }));
}

fn report(info: &PanicHookInfo<'_>) {
    web_sys::console::error_1(&JsValue::from_str(&info.to_string()));
}

/// Builds the panel by hand: the page's own machinery cannot be relied on any more. The link needs
/// no program to work.
fn show() -> Option<()> {
    let document = web_sys::window()?.document()?;
    let w = &words().tools;
    let element = |name: &str, text: &str| {
        let element = document.create_element(name).ok()?;
        element.set_text_content(Some(text));
        Some(element)
    };
    let panel = element("div", "")?;
    panel.set_attribute("class", "stopped").ok()?;
    panel.set_attribute("role", "alertdialog").ok()?;
    panel.set_attribute("aria-label", w.stopped).ok()?;
    panel.set_attribute("data-testid", "stopped").ok()?;
    panel.append_child(element("h1", w.stopped)?.as_ref()).ok()?;
    panel.append_child(element("p", w.stopped_detail)?.as_ref()).ok()?;
    if let Some(text) = last_entries() {
        let url = ObjectUrl::from(Blob::new_with_options(text.as_str(), Some("application/json")));
        let link = element("a", w.stopped_save)?.dyn_into::<web_sys::HtmlAnchorElement>().ok()?;
        link.set_href(&url);
        link.set_download("standfast-rescued.json");
        panel.append_child(link.as_ref()).ok()?;
        // It must outlive the program.
        std::mem::forget(url);
    }
    panel.append_child(element("p", w.stopped_reload)?.as_ref()).ok()?;
    document.body()?.append_child(panel.as_ref()).ok()?;
    Some(())
}

/// The last entries kept, as a file; the kept text itself where it cannot be read.
fn last_entries() -> Option<String> {
    match storage::load() {
        Found::Kept(state) => Some(state.entries.file().to_json()),
        Found::Damaged(text) => Some(text),
        Found::Nothing => None,
    }
}
