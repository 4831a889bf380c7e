//! Numbers that are given.

use crate::text::Symbol;
use crate::units::Dimension;

/// Which given: its place in [`super::Problem::givens`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct GivenId(pub usize);

/// A number that the problem tells.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// Its name: `m_1`, `L`, `θ`.
    pub symbol: Symbol,
    /// What it is, in the lesson's words: "mass of the lamp".
    pub meaning: String,
    /// Its value in SI (radians for angles).
    pub value: f64,
    /// As printed, with unit: "12 kg", "35°".
    pub written: String,
    /// Its dimension.
    pub dimension: Dimension,
}
