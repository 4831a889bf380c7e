//! The friction that a contact must give beside the most that it can give.

use super::tell::{Teller, Told};
use super::{Meaning, Quantity, Working};
use crate::key::Atom;
use crate::problem::GivenId;
use crate::system::{ActId, Friction, Hold, HoldKind, System, When};
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
        let (coefficient, needed, push) = grip(self.system, self.working, act, hold)?;
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
            self.system.given(coefficient).symbol.shown(),
            name(push)?,
            number(Atom::Given(coefficient)),
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

/// The coefficient that limits the friction of a contact, the friction that is needed there, and the
/// push; `None` where the contact is about to slip, or holds in another way.
pub(super) fn grip(
    system: &System,
    working: &Working,
    act: ActId,
    hold: &Hold,
) -> Option<(GivenId, Quantity, Quantity)> {
    let (HoldKind::Rough { friction, .. } | HoldKind::Base { friction, .. }) = &hold.kind else {
        return None;
    };
    let Friction::UpTo(coefficient) = friction else {
        return None;
    };
    let sought = system.parts().sought.as_ref();
    let slips = |when: &When| matches!(when, When::Slips { act: slips, .. } if *slips == act);
    if sought.is_some_and(|one| slips(&one.when)) {
        return None;
    }
    let needed = working.find(Meaning::FrictionNeeded(act))?;
    let push = working.find(Meaning::Force(act))?;
    Some((*coefficient, needed, push))
}
