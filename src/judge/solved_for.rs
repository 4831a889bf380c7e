//! A relation that tells a step though its name does not stand alone: `tan ψ = Hy/Hx`,
//! `sin β = 3/5`, `H² = Hx² + Hy²`.

use super::board::Board;
use super::names::NameRole;
use super::stock::Stock;
use super::{Judgement, Truth, judge_relation};
use crate::key::StepId;
use crate::reading::{Function, Node, Operator, Reading, Tree};

/// The step that one side tells by a ratio of its angle or by its square, and the reading solved
/// for it. `None` where the first or last side is no such thing, or the step stands beside it.
pub(super) fn solved_for(board: &Board<'_>, reading: &Reading) -> Option<(StepId, Reading)> {
    let sides = &reading.sides;
    if sides.len() < 2 || reading.defines.is_some() {
        return None;
    }
    let told = |at: usize| Some((at, claimed(board, &sides[at])?));
    let (at, (step, name, inverse)) = told(0).or_else(|| told(sides.len() - 1))?;
    let rest = || sides.iter().enumerate().filter(|(place, _)| *place != at);
    let names_it = |side: &Tree| {
        let names = side.names();
        let mut roles = names.iter().filter_map(|(id, _)| board.names.role(*id));
        roles.any(|role| role == NameRole::Step(step))
    };
    if rest().any(|(_, side)| names_it(side)) {
        return None;
    }
    let solved = rest().map(|(_, side)| Tree {
        node: Node::Call(inverse, Box::new(side.clone())),
        span: side.span,
    });
    let sides = [name].into_iter().chain(solved).collect();
    Some((
        step,
        Reading {
            sides,
            ..reading.clone()
        },
    ))
}

/// Judges a line that is not seen to hold by its reading solved for the step that it tells.
pub(super) fn judge_solved(
    board: &Board<'_>,
    stock: &Stock,
    (asked, line): (StepId, (&str, usize)),
    mut judgement: Judgement,
    (step, solved): (StepId, Reading),
) -> Judgement {
    let refused = matches!(judgement.truth, Truth::DoesNotHold | Truth::Mismatched(_));
    if !refused && !judgement.is_unseen() {
        return judgement;
    }
    let mut solved = judge_relation(board, stock, step, &solved, line);
    let rests_on = std::mem::take(&mut judgement.evidence.rests_on);
    if solved.truth.holds() {
        judgement = Judgement::noted_true(asked);
        judgement.evidence.tells = Some(step);
    } else if refused && solved.truth == Truth::Noted && !solved.says_own_again() {
        return solved;
    } else if refused && solved.truth == Truth::DoesNotHold && solved.target == step {
        // What it gives is her value of that step.
        std::mem::swap(&mut judgement, &mut solved);
    }
    judgement.evidence.rests_on = rests_on;
    judgement
}

/// The steps that are named in a reading, without the one that it tells.
pub(super) fn steps_named(
    board: &Board<'_>,
    reading: &Reading,
    told: Option<StepId>,
) -> Vec<StepId> {
    let mut steps = Vec::new();
    for (id, _) in reading.sides.iter().flat_map(Tree::names) {
        if let Some(NameRole::Step(step)) = board.names.role(id)
            && Some(step) != told
            && !steps.contains(&step)
        {
            steps.push(step);
        }
    }
    steps
}

/// The step that a side tells, its name, and what undoes the side.
fn claimed(board: &Board<'_>, side: &Tree) -> Option<(StepId, Tree, Function)> {
    let (inner, inverse) = match &side.node {
        Node::Call(Function::Sine, inner) => (inner, Function::ArcSine),
        Node::Call(Function::Cosine, inner) => (inner, Function::ArcCosine),
        Node::Call(Function::Tangent, inner) => (inner, Function::ArcTangent),
        Node::Binary(Operator::Power, inner, power) if is_two(power) => {
            (inner, Function::SquareRoot)
        }
        _ => return None,
    };
    let Node::Name(id) = inner.node else {
        return None;
    };
    match board.names.role(id)? {
        NameRole::Step(step) => Some((step, Tree::clone(inner), inverse)),
        _ => None,
    }
}

fn is_two(tree: &Tree) -> bool {
    matches!(&tree.node, Node::Literal(literal) if literal.value == 2.0 && literal.unit.is_none())
}
