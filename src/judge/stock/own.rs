//! What follows from the learner's own values and is no value of a step that stands: her parts, her
//! component of the unknown, the parts of her pull.

use super::super::board::Board;
use super::{Nearness, Stock};
use crate::key::{Part, Samples, StepId};
use crate::units::Dimension;

impl Stock {
    /// Parts across, and the size and direction of a support's force, as they follow from all her
    /// own values.
    pub(super) fn add_of_own_parts(&mut self, board: &Board<'_>) {
        for step in &board.key.steps {
            let part = match step.id {
                StepId::Across(_) | StepId::Reaction(_, Part::Size | Part::Direction) => true,
                // A part told by names has a value none the less.
                part @ StepId::Reaction(_, Part::Along(_)) => !board.standing.contains_key(&part),
                _ => false,
            };
            if !part {
                continue;
            }
            if let Some((function, _)) = board.accepted(step.id).get(1) {
                self.add(*function, step.dimension, function[0], Nearness::Worked);
                if step.id.has_free_sense() {
                    let size = function.map(|value| -value);
                    self.add(size, step.dimension, size[0], Nearness::Worked);
                }
            }
        }
    }

    /// The component of the unknown as her own balance gives it: her moments over its distance.
    pub(super) fn add_own_component(&mut self, board: &Board<'_>) {
        let open = board.unknown().filter(|_| board.key.general.is_none());
        let Some((unknown, force)) = open.and_then(|unknown| Some((unknown, unknown.force()?)))
        else {
            return;
        };
        let across = StepId::Across(force);
        let Some(right) = board
            .right(unknown)
            .filter(|_| board.key.step(across).is_some())
        else {
            return;
        };
        for (component, _) in board.accepted(across) {
            for (own, _) in board.accepted(unknown).iter().skip(1) {
                let function: Samples =
                    std::array::from_fn(|choice| component[choice] * own[choice] / right[choice]);
                self.add(function, Dimension::FORCE, function[0], Nearness::Worked);
            }
        }
    }

    /// The parts of the pull as they come out with the number that was typed for it.
    pub(super) fn add_of_own_pull(&mut self, board: &Board<'_>) {
        let own = board
            .unknown()
            .and_then(|unknown| Some((unknown.force()?, board.standing.get(&unknown)?)));
        let Some((pull, own)) = own else { return };
        let Some(right) = board.right(StepId::Pull(pull)) else {
            return;
        };
        let typed = own.typed.map_or(own.value, |(typed, _)| typed);
        for step in &board.key.steps {
            let part = matches!(step.id, StepId::PartOf(force, _) | StepId::Across(force) | StepId::Moment(force)
                if force == pull);
            if let Some(function) = board.right(step.id).filter(|_| part) {
                let shown = function[0] * typed / right[0];
                let function = std::array::from_fn(|choice| {
                    function[choice] * own.function[choice] / right[choice]
                });
                self.add(function, step.dimension, shown, Nearness::Worked);
                if typed < 0.0 {
                    let size = function.map(|value: f64| -value);
                    self.add(size, step.dimension, -shown, Nearness::Worked);
                }
            }
        }
    }
}
