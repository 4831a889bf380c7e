//! What is asked.

use super::{ActId, BodyId};
use crate::problem::GivenId;

/// A quantity that is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asked {
    /// A force: its size, and its direction where that is open; or a couple.
    Force(ActId),
    /// Only its part to the right.
    Horizontal(ActId),
    /// Only its part upwards.
    Vertical(ActId),
    /// The couple of a built-in end.
    Couple(ActId),
    /// The given that is sought.
    Sought,
}

/// A given that is to be found: for which of its values something just happens.
#[derive(Clone, Debug, PartialEq)]
pub struct Sought {
    /// The given.
    pub given: GivenId,
    /// The least value looked at, in SI.
    pub low: f64,
    /// The greatest value looked at, in SI.
    pub high: f64,
    /// What just happens.
    pub when: When,
}

/// What just happens at the value that is sought.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    /// A force has this size, such as a rope at its breaking tension.
    Reaches {
        /// The force.
        act: ActId,
        /// The given size.
        limit: GivenId,
    },
    /// A force vanishes: a plank about to tip, a contact about to part.
    Vanishes(ActId),
    /// A rough contact is about to slip: friction is the coefficient times the push.
    Slips {
        /// The hold.
        act: ActId,
        /// The coefficient, which may be the given that is sought.
        coefficient: GivenId,
    },
    /// A base is about to topple: the push acts at its edge.
    Topples(ActId),
    /// A body that is free to turn rests: no couple is needed to hold it there.
    Rests(BodyId),
}
