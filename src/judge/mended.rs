//! The way of a force whose parts the learner has in a wrong sense: it may be told as it is, or as
//! it follows from them.

use super::board::{Board, Memo, Standing};
use super::shape::parts_of;
use super::{Judgement, Truth};
use crate::key::StepId;

/// A part that is right but for its sense is off by no more than this share of it.
const ROUNDED: f64 = 0.005;

/// Judges the way of a force again with its parts in their right senses, where some of her own
/// stand in the other: the line may hold so, or follow from all of them as she has them. What only
/// follows so does where nothing but their senses was wrong: of what came out the other way the way
/// is hers.
pub(super) fn in_either_way(
    board: &Board<'_>,
    as_hers: Judgement,
    judge: &dyn Fn(&Board<'_>) -> Judgement,
) -> Judgement {
    let Some((standing, lines, only_turned)) = with_right_senses(board, as_hers.target) else {
        return as_hers;
    };
    let mended = judge(&Board {
        standing: &standing,
        memo: Memo::default(),
        ..*board
    });
    match &as_hers.truth {
        _ if matches!(mended.truth, Truth::Holds | Truth::HoldsRounded) => mended,
        _ if mended.truth.holds() && (only_turned || mended.evidence.ways.is_empty()) => mended,
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
/// of these; true if these are right so. `None` where there are none.
fn with_right_senses(board: &Board<'_>, target: StepId) -> Option<(Standing, Vec<usize>, bool)> {
    let parts = parts_of(board, target).filter(|_| target.is_direction())?;
    let mut standing = board.standing.clone();
    let mut lines = Vec::new();
    let mut only_turned = true;
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
        only_turned &= (own.function[0] - right[0]).abs() <= ROUNDED * right[0].abs();
    }
    lines.sort_unstable();
    (!lines.is_empty()).then_some((standing, lines, only_turned))
}
