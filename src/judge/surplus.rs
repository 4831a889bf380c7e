//! One part too many: a line that comes near the right value though it holds a term or a factor
//! that does not belong there (`T·sin 80° + 1`). No rounding makes a term.

use super::board::Board;
use super::lift::plain_value;
use crate::reading::{Node, Operator, Tree};
use crate::text::Span;

/// More parts than this are not tried: the line is no plain one.
const MOST_PARTS: usize = 8;

/// The part without which a line is proved, if there is one. `proved` says whether sides are.
pub(super) fn surplus(
    board: &Board<'_>,
    sides: &[&Tree],
    proved: &dyn Fn(&[&Tree]) -> bool,
) -> Option<Span> {
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

/// Every tree with one term or one typed factor left out, with the span of what is left out.
fn variants<'t>(tree: &'t Tree, found: &mut Vec<(Tree, Span, Option<&'t Tree>)>) {
    let Node::Binary(operator, left, right) = &tree.node else {
        if let Node::Negative(inner) = &tree.node {
            let mut inside = Vec::new();
            variants(inner, &mut inside);
            let wrap = |(inner, span, part): (Tree, Span, Option<&'t Tree>)| {
                let node = Node::Negative(Box::new(inner));
                (
                    Tree {
                        node,
                        span: tree.span,
                    },
                    span,
                    part,
                )
            };
            found.extend(inside.into_iter().map(wrap));
        }
        return;
    };
    // A factor of one changes nothing.
    let literal =
        |tree: &Tree| matches!(&tree.node, Node::Literal(literal) if literal.value != 1.0);
    match operator {
        Operator::Add | Operator::Subtract => {
            found.push(((**left).clone(), right.span, Some(&**right)));
            let kept = (**right).clone();
            let kept = if *operator == Operator::Add {
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
    let operator = *operator;
    let mut inside = Vec::new();
    variants(left, &mut inside);
    for (changed, span, part) in inside.drain(..) {
        let node = Node::Binary(operator, Box::new(changed), right.clone());
        found.push((
            Tree {
                node,
                span: tree.span,
            },
            span,
            part,
        ));
    }
    variants(right, &mut inside);
    for (changed, span, part) in inside {
        let node = Node::Binary(operator, left.clone(), Box::new(changed));
        found.push((
            Tree {
                node,
                span: tree.span,
            },
            span,
            part,
        ));
    }
}
