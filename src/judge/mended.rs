//! The way of a force whose parts the learner has in a wrong sense: it may be told as it is, or as
//! it follows from them.

use super::board::{Board, Memo, Standing};
use super::shape::parts_of;
use super::{Judgement, Truth};
use crate::key::StepId;

/// Judges the way of a force again with its parts in their right senses, where some of her own
/// stand in the other: the line may hold so, or follow from all of them as she has them.
pub(super) fn in_either_way(
    board: &Board<'_>,
    as_hers: Judgement,
    judge: &dyn Fn(&Board<'_>) -> Judgement,
) -> Judgement {
    let Some((standing, lines)) = with_right_senses(board, as_hers.target) else {
        return as_hers;
    };
    let mended = judge(&Board {
        standing: &standing,
        memo: Memo::default(),
        ..*board
    });
    match &as_hers.truth {
        _ if mended.truth.holds() => mended,
        Truth::Holds | Truth::HoldsRounded => follows(as_hers, lines),
        _ => as_hers,
    }
}

/// What holds in her own senses only follows from the lines in which they stand.
fn follows(mut judgement: Judgement, lines: Vec<usize>) -> Judgement {
    judgement.truth = Truth::Follows(lines);
    for (_, own) in &mut judgement.values {
        own.right = false;
    }
    judgement
}

/// Her values with the parts of a force that she has in a wrong sense turned about, and the lines
/// of these; `None` where there are none.
fn with_right_senses(board: &Board<'_>, target: StepId) -> Option<(Standing, Vec<usize>)> {
    let parts = parts_of(board, target).filter(|_| target.is_direction())?;
    let mut standing = board.standing.clone();
    let mut lines = Vec::new();
    for part in parts {
        let right = board.right(part)?;
        let Some(own) = standing.get_mut(&part) else {
            continue;
        };
        if own.right || own.function[0] * right[0] >= 0.0 {
            continue;
        }
        lines.push(own.line);
        own.value = -own.value;
        own.typed = own.typed.map(|(typed, written)| (-typed, written));
        own.function = own.function.map(|value| -value);
        own.right = (own.function[0] - right[0]).abs() <= 1e-9 * right[0].abs();
    }
    lines.sort_unstable();
    (!lines.is_empty()).then_some((standing, lines))
}
