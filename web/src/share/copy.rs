//! Copying, where the browser lets us, and else selecting.

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::js_sys::{Function, Promise, Reflect};
use web_sys::{HtmlDocument, HtmlTextAreaElement};

/// Copies the text of an area, and says whether that worked. It is selected in any case: then it can be
/// copied by hand.
pub fn copy(area: &HtmlTextAreaElement, said: impl FnOnce(bool) + 'static) {
    let _ = area.focus();
    area.select();
    let Some(promise) = clipboard(&area.value()) else {
        return said(by_command());
    };
    spawn_local(async move {
        let done = JsFuture::from(promise).await.is_ok();
        said(done || by_command());
    });
}

/// The clipboard is there on https and on the device itself alone.
fn clipboard(text: &str) -> Option<Promise> {
    let navigator = web_sys::window()?.navigator();
    let clipboard = Reflect::get(&navigator, &JsValue::from_str("clipboard")).ok().filter(|c| !c.is_undefined())?;
    let write = Reflect::get(&clipboard, &JsValue::from_str("writeText")).ok()?.dyn_into::<Function>().ok()?;
    write.call1(&clipboard, &JsValue::from_str(text)).ok()?.dyn_into().ok()
}

/// The way that works without it, as long as browsers know it.
fn by_command() -> bool {
    let document = web_sys::window().and_then(|w| w.document()).and_then(|d| d.dyn_into::<HtmlDocument>().ok());
    document.is_some_and(|d| d.exec_command("copy").unwrap_or(false))
}
