//! Units that stand for a whole expression.

use super::tree::{Literal, Node, Operator, Tree};
use crate::text::Span;
use crate::units::Dimension;

/// Moves a unit from the last divisor to the whole term, where all other numbers are bare: in
/// `64.2*1.6/2.4 N` the newtons are those of the result.
pub(super) fn settle_units(tree: Tree, next_index: &mut usize) -> Tree {
    let Tree { node, span } = tree;
    let node = match node {
        Node::Binary(operator @ (Operator::Add | Operator::Subtract), left, right) => {
            let left = settle_units(*left, next_index);
            let right = settle_units(*right, next_index);
            Node::Binary(operator, Box::new(left), Box::new(right))
        }
        Node::Binary(Operator::Divide, left, right) if all_bare(&left) => {
            return settle_divisor(*left, *right, span, next_index);
        }
        node => node,
    };
    Tree { node, span }
}

fn settle_divisor(left: Tree, mut right: Tree, span: Span, next_index: &mut usize) -> Tree {
    let mut moved = None;
    if let Node::Literal(literal) = &mut right.node
        && let Some(unit) = literal.unit
        && unit.dimension != Dimension::ANGLE
        && !literal.unit_alone
        // Metres are as well those of the divisor: `2932/3.81 m` is a force by its distance.
        && !(unit.dimension == Dimension::LENGTH && unit.factor == 1.0)
    {
        literal.unit = None;
        literal.value = literal.typed;
        literal.written.last_place /= unit.factor;
        moved = Some(Literal::unit_alone(*next_index, unit));
        *next_index += 1;
    }
    let unit_span = right.span;
    let quotient = Tree {
        node: Node::Binary(Operator::Divide, Box::new(left), Box::new(right)),
        span,
    };
    let Some(unit) = moved else {
        return quotient;
    };
    let unit = Tree {
        node: Node::Literal(unit),
        span: unit_span,
    };
    Tree {
        node: Node::Binary(Operator::Multiply, Box::new(quotient), Box::new(unit)),
        span,
    }
}

/// True if only numbers without unit, and angles inside functions, stand here.
fn all_bare(tree: &Tree) -> bool {
    match &tree.node {
        Node::Literal(literal) => literal.unit.is_none(),
        Node::Name(_) => false,
        Node::Negative(inner) => all_bare(inner),
        Node::Binary(_, left, right) => all_bare(left) && all_bare(right),
        Node::Call(function, inner) => function.takes_angle() || all_bare(inner),
    }
}
