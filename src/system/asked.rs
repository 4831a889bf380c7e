//! What is asked.

use super::{ActId, BodyId, System};
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

impl System {
    /// What is asked, in order. Where nothing is asked by name it is the number that is sought, and
    /// every unknown force.
    pub fn asked(&self) -> Vec<Asked> {
        let parts = self.parts();
        if self.asks_by_name() {
            return parts.asked.clone();
        }
        let sought = parts.sought.iter().map(|_| Asked::Sought);
        let cords = (0..parts.cords.len()).map(ActId::Cord);
        let holds = (0..parts.holds.len()).map(ActId::Hold);
        sought.chain(cords.chain(holds).map(Asked::Force)).collect()
    }

    /// True if the problem names what it asks.
    pub fn asks_by_name(&self) -> bool {
        !self.parts().asked.is_empty()
    }

    /// The names of all that is asked where nothing is asked by name; empty where something is, or
    /// where nothing is unknown.
    pub fn asked_unnamed(&self) -> Vec<String> {
        if self.asks_by_name() {
            return Vec::new();
        }
        let shown = |asked: Asked| match asked {
            Asked::Sought => {
                let sought = self.parts().sought.as_ref()?;
                Some(self.given(sought.given).symbol.shown())
            }
            Asked::Force(act)
            | Asked::Horizontal(act)
            | Asked::Vertical(act)
            | Asked::Couple(act) => Some(self.act(act)?.symbol.shown()),
        };
        self.asked().into_iter().filter_map(shown).collect()
    }
}
