//! Rigid bodies.

use super::{Bearing, Spot};
use crate::problem::GivenId;

/// Which body: its place in [`super::Parts::bodies`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct BodyId(pub usize);

/// A rigid body in the plane.
///
/// A straight beam has one leg, an L two. A knot, or a body of which only coordinates are told,
/// has none.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// What it is called: "beam", "left ladder", "knot".
    pub noun: String,
    /// Where its first leg begins.
    pub start: Spot,
    /// Its legs, each beginning where the one before ends.
    pub legs: Vec<Leg>,
    /// True for a point where forces meet: it has no moments.
    pub knot: bool,
}

/// A straight part of a body.
#[derive(Clone, Debug, PartialEq)]
pub struct Leg {
    /// Its length.
    pub length: GivenId,
    /// Which way it runs from its beginning.
    pub bearing: Bearing,
}
