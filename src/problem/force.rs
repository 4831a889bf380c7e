//! All forces on the body seen alike: own weight, loads, ropes, supports.

use super::{Direction, GivenId, LoadKind, Place, Problem, SupportKind};
use crate::text::Symbol;

/// Which force on the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ForceId {
    /// The body's own weight.
    OwnWeight,
    /// The load at this place in [`Problem::loads`].
    Load(usize),
    /// The rope at this place in [`Problem::ropes`].
    Rope(usize),
    /// The support at this place in [`Problem::supports`].
    Support(usize),
}

/// Which way a force acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Acting {
    /// In this direction.
    Along(Direction),
    /// In a direction that is to be found (a hinge).
    Anywhere,
}

/// What is known of a force's size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// The weight of this mass.
    Weight(GivenId),
    /// A given force.
    Given(GivenId),
    /// To be found.
    Unknown,
}

/// One force on the body.
#[derive(Clone, Debug, PartialEq)]
pub struct Force<'a> {
    /// Which one.
    pub id: ForceId,
    /// Its name: `W_b`, `T`, `H`.
    pub symbol: &'a Symbol,
    /// What makes it: "beam", "lamp", "rope", "hinge".
    pub noun: &'a str,
    /// Where it acts.
    pub at: Place,
    /// Which way.
    pub acting: Acting,
    /// How large.
    pub size: Size,
}

impl Problem {
    /// Every force on the body: own weight first, then loads, ropes, supports.
    pub fn forces(&self) -> Vec<Force<'_>> {
        let body = self.body();
        let own = body.mass.map(|mass| Force {
            id: ForceId::OwnWeight,
            symbol: &body.weight_symbol,
            noun: &body.noun,
            at: body.centre,
            acting: Acting::Along(Direction::Down),
            size: Size::Weight(mass),
        });
        let loads = self.loads().iter().enumerate().map(|(index, load)| {
            let (direction, size) = match load.kind {
                LoadKind::Mass(mass) => (Direction::Down, Size::Weight(mass)),
                LoadKind::Force { size, direction } => (direction, Size::Given(size)),
            };
            Force {
                id: ForceId::Load(index),
                symbol: &load.symbol,
                noun: &load.noun,
                at: load.at,
                acting: Acting::Along(direction),
                size,
            }
        });
        let ropes = self.ropes().iter().enumerate().map(|(index, rope)| Force {
            id: ForceId::Rope(index),
            symbol: &rope.symbol,
            noun: &rope.noun,
            at: rope.at,
            acting: Acting::Along(rope.direction),
            size: Size::Unknown,
        });
        let supports = self
            .supports()
            .iter()
            .enumerate()
            .map(|(index, support)| Force {
                id: ForceId::Support(index),
                symbol: &support.symbol,
                noun: &support.noun,
                at: support.at,
                acting: match support.kind {
                    SupportKind::Hinge | SupportKind::BuiltIn => Acting::Anywhere,
                    SupportKind::Roller(direction) => Acting::Along(direction),
                },
                size: Size::Unknown,
            });
        own.into_iter()
            .chain(loads)
            .chain(ropes)
            .chain(supports)
            .collect()
    }

    /// The force with this id.
    pub fn force(&self, id: ForceId) -> Option<Force<'_>> {
        self.forces().into_iter().find(|force| force.id == id)
    }
}
