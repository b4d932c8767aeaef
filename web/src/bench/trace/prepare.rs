//! A photo made ready to trace on: scaled down once, off the page's own path, as a JPEG that can be
//! kept. It never leaves the device.

use gloo::file::futures::read_as_data_url;
use gloo::file::{Blob, ObjectUrl};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::js_sys::{Function, Promise, Reflect};
use web_sys::{
    CanvasRenderingContext2d, File, HtmlCanvasElement, HtmlImageElement, ImageBitmap, ImageBitmapOptions,
    ImageOrientation, ResizeQuality,
};

/// The longer side of a picture as it is kept, pixels.
const LONGER: u32 = 1600;
/// The shorter side of a picture that can be traced on, pixels.
const SHORTEST: u32 = 100;
/// No photo is larger, bytes.
const LARGEST_FILE: f64 = 80e6;
/// No photo has more pixels: a browser may run out of memory on it.
const MOST_PIXELS: f64 = 150e6;
/// How well a JPEG is kept, of 1.
const QUALITY: f64 = 0.85;
/// How a picture that is ready begins.
pub const READY: &str = "data:image/jpeg;base64,";

/// A picture ready to trace on.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Ready {
    /// As a data URL.
    pub data: Rc<str>,
    /// Its size, pixels.
    pub size: (u32, u32),
}

/// Why a file is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Refused {
    /// It is no picture.
    NoPicture,
    /// The browser cannot read it: damaged, or of a kind it does not know.
    Unread,
    /// Too large a file, or too many pixels.
    Large,
    /// Too few pixels.
    Small,
}

/// Looks at a file's kind and size in bytes. A kind that is not said may be any.
fn checked(kind: &str, bytes: f64) -> Result<(), Refused> {
    if !kind.is_empty() && !kind.starts_with("image/") {
        return Err(Refused::NoPicture);
    }
    if bytes > LARGEST_FILE { Err(Refused::Large) } else { Ok(()) }
}

/// The size to keep a picture in: never larger than it is.
fn fitted(wide: u32, high: u32) -> Result<(u32, u32), Refused> {
    let (w, h) = (f64::from(wide), f64::from(high));
    if w * h > MOST_PIXELS {
        return Err(Refused::Large);
    }
    let part = (f64::from(LONGER) / w.max(h).max(1.0)).min(1.0);
    let scaled = |v: f64| (v * part).round().max(1.0) as u32;
    let (w, h) = (scaled(w), scaled(h));
    if w.min(h) < SHORTEST { Err(Refused::Small) } else { Ok((w, h)) }
}

/// Makes a file ready.
///
/// # Errors
/// [`Refused`], with nothing changed.
pub async fn prepare(file: File) -> Result<Ready, Refused> {
    checked(&file.type_(), file.size())?;
    let url = ObjectUrl::from(Blob::from(AsRef::<web_sys::Blob>::as_ref(&file).clone()));
    let image = opened(&url).await.map_err(|_| Refused::Unread)?;
    let size = fitted(image.natural_width(), image.natural_height())?;
    // The element's own pixels are upright; so must the bitmap's be.
    let bitmap = bitmap(&file, size).await?.filter(|b| (b.width(), b.height()) == size);
    let blob = drawn(size, &image, bitmap.as_ref()).await.map_err(|_| Refused::Unread)?;
    if let Some(bitmap) = bitmap {
        bitmap.close();
    }
    let data = read_as_data_url(&Blob::from(blob)).await.map_err(|_| Refused::Unread)?;
    if data.starts_with(READY) { Ok(Ready { data: data.into(), size }) } else { Err(Refused::Unread) }
}

/// Opens a picture as far as its size; it is decoded when it is drawn.
async fn opened(url: &str) -> Result<HtmlImageElement, JsValue> {
    let image = HtmlImageElement::new()?;
    let loaded = Promise::new(&mut |resolve: Function, reject: Function| {
        image.set_onload(Some(&resolve));
        image.set_onerror(Some(&reject));
        image.set_src(url);
    });
    JsFuture::from(loaded).await?;
    Ok(image)
}

