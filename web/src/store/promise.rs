//! Whether the browser promises not to clear what it keeps for this page by itself.

use super::keeper::Keeper;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{StorageManager, js_sys};

/// The browser's storage manager: not there in a page that is not of this device or secure.
fn manager() -> Option<StorageManager> {
    let navigator = web_sys::window()?.navigator();
    let manager = js_sys::Reflect::get(&navigator, &JsValue::from_str("storage")).ok()?;
    manager.is_object().then(|| manager.unchecked_into())
}

/// Whether there is a promise; nothing where the browser cannot say.
pub async fn there_is_one() -> Option<bool> {
    JsFuture::from(manager()?.persisted().ok()?).await.ok()?.as_bool()
}

/// Asks for one as soon as there is something to lose. Some browsers ask the person: so only after they kept something.
pub async fn ask_once(keeper: &Rc<Keeper>) {
    if !keeper.needs_promise() || keeper.asked() {
        return;
    }
    let Some(asked) = manager().and_then(|m| m.persist().ok()) else { return };
    let answer = JsFuture::from(asked).await.ok().and_then(|answer| answer.as_bool());
    keeper.promised(answer);
}
