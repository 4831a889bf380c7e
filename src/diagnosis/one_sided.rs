//! Two things exchanged, of which a line shows only one.

use super::Named;
use super::world::is_settled;
use crate::judge::Board;
use crate::key::StepId;
use crate::mistakes::{Instance, Scope};

/// The distances of two forces exchanged.
const DISTANCES: &str = "distances-exchanged";
/// The masses of two bodies exchanged, and one of them taken for the other.
const EXCHANGED: &str = "masses-exchanged";
const TAKEN: &str = "misread-given";

/// True for two masses exchanged where the weight of the other one stands right: only one of them was
/// taken for another; and for two distances exchanged in the moment of one force.
pub(super) fn is_one_sided(board: &Board<'_>, target: StepId, instance: &Instance) -> bool {
    let Scope::Two(one, other) = instance.scope else {
        return false;
    };
    if instance.mistake.id == DISTANCES && matches!(target, StepId::Moment(_)) {
        return true;
    }
    let stands = |force| {
        let weight = StepId::Weight(force);
        weight != target && is_settled(board, target, weight)
    };
    instance.mistake.id == EXCHANGED && (stands(one) || stands(other))
}

/// Says of a line of one force alone only that its mass was taken from another body; that the other has
/// this one's comes after it.
pub(super) fn told_of_one(target: StepId, instances: &[Instance], named: &mut [Named]) {
    let (StepId::Weight(force) | StepId::Across(force) | StepId::Moment(force)) = target else {
        return;
    };
    for told in named {
        let exchanged = &instances[told.instance];
        let Scope::Two(one, other) = exchanged.scope else {
            continue;
        };
        if exchanged.mistake.id != EXCHANGED {
            continue;
        }
        let from = if force == one { other } else { one };
        let taken = instances.iter().position(|instance| {
            instance.mistake.id == TAKEN && instance.scope == Scope::Two(force, from)
        });
        if let Some(taken) = taken {
            told.alike.retain(|index| *index != taken);
            told.alike.insert(0, told.instance);
            told.instance = taken;
        }
    }
}