/// The picture decoded and scaled beside the page's own path; none where the browser cannot do that.
///
/// # Errors
/// [`Refused::Unread`] where it cannot be decoded whole: an element would show half a picture.
async fn bitmap(file: &File, (wide, high): (u32, u32)) -> Result<Option<ImageBitmap>, Refused> {
    let Some(window) = web_sys::window() else { return Ok(None) };
    if !Reflect::has(&window, &"createImageBitmap".into()).unwrap_or(false) {
        return Ok(None);
    }
    let options = ImageBitmapOptions::new();
    options.set_resize_width(wide);
    options.set_resize_height(high);
    // Scaling, unlike decoding, holds the page up: of 12 megapixels 20 ms this way, 50 ms and more smoother.
    options.set_resize_quality(ResizeQuality::Low);
    options.set_image_orientation(ImageOrientation::FromImage);
    let scaled = window.create_image_bitmap_with_blob_and_image_bitmap_options(file, &options);
    if let Some(bitmap) = decoded(scaled).await {
        return Ok(Some(bitmap));
    }
    // A browser may know bitmaps but not these options.
    match decoded(window.create_image_bitmap_with_blob(file)).await {
        Some(whole) => {
            whole.close();
            Ok(None)
        }
        None => Err(Refused::Unread),
    }
}

async fn decoded(asked: Result<Promise, JsValue>) -> Option<ImageBitmap> {
    JsFuture::from(asked.ok()?).await.ok()?.dyn_into().ok()
}

/// The scaled picture as a JPEG; from the element itself where there is no bitmap.
async fn drawn(
    (wide, high): (u32, u32),
    image: &HtmlImageElement,
    bitmap: Option<&ImageBitmap>,
) -> Result<web_sys::Blob, JsValue> {
    let document = web_sys::window().and_then(|w| w.document()).ok_or(JsValue::NULL)?;
    let canvas: HtmlCanvasElement = document.create_element("canvas")?.dyn_into()?;
    canvas.set_width(wide);
    canvas.set_height(high);
    let context = canvas.get_context("2d")?.ok_or(JsValue::NULL)?.dyn_into::<CanvasRenderingContext2d>()?;
    // What is transparent in the picture is white in a JPEG, not black.
    context.set_fill_style_str("#ffffff");
    context.fill_rect(0.0, 0.0, f64::from(wide), f64::from(high));
    let (w, h) = (f64::from(wide), f64::from(high));
    match bitmap {
        Some(bitmap) => context.draw_image_with_image_bitmap_and_dw_and_dh(bitmap, 0.0, 0.0, w, h)?,
        None => {
            JsFuture::from(image.decode()).await?;
            context.draw_image_with_html_image_element_and_dw_and_dh(image, 0.0, 0.0, w, h)?;
        }
    }
    let blob = Promise::new(&mut |resolve: Function, reject: Function| {
        if canvas.to_blob_with_type_and_encoder_options(&resolve, "image/jpeg", &QUALITY.into()).is_err() {
            let _ = reject.call0(&JsValue::NULL);
        }
    });
    JsFuture::from(blob).await?.dyn_into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_photo_is_scaled_to_fit_and_never_up() {
        assert_eq!(fitted(4000, 3000), Ok((1600, 1200)));
        assert_eq!(fitted(3000, 4000), Ok((1200, 1600)));
        assert_eq!(fitted(800, 600), Ok((800, 600)));
        assert_eq!(fitted(4001, 2999), Ok((1600, 1199)));
        assert_eq!(fitted(20_000, 9_000), Err(Refused::Large));
        for small in [(0, 0), (99, 4000), (40_000, 100)] {
            assert_eq!(fitted(small.0, small.1), Err(Refused::Small), "{small:?}");
        }
    }

    #[test]
    fn what_is_no_picture_or_too_large_is_known_before_it_is_read() {
        assert_eq!(checked("image/jpeg", 6e6), Ok(()));
        assert_eq!(checked("", 6e6), Ok(()));
        assert_eq!(checked("application/pdf", 1e3), Err(Refused::NoPicture));
        assert_eq!(checked("image/png", 1e9), Err(Refused::Large));
    }
}
