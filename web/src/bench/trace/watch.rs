//! The sheet's size as it lies on the page, and the wheel over it.

use super::glass::{Glass, Look, Spot};
use std::rc::Rc;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{AddEventListenerOptions, Element, ResizeObserver, WheelEvent};
use yew::prelude::*;

/// The size until the page says it, sheet units.
const AT_FIRST: (f64, f64) = (540.0, 480.0);
/// How much one notch of a wheel looks closer.
const NOTCH: f64 = 1.2;

/// The size of an element, in the window's pixels, followed as it changes.
#[hook]
pub fn use_size(element: &NodeRef) -> (f64, f64) {
    let size = use_state_eq(|| AT_FIRST);
    {
        let (size, element) = (size.setter(), element.clone());
        use_effect_with((), move |()| {
            let look = {
                let element = element.clone();
                Closure::<dyn Fn()>::new(move || {
                    if let Some(element) = element.cast::<Element>() {
                        let rect = element.get_bounding_client_rect();
                        if rect.width() >= 1.0 && rect.height() >= 1.0 {
                            size.set((rect.width(), rect.height()));
                        }
                    }
                })
            };
            let observer = ResizeObserver::new(look.as_ref().unchecked_ref()).ok();
            if let (Some(observer), Some(element)) = (&observer, element.cast::<Element>()) {
                observer.observe(&element);
            }
            move || {
                if let Some(observer) = observer {
                    observer.disconnect();
                }
                drop(look);
            }
        });
    }
    *size
}

/// Looks closer with the wheel, at what is under it. The page itself must not move then, which a
/// listener on the page as a whole could not hinder.
#[hook]
pub fn use_wheel(element: &NodeRef, glass: Glass, look: UseStateSetter<Look>) {
    let now = use_mut_ref(|| glass);
    *now.borrow_mut() = glass;
    let element = element.clone();
    use_effect_with((), move |()| {
        let element = element.cast::<Element>();
        let turned = {
            let (element, now) = (element.clone(), Rc::clone(&now));
            Closure::<dyn Fn(WheelEvent)>::new(move |event: WheelEvent| {
                let Some(element) = &element else { return };
                event.prevent_default();
                let (rect, glass) = (element.get_bounding_client_rect(), *now.borrow());
                let about: Spot = (f64::from(event.client_x()) - rect.left(), f64::from(event.client_y()) - rect.top());
                let by = if event.delta_y() < 0.0 { NOTCH } else { 1.0 / NOTCH };
                look.set(glass.closer(by, about));
            })
        };
        if let Some(element) = &element {
            let options = AddEventListenerOptions::new();
            options.set_passive(false);
            let listener = turned.as_ref().unchecked_ref();
            let _ =
                element.add_event_listener_with_callback_and_add_event_listener_options("wheel", listener, &options);
        }
        move || {
            if let Some(element) = &element {
                let _ = element.remove_event_listener_with_callback("wheel", turned.as_ref().unchecked_ref());
            }
        }
    });
}
