//! A value where the balance of moments is asked.

use super::board::Board;
use super::stock::Stock;
use super::{Judgement, Lacking, Truth, aside, chain, expression, lacking, other};
use crate::key::StepId;
use crate::reading::{Node, Tree};
use crate::units::Dimension;

/// What stands behind a name of the learner's own, as an answer to the step asked.
pub(super) fn value_of_name(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
    line: usize,
) -> Judgement {
    match asked {
        sum if sum.is_balance() => at_moment_sum(board, stock, sum, sides, line),
        _ => expression::judge(board, stock, asked, sides, line, false),
    }
}

/// A value where the moment balance is asked: the pull itself skips ahead; the sum of the known
/// moments is half of the balance.
pub(super) fn at_moment_sum(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
    line: usize,
) -> Judgement {
    // The known moments alone, set to zero: half of a balance too.
    let zero = |side: &Tree| matches!(&side.node, Node::Literal(literal) if literal.value == 0.0);
    let (sides, is_zeroed) = match sides {
        [one, other] if zero(other) => (&[*one][..], true),
        [other, one] if zero(other) => (&[*one][..], true),
        sides => (sides, false),
    };
    if asked == StepId::MomentSum
        && let Some(judgement) = aside::sum_and_value(board, stock, sides, true)
    {
        return judgement;
    }
    let pull = board.key.gives(asked).or(board.unknown()).unwrap_or(asked);
    let mut judgement = expression::judge(board, stock, pull, sides, line, false);
    // What the unknown is made of is not nothing: its own term is missing.
    let nothing = judgement
        .value
        .is_some_and(|value| value.abs() < other::NOTHING);
    if is_zeroed && judgement.truth.holds() && !nothing {
        return without_its_unknown(board, asked, pull);
    }
    if judgement.truth.holds() {
        other::credit(board, asked, &mut judgement, sides);
        return judgement;
    }
    if asked != StepId::MomentSum {
        return judgement;
    }
    let known = expression::judge(board, stock, StepId::KnownMoments, sides, line, false);
    if known.truth.holds() {
        let mut noted = Judgement::of(StepId::KnownMoments, Truth::Noted);
        noted.evidence.other_step = Some(StepId::KnownMoments);
        noted.value = known.value;
        return noted;
    }
    if let Some(judgement) = lacking::without_unknown(board, stock, sides, line) {
        return judgement;
    }
    // Sides without the unknown that differ show no way to it.
    if chain::first_break(board, stock, Dimension::MOMENT, sides).is_some() {
        judgement.evidence.lifted.clear();
        judgement.evidence.other_step = None;
    }
    aside::sum_and_value(board, stock, sides, false).unwrap_or(judgement)
}

/// A balance in which the unknown that it gives does not stand.
fn without_its_unknown(board: &Board<'_>, asked: StepId, unknown: StepId) -> Judgement {
    let dimension = board.key.step(asked).map(|step| step.dimension);
    let (target, what) = match dimension == Some(Dimension::MOMENT) {
        true => (asked, Lacking::Unknown),
        false => (unknown, Lacking::Reaction),
    };
    let mut lacks = Judgement::of(target, Truth::DoesNotHold);
    lacks.evidence.lacking = Some(what);
    lacks
}
