//! A minus before a square: `−120²` is −(120²), and many mean (−120)².

use super::tree::{Node, Operator, Tree};

/// The tree with every minus that stands before an even power taken into it; `None` where there is
/// none.
pub(super) fn signs_squared(tree: &Tree) -> Option<Tree> {
    let with = |node: Node| Tree {
        node,
        span: tree.span,
    };
    match &tree.node {
        Node::Literal(_) | Node::Name(_) => None,
        Node::Negative(inner) => match &inner.node {
            Node::Binary(Operator::Power, base, exponent) if is_even(exponent) => {
                let negative = Tree {
                    span: base.span,
                    node: Node::Negative(base.clone()),
                };
                let power = Node::Binary(Operator::Power, Box::new(negative), exponent.clone());
                Some(with(power))
            }
            _ => signs_squared(inner).map(|inner| with(Node::Negative(Box::new(inner)))),
        },
        Node::Call(function, inner) => {
            signs_squared(inner).map(|inner| with(Node::Call(*function, Box::new(inner))))
        }
        Node::Binary(operator, left, right) => {
            let (one, other) = (signs_squared(left), signs_squared(right));
            (one.is_some() || other.is_some()).then(|| {
                let kept = |changed: Option<Tree>, tree: &Tree| {
                    Box::new(changed.unwrap_or_else(|| tree.clone()))
                };
                with(Node::Binary(*operator, kept(one, left), kept(other, right)))
            })
        }
    }
}

fn is_even(exponent: &Tree) -> bool {
    matches!(&exponent.node, Node::Literal(literal) if literal.value % 2.0 == 0.0)
}
