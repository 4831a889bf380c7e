//! Numbers worth asking.

mod filter;

pub use filter::{Refusal, misnamed, refuse};
