//! The texts of the bench on which a load is traced.

/// The texts.
#[derive(Debug)]
pub struct TraceWords {
    pub heading: &'static str,
    pub back: &'static str,
}
