//! Between the tabs of one browser: who wrote what.

use super::keeper::Keeper;
use super::local;
use super::record::Key;
use std::rc::Rc;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{BroadcastChannel, Event, MessageEvent, StorageEvent};

const CHANNEL: &str = "standfast.v1.book";

/// The way to the other tabs, where the browser has one.
pub struct Tabs(Option<BroadcastChannel>);

impl Tabs {
    /// Listens as long as the page is open.
    pub fn listen(keeper: &Rc<Keeper>) -> Self {
        let channel = BroadcastChannel::new(CHANNEL).ok();
        if let Some(channel) = &channel {
            let keeper = Rc::clone(keeper);
            let heard = Closure::<dyn FnMut(MessageEvent)>::new(move |event: MessageEvent| {
                let names = event.data().as_string().unwrap_or_default();
                let keys: Vec<_> = names.lines().filter_map(Key::read).collect();
                if !keys.is_empty() {
                    keeper.heard(keys);
                }
            });
            channel.set_onmessage(Some(heard.as_ref().unchecked_ref()));
            heard.forget();
        }
        on_window("storage", {
            let keeper = Rc::clone(keeper);
            move |event: StorageEvent| {
                if event.key().as_deref() == Some(local::KEY) {
                    keeper.heard_plain(event.new_value());
                }
            }
        });
        // A tab that slept has heard nothing.
        on_window("pageshow", refresher(keeper));
        on_window("focus", refresher(keeper));
        on_window("beforeunload", {
            let keeper = Rc::clone(keeper);
            move |event: Event| {
                if keeper.would_lose() {
                    event.prevent_default();
                }
            }
        });
        Self(channel)
    }

    /// Says what was written.
    pub fn tell(&self, keys: &[Key]) {
        let Some(channel) = self.0.as_ref().filter(|_| !keys.is_empty()) else { return };
        let names: Vec<_> = keys.iter().map(Key::to_string).collect();
        let _ = channel.post_message(&JsValue::from_str(&names.join("\n")));
    }
}

fn refresher(keeper: &Rc<Keeper>) -> impl FnMut(Event) + use<> {
    let keeper = Rc::clone(keeper);
    move |_: Event| keeper.refresh()
}

/// Calls for every such event, as long as the page is open.
pub fn on_window<E: wasm_bindgen::convert::FromWasmAbi + 'static>(name: &str, call: impl FnMut(E) + 'static) {
    let call = Closure::<dyn FnMut(E)>::new(call);
    if let Some(window) = web_sys::window() {
        let _ = window.add_event_listener_with_callback(name, call.as_ref().unchecked_ref());
    }
    call.forget();
}
