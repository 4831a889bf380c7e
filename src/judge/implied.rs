//! A step told by an equation with its own name in it: `Wb/g = mb`, `α + θ = 90°`.

use super::board::{Board, Own};
use super::equation::roles;
use super::expression::{self, TOO_COARSE, calculated};
use super::grade::grade;
use super::lift::{lift, plain_leaf, plain_value};
use super::names::NameRole;
use super::open::{is_of_open_unknown, is_open};
use super::root::root;
use super::sense::{note_sense, same, settle_sense, size_meant};
use super::stock::Stock;
use super::unproved::not_seen;
use super::{Judgement, Truth};
use crate::key::StepId;
use crate::reading::{Leaf, Node, Tree, Value};
use crate::units::Dimension;

/// Judges two sides as the value that they give the step asked, whose name stands among others in
/// them. `None` where they give none: the step is an unknown of a balance, it is not named, or it
/// drops out.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    sides: &[&Tree],
    line: usize,
) -> Option<Judgement> {
    let of_balance = matches!(
        asked,
        StepId::MomentSum | StepId::Pull(_) | StepId::Reaction(..)
    );
    if sides.len() != 2 || of_balance {
        return None;
    }
    let roles = roles(board, sides);
    // Only the unknown's own component is told by it.
    let of_unknown = board.unknown().and_then(StepId::force) == asked.force();
    let made_of = board.key.open_in(asked);
    let open = |role: &NameRole| {
        let made_of = matches!(role, NameRole::Step(id) if made_of.contains(id));
        !made_of
            && is_open(board, *role)
                .is_some_and(|open| !of_unknown || Some(open) != board.unknown())
    };
    // With another force in it, it is a balance.
    let other = |role: &NameRole| match role {
        NameRole::Step(StepId::Angle(_) | StepId::Distance(_)) => false,
        NameRole::Step(id) => id.force() != asked.force(),
        _ => false,
    };
    if !roles.contains(&NameRole::Step(asked)) || roles.iter().any(|role| open(role) || other(role))
    {
        return None;
    }
    if sides.iter().any(|side| plain_value(board, side).is_err()) {
        return None;
    }
    let combine = |sides: &[&Tree], choice: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
        root(board, asked, sides, choice, leaf)
    };
    if let Some(angle) = as_inverse(board, asked, sides) {
        let mut judgement = expression::judge(board, stock, asked, &[&angle], line, true);
        // The line shows a ratio, not the angle.
        judgement.value = None;
        return Some(judgement);
    }
    let value = root(board, asked, sides, 0, &mut |leaf| plain_leaf(board, leaf))?;
    let wanted = matches!(asked, StepId::Angle(_)).then_some(Dimension::ANGLE);
    let lifted = lift(board, stock, sides, wanted, &combine);
    let mut judgement = Judgement::of(asked, Truth::DoesNotHold);
    judgement.evidence.number = Some(calculated(value));
    let accepted = board.accepted(asked);
    let hit = accepted.iter().find(|(function, _)| {
        lifted
            .iter()
            .any(|one| same(asked, &one.function, function))
    });
    let Some((function, lines)) = hit else {
        let near = grade(board, asked, calculated(value)).is_some();
        judgement.evidence.lifted = lifted.into_iter().map(|one| one.function).collect();
        if near {
            judgement.truth = Truth::Noted;
            let wanted = wanted.unwrap_or(Dimension::NUMBER);
            judgement.remarks = not_seen(stock, sides, wanted);
        }
        return Some(judgement);
    };
    judgement.proved = true;
    let shaped = matches!(asked, StepId::Angle(_));
    let off = (size_meant(asked, value) - function[0].abs()).abs();
    if !shaped && !board.few_figures_count() && off > TOO_COARSE * function[0].abs() {
        judgement.truth = Truth::TooFewFigures;
        return Some(judgement);
    }
    let right = board.right(asked).as_ref() == Some(function);
    judgement.truth = if right && lines.is_empty() {
        Truth::Holds
    } else {
        Truth::Follows(lines.clone())
    };
    note_sense(asked, value, function[0], &mut judgement);
    let mut own = Own {
        line,
        value,
        typed: None,
        function: *function,
        right: judgement.truth == Truth::Holds,
        against: false,
        relation: is_of_open_unknown(board, asked),
    };
    settle_sense(asked, &mut own, function[0]);
    judgement.values.push((asked, own));
    judgement.establishes.push(asked);
    Some(judgement)
}

/// `sin α = 0.574` as sin⁻¹ of the other side.
fn as_inverse(board: &Board<'_>, asked: StepId, sides: &[&Tree]) -> Option<Tree> {
    let [left, right] = sides else { return None };
    let Node::Call(function, inner) = &left.node else {
        return None;
    };
    let Node::Name(id) = inner.node else {
        return None;
    };
    let named = board.names.role(id) == Some(NameRole::Step(asked));
    let angle = matches!(asked, StepId::Angle(_));
    (named && angle).then_some(Tree {
        node: Node::Call(function.inverse()?, Box::new((*right).clone())),
        span: right.span,
    })
}
