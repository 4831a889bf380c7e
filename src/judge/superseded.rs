//! A value of the learner's own that a later line of hers took the place of.

use super::board::{Board, Memo, Own};
use super::{Judgement, Truth, judge};
use crate::key::StepId;

/// The earlier value of hers from which a line that does not hold would follow. The value in force
/// is her latest; `earlier` of the board holds those that it took the place of, oldest first.
pub fn superseded(
    board: &Board<'_>,
    (asked, line, number): (StepId, &str, usize),
    judgement: &Judgement,
) -> Option<(StepId, Own)> {
    if judgement.truth != Truth::DoesNotHold {
        return None;
    }
    let follows = |(step, own): &&(StepId, Own)| {
        // Taken back, or gone on with in another way: nothing stands in its place.
        let replaced = board.standing.get(step).is_some_and(|now| now.line > 0);
        let mut standing = board.standing.clone();
        standing.insert(*step, own.clone());
        let then = Board {
            standing: &standing,
            memo: Memo::default(),
            ..*board
        };
        replaced
            && judgement.target != *step
            && matches!(judge(&then, asked, line, number).truth,
                Truth::Follows(lines) if lines.contains(&own.line))
    };
    board.earlier.iter().rev().find(follows).cloned()
}
