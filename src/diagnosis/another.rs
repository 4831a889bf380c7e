//! Another quantity of the working, given for the one asked.

use crate::judge::{Board, Judgement, Typed};
use crate::key::{Part, StepId};

/// The quantity whose value, in either sense, a number alone is, where the pull, a part of it or the
/// hinge's force is asked and another of these is given.
pub(super) fn asked_for(board: &Board<'_>, judgement: &Judgement, number: Typed) -> Option<StepId> {
    let target = judgement.target;
    let asked = is_result(target) && judgement.evidence.alone && !judgement.evidence.broken_link;
    let right = board.right(target).filter(|_| asked)?[0];
    let is = |value: f64| {
        Typed {
            value: number.value.abs(),
            ..number
        }
        .is(value.abs())
    };
    let steps = board.key.steps.iter().map(|step| step.id);
    let others = steps.filter(|id| *id != target && is_result(*id));
    let mut found = others.filter(|id| {
        let accepted = board.accepted(*id);
        accepted.iter().any(|(function, _)| is(function[0]))
    });
    // What is as large as the one asked is no other.
    found.next().filter(|_| !is(right))
}

fn is_result(id: StepId) -> bool {
    let of_hinge = matches!(id, StepId::Reaction(_, Part::Along(_) | Part::Size));
    of_hinge || id.is_pull() || matches!(id, StepId::PartOf(..))
}
