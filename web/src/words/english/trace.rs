//! The bench for tracing, in English.

use crate::words::trace::TraceWords;

pub(super) const TRACE: TraceWords =
    TraceWords { heading: "The load, traced from a picture", back: "Back to the truck" };
