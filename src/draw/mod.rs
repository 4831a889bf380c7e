//! Numbers for a lesson: candidates from a seed, and codes that carry a problem's numbers.
//!
//! A seed gives a stream of places in a lesson's grid ([`candidates`]). A [`code()`] names one
//! place, whatever seed it came from, so that a change to what is worth asking never changes the
//! problem behind a code.

mod code;
mod seed;

pub use crate::lesson::{Grid, GridPlace};
pub use code::{CodeTrouble, code, parse_code};
pub use seed::{Candidates, candidates};
