//! Second mistakes: sought in the working of a learner who already goes on with a wrong relation.

use crate::judge::Board;
use crate::key::Key;
use crate::mistakes::Instance;

/// The right key with every wrong relation in it that the learner goes on with; `None` where there
/// is none.
pub(super) fn key_in_force(board: &Board<'_>) -> Option<Key> {
    if board.carried.is_empty() || board.key.general.is_some() {
        return None;
    }
    let mut hers = board.key.clone();
    for (_, wrong) in board.carried {
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
