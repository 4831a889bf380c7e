//! How a balance is taken, as it is told.

use super::tell::Teller;
use super::{Balance, Kind, Quantity};
use crate::system::BodyId;

/// How a balance is taken: the moments or forces of which bodies, about which spot.
#[derive(Clone, Debug, PartialEq)]
pub struct Taken {
    /// How it is taken.
    pub kind: Kind,
    /// The nouns of the bodies.
    pub bodies: Vec<String>,
    /// The names of unknowns of these bodies that do not stand in it.
    pub removed: Vec<String>,
}

impl Teller<'_> {
    /// How a balance is taken, told for these bodies.
    pub(super) fn taken(&self, balance: &Balance, bodies: &[BodyId]) -> Taken {
        let bodies = bodies.iter();
        let found = bodies.filter_map(|body| self.system.parts().bodies.get(body.0));
        Taken {
            kind: balance.kind.clone(),
            bodies: found.map(|body| body.noun.clone()).collect(),
            removed: self.symbols(&balance.removed),
        }
    }

    fn symbols(&self, quantities: &[Quantity]) -> Vec<String> {
        let named = quantities.iter().filter_map(|one| self.working.named(*one));
        named.map(|named| named.symbol.shown()).collect()
    }
}
