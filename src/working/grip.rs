//! The friction that a contact must give beside the most that it can give.

use super::tell::{Teller, Told};
use super::{Meaning, Quantity};
use crate::key::Atom;
use crate::system::{ActId, Friction, Hold, HoldKind, When};
use crate::units::{Dimension, value_text};

impl Teller<'_> {
    /// For each contact that holds by a coefficient: that the friction needed there is no more than
    /// the coefficient times the push. A contact that is about to slip has that as its condition.
    pub(super) fn grips(&self) -> Vec<Told> {
        let holds = self.system.parts().holds.iter().enumerate();
        let told = holds.filter_map(|(index, hold)| self.grip(ActId::Hold(index), hold));
        told.flatten().collect()
    }

    fn grip(&self, act: ActId, hold: &Hold) -> Option<[Told; 3]> {
        let (HoldKind::Rough { friction, .. } | HoldKind::Base { friction, .. }) = &hold.kind
        else {
            return None;
        };
        let Friction::UpTo(coefficient) = friction else {
            return None;
        };
        let sought = self.system.parts().sought.as_ref();
        if sought
            .is_some_and(|one| matches!(one.when, When::Slips { act: slips, .. } if slips == act))
        {
            return None;
        }
        let needed = self.working.find(Meaning::FrictionNeeded(act))?;
        let push = self.working.find(Meaning::Force(act))?;
        let size = |id: Quantity| {
            let (values, gravity) = (self.numbers.values, self.numbers.gravity);
            self.working.value(id, values, gravity).map(f64::abs)
        };
        let force = |newtons: f64| value_text(newtons, Dimension::FORCE, self.system.figures());
        let most = self.numbers.values.get(coefficient.0)? * size(push)?;
        let number = |atom| self.number(atom, &[]).0;
        let name = |id: Quantity| self.working.named(id).map(|named| named.symbol.shown());
        let limit = format!(
            "{}·{} = {}·{} = {}",
            self.system.given(*coefficient).symbol.shown(),
            name(push)?,
            number(Atom::Given(*coefficient)),
            number(Atom::Step(push)),
            force(most),
        );
        let compared = format!("{} ≤ {}", force(size(needed)?), force(most));
        Some([
            Told::Grip {
                noun: hold.noun.clone(),
            },
            Told::Compared { text: limit },
            Told::Compared { text: compared },
        ])
    }
}
