//! `FN/N = μ`: friction at its limit, told by an equation with its own name in it.

use super::board::Board;
use super::names::names_step;
use super::stock::Stock;
use super::{Judgement, implied};
use crate::key::StepId;
use crate::reading::{Node, Tree};

/// Judges two sides as the law of friction at its limit, where that is asked and its name does not
/// stand alone; `None` where they are not that law.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
    line: usize,
) -> Option<Judgement> {
    let is_friction = board.key.heading(asked)?.kind == "friction";
    let alone = |side: &&Tree| matches!(side.node, Node::Name(_)) && names_step(board, asked, side);
    let named = sides.iter().any(|side| names_step(board, asked, side));
    if !is_friction || board.key.open_in(asked).is_empty() || !named || sides.iter().any(alone) {
        return None;
    }
    let found = implied::judge(board, stock, asked, sides, line);
    let mut found = found.filter(|found| found.truth.holds())?;
    // It tells what friction is of the push, and no value of either.
    for (_, own) in &mut found.values {
        own.relation = true;
    }
    Some(found)
}
