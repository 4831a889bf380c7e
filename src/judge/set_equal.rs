//! Two known things of the working set equal though they differ: a balance of forces without the
//! hinge's part, or the value of another step with another number behind the sign.

use super::aside::Aside;
use super::board::Board;
use super::chain::first_break;
use super::lacking::Lacking;
use super::lift::{is_all_known, lift, plain_value};
use super::names::NameRole;
use super::open::is_open;
use super::stock::Stock;
use super::{Judgement, Truth};
use crate::key::{Part, Samples, StepId, agree};
use crate::reading::{Leaf, Node, Tree, Value, evaluate};
use crate::units::Dimension;

/// What differs by no more than this share may be meant for the same, with a slip in its digits.
const SLIP: f64 = 0.1;

/// What a line that does not answer says by its sign of equality, where that is false.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
    judgement: &Judgement,
) -> Option<Judgement> {
    let [left, right] = sides else { return None };
    // Where the form is the right one, only the number behind it is wrong.
    let answers = judgement.evidence.broken_link;
    if answers || board.key.general.is_some() || names_open(board, asked, sides) {
        return None;
    }
    let mut found = Judgement::of(asked, Truth::DoesNotHold);
    if lacks_reaction(board, stock, asked, sides) {
        found.evidence.lacking = Some(Lacking::Reaction);
        return Some(found);
    }
    let dimension = board.key.step(asked)?.dimension;
    let broken = first_break(board, stock, dimension, sides)?;
    let of_another = judgement.evidence.other_step.is_some() && judgement.target == asked;
    let apart = || is_along(asked) && are_apart(board, stock, (left, right), dimension);
    if !of_another && !apart() {
        return None;
    }
    found.evidence.aside = Some(Aside::False);
    found.caret = Some(broken);
    Some(found)
}

/// True where the name of the step asked, or of something else still to be found, stands in a line.
fn names_open(board: &Board<'_>, asked: StepId, sides: &[&Tree]) -> bool {
    let names = sides.iter().flat_map(|side| side.names());
    let mut roles = names.filter_map(|(id, _)| board.names.role(id));
    roles.any(|role| role == NameRole::Step(asked) || is_open(board, role).is_some())
}

fn is_along(asked: StepId) -> bool {
    matches!(asked, StepId::Reaction(_, Part::Along(_)))
}

/// True if the sides are all forces of the balance that the part asked is found from, without it.
fn lacks_reaction(board: &Board<'_>, stock: &Stock, asked: StepId, sides: &[&Tree]) -> bool {
    if !is_along(asked) {
        return false;
    }
    let apart = |sides: &[&Tree], _: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
        let one = evaluate(sides[0], leaf).ok()?.number_as(Dimension::FORCE);
        let other = evaluate(sides[1], leaf).ok()?.number_as(Dimension::FORCE);
        Some(one - other)
    };
    let lifted = lift(board, stock, sides, Some(Dimension::FORCE), &apart);
    let accepted = board.accepted(asked);
    let is_part = |typed: &Samples| {
        let turned = typed.map(|value| -value);
        let mut parts = accepted.iter().map(|(part, _)| part);
        parts.any(|part| agree(typed, part) || agree(&turned, part))
    };
    lifted.iter().any(|one| is_part(&one.function))
}

/// True for two known things that no slip of the pen makes equal, the second of them worked out or
/// a quantity of its own.
fn are_apart(
    board: &Board<'_>,
    stock: &Stock,
    (left, right): (&Tree, &Tree),
    dimension: Dimension,
) -> bool {
    let value = |side: &Tree| plain_value(board, side).map(|value| value.number.abs());
    let (Ok(one), Ok(other)) = (value(left), value(right)) else {
        return false;
    };
    let known = |side: &Tree| is_all_known(stock, side, dimension);
    let told = |side: &Tree| match &side.node {
        Node::Literal(literal) => literal.value != 0.0,
        _ => true,
    };
    (one - other).abs() > SLIP * one.max(other) && known(left) && known(right) && told(right)
}
