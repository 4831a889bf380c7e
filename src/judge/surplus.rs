//! One part too many: a line that comes near the right value though it holds a term or a factor
//! that does not belong there (`T·sin 80° + 1`), and the hinge's own force in a balance about the hinge. No
//! rounding makes a term.

use super::board::Board;
use super::equation::{has_reaction, has_unknown};
use super::lift::{lift, plain_value};
use super::root::root;
use super::stock::Stock;
use super::{Judgement, Truth};
use crate::key::{Samples, StepId, agree};
use crate::reading::{Leaf, Node, Operator, Reading, Tree, Value};
use crate::text::Span;

/// More parts than this are not tried: the line is no plain one.
const MOST_PARTS: usize = 8;
/// Of more numbers than this every change of a line would take too long to try.
const MOST_NUMBERS: usize = 12;

/// Sees whether a balance that does not hold would without a term in which a part of the hinge's force
/// stands.
pub(super) fn see(board: &Board<'_>, stock: &Stock, reading: &Reading, judgement: &mut Judgement) {
    let sides: Vec<&Tree> = reading.sides.iter().collect();
    let asked = judgement.truth == Truth::DoesNotHold
        && judgement.target == StepId::MomentSum
        && sides.len() == 2
        && has_unknown(board, &sides)
        && has_reaction(board, &sides);
    let Some(unknown) = board.unknown().filter(|_| asked) else {
        return;
    };
    let accepted = board.accepted(unknown);
    let proved = |sides: &[&Tree]| {
        let combine = |sides: &[&Tree], choice: usize, leaf: &mut dyn FnMut(Leaf<'_>) -> Value| {
            root(board, unknown, sides, choice, leaf)
        };
        let is_right = |found: &Samples| accepted.iter().any(|(right, _)| agree(right, found));
        !has_reaction(board, sides)
            && (lift(board, stock, sides, None, &combine).iter()).any(|one| is_right(&one.function))
    };
    if let Some(span) = surplus(board, &sides, &proved) {
        judgement.evidence.reaction_arm = true;
        judgement.caret = Some(span);
    }
}

/// The part without which a line is proved, if there is one. `proved` says whether sides are.
pub(super) fn surplus(
    board: &Board<'_>,
    sides: &[&Tree],
    proved: &dyn Fn(&[&Tree]) -> bool,
) -> Option<Span> {
    let numbers = sides.iter().map(|side| side.literals().len());
    if numbers.sum::<usize>() > MOST_NUMBERS {
        return None;
    }
    for (at, side) in sides.iter().enumerate() {
        let mut without = Vec::new();
        variants(side, &mut without);
        for (variant, span, part) in without.into_iter().take(MOST_PARTS) {
            let counts = part
                .is_none_or(|part| plain_value(board, part).is_ok_and(|value| value.number != 0.0));
            if !counts {
                continue;
            }
            let changed: Vec<&Tree> = sides
                .iter()
                .enumerate()
                .map(|(index, side)| if index == at { &variant } else { *side })
                .collect();
            if proved(&changed) {
                return Some(span);
            }
        }
    }
    None
}

/// A changed tree, the span of what is left out of it, and what that is where it is a term.
type Variant<'t> = (Tree, Span, Option<&'t Tree>);

/// Every tree with one term or one typed factor left out.
fn variants<'t>(tree: &'t Tree, found: &mut Vec<Variant<'t>>) {
    let inside = |part: &'t Tree, wrap: &dyn Fn(Box<Tree>) -> Node| -> Vec<Variant<'t>> {
        let mut changed = Vec::new();
        variants(part, &mut changed);
        changed
            .into_iter()
            .map(|(inner, span, part)| {
                let node = wrap(Box::new(inner));
                let whole = Tree {
                    node,
                    span: tree.span,
                };
                (whole, span, part)
            })
            .collect()
    };
    let (operator, left, right) = match &tree.node {
        Node::Binary(operator, left, right) => (*operator, left, right),
        Node::Negative(inner) => {
            found.extend(inside(inner, &Node::Negative));
            return;
        }
        _ => return,
    };
    // A factor of one changes nothing.
    let literal =
        |tree: &Tree| matches!(&tree.node, Node::Literal(literal) if literal.value != 1.0);
    match operator {
        Operator::Add | Operator::Subtract => {
            found.push(((**left).clone(), right.span, Some(&**right)));
            let kept = (**right).clone();
            let kept = if operator == Operator::Add {
                kept
            } else {
                Tree {
                    span: kept.span,
                    node: Node::Negative(Box::new(kept)),
                }
            };
            found.push((kept, left.span, Some(&**left)));
        }
        Operator::Multiply | Operator::Divide if literal(right) => {
            found.push(((**left).clone(), right.span, None));
        }
        Operator::Multiply if literal(left) => {
            found.push(((**right).clone(), left.span, None));
        }
        _ => {}
    }
    found.extend(inside(left, &|changed| {
        Node::Binary(operator, changed, right.clone())
    }));
    found.extend(inside(right, &|changed| {
        Node::Binary(operator, left.clone(), changed)
    }));
}
