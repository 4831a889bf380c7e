//! The only list of mistakes.

use super::Mistake;

/// Every mistake, one line each.
pub static CATALOGUE: &[&Mistake] = &[
    &super::sine_cosine_exchanged::MISTAKE,
    &super::complement::MISTAKE,
];
