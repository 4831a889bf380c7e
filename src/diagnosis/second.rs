//! Second mistakes: sought in the working of a learner who already goes on with a wrong relation.

use crate::judge::Board;
use crate::key::{Key, StepId};
use crate::mistakes::Instance;

/// The right key with every wrong relation in it that the learner goes on with, but for those of the
/// step `target`; `None` where there is none.
pub(super) fn key_in_force(board: &Board<'_>, target: StepId) -> Option<Key> {
    // A step that she tries anew stands on nothing that she tried there before.
    let before = board.carried.iter().filter(|(step, _)| *step != target);
    let before: Vec<&Key> = before.map(|(_, wrong)| wrong).collect();
    if before.is_empty() || board.key.general.is_some() {
        return None;
    }
    let mut hers = board.key.clone();
    for wrong in before {
        for step in &wrong.steps {
            let right = board.key.step(step.id).map(|step| &step.rule);
            if right != Some(&step.rule) {
                hers = hers.with_rule(step.id, step.rule.clone());
            }
        }
    }
    Some(hers)
}

/// Her key with a further mistake made in it; `None` where it does not apply, or changes nothing that
/// she has not changed already.
pub(super) fn rewritten(board: &Board<'_>, hers: &Key, instance: &Instance) -> Option<Key> {
    let second = (instance.mistake.rewrite)(board.problem, hers, instance.scope)?;
    (second != *hers && second != instance.key).then_some(second)
}
