//! .
pub(super) const GOOD: &str = "{}";
